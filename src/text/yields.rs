//! Yields that a bar has measured: "lime juice 38 %", a line each.

use super::amount::read_percent;
use super::number::{Decimal, is_digit};
use super::show::editable;
use crate::quantity::Ratio;

/// A line of yields: what it is of, and the share; none where the share cannot be read.
fn read_line(line: &str, decimal: Decimal) -> Option<(&str, Ratio)> {
    let line = line.trim();
    let at = line.find(is_digit)?;
    let share = read_percent(&line[at..], decimal, 101).ok().flatten()?;
    let name = line[..at].trim_end_matches(|c: char| c == ':' || c.is_ascii_whitespace());
    (!name.is_empty() && share.value() > 0.0 && share.value() <= 1.0).then_some((name, share))
}

/// The share that stands behind a name, in any case; the last one where there are several.
#[must_use]
pub fn read_yield(lines: &str, name: &str, decimal: Decimal) -> Option<Ratio> {
    let mut found = lines.lines().filter_map(|line| read_line(line, decimal));
    found.by_ref().filter(|(of, _)| of.eq_ignore_ascii_case(name)).last().map(|(_, share)| share)
}

/// The lines with a share behind a name, in place of the one that stood there.
#[must_use]
pub fn with_yield(lines: &str, name: &str, share: Ratio, decimal: Decimal) -> String {
    let percent = (share.value() * 1000.0).round() / 10.0;
    let line = format!("{name} {} %", editable(percent, decimal));
    let is_other = |line: &&str| read_line(line, decimal).is_none_or(|(of, _)| !of.eq_ignore_ascii_case(name));
    let others = lines.lines().filter(|line| !line.trim().is_empty()).filter(is_other);
    others.chain([line.as_str()]).collect::<Vec<_>>().join("\n")
}

/// The first line that is no yield.
#[must_use]
pub fn unread_yield(lines: &str, decimal: Decimal) -> Option<&str> {
    lines.lines().map(str::trim).find(|line| !line.is_empty() && read_line(line, decimal).is_none())
}

/// The first name with a share for which `is_asked_for` is false.
#[must_use]
pub fn unasked_yield(lines: &str, decimal: Decimal, is_asked_for: impl Fn(&str) -> bool) -> Option<&str> {
    lines.lines().filter_map(|line| read_line(line, decimal)).map(|(name, _)| name).find(|name| !is_asked_for(name))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_kept_is_read() {
        let share = Ratio::from_value(0.384).expect("a share");
        let lines = with_yield("lemon juice 41 %\n\nmy note", "lime juice", share, Decimal::Comma);
        assert_eq!(lines, "lemon juice 41 %\nmy note\nlime juice 38,4 %");
        assert_eq!(read_yield(&lines, "Lime Juice", Decimal::Comma), Some(share));
        assert_eq!(read_yield(&lines, "lime", Decimal::Comma), None);
        assert_eq!(unread_yield(&lines, Decimal::Comma), Some("my note"));
        let again = with_yield(&lines, "lime juice", Ratio::from_value(0.4).expect("a share"), Decimal::Comma);
        assert_eq!(again, "lemon juice 41 %\nmy note\nlime juice 40 %");
        for line in ["lime juice", "40 %", "lime juice 140 %", "lime 0 %", ""] {
            assert_eq!(read_yield(line, "lime juice", Decimal::Point), None, "{line}");
        }
    }
}
