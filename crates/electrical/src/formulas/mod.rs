//! Formulas over quantities: each with its formula, source, range, a run example and values others published.

pub mod ampacity;
pub mod awg;
pub mod body_current;
pub mod breaker_limits;
pub mod conductor_resistance;
pub mod dwelling_load;
pub mod fault_current;
pub mod fault_path_length;
pub mod gfci;
pub mod ground_fault_loop;
pub mod historic_ampacity;
pub mod insulation;
pub mod leakage;
pub mod receptacle_count;
pub mod small_conductors;
pub mod temperature_coefficient;
pub mod voltage_drop;

/// Asserts that a number is within a tolerance of the expected one.
#[cfg(test)]
#[track_caller]
fn assert_near(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "found {found}, expected {expected} within {tolerance}");
}
