//! How the parts of a run find each other: what each can be made of.

use super::part::making;
use crate::book::{MOST_PARTS, Part, Run};
use crate::screen::Bench;
use crate::screen::plan::{Makes, Making};

/// What each part of a run makes.
pub(super) fn makings(run: &Run, bench: &Bench) -> Vec<Making> {
    run.parts.iter().map(|part| making(part, bench)).collect()
}

/// The parts before one that it can be made of and no other takes, the nearest first; `makings` are those of the run.
pub(super) fn sources(run: &Run, at: usize, makings: &[Making]) -> Vec<u32> {
    let (Some(part), Some(mine)) = (run.parts.get(at), makings.get(at)) else { return Vec::new() };
    let is_free = |source: &Part| run.parts.iter().all(|other| other.from != Some(source.key) || other.key == part.key);
    let before = run.parts.iter().zip(makings).take(at).rev();
    // A person may tell a cordial to take another juice; into a wash goes what its lines say.
    let fits = |making: &Making| mine.makes != Makes::WashedDrink || mine.takes(making);
    let can_be =
        before.filter(|(source, making)| mine.takes.contains(&making.makes) && fits(making) && is_free(source));
    can_be.map(|(source, _)| source.key).collect()
}

/// A run with more parts; each takes what it is made of where that is on the sheet: of the same fruit, and not taken yet.
/// A drink takes a cordial only when it is told to: which of its lines is meant, a person knows.
#[must_use]
pub fn with_parts(run: &Run, parts: Vec<Part>, bench: &Bench) -> Run {
    let mut run = run.clone();
    let room = MOST_PARTS.saturating_sub(run.parts.len());
    for mut part in parts.into_iter().take(room) {
        part.key = run.next_key();
        let mine = making(&part, bench);
        let theirs = makings(&run, bench);
        // Before what can be made of it and takes nothing yet, or what this one is made of; before the drink, where it
        // goes into one.
        let is_open = |from: Option<u32>| {
            let source = run.parts.iter().position(|part| Some(part.key) == from);
            source.is_none_or(|source| mine.takes(&theirs[source]))
        };
        let takes_it = |at: usize| is_open(run.parts[at].from) && theirs[at].takes(&mine);
        let is_drink = |making: &Making| matches!(making.makes, Makes::Drink | Makes::WashedDrink | Makes::Ice);
        let is_before = |at: &usize| match mine.makes {
            Makes::Ice => theirs[*at].makes == Makes::WashedDrink,
            _ => takes_it(*at) || mine.makes.goes_in() && is_drink(&theirs[*at]),
        };
        let at = (0..run.parts.len()).find(is_before).unwrap_or(run.parts.len());
        let is_taken = at < run.parts.len() && takes_it(at) && theirs[at].makes != Makes::Drink;
        if let Some(taker) = run.parts.get_mut(at).filter(|_| is_taken) {
            taker.from = Some(part.key);
        }
        run.parts.insert(at, part);
        if mine.makes != Makes::Drink {
            let makings = makings(&run, bench);
            let makes = |key: &u32| {
                let source = run.parts.iter().position(|part| part.key == *key);
                source.is_some_and(|source| mine.takes(&makings[source]))
            };
            run.parts[at].from = sources(&run, at, &makings).into_iter().find(makes);
        }
    }
    run
}

/// Whether a run has parts like these already, however often it makes them.
#[must_use]
pub fn holds(run: &Run, parts: &[Part]) -> bool {
    let plain = |part: &Part| {
        let mut texts = part.texts.clone();
        texts.remove("times");
        (part.tool.clone(), texts)
    };
    parts.iter().all(|part| run.parts.iter().any(|there| plain(there) == plain(part)))
}
