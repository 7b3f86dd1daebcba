//! The price book as a spreadsheet: a sheet for each table of the file, and `book` for what stands in no table.

use super::new_workbook;
use super::sheet::{Cell, Sheet};
use estimate::{Material, Percent, PriceBook, Task, WorkCondition};
use rust_xlsxwriter::{Workbook, XlsxError};

const HEAD: &[(&str, f64)] = &[("key", 24.0), ("value", 14.0), ("meaning", 90.0)];

/// The price book as a workbook's bytes.
pub fn price_book_workbook(book: &PriceBook) -> Result<Vec<u8>, XlsxError> {
    let mut workbook = new_workbook("Price book")?;
    let invented = if book.is_demo { "invented demo figures: replace every one with your own" } else { "" };
    let mut rows: Vec<(&str, Cell, &str)> =
        vec![("format", Cell::Count(1), invented), ("hour", Cell::Cents(book.hour().0), "an electrician, dollars")];
    if let Some(helper) = book.helper_hour() {
        rows.push(("helper-hour", Cell::Cents(helper.0), "a helper, where a task takes two, dollars"));
    }
    add(&mut workbook, "book", rows)?;
    let things = || Material::ALL.iter().copied();
    let cost = |thing: Material| (thing.name(), Cell::Cents(book.cost(thing).0), thing.meaning().trim());
    add(&mut workbook, "material", things().filter(|thing| book.has_thing(*thing)).map(cost).collect())?;
    let packed = things().filter(|thing| !book.packs(*thing).is_empty());
    let packs = packed.map(|thing| {
        let sizes: Vec<String> = book.packs(thing).iter().map(ToString::to_string).collect();
        (thing.name(), sizes.join(", ").into(), "pieces or feet in a pack, sizes apart by commas")
    });
    add(&mut workbook, "packs", packs.collect())?;
    let known = Task::ALL.iter().filter(|task| book.has_task(**task));
    let minutes = known.map(|task| (task.name(), Cell::Count(book.minutes(*task).into()), task.meaning().trim()));
    add(&mut workbook, "minutes", minutes.collect())?;
    let two: Vec<&str> = Task::ALL.iter().filter(|task| book.takes_two(**task)).map(|task| task.name()).collect();
    let charges = book.charges();
    let crew = vec![
        ("hours-a-day", Cell::Count(charges.hours_a_day.into()), "worked on the site"),
        ("tasks-for-two", two.join(", ").into(), "tasks that take an electrician and a helper, apart by commas"),
    ];
    add(&mut workbook, "crew", crew)?;
    let conditions = WorkCondition::ALL.iter();
    let conditions =
        conditions.map(|one| (one.name(), Cell::Count(book.percent(*one).into()), "percent of the plain time"));
    add(&mut workbook, "conditions", conditions.collect())?;
    let percent = |percent: Percent| Cell::Number(f64::from(percent.0) / 100.0);
    let charged = vec![
        ("waste-percent", percent(charges.waste), "of what goes by the foot, cut off and thrown away"),
        ("markup-percent", percent(charges.markup), "on the cost of material"),
        ("tax-percent", percent(charges.tax), "on material, its markup included"),
        ("trip", Cell::Cents(charges.trip.0), "for each working day, dollars"),
        ("permit", Cell::Cents(charges.permit.0), "the fee, dollars"),
        ("contingency-percent", percent(charges.contingency), "on material, labour and trips"),
        ("minimum", Cell::Cents(charges.minimum.0), "the least that a job is done for, dollars"),
        (
            "round-to",
            Cell::Cents(charges.round_to.0),
            "the total is rounded up to a multiple of this, dollars; 0 is not",
        ),
    ];
    add(&mut workbook, "charges", charged)?;
    workbook.save_to_buffer()
}

fn add(workbook: &mut Workbook, name: &str, rows: Vec<(&str, Cell, &str)>) -> Result<(), XlsxError> {
    let mut sheet = Sheet::new(workbook, name, HEAD)?;
    for (key, value, meaning) in rows {
        sheet.row(vec![key.into(), value, meaning.into()])?;
    }
    Ok(())
}
