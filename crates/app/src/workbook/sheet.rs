//! A sheet that is filled row by row.

use rust_xlsxwriter::{Format, Formula, Workbook, Worksheet, XlsxError};

/// A cell.
pub enum Cell {
    /// Nothing.
    Blank,
    /// Words.
    Text(String),
    /// A whole number.
    Count(u64),
    /// A number with a part behind the point.
    Number(f64),
    /// Money, in cents.
    Cents(i64),
    /// A formula of money, with what it gives, in cents.
    CentsOf(String, i64),
    /// A formula of a number, with what it gives.
    CountOf(String, u64),
}

/// What a sheet is filled with.
pub struct Sheet<'a> {
    sheet: &'a mut Worksheet,
    row: u32,
}

/// A sheet row is counted from 1 in formulas.
pub type RowNumber = u32;

impl<'a> Sheet<'a> {
    /// A new sheet with a head and columns of these widths, the head in sight.
    pub fn new(workbook: &'a mut Workbook, name: &str, head: &[(&str, f64)]) -> Result<Self, XlsxError> {
        let sheet = workbook.add_worksheet();
        sheet.set_name(name)?;
        let bold = Format::new().set_bold();
        for (column, (words, width)) in (0_u16..).zip(head) {
            sheet.set_column_width(column, *width)?;
            sheet.write_string_with_format(0, column, *words, &bold)?;
        }
        sheet.set_freeze_panes(1, 0)?;
        Ok(Self { sheet, row: 1 })
    }

    /// The number of the row that is filled next.
    pub fn next_row(&self) -> RowNumber {
        self.row + 1
    }

    /// Fills a row; its number.
    pub fn row(&mut self, cells: Vec<Cell>) -> Result<RowNumber, XlsxError> {
        let money = Format::new().set_num_format("#,##0.00");
        for (column, cell) in (0_u16..).zip(cells) {
            let (sheet, row) = (&mut *self.sheet, self.row);
            match cell {
                Cell::Blank => continue,
                Cell::Text(words) => sheet.write_string(row, column, words)?,
                Cell::Count(count) => sheet.write_number(row, column, count as f64)?,
                Cell::Number(number) => sheet.write_number(row, column, number)?,
                Cell::Cents(cents) => sheet.write_number_with_format(row, column, cents as f64 / 100.0, &money)?,
                Cell::CentsOf(formula, cents) => {
                    let formula = Formula::new(formula).set_result(dollars(cents));
                    sheet.write_formula_with_format(row, column, formula, &money)?
                }
                Cell::CountOf(formula, count) => {
                    sheet.write_formula(row, column, Formula::new(formula).set_result(count.to_string()))?
                }
            };
        }
        self.row += 1;
        Ok(self.row)
    }
}

/// Cents as a number of dollars.
pub fn dollars(cents: i64) -> String {
    format!("{}{}.{:02}", if cents < 0 { "-" } else { "" }, cents.unsigned_abs() / 100, cents.unsigned_abs() % 100)
}

impl From<&str> for Cell {
    fn from(words: &str) -> Self {
        Self::Text(words.to_owned())
    }
}

impl From<String> for Cell {
    fn from(words: String) -> Self {
        Self::Text(words)
    }
}
