//! What a name in a spec says of its ingredient: "rum 63 %", "quince liqueur (22 % vol, sugar 250 g/l)",
//! "moon dust (as spirit)".

use super::number::{Decimal, is_digit, is_space, read_number};
use crate::book::{Measured, Taken, taken_as};
use crate::quantity::{Abv, Acidity, Brix, Mass};
use crate::substance::ethanol;

/// Most sugar and acid that a line may claim, g/l.
const MOST_SUGAR: f64 = 1_400.0;
const MOST_ACID: f64 = 400.0;

/// What a name is taken to be, with the figures it gives; none for a name that nothing fits.
///
/// "as" and another name, in brackets, says what it is like. A plain percentage is a strength where
/// there is alcohol, and part of the name elsewhere: cream at 35 % is not a spirit.
#[must_use]
pub fn read_taken(name: &str, decimal: Decimal, own: &[(String, Taken)]) -> Option<Taken> {
    let Taken { ingredient, measured: known } = taken_as(likened(name).unwrap_or(without_figures(name)), own)?;
    let Given { measured: mut given, is_bare_percent } = figures(name, decimal);
    if is_bare_percent && ingredient.percent <= 0.0 && known.strength.is_none() {
        given.strength = None;
    }
    let sugar_given = given.sugar_per_litre.is_some() || given.sweetness.is_some();
    let measured = Measured {
        strength: given.strength.or(known.strength),
        sugar_per_litre: if sugar_given { given.sugar_per_litre } else { known.sugar_per_litre },
        sweetness: if sugar_given { given.sweetness } else { known.sweetness },
        acid: given.acid.or(known.acid),
    };
    Some(Taken { ingredient, measured })
}

/// What stands after "(as ".
fn likened(name: &str) -> Option<&str> {
    let (_, inside) = name.split_once('(')?;
    inside.trim_start().strip_prefix("as ")?.split([')', ';']).next()
}

/// The name up to its brackets.
fn without_figures(name: &str) -> &str {
    match name.split('(').next() {
        Some(before) if !before.trim().is_empty() => before,
        _ => name,
    }
}

#[derive(Default)]
struct Given {
    measured: Measured,
    /// Whether the strength is a percentage that does not say of what.
    is_bare_percent: bool,
}

fn figures(name: &str, decimal: Decimal) -> Given {
    if !name.contains(is_digit) {
        return Given::default();
    }
    let parts = |c: char| is_space(c) || matches!(c, '(' | ')' | ';');
    let words: Vec<&str> =
        name.split(parts).map(|word| word.trim_end_matches([',', ':'])).filter(|word| !word.is_empty()).collect();
    let mut given = Given::default();
    for (at, word) in words.iter().enumerate() {
        let unit_at = word.find(|c| !(is_digit(c) || matches!(c, '.' | ','))).unwrap_or(word.len());
        let (number, unit) = word.split_at(unit_at);
        let Ok(Some(value)) = read_number(number, decimal) else { continue };
        let near = |place: Option<usize>| place.and_then(|place| words.get(place)).copied().unwrap_or_default();
        let (unit, after) = match unit {
            "" => (near(Some(at + 1)), near(Some(at + 2))),
            unit => (unit, near(Some(at + 1))),
        };
        give(&mut given, value, near(at.checked_sub(1)), unit, after);
    }
    given
}

/// Takes a number by the words around it.
fn give(given: &mut Given, value: f64, before: &str, unit: &str, after: &str) {
    let is = |word: &str, names: &[&str]| names.iter().any(|name| word.eq_ignore_ascii_case(name));
    let about = |noun: &str| is(before, &[noun]) || is(after, &[noun]);
    let measured = &mut given.measured;
    if is(unit, &["%"]) {
        measured.strength = Abv::from_fraction(value / 100.0).ok();
        given.is_bare_percent = !is(after, &["vol", "abv", "alc", "alcohol"]);
    } else if is(unit, &["abv"]) {
        measured.strength = Abv::from_fraction(value / 100.0).ok();
        given.is_bare_percent = false;
    } else if is(unit, &["proof"]) {
        measured.strength = ethanol::strength_of_us_proof(value).ok();
        given.is_bare_percent = false;
    } else if is(unit, &["°bx", "bx", "brix", "°brix"]) {
        measured.sweetness = Brix::from_degrees(value).ok().filter(|brix| brix.degrees() <= 85.0);
    } else if is(unit, &["g/l"]) && about("sugar") {
        measured.sugar_per_litre = Mass::from_g(value).ok().filter(|sugar| sugar.g() <= MOST_SUGAR);
    } else if is(unit, &["g/l"]) && about("acid") {
        measured.acid = Acidity::from_g_per_l(value).ok().filter(|acid| acid.g_per_l() <= MOST_ACID);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::named;

    #[track_caller]
    fn taken(name: &str) -> Taken {
        read_taken(name, Decimal::Point, &[]).expect(name)
    }

    #[test]
    fn a_name_may_carry_figures() {
        let rum = taken("rum 63 %");
        assert_eq!((rum.ingredient.key, rum.measured.strength), ("aged-rum", Abv::from_fraction(0.63).ok()));
        let rum = taken("rum (63% vol)");
        assert_eq!(rum.measured.strength, Abv::from_fraction(0.63).ok());
        let proof = taken("bourbon 100 proof").measured.strength.expect("a strength").fraction();
        assert!((proof - 0.5).abs() < 1e-3, "{proof}");
        let liqueur = taken("quince liqueur (22 % vol, sugar 250 g/l, 4 g/l acid)");
        assert_eq!(liqueur.ingredient.key, "liqueur");
        assert_eq!(liqueur.measured.strength, Abv::from_fraction(0.22).ok());
        assert_eq!(liqueur.measured.sugar_per_litre, Mass::from_g(250.0).ok());
        assert_eq!(liqueur.measured.acid, Acidity::from_g_per_l(4.0).ok());
        assert_eq!(taken("apple juice 12.5 °Bx").measured.sweetness, Brix::from_degrees(12.5).ok());
    }

    #[test]
    fn a_percentage_of_fat_or_salt_is_no_strength() {
        for name in ["cream 35 %", "saline 20 %", "lactic acid 80 %"] {
            assert!(taken(name).measured.is_nothing(), "{name}");
        }
        assert!(taken("plum shrub 5 % vol").measured.strength.is_some());
        assert!(taken("syrup 2:1").measured.is_nothing());
    }

    #[test]
    fn what_it_is_like_can_be_said() {
        assert_eq!(taken("moon dust (as spirit)").ingredient.key, "spirit-40");
        let dust = taken("moon dust (as orange liqueur; 30 %)");
        assert_eq!((dust.ingredient.key, dust.measured.strength), ("orange-liqueur", Abv::from_fraction(0.3).ok()));
        assert_eq!(read_taken("moon dust", Decimal::Point, &[]), None);
        assert_eq!(read_taken("(as nothing", Decimal::Point, &[]), None);
    }

    #[test]
    fn a_bar_s_own_goes_before_the_library() {
        let measured = Measured { strength: Abv::from_fraction(0.45).ok(), ..Measured::default() };
        let house = Taken { ingredient: named("gin").expect("gin"), measured };
        let own = [("gin".to_owned(), house), ("moon dust".to_owned(), house)];
        let read = |name| read_taken(name, Decimal::Point, &own).expect(name);
        assert_eq!(read("moon dust").measured.strength, measured.strength);
        assert_eq!(read("our gin").measured.strength, measured.strength);
        assert!(read("London dry gin").measured.is_nothing(), "the longer name is another's");
        assert_eq!(read("gin 57 %").measured.strength, Abv::from_fraction(0.57).ok());
        assert_eq!(read("gin cordial").ingredient.key, "cordial");
    }
}
