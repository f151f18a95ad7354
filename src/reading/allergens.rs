//! What guests must be told of, by what the lines of a spec say.

use crate::book::{Allergen, Ask, allergens_in, asked_in};
use crate::screen::{Answer, Bench, once};
use crate::text::SpecLine;

/// What guests must be told of, by what the lines say, and by all that they are made of here.
pub(crate) fn allergens(lines: &[SpecLine], bench: &Bench) -> Vec<Allergen> {
    let of_line = |line: &SpecLine| {
        let taken = line.read.as_ref().ok().and_then(|read| read.taken);
        let listed = taken.map_or(&[][..], |taken| taken.ingredient.allergens);
        let made = bench.prep(taken).map_or(&[][..], |prep| &prep.allergens);
        let said: Vec<Allergen> = allergens_in(&line.typed).collect();
        [listed, made, &said].concat()
    };
    once(lines.iter().flat_map(of_line))
}

/// What must be asked about, likewise.
pub(crate) fn asks(lines: &[SpecLine], bench: &Bench) -> Vec<Ask> {
    once(lines.iter().flat_map(|line| {
        let prep = line.read.as_ref().ok().and_then(|read| bench.prep(read.taken));
        asked_in(&line.typed).chain(prep.into_iter().flat_map(|prep| prep.asks.iter().copied()))
    }))
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
pub(crate) fn cautions(answer: &mut Answer, lines: &[SpecLine], bench: &Bench) {
    let declared = allergens(lines, bench);
    if !declared.is_empty() {
        let words = "May need declaring, by these names alone";
        let read = format!("{words}: {}. Read the labels of what you pour.{}", names(&declared), egg(&declared));
        answer.cautions.push(read);
    }
    answer.cautions.extend(asks(lines, bench).into_iter().map(|ask| about(ask).to_owned()));
}

/// "May need declaring: sulphites, milk." None where nothing may.
pub(crate) fn declared(lines: &[SpecLine], bench: &Bench) -> Option<String> {
    let declared = allergens(lines, bench);
    (!declared.is_empty()).then(|| format!("May need declaring: {}.{}", names(&declared), egg(&declared)))
}

fn names(declared: &[Allergen]) -> String {
    declared.iter().map(|allergen| allergen.name()).collect::<Vec<_>>().join(", ")
}

fn egg(declared: &[Allergen]) -> &'static str {
    if declared.contains(&Allergen::Egg) { " Raw egg: pasteurised where your food code asks for it." } else { "" }
}
