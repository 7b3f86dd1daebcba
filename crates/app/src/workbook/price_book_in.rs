//! A price book out of a spreadsheet: its cells are written as the TOML they stand for and read by the same rules, so that every
//! mistake has a cell.

use calamine::{Data, Reader as _, Xlsx, open_workbook_from_rs};
use estimate::PriceBook;
use std::collections::BTreeMap;
use std::io::Cursor;
use std::path::Path;
use survey::{Diagnostic, Span};

/// The sheet of what stands in no table of the file.
const BOOK: &str = "book";
/// A price book has some hundred cells; a workbook that is larger than this is another file.
const LARGEST: usize = 4_000_000;
/// More rows than these in a sheet are not a price book.
const MOST_ROWS: usize = 5_000;
/// The keys whose value is a list.
const LISTS: &[&str] = &["tasks-for-two"];
/// The sheet in which every value is a list.
const LISTS_ONLY: &str = "packs";

/// Whether a file is a spreadsheet, by its name.
pub fn is_workbook(path: &Path) -> bool {
    path.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("xlsx"))
}

/// The sheets of a price book, as the text that they stand for.
pub struct PriceSheets {
    /// The TOML.
    text: String,
    /// By line of the text: its sheet and its row, counted from 1.
    places: Vec<(String, u32)>,
}

impl PriceSheets {
    /// Reads the sheets of a workbook.
    ///
    /// # Errors
    /// In a sentence, why it is no workbook.
    pub fn read(bytes: &[u8]) -> Result<Self, String> {
        if bytes.len() > LARGEST {
            return Err("it is larger than any price book".to_owned());
        }
        let mut workbook: Xlsx<_> = open_workbook_from_rs(Cursor::new(bytes))
            .map_err(|error: calamine::XlsxError| format!("it is no spreadsheet that can be read: {error}"))?;
        let mut sheets = Self { text: String::new(), places: Vec::new() };
        let mut names = workbook.sheet_names();
        // What stands in no table comes before the first table.
        names.sort_by_key(|name| name != BOOK);
        for name in names {
            let range = workbook.worksheet_range(&name).map_err(|error| format!("sheet `{name}`: {error}"))?;
            if name != BOOK {
                sheets.line(&format!("[{}]", quoted(&name)), &name, 1);
            }
            let (first_row, first_column) = range.start().unwrap_or_default();
            let at = |row: u32, column: u32| range.get_value((row, column)).filter(|_| column >= first_column);
            let last_row = range.end().map_or(0, |(row, _)| row).min(first_row + MOST_ROWS as u32);
            for row in first_row.max(1)..=last_row {
                if let Some(line) = line_of(&name, at(row, 0), at(row, 1)) {
                    sheets.line(&line, &name, row + 1);
                }
            }
        }
        Ok(sheets)
    }

    fn line(&mut self, line: &str, sheet: &str, row: u32) {
        self.text.push_str(line);
        self.text.push('\n');
        self.places.push((sheet.to_owned(), row));
    }

    /// The price book where no mistake is an error, and every mistake.
    pub fn prices(&self) -> (Option<PriceBook>, Vec<Diagnostic>) {
        survey::read_prices(self.text.as_bytes())
    }

    /// The text in which the places of mistakes count.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The mistakes with the cell of each in its message.
    pub fn with_cells(&self, diagnostics: Vec<Diagnostic>) -> Vec<Diagnostic> {
        let told = diagnostics.into_iter().map(|diagnostic| {
            let message = format!("{}: {}", self.cell_of(diagnostic.span()), diagnostic.message);
            Diagnostic { message, ..diagnostic }
        });
        told.collect()
    }

    /// A mistake as a person reads it.
    pub fn rendered(&self, diagnostic: &Diagnostic, file: &str) -> String {
        let mut shown = format!("{}[{}]: {}\n", diagnostic.severity.name(), diagnostic.code, diagnostic.message);
        let mut seen: BTreeMap<String, &str> = BTreeMap::new();
        for label in &diagnostic.labels {
            seen.entry(self.cell_of(label.span)).or_insert(&label.text);
        }
        let first = self.cell_of(diagnostic.span());
        let said = seen.remove(&first).unwrap_or_default();
        shown.push_str(&format!("  --> {file}, {first}: {said}\n"));
        for (cell, said) in seen {
            shown.push_str(&format!("      {cell}: {said}\n"));
        }
        if let Some(help) = &diagnostic.help {
            shown.push_str(&format!("   = help: {help}\n"));
        }
        shown
    }

    /// The sheet and the cell of a place in the text.
    fn cell_of(&self, span: Span) -> String {
        let before = self.text.get(..span.start).unwrap_or(&self.text);
        let line = before.matches('\n').count();
        let column = before.len() - before.rfind('\n').map_or(0, |newline| newline + 1);
        let (sheet, row) = self.places.get(line).cloned().unwrap_or((BOOK.to_owned(), 1));
        let written = self.text.lines().nth(line).unwrap_or_default();
        let is_value = written.find(" = ").is_some_and(|equals| column > equals);
        format!("sheet `{sheet}`, cell {}{row}", if is_value { 'B' } else { 'A' })
    }
}

/// A row of a sheet as a line of the file; nothing where it has no key or no value.
fn line_of(sheet: &str, key: Option<&Data>, value: Option<&Data>) -> Option<String> {
    let key = match key? {
        Data::Empty => return None,
        Data::String(key) => key.trim().to_owned(),
        other => other.to_string(),
    };
    if key.is_empty() {
        return None;
    }
    let is_list = sheet == LISTS_ONLY || LISTS.contains(&key.as_str());
    let value = match value.unwrap_or(&Data::Empty) {
        Data::Empty if is_list => "[]".to_owned(),
        Data::Empty => return None,
        Data::Int(number) if is_list => format!("[{number}]"),
        Data::Float(number) if is_list => format!("[{}]", plain(*number)),
        Data::Int(number) => number.to_string(),
        Data::Float(number) => plain(*number),
        Data::Bool(flag) => flag.to_string(),
        other if is_list => {
            let words = other.to_string();
            let items = words.split([',', ';']).map(str::trim).filter(|item| !item.is_empty());
            let items: Vec<String> = items.map(item_of).collect();
            format!("[{}]", items.join(", "))
        }
        other => quoted(&other.to_string()),
    };
    Some(format!("{} = {value}", quoted(&key)))
}

/// An item of a list: a number as it is, all else as a text.
fn item_of(item: &str) -> String {
    if item.bytes().all(|byte| byte.is_ascii_digit()) { item.to_owned() } else { quoted(item) }
}

/// A number with no more digits than it needs.
fn plain(number: f64) -> String {
    if number.is_finite() { number.to_string() } else { quoted(&number.to_string()) }
}

/// A text in the quotes of the file's notation.
fn quoted(text: &str) -> String {
    let mut written = String::from("\"");
    for character in text.chars() {
        match character {
            '"' | '\\' => written.extend(['\\', character]),
            control if control.is_control() => written.push_str(&format!("\\u{:04X}", control as u32)),
            other => written.push(other),
        }
    }
    written.push('"');
    written
}
