//! Plans of generated dwellings: what the planner promised, held against the checks, which count and walk by themselves.

use crate::dwellings::states_under;
use crate::generated::{Size, generated};
use calculations::{Check, GfciPlace, SubjectKind, Verdict, checks_of, expected_readings, leakage_budget};
use dwelling::BoxIndex;
use electrical::formulas::gfci::CLASS_A_HOLDS_BELOW;
use estimate::PriceBook;
use remedies::{AtPanel, Device, Planned, Step};

const DWELLINGS: u64 = 440;
const SIZE: Size = Size { boxes: (3, 24), circuits: (1, 4), routes: (0, 10) };

#[test]
fn plans_of_440_dwellings_hold_what_they_promise_when_they_are_checked() {
    let (mut boxes, mut grounds, mut gfcis) = (0, 0, 0);
    for seed in 0..DWELLINGS {
        let (dwelling, code) = generated(seed, SIZE);
        let [_, after] = states_under(&dwelling, code);
        let planned = Planned::of(&dwelling, after.code.clone(), &PriceBook::demo()).unwrap();
        for found in checks_of(&after) {
            // What stays unresolved, or could not be counted when it was planned, the plan itself says so of.
            let promised = |at: BoxIndex| {
                let chosen = planned.chosen(at);
                after.touched[at.0] && chosen.step != Step::Unresolved && !chosen.fill_unchecked
            };
            let touched = || dwelling.box_named(&found.subject.id).is_some_and(promised);
            match (found.check, found.subject.kind) {
                // A box that is touched is not left too full.
                (Check::Fill, _) if touched() => {
                    boxes += 1;
                    assert_ne!(found.verdict, Verdict::NotOk, "seed {seed}: {found:?}");
                }
                // A ground that is brought is thick enough for all that return by it.
                (Check::GroundingConductor, SubjectKind::Route) => {
                    grounds += 1;
                    assert_ne!(found.verdict, Verdict::NotOk, "seed {seed}: {found:?}");
                }
                _ => {}
            }
        }
        // What the plan fits as a GFCI leaks less than may trip it, cables left out.
        for gfci in &after.gfcis {
            let is_new = match gfci.at {
                GfciPlace::Box(at) => planned.chosen(at).device != Device::Kept,
                GfciPlace::Panel(tree) => planned.chosen_at_panel(tree).choice != AtPanel::AsItIs,
            };
            gfcis += u64::from(is_new);
            let budget = leakage_budget(&after, gfci);
            let holds = budget.of_appliances < CLASS_A_HOLDS_BELOW.as_milliamperes();
            assert!(holds || !is_new, "seed {seed}: {budget:?}");
        }
    }
    assert!(boxes > 800 && grounds > 100 && gfcis > 800, "{boxes} boxes, {grounds} grounds, {gfcis} GFCIs");
}

#[test]
fn nothing_about_an_odd_dwelling_makes_the_checks_stumble() {
    for seed in 0..DWELLINGS {
        let (mut dwelling, code) = generated(seed, SIZE);
        dwelling.panels.iter_mut().for_each(|panel| panel.fault_current = Some(electrical::Amperes::new(900)));
        for state in states_under(&dwelling, code) {
            for found in checks_of(&state) {
                let amounts = found.found.iter().chain(&found.required).flat_map(|amount| [amount.least, amount.most]);
                assert!(amounts.flatten().chain(found.margin).all(f64::is_finite), "seed {seed}: {found:?}");
            }
            for reading in expected_readings(&state) {
                assert_eq!(reading.heavy_load.is_none(), reading.find_out.is_some(), "seed {seed}: {reading:?}");
            }
        }
    }
}
