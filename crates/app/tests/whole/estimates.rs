//! Estimates, and price books as spreadsheets.

use crate::running::{file, list, number, text, thirdwire};
use calamine::{Reader as _, Xlsx, open_workbook};
use rust_xlsxwriter::Workbook;
use serde_json::Value;

fn estimate(args: &[&str]) -> Value {
    thirdwire(&[&["estimate"], args, &["--json"]].concat()).json()
}

fn sum(of: &[Value], key: &str) -> i64 {
    of.iter().map(|one| number(one, key)).sum()
}

/// Every sum is of what is shown: lines, pieces, material, labour, and what the owner pays.
#[test]
fn every_sum_of_an_estimate_is_of_what_is_shown() {
    for name in ["bungalow", "flat", "knob-and-tube"] {
        let answer = estimate(&["--example", name]);
        let plan = thirdwire(&["plan", "--example", name, "--json"]).json();
        let total = number(&plan, "/totals/price/total_cents");
        assert_eq!(number(&answer, "/price/total_cents"), total, "{name}");
        for piece in list(&answer, "/pieces") {
            assert_eq!(sum(list(piece, "/lines"), "/cents"), number(piece, "/price/total_cents"), "{name} {piece}");
        }
        assert_eq!(sum(list(&answer, "/pieces"), "/price/total_cents"), total, "{name}");
        assert_eq!(sum(list(&answer, "/material"), "/cents"), number(&answer, "/price/material_cents"), "{name}");
        assert_eq!(sum(list(&answer, "/labour"), "/cents"), number(&answer, "/price/labour_cents"), "{name}");
        assert_eq!(answer["owner"], plan["totals"]["owner"]);
    }
}

/// By hand: a coil of 100 ft leaves less over than any other for the 83 ft of 12 AWG, and seven labels come on a sheet of 25.
#[test]
fn the_page_tells_what_is_charged_and_what_is_bought() {
    let page = thirdwire(&["estimate", "--example", "knob-and-tube"]).out;
    assert!(page.contains("83 ft  12 AWG green conductor: buy 1 × 100"), "{page}");
    assert!(page.contains("7     Label with the words the code asks for: buy 1 × 25"), "{page}");
    let pieces = thirdwire(&["estimate", "--example", "knob-and-tube", "--by", "piece"]).out;
    assert!(pieces.contains("route to B2-2") && pieces.contains("opening P-3"), "{pieces}");
    for page in [page, pieces] {
        assert!(page.lines().all(|line| line.chars().count() <= 100));
    }
}

#[test]
fn a_price_book_that_is_written_as_a_spreadsheet_reads_back_as_itself() {
    let path = file("book.xlsx", "");
    assert_eq!(thirdwire(&["prices", "--xlsx", &path]).code, 0);
    let bytes = std::fs::read(&path).unwrap();
    let strip = |book: String| book.lines().filter(|line| !line.starts_with('#')).collect::<Vec<_>>().join("\n");
    assert_eq!(strip(thirdwire(&["prices", &path]).out), strip(thirdwire(&["prices"]).out));
    assert_eq!(thirdwire(&["prices", "--xlsx", &path]).code, 0);
    assert_eq!(std::fs::read(&path).unwrap(), bytes, "the same book is the same bytes");
    let own = estimate(&["--example", "flat", "--prices", &path]);
    assert_eq!(own["price"], estimate(&["--example", "flat"])["price"]);
}

/// A text where a number belongs, a key that is misspelt, a number that is too large, a sheet that nobody reads.
#[test]
fn every_mistake_of_a_spreadsheet_is_told_with_its_sheet_and_cell() {
    let mut workbook = Workbook::new();
    let sheets: [(&str, &[(&str, &str)]); 3] = [
        ("book", &[("format", "1"), ("hour", "much")]),
        ("material", &[("gfcii", "24"), ("plate", "99999")]),
        ("chargs", &[("trip", "5")]),
    ];
    for (name, rows) in sheets {
        let sheet = workbook.add_worksheet();
        sheet.set_name(name).unwrap();
        for (row, (key, value)) in (1..).zip(rows) {
            sheet.write_string(row, 0, *key).unwrap();
            match value.parse::<f64>() {
                Ok(number) => sheet.write_number(row, 1, number).unwrap(),
                Err(_) => sheet.write_string(row, 1, *value).unwrap(),
            };
        }
    }
    let path = file("wrong.xlsx", "");
    std::fs::write(&path, workbook.save_to_buffer().unwrap()).unwrap();
    let said = thirdwire(&["prices", &path]);
    assert_eq!((said.code, said.out.as_str()), (1, ""));
    for place in
        ["sheet `book`, cell B3", "sheet `material`, cell A2", "sheet `material`, cell B3", "sheet `chargs`, cell A1"]
    {
        assert!(said.err.contains(place), "{place}: {}", said.err);
    }
    assert!(said.err.contains("did you mean `gfci`?") && said.err.contains("did you mean `charges`?"), "{}", said.err);
    let told = thirdwire(&["prices", &path, "--json"]).json();
    assert!(list(&told, "/mistakes").iter().any(|one| text(one, "/message").contains("sheet `material`, cell A2")));
    let nothing = thirdwire(&["prices", &file("no.xlsx", "not a spreadsheet")]);
    assert_eq!(nothing.code, 2);
}

/// The message of a wrong format speaks of the price book.
#[test]
fn a_price_book_of_another_format_is_called_a_price_book() {
    let said = thirdwire(&["prices", &file("later.toml", "format = 2\nhour = 95\n")]);
    assert!(said.err.contains("price book format `2` is not known"), "{}", said.err);
    let said = thirdwire(&["prices", &file("none.toml", "hour = 95\n")]);
    assert!(said.err.contains("the price book does not say its format"), "{}", said.err);
}

/// The bungalow, of which it is written down that the second offer was carried out.
#[test]
fn the_offer_that_was_carried_out_is_estimated_and_papered_unless_another_is_named() {
    let bungalow =
        std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/bungalow.toml")).unwrap();
    let survey = file("carried-out.toml", &format!("{bungalow}\n[close_out]\noffer = 2\n"));
    let own = estimate(&[&survey]);
    assert_eq!(own["offer"], 2);
    assert_eq!(own["price"], estimate(&["--example", "bungalow", "--offer", "2"])["price"]);
    let first = estimate(&[&survey, "--offer", "1"]);
    assert_eq!((&first["offer"], &first["price"]), (&1.into(), &estimate(&["--example", "bungalow"])["price"]));
    assert_ne!(first["price"], own["price"]);
    let told = "this is offer 2, which the survey says was carried out";
    assert!(list(&own, "/notes").iter().any(|note| note.as_str().unwrap().starts_with(told)), "{own}");
    assert!(!list(&first, "/notes").iter().any(|note| note.as_str().unwrap().contains("carried out")));
    let folder = file("carried-out-papers", "").replace("carried-out-papers", "carried-out-folder");
    let said = thirdwire(&["papers", &survey, "-o", &folder]);
    assert!(said.out.contains(told), "{said:?}");
    assert_eq!(thirdwire(&["papers", &survey, "-o", &folder, "--json"]).json()["offer"], 2);
    let within = estimate(&[&survey, "--budget", "5000"]);
    assert!(within["offer"].is_null(), "a sum to stay within asks for another plan");
}

/// By hand: 83 ft of 12 AWG in coils of 500, 100, 50 and 25: rounded up to the smallest they are 100, one coil of 100.
#[test]
fn the_packs_of_a_workbook_are_formulas_of_what_is_needed() {
    let path = file("packs.xlsx", "");
    assert_eq!(thirdwire(&["estimate", "--example", "knob-and-tube", "--xlsx", &path]).code, 3);
    let mut workbook: Xlsx<_> = open_workbook(&path).unwrap();
    let (formulas, values) = (workbook.worksheet_formula("Packs").unwrap(), workbook.worksheet_range("Packs").unwrap());
    let (_, columns) = values.get_size();
    let rows = values.rows().enumerate().skip(1).filter(|(_, row)| row[0] == *"ground-wire-12-ft");
    let mut counts = Vec::new();
    for (at, row) in rows {
        let formula = |column: u32| formulas.get_value((u32::try_from(at).unwrap(), column)).unwrap().as_str();
        assert!((2..5).all(|column| !formula(column).is_empty()), "row {at} has a number for a formula");
        counts.push((row[1].to_string(), row[3].to_string()));
    }
    let expected = [("500", "0"), ("100", "1"), ("50", "0"), ("25", "0")];
    assert_eq!(counts, expected.map(|(size, count)| (size.to_owned(), count.to_owned())));
    assert_eq!(columns, 5);
}
