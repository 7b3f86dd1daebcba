//! Plans in hand held against their survey: whole ones hold, altered ones are refused with what differs.

use crate::running::{Said, file, list, text, thirdwire};
use serde_json::{Value, json};

fn plan(flags: &[&str]) -> Value {
    thirdwire(&[&["plan", "--example", "bungalow", "--json"], flags].concat()).json()
}

fn verified(name: &str, plan: &Value) -> Said {
    let path = file(&format!("{name}.json"), &plan.to_string());
    thirdwire(&["verify", &path, "--example", "bungalow", "--json"])
}

/// The opening of a box, to be altered.
fn of_box<'a>(plan: &'a mut Value, id: &str) -> &'a mut Value {
    let openings = plan["openings"].as_array_mut().into_iter().flatten();
    openings.into_iter().find(|opening| opening["box"] == id).unwrap_or_else(|| panic!("no box {id}"))
}

#[test]
fn a_plan_that_was_not_altered_holds_however_it_was_asked_for() {
    let ways: [&[&str]; 5] = [
        &[],
        &["--ground", "K-4", "H-1", "--keep", "BA-1", "--no-open", "den", "--next-best"],
        &["--offers"],
        &["--offer", "3", "--next-best"],
        &["--budget", "2100"],
    ];
    for (index, flags) in ways.into_iter().enumerate() {
        let said = verified(&format!("unaltered-{index}"), &plan(flags));
        let answer = said.json();
        assert_eq!((said.code, &answer["holds"]), (0, &json!(true)), "{flags:?}: {answer}");
        assert_eq!((&answer["faults"], &answer["differs"]), (&json!([]), &json!([])), "{flags:?}");
        assert_eq!(list(&answer, "/checked").len(), 4);
    }
}

/// The certificates of the demo, of a plan with wishes and of an offer: an offer may cost more than the least that gives as
/// much, where it opens fewer walls, and never less.
#[test]
fn a_certificate_is_checked_and_shows_what_the_plan_costs() {
    let ways: [&[&str]; 3] = [&[], &["--ground", "K-4", "--no-open", "den"], &["--offer", "3"]];
    for (index, flags) in ways.into_iter().enumerate() {
        let plan = plan(&[flags, &["--certificate"]].concat());
        assert!(plan["certificate"]["parts"].is_array(), "{flags:?}");
        let said = verified(&format!("certified-{index}"), &plan);
        let answer = said.json();
        assert_eq!((said.code, &answer["certificate"]), (0, &json!(true)), "{flags:?}: {answer}");
        let (shown, costs) = (answer["certified_cents"].as_i64(), plan["totals"]["price"]["total_cents"].as_i64());
        if flags.contains(&"--offer") {
            assert!(
                shown > plan["totals"]["nothing_below_cents"].as_i64() && shown <= costs,
                "{shown:?} and {costs:?}"
            );
        } else {
            assert_eq!(shown, costs, "{flags:?}");
        }
        assert_eq!(list(&answer, "/checked").len(), 5);
    }
}

/// What is charged a link beyond what it costs, a bound that is claimed too high, a leaf that is forgotten.
#[test]
fn a_forged_certificate_is_refused() {
    type Forgery = (&'static str, fn(&mut Value), &'static str);
    let forgeries: [Forgery; 3] = [
        ("bound", |part| part["bound"][0] = json!(part["bound"][0].as_i64().map(|cents| cents + 1)), "shows no more"),
        ("leaf", |part| drop(part["steps"].as_array_mut().and_then(Vec::pop)), "do not cover all choices"),
        ("charge", |part| overcharge(part), "its certificate does not hold"),
    ];
    for (name, forge, told) in forgeries {
        let mut plan = plan(&["--certificate"]);
        let parts = plan["certificate"]["parts"].as_array_mut().into_iter().flatten();
        parts.for_each(forge);
        let said = verified(&format!("forged-{name}"), &plan);
        let answer = said.json();
        assert_eq!((said.code, &answer["certificate"]), (1, &json!(false)), "{name}");
        let faults: Vec<&str> = list(&answer, "/faults").iter().filter_map(Value::as_str).collect();
        assert!(faults.iter().any(|fault| fault.contains(told)), "{name}: {faults:?}");
    }
}

/// Charges the links of every cut a million dollars more.
fn overcharge(part: &mut Value) {
    for step in part["steps"].as_array_mut().into_iter().flatten() {
        for cuts in step.as_object_mut().into_iter().flat_map(|step| step.values_mut()) {
            for cut in cuts.as_array_mut().into_iter().flatten() {
                let value = cut["value"][0].as_i64().map(|cents| cents + 100_000_000);
                cut["value"][0] = json!(value);
            }
        }
    }
}

/// One alteration of each kind: what it alters, and what the answer must say of it.
#[test]
fn an_altered_plan_is_refused_with_what_differs() {
    type Alteration = (&'static str, fn(&mut Value), &'static str);
    let alterations: [Alteration; 14] = [
        ("price", |plan| of_box(plan, "K-1")["price"]["total_cents"] = json!(900), "/openings/0/price/total_cents"),
        ("total", |plan| plan["totals"]["price"]["total_cents"] = json!(1), "/totals/price/total_cents"),
        ("remedy", |plan| of_box(plan, "K-1")["remedy"] = json!("leave"), "/openings/0/remedy"),
        ("marking", |plan| of_box(plan, "K-1")["markings"] = json!([]), "/openings/0/markings"),
        ("caution", |plan| plan["cautions"] = json!([]), "/cautions"),
        ("status", |plan| plan["in_the_way"] = json!(["nothing"]), "/in_the_way"),
        ("step", |plan| of_box(plan, "K-1")["step"] = json!("leave"), "box K-1: `leave`"),
        (
            "device",
            |plan| of_box(plan, "K-1")["device"] = json!("gold"),
            "box K-1: `mark-protected` with device `gold`",
        ),
        ("panel", |plan| plan["circuits"][0]["at_panel"] = json!("as-it-is"), "box K-1: it lacks the protection"),
        ("load-side", |plan| of_box(plan, "LA-1")["load_side_feeds"] = json!([]), "box LA-2: it lacks the protection"),
        ("link", |plan| drop(plan["links"].as_array_mut().unwrap().remove(0)), "box K-2: what is done there needs"),
        ("size", |plan| plan["links"][0]["size"] = json!("10 AWG"), "link 1: its conductor is not of the size"),
        ("route", |plan| drop(plan["routes"].as_array_mut().unwrap().remove(0)), "R-fridge"),
        ("forgotten", |plan| drop(plan["openings"].as_array_mut().unwrap().remove(3)), "box K-4 is forgotten"),
    ];
    for (name, alter, told) in alterations {
        let mut altered = plan(&[]);
        alter(&mut altered);
        let said = verified(&format!("altered-{name}"), &altered);
        let answer = said.json();
        assert_eq!((said.code, &answer["holds"]), (1, &json!(false)), "{name}");
        let faults = list(&answer, "/faults").iter().filter_map(Value::as_str);
        let differs =
            list(&answer, "/differs").iter().flat_map(|one| [one["at"].as_str(), one["of"].as_str()]).flatten();
        let found: Vec<&str> = faults.chain(differs).collect();
        assert!(found.iter().any(|found| found.starts_with(told)), "{name}: {found:?}");
    }
}

/// By hand: the second offer, 1,700.47, passed off as the plan without wishes, 1,657.21. All its figures are right.
#[test]
fn a_dearer_plan_passed_off_as_the_cheapest_is_refused() {
    let mut dearer = plan(&["--offer", "2"]);
    dearer["offers"] = Value::Null;
    let said = verified("dearer", &dearer);
    assert_eq!(said.code, 1);
    let told = text(&said.json(), "/faults/0").to_owned();
    assert!(told.contains("planned anew, that costs $1,657.21, and this one $1,700.47"), "{told}");
}

/// The plan without wishes, passed off as one that grounds the microwave's opening.
#[test]
fn a_wish_that_the_plan_does_not_give_is_refused() {
    let mut plain = plan(&[]);
    plain["steering"] = plan(&["--ground", "K-4"])["steering"].clone();
    let said = verified("wish", &plain);
    assert_eq!((said.code, &said.json()["holds"]), (1, &json!(false)));
}

#[test]
fn another_survey_other_prices_and_what_is_no_plan_are_refused() {
    let path = file("elsewhere.json", &plan(&[]).to_string());
    assert_eq!(thirdwire(&["verify", &path, "--example", "flat"]).code, 1);
    let book = file("dearer-hour.toml", "format = 1\nhour = 190.00\n");
    assert_eq!(thirdwire(&["verify", &path, "--example", "bungalow", "--prices", &book]).code, 1);
    assert_eq!(thirdwire(&["verify", &path, "--example", "bungalow", "--edition", "2017"]).code, 1);
    for text in ["", "{}", "[1, 2]", "not JSON"] {
        let said = thirdwire(&["verify", &file("no-plan.json", text), "--example", "bungalow"]);
        assert_eq!(said.code, 1, "{text}");
        assert!(said.out.contains("is no plan"), "{text}");
    }
    assert_eq!(thirdwire(&["verify", "nowhere.json", "--example", "bungalow"]).code, 2);
}

#[test]
fn the_page_says_in_its_first_line_whether_the_plan_holds() {
    let path = file("held.json", &plan(&[]).to_string());
    let page = thirdwire(&["verify", &path, "--example", "bungalow"]).out;
    assert!(page.starts_with("THE PLAN HOLDS\n"));
    assert!(page.contains("every figure and every word follows from the choices"));
}
