//! Ingredients that are offered while one is typed.

use crate::book::{LIBRARY, Pairs, Sought, best};
use crate::screen::Bench;

/// How many are.
const OFFERED: usize = 3;

/// What those are called that a few letters may mean, the bar's own and the library's; not what the letters spell out.
pub(crate) fn offered<'a>(letters: &str, bench: &'a Bench) -> Vec<&'a str> {
    let own = bench.book.own.iter().map(|entry| entry.value.name.trim());
    let names: Vec<&str> = own.chain(LIBRARY.iter().map(|row| row.name)).collect();
    let (sought, none) = (Sought::of(letters), Pairs::default());
    let rank = |at: usize| {
        let other = names.get(at).filter(|name| !name.is_empty() && !name.eq_ignore_ascii_case(letters))?;
        sought.rank(&[other], &none)
    };
    best(names.len(), OFFERED, &rank).into_iter().map(|at| names[at]).collect()
}
