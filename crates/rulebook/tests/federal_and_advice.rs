//! Federal thresholds for old paint, and advice on spacing, against what outside sources print.

use electrical::{Amperes, Length};
use rulebook::federal::{LeadSafe, PaintedSurface, lead_caution, lead_safe};
use rulebook::spacing::{LEAST_WALL, device_volt_amperes, receptacles_for_circuit, receptacles_for_wall};

fn inside(square_inches: u32) -> PaintedSurface {
    PaintedSurface { inside: true, square_inches: Some(square_inches), more_than_minor: Some(false) }
}

/// Published: EPA, frequent questions on minor repair: 6 square feet in a room, 20 outside.
#[test]
fn six_square_feet_inside_and_twenty_outside_are_minor() {
    let asked = |surface| lead_safe(Some(1950), surface).0;
    assert_eq!(asked(inside(6 * 144)), LeadSafe::MinorWork);
    assert_eq!(asked(inside(6 * 144 + 1)), LeadSafe::Asked);
    let outside = |square_inches| PaintedSurface { inside: false, ..inside(square_inches) };
    assert_eq!(asked(outside(20 * 144)), LeadSafe::MinorWork);
    assert_eq!(asked(outside(20 * 144 + 1)), LeadSafe::Asked);
}

/// Published: EPA, frequent questions: no window replaced, no painted surface torn out, no forbidden practice.
#[test]
fn a_window_or_a_torn_out_surface_is_never_minor() {
    let surface = PaintedSurface { more_than_minor: Some(true), ..inside(1) };
    assert_eq!(lead_safe(Some(1950), surface).0, LeadSafe::Asked);
    assert_eq!(lead_safe(Some(1950), PaintedSurface { more_than_minor: None, ..inside(1) }).0, LeadSafe::NotChecked);
}

/// Published: blog.zackacademy.com: housing from before 1978.
#[test]
fn housing_from_1978_on_is_not_reached_and_an_unknown_year_is_not_checked() {
    assert_eq!(lead_safe(Some(1977), inside(2000)).0, LeadSafe::Asked);
    assert_eq!(lead_safe(Some(1978), inside(2000)).0, LeadSafe::NotThisHouse);
    assert_eq!(lead_safe(None, inside(1)).0, LeadSafe::NotChecked);
    assert_eq!(lead_caution(Some(1978)), None);
    assert!(lead_caution(Some(1940)).is_some_and(|caution| caution.contains("40 CFR 745.83")));
    assert!(lead_caution(None).is_some_and(|caution| caution.contains("may be from before 1978")));
}

/// Published: trade forum, thread 32172: one for 11 ft 10 in, three for 25 ft; ecmweb.com, code Q&A 93: from 2 ft.
#[test]
fn a_wall_has_one_receptacle_for_each_started_twelve_feet() {
    assert_eq!(receptacles_for_wall(Length::feet_and_inches(11, 10)), 1);
    assert_eq!(receptacles_for_wall(Length::feet(25)), 3);
    assert_eq!(LEAST_WALL, Length::feet(2));
    assert_eq!(receptacles_for_wall(Length::feet_and_inches(1, 11)), 0);
    assert_eq!(receptacles_for_wall(Length::feet(2)), 1);
}

/// Published: trade forum copy of the handbook's exhibit 220.3: 13 on 20 A; 180, 180, 360 and 360 VA.
#[test]
fn outside_of_dwellings_receptacles_are_counted() {
    assert_eq!(receptacles_for_circuit(120, Amperes::new(20)), 13);
    assert_eq!([2, 3].map(device_volt_amperes), [180, 180]);
    assert_eq!(2 * device_volt_amperes(2), 360);
    assert_eq!(device_volt_amperes(4), 360);
}
