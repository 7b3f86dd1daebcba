//! What is dangerous, or unlawful as it stands, is never called complete.

use crate::running::{list, thirdwire_reading};
use serde_json::Value;

/// A dwelling of one panel and one circuit, its boxes to be added.
fn dwelling(panel: &str, circuit: &str, boxes: &str) -> String {
    format!(
        "format = 1\n[job]\nname = \"one circuit\"\nedition = 2020\n[[panel]]\nid = \"p\"\n{panel}\n[[circuit]]\nid = \"1\"\n\
         panel = \"p\"\n{circuit}\n[[room]]\nid = \"r\"\nuse = \"bathroom\"\n{boxes}"
    )
}

fn planned(survey: &str) -> (i32, Value) {
    let said = thirdwire_reading(&["plan", "-", "--json"], survey);
    (said.code, said.json())
}

const COPPER: &str = "breaker = \"15 A\"\ncable = \"nm-two-wire\"\ngauge = 14";

/// By hand: a GFCI receptacle that does not open on its own button protects neither itself nor what it feeds: it is replaced.
#[test]
fn a_gfci_that_fails_its_own_test_is_replaced_and_counts_for_nothing() {
    let survey = dwelling(
        "made_for_it = []\nroom_beside = false",
        COPPER,
        "[[box]]\nid = \"B\"\nroom = \"r\"\ncircuit = \"1\"\nfed_by = \"panel\"\nholds = \"gfci\"\nsink = \"2 ft\"\n\
         body = { metal = true, volume = \"22 in3\", clamps = \"outside\" }\n\
         found = { hn = 120, own_test_trips = false, ground = \"none seen\" }\n",
    );
    let (_, plan) = planned(&survey);
    assert_eq!(plan["openings"][0]["device"], "gfci");
    assert_eq!(plan["openings"][0]["step"], "fit-gfci");
}

/// Published: 250.130(C) as code texts have it: the neutral serves inside the service equipment only.
#[test]
fn the_neutral_of_a_panel_that_may_be_fed_from_another_grounds_nothing() {
    for (service, asked) in [("", true), ("service = false", false)] {
        let survey = dwelling(
            service,
            COPPER,
            "[[box]]\nid = \"B\"\nroom = \"r\"\ncircuit = \"1\"\nfed_by = \"panel\"\nholds = \"three-slot\"\nserves = [\"computer\"]\n\
             found = { ground = \"none seen\" }\n[[source]]\nid = \"n\"\nkind = \"service-neutral\"\npanel = \"p\"\n\
             [[route]]\nid = \"R\"\nfrom = \"n\"\nto = \"B\"\nkind = \"egc\"\nlength = \"6 ft\"\n",
        );
        let (code, plan) = planned(&survey);
        assert_eq!(code, 3);
        assert_eq!(list(&plan, "/routes"), [] as [Value; 0]);
        assert_eq!(plan["routes_refused"][0]["could_change"], asked);
    }
}

/// By hand: 14 AWG copper stands behind 15 A at most, 240.4(D). A larger breaker is told, and excuses no duty.
#[test]
fn a_breaker_too_large_for_its_conductors_is_told_and_excuses_nothing() {
    let circuit = "breaker = \"30 A\"\ncable = \"nm-two-wire\"\ngauge = 14";
    let boxes = "[[box]]\nid = \"B\"\nroom = \"r\"\ncircuit = \"1\"\nfed_by = \"panel\"\nholds = \"two-slot\"\n\
                 found = { ground = \"none seen\" }\n";
    let survey = dwelling("", circuit, boxes).replace("use = \"bathroom\"", "use = \"bedroom\"");
    let (code, plan) = planned(&survey);
    assert_eq!(code, 3);
    assert_eq!(plan["status"], "provisional");
    let told = plan["in_the_way"][0].as_str().unwrap();
    assert!(told.contains("30 A breaker or fuse is too large") && told.contains("15 A"), "{told}");
    assert_eq!(plan["openings"][0]["requires"]["afci"]["need"], "required");
}

/// Common practice, no source: legs that read 134 and 106 V share a neutral that is open.
#[test]
fn an_open_shared_neutral_is_in_the_way_of_every_plan() {
    let survey = "format = 1\n[job]\nname = \"set\"\nedition = 2020\n[[panel]]\nid = \"p\"\n\
        [[circuit]]\nid = \"1\"\npanel = \"p\"\nbreaker = \"15 A\"\ncable = \"nm-two-wire\"\ngauge = 14\nshares_neutral_with = \"2\"\n\
        [[circuit]]\nid = \"2\"\npanel = \"p\"\nbreaker = \"15 A\"\ncable = \"nm-two-wire\"\ngauge = 14\nshares_neutral_with = \"1\"\n\
        [[room]]\nid = \"r\"\nuse = \"bedroom\"\n\
        [[box]]\nid = \"A\"\nroom = \"r\"\ncircuit = \"1\"\nfed_by = \"panel\"\nholds = \"two-slot\"\n\
        found = { hn = 134, meter = \"low-impedance\", load = \"lamp\", ground = \"none seen\" }\n\
        [[box]]\nid = \"B\"\nroom = \"r\"\ncircuit = \"2\"\nfed_by = \"A\"\nholds = \"two-slot\"\n\
        found = { hn = 106, meter = \"low-impedance\", load = \"lamp\", ground = \"none seen\" }\n";
    let (code, plan) = planned(survey);
    assert_eq!(code, 3);
    let told: Vec<&str> = list(&plan, "/in_the_way").iter().filter_map(Value::as_str).collect();
    assert!(told.iter().any(|told| told.contains("DANGER, and no work is planned for it")), "{told:?}");
}
