//! The set: every paper of a job as a file, and how the set is told.

use crate::PaperFault;
use crate::directory::circuit_directory;
use crate::document::Paper;
use crate::inspection::inspection_packet;
use crate::job::Job;
use crate::label_sheet::LabelSheet;
use crate::labels::{labels, typeset_labels};
use crate::material_list::material_list;
use crate::paging::{Typeset, typeset};
use crate::paper_size::PaperSize;
use crate::proposal::proposal;
use crate::test_record::test_record;
use crate::work_order::work_order;
use schemars::JsonSchema;
use serde::Serialize;

/// The papers of a job.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct SetAnswer {
    /// The version of this answer's shape.
    pub format: u32,
    /// What the job is called.
    pub job: String,
    /// The day that stands on the papers; null where a line is left to fill in.
    pub date: Option<String>,
    /// The offer that the papers are of, counted from 1; null where they are of a plan within a sum of money.
    pub offer: Option<usize>,
    /// The size of the paper.
    pub paper: PaperSize,
    /// Whether the plan is the last word; else what is to be settled first stands at the head of the work order.
    pub settled: bool,
    /// The files, in the order in which the job needs them.
    pub files: Vec<FileAnswer>,
    /// The markings that the labels carry, each with how many openings carry it.
    pub markings: Vec<MarkingCount>,
}

/// A file of the set.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct FileAnswer {
    /// Its name in the folder.
    pub file: String,
    /// What it is.
    pub title: String,
    /// How many pages it has.
    pub pages: usize,
}

/// How many openings carry a marking.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct MarkingCount {
    /// The words.
    pub words: &'static str,
    /// How many.
    pub openings: usize,
}

/// A file with its bytes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetFile {
    /// What is told of it.
    pub told: FileAnswer,
    /// The PDF.
    pub bytes: Vec<u8>,
}

/// The files of a job's papers on paper of this size.
///
/// # Errors
/// [`PaperFault`]: a fault of this program.
pub fn set_of(job: &Job, size: PaperSize, sheet: &LabelSheet) -> Result<Vec<SetFile>, PaperFault> {
    let mut files = Vec::new();
    let mut add = |name: &str, title: &str, set: Typeset| {
        let told = FileAnswer { file: format!("{name}.pdf"), title: title.to_owned(), pages: set.pages };
        files.push(SetFile { told, bytes: set.bytes });
    };
    for (name, paper) in papers_of(job) {
        add(name, &paper.title, typeset(&paper, size)?);
    }
    let needed = labels(job);
    if !needed.is_empty() {
        let paper = job.paper("Labels");
        add("labels", &paper.title, typeset_labels(&paper, &needed, sheet)?);
    }
    Ok(files)
}

/// The papers that are set in pages, each with the name of its file.
fn papers_of(job: &Job) -> Vec<(&'static str, Paper)> {
    vec![
        ("proposal", proposal(job)),
        ("work-order", work_order(job)),
        ("material-list", material_list(job)),
        ("circuit-directory", circuit_directory(job)),
        ("test-record", test_record(job)),
        ("inspection-packet", inspection_packet(job)),
    ]
}

impl SetAnswer {
    /// What is told of a set.
    #[must_use]
    pub fn of(job: &Job, paper: PaperSize, files: &[SetFile], settled: bool) -> Self {
        let mut markings: Vec<MarkingCount> = Vec::new();
        for words in labels(job).into_iter().flat_map(|label| label.markings) {
            match markings.iter_mut().find(|count| count.words == words) {
                Some(count) => count.openings += 1,
                None => markings.push(MarkingCount { words, openings: 1 }),
            }
        }
        Self {
            format: 1,
            job: job.plan.job.name.clone(),
            date: job.date.clone(),
            offer: job.plan.offers.as_ref().map(|offers| offers.taken),
            paper,
            settled,
            files: files.iter().map(|file| file.told.clone()).collect(),
            markings,
        }
    }
}
