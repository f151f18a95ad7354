//! A spec made larger or smaller, and what rounding does to its balance.

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
fn to_step(value: f64, step: f64) -> f64 {
    let mut step = step;
    while value > 0.0 && value < 0.75 * step {
        step /= 5.0;
    }
    (value / step).round() * step
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::{Jigger, Mark};
    use crate::quantity::{Conventions, Unit};
    use crate::substance::energy::StandardDrink;
    use crate::substance::juice::Citrus;

    #[test]
    fn steps_never_reach_zero() {
        for (value, step, expected) in [(22.0, 5.0, 20.0), (3.2, 5.0, 3.0), (0.4, 1.0, 0.4), (0.04, 0.1, 0.04)] {
            assert!((to_step(value, step) - expected).abs() < 1e-9, "{value} to {step}");
        }
        assert!(to_step(1e-6, 5.0) > 0.0);
        // Nothing stays nothing; three quarters of a step are a step, and less goes by fifths of it.
        assert!(to_step(0.0, 5.0).abs() < 1e-12);
        assert!((to_step(3.75, 5.0) - 5.0).abs() < 1e-9 && (to_step(3.7, 5.0) - 4.0).abs() < 1e-9);
    }

    fn spec(amounts: &[Amount]) -> Spec {
        let line = |amount: &Amount| Line {
            amount: *amount,
            name: "moon dust".into(),
            taken: None,
            unread: None,
            said: String::new(),
        };
        Spec { lines: amounts.iter().map(line).collect() }
    }

    fn house(marks: &[f64]) -> House {
        let mark = |ml: &f64| Mark { label: String::new(), volume: Volume::from_ml(*ml).expect("a volume") };
        House {
            conventions: Conventions::default(),
            usual_unit: Unit::Millilitre,
            jiggers: marks.iter().map(|ml| Jigger { brim: mark(ml), lines: Vec::new() }).collect(),
            region: StandardDrink::default(),
            citrus: Citrus::default(),
        }
    }

    fn count(value: f64) -> Amount {
        Amount::Count(Ratio::from_value(value).expect("a count"))
    }

    fn grams(value: f64) -> Amount {
        Amount::Mass(Mass::from_g(value).expect("a mass"))
    }

    fn ml(value: f64) -> Amount {
        Amount::Volume(Volume::from_ml(value).expect("a volume"))
    }

    /// 20 leaves where 8 are asked for are 2.5 times, 300 g where 40 are 7.5, 90 ml where 60 are 1.5; 99.8201 g of what is
    /// taken to be as heavy as water are 100 ml, where 50 are asked for twice.
    #[test]
    fn what_there_is_of_a_line() {
        let spec = spec(&[count(8.0), grams(40.0), ml(60.0), ml(50.0)]);
        for (line, amount, times) in
            [(0, count(20.0), 2.5), (1, grams(300.0), 7.5), (2, ml(90.0), 1.5), (3, grams(99.820_1), 2.0)]
        {
            let found = factor(&spec, Target::Have { line, amount }).expect("a factor").value();
            assert!((found - times).abs() < 1e-9, "line {line}: {found}");
        }
        for (line, amount) in [(0, ml(90.0)), (2, count(3.0)), (4, ml(90.0))] {
            assert_eq!(factor(&spec, Target::Have { line, amount }), Err(ScaleProblem::NoSuchLine));
        }
        assert!(ScaleProblem::NoSuchLine.to_string().starts_with("Choose a line"));
        assert!(ScaleProblem::NothingMeasured.to_string().starts_with("Add a line"));
        assert!(ScaleProblem::TooMuch.to_string().starts_with("That is more"));
    }

    /// Of leaves alone there is no volume to bring to a total; twice as many there are.
    #[test]
    fn leaves_alone() {
        let (leaves, two) = (spec(&[count(8.0)]), Ratio::from_value(2.0).expect("a factor"));
        assert_eq!(factor(&leaves, Target::Factor(two)), Ok(two));
        assert_eq!(factor(&leaves, Target::Total(Volume::LITRE)), Err(ScaleProblem::NothingMeasured));
        assert_eq!(factor(&Spec::default(), Target::Factor(two)), Err(ScaleProblem::NothingMeasured));
    }

    /// Ten cubic metres are made, a drop more is not.
    #[test]
    fn ten_cubic_metres() {
        let spec = spec(&[ml(100.0)]);
        let of = |times| factor(&spec, Target::Factor(Ratio::from_value(times).expect("a factor")));
        assert!(of(1e5).is_ok());
        assert_eq!(of(1e5 + 0.1), Err(ScaleProblem::TooMuch));
    }

    /// Jiggers of 40 and 20 ml pour from three quarters of the smaller on, the dasher of 0.8 ml six dashes and a half; between
    /// them, and without jiggers above the dasher, it takes a jug. An empty mark is none.
    #[test]
    fn what_it_is_poured_with() {
        let of = |value: f64, marks: &[f64]| with(Volume::from_ml(value).expect("a volume"), &house(marks));
        let jiggers = With::Jiggers(Volume::whole_ml(20));
        for (value, expected) in
            [(60.0, jiggers), (15.0, jiggers), (14.9, With::Jug), (5.3, With::Jug), (5.2, With::Dasher)]
        {
            assert_eq!(of(value, &[40.0, 20.0, 0.0]), expected, "{value} ml");
        }
        assert_eq!((of(60.0, &[]), of(5.0, &[])), (With::Jug, With::Dasher));
    }

    /// Counts go to quarters, what is poured to 5 or 1 ml or the smaller jigger, from a jug to 1 ml, what is weighed to 0.1 g.
    #[test]
    fn rounded_as_it_is_measured() {
        let house = house(&[40.0, 20.0]);
        for (exact, rounding, expected) in [
            (count(2.3), Rounding::OneMl, count(2.25)),
            (ml(222.0), Rounding::FiveMl, ml(220.0)),
            (ml(222.4), Rounding::OneMl, ml(222.0)),
            (ml(222.4), Rounding::Jiggers, ml(220.0)),
            (ml(13.7), Rounding::Jiggers, ml(14.0)),
            (ml(2.5), Rounding::Jiggers, ml(2.4)),
            (grams(33.33), Rounding::OneMl, grams(33.3)),
            (ml(100.0), Rounding::TenthGram, grams(99.8)),
        ] {
            let plain = |amount: Amount| match amount {
                Amount::Volume(volume) => volume.ml(),
                Amount::Mass(mass) => mass.g(),
                Amount::Count(count) => count.value(),
            };
            let found = round(exact, rounding, &house, Density::WATER);
            assert_eq!(std::mem::discriminant(&found), std::mem::discriminant(&expected), "{exact:?}");
            assert!((plain(found) - plain(expected)).abs() < 1e-9, "{exact:?}: {found:?}");
        }
    }

    /// A density is a guess only where one was needed: to weigh what is poured, or pour what is weighed.
    #[test]
    fn what_is_guessed_is_said() {
        let house = house(&[]);
        let of = |amount, rounding| scaled(&spec(&[amount]), Ratio::ONE, rounding, &house)[0].density_assumed;
        assert!(!of(ml(60.0), Rounding::OneMl));
        assert!(of(ml(60.0), Rounding::TenthGram));
        assert!(of(grams(60.0), Rounding::OneMl));
        assert!(!of(count(8.0), Rounding::TenthGram));
    }

    #[test]
    fn too_much_is_refused() {
        let line = Line {
            amount: Amount::Volume(Volume::whole_ml(60)),
            unit: None,
            name: "gin".into(),
            taken: None,
            unread: None,
            said: String::new(),
        };
        let spec = Spec { lines: vec![line] };
        let huge = Target::Factor(Ratio::from_value(1e8).expect("a factor"));
        assert_eq!(factor(&spec, huge), Err(ScaleProblem::TooMuch));
        assert_eq!(factor(&Spec::default(), Target::Total(Volume::LITRE)), Err(ScaleProblem::NothingMeasured));
    }
}
