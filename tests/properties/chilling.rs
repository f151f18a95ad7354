//! A drink on ice keeps its heat and its mass.

use proptest::prelude::*;

use meniscus::craft::chill::{self, Heat, Ice, Method, Moment, Pace, Start};
use meniscus::quantity::{Abv, Brix, Mass, MassFraction, Ratio, Temperature, Volume};
use meniscus::substance::acid::Acid;
use meniscus::substance::cold;
use meniscus::substance::mix::Mix;

fn grams(g: f64) -> Mass {
    Mass::from_g(g).expect("a mass")
}

fn degrees(celsius: f64) -> Temperature {
    Temperature::from_celsius(celsius).expect("a temperature")
}

fn drinks() -> impl Strategy<Value = Mix> {
    (1.0_f64..500.0, 0.0_f64..0.56, 0.0_f64..60.0, 0.0_f64..70.0, 0.0_f64..10.0, 0.0_f64..30.0).prop_map(
        |(ml, abv, syrup, degrees, acid, milk)| {
            let spirit = Mix::spirit(Volume::from_ml(ml).expect("ml"), Abv::from_fraction(abv).expect("a strength"));
            let syrup = Mix::syrup(grams(syrup), Brix::from_degrees(degrees).expect("a sweetness"));
            let mut mix = spirit + syrup + Mix::acid(Acid::Citric, grams(acid));
            mix.milk = grams(milk);
            mix
        },
    )
}

fn ices() -> impl Strategy<Value = Ice> {
    (0.1_f64..5000.0, -40.0_f64..=0.0, 0.0_f64..0.5).prop_map(|(mass, celsius, wet)| Ice {
        mass: grams(mass),
        at: degrees(celsius),
        wet: Ratio::from_value(wet).expect("a share"),
    })
}

fn vessels() -> impl Strategy<Value = Option<Heat>> {
    prop::option::of((0.0_f64..1.0, -20.0_f64..40.0).prop_map(|(kj_per_k, at)| Heat { kj_per_k, at: degrees(at) }))
}

fn methods() -> impl Strategy<Value = Method> {
    prop::sample::select(vec![
        Method::Stir,
        Method::Shake,
        Method::Throw,
        Method::Swizzle,
        Method::Build,
        Method::Block,
    ])
}

/// Heat of the drink for each kelvin, J: counted here by itself.
fn holds(drink: &Mix) -> f64 {
    let solvent = drink.water.g() + drink.ethanol.g();
    let w = MassFraction::from_fraction(drink.ethanol.g() / solvent).expect("a fraction");
    solvent * cold::heat_capacity(w).expect("in range")
        + (drink.sugar().g() + drink.acids().g() + drink.other.g()) * cold::HEAT_CAPACITY_OF_SUGAR
        + drink.milk.g() * cold::HEAT_CAPACITY_OF_MILK
}

/// Of the drink and the water it has taken up, J above 0 °C.
fn heat_of_drink(drink: &Mix, water: Mass, at: Temperature) -> f64 {
    (holds(drink) + water.g() * cold::HEAT_CAPACITY_OF_WATER) * at.celsius()
}

/// Of so much ice, J above water at 0 °C.
fn heat_of_ice(mass: f64, at: Temperature) -> f64 {
    mass * (cold::heat_of_ice(at) - cold::LATENT_HEAT_OF_ICE)
}

fn heat_of_vessel(vessel: Option<Heat>, at: Temperature) -> f64 {
    vessel.map_or(0.0, |vessel| vessel.kj_per_k * 1000.0 * at.celsius())
}

proptest! {
    #[test]
    fn heat_and_mass_are_kept_to_the_end(drink in drinks(), at in -20.0_f64..60.0, ice in ices(), vessel in vessels()) {
        let start = Start { drink: &drink, at: degrees(at), ice, vessel };
        let Ok(end) = chill::equilibrium(&start) else { return Ok(()) };
        let (mass, water) = (ice.mass.g(), end.water.g());
        prop_assert!(water >= 0.0 && water <= mass);
        let dry = mass * (1.0 - ice.wet.value());
        let before = heat_of_drink(&drink, Mass::ZERO, start.at)
            + heat_of_ice(dry, ice.at)
            + vessel.map_or(0.0, |held| heat_of_vessel(vessel, held.at));
        let after = heat_of_drink(&drink, end.water, end.at)
            + heat_of_ice(mass - water, end.at)
            + heat_of_vessel(vessel, end.at);
        let scale = heat_of_ice(mass, ice.at).abs() + heat_of_drink(&drink, Mass::ZERO, start.at).abs();
        prop_assert!((before - after).abs() <= 1e-9 * scale, "{before} J, then {after} J");
        // At its freezing point, or without ice.
        let freezes = (drink + Mix::water(end.water)).freezing_point();
        let meets = freezes.is_ok_and(|freezes| (freezes.celsius() - end.at.celsius()).abs() < 1e-6);
        prop_assert!(meets || (mass - water).abs() <= 1e-9 * mass, "{end:?}");
    }

    #[test]
    fn heat_goes_with_the_water_at_any_moment(
        drink in drinks(),
        at in 0.0_f64..40.0,
        ice in ices(),
        vessel in vessels(),
        method in methods(),
        until in 1.0_f64..600.0,
    ) {
        let start = Start { drink: &drink, at: degrees(at), ice, vessel };
        let Ok(end) = chill::equilibrium(&start) else { return Ok(()) };
        let (chosen, curve) = chill::curve(&start, method, Pace::Usual, [until / 3.0, until]).expect("a curve");
        prop_assert_eq!(curve.len(), chill::STEPS as usize + 1);
        prop_assert_eq!(curve[0].water, Mass::ZERO);
        prop_assert!((curve[0].at.celsius() - at).abs() < 1e-9);
        let heat = |moment: &Moment| heat_of_drink(&drink, moment.water, moment.at);
        let (first, last) = (heat(&curve[0]), heat(&end));
        let scale = first.abs() + last.abs() + 1.0;
        for pair in curve.windows(2) {
            prop_assert!(pair[1].water >= pair[0].water && pair[1].water <= end.water);
            let share = if end.water > Mass::ZERO { pair[1].water.g() / end.water.g() } else { continue };
            prop_assert!((heat(&pair[1]) - first - share * (last - first)).abs() <= 1e-9 * scale);
        }
        let alone = |seconds| chill::after(&start, method, Pace::Usual, seconds).expect("a moment");
        prop_assert_eq!(curve.last(), Some(&alone(until)));
        prop_assert_eq!(chosen, alone(until / 3.0));
    }

    #[test]
    fn nothing_that_is_typed_makes_it_panic(
        drink in drinks(),
        at in -273.0_f64..1000.0,
        ice in (0.0_f64..1e9, -273.0_f64..1000.0, 0.0_f64..1e9),
        vessel in (0.0_f64..1e6, -273.0_f64..1000.0),
        method in methods(),
        seconds in -10.0_f64..4000.0,
    ) {
        let (mass, celsius, wet) = ice;
        let ice = Ice { mass: grams(mass), at: degrees(celsius), wet: Ratio::from_value(wet).expect("a share") };
        let vessel = Some(Heat { kj_per_k: vessel.0, at: degrees(vessel.1) });
        let start = Start { drink: &drink, at: degrees(at), ice, vessel };
        if let Ok(moment) = chill::after(&start, method, Pace::Usual, seconds) {
            prop_assert!(moment.at.celsius().is_finite() && moment.water.g().is_finite());
        }
    }

    #[test]
    fn a_weighed_drink_gives_its_pace_back(drink in drinks(), ice in ices(), seconds in 1.0_f64..120.0, pace in 0.5_f64..200.0) {
        use meniscus::quantity::Amount::Mass as Weighed;
        let start = Start { drink: &drink, at: Temperature::TWENTY, ice, vessel: None };
        let Ok(moment) = chill::after(&start, Method::Stir, Pace::Own(pace), seconds) else { return Ok(()) };
        let weighed = Pace::from_weighed(&start, seconds, Weighed(drink.mass()), Weighed(drink.mass() + moment.water));
        if let Ok(found) = weighed {
            let again = chill::after(&start, Method::Stir, found, seconds).expect("a moment");
            prop_assert!((again.water.g() - moment.water.g()).abs() <= 1e-6 * moment.water.g().max(1.0));
        }
    }
}
