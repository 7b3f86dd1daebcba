//! What the signs on the sheets of circuits mean, of those that are used.

use super::belief_words;
use super::block::drawn_ground;
use super::circuit_shown::CircuitsShown;
use crate::geometry::Area;
use crate::label::Piece;
use crate::lists::{Picture, Row, columns, flow};
use crate::shown::Ground as Drawn;
use crate::svg::Svg;
use crate::symbol::Kind;
use diagnosis::belief::{BoxBelief, Ground, GroundRun, Test};
use dwelling::BoxIndex;

/// The rows that explain what is drawn of these boxes.
pub(crate) fn legend_rows(shown: &CircuitsShown, boxes: &[BoxIndex]) -> Vec<Row> {
    let beliefs: Vec<&BoxBelief> = boxes.iter().filter_map(|at| shown.belief(*at)).collect();
    let mut rows = vec![Row::Heading("Ground of a box: share of each state".to_owned())];
    for (number, ground) in Ground::ALL.iter().enumerate() {
        if beliefs.iter().any(|belief| belief.ground[number] >= 0.01) {
            let says = format!("{}: {}", ground.name(), said(ground.meaning()));
            rows.push(Row::Explained(Picture::Share(*ground), says));
        }
    }
    rows.push(Row::Heading("Filling: what may be said of its ground".to_owned()));
    let fillings = [
        (Drawn::Whole, "grounded, and a test under load has shown it"),
        (Drawn::Unsound, "a ground is there: poor or interrupted"),
        (Drawn::None, "no ground, or a false or live one"),
        (Drawn::Unknown, "nothing may be said of it: find out"),
    ];
    for (filling, says) in fillings {
        if boxes.iter().any(|at| drawn_ground(shown.belief(*at)) == filling) {
            rows.push(Row::Explained(Picture::Symbol(Kind::Receptacle, filling), says.to_owned()));
        }
    }
    let runs: Vec<GroundRun> = beliefs.iter().map(|belief| belief_words::likeliest_run(&belief.run)).collect();
    if !runs.is_empty() {
        rows.push(Row::Heading("Ground of a run: box before, this box".to_owned()));
    }
    let states = GroundRun::ALL.iter().filter(|state| runs.contains(state));
    rows.extend(states.map(|state| Row::Explained(Picture::Run(*state), run_meaning(*state).to_owned())));
    if runs.iter().any(|state| matches!(state, GroundRun::Sound | GroundRun::Weak)) {
        rows.push(Row::Words("A second line beside a run: its ground likely conducts.".to_owned()));
    }
    rows.push(Row::Heading("Symbols and marks".to_owned()));
    let holds = |at: &BoxIndex| Kind::of(shown.dwelling.device_box(*at).holds);
    for kind in Kind::ALL.into_iter().filter(|kind| boxes.iter().any(|at| holds(at) == *kind)) {
        rows.push(Row::Explained(Picture::Symbol(kind, Drawn::None), kind.meaning().to_owned()));
    }
    rows.extend(marks(shown, boxes, &beliefs));
    rows
}

fn marks(shown: &CircuitsShown, boxes: &[BoxIndex], beliefs: &[&BoxBelief]) -> Vec<Row> {
    let mark = |letters: &str, says: &str| Row::Explained(Picture::Piece(Piece::Work(letters.into())), says.into());
    let tag = |letters: &str, says: &str| Row::Explained(Picture::Piece(Piece::Route(letters.into())), says.into());
    let any = |holds: &dyn Fn(BoxIndex) -> bool| boxes.iter().any(|at| holds(*at));
    let mut rows = Vec::new();
    if beliefs.iter().any(|belief| belief_words::is_dangerous(belief)) {
        rows.push(mark("!", "someone can be hurt here: a false or live ground from 10 % on, or reversed polarity"));
    }
    if beliefs.iter().any(|belief| belief_words::bad_conductors(&belief.run).is_some()) {
        rows.push(mark("H N", "the hot conductor (H) or neutral (N) of its run may be bad, from 10 % on"));
    }
    if beliefs.iter().any(|belief| !belief_words::wiring_shares(belief).is_empty()) {
        rows.push(mark("W", "how its device may be wired wrongly, from 10 % on"));
    }
    if any(&|at| !shown.clashes_at(at).is_empty()) {
        rows.push(mark("CLASH", "two things of one number cannot well both be right"));
    }
    if any(&|at| shown.next_at(at).is_some()) {
        rows.push(tag(
            "NEXT",
            "the test on this circuit that saves most, in minutes of acting wrongly, for each minute it takes",
        ));
    }
    if any(&|at| shown.next_at(at).is_some_and(|advice| advice.test != Test::OpenBox)) {
        rows.push(Row::Caution(
            "Readings are taken on live slots: keep hands behind the guards of the probes. Where a ground is false, the case \
             of a load may be live: do not touch it."
                .to_owned(),
        ));
    }
    if any(&|at| shown.opened_first_at(at).is_some()) {
        rows.push(tag("OPEN", "the box whose opening saves most, if one is opened"));
    }
    rows
}

const fn run_meaning(state: GroundRun) -> &'static str {
    match state {
        GroundRun::Sound => "whole, with sound joints",
        GroundRun::Weak => "whole, with a joint of high resistance",
        GroundRun::LooseHere => "there, connected to nothing in this box",
        GroundRun::CutOffHere => "there, cut off in this box",
        GroundRun::LooseBefore => "there, connected to nothing in the box before",
        GroundRun::Absent => "the run carries none",
    }
}

/// A meaning without its capital and full stop.
fn said(meaning: &str) -> String {
    let text = meaning.trim().trim_end_matches('.');
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| first.to_lowercase().chain(letters).collect())
}

/// The least height at which the rows fit into columns over the width of a sheet.
pub(crate) fn height_of(rows: &[Row], width: f64) -> f64 {
    let fits = |height: f64| {
        let area = Area::new(0.0, 0.0, width, height);
        flow(&mut Svg::default(), rows, &columns(&area)).is_empty()
    };
    (6..80).map(|step| f64::from(step) * 8.0).find(|height| fits(*height)).unwrap_or(0.0)
}
