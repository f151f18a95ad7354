//! How long a prep is kept: what is said until days are typed, and where those typed are more.

use super::Own;
use crate::book::{Allergen, Ingredient, Kind, Taken};
use crate::craft::keeping::{COLD_DAYS, JUICE_DAYS, Keeping, keeping};
use crate::craft::pour::litre_of;
use crate::screen::{Answer, Prep, plural};

/// Days, the day of making counted, by what it is made of and most like; and by whose rule. None where none is published.
fn days(prep: &Prep, taken: &Taken) -> Option<(u32, &'static str)> {
    let Ingredient { kind, key, .. } = *taken.ingredient;
    let is_juice = |of: &Ingredient| of.kind == Kind::Juice && of.key != "vinegar";
    let mut lines = prep.lines.iter().filter_map(|line| line.read.as_ref().ok()?.taken);
    // The sugar of a cordial keeps its juice.
    let has_juice = kind != Kind::Syrup && (is_juice(taken.ingredient) || lines.any(|of| is_juice(of.ingredient)));
    let has_animal = prep.allergens.iter().any(|of| matches!(of, Allergen::Milk | Allergen::Egg));
    match keeping(None, litre_of(taken).ethanol, has_juice, has_animal) {
        Keeping::Fresh => Some((JUICE_DAYS, "fresh juice, rule of thumb")),
        Keeping::Drink => None,
        _ if kind == Kind::Powder || key == "saline" => None,
        _ => Some((COLD_DAYS, "FDA Food Code 3-501.17, from memory")),
    }
}

/// Says it; what is typed goes first. Whether it is kept as fresh juice is.
pub(super) fn said(own: &Own, typed: Option<f64>, prep: &Prep, taken: &Taken, answer: &mut Answer) -> bool {
    let Some((days, source)) = days(prep, taken) else { return false };
    let least = format!("{days} {} ({source})", plural(days as usize, "day", "days"));
    if own.keeps.trim().is_empty() {
        answer.notes.push(format!("Keeps {least}, cold, the day it is made counted, until you type your own."));
    } else if typed.is_some_and(|typed| typed > f64::from(days)) {
        answer.cautions.push(format!("Longer than {least}: your local food code goes first."));
    }
    days == JUICE_DAYS && own.keeps.trim().is_empty()
}
