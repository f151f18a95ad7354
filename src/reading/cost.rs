//! What the lines of a spec cost, by what the bar pays.

use super::contents::{Content, Contents};
use crate::book::{Card, Line, Price, ends_with_words};
use crate::craft::cost::{Sum, cost_of, sum};
use crate::quantity::{Amount, Money, Ratio, Temperature, Volume};
use crate::screen::Bench;
use crate::substance::mix::Mix;
use crate::text::SpecLine;

/// Specs within specs that are followed.
const DEEPEST: usize = 4;

/// What a line costs.
pub(crate) enum Cost<'a> {
    /// So much, by this price.
    Known(Money, &'a Price),
    /// So much, as a spec of the book that is called so is made: what all of that costs, and how much it makes.
    Made(Money, Money, Volume),
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
            Cost::Known(money, _) | Cost::Made(money, ..) => Some(*money),
            Cost::Free | Cost::Words => Some(Money::ZERO),
            Cost::Unpriced | Cost::Unlike(_) | Cost::Unread => None,
        }
    }
}

/// What each line of a spec costs.
pub(crate) fn costs<'a>(read: &Contents, bench: &'a Bench) -> Vec<Cost<'a>> {
    costs_within(read, &[], bench)
}

/// As [`costs`], of a spec that these are made of in turn: none of them is made of itself.
fn costs_within<'a>(read: &Contents, within: &[&str], bench: &'a Bench) -> Vec<Cost<'a>> {
    read.pairs().map(|pair| cost(pair, within, bench)).collect()
}

/// What they come to.
pub(crate) fn sum_of(costs: &[Cost<'_>]) -> Sum {
    let lines: Vec<Option<Money>> = costs.iter().map(Cost::money).collect();
    sum(&lines)
}

fn cost<'a>((line, content): (&SpecLine, &Content), within: &[&str], bench: &'a Bench) -> Cost<'a> {
    let line = match (&line.read, content) {
        (Ok(line), _) => line,
        (Err(_), Content::Words) => return Cost::Words,
        (Err(_), _) => return Cost::Unread,
    };
    let mix = if let Content::Poured(mix) = content { Some(&**mix) } else { None };
    let by_name = by_name(line, bench);
    if by_name.is_empty()
        && let Some(card) = bench.book.cards.iter().find(|entry| is_called(line, &entry.value.name))
    {
        return made(line, mix, &card.value, within, bench).unwrap_or(Cost::Unpriced);
    }
    let price = by_name.into_iter().chain(as_taken(line, bench)).next();
    match price {
        Some(price) => cost_of(line.amount, mix, price).map_or(Cost::Unlike(price), |money| Cost::Known(money, price)),
        None if line.taken.is_some_and(|taken| matches!(taken.ingredient.key, "water" | "ice")) => Cost::Free,
        None => Cost::Unpriced,
    }
}

fn is_called(line: &Line, name: &str) -> bool {
    name.trim().eq_ignore_ascii_case(&line.name)
}

/// A line by the parts of the spec that is called so, in its first form; none where not all of it is known, or where it is
/// made of itself. What is lost in making it is not in that.
fn made(line: &Line, mix: Option<&Mix>, card: &Card, within: &[&str], bench: &Bench) -> Option<Cost<'static>> {
    if within.len() >= DEEPEST || within.iter().any(|name| is_called(line, name)) {
        return None;
    }
    let read = Contents::of(&card.ways.first()?.lines, bench);
    let within = [within, &[line.name.as_str()]].concat();
    let sum = sum_of(&costs_within(&read, &within, bench));
    let volume = read.drunk(bench).0.volume(Temperature::TWENTY).ok()?;
    if sum.unknown > 0 || sum.known <= Money::ZERO || !read.missing.is_empty() || volume <= Volume::ZERO {
        return None;
    }
    let price = Price {
        name: String::new(),
        library: "",
        pack: Amount::Volume(volume),
        size: String::new(),
        paid: sum.known,
        usable: Ratio::ONE,
        day: String::new(),
    };
    Some(Cost::Made(cost_of(line.amount, mix, &price)?, sum.known, volume))
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
fn own<'a>(line: &Line, bench: &'a Bench) -> Option<&'a str> {
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
