//! How cold ice makes a drink, and the water it takes up.

use meniscus::craft::chill::{
    self, ChillProblem, Heat, Ice, Material, Method, Moment, Pace, Start, Why, band, second_opinion,
    wetness_from_weighed,
};
use meniscus::quantity::{Abv, Amount, Brix, Density, Mass, Ratio, Temperature, Volume};
use meniscus::substance::cold;
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

/// The same table, by hand: a drink that stops at 0 °C melts what its heat alone melts, m c 20 K / 333.4 kJ/kg, by heat
/// capacities of CoolProp 8.0.0. To 2 %; the table is of a heat capacity at 10 °C.
#[test]
fn down_to_nought_by_hand() {
    for (strength, water) in [(15.0, 25.7), (20.0, 25.6), (30.0, 24.8), (40.0, 23.5)] {
        let mix = drink(strength);
        let w = ethanol::mass_fraction(Abv::from_fraction(strength / 100.0).expect("a strength"));
        let melted = 100.0 * cold::heat_capacity(w).expect("in range") * 20.0 / cold::LATENT_HEAT_OF_ICE;
        let moment = Moment { seconds: 1.0, at: degrees(0.0), water: grams(melted) };
        near(percent(&start(&mix, ice(200.0, 0.0)), &moment), water, 0.02 * water, "% of its volume");
    }
}

/// By hand: 100 g of water at 20 °C hold 0.1 x 4.220 x 20 = 8.44 kJ, which melt 25.3 g (IAPWS: 333.42 kJ/kg) and leave it
/// at 0 °C; on ice at −18 °C the 200 g of it take 0.2 x 36.55 = 7.31 kJ of that first, and 3.4 g melt. In half a kilogram of
/// steel at 20 °C (0.50 kJ/(kg K), from memory) it is 5 kJ more, 15.0 g. And 5 % of water on the ice is 10 g more.
#[test]
fn water_by_hand() {
    let water = Mix::water(grams(100.0));
    let end = |ice: Ice, vessel: Option<Heat>| {
        let end = chill::equilibrium(&Start { ice, vessel, ..start(&water, ice) }).expect("an end");
        near(end.at.celsius(), 0.0, 1e-9, "°C");
        end.water.g()
    };
    near(end(ice(200.0, 0.0), None), 8.44 / 0.333_42, 1e-6, "g");
    near(end(ice(200.0, -18.0), None), (8.44 - 7.31) / 0.333_42, 1e-6, "g, ice from a freezer");
    let tin = Heat::of(Material::Steel, grams(500.0), Temperature::TWENTY);
    near(end(ice(200.0, 0.0), Some(tin)), (8.44 + 5.0) / 0.333_42, 1e-6, "g, in a tin");
    let wet = Ice { wet: Ratio::from_value(0.05).expect("a share"), ..ice(200.0, 0.0) };
    near(end(wet, None), 8.44 / 0.333_42 + 10.0, 1e-6, "g, wet ice");
    // 20 g of ice melt all, and leave it at (8.44 − 0.02 x 333.42) / (0.12 x 4.220) = 3.50 °C.
    let end = chill::equilibrium(&start(&water, ice(20.0, 0.0))).expect("an end");
    near(end.at.celsius(), (8.44 - 6.6684) / 0.5064, 1e-6, "°C, where no ice is left");
    near(end.water.g(), 20.0, 1e-9, "g");
}

/// Wet ice from a freezer freezes some of the water on it, or melts less: by hand, 190 g at −18 °C with 10 g of water take
/// 0.19 x 36.55 = 6.94 kJ of the 8.44 kJ of 100 g of water at 20 °C; the rest melts 4.5 g, and 14.5 g are taken up.
/// Of a drink at 5 °C, 2.11 kJ, the water on it and more would freeze, which is said.
#[test]
fn wet_ice_from_a_freezer() {
    let water = Mix::water(grams(100.0));
    let wet = Ice { wet: Ratio::from_value(0.05).expect("a share"), ..ice(200.0, -18.0) };
    let end = chill::equilibrium(&start(&water, wet)).expect("an end");
    near(end.water.g(), 10.0 + (8.44 - 0.19 * 36.55) / 0.333_42, 1e-6, "g");
    let cold = Start { at: degrees(5.0), ..start(&water, wet) };
    assert_eq!(chill::equilibrium(&cold), Err(ChillProblem::FreezesOn));
    // With 15 g of water on it, and 0.185 x 36.55 = 6.76 kJ, of which 2.11 kJ come of the drink: 13.9 g of the 15 g freeze.
    let wetter = Ice { wet: Ratio::from_value(0.075).expect("a share"), ..ice(200.0, -18.0) };
    let end = chill::equilibrium(&Start { ice: wetter, ..cold }).expect("an end");
    near(end.water.g(), 15.0 - (0.185 * 36.55 - 2.11) / 0.333_42, 1e-6, "g");
}

/// Our own worked example, of the same sources as the table: 100 g of 30 % vol on 200 g of ice at 0 °C end at −8.3 °C with
/// 49.4 g, 20.3 % vol (0.6 K, 8 %); and what is 20 % vol begins to freeze at −8.2 °C (0.5 K).
#[test]
fn a_worked_example() {
    let mix = drink(30.0);
    let end = chill::equilibrium(&start(&mix, ice(200.0, 0.0))).expect("an end");
    near(end.at.celsius(), -8.3, 0.6, "°C");
    near(end.water.g(), 49.4, 0.08 * 49.4, "g");
    near((mix + Mix::water(end.water)).strength().fraction() * 100.0, 20.3, 0.3, "% vol");
    near(drink(20.0).freezing_point().expect("in range").celsius(), -8.2, 0.5, "°C");
}

/// D. Arnold, Science of Shaking II (2009): a shaken drink is at its end in about 15 s, and the ice hardly matters; a
/// stirred one is not, and goes on.
#[test]
fn shaking_is_done_in_fifteen_seconds_and_stirring_is_not() {
    let mix = drink(30.0);
    let start = start(&mix, ice(200.0, 0.0));
    let end = chill::equilibrium(&start).expect("an end");
    let share = |method, seconds| {
        chill::after(&start, method, Pace::Usual, seconds).expect("a moment").water.g() / end.water.g()
    };
    assert!(share(Method::Shake, 15.0) > 0.98 && share(Method::Shake, 5.0) < 0.8);
    assert!((0.8..0.9).contains(&share(Method::Stir, 30.0)));
    for method in [Method::Throw, Method::Swizzle, Method::Build, Method::Block] {
        assert!(share(method, 20.0) < share(Method::Shake, 20.0), "{method:?}");
        assert!(share(method, 3600.0) > 0.999_999, "{method:?}");
    }
}

/// The curves that are remembered of D. Arnold, Liquid Intelligence (2014): what is usual lies within 15 % of them at any
/// strength they know, stirred and shaken, and where it does not it is said why.
#[test]
fn the_usual_agrees_with_the_second_opinion() {
    for strength in [15.0, 20.0, 25.0, 30.0, 35.0, 40.0] {
        let mix = drink(strength);
        for method in [Method::Stir, Method::Shake] {
            let moment = chill::served(&mix, method).expect("served");
            let second = second_opinion(&chill::usual(&mix, method), method, Pace::Usual, &moment).expect("known");
            assert_eq!(second.differs, None, "{strength} {method:?}");
        }
        assert!(second_opinion(&chill::usual(&mix, Method::Throw), Method::Throw, Pace::Usual, &END).is_none());
    }
    assert!(second_opinion(&chill::usual(&drink(50.0), Method::Stir), Method::Stir, Pace::Usual, &END).is_none());
}

const END: Moment = Moment { seconds: 30.0, at: Temperature::ZERO, water: Mass::ZERO };

#[test]
fn why_the_two_differ_is_said() {
    let mix = drink(30.0);
    let why = |start: Start, method: Method, seconds: f64| {
        let moment = chill::after(&start, method, Pace::Usual, seconds).expect("a moment");
        second_opinion(&start, method, Pace::Usual, &moment).expect("known").differs
    };
    let on = |ice: Ice| start(&mix, ice);
    let usual = on(ice(200.0, 0.0));
    let wet = Ice { wet: Ratio::from_value(0.1).expect("a share"), ..ice(200.0, 0.0) };
    let vessel = |celsius| Some(Heat::of(Material::Glass, grams(800.0), degrees(celsius)));
    assert_eq!(why(usual, Method::Stir, 30.0), None);
    assert_eq!(why(on(ice(200.0, -18.0)), Method::Stir, 30.0), Some(Why::ColdIce));
    assert_eq!(why(Start { at: degrees(4.0), ..usual }, Method::Stir, 30.0), Some(Why::ColdDrink));
    assert_eq!(why(Start { vessel: vessel(-18.0), ..usual }, Method::Stir, 30.0), Some(Why::ColdVessel));
    assert_eq!(why(on(ice(25.0, 0.0)), Method::Stir, 30.0), Some(Why::LittleIce));
    assert_eq!(why(usual, Method::Stir, 10.0), Some(Why::ShortTime));
    assert_eq!(why(usual, Method::Shake, 15.0), Some(Why::NotCounted));
    assert_eq!(why(on(wet), Method::Stir, 30.0), Some(Why::WetIce));
    assert_eq!(why(Start { vessel: vessel(20.0), ..usual }, Method::Stir, 30.0), Some(Why::WarmVessel));
    assert_eq!(why(Start { at: degrees(40.0), ..usual }, Method::Stir, 30.0), Some(Why::WarmDrink));
    assert_eq!(why(usual, Method::Stir, 120.0), Some(Why::LongTime));
}

/// From memory of excess enthalpies: mixing gives 5 to 12 % of the heat that melts. Water that was on the ice is not melted.
#[test]
fn the_band_is_twelve_percent_of_what_melts() {
    let mix = drink(30.0);
    let wet = Ice { wet: Ratio::from_value(0.05).expect("a share"), ..ice(200.0, 0.0) };
    let moment = Moment { seconds: 15.0, at: degrees(-8.0), water: grams(50.0) };
    assert_eq!(band(&start(&mix, ice(200.0, 0.0)), &moment), [grams(50.0), grams(56.0)]);
    near(band(&start(&mix, wet), &moment)[1].g(), 54.8, 1e-9, "g");
}

/// "Went in 90 ml, came out 128 ml after 30 s": the pace that gives it back, by volume and by mass, and how wet ice was that
/// gave more than heat melts.
#[test]
fn a_drink_weighed_before_and_after_gives_the_pace_of_the_bar() {
    let strength = Abv::from_fraction(0.32).expect("a strength");
    let mix = Mix::spirit(Volume::whole_ml(90), strength);
    let start = start(&mix, ice(180.0, 0.0));
    let ml = |ml: u32| Amount::Volume(Volume::whole_ml(ml));
    let pace = Pace::from_weighed(&start, 30.0, ml(90), ml(128)).expect("a pace");
    let moment = chill::after(&start, Method::Stir, pace, 30.0).expect("a moment");
    let volume = |mix: &Mix, at| mix.volume(at).expect("in range").ml();
    let grown = volume(&(mix + Mix::water(moment.water)), moment.at) / volume(&mix, Temperature::TWENTY);
    near(grown, 128.0 / 90.0, 1e-6, "times");
    // Twice the drink, measured at once: as fast.
    assert_eq!(Pace::from_weighed(&start, 30.0, ml(180), ml(256)), Ok(pace));
    let weighed = |before, after| Pace::from_weighed(&start, 30.0, Amount::Mass(before), Amount::Mass(after));
    let again = weighed(mix.mass(), mix.mass() + moment.water).expect("a pace");
    near(again.seconds(Method::Stir), pace.seconds(Method::Stir), 1e-6, "s");
    assert_eq!(weighed(grams(90.0), grams(90.0)), Err(ChillProblem::NothingTaken));
    assert_eq!(weighed(grams(90.0), grams(160.0)), Err(ChillProblem::MoreThanBalance));
    assert_eq!(weighed(grams(0.0), grams(160.0)), Err(ChillProblem::NoDrink));
    assert_eq!(Pace::from_weighed(&start, 30.0, ml(90), Amount::Mass(grams(128.0))), Err(ChillProblem::TwoKinds));
    assert_eq!(Pace::from_weighed(&start, 0.0, ml(90), ml(128)), Err(ChillProblem::NoTime));
    let wet = wetness_from_weighed(&start, Method::Shake, Pace::Usual, 15.0, ml(90), ml(145)).expect("so wet");
    let start = Start { ice: Ice { wet, ..start.ice }, ..start };
    let moment = chill::after(&start, Method::Shake, Pace::Usual, 15.0).expect("a moment");
    let grown = volume(&(mix + Mix::water(moment.water)), moment.at) / volume(&mix, Temperature::TWENTY);
    near(grown, 145.0 / 90.0, 1e-6, "times");
}

#[test]
fn what_cannot_be_is_refused_in_words() {
    let mix = drink(30.0);
    let usual = start(&mix, ice(200.0, 0.0));
    let refused = |start: &Start| chill::equilibrium(start).expect_err("refused");
    assert_eq!(refused(&start(&mix, ice(0.0, 0.0))), ChillProblem::NoIce);
    assert_eq!(refused(&Start { ice: Ice { wet: Ratio::ONE, ..usual.ice }, ..usual }), ChillProblem::NoIce);
    assert_eq!(refused(&start(&mix, ice(200.0, 0.1))), ChillProblem::IceAboveZero);
    assert_eq!(refused(&Start { at: degrees(-1.0), ..usual }), ChillProblem::ColderThanIce);
    assert_eq!(refused(&start(&Mix::default(), usual.ice)), ChillProblem::NoDrink);
    let frozen = Start { at: degrees(-18.0), ..start(&mix, ice(200.0, -18.0)) };
    assert!(matches!(refused(&frozen), ChillProblem::Frozen(at) if (at.celsius() + 15.0).abs() < 0.5));
    let cold = Start { at: degrees(-14.0), ..start(&mix, ice(200.0, -18.0)) };
    assert_eq!(refused(&cold), ChillProblem::FreezesOn);
    let pure = Mix::spirit(Volume::whole_ml(60), Abv::from_fraction(1.0).expect("a strength"));
    assert!(matches!(refused(&start(&pure, usual.ice)), ChillProblem::Beyond(_)));
    let syrup = Mix::syrup(grams(300.0), Brix::from_degrees(66.0).expect("a sweetness"));
    assert!(matches!(refused(&start(&syrup, usual.ice)), ChillProblem::Beyond(_)));
    let after = |seconds| chill::after(&usual, Method::Stir, Pace::Usual, seconds);
    for seconds in [0.0, -1.0, f64::NAN] {
        assert_eq!(after(seconds), Err(ChillProblem::NoTime));
    }
    assert_eq!(after(36_000.0), Err(ChillProblem::TooLong));
    assert!(chill::curve(&usual, Method::Stir, Pace::Usual, [0.0; 2]).is_err());
    for problem in [
        ChillProblem::NoDrink,
        ChillProblem::NoIce,
        ChillProblem::IceAboveZero,
        ChillProblem::ColderThanIce,
        ChillProblem::FreezesOn,
        ChillProblem::NoTime,
        ChillProblem::TooLong,
        ChillProblem::TwoKinds,
        ChillProblem::NothingTaken,
        ChillProblem::MoreThanBalance,
        refused(&frozen),
        refused(&start(&pure, usual.ice)),
    ] {
        assert!(problem.to_string().len() > 20, "{problem:?}");
    }
}
