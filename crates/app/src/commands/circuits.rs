//! Shows what follows from the survey alone: circuit trees, multiwire sets and bonded groups.

use crate::answering::{SurveySource, dwelling_of, write_json, write_text};
use crate::command_error::CommandError;
use dwelling::{BondedGroup, BondedGroups, BoxIndex, CircuitTree, Dwelling, Reach, circuit_trees};
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeMap;
use std::process::ExitCode;

/// Show what feeds what: circuit trees, multiwire sets, and boxes that one ground would reach together
#[derive(Debug, clap::Args)]
#[command(after_help = "Example:\n  thirdwire circuits --example bungalow")]
pub struct Args {
    #[command(flatten)]
    source: SurveySource,
    /// Answer as JSON (its schema: `thirdwire schema circuits`)
    #[arg(long)]
    json: bool,
}

/// What follows from the survey alone.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CircuitsAnswer {
    /// The circuits and multiwire sets as trees, in the order of the survey.
    pub trees: Vec<TreeAnswer>,
    /// The boxes that are tied together by a ground; one that is tied to none is a group of its own.
    pub bonded_groups: Vec<BondedAnswer>,
}

/// What a circuit or multiwire set feeds.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct TreeAnswer {
    /// The circuit, or both circuits of a multiwire set.
    pub circuits: Vec<String>,
    /// The panel in which it originates.
    pub panel: String,
    /// Whether two circuits share its neutral.
    pub multiwire: bool,
    /// By box: the boxes that it feeds.
    pub feeds: BTreeMap<String, Vec<String>>,
    /// The boxes of which nobody knows what feeds them.
    pub feed_unknown: Vec<String>,
}

/// Boxes tied together by a ground.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct BondedAnswer {
    /// The boxes.
    pub boxes: Vec<String>,
    /// Where their ground leads, in words.
    pub reaches: &'static str,
}

/// Deeper boxes are not indented further, so that lines stay on the screen.
const DEEPEST_INDENT: usize = 24;

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let text = args.source.read()?;
    let dwelling = dwelling_of(&text, args.json)?;
    let (trees, groups) = (circuit_trees(&dwelling), BondedGroups::of(&dwelling));
    if args.json {
        write_json(&CircuitsAnswer::of(&dwelling, &trees, &groups))?;
    } else {
        write_text(&as_text(&dwelling, &trees, &groups))?;
    }
    Ok(ExitCode::SUCCESS)
}

impl CircuitsAnswer {
    fn of(dwelling: &Dwelling, trees: &[CircuitTree], groups: &BondedGroups) -> Self {
        let id = |at: &BoxIndex| dwelling.device_box(*at).id.clone();
        let trees = trees.iter().map(|tree| TreeAnswer {
            circuits: tree.circuits.iter().map(|at| dwelling.circuit(*at).id.clone()).collect(),
            panel: dwelling.panel(tree.panel).id.clone(),
            multiwire: tree.is_multiwire(),
            feeds: tree.members.iter().map(|at| (id(at), tree.children(*at).iter().map(id).collect())).collect(),
            feed_unknown: tree.unplaced.iter().map(id).collect(),
        });
        let groups = groups
            .groups
            .iter()
            .map(|group| BondedAnswer { boxes: group.members.iter().map(id).collect(), reaches: reach(group.reach) });
        Self { trees: trees.collect(), bonded_groups: groups.collect() }
    }
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
