//! Times in the steps of a spec: "Rest 45 min", "Stir 30 s", "Filter, 1 h 30 min"; and in a field: "30", "1:30".

use super::number::{Decimal, NumberProblem, is_digit, is_space, read_number};
use super::unread::Unread;

/// Seconds of a field: a number alone, minutes and seconds as "1:30", or as a step says it. Empty is none.
///
/// # Errors
/// A sentence for the person who typed.
pub fn read_seconds(text: &str, decimal: Decimal) -> Result<Option<f64>, Unread> {
    let words = || "Type how long, like 30 s or 1:30.".to_owned();
    let text = text.trim();
    if let Some((minutes, seconds)) = text.split_once(':') {
        return match (read_number(minutes, decimal), read_number(seconds, decimal)) {
            (Ok(Some(minutes)), Ok(Some(seconds))) if seconds < 60.0 => Ok(Some(minutes * 60.0 + seconds)),
            _ => Err(words().into()),
        };
    }
    match read_number(text, decimal) {
        Ok(seconds) => Ok(seconds),
        Err(problem @ NumberProblem::Ambiguous { .. }) => Err(Unread::number(&problem, text, words)),
        Err(_) => match read_wait(text, decimal) {
            Some(seconds) => Ok(Some(f64::from(seconds))),
            None => Err(words().into()),
        },
    }
}

/// Seconds that a step says to wait; none when it names no time. Several times in one step add up.
#[must_use]
pub fn read_wait(step: &str, decimal: Decimal) -> Option<u32> {
    let words: Vec<&str> = step.split(|c: char| is_space(c) || matches!(c, '(' | ')' | ';')).collect();
    let mut seconds = 0.0;
    for (at, word) in words.iter().enumerate() {
        let word = word.trim_end_matches([',', '.', ':']);
        let unit_at = word.find(|c| !(is_digit(c) || matches!(c, '.' | ','))).unwrap_or(word.len());
        let (number, unit) = word.split_at(unit_at);
        let Ok(Some(value)) = read_number(number, decimal) else { continue };
        let unit = if unit.is_empty() { words.get(at + 1).copied().unwrap_or_default() } else { unit };
        let unit = unit.trim_end_matches([',', '.', ':']).to_ascii_lowercase();
        seconds += value
            * match unit.as_str() {
                "s" | "sec" | "secs" | "second" | "seconds" => 1.0,
                "min" | "mins" | "minute" | "minutes" => 60.0,
                "h" | "hr" | "hrs" | "hour" | "hours" => 3_600.0,
                "day" | "days" => 86_400.0,
                _ => 0.0,
            };
    }
    // A month at most: more is no step of a drink.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    (1.0..=30.0 * 86_400.0).contains(&seconds).then_some(seconds as u32)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_as_fields_take_them() {
        for (text, seconds) in [
            ("30", Some(30.0)),
            (" 30 s ", Some(30.0)),
            ("1:30", Some(90.0)),
            ("2 min", Some(120.0)),
            ("12.5", Some(12.5)),
            ("10 h", Some(36_000.0)),
            ("0", Some(0.0)),
            ("", None),
        ] {
            assert_eq!(read_seconds(text, Decimal::Point), Ok(seconds), "{text}");
        }
        for text in ["soon", "1:", ":", "1:75", "0 s", "-5", "30 cubes"] {
            let told = read_seconds(text, Decimal::Point).expect_err(text);
            assert_eq!(told.words, "Type how long, like 30 s or 1:30.", "{text}");
        }
        assert_eq!(read_seconds("1,250", Decimal::Point).expect_err("two meanings").fixes, ["1250", "1.25"]);
    }

    #[test]
    fn times_as_steps_write_them() {
        for (step, seconds) in [
            ("Rest 45 min", Some(2_700)),
            ("Stir 30s", Some(30)),
            ("Filter through the curd, 2 h", Some(7_200)),
            ("Wait 1 h 30 min.", Some(5_400)),
            ("1½ hours in the fridge", Some(5_400)),
            ("Steep 2 days", Some(172_800)),
            ("Carbonate 3 min, rest 1 min, again", Some(240)),
            ("Shake with 3 cubes", None),
            ("Chill to 2 °C", None),
            ("Add 30 ml", None),
            ("", None),
            ("99999999 days", None),
        ] {
            assert_eq!(read_wait(step, Decimal::Point), seconds, "{step}");
        }
    }
}
