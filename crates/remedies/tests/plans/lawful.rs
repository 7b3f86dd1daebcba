//! Every opening of a plan is judged again from scratch, as it stands once the plan is carried out.

use crate::afterwards::{AFCI, Afterwards, GFCI};
use crate::generated::{Size, generated};
use dwelling::{BoxIndex, Clamps, GroundFact, Holding, Overcurrent, Want};
use electrical::Volume;
use estimate::{PriceBook, Task};
use remedies::{AtPanel, BoxWork, Device, LawAnswer, PlanStatus, Planned, Step, opening_of, plan_answer};
use rulebook::{
    DeviceSpace, Duty, FillContents, FillVerdict, Lawful, Marking, Need, Opening, Remedy, fill_with, judge,
};

const HOUSES: Size = Size { boxes: (5, 25), circuits: (1, 6), routes: (0, 8) };

fn every_plan(least: u64, mut faults_of: impl FnMut(&Afterwards) -> Vec<String>) {
    let book = PriceBook::demo();
    let mut faults: Vec<String> = Vec::new();
    for seed in 0..least {
        let (dwelling, code) = generated(1_000_000 + seed, HOUSES);
        let plan = Planned::of(&dwelling, code, &book).unwrap_or_else(|fault| panic!("seed {seed}: {fault:?}"));
        faults.extend(faults_of(&Afterwards::of(&plan)).into_iter().map(|fault| format!("seed {seed}: {fault}")));
    }
    assert!(faults.is_empty(), "{} faults\n{}", faults.len(), faults.join("\n"));
}

/// Faults of every opening that the plan does not give up.
fn at_every_receptacle(after: &Afterwards, fault: impl Fn(BoxIndex) -> Option<String>) -> Vec<String> {
    let dwelling = after.dwelling;
    let resolved = |at: &BoxIndex| {
        dwelling.device_box(*at).holds.is_receptacle() && after.plan.chosen(*at).step != Step::Unresolved
    };
    let tell = |at: BoxIndex| {
        let chosen = after.plan.chosen(at);
        let device_box = dwelling.device_box(at);
        let about = format!(
            "box {} ({}, ground {}, grounded {}, {:?} {:?} {:?})",
            device_box.id,
            device_box.holds,
            after.diagnosis.ground[at.0].fact,
            after.is_grounded(at),
            chosen.step,
            chosen.device,
            chosen.box_work
        );
        fault(at).map(|fault| format!("{about}: {fault}"))
    };
    dwelling.box_indices().filter(resolved).filter_map(tell).collect()
}

/// The opening as the code is to judge it: its ground as it is, or none where none is shown and none was brought. Where a
/// jumper comes out, what is left is the ground that the wiring method brings, not joined to the device.
fn opening(after: &Afterwards, at: BoxIndex) -> Opening {
    let tree = after.plan.facts.at(at).tree.map(|tree| &after.plan.facts.trees[tree]);
    let jumper_out = after.plan.chosen(at).price.minutes() >= PriceBook::demo().minutes(Task::RemoveFalseGround);
    let ground = match after.diagnosis.ground[at.0].fact {
        GroundFact::False if jumper_out && after.had_ground_at(at) => GroundFact::Loose,
        GroundFact::False if jumper_out => GroundFact::None,
        fact if after.had_ground_at(at) => fact,
        fact @ (GroundFact::CutOff | GroundFact::False) => fact,
        _ => GroundFact::None,
    };
    opening_of(after.dwelling, tree, at, ground)
}

#[test]
fn an_opening_that_takes_a_pin_has_a_ground_or_a_gfci_and_its_markings() {
    every_plan(300, |after| {
        at_every_receptacle(after, |at| {
            let (chosen, marks) = (after.plan.chosen(at), after.own_marks(at) | after.marks_from_upstream(at));
            let left_unseen = chosen.step == Step::Leave && after.dwelling.device_box(at).do_not_disturb;
            if !after.takes_pin(at) {
                return (!chosen.markings.is_empty()).then(|| "a two-slot receptacle is marked".into());
            }
            if after.is_grounded(at) {
                return (!chosen.markings.is_empty()).then(|| format!("grounded, and marked {:?}", chosen.markings));
            }
            if left_unseen && after.diagnosis.ground[at.0].fact == GroundFact::Unknown {
                // Nobody may open it and nobody knows: the answer asks.
                return None;
            }
            if marks & GFCI == 0 {
                return Some("no ground and no GFCI".into());
            }
            let own = after.own_marks(at) & GFCI != 0;
            let missing = |marking| !chosen.markings.contains(&marking);
            (missing(Marking::NoEquipmentGround) || (!own && missing(Marking::GfciProtected)))
                .then(|| format!("no ground, and only marked {:?}", chosen.markings))
        })
    });
}

#[test]
fn an_opening_that_is_marked_as_protected_reads_by_what() {
    every_plan(300, |after| {
        let answer = plan_answer(after.plan, &LawAnswer::of(&after.plan.facts.code), true);
        at_every_receptacle(after, |at| {
            let marked = after.plan.chosen(at).markings.contains(&Marking::GfciProtected);
            let mut openings = answer.openings.iter();
            let said = openings
                .any(|opening| opening.box_id == after.dwelling.device_box(at).id && opening.protected_by.is_some());
            (marked && !said).then(|| "the answer names nothing that protects it".into())
        })
    });
}

#[test]
fn a_two_slot_receptacle_is_fitted_only_where_there_is_no_ground() {
    every_plan(300, |after| {
        at_every_receptacle(after, |at| {
            let fitted = after.plan.chosen(at).device == Device::TwoSlot;
            (fitted && after.is_grounded(at)).then(|| "two slots on a ground".into())
        })
    });
}

#[test]
fn what_the_plan_counts_as_grounded_is_joined_to_a_ground() {
    every_plan(300, |after| {
        let boxes = after.dwelling.box_indices();
        let differs = boxes.filter(|at| after.is_grounded(*at) != after.plan.is_grounded(*at));
        let mut faults: Vec<String> = differs.map(|at| format!("box {at:?} differs")).collect();
        faults.extend(after.flows.iter().flat_map(|flow| after.faults_of_flow(flow)));
        faults
    });
}

#[test]
fn every_step_is_one_that_the_rules_do_not_bar() {
    every_plan(300, |after| {
        at_every_receptacle(after, |at| {
            let taking_out = after.plan.facts.at(at).as_found.taking_out.clone();
            let judged = judge(&Opening { taking_out, ..opening(after, at) }, &after.plan.facts.code);
            let open = |remedy: Remedy| {
                judged.remedies.iter().any(|verdict| verdict.remedy == remedy && verdict.lawful != Lawful::No)
            };
            let remedies: &[Remedy] = match after.plan.chosen(at).step {
                Step::Leave if after.dwelling.device_box(at).holds == Holding::TwoSlot => &[Remedy::Leave],
                Step::Leave | Step::MarkGfci | Step::UseLoadSide => &[Remedy::Leave],
                Step::MarkProtected | Step::FitProtected => &[Remedy::DownstreamOfGfci, Remedy::GfciBreaker],
                Step::FitTwoSlot => &[Remedy::NongroundingReceptacle],
                Step::FitGfci => &[Remedy::GfciReceptacle],
                Step::RestoreKept | Step::RestoreFitted => &[Remedy::RestoreExistingGround],
                Step::GroundArrives | Step::ConnectKept | Step::ConnectFitted => {
                    &[Remedy::SeparateEgc, Remedy::NewCable]
                }
                Step::TakeOut => &[Remedy::BlankCover],
                Step::Unresolved => &[],
            };
            let unseen =
                after.dwelling.device_box(at).do_not_disturb && after.plan.facts.at(at).ground == GroundFact::Unknown;
            (!unseen && !remedies.iter().any(|remedy| open(*remedy))).then(|| format!("all of {remedies:?} are barred"))
        })
    });
}

#[test]
fn the_duties_of_a_place_are_met_wherever_something_is_done() {
    every_plan(300, |after| {
        at_every_receptacle(after, |at| {
            let chosen = after.plan.chosen(at);
            if matches!(chosen.step, Step::Leave | Step::UseLoadSide | Step::TakeOut) {
                return None;
            }
            let judged = judge(&opening(after, at), &after.plan.facts.code);
            let owed =
                |duty| judged.duties.iter().any(|verdict| verdict.duty == duty && verdict.need != Need::NotRequired);
            let marks = after.own_marks(at) | after.marks_from_upstream(at);
            let weather = owed(Duty::WeatherResistant)
                && !matches!(chosen.device, Device::Kept | Device::ThreeSlot | Device::Gfci);
            [
                (owed(Duty::Gfci) && marks & GFCI == 0, "GFCI protection is owed"),
                (owed(Duty::Afci) && marks & AFCI == 0, "AFCI protection is owed"),
                (weather, "no such device is made for the weather"),
            ]
            .into_iter()
            .find_map(|(broken, what)| broken.then(|| what.to_owned()))
        })
    });
}

#[test]
fn protection_comes_only_from_what_fits_the_panel_and_the_neutral() {
    every_plan(300, |after| {
        let (dwelling, plan) = (after.dwelling, after.plan);
        let mut faults = Vec::new();
        for (at, tree) in plan.facts.trees.iter().enumerate() {
            let panel = dwelling.panel(tree.panel);
            let fits = match plan.chosen_at_panel(at).choice {
                AtPanel::AsItIs => true,
                AtPanel::Breaker(breaker) => {
                    panel.made_for_it.as_deref().unwrap_or_default().contains(&breaker)
                        && breaker.is_two_pole() == tree.is_multiwire()
                        && panel.overcurrent != Some(Overcurrent::Fuses)
                }
                AtPanel::DeadFrontGfci | AtPanel::DeadFrontDual => {
                    panel.room_beside == Some(true) && !tree.is_multiwire()
                }
            };
            if !fits {
                faults.push(format!("panel end {at} does not take {:?}", plan.chosen_at_panel(at).choice));
            }
        }
        for parent in dwelling.box_indices() {
            for child in plan.behind_load(parent) {
                let same = dwelling.device_box(parent).circuit == dwelling.device_box(child).circuit;
                let fed = after.fed_by(child) == Some(parent) && after.moved(child).is_none();
                if !same || !fed || dwelling.neutral_is_shared_to(child) || after.own_marks(parent) == 0 {
                    faults.push(format!("{child:?} cannot hang on the load side of {parent:?}"));
                }
            }
        }
        faults
    });
}

#[test]
fn whoever_needs_or_wants_a_ground_has_one_or_reads_that_there_is_none() {
    every_plan(300, |after| {
        let answer = plan_answer(after.plan, &LawAnswer::of(&after.plan.facts.code), true);
        let mut faults = Vec::new();
        for at in after.dwelling.box_indices() {
            let device_box = after.dwelling.device_box(at);
            let said = answer
                .openings
                .iter()
                .find(|opening| opening.box_id == device_box.id)
                .map(|opening| &opening.shortfalls);
            let judged = judge(&opening(after, at), &after.plan.facts.code);
            let needs = judged
                .duties
                .iter()
                .any(|verdict| verdict.duty == Duty::EquipmentGround && verdict.need == Need::Required);
            let has = after.is_grounded(at) && after.takes_pin(at);
            let wants = match device_box.want {
                Want::Leave => false,
                Want::ThreeSlot => !after.takes_pin(at),
                Want::Ground => !has,
                Want::Remove => after.plan.chosen(at).step != Step::TakeOut,
            };
            let short = (needs && !has && after.plan.chosen(at).step != Step::TakeOut)
                || wants
                || after.plan.chosen(at).step == Step::Unresolved;
            if device_box.holds.is_receptacle() && short && said.is_none_or(|said| said.is_empty()) {
                faults.push(format!("box {} falls short in silence", device_box.id));
            }
        }
        faults
    });
}

#[test]
fn every_box_that_is_touched_holds_what_is_in_it_or_says_that_nobody_knows() {
    every_plan(300, |after| {
        let answer = plan_answer(after.plan, &LawAnswer::of(&after.plan.facts.code), true);
        let mut faults = Vec::new();
        for at in after.dwelling.box_indices() {
            let (chosen, device_box) = (after.plan.chosen(at), after.dwelling.device_box(at));
            let (landings, size) = after.landings(at);
            let touched = chosen.device != Device::Kept || chosen.box_work != BoxWork::Keep || landings > 0;
            if !touched || chosen.step == Step::Unresolved {
                continue;
            }
            let found = opening(after, at).fill;
            // By hand: the marks that the planned old-work boxes carry, 20 and 34 cubic inches.
            let marked = match chosen.box_work {
                BoxWork::Keep | BoxWork::Extend => None,
                BoxWork::Replace => Some(Volume::hundredths(20_00)),
                BoxWork::ReplaceWide => Some(Volume::hundredths(34_00)),
            };
            let contents = match marked {
                // By hand: the mark that the planned extension carries, 12 cubic inches.
                None if chosen.box_work == BoxWork::Extend => {
                    FillContents { volume: found.volume.map(|volume| volume + Volume::hundredths(12_00)), ..found }
                }
                None => found,
                Some(volume) => FillContents {
                    volume: Some(volume),
                    clamps: Some(Clamps::None),
                    support_fittings: 0,
                    other_straps: 0,
                    gangs: 1,
                    ..found
                },
            };
            let space = if device_box.holds.has_strap() && chosen.device != Device::Blank {
                DeviceSpace::Strap
            } else {
                DeviceSpace::None
            };
            let fit = fill_with(&contents, space, landings, Some(size), &after.plan.facts.code);
            let asked = answer.openings.iter().filter(|opening| opening.box_id == device_box.id);
            let asked = asked.flat_map(|opening| &opening.open_questions).any(|question| question.contains("counted"));
            let fault = match fit.verdict {
                FillVerdict::Fits => continue,
                FillVerdict::TooFull => "too full",
                FillVerdict::NotChecked(_) if asked => continue,
                FillVerdict::NotChecked(_) => "not counted, and nobody says so",
            };
            faults.push(format!(
                "box {} ({}, {:?}, {landings} landings): {fault}",
                device_box.id, device_box.holds, chosen.step
            ));
        }
        faults
    });
}

/// A plan is complete only where every danger that was found is removed by work that it names, or there is none.
#[test]
fn no_plan_is_complete_while_a_danger_is_left() {
    let mut with_dangers = 0;
    every_plan(300, |after| {
        let answer = plan_answer(after.plan, &LawAnswer::of(&after.plan.facts.code), true);
        let at_boxes = answer.openings.iter().flat_map(|opening| {
            let worked_on = !opening.repairs.is_empty()
                || matches!(opening.step, Step::RestoreKept | Step::RestoreFitted)
                || opening.device != Device::Kept;
            opening.findings.iter().filter(move |finding| finding.danger && !worked_on)
        });
        let left = at_boxes.count() + answer.findings.iter().filter(|finding| finding.danger).count();
        with_dangers += left;
        let complete = answer.status == PlanStatus::Complete;
        (complete && left > 0).then(|| format!("complete, and {left} dangers are left")).into_iter().collect()
    });
    assert!(with_dangers > 0, "the generator makes no dangers, so that nothing was tested");
}
