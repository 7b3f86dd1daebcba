//! Sheets of circuits: every box on one of them, once, legibly, and saying what is believed of it.

use crate::generated::survey;
use crate::reading::{EXAMPLES, Rectangle, circuits_of, covered, document, dwelling, groups, name, number, shown};
use diagnosis::belief::{BoxBelief, Ground, Priors, Stakes, believe};
use drawings::{DrawingAnswer, SheetAnswer, ThingKind, drawn_circuits};
use dwelling::{CircuitIndex, Dwelling};
use roxmltree::Node;
use std::collections::BTreeMap;
use std::sync::OnceLock;

/// Surveys of many shapes: long circuits, boxes of unknown feeding, a box on no circuit, and readings that clash.
fn surveys() -> Vec<String> {
    let mut surveys: Vec<String> = EXAMPLES.map(str::to_owned).to_vec();
    surveys.extend((0..3).map(|seed| survey(seed, 14 + 12 * seed as usize, 2)));
    surveys.push(long_circuit(50));
    surveys.push(EXAMPLES[0].replacen("circuit = \"3\"\nfed_by  = \"L-2\"\n", "", 1));
    surveys
}

/// These surveys with their drawings, drawn once for all tests.
fn drawn() -> &'static [(Dwelling, DrawingAnswer)] {
    static DRAWN: OnceLock<Vec<(Dwelling, DrawingAnswer)>> = OnceLock::new();
    DRAWN.get_or_init(|| {
        let dwellings = surveys().into_iter().map(|text| dwelling(&text));
        dwellings.map(|dwelling| (dwelling.clone(), circuits_of(&dwelling))).collect()
    })
}

/// One circuit of so many boxes, each fed by one before it: a chain with branches.
fn long_circuit(boxes: usize) -> String {
    let mut text = "format = 1\n[job]\nname = \"Long circuit\"\nbuilt = 1964\nuse = \"one-family\"\nedition = 2020\n\
                    [[panel]]\nid = \"main\"\nground_bar = true\n[[circuit]]\nid = \"1\"\npanel = \"main\"\n\
                    breaker = \"15 A\"\ncable = \"nm-with-ground\"\ngauge = 14\n[[room]]\nid = \"hall\"\n\
                    use = \"hallway\"\n"
        .to_owned();
    for number in 0..boxes {
        let fed_by = match number {
            0 => "panel".to_owned(),
            _ => format!("B{}", if number % 5 == 4 { number / 2 } else { number - 1 }),
        };
        let found = ["hn = 120, hg = 120, ng = 0.1", "hn = 121, hg = 3, ng = 2, ground = \"loose\"", "hn = 119"];
        let found = found[number * number % 3];
        text.push_str(&format!(
            "[[box]]\nid = \"B{number}\"\nroom = \"hall\"\ncircuit = \"1\"\nfed_by = \"{fed_by}\"\n\
             holds = \"three-slot\"\nfound = {{ {found} }}\n"
        ));
    }
    text
}

fn words_in(group: Node<'_, '_>) -> String {
    let texts = group.descendants().filter(|node| node.tag_name().name() == "text").filter_map(|node| node.text());
    texts.collect::<Vec<_>>().join(" ")
}

/// The group of a kind that stands for a box, on whichever sheet.
fn said_of(drawing: &DrawingAnswer, class: &str, id: &str) -> Vec<String> {
    let of_sheet = |sheet: &SheetAnswer| {
        let document = document(sheet);
        let here: Vec<String> = groups(&document, class).filter(|group| name(*group) == id).map(words_in).collect();
        here
    };
    drawing.sheets.iter().flat_map(of_sheet).collect()
}

#[test]
fn every_box_stands_on_one_sheet_once() {
    for (dwelling, drawing) in drawn() {
        let mut drawn: BTreeMap<String, usize> = BTreeMap::new();
        for sheet in &drawing.sheets {
            let document = document(sheet);
            let here: Vec<&str> = groups(&document, "box").map(name).collect();
            assert_eq!(here, sheet.boxes, "{}", sheet.title);
            here.iter().for_each(|id| *drawn.entry((*id).to_owned()).or_default() += 1);
        }
        let all: BTreeMap<String, usize> = dwelling.boxes.iter().map(|one| (one.id.clone(), 1)).collect();
        assert_eq!(drawn, all, "{}", dwelling.job.name);
    }
}

/// What must not stand on anything else: every text, every symbol, every bar.
fn standing<'a>(root: Node<'a, 'a>) -> Vec<(String, Rectangle)> {
    let is_symbol = |node: &Node<'_, '_>| matches!(node.attribute("class"), Some("box" | "panel"));
    let symbols = root.descendants().filter(is_symbol).filter_map(|node| Some((name(node).to_owned(), covered(node)?)));
    // Letters stand inside symbols and bars.
    let inside =
        |node: &Node<'_, '_>| node.ancestors().any(|above| is_symbol(&above)) || number(*node, "font-size") < 6.0;
    let texts = root.descendants().filter(|node| node.tag_name().name() == "text" && !inside(node));
    let texts = texts.filter_map(|node| Some((node.text()?.to_owned(), covered(node)?)));
    symbols.chain(texts).collect()
}

#[test]
fn no_words_stand_on_others_or_leave_their_sheet() {
    for (_, drawing) in drawn() {
        for sheet in &drawing.sheets {
            let document = document(sheet);
            let root = document.root_element();
            let edge = shown(root);
            let standing = standing(root);
            for (index, (text, area)) in standing.iter().enumerate() {
                assert!(edge.holds(area), "{}: `{text}` leaves the sheet", sheet.title);
                for (other, there) in &standing[..index] {
                    assert!(!there.overlaps(area), "{}: `{text}` {area:?} stands on `{other}` {there:?}", sheet.title);
                }
            }
            let sizes = root.descendants().filter(|node| node.tag_name().name() == "text");
            assert!(sizes.map(|node| number(node, "font-size")).fold(f64::MAX, f64::min) >= 5.5);
        }
    }
}

/// A share as a drawing writes it.
fn percent(share: f64) -> String {
    match share {
        _ if share >= 0.995 => ">99 %".to_owned(),
        _ if share <= 0.0 => "0 %".to_owned(),
        _ if share < 0.005 => "<1 %".to_owned(),
        _ => format!("{:.0} %", share * 100.0),
    }
}

/// What a box says of itself where someone points at it.
fn title_of(drawing: &DrawingAnswer, id: &str) -> Option<String> {
    let of_sheet = |sheet: &SheetAnswer| {
        let document = document(sheet);
        let group = groups(&document, "box").find(|group| name(*group) == id)?;
        let title = group.children().find(|node| node.tag_name().name() == "title")?;
        title.text().map(str::to_owned)
    };
    drawing.sheets.iter().find_map(of_sheet)
}

fn hold_words(drawing: &DrawingAnswer, id: &str, belief: &BoxBelief) {
    let [words] = &said_of(drawing, "belief", id)[..] else { panic!("{id} is not believed once") };
    let (likeliest, share) = belief.likeliest();
    assert!(words.contains(&format!("{} {}", likeliest.name(), percent(share))), "{id}: {words}");
    for ground in [Ground::False, Ground::Live] {
        let share = belief.ground[ground as usize];
        assert_eq!(words.contains(&format!("{} {}", ground.name(), percent(share))), share >= 0.05, "{id}: {words}");
    }
    assert_eq!(words.contains("may be said"), belief.verdict().is_some(), "{id}: {words}");
    let title = title_of(drawing, id).unwrap_or_else(|| panic!("{id} says nothing"));
    let shares = Ground::ALL.iter().zip(belief.ground);
    let shares: Vec<String> = shares.map(|(ground, share)| format!("{} {}", ground.name(), percent(share))).collect();
    assert!(title.contains(&shares.join(", ")), "{id}: {title}");
}

#[test]
fn the_words_at_a_box_are_what_is_believed_of_it() {
    for (dwelling, drawing) in drawn() {
        let beliefs = believe(dwelling, &Priors::default());
        let mut held = 0;
        for belief in beliefs.circuits.iter().flat_map(|circuit| &circuit.boxes) {
            hold_words(drawing, &dwelling.device_box(belief.at).id, belief);
            held += 1;
        }
        assert!(held > 0, "{}", dwelling.job.name);
    }
}

/// L-3 of the bungalow has a false ground and B1-3 reversed wires; K-1 has neither.
#[test]
fn dangers_have_a_mark_of_their_own() {
    let drawing = circuits_of(&dwelling(EXAMPLES[0]));
    let marked = |id: &str| said_of(&drawing, "box-label", id)[0].contains('!');
    assert!(marked("L-3") && marked("B1-3") && !marked("K-1"));
}

#[test]
fn boxes_of_unknown_feeding_stand_in_a_group_of_their_own() {
    let text = EXAMPLES[0].replacen("fed_by  = \"L-2\"\n", "", 1);
    assert_ne!(text, EXAMPLES[0]);
    let dwelling = dwelling(&text);
    let drawing = circuits_of(&dwelling);
    let heading = drawing.sheets.iter().any(|sheet| sheet.svg.contains(">Feeding not known, circuit 3<"));
    assert!(heading);
    let missing: Vec<&str> = drawing.not_placed.iter().map(|thing| thing.id.as_str()).collect();
    assert!(!missing.is_empty() && drawing.not_placed.iter().all(|thing| thing.kind == ThingKind::Box));
    assert!(!drawing.is_last_word());
    for id in missing {
        assert_eq!(said_of(&drawing, "run-words", id).len(), 1, "{id}");
    }
}

/// By hand: circuits 1 and 2 of the bungalow share a neutral and feed K-1 to K-4.
#[test]
fn one_circuit_is_drawn_with_the_one_that_shares_its_neutral() {
    let dwelling = dwelling(EXAMPLES[0]);
    let beliefs = believe(&dwelling, &Priors::default());
    let advice = beliefs.advice(&dwelling, &Stakes::default());
    let drawing = drawn_circuits(&dwelling, &beliefs, &advice, Some(CircuitIndex(1)));
    assert_eq!(drawing.sheets.len(), 1);
    assert_eq!(drawing.sheets[0].circuits, ["1", "2"]);
    assert_eq!(drawing.sheets[0].boxes, ["K-1", "K-2", "K-3", "K-4"]);
}

/// Each tag that stands at a box is explained on its sheet; each stands somewhere in these dwellings.
#[test]
fn every_mark_is_explained_on_its_sheet() {
    for (tag, meaning) in [("NEXT ", "saves most, in minutes"), ("OPEN ", "whose opening"), ("CLASH ", "two things")] {
        let mut marked = 0;
        for sheet in drawn().iter().flat_map(|(_, drawing)| &drawing.sheets) {
            let document = document(sheet);
            if groups(&document, "mark").any(|mark| words_in(mark).starts_with(tag)) {
                let is_explained = words_in(document.root_element()).contains(meaning);
                assert!(is_explained, "{}: {tag}", sheet.title);
                marked += 1;
            }
        }
        assert!(marked > 0, "{tag}");
    }
}

/// A dwelling of which no box has a circuit.
#[test]
fn circuits_without_boxes_and_boxes_without_circuits_are_drawn() {
    let mut odd: Dwelling = dwelling(EXAMPLES[0]);
    odd.boxes.iter_mut().for_each(|one| (one.circuit, one.fed_by) = (None, None));
    let drawing = circuits_of(&odd);
    let drawn: usize = drawing.sheets.iter().map(|sheet| sheet.boxes.len()).sum();
    assert_eq!(drawn, odd.boxes.len());
    assert_eq!(drawing.not_placed.len(), odd.boxes.len());
}
