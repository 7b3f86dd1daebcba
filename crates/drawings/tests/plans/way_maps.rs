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
            // More would not be legible at this size.
            assert!(map.ways.len() <= 5, "{:?}", map.ways);
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
    let ways: Vec<&[String]> = maps.iter().map(|map| map.ways.as_slice()).collect();
    assert_eq!(
        ways,
        [&["R-fridge".to_owned()] as &[String], &["R-wall".to_owned()], &["to B2-3".to_owned(), "to LA-1".to_owned()]]
    );
    let built = &maps[2];
    let says = &built.figure.says;
    assert!(
        says.contains("R3.3 along the crawl space, 34 ft") && says.contains("one hole in the bottom plate"),
        "{says}"
    );
    let svg = &built.figure.svg;
    assert!(svg.contains(">KITCHEN<") && svg.contains(">BACK BEDROOM<") && !svg.contains(">DEN"), "{svg}");
}

/// By hand, from the survey: both ends of `R-wall` stand on the plan, and what lies between them is not stated.
#[test]
fn a_stated_way_is_one_straight_dashed_line_that_says_that_it_is_not_the_way() {
    let bungalow = dwelling(EXAMPLES[0]);
    let maps = way_maps(&planned(&bungalow));
    let map = maps.iter().find(|map| map.ways == ["R-wall"]).unwrap();
    let document = Document::parse(&map.figure.svg).unwrap();
    let route = groups(&document, "route").next().unwrap();
    let lines: Vec<_> = route.children().filter(|node| node.attribute("points").is_some()).collect();
    assert_eq!(lines.len(), 1);
    assert!(lines[0].attribute("stroke-dasharray").is_some());
    assert_eq!(lines[0].attribute("points").unwrap().split_whitespace().count(), 2);
    assert!(
        map.figure.says.contains("A straight line from K-2 to L-4, not the way between them"),
        "{}",
        map.figure.says
    );
    assert!(map.figure.title.ends_with("straight line, not its way"), "{}", map.figure.title);
}
