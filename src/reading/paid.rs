//! What is paid for a line, or what it is made by here.

use crate::book::{Line, Made, Price, ends_with_words};
use crate::screen::Bench;

/// What a line is made by here.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum By {
    /// The prep of this place in the list of the bench.
    Prep(usize),
    /// The spec of this place in the book, which is called so.
    Spec(usize),
}

/// What a line is made by; none for what is bought, and where the bar has said what it pays for what is called so.
pub(crate) fn made_by(line: &Line, bench: &Bench) -> Option<By> {
    let by = match line.taken.map(|taken| taken.measured.made) {
        Some(Made::Here(place, _)) => By::Prep(place as usize),
        _ => By::Spec(bench.book.called(&line.name)?),
    };
    by_name(line, bench).is_empty().then_some(by)
}

/// What was paid for a line: the newest first, then those before it. Of exactly its name, or of what the bar calls its own;
/// else of the ingredient that it is taken as.
pub(crate) fn prices<'a>(line: &Line, bench: &'a Bench) -> Vec<&'a Price> {
    let found = by_name(line, bench);
    if found.is_empty() { as_taken(line, bench) } else { found }
}

/// Those of exactly its name, else of the bar's own that it ends like.
fn by_name<'a>(line: &Line, bench: &'a Bench) -> Vec<&'a Price> {
    let named = |name: &str| newest(bench, &|price| price.name.eq_ignore_ascii_case(name));
    let exact = named(&line.name);
    if exact.is_empty() { own(line, bench).map_or(exact, named) } else { exact }
}

/// Those of the ingredient of the library that it is taken as; none of what is the bar's own.
fn as_taken<'a>(line: &Line, bench: &'a Bench) -> Vec<&'a Price> {
    let taken = line.taken.filter(|_| own(line, bench).is_none());
    taken.map_or(Vec::new(), |taken| newest(bench, &|price| price.library == taken.ingredient.key))
}

/// What the bar calls its own, as the name of a line ends.
pub(crate) fn own<'a>(line: &Line, bench: &'a Bench) -> Option<&'a str> {
    let names = bench.book.own.iter().map(|entry| entry.value.name.trim());
    names.filter(|own| !own.is_empty() && ends_with_words(&line.name, own)).max_by_key(|own| own.len())
}

/// Those prices, the newest first; of one day, the one that stands last.
fn newest<'a>(bench: &'a Bench, is_of: &dyn Fn(&Price) -> bool) -> Vec<&'a Price> {
    let mut found: Vec<&Price> = Vec::new();
    for price in bench.prices.iter().filter(|price| is_of(price)) {
        let at = found.iter().position(|there| there.day <= price.day).unwrap_or(found.len());
        found.insert(at, price);
    }
    found
}
