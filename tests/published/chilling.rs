//! How cold ice makes a drink, and the water it takes up.

use meniscus::craft::chill::{self, Ice, Moment, Start};
use meniscus::quantity::{Abv, Density, Mass, Ratio, Temperature};
use meniscus::substance::ethanol;
use meniscus::substance::mix::Mix;

use crate::near;

fn grams(g: f64) -> Mass {
    Mass::from_g(g).expect("a mass")
}

fn degrees(celsius: f64) -> Temperature {
    Temperature::from_celsius(celsius).expect("a temperature")
}

/// 100 g of ethanol and water.
fn drink(percent: f64) -> Mix {
    let strength = Abv::from_fraction(percent / 100.0).expect("a strength");
    let w = ethanol::mass_fraction(strength).fraction();
    let mut mix = Mix::water(grams(100.0 * (1.0 - w)));
    mix.ethanol = grams(100.0 * w);
    mix
}

fn ice(mass: f64, celsius: f64) -> Ice {
    Ice { mass: grams(mass), at: degrees(celsius), wet: Ratio::ZERO }
}

fn start(drink: &Mix, ice: Ice) -> Start<'_> {
    Start { drink, at: Temperature::TWENTY, ice, vessel: None }
}

/// Water in percent of the drink's volume, as bars say it.
fn percent(start: &Start, moment: &Moment) -> f64 {
    let volume = start.drink.volume(Temperature::TWENTY).expect("in range");
    100.0 * moment.water.volume_at(Density::WATER).ml() / volume.ml()
}

/// A balance of our own reference table, of ethanol and water at 20 °C on twice its mass of ice at 0 °C: freezing points
/// of the CRC Handbook, 102nd ed., heat capacities of CoolProp 8.0.0 (INCOMP::MEA), 333.4 kJ/kg; no vessel, no water on
/// the ice, no heat of mixing. Temperatures to 0.6 K, water to 8 %.
#[test]
fn where_drink_and_ice_stand_together() {
    for (strength, celsius, water) in [(15.0, -3.9, 36.3), (20.0, -5.3, 40.1), (30.0, -8.3, 47.6), (40.0, -11.8, 55.2)]
    {
        let drink = drink(strength);
        let start = start(&drink, ice(200.0, 0.0));
        let end = chill::equilibrium(&start).expect("an end");
        near(end.at.celsius(), celsius, 0.6, "°C");
        near(percent(&start, &end), water, 0.08 * water, "% of its volume");
    }
}

/// The same table: of 30 % vol, on ice from a freezer at −18 °C.
#[test]
fn on_ice_from_a_freezer() {
    let drink = drink(30.0);
    let start = start(&drink, ice(200.0, -18.0));
    let end = chill::equilibrium(&start).expect("an end");
    near(percent(&start, &end), 29.7, 0.08 * 29.7, "% of its volume");
}
