//! The main computations against published sources. One file a source; each case names it, and
//! the tolerance is the source's own rounding. See DEVELOPERS.md, "Tests".

mod acid_constants;
mod allergens;
mod bubbles;
mod by_hand;
mod chilling;
mod clarifying;
mod costing;
mod energy_and_drinks;
mod freezing;
mod fruit_and_cordial;
mod general_unit_library;
mod ice;
mod icumsa_sucrose;
mod juice_acids;
mod label_measures;
mod library_figures;
mod milk_and_acid;
mod milk_practice;
mod mixing;
mod nist_units;
mod oiml_r22;
mod ounces_and_serves;
mod qr_code;
mod strength_and_syrup;

/// Asserts that two numbers agree to within `tolerance`.
#[track_caller]
pub fn near(found: f64, expected: f64, tolerance: f64, what: &str) {
    assert!((found - expected).abs() <= tolerance, "{what}: {found}, expected {expected} ± {tolerance}");
}
