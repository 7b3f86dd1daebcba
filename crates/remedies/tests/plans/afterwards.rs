//! The dwelling as it stands once a plan is carried out, worked out from the plan's steps and the survey alone.

use dwelling::*;
use remedies::{AtPanel, Device, Planned, WayEnd};
use rulebook::tables::egc_size::egc_size;

pub const GFCI: u8 = 1;
pub const AFCI: u8 = 2;

/// The sizes a planned ground comes in, by grade.
pub const SIZES: [electrical::Gauge; 3] =
    [electrical::Gauge::AWG_14, electrical::Gauge::AWG_12, electrical::Gauge::AWG_10];

/// A route as bought: which way its ground flows and how thick it is.
pub struct Flow<'a> {
    pub route: &'a Route,
    pub from: RouteEnd,
    pub to: RouteEnd,
    pub size: electrical::Gauge,
}

/// A dwelling after its plan.
pub struct Afterwards<'a> {
    pub plan: &'a Planned<'a>,
    pub dwelling: &'a Dwelling,
    pub groups: BondedGroups,
    pub diagnosis: diagnosis::Diagnosis,
    pub flows: Vec<Flow<'a>>,
    grounded: Vec<bool>,
}

impl<'a> Afterwards<'a> {
    pub fn of(plan: &'a Planned<'a>) -> Self {
        let dwelling = plan.facts.dwelling;
        let groups = BondedGroups::of(dwelling);
        let diagnosis = diagnosis::diagnose(dwelling);
        let flows: Vec<Flow> = plan
            .solution
            .links
            .iter()
            .map(|chosen| {
                let (WayEnd::At(from), WayEnd::At(to)) = plan.flow_of(chosen) else { panic!("no junction is drawn") };
                let Some(stated) = plan.bought(chosen).stated() else { panic!("nothing is drawn") };
                Flow { route: &dwelling.routes[stated], from, to, size: SIZES[chosen.grade] }
            })
            .collect();
        let mut after = Self { plan, dwelling, groups, diagnosis, flows, grounded: Vec::new() };
        after.grounded = (0..after.groups.groups.len()).map(|group| after.had_ground(group)).collect();
        let mut changed = true;
        while std::mem::take(&mut changed) {
            for at in 0..after.flows.len() {
                let from = after.has_ground(after.flows[at].from);
                if let RouteEnd::Box(to) = after.flows[at].to {
                    let group = after.groups.index_of(to);
                    changed |= from && !after.grounded[group];
                    after.grounded[group] |= from;
                }
            }
        }
        after
    }

    /// Whether a group has a ground before any work.
    pub fn had_ground(&self, group: usize) -> bool {
        let group = &self.groups.groups[group];
        let fact = |at: &BoxIndex| self.diagnosis.ground[at.0].fact;
        matches!(group.reach, Reach::Panel | Reach::Disputed)
            || group.members.iter().any(|at| matches!(fact(at), GroundFact::Connected | GroundFact::Poor))
    }

    pub fn had_ground_at(&self, at: BoxIndex) -> bool {
        self.had_ground(self.groups.index_of(at))
    }

    pub fn is_grounded(&self, at: BoxIndex) -> bool {
        self.grounded[self.groups.index_of(at)]
    }

    fn has_ground(&self, end: RouteEnd) -> bool {
        match end {
            RouteEnd::Box(at) => self.is_grounded(at),
            _ => true,
        }
    }

    /// The box that feeds a box afterwards; nothing for a panel or the unknown.
    pub fn fed_by(&self, at: BoxIndex) -> Option<BoxIndex> {
        if let Some(route) = self.moved(at) {
            return match route.from {
                RouteEnd::Box(from) => Some(from),
                _ => None,
            };
        }
        match self.dwelling.device_box(at).fed_by {
            Some(Feed::Box(parent)) => Some(parent),
            _ => None,
        }
    }

    /// The new cable that feeds a box from another place than before.
    pub fn moved(&self, at: BoxIndex) -> Option<&Route> {
        let old = self.dwelling.device_box(at).fed_by.map(|feed| match feed {
            Feed::Box(parent) => RouteEnd::Box(parent),
            Feed::Panel(panel) => RouteEnd::Panel(panel),
        });
        let mut cables = self.flows.iter().filter(|flow| flow.route.kind == RouteKind::NewCable);
        cables.find(|flow| flow.route.to == RouteEnd::Box(at) && old != Some(flow.route.from)).map(|flow| flow.route)
    }

    /// What the device that is in a box afterwards protects from.
    pub fn own_marks(&self, at: BoxIndex) -> u8 {
        match (self.plan.chosen(at).device, self.dwelling.device_box(at).holds) {
            (Device::Gfci, _) | (Device::Kept, Holding::Gfci) => GFCI,
            (Device::Afci, _) | (Device::Kept, Holding::Afci) => AFCI,
            (Device::Dual, _) | (Device::Kept, Holding::Dual) => GFCI | AFCI,
            _ => 0,
        }
    }

    /// What protects a box from upstream.
    pub fn marks_from_upstream(&self, at: BoxIndex) -> u8 {
        let mut marks = 0;
        let mut below = at;
        while let Some(parent) = self.fed_by(below) {
            if self.plan.behind_load(parent).contains(&below) {
                marks |= self.own_marks(parent);
            }
            below = parent;
        }
        marks | self.plan.facts.at(at).tree.map_or(0, |tree| self.marks_at_panel(tree))
    }

    fn marks_at_panel(&self, tree: usize) -> u8 {
        let of = |breaker: ProtectiveBreaker| {
            let pole_fits = breaker.is_two_pole() == self.plan.facts.trees[tree].is_multiwire();
            if pole_fits { u8::from(breaker.is_gfci()) * GFCI + u8::from(breaker.is_afci()) * AFCI } else { 0 }
        };
        match self.plan.chosen_at_panel(tree).choice {
            AtPanel::DeadFrontGfci => GFCI,
            AtPanel::DeadFrontDual => GFCI | AFCI,
            AtPanel::Breaker(breaker) => of(breaker),
            AtPanel::AsItIs => {
                let circuits = &self.plan.facts.trees[tree].circuits;
                circuits.iter().map(|at| self.dwelling.circuit(*at).fitted.map_or(0, of)).fold(3, |all, one| all & one)
            }
        }
    }

    /// Whether what is in a box afterwards takes a plug with a grounding pin.
    pub fn takes_pin(&self, at: BoxIndex) -> bool {
        match self.plan.chosen(at).device {
            Device::Kept => self.dwelling.device_box(at).holds.takes_grounding_plug(),
            Device::TwoSlot | Device::Blank => false,
            _ => true,
        }
    }

    /// The routes that end in a box, and the largest size of them.
    pub fn landings(&self, at: BoxIndex) -> (u32, electrical::Gauge) {
        let ending = self.flows.iter().filter(|flow| [flow.from, flow.to].contains(&RouteEnd::Box(at)));
        ending.fold((0, SIZES[0]), |(count, size), flow| (count + 1, size.max(flow.size)))
    }

    /// The boxes that a route grounds, directly or further on.
    pub fn beyond(&self, flow: &Flow) -> Vec<BoxIndex> {
        let RouteEnd::Box(to) = flow.to else { return Vec::new() };
        let group = self.groups.index_of(to);
        let mut found = self.groups.groups[group].members.clone();
        for next in &self.flows {
            if matches!(next.from, RouteEnd::Box(at) if self.groups.index_of(at) == group) {
                found.extend(self.beyond(next));
            }
        }
        found
    }

    /// What is unlawful about where a bought route takes its ground from, or about its size.
    pub fn faults_of_flow(&self, flow: &Flow) -> Vec<String> {
        let mut faults = Vec::new();
        let beyond = self.beyond(flow);
        let panel_of = |at: BoxIndex| self.dwelling.circuit_of(at).map(|circuit| circuit.panel);
        let only_from = |panel| beyond.iter().all(|at| panel_of(*at).is_none_or(|of| of == panel));
        let lawful = match flow.from {
            RouteEnd::Panel(panel) => only_from(panel) && self.dwelling.panel(panel).ground_bar != Some(false),
            RouteEnd::Source(source) => {
                let source = self.dwelling.source(source);
                let near = source.from_entry.is_some_and(|along| along <= electrical::Length::feet(5));
                match source.kind {
                    SourceKind::GroundBar => source.panel.is_some_and(only_from),
                    SourceKind::ServiceNeutral => true,
                    SourceKind::WaterPipe => near && source.verified == Some(true),
                    SourceKind::ElectrodeConductor | SourceKind::ElectrodeSystem => source.verified == Some(true),
                    SourceKind::LoneRod | SourceKind::OtherMetal => false,
                }
            }
            RouteEnd::Box(from) => {
                let state = &self.diagnosis.ground[from.0];
                let shown = state.fact == GroundFact::Connected && state.sure == diagnosis::Certainty::Shown;
                let RouteEnd::Box(to) = flow.to else { return vec![format!("{} ends nowhere", flow.route.id)] };
                // Within one circuit the permission itself is in dispute: its condition says so.
                let same = self.dwelling.device_box(from).circuit == self.dwelling.device_box(to).circuit;
                panel_of(from).is_some_and(only_from) && (same || shown || !self.had_ground_at(from))
            }
        };
        if !lawful {
            faults
                .push(format!("route {} takes its ground from {:?}, which may not give it", flow.route.id, flow.from));
        }
        for at in beyond {
            let breaker = self.dwelling.circuit_of(at).and_then(|circuit| circuit.breaker);
            let copper = electrical::ConductorMetal::Copper;
            let least = breaker.and_then(|breaker| egc_size(breaker, copper, None, &self.plan.facts.code).ok());
            if least.is_some_and(|least| flow.size < least.value) {
                faults.push(format!("route {} is too thin for box {at:?}", flow.route.id));
            }
        }
        faults
    }
}
