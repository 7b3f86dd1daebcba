//! Ways of small houses whose geometry is reckoned by hand.

use dwelling::{BoxIndex, Dwelling, PanelIndex};
use electrical::Length;
use routes::{EdgeKind, Layer, PlaceKind, RouteEdge, RouteGraph, Work};
use survey::{Format, read};

/// Kitchen and den side by side, 12 by 10 ft each, an attic over both and a crawl space under both.
const HOUSE: &str = r#"
format = 1
[job]
name = "two rooms"
[[panel]]
id = "main"
room = "kitchen"
at = [0, 5]
[[circuit]]
id = "1"
panel = "main"
[[room]]
id = "kitchen"
use = "kitchen"
floor = 1
outline = [[0, 0], [12, 0], [12, 10], [0, 10]]
above = "attic"
below = "crawl space"
insulated = true
fire_blocks = false
[[room]]
id = "den"
use = "den"
floor = 1
outline = [[12, 0], [24, 0], [24, 10], [12, 10]]
above = "attic"
below = "crawl space"
insulated = true
fire_blocks = false
[[box]]
id = "K"
room = "kitchen"
circuit = "1"
at = [12, 5]
[[box]]
id = "N"
room = "kitchen"
circuit = "1"
at = [12, 8]
[[box]]
id = "D"
room = "den"
circuit = "1"
at = [12, 5]
"#;

const K: PlaceKind = PlaceKind::Box(BoxIndex(0));
const N: PlaceKind = PlaceKind::Box(BoxIndex(1));
const D: PlaceKind = PlaceKind::Box(BoxIndex(2));
const MAIN: PlaceKind = PlaceKind::Panel(PanelIndex(0));

fn dwelling(text: &str) -> Dwelling {
    let found = read(text.as_bytes(), Format::Toml);
    assert!(found.diagnostics.is_empty(), "{:?}", found.diagnostics);
    let Some(dwelling) = found.dwelling else { panic!("a survey without mistakes gives a dwelling") };
    dwelling
}

fn graph(text: &str) -> RouteGraph {
    RouteGraph::of(&dwelling(text))
}

fn edges(graph: &RouteGraph, kind: EdgeKind, one: PlaceKind) -> Vec<&RouteEdge> {
    let at = |edge: &&RouteEdge| graph.places[edge.from].is == one || graph.places[edge.to].is == one;
    graph.edges.iter().filter(|edge| edge.kind == kind).filter(at).collect()
}

fn times(edge: &RouteEdge, work: Work) -> u32 {
    edge.work.iter().filter(|(kind, _)| *kind == work).map(|(_, times)| times).sum()
}

/// By hand: both boxes at the same point of the wall: a foot of conductor, nothing opened.
#[test]
fn two_boxes_on_either_side_of_one_wall_are_joined_through_it() {
    let graph = graph(HOUSE);
    let [edge] = edges(&graph, EdgeKind::BackToBack, K)[..] else { panic!("one way through the wall") };
    assert_eq!((edge.length, edge.openings, times(edge, Work::ThroughWall)), (Length::feet(1), 0, 1));
    assert!(edges(&graph, EdgeKind::BackToBack, D).contains(&edge));
}

/// By hand: 3 ft are 36 in, two whole spaces of 16 in: two studs, an opening at each; 3 ft and a foot for both ends.
#[test]
fn boxes_of_one_wall_are_joined_through_the_studs_between() {
    let graph = graph(HOUSE);
    let [edge] = edges(&graph, EdgeKind::AlongWall, N)[..] else { panic!("one way along the wall") };
    assert_eq!((edge.length, edge.openings, times(edge, Work::ThroughStud)), (Length::feet(4), 2, 2));
    assert_eq!(edge.opens, [dwelling::RoomIndex(0)]);
}

/// By hand: from 16 in up to 8 ft are 6 ft 8 in, and a foot past the plate; down are 1 ft 4 in and a foot.
#[test]
fn a_box_in_an_inside_wall_reaches_the_attic_and_the_crawl_space() {
    let graph = graph(HOUSE);
    let [up] = edges(&graph, EdgeKind::ToAttic, K)[..] else { panic!("one way up") };
    assert_eq!((up.length, up.openings), (Length::feet_and_inches(7, 8), 0));
    assert_eq!((times(up, Work::DrillPlate), times(up, Work::JoinBranch), times(up, Work::PastInsulation)), (1, 1, 0));
    assert_eq!(up.reason, "up the inside wall into the attic, 7 ft 8 in, one hole in the top plate");
    assert_eq!(up.back, "down the inside wall from the attic, 7 ft 8 in, one hole in the top plate");
    let [down] = edges(&graph, EdgeKind::ToBelow, K)[..] else { panic!("one way down") };
    assert_eq!(down.length, Length::feet_and_inches(2, 4));
}

/// By hand: the panel's wall has no room behind it: its insulation is passed once. A panel joins no branch.
#[test]
fn a_way_inside_an_outside_wall_passes_its_insulation() {
    let graph = graph(HOUSE);
    let [up] = edges(&graph, EdgeKind::ToAttic, MAIN)[..] else { panic!("one way up") };
    assert_eq!((times(up, Work::PastInsulation), times(up, Work::JoinBranch)), (1, 0));
    assert!(up.reason.contains("the outside wall") && up.reason.contains("past insulation"), "{}", up.reason);
}

/// By hand: a block at half height is passed on the way up from 16 in, not on the way down; it costs an opening.
#[test]
fn a_fire_block_costs_an_opening_on_the_way_up() {
    let graph = graph(&HOUSE.replacen("fire_blocks = false", "fire_blocks = true", 1));
    let [up] = edges(&graph, EdgeKind::ToAttic, K)[..] else { panic!("one way up") };
    let [down] = edges(&graph, EdgeKind::ToBelow, K)[..] else { panic!("one way down") };
    assert_eq!((up.openings, times(up, Work::PastFireBlock), down.openings), (1, 1, 0));
    assert_eq!(up.opens, [dwelling::RoomIndex(0)]);
}

/// By hand: of the three places around the kitchen, from the panel along 5 + 12 + 5 ft of wall to K, 5 ft and 16 in of
/// height at the ends: 28 ft 4 in.
#[test]
fn raceway_runs_along_the_baseboard_from_place_to_place_and_opens_nothing() {
    let graph = graph(HOUSE);
    let ways = edges(&graph, EdgeKind::Raceway, MAIN);
    let lengths: Vec<Length> = ways.iter().map(|edge| edge.length).collect();
    assert!(lengths.contains(&Length::feet_and_inches(28, 4)), "{lengths:?}");
    assert!(ways.iter().all(|edge| edge.openings == 0));
    assert!(ways.iter().all(|edge| edge.line.iter().all(|corner| corner.layer == Layer::Surface)));
}

/// By hand: K and D come out at one point and N 3 ft from it; from the panel to there are 12 ft.
#[test]
fn what_comes_out_in_one_space_is_joined_along_it() {
    let graph = graph(HOUSE);
    let along: Vec<Length> =
        graph.edges.iter().filter(|edge| edge.kind == EdgeKind::Along).map(|edge| edge.length).collect();
    assert!(along.contains(&Length::feet(12)) && along.contains(&Length::feet(3)), "{along:?}");
    let risers = graph.edges.iter().filter(|edge| edge.kind == EdgeKind::Riser).count();
    assert_eq!(risers, 1, "one riser joins the attic to the crawl space");
}

/// By hand: a slab below and another dwelling above leave the ways in the walls.
#[test]
fn nothing_leads_into_what_is_closed() {
    for closed in ["closed", "another dwelling", "roof", "slab"] {
        let text = HOUSE.replace("above = \"attic\"", &format!("above = \"{closed}\""));
        let graph = graph(&text.replace("below = \"crawl space\"", &format!("below = \"{closed}\"")));
        assert!(graph.places.iter().all(|place| !matches!(place.is, PlaceKind::Junction(_))), "{closed}");
        assert!(!edges(&graph, EdgeKind::BackToBack, K).is_empty());
    }
}

/// By hand: an upstairs room over the kitchen, its wall over K's: 6 ft 8 in + 1 ft, then 8 ft + 1 ft, one floor opened.
#[test]
fn a_wall_that_stands_over_another_leads_up_through_two_storeys() {
    let upstairs = "[[room]]\nid = \"loft\"\nuse = \"bedroom\"\nfloor = 2\noutline = [[0, 0], [12, 0], [12, 10], [0, 10]]\n\
                    above = \"attic\"\nbelow = \"finished room\"\n[[box]]\nid = \"K\"";
    let text = HOUSE.replacen("above = \"attic\"", "above = \"finished room\"", 1);
    let graph = graph(&text.replacen("[[box]]\nid = \"K\"", upstairs, 1));
    let [up] = edges(&graph, EdgeKind::ToAttic, K)[..] else { panic!("one way up") };
    assert_eq!((up.length, up.openings), (Length::feet_and_inches(16, 8), 1));
    assert_eq!((times(up, Work::FishBay), times(up, Work::ThroughFloor)), (2, 1));
}

#[test]
fn a_row_of_the_survey_takes_the_place_of_the_built_way() {
    let row = |more: &str| format!("{HOUSE}[[route]]\nfrom = \"K\"\nto = \"D\"\nkind = \"egc\"\n{more}\n");
    for more in ["closed = true", "length = \"2 ft\""] {
        assert!(edges(&graph(&row(more)), EdgeKind::BackToBack, K).is_empty(), "{more}");
    }
    let from_panel = format!("{HOUSE}[[route]]\nfrom = \"main\"\nto = \"K\"\nkind = \"egc\"\nclosed = true\n");
    let graph = graph(&from_panel);
    assert!(edges(&graph, EdgeKind::ToAttic, K).is_empty() && edges(&graph, EdgeKind::ToBelow, K).is_empty());
    assert!(!edges(&graph, EdgeKind::ToAttic, N).is_empty());
}

#[test]
fn what_is_not_known_gives_no_way_and_is_told() {
    let graph = graph(&HOUSE.replace("at = [12, 8]\n", "").replacen("above = \"attic\"\n", "", 1));
    assert!(graph.places.iter().all(|place| place.is != N));
    let told: Vec<&str> = graph.unbuilt.iter().map(|unbuilt| unbuilt.why.as_str()).collect();
    assert_eq!(told, ["what lies above it is not known", "its position is not on the plan"]);
    assert!(edges(&graph, EdgeKind::ToAttic, K).is_empty());
}

#[test]
fn a_dwelling_that_is_not_drawn_has_no_graph() {
    let bare: String =
        HOUSE.lines().filter(|line| !line.starts_with("outline")).map(|line| format!("{line}\n")).collect();
    assert_eq!(graph(&bare), RouteGraph::default());
}
