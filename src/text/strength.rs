//! Strengths as people type them: "40", "40 % vol", "114 proof".

use super::number::{Decimal, is_space, read_number};
use super::unread::Unread;
use crate::quantity::Abv;
use crate::substance::ethanol;

/// Reads a strength: % by volume at 20 °C, or US proof where it says so. Empty is none.
///
/// # Errors
/// A sentence for the person who typed.
pub fn read_strength(text: &str, decimal: Decimal) -> Result<Option<Abv>, Unread> {
    let words = || "Type a strength from 0 to 100 % vol, like 57 or 114 proof.".to_owned();
    let lower = text.trim().to_ascii_lowercase();
    let number = lower.trim_end_matches(|c: char| c.is_ascii_alphabetic() || matches!(c, '%' | '°') || is_space(c));
    let value = match read_number(number, decimal) {
        Ok(Some(value)) => value,
        Ok(None) if lower.is_empty() => return Ok(None),
        Ok(None) => return Err(words().into()),
        Err(problem) => return Err(Unread::number(&problem, text, words)),
    };
    let unit = lower[number.len()..].trim();
    let strength = match unit {
        "" | "%" | "% vol" | "%vol" | "% abv" | "abv" | "vol" => Abv::from_fraction(value / 100.0),
        "proof" | "° proof" | "°proof" | "us proof" => ethanol::strength_of_us_proof(value),
        _ => return Err(words().into()),
    };
    strength.map(Some).map_err(|_| words().into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn percent_and_proof() {
        for (text, percent) in [("40", 40.0), ("57,1 %", 57.1), ("40 % vol", 40.0), ("114 proof", 57.0), ("0", 0.0)] {
            let read = read_strength(text, Decimal::Comma).expect(text).expect(text).fraction() * 100.0;
            assert!((read - percent).abs() < 0.1, "{text}: {read}");
        }
        assert_eq!(read_strength("", Decimal::Point), Ok(None));
        for text in ["101", "300 proof", "strong", "40 g", "-5", "%"] {
            assert!(read_strength(text, Decimal::Point).is_err(), "{text}");
        }
    }
}
