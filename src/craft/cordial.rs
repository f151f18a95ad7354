//! Cordial from juice: to a target, and in place of fresh juice, citrus and syrup.

use super::sharpen::with_powders;
use crate::book::Ingredient;
use crate::quantity::{Acidity, Brix, Mass, Ratio, Temperature, Volume};
use crate::substance::juice::acid_correction;
use crate::substance::mix::Mix;
use crate::substance::sucrose;

/// Acid powders in proportion by weight.
pub type Parts<'a> = [(&'static Ingredient, f64)];

/// A cordial, made from a juice.
#[derive(Clone, Debug, PartialEq)]
pub struct Made {
    /// Sugar that goes in.
    pub sugar: Mass,
    /// Acid powders that go in.
    pub acids: Vec<(&'static Ingredient, Mass)>,
    /// What that makes.
    pub mix: Mix,
    /// Whether the juice is sweeter than the target by itself.
    pub is_too_sweet: bool,
    /// Whether the juice is sourer than the target by itself.
    pub is_too_sour: bool,
}

/// A juice with sugar and powders.
#[must_use]
pub fn made(juice: &Mix, sugar: Mass, acids: &Parts<'_>) -> Made {
    let acids: Vec<_> =
        acids.iter().map(|(powder, grams)| (*powder, Mass::from_g(*grams).unwrap_or(Mass::ZERO))).collect();
    let mut mix = with_powders(*juice, &acids);
    mix.sucrose = mix.sucrose + sugar;
    Made { sugar, acids, mix, is_too_sweet: false, is_too_sour: false }
}

/// Grams of citric acid that a gram of a blend of powders titrates as.
fn strength_of(parts: &Parts<'_>) -> f64 {
    let all: f64 = parts.iter().map(|(_, part)| part).sum();
    let each = |powder: &Ingredient| super::pour::standard(powder).acid_as_citric().g() / 1000.0;
    parts.iter().map(|(powder, part)| part / all * each(powder)).sum()
}

/// So many grams of a blend of powders.
fn blend(grams: f64, parts: &Parts<'_>) -> Vec<(&'static Ingredient, f64)> {
    let all: f64 = parts.iter().map(|(_, part)| part).sum();
    parts.iter().map(|(powder, part)| (*powder, grams * part / all)).collect()
}

/// Sugar and acid that bring a juice to what it is to read and to titrate in the volume it then has:
/// s += ((r + c) M − D) / (1 − r − c) and a = (TA V − A) / e, by turns until both stand; D is what is dissolved in M and c
/// the correction of the reading for acid. Where the juice has more by itself, none is added and it is said. None when
/// it does not settle: for what is no cordial.
#[must_use]
pub fn to_target(juice: &Mix, reads: Brix, acidity: Acidity, parts: &Parts<'_>) -> Option<Made> {
    let strength = strength_of(parts);
    if strength <= 0.0 {
        return None;
    }
    let (mut sugar, mut acid) = (0.0_f64, 0.0_f64);
    for _ in 0..200 {
        let now = made(juice, Mass::from_g(sugar).ok()?, &blend(acid, parts)).mix;
        let correction = acid_correction(100.0 * now.titratable().g() / now.mass().g());
        let b = (reads.degrees() + correction) / 100.0;
        if b >= 0.86 {
            return None;
        }
        let s = sugar + (b * now.mass().g() - now.dissolved().g()) / (1.0 - b);
        let volume = now.volume(Temperature::TWENTY).ok()?;
        let a = ((acidity * volume).g() - juice.titratable().g()) / strength;
        let settled =
            (s.max(0.0) - sugar).abs() < 1e-9 * (1.0 + sugar) && (a.max(0.0) - acid).abs() < 1e-9 * (1.0 + acid);
        (sugar, acid) = (s.max(0.0), a.max(0.0));
        if settled {
            let made = made(juice, Mass::from_g(sugar).ok()?, &blend(acid, parts));
            // Less than a speck too much is as asked for.
            return Some(Made { is_too_sweet: s < -1e-6, is_too_sour: a < -1e-6, ..made });
        }
    }
    None
}

/// What fills a cordial up to the volume of what it replaces.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fill {
    /// As much juice as the drink can take.
    Juice,
    /// As much juice as before, and water.
    Water,
}

/// A cordial of which one pour stands for juice, citrus and syrup.
#[derive(Clone, Debug, PartialEq)]
pub struct Swap {
    /// Clear juice in a pour.
    pub juice: Volume,
    /// Sugar in a pour.
    pub sugar: Mass,
    /// Acid powders in a pour.
    pub acids: Vec<(&'static Ingredient, Mass)>,
    /// Water in a pour.
    pub water: Mass,
    /// The pour, as what is in it.
    pub mix: Mix,
    /// The pour at 20 °C.
    pub pour: Volume,
    /// What it was to be.
    pub wanted: Volume,
    /// What could not be had.
    pub misses: Vec<Miss>,
}

/// What a cordial cannot match.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Miss {
    /// Juice, sugar and acid take more room than what they replace: the juice holds too much water.
    TooMuchWater,
    /// As much juice would be sweeter than the drink: less of it is used.
    JuiceTooSweet,
    /// As much juice would be sourer than the drink: less of it is used.
    JuiceTooSour,
    /// More sugar than dissolves in its water where it is kept, percent of both: water is added to this limit.
    Crystals(f64),
}

/// The juice of a swap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FromJuice {
    /// A litre of the clear juice.
    pub litre: Mix,
    /// How much of it the fresh drink has.
    pub before: Volume,
    /// What fills it up.
    pub fill: Fill,
}

/// The cordial that stands for `replaced` with the same sugar and the same titratable acid, in a pour of this size where
/// it can, or of the volume of what is replaced. Sugar and acid are met exactly; what gives way is first the juice, then
/// the volume. None where nothing is replaced.
#[must_use]
pub fn swap(
    replaced: &Mix,
    from: &FromJuice,
    pour: Option<Volume>,
    parts: &Parts<'_>,
    kept: Temperature,
) -> Option<Swap> {
    let FromJuice { litre, before, fill } = from;
    let wanted = pour.or(replaced.volume(Temperature::TWENTY).ok())?;
    let strength = strength_of(parts);
    if wanted.ml() <= 0.0 || strength <= 0.0 {
        return None;
    }
    let asked = match fill {
        Fill::Water => before.ml() / 1000.0,
        Fill::Juice => wanted.ml() / 1000.0,
    };
    let filling = Filling { replaced, litre, parts, strength, wanted };
    let (litres, miss) = filling.litres(asked, *fill)?;
    let made = filling.with(litres)?;
    let mut misses: Vec<Miss> = miss.into_iter().collect();
    if volume_of(&made) > wanted.ml() * (1.0 + 1e-9) {
        misses.push(Miss::TooMuchWater);
    }
    let mut water = fill_up(&made.mix, wanted)?;
    // Too sweet to stay dissolved: more water, and a larger pour.
    let limit = sucrose::solubility(kept).ok()?.degrees();
    let at_limit = made.mix.sugar().g() * (100.0 / limit - 1.0) - made.mix.water.g();
    if at_limit > water.g() {
        water = Mass::from_g(at_limit).ok()?;
        misses.push(Miss::Crystals(limit));
    }
    let mix = made.mix + Mix::water(water);
    Some(Swap {
        juice: Volume::from_ml(litres * 1000.0).ok()?,
        sugar: made.sugar,
        acids: made.acids,
        water,
        pour: mix.volume(Temperature::TWENTY).ok()?,
        mix,
        wanted,
        misses,
    })
}

/// How much juice goes into the place of what is replaced.
struct Filling<'a> {
    replaced: &'a Mix,
    /// A litre of the juice.
    litre: &'a Mix,
    parts: &'a Parts<'a>,
    /// Citric acid that a gram of the powders stands for.
    strength: f64,
    wanted: Volume,
}

fn volume_of(made: &Made) -> f64 {
    made.mix.volume(Temperature::TWENTY).map_or(f64::INFINITY, Volume::ml)
}

impl Filling<'_> {
    /// Sugar, acid powder and what they make with so many litres of juice.
    fn with(&self, litres: f64) -> Option<Made> {
        let juice = *self.litre * Ratio::from_value(litres).ok()?;
        let sugar = Mass::from_g((self.replaced.sugar().g() - juice.sugar().g()).max(0.0)).ok()?;
        let acid = (self.replaced.titratable().g() - juice.titratable().g()) / self.strength;
        Some(made(&juice, sugar, &blend(acid.max(0.0), self.parts)))
    }

    /// As many litres as are asked for, unless they bring more sugar or acid than is replaced, or more than there is room
    /// for; and what stood against more.
    fn litres(&self, asked: f64, fill: Fill) -> Option<(f64, Option<Miss>)> {
        let most_by = |have: f64, in_litre: f64| if in_litre > 0.0 { have / in_litre } else { f64::INFINITY };
        let most_sweet = most_by(self.replaced.sugar().g(), self.litre.sugar().g());
        let most_sour = most_by(self.replaced.titratable().g(), self.litre.titratable().g());
        let most = asked.min(most_sweet).min(most_sour);
        let too_much = if most_sweet <= most_sour { Miss::JuiceTooSweet } else { Miss::JuiceTooSour };
        if fill == Fill::Water {
            return Some((most, (most < asked).then_some(too_much)));
        }
        if volume_of(&self.with(most)?) <= self.wanted.ml() {
            // Sugar or acid, not room, is the limit: water fills the rest.
            return Some((most, (most < asked * 0.98).then_some(too_much)));
        }
        // The most that fits, by halving; more juice is always more room.
        let (mut low, mut high) = (0.0, most);
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if volume_of(&self.with(middle)?) > self.wanted.ml() { high = middle } else { low = middle }
        }
        Some((low, None))
    }
}

/// Water that fills a mix up to a volume; none where it is as large.
fn fill_up(mix: &Mix, to: Volume) -> Option<Mass> {
    let mut water = 0.0_f64;
    for _ in 0..60 {
        let now = *mix + Mix::water(Mass::from_g(water).ok()?);
        let short = to.ml() - now.volume(Temperature::TWENTY).ok()?.ml();
        water = (water + short).max(0.0);
        if short.abs() < 1e-10 {
            break;
        }
    }
    Mass::from_g(water).ok()
}
