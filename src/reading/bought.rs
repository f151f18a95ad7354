//! What lines come to in what is bought: preps of the bar's own and specs of the book down to their parts, juice to its fruit.

use super::paid::{By, made_by};
use super::thing::{Piece, Thing, add, density, key_of, plain, put};
use super::{Content, Contents, named};
use crate::book::{Line, taken_as};
use crate::craft::buy::{as_measured, less, makings, over};
use crate::quantity::{Amount, Mass, Ratio, Temperature, Volume};
use crate::screen::Bench;
use crate::text::{Dimension, read_spec};

/// What is written where nothing goes on a drink.
const NO_GARNISH: [&str; 4] = ["none", "no garnish", "-", "–"];

/// Something that is made here.
struct Prep {
    by: By,
    name: String,
    /// What goes into one making of it.
    lines: Vec<Line>,
    /// What comes out of that; none where nobody can say.
    gives: Option<Volume>,
    /// Makings of it that are needed, and that there are.
    wanted: f64,
    there: f64,
}

/// What is needed, line by line.
pub(crate) struct Needs<'a> {
    bench: &'a Bench,
    preps: Vec<Prep>,
    things: Vec<Thing>,
    shelf: Vec<Thing>,
    /// What to mind.
    said: Vec<String>,
}

/// What that comes to.
pub(crate) struct Bought {
    /// What is needed, in the order in which it was asked for.
    pub(crate) things: Vec<Thing>,
    /// What there is.
    pub(crate) shelf: Vec<Thing>,
    /// What to mind: what could not be counted, or leads back to itself.
    pub(crate) said: Vec<String>,
}

impl<'a> Needs<'a> {
    pub(crate) const fn new(bench: &'a Bench) -> Needs<'a> {
        Needs { bench, preps: Vec::new(), things: Vec::new(), shelf: Vec::new(), said: Vec::new() }
    }

    /// The lines of something called so, so many times. Ice is made here, or asked for by itself.
    pub(crate) fn spec(&mut self, read: &Contents, times: f64, of: &str) {
        for line in self.lines_of(read, of) {
            self.line(&line, times);
        }
    }

    /// A line, so many times.
    pub(crate) fn line(&mut self, line: &Line, times: f64) {
        match self.made(line) {
            Some((at, each)) => self.preps[at].wanted += each * times,
            None => add(&mut self.things, line, times, self.bench),
        }
    }

    /// What goes on so many drinks, as it was written: by the piece where that says no number.
    pub(crate) fn garnish(&mut self, typed: &str, serves: Ratio) {
        for line in read_spec(typed, &self.bench.reading(Dimension::Either)) {
            let (amount, name) = match line.read {
                Ok(read) => (read.amount, read.name),
                Err(_) => (Amount::Count(Ratio::ONE), line.typed),
            };
            if !NO_GARNISH.iter().any(|none| none.eq_ignore_ascii_case(&name)) {
                self.piece(Piece::Garnish, &name, amount.times(serves));
            }
        }
    }

    /// So many of what is no ingredient: what is poured and called alike is something else.
    pub(crate) fn piece(&mut self, piece: Piece, name: &str, amount: Amount) {
        let line = Line { amount, ..plain(name) };
        let key = format!("{}{}", piece as u8, name.to_ascii_lowercase());
        put(&mut self.things, Thing { line, fruit: None, piece: Some(piece), of: Vec::new(), key });
    }

    /// Ice, with what of it melts before it is used.
    pub(crate) fn ice(&mut self, used: Mass, all: Mass) {
        let line = Line { amount: Amount::Mass(all), taken: taken_as("ice", &[]), ..plain("ice") };
        let of = vec![("in tins and glasses; the rest melts before use".to_owned(), Amount::Mass(used))];
        put(&mut self.things, Thing { line, fruit: None, piece: None, of, key: "ice".into() });
    }

    /// What there is of something on the shelf.
    pub(crate) fn there(&mut self, line: &Line) {
        match self.made(line) {
            Some((at, each)) => self.preps[at].there += each,
            None => add(&mut self.shelf, line, 1.0, self.bench),
        }
    }

    /// What all of it comes to. A prep is read once, however many are made of it.
    pub(crate) fn bought(mut self) -> Bought {
        let mut takes: Vec<Vec<Option<(usize, f64)>>> = Vec::new();
        while takes.len() < self.preps.len() {
            let lines = self.preps[takes.len()].lines.clone();
            takes.push(lines.iter().map(|line| self.made(line)).collect());
        }
        let each = |of: fn(&Prep) -> f64| self.preps.iter().map(of).collect::<Vec<f64>>();
        let all = makings(&takes, &each(|prep| prep.wanted), &each(|prep| prep.there));
        for (at, (prep, times)) in self.preps.iter().zip(&all.times).enumerate().filter(|(_, (_, times))| **times > 0.0)
        {
            for (which, line) in prep.lines.iter().enumerate() {
                if takes[at][which].is_none() || all.cut.contains(&(at, which)) {
                    add(&mut self.things, line, *times, self.bench);
                }
            }
        }
        for circle in all.circles {
            let path: Vec<&str> = circle.iter().map(|at| self.preps[*at].name.as_str()).collect();
            let last = path.last().copied().unwrap_or_default();
            self.said.push(format!("Made of itself: {}. {last} is listed as it is.", path.join(" → ")));
        }
        Bought { things: self.things, shelf: self.shelf, said: self.said }
    }

    /// What a line is made as, and how many makings of that it takes; none for what is bought.
    fn made(&mut self, line: &Line) -> Option<(usize, f64)> {
        let by = made_by(line, self.bench)?;
        let at = self.preps.iter().position(|prep| prep.by == by).unwrap_or_else(|| {
            let prep = self.read(by);
            self.preps.push(prep);
            self.preps.len() - 1
        });
        let gives = Amount::Volume(self.preps[at].gives?);
        Some((at, over(as_measured(line.amount, gives, density(line), None)?, gives)?))
    }

    fn read(&mut self, by: By) -> Prep {
        let bench = self.bench;
        let (name, read, gives, why) = match by {
            By::Prep(place) => {
                let prep = &bench.preps[place];
                (&prep.name, Contents::of_lines(&prep.lines), prep.gives, prep.why.as_str())
            }
            By::Spec(at) => {
                let card = &bench.book.cards[at].value;
                let way = card.ways.first();
                let gives = way.and_then(|way| bench.volume("gives", &way.gives, &mut Vec::new()));
                (&card.name, Contents::of(way.map_or("", |way| &way.lines), bench), gives, "")
            }
        };
        let name = named(name);
        let all = || read.drunk(bench).0.volume(Temperature::TWENTY).ok().filter(|_| read.missing.is_empty());
        let gives = gives.or_else(all).filter(|gives| *gives > Volume::ZERO);
        let lines = match gives {
            Some(_) => self.lines_of(&read, &name),
            None => {
                let why = if why.is_empty() { "How much its parts make is not known." } else { why };
                self.said.push(format!("{why} {name} is listed as it is."));
                Vec::new()
            }
        };
        Prep { by, name, lines, gives, wanted: 0.0, there: 0.0 }
    }

    /// Its lines that can be counted; of the others it is said.
    fn lines_of(&mut self, read: &Contents, of: &str) -> Vec<Line> {
        let mut lines = Vec::new();
        for (line, content) in read.pairs() {
            match (&line.read, content) {
                (Ok(line), _) if key_of(line) == "ice" => {}
                (Ok(line), _) => lines.push(line.clone()),
                (Err(_), Content::Words) => {}
                (Err(_), _) => {
                    self.said.push(format!("“{}”, in {of}: how much is not known, so not listed.", line.typed));
                }
            }
        }
        lines
    }
}

impl Bought {
    /// How much of a thing is still to get: less what is on the shelf; and what that is.
    pub(crate) fn left(&self, thing: &Thing) -> (Amount, Option<Amount>) {
        let amount = thing.line.amount;
        let key = if thing.piece.is_some() { &thing.key[1..] } else { &thing.key };
        let there = self.shelf.iter().find(|there| there.key == key);
        let there = there.and_then(|there| as_measured(there.line.amount, amount, density(&thing.line), None));
        (there.map_or(amount, |there| less(amount, there)), there)
    }
}

#[cfg(test)]
mod tests;
