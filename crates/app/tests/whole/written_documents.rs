//! Documents that quote the program, held against what it says.
//!
//! A quote is `<!-- output: thirdwire … -->` or `<!-- part of: thirdwire … --json | /place -->`, a fenced block, and
//! `<!-- end -->`. `REWRITE_DOCUMENTS=1 cargo test -p thirdwire --test whole documents` writes every block anew.

use crate::running::{document, repository, thirdwire};
use serde_json::Value;

const DOCUMENTS: [&str; 3] = ["README.md", "docs/json.md", "docs/describe-your-dwelling.md"];
const END: &str = "<!-- end -->";

/// A document with every quoted block as the program says it; blocks that are empty so far stay so unless asked.
fn as_the_program_says(text: &str, fill_empty: bool) -> String {
    let mut page = String::new();
    let mut rest = text;
    while let Some((before, mark, after)) = next_mark(rest) {
        let (head, after) = after.split_once(" -->\n").unwrap_or_else(|| panic!("a mark without an end: {mark}"));
        let (block, after) = after.split_once(END).unwrap_or_else(|| panic!("no `{END}` after {head}"));
        page.push_str(&format!("{before}{mark}{head} -->\n"));
        if !block.trim().is_empty() || fill_empty {
            page.push_str(&real_block(mark, head));
        }
        page.push_str(END);
        rest = after;
    }
    page + rest
}

/// The text before the next mark, the mark, and the text after it.
fn next_mark(text: &str) -> Option<(&str, &'static str, &str)> {
    let marks = ["<!-- output: ", "<!-- part of: "];
    let (at, mark) = marks.iter().filter_map(|mark| Some((text.find(mark)?, *mark))).min()?;
    Some((&text[..at], mark, &text[at + mark.len()..]))
}

fn real_block(mark: &str, head: &str) -> String {
    let (command, place) = head.split_once(" | ").unwrap_or((head, ""));
    let args: Vec<&str> = command.split_whitespace().skip(1).collect();
    let said = thirdwire(&args);
    if mark.contains("output") {
        return format!("```text\n{}\n```\n", said.out.trim_end());
    }
    let answer = said.json();
    let part = answer.pointer(place).unwrap_or_else(|| panic!("{command}: nothing at {place}"));
    format!("```json\n{}\n```\n", serde_json::to_string_pretty(part).unwrap_or_default())
}

#[test]
fn what_the_documents_show_is_what_the_program_says() {
    let rewrite = std::env::var("REWRITE_DOCUMENTS").is_ok();
    for path in DOCUMENTS.iter().filter(|path| repository().join(path).exists()) {
        let text = document(path);
        let real = as_the_program_says(&text, rewrite);
        if rewrite {
            std::fs::write(repository().join(path), &real).unwrap();
        } else {
            let differs = text.lines().zip(real.lines()).position(|(kept, said)| kept != said);
            let line = differs.map_or(text.lines().count(), |line| line + 1);
            assert!(text == real, "{path} differs from line {line} on: REWRITE_DOCUMENTS=1 writes it anew");
        }
    }
}

/// By hand: an excerpt of each answer and of each of the larger things in a plan.
#[test]
fn the_page_on_json_shows_a_part_of_every_answer() {
    let page = document("docs/json.md");
    for command in ["plan", "findings", "options", "circuits", "editions", "checks", "draw", "what-if"] {
        assert!(page.contains(&format!("<!-- part of: thirdwire {command} ")), "{command}");
    }
    for place in ["/job", "/circuits/", "/openings/", "/routes/", "/routes_refused/", "/totals", "/basis"] {
        assert!(page.contains(&format!("thirdwire plan --example bungalow --json | {place}")), "{place}");
    }
}

/// By hand: the keys and the names of the schemas, each of which begins a row of a table.
#[test]
fn every_key_and_every_name_of_the_answers_is_documented() {
    let page = document("docs/json.md");
    for answer in [
        "plan",
        "options",
        "findings",
        "editions",
        "why",
        "checks",
        "circuits",
        "draw",
        "papers",
        "prove",
        "what-if",
        "verify",
        "price-book",
        "estimate",
        "mistakes",
    ] {
        let schema = thirdwire(&["schema", answer]).json();
        let definitions = schema["$defs"].as_object().into_iter().flatten().map(|(_, definition)| definition);
        for definition in definitions.chain([&schema]) {
            let keys = definition["properties"].as_object().into_iter().flatten().map(|(key, _)| key.as_str());
            let names = definition["enum"].as_array().into_iter().flatten().filter_map(Value::as_str);
            for word in keys.chain(names) {
                assert!(page.contains(&format!("\n| `{word}` |")), "docs/json.md does not say what `{word}` is");
            }
        }
    }
}

/// Two documents that differ from what the program says in a word, and one that quotes nothing.
#[test]
fn a_quote_that_differs_is_seen() {
    let nothing = "No quote here.\n";
    assert_eq!(as_the_program_says(nothing, true), nothing);
    let empty = "<!-- output: thirdwire example -->\n<!-- end -->\n";
    assert_eq!(as_the_program_says(empty, false), empty);
    let filled = as_the_program_says(empty, true);
    assert!(filled.contains("bungalow"));
    let forged = filled.replace("bungalow", "castle");
    assert_eq!(as_the_program_says(&forged, false), filled);
}
