//! The panel end of each circuit, and each panel: what is fitted there, whether it trips, whether the directory is written.

use crate::claim::{ClaimAnswer, ClaimKind, Claimed, against};
use crate::opening::recorded;
use crate::protection::trips;
use crate::source::source_of;
use dwelling::{ButtonTest, CircuitAfter, Dwelling, FittedAtPanel, Panel, Taken};
use remedies::CircuitAnswer;

/// What must be seen at the panel end for what the plan names so.
fn asked(at_panel: &str) -> Option<FittedAtPanel> {
    match at_panel {
        "as-it-is" => Some(FittedAtPanel::AsItWas),
        name => FittedAtPanel::from_name(name.strip_prefix("breaker-").unwrap_or(name)),
    }
}

/// The claims about the panel end of a circuit or multiwire set.
pub(crate) fn of_circuit(dwelling: &Dwelling, circuit: &CircuitAnswer) -> Vec<ClaimAnswer> {
    let known = dwelling.circuits.iter().filter(|known| circuit.circuits.contains(&known.id));
    let seen: Vec<&CircuitAfter> = known.filter_map(|known| known.after.as_ref()).collect();
    let fitted: Vec<FittedAtPanel> = seen.iter().filter_map(|after| after.fitted).collect();
    let mut claims = Vec::new();
    let untouched = circuit.at_panel == "as-it-is" && circuit.protects.is_empty();
    let other_than_planned = fitted.iter().find(|fitted| Some(**fitted) != asked(circuit.at_panel));
    if !untouched || other_than_planned.is_some() {
        let in_words = remedies::in_words::at_panel(circuit.at_panel);
        let must_read = asked(circuit.at_panel).map_or("what the plan says", FittedAtPanel::name);
        let claimed = Claimed {
            claim: ClaimKind::Device,
            of: None,
            says: format!("at the panel end: {in_words}"),
            must_read: in_words.to_owned(),
            source: source_of(ClaimKind::Device),
        };
        claims.push(match (other_than_planned, fitted.first()) {
            (Some(other), _) => claimed.contradicted(against(
                other.name(),
                "the work differs from the plan",
                "fit what the plan says, or put what is there into the survey as found and plan anew with it",
            )),
            (None, Some(_)) => claimed.proved(format!("{in_words} seen")),
            (None, None) => claimed.open(format!("look, and write what is fitted, such as `fitted = \"{must_read}\"`")),
        });
    }
    if !circuit.protects.is_empty() {
        let pressed = |after: &CircuitAfter| match after.test_button? {
            ButtonTest::Trips => Some(true),
            ButtonTest::DoesNotTrip => Some(false),
            ButtonTest::NotTested => None,
        };
        // One that failed is not made good by its partner's.
        let buttons: Vec<bool> = seen.iter().copied().filter_map(pressed).collect();
        let button = if buttons.contains(&false) { Some(false) } else { buttons.first().copied() };
        let device = format!("the {} at the panel end", remedies::in_words::at_panel(circuit.at_panel));
        claims.push(trips(button, &device));
    }
    if !seen.is_empty() && !claims.is_empty() {
        claims.push(recorded(seen.iter().map(|after| &after.taken)));
    }
    claims
}

/// The claims about a panel.
pub(crate) fn of_panel(panel: &Panel) -> Vec<ClaimAnswer> {
    let claimed = Claimed {
        claim: ClaimKind::Directory,
        of: None,
        says: "the circuit directory is written as the circuits are".to_owned(),
        must_read: "written".to_owned(),
        source: source_of(ClaimKind::Directory),
    };
    let after = panel.after.as_ref();
    let directory = match after.and_then(|after| after.directory) {
        Some(true) => claimed.proved("directory seen written"),
        Some(false) => claimed.contradicted(against(
            "not written",
            "the directory was left as it was",
            "write it: the circuit directory of the papers has every line",
        )),
        None => claimed.open("look at the panel door, and write `directory = true` where it is"),
    };
    let taken: Option<&Taken> = after.map(|after| &after.taken);
    std::iter::once(directory).chain(taken.map(|taken| recorded([taken].into_iter()))).collect()
}
