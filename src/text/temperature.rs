//! Temperatures as people type them: "4", "−18 °C", "68 F".

use super::number::{Decimal, is_space, read_number};
use super::show::{Figure, trimmed};
use super::unread::Unread;
use crate::quantity::Temperature;

/// Reads a temperature in °C, or in °F where it says so. Empty is none.
///
/// # Errors
/// A sentence for the person who typed.
pub fn read_temperature(text: &str, decimal: Decimal) -> Result<Option<Temperature>, Unread> {
    let words = || "Type a temperature, like 20 °C or 68 °F.".to_owned();
    let text = text.trim();
    let bare = text.trim_end_matches(|c| matches!(c, '°' | 'C' | 'F' | 'c' | 'f') || is_space(c));
    if bare.is_empty() {
        return if text.is_empty() { Ok(None) } else { Err(words().into()) };
    }
    let (sign, size) = match bare.strip_prefix(['-', '−', '–']) {
        Some(size) => (-1.0, size),
        None => (1.0, bare),
    };
    let value = match read_number(size, decimal) {
        Ok(Some(value)) => sign * value,
        Ok(None) => return Err(words().into()),
        Err(problem) => return Err(Unread::number(&problem, text, words)),
    };
    let celsius = if is_fahrenheit(text) { (value - 32.0) / 1.8 } else { value };
    Temperature::from_celsius(celsius).map(Some).map_err(|_| words().into())
}

/// Whether a text that is read as a temperature is in °F.
#[must_use]
pub fn is_fahrenheit(text: &str) -> bool {
    text.trim_end().ends_with(['F', 'f'])
}

/// Whether a text can only be a temperature: it says its degrees.
#[must_use]
pub fn says_degrees(text: &str) -> bool {
    (text.contains('°') || is_fahrenheit(text)) && read_temperature(text, Decimal::Point).is_ok()
}

/// A temperature on the scale that it was not typed on: "60 °C" of "140 °F", and "140 °F" of "60 °C".
#[must_use]
pub fn other_scale(at: Temperature, typed: &str, decimal: Decimal) -> Figure {
    let celsius = at.celsius();
    match is_fahrenheit(typed) {
        true => Figure::new(trimmed(celsius, decimal), "°C"),
        // NIST SP 811, appendix B.8: t/°C = (t/°F − 32) / 1.8.
        false => Figure::new(trimmed(celsius * 1.8 + 32.0, decimal), "°F"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_can_only_be_a_temperature() {
        for (text, is) in [
            ("140 °F", true),
            ("140F", true),
            ("60 °C", true),
            ("60°", true),
            ("2 C", false),
            ("60", false),
            ("12 °Bx", false),
            ("1 gulf", false),
            ("", false),
        ] {
            assert_eq!(says_degrees(text), is, "{text}");
        }
    }

    #[test]
    fn both_scales_and_below_zero() {
        for (text, celsius) in
            [("4", 4.0), ("−18", -18.0), ("-18 °C", -18.0), ("68 F", 20.0), ("0 °F", -17.778), ("20,5 c", 20.5)]
        {
            let read = read_temperature(text, Decimal::Comma).expect(text).expect(text);
            assert!((read.celsius() - celsius).abs() < 1e-3, "{text}: {read:?}");
        }
        assert_eq!(read_temperature(" ", Decimal::Point), Ok(None));
        for text in ["warm", "°", "--4", "1e9", "-", "9999"] {
            assert!(read_temperature(text, Decimal::Point).is_err(), "{text}");
        }
    }
}
