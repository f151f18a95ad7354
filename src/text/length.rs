//! Lengths as people type them: "45", "4.5 cm", "1¾ in".

use super::number::{Decimal, is_space, read_number};
use super::unread::Unread;

/// Reads a length, in mm; a number alone is that. Empty is none.
///
/// # Errors
/// A sentence for the person who typed.
pub fn read_length(text: &str, decimal: Decimal) -> Result<Option<f64>, Unread> {
    let words = || "Type a length, like 45 mm, 4.5 cm or 1¾ in.".to_owned();
    let text = text.trim();
    let bare = text.trim_end_matches(|c: char| c.is_ascii_alphabetic() || matches!(c, '"' | '″') || is_space(c));
    let mm = match text[bare.len()..].trim().to_ascii_lowercase().as_str() {
        "" | "mm" => 1.0,
        "cm" => 10.0,
        "m" => 1000.0,
        // NIST Handbook 44, Appendix C: exactly.
        "in" | "inch" | "inches" | "\"" | "″" => 25.4,
        _ => return Err(words().into()),
    };
    match read_number(bare, decimal) {
        Ok(Some(value)) => Ok(Some(value * mm)),
        Ok(None) if text.is_empty() => Ok(None),
        Ok(None) => Err(words().into()),
        Err(problem) => Err(Unread::number(&problem, text, words)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn millimetres_centimetres_and_inches() {
        for (text, mm) in [
            ("45", 45.0),
            ("45 mm", 45.0),
            ("4,5cm", 45.0),
            ("0.05 m", 50.0),
            ("2 in", 50.8),
            ("1¾ inch", 44.45),
            ("2 inches", 50.8),
            ("1 1/2\"", 38.1),
            ("2″", 50.8),
            ("2 IN", 50.8),
        ] {
            let read = read_length(text, Decimal::Point).expect(text).expect(text);
            assert!((read - mm).abs() < 1e-9, "{text}: {read}");
        }
        assert_eq!(read_length("  ", Decimal::Point), Ok(None));
        for text in ["mm", "wide", "4 ft", "-4", "2 x 3", "4 in cm", "🧊"] {
            let unread = read_length(text, Decimal::Point).expect_err(text);
            assert_eq!(unread.words, "Type a length, like 45 mm, 4.5 cm or 1¾ in.", "{text}");
        }
        let asked = read_length("1,250 mm", Decimal::Point).expect_err("two ways");
        assert_eq!(asked.fixes, ["1250 mm", "1.25 mm"]);
    }
}
