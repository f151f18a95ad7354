//! A thing that is bought: what a line comes to of it, and what is paid for that. Juice is bought as fruit, a syrup as its sugar.

use super::paid::{own, prices};
use super::yields::of_fruit;
use crate::book::{Kind, Line, Measured, Price, Taken, ingredient, taken_as, whole};
use crate::craft::buy::{as_measured, over};
use crate::craft::fruit::{Product, fruit_for, share_of};
use crate::craft::pour::pour;
use crate::craft::scale::density_of;
use crate::quantity::{Amount, Density, Mass, Money, Ratio, Volume};
use crate::screen::Bench;
use crate::substance::fruit::{FRUIT, Fruit};

/// Millilitres of one egg, of its white and of its yolk. Common practice, no source.
const EGGS: [(&str, f64); 3] = [("whole-egg", 48.0), ("egg-white", 30.0), ("egg-yolk", 18.0)];
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
    pub(super) key: String,
}

/// What is got by the piece.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Piece {
    /// It goes on a drink.
    Garnish,
    /// A batch goes into it.
    Bottle,
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
pub(super) fn density(line: &Line) -> Option<Density> {
    let (density, is_guess) = density_of(line);
    (!is_guess).then_some(density)
}

pub(super) fn key_of(line: &Line) -> &'static str {
    line.taken.map_or("", |taken| taken.ingredient.key)
}

/// Adds so many times a line to a list. Water comes from the tap.
pub(super) fn add(list: &mut Vec<Thing>, line: &Line, times: f64, bench: &Bench) {
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
pub(super) fn put(list: &mut Vec<Thing>, thing: Thing) {
    for there in list.iter_mut().filter(|there| there.key == thing.key) {
        let more = as_measured(thing.line.amount, there.line.amount, density(&thing.line), None);
        let Some(sum) = more.and_then(|more| there.line.amount.and(more)) else { continue };
        there.line.amount = sum;
        for (name, amount) in thing.of {
            let alike = there.of.iter_mut().filter(|(other, _)| *other == name);
            match alike.filter_map(|(_, sum)| Some((sum.and(amount)?, sum))).next() {
                Some((more, sum)) => *sum = more,
                None => there.of.push((name, amount)),
            }
        }
        return;
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
pub(crate) fn plain(name: &str) -> Line {
    let amount = Amount::Count(Ratio::ZERO);
    Line { amount, unit: None, name: name.to_owned(), taken: None, unread: None, said: String::new() }
}

/// The fruit whose juice a line is; none where it is none, or the bar's own.
pub(crate) fn juice_of(line: &Line, bench: &Bench) -> Option<&'static Fruit> {
    let (fruit, _, product) = pressed(line).filter(|_| own(line, bench).is_none())?;
    (product == Product::Juice).then_some(fruit)
}

/// The fruit that a line is pressed of, what it is taken as, and whether that is juice or purée.
fn pressed(line: &Line) -> Option<(&'static Fruit, Taken, Product)> {
    let taken = line.taken.filter(|taken| taken.ingredient.kind == Kind::Juice)?;
    let begins =
        |fruit: &&Fruit| line.name.get(..fruit.name.len()).is_some_and(|name| name.eq_ignore_ascii_case(fruit.name));
    let fruit = match taken.ingredient.key {
        "juice" | "puree" => FRUIT.iter().find(begins),
        key => FRUIT.iter().find(|fruit| fruit.ingredient == key),
    }?;
    let product = match taken.ingredient.key {
        "puree" | "raspberry-puree" | "passion-fruit" => Product::Puree,
        _ => Product::Juice,
    };
    Some((fruit, taken, product))
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
    let (fruit, taken, product) = pressed(line)?;
    let is_of_juice = |price: &Price| match price.pack {
        Amount::Volume(_) => true,
        // By weight, and all of it: purée in tubs.
        Amount::Mass(_) => price.usable >= Ratio::ONE && !is_called(fruit, &price.name),
        Amount::Count(_) => false,
    };
    if newest(line, bench).is_some_and(is_of_juice) {
        return None;
    }
    // What the bar wrote with the price of a fruit is what of it is used.
    let paid = fruit_price(fruit, line, bench).map(|price| price.usable).filter(|usable| *usable < Ratio::ONE);
    let usual = || Ratio::from_value(share_of(fruit, product)[1]).ok();
    let share = bench.own_yield(&of_fruit(fruit, product)).or(paid).or_else(usual)?;
    Some((fruit, fruit_for(pour(&taken, line.amount)?.mass(), share)?))
}
