//! Mixing by mass: contraction, strength and syrup yields.
//!
//! Source: OIML R 22 (1975) and ICUMSA (Bubník et al. 1995), mass balances worked out from them by a separate
//! script that was not kept; and a printed table of dilutions on an engineering reference page, which says it derives
//! from the US Gauging Manual (the page's name was not kept).

use meniscus::quantity::{Abv, Brix, Mass, Temperature, Volume};
use meniscus::substance::mix::Mix;

use crate::near;

fn spirit(ml: u32, percent: f64) -> Mix {
    Mix::spirit(Volume::whole_ml(ml), Abv::from_fraction(percent / 100.0).expect("a strength"))
}

fn grams(g: f64) -> Mass {
    Mass::from_g(g).expect("a mass")
}

fn volume(mix: &Mix) -> f64 {
    mix.volume(Temperature::TWENTY).expect("in range").ml()
}

/// 750 ml at 40 % and 250 ml of water: 998.4 ml at 30.05 %.
#[test]
fn a_spirit_let_down() {
    let mix = spirit(750, 40.0) + spirit(250, 0.0);
    near(volume(&mix), 998.4, 0.1, "ml");
    near(mix.strength().fraction() * 100.0, 30.05, 0.01, "% vol");
}

/// A litre at 95 % and a litre of water come to 1.94 l.
#[test]
fn a_litre_and_a_litre_are_not_two() {
    near(volume(&(spirit(1000, 95.0) + spirit(1000, 0.0))), 1940.0, 5.0, "ml");
}

/// 1000 ml at 50 % and 254.9 g of water: 1250 ml at 40 %.
#[test]
fn cut_to_forty() {
    let mix = spirit(1000, 50.0) + Mix::water(grams(254.9));
    near(mix.strength().fraction() * 100.0, 40.0, 0.01, "% vol");
    near(volume(&mix), 1250.0, 0.2, "ml");
}

/// 60 ml at 40 % and 30 ml at 16 %: 89.85 ml, 32.05 %, 22.73 g of ethanol.
#[test]
fn two_pours() {
    let mix = spirit(60, 40.0) + spirit(30, 16.0);
    near(volume(&mix), 89.85, 0.02, "ml");
    near(mix.strength().fraction() * 100.0, 32.05, 0.02, "% vol");
    near(mix.ethanol.g(), 22.73, 0.02, "g");
}

/// 700 ml measured at 4 °C at 40 % are 707.52 ml at 20 °C.
#[test]
fn a_cold_bottle() {
    let mix = spirit(1000, 40.0);
    let at = |t| mix.volume(Temperature::from_celsius(t).expect("a temperature")).expect("in range").ml();
    near(700.0 * at(20.0) / at(4.0), 707.52, 0.02, "ml");
}

/// 500 g of sugar and 500 g of water: 813.2 ml, 1.2297 g/ml, 61.48 g in 100 ml.
#[test]
fn simple_syrup() {
    let mix = Mix::syrup(grams(1000.0), Brix::from_degrees(50.0).expect("a sweetness"));
    near(volume(&mix), 813.2, 0.2, "ml");
    near(mix.density(Temperature::TWENTY).expect("in range").g_per_ml(), 1.2297, 1e-4, "g/ml");
    near(mix.g_per_l(mix.sugar()) / 10.0, 61.48, 0.01, "g/100 ml");
}

/// 300 ml of 50 °Bx and 200 ml of 66.67 °Bx: 56.97 °Bx, 499.8 ml.
#[test]
fn two_syrups() {
    let of = |ml: f64, degrees: f64| {
        let sweetness = Brix::from_degrees(degrees).expect("a sweetness");
        let one = Mix::syrup(grams(1.0), sweetness);
        let density = one.density(Temperature::TWENTY).expect("in range").g_per_ml();
        Mix::syrup(grams(ml * density), sweetness)
    };
    let mix = of(300.0, 50.0) + of(200.0, 200.0 / 3.0);
    near(mix.sweetness().fraction() * 100.0, 56.97, 0.05, "°Bx");
    near(volume(&mix), 499.8, 0.3, "ml");
}

/// Volumes of water to 100 of spirit, printed: rounded, so to 0.6. The naive sum is 137.5 for the first.
#[test]
fn printed_dilutions() {
    for (from, to, printed) in
        [(95.0, 40.0, 144.0), (60.0, 40.0, 51.4), (50.0, 40.0, 25.6), (75.0, 50.0, 52.4), (40.0, 20.0, 100.0)]
    {
        let percent = |value: f64| Abv::from_fraction(value / 100.0).expect("a strength");
        let made = meniscus::craft::strength::cut(Volume::whole_ml(100), percent(from), percent(to)).expect("weaker");
        near(made.water_volume.ml(), printed, 0.6, "volumes of water");
    }
}
