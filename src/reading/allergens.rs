//! What guests must be told of, by what the lines of a spec say.

use super::label::once;
use crate::book::{Allergen, Ask, allergens_in, asked_in};
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

/// What must be asked about, by what the lines say.
pub(crate) fn asks(lines: &[SpecLine]) -> Vec<Ask> {
    once(lines.iter().flat_map(|line| asked_in(&line.typed)))
}

/// What there is to know of it.
pub(crate) const fn about(ask: Ask) -> &'static str {
    match ask {
        Ask::Gelatin => {
            "Gelatin: of fish it is an allergen, of beef or pork it matters for diets. Its pack says what it is of."
        }
        Ask::Coconut => {
            "Coconut: whether it is counted as a tree nut depends on your local code. The US FDA dropped it from its tree nuts in guidance of January 2025 (from memory)."
        }
        Ask::Enzyme => {
            "Enzyme: food-grade, by its supplier's sheet first. It may have to be declared where your local code asks."
        }
    }
}

/// Who must be told of what, and eggs; and what must be asked about.
pub(crate) fn cautions(answer: &mut Answer, lines: &[SpecLine]) {
    let declared = allergens(lines);
    if !declared.is_empty() {
        let words = "May need declaring, by these names alone";
        let read = format!("{words}: {}. Read the labels of what you pour.{}", names(&declared), egg(&declared));
        answer.cautions.push(read);
    }
    answer.cautions.extend(asks(lines).into_iter().map(|ask| about(ask).to_owned()));
}

/// "May need declaring: sulphites, milk." None where nothing may.
pub(crate) fn declared(lines: &[SpecLine]) -> Option<String> {
    let declared = allergens(lines);
    (!declared.is_empty()).then(|| format!("May need declaring: {}.{}", names(&declared), egg(&declared)))
}

fn names(declared: &[Allergen]) -> String {
    declared.iter().map(|allergen| allergen.name()).collect::<Vec<_>>().join(", ")
}

fn egg(declared: &[Allergen]) -> &'static str {
    if declared.contains(&Allergen::Egg) { " Raw egg: pasteurised where your food code asks for it." } else { "" }
}
