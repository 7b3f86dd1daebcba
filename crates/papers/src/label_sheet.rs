//! A sheet of labels by its dimensions: how large a label is, how many there are, and where they lie.

use crate::paper_size::{MILLIMETRE, PaperSize};

/// A sheet of labels, in points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LabelSheet {
    /// The paper.
    pub paper: PaperSize,
    /// Width and height of a label.
    pub label: (f32, f32),
    /// How many stand side by side, and how many below one another.
    pub grid: (u16, u16),
    /// From the left and upper edge of the paper to the first label.
    pub margin: (f32, f32),
    /// From one label's left or upper edge to the next one's.
    pub pitch: (f32, f32),
}

/// The height of the line that says which page it is, with what keeps it off the labels and the edge.
const OWN_LINE: f32 = 24.0;
/// How far a label may reach over the edge by the rounding of its dimensions.
const ROUNDING: f32 = 0.6;

impl LabelSheet {
    /// A usual sheet of the paper: thirty labels of 2 5/8 by 1 inch on Letter, twenty-one of 63.5 by 38.1 mm on A4. Common
    /// practice, no source.
    #[must_use]
    pub fn usual(paper: PaperSize) -> Self {
        let (inch, mm) = (72.0, MILLIMETRE);
        match paper {
            PaperSize::Letter => Self {
                paper,
                label: (2.625 * inch, inch),
                grid: (3, 10),
                margin: (0.1875 * inch, 0.5 * inch),
                pitch: (2.75 * inch, inch),
            },
            PaperSize::A4 => Self {
                paper,
                label: (63.5 * mm, 38.1 * mm),
                grid: (3, 7),
                margin: (7.25 * mm, 15.15 * mm),
                pitch: (66.0 * mm, 38.1 * mm),
            },
        }
    }

    /// Whether such a sheet can be.
    ///
    /// # Errors
    /// What is wrong with it, and what to do instead.
    pub fn check(&self) -> Result<(), String> {
        let (width, height) = self.paper.points();
        let (columns, rows) = (f32::from(self.grid.0), f32::from(self.grid.1));
        let sizes = [self.label.0, self.label.1, self.pitch.0, self.pitch.1];
        if self.grid.0 == 0 || self.grid.1 == 0 || sizes.iter().any(|size| !size.is_finite() || *size < 18.0) {
            return Err(
                "a sheet has at least one label, and a label is at least a quarter of an inch each way".to_owned()
            );
        }
        let apart = (columns <= 1.0 || self.pitch.0 + 0.05 >= self.label.0)
            && (rows <= 1.0 || self.pitch.1 + 0.05 >= self.label.1);
        if !apart {
            return Err("the labels lie over one another: the pitch is at least the label's size".to_owned());
        }
        let right = self.margin.0 + self.pitch.0 * (columns - 1.0) + self.label.0;
        if self.margin.0 < 0.0 || self.margin.1 < 0.0 || right > width + ROUNDING || self.bottom() > height + ROUNDING {
            return Err(format!("the labels do not fit on {}: they reach over its edge", self.paper));
        }
        if self.margin.1 < OWN_LINE && height - self.bottom() < OWN_LINE {
            return Err(
                "leave a third of an inch free above or below the labels: the dwelling, the day and the page stand there".to_owned()
            );
        }
        Ok(())
    }

    fn bottom(&self) -> f32 {
        self.margin.1 + self.pitch.1 * (f32::from(self.grid.1) - 1.0) + self.label.1
    }

    /// The top of the line that says which page it is.
    pub(crate) fn own_line(&self) -> f32 {
        if self.margin.1 >= OWN_LINE { self.margin.1 - 14.0 } else { self.bottom() + 5.0 }
    }

    /// Where the labels lie: by row, from the left.
    pub(crate) fn places(&self) -> Vec<(f32, f32)> {
        let at = |row: u16, column: u16| {
            (self.margin.0 + self.pitch.0 * f32::from(column), self.margin.1 + self.pitch.1 * f32::from(row))
        };
        (0..self.grid.1).flat_map(|row| (0..self.grid.0).map(move |column| at(row, column))).collect()
    }
}

/// Two lengths, such as `2.625x1in` or `63.5x38.1mm`, in points.
///
/// # Errors
/// How it is written.
pub fn two_lengths(text: &str) -> Result<(f32, f32), String> {
    let wrong = || format!("`{text}` is not two lengths: write such as `2.625x1in` or `63.5x38.1mm`");
    let (numbers, unit) = match (text.strip_suffix("in"), text.strip_suffix("mm")) {
        (Some(numbers), _) => (numbers, 72.0),
        (_, Some(numbers)) => (numbers, MILLIMETRE),
        _ => return Err(wrong()),
    };
    let (across, down) = numbers.trim().split_once('x').ok_or_else(wrong)?;
    let length = |part: &str| {
        let number = part.trim().parse::<f32>().ok().filter(|number| (0.0..=1000.0).contains(number));
        number.map(|number| number * unit).ok_or_else(wrong)
    };
    Ok((length(across)?, length(down)?))
}

/// Two counts, such as `3x10`.
///
/// # Errors
/// How it is written.
pub fn two_counts(text: &str) -> Result<(u16, u16), String> {
    let wrong = || format!("`{text}` is not two counts: write such as `3x10`, those side by side first");
    let (across, down) = text.split_once('x').ok_or_else(wrong)?;
    let count =
        |part: &str| part.trim().parse::<u16>().ok().filter(|count| (1..=100).contains(count)).ok_or_else(wrong);
    Ok((count(across)?, count(down)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_sheets_fit_on_their_paper() {
        for paper in [PaperSize::Letter, PaperSize::A4] {
            assert_eq!(LabelSheet::usual(paper).check(), Ok(()), "{paper}");
        }
    }

    /// By hand: 3/16 in to the first, 2 × 2 3/4 in to the third, 2 5/8 in wide: 8 5/16 in of 8 1/2 in; thirty places.
    #[test]
    fn thirty_labels_lie_on_letter_an_inch_apart() {
        let places = LabelSheet::usual(PaperSize::Letter).places();
        assert_eq!(places.len(), 30);
        assert_eq!(places[2].0 + 2.625 * 72.0, 8.3125 * 72.0);
        assert_eq!(places[3].1 - places[0].1, 72.0);
    }

    /// By hand: four of 2.75 in are wider than 8.5 in; 100 pt is less than the label's 189; eleven of 1 in leave no margin on 11 in.
    #[test]
    fn a_sheet_that_cannot_be_is_refused_with_the_reason() {
        let usual = LabelSheet::usual(PaperSize::Letter);
        let refused = |sheet: LabelSheet| sheet.check().expect_err("it cannot be");
        assert!(refused(LabelSheet { grid: (4, 10), ..usual }).contains("edge"));
        assert!(refused(LabelSheet { pitch: (100.0, 72.0), ..usual }).contains("over one another"));
        assert!(refused(LabelSheet { grid: (3, 11), margin: (13.5, 0.0), ..usual }).contains("third of an inch"));
        assert!(refused(LabelSheet { label: (2.0, 2.0), ..usual }).contains("quarter"));
    }

    /// By hand: 72 points to the inch, 2.625 × 72 = 189.
    #[test]
    fn lengths_and_counts_are_read_as_they_are_written() {
        assert_eq!(two_lengths("2.625x1in"), Ok((189.0, 72.0)));
        assert_eq!(two_counts("3x10"), Ok((3, 10)));
        for wrong in ["2x1", "2in", "ax1in", "-1x1mm", "infx1in"] {
            assert!(two_lengths(wrong).is_err(), "{wrong}");
        }
        assert!(two_counts("0x3").is_err() && two_counts("3").is_err());
    }
}
