//! The estimate as a spreadsheet: change a figure, and every price and sum follows. What it shows when it is opened is what the
//! program worked out; rounding is written in whole numbers, so that every spreadsheet program rounds alike.

use super::new_workbook;
use super::packs_out::{bought, packs};
use super::sheet::{Cell, RowNumber, Sheet};
use estimate::{Percent, PriceBook};
use remedies::{EstimateAnswer, LabourAnswer, LineAnswer, LineOf};
use rust_xlsxwriter::{Workbook, XlsxError};
use std::collections::BTreeMap;

/// The rows of the sheet of figures, in their order.
const HOUR: RowNumber = 2;
const HELPER_HOUR: RowNumber = 3;
const WASTE: RowNumber = 4;
const MARKUP: RowNumber = 5;
const TAX: RowNumber = 6;
const TRIP: RowNumber = 7;
const HOURS_A_DAY: RowNumber = 8;
const PERMIT: RowNumber = 9;
const CONTINGENCY: RowNumber = 10;
const MINIMUM: RowNumber = 11;
const ROUND_TO: RowNumber = 12;

/// The estimate as a workbook's bytes.
pub fn estimate_workbook(answer: &EstimateAnswer, book: &PriceBook) -> Result<Vec<u8>, XlsxError> {
    let mut workbook = new_workbook(&format!("Estimate: {}", answer.job))?;
    summary(&mut workbook, answer)?;
    let units = lines(&mut workbook, answer)?;
    material(&mut workbook, (answer, book), units)?;
    work(&mut workbook, answer, units)?;
    packs(&mut workbook, answer, book)?;
    figures(&mut workbook, book)?;
    workbook.save_to_buffer()
}

/// A figure, as formulas name it.
fn figure(row: RowNumber) -> String {
    format!("Figures!$B${row}")
}

/// A figure in hundredths, as a whole number: cents, or hundredths of a percent.
fn hundredths(of: &str) -> String {
    format!("ROUND({of}*100,0)")
}

/// A share of whole numbers, rounded half up to the cent, in dollars.
fn rounded(above: &str, below: u64) -> String {
    format!("INT((2*{above}+{below})/{})/100", 2 * below)
}

/// How many rows of lines there are.
fn count_of_lines(answer: &EstimateAnswer) -> RowNumber {
    u32::try_from(answer.pieces.iter().map(|piece| piece.lines.len()).sum::<usize>()).unwrap_or(0)
}

fn summary(workbook: &mut Workbook, answer: &EstimateAnswer) -> Result<(), XlsxError> {
    let mut sheet = Sheet::new(workbook, "Estimate", &[(answer.job.as_str(), 44.0), ("dollars", 14.0)])?;
    let (owner, last) = (&answer.owner, count_of_lines(answer) + 1);
    let things = u32::try_from(answer.material.len()).unwrap_or(0) + 1;
    let tasks = u32::try_from(works(answer).len()).unwrap_or(0) + 1;
    let mut row =
        |words: &str, formula: String, cents: i64| sheet.row(vec![words.into(), Cell::CentsOf(formula, cents)]);
    row("Material", format!("ROUND(SUM(Material!I2:I{}),2)", things.max(2)), answer.price.material_cents)?;
    row("Labour", format!("ROUND(SUM(Work!I2:I{}),2)", tasks.max(2)), answer.price.labour_cents)?;
    row("Material and labour", "ROUND(B2+B3,2)".to_owned(), owner.work_cents)?;
    let time = format!("SUM(Work!F2:F{})", tasks.max(2));
    let (trip, permit, least) = (figure(TRIP), figure(PERMIT), figure(MINIMUM));
    row("Trips", format!("ROUND(B13*{trip},2)"), owner.trips_cents)?;
    let share = format!("{}*{}", hundredths("(B4+B5)"), hundredths(&figure(CONTINGENCY)));
    row("Contingency", rounded(&share, 10_000), owner.contingency_cents)?;
    row("Permit", format!("IF(B4+B13>0,{permit},0)"), owner.permit_cents)?;
    let missing = format!("IF(B4+B13>0,MAX(0,ROUND({least}-B4-B5-B6-B7,2)),0)");
    row("To the minimum charge", missing, owner.to_minimum_cents)?;
    let (step, before) = (hundredths(&figure(ROUND_TO)), hundredths("(B4+B5+B6+B7+B8)"));
    let up = format!("IF({step}>0,(-INT(-{before}/{step})*{step}-{before})/100,0)");
    row("Rounded up", up, owner.rounding_cents)?;
    row("The owner pays", "ROUND(B4+B5+B6+B7+B8+B9,2)".to_owned(), owner.total_cents)?;
    sheet.row(vec![Cell::Blank])?;
    let lines = format!("ROUND(SUM(Lines!I2:I{}),2)", last.max(2));
    sheet.row(vec!["All lines together".into(), Cell::CentsOf(lines, owner.work_cents)])?;
    let days = format!("-INT(-{time}/(6000*{}))", figure(HOURS_A_DAY));
    sheet.row(vec!["Working days".into(), Cell::CountOf(days, owner.days.into())])?;
    for note in &answer.notes {
        sheet.row(vec![note.as_str().into()])?;
    }
    if answer.demo_prices {
        sheet.row(vec!["Prices are invented demo figures: put in your own.".into()])?;
    }
    Ok(())
}

/// The rows of the lines, as formulas of the other sheets name them.
#[derive(Clone, Copy)]
struct Lines {
    last: RowNumber,
}

impl Lines {
    /// How much of a unit all lines have together.
    fn quantity_of(self, row: RowNumber) -> String {
        let last = self.last.max(2);
        format!("SUMIF(Lines!$F$2:$F${last},A{row},Lines!$G$2:$G${last})")
    }
}

/// The name of the unit of a line: a task under a condition is another unit than the plain one.
fn unit_name(line: &LineAnswer) -> String {
    match (line.condition, line.of, line.line) {
        (Some(condition), ..) => format!("{} ({condition})", line.line),
        (None, LineOf::Work, "as-stated") => format!("as-stated {} min", line.minutes),
        (None, ..) => line.line.to_owned(),
    }
}

fn unit_name_of_work(work: &LabourAnswer) -> String {
    match (work.condition, work.line) {
        (Some(condition), _) => format!("{} ({condition})", work.line),
        (None, "as-stated") => format!("as-stated {} min", work.book_minutes),
        (None, name) => name.to_owned(),
    }
}

fn lines(workbook: &mut Workbook, answer: &EstimateAnswer) -> Result<Lines, XlsxError> {
    let head: &[(&str, f64)] = &[
        ("what", 10.0),
        ("id", 14.0),
        ("room", 14.0),
        ("work", 44.0),
        ("of", 9.0),
        ("unit", 28.0),
        ("quantity", 10.0),
        ("each", 10.0),
        ("together", 12.0),
    ];
    let mut rows: BTreeMap<String, (&str, RowNumber)> = BTreeMap::new();
    for (row, thing) in (2..).zip(&answer.material) {
        rows.insert(thing.line.to_owned(), ("Material!$H$", row));
    }
    for (row, work) in works(answer) {
        rows.entry(unit_name_of_work(work)).or_insert(("Work!$H$", row));
    }
    let mut sheet = Sheet::new(workbook, "Lines", head)?;
    for piece in &answer.pieces {
        for line in &piece.lines {
            let (unit, row) = (unit_name(line), sheet.next_row());
            let (price, at) = rows.get(&unit).copied().unwrap_or_default();
            sheet.row(vec![
                piece.at.name().into(),
                piece.id.as_str().into(),
                piece.room.clone().unwrap_or_default().into(),
                piece.says.as_str().into(),
                line.of.name().into(),
                unit.into(),
                Cell::Count(line.quantity.into()),
                Cell::CentsOf(format!("{price}{at}"), line.unit_cents),
                Cell::CentsOf(format!("ROUND(G{row}*H{row},2)"), line.cents),
            ])?;
        }
    }
    Ok(Lines { last: count_of_lines(answer) + 1 })
}

/// The rows of the sheet of work; work of as many stated minutes is one unit.
fn works(answer: &EstimateAnswer) -> Vec<(RowNumber, &LabourAnswer)> {
    let mut found: Vec<(RowNumber, &LabourAnswer)> = Vec::new();
    for work in &answer.labour {
        if !found.iter().any(|(_, known)| unit_name_of_work(known) == unit_name_of_work(work)) {
            let row = u32::try_from(found.len()).unwrap_or(0) + 2;
            found.push((row, work));
        }
    }
    found
}

fn material(
    workbook: &mut Workbook,
    (answer, book): (&EstimateAnswer, &PriceBook),
    lines: Lines,
) -> Result<(), XlsxError> {
    let head: &[(&str, f64)] = &[
        ("thing", 22.0),
        ("counter", 14.0),
        ("of", 9.0),
        ("measured", 10.0),
        ("with waste", 11.0),
        ("to buy in packs", 15.0),
        ("cost", 10.0),
        ("charged", 10.0),
        ("together", 12.0),
        ("what it is", 60.0),
    ];
    let mut sheet = Sheet::new(workbook, "Material", head)?;
    for thing in &answer.material {
        let row = sheet.next_row();
        let on_top = |of: RowNumber| format!("(10000+{})", hundredths(&figure(of)));
        let (markup, tax, cost) = (on_top(MARKUP), on_top(TAX), hundredths(&format!("G{row}")));
        let by_the_foot = thing.of == LineOf::Feet;
        let charged = if by_the_foot {
            rounded(&format!("{cost}*{}*{markup}*{tax}", on_top(WASTE)), 1_000_000_000_000)
        } else {
            rounded(&format!("{cost}*{markup}*{tax}"), 100_000_000)
        };
        let needed = if by_the_foot { format!("-INT(-D{row}*{}/10000)", on_top(WASTE)) } else { format!("D{row}") };
        sheet.row(vec![
            thing.line.into(),
            thing.counter.name().into(),
            thing.of.name().into(),
            Cell::CountOf(lines.quantity_of(row), thing.measured.into()),
            Cell::CountOf(needed, thing.needed),
            Cell::CountOf(bought(answer, book, thing, row), thing.bought),
            Cell::Cents(thing.cost_cents),
            Cell::CentsOf(charged, thing.unit_cents),
            Cell::CentsOf(format!("ROUND(D{row}*H{row},2)"), thing.cents),
            thing.says.into(),
        ])?;
    }
    Ok(())
}

fn work(workbook: &mut Workbook, answer: &EstimateAnswer, lines: Lines) -> Result<(), XlsxError> {
    let head: &[(&str, f64)] = &[
        ("task", 28.0),
        ("minutes", 9.0),
        ("percent", 9.0),
        ("an hour", 10.0),
        ("times", 9.0),
        ("minutes in all, × 100", 20.0),
        ("who", 24.0),
        ("each", 10.0),
        ("together", 12.0),
        ("what it is", 70.0),
    ];
    let mut sheet = Sheet::new(workbook, "Work", head)?;
    for (_, work) in works(answer) {
        let row = sheet.next_row();
        let alike = || answer.labour.iter().filter(|other| unit_name_of_work(other) == unit_name_of_work(work));
        let times: u32 = alike().map(|other| other.times).sum();
        let cents: i64 = alike().map(|other| other.cents).sum();
        let time = u64::from(times) * u64::from(work.book_minutes) * u64::from(work.percent);
        let (who, hour) = if work.for_two {
            ("electrician and helper", format!("{}+{}", figure(HOUR), figure(HELPER_HOUR)))
        } else {
            ("electrician", figure(HOUR))
        };
        let share = format!("{}*B{row}*C{row}", hundredths(&format!("D{row}")));
        sheet.row(vec![
            unit_name_of_work(work).into(),
            Cell::Count(work.book_minutes.into()),
            Cell::Count(work.percent.into()),
            Cell::CentsOf(hour, work.hour_cents),
            Cell::CountOf(lines.quantity_of(row), times.into()),
            Cell::CountOf(format!("B{row}*C{row}*E{row}"), time),
            who.into(),
            Cell::CentsOf(rounded(&share, 6_000), work.unit_cents),
            Cell::CentsOf(format!("ROUND(E{row}*H{row},2)"), cents),
            work.says.into(),
        ])?;
    }
    Ok(())
}

fn figures(workbook: &mut Workbook, book: &PriceBook) -> Result<(), XlsxError> {
    let mut sheet = Sheet::new(workbook, "Figures", &[("figure", 24.0), ("value", 12.0), ("of what", 60.0)])?;
    let charges = book.charges();
    let percent = |percent: Percent| Cell::Number(f64::from(percent.0) / 100.0);
    let rows = [
        ("hour", Cell::Cents(book.hour().0), "dollars, an electrician"),
        ("helper-hour", Cell::Cents(book.helper_hour().unwrap_or_default().0), "dollars, a helper"),
        ("waste-percent", percent(charges.waste), "of what goes by the foot"),
        ("markup-percent", percent(charges.markup), "on the cost of material"),
        ("tax-percent", percent(charges.tax), "on material, its markup included"),
        ("trip", Cell::Cents(charges.trip.0), "dollars, for each working day"),
        ("hours-a-day", Cell::Count(charges.hours_a_day.into()), "worked on the site"),
        ("permit", Cell::Cents(charges.permit.0), "dollars"),
        ("contingency-percent", percent(charges.contingency), "on material, labour and trips"),
        ("minimum", Cell::Cents(charges.minimum.0), "dollars, the least that a job is done for"),
        ("round-to", Cell::Cents(charges.round_to.0), "dollars: the total is rounded up to a multiple; 0 is not"),
    ];
    for (key, value, meaning) in rows {
        sheet.row(vec![key.into(), value, meaning.into()])?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::super::sheet::dollars;
    use super::*;

    /// By hand: a hundred cents to the dollar, two digits of them.
    #[test]
    fn money_is_cached_as_dollars_and_cents() {
        assert_eq!([dollars(2_933), dollars(5), dollars(-120)], ["29.33", "0.05", "-1.20"]);
    }

    /// By hand: half a cent is rounded up, (2 × 5 + 10) / 20 = 1 of a cent.
    #[test]
    fn rounding_is_written_in_whole_numbers() {
        assert_eq!(rounded("A1", 10), "INT((2*A1+10)/20)/100");
    }
}
