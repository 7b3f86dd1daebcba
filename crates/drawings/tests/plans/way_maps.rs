//! Maps of ways held against the plan: every built way on a map, its stretches numbered, nothing on anything else.

use crate::generated::survey;
use crate::reading::{EXAMPLES, Rectangle, covered, dwelling, groups, name, shown};
use drawings::way_maps;
use dwelling::Dwelling;
use estimate::PriceBook;
use remedies::Planned;
use roxmltree::Document;
use rulebook::{CodeInForce, Edition};

fn planned(dwelling: &Dwelling) -> Planned<'_> {
    let edition = dwelling.job.edition.and_then(Edition::of_year).unwrap_or(Edition::Nec2020);
    Planned::of(dwelling, CodeInForce::published(edition), &PriceBook::demo())
        .unwrap_or_else(|fault| panic!("{fault:?}"))
}

#[test]
fn every_way_that_goes_along_a_floor_is_on_a_map_and_legible() {
    let generated = (0..5).map(|seed| survey(seed, 30, 1 + seed as usize % 2));
    for text in EXAMPLES.into_iter().map(str::to_owned).chain(generated) {
        let dwelling = dwelling(&text);
        let plan = planned(&dwelling);
        let maps = way_maps(&plan);
        for way in plan.ways() {
            let legs = way.own().iter().flat_map(|link| plan.legs_of(link));
            let goes_along =
                legs.flat_map(|leg| leg.line.windows(2).map(|pair| (pair[0], pair[1])).collect::<Vec<_>>());
            let goes_along =
                goes_along.filter(|(one, other)| one.floor == other.floor && one.at != other.at).count() > 0;
            assert!(!goes_along || maps.iter().any(|map| map.ways.contains(&way.id)), "{}", way.id);
        }
        for map in &maps {
            let document = Document::parse(&map.figure.svg).unwrap();
            let view = shown(document.root_element());
            let mut standing: Vec<(String, Rectangle)> = Vec::new();
            for class in
                ["box", "panel", "source", "box-label", "panel-label", "source-label", "route-label", "stretch-label"]
            {
                for group in groups(&document, class) {
                    let of = format!("{class} {}", name(group));
                    let area = covered(group).unwrap_or_else(|| panic!("{of} covers nothing"));
                    assert!(view.holds(&area), "{}: {of} at {area:?} in {view:?}", map.figure.title);
                    for (other, there) in &standing {
                        assert!(!there.overlaps(&area), "{}: {of} stands on {other}", map.figure.title);
                    }
                    standing.push((of, area));
                }
            }
        }
    }
}

/// By hand, from the survey: the panel hangs in the laundry porch, and the crawl space leads below the kitchen and the dining
/// room to the back bedroom.
#[test]
fn a_map_shows_the_rooms_that_its_ways_pass_and_no_other() {
    let bungalow = dwelling(EXAMPLES[0]);
    let plan = planned(&bungalow);
    let maps = way_maps(&plan);
    assert_eq!(maps.len(), 1);
    assert_eq!(maps[0].ways, ["to B2-3", "to LA-1"]);
    let says = &maps[0].figure.says;
    assert!(
        says.contains("R3.3 along the crawl space, 34 ft") && says.contains("one hole in the bottom plate"),
        "{says}"
    );
    let svg = &maps[0].figure.svg;
    assert!(svg.contains(">KITCHEN<") && svg.contains(">BACK BEDROOM<") && !svg.contains(">DEN"), "{svg}");
    // Ways that the survey states have no line of their own: nothing is drawn where they might lie.
    assert!(!maps.iter().any(|map| map.ways.iter().any(|way| way == "R-fridge")));
}
