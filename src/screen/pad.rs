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
    /// The amount of a line of a spec: a volume, a weight, or a number of things.
    Line,
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
    /// How long, in seconds.
    Seconds,
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
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
    /// One more.
    Up,
    /// One less.
    Down,
    /// Takes the last thing away: a character, or a whole unit.
    Delete,
    /// Shows the other units in place of the digits, and the digits again.
    Turn,
    /// Goes on to the next number.
    Next,
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
            Key::Celsius => "°C".into(),
            Key::Fahrenheit => "°F".into(),
            Key::Up => "+1".into(),
            Key::Down => "−1".into(),
            Key::Delete => "⌫".into(),
            Key::Turn => "more".into(),
            Key::Next => "Next".into(),
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
            Key::Celsius => Some("°C, degrees Celsius"),
            Key::Fahrenheit => Some("°F, degrees Fahrenheit"),
            Key::Up => Some("+1, one more"),
            Key::Down => Some("−1, one less"),
            Key::Delete => Some("delete"),
            Key::Turn => Some("more units"),
            Key::Next => Some("Next number"),
            Key::Done => Some("Done, put the pad away"),
            _ => None,
        }
    }
}

/// Keys under the units: four rows of five.
pub const FACE: usize = 20;

/// What stands along the top of the pad: the usual units of a field, then "more" where it takes others; of a number
/// without one, one more and one less.
#[must_use]
pub fn units(keys: Keys) -> Vec<Key> {
    let usual = usual(keys);
    let units = usual.iter().map(|unit| Key::Unit(*unit));
    match keys {
        Keys::Count | Keys::Ratio | Keys::Seconds => vec![Key::Down, Key::Up],
        Keys::Percent => vec![Key::Percent, Key::Down, Key::Up],
        Keys::Celsius => vec![Key::Celsius, Key::Fahrenheit, Key::Down, Key::Up],
        Keys::Weight => units.collect(),
        _ => units.chain([Key::Turn]).collect(),
    }
}

/// The units that a field is usually typed in.
const fn usual(keys: Keys) -> &'static [Unit] {
    use Unit::{Barspoon, Centilitre, Dash, Gram, Kilogram, Litre, Millilitre, Ounce, OunceWeight, Pound};
    match keys {
        Keys::Pour => &[Millilitre, Centilitre, Ounce, Dash, Barspoon],
        Keys::Either | Keys::Line | Keys::Compared => &[Millilitre, Ounce, Dash, Barspoon, Gram],
        Keys::Batch => &[Millilitre, Centilitre, Litre, Ounce, Dash],
        Keys::Bulk => &[Millilitre, Litre, Ounce, Gram, Kilogram],
        Keys::Marks => &[Millilitre, Centilitre, Ounce, Barspoon],
        Keys::Weight => &[Gram, Kilogram, Pound, OunceWeight],
        Keys::Count | Keys::Ratio | Keys::Percent | Keys::Celsius | Keys::Seconds => &[],
    }
}

/// Units of volume, then of weight, as they stand under "more".
const UNITS: [Unit; 21] = [
    Unit::Millilitre,
    Unit::Centilitre,
    Unit::Decilitre,
    Unit::Litre,
    Unit::Drop,
    Unit::Dash,
    Unit::Barspoon,
    Unit::Teaspoon,
    Unit::Tablespoon,
    Unit::Ounce,
    Unit::UsFluidOunce,
    Unit::ImperialFluidOunce,
    Unit::Cup,
    Unit::Pint,
    Unit::ImperialPint,
    Unit::Quart,
    Unit::Gallon,
    Unit::Gram,
    Unit::Kilogram,
    Unit::OunceWeight,
    Unit::Pound,
];

/// The keys: digits, fractions, and beside the nought what the field needs.
#[must_use]
pub fn face(keys: Keys, decimal: Decimal) -> Vec<Key> {
    let (digit, fraction) = (Key::Char, Key::Fraction);
    let rows: [[Key; 5]; 4] = [
        [digit('7'), digit('8'), digit('9'), fraction('¼'), Key::Delete],
        [digit('4'), digit('5'), digit('6'), fraction('½'), fraction('⅓')],
        [digit('1'), digit('2'), digit('3'), fraction('¾'), fraction('⅔')],
        [digit(decimal.mark()), digit('0'), beside_nought(keys), Key::Next, Key::Done],
    ];
    rows.concat()
}

/// What stands in their place under "more": the other units, another amount in a sum or set against it.
#[must_use]
pub fn others(keys: Keys) -> Vec<Key> {
    let weighs = matches!(keys, Keys::Either | Keys::Line | Keys::Compared | Keys::Bulk);
    let is_other = |unit: &&Unit| (weighs || !unit.weighs()) && !usual(keys).contains(unit);
    let mut others: Vec<Key> = UNITS.iter().filter(is_other).map(|unit| Key::Unit(*unit)).collect();
    others.push(Key::Plus);
    if keys == Keys::Compared {
        others.push(Key::Colon);
    }
    if beside_nought(keys) != EIGHTH {
        others.push(EIGHTH);
    }
    others.extend([Key::Delete, Key::Done]);
    others
}

const EIGHTH: Key = Key::Fraction('⅛');

/// What stands beside the nought: what the field needs, else an eighth.
const fn beside_nought(keys: Keys) -> Key {
    match keys {
        Keys::Celsius => Key::Minus,
        Keys::Ratio | Keys::Seconds => Key::Colon,
        Keys::Marks => Key::Semicolon,
        Keys::Weight => Key::Plus,
        _ => EIGHTH,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_a_measure_needs_is_on_the_pad() {
        for (keys, all) in [
            (Keys::Pour, 17),
            (Keys::Marks, 17),
            (Keys::Batch, 17),
            (Keys::Either, 21),
            (Keys::Line, 21),
            (Keys::Compared, 21),
            (Keys::Bulk, 21),
        ] {
            let all_keys = units(keys).into_iter().chain(others(keys));
            let mut found: Vec<Key> = all_keys.filter(|key| matches!(key, Key::Unit(_))).collect();
            assert_eq!(found.len(), all, "{keys:?}");
            found.sort_by_key(|key| key.label());
            found.dedup();
            assert_eq!(found.len(), all, "{keys:?}");
            assert!(units(keys).len() <= 6 && others(keys).len() <= FACE, "{keys:?}");
        }
        assert_eq!(unit_typed("1 oz + 2 dash"), Some(Unit::Dash));
        assert_eq!(unit_typed("12"), None);
    }

    #[test]
    fn no_key_moves_but_the_one_beside_the_nought() {
        let pour = face(Keys::Pour, Decimal::Point);
        assert_eq!(pour.len(), FACE);
        for keys in [
            Keys::Weight,
            Keys::Celsius,
            Keys::Ratio,
            Keys::Marks,
            Keys::Count,
            Keys::Percent,
            Keys::Bulk,
            Keys::Seconds,
        ] {
            let other = face(keys, Decimal::Point);
            let moved = (0..FACE).filter(|at| pour[*at] != other[*at]);
            assert!(moved.eq(if beside_nought(keys) == EIGHTH { None } else { Some(17) }), "{keys:?}");
        }
    }
}
