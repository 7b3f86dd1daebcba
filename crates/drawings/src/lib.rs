//! Drawings of a dwelling, in SVG for paper and screen: the plan of each floor as it was found or as a plan leaves it, the
//! circuits as trees with what is believed of them, and the wiring of one box.

mod answer;
mod box_wiring;
mod bringing;
mod circuit_sheets;
mod curve;
mod feeding;
mod floor_plan;
mod geometry;
mod label;
mod legend;
mod line_style;
mod lists;
mod naming;
mod one_line;
mod places;
mod placing;
mod room_names;
mod scale;
mod sheet;
mod shown;
mod standing;
mod svg;
mod symbol;
mod text_width;
mod walls;
mod way_maps;
mod words;
mod work_mark;

pub use answer::{DrawingAnswer, NotPlaced, SheetAnswer, ThingKind, drawn_as_found, drawn_as_planned, floors_of};
pub use box_wiring::{
    BoxWiring, CablePart, Carries, End, EndKind, FarEnd, Figure, Joint, JointState, OpenBecause, OpenEnd, Side,
    TerminalAnswer, WiredCable, drawn_box, drawn_wiring, wiring_as_found, wiring_as_planned,
};
pub use circuit_sheets::drawn_circuits;
pub use one_line::{one_line_as_found, one_line_as_planned, one_line_before_and_after};
pub use shown::Moment;
pub use text_width::text_width;
pub use way_maps::{WayMap, way_maps};
