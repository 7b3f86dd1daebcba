//! What is joined to what in a box: as it was found, and as a plan leaves it.

use super::entering::{Around, Entering};
use super::value::{
    BoxWiring, CablePart, Carries, End, EndKind, Joint, JointState, OpenBecause, OpenEnd, Side, TerminalAnswer,
};
use super::words;
use crate::shown::Moment;
use diagnosis::{Condition, Diagnosis};
use dwelling::{CircuitTree, GroundFact, GroundSeen, Holding};
use estimate::Task;
use remedies::{BoxWork, Device, Planned, Step, work_first};

/// How a box was found.
pub(crate) fn as_found(around: &Around, diagnosis: &Diagnosis) -> BoxWiring {
    let (dwelling, at) = (around.dwelling, around.at);
    let device_box = dwelling.device_box(at);
    let entering = around.as_found();
    let has = |condition| diagnosis.findings_at(at).any(|finding| finding.condition == condition);
    let mut making = Making::of(around, &entering, device_box.holds, Moment::Before);
    making.wiring.body = words::body(device_box.body.metal).to_owned();
    let reversed = has(Condition::HotNeutralReversed) || has(Condition::ReversedFalseGround);
    making.currents(JointState::NotSeen, reversed);
    making.ground_as_found(around.grounds[at.0], has(Condition::GroundByPipeOrRod));
    making.say_what_is_not_known(false);
    making.wiring
}

/// How a plan leaves a box.
pub(crate) fn as_planned(around: &Around, plan: &Planned) -> BoxWiring {
    let (dwelling, at) = (around.dwelling, around.at);
    let device_box = dwelling.device_box(at);
    let ways = plan.ways();
    let entering = around.as_planned(plan, &ways);
    let chosen = plan.chosen(at);
    let holds = chosen.device.held(device_box.holds);
    let metal = match chosen.box_work {
        BoxWork::Keep | BoxWork::Extend => device_box.body.metal,
        // Metal around wires ends in a box of metal: 314.3.
        BoxWork::Replace | BoxWork::ReplaceWide => Some(dwelling.metal_enters(at)),
    };
    let mut making = Making::of(around, &entering, holds, Moment::After);
    making.wiring.metal = metal;
    making.wiring.body = words::body_after(metal, chosen.box_work);
    if chosen.device == Device::Blank {
        making.wiring.device = Some("blank cover".to_owned());
    }
    let first = work_first(plan, at);
    let rewired =
        chosen.device != Device::Kept || chosen.step == Step::UseLoadSide || first.contains(&Task::CorrectPolarity);
    making.currents(if rewired { JointState::Planned } else { JointState::NotSeen }, false);
    if first.contains(&Task::RemoveFalseGround) {
        making.false_ground(
            around.grounds[at.0],
            plan.facts.diagnosis.findings_at(at).any(|finding| finding.condition == Condition::GroundByPipeOrRod),
        );
    }
    let parted = first.contains(&Task::PartGround);
    making.ground_as_planned(plan.is_grounded(at), parted, chosen.step);
    making.wiring.markings = chosen.markings.iter().map(|marking| marking.name().to_owned()).collect();
    making.say_what_is_not_known(rewired);
    making.wiring
}

/// A wiring in the making.
struct Making<'a> {
    around: &'a Around<'a>,
    entering: &'a [Entering],
    wiring: BoxWiring,
}

/// The terminals of what a box holds.
fn terminals(holds: Holding) -> Vec<TerminalAnswer> {
    let pair = |side| [Carries::Neutral, Carries::Hot].map(|carries| TerminalAnswer { side, carries });
    let green = |side| TerminalAnswer { side, carries: Carries::Ground };
    match holds {
        Holding::TwoSlot => pair(Side::Only).to_vec(),
        Holding::ThreeSlot | Holding::SwitchAndReceptacle => {
            [green(Side::Only)].into_iter().chain(pair(Side::Only)).collect()
        }
        Holding::Gfci | Holding::Afci | Holding::Dual | Holding::DeadFront => {
            [green(Side::Line)].into_iter().chain(pair(Side::Line)).chain(pair(Side::Load)).collect()
        }
        // How a switch or a luminaire hangs in its circuit is not surveyed: its own connections stay as they are.
        Holding::Switch | Holding::Luminaire | Holding::Splice | Holding::Nothing | Holding::Unknown => Vec::new(),
    }
}

impl<'a> Making<'a> {
    fn of(around: &'a Around<'a>, entering: &'a [Entering], holds: Holding, moment: Moment) -> Self {
        let device_box = around.dwelling.device_box(around.at);
        let circuit = around.dwelling.circuit_of(around.at).map(|circuit| circuit.id.clone());
        let other = device_box.circuit.and_then(|circuit| around.dwelling.partner_of(circuit));
        let has_other = entering.iter().any(|entering| entering.cable.conductors.contains(&Carries::OtherHot));
        let other_circuit = other.filter(|_| has_other).map(|other| around.dwelling.circuit(other).id.clone());
        let protective = matches!(holds, Holding::Gfci | Holding::Afci | Holding::Dual | Holding::DeadFront);
        let device = !matches!(holds, Holding::Splice | Holding::Nothing);
        let wiring = BoxWiring {
            box_id: device_box.id.clone(),
            moment,
            circuit,
            other_circuit,
            body: String::new(),
            metal: device_box.body.metal,
            device: device.then(|| holds.in_words().to_owned()),
            protective,
            terminals: terminals(holds),
            cables: entering.iter().map(|entering| entering.cable.clone()).collect(),
            joints: Vec::new(),
            open_ends: Vec::new(),
            markings: Vec::new(),
            cautions: Vec::new(),
            notes: Vec::new(),
        };
        Self { around, entering, wiring }
    }

    fn has_terminal(&self, side: Side, carries: Carries) -> bool {
        self.wiring.terminals.contains(&TerminalAnswer { side, carries })
    }

    /// The side of the device that the line feeds.
    fn fed_side(&self) -> Side {
        if self.wiring.protective { Side::Line } else { Side::Only }
    }

    fn green(&self) -> Option<End> {
        let side = self.fed_side();
        self.has_terminal(side, Carries::Ground).then(|| End::terminal(side, Carries::Ground))
    }

    fn conductors(&self, parts: &[CablePart], carries: Carries) -> Vec<End> {
        let cables = self.wiring.cables.iter().enumerate();
        let cables = cables.filter(|(_, cable)| parts.contains(&cable.part) && cable.conductors.contains(&carries));
        cables.map(|(position, _)| End::conductor(position, carries)).collect()
    }

    fn open(&mut self, end: End, because: OpenBecause) {
        self.wiring.open_ends.push(OpenEnd { end, because });
    }

    fn join(&mut self, carries: Carries, behind_load: bool, state: JointState, ends: Vec<End>) {
        match ends.as_slice() {
            [] => {}
            [alone] if alone.kind == EndKind::Conductor => {
                let because = if state == JointState::NotSeen { OpenBecause::FindOut } else { OpenBecause::Capped };
                self.open(*alone, because);
            }
            [alone] => self.open(*alone, OpenBecause::Nothing),
            // A cable that ends here can only end on the device.
            [_, _] if state == JointState::NotSeen && carries != Carries::Ground && self.wiring.cables.len() == 1 => {
                self.wiring.joints.push(Joint { carries, behind_load, state: JointState::Found, ends });
            }
            _ => self.wiring.joints.push(Joint { carries, behind_load, state, ends }),
        }
    }

    /// The hots and neutrals.
    fn currents(&mut self, state: JointState, reversed: bool) {
        let unknown = self.wiring.cables.iter().any(|cable| cable.part == CablePart::Unknown);
        let line_is_known = self.wiring.cables.iter().any(|cable| cable.part == CablePart::Line);
        let parts = [CablePart::Line, CablePart::Onward];
        let load = [CablePart::Load];
        let side = self.fed_side();
        for carries in [Carries::Hot, Carries::OtherHot, Carries::Neutral] {
            let on = match (reversed, carries) {
                (true, Carries::Hot) => Carries::Neutral,
                (true, Carries::Neutral) => Carries::Hot,
                _ => carries,
            };
            let mut ends = self.conductors(&parts, carries);
            let has_terminal = self.has_terminal(side, on) && carries != Carries::OtherHot;
            ends.extend(has_terminal.then(|| End::terminal(side, on)));
            if line_is_known {
                self.join(carries, false, state, ends);
            } else {
                // Which of the cables feeds the others is to be found first: nothing is drawn as joined.
                ends.into_iter().for_each(|end| self.open(end, OpenBecause::FindOut));
            }
            if self.wiring.protective && carries != Carries::OtherHot {
                let mut behind = self.conductors(&load, carries);
                if !behind.is_empty() {
                    behind.push(End::terminal(Side::Load, carries));
                    self.join(carries, true, JointState::Planned, behind);
                } else if state == JointState::Planned && line_is_known {
                    self.open(End::terminal(Side::Load, carries), OpenBecause::Nothing);
                } else {
                    self.open(End::terminal(Side::Load, carries), OpenBecause::FindOut);
                }
            }
        }
        if unknown {
            for carries in [Carries::Hot, Carries::OtherHot, Carries::Neutral, Carries::Ground] {
                for end in self.conductors(&[CablePart::Unknown], carries) {
                    self.open(end, OpenBecause::FindOut);
                }
            }
        }
        for carries in [Carries::Hot, Carries::OtherHot, Carries::Neutral, Carries::Ground] {
            for end in self.conductors(&[CablePart::Abandoned], carries) {
                self.open(end, OpenBecause::Capped);
            }
        }
    }

    /// The grounds of the cables that go through, and of those that are there and go through nowhere.
    fn grounds(&self) -> (Vec<End>, Vec<End>) {
        let parts = [CablePart::Line, CablePart::Onward, CablePart::Load, CablePart::Ground, CablePart::GroundOnward];
        let goes_through = |end: &End| {
            let run = end.cable.and_then(|cable| self.entering[cable].run_to);
            run.is_none_or(|run| self.around.run_carries_ground(run))
        };
        self.conductors(&parts, Carries::Ground).into_iter().partition(goes_through)
    }

    fn box_metal(&self) -> Option<End> {
        (self.wiring.metal == Some(true)).then(|| End::other(EndKind::BoxMetal))
    }

    fn ground_as_found(&mut self, fact: GroundFact, by_pipe: bool) {
        let seen = self.seen();
        let (through, broken) = self.grounds();
        for end in broken {
            let because = if seen == Some(GroundSeen::CutOff) { OpenBecause::CutOff } else { OpenBecause::FindOut };
            self.open(end, because);
        }
        let joined = match fact {
            GroundFact::Connected | GroundFact::Disputed | GroundFact::Poor => Some(JointState::Found),
            GroundFact::Loose if seen == Some(GroundSeen::Unconnected) => None,
            GroundFact::Loose => Some(JointState::Loose),
            GroundFact::None | GroundFact::Unknown if seen == Some(GroundSeen::Connected) => Some(JointState::Found),
            GroundFact::None | GroundFact::Unknown if !through.is_empty() => Some(JointState::NotSeen),
            _ => None,
        };
        let false_ground = fact == GroundFact::False || by_pipe;
        match joined {
            Some(state) if !false_ground => {
                let metal = self.box_metal();
                let ends: Vec<End> = through.into_iter().chain(self.green()).chain(metal).collect();
                self.join(Carries::Ground, false, state, ends);
            }
            _ => {
                let because = if seen.is_some() { OpenBecause::Loose } else { OpenBecause::FindOut };
                for end in through {
                    self.open(end, because);
                }
                if false_ground {
                    self.false_ground(fact, by_pipe);
                } else if let Some(green) = self.green() {
                    self.open(green, OpenBecause::Nothing);
                }
            }
        }
    }

    /// What makes a ground look as if it were there.
    fn false_ground(&mut self, fact: GroundFact, by_pipe: bool) {
        let Some(green) = self.green() else { return };
        let state = if self.wiring.moment == Moment::Before { JointState::Found } else { JointState::TakeOut };
        if by_pipe {
            self.wiring.joints.push(Joint {
                carries: Carries::Ground,
                behind_load: false,
                state,
                ends: vec![green, End::other(EndKind::PipeOrRod)],
            });
        }
        if fact == GroundFact::False || !by_pipe {
            let side = if self.wiring.protective { Side::Line } else { Side::Only };
            self.wiring.joints.push(Joint {
                carries: Carries::Ground,
                behind_load: false,
                state,
                ends: vec![green, End::terminal(side, Carries::Neutral)],
            });
            let words =
                "The jumper may sit behind this device, at another box, or in the cable: look before you judge.";
            self.wiring.notes.push(words.to_owned());
        }
    }

    fn ground_as_planned(&mut self, grounded: bool, parted: bool, step: Step) {
        let (through, broken) = self.grounds();
        let cut_off = self.seen() == Some(GroundSeen::CutOff);
        for end in broken {
            let arrives = end.cable.is_some_and(|cable| self.wiring.cables[cable].part == CablePart::Line);
            self.open(end, if arrives && cut_off { OpenBecause::CutOff } else { OpenBecause::FindOut });
        }
        let metal = self.box_metal();
        let green = self.green();
        if grounded {
            let as_found = matches!(step, Step::Leave | Step::GroundArrives | Step::UseLoadSide);
            let brought = self.wiring.cables.iter().any(|cable| cable.kind.is_none());
            let state = if as_found && !brought { JointState::Found } else { JointState::Planned };
            let ends = through.into_iter().chain(green).chain(metal).collect();
            self.join(Carries::Ground, false, state, ends);
            return;
        }
        if parted {
            for end in through {
                self.open(end, OpenBecause::Capped);
            }
        } else if !through.is_empty() {
            let ends = through.into_iter().chain(green).chain(metal).collect();
            self.join(Carries::Ground, false, JointState::NotSeen, ends);
            self.wiring.notes.push("The grounding conductors here lead to no ground.".to_owned());
            return;
        }
        if let Some(green) = green {
            self.open(green, OpenBecause::Nothing);
        }
    }

    fn seen(&self) -> Option<GroundSeen> {
        let found = &self.around.dwelling.device_box(self.around.at).found;
        found.iter().rev().filter_map(|reading| reading.ground).find(|seen| *seen != GroundSeen::NotOpened)
    }

    /// The cautions and notes.
    fn say_what_is_not_known(&mut self, rewired: bool) {
        let cables = &self.wiring.cables;
        let unknown = cables.iter().filter(|cable| cable.part == CablePart::Unknown).count();
        let line = cables.iter().any(|cable| cable.part == CablePart::Line);
        let assumed = cables.iter().any(|cable| cable.assumed && cable.part != CablePart::Abandoned);
        let mut cautions = Vec::new();
        if !line {
            cautions.push("Find which pair is the line first, proved dead: nobody knows which cable feeds this box.");
        } else if unknown > 0 {
            cautions.push("A cable leads nobody knows where: find out where before anything is joined to it.");
        }
        if assumed {
            cautions.push("What feeds what is assumed here: prove it before you connect.");
        }
        if cables.iter().any(|cable| cable.aluminium) {
            cautions.push("Aluminium conductors: only splices and terminals that are listed for them.");
        }
        let mut notes = Vec::new();
        if self.wiring.joints.iter().any(|joint| joint.state == JointState::NotSeen && joint.carries != Carries::Ground)
        {
            notes.push("Rings: joined, but how was not surveyed: spliced, or through the device's own terminals.");
        }
        let open_load = self
            .wiring
            .open_ends
            .iter()
            .any(|open| open.end.side == Some(Side::Load) && open.because == OpenBecause::FindOut);
        if open_load {
            notes.push("What hangs on the LOAD terminals was not surveyed.");
        }
        if rewired {
            notes.extend(words::how_to_tell_apart(cables));
            let shared = cables
                .iter()
                .any(|cable| cable.conductors.contains(&Carries::OtherHot) && cable.conductors.contains(&Carries::Hot));
            if shared {
                notes.push("The shared neutral stays spliced and pigtailed: no device holds it together.");
            }
        }
        let by_metal = |cable: &super::value::WiredCable| {
            cable.conductors.contains(&Carries::Ground) && cable.kind.is_some_and(|kind| !kind.has_ground_wire())
        };
        if cables.iter().any(by_metal) {
            notes.push("M is the metal around the wires: its connector joins it to the box.");
        }
        let metal_not_known = self.wiring.metal.is_none()
            && self
                .wiring
                .joints
                .iter()
                .any(|joint| joint.carries == Carries::Ground && joint.state != JointState::TakeOut);
        if metal_not_known {
            notes.push("Where the box is metal, join it to the ground too.");
        }
        let left_alone = match self.around.dwelling.device_box(self.around.at).holds {
            Holding::Switch | Holding::SwitchAndReceptacle => Some("The connections of the switch stay as they are."),
            Holding::Luminaire => Some("The connections of the luminaire stay as they are."),
            _ => None,
        };
        notes.extend(left_alone);
        if cables.iter().any(|cable| cable.part == CablePart::Abandoned) {
            notes.push("The old run feeds nothing: part it at both ends, cap it.");
        }
        self.wiring.cautions.extend(cautions.into_iter().map(str::to_owned));
        self.wiring.notes.extend(notes.into_iter().map(str::to_owned));
    }
}

/// The neighbours of a box in a dwelling.
pub(crate) fn around<'a>(
    dwelling: &'a dwelling::Dwelling,
    trees: &'a [CircuitTree],
    diagnosis: &Diagnosis,
    at: dwelling::BoxIndex,
) -> Around<'a> {
    let grounds = diagnosis.ground.iter().map(|state| state.fact).collect();
    Around { dwelling, at, grounds, trees }
}
