//! Juice that is written as so many fruits.

use super::measured::{Measured, measured_at, shown};
use super::written::undressed;
use super::{LineProblem, holds_amount, named};
use crate::book::{Line, abroad};
use crate::quantity::{Amount, Volume};
use crate::substance::fruit::{FRUIT, Fruit};
use crate::text::amount::{AmountProblem, Reading};
use crate::text::show::trimmed;

/// Grams of a millilitre of juice, for fruit that is counted. Common practice, no source.
const JUICE: f64 = 1.03;

/// The juice of so many fruits: "juice of 1 lime", "½ lime, juiced". None where a line says no such thing.
pub(super) fn juice_of(line: &str, reading: &Reading<'_>) -> Option<Result<Line, LineProblem>> {
    const BEFORE: [&str; 8] =
        ["juice of ", "juice from ", "the juice of ", "saft von ", "jus de ", "zumo de ", "jugo de ", "succo di "];
    const BEHIND: [&str; 8] = [
        ", juiced",
        ", squeezed",
        ", freshly squeezed",
        ", juice only",
        " (juice)",
        " (juiced)",
        ", juice",
        "'s juice",
    ];
    let begins = |words: &&&str| line.get(..words.len()).is_some_and(|begin| begin.eq_ignore_ascii_case(words));
    let without = |words: &&str| {
        let (rest, end) = line.split_at_checked(line.len().checked_sub(words.len())?)?;
        end.eq_ignore_ascii_case(words).then_some(rest)
    };
    let counted = match BEFORE.iter().find(begins) {
        Some(words) => undressed(&line[words.len()..]),
        None => BEHIND.iter().find_map(without)?.into(),
    };
    let Measured { number, amount: None, rest, .. } = measured_at(&counted, reading).ok()? else { return None };
    let name = rest.trim();
    let name = name.strip_prefix("fresh ").unwrap_or(name);
    let is_called = |called: &str| called.eq_ignore_ascii_case(name);
    let is_of =
        |key: &str, fruit: &Fruit| key == fruit.ingredient && fruit.ingredient == format!("{}-juice", fruit.key);
    let key = abroad(name);
    let fruit = FRUIT
        .iter()
        .find(|fruit| is_called(fruit.name) || is_called(fruit.plural) || key.is_some_and(|key| is_of(key, fruit)));
    let fruit = match fruit {
        Some(fruit) => fruit,
        // Of what is squeezed it is asked how much, of anything else it may be a garnish.
        None if BEFORE.iter().any(|words| begins(&words)) && !holds_amount(name) => {
            return Some(Err(LineProblem::Unclear));
        }
        None => return None,
    };
    let juice = |volume: Volume| {
        let ml = trimmed(volume.ml().round(), reading.decimal);
        let said = format!("{} {name}: about {ml} ml, rule of thumb", shown(number, reading));
        named(Amount::Volume(volume), &format!("{} juice", fruit.name), said, reading)
    };
    Some(match Volume::from_ml(number * fruit.each * fruit.juice[1] / JUICE) {
        Err(problem) => Err(AmountProblem::from(problem).into()),
        Ok(volume) if volume <= Volume::ZERO => Err(AmountProblem::Zero.into()),
        Ok(volume) => juice(volume),
    })
}
