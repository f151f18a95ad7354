//! A drink made for a night: its water, what it takes of each line, and what what there is comes to.
//!
//! All by mass: what goes into the batch is what is in its bottles, to the last gram of ethanol, sugar and acid. Volumes
//! and strength follow from the mix and contract as it does.

#[cfg(test)]
mod tests;

use super::scale::{ScaleProblem, Target, factor, to_step};
use super::serves::ServesProblem;
use crate::book::Spec;
use crate::quantity::{Abv, Amount, Density, Mass, Ratio, Temperature, Volume};
use crate::substance::ethanol;
use crate::substance::mix::Mix;

/// Ten cubic metres, the most that any field takes.
const MOST_ML: f64 = 1e7;

/// Water that brings a drink down to a strength, by mass, with the contraction that comes of it; none where it is not
/// stronger, or where that is no strength at all.
#[must_use]
pub fn water_to(drink: &Mix, strength: Abv) -> Option<Mass> {
    if drink.ethanol <= Mass::ZERO || strength <= Abv::NONE || strength >= drink.strength() {
        return None;
    }
    // Its ethanol stays, so the volume that it must come to is known; a gram of water adds about a millilitre.
    let wanted = drink.ethanol.g() / ethanol::G_PER_ML / strength.fraction();
    let mut water = Mass::ZERO;
    for _ in 0..60 {
        let volume = (*drink + Mix::water(water)).volume(Temperature::TWENTY).ok()?;
        let short = wanted - volume.ml();
        water = Mass::from_g((water.g() + short * Density::WATER.g_per_ml()).max(0.0)).ok()?;
        if short.abs() < 1e-10 * wanted {
            break;
        }
    }
    Some(water)
}

/// How often a drink is made so that so much of it is left when the fraction `loss` is lost on the way.
///
/// # Errors
/// [`ServesProblem::TooMany`] above ten cubic metres, or when the loss takes all.
pub fn times_for(one: &Mix, wanted: Volume, loss: Ratio) -> Result<Ratio, ServesProblem> {
    let volume = one.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
    let kept = 1.0 - loss.value();
    let times = Ratio::from_value(wanted.ml() / volume.ml() / kept).map_err(|_| ServesProblem::TooMany)?;
    if kept <= 0.0 || (volume * times).ml() > MOST_ML { Err(ServesProblem::TooMany) } else { Ok(times) }
}

/// How far what there is goes.
#[derive(Clone, Debug, PartialEq)]
pub struct Enough {
    /// How often the spec can be made.
    pub times: Ratio,
    /// The line of the spec that runs out first.
    pub first: usize,
    /// What is left of the other lines that were named, by line.
    pub left: Vec<(usize, Amount)>,
}

/// How often a spec can be made from what there is of some of its lines; of a line named twice, of both together.
///
/// # Errors
/// [`ScaleProblem`]; also without a line.
pub fn enough(spec: &Spec, stock: &[(usize, Amount)]) -> Result<Enough, ScaleProblem> {
    let mut all: Vec<(usize, Ratio)> = Vec::new();
    for (line, amount) in stock {
        let times = factor(spec, Target::Have { line: *line, amount: *amount })?;
        match all.iter_mut().find(|(of, _)| of == line) {
            Some((_, sum)) => *sum = *sum + times,
            None => all.push((*line, times)),
        }
    }
    let least = all.iter().copied().min_by(|(_, a), (_, b)| a.value().total_cmp(&b.value()));
    let (first, times) = least.ok_or(ScaleProblem::NothingMeasured)?;
    let left = |(line, of): (usize, Ratio)| {
        let more = Ratio::from_value((of.value() - times.value()).max(0.0)).unwrap_or(Ratio::ZERO);
        (line, spec.lines[line].amount.times(more))
    };
    Ok(Enough { times, first, left: all.into_iter().filter(|(line, _)| *line != first).map(left).collect() })
}

/// What a batch is measured to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// 1 ml.
    OneMl,
    /// 5 ml.
    FiveMl,
    /// 10 ml.
    TenMl,
    /// 1 g.
    Gram,
}

/// What is put in of a line, to what can be measured; what `is_weighed` to a gram, or below a hundred to a tenth of one.
/// What is far less than a step is measured to a fifth of it, and so on, so that nothing comes to nothing.
#[must_use]
pub fn measured(exact: &Mix, is_weighed: bool, measure: Measure) -> Mix {
    let volume = exact.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO).ml();
    let grams = exact.mass().g();
    let (value, step) = match measure {
        _ if is_weighed => (grams, if grams < 100.0 { 0.1 } else { 1.0 }),
        Measure::Gram => (grams, 1.0),
        Measure::OneMl => (volume, 1.0),
        Measure::FiveMl => (volume, 5.0),
        Measure::TenMl => (volume, 10.0),
    };
    *exact * Ratio::from_value(to_step(value, step) / value).unwrap_or(Ratio::ONE)
}

/// What is left of a batch mid-shift: so many full bottles, and an open one by its weight, with the bottle and without.
#[must_use]
pub fn left(bottles: Ratio, full: Volume, open: Mass, empty: Mass, density: Density) -> Volume {
    let inside = Mass::from_g((open.g() - empty.g()).max(0.0)).unwrap_or(Mass::ZERO);
    full * bottles + inside.volume_at(density)
}
