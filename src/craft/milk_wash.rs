//! Milk for a wash, whether it clots, and what comes through the filter. The drink goes over the milk, not the reverse.

use crate::quantity::{Mass, Ratio, Temperature, Volume};
use crate::substance::acid::Acid;
use crate::substance::milk::{
    CASEIN_CLOTS_AT, G_PER_ML, MEQ_TO_CLOT, Milk, WATER_KG_PER_L, acid_given_up, acid_taken_up, ionic_strength,
    ph_with_milk,
};
use crate::substance::mix::{ML_PER_GRAM_OF_SOLIDS, Mix};

/// A wash laid out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wash {
    /// Milk, into the vessel first.
    pub milk: Volume,
    /// Drink, poured over it.
    pub drink: Volume,
}

impl Wash {
    /// What the vessel must hold: the volumes added as numbers.
    #[must_use]
    pub fn together(&self) -> Volume {
        self.milk + self.drink
    }
}

/// The milk for `drink` at `drink_per_milk` parts of drink to one of milk; none for a ratio of zero.
#[must_use]
pub fn milk_for(drink: Volume, drink_per_milk: Ratio) -> Option<Wash> {
    Some(Wash { milk: drink * drink_per_milk.inverse()?, drink })
}

/// The drink that `milk` can wash at that ratio.
#[must_use]
pub fn drink_for(milk: Volume, drink_per_milk: Ratio) -> Wash {
    Wash { milk, drink: milk * drink_per_milk }
}

/// Whether milk clots in a drink.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clots {
    /// Even if the milk takes up as much acid as it may.
    Yes,
    /// It may or may not.
    Perhaps,
    /// Not even if it takes up as little as it may.
    No,
}

/// What becomes of milk in a drink's acid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Verdict {
    /// pH together: least, likely, most, as the milk takes up little or much acid.
    pub ph: [f64; 3],
    /// The plain word.
    pub clots: Clots,
    /// Citric acid, anhydrous, that makes it certain.
    pub citric_to_add: Mass,
}

/// Whether `milk` clots in a drink. In water at 25 °C; alcohol makes acids weaker, so it is a hint for strong drinks.
#[must_use]
pub fn verdict(drink: &Mix, milk: Volume) -> Verdict {
    let acids: Vec<(Acid, f64)> =
        Acid::ALL.into_iter().map(|acid| (acid, drink.mass_of(acid).g() / acid.constants().molar_mass)).collect();
    let cations = drink.cations.value() / 1000.0;
    let kg_of_water = drink.water.g() / 1000.0 + milk.ml() / 1000.0 * WATER_KG_PER_L;
    let ph = MEQ_TO_CLOT.map(|meq| ph_with_milk(&acids, cations, kg_of_water, milk, meq));
    let clots = match ph {
        [_, _, most] if most <= CASEIN_CLOTS_AT => Clots::Yes,
        [least, ..] if least <= CASEIN_CLOTS_AT => Clots::Perhaps,
        _ => Clots::No,
    };
    let ionic = ionic_strength(milk, cations, kg_of_water);
    let given = acid_given_up(&acids, cations, kg_of_water, ionic, CASEIN_CLOTS_AT);
    let short = (milk.ml() / 1e6 * MEQ_TO_CLOT[2] - given).max(0.0);
    Verdict { ph, clots, citric_to_add: citric_giving_up(short, ionic) }
}

/// Citric acid that gives up so many moles of protons at [`CASEIN_CLOTS_AT`]: 1.62 to the mole at an ionic strength of 0.1.
fn citric_giving_up(moles: f64, ionic: f64) -> Mass {
    let each = acid_given_up(&[(Acid::Citric, 1.0)], 0.0, 0.0, ionic, CASEIN_CLOTS_AT);
    Mass::from_g(moles / each * Acid::Citric.constants().molar_mass).unwrap_or(Mass::ZERO)
}

/// Citric acid, anhydrous, that clots so much milk by itself, when a litre takes up `meq` to get there.
#[must_use]
pub fn citric_to_clot(milk: Volume, meq: f64) -> Mass {
    citric_giving_up(milk.ml() / 1e6 * meq, 0.1)
}

/// How much acid a litre of whole milk takes up by the model of its groups; the verdict takes only its shape, and
/// [`MEQ_TO_CLOT`] for how much.
#[must_use]
pub fn meq_by_groups() -> f64 {
    acid_taken_up(CASEIN_CLOTS_AT)
}

/// A drink after its wash.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Washed {
    /// All that is liquid: the drink, and the milk without what clots. What is lost in the curd is of the same kind.
    pub liquid: Mix,
    /// Fat and casein that clot.
    pub curd: Mass,
    /// Lactose that stays in the liquid.
    pub lactose: Mass,
}

/// A drink washed with milk of a cow: its fat and casein clot, its water, lactose, salts and whey protein stay.
#[must_use]
pub fn washed(drink: &Mix, milk: Volume, kind: &Milk) -> Washed {
    let grams = |of_100: f64| Mass::from_g(milk.ml() * G_PER_ML * of_100 / 100.0).unwrap_or(Mass::ZERO);
    let curd = grams(kind.curd());
    let water = grams(kind.water);
    // What is neither water nor curd, so that nothing gets lost on the way.
    let other = grams(100.0 - kind.water - kind.curd());
    let room = Volume::from_ml(other.g() * ML_PER_GRAM_OF_SOLIDS).unwrap_or(Volume::ZERO);
    let mut liquid = *drink + Mix::water(water);
    liquid.other = liquid.other + other;
    liquid.room = liquid.room + room;
    Washed { liquid, curd, lactose: grams(kind.lactose) }
}

/// What comes through the filter of a drink washed with milk of a cow: a share of drink and milk together, of the liquid
/// that is left. None where there is nothing.
#[must_use]
pub fn through(drink: &Mix, milk: Volume, kind: &Milk, share: Ratio) -> Option<Mix> {
    let liquid = washed(drink, milk, kind).liquid;
    let volume = |mix: &Mix| mix.volume(Temperature::TWENTY).ok();
    let comes = (volume(drink)? + milk) * share;
    Some(liquid * comes.over(volume(&liquid)?)?)
}

/// Of drink and milk together, what comes through the filter; the curd and the filter keep the rest: least, usual,
/// most. Common practice, no source.
pub const COMES_THROUGH: [f64; 3] = [0.75, 0.85, 0.92];
