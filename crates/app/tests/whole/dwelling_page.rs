//! The page on describing one's own dwelling: its survey is read and planned.

use crate::running::{document, list, thirdwire_reading};

/// The last TOML block of the page: the complete survey.
fn survey() -> String {
    let page = document("docs/describe-your-dwelling.md");
    let block = page.rsplit("```toml\n").next().and_then(|rest| rest.split_once("```"));
    block.map(|(survey, _)| survey.to_owned()).unwrap_or_default()
}

#[test]
fn the_survey_of_the_page_is_read_without_a_warning_and_planned() {
    let said = thirdwire_reading(&["plan", "-", "--json"], &survey());
    assert_eq!((said.code, said.err.as_str()), (0, ""), "{}", said.out);
    assert_eq!(said.json()["status"], "complete");
    assert_eq!(list(&said.json(), "/openings").len(), 4);
}

/// The page says what may be left out: each of these lines alone, the survey is still read.
#[test]
fn what_the_page_calls_optional_may_be_left_out() {
    for key in ["built", "made_for_it", "fed_by", "body", "found", "gauge"] {
        let kept: Vec<String> = survey().lines().filter(|line| !line.starts_with(key)).map(str::to_owned).collect();
        let shorter = kept.join("\n");
        assert!(shorter.len() < survey().len(), "{key} is not in the survey");
        let said = thirdwire_reading(&["plan", "-", "--json"], &shorter);
        assert!(matches!(said.code, 0 | 3), "without {key}: {}", said.err);
    }
}
