//! What is in a liquid, by mass. Every tool about strength, sweetness or sourness computes from this.
//!
//! Pouring together adds masses, so ethanol, sugar, acid and water are conserved exactly; volumes are
//! derived and contract as real ones do.

use std::ops::{Add, Mul};

use super::acid::{Acid, ML_PER_GRAM_DISSOLVED};
use super::cold;
use super::ethanol;
use super::juice::acid_correction;
use super::ph::{Dissolved, PhProblem, ph};
use super::sucrose;
use crate::quantity::{Abv, Acidity, Brix, Density, Mass, MassFraction, OutOfRange, Ratio, Temperature, Volume};

/// What a gram of dissolved solids takes up, ml, as sugar does.
pub const ML_PER_GRAM_OF_SOLIDS: f64 = 0.62;

/// Masses of what matters in a drink.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Mix {
    /// Water.
    pub water: Mass,
    /// Ethanol.
    pub ethanol: Mass,
    /// Sucrose.
    pub sucrose: Mass,
    /// Glucose and fructose, of honey, fruit and inverted syrup.
    pub invert_sugar: Mass,
    /// Acids, in the order of [`Acid::ALL`].
    acids: [Mass; Acid::ALL.len()],
    /// Anything else dissolved or afloat: pectin, protein, salts, flavour.
    pub other: Mass,
    /// Milk that has been added, kept apart: it clots, and it must be declared.
    pub milk: Mass,
    /// What the other solids and the milk take up at 20 °C.
    pub room: Volume,
    /// Strong cations less strong anions, in millimoles of charge: the potassium of juice.
    pub cations: Ratio,
}

impl Mix {
    /// Water alone.
    #[must_use]
    pub fn water(mass: Mass) -> Mix {
        Mix { water: mass, ..Mix::default() }
    }

    /// A spirit: ethanol and water, of a volume and strength at 20 °C.
    #[must_use]
    pub fn spirit(volume: Volume, strength: Abv) -> Mix {
        let w = ethanol::mass_fraction(strength);
        let at_20 = Temperature::TWENTY;
        let mass = volume * ethanol::density(w, at_20).unwrap_or(Density::WATER);
        Mix { ethanol: mass * part(w), water: mass * rest(w), ..Mix::default() }
    }

    /// A syrup: sucrose and water, of a mass and sweetness.
    #[must_use]
    pub fn syrup(mass: Mass, sweetness: Brix) -> Mix {
        let w = MassFraction::from_fraction(sweetness.degrees() / 100.0).unwrap_or(MassFraction::NONE);
        Mix { sucrose: mass * part(w), water: mass * rest(w), ..Mix::default() }
    }

    /// An acid alone, anhydrous.
    #[must_use]
    pub fn acid(acid: Acid, mass: Mass) -> Mix {
        let mut mix = Mix::default();
        mix.acids[acid as usize] = mass;
        mix
    }

    /// With these acids in place of its own, in the order of [`Acid::ALL`].
    #[must_use]
    pub const fn with_acids(mut self, acids: [Mass; Acid::ALL.len()]) -> Mix {
        self.acids = acids;
        self
    }

    /// A litre with its acids in proportion until it titrates so high, its salts as they are; citric acid where it has
    /// none.
    #[must_use]
    pub fn with_acidity(mut self, in_a_litre: Acidity) -> Mix {
        let all = (in_a_litre * Volume::LITRE).g() + self.held_as_citric();
        let have = self.acid_as_citric().g();
        if have > 0.0 {
            let times = Ratio::from_value(all / have).unwrap_or(Ratio::ONE);
            self.acids = self.acids.map(|mass| mass * times);
        } else {
            self.acids[Acid::Citric as usize] = Mass::from_g(all).unwrap_or(Mass::ZERO);
        }
        self
    }

    /// All its acid, as the citric acid of as many equivalents: also what its salts have neutralised already.
    #[must_use]
    pub fn acid_as_citric(&self) -> Mass {
        let as_citric = |acid: Acid| acid.as_citric(self.mass_of(acid).g());
        Mass::from_g(Acid::ALL.into_iter().map(as_citric).sum()).unwrap_or(Mass::ZERO)
    }

    /// Of its acid, what its salts hold, in grams as citric.
    fn held_as_citric(&self) -> f64 {
        self.cations.value() / 1000.0 * Acid::Citric.equivalent_mass()
    }

    /// What a titration of it finds, as citric acid: its acid less what its salts hold.
    #[must_use]
    pub fn titratable(&self) -> Mass {
        Mass::from_g((self.acid_as_citric().g() - self.held_as_citric()).max(0.0)).unwrap_or(Mass::ZERO)
    }

    /// How much of an acid there is.
    #[must_use]
    pub const fn mass_of(&self, acid: Acid) -> Mass {
        self.acids[acid as usize]
    }

    /// All sugar.
    #[must_use]
    pub fn sugar(&self) -> Mass {
        self.sucrose + self.invert_sugar
    }

    /// All acids.
    #[must_use]
    pub fn acids(&self) -> Mass {
        self.acids.iter().copied().sum()
    }

    /// Everything.
    #[must_use]
    pub fn mass(&self) -> Mass {
        self.water + self.ethanol + self.sugar() + self.acids() + self.other + self.milk
    }

    /// The volume at a temperature.
    ///
    /// That of its ethanol and water together (OIML R 22), plus the room its sugar takes in its water alone
    /// (ICUMSA; below 0 °C its value there), plus acids at 0.60 ml to the gram and the room of other solids and milk. With
    /// sugar and no ethanol, or ethanol and no sugar, this is the published formula itself. For both at
    /// once we know no published data to set it against: the room of sugar is put at ±1 % of itself, which
    /// is ±0.1 % of the volume of a sweet liqueur.
    ///
    /// # Errors
    /// [`OutOfRange`] outside −20 to 40 °C.
    pub fn volume(&self, at: Temperature) -> Result<Volume, OutOfRange> {
        let solvent = self.water + self.ethanol;
        let base = ethanol::density(fraction(self.ethanol, solvent), at)?;
        let sugar = self.sugar();
        let sweetness = fraction(sugar, sugar + self.water).fraction();
        let rooms = sugar.g() * sucrose::ml_per_gram(sweetness, at.celsius())
            + self.acids().g() * ML_PER_GRAM_DISSOLVED
            + self.room.ml();
        Volume::from_ml(solvent.volume_at(base).ml() + rooms)
    }

    /// The density at a temperature; water's for nothing at all.
    ///
    /// # Errors
    /// As [`Mix::volume`].
    pub fn density(&self, at: Temperature) -> Result<Density, OutOfRange> {
        let volume = self.volume(at)?;
        if volume <= Volume::ZERO { Ok(Density::WATER) } else { Density::from_g_per_ml(self.mass().g() / volume.ml()) }
    }

    fn volume_at_20(&self) -> Volume {
        self.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO)
    }

    /// Strength by volume at 20 °C: its ethanol by itself, over the whole.
    #[must_use]
    pub fn strength(&self) -> Abv {
        let over = self.ethanol.g() / ethanol::G_PER_ML / self.volume_at_20().ml();
        Abv::from_fraction(over.min(1.0)).unwrap_or(Abv::NONE)
    }

    /// Sugar by mass of the whole. What a refractometer shows only in a syrup: see [`Mix::reads`].
    #[must_use]
    pub fn sweetness(&self) -> MassFraction {
        fraction(self.sugar(), self.mass())
    }

    /// Sugar in its sugar and water: what stays dissolved is measured by it.
    #[must_use]
    pub fn sugar_in_water(&self) -> MassFraction {
        fraction(self.sugar(), self.sugar() + self.water)
    }

    /// All that is dissolved and no alcohol: sugar, acid, and what else there is.
    #[must_use]
    pub fn dissolved(&self) -> Mass {
        self.sugar() + self.acids() + self.other
    }

    /// What a refractometer shows, °Bx, were there no alcohol: all that is dissolved, by mass, less the published
    /// correction for acid.
    #[must_use]
    pub fn shows(&self) -> f64 {
        let percent = |of: Mass| 100.0 * fraction(of, self.mass()).fraction();
        (percent(self.dissolved()) - acid_correction(percent(self.titratable()))).max(0.0)
    }

    /// What a refractometer shows. None with alcohol, which reads as sugar that is not there (10 % by mass as 4.5 °Bx), and
    /// with milk, which is too cloudy.
    #[must_use]
    pub fn reads(&self) -> Option<Brix> {
        let is_clear = self.milk <= Mass::ZERO && fraction(self.ethanol, self.mass()).fraction() <= 0.002;
        Brix::from_degrees(self.shows()).ok().filter(|_| is_clear && self.mass() > Mass::ZERO)
    }

    /// Grams of a mass to the litre of this mix at 20 °C.
    #[must_use]
    pub fn g_per_l(&self, mass: Mass) -> f64 {
        let volume = self.volume_at_20().ml();
        if volume > 0.0 { mass.g() / volume * 1000.0 } else { 0.0 }
    }

    /// Titratable acidity, as citric acid in a litre: what base neutralises, to pH 8.2.
    ///
    /// # Errors
    /// [`OutOfRange`] when it is more than a litre can hold.
    pub fn titratable_acidity(&self) -> Result<Acidity, OutOfRange> {
        Acidity::from_g_per_l(self.g_per_l(self.titratable()))
    }

    /// pH at 25 °C from its acids and cations in its water; indicative above about 15 % vol.
    ///
    /// # Errors
    /// [`PhProblem`]; also when it has more salt than acid, for then the salts we assume are wrong.
    pub fn ph(&self) -> Result<f64, PhProblem> {
        let equivalents = self.acid_as_citric().g() / Acid::Citric.equivalent_mass() * 1000.0;
        if self.cations.value() >= 0.9 * equivalents && self.cations > Ratio::ZERO {
            return Err(PhProblem::NotSour);
        }
        let kg_of_water = self.water.g() / 1000.0;
        let molal = Acid::ALL.map(|acid| (acid, self.mass_of(acid).g() / acid.constants().molar_mass / kg_of_water));
        ph(&Dissolved { acids: &molal, cations: self.cations.value() / 1000.0 / kg_of_water })
    }

    /// Where it begins to freeze: see [`cold::freezing_point`].
    ///
    /// # Errors
    /// [`OutOfRange`] beyond the tables.
    pub fn freezing_point(&self) -> Result<Temperature, OutOfRange> {
        let in_water = |mass: Mass| fraction(mass, mass + self.water);
        let as_sucrose = |mass: Mass, molar_mass: f64| mass.g() * cold::SUCROSE_MOLAR_MASS / molar_mass;
        let acids: f64 =
            Acid::ALL.into_iter().map(|acid| as_sucrose(self.mass_of(acid), acid.constants().molar_mass)).sum();
        let sweet = self.sucrose.g() + as_sucrose(self.invert_sugar, cold::HEXOSE_MOLAR_MASS) + acids;
        let solute = Mass::from_g(sweet).unwrap_or(Mass::ZERO);
        cold::freezing_point(in_water(self.ethanol), in_water(solute))
    }
}

fn part(w: MassFraction) -> Ratio {
    Ratio::from_value(w.fraction()).unwrap_or(Ratio::ZERO)
}

fn rest(w: MassFraction) -> Ratio {
    Ratio::from_value(1.0 - w.fraction()).unwrap_or(Ratio::ZERO)
}

/// One mass in another; none of it in nothing.
fn fraction(of: Mass, whole: Mass) -> MassFraction {
    MassFraction::from_fraction(of.g() / whole.g()).unwrap_or(MassFraction::NONE)
}

impl Add for Mix {
    type Output = Mix;

    /// Poured together.
    fn add(self, other: Mix) -> Mix {
        let mut acids = self.acids;
        for (mine, theirs) in acids.iter_mut().zip(other.acids) {
            *mine = *mine + theirs;
        }
        Mix {
            water: self.water + other.water,
            ethanol: self.ethanol + other.ethanol,
            sucrose: self.sucrose + other.sucrose,
            invert_sugar: self.invert_sugar + other.invert_sugar,
            acids,
            other: self.other + other.other,
            milk: self.milk + other.milk,
            room: self.room + other.room,
            cations: self.cations + other.cations,
        }
    }
}

impl Mul<Ratio> for Mix {
    type Output = Mix;

    /// This many times as much of everything.
    fn mul(self, ratio: Ratio) -> Mix {
        Mix {
            water: self.water * ratio,
            ethanol: self.ethanol * ratio,
            sucrose: self.sucrose * ratio,
            invert_sugar: self.invert_sugar * ratio,
            acids: self.acids.map(|mass| mass * ratio),
            other: self.other * ratio,
            milk: self.milk * ratio,
            room: self.room * ratio,
            cations: self.cations * ratio,
        }
    }
}

impl std::iter::Sum for Mix {
    fn sum<I: Iterator<Item = Mix>>(mixes: I) -> Mix {
        mixes.fold(Mix::default(), Add::add)
    }
}
