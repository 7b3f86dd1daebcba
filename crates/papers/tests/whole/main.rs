//! Papers held against the plans that they are made from, and against what a paper must be.
#![allow(clippy::disallowed_methods, reason = "these tests read the dwellings that come with the program")]
#![allow(clippy::unwrap_used, reason = "what a test takes for granted fails it")]

mod bytes;
mod certificate;
mod directory;
mod inspection;
mod labels;
mod material_list;
mod planned_job;
mod proposal;
mod test_record;
mod work_order;
