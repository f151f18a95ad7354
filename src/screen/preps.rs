//! Preps: ingredients of the bar's own that are made of others, each worked out from its parts, whichever way they are
//! nested. One that is made of itself is none, and says by what way.

use std::sync::Arc;

use super::own::taken;
use crate::book::{Allergen, Ask, Book, House, Made, Measured, Own, Taken, allergens_in, asked_in, is_poured};
use crate::craft::pour::{litre_of, pour};
use crate::quantity::{Amount, Volume};
use crate::substance::mix::Mix;
use crate::text::{self, Decimal, Dimension, LineProblem, Reading, SpecLine};

/// Preps that a way back to itself is followed through, and that are named in it.
const MOST_IN_A_CIRCLE: usize = 12;

/// An ingredient that is made here.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Prep {
    /// Id of its record.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// What it is made of.
    pub lines: Arc<Vec<SpecLine>>,
    /// How much comes out of them; none for all of it.
    pub gives: Option<Volume>,
    /// Why not all that it is made of is known, or that it is made of itself; empty where all is well.
    pub why: String,
    /// Whether it is made of itself, or of one that is.
    pub is_circle: bool,
    /// What guests must be told of, by all that it is made of.
    pub allergens: Vec<Allergen>,
    /// What must be asked about before that is known.
    pub asks: Vec<Ask>,
}

impl Prep {
    /// The preps that it is made of, by their places.
    pub fn parts(&self) -> impl Iterator<Item = usize> {
        self.lines.iter().filter_map(|line| match line.read.as_ref().ok()?.taken?.measured.made {
            Made::Here(part, _) => Some(part as usize),
            Made::No => None,
        })
    }
}

/// The bar's own ingredients, and those of them that are preps.
pub(super) fn read(book: &Book, house: &House, decimal: Decimal) -> (Vec<(String, Taken)>, Vec<Prep>) {
    let mut own: Vec<(String, Taken)> = house.names().collect();
    let mut preps: Vec<Prep> = Vec::new();
    let mut records: Vec<(&Own, usize)> = Vec::new();
    for entry in &book.own {
        let name = entry.value.name.trim();
        let known = taken(&entry.value, decimal, &mut Vec::new());
        let Some(mut taken) = known.filter(|_| !name.is_empty()) else { continue };
        if !entry.value.parts.trim().is_empty() {
            taken.measured.made = Made::Here(preps.len() as u32, None);
            preps.push(Prep { id: entry.id.clone(), name: name.to_owned(), ..Prep::default() });
            records.push((&entry.value, own.len()));
        }
        own.push((name.to_owned(), taken));
    }
    let reading = Reading {
        conventions: &house.conventions,
        decimal,
        bare: house.usual_unit,
        kind: Dimension::Either,
        own: &own,
    };
    for (prep, (record, _)) in preps.iter_mut().zip(&records) {
        prep.lines = Arc::new(text::read_spec(&record.parts, &reading));
        prep.gives = match text::read_amount(&record.gives, &reading) {
            Ok(Some(Amount::Volume(volume))) => Some(volume),
            _ => None,
        };
    }
    let order = in_order(&mut preps);
    // Of what is made of itself, too, guests are told what its parts hold.
    let in_circles: Vec<usize> = (0..preps.len()).filter(|at| preps[*at].is_circle).collect();
    order.iter().for_each(|at| tell(*at, &mut preps));
    for _ in 0..MOST_IN_A_CIRCLE {
        in_circles.iter().for_each(|at| tell(*at, &mut preps));
    }
    for at in order {
        let (record, place) = records[at];
        let known = worked_out(&mut preps[at], record, own[place].1, &|part| own[records[part].1].1.measured.made);
        own[place].1.measured = Measured { made: Made::Here(at as u32, Some(known)), ..Measured::default() };
    }
    (own, preps)
}

/// The places of preps, each behind all that it is made of. Those that are made of themselves, or of such, are noted and
/// left out.
fn in_order(preps: &mut [Prep]) -> Vec<usize> {
    let parts: Vec<Vec<usize>> = preps.iter().map(|prep| prep.parts().collect()).collect();
    let mut waits: Vec<usize> = parts.iter().map(Vec::len).collect();
    let mut uses: Vec<Vec<usize>> = vec![Vec::new(); parts.len()];
    for (at, parts) in parts.iter().enumerate() {
        for part in parts {
            uses[*part].push(at);
        }
    }
    let mut order: Vec<usize> = (0..parts.len()).filter(|at| waits[*at] == 0).collect();
    let mut next = 0;
    while let Some(done) = order.get(next) {
        for at in &uses[*done] {
            waits[*at] -= 1;
            if waits[*at] == 0 {
                order.push(*at);
            }
        }
        next += 1;
    }
    let into = |at: usize| parts[at].iter().copied().find(|part| waits[*part] > 0);
    let circles: Vec<(usize, String)> =
        (0..parts.len()).filter(|at| waits[*at] > 0).map(|at| (at, circle(at, &into, preps))).collect();
    for (at, why) in circles {
        (preps[at].why, preps[at].is_circle) = (why, true);
    }
    order
}

/// Notes what guests must be told of a prep.
fn tell(at: usize, preps: &mut [Prep]) {
    let (mut allergens, mut asks) = (Vec::new(), Vec::new());
    for line in preps[at].lines.iter() {
        let taken = line.read.as_ref().ok().and_then(|read| read.taken);
        let listed = taken.map_or(&[][..], |taken| taken.ingredient.allergens);
        allergens.extend(listed.iter().copied().chain(allergens_in(&line.typed)));
        asks.extend(asked_in(&line.typed));
    }
    for part in preps[at].parts() {
        allergens.extend(&preps[part].allergens);
        asks.extend(&preps[part].asks);
    }
    preps[at].allergens = once(allergens);
    preps[at].asks = once(asks);
}

/// Each of them once, in the order in which they come.
pub(crate) fn once<T: PartialEq>(all: impl IntoIterator<Item = T>) -> Vec<T> {
    let mut each = Vec::new();
    for one in all {
        if !each.contains(&one) {
            each.push(one);
        }
    }
    each
}

/// The way by which a prep leads back to itself, or to one that does, in words.
fn circle(at: usize, into: &dyn Fn(usize) -> Option<usize>, preps: &[Prep]) -> String {
    let mut way = vec![at];
    while let Some(part) = way.last().and_then(|last| into(*last)).filter(|_| way.len() <= MOST_IN_A_CIRCLE) {
        let met = way.iter().position(|there| *there == part);
        way.push(part);
        if let Some(from) = met {
            let names: Vec<&str> = way[from..].iter().map(|at| preps[*at].name.as_str()).collect();
            return format!("Made of itself: {}.", names.join(" → "));
        }
    }
    format!("Made of itself, by way of more than {MOST_IN_A_CIRCLE} preps.")
}

/// A litre of a prep. Why not all that it is made of is known is noted; what was typed of it goes before its parts.
fn worked_out(prep: &mut Prep, record: &Own, taken: Taken, made: &dyn Fn(usize) -> Made) -> Mix {
    let mut mix = Mix::default();
    let name = prep.name.as_str();
    let unknown = |of: &str| format!("Not all that {name} is made of is known: {of}.");
    let mut why = String::new();
    for line in Arc::get_mut(&mut prep.lines).into_iter().flatten() {
        let problem = match &mut line.read {
            Err(LineProblem::Part) => None,
            Err(LineProblem::NoAmount) if !is_poured(&line.typed) => None,
            Err(_) => Some(line.typed.as_str()),
            Ok(read) => {
                if let Some(taken) = &mut read.taken
                    && let Made::Here(part, _) = taken.measured.made
                {
                    taken.measured.made = made(part as usize);
                }
                match read.taken.filter(|taken| !matches!(taken.measured.made, Made::Here(_, None))) {
                    _ if matches!(read.amount, Amount::Count(_)) => None,
                    Some(taken) => match pour(&taken, read.amount) {
                        Some(poured) => {
                            mix = mix + poured;
                            None
                        }
                        None => Some(read.name.as_str()),
                    },
                    None => Some(read.name.as_str()),
                }
            }
        };
        if let Some(of) = problem.filter(|_| why.is_empty()) {
            why = unknown(of);
        }
    }
    if why.is_empty() && mix.mass().g() <= 0.0 {
        why = format!("Nothing that {name} is made of is measured.");
    }
    prep.why = why;
    // All that it holds was worked out by what made it. Else what its parts do not say, what it is most like does.
    let is_by_parts = record.holds.trim().is_empty() && prep.why.is_empty();
    let made = if is_by_parts { Made::Here(0, Some(mix)) } else { Made::No };
    litre_of(&Taken { measured: Measured { made, ..taken.measured }, ..taken })
}

#[cfg(test)]
mod tests;
