//! What the lines of a spec cost, by what the bar pays.

use super::contents::{Content, Contents};
use crate::book::{Line, Price, ends_with_words};
use crate::craft::cost::{Sum, cost_of, sum};
use crate::quantity::Money;
use crate::screen::Bench;
use crate::text::SpecLine;

/// What a line costs.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Cost<'a> {
    /// So much, by this price.
    Known(Money, &'a Price),
    /// Water without a price: it comes from the tap.
    Free,
    /// Nobody has said what is paid for it.
    Unpriced,
    /// It is paid for by another measure, and nothing says how the two go together.
    Unlike(&'a Price),
    /// How much of it there is can't be read.
    Unread,
    /// Words: a title, a garnish, a step.
    Words,
}

impl Cost<'_> {
    /// As it is added up; none where it is not known.
    pub(crate) fn money(&self) -> Option<Money> {
        match self {
            Cost::Known(money, _) => Some(*money),
            Cost::Free | Cost::Words => Some(Money::ZERO),
            Cost::Unpriced | Cost::Unlike(_) | Cost::Unread => None,
        }
    }
}

/// What each line of a spec costs.
pub(crate) fn costs<'a>(read: &Contents, bench: &'a Bench) -> Vec<Cost<'a>> {
    read.pairs().map(|pair| cost(pair, bench)).collect()
}

/// What they come to.
pub(crate) fn sum_of(costs: &[Cost<'_>]) -> Sum {
    let lines: Vec<Option<Money>> = costs.iter().map(Cost::money).collect();
    sum(&lines)
}

fn cost<'a>((line, content): (&SpecLine, &Content), bench: &'a Bench) -> Cost<'a> {
    let line = match (&line.read, content) {
        (Ok(line), _) => line,
        (Err(_), Content::Words) => return Cost::Words,
        (Err(_), _) => return Cost::Unread,
    };
    let mix = if let Content::Poured(mix) = content { Some(&**mix) } else { None };
    match prices(line, bench).first() {
        Some(price) => cost_of(line.amount, mix, price).map_or(Cost::Unlike(price), |money| Cost::Known(money, price)),
        None if line.taken.is_some_and(|taken| matches!(taken.ingredient.key, "water" | "ice")) => Cost::Free,
        None => Cost::Unpriced,
    }
}

/// What was paid for a line: the newest first, then those before it. Of exactly its name; else of the ingredient that it is
/// taken as, the bar's own or the library's.
pub(crate) fn prices<'a>(line: &Line, bench: &'a Bench) -> Vec<&'a Price> {
    let named = |name: &str| newest(bench, &|price| price.name.eq_ignore_ascii_case(name));
    let exact = named(&line.name);
    if !exact.is_empty() {
        return exact;
    }
    let own = bench.book.own.iter().map(|entry| entry.value.name.trim());
    let own = own.filter(|own| !own.is_empty() && ends_with_words(&line.name, own)).max_by_key(|own| own.len());
    match (own, line.taken) {
        (Some(own), _) => named(own),
        (None, Some(taken)) => newest(bench, &|price| price.library == taken.ingredient.key),
        (None, None) => exact,
    }
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
