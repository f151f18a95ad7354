//! Where the amount of a line ends, so that amount and ingredient can be changed each for itself.

use super::{LineProblem, amount_alone};
use crate::text::amount::Reading;
use crate::text::number::starts_number;

/// Words of the longest amount that is looked for: "1 1/2 oz + 2 barspoons".
const LONGEST: usize = 8;

/// Where the amount ends that a line begins with, in bytes: behind "45 ml" of "45 ml gin", behind "8" of "8 mint leaves".
/// None where it begins with none that can be read.
#[must_use]
pub fn amount_ends(line: &str, reading: &Reading<'_>) -> Option<usize> {
    let start = line.len() - line.trim_start().len();
    line[start..].chars().next().filter(|first| starts_number(*first))?;
    let (mut ends, mut words) = (None, 0);
    for at in start + 1..=line.len() {
        if words < LONGEST && line.as_bytes().get(at).is_none_or(|byte| *byte == b' ') {
            words += 1;
            // A number that lacks its unit is one.
            if matches!(amount_alone(&line[start..at], reading), Ok(_) | Err(LineProblem::NoUnit(_))) {
                ends = Some(at);
            }
        }
    }
    ends
}
