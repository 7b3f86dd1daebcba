//! The packs of an estimate as a sheet: how many of each size are bought follows from what is needed, by formulas.

use super::sheet::{Cell, RowNumber, Sheet};
use estimate::{Material, PriceBook, packs_for};
use remedies::{EstimateAnswer, TakeoffAnswer};
use rust_xlsxwriter::{Workbook, XlsxError};

/// The first row of a sheet below its head.
const FIRST: RowNumber = 2;

/// The sizes in which a thing is sold, the largest first.
fn sizes_of(thing: &TakeoffAnswer, book: &PriceBook) -> Vec<u32> {
    let sizes = Material::from_name(thing.line).map(|thing| book.packs(thing).to_vec()).unwrap_or_default();
    let mut sizes: Vec<u32> = sizes.into_iter().filter(|size| *size > 0).collect();
    sizes.sort_unstable_by(|one, other| other.cmp(one));
    sizes.dedup();
    sizes
}

/// What is bought of a thing, as a formula of the sheet of material.
pub fn bought(answer: &EstimateAnswer, book: &PriceBook, thing: &TakeoffAnswer, row: RowNumber) -> String {
    if sizes_of(thing, book).is_empty() {
        return format!("E{row}");
    }
    let rows: usize = answer.material.iter().map(|thing| sizes_of(thing, book).len()).sum();
    let last = u32::try_from(rows).unwrap_or(0) + FIRST - 1;
    format!("SUMIF(Packs!$A${FIRST}:$A${last},A{row},Packs!$E${FIRST}:$E${last})")
}

/// The sheet: a row for each size in which something is sold. Where the largest packs first are always the best buy, they are taken
/// so; of other sizes those that were planned, as long as as much is needed as planned, and else the largest first.
pub fn packs(workbook: &mut Workbook, answer: &EstimateAnswer, book: &PriceBook) -> Result<(), XlsxError> {
    let head: &[(&str, f64)] =
        &[("thing", 22.0), ("in a pack", 10.0), ("still to cover", 14.0), ("packs", 9.0), ("pieces or feet", 14.0)];
    let mut sheet = Sheet::new(workbook, "Packs", head)?;
    for (at, thing) in (FIRST..).zip(&answer.material) {
        let sizes = sizes_of(thing, book);
        let (needed, first) = (format!("Material!$E${at}"), sheet.next_row());
        let last = first + u32::try_from(sizes.len()).unwrap_or(1) - 1;
        let simple = largest_first_is_best(&sizes);
        let smallest = sizes.last().copied().unwrap_or(1);
        let mut left = if simple { thing.needed.next_multiple_of(u64::from(smallest)) } else { thing.needed };
        for size in sizes {
            let row = sheet.next_row();
            let to_cover = match row == first {
                true if simple => format!("-INT(-{needed}/$B${last})*$B${last}"),
                true => needed.clone(),
                false => format!("MAX(0,C{0}-E{0})", row - 1),
            };
            let count = thing.packs.iter().find(|pack| pack.size == size).map_or(0, |pack| pack.count);
            let largest_first =
                if row == last { format!("-INT(-C{row}/B{row})") } else { format!("INT(C{row}/B{row})") };
            let packs = match simple {
                true => largest_first,
                false => format!("IF({needed}={},{count},{largest_first})", thing.needed),
            };
            let quantity = u64::from(size) * u64::from(count);
            sheet.row(vec![
                thing.line.into(),
                Cell::Count(size.into()),
                Cell::CountOf(to_cover, left),
                Cell::CountOf(packs, count.into()),
                Cell::CountOf(format!("B{row}*D{row}"), quantity),
            ])?;
            left = left.saturating_sub(quantity);
        }
    }
    Ok(())
}

/// Whether it is always the best buy to take as many of the largest packs as go in, then of the next, when what is needed is first
/// rounded up to the smallest.
///
/// # Source
/// D. Kozen, S. Zaks, "Optimal bounds for the change-making problem" (1994): where the largest first are not the fewest, the least
/// sum that shows it is smaller than the two largest together. That the smallest goes into all leaves the least over.
fn largest_first_is_best(sizes: &[u32]) -> bool {
    let (Some(largest), Some(smallest)) = (sizes.first(), sizes.last()) else { return true };
    if sizes.iter().any(|size| size % smallest != 0) {
        return false;
    }
    let bound = u64::from(*largest) + u64::from(*sizes.get(1).unwrap_or(largest));
    (1..=bound / u64::from(*smallest)).map(|times| times * u64::from(*smallest)).all(|sum| {
        let mut left = sum;
        let taken = sizes.iter().map(|size| {
            let count = left / u64::from(*size);
            left -= count * u64::from(*size);
            (*size, u32::try_from(count).unwrap_or(u32::MAX))
        });
        let taken: Vec<(u32, u32)> = taken.filter(|(_, count)| *count > 0).collect();
        taken == packs_for(sum, sizes).packs
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 6 of packs of 4, 3 and 1 are two of 3 where the largest first are 4 + 1 + 1; 3 does not go into 11; coils of 250,
    /// 100, 50 and 25 are 10, 4, 2 and 1 of the smallest, and nothing is made of fewer than the largest first make it of.
    #[test]
    fn the_largest_first_are_not_always_the_best_buy() {
        assert!(largest_first_is_best(&[250, 100, 50, 25]) && largest_first_is_best(&[10, 1]));
        assert!(largest_first_is_best(&[25]) && largest_first_is_best(&[]));
        assert!(!largest_first_is_best(&[4, 3, 1]) && !largest_first_is_best(&[11, 3]));
    }
}
