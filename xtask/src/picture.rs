//! Draws the picture of a real plan page for the README, and holds the kept picture against a new one.

use std::fs;
use std::path::Path;
use std::process::Command;

/// Where the picture is kept.
pub const KEPT_AT: &str = "docs/plan-page.svg";
/// How many lines of the page the picture shows.
const LINES: usize = 52;
const COLUMN: f64 = 8.4;
const LINE_HEIGHT: usize = 19;
const MARGIN: usize = 24;
const COLUMNS: usize = 96;

/// Draws the picture, or says that the kept one is not what the program prints.
///
/// # Errors
/// Why it could not be drawn, or that it differs.
pub fn run(root: &Path, check_only: bool) -> Result<String, String> {
    let page = printed_page(root)?;
    let picture = drawn(&page);
    let path = root.join(KEPT_AT);
    if !check_only {
        fs::write(&path, picture).map_err(|error| format!("cannot write `{KEPT_AT}`: {error}"))?;
        return Ok(format!("picture: {KEPT_AT} drawn"));
    }
    match fs::read_to_string(&path) {
        Ok(kept) if kept == picture => Ok(format!("picture: {KEPT_AT} is what the program prints")),
        Ok(_) => Err(format!("`{KEPT_AT}` is not what the program prints: run `cargo xtask picture`")),
        Err(error) => Err(format!("cannot read `{KEPT_AT}`: {error}")),
    }
}

fn printed_page(root: &Path) -> Result<String, String> {
    let arguments = ["run", "--quiet", "--locked", "--package", "thirdwire", "--"];
    let page = ["plan", "--example", "bungalow", "--colour", "always"];
    let output = Command::new(env!("CARGO")).current_dir(root).args(arguments).args(page).output();
    let output = output.map_err(|error| format!("cannot run cargo: {error}"))?;
    let text = String::from_utf8(output.stdout).map_err(|error| format!("the page is not text: {error}"))?;
    if text.is_empty() {
        return Err(format!("the program printed nothing: {}", String::from_utf8_lossy(&output.stderr)));
    }
    Ok(text)
}

/// The first lines of a page as a drawing.
fn drawn(page: &str) -> String {
    let lines: Vec<&str> = page.lines().take(LINES).collect();
    let width = (COLUMNS as f64 * COLUMN) as usize + 2 * MARGIN;
    let height = (lines.len() + 1) * LINE_HEIGHT + 2 * MARGIN;
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" \
         viewBox=\"0 0 {width} {height}\" font-family=\"ui-monospace, 'DejaVu Sans Mono', monospace\" font-size=\"14\">\n\
         <title>The first lines of a plan</title>\n\
         <rect width=\"{width}\" height=\"{height}\" rx=\"6\" fill=\"#fbfaf7\" stroke=\"#c9c4b8\"/>\n"
    );
    for (index, line) in lines.iter().enumerate() {
        let y = MARGIN + (index + 1) * LINE_HEIGHT;
        for (column, text, style) in pieces(line) {
            let x = MARGIN as f64 + column as f64 * COLUMN;
            let length = text.chars().count() as f64 * COLUMN;
            svg.push_str(&format!(
                "<text x=\"{x:.1}\" y=\"{y}\" textLength=\"{length:.1}\" xml:space=\"preserve\"{style}>{}</text>\n",
                escaped(&text)
            ));
        }
    }
    svg.push_str("</svg>\n");
    svg
}

/// The pieces of a line that are drawn alike: the column each starts in, its text and its attributes.
fn pieces(line: &str) -> Vec<(usize, String, &'static str)> {
    let mut found = Vec::new();
    let (mut column, mut style) = (0, "");
    let mut codes: Vec<&str> = Vec::new();
    for (index, part) in line.split('\u{1b}').enumerate() {
        let text = match part.split_once('m') {
            Some((code, rest)) if index > 0 => {
                match code.trim_start_matches('[') {
                    "0" | "" => codes.clear(),
                    other => codes.extend(other.split(';')),
                }
                style = attributes(&codes);
                rest
            }
            _ => part,
        };
        if !text.trim().is_empty() {
            let lead = text.chars().take_while(|letter| *letter == ' ').count();
            found.push((column + lead, text.trim().to_owned(), style));
        }
        column += text.chars().count();
    }
    found
}

/// How text with these codes is drawn.
fn attributes(codes: &[&str]) -> &'static str {
    match (codes.contains(&"1"), codes.last().copied()) {
        (_, Some("31")) => " fill=\"#a3231c\" font-weight=\"bold\"",
        (_, Some("33")) => " fill=\"#8a5a00\"",
        (_, Some("36")) => " fill=\"#0b5c6b\" font-weight=\"bold\"",
        (_, Some("2")) => " fill=\"#77736a\"",
        (true, _) => " fill=\"#1d1b17\" font-weight=\"bold\"",
        _ => " fill=\"#1d1b17\"",
    }
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_cut_where_its_style_changes() {
        let found = pieces("  \u{1b}[1m\u{1b}[36mfit a receptacle\u{1b}[0m  $9.62");
        assert_eq!(found[0].0, 2);
        assert_eq!(found[0].1, "fit a receptacle");
        assert!(found[0].2.contains("#0b5c6b"));
        assert_eq!((found[1].0, found[1].1.as_str()), (20, "$9.62"));
    }

    #[test]
    fn letters_that_drawings_reserve_are_escaped() {
        assert!(drawn("a < b & c").contains("a &lt; b &amp; c"));
    }
}
