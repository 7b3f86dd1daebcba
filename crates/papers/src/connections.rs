//! What is connected at a box: line and load terminals, runs that go on, splices.

use crate::document::{Face, Text};
use crate::job::Job;
use crate::words::and_last;
use dwelling::{BoxIndex, Feed, RouteKind};
use remedies::{Device, OpeningAnswer, RouteAnswer, Step};

/// What goes on the line terminals, what on the load terminals.
pub(crate) fn connections(job: &Job, opening: &OpeningAnswer) -> Vec<(&'static str, Text)> {
    let Some(at) = job.dwelling.box_named(&opening.box_id) else { return Vec::new() };
    let new_cables = || job.plan.routes.iter().filter(|route| route.kind == RouteKind::NewCable);
    let starting: Vec<&RouteAnswer> = new_cables().filter(|route| route.from == opening.box_id).collect();
    if opening.device == Device::Kept && opening.step != Step::UseLoadSide {
        let joined = "spliced to the run that feeds this box, hot to hot, neutral to neutral, ground to ground";
        let words = |route: &&RouteAnswer| {
            ("Connect", format!("the new cable “{}” to {}: {joined}", route.id, route.to).into())
        };
        return starting.iter().map(words).collect();
    }
    let protective = matches!(opening.device, Device::Gfci | Device::Afci | Device::Dual);
    let line = line_of(job, opening, at);
    // What a new cable feeds hangs on it, and not on its old run.
    let old = job.fed_from(at).filter(|id| !new_cables().any(|route| route.to == *id));
    let on = old.chain(starting.iter().map(|route| route.to.as_str()));
    let on: Vec<&str> = on.filter(|id| !opening.load_side_feeds.iter().any(|load| load == id)).collect();
    let going_on = |with: &str| {
        if on.is_empty() { String::new() } else { format!("; {} {with}", runs_to(&on)) }
    };
    if opening.device == Device::Blank {
        return vec![("Connect", format!("splice {line} through{}", going_on("spliced to it")).into())];
    }
    if !protective && opening.step != Step::UseLoadSide {
        let joined = going_on("spliced to it, with pigtails to the receptacle");
        return vec![("Connect", format!("{line} to the receptacle{joined}").into())];
    }
    let line =
        Text::bold("LINE terminals: ").and(Face::Plain, format!("{line}{}", going_on("joined to it by pigtails")));
    let load = match opening.load_side_feeds.as_slice() {
        [] => Text::bold("LOAD terminals: ").and(Face::Plain, "nothing; leave their tape on"),
        boxes => Text::bold("LOAD terminals: ").and(
            Face::Plain,
            format!("hot and neutral of {}, and nothing else; no grounding conductor goes with them unless the boxes behind are grounded", runs_alone(boxes)),
        ),
    };
    vec![("Line", line), ("Load", load)]
}

/// The run to a box or the runs to several, and whether it or they are.
fn runs_to(boxes: &[&str]) -> String {
    format!("{} {}", runs_alone(boxes), if boxes.len() == 1 { "is" } else { "are" })
}

fn runs_alone<T: AsRef<str>>(boxes: &[T]) -> String {
    format!("the {} to {}", if boxes.len() == 1 { "run" } else { "runs" }, and_last(boxes))
}

fn line_of(job: &Job, opening: &OpeningAnswer, at: BoxIndex) -> String {
    let cable = job.plan.routes.iter().find(|route| {
        route.kind == RouteKind::NewCable && opening.routes_joined.contains(&route.id) && route.to == opening.box_id
    });
    if let Some(cable) = cable {
        return format!("the new cable “{}” from {}, in place of the old run", cable.id, cable.from);
    }
    let device_box = job.dwelling.device_box(at);
    let assumed = if device_box.feed_assumed { " (assumed: prove it before you connect)" } else { "" };
    match device_box.fed_by {
        Some(Feed::Box(from)) => format!("the run from {}{assumed}", job.dwelling.device_box(from).id),
        Some(_) => format!("the home run from the panel{assumed}"),
        None => "the run that comes from the panel (not known which: find it by test)".to_owned(),
    }
}
