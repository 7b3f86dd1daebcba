//! What was read and seen after the work, held against the plan: each claim proved, open or contradicted, and what is left.
//!
//! Nothing is proved by what was not read. A plug-in tester and readings without load never prove a ground.

mod answer;
mod at_panel;
mod case;
mod claim;
mod device;
mod ground;
mod ground_tie;
mod held_back;
mod marking;
mod meter_error;
mod no_ground;
mod opening;
mod polarity;
mod protection;
mod seen;
mod source;
mod volts;

pub use answer::{
    CircuitProof, HeldBackAnswer, LeftAnswer, OpeningProof, PanelProof, ProofAnswer, ProofCounts, ReadAnswer, prove,
};
pub use claim::{ClaimAnswer, ClaimKind, ProofVerdict};
pub use meter_error::may_be_off;
