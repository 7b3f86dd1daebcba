//! The proposal held against the offers.

use crate::planned_job::{with_example, with_survey_and_offers};
use estimate::Cents;
use papers::{Block, Job, inspection_packet, proposal, work_order};
use remedies::NotPricedAnswer;

const FLAT: &str = include_str!("../../../../examples/flat.toml");

#[test]
fn every_offer_stands_with_its_price_its_grounds_and_its_limits() {
    with_survey_and_offers(FLAT, |job| {
        let words = proposal(job).words();
        let offers = job.plan.offers.as_ref().unwrap();
        assert!(offers.offers.len() > 1);
        for (number, offer) in offers.offers.iter().enumerate() {
            assert!(words.contains(&format!("Offer {}: {}", number + 1, offer.name)), "{words}");
            assert!(words.contains(&format!("Price {}", Cents(offer.owner_cents))));
        }
        let prices: Vec<String> = offers.offers.iter().map(|offer| Cents(offer.owner_cents).to_string()).collect();
        assert!(words.contains(&format!("Price {}", prices.join(" "))));
    });
}

#[test]
fn what_is_grounded_and_what_is_left_without_are_all_receptacles_together() {
    with_survey_and_offers(FLAT, |job| {
        let words = proposal(job).words();
        let counts = |lead: &str| {
            let of = |line: &&str| line.starts_with(lead);
            // By room, such as `Kitchen K-1, K-2; Hall H-1`.
            let count = |line: &str| match line.trim_start_matches(lead).trim() {
                "none" => 0,
                rooms => rooms.split("; ").map(|room| room.split(", ").count()).sum(),
            };
            words.lines().filter(of).map(count).collect::<Vec<_>>()
        };
        let both = counts("Grounded ").into_iter().zip(counts("No ground ")).map(|(has, not)| has + not);
        let both: Vec<usize> = both.collect();
        assert_eq!(both, vec![job.plan.totals.receptacles; both.len()]);
        assert_eq!(both.len(), job.plan.offers.as_ref().unwrap().offers.len());
    });
}

#[test]
fn invented_prices_and_what_is_not_settled_are_told() {
    with_survey_and_offers(FLAT, |job| {
        let words = proposal(job).words();
        assert!(words.contains("The prices are invented demo figures"));
        for line in &job.plan.in_the_way {
            let rest = line.split_once(": ").map_or(line.as_str(), |(_, rest)| rest);
            assert!(words.contains(rest), "{line}");
        }
    });
}

/// The parts that are shown add up to the price that is asked.
#[test]
fn the_parts_of_the_price_add_up_to_what_is_asked() {
    with_survey_and_offers(FLAT, |job| {
        let words = proposal(job).words();
        let table = words
            .split("What makes up the price of offer 1\n")
            .nth(1)
            .and_then(|rest| rest.split("Not in the price").next());
        let cents = |line: &str| {
            let (_, dollars) = line.rsplit_once('$')?;
            dollars.replace([',', '.'], "").parse::<i64>().ok()
        };
        let mut sums: Vec<i64> = table.unwrap_or_default().lines().filter_map(cents).collect();
        let together = sums.pop();
        assert!(sums.len() >= 4, "{words}");
        assert_eq!(together, Some(sums.iter().sum()));
        assert_eq!(together, Some(job.plan.offers.as_ref().unwrap().offers[0].owner_cents));
        assert!(!words.contains("the permit's fee;"));
    });
}

/// By hand: the parts of a price in which a danger has one of its own, and the lines of all papers that name it.
#[test]
fn what_is_dangerous_stands_on_the_proposal_the_work_order_and_among_the_parts_of_the_price() {
    let knob_and_tube = include_str!("../../../../examples/knob-and-tube.toml");
    with_survey_and_offers(knob_and_tube, |job| {
        let (told, danger) = (proposal(job).words(), &job.plan.dangers[0]);
        let price = Cents(danger.price.total_cents).to_string();
        assert!(told.contains("Repair what is dangerous\nWhichever offer you choose"), "{told}");
        assert!(
            told.contains(&danger.because) && told.contains("The price is an allowance; it rests on one false join")
        );
        assert!(
            told.contains(&format!("Repair what is dangerous, P-3: {} (allowance) {price}", danger.says)),
            "{told}"
        );
        assert!(told.contains("what goes beyond what an allowance rests on"), "{told}");
        let ordered = work_order(job).words();
        assert!(ordered.contains("Repair what is dangerous, first") && ordered.contains("box P-3"), "{ordered}");
        // What has no price in the book and what cannot be priced is told as not in the price.
        let mut plan = job.plan.clone();
        let (at, says, why) = ("panel", "it hums".to_owned(), "nobody has looked".to_owned());
        plan.not_priced = vec![NotPricedAnswer { at, id: "M".into(), says, why }];
        let mut estimate = job.estimate.clone();
        estimate.without_price = vec!["find-open-neutral"];
        let told = proposal(&Job { plan: &plan, estimate: &estimate, ..job.clone() }).words();
        assert!(told.contains("at panel M: It hums. Not priced: nobody has looked;"), "{told}");
        assert!(told.contains("no price in the price book for “Find where the neutral"), "{told}");
    });
}

/// By hand: of the two things that can be left unproved, one, the other, and neither.
#[test]
fn what_was_not_proved_is_told_to_the_owner() {
    with_survey_and_offers(FLAT, |job| {
        let told = |complete: bool, bound: Option<i64>| {
            let mut plan = job.plan.clone();
            plan.offers.as_mut().unwrap().complete = complete;
            plan.totals.nothing_below_cents = bound;
            proposal(&Job { plan: &plan, ..job.clone() }).words()
        };
        assert!(told(false, None).contains("there may be better ones beside these"));
        assert!(told(true, Some(1)).contains("the same may be had for less"));
        assert!(!told(true, None).contains("stopped at its limit"));
    });
}

/// By hand: polarity is reversed in the bungalow and in the flat nowhere; in the flat a ground is measured in ohms.
#[test]
fn words_are_explained_where_they_are_said_and_nowhere_else() {
    with_example("bungalow", |job| {
        let words = proposal(job).words();
        assert!(
            words.contains("Screw shell the thread of a lamp holder") && words.contains("Hot, neutral the two wires")
        );
    });
    with_example("flat", |job| {
        let words = proposal(job).words();
        assert!(words.contains("Ω ohm: how hard") && !words.contains("Screw shell"), "{words}");
        assert!(
            words.contains("Of 10 receptacles (outlets), 2 have a sound ground, 1 has no ground and 7 have"),
            "{words}"
        );
    });
}

/// By hand: the cottage has no outline and no place of a box, the knob-and-tube house has both.
#[test]
fn a_floor_that_cannot_be_drawn_is_told_as_a_list_and_takes_no_page() {
    let sheets = |blocks: &[Block]| blocks.iter().filter(|block| matches!(block, Block::Sheet(..))).count();
    with_example("cottage-done", |job| {
        let paper = proposal(job);
        let words = paper.words();
        assert!(words.contains("The list at the end tells every box as it was found."), "{words}");
        assert!(words.contains("BA-1 Bathroom two-slot receptacle, no ground 2"), "{words}");
        assert_eq!(sheets(&paper.blocks), 0);
        // The one-line before and after, on one page.
        assert_eq!(sheets(&inspection_packet(job).blocks), 1);
    });
    with_example("knob-and-tube", |job| {
        let paper = proposal(job);
        assert_eq!(sheets(&paper.blocks), 3);
        assert!(!paper.words().contains("Every box as it was found"));
    });
}

/// By hand: the house of 1928 has knob-and-tube wiring and fuses, the balcony of the flat a tail of aluminium.
#[test]
fn an_owner_is_told_which_kinds_of_wiring_ask_for_care() {
    let told = |name: &str| {
        let mut words = String::new();
        with_example(name, |job| words = proposal(job).words());
        ["Knob-and-tube wiring: ", "Aluminium wiring: ", "Fuses: "].map(|kind| words.contains(kind))
    };
    assert_eq!(told("knob-and-tube"), [true, false, true]);
    assert_eq!(told("flat"), [false, true, false]);
    assert_eq!(told("cottage-done"), [false, false, false]);
}
