//! Energy and standard drinks.
//!
//! Sources: Regulation (EU) 1169/2011, Annex XIV, conversion factors; standard drinks as public pages citing
//! the national bodies give them (US 14 g, UK 10 ml, Australia and the WHO's AUDIT 10 g, Canada 17.05 ml, Spain 10 g, Japan
//! about 20 g); Austria 20 g and New Zealand 10 g of A. Kalinowski, K. Humphreys, Addiction 111 (2016), as the press gives
//! its table; Portugal 10 g, from memory.

use meniscus::quantity::{Abv, Mass, Volume};
use meniscus::substance::acid::Acid;
use meniscus::substance::energy::{StandardDrink, energy};
use meniscus::substance::mix::Mix;

use crate::near;

fn sixty_at_forty() -> Mix {
    Mix::spirit(Volume::whole_ml(60), Abv::from_fraction(0.4).expect("a strength"))
}

/// 60 ml at 40 %: 18.94 g of ethanol, 549.3 kJ, 132.6 kcal; 1.35 US drinks, 2.4 UK units, 1.89 Australian.
#[test]
fn a_double() {
    let mix = sixty_at_forty();
    near(mix.ethanol.g(), 18.94, 0.005, "g");
    near(energy(&mix).kilojoules, 549.3, 0.1, "kJ");
    near(energy(&mix).kilocalories, 132.6, 0.1, "kcal");
    near(StandardDrink::UnitedStates.count(&mix), 1.35, 0.005, "US drinks");
    near(StandardDrink::UnitedKingdom.count(&mix), 2.4, 0.001, "UK units");
    near(StandardDrink::Australia.count(&mix), 1.89, 0.005, "Australian drinks");
    // 24 ml of ethanol over 17.05 ml.
    near(StandardDrink::Canada.count(&mix), 24.0 / 17.05, 0.001, "Canadian drinks");
}

/// 18.94 g of ethanol in drinks of 10 and 20 g; one of 20 g is 25.3 ml of ethanol, one of 10 g 12.67 (encyclopaedia pages).
#[test]
fn more_countries() {
    let mix = sixty_at_forty();
    for (region, grams) in [
        (StandardDrink::NewZealand, 10.0),
        (StandardDrink::Spain, 10.0),
        (StandardDrink::Portugal, 10.0),
        (StandardDrink::Who, 10.0),
        (StandardDrink::Austria, 20.0),
        (StandardDrink::Japan, 20.0),
    ] {
        near(region.count(&mix), 18.942 / grams, 0.001, "drinks");
        near(region.grams() / 0.789_239, if grams > 10.0 { 25.3 } else { 12.67 }, 0.05, "ml of ethanol");
    }
}

/// The same with 14 g of sugar and 1 g of citric acid: 800.3 kJ, 191.6 kcal.
#[test]
fn a_sour() {
    let grams = |g| Mass::from_g(g).expect("a mass");
    let mut mix = sixty_at_forty() + Mix::acid(Acid::Citric, grams(1.0));
    mix.sucrose = grams(14.0);
    near(energy(&mix).kilojoules, 800.3, 0.1, "kJ");
    near(energy(&mix).kilocalories, 191.6, 0.1, "kcal");
}
