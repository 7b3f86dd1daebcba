//! A simulated house: its survey, and what is true of it.

use crate::chance::Chance;
use crate::layout::layout;
use crate::sketch::{Size, sketch};
use crate::truth::{BoxTruth, truth};
use crate::visit::visit;
use diagnosis::belief::Priors;
use dwelling::Dwelling;

/// A house with what a surveyor found in it and what is true.
#[derive(Clone, Debug)]
pub struct House {
    /// The survey.
    pub dwelling: Dwelling,
    /// Whether the panel has a ground for its circuits.
    pub panel_has_ground: bool,
    /// What is true, in box order.
    pub truth: Vec<BoxTruth>,
}

/// The house of a seed, drawn by these priors; nothing where chance finds none that can be.
#[must_use]
pub fn house(seed: u64, size: Size, priors: &Priors) -> Option<House> {
    let mut chance = Chance::new(seed);
    let mut dwelling = sketch(size, &mut chance);
    let (panel_has_ground, truth) = truth(&dwelling, priors, &[], &mut chance)?;
    let layout = layout(&dwelling, panel_has_ground, &truth, &mut chance);
    visit(&mut dwelling, &layout, &truth, &mut chance).ok()?;
    Some(House { dwelling, panel_has_ground, truth })
}
