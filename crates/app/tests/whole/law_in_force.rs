//! The code in force: from the survey, flags, records of places and files of local code.

use crate::running::{list, number, thirdwire, thirdwire_reading};
use serde_json::Value;

fn bungalow() -> String {
    thirdwire(&["example", "bungalow"]).out
}

fn duty<'a>(plan: &'a Value, id: &str, duty: &str) -> &'a Value {
    let opening =
        list(plan, "/openings").iter().find(|opening| opening["box"] == id).expect("the test writes what it reads");
    &opening["requires"][duty]
}

/// A folder with a survey and a file of local code beside it.
fn folder(name: &str, survey: &str, local: &str) -> String {
    let folder = std::env::temp_dir().join(format!("thirdwire-{name}-{}", std::process::id()));
    std::fs::create_dir_all(&folder).expect("the test writes what it reads");
    std::fs::write(folder.join("house.toml"), survey).expect("the test writes what it reads");
    std::fs::write(folder.join("larch.toml"), local).expect("the test writes what it reads");
    folder.join("house.toml").display().to_string()
}

const LOCAL: &str = r#"format = 1
authority = "Larch County"
source = "Ordinance 2024-17"

[[switch_off]]
rule = "replacement.afci"

[[marking]]
remedy = "gfci-breaker"
words = "Reset at panel"
"#;

fn naming_larch() -> String {
    bungalow().replace("edition = 2020", "edition = 2020\namendments = \"larch.toml\"")
}

/// By hand: with AFCI protection switched off, nothing asks for more than GFCI: three breakers are GFCI ones, 146.50 and
/// 2 × 86.50, and at LA-1 a GFCI receptacle for 24.00 stands in for one of 49.00: 31.00 + 2 × 8.00 + 25.00 = 72.00 less.
#[test]
fn a_file_of_local_code_changes_the_plan_and_is_named_wherever_it_does() {
    let survey = folder("changes", &naming_larch(), LOCAL);
    let plan = thirdwire(&["plan", &survey, "--json"]).json();
    assert_eq!(plan["law"]["changed_by"], serde_json::json!(["Larch County, Ordinance 2024-17"]));
    assert_eq!(duty(&plan, "L-1", "afci")["need"], "not-required");
    assert_eq!(duty(&plan, "L-1", "afci")["changed_by"], serde_json::json!(["Larch County, Ordinance 2024-17"]));
    let published = thirdwire(&["plan", "--example", "bungalow", "--json"]).json();
    assert_eq!(duty(&published, "L-1", "afci")["need"], "required");
    let totals = [&published, &plan].map(|plan| number(plan, "/totals/price/total_cents"));
    assert_eq!(totals[0] - totals[1], 7_200);
    let why = thirdwire(&["why", &survey, "L-2", "--full"]).out;
    assert!(why.contains("Larch County, Ordinance 2024-17"), "{why}");
    assert!(why.contains("Reset at panel"), "{why}");
}

#[test]
fn mistakes_of_a_file_of_local_code_are_told_at_once_where_they_stand() {
    let local = LOCAL.replace("replacement.afci", "replacement.afic").replace("gfci-breaker", "gfci-braeker");
    let survey = folder("mistakes", &naming_larch(), &local);
    let said = thirdwire(&["plan", &survey]);
    assert_eq!(said.code, 1);
    assert!(said.err.contains("larch.toml:9:10"), "{}", said.err);
    assert!(said.err.contains("did you mean `gfci-breaker`?"), "{}", said.err);
    let only_the_rule = LOCAL.replace("replacement.afci", "replacement.afic");
    let survey = folder("rule", &naming_larch(), &only_the_rule);
    let said = thirdwire(&["plan", &survey]);
    assert_eq!(said.code, 1);
    assert!(said.err.contains("did you mean `replacement.afci`?"), "{}", said.err);
}

/// Published: S.C. Code Regs. 8-1103 keeps the list of GFCI places at 125 V.
#[test]
fn the_permit_day_picks_what_a_place_adopted_and_the_record_says_whose_word_counts() {
    let place = ["--place", "south-carolina"];
    let args = [&["plan", "--example", "bungalow", "--json"], &place[..], &["--permit-date", "2025-07-01"]].concat();
    let plan = thirdwire(&args).json();
    assert_eq!(plan["law"]["place"], "South Carolina");
    assert_eq!(plan["law"]["edition"], 2020);
    assert!(plan["law"]["changed_by"][0].as_str().unwrap().contains("8-1103"));
    assert!(plan["law"]["warnings"][0].as_str().unwrap().contains("the word of the authority"));
    let without_a_day = thirdwire(&[&["plan", "--example", "bungalow"], &place[..]].concat());
    assert_eq!(without_a_day.code, 3);
    assert!(without_a_day.err.contains("find out the day of the permit"), "{}", without_a_day.err);
}

/// Published: California adopted the 2023 edition for permits from 2026-01-01, as a code publisher's list says.
#[test]
fn a_stated_edition_that_differs_from_the_record_counts_and_is_asked_about() {
    let survey =
        bungalow().replace("edition = 2020", "edition = 2020\nplace = \"california\"\npermit_date = \"2026-02-01\"");
    let said = thirdwire_reading(&["plan", "-", "--json"], &survey);
    assert_eq!(said.code, 3);
    let plan = said.json();
    assert_eq!(plan["job"]["edition"], 2020);
    assert_eq!(plan["status"], "provisional");
    assert!(plan["law"]["doubts"][0].as_str().unwrap().contains("the record of California says 2023"));
}

/// By hand: nobody could confirm what the 2026 edition says of replacement, so nothing is planned under it but what is dangerous
/// under any: the jumper at L-3 is taken out in 10 minutes, the reversal at B1-3 put right in 8, 15.83 + 12.67 at 95 dollars an hour.
#[test]
fn an_edition_whose_values_nobody_read_plans_nothing_and_passes_nothing() {
    let said = thirdwire(&["plan", "--example", "bungalow", "--edition", "2026", "--json"]);
    assert_eq!(said.code, 3);
    let plan = said.json();
    assert_eq!(plan["status"], "blocked");
    assert_eq!(number(&plan, "/totals/price/total_cents"), 28_50);
    let shortfalls: Vec<&str> = list(&plan, "/openings")
        .iter()
        .filter(|opening| opening["holds"] == "three-slot")
        .map(|opening| opening["shortfalls"][0].as_str().unwrap())
        .collect();
    assert_eq!(shortfalls.len(), 16);
    assert!(shortfalls.iter().all(|told| told.starts_with("not checked, and so not planned")), "{shortfalls:?}");
}

#[test]
fn rules_and_places_are_shown_and_their_misspelt_names_are_met_halfway() {
    let page = thirdwire(&["rule", "replacement.afci"]).out;
    for year in ["2008", "2011", "2014", "2017", "2020", "2023", "2026"] {
        assert!(page.contains(&format!("\n  {year}  ")), "{year}");
    }
    assert!(page.contains("210.12(B)"));
    let misspelt = thirdwire(&["rule", "replacement.afic"]);
    assert_eq!(misspelt.code, 2);
    assert!(misspelt.err.contains("did you mean `replacement.afci`?"));
    let places = thirdwire(&["places", "--json"]).json();
    assert!(list(&places, "/places").iter().all(|place| place["as_of"].as_str().unwrap().len() == 10));
    let misspelt = thirdwire(&["places", "south-carolna"]);
    assert_eq!(misspelt.code, 2);
    assert!(misspelt.err.contains("did you mean `south-carolina`?"));
}

#[test]
fn why_leads_from_the_readings_to_what_is_done() {
    let page = thirdwire(&["why", "--example", "bungalow", "L-3"]).out;
    let steps = ["1. What was read", "2. What follows", "3. What the rules say", "4. The remedies", "5. What is done"];
    let places: Vec<usize> = steps.iter().map(|step| page.find(step).unwrap()).collect();
    assert!(places.is_sorted());
    let why = thirdwire(&["why", "--example", "bungalow", "L-3", "--json"]).json();
    assert_eq!(why["ground"], "false");
    let says = list(&why, "/rules").iter().find(|rule| rule["rule"] == "replacement.protected-at-panel").unwrap();
    assert!(list(says, "/says").iter().any(|saying| saying["standing"] == "lawful"));
    assert_eq!(why["plan"]["step"], "mark-protected");
    assert_eq!(thirdwire(&["why", "L-3"]).code, 2);
}
