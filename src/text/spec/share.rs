//! Water that is written as a share of the drink: "25 % water".

use super::measured::shown;
use super::{LineProblem, SpecLine, holds_amount};
use crate::book::{Line, is_poured, taken_as};
use crate::quantity::{Amount, Volume};
use crate::text::amount::Reading;
use crate::text::number::{is_space, read_number};

/// A share, in percent, and of what: "25 % water", "water (25 %)". What stands behind a name is a share of water alone:
/// "gin 57 %" is a strength.
pub(super) fn share_of<'a>(line: &'a str, reading: &Reading<'_>) -> Option<(f64, &'a str)> {
    let (before, after) = line.split_once('%')?;
    let is_mark = |c: char| is_space(c) || matches!(c, ':' | ',' | '(' | ')' | '-' | '–' | '=' | '|' | '.');
    let number = |text: &str| read_number(text, reading.decimal).ok().flatten();
    if let Some(percent) = number(before.trim()) {
        let name = after.trim_matches(is_mark);
        let name = name.strip_prefix("of ").unwrap_or(name);
        return (!name.is_empty() && !holds_amount(name)).then_some((percent, name));
    }
    let (name, percent) = before.trim_end().rsplit_once(|c| is_space(c) || c == '(')?;
    let name = name.trim_matches(is_mark);
    (after.trim_matches(is_mark).is_empty() && is_water(name, reading)).then_some((number(percent)?, name))
}

/// Works out the shares of water: of the finished whole, as the volumes of its lines add up. Where one of those has no
/// volume it stays asked about, and so does a share of anything else.
pub(super) fn counted_in(lines: &mut [SpecLine], reading: &Reading<'_>) {
    let share = |line: &SpecLine| match &line.read {
        Err(LineProblem::Share(percent, name)) if *percent > 0.0 && is_water(name, reading) => Some(*percent / 100.0),
        _ => None,
    };
    let water: f64 = lines.iter().filter_map(share).sum();
    if water <= 0.0 || water >= 1.0 {
        return;
    }
    let mut rest = 0.0;
    for line in lines.iter() {
        match &line.read {
            Ok(Line { amount: Amount::Volume(volume), .. }) => rest += volume.ml(),
            Ok(Line { amount: Amount::Count(_), .. }) | Err(LineProblem::Part) => {}
            Err(LineProblem::NoAmount) if !is_poured(&line.typed) => {}
            Err(LineProblem::Share(..)) if share(line).is_some() => {}
            _ => return,
        }
    }
    for line in lines {
        let (Some(part), Err(LineProblem::Share(percent, name))) = (share(line), &line.read) else { continue };
        let Ok(volume) = Volume::from_ml(rest / (1.0 - water) * part) else { continue };
        if volume > Volume::ZERO {
            let taken = taken_as(name, reading.own);
            let said = format!("{} % of the finished whole", shown(*percent, reading));
            line.read =
                Ok(Line { amount: Amount::Volume(volume), name: name.clone(), unit: None, taken, unread: None, said });
        }
    }
}

fn is_water(name: &str, reading: &Reading<'_>) -> bool {
    taken_as(name, reading.own).is_some_and(|taken| taken.ingredient.key == "water")
}
