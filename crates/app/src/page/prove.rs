//! The page of a close-out: how it stands, what contradicts, what is left by room, and what was proved.

use super::ink::{ALARM, ASK, DO, HEADLINE, QUIET, ink};
use super::lines::{rule, with_right, wrapped};
use anstyle::Style;
use closeout::{ClaimAnswer, OpeningProof, ProofAnswer, ProofVerdict};
use dwelling::Dwelling;
use std::path::Path;

/// The page; `certificate` is the file that was asked for and whether it was written.
#[must_use]
pub fn render(proof: &ProofAnswer, dwelling: &Dwelling, full: bool, certificate: Option<(&Path, bool)>) -> String {
    let mut page = String::new();
    let title = format!("{} – close-out", proof.job);
    let right = format!("offer {} · NEC {}", proof.offer, proof.law.edition);
    with_right(&mut page, &ink(HEADLINE, &title), title.chars().count(), &right);
    rule(&mut page, QUIET);
    let (word, style, says) = match proof.status {
        ProofVerdict::Proved => ("PROVED", DO, "every claim of the plan, by what was read and seen"),
        ProofVerdict::Open => ("OPEN", ASK, "something is still to be read, or to be settled"),
        ProofVerdict::Contradicts => ("CONTRADICTS", ALARM, "what was read is not what the plan says"),
    };
    page.push_str(&format!("{}  {says}\n", ink(style, word)));
    let counts = proof.counts;
    page.push_str(&format!("{} proved · {} open · {} contradict\n", counts.proved, counts.open, counts.contradicts));
    for by in &proof.law.changed_by {
        wrapped(&mut page, "as changed by ", by, Style::new());
    }
    for held in &proof.holds_back {
        let at = held.box_id.as_ref().map_or(String::new(), |id| format!("{id}: "));
        wrapped(&mut page, "  ? ", &format!("to be settled first: {at}{}", held.what), ASK);
    }
    let at_panel: Vec<(String, &[ClaimAnswer])> = proof
        .panels
        .iter()
        .map(|panel| (format!("panel {}", panel.panel), panel.claims.as_slice()))
        .chain(proof.circuits.iter().map(|of| (format!("circuit {}", of.circuits.join(" + ")), of.claims.as_slice())))
        .collect();
    section(&mut page, "At the panel", &at_panel, full);
    for room in &dwelling.rooms {
        let here: Vec<(String, &[ClaimAnswer])> = proof
            .openings
            .iter()
            .filter(|opening| opening.room == room.id)
            .map(|opening| (opening.box_id.clone(), opening.claims.as_slice()))
            .collect();
        section(&mut page, room.title.as_deref().unwrap_or(&room.id), &here, full);
    }
    explained(&mut page, &proof.openings);
    foot(&mut page, proof, full, certificate);
    page
}

/// What is left in a room, or at the panel, and how much is proved.
fn section(page: &mut String, title: &str, places: &[(String, &[ClaimAnswer])], full: bool) {
    if places.is_empty() {
        return;
    }
    page.push('\n');
    let all: usize = places.iter().map(|(_, claims)| claims.len()).sum();
    let proved = |claims: &[ClaimAnswer]| claims.iter().filter(|claim| claim.verdict == ProofVerdict::Proved).count();
    let done: usize = places.iter().map(|(_, claims)| proved(claims)).sum();
    with_right(page, &ink(HEADLINE, title), title.chars().count(), &format!("{done} of {all} proved"));
    for (name, claims) in places {
        page.push_str(&format!("  {}  {} of {} proved\n", ink(HEADLINE, name), proved(claims), claims.len()));
        if !full && claims.iter().all(|claim| claim.verdict == ProofVerdict::Open) {
            let kinds: Vec<&str> = claims.iter().map(|claim| claim.claim.name()).collect();
            wrapped(page, "    ? ", &format!("nothing was read yet: {}", kinds.join(", ")), ASK);
            continue;
        }
        for claim in *claims {
            told(page, claim, full);
        }
    }
}

fn told(page: &mut String, claim: &ClaimAnswer, full: bool) {
    let blank = "        ";
    match claim.verdict {
        ProofVerdict::Proved if full => {
            let how = claim.how.as_deref().unwrap_or_default();
            wrapped(page, "    + ", &format!("{}: {how}", claim.says), Style::new());
        }
        ProofVerdict::Proved => {}
        ProofVerdict::Open => {
            wrapped(page, "    ? ", &format!("not read: {}", claim.says), ASK);
            wrapped(page, blank, claim.next.as_deref().unwrap_or_default(), Style::new());
        }
        ProofVerdict::Contradicts => {
            wrapped(page, "    ! ", &format!("CONTRADICTS: {}", claim.says), ALARM);
            let parts = [
                ("must read  ", &claim.must_read),
                ("reads      ", &claim.reads),
                ("likely     ", &claim.likely_cause),
                ("next       ", &claim.next),
            ];
            for (lead, words) in parts {
                if let Some(words) = words {
                    wrapped(page, &format!("{blank}{lead}"), words, Style::new());
                }
            }
        }
    }
    if full || claim.verdict == ProofVerdict::Contradicts {
        let memory = if claim.source.from_memory { ", from memory" } else { "" };
        wrapped(page, blank, &format!("[{}: {}{memory}]", claim.source.kind, claim.source.cite), QUIET);
    }
}

fn explained(page: &mut String, openings: &[OpeningProof]) {
    let expected: Vec<&OpeningProof> = openings.iter().filter(|opening| opening.tester_explained.is_some()).collect();
    let Some(says) = expected.first().and_then(|opening| opening.tester_explained.as_deref()) else { return };
    let boxes: Vec<&str> = expected.iter().map(|opening| opening.box_id.as_str()).collect();
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "Where a plug-in tester says “open ground” and nothing is wrong")));
    wrapped(page, "  ", &format!("{}: {says}", boxes.join(", ")), Style::new());
}

fn foot(page: &mut String, proof: &ProofAnswer, full: bool, certificate: Option<(&Path, bool)>) {
    page.push('\n');
    for rests in &proof.rests_on {
        wrapped(page, "  ! ", &format!("rests on the authority's word: {rests}"), Style::new());
    }
    for warning in proof.law.warnings.iter().chain(&proof.law.doubts) {
        wrapped(page, "  ! ", warning, Style::new());
    }
    if full {
        for assumption in &proof.assumptions {
            wrapped(page, "  · ", assumption, QUIET);
        }
    }
    let caution = "this holds what was read against the plan, and says nothing of hidden wiring; the authority having \
                   jurisdiction decides; the work and its readings are a licensed electrician's";
    wrapped(page, "  ! ", caution, Style::new());
    match certificate {
        Some((file, true)) => wrapped(page, "written: ", &file.display().to_string(), Style::new()),
        Some((file, false)) => {
            let held = proof.left.len() + proof.holds_back.len();
            let things = if held == 1 { "1 thing keeps" } else { &format!("{held} things keep") };
            let told =
                format!("no certificate: {things} it back, each told above; `{}` was not written", file.display());
            wrapped(page, "", &told, ALARM);
        }
        None => {}
    }
}
