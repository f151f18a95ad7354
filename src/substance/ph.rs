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
    /// More salt than acid.
    NotSour,
    /// A concentration is negative, infinite or not a number.
    NotAConcentration,
}

impl std::fmt::Display for PhProblem {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            PhProblem::TooConcentrated => "too concentrated for a pH to be worked out",
            PhProblem::NotSour => "more salt than acid",
            PhProblem::NotAConcentration => "not a possible concentration",
        })
    }
}

/// Strength by volume above which a pH worked out as in water is a hint only (a fraction; from the wine literature,
/// from memory).
pub const INDICATIVE_ABOVE: f64 = 0.15;

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
    let constants = Acid::ALL.map(|acid| Dissociation::of(acid, dissolved));
    let mut ionic = dissolved.cations.abs();
    // Where to look first, as ln [H]; each round starts from the last.
    let mut guess = -7.0;
    for _ in 0..40 {
        let activity = Activity::at(ionic);
        let solution = Solution::at(&constants, dissolved.cations, &activity);
        guess = solution.balanced(guess);
        let hydrogen = guess.exp();
        let next = solution.ionic_strength(hydrogen);
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

/// log γ of a single charge at an ionic strength, by Davies: −0.509 (√I / (1 + √I) − 0.3 I).
pub(super) fn log_activity(ionic_strength: f64) -> f64 {
    let root = ionic_strength.sqrt();
    -0.509 * (root / (1.0 + root) - 0.3 * ionic_strength)
}

/// Activity coefficients by charge at one ionic strength: log γ goes with the square of the charge.
struct Activity([f64; 4]);

impl Activity {
    fn at(ionic_strength: f64) -> Activity {
        let single = 10_f64.powf(log_activity(ionic_strength));
        Activity([1.0, single, single.powi(4), single.powi(9)])
    }

    fn coefficient(&self, charge: usize) -> f64 {
        self.0[charge.min(3)]
    }
}

/// An acid in a solution: how much, and its constants at zero ionic strength, cumulated.
#[derive(Clone, Copy)]
struct Dissociation {
    molal: f64,
    cumulative: [f64; 3],
}

impl Dissociation {
    fn of(acid: Acid, dissolved: &Dissolved<'_>) -> Dissociation {
        let molal = dissolved.acids.iter().filter(|(listed, _)| *listed == acid).map(|(_, molal)| molal).sum();
        let mut cumulative = [0.0; 3];
        let mut product = 1.0;
        for (constant, pka) in cumulative.iter_mut().zip(acid.constants().pka) {
            product *= 10_f64.powf(-pka);
            *constant = product;
        }
        Dissociation { molal, cumulative }
    }

    /// The same in terms of concentrations instead of activities: β γ₀ / (γ₁ⁿ γₙ).
    fn corrected(mut self, activity: &Activity) -> Dissociation {
        let mut hydrogens = 1.0;
        for (lost, constant) in self.cumulative.iter_mut().enumerate() {
            hydrogens *= activity.coefficient(1);
            *constant /= hydrogens * activity.coefficient(lost + 1);
        }
        self
    }

    /// Mean charge, and mean squared charge, of a mole at this concentration of hydrogen ions.
    fn moments(&self, hydrogen: f64) -> (f64, f64) {
        let one = self.cumulative[0] / hydrogen;
        let two = self.cumulative[1] / (hydrogen * hydrogen);
        let three = self.cumulative[2] / (hydrogen * hydrogen * hydrogen);
        let all = 1.0 + one + two + three;
        ((one + 2.0 * two + 3.0 * three) / all, (one + 4.0 * two + 9.0 * three) / all)
    }
}

/// A solution at one ionic strength.
struct Solution {
    acids: [Dissociation; Acid::ALL.len()],
    cations: f64,
    /// [H] [OH].
    water: f64,
}

impl Solution {
    fn at(acids: &[Dissociation; Acid::ALL.len()], cations: f64, activity: &Activity) -> Solution {
        let water = 10_f64.powf(-P_KW) / activity.coefficient(1).powi(2);
        Solution { acids: acids.map(|acid| acid.corrected(activity)), cations, water }
    }

    fn present(&self) -> impl Iterator<Item = &Dissociation> {
        self.acids.iter().filter(|acid| acid.molal > 0.0)
    }

    /// ln [H] at which charges balance: Newton's method within a bracket that always closes.
    fn balanced(&self, guess: f64) -> f64 {
        let (mut low, mut high) = (-35.0_f64, 3.0_f64);
        let mut x = guess.clamp(low, high);
        for _ in 0..60 {
            let (excess, slope) = self.excess_charge(x.exp());
            if excess > 0.0 {
                high = x;
            } else {
                low = x;
            }
            let newton = x - excess / slope;
            let next = if newton > low && newton < high { newton } else { 0.5 * (low + high) };
            if (next - x).abs() < 1e-10 {
                return next;
            }
            x = next;
        }
        x
    }

    /// Positive less negative charge, and its slope in ln [H]; both rise with [H].
    fn excess_charge(&self, hydrogen: f64) -> (f64, f64) {
        let hydroxide = self.water / hydrogen;
        let (mut anions, mut slope) = (0.0, hydrogen + hydroxide);
        for acid in self.present() {
            let (charge, square) = acid.moments(hydrogen);
            anions += acid.molal * charge;
            slope += acid.molal * (square - charge * charge);
        }
        (hydrogen + self.cations - hydroxide - anions, slope)
    }

    /// ½ Σ z² m over everything charged.
    fn ionic_strength(&self, hydrogen: f64) -> f64 {
        let anions: f64 = self.present().map(|acid| acid.molal * acid.moments(hydrogen).1).sum();
        0.5 * (hydrogen + self.water / hydrogen + self.cations.abs() + anions)
    }
}

/// The mean charge of an acid at a pH in water of this ionic strength: protons it has given up.
///
/// None for what is no ionic strength.
#[must_use]
pub fn protons_lost(acid: Acid, ph: f64, ionic_strength: f64) -> Option<f64> {
    let activity = Activity::at((ionic_strength >= 0.0).then_some(ionic_strength)?);
    let one = Dissociation::of(acid, &Dissolved { acids: &[(acid, 1.0)], cations: 0.0 }).corrected(&activity);
    Some(one.moments(10_f64.powf(-ph) / activity.coefficient(1)).0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn solution(acids: &[(Acid, f64)], cations: f64, ionic: f64) -> Solution {
        let dissolved = Dissolved { acids, cations };
        Solution::at(&Acid::ALL.map(|acid| Dissociation::of(acid, &dissolved)), cations, &Activity::at(ionic))
    }

    /// Wherever it begins, it ends where charges balance; the slope that leads there is that of the difference.
    #[test]
    fn charges_balance() {
        for (molal, cations) in [
            (1e-7, 0.0),
            (1e-7, 0.01),
            (1e-7, -1e-4),
            (1e-4, 0.0),
            (0.01, 0.015),
            (0.01, -0.01),
            (0.3, 0.0),
            (0.3, 0.1),
            (0.5, 0.5),
            (0.0, 0.0),
        ] {
            for acid in Acid::ALL {
                let solution = solution(&[(acid, molal), (Acid::Lactic, molal)], cations, 0.05);
                for guess in [-40.0, -16.0, -7.0, 2.0] {
                    let (excess, slope) = solution.excess_charge(solution.balanced(guess).exp());
                    assert!((excess / slope).abs() < 1e-9, "{acid:?} {molal} {cations} from {guess}");
                }
                for x in [-20.0_f64, -12.0, -6.0, -2.0] {
                    let excess = |x: f64| solution.excess_charge(x.exp()).0;
                    let (rise, slope) =
                        ((excess(x + 1e-4) - excess(x - 1e-4)) / 2e-4, solution.excess_charge(x.exp()).1);
                    assert!(
                        (rise - slope).abs() < 1e-6 * slope.abs() + 1e-11,
                        "{acid:?} {molal} at {x}: {rise} {slope}"
                    );
                }
            }
        }
    }

    /// By hand at an ionic strength of 0.1: log γ = −0.1070, so that [H] [OH] = 10^(−13.995 + 2 × 0.1070) = 1.656·10⁻¹⁴. With
    /// 10⁻⁹ of [H] that is 1.656·10⁻⁵ of [OH]; with 10⁻⁵ of a cation, ½ (10⁻⁹ + 1.656·10⁻⁵ + 10⁻⁵) = 1.328·10⁻⁵.
    #[test]
    fn water_in_salt() {
        let solution = solution(&[], 1e-5, 0.1);
        assert!((solution.water - 1.656e-14).abs() < 1e-17, "{}", solution.water);
        assert!((solution.ionic_strength(1e-9) - 1.328e-5).abs() < 1e-8, "{}", solution.ionic_strength(1e-9));
    }
}
