//! How sweet a syrup is, as people give it: "2:1", "65 °Bx", "66.7".

use super::amount::Reading;
use super::number::{is_space, read_number, replaced};
use super::ratio::amounts;
use super::unread::Unread;
use crate::quantity::{Brix, Ratio};

/// How a sweetness was given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Sweetness {
    /// Parts of sugar to one of water.
    Parts(Ratio),
    /// Degrees Brix.
    Degrees(Brix),
}

/// Reads sugar : water, or °Brix below 85. Empty is none.
///
/// # Errors
/// A sentence for the person who typed.
pub fn read_sweetness(text: &str, reading: &Reading<'_>) -> Result<Option<Sweetness>, Unread> {
    let words = || "Type sugar : water, like 2:1, or °Brix from 1 to under 85, like 65.".to_owned();
    let typed = text;
    let text = replaced(&text.trim().to_ascii_lowercase(), " to ", ":").replace('∶', ":");
    if text.is_empty() {
        return Ok(None);
    }
    let number = |text: &str| match read_number(text, reading.decimal) {
        Ok(Some(value)) => Ok(value),
        Ok(None) => Err(Unread::from(words())),
        Err(problem) => Err(Unread::number(&problem, typed, words)),
    };
    let sides = match (amounts(&text, reading), text.split_once(':')) {
        (None, Some((sugar, water))) => Some((number(sugar)?, number(water)?)),
        (sides, _) => sides,
    };
    if let Some((sugar, water)) = sides {
        // 85 °Bx is 5.67 to 1, and beyond what any formula here holds for.
        return match Ratio::from_value(sugar / water) {
            Ok(parts) if sugar > 0.0 && (0.01..=5.66).contains(&parts.value()) => Ok(Some(Sweetness::Parts(parts))),
            _ => Err(words().into()),
        };
    }
    let bare = text.trim_end_matches(|c: char| c.is_ascii_alphabetic() || matches!(c, '°' | '%') || is_space(c));
    match Brix::from_degrees(number(bare)?) {
        Ok(brix) if (1.0..85.0).contains(&brix.degrees()) => Ok(Some(Sweetness::Degrees(brix))),
        _ => Err(words().into()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Conventions, Unit};
    use crate::text::{Decimal, Dimension};

    fn read(text: &str, decimal: Decimal) -> Result<Option<Sweetness>, Unread> {
        let conventions = Conventions::default();
        let reading =
            Reading { conventions: &conventions, decimal, bare: Unit::Gram, kind: Dimension::Either, own: &[] };
        read_sweetness(text, &reading)
    }

    #[test]
    fn ratios_and_degrees() {
        let parts = |value| Ok(Some(Sweetness::Parts(Ratio::from_value(value).expect("a ratio"))));
        let degrees = |value| Ok(Some(Sweetness::Degrees(Brix::from_degrees(value).expect("degrees"))));
        for (text, expected) in [
            ("2:1", parts(2.0)),
            ("1 : 1", parts(1.0)),
            ("3 to 2", parts(1.5)),
            ("500 g : 250 g", parts(2.0)),
            ("1 kg : 500 ml", parts(2.0)),
            ("2 cups : 1 cup", parts(2.0)),
            ("65", degrees(65.0)),
            ("66,7 °Bx", degrees(66.7)),
            ("50 %", degrees(50.0)),
            ("", Ok(None)),
        ] {
            assert_eq!(read(text, Decimal::Comma), expected, "{text}");
        }
        for text in ["sweet", "2:0", "0:1", "90", "9:1", ":", "2:"] {
            assert!(read(text, Decimal::Point).is_err(), "{text}");
        }
    }
}
