//! What lines come to in what is bought: preps of the bar's own and specs of the book down to their parts, juice to its fruit.

use super::cost::{By, made_by, own, prices};
use super::yields::of_fruit;
use super::{Content, Contents, named};
use crate::book::{Kind, Line, Measured, Price, Taken, ingredient, taken_as, whole};
use crate::craft::buy::{and, as_measured, less, makings, over};
use crate::craft::fruit::{Product, fruit_for, share_of};
use crate::craft::pour::pour;
use crate::craft::scale::density_of;
use crate::quantity::{Amount, Density, Mass, Money, Ratio, Temperature, Volume};
use crate::screen::Bench;
use crate::substance::fruit::{FRUIT, Fruit};
use crate::text::{Dimension, read_spec};

/// Millilitres of one egg, of its white and of its yolk. Common practice, no source.
const EGGS: [(&str, f64); 3] = [("whole-egg", 48.0), ("egg-white", 30.0), ("egg-yolk", 18.0)];
/// What is written where nothing goes on a drink.
const NO_GARNISH: [&str; 4] = ["none", "no garnish", "-", "–"];
/// What is made of water and one thing alone, and what that is.
const DISSOLVED: [(&str, &str); 6] = [
    ("simple-syrup", "sugar"),
    ("simple-syrup-cups", "sugar"),
    ("rich-syrup", "sugar"),
    ("rich-syrup-cups", "sugar"),
    ("demerara-syrup", "demerara sugar"),
    ("saline", "salt"),
];

/// Something that is bought.
pub(crate) struct Thing {
    /// What it is, as the first line that needs it says, and how much.
    pub(crate) line: Line,
    /// The fruit that it is, by weight; none for anything else.
    pub(crate) fruit: Option<&'static Fruit>,
    /// What it is besides what is poured; none for that.
    pub(crate) piece: Option<Piece>,
    /// What it is for, where that is called something else, and how much of that.
    pub(crate) of: Vec<(String, Amount)>,
    /// What is the same by another word is the same thing.
    key: String,
}

/// What is got by the piece.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Piece {
    /// It goes on a drink.
    Garnish,
    /// A batch goes into it.
    Bottle,
}

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
    pub(crate) fn spec(&mut self, read: Contents, times: f64, of: &str) {
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
                (&prep.name, Contents::of_lines(prep.lines.clone()), prep.gives, prep.why.as_str())
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
            Some(_) => self.lines_of(read, &name),
            None => {
                let why = if why.is_empty() { "How much its parts make is not known." } else { why };
                self.said.push(format!("{why} {name} is listed as it is."));
                Vec::new()
            }
        };
        Prep { by, name, lines, gives, wanted: 0.0, there: 0.0 }
    }

    /// Its lines that can be counted; of the others it is said.
    fn lines_of(&mut self, read: Contents, of: &str) -> Vec<Line> {
        let mut lines = Vec::new();
        for (line, content) in read.lines.into_iter().zip(&read.each) {
            match (line.read, content) {
                (Ok(line), _) if key_of(&line) == "ice" => {}
                (Ok(line), _) => lines.push(line),
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

impl Thing {
    /// What is paid for it now: of fruit by any of its words, of its juice what is paid for fruit; of the white of an egg what
    /// is paid for eggs.
    pub(crate) fn price<'a>(&self, bench: &'a Bench) -> Option<&'a Price> {
        if let Some(fruit) = self.fruit {
            return fruit_price(fruit, &self.line, bench);
        }
        let of_eggs = || {
            self.eggs(self.line.amount)?;
            let taken = ingredient(EGGS[0].0).map(|ingredient| Taken { ingredient, measured: Measured::default() });
            newest(&Line { name: "eggs".into(), taken, ..self.line.clone() }, bench)
        };
        newest(&self.line, bench).or_else(of_eggs)
    }

    /// What of a pack ends in drinks: of fruit that is in how much of it is needed.
    pub(crate) fn usable(&self, price: &Price) -> Ratio {
        if self.fruit.is_some() { Ratio::ONE } else { price.usable }
    }

    /// How many eggs so much of it is, where it is of eggs.
    pub(crate) fn eggs(&self, amount: Amount) -> Option<f64> {
        let (_, each) = EGGS.iter().find(|(key, _)| *key == key_of(&self.line))?;
        let Amount::Volume(volume) = amount else { return None };
        Some((volume.ml() / each - 1e-9).ceil())
    }

    /// An amount of it by the measure of what is paid for.
    pub(crate) fn by_price(&self, amount: Amount, price: &Price) -> Option<Amount> {
        match self.eggs(amount) {
            Some(eggs) if price.library == EGGS[0].0 => Volume::from_ml(eggs * EGGS[0].1).ok().map(Amount::Volume),
            _ => self.by_pack(amount, price.pack),
        }
    }

    /// An amount of it by the measure of a pack.
    pub(crate) fn by_pack(&self, amount: Amount, pack: Amount) -> Option<Amount> {
        let each = self.fruit.and_then(|fruit| Mass::from_g(fruit.each).ok());
        as_measured(amount, pack, density(&self.line).filter(|_| self.fruit.is_none()), each)
    }

    /// Whether it is ice.
    pub(crate) fn is_ice(&self) -> bool {
        key_of(&self.line) == "ice"
    }

    /// What sort of thing it is; none for what nothing is like.
    pub(crate) fn kind(&self) -> Option<Kind> {
        self.line.taken.map(|taken| taken.ingredient.kind)
    }
}

/// What a line costs that is paid for as something else: juice as its fruit, a syrup as its sugar, the white of an egg as
/// an egg; the price, and how much of that it takes.
pub(crate) fn through<'a>(line: &Line, bench: &'a Bench) -> Option<(Money, &'a Price, Amount)> {
    let mut list = Vec::new();
    add(&mut list, line, 1.0, bench);
    let thing = list.pop()?;
    let is_other = thing.fruit.is_some() || !thing.of.is_empty() || newest(line, bench).is_none();
    let price = thing.price(bench).filter(|_| is_other)?;
    let amount = thing.by_price(thing.line.amount, price)?;
    let packs = over(amount, price.pack)? / thing.usable(price).value();
    Some((price.paid * Ratio::from_value(packs).ok()?, price, amount))
}

fn newest<'a>(line: &Line, bench: &'a Bench) -> Option<&'a Price> {
    prices(line, bench).first().copied()
}

fn fruit_price<'a>(fruit: &Fruit, line: &Line, bench: &'a Bench) -> Option<&'a Price> {
    let of = |name: &str| newest(&Line { name: name.to_owned(), ..line.clone() }, bench);
    let found = [fruit.plural, fruit.name, &line.name].into_iter().find_map(of);
    found.filter(|price| !matches!(price.pack, Amount::Volume(_)))
}

/// What one millilitre of a line weighs, where that is known.
fn density(line: &Line) -> Option<Density> {
    let (density, is_guess) = density_of(line);
    (!is_guess).then_some(density)
}

fn key_of(line: &Line) -> &'static str {
    line.taken.map_or("", |taken| taken.ingredient.key)
}

/// Adds so many times a line to a list. Water comes from the tap.
fn add(list: &mut Vec<Thing>, line: &Line, times: f64, bench: &Bench) {
    let own = own(line, bench);
    if key_of(line) == "water" && own.is_none() {
        return;
    }
    let Ok(times) = Ratio::from_value(times) else { return };
    let mut line = Line { amount: line.amount.times(times), ..line.clone() };
    let mut of = Vec::new();
    if own.is_none()
        && let Some(solid) = dissolved_in(&line, bench)
    {
        of.push((line.name, line.amount));
        line = solid;
    }
    let fruit = if own.is_none() { fruit_of(&line, bench) } else { None };
    let key = match (fruit, own) {
        (Some((fruit, mass)), _) => {
            line.amount = Amount::Mass(mass);
            fruit.plural.to_owned()
        }
        (None, Some(own)) => own.to_ascii_lowercase(),
        (None, None) => whole(&line.name).map_or_else(|| line.name.to_ascii_lowercase(), |known| known.key.to_owned()),
    };
    put(list, Thing { line, fruit: fruit.map(|(fruit, _)| fruit), piece: None, of, key });
}

/// Adds a thing to a list: to what is the same, where both are measured alike.
fn put(list: &mut Vec<Thing>, thing: Thing) {
    for there in list.iter_mut().filter(|there| there.key == thing.key) {
        if let Some(more) = as_measured(thing.line.amount, there.line.amount, density(&thing.line), None) {
            there.line.amount = and(there.line.amount, more);
            for (name, amount) in thing.of {
                match there
                    .of
                    .iter_mut()
                    .find(|(other, sum)| *other == name && as_measured(amount, *sum, None, None).is_some())
                {
                    Some((_, sum)) => *sum = and(*sum, amount),
                    None => there.of.push((name, amount)),
                }
            }
            return;
        }
    }
    list.push(thing);
}

/// Of a syrup or salt water of the library that the bar does not buy, what is stirred into its water.
fn dissolved_in(line: &Line, bench: &Bench) -> Option<Line> {
    let taken = line.taken?;
    let (key, name) = DISSOLVED.iter().find(|(key, _)| *key == taken.ingredient.key)?;
    // A syrup of something else is no more than like it.
    let called = line.name.split(['(', ',']).next()?.trim_matches(|c: char| !c.is_ascii_alphabetic());
    whole(called).filter(|known| known.key == *key)?;
    let mix = pour(&taken, line.amount)?;
    let mass = if *name == "salt" { mix.other } else { mix.sugar() };
    let is_bought = newest(line, bench).is_some();
    (!is_bought).then(|| Line { amount: Amount::Mass(mass), taken: taken_as(name, &[]), ..plain(name) })
}

/// A line that says nothing but a name.
fn plain(name: &str) -> Line {
    let amount = Amount::Count(Ratio::ZERO);
    Line { amount, unit: None, name: name.to_owned(), taken: None, unread: None, said: String::new() }
}

/// The fruit that a line is bought as, and how much of it: fruit that is counted or weighed, or what its juice or purée
/// takes. None where the bar buys the juice.
fn fruit_of(line: &Line, bench: &Bench) -> Option<(&'static Fruit, Mass)> {
    let is_called =
        |fruit: &Fruit, name: &str| [fruit.name, fruit.plural].iter().any(|of| of.eq_ignore_ascii_case(name));
    let called = FRUIT.iter().find(|fruit| is_called(fruit, &line.name));
    match (called, line.amount) {
        (Some(fruit), Amount::Mass(mass)) => return Some((fruit, mass)),
        (Some(fruit), Amount::Count(count)) => return Some((fruit, Mass::from_g(fruit.each).ok()? * count)),
        _ => {}
    }
    let taken = line.taken.filter(|taken| taken.ingredient.kind == Kind::Juice)?;
    let begins =
        |fruit: &&Fruit| line.name.get(..fruit.name.len()).is_some_and(|name| name.eq_ignore_ascii_case(fruit.name));
    let fruit = match taken.ingredient.key {
        "juice" | "puree" => FRUIT.iter().find(begins),
        key => FRUIT.iter().find(|fruit| fruit.ingredient == key),
    }?;
    let is_of_juice = |price: &Price| match price.pack {
        Amount::Volume(_) => true,
        // By weight, and all of it: purée in tubs.
        Amount::Mass(_) => price.usable >= Ratio::ONE && !is_called(fruit, &price.name),
        Amount::Count(_) => false,
    };
    if newest(line, bench).is_some_and(is_of_juice) {
        return None;
    }
    let product = match taken.ingredient.key {
        "puree" | "raspberry-puree" | "passion-fruit" => Product::Puree,
        _ => Product::Juice,
    };
    // What the bar wrote with the price of a fruit is what of it is used.
    let paid = fruit_price(fruit, line, bench).map(|price| price.usable).filter(|usable| *usable < Ratio::ONE);
    let usual = || Ratio::from_value(share_of(fruit, product)[1]).ok();
    let share = bench.own_yield(&of_fruit(fruit, product)).or(paid).or_else(usual)?;
    Some((fruit, fruit_for(pour(&taken, line.amount)?.mass(), share)?))
}

#[cfg(test)]
mod tests;
