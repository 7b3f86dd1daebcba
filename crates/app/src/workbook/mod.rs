//! Spreadsheets: the price book in and out, the estimate out.

mod estimate_out;
mod packs_out;
mod price_book_in;
mod price_book_out;
mod sheet;

pub use estimate_out::estimate_workbook;
pub use price_book_in::{PriceSheets, is_workbook};
pub use price_book_out::price_book_workbook;

use crate::command_error::CommandError;
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Workbook, XlsxError};
use std::path::Path;

/// A workbook that is the same byte for byte whenever it is written.
fn new_workbook(title: &str) -> Result<Workbook, XlsxError> {
    let mut workbook = Workbook::new();
    let day = ExcelDateTime::from_ymd(2000, 1, 1)?;
    workbook.set_properties(&DocProperties::new().set_title(title).set_creation_datetime(&day));
    Ok(workbook)
}

/// A fault of the writer as the program tells it.
pub fn fault(error: XlsxError) -> CommandError {
    CommandError::Fault(format!("the spreadsheet could not be made: {error}"))
}

/// Writes a workbook into a file.
///
/// # Errors
/// [`CommandError::Usage`] where the file cannot be written.
pub fn write_workbook(path: &Path, bytes: &[u8]) -> Result<(), CommandError> {
    std::fs::write(path, bytes)
        .map_err(|error| CommandError::Usage(format!("cannot write `{}`: {error}", path.display())))
}
