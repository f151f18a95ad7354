//! Sucrose and water.
//!
//! Source: ICUMSA formula, Bubník et al., Sugar Technologists Manual (1995), p. 164; rows computed from it by
//! a separate script that was not kept. Printed: CRC Handbook of Chemistry and Physics, Concentrative Properties of Aqueous
//! Solutions, and Chen, Brix and Pounds Solids Tables (1992, from NBS Circular C440).

use meniscus::quantity::{Brix, Mass, Temperature};
use meniscus::substance::mix::Mix;
use meniscus::substance::sucrose;

use crate::near;

fn brix(degrees: f64) -> Brix {
    Brix::from_degrees(degrees).expect("a sweetness")
}

fn celsius(t: f64) -> Temperature {
    Temperature::from_celsius(t).expect("a temperature")
}

/// °Bx, kg/m³ at 20 °C, SG 20/20, printed g/ml (CRC). Tolerance 0.15 kg/m³, and 0.0003 g/ml for the print.
#[test]
fn density_and_gravity() {
    for (degrees, kg, gravity, printed) in [
        (5.0, 1017.81, 1.01964, 1.0178),
        (10.0, 1038.12, 1.03999, 1.0381),
        (20.0, 1080.98, 1.08293, 1.0810),
        (30.0, 1127.03, 1.12906, 1.1270),
        (40.0, 1176.52, 1.17864, 1.1765),
        (50.0, 1229.65, 1.23187, 1.2295),
        (60.0, 1286.61, 1.28893, 1.2864),
        (70.0, 1347.48, 1.34991, 1.3472),
    ] {
        let found = sucrose::density(brix(degrees), celsius(20.0)).expect("in range").g_per_ml();
        near(found * 1000.0, kg, 0.01, "kg/m³");
        near(found, printed, 3e-4, "g/ml, printed");
        near(sucrose::specific_gravity(brix(degrees)).expect("in range"), gravity, 1e-5, "SG");
    }
}

/// kg/m³ away from 20 °C, from the published coefficients by a script of its own (Python): °Bx, then at 4, 40, 60 and 80 °C.
#[test]
fn cold_and_hot() {
    for (degrees, rows) in [
        (15.0, [1062.333, 1052.063, 1042.375, 1030.559]),
        (35.0, [1156.435, 1142.711, 1132.117, 1119.789]),
        (50.0, [1236.156, 1219.935, 1208.715, 1196.114]),
        (65.0, [1324.240, 1305.923, 1294.214, 1281.508]),
        (85.0, [1454.373, 1434.808, 1422.941, 1410.526]),
    ] {
        for (t, kg) in [4.0, 40.0, 60.0, 80.0].into_iter().zip(rows) {
            let found = sucrose::density(brix(degrees), celsius(t)).expect("in range").g_per_ml() * 1000.0;
            near(found, kg, 0.001, &format!("kg/m³ of {degrees} °Bx at {t} °C"));
        }
    }
}

/// Without sugar the formula is water's: IAPWS-95 at 0.101 325 MPa (iapws 1.5.5), to 0.02 kg/m³.
#[test]
fn water_by_iapws() {
    for (t, kg) in [
        (0.01, 999.844),
        (4.0, 999.975),
        (20.0, 998.207),
        (40.0, 992.216),
        (60.0, 983.196),
        (80.0, 971.790),
        (99.0, 959.066),
    ] {
        let found = sucrose::density(brix(0.0), celsius(t)).expect("in range").g_per_ml() * 1000.0;
        near(found, kg, 0.02, &format!("kg/m³ of water at {t} °C"));
    }
}

/// Printed pounds per US gallon in air (Chen, from NBS C440): 5.0 °Bx 8.486, 2.0 °Bx 8.387, water 8.322.
/// In air: m (1 − 1.2/ρ) / (1 − 1.2/8000).
#[test]
fn pounds_per_gallon() {
    for (degrees, printed) in [(5.0, 8.486), (2.0, 8.387), (0.0, 8.322)] {
        let kg = sucrose::density(brix(degrees), celsius(20.0)).expect("in range").g_per_ml() * 1000.0;
        let grams = kg * 3.785_411_784 * (1.0 - 1.2 / kg) / (1.0 - 1.2 / 8000.0);
        near(grams / 453.592_37, printed, 1e-3, "lb/gal");
    }
}

/// 2:1 by weight (66.67 °Bx) stands 0.05 °Bx under the limit at 20 °C and 1.87 over it at 4 °C: it may crystallise
/// in a fridge. Computed from Bubník and Kadlec (1995).
#[test]
fn rich_syrup_is_at_the_limit() {
    near(200.0 / 3.0 - sucrose::solubility(celsius(20.0)).expect("in range").degrees(), -0.05, 0.005, "at 20 °C");
    near(200.0 / 3.0 - sucrose::solubility(celsius(4.0)).expect("in range").degrees(), 1.87, 0.005, "at 4 °C");
}

/// °Bx at which it stops dissolving, from the published polynomial by a script of its own (Python).
#[test]
fn what_dissolves() {
    for (t, degrees) in [
        (0.0, 64.447),
        (10.0, 65.4289),
        (25.0, 67.4706),
        (40.0, 70.1046),
        (60.0, 74.2645),
        (80.0, 78.6786),
        (100.0, 82.65),
    ] {
        near(sucrose::solubility(celsius(t)).expect("in range").degrees(), degrees, 1e-4, &format!("°Bx at {t} °C"));
    }
}

/// Beyond 85 % a gram takes the room that it takes there, 0.63685 ml at 20 °C (from the formula by a script of its own, Python):
/// 90 g in 10 g of water, 10 / 0.998201 + 90 × 0.63685 = 67.335 ml.
#[test]
fn beyond_the_formula_sugar_takes_its_last_room() {
    let mut mix = Mix::water(Mass::from_g(10.0).expect("a mass"));
    mix.sucrose = Mass::from_g(90.0).expect("a mass");
    near(mix.volume(celsius(20.0)).expect("in range").ml(), 67.335, 0.002, "ml");
}

/// 200 g of granulated sugar to the US cup of 236.588 ml (USDA portion data, from memory).
#[test]
fn a_cup_of_sugar() {
    near(sucrose::GRANULATED_G_PER_ML * 236.588, 200.0, 0.001, "g");
}

#[test]
fn outside_the_formula_is_an_error() {
    assert!(sucrose::specific_gravity(brix(85.1)).is_err());
    assert!(sucrose::density(brix(85.0), celsius(100.0)).is_ok());
    assert!(sucrose::density(brix(85.1), celsius(20.0)).is_err());
    assert!(sucrose::density(brix(50.0), celsius(-0.1)).is_err());
    assert!(sucrose::solubility(celsius(101.0)).is_err());
}
