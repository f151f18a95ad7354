//! CO₂ in drinks, and the pressure over them.
//!
//! Source: R. F. Weiss, Marine Chemistry 2 (1974) 203-215, in fresh water, worked by hand from its formula; tolerance 2 %,
//! what it is sure to. A century-old table after Bunsen, still quoted, lies 3 % above it and is not followed.

use meniscus::craft::bubbles::{doubt, grams_in_litre, pressure_for, volumes_at};
use meniscus::quantity::{Abv, Mass, Pressure, Ratio, Temperature, Volume};
use meniscus::substance::mix::Mix;

use crate::near;

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value).expect("a temperature")
}

fn bar(value: f64) -> Pressure {
    Pressure::from_bar(value).expect("a pressure")
}

fn volumes(value: f64) -> Ratio {
    Ratio::from_value(value).expect("volumes")
}

/// What the gauge shows over a drink whose CO₂ presses with so many atm: that, and the vapour of water (iapws 1.5.5,
/// IAPWS-IF97, at 0.01, 4, 10, 20 °C), less an atmosphere of 1.013 25 bar.
const ROWS: [(f64, f64, f64, f64, f64); 5] = [
    // °C, atm of CO₂, atm of vapour, volumes, g/l.
    (0.01, 1.0, 0.006_037, 1.74, 3.41),
    (4.0, 1.0, 0.008_029, 1.49, 2.93),
    (4.0, 3.0, 0.008_029, 4.47, 8.78),
    (10.0, 2.0, 0.012_121, 2.41, 4.72),
    (20.0, 1.0, 0.023_086, 0.88, 1.72),
];

#[test]
fn what_a_drink_holds_under_a_pressure() {
    for (at, gas, vapour, holds, grams) in ROWS {
        let gauge = bar((gas + vapour - 1.0) * 1.013_25);
        let found = volumes_at(gauge, celsius(at)).expect("in range");
        near(found.value(), holds, 0.02 * holds, "volumes");
        near(grams_in_litre(found), grams, 0.02 * grams, "g/l");
        // And back; the rows are rounded to their last digit.
        near(pressure_for(volumes(holds), celsius(at)).map_or(0.0, Pressure::bar), gauge.bar(), 0.02 * gas, "bar");
    }
}

/// By hand: at 4 °C a litre of water takes up 0.0665 mol under 1 atm, 1.4905 volumes; 3 volumes take 2.0127 atm, with the
/// vapour 2.0207, on the gauge 1.0207 atm or 1.034 bar. A bar is 14.504 psi (NIST SP 811).
#[test]
fn three_volumes_at_four_degrees() {
    let found = pressure_for(volumes(3.0), celsius(4.0)).expect("in range");
    near(found.bar(), 1.034, 0.001, "bar");
    near(1.0 / Pressure::PSI.bar(), 14.503_77, 1e-5, "psi to the bar");
    near(found.bar() / Pressure::PSI.bar(), 15.0, 0.02, "psi");
}

/// The vapour of water is counted: at 40 °C it is 0.0729 atm (iapws 1.5.5, IAPWS-IF97), so that under no pressure a drink
/// holds that much less than the 0.5313 volumes of a whole atmosphere (Weiss, by hand).
#[test]
fn the_vapour_of_water_takes_its_share() {
    near(
        volumes_at(Pressure::NONE, celsius(40.0)).expect("in range").value(),
        0.5313 * (1.0 - 0.0729),
        0.001,
        "volumes",
    );
}

#[test]
fn beyond_what_is_known_it_is_refused() {
    for at in [-1.1, 40.1] {
        assert!(volumes_at(Pressure::NONE, celsius(at)).is_err(), "{at}");
        assert!(pressure_for(volumes(3.0), celsius(at)).is_err(), "{at}");
    }
    assert!(pressure_for(volumes(1.4), celsius(4.0)).is_err(), "less than it holds under none");
    assert!(pressure_for(volumes(17.0), celsius(4.0)).is_err(), "over 10 bar");
    assert!(Pressure::from_bar(-0.1).is_err());
}

/// Water 2 %; drinks 5 %, as CO₂ dissolves less in sugar and more in strong alcohol (an estimate).
#[test]
fn how_sure_it_is() {
    let litre = Mix::water(Mass::KILOGRAM);
    let spirit = Mix::spirit(Volume::LITRE, Abv::from_fraction(0.15).expect("a strength"));
    for (drink, pressure, share) in
        [(Some(&litre), 1.0, 0.02), (Some(&spirit), 1.0, 0.05), (None, 1.0, 0.05), (Some(&litre), 5.0, 0.07)]
    {
        near(doubt(drink, bar(pressure)), share, 1e-9, "of it");
    }
}
