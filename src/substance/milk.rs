//! Milk: what is in it, and how much acid it takes up on its way to clotting.

use super::acid::Acid;
use super::ph::protons_lost;
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
/// An estimate, no published datum: the sum of its groups and the integral of its published buffer index agree within
/// 15 %.
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

const FAO: &str = "FAO Food Composition Tables for International Use, items 250 and 254";
const MEMORY: &str = "from memory, dairy texts";

/// The kinds of milk; those without a source are no milk of a cow, and how they clot is not known here.
pub const MILKS: &[Milk] = &[
    milk("whole", "Whole milk", [87.3, 3.5, 3.5, 5.0, 0.7], FAO),
    milk("semi", "Semi-skimmed milk", [89.1, 3.5, 1.7, 5.0, 0.7], MEMORY),
    milk("skim", "Skim milk", [90.7, 3.5, 0.1, 5.0, 0.7], MEMORY),
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

/// Ionic strength at which washes are reckoned, mol/kg: that of milk and acid together, about.
const IONIC_STRENGTH: f64 = 0.1;

/// Citrate of milk, mmol/l.
const CITRATE: f64 = 9.6;

/// Groups that take up acid: mmol to the litre of milk, and the pH in milk at which half of them have.
///
/// Amounts are set so that each takes up, from pH 6.7 to 4.6, what dairy texts give it (meq/l, from memory): soluble
/// phosphate 5, colloidal phosphate 20, phosphoserine and histidine of casein 9, its carboxyl 14, whey protein 3.
const GROUPS: [(f64, f64); 5] = [(11.4, 6.8), (26.0, 5.2), (11.3, 6.0), (36.6, 4.4), (6.8, 4.5)];

/// Milliequivalents of acid that a litre of milk takes up from [`FRESH_PH`] to a pH, by its groups.
#[must_use]
pub fn acid_taken_up(ph: f64) -> f64 {
    let bound = |ph: f64| GROUPS.iter().map(|(mmol, half)| mmol / (1.0 + 10_f64.powf(ph - half))).sum::<f64>();
    let citrate = |ph: f64| CITRATE * protons_lost(Acid::Citric, ph, IONIC_STRENGTH).unwrap_or(0.0);
    bound(ph) - bound(FRESH_PH) + citrate(FRESH_PH) - citrate(ph)
}

/// Moles of protons that moles of acids, less the cations that go with them, give up at a pH: what is left for milk.
#[must_use]
pub fn acid_given_up(acids: &[(Acid, f64)], cations: f64, kg_of_water: f64, ph: f64) -> f64 {
    let given: f64 =
        acids.iter().map(|(acid, moles)| moles * protons_lost(*acid, ph, IONIC_STRENGTH).unwrap_or(0.0)).sum();
    // [H+] as such, at its activity coefficient there, about 0.8.
    given - cations - 10_f64.powf(-ph) / 0.8 * kg_of_water
}

/// The pH at which what acids give up is what so much milk takes up, when a litre takes up `meq_to_clot` down to
/// [`CASEIN_CLOTS_AT`]. At 25 °C, as in water: alcohol makes acids weaker, so above about 15 % vol a hint only.
#[must_use]
pub fn ph_with_milk(acids: &[(Acid, f64)], cations: f64, kg_of_water: f64, milk: Volume, meq_to_clot: f64) -> f64 {
    let times = milk.ml() / 1e6 * meq_to_clot / acid_taken_up(CASEIN_CLOTS_AT);
    // Both sides move one way with pH, so halving always closes in.
    let (mut low, mut high) = (0.0_f64, 8.0_f64);
    for _ in 0..50 {
        let ph = 0.5 * (low + high);
        if acid_given_up(acids, cations, kg_of_water, ph) < times * acid_taken_up(ph) {
            low = ph;
        } else {
            high = ph;
        }
    }
    0.5 * (low + high)
}
