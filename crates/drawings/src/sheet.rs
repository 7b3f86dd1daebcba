//! Sheets: a title, the plan of a floor at a usual scale, and what stands beside it, on paper that every printer takes.

use crate::floor_plan::{FloorPlan, extent, floor_plan};
use crate::geometry::{Area, spot};
use crate::legend::rows;
use crate::lists::{COLUMN, GUTTER, Row, columns, flow, rule};
use crate::places::{FloorNumber, floor_of};
use crate::scale::{Scale, scale_bar};
use crate::shown::{Moment, Shown};
use crate::svg::{Anchor, BLACK, Pen, Svg, Type};
use crate::text_width::cut_to;
use crate::words;
use dwelling::BoxIndex;

/// 7.5 in by 10 in: what both Letter (8.5 in by 11 in) and A4 (210 mm by 297 mm) leave within margins of 0.38 in.
pub(crate) const UPRIGHT: (f64, f64) = (540.0, 720.0);
const LYING: (f64, f64) = (720.0, 540.0);
pub(crate) const TITLE: f64 = 36.0;
pub(crate) const FOOT: f64 = 26.0;
/// What is left free around the rooms for labels.
const AROUND: f64 = 28.0;
/// The same where a plan has a sheet for itself.
const CLOSE: f64 = 20.0;
/// From so many boxes on, a plan gets a sheet for itself where that makes its scale larger.
const CROWDED: usize = 32;
/// The least height of columns below a plan.
const LEAST_BELOW: f64 = 190.0;

/// A drawn sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// The floor; `None` where the survey does not state it.
    pub floor: Option<i8>,
    /// Its title.
    pub title: String,
    /// The scale of its plan; `None` where it has none.
    pub scale: Option<String>,
    /// The boxes that stand on its plan.
    pub boxes: Vec<BoxIndex>,
    /// The drawing.
    pub svg: String,
}

/// Where the plan and the columns lie on a sheet.
struct Layout {
    size: (f64, f64),
    scale: Scale,
    plan: Area,
    columns: Vec<Area>,
}

/// The sheets of a floor: its plan with what stands beside it, then what found no room there.
pub(crate) fn sheets_of(shown: &Shown, floor: FloorNumber) -> Vec<Sheet> {
    let mut svg = Svg::default();
    let (size, plan, left_over, scale) = match extent(shown, floor) {
        None => {
            let all = rows(shown, floor, None);
            let body = body(UPRIGHT);
            (UPRIGHT, None, flow(&mut svg, &all, &columns(&body)), None)
        }
        Some((left, right, below, above)) => {
            let here = shown.dwelling.box_indices().filter(|at| floor_of(shown.dwelling, *at) == floor).count();
            let layout = best_layout(right - left, above - below, here >= CROWDED);
            let plan = floor_plan(shown, floor, layout.scale.points_per_foot, layout.plan);
            let all = rows(shown, floor, plan.as_ref());
            if let Some(plan) = &plan {
                svg.append(&plan.svg);
            }
            let left_over = flow(&mut svg, &all, &layout.columns);
            separate(&mut svg, &layout);
            (layout.size, plan, left_over, Some(layout.scale))
        }
    };
    let goes_on = !left_over.is_empty();
    let mut sheets = vec![finished(svg, shown, (floor, 1, goes_on), size, plan.as_ref(), scale.as_ref())];
    let mut left_over = left_over;
    while !left_over.is_empty() {
        let mut svg = Svg::default();
        let still: Vec<Row> = flow(&mut svg, &left_over, &columns(&body(UPRIGHT)));
        // A row that fits on no sheet would never end: its words are wrapped, so that this is one of thousands of lines.
        if still.len() == left_over.len() {
            break;
        }
        left_over = still;
        sheets.push(finished(svg, shown, (floor, sheets.len() + 1, false), UPRIGHT, None, None));
    }
    sheets
}

/// What is left of a sheet between its title and its foot.
fn body((width, height): (f64, f64)) -> Area {
    Area::new(0.0, TITLE, width, height - FOOT)
}

/// The layout that gives the plan its largest scale, and at equal scales the columns the most room.
fn best_layout(wide: f64, high: f64, crowded: bool) -> Layout {
    for scale in Scale::usual() {
        let mut layouts = layouts(&scale, wide, high);
        if crowded {
            layouts.extend(whole_sheets(&scale, wide, high));
        }
        let room = |layout: &Layout| layout.columns.iter().map(Area::height).sum::<f64>();
        if let Some(best) = layouts.into_iter().max_by(|one, other| room(one).total_cmp(&room(other))) {
            return best;
        }
    }
    let body = body(LYING);
    let plan = Area::new(0.0, body.top, body.right - COLUMN - GUTTER, body.bottom);
    let across = (plan.width() - 2.0 * AROUND) / wide.max(1.0);
    let down = (plan.height() - 2.0 * AROUND) / high.max(1.0);
    let columns = columns(&Area::new(plan.right + GUTTER, body.top, body.right, body.bottom));
    Layout { size: LYING, scale: Scale::unusual(across.min(down)), plan, columns }
}

/// The ways in which a plan takes a whole sheet, what stands beside it being left for the next.
fn whole_sheets(scale: &Scale, wide: f64, high: f64) -> impl Iterator<Item = Layout> {
    let (width, height) = (wide * scale.points_per_foot + 2.0 * CLOSE, high * scale.points_per_foot + 2.0 * CLOSE);
    let fits = move |size: &(f64, f64)| width <= body(*size).width() && height <= body(*size).height();
    let layout = |size| Layout { size, scale: scale.clone(), plan: body(size), columns: Vec::new() };
    [UPRIGHT, LYING].into_iter().filter(fits).map(layout)
}

/// The ways in which a plan of so many feet fits at a scale, with a column of its own.
fn layouts(scale: &Scale, wide: f64, high: f64) -> Vec<Layout> {
    let (width, height) = (wide * scale.points_per_foot + 2.0 * AROUND, high * scale.points_per_foot + 2.0 * AROUND);
    let mut found = Vec::new();
    for size in [UPRIGHT, LYING] {
        let body = body(size);
        if width + GUTTER + COLUMN <= body.width() && height <= body.height() {
            let beside = columns(&Area::new(body.left + width + GUTTER, body.top, body.right, body.bottom));
            // Columns stand at the right edge; what they leave is the plan's.
            let spare = body.right - beside.last().map_or(body.right, |column| column.right);
            let moved = beside.iter().map(|at| Area::new(at.left + spare, at.top, at.right + spare, at.bottom));
            let moved: Vec<Area> = moved.collect();
            let edge = moved.first().map_or(body.right, |column| column.left - GUTTER);
            let plan = Area::new(body.left, body.top, edge, body.bottom);
            found.push(Layout { size, scale: scale.clone(), plan, columns: moved });
        }
        if width <= body.width() && height + LEAST_BELOW <= body.height() {
            let edge = body.top + height;
            let below = columns(&Area::new(body.left, edge + GUTTER, body.right, body.bottom));
            let plan = Area::new(body.left, body.top, body.right, edge);
            found.push(Layout { size, scale: scale.clone(), plan, columns: below });
        }
    }
    found
}

fn separate(svg: &mut Svg, layout: &Layout) {
    let Some(first) = layout.columns.first() else { return };
    if first.left > 1.0 {
        let x = first.left - GUTTER / 2.0;
        rule(svg, spot(x, first.top), spot(x, first.bottom));
    } else {
        let y = first.top - GUTTER / 2.0;
        rule(svg, spot(0.0, y), spot(layout.size.0, y));
    }
}

fn finished(
    body: Svg,
    shown: &Shown,
    (floor, part, goes_on): (FloorNumber, usize, bool),
    size: (f64, f64),
    plan: Option<&FloorPlan>,
    scale: Option<&Scale>,
) -> Sheet {
    let name = &shown.dwelling.job.name;
    let moment = match (shown.moment, shown.edition) {
        (Moment::Before, _) => "as it was found".to_owned(),
        (Moment::After, Some(edition)) => format!("as the plan leaves it, by the {edition} edition"),
        (Moment::After, None) => "as the plan leaves it".to_owned(),
    };
    let part = if part > 1 { format!(", sheet {part}") } else { String::new() };
    let below = format!("{}{part}, {moment}", words::floor(floor));
    let title = format!("{name}: {below}");
    let below = if goes_on { format!("{below}; what does not fit here is on sheet 2") } else { below };
    let svg = framed(body, name, &below, size, scale);
    let scale_name = scale.map(|scale| scale.name.clone());
    let drawn = plan.map(|plan| plan.drawn.clone()).unwrap_or_default();
    let says = format!(
        "{} boxes stand on this plan; lines show what feeds what, not where cables lie. Point at a box for what is said of it.",
        drawn.len()
    );
    Sheet { floor, svg: svg.finished(size, &title, &says), title, scale: scale_name, boxes: drawn }
}

/// A drawing between its title and its foot with the cautions.
pub(crate) fn framed(body: Svg, name: &str, below: &str, (width, height): (f64, f64), scale: Option<&Scale>) -> Svg {
    let mut svg = Svg::default();
    svg.words(spot(0.0, 14.0), &cut_to(name, 14.0, true, width), Type::bold(14.0), Anchor::Start);
    svg.words(spot(0.0, 26.0), below, Type::plain(9.0), Anchor::Start);
    svg.line(spot(0.0, TITLE - 6.0), spot(width, TITLE - 6.0), &Pen::line(BLACK, 1.2));
    svg.append(&body);
    let foot = height - FOOT;
    svg.line(spot(0.0, foot + 3.0), spot(width, foot + 3.0), &Pen::line(BLACK, 0.6));
    if let Some(scale) = scale {
        scale_bar(&mut svg, spot(4.0, foot + 12.0), scale);
    }
    let caution = "Prove dead before any work. The authority having jurisdiction decides; work by, or with, a licensed electrician.";
    svg.words(spot(width, height - 4.0), caution, Type::plain(6.2), Anchor::End);
    svg
}
