//! An amount of an ingredient, as what is in it.

use crate::book::{Ingredient, Kind, Sugar};
use crate::quantity::{Abv, Acidity, Amount, Density, Mass, Ratio, Temperature, Volume};
use crate::substance::acid::{Acid, ML_PER_GRAM_DISSOLVED};
use crate::substance::mix::Mix;
use crate::substance::{ethanol, milk};

/// A litre of an ingredient at 20 °C: what is named in it, and water to fill the litre. A powder: a kilogram.
#[must_use]
pub fn standard(ingredient: &Ingredient) -> Mix {
    let grams = |g: f64| Mass::from_g(g).unwrap_or(Mass::ZERO);
    let mut mix = ingredient.acids.iter().map(|(acid, g)| Mix::acid(*acid, grams(*g))).sum::<Mix>();
    mix.ethanol = grams(ingredient.percent * 10.0 * ethanol::G_PER_ML);
    match ingredient.sugar_kind {
        Sugar::Sucrose => mix.sucrose = grams(ingredient.sugar),
        Sugar::Invert => mix.invert_sugar = grams(ingredient.sugar),
    }
    mix.other = grams(ingredient.other);
    mix.cations = Ratio::from_value(ingredient.cations).unwrap_or(Ratio::ZERO);
    if ingredient.is_milk {
        let acids = mix.acids().g() * ML_PER_GRAM_DISSOLVED;
        mix.milk = grams((1000.0 - acids) * milk::G_PER_ML);
    } else if ingredient.kind != Kind::Powder {
        fill_with_water(&mut mix);
    }
    mix
}

/// Adds the water that makes it a litre: each round adds what is missing, which falls by nine tenths or more.
fn fill_with_water(mix: &mut Mix) {
    for _ in 0..24 {
        let volume = mix.volume(Temperature::TWENTY).unwrap_or(Volume::LITRE);
        let missing = Volume::LITRE.ml() - volume.ml();
        if missing.abs() < 1e-9 {
            break;
        }
        mix.water = Mass::from_g((mix.water.g() + missing * Density::WATER.g_per_ml()).max(0.0)).unwrap_or(mix.water);
    }
}

/// What is in an amount of an ingredient. None for a count, or for a volume of powder.
#[must_use]
pub fn pour(ingredient: &Ingredient, amount: Amount) -> Option<Mix> {
    let whole = standard(ingredient);
    let ratio = match amount {
        Amount::Volume(_) if ingredient.kind == Kind::Powder => return None,
        Amount::Volume(volume) => volume.over(Volume::LITRE)?,
        Amount::Mass(mass) => Ratio::from_value(mass.g() / whole.mass().g()).ok()?,
        Amount::Count(_) => return None,
    };
    Some(whole * ratio)
}

/// What a drink reads as.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Balance {
    /// At 20 °C, before ice or water.
    pub volume: Volume,
    /// By volume at 20 °C.
    pub strength: Abv,
    /// Grams of sugar to the litre.
    pub sugar: f64,
    /// Grams of acid to the litre, as citric.
    pub acid: f64,
    /// Grams of sugar to the gram of acid; none without acid.
    pub sugar_to_acid: Option<f64>,
    /// At 25 °C; none where it cannot be worked out.
    pub ph: Option<f64>,
}

/// Reads a mix.
#[must_use]
pub fn balance(mix: &Mix) -> Balance {
    let acid = mix.titratable_acidity().map_or(0.0, Acidity::g_per_l);
    let sugar = mix.g_per_l(mix.sugar());
    let has_acid = Acid::ALL.iter().any(|acid| mix.mass_of(*acid) > Mass::ZERO);
    Balance {
        volume: mix.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO),
        strength: mix.strength(),
        sugar,
        acid,
        sugar_to_acid: (acid > 0.0).then(|| sugar / acid),
        ph: has_acid.then(|| mix.ph().ok()).flatten(),
    }
}
