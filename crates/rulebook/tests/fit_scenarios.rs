//! Whether the box of an opening holds what a remedy leaves in it.

mod scenario;

use dwelling::{CableInBox, CableKind, Clamps, Holding};
use electrical::{Amperes, ConductorMetal, Gauge, Volume};
use rulebook::{CodeInForce, DeviceSpace, Edition, FillVerdict, Opening, Remedy, fill_with};
use scenario::{Ask, ENTERED, bedroom, two_wire_cables, under};

fn with_box(hundredths: i64, cables: usize) -> Opening {
    let mut opening = bedroom();
    opening.fill.volume = Some(Volume::hundredths(hundredths));
    opening.fill.cables = two_wire_cables(cables);
    opening
}

fn missing(verdict: &FillVerdict) -> &str {
    match verdict {
        FillVerdict::NotChecked(missing) => &missing.because,
        other => panic!("{other:?} is no open question"),
    }
}

/// By hand: 4 × 2.00 for the conductors + 2.00 for the clamps + 4.00 for the strap = 14.00.
#[test]
fn two_old_cables_and_a_receptacle_overfill_12_5_and_exactly_fill_14() {
    for edition in ENTERED {
        assert_eq!(under(edition, &with_box(1250, 2)).fit(Remedy::GfciReceptacle), FillVerdict::TooFull);
        assert_eq!(under(edition, &with_box(1400, 2)).fit(Remedy::GfciReceptacle), FillVerdict::Fits);
    }
}

/// By hand: 14.00 + 2.00 for one 14 AWG ground = 16.00; 18.0 holds it and 14.0 does not.
#[test]
fn a_ground_brought_to_the_box_takes_one_allowance_more() {
    for edition in ENTERED {
        assert_eq!(under(edition, &with_box(1400, 2)).fit(Remedy::SeparateEgc), FillVerdict::TooFull);
        let judgement = under(edition, &with_box(1800, 2));
        assert_eq!(judgement.fit(Remedy::SeparateEgc), FillVerdict::Fits);
        let fill = judgement.of(Remedy::SeparateEgc).fit.fill.clone().unwrap();
        assert_eq!(fill.taken, Volume::hundredths(1600));
        assert_eq!(fill.lines.len(), 4);
    }
}

/// By hand: a 20 A circuit brings a 12 AWG ground: 4 × 2.25 + 2.25 + 4.50 + 2.25 = 18.00, exactly an 18.0 box.
#[test]
fn the_ground_is_counted_by_the_size_its_breaker_asks_for() {
    let mut opening = with_box(1800, 2);
    opening.breaker = Some(Amperes::new(20));
    opening.fill.cables.known.iter_mut().for_each(|cable| cable.gauge = Some(Gauge::AWG_12));
    assert_eq!(under(Edition::Nec2020, &opening).fit(Remedy::SeparateEgc), FillVerdict::Fits);
    opening.fill.volume = Some(Volume::hundredths(1799));
    assert_eq!(under(Edition::Nec2020, &opening).fit(Remedy::SeparateEgc), FillVerdict::TooFull);
}

#[test]
fn what_is_unknown_is_named_and_never_a_pass() {
    let mut no_volume = with_box(1800, 2);
    no_volume.fill.volume = None;
    assert!(missing(&under(Edition::Nec2020, &no_volume).fit(Remedy::GfciReceptacle)).contains("volume"));
    let mut no_gauge = with_box(1800, 2);
    no_gauge.fill.cables.known[0].gauge = None;
    assert!(
        missing(&under(Edition::Nec2020, &no_gauge).fit(Remedy::GfciReceptacle)).contains("size of the conductors")
    );
    let mut uncounted = with_box(1800, 1);
    uncounted.fill.cables.complete = false;
    assert!(missing(&under(Edition::Nec2020, &uncounted).fit(Remedy::GfciReceptacle)).contains("count the cables"));
    let mut unrated = with_box(1800, 1);
    unrated.breaker = None;
    assert!(missing(&under(Edition::Nec2020, &unrated).fit(Remedy::SeparateEgc)).contains("breaker's rating"));
}

#[test]
fn a_box_that_is_too_full_for_what_is_known_of_is_too_full_however_many_cables_are_uncounted() {
    let mut uncounted = with_box(750, 2);
    uncounted.fill.cables.complete = false;
    assert_eq!(under(Edition::Nec2020, &uncounted).fit(Remedy::GfciReceptacle), FillVerdict::TooFull);
}

/// By hand: without clamps 12.00, with clamps 14.00.
#[test]
fn clamps_nobody_has_seen_matter_only_where_they_decide() {
    let fit = |hundredths| {
        let mut opening = with_box(hundredths, 2);
        opening.fill.clamps = None;
        under(Edition::Nec2020, &opening).fit(Remedy::GfciReceptacle)
    };
    assert_eq!(fit(1400), FillVerdict::Fits);
    assert_eq!(fit(1199), FillVerdict::TooFull);
    assert!(missing(&fit(1250)).contains("clamps"));
}

/// By hand: two conductors 4.00, strap 4.00, ground of 14 AWG 2.00 where the unseen cable has one: 10.00; else 8.00.
#[test]
fn a_cable_nobody_has_seen_may_have_a_ground_that_takes_room() {
    let unseen = CableInBox {
        kind: CableKind::Unknown,
        gauge: Some(Gauge::AWG_14),
        metal: ConductorMetal::Copper,
        insulated: 2,
    };
    let fit = |hundredths| {
        let mut opening = with_box(hundredths, 0);
        opening.fill.cables.known = vec![unseen];
        opening.fill.clamps = Some(Clamps::None);
        under(Edition::Nec2020, &opening).fit(Remedy::GfciReceptacle)
    };
    assert_eq!(fit(1000), FillVerdict::Fits);
    assert!(missing(&fit(900)).contains("what kind of cable"));
}

/// By hand: old reduced-size ground of 16 AWG: 4 × 2.00 + 4.00 + 2.00 + 1.75 = 15.75.
#[test]
fn a_reduced_size_ground_is_counted_by_its_own_size() {
    let mut opening = with_box(1575, 2);
    opening.fill.cables.known.iter_mut().for_each(|cable| cable.kind = CableKind::NmReducedGround);
    assert_eq!(under(Edition::Nec2017, &opening).fit(Remedy::GfciReceptacle), FillVerdict::Fits);
    opening.fill.volume = Some(Volume::hundredths(1574));
    assert_eq!(under(Edition::Nec2017, &opening).fit(Remedy::GfciReceptacle), FillVerdict::TooFull);
}

/// By hand: a splice box with two cables and clamps: 4 × 2.00 + 2.00 = 10.00, no strap.
#[test]
fn a_splice_box_that_is_left_counts_no_strap() {
    let splice = Opening { holds: Holding::Splice, ..with_box(1000, 2) };
    assert_eq!(under(Edition::Nec2020, &splice).fit(Remedy::Leave), FillVerdict::Fits);
}

/// By hand: two gangs of device beside another strap: 4 × 2.00 + 8.00 + 4.00 + 2.00 = 22.00.
#[test]
fn a_wide_device_and_another_strap_are_counted_beside_each_other() {
    let mut contents = with_box(2200, 2).fill;
    contents.other_straps = 1;
    let code = CodeInForce::published(Edition::Nec2020);
    assert_eq!(fill_with(&contents, DeviceSpace::Wide(2), 0, None, &code).verdict, FillVerdict::Fits);
    contents.volume = Some(Volume::hundredths(2199));
    assert_eq!(fill_with(&contents, DeviceSpace::Wide(2), 0, None, &code).verdict, FillVerdict::TooFull);
}

#[test]
fn numbers_beyond_any_box_are_too_full_and_nothing_breaks() {
    let mut contents = with_box(1800, 1).fill;
    contents.other_straps = u32::MAX;
    contents.support_fittings = u32::MAX;
    contents.cables.known[0].insulated = u32::MAX;
    let code = CodeInForce::published(Edition::Nec2023);
    let fit = fill_with(&contents, DeviceSpace::Wide(u32::MAX), u32::MAX, Some(Gauge::AWG_6), &code);
    assert_eq!(fit.verdict, FillVerdict::TooFull);
}
