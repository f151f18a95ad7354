//! An amount of an ingredient, as what is in it.

use crate::book::{Holds, Ingredient, Kind, Made, Sugar, Taken};
use crate::quantity::{Amount, Brix, Mass, Ratio, Temperature, Volume};
use crate::substance::acid::ML_PER_GRAM_DISSOLVED;
use crate::substance::juice::acid_correction;
use crate::substance::mix::{ML_PER_GRAM_OF_SOLIDS, Mix};
use crate::substance::{ethanol, sucrose};

/// A litre of an ingredient at 20 °C: what is named in it, and water to fill the litre. A powder: a kilogram.
#[must_use]
pub fn standard(ingredient: &Ingredient) -> Mix {
    let mut mix = ingredient.acids.iter().map(|(acid, g)| Mix::acid(*acid, grams(*g))).sum::<Mix>();
    mix.ethanol = grams(ingredient.percent * 10.0 * ethanol::G_PER_ML);
    match ingredient.sugar_kind {
        Sugar::Sucrose => mix.sucrose = grams(ingredient.sugar),
        Sugar::Invert => mix.invert_sugar = grams(ingredient.sugar),
    }
    mix.other = grams(ingredient.other);
    mix.cations = Ratio::from_value(ingredient.cations).unwrap_or(Ratio::ZERO);
    let of_others = |grams: f64| Volume::from_ml(grams * ingredient.other_room).unwrap_or(Volume::ZERO);
    if ingredient.is_milk {
        let acids = mix.acids().g() * ML_PER_GRAM_DISSOLVED;
        mix.milk = grams((1000.0 - acids) / ingredient.other_room);
        mix.room = of_others(mix.milk.g());
        return mix;
    }
    mix.room = of_others(ingredient.other);
    if ingredient.kind == Kind::Powder {
        // What is left of a kilogram is water, as in lactic acid of 80 %.
        mix.water = grams((1000.0 - mix.mass().g()).max(0.0));
    } else {
        fill_with_water(&mut mix);
    }
    mix
}

/// As [`standard`], with what a bar has measured in place of the library's figures. Acids keep their
/// proportions, and salts and solids stay; one without acid gets citric acid.
#[must_use]
pub fn litre_of(taken: &Taken) -> Mix {
    let Taken { ingredient, measured } = taken;
    let mut mix = match measured.made {
        Made::Here(_, Some(made)) => whole(made),
        Made::Here(_, None) | Made::No => standard(ingredient),
    };
    if measured.is_nothing() || ingredient.kind == Kind::Powder || ingredient.is_milk {
        return mix;
    }
    if let Some(strength) = measured.strength {
        mix.ethanol = grams(strength.fraction() * 1000.0 * ethanol::G_PER_ML);
    }
    hold(&mut mix, measured.holds);
    if let Some(acid) = measured.acid {
        mix = mix.with_acidity(acid);
    }
    let known = measured.sugar_per_litre.unwrap_or(mix.sugar());
    // What was made keeps how much of its sugar is glucose and fructose.
    let of_made = matches!(measured.made, Made::Here(..))
        .then(|| Ratio::from_value(mix.invert_sugar.g() / mix.sugar().g()).ok())
        .flatten();
    let invert = |sugar: Mass| measured.holds.invert.or(of_made.map(|share| sugar * share));
    sweeten(&mut mix, known, ingredient.sugar_kind, invert(known));
    let Some(reads) = measured.reads.filter(|_| measured.sugar_per_litre.is_none()) else { return mix };
    // A litre's mass hardly depends on its sugar, so the sugar settles in a few rounds.
    for _ in 0..12 {
        let without_sugar = mix.acids() + mix.other;
        let correction = acid_correction(100.0 * mix.titratable().g() / mix.mass().g());
        let dissolved = mix.mass().g() * (reads.degrees() + correction) / 100.0;
        let sugar = grams((dissolved - without_sugar.g()).max(0.0));
        sweeten(&mut mix, sugar, ingredient.sugar_kind, invert(sugar));
    }
    mix
}

/// A litre of what was made, at 20 °C; a kilogram where nothing is dissolved in it.
fn whole(made: Mix) -> Mix {
    let amount = made.volume(Temperature::TWENTY).ok().filter(|_| made.water > Mass::ZERO).map(Volume::ml);
    let times = 1000.0 / amount.unwrap_or(made.mass().g());
    Ratio::from_value(times).map_or(made, |times| made * times)
}

/// Whether what was measured can be in one litre: it goes in, and it does not read less than its acid and solids alone.
#[must_use]
pub fn fits(taken: &Taken) -> bool {
    if taken.measured.is_nothing() || taken.ingredient.kind == Kind::Powder {
        return true;
    }
    let litre = litre_of(taken);
    let is_read = |wanted: Brix| (litre.shows() - wanted.degrees()).abs() < 0.05;
    litre.volume(Temperature::TWENTY).is_ok_and(|volume| volume.ml() <= 1_001.0)
        && taken.measured.reads.filter(|_| taken.measured.sugar_per_litre.is_none()).is_none_or(is_read)
}

/// Puts what is known to be in a litre in place of what stands there.
fn hold(mix: &mut Mix, holds: Holds) {
    if let Some(acids) = holds.acids {
        *mix = mix.with_acids(acids);
    }
    mix.cations = holds.salts.unwrap_or(mix.cations);
    if let Some(solids) = holds.solids {
        mix.other = solids;
        mix.room = Volume::from_ml(solids.g() * ML_PER_GRAM_OF_SOLIDS).unwrap_or(Volume::ZERO);
    }
}

/// A litre with so much sugar, of its kind or of both, and the water that fills it.
fn sweeten(mix: &mut Mix, sugar: Mass, kind: Sugar, invert: Option<Mass>) {
    let of_kind = if kind == Sugar::Invert { sugar } else { Mass::ZERO };
    mix.invert_sugar = grams(invert.unwrap_or(of_kind).g().min(sugar.g()));
    mix.sucrose = grams(sugar.g() - mix.invert_sugar.g());
    fill_with_water(mix);
}

/// Adds or takes the water that makes it a litre, by the secant rule. What has no room for water stays more
/// than a litre.
fn fill_with_water(mix: &mut Mix) {
    let short = |mix: &Mix| 1000.0 - mix.volume(Temperature::TWENTY).map_or(1000.0, Volume::ml);
    let mut gap = short(mix);
    let mut step = gap;
    for _ in 0..16 {
        if gap.abs() < 1e-7 {
            break;
        }
        mix.water = grams((mix.water.g() + step).max(0.0));
        let after = short(mix);
        step *= after / (gap - after);
        gap = after;
    }
}

fn grams(g: f64) -> Mass {
    Mass::from_g(g).unwrap_or(Mass::ZERO)
}

/// What is in an amount of what a line is taken to be; sugar by volume as it lies in a spoon. None for a count, or
/// for a volume of another powder.
#[must_use]
pub fn pour(taken: &Taken, amount: Amount) -> Option<Mix> {
    let whole = litre_of(taken);
    let ratio = match amount {
        Amount::Volume(volume) if taken.ingredient.key == "sugar" => {
            Ratio::from_value(volume.ml() * sucrose::GRANULATED_G_PER_ML / whole.mass().g()).ok()?
        }
        Amount::Volume(_) if taken.ingredient.kind == Kind::Powder => return None,
        Amount::Volume(volume) => volume.over(whole.volume(Temperature::TWENTY).ok()?)?,
        Amount::Mass(mass) => Ratio::from_value(mass.g() / whole.mass().g()).ok()?,
        Amount::Count(_) => return None,
    };
    Some(whole * ratio)
}
