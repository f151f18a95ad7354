//! What guests must be told of, by what the lines of a spec say.

use crate::book::{Allergen, allergens_in};
use crate::screen::Answer;
use crate::text::SpecLine;

/// What guests must be told of, by what the lines say.
pub(crate) fn allergens(lines: &[SpecLine]) -> Vec<Allergen> {
    let mut declared: Vec<Allergen> = Vec::new();
    let mut declare = |allergen: Allergen| {
        if !declared.contains(&allergen) {
            declared.push(allergen);
        }
    };
    for line in lines {
        let taken = line.read.as_ref().ok().and_then(|read| read.taken);
        taken.iter().flat_map(|taken| taken.ingredient.allergens).copied().for_each(&mut declare);
        allergens_in(&line.typed).for_each(&mut declare);
    }
    declared
}

/// Who must be told of what, and eggs.
pub(crate) fn cautions(answer: &mut Answer, lines: &[SpecLine]) {
    let declared = allergens(lines);
    if declared.is_empty() {
        return;
    }
    let names: Vec<&str> = declared.iter().map(|allergen| allergen.name()).collect();
    let egg =
        if declared.contains(&Allergen::Egg) { " Raw egg: pasteurised where your food code asks for it." } else { "" };
    answer.cautions.push(format!(
        "May need declaring, by these names alone: {}. Read the labels of what you pour.{egg}",
        names.join(", ")
    ));
}
