//! What is believed, in the few words that a drawing has room for. Nothing is ever called certain.

use diagnosis::belief::{Advice, BoxBelief, Claim, Ground, GroundRun, RunBelief, SURE_ENOUGH, Test, Wiring};
use dwelling::{CableKind, Dwelling};

/// From this share on, a state is named.
pub(crate) const NAMED: f64 = 0.10;
/// From this share on, a ground that can hurt someone is named.
const DANGER_NAMED: f64 = 0.05;

/// A share in percent: never all, and never nothing where there is something.
pub(crate) fn percent(share: f64) -> String {
    if share >= 0.995 {
        ">99 %".to_owned()
    } else if share <= 0.0 {
        "0 %".to_owned()
    } else if share < 0.005 {
        "<1 %".to_owned()
    } else {
        format!("{:.0} %", share * 100.0)
    }
}

/// Named shares, the greatest first.
fn listed(mut shares: Vec<(&str, f64)>) -> String {
    shares.sort_by(|left, right| right.1.total_cmp(&left.1));
    let words: Vec<String> = shares.iter().map(|(name, share)| format!("{name} {}", percent(*share))).collect();
    words.join(", ")
}

/// The states of a box's ground that are worth naming, the likeliest always.
pub(crate) fn ground_shares(belief: &BoxBelief) -> String {
    let (likeliest, _) = belief.likeliest();
    let named = |ground: &Ground, share: f64| match ground {
        _ if *ground == likeliest => true,
        Ground::False | Ground::Live => share >= DANGER_NAMED,
        _ => share >= NAMED,
    };
    let shares = Ground::ALL.iter().zip(belief.ground).filter(|(ground, share)| named(ground, *share));
    listed(shares.map(|(ground, share)| (ground.name(), share)).collect())
}

/// Whether that may be said, and if not, why not.
pub(crate) fn verdict(belief: &BoxBelief) -> &'static str {
    if belief.verdict().is_some() {
        "may be said"
    } else if belief.is_contradicted() {
        "not to be said: what was found here clashes"
    } else if belief.likeliest().1 >= SURE_ENOUGH {
        "not to be said: no test under load has shown it"
    } else {
        "not sure enough to be said"
    }
}

/// Every state of a box's ground with its share, for those who point at it and for those who listen.
pub(crate) fn every_share(belief: &BoxBelief) -> String {
    let shares = Ground::ALL.iter().zip(belief.ground);
    let words: Vec<String> = shares.map(|(ground, share)| format!("{} {}", ground.name(), percent(share))).collect();
    words.join(", ")
}

/// Whether someone can be hurt here, as likely as not worth looking at.
pub(crate) fn is_dangerous(belief: &BoxBelief) -> bool {
    let falsely = belief.ground[Ground::False as usize] + belief.ground[Ground::Live as usize];
    falsely >= NAMED || belief.reversed() >= 0.5
}

/// What is likely wrong with how the device is wired.
pub(crate) fn wiring_shares(belief: &BoxBelief) -> String {
    let of = |wiring: Wiring| belief.wiring[wiring as usize];
    let shares = [
        ("hot and neutral reversed", belief.reversed()),
        ("reversed with a jumper to ground", of(Wiring::ReversedJumper)),
        ("hot and ground reversed", of(Wiring::HotGroundReversed)),
        ("ground arrives, not landed", of(Wiring::GroundNotLanded)),
        ("jumper from neutral to ground", of(Wiring::NeutralJumper)),
    ];
    listed(shares.into_iter().filter(|(_, share)| *share >= NAMED).collect())
}

/// The likeliest state of a run's ground.
pub(crate) fn likeliest_run(run: &RunBelief) -> GroundRun {
    let states = GroundRun::ALL.iter().copied().zip(run.ground);
    states.fold((GroundRun::Absent, 0.0), |best, one| if one.1 > best.1 { one } else { best }).0
}

/// A state of a run's ground, after the word ground.
const fn run_ground(state: GroundRun) -> &'static str {
    match state {
        GroundRun::Sound => "sound",
        GroundRun::Weak => "of high resistance",
        GroundRun::LooseHere => "loose here",
        GroundRun::CutOffHere => "cut off here",
        GroundRun::LooseBefore => "loose in the box before",
        GroundRun::Absent => "absent",
    }
}

/// What is believed of a run: its ground, and its hot conductor and neutral where something may be wrong with them.
pub(crate) fn run_shares(run: &RunBelief) -> String {
    let likeliest = likeliest_run(run);
    let named = |(state, share): &(&GroundRun, f64)| **state == likeliest || *share >= NAMED;
    let ground = GroundRun::ALL.iter().zip(run.ground).filter(named);
    let mut words = format!("ground {}", listed(ground.map(|(state, share)| (run_ground(*state), share)).collect()));
    for (name, shares) in [("neutral", run.neutral), ("hot", run.hot)] {
        let wrong = [("open", shares[2]), ("of high resistance", shares[1])];
        let wrong: Vec<_> = wrong.into_iter().filter(|(_, share)| *share >= NAMED).collect();
        if !wrong.is_empty() {
            words.push_str(&format!("; {name} {}", listed(wrong)));
        }
    }
    words
}

/// Whether the hot conductor or the neutral of a run is likely bad.
pub(crate) fn bad_conductors(run: &RunBelief) -> Option<&'static str> {
    match (1.0 - run.hot[0] >= NAMED, 1.0 - run.neutral[0] >= NAMED) {
        (true, true) => Some("H N"),
        (true, false) => Some("H"),
        (false, true) => Some("N"),
        (false, false) => None,
    }
}

/// A wiring method.
pub(crate) const fn cable(kind: CableKind) -> &'static str {
    match kind {
        CableKind::NmTwoWire => "NM two-wire",
        CableKind::NmWithGround => "NM with ground",
        CableKind::NmReducedGround => "NM with thin ground",
        CableKind::KnobAndTube => "knob-and-tube",
        CableKind::ArmoredWithStrip => "armored with strip",
        CableKind::ArmoredNoStrip => "armored, no strip",
        CableKind::ArmoredUnknown => "armored, strip not looked for",
        CableKind::MetalCladWithGround => "metal-clad with ground",
        CableKind::MetalConduit => "metal conduit",
        CableKind::FlexibleMetalConduit => "flexible metal conduit",
        CableKind::SurfaceMetalRaceway => "surface metal raceway",
        CableKind::NonmetallicConduit => "nonmetallic conduit",
        CableKind::Unknown => "wiring method not seen",
    }
}

/// What was found or recorded, and where.
pub(crate) fn claim(dwelling: &Dwelling, claim: Claim) -> String {
    match claim {
        Claim::Reading { at, set: 0 } => format!("the reading at {}", dwelling.device_box(at).id),
        Claim::Reading { at, set } => format!("reading {} at {}", set + 1, dwelling.device_box(at).id),
        Claim::Sighting { at } => format!("what was seen in {}", dwelling.device_box(at).id),
        Claim::Cable { at } => format!("the wiring method recorded to {}", dwelling.device_box(at).id),
    }
}

/// A test as it is asked for, with its minutes and the minutes of acting wrongly that it is expected to save.
pub(crate) fn test(advice: &Advice) -> String {
    let what = match advice.test {
        Test::Pairs => "read all three pairs, low-impedance meter",
        Test::UnderLoad => "read all three pairs under a heavy load",
        Test::ToEarth => "read hot, neutral and ground each to earth",
        Test::Impedance => "measure the ground's impedance under load",
        Test::OpenBox => "open it, the circuit off and proved dead",
    };
    format!("{what}: {:.0} min, worth {:.0}", advice.minutes, advice.worth)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_ever_called_certain() {
        assert_eq!([1.0, 0.994, 0.5, 0.004, 0.0].map(percent), [">99 %", "99 %", "50 %", "<1 %", "0 %"]);
    }
}
