//! The bar's own glasses, a line each.

use crate::book::{GENERIC, Glass};
use crate::reading::glass::{SHAPES, shape};
use crate::screen::Problem;
use crate::text::{self, Reading};

pub(super) const GLASSES: &str = "glasses";
/// A line as it should be.
pub(super) const GLASS_LIKE: &str = "like small wine glass, 140 ml, wine";

/// The glasses of the lines that are read and whose shape is known; where there are none the generic ones. The first line
/// that is none is a problem.
pub(super) fn read_glasses(lines: &str, reading: &Reading<'_>, problems: &mut Vec<Problem>) -> Vec<Glass> {
    let (own, bad) = read(lines, reading);
    problems.extend(bad.map(|words| Problem::new(GLASSES, words)));
    if own.is_empty() { read(GENERIC, reading).0 } else { own }
}

fn read(lines: &str, reading: &Reading<'_>) -> (Vec<Glass>, Option<String>) {
    let (mut glasses, mut bad) = (Vec::new(), None);
    for line in lines.lines().map(str::trim).filter(|line| !line.is_empty()) {
        let words = match text::read_glass(line, reading) {
            Some(glass) if shape(&glass.shape).is_some() => {
                glasses.push(glass);
                continue;
            }
            Some(glass) => format!("No shape is known for “{}”. Put one behind: {SHAPES}.", glass.shape),
            None => format!("“{line}” is no glass. Write it {GLASS_LIKE}."),
        };
        bad.get_or_insert(words);
    }
    (glasses, bad)
}
