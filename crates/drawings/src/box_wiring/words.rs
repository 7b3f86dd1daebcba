//! The words of a wiring drawing.

use super::value::{BoxWiring, CablePart, Carries, FarEnd, Side, WiredCable};
use dwelling::CableKind;
use remedies::BoxWork;

/// A box by what it is made of.
pub(super) const fn body(metal: Option<bool>) -> &'static str {
    match metal {
        Some(true) => "metal box",
        Some(false) => "nonmetallic box",
        None => "nobody knows whether it is metal",
    }
}

/// A box as a plan leaves it.
pub(super) fn body_after(metal: Option<bool>, work: BoxWork) -> String {
    let kind = if metal == Some(true) { "metal" } else { "nonmetallic" };
    match work {
        BoxWork::Keep => body(metal).to_owned(),
        BoxWork::Extend => format!("{}, with a surface extension", body(metal)),
        BoxWork::Replace => format!("new 20 in³ {kind} old-work box"),
        BoxWork::ReplaceWide => format!("new two-gang {kind} old-work box"),
    }
}

/// A wiring method in the words of whoever looks at it.
pub(super) const fn kind(kind: CableKind) -> &'static str {
    match kind {
        CableKind::NmTwoWire => "two-wire cable, no ground",
        CableKind::NmWithGround => "cable with ground",
        CableKind::NmReducedGround => "cable with a thin ground",
        CableKind::KnobAndTube => "knob and tube: single wires",
        CableKind::ArmoredWithStrip => "armored, bonding strip",
        CableKind::ArmoredNoStrip => "armored: armor is no ground",
        CableKind::ArmoredUnknown => "armored: strip not looked for",
        CableKind::MetalCladWithGround => "metal-clad with ground",
        CableKind::MetalConduit => "in metal conduit",
        CableKind::FlexibleMetalConduit => "in flexible metal conduit",
        CableKind::SurfaceMetalRaceway => "in surface metal raceway",
        CableKind::NonmetallicConduit => "in nonmetallic conduit",
        CableKind::Unknown => "cable not seen",
    }
}

/// What stands above a cable: its part and where it leads, then what it is.
pub(super) fn above_cable(cable: &WiredCable, protective: bool) -> (String, Vec<String>) {
    let name = cable.to.as_deref();
    let to = |preposition: &str, otherwise: &str| match (cable.far_end, name) {
        (FarEnd::Panel, Some(name)) => format!("{preposition} panel {name}"),
        (_, Some(name)) => format!("{preposition} {name}"),
        (_, None) => otherwise.to_owned(),
    };
    let head = match cable.part {
        CablePart::Line if protective => format!("LINE {}", to("from", "from the panel side")),
        CablePart::Line => to("from", "from the panel side"),
        CablePart::Onward => to("on to", "on to what follows"),
        CablePart::Load => format!("LOAD {}", to("to", "to what it protects")),
        CablePart::Ground => format!("EGC {}", to("from", "that is brought")),
        CablePart::GroundOnward => format!("EGC {}", to("on to", "that goes on")),
        CablePart::Abandoned => to("OLD run,", "OLD run"),
        CablePart::Unknown => "leads where?".to_owned(),
    };
    let mut what = vec![cable.kind.map_or("green or bare", kind).to_owned()];
    let metal = if cable.aluminium { "aluminium" } else { "" };
    let size: Vec<&str> = cable.size.as_deref().into_iter().chain([metal]).filter(|part| !part.is_empty()).collect();
    if !size.is_empty() {
        what.push(size.join(", "));
    }
    (head, what)
}

/// The letters at a conductor of a cable.
pub(super) fn letter(carries: Carries, cable: Option<&WiredCable>) -> &'static str {
    let is_metal = cable.and_then(|cable| cable.kind).is_some_and(|kind| !kind.has_ground_wire());
    match carries {
        Carries::Ground if is_metal => "M",
        Carries::Hot => "H",
        Carries::OtherHot => "H2",
        Carries::Neutral => "N",
        Carries::Ground => "G",
    }
}

/// What a net is called beside its rail.
pub(super) const fn rail(carries: Carries, behind_load: bool) -> &'static str {
    match (carries, behind_load) {
        (Carries::Hot, false) => "hot",
        (Carries::Hot, true) => "hot, load",
        (Carries::OtherHot, _) => "other hot",
        (Carries::Neutral, false) => "neutral",
        (Carries::Neutral, true) => "neutral, load",
        (Carries::Ground, _) => "ground",
    }
}

/// The colour of a terminal screw.
pub(super) const fn screw(carries: Carries) -> &'static str {
    match carries {
        Carries::Hot | Carries::OtherHot => "brass",
        Carries::Neutral => "silver",
        Carries::Ground => "green",
    }
}

/// A pair of terminals.
pub(super) const fn pair(side: Side) -> &'static str {
    match side {
        Side::Only => "",
        Side::Line => "LINE",
        Side::Load => "LOAD",
    }
}

/// How conductors are told apart that do not tell it themselves.
pub(super) fn how_to_tell_apart(cables: &[WiredCable]) -> Option<&'static str> {
    let old = |kind: CableKind| {
        matches!(
            kind,
            CableKind::KnobAndTube
                | CableKind::ArmoredNoStrip
                | CableKind::ArmoredUnknown
                | CableKind::ArmoredWithStrip
                | CableKind::Unknown
        )
    };
    let single = |kind: CableKind| {
        matches!(
            kind,
            CableKind::MetalConduit
                | CableKind::FlexibleMetalConduit
                | CableKind::SurfaceMetalRaceway
                | CableKind::NonmetallicConduit
        )
    };
    let kept = || cables.iter().filter(|cable| cable.part != CablePart::Abandoned).filter_map(|cable| cable.kind);
    if kept().any(|kind| kind == CableKind::KnobAndTube) {
        Some("Both wires look alike: prove which is hot, and mark the neutral's end white.")
    } else if kept().any(old) || kept().any(single) {
        Some("Colours may have faded: prove which is hot; mark a neutral that is not white or grey white at its end.")
    } else {
        None
    }
}

/// The whole drawing in a sentence or a few, for those who hear it read.
pub(super) fn said(wiring: &BoxWiring) -> String {
    let mut parts = vec![match &wiring.device {
        Some(device) => format!("{}, {device}", wiring.body),
        None => wiring.body.clone(),
    }];
    let cable = |position: usize| wiring.cables.get(position).map(|cable| above_cable(cable, wiring.protective).0);
    for joint in &wiring.joints {
        let ends: Vec<String> = joint.ends.iter().map(|end| end_in_words(end, &cable)).collect();
        let how = match joint.state {
            super::value::JointState::Planned => "join",
            super::value::JointState::Found => "joined",
            super::value::JointState::NotSeen => "joined, not seen how",
            super::value::JointState::Loose => "joined loosely",
            super::value::JointState::TakeOut => "take out the jumper between",
        };
        parts.push(format!("{}: {how} {}", rail(joint.carries, joint.behind_load), ends.join(", ")));
    }
    for open in &wiring.open_ends {
        parts.push(format!("{}: {}", end_in_words(&open.end, &cable), because(open.because)));
    }
    if let (Some(own), Some(other)) = (&wiring.circuit, &wiring.other_circuit) {
        parts.push(format!("Hot is circuit {own}, the other hot is circuit {other}"));
    }
    if !wiring.markings.is_empty() {
        let words: Vec<String> = wiring.markings.iter().map(|words| format!("“{words}”")).collect();
        parts.push(format!("mark {}", words.join(" and ")));
    }
    parts.extend(wiring.cautions.iter().chain(&wiring.notes).map(|words| words.trim_end_matches('.').to_owned()));
    parts.join(". ") + "."
}

/// Why an end is open.
pub(super) const fn because(because: super::value::OpenBecause) -> &'static str {
    use super::value::OpenBecause::{Capped, CutOff, FindOut, Loose, Nothing};
    match because {
        Capped => "capped",
        FindOut => "find out",
        Loose => "loose",
        CutOff => "cut off",
        Nothing => "empty",
    }
}

fn end_in_words(end: &super::value::End, cable: &impl Fn(usize) -> Option<String>) -> String {
    use super::value::EndKind;
    match end.kind {
        EndKind::Conductor => {
            let of = end.cable.and_then(cable).unwrap_or_default();
            format!("{} of the cable {of}", rail(end.carries, false))
        }
        EndKind::Terminal => {
            let side = end.side.map_or("", pair);
            let space = if side.is_empty() { "" } else { " " };
            format!("the {side}{space}{} terminal", screw(end.carries))
        }
        EndKind::BoxMetal => "the metal box".to_owned(),
        EndKind::PipeOrRod => "a pipe or rod".to_owned(),
    }
}
