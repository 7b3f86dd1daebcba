//! Small charts as SVG: plain ink, a title for those who cannot see them.

mod drawing;
mod fault_current;
mod leakage;

pub use fault_current::fault_current_chart;
pub use leakage::leakage_chart;
