//! The standing leakage behind each GFCI: what is plugged in and what the cables let through, against where it may trip.

use crate::row::{Amount, Asked, Check, CheckRow, SourceAnswer, SourceKind, SubjectAnswer, SubjectKind, Verdict};
use crate::state::{Gfci, GfciPlace, State};
use dwelling::{BoxIndex, CircuitIndex, GroundPath};
use electrical::formulas::gfci::CLASS_A_HOLDS_BELOW;
use electrical::formulas::leakage::{Appliance, appliance_limit, of_cable};
use electrical::{Frequency, Length, Voltage};

/// The leakage that a GFCI may see, in milliamperes.
#[derive(Clone, Debug, PartialEq)]
pub struct LeakageBudget {
    /// The GFCI, in words.
    pub gfci: String,
    /// How many appliances are plugged in behind it.
    pub appliances: usize,
    /// The most that these may leak by their standards.
    pub of_appliances: f64,
    /// The least and the most that the cables behind it let through.
    pub of_cables: (f64, f64),
    /// What keeps the sum from being all, if anything does.
    pub missing: Option<String>,
}

impl LeakageBudget {
    /// The most in all.
    #[must_use]
    pub fn most(&self) -> f64 {
        self.of_appliances + self.of_cables.1
    }
}

/// The leakage of one leg behind a GFCI.
#[derive(Clone, Copy, Default)]
struct Leg {
    appliances: usize,
    of_appliances: f64,
    of_cables: (f64, f64),
}

/// What a GFCI may see: of a device that watches both legs, the leg that leaks more, since the legs cancel in part.
#[must_use]
pub fn leakage_budget(state: &State, gfci: &Gfci) -> LeakageBudget {
    let mut legs: Vec<(Option<CircuitIndex>, Leg)> = Vec::new();
    let mut unmeasured = Vec::new();
    for at in &gfci.behind {
        let device_box = state.dwelling.device_box(*at);
        let position = legs.iter().position(|(circuit, _)| *circuit == device_box.circuit).unwrap_or_else(|| {
            legs.push((device_box.circuit, Leg::default()));
            legs.len() - 1
        });
        let leg = &mut legs[position].1;
        leg.appliances += device_box.serves.len();
        leg.of_appliances = each_may_leak() * leg.appliances as f64;
        // The run up to a device is before it: its own capacitance is not seen.
        if gfci.at == GfciPlace::Box(*at) {
            continue;
        }
        match device_box.run.length.and_then(|length| through_cable(state, *at, length)) {
            Some((least, most)) => leg.of_cables = (leg.of_cables.0 + least, leg.of_cables.1 + most),
            None => unmeasured.push(device_box.id.clone()),
        }
    }
    let sum = |leg: &Leg| leg.of_appliances + leg.of_cables.1;
    let worst = legs.into_iter().map(|(_, leg)| leg).max_by(|one, other| sum(one).total_cmp(&sum(other)));
    let worst = worst.unwrap_or_default();
    let missing = if !gfci.complete {
        Some("find out what its load side feeds".to_owned())
    } else if unmeasured.is_empty() {
        None
    } else {
        Some(format!("find out the length of the runs to {}", unmeasured.join(", ")))
    };
    LeakageBudget {
        gfci: name(state, gfci),
        appliances: worst.appliances,
        of_appliances: worst.of_appliances,
        of_cables: worst.of_cables,
        missing,
    }
}

/// The most that one appliance on a cord may leak, in milliamperes.
fn each_may_leak() -> f64 {
    appliance_limit(Appliance::ThreeWirePortable).as_milliamperes()
}

/// What the run that feeds a box leaks, least and most: without grounded metal beside the hot conductor perhaps nothing.
fn through_cable(state: &State, at: BoxIndex, length: Length) -> Option<(f64, f64)> {
    let (least, most) = of_cable(length, Voltage::volts(120.0), Frequency::hertz(60.0)).ok()?;
    let beside_ground = state.dwelling.ground_path_to(at) == GroundPath::Yes;
    Some((if beside_ground { least.as_milliamperes() } else { 0.0 }, most.as_milliamperes()))
}

/// A GFCI in words.
fn name(state: &State, gfci: &Gfci) -> String {
    match gfci.at {
        GfciPlace::Box(at) => state.dwelling.device_box(at).id.clone(),
        GfciPlace::Panel(tree) => format!("circuit {}", circuits(state, gfci, tree).join("+")),
    }
}

fn circuits(state: &State, gfci: &Gfci, tree: usize) -> Vec<String> {
    match gfci.at {
        GfciPlace::Box(at) => state.circuits_of_box(at),
        GfciPlace::Panel(_) => state.circuit_names(&state.trees[tree].circuits),
    }
}

/// The check of every GFCI.
pub(super) fn rows(state: &State) -> Vec<CheckRow> {
    state.gfcis.iter().map(|gfci| row(state, gfci)).collect()
}

fn row(state: &State, gfci: &Gfci) -> CheckRow {
    let budget = leakage_budget(state, gfci);
    let tree = match gfci.at {
        GfciPlace::Panel(tree) => tree,
        GfciPlace::Box(_) => 0,
    };
    let circuits = circuits(state, gfci, tree);
    let asked = Asked {
        check: Check::Leakage,
        subject: SubjectAnswer { kind: SubjectKind::Gfci, id: budget.gfci.clone() },
        circuits,
        source: SourceAnswer::other(
            SourceKind::Standard,
            "UL 943, Class A: no trip below 4 mA; 0.5 mA an appliance by UL 101; 50 to 150 pF/m of cable assumed",
            true,
        ),
    };
    let holds_below = CLASS_A_HOLDS_BELOW.as_milliamperes();
    let (least, most) = (budget.of_cables.0, budget.most());
    let plugged_in = match budget.appliances {
        0 => "nothing is plugged in".to_owned(),
        1 => format!("1 appliance may leak {:.1} mA", budget.of_appliances),
        many => format!("{many} appliances may leak {:.1} mA", budget.of_appliances),
    };
    let what = match budget.of_cables {
        (_, most) if most < 0.005 => format!("{plugged_in}, the cables less than 0.01 mA"),
        (least, most) => format!("{plugged_in}, the cables {least:.2} to {most:.2} mA"),
    };
    if let Some(missing) = budget.missing.as_ref().filter(|_| most < holds_below) {
        return asked.not_checked(format!("{missing}: {what} so far"));
    }
    let verdict = if most < holds_below { Verdict::Ok } else { Verdict::Advice };
    let says = match verdict {
        Verdict::Ok => what,
        _ => format!("{what}: it may trip without a fault"),
    };
    let amounts = (
        Amount::between(least, most, "mA", format!("up to {most:.2} mA")),
        Amount::at_most(holds_below, "mA", "below 4 mA"),
    );
    asked.checked(verdict, amounts, Some(holds_below - most), says)
}
