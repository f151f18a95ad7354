//! Source: NIST Handbook 44, Appendix C, "General Tables of Units of Measurement", and NIST SP 811,
//! Appendix B.8, "Factors for Units Listed Alphabetically". The definitions are cited from memory; the
//! factors below were computed from them with pint 0.25.3, a general unit library, and are checked to
//! twelve significant digits.

use meniscus::quantity::{Conventions, Mass, Ounce, Size, Unit, Volume};
use meniscus::text::{Decimal, other_scale, read_temperature};

use crate::near;

#[track_caller]
fn exact(found: f64, expected: f64, what: &str) {
    near(found, expected, expected * 1e-12, what);
}

/// Handbook 44, Appendix C, table "Units of Liquid Volume": 1 gallon (U.S.) = 231 cubic inches (exactly)
/// = 3.785 411 784 liters; 1 fluid ounce (U.S.) = 29.573 529 562 5 milliliters, and the units between.
#[test]
fn us_liquid_measure() {
    exact(Volume::US_GALLON.ml(), 3_785.411_784, "gallon");
    exact(Volume::US_QUART.ml(), 946.352_946, "quart");
    exact(Volume::US_PINT.ml(), 473.176_473, "pint");
    exact(Volume::US_CUP.ml(), 236.588_236_5, "cup");
    exact(Volume::US_FLUID_OUNCE.ml(), 29.573_529_562_5, "fluid ounce");
    exact(Volume::US_TABLESPOON.ml(), 14.786_764_781_25, "tablespoon");
    exact(Volume::US_TEASPOON.ml(), 4.928_921_593_75, "teaspoon");
}

/// Handbook 44, Appendix C: 1 gallon (British Imperial) = 4.546 09 liters (exactly);
/// SP 811, B.8: fluid ounce (U.K.) 2.841 306 E−05 m³, pint (U.K.) 5.682 612 5 E−04 m³.
#[test]
fn imperial_measure() {
    exact(Volume::IMPERIAL_GALLON.ml(), 4546.09, "gallon");
    exact(Volume::IMPERIAL_PINT.ml(), 568.261_25, "pint");
    exact(Volume::IMPERIAL_FLUID_OUNCE.ml(), 28.413_062_5, "fluid ounce");
}

/// Handbook 44, Appendix C: 1 pound (avoirdupois) = 453.592 37 grams (exactly), 1 ounce = 28.349 523 125 grams.
#[test]
fn avoirdupois() {
    exact(Mass::POUND.g(), 453.592_37, "pound");
    exact(Mass::OUNCE.g(), 28.349_523_125, "ounce");
}

/// Handbook 44, Appendix C: 1 gill = 1/4 liquid pint, 1 fluid dram = 1/8 fluid ounce, US and British, and 1 grain =
/// 64.798 91 milligrams (exactly); from memory, the factors below by pint 0.25.3.
#[test]
fn gill_fluid_dram_and_grain() {
    let us = Conventions::default();
    let imperial = Conventions { ounce: Ounce::Imperial, ..us };
    let size = |unit: Unit, house: &Conventions| match unit.size(house) {
        Size::Volume(one) => one.ml(),
        Size::Mass(one) => one.g(),
    };
    exact(size(Unit::Gill, &us), 118.294_118_25, "US gill");
    exact(size(Unit::Gill, &imperial), 142.065_312_5, "imperial gill in its house");
    exact(size(Unit::ImperialGill, &us), 142.065_312_5, "imperial gill");
    exact(size(Unit::FluidDram, &us), 3.696_691_195_312_5, "US fluid dram");
    exact(size(Unit::FluidDram, &imperial), 3.551_632_812_5, "imperial fluid drachm");
    exact(size(Unit::Grain, &us), 0.064_798_91, "grain");
}

/// Handbook 44, Appendix C: 1 quart and 1 gallon, British imperial, by pint 0.25.3. A house with a round ounce keeps the US
/// ones.
#[test]
fn quart_and_gallon() {
    for (ounce, quart, gallon) in [
        (Ounce::Us, 946.352_946, 3_785.411_784),
        (Ounce::Round30, 946.352_946, 3_785.411_784),
        (Ounce::Imperial, 1_136.522_5, 4546.09),
    ] {
        let house = Conventions { ounce, ..Conventions::default() };
        for (unit, ml) in [(Unit::Quart, quart), (Unit::Gallon, gallon), (Unit::ImperialGallon, 4546.09)] {
            let Size::Volume(one) = unit.size(&house) else { panic!("{unit:?} is poured") };
            exact(one.ml(), ml, "quart or gallon");
        }
    }
}

/// The typed units of a US house are those.
#[test]
fn a_us_house_means_them() {
    let house = Conventions::default();
    let ml = |unit: Unit| match unit.size(&house) {
        Size::Volume(one) => one.ml(),
        Size::Mass(one) => one.g(),
    };
    exact(ml(Unit::Ounce), 29.573_529_562_5, "oz");
    exact(ml(Unit::Cup), 236.588_236_5, "cup");
    exact(ml(Unit::Tablespoon), 14.786_764_781_25, "tbsp");
    exact(ml(Unit::Pound), 453.592_37, "lb");
    let imperial = Conventions { ounce: Ounce::Imperial, ..house };
    let Size::Volume(pint) = Unit::Pint.size(&imperial) else { panic!("a pint is poured") };
    exact(pint.ml(), 568.261_25, "imperial pint");
}

/// SP 811, B.8: from degree Fahrenheit to degree Celsius, t/°C = (t/°F − 32) / 1.8 (from memory). Water freezes at 32 °F and
/// boils at 212 °F; the scales meet at −40.
#[test]
fn fahrenheit_and_celsius() {
    for (fahrenheit, celsius) in
        [("32 °F", 0.0), ("212 °F", 100.0), ("140 °F", 60.0), ("68 °F", 20.0), ("−40 °F", -40.0)]
    {
        let at = read_temperature(fahrenheit, Decimal::Point).expect("read").expect("a temperature");
        near(at.celsius(), celsius, 1e-9, fahrenheit);
        let back = other_scale(at, "in °C", Decimal::Point).to_string();
        assert_eq!(back, fahrenheit);
    }
}
