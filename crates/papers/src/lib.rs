//! From a plan to the papers of a job: what each says, and its pages as tagged PDF.

mod as_found;
mod certificate;
mod connections;
mod dangers;
mod directory;
mod document;
mod drawn;
mod inspection;
mod job;
mod label_sheet;
mod labels;
mod lines;
mod material_list;
mod notes;
mod page;
mod paging;
mod paper_size;
mod pdf;
mod proposal;
mod set;
mod setting;
mod side_by_side;
mod svg;
mod table;
mod test_record;
mod typeface;
mod wirings;
mod words;
mod work_order;

pub use certificate::{Closed, certificate};
pub use directory::circuit_directory;
pub use document::{Block, Cell, Drawing, Face, Paper, Table, Text};
pub use drawn::Drawn;
pub use inspection::inspection_packet;
pub use job::Job;
pub use label_sheet::{LabelSheet, two_counts, two_lengths};
pub use labels::{Label, labels, typeset_labels};
pub use material_list::material_list;
pub use paging::{Typeset, typeset};
pub use paper_size::PaperSize;
pub use proposal::proposal;
pub use set::{FileAnswer, MarkingCount, SetAnswer, SetFile, set_of};
pub use test_record::test_record;
pub use work_order::work_order;

/// A paper could not be set: a fault of this program, not of the survey.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PaperFault {
    /// The paper.
    pub paper: String,
    /// What went wrong.
    pub what: String,
}
