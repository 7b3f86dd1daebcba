//! Every figure of common practice that beliefs and advice rest on, by the name that a business writes to replace it.

use super::priors::Priors;
use super::stakes::{GroundWork, Stakes};
use super::state::{Ground, GroundRun, WireState, Wiring};
use super::test_outcome::Test;

/// The odds that inference begins with, and what acting wrongly and testing cost. The default is what is shipped: common
/// practice, no source.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Practice {
    /// The odds.
    pub priors: Priors,
    /// The costs.
    pub stakes: Stakes,
}

/// One figure with its name.
#[derive(Debug, PartialEq)]
pub struct Figure<'a> {
    /// The table in which it stands, its parts joined by points.
    pub table: &'static str,
    /// Its key in that table.
    pub key: &'static str,
    /// It.
    pub value: &'a mut f64,
}

const BY_YEAR: [&str; 5] =
    ["built-until-1945", "built-until-1961", "built-until-1969", "built-later", "year-not-known"];
const FAULT: [&str; 2] = ["left", "needless"];
const BREAK: [&str; 3] = ["left", "other-box", "needless"];
/// The tables of what each way of acting on a ground costs, in the order of [`Ground`].
const GROUND_COSTS: [&str; Ground::ALL.len()] = [
    "cost-of-being-wrong.grounded",
    "cost-of-being-wrong.poor",
    "cost-of-being-wrong.interrupted",
    "cost-of-being-wrong.missing",
    "cost-of-being-wrong.false",
    "cost-of-being-wrong.live",
];

impl Practice {
    /// Whether every figure is the shipped one.
    #[must_use]
    pub fn is_shipped(&self) -> bool {
        *self == Self::default()
    }

    /// Every figure that can be replaced, table by table. States that cannot be have none: a cable that has a ground does not
    /// lack it, a metal sheath is not cut off, and a hot conductor on a path to the panel opens the breaker.
    #[must_use]
    pub fn figures(&mut self) -> Vec<Figure<'_>> {
        const CABLE: &[GroundRun] = &[GroundRun::Absent];
        const METAL: &[GroundRun] = &[GroundRun::CutOffHere, GroundRun::Absent];
        const ARMOR: &[GroundRun] = &[GroundRun::CutOffHere];
        let Self { priors, stakes } = self;
        let run = GroundRun::NAMES;
        let mut all = Vec::new();
        all.extend(named("run-hot", WireState::NAMES, &mut priors.hot));
        all.extend(named("run-neutral", WireState::NAMES, &mut priors.neutral));
        all.extend(without(CABLE, named("run-ground.cable-with-ground", run, &mut priors.ground_of_grounded)));
        all.extend(without(CABLE, named("run-ground.cable-with-thin-ground", run, &mut priors.ground_of_reduced)));
        all.extend(without(METAL, named("run-ground.continuous-metal", run, &mut priors.ground_of_metal)));
        all.extend(without(ARMOR, named("run-ground.armor-without-strip", run, &mut priors.ground_of_plain_armor)));
        all.push(one("how-often", "unknown-metal-is-sound", &mut priors.unknown_metal_is_sound));
        all.push(one("how-often", "wiring-method-recorded-wrongly", &mut priors.cable_misrecorded));
        all.push(one("how-often", "unseen-panel-has-ground", &mut priors.unseen_panel_has_ground));
        all.push(one("how-often", "panel-without-bar-has-ground", &mut priors.panel_without_bar_has_ground));
        all.extend(named("unseen-run-brings-ground", &BY_YEAR, &mut priors.unseen_brings_ground));
        let arrives = named("device.where-ground-arrives", Wiring::NAMES, &mut priors.wiring_where_grounded);
        all.extend(arrives.filter(|figure| figure.key != Wiring::ReversedJumper.name()));
        all.extend(named("device.where-none-arrives", Wiring::NAMES, &mut priors.wiring_where_not));
        for (table, costs) in GROUND_COSTS.into_iter().zip(&mut stakes.ground) {
            all.extend(named(table, GroundWork::NAMES, costs));
        }
        all.extend(named("cost-of-being-wrong.polarity", &FAULT, &mut stakes.polarity));
        all.extend(named("cost-of-being-wrong.hot-or-neutral", &FAULT, &mut stakes.wire));
        all.extend(named("cost-of-being-wrong.broken-ground", &BREAK, &mut stakes.broken));
        all.extend(named("minutes", Test::NAMES, &mut stakes.minutes));
        all
    }
}

fn one<'a>(table: &'static str, key: &'static str, value: &'a mut f64) -> Figure<'a> {
    Figure { table, key, value }
}

fn named<'a>(
    table: &'static str,
    keys: &'static [&'static str],
    values: &'a mut [f64],
) -> impl Iterator<Item = Figure<'a>> {
    keys.iter().zip(values).map(move |(key, value)| Figure { table, key, value })
}

/// The figures of a run's ground but for the states that cannot be.
fn without<'a>(
    cannot_be: &'static [GroundRun],
    figures: impl Iterator<Item = Figure<'a>>,
) -> impl Iterator<Item = Figure<'a>> {
    figures.filter(|figure| cannot_be.iter().all(|state| state.name() != figure.key))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    /// By hand: 3 + 3 states of hot and neutral, 5 + 5 + 4 + 5 of grounds, 4 that stand alone, 5 by year, 5 + 6 of devices,
    /// 6 × 4 + 2 + 2 + 3 costs, 5 tests: 81. None twice.
    #[test]
    fn every_figure_has_a_name_of_its_own() {
        let mut practice = Practice::default();
        let names: BTreeSet<(&str, &str)> =
            practice.figures().iter().map(|figure| (figure.table, figure.key)).collect();
        assert_eq!(names.len(), 81);
        assert_eq!(practice.figures().len(), 81);
    }

    /// By hand: three runs of 6 states leave out 4, devices where a ground arrives 1; what cannot be has the share 0, and all
    /// else that is shipped is above it, but for the six ways of acting that are right.
    #[test]
    fn what_cannot_be_is_the_only_state_without_a_figure() {
        let mut practice = Practice::default();
        for figure in practice.figures() {
            let is_cost = figure.table.starts_with("cost-of-being-wrong.");
            assert!(*figure.value > 0.0 || is_cost, "{} {}", figure.table, figure.key);
            *figure.value = 7.0;
        }
        let Priors { ground_of_grounded, ground_of_metal, wiring_where_grounded, hot, .. } = practice.priors;
        assert_eq!(ground_of_grounded, [7.0, 7.0, 7.0, 7.0, 7.0, 0.0]);
        assert_eq!(ground_of_metal, [7.0, 7.0, 7.0, 0.0, 7.0, 0.0]);
        assert_eq!(wiring_where_grounded, [7.0, 7.0, 7.0, 7.0, 7.0, 0.0]);
        assert_eq!(hot, [7.0; 3]);
        assert_eq!(practice.stakes.minutes, [7.0; 5]);
        assert_eq!(practice.priors.panel_has_ground(Some(false)), 7.0);
    }

    #[test]
    fn the_tables_of_costs_are_those_of_the_states_of_a_ground() {
        let names = GROUND_COSTS.map(|table| table.trim_start_matches("cost-of-being-wrong."));
        assert_eq!(names.as_slice(), Ground::NAMES);
    }
}
