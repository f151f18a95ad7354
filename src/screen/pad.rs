//! The pad: which keys a field gets, and what a key does to its text.

mod bare;
mod press;

pub use bare::with_unit_of;
pub use press::{Entry, press, unit_typed};

use crate::quantity::Unit;
use crate::text::{Decimal, typed};

/// What a field takes, and so which keys it gets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keys {
    /// A volume poured in service.
    Pour,
    /// A volume, large.
    Batch,
    /// A volume or a weight.
    Either,
    /// A volume or a weight, or two of them set against each other.
    Compared,
    /// A volume or a weight, large.
    Bulk,
    /// A weight.
    Weight,
    /// A number of things.
    Count,
    /// A percentage.
    Percent,
    /// Milk : drink.
    Ratio,
    /// Several measures.
    Marks,
    /// A temperature.
    Celsius,
}

/// One key.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Key {
    /// A digit or the decimal mark.
    Char(char),
    /// A fraction with a character of its own.
    Fraction(char),
    /// A unit.
    Unit(Unit),
    /// Another amount in a sum.
    Plus,
    /// Between the sides of a ratio.
    Colon,
    /// Between measures of a list.
    Semicolon,
    /// The percent sign.
    Percent,
    /// Below zero, or above again.
    Minus,
    /// Degrees Fahrenheit.
    Fahrenheit,
    /// One more.
    Up,
    /// One less.
    Down,
    /// Takes the last thing away: a character, or a whole unit.
    Delete,
    /// Turns the pad over, to the other units and fractions and back.
    Turn,
    /// Puts the pad away.
    Done,
}

impl Key {
    /// What stands on it.
    #[must_use]
    pub fn label(self) -> String {
        match self {
            Key::Char(c) | Key::Fraction(c) => c.to_string(),
            Key::Unit(Unit::OunceWeight) => "oz wt".into(),
            Key::Unit(unit) => typed(unit).into(),
            Key::Plus => "+".into(),
            Key::Colon => ":".into(),
            Key::Semicolon => ";".into(),
            Key::Percent => "%".into(),
            Key::Minus => "−".into(),
            Key::Fahrenheit => "°F".into(),
            Key::Up => "+1".into(),
            Key::Down => "−1".into(),
            Key::Delete => "⌫".into(),
            Key::Turn => "⋯".into(),
            Key::Done => "Done".into(),
        }
    }

    /// What it is called where the label alone would not be understood when read out.
    #[must_use]
    pub const fn spoken(self) -> Option<&'static str> {
        match self {
            Key::Char('.' | ',') => Some("decimal mark"),
            Key::Plus => Some("plus another amount"),
            Key::Colon => Some("to"),
            Key::Semicolon => Some("and another measure"),
            Key::Minus => Some("below zero"),
            Key::Fahrenheit => Some("degrees Fahrenheit"),
            Key::Up => Some("one more"),
            Key::Down => Some("one less"),
            Key::Delete => Some("delete"),
            Key::Turn => Some("other units and fractions"),
            Key::Done => Some("put the pad away"),
            _ => None,
        }
    }
}

/// Keys on one face of the pad: four rows of five.
pub const FACE: usize = 20;

/// The units on the front of the pad.
fn front_units(keys: Keys) -> [Key; 4] {
    let unit = Key::Unit;
    match keys {
        Keys::Pour | Keys::Either | Keys::Compared => {
            [unit(Unit::Ounce), unit(Unit::Millilitre), unit(Unit::Dash), Key::Turn]
        }
        Keys::Batch => [unit(Unit::Ounce), unit(Unit::Millilitre), unit(Unit::Litre), Key::Turn],
        Keys::Bulk => [unit(Unit::Millilitre), unit(Unit::Litre), unit(Unit::Gram), Key::Turn],
        Keys::Marks => [unit(Unit::Ounce), unit(Unit::Millilitre), Key::Semicolon, Key::Turn],
        Keys::Weight => [unit(Unit::Gram), unit(Unit::Kilogram), unit(Unit::Pound), unit(Unit::OunceWeight)],
        Keys::Count => [Key::Up, Key::Down, Key::Fraction('⅔'), Key::Fraction('⅓')],
        Keys::Percent => [Key::Up, Key::Down, Key::Percent, Key::Fraction('⅓')],
        Keys::Celsius => [Key::Up, Key::Down, Key::Fahrenheit, Key::Minus],
        Keys::Ratio => [Key::Colon, Key::Up, Key::Down, Key::Fraction('⅓')],
    }
}

/// The front of the pad: digits, quarters, the usual units.
#[must_use]
pub fn front(keys: Keys, decimal: Decimal) -> [Key; FACE] {
    let [first, second, third, fourth] = front_units(keys);
    let digit = Key::Char;
    [
        digit('7'),
        digit('8'),
        digit('9'),
        Key::Fraction('¼'),
        Key::Delete,
        digit('4'),
        digit('5'),
        digit('6'),
        Key::Fraction('½'),
        first,
        digit('1'),
        digit('2'),
        digit('3'),
        Key::Fraction('¾'),
        second,
        digit(decimal.mark()),
        digit('0'),
        fourth,
        third,
        Key::Done,
    ]
}

/// The back of the pad: other fractions, sums, and every unit not on the front.
#[must_use]
pub fn back(keys: Keys) -> [Key; FACE] {
    let last_four = match keys {
        Keys::Either | Keys::Compared => [Unit::Gram, Unit::Kilogram, Unit::OunceWeight, Unit::Pound],
        Keys::Bulk => [Unit::Dash, Unit::Kilogram, Unit::OunceWeight, Unit::Pound],
        _ => [Unit::Decilitre, Unit::Drop, Unit::UsFluidOunce, Unit::ImperialPint],
    };
    let second = match keys {
        Keys::Batch => Unit::Dash,
        Keys::Bulk => Unit::Ounce,
        _ => Unit::Litre,
    };
    let [first, other, third, fourth] = last_four.map(Key::Unit);
    let unit = Key::Unit;
    [
        Key::Fraction('⅛'),
        Key::Fraction('⅓'),
        Key::Fraction('⅔'),
        Key::Plus,
        if keys == Keys::Compared { Key::Colon } else { Key::Delete },
        unit(Unit::Centilitre),
        unit(second),
        unit(Unit::Barspoon),
        unit(Unit::Teaspoon),
        unit(Unit::Tablespoon),
        unit(Unit::ImperialFluidOunce),
        unit(Unit::Cup),
        unit(Unit::Pint),
        unit(Unit::Quart),
        unit(Unit::Gallon),
        first,
        other,
        Key::Turn,
        third,
        fourth,
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_a_measure_needs_is_on_the_pad() {
        for keys in [Keys::Pour, Keys::Batch, Keys::Either, Keys::Compared, Keys::Bulk] {
            let mut units: Vec<Key> = front(keys, Decimal::Point)
                .into_iter()
                .chain(back(keys))
                .filter(|key| matches!(key, Key::Unit(_)))
                .collect();
            assert_eq!(units.len(), 17, "{keys:?}");
            units.sort_by_key(|key| key.label());
            units.dedup();
            assert_eq!(units.len(), 17, "{keys:?}");
        }
        assert_eq!(unit_typed("1 oz + 2 dash"), Some(Unit::Dash));
        assert_eq!(unit_typed("12"), None);
    }
}
