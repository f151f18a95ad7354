//! Ethanol and water.
//!
//! Source: OIML R 22 (1975) general formula. The rows marked computed were worked out from the printed
//! coefficients by a separate script that was not kept; the printed ones come from handbooks, as said at each.

use meniscus::quantity::{Abv, MassFraction, Temperature};
use meniscus::substance::ethanol;

use crate::near;

fn celsius(t: f64) -> Temperature {
    Temperature::from_celsius(t).expect("a temperature")
}

fn mass(fraction: f64) -> MassFraction {
    MassFraction::from_fraction(fraction).expect("a fraction")
}

fn volume(percent: f64) -> Abv {
    Abv::from_fraction(percent / 100.0).expect("a strength")
}

/// % vol at 20 °C, °C, % mass, kg/m³ at 20 °C, kg/m³ at t, volume at t over volume at 20 °C. Computed from the
/// formula; tolerance 0.01 kg/m³, 0.001 % mass, 2·10⁻⁵.
#[test]
fn the_formula_s_own_rows() {
    for (percent, t, mass_percent, at_20, at_t, expansion) in [
        (0.0, 20.0, 0.0, 998.201, 998.201, 1.0),
        (5.0, 20.0, 3.9818, 991.055, 991.055, 1.0),
        (10.0, 4.0, 8.0149, 984.710, 987.070, 0.99761),
        (12.0, 20.0, 9.6410, 982.355, 982.355, 1.0),
        (15.0, 0.0, 12.0929, 978.971, 982.529, 0.99638),
        (20.0, 20.0, 16.2135, 973.557, 973.557, 1.0),
        (20.0, -5.0, 16.2135, 973.557, 979.341, 0.99409),
        (30.0, 20.0, 24.6071, 962.211, 962.211, 1.0),
        (40.0, 20.0, 33.2996, 948.045, 948.045, 1.0),
        (40.0, 0.0, 33.2996, 948.045, 960.629, 0.98690),
        (40.0, -15.0, 33.2996, 948.045, 969.175, 0.97820),
        (50.0, 20.0, 42.4257, 930.142, 930.142, 1.0),
        (60.0, 20.0, 52.0884, 909.115, 909.115, 1.0),
        (80.0, 30.0, 73.4800, 859.270, 850.621, 1.01017),
        (96.0, 20.0, 93.8384, 807.420, 807.420, 1.0),
        (100.0, 20.0, 100.0, 789.239, 789.239, 1.0),
    ] {
        let w = ethanol::mass_fraction(volume(percent));
        near(w.fraction() * 100.0, mass_percent, 0.001, "% mass");
        let kg = |t| ethanol::density(w, celsius(t)).expect("in range").g_per_ml() * 1000.0;
        near(kg(20.0), at_20, 0.01, "kg/m³ at 20 °C");
        near(kg(t), at_t, 0.01, "kg/m³");
        near(kg(20.0) / kg(t), expansion, 2e-5, "expansion");
        near(ethanol::strength(w).fraction() * 100.0, percent, 0.001, "% vol");
    }
}

/// Printed g/ml. Perry's Chemical Engineers' Handbook, 7th ed. (5, 10 %); US Bureau of Standards data in a
/// public-domain book (50 %; 60 % at 40 °C; 80 % at 10 °C); CRC Handbook, 102nd ed. (20, 40 %). Older data
/// differ from the formula by up to 7·10⁻⁵.
#[test]
fn printed_densities() {
    for (percent, t, printed) in [
        (5.0, 20.0, 0.98938),
        (10.0, 20.0, 0.98187),
        (50.0, 20.0, 0.91384),
        (60.0, 40.0, 0.87417),
        (80.0, 10.0, 0.85197),
        (40.0, 20.0, 0.9352),
        (20.0, 20.0, 0.9687),
    ] {
        let found = ethanol::density(mass(percent / 100.0), celsius(t)).expect("in range");
        near(found.g_per_ml(), printed, 1e-4, "g/ml");
        let back = ethanol::mass_fraction_of_density(found, celsius(t)).expect("in range");
        near(back.fraction() * 100.0, percent, 1e-6, "% mass, back from density");
    }
}

/// Printed % mass of a strength by volume at 15.56 °C: USP 29, Alcoholometric Table. US proof is twice that
/// strength (27 CFR), so the proof of these mass fractions is 20, 40 and 60.
#[test]
fn the_alcoholometric_table_and_proof() {
    for (percent, printed_mass) in [(10.0, 8.05), (20.0, 16.27), (30.0, 24.67)] {
        // 0.006 % mass is worth 0.015 proof here.
        near(ethanol::us_proof(mass(printed_mass / 100.0)), 2.0 * percent, 0.015, "proof");
    }
}

/// 57.1 % vol is proof spirit, 100 degrees, as a trade association of distillers states it; 40 % vol is 70 of them (shown as
/// such on bottles of the time, from memory).
#[test]
fn historical_uk_degrees() {
    near(ethanol::uk_proof(ethanol::mass_fraction(volume(57.1))), 100.0, 1e-6, "UK degrees");
    near(ethanol::uk_proof(ethanol::mass_fraction(volume(40.0))), 70.0, 0.1, "UK degrees");
}

/// Parts of water in 100 parts of spirit by volume at 60 °F, printed in 27 CFR 30.66, Table 6: 53.73 at
/// 100 proof, 5.59 at 191; the others computed from the formula. Tolerance 0.02 parts.
#[test]
fn the_gauging_manual_s_water() {
    for (proof, parts) in
        [(60.0, 72.719), (80.0, 63.428), (100.0, 53.73), (120.0, 43.715), (151.0, 27.664), (191.0, 5.59)]
    {
        let (low, high) = (0.0, 1.0);
        // Which mass fraction has this proof?
        let w = (0..60).fold((low, high), |(low, high), _| {
            let middle = 0.5 * (low + high);
            if ethanol::us_proof(mass(middle)) < proof { (middle, high) } else { (low, middle) }
        });
        let sixty_fahrenheit = celsius(140.0 / 9.0);
        let kg = |w| ethanol::density(mass(w), sixty_fahrenheit).expect("in range").g_per_ml();
        let water = 100.0 * kg(w.0) * (1.0 - w.0) / kg(0.0);
        near(water, parts, 0.02, "parts of water");
    }
}

#[test]
fn outside_the_formula_is_an_error() {
    near(ethanol::strength_of_us_proof(200.0).expect("in range").fraction(), 1.0, 1e-9, "200 proof");
    assert!(ethanol::strength_of_us_proof(200.1).is_err() && ethanol::strength_of_us_proof(-0.1).is_err());
    for t in [-20.1, 40.1] {
        assert!(ethanol::density(mass(0.3), celsius(t)).is_err(), "{t}");
    }
    let heavy = meniscus::quantity::Density::from_g_per_ml(1.05).expect("a density");
    let problem = ethanol::mass_fraction_of_density(heavy, celsius(20.0)).expect_err("denser than water");
    assert!(problem.to_string().starts_with("density must lie between 789.2"), "{problem}");
}
