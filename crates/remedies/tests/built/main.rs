//! A plan that buys a way which the tool built from the floor plan, its price reckoned by hand.

use dwelling::{BoxIndex, PanelIndex, RouteEnd, RouteKind};
use estimate::{Cents, PriceBook};
use remedies::Planned;
use routes::EdgeKind;
use rulebook::{CodeInForce, Edition};
use survey::{Format, read};

/// By hand: up the outside wall 8 - 5 + 1 = 4 ft, end 6 min 9.50, plate 9.50, bay 10 min 15.83, insulation 15 min 23.75; along
/// the attic 12 ft of a minute, 12 × 1.58 = 18.96; down to 16 in, 6 ft 8 in + 1 ft, 9.50 + 9.50 + 15.83. Together 112.37, and
/// 23 ft 8 in, 24 ft × 0.62 + 2 × 1.90 = 18.68: 131.05. A single conductor joins a branch besides: 24 × 0.22 + 3.80 + 3.60 =
/// 12.68 and 9.50 more of work: 134.55. By the crawl space it is 12 min more.
#[test]
fn the_cheapest_built_way_is_bought_leg_by_leg() {
    let found = read(include_bytes!("two_rooms.toml"), Format::Toml);
    let Some(dwelling) = found.dwelling else { panic!("{:?}", found.diagnostics) };
    let plan = Planned::of(&dwelling, CodeInForce::published(Edition::Nec2020), &PriceBook::demo()).unwrap();
    let ways = plan.ways();
    let [way] = ways.as_slice() else { panic!("one way") };
    assert_eq!((way.id.as_str(), way.from, way.to), ("to K", RouteEnd::Panel(PanelIndex(0)), BoxIndex(0)));
    assert_eq!((way.kind, plan.price_of_links(way.own()).total()), (RouteKind::NewCable, Cents(13_105)));
    let legs: Vec<EdgeKind> = way.own().iter().flat_map(|link| plan.legs_of(link)).map(|leg| leg.kind).collect();
    assert_eq!(legs, [EdgeKind::ToAttic, EdgeKind::Along, EdgeKind::ToAttic]);
    let parts = plan.total().total().0 - plan.chosen(BoxIndex(0)).price.total().0;
    assert_eq!(parts, 13_105, "the rest of the plan costs nothing");
}
