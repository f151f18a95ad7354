//! What lines come to in what is bought: preps of the bar's own and specs of the book down to their parts, juice to its fruit.

use super::cost::{By, made_by, own, prices};
use super::yields::of_fruit;
use super::{Content, Contents, named};
use crate::book::{Kind, Line, Measured, Price, Taken, ingredient, whole};
use crate::craft::buy::{as_measured, less, makings, over};
use crate::craft::fruit::{Product, fruit_for, share_of};
use crate::craft::pour::pour;
use crate::craft::scale::density_of;
use crate::quantity::{Amount, Density, Mass, Ratio, Temperature, Volume};
use crate::screen::Bench;
use crate::substance::fruit::{FRUIT, Fruit};

/// Millilitres of one egg, of its white and of its yolk. Common practice, no source.
const EGGS: [(&str, f64); 3] = [("whole-egg", 48.0), ("egg-white", 30.0), ("egg-yolk", 18.0)];

/// Something that is bought.
pub(crate) struct Thing {
    /// What it is, as the first line that needs it says, and how much.
    pub(crate) line: Line,
    /// The fruit that it is, by weight; none for anything else.
    pub(crate) fruit: Option<&'static Fruit>,
    /// What is the same by another word is the same thing.
    key: String,
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
        let there = self.shelf.iter().find(|there| there.key == thing.key);
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

    /// What sort of thing it is; none for what nothing is like.
    pub(crate) fn kind(&self) -> Option<Kind> {
        self.line.taken.map(|taken| taken.ingredient.kind)
    }
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
    let fruit = if own.is_none() { fruit_of(&line, bench) } else { None };
    let key = match (fruit, own) {
        (Some((fruit, mass)), _) => {
            line.amount = Amount::Mass(mass);
            fruit.plural.to_owned()
        }
        (None, Some(own)) => own.to_ascii_lowercase(),
        (None, None) => whole(&line.name).map_or_else(|| line.name.to_ascii_lowercase(), |known| known.key.to_owned()),
    };
    let fruit = fruit.map(|(fruit, _)| fruit);
    for there in list.iter_mut().filter(|there| there.key == key) {
        let more = as_measured(line.amount, there.line.amount, density(&line), None);
        if let Some(sum) = more.and_then(|more| there.line.amount.and(more)) {
            there.line.amount = sum;
            return;
        }
    }
    list.push(Thing { line, fruit, key });
}

/// The fruit that a line is bought as, and how much of it: fruit that is counted or weighed, or what its juice or purée
/// takes. None where the bar buys the juice.
fn fruit_of(line: &Line, bench: &Bench) -> Option<(&'static Fruit, Mass)> {
    let is_called =
        |fruit: &&Fruit| [fruit.name, fruit.plural].iter().any(|name| name.eq_ignore_ascii_case(&line.name));
    let called = FRUIT.iter().find(is_called);
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
    if newest(line, bench).is_some_and(|price| matches!(price.pack, Amount::Volume(_))) {
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
