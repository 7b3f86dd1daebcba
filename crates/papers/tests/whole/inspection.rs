//! The inspection packet held against the plan and the checks.

use crate::planned_job::{EXAMPLES, with_example};
use calculations::Verdict;
use papers::{Block, inspection_packet};

#[test]
fn every_opening_stands_with_its_duties_and_the_sections_of_its_remedy() {
    for name in EXAMPLES {
        with_example(name, |job| {
            let words = inspection_packet(job).words();
            let lines: Vec<&str> = words.lines().collect();
            for opening in &job.plan.openings {
                let sections = opening.cites.join(", ");
                let of_it =
                    |line: &&&str| line.starts_with(&format!("{} ", opening.box_id)) && line.contains(&sections);
                assert!(lines.iter().any(|line| of_it(&line)), "{name}: {} [{sections}]", opening.box_id);
            }
        });
    }
}

#[test]
fn checks_that_do_not_pass_are_told_and_never_counted_as_passed() {
    for name in EXAMPLES {
        with_example(name, |job| {
            let words = inspection_packet(job).words();
            for row in job.checks.iter().filter(|row| row.verdict != Verdict::Ok) {
                // That it was not checked stands in the column beside it.
                let says = row.says.strip_prefix("not checked: ").unwrap_or(&row.says);
                assert!(words.contains(says), "{name}: {}", row.says);
            }
            let passed = job.checks.iter().filter(|row| row.verdict == Verdict::Ok).count();
            assert!(
                words.contains(&format!("Of {} checks", job.checks.len()))
                    && words.contains(&format!("{passed} come out"))
            );
        });
    }
}

/// By hand, from the survey: a basement and two storeys; the one-line of its few circuits has both moments on one sheet.
#[test]
fn the_plan_of_every_floor_is_a_page_of_its_own() {
    with_example("knob-and-tube", |job| {
        let packet = inspection_packet(job);
        let sheets = packet.blocks.iter().filter(|block| matches!(block, Block::Sheet(..))).count();
        let lines = job.drawn.one_line.len();
        assert_eq!(sheets, job.floors_after.len() + lines);
        assert!(job.floors_after.len() >= 3 && lines == 1);
    });
}

/// By hand, from the survey: circuit 3 runs L-1, L-2, there parts to L-3 – L-4 – D-1 (D-2, D-3) and to L-5.
#[test]
fn the_one_line_tells_what_feeds_what() {
    with_example("bungalow", |job| {
        let words = inspection_packet(job).words();
        let fed =
            [("L-1", "the panel"), ("L-2", "L-1"), ("L-3", "L-2"), ("L-5", "L-2"), ("L-4", "L-3"), ("D-2", "D-1")];
        for (at, from) in fed {
            let after = |rest: &str| rest.split(", from ").nth(1).is_some_and(|rest| rest.starts_with(from));
            let told = words.split(&format!("{at}: ")).skip(1).any(after);
            assert!(told, "{at} from {from}");
        }
    });
}

/// By hand, from the plan of the bungalow: the way to B2-3 shares its first stretches with the one to LA-1, on 20 A.
#[test]
fn the_packet_tells_the_sizes_of_a_way_and_nothing_of_surveys_and_prices() {
    with_example("bungalow", |job| {
        let words = inspection_packet(job).words();
        assert!(words.contains("12 AWG, then 14 AWG from main to B2-3, 48 ft 4 in"), "{words}");
        assert!(job.plan.assumptions.iter().any(|told| told.contains('`') && !told.contains('$')));
        assert!(!words.contains('`') && !words.contains('$'), "{words}");
    });
}
