//! Temperatures as people type them: "4", "−18 °C", "68 F".

use super::number::{Decimal, is_space, read_number};
use super::unread::Unread;
use crate::quantity::Temperature;

/// Reads a temperature in °C, or in °F where it says so. Empty is none.
///
/// # Errors
/// A sentence for the person who typed.
pub fn read_temperature(text: &str, decimal: Decimal) -> Result<Option<Temperature>, Unread> {
    let words = || "Type a temperature, like 20 °C or 68 °F.".to_owned();
    let text = text.trim();
    let is_fahrenheit = text.ends_with(['F', 'f']);
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
    let celsius = if is_fahrenheit { (value - 32.0) / 1.8 } else { value };
    Temperature::from_celsius(celsius).map(Some).map_err(|_| words().into())
}

#[cfg(test)]
mod tests {
    use super::*;

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
