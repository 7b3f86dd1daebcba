//! The sections about feeding orders that nobody knows: what still fits, and what a plan assumes.

use super::ink::{ALARM, ASK, HEADLINE, QUIET, ink};
use super::lines::wrapped;
use super::words::money;
use anstyle::Style;
use remedies::{
    AssumedOrderAnswer, FeedAnswer, FeedingAnswer, FeedingState, FeedingTestAnswer, OtherOrderAnswer, RunAnswer,
};

/// A run less likely than this is shown in full pages only.
const WORTH_A_LINE: f64 = 0.05;

/// What still fits, circuit by circuit.
pub fn findings(page: &mut String, answers: &[FeedingAnswer], full: bool) {
    if answers.is_empty() {
        return;
    }
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "What feeds what")));
    for answer in answers {
        let style = if answer.state == FeedingState::Clash { ALARM } else { Style::new() };
        let circuit = format!("circuit {}: ", answer.circuits.join(" and "));
        wrapped(page, "  · ", &format!("{circuit}{}", answer.says), style);
        for clash in &answer.clash {
            wrapped(page, "      ? ", clash, ASK);
        }
        for box_id in &answer.unknown {
            let runs: Vec<&RunAnswer> = answer.runs.iter().filter(|run| run.box_id == *box_id).collect();
            if runs.is_empty() {
                continue;
            }
            let shown = runs.iter().enumerate().filter(|(place, run)| full || *place == 0 || run.share >= WORTH_A_LINE);
            let shown: Vec<String> = shown.map(|(_, run)| format!("{} {}", run.fed_by, percent(run.share))).collect();
            let less = if shown.len() < runs.len() { ", or less likely another" } else { "" };
            wrapped(page, "      ", &format!("{box_id} is fed by {}{less}", shown.join(", ")), Style::new());
        }
        if answer.state == FeedingState::NotAllLookedAt
            && let Some(one) = answer.likeliest.first()
        {
            wrapped(page, "      one order that fits: ", &feeds(&one.feeds), QUIET);
        }
        if let Some(test) = &answer.next {
            next_test(page, test);
        }
        if full {
            for practice in &answer.weighed_by {
                wrapped(page, "      weighed by: ", practice, QUIET);
            }
        }
    }
}

fn next_test(page: &mut String, test: &FeedingTestAnswer) {
    wrapped(page, "      next: ", &format!("{} (about {} minutes)", test.what, test.minutes), ASK);
    if let (Some(before), Some(after)) = (test.right_before, test.right_after) {
        let worth = format!(
            "the chance that the most probable order is the true one: {} now, {} afterwards, as expected",
            percent(before),
            percent(after)
        );
        wrapped(page, "        ", &worth, Style::new());
    }
    for outcome in &test.outcomes {
        let dead = match outcome.dead.as_slice() {
            [] => "nothing else is dead".to_owned(),
            [one] => format!("{one} is dead"),
            several => format!("{} are dead", several.join(", ")),
        };
        let left = if outcome.orders_left == 1 {
            "one order is".to_owned()
        } else {
            format!("{} orders are", outcome.orders_left)
        };
        let means = format!("if {dead} ({}), {left} left: {}", percent(outcome.share), feeds(&outcome.likeliest));
        wrapped(page, "        - ", &means, Style::new());
    }
    if test.further_outcomes > 0 {
        let others = if test.further_outcomes == 1 {
            "one other thing may be seen".to_owned()
        } else {
            format!("{} other things may be seen", test.further_outcomes)
        };
        wrapped(page, "        - ", &others, QUIET);
    }
    for caution in &test.cautions {
        wrapped(page, "        ! ", caution, Style::new());
    }
}

/// What a plan assumes, and what another order would change.
pub fn assumed(page: &mut String, answers: &[AssumedOrderAnswer]) {
    if answers.is_empty() {
        return;
    }
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "Feeding order assumed")));
    for answer in answers {
        wrapped(page, "  ? ", &format!("circuit {}: {}", answer.circuits.join(" and "), answer.says), ASK);
        if !answer.assumed.is_empty() {
            let rests = if answer.plan_rests_on_it {
                "the plan rests on it: find out before you rely on the plan"
            } else {
                "nothing that the plan does at these openings rests on it"
            };
            wrapped(page, "      ", rests, Style::new());
        }
        for other in &answer.otherwise {
            wrapped(page, "      ", &otherwise(other), Style::new());
        }
        if let Some(open) = &answer.open_next {
            wrapped(page, "      ", &format!("open {open} next: `thirdwire findings` tells how"), ASK);
        }
    }
}

fn otherwise(other: &OtherOrderAnswer) -> String {
    let cost = match other.costs_more_cents {
        0 => "the same cost".to_owned(),
        more if more > 0 => format!("{} more", money(more)),
        less => format!("{} less", money(-less)),
    };
    let cost = if other.exact { cost } else { format!("{cost} as far as the search came") };
    let changes: Vec<String> = other
        .changes
        .iter()
        .map(|change| format!("{} {} in place of {}", change.box_id, change.then.name(), change.planned.name()))
        .collect();
    let changes = if changes.is_empty() { "the same is done at every opening".to_owned() } else { changes.join(", ") };
    format!("if {} ({}): {cost}, {changes}", feeds(&other.feeds), percent(other.share))
}

fn feeds(feeds: &[FeedAnswer]) -> String {
    let told: Vec<String> = feeds.iter().map(|feed| format!("{} is fed by {}", feed.box_id, feed.fed_by)).collect();
    told.join(", ")
}

/// A share in whole percent; what is neither none nor all is never told as either.
fn percent(share: f64) -> String {
    match (share * 100.0).round() {
        whole if whole < 1.0 && share > 0.0 => "less than 1 %".to_owned(),
        whole if whole > 99.0 && share < 1.0 => "more than 99 %".to_owned(),
        whole => format!("{whole} %"),
    }
}
