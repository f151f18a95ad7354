//! Eggs that are counted, as what is poured of them.

use super::say;
use crate::book::{Ingredient, Taken, abroad, ingredient};
use crate::quantity::{Amount, Volume};
use crate::text::number::Decimal;
use crate::text::show::{fraction_of, trimmed};

/// Millilitres of one. Common practice, no source; a whole egg is its white and its yolk.
const EGGS: [(&str, f64); 3] = [("egg-white", 30.0), ("egg-yolk", 18.0), ("whole-egg", 48.0)];

/// Whether a line without a number says an egg, its white or its yolk, and nothing else.
pub(super) fn is_egg(line: &str) -> bool {
    let name = line.split(['(', ',']).next().unwrap_or_default().trim();
    let name = name.strip_prefix("fresh ").unwrap_or(name);
    let is_called = |egg: &Ingredient| {
        egg.name.eq_ignore_ascii_case(name) || egg.names.iter().any(|called| called.eq_ignore_ascii_case(name))
    };
    EGGS.iter().any(|(key, _)| abroad(name) == Some(*key) || ingredient(key).is_some_and(is_called))
}

/// A count of eggs as what they pour; any other amount as it is.
pub(in crate::text) fn poured(amount: Amount, taken: Option<&Taken>, name: &str, said: &mut String) -> Amount {
    let Amount::Count(count) = amount else { return amount };
    let each = taken.and_then(|taken| EGGS.iter().find(|(key, _)| *key == taken.ingredient.key));
    let Some(volume) = each.and_then(|(_, ml)| Volume::from_ml(ml * count.value()).ok()) else { return amount };
    let number = fraction_of(count.value()).unwrap_or_default();
    let ml = trimmed(volume.ml().round(), Decimal::Point);
    let line = format!("{number} {name}: about {ml} ml, rule of thumb");
    say(said, line.trim_start());
    Amount::Volume(volume)
}
