//! pH by charge balance.
//!
//! Species by cumulative dissociation constants, activity coefficients by Davies. At 25 °C, in water, up to
//! an ionic strength of 0.5 mol/kg. With alcohol in it the constants of the acids rise: above about 15 % vol
//! take the answer as indicative.

use super::acid::Acid;

/// Molal concentrations, mol per kg of water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dissolved<'a> {
    /// Acids.
    pub acids: &'a [(Acid, f64)],
    /// Strong cations, such as the potassium of juice, less strong anions; in equivalents.
    pub cations: f64,
}

/// Why there is no pH.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PhProblem {
    /// The solution is too salty for the activity model (ionic strength above 0.5).
    TooConcentrated,
    /// A concentration is negative, infinite or not a number.
    NotAConcentration,
}

impl std::fmt::Display for PhProblem {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            PhProblem::TooConcentrated => "too concentrated for a pH to be worked out",
            PhProblem::NotAConcentration => "not a possible concentration",
        })
    }
}

const P_KW: f64 = 13.995;
const MOST_IONIC_STRENGTH: f64 = 0.5;

/// The pH at which charges balance: [H] + cations = [OH] + Σ charge × [anion].
///
/// ```
/// use meniscus::substance::acid::Acid;
/// use meniscus::substance::ph::{Dissolved, ph};
///
/// let lemonade = Dissolved { acids: &[(Acid::Citric, 0.01)], cations: 0.0 };
/// assert!((ph(&lemonade).unwrap() - 2.62).abs() < 0.01);
/// ```
///
/// # Errors
/// [`PhProblem`].
pub fn ph(dissolved: &Dissolved<'_>) -> Result<f64, PhProblem> {
    let possible = |molal: f64| molal.is_finite() && molal >= 0.0;
    if !dissolved.acids.iter().all(|(_, molal)| possible(*molal)) || !dissolved.cations.is_finite() {
        return Err(PhProblem::NotAConcentration);
    }
    let mut ionic = dissolved.cations.abs();
    for _ in 0..40 {
        let activity = Activity::at(ionic);
        let hydrogen = balanced(dissolved, &activity);
        let next = ionic_strength(dissolved, hydrogen, &activity);
        if next > MOST_IONIC_STRENGTH {
            return Err(PhProblem::TooConcentrated);
        }
        let settled = (next - ionic).abs() < 1e-7;
        ionic = next;
        if settled {
            return Ok(-(hydrogen * activity.coefficient(1)).log10());
        }
    }
    Err(PhProblem::TooConcentrated)
}

/// Activity coefficients by charge at one ionic strength:
/// log γ = −0.509 z² (√I / (1 + √I) − 0.3 I).
struct Activity([f64; 4]);

impl Activity {
    fn at(ionic_strength: f64) -> Activity {
        let root = ionic_strength.sqrt();
        let davies = 0.509 * (root / (1.0 + root) - 0.3 * ionic_strength);
        Activity([0.0, 1.0, 4.0, 9.0].map(|z_squared: f64| 10_f64.powf(-davies * z_squared)))
    }

    fn coefficient(&self, charge: usize) -> f64 {
        self.0[charge.min(3)]
    }
}

/// The concentration of hydrogen ions at which the charges balance, by bisection on its logarithm.
fn balanced(dissolved: &Dissolved<'_>, activity: &Activity) -> f64 {
    let (mut acid, mut base) = (1.0_f64, -15.0_f64);
    for _ in 0..52 {
        let middle = 0.5 * (acid + base);
        if excess_charge(dissolved, 10_f64.powf(middle), activity) > 0.0 {
            acid = middle;
        } else {
            base = middle;
        }
    }
    10_f64.powf(0.5 * (acid + base))
}

fn excess_charge(dissolved: &Dissolved<'_>, hydrogen: f64, activity: &Activity) -> f64 {
    let anions: f64 = dissolved.acids.iter().map(|(acid, molal)| molal * moments(*acid, hydrogen, activity).0).sum();
    hydrogen + dissolved.cations - hydroxide(hydrogen, activity) - anions
}

fn hydroxide(hydrogen: f64, activity: &Activity) -> f64 {
    10_f64.powf(-P_KW) / (activity.coefficient(1).powi(2) * hydrogen)
}

/// ½ Σ z² m over everything charged.
fn ionic_strength(dissolved: &Dissolved<'_>, hydrogen: f64, activity: &Activity) -> f64 {
    let anions: f64 = dissolved.acids.iter().map(|(acid, molal)| molal * moments(*acid, hydrogen, activity).1).sum();
    0.5 * (hydrogen + hydroxide(hydrogen, activity) + dissolved.cations.abs() + anions)
}

/// Mean charge and mean squared charge of one mole of an acid at this concentration of hydrogen ions.
fn moments(acid: Acid, hydrogen: f64, activity: &Activity) -> (f64, f64) {
    let (mut species, mut all, mut charge, mut square) = (1.0, 1.0, 0.0, 0.0);
    for (lost, pka) in acid.constants().pka.iter().enumerate() {
        let correction = activity.coefficient(lost) / (activity.coefficient(1) * activity.coefficient(lost + 1));
        species *= 10_f64.powf(-pka) * correction / hydrogen;
        let z = (lost + 1) as f64;
        all += species;
        charge += z * species;
        square += z * z * species;
    }
    (charge / all, square / all)
}

/// The mean charge of an acid at a pH in water of this ionic strength: protons it has given up.
#[must_use]
pub fn protons_lost(acid: Acid, ph: f64, ionic_strength: f64) -> f64 {
    let activity = Activity::at(ionic_strength.max(0.0));
    moments(acid, 10_f64.powf(-ph) / activity.coefficient(1), &activity).0
}
