//! Cost: what a drink costs, line by line, and what to ask for it.

mod money;

use crate::book::{Line, Price};
use crate::quantity::{Amount, Money, Ratio};
use crate::reading::cost::{Cost, costs, sum_of};
use crate::reading::paid::prices;
use crate::reading::rows::{exact_words, with_said};
use crate::reading::thing::{juice_of, through};
use crate::reading::{self, Content, Contents, counted_row, from_spec};
use crate::screen::pad::Keys;
use crate::screen::picture::{Bar, Hatch, Picture};
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Block, Button, Input, Opt, Problem, Row, Tool, choice, form, plural};
use crate::substance::mix::Mix;
use crate::text::{self, Dimension, SpecLine};

form! {
    /// What is typed and chosen.
    CostForm {
        /// The spec, a line for each ingredient.
        spec = reading::EXAMPLE,
        /// Serves the spec makes as written.
        makes = "1",
        /// Serves that are costed together.
        serves = "1",
        /// The price on the menu.
        menu = "",
        /// The tax on it, percent.
        tax = "",
        /// Where the tax is: a key of [`TaxIs`].
        tax_is = "in",
        /// Garnish, glass and ice of one serve.
        extras = "",
        /// The pour cost to come to, percent.
        aim = "20",
        /// The line that a price is typed for, by its name; empty for the first without one.
        price_of = "",
        /// What a pack of that costs: "24.00 for 700 ml".
        price = "",
        /// Prices that were typed for other lines and not kept, a line each: the name, a tab, the price.
        typed = "",
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
    }
}

const SPEC: &str = "spec";
const MAKES: &str = "makes";
const SERVES: &str = "serves";
const MENU: &str = "menu";
const TAX: &str = "tax";
const TAX_IS: &str = "tax_is";
const EXTRAS: &str = "extras";
const AIM: &str = "aim";
const PRICE_OF: &str = "price_of";
const PRICE: &str = "price";

/// Where the tax on a drink is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum TaxIs {
    /// In the price on the menu.
    In,
    /// Added to it.
    Added,
}

choice! { TaxIs:
    In = "in", "in the price";
    Added = "added", "added to it";
}

impl Tool for CostForm {
    fn is_tall(&self) -> bool {
        true
    }

    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let read = Contents::of(&self.spec, bench);
        self.laid(&read, &costs(&read, bench), bench)
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let read = Contents::of(&self.spec, bench);
        self.answered(&read, &costs(&read, bench), bench)
    }

    fn show(&mut self, bench: &Bench) -> (Vec<Block>, Answer) {
        let read = Contents::of(&self.spec, bench);
        let costs = costs(&read, bench);
        self.price_of = self.asked(&read, &costs);
        (self.laid(&read, &costs, bench), self.answered(&read, &costs, bench))
    }

    fn empty(&mut self) {
        self.spec.clear();
        self.menu.clear();
        self.price.clear();
        self.typed.clear();
    }

    fn take(&mut self, name: &str, text: &str) {
        match name {
            SPEC => text.clone_into(&mut self.spec),
            MAKES => text.clone_into(&mut self.makes),
            SERVES => text.clone_into(&mut self.serves),
            PRICE_OF => self.turn_to(text),
            _ => {}
        }
    }
}

/// Lines that can have a price, and whether they lack one.
fn to_price<'a>(read: &'a Contents, costs: &[Cost<'_>]) -> impl Iterator<Item = (&'a Line, bool)> {
    read.lines.iter().zip(costs).filter_map(|(line, cost)| {
        let is_missing = matches!(cost, Cost::Unpriced | Cost::Unlike(_));
        Some((line.read.as_ref().ok()?, is_missing))
    })
}

impl CostForm {
    /// Prices that were typed for other lines: their names, and what was typed.
    fn typed(&self) -> impl Iterator<Item = (&str, &str)> {
        self.typed.lines().filter_map(|line| line.split_once('\t'))
    }

    /// Asks for the price of another line. What is typed stays with the line that it was typed for.
    fn turn_to(&mut self, name: &str) {
        if name == self.price_of {
            return;
        }
        let now = (self.price_of.as_str(), self.price.trim());
        let is_left = |(of, price): &(&str, &str)| *of != name && !price.is_empty();
        let all = self.typed().filter(|(of, _)| *of != now.0).chain([now]).filter(is_left);
        let left: Vec<String> = all.map(|(of, price)| format!("{of}\t{price}")).collect();
        let price = self.typed().find(|(of, _)| *of == name).map_or("", |(_, price)| price).to_owned();
        (self.typed, self.price, self.price_of) = (left.join("\n"), price, name.to_owned());
    }

    /// The line that a price is typed for: the one chosen, while it is there or has a price typed; else the first that lacks
    /// one. Empty for none.
    fn asked(&self, read: &Contents, costs: &[Cost<'_>]) -> String {
        if !self.price_of.is_empty() && !self.price.trim().is_empty() {
            return self.price_of.clone();
        }
        let mut lines = to_price(read, costs);
        let chosen = lines.find(|(line, _)| line.name == self.price_of);
        let asked = chosen.or_else(|| to_price(read, costs).find(|(_, is_missing)| *is_missing));
        asked.map_or(String::new(), |(line, _)| line.name.clone())
    }

    fn laid(&self, read: &Contents, costs: &[Cost<'_>], bench: &Bench) -> Vec<Block> {
        let [from, others] = from_spec::fields(Route::Cost, &self.from_spec, Some(&self.spec), bench);
        let placeholder = reading::PLACEHOLDER;
        let mut blocks = vec![
            from,
            others,
            Block::field(SPEC, "The spec, a line for each ingredient", Input::Lines { placeholder }),
        ];
        let asked = self.asked(read, costs);
        if asked.is_empty() {
            blocks.extend([Block::Nothing, Block::Nothing, Block::Nothing]);
        } else {
            let mut options: Vec<Opt> = Vec::new();
            for (line, is_missing) in to_price(read, costs) {
                if options.iter().all(|there| there.key != line.name) {
                    let missing = if is_missing { " (no price)" } else { "" };
                    options.push(Opt::new(line.name.as_str(), format!("{}{missing}", line.name)));
                }
            }
            for name in [asked.as_str()].into_iter().chain(self.typed().map(|(name, _)| name)) {
                if options.iter().all(|there| there.key != name) {
                    options.push(Opt::new(name, name));
                }
            }
            blocks.extend([
                Block::pick(PRICE_OF, "Price of", options),
                Block::field(PRICE, "A pack costs", Input::Words { placeholder: "like 24.00 for 700 ml" }),
                Block::Buttons(Vec::new()),
            ]);
        }
        blocks.extend([
            Block::amount(MAKES, "The spec makes", Keys::Count),
            Block::amount(SERVES, "Serves", Keys::Count),
            Block::amount(MENU, "On the menu", Keys::Count),
            Block::amount(TAX, "Tax", Keys::Percent),
            match self.tax.trim() {
                "" => Block::Nothing,
                _ => Block::chips::<TaxIs>(TAX_IS, "Tax is", true),
            },
            Block::amount(EXTRAS, "Garnish, glass, ice", Keys::Count),
            Block::amount(AIM, "Pour cost to aim at", Keys::Percent),
            Block::Cells("", Vec::new()),
            Block::Pictures(Vec::new()),
            Block::Table("", Vec::new()),
        ]);
        blocks
    }

    fn answered(&self, read: &Contents, costs: &[Cost<'_>], bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        if read.lines.is_empty() {
            return answer.without_answer("Type or paste a spec, a line for each ingredient.");
        }
        reading::ask_part(&mut answer, SPEC, &self.spec, &read.lines, bench);
        self.keep_price(&mut answer, &self.asked(read, costs), read, bench);
        let typed: Vec<String> = self.typed().map(|(name, price)| format!("{price} for {name}")).collect();
        if !typed.is_empty() {
            answer.notes.push(format!("Typed and not kept yet: {}. Tap Price there to go on.", typed.join("; ")));
        }
        let makes = match self.makes.trim() {
            "" => Some(Ratio::ONE),
            makes => bench.count(MAKES, makes, &mut answer.problems),
        };
        let asked = self.ask(&mut answer, bench);
        let (Some(makes), Some(asked)) = (makes, asked) else { return answer.without_answer("") };
        let each = makes.inverse().unwrap_or(Ratio::ONE);
        let sum = sum_of(costs);
        answer.leads = match sum.unknown {
            0 => String::new(),
            count if costs.iter().any(|cost| matches!(cost, Cost::Unread)) => {
                format!("{count} {} not costed", plural(count, "line", "lines"))
            }
            count => format!("{count} {} missing", plural(count, "price", "prices")),
        };
        answer.rows_title = "What costs what";
        let whole = sum.known * each + asked.extras;
        for (at, (pair, cost)) in read.pairs().zip(costs).enumerate() {
            let is_dearest = sum.dearest == Some(at);
            let share = cost.money().filter(|_| is_dearest).and_then(|cost| (cost * each).over(whole));
            answer.rows.extend(row(pair, (cost, share), each, bench));
        }
        answer.pictures.extend(drawn(read, costs).map(|bar| (String::new(), bar)));
        if asked.extras > Money::ZERO {
            let amount = bench.money(asked.extras.units()).to_string();
            answer.rows.push(Row { name: "Garnish, glass and ice".into(), amount, ..Row::default() });
        }
        self.cautions(&mut answer, costs, bench);
        if sum.known + asked.extras <= Money::ZERO {
            return answer.without_answer("No prices yet. Type what a pack costs, like 24.00 for 700 ml.");
        }
        asked.show(answer, whole, sum.unknown, bench)
    }

    /// Reads the price that is typed, and offers to keep it; of juice by weight or by number, for its fruit first.
    fn keep_price(&self, answer: &mut Answer, name: &str, read: &Contents, bench: &Bench) {
        match text::read_offer(&self.price, &bench.reading(Dimension::Either)) {
            Ok(None) => {}
            Ok(Some(_)) if name.is_empty() => {}
            Ok(Some(price)) => {
                let mut lines = read.lines.iter().filter_map(|line| line.read.as_ref().ok());
                let fruit = lines.find(|line| line.name == name).and_then(|line| juice_of(line, bench));
                if let Some(fruit) = fruit.filter(|_| !matches!(price.pack, Amount::Volume(_))) {
                    answer.buttons.push(bench.keep_price(fruit.plural, &self.price));
                }
                answer.buttons.push(bench.keep_price(name, &self.price));
            }
            Err(unread) => answer.problems.push(Problem::unread(PRICE, unread)),
        }
    }

    /// What to mind: prices that are old, and what is taken for granted.
    fn cautions(&self, answer: &mut Answer, costs: &[Cost<'_>], bench: &Bench) {
        let old: String = bench.clock.written(bench.clock.now() - HALF_A_YEAR).chars().take(10).collect();
        for cost in costs {
            if let Cost::Known(_, price) = cost
                && !price.day.is_empty()
                && price.day < old
            {
                let caution = format!("{}: the price is of {}.", price.name, day(price, bench));
                if !answer.cautions.contains(&caution) {
                    answer.cautions.push(caution);
                }
            }
        }
        if costs.iter().any(|cost| matches!(cost, Cost::Made(..))) {
            answer
                .remarks
                .push("What is lost in making a prep is in its cost where it says how much comes out.".into());
        }
        if costs.iter().any(|cost| matches!(cost, Cost::Free)) {
            answer.remarks.push("Water and ice without a price are taken as free.".into());
        }
        answer.remarks.push(
            "Cost is amount / pack × price / what of it is used; pour cost is cost / price without tax, as kitchens and \
             bars reckon (from memory). By the price with tax it looks smaller than it is. 20 % is a rule of thumb. \
             Juice that has no price costs what its fruit does, by your yield or by rule of thumb, a syrup what its sugar does."
                .into(),
        );
    }
}

/// Most lines that are drawn: of more the parts would be slivers.
const MOST_DRAWN: usize = 8;

/// Milliseconds after which a price is called old.
const HALF_A_YEAR: i64 = 183 * 86_400_000;

/// The day of a price: "Fri 20 Nov 2026".
fn day(price: &Price, bench: &Bench) -> String {
    let noon = bench.clock.read(&format!("{}T12:00", price.day));
    noon.map_or_else(|| price.day.clone(), |noon| bench.clock.day(noon))
}

/// What the priced lines of a spec share of its cost, as a bar; none for one, or for more than can be told apart.
fn drawn(read: &Contents, costs: &[Cost<'_>]) -> Option<Picture> {
    let known = read.lines.iter().zip(costs).filter_map(|(line, cost)| match (&line.read, cost) {
        (Ok(line), Cost::Known(money, _) | Cost::Made(money, ..)) => Some((line, money.units())),
        _ => None,
    });
    let whole: f64 = known.clone().map(|(_, cost)| cost).sum();
    let (mut parts, mut key) = (Vec::new(), Vec::new());
    for (line, cost) in known {
        let hatch = line.taken.map_or(Hatch::Water, |taken| reading::hatch(taken.ingredient));
        parts.push((hatch, cost / whole));
        key.push((hatch, line.name.clone()));
    }
    let text = key.iter().map(|(_, name)| name.as_str()).collect::<Vec<_>>().join(", ");
    (2..=MOST_DRAWN)
        .contains(&parts.len())
        .then(|| Picture::Shares { bars: vec![Bar { of: "cost", text, parts }], key })
}

/// A cost as it is shown: less than the least coin is not nothing.
fn shown(cost: Money, bench: &Bench) -> String {
    match cost.units() < 0.005 {
        true => format!("under {}", bench.money(0.01)),
        false => bench.money(cost.units()).to_string(),
    }
}

/// A line with its cost for a serve, which is `each` of what is written; the dearest with its share of the whole.
fn row(
    (line, content): (&SpecLine, &Content),
    (cost, share): (&Cost<'_>, Option<Ratio>),
    each: Ratio,
    bench: &Bench,
) -> Option<Row> {
    let read = match (&line.read, cost) {
        (_, Cost::Words) => return None,
        (Err(_), _) => return Some(Row { marked: true, ..counted_row((line, content), &Mix::default(), bench) }),
        (Ok(read), _) => read,
    };
    let amount = exact_words(read.amount.times(each), read.unit, bench);
    let (detail, amount) = match cost {
        Cost::Known(money, price) => {
            let through = through(read, bench);
            let takes = through.as_ref().map_or_else(String::new, |(.., takes)| {
                format!(" takes {}", exact_words(takes.times(each), None, bench))
            });
            let mut words = format!("{amount}{takes} of {} at {}", price.size, bench.money(price.paid.units()));
            if !price.name.eq_ignore_ascii_case(&read.name) {
                words.push_str(&format!(" for {}", price.name));
            }
            if price.usable < Ratio::ONE && takes.is_empty() {
                words.push_str(&format!(", {} % of it used", text::count(price.usable.value() * 100.0, bench.decimal)));
            }
            if let Some(share) = share {
                words = format!("Costs most, {} %; {words}", text::plain(share.value() * 100.0, 0, bench.decimal));
            }
            if let Some(before) = prices(read, bench).get(1) {
                let on = if before.day.is_empty() { String::new() } else { format!(" on {}", day(before, bench)) };
                words = with_said(words, &format!("was {} for {}{on}", bench.money(before.paid.units()), before.size));
            }
            (words, shown(*money * each, bench))
        }
        Cost::Made(money, all, volume) => {
            let [made, all] = [text::litres_or_ml(*volume, bench.decimal), bench.money(all.units())];
            (format!("{amount} of {made}, whose parts cost {all}"), shown(*money * each, bench))
        }
        Cost::Free => (format!("{amount}, taken as free"), bench.money(0.0).to_string()),
        Cost::Unlike(price) => {
            (format!("{amount}, and its price is for {}. Type one by the same measure.", price.size), "?".into())
        }
        _ => (format!("{amount}. No price yet"), "?".into()),
    };
    let to_price = Button {
        spoken: format!("Price of {}", read.name),
        ..Button::new("Price", Act::Put(vec![(PRICE_OF, read.name.clone())]))
    };
    let marked = matches!(cost, Cost::Unpriced | Cost::Unlike(_));
    Some(Row { name: read.name.clone(), amount, detail, marked, buttons: vec![to_price], ..Row::default() })
}

#[cfg(test)]
mod tests;
