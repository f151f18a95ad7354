//! Ratios as people give them: of numbers, or of amounts; and that of a milk wash.

use std::fmt;

use super::amount::{Dimension, Reading, read_amount};
use super::number::{read_number, replaced};
use super::units::unit_of;
use crate::quantity::{Amount, Ratio};

/// The two sides of a text as numbers to be set against each other: of "1 oz : 5.75 oz" its millilitres, of "20 g : 100 ml"
/// grams and millilitres. A side without a unit takes the other's. None where there are not two sides, or no amounts.
#[must_use]
pub fn read_sides(text: &str, reading: &Reading<'_>) -> Option<[Amount; 2]> {
    let (left, right) = text.split_once([':', '∶'])?;
    let unit = |side: &str| unit_of(&side[side.find(|c: char| c.is_ascii_alphabetic())?..]);
    let side = |side: &str, other: &str| {
        let bare = unit(other).unwrap_or(reading.bare);
        read_amount(side, &Reading { bare, kind: Dimension::Either, ..*reading }).ok().flatten()
    };
    Some([side(left, right)?, side(right, left)?])
}

/// The sides of a ratio of amounts, poured in ml and weighed in g; none for one of numbers alone.
pub(super) fn amounts(text: &str, reading: &Reading<'_>) -> Option<(f64, f64)> {
    if !text.contains(|c: char| c.is_ascii_alphabetic()) {
        return None;
    }
    let size = |amount: Amount| match amount {
        Amount::Volume(volume) => volume.ml(),
        Amount::Mass(mass) => mass.g(),
        Amount::Count(count) => count.value(),
    };
    read_sides(text, reading).map(|[left, right]| (size(left), size(right)))
}

/// Millilitres of drink washed by one millilitre of milk.
pub type MilkRatio = Ratio;

/// Why a text is not a ratio of milk to drink.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RatioProblem {
    /// Not a ratio.
    Unreadable,
    /// A side of the ratio is zero.
    Zero,
    /// Outside what anybody washes with.
    Absurd,
}

impl fmt::Display for RatioProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            RatioProblem::Unreadable => "Type milk : drink, like 1:5, or ml of milk per ml of drink, like 0.2.",
            RatioProblem::Zero => "Neither side of the ratio can be zero.",
            RatioProblem::Absurd => "That ratio is outside 2:1 to 1:100. Milk comes first: 1:5.",
        })
    }
}

/// Reads milk : drink: "1:5", "1 to 5", "2 : 9" parts, "1 oz : 5.75 oz", "0.2" or "20 %" as milk per drink, or "5" as 1 : 5.
///
/// A bare number below 1 is milk per drink; from 1 up it is the drink to one part of milk.
///
/// # Errors
/// [`RatioProblem`], in words for the person who typed.
pub fn read_milk_ratio(text: &str, reading: &Reading<'_>) -> Result<Option<MilkRatio>, RatioProblem> {
    let text = text.trim();
    if text.is_empty() || text.chars().count() > 60 {
        return if text.is_empty() { Ok(None) } else { Err(RatioProblem::Unreadable) };
    }
    let number = |side: &str| read_number(side, reading.decimal).ok().flatten().ok_or(RatioProblem::Unreadable);
    let lower = replaced(&text.to_ascii_lowercase(), " to ", ":").replace('∶', ":");
    let (milk, drink) = if let Some(sides) = amounts(&lower, reading) {
        sides
    } else if let Some((milk, drink)) = lower.split_once(':') {
        (number(milk)?, number(drink)?)
    } else if let Some(percent) = lower.strip_suffix('%') {
        (number(percent)?, 100.0)
    } else {
        match number(&lower)? {
            per_drink if per_drink < 1.0 => (per_drink, 1.0),
            parts => (1.0, parts),
        }
    };
    if milk <= 0.0 || drink <= 0.0 {
        return Err(RatioProblem::Zero);
    }
    match Ratio::from_value(drink / milk) {
        Ok(ratio) if (0.5..=100.0).contains(&ratio.value()) => Ok(Some(ratio)),
        _ => Err(RatioProblem::Absurd),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Conventions, Unit};
    use crate::text::Decimal;

    fn read(text: &str) -> Result<Option<MilkRatio>, RatioProblem> {
        read_where(text, Dimension::Either)
    }

    fn read_where(text: &str, kind: Dimension) -> Result<Option<MilkRatio>, RatioProblem> {
        let conventions = Conventions::default();
        let reading =
            Reading { conventions: &conventions, decimal: Decimal::Point, bare: Unit::Millilitre, kind, own: &[] };
        read_milk_ratio(text, &reading)
    }

    #[test]
    fn every_way_of_giving_it() {
        for (text, drink) in [
            ("1:5", 5.0),
            ("1 : 5¾", 5.75),
            ("1 to 4", 4.0),
            ("2:9", 4.5),
            ("0.2", 5.0),
            ("20 %", 5.0),
            ("6", 6.0),
            ("1 oz : 5.75 oz", 5.75),
            ("1 oz to 5¾ oz", 5.75),
            ("1 : 5.75 oz", 5.75),
            ("200 ml : 1 l", 5.0),
            ("20 g : 100 ml", 5.0),
        ] {
            let ratio = read(text).expect(text).expect(text);
            assert!((ratio.value() - drink).abs() < 1e-12, "{text}: {ratio:?}");
        }
        // A side may be weighed where an amount would have to be poured.
        assert_eq!(read_where("20 g : 100 ml", Dimension::Volume), read("20 g : 100 ml"));
        assert_eq!(read(""), Ok(None));
        assert_eq!(read("0:5"), Err(RatioProblem::Zero));
        assert_eq!(read("1:5000"), Err(RatioProblem::Absurd));
        for text in ["milk", "1 oz : milk", "1 oz :", "oz : oz"] {
            assert_eq!(read(text), Err(RatioProblem::Unreadable), "{text}");
        }
    }
}
