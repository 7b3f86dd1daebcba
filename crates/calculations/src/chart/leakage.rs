//! The leakage behind each GFCI against where a Class A device may and must trip.

use super::drawing::{Anchor, Drawing, Ink};
use crate::checks::leakage_budget;
use crate::state::State;
use electrical::formulas::gfci::{CLASS_A_HOLDS_BELOW, CLASS_A_TRIPS_FROM};

const WIDTH: f64 = 640.0;
const LEFT: f64 = 130.0;
const RIGHT: f64 = 560.0;
const TOP: f64 = 84.0;
const ROW: f64 = 30.0;

/// The chart of all GFCIs of a dwelling; none where there is none.
#[must_use]
pub fn leakage_chart(state: &State) -> Option<String> {
    let budgets: Vec<_> = state.gfcis.iter().map(|gfci| leakage_budget(state, gfci)).collect();
    if budgets.is_empty() {
        return None;
    }
    let bottom = TOP + ROW * budgets.len() as f64;
    let widest = budgets.iter().map(|budget| budget.most()).fold(6.5, f64::max);
    let x = |milliamperes: f64| LEFT + (RIGHT - LEFT) * milliamperes / widest;
    let told: Vec<String> =
        budgets.iter().map(|budget| format!("{}: up to {:.2} mA", budget.gfci, budget.most())).collect();
    let title = "Leakage behind each GFCI";
    let description = format!("A Class A device must hold below 4 mA and trip from 6 mA. {}.", told.join("; "));
    let mut drawing = Drawing::new((WIDTH, bottom + 48.0), title, description);
    drawing.headline((20.0, 28.0), title);
    let under = "dark: what is plugged in, at most; pale: cables, from least to most";
    drawing.words((20.0, 46.0), under, Ink::Quiet, Anchor::Start);
    for (at, words, ink) in
        [(CLASS_A_HOLDS_BELOW, "holds below 4 mA", Ink::Amber), (CLASS_A_TRIPS_FROM, "trips from 6 mA", Ink::Red)]
    {
        let x = x(at.as_milliamperes());
        drawing.line((x, TOP - 6.0), (x, bottom), ink, true);
        drawing.words((x, TOP - 12.0), words, ink, Anchor::Middle);
    }
    for (row, budget) in budgets.iter().enumerate() {
        let y = TOP + ROW * row as f64;
        let least = budget.of_appliances + budget.of_cables.0;
        drawing.words((LEFT - 8.0, y + 18.0), &budget.gfci, Ink::Black, Anchor::End);
        drawing.bar((x(0.0), y + 6.0), (x(least) - x(0.0), ROW - 14.0), Ink::Blue);
        drawing.bar((x(least), y + 6.0), (x(budget.most()) - x(least), ROW - 14.0), Ink::PaleBlue);
        let doubt = if budget.missing.is_some() { " and what is not known" } else { "" };
        let words = format!("{:.2} mA{doubt}", budget.most());
        drawing.words((x(budget.most()) + 6.0, y + 18.0), &words, Ink::Black, Anchor::Start);
    }
    drawing.line((LEFT, TOP), (LEFT, bottom), Ink::Black, false);
    drawing.line((LEFT, bottom), (RIGHT, bottom), Ink::Black, false);
    for step in 0..=(widest.floor().clamp(0.0, 40.0) as u32) {
        let x = x(f64::from(step));
        drawing.line((x, bottom), (x, bottom + 4.0), Ink::Black, false);
        drawing.words((x, bottom + 17.0), &step.to_string(), Ink::Black, Anchor::Middle);
    }
    drawing.words(((LEFT + RIGHT) / 2.0, bottom + 36.0), "mA", Ink::Quiet, Anchor::Middle);
    Some(drawing.finished())
}
