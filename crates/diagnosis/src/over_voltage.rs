//! More than line voltage: the open neutral of a multiwire set, and legs mixed up in a box.

use crate::bands::{BOTH_LEGS_FROM, BOTH_LEGS_UP_TO, LEGS_APART_FROM, size_of};
use crate::condition::{Certainty, Condition};
use crate::evidence::{Case, Evidence};
use crate::finding::{Finding, Site};
use crate::open_neutral::supply_reads_whole;
use crate::pattern::Pattern;
use dwelling::{BoxIndex, CircuitIndex, CircuitTree};

/// The over-voltages of a dwelling, and the open shared neutrals behind them.
pub(crate) fn find(case: &Case) -> Vec<Finding> {
    let mut found: Vec<Finding> = case.trees.iter().filter_map(|tree| open_shared_neutral(case, tree)).collect();
    let explained: Vec<CircuitIndex> = found.iter().filter_map(|finding| circuit_of(finding.at)).collect();
    for (index, evidence) in case.boxes().filter(|(_, evidence)| evidence.looks(Pattern::OverVoltage)) {
        let circuit = case.dwelling.device_box(index).circuit;
        let tree = case.trees.iter().find(|tree| circuit.is_some_and(|circuit| tree.circuits.contains(&circuit)));
        let known = tree.is_some_and(|tree| tree.circuits.iter().any(|circuit| explained.contains(circuit)));
        found.push(over(case, index, evidence, known));
    }
    found
}

fn circuit_of(site: Site) -> Option<CircuitIndex> {
    match site {
        Site::Circuit(circuit) => Some(circuit),
        Site::Panel(_) | Site::Box(_) => None,
    }
}

fn over(case: &Case, index: BoxIndex, evidence: &Evidence, known: bool) -> Finding {
    let finding = Finding::new(
        Site::Box(index),
        Condition::OverVoltage,
        Certainty::Shown,
        "More than line voltage stands at this opening: unplug everything and switch the circuit off before going on.",
    )
    .danger()
    .because(evidence.words(|_, pattern| pattern == Pattern::OverVoltage));
    if known {
        return finding;
    }
    finding
        .unless(Condition::OpenNeutral, "a shared neutral open upstream: the other leg then reads as much too low")
        .next("with everything unplugged, read both legs of the circuit at the panel", case.here_and_before(index))
}

/// The legs of a multiwire set read as far above line voltage as below it.
///
/// # Formula
/// Two loads in series on 240 V: the legs add up to 240 V, and each is off the half by as much.
fn open_shared_neutral(case: &Case, tree: &CircuitTree) -> Option<Finding> {
    if !tree.is_multiwire() {
        return None;
    }
    let on = |circuit: CircuitIndex| {
        case.boxes().filter(move |(index, _)| case.dwelling.device_box(*index).circuit == Some(circuit)).flat_map(
            |(index, evidence)| {
                evidence.taken.iter().filter_map(move |(r, _)| r.hot_neutral.map(|volts| (index, size_of(volts))))
            },
        )
    };
    let (first, second) = (*tree.circuits.first()?, *tree.circuits.get(1)?);
    let both = BOTH_LEGS_FROM.as_millivolts()..=BOTH_LEGS_UP_TO.as_millivolts();
    let apart = 2 * LEGS_APART_FROM.as_millivolts();
    let seconds: Vec<(BoxIndex, i64)> = on(second).collect();
    let (one, other) = on(first)
        .flat_map(|one| seconds.iter().map(move |other| (one, *other)))
        .filter(|(one, other)| both.contains(&one.1.saturating_add(other.1)) && one.1.abs_diff(other.1) >= apart as u64)
        .max_by_key(|(one, other)| one.1.abs_diff(other.1))?;
    let whole = case.upstream(one.0).into_iter().find(|at| supply_reads_whole(case.evidence(*at)));
    let boxes: Vec<BoxIndex> = [Some(one.0), Some(other.0), whole].into_iter().flatten().collect();
    let volts = |millivolts| electrical::Volts::millivolts(millivolts);
    Some(
        Finding::new(
            Site::Circuit(first),
            Condition::OpenNeutral,
            Certainty::Likely,
            "The shared neutral of this multiwire set is open: one leg has too much voltage and the other too little, and \
             appliances burn. Switch both circuits off at once.",
        )
        .danger()
        .because([format!(
            "`{}` reads {} and `{}`, on the other leg, reads {}: together {}",
            case.id(one.0),
            volts(one.1),
            case.id(other.0),
            volts(other.1),
            volts(one.1.saturating_add(other.1)),
        )])
        .unless(Condition::PoorNeutral, "a poor joint does the same in a smaller measure; a break at the service does it house-wide")
        .next("switch both legs off, then open the first box where they split and look at the neutral joint", boxes),
    )
}
