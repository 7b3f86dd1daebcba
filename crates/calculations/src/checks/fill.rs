//! Box fill: the volume that the box has against the volume that is taken in it.

use super::the_box;
use crate::row::{Amount, Asked, Check, CheckRow, SourceAnswer, SourceKind, Verdict};
use crate::state::{BroughtGround, Moment, State};
use dwelling::{BoxIndex, RouteEnd, cables_in_box};
use electrical::{Gauge, Volume};
use rulebook::{Citation, DeviceSpace, FillContents, FillVerdict, Fit, fill_with};

/// The check of a box.
pub(super) fn row(state: &State, at: BoxIndex) -> CheckRow {
    let fit = fit(state, at);
    let cite = fit.fill.as_ref().and_then(|fill| fill.lines.first()).map(|line| line.cite);
    let asked = Asked {
        check: Check::Fill,
        subject: the_box(state, at),
        circuits: state.circuits_of_box(at),
        source: cite.map_or_else(|| SourceAnswer::other(SourceKind::Rule, "314.16", false), source),
    };
    let (volume, taken) = match (&fit.verdict, fit.volume, &fit.fill) {
        (FillVerdict::NotChecked(missing), ..) => return asked.not_checked(missing.because.clone()),
        (_, Some(volume), Some(fill)) => (volume, fill.taken),
        _ => return asked.not_checked("find out the volume of the box: read its mark, or measure its trade size"),
    };
    let verdict = if fit.verdict == FillVerdict::Fits { Verdict::Ok } else { Verdict::NotOk };
    let says = match verdict {
        Verdict::Ok => format!("{taken} are taken of {volume}"),
        _ if state.moment == Moment::After && !state.touched[at.0] => {
            format!(
                "too full as it was found, and the plan adds nothing to it: {taken} are taken, the box has {volume}"
            )
        }
        _ => format!("too full: {taken} are taken, the box has {volume}"),
    };
    let found = Amount::of(cubic_inches(taken), "in³", taken.to_string());
    let required = Amount::at_most(cubic_inches(volume), "in³", format!("at most {volume}"));
    asked.checked(verdict, (found, required), Some(cubic_inches(volume) - cubic_inches(taken)), says)
}

/// The section as a whole: the lines of a count each stand in a part of it.
fn source(line: Citation) -> SourceAnswer {
    SourceAnswer { cite: format!("{}, 314.16(B)", line.edition), ..SourceAnswer::rule(line) }
}

fn cubic_inches(volume: Volume) -> f64 {
    volume.as_ten_thousandths() as f64 / 10_000.0
}

/// The count of a box with its device, its cables and every grounding conductor brought to it.
fn fit(state: &State, at: BoxIndex) -> Fit {
    let device_box = state.dwelling.device_box(at);
    let body = &device_box.body;
    let tree = state.tree_of(at).map(|tree| &state.trees[tree]);
    let contents = FillContents {
        volume: body.volume.map(|volume| volume + body.added_volume.unwrap_or(Volume::ZERO)),
        cables: cables_in_box(&state.dwelling, tree, at),
        clamps: body.clamps,
        support_fittings: body.support_fittings,
        other_straps: body.gangs.saturating_sub(1),
        gangs: body.gangs.max(1),
    };
    let here = RouteEnd::Box(at);
    let start = |brought: &BroughtGround| if brought.from == here { brought.at_start } else { None };
    let end = |brought: &BroughtGround| (brought.to == here).then_some(brought.gauge);
    let landing: Vec<Gauge> =
        state.brought.iter().flat_map(|brought| [start(brought), end(brought)]).flatten().collect();
    let space = if device_box.holds.has_strap() { DeviceSpace::Strap } else { DeviceSpace::None };
    let number = u32::try_from(landing.len()).unwrap_or(u32::MAX);
    fill_with(&contents, space, number, landing.iter().max().copied(), &state.code)
}
