//! Milk: what is in it, and how much acid it takes up on its way to clotting.

use super::acid::Acid;
use super::ph::{log_activity, protons_lost};
use crate::quantity::Volume;

/// Grams of whole milk to the millilitre at 20 °C, from memory; other milk and cream are taken as the same.
pub const G_PER_ML: f64 = 1.030;

/// Usual range of drink to one part of milk, by volume. Common practice, no source.
pub const USUAL_DRINK_PER_MILK: std::ops::RangeInclusive<f64> = 3.0..=6.0;

/// Where casein carries no net charge, and clots. Source: Zoller, J. Ind. Eng. Chem. 13 (1921) 510.
pub const CASEIN_CLOTS_AT: f64 = 4.6;

/// pH of milk as it comes. Source: Fox and McSweeney, Dairy Chemistry and Biochemistry (1998) p. 450, mean of 6.5 to 6.7.
pub const FRESH_PH: f64 = 6.6;

/// Casein as a fraction of milk protein. Standard value in dairy texts.
pub const CASEIN_OF_PROTEIN: f64 = 0.8;

/// Milliequivalents of acid that a litre of milk takes up down to [`CASEIN_CLOTS_AT`]: least, likely, most.
///
/// An estimate, no published datum. Over these two units of pH the published maximum of the buffer index allows at most 55
/// for whole milk and 67 for skim milk (source in `tests/published/milk_and_acid.rs`): the range spans both.
pub const MEQ_TO_CLOT: [f64; 3] = [50.0, 60.0, 70.0];

/// Strength in the mix, as a fraction, from which alcohol by itself may clot fresh milk: an equal volume of 66 % vol
/// does it for the least stable milk, of 80 to 84 % for milk of a herd. Source: stability of caseinate to ethanol,
/// J. Dairy Research 1958 (Davies and White, from memory).
pub const ALCOHOL_CLOTS_FROM: f64 = 0.33;

/// A milk: grams in 100 g.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Milk {
    /// Stable key, kept in saved data.
    pub key: &'static str,
    /// Its name.
    pub name: &'static str,
    /// Water.
    pub water: f64,
    /// Protein, most of it casein.
    pub protein: f64,
    /// Fat.
    pub fat: f64,
    /// Lactose.
    pub lactose: f64,
    /// Salts.
    pub ash: f64,
    /// Where the figures come from; empty for what is no milk of a cow, of which nothing is known here.
    pub source: &'static str,
}

/// Kilograms of water in a litre of milk: 1.030 g/ml of 87.3 % water, as whole milk has; skim milk has 0.93.
pub const WATER_KG_PER_L: f64 = G_PER_ML * 0.873;

const FAO: &str = "FAO Food Composition Tables for International Use, item 250";
const FAO_SKIM: &str = "FAO Food Composition Tables for International Use, item 254";
const FAO_MIXED: &str = "FAO Food Composition Tables for International Use, items 250 and 254 mixed to 1.7 % fat";

/// The kinds of milk; those without a source are no milk of a cow, and how they clot is not known here.
pub const MILKS: &[Milk] = &[
    milk("whole", "Whole milk", [87.3, 3.5, 3.5, 5.0, 0.7], FAO),
    milk("semi", "Semi-skimmed milk", [88.98, 3.56, 1.7, 5.06, 0.7], FAO_MIXED),
    milk("skim", "Skim milk", [90.2, 3.6, 0.4, 5.1, 0.7], FAO_SKIM),
    milk("oat", "Oat drink", [0.0; 5], ""),
    milk("soya", "Soya drink", [0.0; 5], ""),
    milk("almond", "Almond drink", [0.0; 5], ""),
    milk("coconut", "Coconut milk", [0.0; 5], ""),
];

const fn milk(key: &'static str, name: &'static str, of_100: [f64; 5], source: &'static str) -> Milk {
    let [water, protein, fat, lactose, ash] = of_100;
    Milk { key, name, water, protein, fat, lactose, ash, source }
}

impl Milk {
    /// The milk of this key; whole milk for a key we do not know.
    #[must_use]
    pub fn of(key: &str) -> &'static Milk {
        MILKS.iter().find(|milk| milk.key == key).unwrap_or(&MILKS[0])
    }

    /// Whether it is milk of a cow.
    #[must_use]
    pub const fn is_of_cows(&self) -> bool {
        !self.source.is_empty()
    }

    /// What clots of 100 g: fat and casein.
    #[must_use]
    pub const fn curd(&self) -> f64 {
        self.fat + self.protein * CASEIN_OF_PROTEIN
    }
}

/// Ionic strength of milk, mol/kg (dairy texts, from memory); of milk in a drink as much less as there is less of it.
const IONIC_STRENGTH: f64 = 0.08;

/// Citrate of milk, mmol/l (dairy texts, from memory).
const CITRATE: f64 = 9.25;

/// Groups that take up acid: mmol to the litre of milk, pKa at no ionic strength, and the charge of the base.
///
/// An estimate, set so that milk buffers as whole milk was measured to: the most at pH 5.0 to 5.1, 27.7 mmol to the litre
/// and pH (sources in `tests/published/milk_and_acid.rs`). From pH 6.7 to 4.6 soluble phosphate takes up 4.0 meq/l,
/// colloidal phosphate 11.6, phosphoserine and histidine of casein 7.1, carboxyl of casein and whey protein, spread over
/// four, 14.6, and citrate 11.7.
const GROUPS: [(f64, f64, f64); 7] = [
    (10.4, 7.198, 2.0),
    (15.0, 5.307, 1.0),
    (9.0, 6.107, 1.0),
    (11.0, 3.607, 1.0),
    (12.0, 4.307, 1.0),
    (10.0, 5.007, 1.0),
    (4.5, 5.707, 1.0),
];

/// Milliequivalents of acid that a litre of milk takes up from [`FRESH_PH`] to a pH, by its groups.
#[must_use]
pub fn acid_taken_up(ph: f64) -> f64 {
    taken_up(ph, IONIC_STRENGTH)
}

fn taken_up(ph: f64, ionic: f64) -> f64 {
    let single = log_activity(ionic);
    // Half of a group is bound at pKa + log γ(base) − log γ(acid), and log γ goes with the square of the charge.
    let half = |pka: f64, charge: f64| pka + single * (charge * charge - (charge - 1.0) * (charge - 1.0));
    let bound = |ph: f64| {
        GROUPS.iter().map(|(mmol, pka, charge)| mmol / (1.0 + 10_f64.powf(ph - half(*pka, *charge)))).sum::<f64>()
    };
    let citrate = |ph: f64| CITRATE * protons_lost(Acid::Citric, ph, ionic).unwrap_or(0.0);
    bound(ph) - bound(FRESH_PH) + citrate(FRESH_PH) - citrate(ph)
}

/// Moles of protons that moles of acids, less the cations that go with them, give up at a pH in so much water of this
/// ionic strength: what is left for milk.
#[must_use]
pub fn acid_given_up(acids: &[(Acid, f64)], cations: f64, kg_of_water: f64, ionic: f64, ph: f64) -> f64 {
    let lost = |acid: &Acid| protons_lost(*acid, ph, ionic).unwrap_or(0.0);
    let given: f64 = acids.iter().map(|(acid, moles)| moles * lost(acid)).sum();
    given - cations - 10_f64.powf(-ph - log_activity(ionic)) * kg_of_water
}

/// Ionic strength of milk in a drink, mol/kg: that of its milk and of the salts that come with its acids.
#[must_use]
pub fn ionic_strength(milk: Volume, cations: f64, kg_of_water: f64) -> f64 {
    let ionic = (IONIC_STRENGTH * milk.ml() / 1000.0 + cations) / kg_of_water;
    if ionic.is_finite() { ionic.clamp(0.005, 0.5) } else { IONIC_STRENGTH }
}

/// The pH at which what acids give up is what so much milk takes up, when a litre takes up `meq_to_clot` down to
/// [`CASEIN_CLOTS_AT`]. At 25 °C, as in water: alcohol makes acids weaker, so above about 15 % vol a hint only.
#[must_use]
pub fn ph_with_milk(acids: &[(Acid, f64)], cations: f64, kg_of_water: f64, milk: Volume, meq_to_clot: f64) -> f64 {
    let ionic = ionic_strength(milk, cations, kg_of_water);
    let times = milk.ml() / 1e6 * meq_to_clot / taken_up(CASEIN_CLOTS_AT, ionic);
    // Both sides move one way with pH, so halving always closes in.
    let (mut low, mut high) = (0.0_f64, 8.0_f64);
    for _ in 0..32 {
        let ph = 0.5 * (low + high);
        if acid_given_up(acids, cations, kg_of_water, ionic, ph) < times * taken_up(ph, ionic) {
            low = ph;
        } else {
            high = ph;
        }
    }
    0.5 * (low + high)
}
