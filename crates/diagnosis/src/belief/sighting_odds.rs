//! How likely a sighting of the ground in an opened box is, by what is true there.

use super::state::{GroundRun, Wiring};
use dwelling::{CableKind, GroundPath, GroundSeen};

/// How often a look into a box is written down wrongly, or at another box. Common practice, no source.
pub const MISSEEN: f64 = 0.004;

/// What somebody who looks into a box can find of its ground.
const KINDS: f64 = 9.0;

/// How likely a sighting is where the run to the box, its device, and any run beyond that is loose in this box are such, if
/// it is written down rightly.
///
/// Common practice, no source: a jumper in plain sight is seen nine times in ten, a loose conductor folded away eight.
#[must_use]
pub fn sighting_odds(seen: GroundSeen, cable: CableKind, run: GroundRun, wiring: Wiring, loose_beyond: bool) -> f64 {
    use GroundSeen::{
        Connected, CutOff, Jumper, Loose, MetalLoose, MetalTight, NoneSeen, NotOpened, PipeOrRod, Unconnected,
    };
    if seen == NotOpened {
        return 1.0;
    }
    let is_wire = cable.has_ground_wire() || cable.ground_path() == GroundPath::No;
    let metal = !is_wire && cable != CableKind::Unknown;
    let jumper = matches!(wiring, Wiring::NeutralJumper | Wiring::ReversedJumper);
    let loose_device = wiring == Wiring::GroundNotLanded;
    let sees_jumper = if jumper { 0.90 } else { 0.001 };
    // What is seen where no jumper is: connected, loose, not connected, cut off, none, metal tight, metal loose.
    let mut of_run = match (run, metal) {
        (GroundRun::Sound | GroundRun::LooseBefore, true) => [0.02, 0.01, 0.01, 0.0, 0.02, 0.92, 0.02],
        (GroundRun::Weak, true) => [0.01, 0.01, 0.01, 0.0, 0.02, 0.60, 0.35],
        (GroundRun::LooseHere | GroundRun::CutOffHere, true) => [0.01, 0.02, 0.02, 0.01, 0.02, 0.12, 0.80],
        (GroundRun::Absent, true) => [0.0, 0.0, 0.0, 0.0, 0.70, 0.20, 0.10],
        (GroundRun::Sound | GroundRun::LooseBefore, false) => [0.95, 0.015, 0.01, 0.002, 0.02, 0.002, 0.001],
        (GroundRun::Weak, false) => [0.75, 0.20, 0.02, 0.002, 0.02, 0.004, 0.004],
        (GroundRun::LooseHere, false) => [0.04, 0.40, 0.44, 0.02, 0.09, 0.005, 0.005],
        (GroundRun::CutOffHere, false) => [0.005, 0.01, 0.05, 0.80, 0.13, 0.0025, 0.0025],
        (GroundRun::Absent, false) => [0.005, 0.003, 0.004, 0.003, 0.98, 0.003, 0.002],
    };
    if (loose_beyond || loose_device) && matches!(run, GroundRun::Sound | GroundRun::Weak | GroundRun::LooseBefore) {
        // One loose conductor among sound ones is what gets written down, where it is seen.
        let noticed = 0.8;
        let kept = of_run.map(|odds| odds * (1.0 - noticed));
        of_run = kept;
        of_run[1] += 0.4 * noticed;
        of_run[2] += 0.4 * noticed;
    }
    let pipe = 0.005;
    let rest = (1.0 - sees_jumper) * (1.0 - pipe);
    let total: f64 = of_run.iter().sum();
    match seen {
        Jumper => sees_jumper,
        PipeOrRod => (1.0 - sees_jumper) * pipe,
        Connected => rest * of_run[0] / total,
        Loose => rest * of_run[1] / total,
        Unconnected => rest * of_run[2] / total,
        CutOff => rest * of_run[3] / total,
        NoneSeen => rest * of_run[4] / total,
        MetalTight => rest * of_run[5] / total,
        MetalLoose => rest * of_run[6] / total,
        NotOpened => 1.0,
    }
}

/// The same with what is written down wrongly.
pub(crate) fn allowing_mistakes(odds: f64) -> f64 {
    (1.0 - MISSEEN) * odds + odds_if_misseen()
}

/// How likely a sighting is, and written down wrongly.
pub(crate) const fn odds_if_misseen() -> f64 {
    MISSEEN / KINDS
}
