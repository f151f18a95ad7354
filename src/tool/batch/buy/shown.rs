//! The list as it is shown: by kind, each thing with its packs and their cost, ticked or not.

use super::GOT;
use crate::book::Kind;
use crate::craft::buy::{bill, packs};
use crate::quantity::{Amount, Money, Ratio, Volume};
use crate::reading::bought::Bought;
use crate::reading::from_spec::{FROM, SPEC, href_of};
use crate::reading::rows::{carried, exact_figure, with_said};
use crate::reading::thing::{Piece, Thing};
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Block, Button, Figure, Pour, Pours, Printed, Strip, Tone};
use crate::substance::fruit::Fruit;
use crate::text;

/// What the parts of the list are called, in the order of a way through town.
const GROUPS: [&str; 6] = ["Market", "Dairy and dry", "Bottles", "Ice", "Garnish", "Empty bottles"];
/// What a bottle holds where no price says it, ml: of spirits and liqueurs, and of wine. Common practice, no source.
const BOTTLE: u32 = 700;
const WINE: u32 = 750;
/// A thing to get.
struct Item {
    group: usize,
    pour: Pour,
    is_got: bool,
    cost: Option<Money>,
    /// How much is to get, as a line of a spec; empty for what is none.
    line: String,
}

/// All there is to get.
pub(super) struct List {
    items: Vec<Item>,
    /// What there is enough of.
    enough: Vec<String>,
    said: Vec<String>,
    has_rule: bool,
    has_fruit: bool,
}

impl List {
    /// The list of what is needed; `got` is what was ticked, a line each.
    pub(super) fn of(bought: Bought, got: &str, bench: &Bench) -> List {
        let mut list =
            List { items: Vec::new(), enough: Vec::new(), said: Vec::new(), has_rule: false, has_fruit: false };
        let fruit: Vec<_> = bought.things.iter().filter_map(|thing| thing.fruit).collect();
        for thing in &bought.things {
            let (left, there) = bought.left(thing);
            match left.is_none() {
                true => list.enough.push(name_of(thing)),
                false => list.item(thing, (left, there), (&fruit, got), bench),
            }
        }
        list.said = bought.said;
        // A tick is for so many packs: of more, some are still to get.
        let ticked: Vec<String> =
            list.items.iter().filter(|item| item.is_got).map(|item| item.pour.typed.clone()).collect();
        for item in &mut list.items {
            let mut others: Vec<&str> =
                ticked.iter().map(String::as_str).filter(|typed| *typed != item.pour.typed).collect();
            if !item.is_got {
                others.push(&item.pour.typed);
            }
            item.pour.act = Some(Act::Put(vec![(GOT, others.join("\n"))]));
        }
        list
    }

    /// `fruit` is all fruit that is on the list.
    fn item(
        &mut self,
        thing: &Thing,
        (left, there): (Amount, Option<Amount>),
        (fruit, got): (&[&Fruit], &str),
        bench: &Bench,
    ) {
        let price = thing.price(bench);
        let by_price = price
            .and_then(|price| Some((packs(thing.by_price(left, price)?, thing.usable(price), price.pack)?, price)));
        let bottle = match thing.kind() {
            Some(Kind::Spirit | Kind::Liqueur) => Some(Volume::whole_ml(BOTTLE)),
            Some(Kind::Wine) => Some(Volume::whole_ml(WINE)),
            _ => None,
        };
        let by_rule = bottle.filter(|_| by_price.is_none()).and_then(|bottle| {
            let bottle = Amount::Volume(bottle);
            Some((packs(thing.by_pack(left, bottle)?, Ratio::ONE, bottle)?, bottle))
        });
        self.has_rule |= by_rule.is_some();
        self.has_fruit |= thing.fruit.is_some();
        let amount = match (&by_price, by_rule) {
            (Some((many, price)), _) => in_packs(*many, &price.size, bench),
            (None, Some((many, bottle))) => in_packs(many, &figure(bottle, bench).to_string(), bench),
            (None, None) => by_itself(thing, left, bench),
        };
        let mut need = figure(thing.line.amount, bench).to_string();
        if (thing.fruit.is_some() || thing.eggs(left).is_some()) && (by_price.is_some() || there.is_some()) {
            need = format!("{} ({need})", by_itself(thing, thing.line.amount, bench));
        }
        let note = match there {
            Some(there) => format!("need {need}, have {}", figure(there, bench)),
            None if need == amount.to_string() => String::new(),
            None => format!("need {need}"),
        };
        let besides = match (price, &by_price) {
            (Some(price), None) => format!("its price is for {}", price.size),
            (Some(price), _) if price.usable < Ratio::ONE && thing.fruit.is_none() => {
                format!("{} % of it is used", text::count(price.usable.value() * 100.0, bench.decimal))
            }
            _ => String::new(),
        };
        let of: Vec<String> =
            thing.of.iter().map(|(name, amount)| format!("{} {name}", figure(*amount, bench))).collect();
        let of = if of.is_empty() { String::new() } else { format!("for {}", of.join(" and ")) };
        let note = with_said(with_said(note, &of), &besides);
        let note =
            match fruit.iter().find(|fruit| thing.piece == Some(Piece::Garnish) && is_of(&thing.line.name, fruit)) {
                Some(fruit) => with_said(note, &format!("{} for juice are counted apart", fruit.plural)),
                None => note,
            };
        let cost = by_price.and_then(|(many, price)| Some(price.paid * Ratio::from_value(f64::from(many)).ok()?));
        let name = name_of(thing);
        let typed = format!("{amount} {name}");
        let beneath = match cost {
            Some(cost) => bench.money(cost.units()).to_string(),
            None if bench.prices.is_empty() => String::new(),
            None => "no price".into(),
        };
        let is_got = got.lines().any(|line| line == typed);
        // More than a few pieces would need a unit where their price is typed.
        let line = match (thing.piece, left) {
            (Some(Piece::Bottle), _) => String::new(),
            (_, Amount::Count(_)) => format!("1 {name}"),
            _ => format!("{} {name}", carried(left, bench)),
        };
        let pour = Pour { name, amount, beneath, note, tick: Some(is_got), typed, ..Pour::default() };
        self.items.push(Item { group: group(thing), pour, is_got, cost, line });
    }

    /// Whether nothing is to get.
    pub(super) const fn is_empty(&self) -> bool {
        self.items.is_empty()
    }

    /// The parts of the list, each under its heading, and what there is enough of. Each has a place of its own.
    pub(super) fn blocks(&self) -> Vec<Block> {
        let mut blocks = vec![Block::Pours(Pours::default())];
        for (at, title) in GROUPS.into_iter().enumerate() {
            let lines: Vec<Pour> =
                self.items.iter().filter(|item| item.group == at).map(|item| item.pour.clone()).collect();
            match lines.is_empty() {
                true => blocks.extend([Block::Nothing, Block::Nothing]),
                false => blocks.extend([Block::Heading(title), Block::Pours(Pours { lines, serves: 1 })]),
            }
        }
        blocks.push(match self.enough.is_empty() {
            true => Block::Nothing,
            false => Block::Remark(self.enough_words()),
        });
        blocks
    }

    fn enough_words(&self) -> String {
        format!("Enough on the shelf: {}.", self.enough.join(", "))
    }

    /// What the strip says, what is to mind, and the list as text.
    pub(super) fn answer(&self, mut answer: Answer, is_all: bool, bench: &Bench) -> Answer {
        answer.cautions.extend(self.said.iter().cloned());
        if self.items.is_empty() && self.enough.is_empty() {
            return answer.without_answer("Choose a spec, or type what is needed.");
        }
        let things: Vec<_> = self.items.iter().map(|item| (item.is_got, item.cost)).collect();
        let bill = bill(&things);
        let money = |money: Money| bench.money(money.units());
        let also = match bill.unknown {
            _ if things.is_empty() => "All of it is on the shelf".into(),
            unknown if unknown == things.len() => "No prices yet".into(),
            unknown => {
                let least = if unknown == 0 { "" } else { "at least " };
                format!("{least}{} of {} still to pay", money(bill.to_pay).value, money(bill.whole))
            }
        };
        let figure = Figure::new(bill.open.to_string(), format!("of {} to get", things.len()));
        let below = if is_all { String::new() } else { "Not all is counted: see what is marked".into() };
        answer.strip = Strip { figures: vec![figure], also, below, tone: Tone::Answer, ..Strip::default() };
        answer.head.push(Button::new("Print", Act::Print));
        let ticked = self.items.iter().filter(|item| item.is_got).count();
        if ticked > 0 {
            answer.foot.push(Button::new("Untick all", Act::Put(vec![(GOT, String::new())])));
        }
        if bill.unknown > 0 {
            let missing = self.items.iter().filter(|item| item.cost.is_none() && !item.line.is_empty());
            let lines: Vec<&str> = missing.map(|item| item.line.as_str()).collect();
            // They are of no one spec.
            let pair = |name: &str, text: String| (name.to_owned(), text);
            let pairs = [pair(SPEC, lines.join("\n")), pair("makes", "1".into()), pair(FROM, String::new())];
            answer.carry("Type prices", href_of(Route::Cost, &pairs));
        }
        answer.text = Some(self.as_text(&answer.strip.below));
        self.sources(&mut answer);
        answer
    }

    fn sources(&self, answer: &mut Answer) {
        let mut say = |words: &str| answer.remarks.push(words.to_owned());
        say(
            "Lines of specs × serves, preps down to their parts, less what is on the shelf, rounded up to packs. Packs and what of them is used by your prices.",
        );
        if self.has_rule {
            say("Without a price a bottle of spirit or liqueur is 700 ml, of wine 750 ml (rule of thumb).");
        }
        if self.has_fruit {
            say(
                "Fruit by your own yield, else by what your price says of it is used, else by rule of thumb: see Fruit. Juice that you have a price for by volume is bought as juice.",
            );
        }
        say(
            "Water is not bought: simple, rich and demerara syrup and saline without a price of yours are their sugar or salt, by the library. What is lost in making a prep is in what it gives.",
        );
    }

    /// What is still to get, as plain text.
    fn as_text(&self, minded: &str) -> String {
        let mut text = vec!["To buy".to_owned()];
        for (at, title) in GROUPS.into_iter().enumerate() {
            let mut open = self.items.iter().filter(|item| item.group == at && !item.is_got).peekable();
            if open.peek().is_some() {
                text.push(format!("\n{title}"));
            }
            text.extend(open.map(|Item { pour, .. }| {
                let beside = pour.beside();
                let comma = if beside.is_empty() { "" } else { ", " };
                format!("{}{comma}{beside}", pour.typed)
            }));
        }
        if !self.enough.is_empty() {
            text.push(format!("\n{}", self.enough_words()));
        }
        if !minded.is_empty() {
            text.push(format!("\n{minded}"));
        }
        text.join("\n")
    }

    /// Its head on paper.
    pub(super) fn printed(&self, of: &str, answer: &Answer, bench: &Bench) -> Block {
        if answer.strip.tone != Tone::Answer {
            return Block::Nothing;
        }
        let figure = answer.strip.figures.first().map_or_else(String::new, ToString::to_string);
        Block::Printed(Printed {
            name: "To buy".into(),
            how: of.to_owned(),
            strip: [figure, answer.strip.also.clone()],
            day: bench.clock.day(bench.clock.now()),
        })
    }
}

/// What it is called: of fruit, many.
fn name_of(thing: &Thing) -> String {
    thing.fruit.map_or_else(|| thing.line.name.clone(), |fruit| fruit.plural.to_owned())
}

fn group(thing: &Thing) -> usize {
    match thing.kind() {
        _ if thing.fruit.is_some() => 0,
        _ if thing.is_ice() => 3,
        _ if thing.piece.is_some() => {
            if thing.piece == Some(Piece::Garnish) {
                4
            } else {
                5
            }
        }
        Some(Kind::Juice | Kind::Egg) => 0,
        Some(Kind::Dairy | Kind::Powder | Kind::Syrup | Kind::Brew) => 1,
        Some(_) => 2,
        // Leaves and twists are counted, and what is weighed is dry.
        None => match thing.line.amount {
            Amount::Count(_) => 0,
            Amount::Mass(_) => 1,
            Amount::Volume(_) => 2,
        },
    }
}

/// Whether a garnish is named after a fruit.
fn is_of(garnish: &str, fruit: &Fruit) -> bool {
    let is = |word: &str| [fruit.name, fruit.plural].iter().any(|name| name.eq_ignore_ascii_case(word));
    garnish.split(|c: char| !c.is_ascii_alphabetic()).any(is)
}

/// "700 ml", "3 × 700 ml".
fn in_packs(many: u32, size: &str, bench: &Bench) -> Figure {
    let (value, unit) = size.rsplit_once(' ').unwrap_or((size, ""));
    match many {
        1 => Figure::new(value, unit),
        _ => Figure::new(format!("{} × {value}", text::count(f64::from(many), bench.decimal)), unit),
    }
}

/// What nothing says the pack of: fruit and eggs by the piece, whole ones; anything else as it is needed.
fn by_itself(thing: &Thing, left: Amount, bench: &Bench) -> Figure {
    let whole = |count: f64, unit: &str| Figure::new(text::count((count - 1e-9).ceil(), bench.decimal), unit);
    match (left, thing.fruit, thing.eggs(left)) {
        (Amount::Mass(mass), Some(fruit), _) => whole(mass.g() / fruit.each, ""),
        (.., Some(eggs)) => whole(eggs, if eggs > 1.0 { "eggs" } else { "egg" }),
        (Amount::Count(count), ..) => whole(count.value(), ""),
        _ => figure(left, bench),
    }
}

/// How much it is; of a weight kilograms from one up.
fn figure(amount: Amount, bench: &Bench) -> Figure {
    match amount {
        Amount::Volume(volume) => bench.headline(volume, None),
        Amount::Mass(mass) if mass.g() >= 1000.0 => {
            bench.weighed(mass, Figure::new(text::count(mass.g() / 1000.0, bench.decimal), "kg"))
        }
        Amount::Mass(mass) => bench.weight(mass),
        Amount::Count(_) => exact_figure(amount, None, bench),
    }
}
