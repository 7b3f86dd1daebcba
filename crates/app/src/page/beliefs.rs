//! The pages of what to test next, and of what is believed of one box.

use super::ink::{ALARM, ASK, HEADLINE, QUIET, ink};
use super::lines::wrapped;
use anstyle::Style;
use diagnosis::belief::{About, Beliefs, Test};
use dwelling::{BoxIndex, Dwelling};
use remedies::{
    AdviceAnswer, BeliefAnswer, ClashAnswer, ExplanationAnswer, FindingsAnswer, OddsAnswer, SearchAnswer, StepAnswer,
    explanation_answers, percent,
};

/// How many explanations of a circuit are told.
const EXPLANATIONS: usize = 3;
/// How many tests are told.
const TESTS: usize = 5;
/// How many outcomes of a test are told.
const OUTCOMES: usize = 3;

/// The page of what to test next: the tests worth most by the minute, then the whole search on each circuit in doubt.
#[must_use]
pub fn next(answer: &FindingsAnswer, dwelling: &Dwelling) -> String {
    let mut page = format!("{}\n", ink(HEADLINE, format!("{} – what to test next", dwelling.job.name)));
    clashes(&mut page, &answer.clashes);
    if answer.tests.is_empty() {
        page.push_str("\nNo further test is worth its minutes.\n");
    } else {
        page.push_str(&format!("\n{}\n", ink(HEADLINE, "Worth most by the minute")));
    }
    for (number, alike) in together(&answer.tests).iter().enumerate() {
        advice(&mut page, number + 1, alike);
    }
    for one in &answer.searches {
        search(&mut page, one);
    }
    footer(&mut page, answer.shipped_practice);
    page
}

fn clashes(page: &mut String, clashes: &[ClashAnswer]) {
    if clashes.is_empty() {
        return;
    }
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "Does not fit together")));
    for clash in clashes {
        wrapped(page, "  ! ", &clash.says, ALARM);
    }
}

/// The best test of each box; boxes at which the same is expected to come out of the same test together.
fn together(tests: &[AdviceAnswer]) -> Vec<Vec<&AdviceAnswer>> {
    let mut best: Vec<&AdviceAnswer> = Vec::new();
    for test in tests {
        if !best.iter().any(|other| other.id == test.id) {
            best.push(test);
        }
    }
    let likeliest = |test: &AdviceAnswer| test.outcomes.first().map(|one| one.outcome);
    let mut groups: Vec<Vec<&AdviceAnswer>> = Vec::new();
    for test in best {
        let alike = groups
            .iter_mut()
            .find(|group| group.iter().all(|other| other.test == test.test && likeliest(other) == likeliest(test)));
        match alike {
            Some(group) => group.push(test),
            None => groups.push(vec![test]),
        }
    }
    groups.truncate(TESTS);
    groups
}

fn advice(page: &mut String, number: usize, alike: &[&AdviceAnswer]) {
    let Some(first) = alike.first() else { return };
    let ids: Vec<&str> = alike.iter().map(|test| test.id.as_str()).collect();
    wrapped(page, &format!("  {number}. "), &format!("{}: {}", ids.join(", "), first.what), ASK);
    let outcomes = first.outcomes.iter().take(OUTCOMES);
    let outcomes: Vec<String> =
        outcomes.map(|one| format!("{} {}", one.outcome.name().replace('-', " "), percent(one.odds))).collect();
    let each = if alike.len() > 1 { " each" } else { "" };
    let worth = format!("{:.0} min{each}, saves {:.0} min of acting wrongly", first.minutes, first.worth);
    wrapped(page, "     ", &format!("{worth}; expect {}", outcomes.join(", ")), Style::new());
    wrapped(page, "     ", first.caution, QUIET);
}

fn search(page: &mut String, search: &SearchAnswer) {
    let heading = format!("The search for the ground on circuit {}", search.circuits.join(" and "));
    page.push_str(&format!("\n{}\n", ink(HEADLINE, heading)));
    let opens = if search.opens_at_most == 0 {
        "no box needs to be opened".to_owned()
    } else {
        format!("opens {:.1} boxes on average, at most {}", search.opens, search.opens_at_most)
    };
    let told = search.explanations.len();
    let line = format!(
        "{opens}; about {:.0} min. It tells {told} explanations apart, {} of all that is possible.",
        search.minutes,
        percent(search.covers)
    );
    wrapped(page, "  ", &line, Style::new());
    for step in &search.steps {
        one_step(page, step, &search.explanations);
    }
    if let Some(fewest) = &search.fewest_boxes {
        let order: Vec<String> = fewest.order.iter().map(|one| format!("{} ({})", one.id, percent(one.odds))).collect();
        let first = match fewest.test {
            Test::OpenBox => format!("open {}", fewest.id),
            test => format!("at {}: {}", fewest.id, test.what()),
        };
        let line = format!(
            "The fewest boxes, whatever the minutes: {first}. As things stand, boxes would be opened in this order: {}; after {} in \
             vain, the rest from the panel on.",
            order.join(", "),
            fewest.from_panel_after
        );
        wrapped(page, "  ", &line, QUIET);
    }
}

fn one_step(page: &mut String, step: &StepAnswer, explanations: &[ExplanationAnswer]) {
    let lead = format!("  {}", "   ".repeat(step.depth));
    let after = step
        .after
        .map_or(String::new(), |outcome| format!("{} ({}): ", outcome.name().replace('-', " "), percent(step.odds)));
    match (&step.id, step.test) {
        (Some(id), Some(test)) => wrapped(page, &lead, &format!("{after}{id}: {}", test.what()), ASK),
        _ => {
            let likeliest = step.left.first().and_then(|place| explanations.get(*place));
            let faults = likeliest.map_or(String::new(), |one| faults(&one.faults));
            let more = step.left.len().saturating_sub(1);
            let or = match more {
                0 => String::new(),
                1 => " – or one other explanation, not worth telling apart".to_owned(),
                more => format!(" – or {more} other explanations, not worth telling apart"),
            };
            wrapped(page, &lead, &format!("{after}act: {faults}{or}"), Style::new());
        }
    }
}

fn faults(faults: &[String]) -> String {
    if faults.is_empty() { "wired as the survey has it, and nothing wrong".to_owned() } else { faults.join("; ") }
}

/// The page of one box: what is believed of it and of its run, and the likeliest explanations of its circuit.
#[must_use]
pub fn explained(answer: &FindingsAnswer, dwelling: &Dwelling, beliefs: &Beliefs, at: BoxIndex) -> String {
    let id = &dwelling.device_box(at).id;
    let mut page = format!("{}\n", ink(HEADLINE, format!("{} – box {id}", dwelling.job.name)));
    let Some(belief) = answer.beliefs.iter().find(|belief| belief.id == *id) else {
        let why = "Nothing can be said of this box: it is on no circuit, or what was found on its circuit cannot be.";
        wrapped(&mut page, "\n", why, ASK);
        return page;
    };
    page.push('\n');
    wrapped(&mut page, "", &belief.says, Style::new());
    let mine: Vec<ClashAnswer> = answer.clashes.iter().filter(|clash| clash.boxes.contains(id)).cloned().collect();
    clashes(&mut page, &mine);
    odds_of_all(&mut page, belief);
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "Found here")));
    let found = answer.findings.iter().filter(|finding| finding.at == "box" && finding.id == *id);
    let evidence: Vec<&String> = found.flat_map(|finding| &finding.because).collect();
    let mut told: Vec<&String> = Vec::new();
    for because in evidence {
        if !told.contains(&because) {
            wrapped(&mut page, "  · ", because, QUIET);
            told.push(because);
        }
    }
    if told.is_empty() {
        page.push_str("  nothing yet\n");
    }
    let circuit = beliefs.circuits.iter().find(|circuit| circuit.boxes.iter().any(|belief| belief.at == at));
    if let Some(circuit) = circuit {
        page.push_str(&format!("\n{}\n", ink(HEADLINE, "What explains all that was found on its circuit")));
        for (number, one) in
            explanation_answers(dwelling, &circuit.explanations(About::Everything, EXPLANATIONS)).iter().enumerate()
        {
            let lead = format!("  {}. ", number + 1);
            let line = format!("{} ({})", faults(&one.faults), percent(one.odds));
            wrapped(&mut page, &lead, &line, Style::new());
        }
    }
    footer(&mut page, answer.shipped_practice);
    page
}

fn odds_of_all(page: &mut String, belief: &BeliefAnswer) {
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "Believed")));
    line(page, "ground terminal", &belief.ground, |is| is.name());
    line(page, "device", &belief.wiring, |is| is.name());
    line(page, "hot from the panel", &belief.hot_path, |is| is.name());
    line(page, "neutral from the panel", &belief.neutral_path, |is| is.name());
    line(page, "ground of its run", &belief.run_ground, |is| is.name());
}

fn line<T: Copy>(page: &mut String, what: &str, odds: &[OddsAnswer<T>], name: impl Fn(T) -> &'static str) {
    let odds = odds.iter().filter(|one| one.odds >= 0.005);
    let told: Vec<String> =
        odds.map(|one| format!("{} {}", name(one.is).replace('-', " "), percent(one.odds))).collect();
    wrapped(page, &format!("  {what:<24}"), &told.join(", "), Style::new());
}

fn footer(page: &mut String, shipped_practice: bool) {
    let practice = match shipped_practice {
        true => "what is common in old wiring (shipped figures, no source)",
        false => "figures of your own in place of what is common in old wiring",
    };
    let text = format!(
        "Odds rest on {practice} and on what meters read, not on this house alone. A licensed electrician does these tests; \
         local code and the authority having jurisdiction decide."
    );
    page.push('\n');
    wrapped(page, "", &text, QUIET);
}
