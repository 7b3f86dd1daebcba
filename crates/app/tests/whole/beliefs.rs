//! What is believed, and what to test next, as the program says it.

use crate::running::thirdwire;

/// By hand: L-3 reads joined under load where its run carries no ground, so a jumper is likelier than all else.
#[test]
fn a_box_is_explained_by_what_is_believed_of_it_and_of_its_circuit() {
    let page = thirdwire(&["findings", "--example", "bungalow", "--explain", "L-3"]).out;
    assert!(page.contains("ground terminal"), "{page}");
    assert!(page.contains("a jumper joins neutral and ground at `L-3`"), "{page}");
    let nobody = thirdwire(&["findings", "--example", "bungalow", "--explain", "L-33"]);
    assert_eq!(nobody.code, 2);
    assert!(nobody.err.contains("did you mean `L-3`?"), "{}", nobody.err);
}

#[test]
fn what_to_test_next_says_what_comes_out_and_what_can_hurt() {
    let page = thirdwire(&["findings", "--example", "bungalow", "--next"]).out;
    assert!(page.contains("Worth most by the minute"), "{page}");
    let answer = thirdwire(&["findings", "--example", "bungalow", "--json"]).json();
    let first = &answer["tests"][0];
    let unwrapped = page.split_whitespace().collect::<Vec<_>>().join(" ");
    for said in ["what", "caution"] {
        assert!(unwrapped.contains(first[said].as_str().unwrap()), "{said}: {page}");
    }
    assert!(unwrapped.contains("A licensed electrician"), "{page}");
}

/// By hand: the odds of every list add up to one, but for what is too small to be told.
#[test]
fn the_odds_of_a_box_add_up() {
    for name in ["bungalow", "flat", "knob-and-tube"] {
        let answer = thirdwire(&["findings", "--example", name, "--json"]).json();
        let beliefs = answer["beliefs"].as_array().unwrap();
        assert!(!beliefs.is_empty());
        for belief in beliefs {
            for list in ["ground", "wiring", "neutral_path", "hot_path", "run_ground", "run_neutral", "run_hot"] {
                let odds = belief[list].as_array().unwrap().iter().map(|one| one["odds"].as_f64().unwrap());
                let sum: f64 = odds.sum();
                assert!((0.99..=1.001).contains(&sum), "{list} of {}: {sum}", belief["id"]);
            }
        }
    }
}

/// By hand: that an opening is grounded is said only where a loaded test has shown it.
#[test]
fn nothing_is_called_grounded_without_a_loaded_test() {
    for name in ["bungalow", "flat", "knob-and-tube"] {
        let answer = thirdwire(&["findings", "--example", name, "--json"]).json();
        for belief in answer["beliefs"].as_array().unwrap().iter().filter(|belief| belief["verdict"] == "grounded") {
            let findings = answer["findings"].as_array().unwrap().iter().filter(|one| one["id"] == belief["id"]);
            let evidence: Vec<String> = findings.map(|one| one["because"].to_string()).collect();
            assert!(evidence.join(" ").contains("load"), "{}: {evidence:?}", belief["id"]);
        }
    }
}
