//! Shows what follows from the survey alone: circuit trees, multiwire sets and bonded groups.

use crate::answering::{SurveySource, dwelling_of, write_json, write_text};
use crate::command_error::CommandError;
use dwelling::{BondedGroup, BondedGroups, BoxIndex, CircuitTree, Dwelling, Reach, circuit_trees};
use serde_json::{Value, json};
use std::process::ExitCode;

/// Show what feeds what: circuit trees, multiwire sets, and boxes that one ground would reach together
#[derive(Debug, clap::Args)]
#[command(after_help = "Example:\n  thirdwire circuits --example bungalow")]
pub struct Args {
    #[command(flatten)]
    source: SurveySource,
    /// Answer as JSON
    #[arg(long)]
    json: bool,
}

/// Deeper boxes are not indented further, so that lines stay on the screen.
const DEEPEST_INDENT: usize = 24;

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let text = args.source.read()?;
    let dwelling = dwelling_of(&text, args.json)?;
    let (trees, groups) = (circuit_trees(&dwelling), BondedGroups::of(&dwelling));
    if args.json {
        write_json(&as_json(&dwelling, &trees, &groups))?;
    } else {
        write_text(&as_text(&dwelling, &trees, &groups))?;
    }
    Ok(ExitCode::SUCCESS)
}

fn as_json(dwelling: &Dwelling, trees: &[CircuitTree], groups: &BondedGroups) -> Value {
    let id = |at: &BoxIndex| dwelling.device_box(*at).id.clone();
    let trees = trees.iter().map(|tree| {
        let circuits: Vec<_> = tree.circuits.iter().map(|at| dwelling.circuit(*at).id.clone()).collect();
        let feeds = tree.members.iter().map(|at| {
            let feeds: Vec<_> = tree.children(*at).iter().map(id).collect();
            (id(at), json!(feeds))
        });
        json!({
            "circuits": circuits, "panel": dwelling.panel(tree.panel).id, "multiwire": tree.is_multiwire(),
            "feeds": feeds.collect::<serde_json::Map<_, _>>(),
            "feed_unknown": tree.unplaced.iter().map(id).collect::<Vec<_>>(),
        })
    });
    let groups = groups.groups.iter().map(
        |group| json!({ "boxes": group.members.iter().map(id).collect::<Vec<_>>(), "reaches": reach(group.reach) }),
    );
    json!({ "trees": trees.collect::<Vec<_>>(), "bonded_groups": groups.collect::<Vec<_>>() })
}

fn as_text(dwelling: &Dwelling, trees: &[CircuitTree], groups: &BondedGroups) -> String {
    let mut page = String::new();
    for tree in trees {
        let circuits: Vec<&str> = tree.circuits.iter().map(|at| dwelling.circuit(*at).id.as_str()).collect();
        let kind = if tree.is_multiwire() { "multiwire set" } else { "circuit" };
        page.push_str(&format!("{kind} {} from panel {}\n", circuits.join(" + "), dwelling.panel(tree.panel).id));
        let heads = tree.members.iter().filter(|at| !tree.members.iter().any(|up| tree.children(*up).contains(at)));
        for head in heads {
            branch(dwelling, tree, *head, &mut page);
        }
        for at in &tree.unplaced {
            page.push_str(&format!("  ? {}: nobody knows what feeds it\n", line(dwelling, *at)));
        }
        page.push('\n');
    }
    page.push_str("boxes that are tied together by a ground\n");
    let tied = |group: &&BondedGroup| group.members.len() > 1 || group.reach != Reach::Isolated;
    if !groups.groups.iter().any(|group| tied(&group)) {
        page.push_str("  none\n");
    }
    for group in groups.groups.iter().filter(tied) {
        let ids: Vec<&str> = group.members.iter().map(|at| dwelling.device_box(*at).id.as_str()).collect();
        page.push_str(&format!("  {}: {}\n", ids.join(", "), reach(group.reach)));
    }
    page
}

/// Writes a box and all that it feeds, indented by depth; not by recursion, since a chain can be of any length.
fn branch(dwelling: &Dwelling, tree: &CircuitTree, head: BoxIndex, page: &mut String) {
    let mut waiting = vec![(head, 1)];
    while let Some((at, depth)) = waiting.pop() {
        let shared = if dwelling.neutral_is_shared_to(at) { " (over the shared neutral)" } else { "" };
        page.push_str(&format!("{}{}{shared}\n", "  ".repeat(depth.min(DEEPEST_INDENT)), line(dwelling, at)));
        waiting.extend(tree.children(at).iter().rev().map(|child| (*child, depth + 1)));
    }
}

fn line(dwelling: &Dwelling, at: BoxIndex) -> String {
    let device_box = dwelling.device_box(at);
    let length = device_box.run.length.map_or(String::new(), |length| format!(", {length}"));
    format!("{}  {}, by {}{length}", device_box.id, device_box.holds, dwelling.cable_to(at))
}

const fn reach(reach: Reach) -> &'static str {
    match reach {
        Reach::Panel => "reaches the panel's ground",
        Reach::Disputed => "reaches the panel over a path that the authority may not accept",
        Reach::Unknown => "find out whether it reaches the panel's ground",
        Reach::Isolated => "reaches nothing: one conductor to any of them grounds all",
    }
}
