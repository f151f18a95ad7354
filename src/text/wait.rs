//! Times in the steps of a spec: "Rest 45 min", "Stir 30 s", "Filter, 1 h 30 min".

use super::number::{Decimal, is_digit, is_space, read_number};

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
