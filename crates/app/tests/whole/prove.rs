//! The close-out from the command line: verdicts, exit codes, and when a certificate is written.

use crate::running::{document, file, list, text, thirdwire};
use std::path::{Path, PathBuf};

fn out(name: &str) -> PathBuf {
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    // Left over from another run.
    let _ = std::fs::remove_file(&path);
    path
}

fn prove(survey: &str, certificate: &Path) -> crate::running::Said {
    thirdwire(&["prove", survey, "--certificate", &certificate.display().to_string(), "--date", "2026-11-25"])
}

#[test]
fn what_is_proved_whole_exits_with_0_and_has_its_certificate() {
    let path = out("certificate.pdf");
    let said = prove("examples/cottage-done.toml", &path);
    assert_eq!((said.code, said.err.as_str()), (0, ""), "{}", said.out);
    assert!(said.out.contains("PROVED") && said.out.contains("written: "), "{}", said.out);
    let bytes = std::fs::read(&path).unwrap();
    assert!(bytes.starts_with(b"%PDF"));
    prove("examples/cottage-done.toml", &path);
    assert_eq!(std::fs::read(&path).unwrap(), bytes, "the same bytes again");
}

#[test]
fn what_contradicts_exits_with_4_and_what_is_open_with_3_and_neither_has_a_certificate() {
    let half = document("examples/cottage-half-done.toml");
    let path = out("no-certificate.pdf");
    let said = prove("examples/cottage-half-done.toml", &path);
    assert_eq!(said.code, 4, "{}", said.out);
    assert!(said.out.contains("no certificate: 15 things keep it back"), "{}", said.out);
    assert!(!path.exists());
    // By hand: the cottage without its bathroom readings has nothing that contradicts.
    let done = document("examples/cottage-done.toml");
    let (before, bath) = done.split_once("id      = \"BA-1\"").unwrap();
    let (bath, rest) = bath.split_once("after   = [").unwrap();
    let rest = rest.split_once("]\n\n").unwrap().1;
    let unread = file("unread-bath.toml", &format!("{before}id      = \"BA-1\"{bath}\n{rest}"));
    let said = prove(&unread, &path);
    assert_eq!(said.code, 3, "{}", said.out);
    assert!(said.out.contains("OPEN") && !path.exists(), "{}", said.out);
    assert!(half.contains("jumper"));
}

/// By hand: nothing was read, so nothing is proved or contradicted, and the exit code is that of the README for what is open, 3.
#[test]
fn a_job_on_which_nothing_was_read_is_open_everywhere() {
    for name in ["bungalow", "flat", "knob-and-tube"] {
        let said = thirdwire(&["prove", "--example", name, "--json"]);
        assert_eq!(said.code, 3, "{name}");
        let answer = said.json();
        assert_eq!((answer["counts"]["proved"].as_u64(), answer["counts"]["contradicts"].as_u64()), (Some(0), Some(0)));
        assert!(list(&answer, "/left").len() > 40, "{name}");
    }
}

#[test]
fn the_likely_cause_and_what_to_do_next_stand_beside_a_contradiction() {
    let answer = thirdwire(&["prove", "--example", "cottage-half-done", "--json"]).json();
    let kitchen = list(&answer, "/openings").iter().find(|opening| text(opening, "/box") == "K-1").unwrap();
    let claims = list(kitchen, "/claims");
    let ground = claims.iter().find(|claim| text(claim, "/claim") == "ground").unwrap();
    assert_eq!(text(ground, "/verdict"), "contradicts");
    assert!(text(ground, "/likely_cause").contains("Neutral and ground are joined"), "{ground}");
    assert!(text(ground, "/next").contains("take the jumper out"), "{ground}");
}

/// By hand: the second offer is asked for and nothing was read, exit code 3; a ninth there is not, a wrong command line, 2.
#[test]
fn the_offer_that_was_carried_out_is_the_one_that_is_proved() {
    let said = thirdwire(&["prove", "--example", "bungalow", "--offer", "2", "--json"]);
    assert_eq!((said.code, said.json()["offer"].as_u64()), (3, Some(2)));
    let survey = document("examples/cottage-done.toml").replace("offer = 1", "offer = 9");
    let said = thirdwire(&["prove", &file("ninth-offer.toml", &survey)]);
    assert_eq!(said.code, 2);
    assert!(said.err.contains("there is no offer 9"), "{}", said.err);
}

/// By hand: kept when it was agreed, before anything was read under `after`.
#[test]
fn a_plan_that_was_kept_is_the_one_that_is_proved() {
    let plan = thirdwire(&["plan", "examples/cottage-done.toml", "--json"]);
    let path = file("kept-plan.json", &plan.out);
    let said = thirdwire(&["prove", "examples/cottage-done.toml", "--plan", &path]);
    assert_eq!((said.code, said.err.as_str()), (0, ""), "{}", said.out);
    let other = thirdwire(&["prove", "examples/flat.toml", "--plan", &path]);
    assert_eq!((other.code, other.out.as_str()), (1, ""));
    assert!(other.err.contains("the plan that was named does not hold"), "{}", other.err);
    let none = thirdwire(&["prove", "examples/flat.toml", "--plan", "examples/flat.toml"]);
    assert_eq!(none.code, 1);
    assert!(none.err.contains("is no plan"), "{}", none.err);
}

/// By hand: the plan of the cottage with everything under `after` left out is the same plan.
#[test]
fn what_is_read_after_the_work_changes_no_plan() {
    let plan = |name: &str| thirdwire(&["plan", "--example", name, "--json"]).json();
    let (done, half) = (plan("cottage-done"), plan("cottage-half-done"));
    assert_eq!(done, half, "they differ in what was read alone");
}

#[test]
fn the_answer_has_the_keys_of_its_schema() {
    let schema = thirdwire(&["schema", "prove"]).json();
    for name in ["cottage-done", "cottage-half-done", "bungalow"] {
        let answer = thirdwire(&["prove", "--example", name, "--json"]).json();
        crate::answers::assert_keys(&schema, &schema, &answer, name);
    }
}
