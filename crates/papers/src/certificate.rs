//! The certificate of a job whose every claim is proved: what was proved and how, for the owner and the next inspector.

use crate::document::{Block, Cell, Face, Paper, Table, Text};
use crate::words::{circuits_in_words, listed, room_title, sentence};
use closeout::{ClaimAnswer, ClaimKind, OpeningProof, ProofAnswer};
use dwelling::Dwelling;
use remedies::{OpeningAnswer, PlanAnswer};

/// A job that is to be closed out.
#[derive(Clone, Debug)]
pub struct Closed<'a> {
    /// The dwelling, as the plan was made on it.
    pub dwelling: &'a Dwelling,
    /// The plan that was carried out.
    pub plan: &'a PlanAnswer,
    /// What was read afterwards, held against it.
    pub proof: &'a ProofAnswer,
    /// The day that stands on the paper; none leaves a line to fill in.
    pub date: Option<String>,
}

/// The certificate; none where anything is open, contradicted or not settled.
#[must_use]
pub fn certificate(closed: &Closed) -> Option<Paper> {
    if !closed.proof.is_closed() {
        return None;
    }
    let title = "Certificate of readings".to_owned();
    let mut blocks = vec![Block::Heading(1, format!("{title}: {}", closed.proof.job))];
    blocks.extend(what_it_is(closed));
    blocks.extend(without_ground(closed));
    blocks.extend(at_the_panel(closed));
    blocks.extend(openings(closed));
    // Whoever signs has what it rests on in view.
    blocks.push(Block::Together(rests_on(closed).into_iter().chain(signatures()).collect()));
    Some(Paper { title, dwelling: closed.proof.job.clone(), date: closed.date.clone(), blocks })
}

fn what_it_is(closed: &Closed) -> Vec<Block> {
    let proof = closed.proof;
    let law = &proof.law;
    let mut code = format!("National Electrical Code, {}", law.edition);
    if !law.changed_by.is_empty() {
        code = format!("{code}, as changed by {}", listed(&law.changed_by));
    }
    let receptacles = proof.openings.iter().filter(|opening| is_receptacle(opening)).count();
    let grounded = proof.openings.iter().filter(|opening| opening.grounded && is_receptacle(opening)).count();
    let mut facts = vec![
        ("Code on which the plan rests".to_owned(), Text::from(code)),
        (
            "Receptacles read".to_owned(),
            format!("{receptacles}: {grounded} with an equipment ground, {} without", receptacles - grounded).into(),
        ),
        (
            "Claims of the plan".to_owned(),
            format!("{}, each of them proved by a reading or a sighting written down", proof.counts.proved).into(),
        ),
        ("Read on, by".to_owned(), read_when(proof).into()),
    ];
    if proof.offer > 1 {
        facts.push(("Carried out".to_owned(), format!("offer {}", proof.offer).into()));
    }
    vec![
        Block::Paragraph("After the work below was done, each opening was read and looked at, and what was written down was held against what the plan says that it must be. Nothing was left open and nothing spoke against it.".into()),
        Block::Items(facts),
        Block::Caution("This paper certifies the readings that were written down, on their day. It says nothing of wiring that nobody saw, and it is no approval: the authority having jurisdiction decides.".into()),
    ]
}

fn is_receptacle(opening: &OpeningProof) -> bool {
    opening.claims.iter().any(|claim| claim.claim == ClaimKind::HotNeutral)
}

/// Every day and initials that stand beside a reading, each pair once.
fn read_when(proof: &ProofAnswer) -> String {
    let of_openings = proof.openings.iter().flat_map(|opening| &opening.claims);
    let of_circuits = proof.circuits.iter().flat_map(|circuit| &circuit.claims);
    let of_panels = proof.panels.iter().flat_map(|panel| &panel.claims);
    let mut said: Vec<&str> = of_panels
        .chain(of_circuits)
        .chain(of_openings)
        .filter(|claim| claim.claim == ClaimKind::Recorded)
        .filter_map(|claim| claim.how.as_deref())
        .collect();
    said.sort_unstable();
    said.dedup();
    said.join("; ")
}

/// What the next inspector must know before plugging a tester in.
fn without_ground(closed: &Closed) -> Vec<Block> {
    let expected: Vec<&OpeningProof> =
        closed.proof.openings.iter().filter(|opening| opening.tester_explained.is_some()).collect();
    if expected.is_empty() {
        return Vec::new();
    }
    let rows = expected.iter().map(|opening| {
        let planned = closed.plan.openings.iter().find(|planned| planned.box_id == opening.box_id);
        let markings = planned.map_or(String::new(), |planned| planned.markings.join(" · "));
        let cites = planned.map_or(String::new(), |planned| planned.cites.join(", "));
        vec![
            Text::bold(opening.box_id.as_str()).into(),
            room_title(closed.dwelling, &opening.room).into(),
            crate::labels::where_protected(opening.protected_by.as_deref()).replacen("tested ", "", 1).into(),
            markings.into(),
            cites.into(),
        ]
    });
    let columns = [("Box", 0.6), ("Room", 1.1), ("Test button", 1.9), ("Marked", 2.0), ("Sections", 1.2)];
    vec![
        Block::Heading(2, "To the next inspector: openings without an equipment ground".to_owned()),
        Block::Paragraph("A plug-in tester says “open ground” at these openings. That is as it must be: they have no equipment ground, and the sections named allow a grounding-type receptacle there behind a GFCI and with these markings. The tester's button cannot trip the GFCI, since it leaks to a ground that is not there; the test button of the device itself is the test that counts. A tester that says “correct” at one of them is the alarming answer: somebody has joined ground and neutral, or changed the wiring.".into()),
        Block::Table(Table { columns: columns.map(|(head, wide)| (head.to_owned(), wide)).to_vec(), rows: rows.collect(), row_height: 0.0 }),
    ]
}

fn at_the_panel(closed: &Closed) -> Vec<Block> {
    let panels = closed.proof.panels.iter().map(|panel| (format!("Panel {}", panel.panel), &panel.claims));
    let circuits = closed.proof.circuits.iter().map(|circuit| {
        (format!("Circuit {}, panel {}", circuits_in_words(&circuit.circuits), circuit.panel), &circuit.claims)
    });
    let items: Vec<(String, Text)> = panels.chain(circuits).map(|(name, claims)| (name, hows(claims, ALL))).collect();
    vec![Block::Heading(2, "At the panel".to_owned()), Block::Items(items)]
}

/// Every kind of claim.
const ALL: &[ClaimKind] = ClaimKind::ALL;
/// What is looked at, at an opening.
const SEEN: &[ClaimKind] = &[
    ClaimKind::Device,
    ClaimKind::TamperResistant,
    ClaimKind::WeatherResistant,
    ClaimKind::BoxWork,
    ClaimKind::GroundConnected,
    ClaimKind::Marking,
    ClaimKind::NoFalseMarking,
];
/// What is read there.
const READ: &[ClaimKind] = &[
    ClaimKind::HotNeutral,
    ClaimKind::HotNeutralLoaded,
    ClaimKind::Ground,
    ClaimKind::GroundPath,
    ClaimKind::NoGround,
    ClaimKind::Polarity,
];
/// What is pressed there, and who did all of it.
const PRESSED: &[ClaimKind] = &[ClaimKind::Trips, ClaimKind::DeadWhenTripped, ClaimKind::Recorded];

/// How the claims of these kinds were proved, in one text.
fn hows(claims: &[ClaimAnswer], kinds: &[ClaimKind]) -> Text {
    let of_these = claims.iter().filter(|claim| kinds.contains(&claim.claim));
    let how: Vec<&str> = of_these.filter_map(|claim| claim.how.as_deref()).collect();
    if how.is_empty() { Text::default() } else { sentence(&how.join("; ")).into() }
}

/// The openings by circuit, each claim with what proves it.
fn openings(closed: &Closed) -> Vec<Block> {
    let mut blocks = vec![Block::Heading(2, "What was proved, by circuit and opening".to_owned())];
    let proof = closed.proof;
    for circuit in &closed.plan.circuits {
        let here: Vec<&OpeningProof> =
            proof.openings.iter().filter(|opening| circuit.boxes.contains(&opening.box_id)).collect();
        if here.is_empty() {
            continue;
        }
        blocks.push(Block::Heading(3, format!("Circuit {}", circuits_in_words(&circuit.circuits))));
        blocks.push(Block::Table(table(closed, &here)));
    }
    let on_circuit =
        |opening: &&OpeningProof| closed.plan.circuits.iter().any(|set| set.boxes.contains(&opening.box_id));
    let apart: Vec<&OpeningProof> = proof.openings.iter().filter(|opening| !on_circuit(opening)).collect();
    if !apart.is_empty() {
        blocks.push(Block::Heading(3, "Circuit not known".to_owned()));
        blocks.push(Block::Table(table(closed, &apart)));
    }
    blocks
}

fn table(closed: &Closed, openings: &[&OpeningProof]) -> Table {
    let columns = [("Box", 0.9), ("Done", 1.4), ("Seen", 1.9), ("Read", 2.8), ("Tested, and by whom", 1.5)];
    let rows = openings.iter().map(|opening| {
        let planned = closed.plan.openings.iter().find(|planned| planned.box_id == opening.box_id);
        let room = format!(" {}", room_title(closed.dwelling, &opening.room));
        vec![
            Cell::Words(Text::bold(opening.box_id.as_str()).and(Face::Plain, room)),
            planned.map_or_else(String::new, done).into(),
            Cell::Words(hows(&opening.claims, SEEN)),
            Cell::Words(hows(&opening.claims, READ)),
            Cell::Words(hows(&opening.claims, PRESSED)),
        ]
    });
    let rows = rows.collect();
    Table { columns: columns.map(|(head, wide)| (head.to_owned(), wide)).to_vec(), rows, row_height: 0.0 }
}

/// What was done, and the ground that is there.
fn done(opening: &OpeningAnswer) -> String {
    let ground = if opening.grounded { "equipment ground" } else { "no equipment ground" };
    format!("{}; {ground}", remedies::in_words::order(opening))
}

fn rests_on(closed: &Closed) -> Vec<Block> {
    let proof = closed.proof;
    let disputed = proof.rests_on.iter().chain(&proof.law.doubts).map(|said| Text::from(sentence(said)));
    let mut disputed: Vec<Text> = disputed.collect();
    disputed.dedup();
    let mut blocks = vec![Block::Heading(2, "What this rests on".to_owned())];
    if disputed.is_empty() {
        blocks.push(Block::Paragraph(
            "Nothing in the plan rests on a question that the authority was to be asked.".into(),
        ));
    } else {
        blocks.push(Block::Paragraph("These rest on the word of the authority having jurisdiction:".into()));
        blocks.push(Block::Bullets(disputed));
    }
    let warnings = proof.law.warnings.iter().map(String::as_str);
    let said = proof.assumptions.iter().copied().chain(warnings).map(sentence);
    blocks.push(Block::Small(said.collect::<Vec<String>>().join(" ").into()));
    blocks
}

fn signatures() -> Vec<Block> {
    vec![
        Block::Heading(2, "Signed".to_owned()),
        Block::Paragraph("I took or witnessed the readings above, and they were as written:".into()),
        Block::Fields(vec!["Licensed electrician".into(), "Licence".into(), "Signature".into(), "Day".into()]),
        Block::Paragraph("Received a copy, with the test record:".into()),
        Block::Fields(vec!["Owner".into(), "Signature".into(), "Day".into()]),
    ]
}
