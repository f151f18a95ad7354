//! The ratio of a milk wash as people give it.

use std::fmt;

use super::number::{Decimal, read_number, replaced};
use crate::quantity::Ratio;

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

/// Reads milk : drink: "1:5", "1 to 5", "2 : 9" parts, "0.2" or "20 %" as milk per drink, or "5" as 1 : 5.
///
/// A bare number below 1 is milk per drink; from 1 up it is the drink to one part of milk.
///
/// # Errors
/// [`RatioProblem`], in words for the person who typed.
pub fn read_milk_ratio(text: &str, decimal: Decimal) -> Result<Option<MilkRatio>, RatioProblem> {
    let text = text.trim();
    if text.is_empty() || text.chars().count() > 60 {
        return if text.is_empty() { Ok(None) } else { Err(RatioProblem::Unreadable) };
    }
    let number = |side: &str| read_number(side, decimal).ok().flatten().ok_or(RatioProblem::Unreadable);
    let lower = replaced(&text.to_ascii_lowercase(), " to ", ":").replace('∶', ":");
    let (milk, drink) = if let Some((milk, drink)) = lower.split_once(':') {
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

    #[test]
    fn every_way_of_giving_it() {
        for (text, drink) in
            [("1:5", 5.0), ("1 : 5¾", 5.75), ("1 to 4", 4.0), ("2:9", 4.5), ("0.2", 5.0), ("20 %", 5.0), ("6", 6.0)]
        {
            let ratio = read_milk_ratio(text, Decimal::Point).expect(text).expect(text);
            assert!((ratio.value() - drink).abs() < 1e-12, "{text}: {ratio:?}");
        }
        assert_eq!(read_milk_ratio("", Decimal::Point), Ok(None));
        assert_eq!(read_milk_ratio("0:5", Decimal::Point), Err(RatioProblem::Zero));
        assert_eq!(read_milk_ratio("1:5000", Decimal::Point), Err(RatioProblem::Absurd));
        assert_eq!(read_milk_ratio("milk", Decimal::Point), Err(RatioProblem::Unreadable));
    }
}
