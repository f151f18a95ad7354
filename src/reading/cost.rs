//! What the lines of a spec cost, by what the bar pays.

use super::contents::{Content, Contents};
use super::paid::{By, made_by, prices};
use super::thing::through;
use crate::book::{Card, Line, Price};
use crate::craft::cost::{Sum, cost_of, sum};
use crate::quantity::{Amount, Money, Ratio, Temperature, Volume};
use crate::screen::Bench;
use crate::substance::mix::Mix;
use crate::text::SpecLine;

/// Specs and preps within each other that are followed.
const DEEPEST: usize = 8;

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
    let mut till = Till { bench, preps: vec![Asked::Not; bench.preps.len()] };
    read.pairs().map(|pair| till.cost(pair, &[])).collect()
}

/// What they come to.
pub(crate) fn sum_of(costs: &[Cost<'_>]) -> Sum {
    let lines: Vec<Option<Money>> = costs.iter().map(Cost::money).collect();
    sum(&lines)
}

/// Whether it has been asked what a prep costs.
#[derive(Clone, Copy)]
enum Asked {
    /// Not yet.
    Not,
    /// It is, or was, so: so much money for so much; none where that is not known, nor while it is worked out.
    Said(Option<(Money, Volume)>),
}

/// What things cost; each prep is worked out once.
struct Till<'a> {
    bench: &'a Bench,
    preps: Vec<Asked>,
}

impl<'a> Till<'a> {
    /// What a line costs, of a spec that is itself a part of these: none of them is made of itself.
    fn cost(&mut self, (line, content): (&SpecLine, &Content), within: &[&str]) -> Cost<'a> {
        let line = match (&line.read, content) {
            (Ok(line), _) => line,
            (Err(_), Content::Words) => return Cost::Words,
            (Err(_), _) => return Cost::Unread,
        };
        let mix = if let Content::Poured(mix) = content { Some(&**mix) } else { None };
        let bench = self.bench;
        if let Some(by) = made_by(line, bench) {
            let made = match by {
                By::Prep(place) => self.prep(place, within),
                By::Spec(at) => self.spec(&bench.book.cards[at].value, &line.name, within),
            };
            return made.and_then(|made| of_made(line, mix, made)).unwrap_or(Cost::Unpriced);
        }
        if let Some((money, price, _)) = through(line, bench) {
            return Cost::Known(money, price);
        }
        let price = prices(line, bench).into_iter().next();
        match price {
            Some(price) => {
                cost_of(line.amount, mix, price).map_or(Cost::Unlike(price), |money| Cost::Known(money, price))
            }
            None if line.taken.is_some_and(|taken| matches!(taken.ingredient.key, "water" | "ice")) => Cost::Free,
            None => Cost::Unpriced,
        }
    }

    /// A prep by its parts.
    fn prep(&mut self, place: usize, within: &[&str]) -> Option<(Money, Volume)> {
        if let Asked::Said(said) = self.preps.get(place)? {
            return *said;
        }
        self.preps[place] = Asked::Said(None);
        let prep = &self.bench.preps[place];
        let made = self.parts(&Contents::of_lines(&prep.lines), prep.gives, &prep.name, within);
        self.preps[place] = Asked::Said(made);
        made
    }

    /// A spec by its first form.
    fn spec(&mut self, card: &Card, name: &str, within: &[&str]) -> Option<(Money, Volume)> {
        let way = card.ways.first()?;
        let gives = self.bench.volume("gives", &way.gives, &mut Vec::new());
        self.parts(&Contents::of(&way.lines, self.bench), gives, name, within)
    }

    /// What all parts of something cost, and how much it comes to; none where not all of that is known, or where it is made
    /// of itself. What is lost in making it is in that where it is said how much comes out.
    fn parts(
        &mut self,
        read: &Contents,
        gives: Option<Volume>,
        name: &str,
        within: &[&str],
    ) -> Option<(Money, Volume)> {
        if within.len() >= DEEPEST || within.iter().any(|there| there.eq_ignore_ascii_case(name)) {
            return None;
        }
        let within = [within, &[name]].concat();
        let costs: Vec<Cost<'_>> = read.pairs().map(|pair| self.cost(pair, &within)).collect();
        let sum = sum_of(&costs);
        let volume = gives.or_else(|| read.drunk(self.bench).0.volume(Temperature::TWENTY).ok())?;
        let is_known = sum.unknown == 0 && sum.known > Money::ZERO && read.missing.is_empty() && volume > Volume::ZERO;
        is_known.then_some((sum.known, volume))
    }
}

/// A line of what was made for so much.
fn of_made(line: &Line, mix: Option<&Mix>, (money, volume): (Money, Volume)) -> Option<Cost<'static>> {
    let price = Price {
        name: String::new(),
        library: "",
        pack: Amount::Volume(volume),
        size: String::new(),
        paid: money,
        usable: Ratio::ONE,
        day: String::new(),
    };
    Some(Cost::Made(cost_of(line.amount, mix, &price)?, money, volume))
}
