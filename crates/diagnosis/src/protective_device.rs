//! What test buttons said, and protective breakers that do not suit their circuit.

use crate::condition::{Certainty, Condition};
use crate::evidence::{Case, Evidence};
use crate::finding::{Finding, GroundState, Site};
use dwelling::{BoxIndex, CircuitIndex, GroundFact, Reach};

/// What the test buttons and protective breakers of a dwelling show.
pub(crate) fn find(case: &Case, ground: &[GroundState]) -> Vec<Finding> {
    let breakers = (0..case.dwelling.circuits.len()).filter_map(|circuit| single_pole(case, CircuitIndex(circuit)));
    let mut found: Vec<Finding> = breakers.collect();
    for (index, evidence) in case.boxes() {
        found.extend(own_test(index, evidence));
        found.extend(tester_button(case, index, evidence, &ground[index.0]));
    }
    found
}

fn single_pole(case: &Case, circuit: CircuitIndex) -> Option<Finding> {
    let fitted = case.dwelling.circuit(circuit).fitted.filter(|breaker| !breaker.is_two_pole())?;
    let partner = case.dwelling.partner_of(circuit).filter(|partner| *partner != circuit)?;
    Some(
        Finding::new(
            Site::Circuit(circuit),
            Condition::SharedNeutralSinglePole,
            Certainty::Shown,
            "A single-pole protective breaker cannot work on a shared neutral: it trips whenever the other leg is loaded. \
             Fit a two-pole one, or protective devices behind the split.",
        )
        .because([format!(
            "breaker fitted: {fitted}; its neutral is shared with circuit `{}`",
            case.dwelling.circuit(partner).id
        )]),
    )
}

fn own_test(index: BoxIndex, evidence: &Evidence) -> Option<Finding> {
    let last = evidence.taken.iter().rev().find_map(|(reading, _)| reading.own_test_trips)?;
    (!last).then(|| {
        Finding::new(
            Site::Box(index),
            Condition::GfciDoesNotTrip,
            Certainty::Shown,
            "The device does not open on its own test button: it protects nobody until it has been replaced or rewired.",
        )
        .danger()
        .because(["its own test button did not open it".to_owned()])
        .unless(Condition::OpenHot, "a device without power cannot trip: plug a lamp in")
        .next("plug a lamp in, press reset, then test: if the lamp stays lit, look for line and load changed over", [index])
    })
}

fn tester_button(case: &Case, index: BoxIndex, evidence: &Evidence, ground: &GroundState) -> Option<Finding> {
    let trips = evidence.taken.iter().rev().find_map(|(reading, _)| reading.tester_trips_gfci)?;
    let own = evidence.taken.iter().rev().find_map(|(reading, _)| reading.own_test_trips);
    let groundless = case.reach(index) == Reach::Isolated || ground.fact == GroundFact::None;
    match (trips, groundless) {
        (true, true) => Some(
            Finding::new(
                Site::Box(index),
                Condition::FalseGround,
                Certainty::Likely,
                "A plug-in tester opened a GFCI where no ground should be: a warning, not a pass. Something there leads to \
                 the neutral ahead of the device, or to a pipe.",
            )
            .danger()
            .because(["the tester's GFCI button opened a device at an opening without a ground".to_owned()])
            .unless(Condition::GroundByPipeOrRod, "open the box: the ground terminal leads to a pipe, a rod or metal lath")
            .next("switch the circuit off and open this box: see what the ground terminal is joined to", case.here_and_before(index)),
        ),
        (false, true) => Some(untestable(index, own)),
        (false, false) if own == Some(true) && ground.fact != GroundFact::Connected => Some(untestable(index, own)),
        (false, false) if own.is_none() => Some(
            Finding::new(
                Site::Box(index),
                Condition::GfciDoesNotTrip,
                Certainty::Possible,
                "A plug-in tester did not open the device: either no ground arrives here, or the device does not protect.",
            )
            .because(["the tester's GFCI button opened nothing".to_owned()])
            .unless(Condition::GfciTestNotPossible, "the device's own test button opens it")
            .next("plug a lamp in and press the device's own test button: that is the test that counts", [index]),
        ),
        _ => None,
    }
}

/// A plug-in tester leaks to a ground that is not there.
fn untestable(index: BoxIndex, own: Option<bool>) -> Finding {
    let finding = Finding::new(
        Site::Box(index),
        Condition::GfciTestNotPossible,
        Certainty::Shown,
        "A plug-in tester cannot open a GFCI here, since it leaks to a ground that is not there: the device's own test \
         button is the test that counts.",
    )
    .because(["the tester's GFCI button opened nothing".to_owned()]);
    match own {
        Some(true) => finding.because(["the device's own test button opened it: it works".to_owned()]),
        Some(false) => finding,
        None => finding.next("plug a lamp in and press the device's own test button: the lamp must go out", [index]),
    }
}
