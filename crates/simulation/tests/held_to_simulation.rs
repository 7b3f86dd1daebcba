//! The odds of readings and what is concluded from them, held against simulated houses.

use diagnosis::belief::{Draws, Floats, Hangs, Loaded, Priors, Stakes, pair, places};
use simulation::{BINS, Calibration, Counts, Fault, Key, Searched, Size, count, house, searched};

/// What the table has for a key; nothing for what other tables hold.
fn reckoned(key: Key, draws: Draws, load: Loaded) -> Option<Vec<f64>> {
    let earth = (Hangs::Ground { weak: false }, Floats::Nowhere);
    match key {
        Key::Place(of) => Some(places(of, draws, load).to_vec()),
        Key::Pair(one, other) => Some(pair(one, other, draws, load).to_vec()),
        Key::Earth(one) => Some(pair(one, earth, draws, load).to_vec()),
        Key::One | Key::Impedance(_) => None,
    }
}

/// The bound: four standard deviations of the count, and a twentieth for what the table lumps together.
#[test]
fn the_table_of_readings_is_what_the_solver_counts() {
    let counts = count(250, 40_001, &Priors::default());
    let mut held = 0;
    for ((key, draws, load), counted) in &counts.of {
        let total = f64::from(counted.iter().sum::<u32>());
        let Some(odds) = reckoned(*key, *draws, *load) else { continue };
        if total < 40.0 {
            continue;
        }
        held += 1;
        for (odds, share) in odds.iter().zip(Counts::shares(counted)) {
            // Openings of one house are not independent: their count counts for a third.
            let spread = (odds.max(share) * (1.0 - odds.min(share)) * 3.0 / total).sqrt();
            let close = (odds - share).abs() <= 0.05 + 4.0 * spread;
            assert!(close, "{key:?} {draws:?} {load:?}: {counted:?}, reckoned {odds}");
        }
    }
    assert!(held > 100, "only {held} were counted often enough");
}

#[test]
fn what_is_said_is_true_as_often_as_it_is_said_to_be() {
    let priors = Priors::default();
    let mut calibration = Calibration::default();
    for seed in 70_000..70_300 {
        if let Some(house) = house(seed, Size::default(), &priors) {
            calibration.add(&house, &priors);
        }
    }
    assert!(calibration.houses > 290 && calibration.unread == 0);
    for (bin, from) in calibration.all().iter().zip(BINS) {
        // Statements of one house are not independent: their count counts for a fifth.
        let spread = (bin.mean() * (1.0 - bin.mean()) * 5.0 / f64::from(bin.said.max(1))).sqrt();
        let off = (bin.share() - bin.mean()).abs();
        assert!(
            off <= 0.002 + 4.0 * spread,
            "from {from}: {} said, {} sure, {} true",
            bin.said,
            bin.mean(),
            bin.share()
        );
    }
    assert!(calibration.grounded > 20, "said to be grounded: {}", calibration.grounded);
    assert_eq!(calibration.false_grounds_without, 0);
}

/// Over the lengths and both faults together, as the example `search` counts them; a single row of so few circuits says
/// nothing.
#[test]
fn searches_open_at_most_half_the_boxes_together_that_walking_from_the_panel_does() {
    let (priors, stakes) = (Priors::default(), Stakes::default());
    let mut found: Vec<Searched> = Vec::new();
    for fault in [Fault::Interrupted, Fault::Jumper] {
        for boxes in [4, 6, 9, 12] {
            found.extend((30_000..30_003).filter_map(|seed| searched(seed, fault, boxes, &priors, &stakes)));
        }
    }
    assert_eq!(found.len(), 24, "every search ends");
    let walked: usize = found.iter().map(|one| one.walked).sum();
    let opened: usize = found.iter().map(|one| one.opened).sum();
    assert!(2 * opened <= walked, "{opened} opened, {walked} by walking");
    assert!(found.iter().all(|one| one.opened <= one.boxes));
}

#[test]
fn the_same_seed_gives_the_same_house() {
    let of = |seed| house(seed, Size::default(), &Priors::default()).map(|house| house.dwelling);
    assert_eq!(of(3), of(3));
    assert_ne!(of(3), of(4));
}
