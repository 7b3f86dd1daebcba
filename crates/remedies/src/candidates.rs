//! The candidates of an opening: everything that could be done there, lawful by the rulebook and fitting the box.

use crate::candidate::{AFCI, Candidate, GFCI, Shortfall, Step};
use crate::device::{BoxWork, Device};
use crate::facts::{Facts, OpeningFacts, breaker_to_fit, open_to};
use crate::repairs::{parts_a_ground, repairs_at, work_at};
use crate::room_in_box::{GRADES, Room, room_after};
use dwelling::{GroundFact, Holding, Want};
use estimate::{Line, Material, PriceBook, Task};
use optimizer::{Marks, SupplyNeed};
use rulebook::{DeviceSpace, Duty, Judgement, Marking, Need, Remedy};
use std::cell::OnceCell;

/// The largest circuit whose receptacles are planned: protective ones are made for 15 and 20 A only.
const MOST_AMPERES: u32 = 20;

/// Every candidate of one opening; never empty, since leaving it unresolved is always among them.
#[must_use]
pub fn candidates(facts: &Facts, book: &PriceBook, at: &OpeningFacts, links_here: u32) -> Vec<Candidate> {
    let repairs = repairs_at(facts, at.index);
    let mut list =
        Candidates { facts, book, at, links_here, repairs, with_a_strap: OnceCell::new(), found: Vec::new() };
    if !at.as_found.holds.is_receptacle() {
        list.not_a_receptacle();
    } else if list.is_above_what_is_planned() {
        list.only_leave();
    } else if facts.dwelling.device_box(at.index).do_not_disturb {
        list.untouchable();
    } else {
        list.without_ground();
        if at.supplied {
            list.with_ground_there()
        } else {
            list.with_ground_brought()
        }
        list.taken_out();
    }
    list.unresolved();
    list.found
}

struct Candidates<'a> {
    facts: &'a Facts<'a>,
    book: &'a PriceBook,
    at: &'a OpeningFacts,
    links_here: u32,
    /// What is put right whatever else is done.
    repairs: Vec<Task>,
    /// The boxes that can hold a device on a strap: the same for every device.
    with_a_strap: OnceCell<Vec<(BoxWork, Room)>>,
    found: Vec<Candidate>,
}

/// What a candidate is made of before its box is looked at.
struct Draft {
    step: Step,
    device: Device,
    supply: SupplyNeed,
    needs: Marks,
    gives: Marks,
    markings: &'static [Marking],
    lines: Vec<Line>,
}

const NO_GROUND: &[Marking] = &[Marking::NoEquipmentGround];
const PROTECTED: &[Marking] = &[Marking::GfciProtected, Marking::NoEquipmentGround];

impl Candidates<'_> {
    fn judged(&self) -> &Judgement {
        &self.at.judged_to_plan
    }

    fn open(&self, judged: &Judgement, remedy: Remedy) -> bool {
        open_to(judged, remedy)
    }

    /// The protection that a corrected opening needs, whether its receptacle is new or stays. What is disputed or not
    /// known is planned as if it were required.
    fn duties(&self) -> Marks {
        let judged = self.judged();
        let asked =
            |duty: Duty| judged.duties.iter().any(|verdict| verdict.duty == duty && verdict.need != Need::NotRequired);
        let gfci = if asked(Duty::Gfci) { GFCI } else { Marks::NONE };
        let afci = if asked(Duty::Afci) { AFCI } else { Marks::NONE };
        gfci | afci
    }

    fn outdoors(&self) -> bool {
        let weather = |need: Need| matches!(need, Need::Required | Need::Disputed | Need::NotChecked);
        let duties = &self.judged().duties;
        duties.iter().any(|verdict| verdict.duty == Duty::WeatherResistant && weather(verdict.need))
    }

    fn needs_ground(&self) -> bool {
        let duties = &self.judged().duties;
        duties.iter().any(|verdict| verdict.duty == Duty::EquipmentGround && verdict.need == Need::Required)
    }

    fn held_marks(&self) -> Marks {
        let held = self.at.as_found.holds;
        if self.at.dead {
            return Marks::NONE;
        }
        let gfci = if Device::held_is_gfci(held) { GFCI } else { Marks::NONE };
        gfci | if Device::held_is_afci(held) { AFCI } else { Marks::NONE }
    }

    /// Whether its circuit is larger than those whose receptacles the book of prices and the devices are made for.
    fn is_above_what_is_planned(&self) -> bool {
        let opening = &self.at.as_found;
        let breaker = breaker_to_fit(opening, &self.facts.code).or(opening.breaker);
        breaker.is_some_and(|breaker| breaker.get() > MOST_AMPERES)
    }

    fn only_leave(&mut self) {
        if !self.at.supplied && self.held_marks().covers(GFCI) {
            self.mark_gfci();
        } else if self.open(self.judged(), Remedy::Leave) {
            self.leave(SupplyNeed::Any);
        }
    }

    fn not_a_receptacle(&mut self) {
        if self.at.dead {
            return;
        }
        let space = if self.at.as_found.holds.has_strap() { DeviceSpace::Strap } else { DeviceSpace::None };
        for work in [BoxWork::Keep, BoxWork::Replace, BoxWork::ReplaceWide] {
            let room = room_after(self.facts, self.at, work, space, self.links_here);
            let room = Room { fits: true, ..room };
            let ample = room.is_ample_for(self.links_here);
            let draft = self.kept(Step::Leave, SupplyNeed::Any, self.box_work(work));
            self.push_draft(work, room, draft);
            if ample || self.at.as_found.holds != Holding::Splice {
                break;
            }
        }
    }

    /// A box whose conductors must be left alone: only what needs no opening of it.
    fn untouchable(&mut self) {
        let to_be_marked = !self.at.supplied && !self.at.dead && Device::held_is_gfci(self.at.as_found.holds);
        if !to_be_marked && self.open(self.judged(), Remedy::Leave) {
            self.leave(SupplyNeed::Any);
        }
        self.mark_protected();
        if to_be_marked {
            self.mark_gfci();
        }
    }

    fn without_ground(&mut self) {
        if self.at.supplied {
            return;
        }
        let holds = self.at.as_found.holds;
        if self.open(self.judged(), Remedy::Leave) && !Device::held_is_gfci(holds) {
            let supply = if holds == Holding::TwoSlot { SupplyNeed::Any } else { SupplyNeed::Unsupplied };
            self.leave(supply);
        }
        self.mark_protected();
        self.mark_gfci();
        if self.open(self.judged(), Remedy::NongroundingReceptacle) && holds != Holding::TwoSlot {
            self.fit(Step::FitTwoSlot, Device::TwoSlot, SupplyNeed::Unsupplied, self.duties(), &[], &[]);
        }
        if self.open(self.judged(), Remedy::GfciReceptacle) && holds != Holding::SwitchAndReceptacle {
            for device in [Device::Gfci, Device::Dual] {
                let needs = self.duties() | GFCI;
                self.fit(Step::FitGfci, device, SupplyNeed::Unsupplied, needs, NO_GROUND, &[]);
            }
        }
        if self.may_be_protected_elsewhere() {
            for device in [Device::ThreeSlot, Device::Afci] {
                let needs = self.duties() | GFCI;
                self.fit(Step::FitProtected, device, SupplyNeed::Unsupplied, needs, PROTECTED, &[]);
            }
        }
    }

    fn may_be_protected_elsewhere(&self) -> bool {
        self.open(self.judged(), Remedy::DownstreamOfGfci) || self.open(self.judged(), Remedy::GfciBreaker)
    }

    fn with_ground_there(&mut self) {
        let holds = self.at.as_found.holds;
        let joined = matches!(self.at.ground, GroundFact::Connected | GroundFact::Unknown | GroundFact::Disputed);
        let sound = !self.at.dead;
        if holds == Holding::TwoSlot || (sound && joined && holds.takes_grounding_plug()) {
            self.leave(SupplyNeed::Any);
        }
        let held = self.held_marks();
        if joined && held != Marks::NONE {
            let draft = self.kept(Step::UseLoadSide, SupplyNeed::Supplied, vec![self.work(Task::SortLoadSide)]);
            self.push_draft(BoxWork::Keep, Room::untouched(), Draft { gives: held, ..draft });
        }
        if sound && self.at.ground == GroundFact::Connected && holds.takes_grounding_plug() {
            self.led_on();
        }
        let mut restoring = vec![self.work(Task::RestoreGround)];
        if self.at.ground == GroundFact::Poor {
            restoring.push(self.work(Task::TracePoorGround));
        }
        if sound && holds.takes_grounding_plug() && !joined {
            let mut lines = restoring.clone();
            lines.push(Line::Thing(Material::GroundFittings, 1));
            let draft = self.kept(Step::RestoreKept, SupplyNeed::Supplied, lines);
            let draft = Draft { needs: self.duties(), ..draft };
            self.push_draft(BoxWork::Keep, Room::untouched(), draft);
        }
        for device in [Device::ThreeSlot, Device::Gfci, Device::Afci, Device::Dual] {
            self.fit(Step::RestoreFitted, device, SupplyNeed::Supplied, self.duties(), &[], &restoring);
        }
    }

    /// The receptacle stays, and a conductor to another box is joined to the sound ground behind it.
    fn led_on(&mut self) {
        let room = room_after(self.facts, self.at, BoxWork::Keep, DeviceSpace::Strap, self.links_here);
        if room.landings.iter().any(|most| *most > 0) {
            let draft = self.kept(Step::Leave, SupplyNeed::Supplied, self.connecting());
            self.push_draft(BoxWork::Keep, room, draft);
        }
    }

    fn with_ground_brought(&mut self) {
        let holds = self.at.as_found.holds;
        if holds.takes_grounding_plug() && !self.at.dead {
            if self.facts.seen_joined(self.at.index) {
                let draft = self.kept(Step::GroundArrives, SupplyNeed::Supplied, vec![self.work(Task::LabelAndTest)]);
                let draft = Draft { needs: self.duties(), ..draft };
                self.push_draft(BoxWork::Keep, Room::untouched(), draft);
            }
            // Nobody puts the old receptacle back into a new box.
            for (work, room) in
                self.box_choices(DeviceSpace::Strap).into_iter().filter(|(work, _)| *work == BoxWork::Keep)
            {
                let draft = self.kept(Step::ConnectKept, SupplyNeed::Supplied, self.connecting());
                let draft = Draft { needs: self.duties(), ..draft };
                self.push_draft(work, room, draft);
            }
        }
        for device in [Device::ThreeSlot, Device::Gfci, Device::Afci, Device::Dual] {
            self.fit(Step::ConnectFitted, device, SupplyNeed::Supplied, self.duties(), &[], &[]);
        }
    }

    /// The receptacle goes: what is left is a box of splices, which needs no protection and no ground of its own.
    fn taken_out(&mut self) {
        if !self.open(self.judged(), Remedy::BlankCover) {
            return;
        }
        for (work, room) in self.box_choices(Device::Blank.space()) {
            let mut lines = self.box_work(work);
            lines.extend([Line::Thing(Material::BlankCover, 1), self.work(Task::TakeOut)]);
            self.add_splices(&mut lines);
            let draft = self.kept(Step::TakeOut, SupplyNeed::Any, lines);
            self.push_draft(work, room, Draft { device: Device::Blank, ..draft });
        }
    }

    fn unresolved(&mut self) {
        let draft = self.kept(Step::Unresolved, SupplyNeed::Any, Vec::new());
        let room = Room { landings: vec![u32::MAX; GRADES.len()], ..Room::untouched() };
        self.push_draft(BoxWork::Keep, room, draft);
    }

    fn leave(&mut self, supply: SupplyNeed) {
        let draft = self.kept(Step::Leave, supply, Vec::new());
        self.push_draft(BoxWork::Keep, Room::untouched(), draft);
    }

    fn mark_protected(&mut self) {
        let holds = self.at.as_found.holds;
        let open = holds.takes_grounding_plug() && !Device::held_is_gfci(holds) && !self.at.supplied;
        if !open || !self.may_be_protected_elsewhere() {
            return;
        }
        let draft = Draft {
            needs: self.duties() | GFCI,
            markings: PROTECTED,
            ..self.kept(
                Step::MarkProtected,
                SupplyNeed::Unsupplied,
                vec![Line::Thing(Material::Label, 2), Line::Thing(Material::Plate, 1), self.work(Task::LabelAndTest)],
            )
        };
        self.push_draft(BoxWork::Keep, Room::untouched(), draft);
    }

    fn mark_gfci(&mut self) {
        let held = self.held_marks();
        if !held.covers(GFCI) || !self.open(self.judged(), Remedy::Leave) {
            return;
        }
        let alone = (Marks::NONE, None);
        let feeding = (held, Some(self.work(Task::SortLoadSide)));
        let untouchable = self.facts.dwelling.device_box(self.at.index).do_not_disturb;
        for (gives, sorting) in [alone, feeding].into_iter().take(if untouchable { 1 } else { 2 }) {
            let marking = [Line::Thing(Material::Label, 1), self.work(Task::LabelAndTest)];
            let lines = marking.into_iter().chain(sorting).collect();
            let draft = self.kept(Step::MarkGfci, SupplyNeed::Unsupplied, lines);
            let draft = Draft { needs: self.duties(), gives, markings: NO_GROUND, ..draft };
            self.push_draft(BoxWork::Keep, Room::untouched(), draft);
        }
    }

    /// A device that stays.
    fn kept(&self, step: Step, supply: SupplyNeed, lines: Vec<Line>) -> Draft {
        let (needs, gives) = (Marks::NONE, Marks::NONE);
        Draft { step, device: Device::Kept, supply, needs, gives, markings: &[], lines }
    }

    /// A piece of work here, once, under the condition of its place or of the wall it is done in.
    fn work(&self, task: Task) -> Line {
        self.work_times(task, 1)
    }

    fn work_times(&self, task: Task, times: u32) -> Line {
        work_at(self.facts, self.at.index, task, times)
    }

    /// A receptacle that stays is joined to a ground.
    fn connecting(&self) -> Vec<Line> {
        vec![Line::Thing(Material::GroundFittings, 1), self.work(Task::ConnectGround), self.work(Task::LabelAndTest)]
    }

    /// A splice for each aluminium conductor in the box.
    fn add_splices(&self, lines: &mut Vec<Line>) {
        let aluminium = self.facts.aluminium_conductors(self.at.index);
        if aluminium > 0 {
            let splices = Line::Thing(Material::AluminiumSplice, aluminium);
            lines.extend([splices, self.work_times(Task::SpliceAluminium, aluminium)]);
        }
    }

    /// A new device, in every box that can hold it; protective ones once alone and once with their load side in use.
    fn fit(
        &mut self,
        step: Step,
        device: Device,
        supply: SupplyNeed,
        needs: Marks,
        markings: &'static [Marking],
        extra: &[Line],
    ) {
        let Some(thing) = device.material(self.outdoors()) else { return };
        let own = marks_of(device);
        // A protective receptacle must be readily accessible, with a ground in its box as well as without one.
        if own != Marks::NONE && self.at.as_found.readily_accessible == Some(false) {
            return;
        }
        let load_sides: &[Marks] = if own == Marks::NONE { &[Marks::NONE] } else { &[Marks::NONE, own] };
        for (work, room) in self.box_choices(device.space()) {
            for gives in load_sides {
                let mut lines = self.box_work(work);
                lines.extend([Line::Thing(thing, 1), Line::Thing(Material::Plate, 1)]);
                let labels = u32::try_from(markings.len()).unwrap_or(0);
                lines.extend((labels > 0).then_some(Line::Thing(Material::Label, labels)));
                lines.push(self.work(Task::FitDevice));
                lines.extend_from_slice(extra);
                if labels > 0 || supply == SupplyNeed::Supplied {
                    lines.push(self.work(Task::LabelAndTest));
                }
                if *gives != Marks::NONE {
                    lines.push(self.work(Task::SortLoadSide));
                }
                self.add_splices(&mut lines);
                let gives = *gives;
                let draft = Draft { step, device, supply, needs, gives, markings, lines };
                self.push_draft(work, room.clone(), draft);
            }
        }
    }

    /// The boxes that can hold a device: the old one, and larger ones where it is not ample.
    fn box_choices(&self, space: DeviceSpace) -> Vec<(BoxWork, Room)> {
        match space {
            DeviceSpace::Strap => self.with_a_strap.get_or_init(|| self.boxes_that_hold(space)).clone(),
            _ => self.boxes_that_hold(space),
        }
    }

    fn boxes_that_hold(&self, space: DeviceSpace) -> Vec<(BoxWork, Room)> {
        let mut choices = Vec::new();
        let larger: [&[BoxWork]; 3] = [&[BoxWork::Keep], &[BoxWork::Replace, BoxWork::Extend], &[BoxWork::ReplaceWide]];
        for works in larger {
            let mut ample = false;
            for work in works {
                let room = room_after(self.facts, self.at, *work, space, self.links_here);
                ample |= room.is_ample_for(self.links_here);
                if room.fits {
                    choices.push((*work, room));
                }
            }
            if ample || self.at.as_found.fill.gangs > 1 {
                break;
            }
        }
        choices
    }

    fn box_work(&self, work: BoxWork) -> Vec<Line> {
        let work = work.work();
        work.map_or(Vec::new(), |(thing, task)| vec![Line::Thing(thing, 1), self.work(task)])
    }

    fn push_draft(&mut self, box_work: BoxWork, room: Room, draft: Draft) {
        let mut lines = draft.lines;
        // What is dangerous is put right even where nothing lawful is found for the rest.
        lines.extend(self.repairs.iter().map(|task| self.work(*task)));
        if parts_a_ground(self.facts, self.at.index, draft.step) {
            lines.push(self.work(Task::PartGround));
        }
        let draft = Draft { lines: Vec::new(), ..draft };
        let kept_marks = if draft.device == Device::Kept { self.held_marks() } else { Marks::NONE };
        let candidate = Candidate {
            step: draft.step,
            device: draft.device,
            box_work,
            price: self.book.price(&lines),
            lines,
            markings: draft.markings.to_vec(),
            shortfall: self.shortfall(&draft),
            fill_unchecked: room.unchecked,
            needs: draft.needs,
            own: marks_of(draft.device) | kept_marks,
            gives: draft.gives,
            supply: draft.supply,
            landings: room.landings,
        };
        self.found.push(candidate);
    }

    fn shortfall(&self, draft: &Draft) -> Shortfall {
        let holds = self.at.as_found.holds;
        let grounded = draft.supply == SupplyNeed::Supplied
            || (draft.supply == SupplyNeed::Any && self.at.supplied && holds.takes_grounding_plug());
        let takes_pin = match draft.device {
            Device::Kept => holds.takes_grounding_plug(),
            Device::TwoSlot | Device::Blank => false,
            _ => true,
        };
        let wish_unmet = match self.facts.dwelling.device_box(self.at.index).want {
            Want::Leave => false,
            Want::ThreeSlot => !takes_pin,
            Want::Ground => !grounded,
            Want::Remove => draft.step != Step::TakeOut,
        };
        let unlawful = draft.step == Step::Unresolved;
        let receptacle = holds.is_receptacle();
        Shortfall {
            unlawful,
            equipment_without_ground: receptacle
                && draft.step != Step::TakeOut
                && self.needs_ground()
                && (unlawful || !grounded),
            wish_unmet: receptacle && (unlawful || wish_unmet),
        }
    }
}

const fn marks_of(device: Device) -> Marks {
    let gfci = if device.is_gfci() { GFCI.0 } else { 0 };
    let afci = if device.is_afci() { AFCI.0 } else { 0 };
    Marks(gfci | afci)
}
