//! The words that drawings use for names of the model.

use dwelling::{CircuitTree, Dwelling, Holding, Overcurrent, PanelIndex, ProtectiveBreaker, RouteKind};
use remedies::AtPanel;

/// The note beside a symbol that does not say everything by itself.
pub(crate) const fn note(holds: Holding) -> &'static str {
    match holds {
        Holding::TwoSlot => "2-slot",
        Holding::Gfci => "GFCI",
        Holding::Afci => "AFCI",
        Holding::Dual => "GFCI/AFCI",
        Holding::DeadFront => "no slots",
        Holding::Nothing => "empty",
        Holding::ThreeSlot
        | Holding::Switch
        | Holding::SwitchAndReceptacle
        | Holding::Luminaire
        | Holding::Splice
        | Holding::Unknown => "",
    }
}

/// What is brought along a route.
pub(crate) const fn route_kind(kind: RouteKind) -> &'static str {
    match kind {
        RouteKind::Egc => "EGC",
        RouteKind::NewCable => "new cable",
    }
}

/// What stands at the panel end of a circuit tree as it was found.
pub(crate) fn fitted(dwelling: &Dwelling, tree: &CircuitTree) -> String {
    let fitted = tree.circuits.iter().find_map(|circuit| dwelling.circuit(*circuit).fitted);
    fitted.map_or(String::new(), |breaker| protective(breaker).to_owned())
}

/// What a plan puts at the panel end of a circuit tree.
pub(crate) const fn at_panel(choice: AtPanel) -> &'static str {
    match choice {
        AtPanel::AsItIs => "",
        AtPanel::Breaker(breaker) => protective(breaker),
        AtPanel::DeadFrontGfci => "GFCI device beside the panel",
        AtPanel::DeadFrontDual => "GFCI/AFCI device beside the panel",
    }
}

const fn protective(breaker: ProtectiveBreaker) -> &'static str {
    match breaker {
        ProtectiveBreaker::Gfci => "GFCI breaker",
        ProtectiveBreaker::Afci => "AFCI breaker",
        ProtectiveBreaker::Dual => "GFCI/AFCI breaker",
        ProtectiveBreaker::GfciTwoPole => "two-pole GFCI breaker",
        ProtectiveBreaker::AfciTwoPole => "two-pole AFCI breaker",
        ProtectiveBreaker::DualTwoPole => "two-pole GFCI/AFCI breaker",
    }
}

/// What opens a panel's circuits.
pub(crate) fn overcurrent(dwelling: &Dwelling, panel: PanelIndex) -> &'static str {
    match dwelling.panel(panel).overcurrent {
        Some(Overcurrent::Breakers) => "breaker",
        Some(Overcurrent::Fuses) => "fuse",
        None => "breaker or fuse",
    }
}

/// A floor by its number.
pub(crate) fn floor(floor: Option<i8>) -> String {
    match floor {
        None => "Floor not stated".to_owned(),
        Some(0) => "Floor 0 (basement or ground)".to_owned(),
        Some(floor) => format!("Floor {floor}"),
    }
}
