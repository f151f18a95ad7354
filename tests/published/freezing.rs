//! Where ethanol and sugar solutions freeze, and heat.
//!
//! Source: CoolProp 8.0.0 (INCOMP::MEA, Melinder's data), against our table, which is the CRC Handbook's,
//! 102nd ed. Tolerance 0.5 K.

use meniscus::craft::freezer::{self, Frozen, State};
use meniscus::quantity::{Mass, MassFraction, Temperature};
use meniscus::substance::acid::Acid;
use meniscus::substance::cold;
use meniscus::substance::mix::Mix;

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

/// CRC Handbook, 102nd ed., printed, to its last digit.
#[test]
fn ethanol_as_printed() {
    for (mass, celsius) in [
        (0.0, 0.0),
        (2.0, -0.81),
        (5.0, -2.09),
        (10.0, -4.47),
        (15.0, -7.36),
        (20.0, -10.92),
        (24.0, -14.47),
        (30.0, -20.47),
        (34.0, -24.27),
        (40.0, -29.26),
        (50.0, -37.67),
    ] {
        near(cold::ethanol_freezing_point(percent(mass)).expect("in range").celsius(), celsius, 1e-9, "°C");
    }
}

/// Between the rows as `PchipInterpolator` of SciPy 1.17.1 reads the same tables, away from their ends; there a straight
/// line's slope is taken (`CubicHermiteSpline`), where SciPy's takes three rows.
#[test]
fn between_the_rows_by_scipy() {
    for (mass, celsius) in [
        (0.5, -0.201_578),
        (1.5, -0.604_735),
        (3.0, -1.226_678),
        (7.0, -2.999_690),
        (12.5, -5.842_515),
        (16.4, -8.280_164),
        (22.0, -12.623_335),
        (26.7, -17.136_525),
        (32.0, -22.410_924),
        (37.0, -26.806_197),
        (45.0, -33.458_648),
    ] {
        near(cold::ethanol_freezing_point(percent(mass)).expect("in range").celsius(), celsius, 1e-6, "ethanol, °C");
    }
    for (mass, celsius) in
        [(2.5, -0.142_123), (7.5, -0.452_696), (17.5, -1.236_054), (25.0, -1.999_579), (38.0, -4.075_561)]
    {
        near(cold::sucrose_freezing_point(percent(mass)).expect("in range").celsius(), celsius, 1e-6, "sucrose, °C");
    }
    for (mass, heat) in [(4.0, 4.310_272), (12.5, 4.399_510), (22.0, 4.347_773), (35.0, 4.031_836)] {
        near(cold::heat_capacity(percent(mass)).expect("in range"), heat, 1e-6, "kJ/(kg K)");
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
    for (mass, celsius) in [(0.0, 0.0), (5.0, -0.29), (10.0, -0.63), (20.0, -1.47), (30.0, -2.64), (40.0, -4.45)] {
        near(cold::sucrose_freezing_point(percent(mass)).expect("in range").celsius(), celsius, 1e-9, "°C");
    }
}

/// CoolProp 8.0.0, INCOMP::MEA at 0 °C, and IAPWS-95 for water (iapws 1.5.5: 4.2194): above water's at the strength of drinks,
/// so no average by mass of 2.4 and 4.2. Between the rows to 0.5 %.
#[test]
fn heat_capacity_is_no_average() {
    let of = |mass| cold::heat_capacity(percent(mass)).expect("in range");
    for (mass, heat) in [(0.0, 4.2194), (10.0, 4.4017), (20.0, 4.3694), (30.0, 4.1632), (40.0, 3.8926), (50.0, 3.6336)]
    {
        near(of(mass), heat, 0.001, "kJ/(kg K)");
    }
    for (mass, heat) in [(5.0, 4.3339), (15.0, 4.4127), (25.0, 4.2816), (35.0, 4.0293), (45.0, 3.7609)] {
        near(of(mass), heat, 0.005 * heat, "kJ/(kg K), between the rows");
    }
    assert!(cold::heat_capacity(percent(50.1)).is_err());
}

/// iapws 1.5.5 (IAPWS-06): 36.55 kJ/kg to warm ice from −18 to 0 °C.
#[test]
fn ice_from_a_freezer() {
    let heat = |celsius| cold::heat_of_ice(Temperature::from_celsius(celsius).expect("a temperature"));
    near(heat(-18.0), -36.55, 0.005, "kJ/kg");
    near(heat(0.0), 0.0, 1e-12, "kJ/kg");
}

/// iapws 1.5.5 at 0 °C and 0.101 325 MPa (IAPWS-06 for ice, IAPWS-95 for water): ice melts with 333.4 kJ/kg, holds
/// 2.0967 kJ/(kg K) and weighs 916.72 kg/m³. CRC Handbook (from memory): 333.55 kJ/kg.
#[test]
fn ice() {
    near(cold::LATENT_HEAT_OF_ICE, 333.43, 0.02, "kJ/kg");
    near(cold::LATENT_HEAT_OF_ICE, 333.55, 0.2, "kJ/kg, handbook");
    near(cold::HEAT_CAPACITY_OF_ICE, 2.096_70, 1e-4, "kJ/(kg K)");
    near(cold::DENSITY_OF_ICE, 0.916_722, 1e-5, "g/ml");
}

/// Our rule for alcohol and sugar at once, an estimate: their depressions add, each in the water there is. 25 g of ethanol
/// and 25 g of sucrose in 100 g of water are 20 % each: −10.92 and −1.47 °C (CRC Handbook, 102nd ed.) make −12.39 °C.
#[test]
fn depressions_add() {
    near(cold::freezing_point(percent(20.0), percent(20.0)).expect("in range").celsius(), -12.39, 1e-9, "°C");
    let mut mix = Mix::water(grams(100.0));
    mix.ethanol = grams(25.0);
    mix.sucrose = grams(25.0);
    near(mix.freezing_point().expect("in range").celsius(), -12.39, 1e-9, "°C");
    // What takes no part: solids that are not dissolved as small molecules.
    mix.other = grams(10.0);
    near(mix.freezing_point().expect("in range").celsius(), -12.39, 1e-9, "°C");
}

/// Water's cryoscopic constant is 1.86 K kg/mol (CRC Handbook, from memory): a tenth of a mole of anything that does not
/// come apart, in a kilogram of water, freezes at −0.186 °C. Molar masses by the IUPAC atomic weights C 12.011, H 1.008,
/// O 15.999.
#[test]
fn a_tenth_of_a_mole_in_a_kilogram() {
    let weighs = |carbon: f64, hydrogen: f64, oxygen: f64| 12.011 * carbon + 1.008 * hydrogen + 15.999 * oxygen;
    near(cold::SUCROSE_MOLAR_MASS, weighs(12.0, 22.0, 11.0), 0.005, "g/mol of sucrose");
    near(cold::HEXOSE_MOLAR_MASS, weighs(6.0, 12.0, 6.0), 0.005, "g/mol of glucose and fructose");
    let water = Mix::water(grams(1000.0));
    let (mut sucrose, mut hexose) = (water, water);
    sucrose.sucrose = grams(34.23);
    hexose.invert_sugar = grams(18.016);
    let citric = water + Mix::acid(Acid::Citric, grams(19.212));
    let at = |mix: &Mix| mix.freezing_point().expect("in range").celsius();
    for mix in [sucrose, hexose, citric] {
        near(at(&mix), -0.186, 0.005, "°C");
        // Alike to the last digit: all count by moles.
        near(at(&mix), at(&sucrose), 1e-9, "°C");
    }
}

fn grams(g: f64) -> Mass {
    Mass::from_g(g).expect("a mass")
}

#[test]
fn it_gets_colder_with_every_gram_and_stops_at_the_table() {
    let at = |mass| cold::ethanol_freezing_point(percent(mass)).map(Temperature::celsius);
    let mut last = 0.1;
    for step in 0..=500 {
        let now = at(f64::from(step) / 10.0).expect("in range");
        assert!(now < last, "{step}");
        last = now;
    }
    assert!(at(50.1).is_err());
    assert!(cold::sucrose_freezing_point(percent(40.1)).is_err());
}

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value).expect("a temperature")
}

/// Water, ethanol and sucrose, in grams.
fn mixed(water: f64, ethanol: f64, sucrose: f64) -> Mix {
    let mut mix = Mix::water(grams(water));
    mix.ethanol = grams(ethanol);
    mix.sucrose = grams(sucrose);
    mix
}

#[track_caller]
fn frozen(drink: &Mix, at: f64) -> Frozen {
    freezer::at(drink, celsius(at)).expect("within the tables")
}

/// The lever rule between two rows of the CRC Handbook, 102nd ed., by hand: what has 10 % of ethanol freezes at its row of
/// 15 %, −7.36 °C, until the 10 g are 15 % of the liquid, 66.7 g: a third is ice. Likewise its row of 20 %, half; and
/// sucrose of 10 % at its row of 30 %, two thirds.
#[test]
fn ice_by_the_lever_rule() {
    let weak = mixed(90.0, 10.0, 0.0);
    for (drink, at, ice, state) in [
        (weak, -4.47, 0.0, State::Pours),
        (weak, -7.36, 100.0 - 10.0 / 0.15, State::Slush),
        (weak, -10.91, 49.98, State::Slush),
        (weak, -14.47, 100.0 - 10.0 / 0.24, State::Solid),
        (mixed(90.0, 0.0, 10.0), -2.64, 100.0 - 10.0 / 0.3, State::Solid),
        // 25 g each in 100 g of water are 20 % each, −10.92 and −1.47 °C: of 200 g of water half is ice.
        (mixed(200.0, 25.0, 25.0), -12.39, 100.0, State::Slush),
        (mixed(100.0, 0.0, 0.0), -1.0, 100.0, State::Solid),
    ] {
        let found = frozen(&drink, at);
        near(found.ice.g(), ice, 0.02, "g of ice");
        near(found.share.value() * drink.mass().g(), ice, 0.02, "its share");
        assert_eq!((found.state, found.bounded), (state, false), "{at} °C");
    }
    near(frozen(&weak, -18.0).begins.celsius(), -4.47, 1e-9, "°C, the row of 10 %");
    near(frozen(&weak, 20.0).begins.celsius(), -4.47, 1e-9, "°C, however warm it is");
}

/// 40 % vol is 33.3 % by mass, between rows that freeze at −20.47 and −24.27 °C: a spirit stays liquid in a freezer.
#[test]
fn a_spirit_is_syrupy_in_the_freezer() {
    let spirit = mixed(66.7, 33.3, 0.0);
    assert_eq!(frozen(&spirit, -18.0).state, State::Syrupy);
    assert_eq!(frozen(&spirit, 4.0).state, State::Pours);
    assert_eq!(frozen(&spirit, -26.0).state, State::Slush);
}

/// What is left out of the water, so that what stays freezes a kelvin below: the ice of the lever rule there.
#[test]
fn what_to_leave_out_so_that_it_pours() {
    let weak = mixed(90.0, 10.0, 0.0);
    let leave_out = |drink: &Mix, at: f64| freezer::pourable(drink, celsius(at)).map(Mass::g);
    near(leave_out(&weak, -6.36).expect("known"), 100.0 - 10.0 / 0.15, 1e-6, "g of water");
    assert_eq!(leave_out(&weak, 4.0), Some(0.0));
    assert_eq!(leave_out(&mixed(100.0, 0.0, 0.0), -18.0), None, "nothing is left of water");
    assert_eq!(leave_out(&mixed(90.0, 0.0, 10.0), -18.0), None, "beyond the table of sugar");
}

/// The tables end at 50 % of ethanol, −37.67 °C, and at 40 % of sugar, −4.45 °C. Beyond them only what is sure is said:
/// stronger freezes colder still; and 10 g of sugar that are 40 % hold 15 g of the 90 g of water at the most.
#[test]
fn beyond_the_tables_it_is_bounded() {
    let strong = mixed(40.0, 60.0, 0.0);
    let found = frozen(&strong, -18.0);
    assert_eq!((found.state, found.ice, found.bounded), (State::Syrupy, Mass::ZERO, true));
    near(found.begins.celsius(), -37.67, 1e-6, "°C at the most");
    assert!(freezer::at(&strong, celsius(-40.0)).is_err());
    let sweet = frozen(&mixed(90.0, 0.0, 10.0), -18.0);
    assert_eq!((sweet.state, sweet.bounded), (State::Solid, true));
    near(sweet.ice.g(), 75.0, 1e-6, "g of ice at the least");
    near(sweet.begins.celsius(), -0.63, 1e-9, "°C");
    assert!(freezer::at(&mixed(40.0, 0.0, 60.0), celsius(-18.0)).is_err());
    assert_eq!(frozen(&mixed(40.0, 0.0, 60.0), -4.0).ice, Mass::ZERO);
}

/// Milk is water and what is in it: it freezes, and 87.3 % of it (FAO Food Composition Tables, item 250) can be ice.
#[test]
fn milk_freezes_as_its_water() {
    let mut milk = mixed(0.0, 0.0, 0.0);
    assert_eq!(frozen(&milk, -18.0).ice, Mass::ZERO, "nothing at all");
    milk.milk = grams(100.0);
    near(frozen(&milk, -18.0).ice.g(), 87.3, 1e-6, "g of ice");
}
