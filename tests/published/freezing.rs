//! Where ethanol and sugar solutions freeze, and heat.
//!
//! Source: CoolProp 8.0.0 (INCOMP::MEA, Melinder's data), against our table, which is the CRC Handbook's,
//! 102nd ed. Tolerance 0.5 K.

use meniscus::quantity::MassFraction;
use meniscus::substance::cold;

use crate::near;

fn percent(value: f64) -> MassFraction {
    MassFraction::from_fraction(value / 100.0).expect("a fraction")
}

#[test]
fn ethanol_against_coolprop() {
    for (mass, celsius) in [
        (2.0, -0.83),
        (5.0, -2.03),
        (10.0, -4.38),
        (15.0, -7.39),
        (20.0, -11.12),
        (24.0, -14.54),
        (30.0, -20.14),
        (34.0, -23.97),
        (40.0, -29.53),
        (50.0, -37.61),
    ] {
        near(cold::ethanol_freezing_point(percent(mass)).expect("in range").celsius(), celsius, 0.5, "°C");
    }
}

/// Between the rows of the table: CoolProp 8.0.0. Tolerance 0.5 K.
///
/// DIFFERENCE: Lange's Handbook, Table 5.13, prints −2.0, −7.5 and −16.0 °C for these. Its older antifreeze
/// data lie up to 1.2 K above both CRC and CoolProp, which agree with each other; it is not followed.
#[test]
fn ethanol_between_the_rows() {
    for (mass, celsius) in [(4.8, -1.95), (16.4, -8.36), (26.7, -17.01)] {
        near(cold::ethanol_freezing_point(percent(mass)).expect("in range").celsius(), celsius, 0.5, "°C");
    }
}

/// CRC Handbook, 102nd ed., printed.
#[test]
fn sucrose_as_printed() {
    for (mass, celsius) in [(5.0, -0.29), (10.0, -0.63), (20.0, -1.47), (30.0, -2.64), (40.0, -4.45)] {
        near(cold::sucrose_freezing_point(percent(mass)).expect("in range").celsius(), celsius, 0.005, "°C");
    }
}

/// CoolProp 8.0.0: above water's at the strength of drinks, so no average by mass of 2.4 and 4.2.
#[test]
fn heat_capacity_is_no_average() {
    near(cold::heat_capacity(percent(10.0)).expect("in range"), 4.402, 0.001, "kJ/(kg K)");
    assert!(cold::heat_capacity(percent(15.0)).expect("in range") > 4.22);
}

#[test]
fn it_gets_colder_with_every_gram_and_stops_at_the_table() {
    let at = |mass| cold::ethanol_freezing_point(percent(mass)).map(meniscus::quantity::Temperature::celsius);
    let mut last = 0.1;
    for step in 0..=500 {
        let now = at(f64::from(step) / 10.0).expect("in range");
        assert!(now < last, "{step}");
        last = now;
    }
    assert!(at(50.1).is_err());
    assert!(cold::sucrose_freezing_point(percent(40.1)).is_err());
}
