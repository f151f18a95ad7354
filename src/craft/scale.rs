//! A spec made larger or smaller, and what rounding does to its balance.

#[cfg(test)]
mod tests;

use std::fmt;

use super::in_unit::measured_in;
use super::pour;
use crate::book::{House, Line, Spec};
use crate::quantity::{Amount, Density, Mass, Ratio, Size, Temperature, Unit, Volume};

/// What a spec is scaled to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Target {
    /// A number of times.
    Factor(Ratio),
    /// A total volume of what is measured, before dilution.
    Total(Volume),
    /// What there is of one line.
    Have {
        /// Which line of the spec.
        line: usize,
        /// How much of it there is.
        amount: Amount,
    },
}

/// Why a spec cannot be scaled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScaleProblem {
    /// Nothing in it is poured or weighed.
    NothingMeasured,
    /// The line scaled by is not there, or is counted where an amount is had, or the reverse.
    NoSuchLine,
    /// The result is beyond what can be made.
    TooMuch,
}

impl fmt::Display for ScaleProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            ScaleProblem::NothingMeasured => "Add a line with an amount, like 60 ml gin.",
            ScaleProblem::NoSuchLine => "Choose a line that is poured or weighed.",
            ScaleProblem::TooMuch => "That is more than anybody can make. Check the number.",
        })
    }
}

/// The density a line is taken at, and whether that is a guess from water.
#[must_use]
pub fn density_of(line: &Line) -> (Density, bool) {
    let known = line.taken.and_then(|taken| pour::litre_of(&taken).density(Temperature::TWENTY).ok());
    known.map_or((Density::WATER, true), |density| (density, false))
}

/// What a line adds to the volume; nothing when it is counted.
#[must_use]
pub fn volume_of(amount: Amount, density: Density) -> Volume {
    match amount {
        Amount::Volume(volume) => volume,
        Amount::Mass(mass) => mass.volume_at(density),
        Amount::Count(_) => Volume::ZERO,
    }
}

/// The sum of what is poured and weighed, before dilution and contraction.
#[must_use]
pub fn total(spec: &Spec) -> Volume {
    spec.lines.iter().map(|line| volume_of(line.amount, density_of(line).0)).sum()
}

/// How many times the spec makes the target.
///
/// # Errors
/// [`ScaleProblem`].
pub fn factor(spec: &Spec, target: Target) -> Result<Ratio, ScaleProblem> {
    let whole = total(spec);
    let factor = match target {
        _ if spec.lines.is_empty() => return Err(ScaleProblem::NothingMeasured),
        Target::Factor(factor) => Some(factor),
        _ if whole <= Volume::ZERO => return Err(ScaleProblem::NothingMeasured),
        Target::Total(wanted) => wanted.over(whole),
        Target::Have { line, amount } => {
            let line = spec.lines.get(line).ok_or(ScaleProblem::NoSuchLine)?;
            match (amount, line.amount) {
                (Amount::Count(have), Amount::Count(per)) => Ratio::from_value(have.value() / per.value()).ok(),
                (Amount::Count(_), _) | (_, Amount::Count(_)) => return Err(ScaleProblem::NoSuchLine),
                (Amount::Mass(have), Amount::Mass(per)) => Ratio::from_value(have.g() / per.g()).ok(),
                (have, per) => {
                    let density = density_of(line).0;
                    volume_of(have, density).over(volume_of(per, density))
                }
            }
        }
    };
    factor.filter(|factor| (whole * *factor).ml() <= 1e7).ok_or(ScaleProblem::TooMuch)
}

/// What scaled amounts are rounded to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    /// The smallest measure of the jiggers owned; whole dashes below it.
    Jiggers,
    /// 5 ml.
    FiveMl,
    /// 1 ml.
    OneMl,
    /// Weighed to 0.1 g.
    TenthGram,
}

/// One line of a scaled spec.
#[derive(Clone, Debug, PartialEq)]
pub struct ScaledLine {
    /// Its name.
    pub name: String,
    /// The exact amount.
    pub exact: Amount,
    /// What to pour or weigh.
    pub rounded: Amount,
    /// The unit it is shown in.
    pub unit: Option<Unit>,
    /// How far rounding moves this line's share of the drink, as a fraction of the drink.
    pub drift: f64,
    /// Whether its density was not known and water's was taken where one was needed.
    pub density_assumed: bool,
    /// What was decided in reading it.
    pub said: String,
}

/// The spec `factor` times, exact and rounded.
#[must_use]
pub fn scaled(spec: &Spec, factor: Ratio, rounding: Rounding, house: &House) -> Vec<ScaledLine> {
    let mut lines: Vec<ScaledLine> = spec
        .lines
        .iter()
        .map(|line| {
            let (density, guessed) = density_of(line);
            let exact = line.amount.times(factor);
            let (rounded, unit) = round(exact, line.unit, rounding, house, density);
            let weighs = matches!(exact, Amount::Mass(_)) || matches!(rounded, Amount::Mass(_));
            ScaledLine {
                name: line.name.clone(),
                exact,
                rounded,
                unit,
                drift: 0.0,
                density_assumed: guessed && weighs,
                said: line.said.clone(),
            }
        })
        .collect();
    let volumes = |pick: fn(&ScaledLine) -> Amount| -> Vec<Volume> {
        let of = |(scaled, line): (&ScaledLine, &Line)| volume_of(pick(scaled), density_of(line).0);
        lines.iter().zip(&spec.lines).map(of).collect()
    };
    let (before, after) = (volumes(|line| line.exact), volumes(|line| line.rounded));
    let (all_before, all_after) = (before.iter().copied().sum(), after.iter().copied().sum());
    for (line, (exact, rounded)) in lines.iter_mut().zip(before.into_iter().zip(after)) {
        let share = |part: Volume, whole: Volume| part.over(whole).map_or(0.0, Ratio::value);
        line.drift = share(rounded, all_after) - share(exact, all_before);
    }
    lines
}

/// `exact`, written in `unit`, to something pourable, and the unit that is shown in. Counts round to quarters, nothing
/// rounds to zero; what is written in ounces or dashes stays so, unless it is weighed.
#[must_use]
pub fn round(
    exact: Amount,
    unit: Option<Unit>,
    rounding: Rounding,
    house: &House,
    density: Density,
) -> (Amount, Option<Unit>) {
    if let (Amount::Volume(volume), Some(written)) = (exact, unit)
        && let Some((unit, part)) = measured_in(volume, written, house)
        && let Size::Volume(one) = unit.size(&house.conventions)
        && match rounding {
            Rounding::OneMl | Rounding::FiveMl => true,
            Rounding::Jiggers => matches!(unit, Unit::Dash | Unit::Barspoon),
            Rounding::TenthGram => false,
        }
    {
        let count = to_step(volume.ml() / one.ml(), part);
        return (unit.times(count, &house.conventions).unwrap_or(exact), Some(unit));
    }
    let rounded = to_measure(exact, rounding, house, density);
    let stays = |unit: &Unit| match rounded {
        Amount::Mass(_) => unit.weighs(),
        _ => unit.is_metric_volume() && rounding != Rounding::Jiggers,
    };
    (rounded, unit.filter(stays))
}

/// `exact` to the step of a measure.
fn to_measure(exact: Amount, rounding: Rounding, house: &House, density: Density) -> Amount {
    let to_ml =
        |volume: Volume, step: f64| Amount::Volume(Volume::from_ml(to_step(volume.ml(), step)).unwrap_or(volume));
    match (exact, rounding) {
        (Amount::Count(count), _) => Amount::Count(Ratio::from_value(to_step(count.value(), 0.25)).unwrap_or(count)),
        (Amount::Mass(mass), _) => Amount::Mass(to_tenth_gram(mass)),
        (Amount::Volume(volume), Rounding::TenthGram) => Amount::Mass(to_tenth_gram(volume * density)),
        (Amount::Volume(volume), Rounding::FiveMl) => to_ml(volume, 5.0),
        (Amount::Volume(volume), Rounding::OneMl) => to_ml(volume, 1.0),
        (Amount::Volume(volume), Rounding::Jiggers) => to_ml(
            volume,
            match with(volume, house) {
                With::Jiggers(step) => step.ml(),
                With::Dasher => house.conventions.dash.ml(),
                With::Jug => 1.0,
            },
        ),
    }
}

/// What an amount is poured with when it is rounded to the jiggers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum With {
    /// The jiggers, in steps of their smallest measure.
    Jiggers(Volume),
    /// The dasher, for up to six dashes.
    Dasher,
    /// Something with millilitres on it.
    Jug,
}

/// What `exact` is poured with.
#[must_use]
pub fn with(exact: Volume, house: &House) -> With {
    let smallest = house.marks().map(|mark| mark.volume.ml()).filter(|ml| *ml > 0.0).fold(f64::INFINITY, f64::min);
    if exact.ml() >= 0.75 * smallest {
        Volume::from_ml(smallest).map_or(With::Jug, With::Jiggers)
    } else if exact.ml() <= 6.5 * house.conventions.dash.ml() {
        With::Dasher
    } else {
        With::Jug
    }
}

fn to_tenth_gram(mass: Mass) -> Mass {
    Mass::from_g(to_step(mass.g(), 0.1)).unwrap_or(mass)
}

/// The nearest multiple of `step`, or of a fifth of it (and so on) for values well below one step.
pub(super) fn to_step(value: f64, step: f64) -> f64 {
    let mut step = step;
    while value > 0.0 && value < 0.75 * step {
        step /= 5.0;
    }
    (value / step).round() * step
}
