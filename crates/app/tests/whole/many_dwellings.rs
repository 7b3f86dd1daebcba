//! Many dwellings in one go: a line in, a line out.

use crate::running::{number, thirdwire, thirdwire_reading};
use serde_json::Value;

/// A small survey as one line of JSON, under a given edition.
fn flat(edition: u16) -> String {
    format!(
        r#"{{"format":1,"job":{{"name":"flat","edition":{edition}}},"panel":[{{"id":"p"}}],"circuit":[{{"id":"1","panel":"p","breaker":"15 A"}}],"room":[{{"id":"bed","use":"bedroom"}}],"box":[{{"id":"B","room":"bed","circuit":"1","fed_by":"panel","holds":"two-slot","found":{{"ground":"none seen"}}}}]}}"#
    )
}

#[test]
fn every_line_is_answered_in_its_place_and_a_bad_one_stops_nothing() {
    let lines = [flat(2020), "{\"format\":1,".to_owned(), String::new(), flat(1999), flat(2023)];
    let said = thirdwire_reading(&["plan", "--stream"], &lines.join("\n"));
    assert_eq!(said.code, 1);
    let answers: Vec<Value> = said.out.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    let numbers: Vec<i64> = answers.iter().map(|answer| number(answer, "/line")).collect();
    assert_eq!(numbers, [1, 2, 4, 5]);
    assert_eq!(answers[0]["plan"]["job"]["edition"], 2020);
    assert_eq!(answers[1]["mistakes"][0]["code"], "json-syntax");
    assert!(answers[2]["not_checked"].as_str().unwrap().contains("1999"));
    assert_eq!(answers[3]["plan"]["job"]["edition"], 2023);
}

#[test]
fn equal_lines_get_equal_plans_however_many_there_are() {
    let many: String = std::iter::repeat_n(flat(2020) + "\n", 300).collect();
    let said = thirdwire_reading(&["plan", "--stream"], &many);
    assert_eq!(said.code, 0);
    let mut plans = said.out.lines().map(|line| serde_json::from_str::<Value>(line).unwrap()["plan"].clone());
    let first = plans.next().unwrap();
    assert_eq!(first["status"], "complete");
    assert_eq!(plans.filter(|plan| *plan == first).count(), 299);
}

#[test]
fn without_a_survey_a_plan_asks_for_one() {
    let said = thirdwire(&["plan"]);
    assert_eq!(said.code, 2);
    assert!(said.err.contains("name a survey"), "{}", said.err);
}
