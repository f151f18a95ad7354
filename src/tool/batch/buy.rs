//! To buy: what specs, a run or any lines need, down to what is bought, less what is on the shelf, in packs.

mod chosen;
mod shown;
#[cfg(test)]
mod tests;

use super::run;
use crate::book::{Line, taken_as};
use crate::quantity::{Amount, Ratio};
use crate::reading::bought::Needs;
use crate::reading::from_spec::{self, FROM};
use crate::reading::paid::prices;
use crate::reading::rows::rewritten;
use crate::reading::thing::{Piece, plain};
use crate::screen::pad::Keys;
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Block, Button, Fix, Input, Opt, Problem, Row, Tool, form};
use crate::text::{BOTTLE_SIZES, Dimension, LineProblem, read_spec};
use shown::List;

form! {
    /// What is chosen and typed.
    BuyForm {
        /// The specs, a line each: which form, and for how many: "id/0=30".
        of = "",
        /// The spec whose number is typed: "id/0"; empty for none.
        from_spec = "",
        /// Its serves, whatever stands in `of`.
        serves = "",
        /// What is poured of a batch.
        pour = "90 ml",
        /// Id of a run whose needs are bought too; empty for none.
        run = "",
        /// What Bottle it brought, a line each.
        batch = "",
        /// What that goes into: "5 empty bottles of 700 ml".
        bottles = "",
        /// Ice, by weight.
        ice = "",
        /// What else is needed, a line each.
        lines = "",
        /// What is on the shelf, a line each.
        have = "",
        /// Spilt or lost of what specs need, percent.
        waste = "",
        /// What is got, a line each: its packs and its name.
        got = "",
    }
}

const SERVES: &str = "serves";
const POUR: &str = "pour";
const RUN: &str = "run";
const BATCH: &str = "batch";
const BOTTLES: &str = "bottles";
const ICE: &str = "ice";
const LINES: &str = "lines";
const HAVE: &str = "have";
const WASTE: &str = "waste";
const GOT: &str = "got";

impl Tool for BuyForm {
    fn layout(&self, bench: &Bench) -> Vec<Block> {
        self.clone().show(bench).0
    }

    fn answer(&self, bench: &Bench) -> Answer {
        self.clone().show(bench).1
    }

    fn show(&mut self, bench: &Bench) -> (Vec<Block>, Answer) {
        let mut answer = Answer::default();
        let mut needs = Needs::new(bench);
        let mut iced = chosen::Iced::default();
        let (rows, has_batch) = self.chosen(&mut needs, &mut iced, &mut answer, bench);
        // What Ice brought is all of it.
        let to_ice = if self.ice.is_empty() { iced.need(&mut needs, &mut answer, bench) } else { None };
        self.besides(&mut needs, &mut answer, bench);
        let list = List::of(needs.bought(), &self.got, bench);
        let of: Vec<String> = rows.iter().map(|row| format!("{}: {}", row.name, row.amount)).collect();
        let is_all = rows.iter().all(|row| !row.marked) && answer.problems.is_empty();
        let mut answer = list.answer(answer, is_all, bench);
        if let Some(href) = to_ice {
            answer.carry("Ice for the night", href);
        }
        let mut blocks = vec![list.printed(&of.join(", "), &answer, bench)];
        blocks.extend(self.fields(rows, has_batch, &list, bench));
        (blocks, answer)
    }

    fn empty(&mut self) {
        *self = BuyForm {
            pour: std::mem::take(&mut self.pour),
            waste: std::mem::take(&mut self.waste),
            ..BuyForm::default()
        };
    }

    fn take(&mut self, name: &str, text: &str) {
        let field = match name {
            SERVES => {
                self.of = chosen::joined(&self.all());
                self.from_spec.clear();
                &mut self.serves
            }
            FROM => return self.take_spec(text),
            RUN => &mut self.run,
            BATCH => {
                self.bottles.clear();
                &mut self.batch
            }
            BOTTLES => &mut self.bottles,
            ICE => &mut self.ice,
            _ => return,
        };
        text.clone_into(field);
    }
}

/// A line of so many bottles by what one holds: packs that the bar has a price for.
fn in_bottles(count: f64, line: Line, bench: &Bench) -> Option<Line> {
    let pack = prices(&line, bench).first()?.pack;
    let count = Ratio::from_value(count).ok()?;
    matches!(pack, Amount::Volume(_)).then(|| Line { amount: pack.times(count), ..line })
}

impl BuyForm {
    /// What the run and the lines need, and what there is.
    fn besides(&self, needs: &mut Needs<'_>, answer: &mut Answer, bench: &Bench) {
        let line = |name: &str, amount: Amount| Line { amount, taken: taken_as(name, &bench.own), ..plain(name) };
        if let Some(entry) = bench.book.run(&self.run) {
            run::sheet_of(entry, bench).needs.iter().for_each(|need| needs.line(&line(&need.what, need.amount), 1.0));
        }
        if !self.ice.is_empty()
            && let Some(mass) = bench.mass(ICE, &self.ice, &mut answer.problems)
        {
            needs.line(&line("ice", Amount::Mass(mass)), 1.0);
        }
        if !self.bottles.trim().is_empty() {
            let (count, name) = self.bottles.trim().split_once(' ').unwrap_or((&self.bottles, "empty bottles"));
            if let Some(count) = bench.count(BOTTLES, count, &mut answer.problems) {
                needs.piece(Piece::Bottle, name, Amount::Count(count));
            }
        }
        for (field, typed_in) in [(BATCH, &self.batch), (LINES, &self.lines), (HAVE, &self.have)] {
            let mut all = read_spec(typed_in, &bench.reading(Dimension::Either));
            // Of bottles that nothing says what they hold, all are settled in a tap.
            let mut asked = Vec::new();
            for typed in &mut all {
                if let Err(problem @ LineProblem::Bottles(count, name)) = &typed.read {
                    match in_bottles(*count, line(name, Amount::Count(Ratio::ONE)), bench) {
                        Some(line) => typed.read = Ok(line),
                        None => asked.push((typed.typed.clone(), problem.fixes(&typed.typed))),
                    }
                }
            }
            for typed in all {
                match typed.read {
                    Ok(line) if field == HAVE => needs.there(&line),
                    Ok(line) => needs.line(&line, 1.0),
                    Err(problem) => {
                        let words =
                            if problem.is_words() { "Say how much, like 2 kg.".into() } else { problem.to_string() };
                        let is_bottle = matches!(problem, LineProblem::Bottles(..));
                        let fixes = problem.fixes(&typed.typed).into_iter().enumerate().map(|(at, fixed)| {
                            if !is_bottle || asked.len() < 2 {
                                let text = rewritten(typed_in, &typed.typed, &fixed);
                                return Fix { label: fixed, ..Fix::from(text) };
                            }
                            let put = |text: String, (typed, fixes): &(String, Vec<String>)| {
                                rewritten(&text, typed, &fixes[at])
                            };
                            let text = asked.iter().fold(typed_in.clone(), put);
                            Fix { label: format!("{} ml each", BOTTLE_SIZES[at]), ..Fix::from(text) }
                        });
                        let words = format!("“{}”: {words}", typed.typed);
                        answer.problems.push(Problem { fixes: fixes.collect(), ..Problem::new(field, words) });
                    }
                }
            }
        }
    }

    /// The fields, with the list between them.
    fn fields(&self, rows: Vec<Row>, has_batch: bool, list: &List, bench: &Bench) -> Vec<Block> {
        let (mut options, has_more) = from_spec::listed(false, bench);
        let all = self.all();
        options.retain(|option| all.iter().all(|(of, _)| *of != option.key));
        // It stands at none of them again as soon as one is taken: the next is a tap away.
        let (none, label) = match (options.is_empty() && !has_more, rows.is_empty()) {
            (true, _) => ("all are on the list", "Add a spec"),
            (false, true) => ("choose", "Add a spec"),
            (false, false) => ("choose", "Add another spec"),
        };
        options.insert(0, Opt::new(self.from_spec.as_str(), none));
        let mut blocks = Vec::new();
        let shown = |is_shown: bool, block: Block| if is_shown { block } else { Block::Nothing };
        let lines = |name, label, placeholder| Block::field(name, label, Input::Lines { placeholder });
        blocks
            .push(shown(!bench.book.cards.is_empty() || !self.from_spec.is_empty(), Block::pick(FROM, label, options)));
        blocks.push(from_spec::find_another(Route::Buy, has_more));
        blocks.push(shown(!self.from_spec.is_empty(), Block::amount(SERVES, "Serves", Keys::Count)));
        blocks.push(shown(!rows.is_empty(), Block::Table("For", rows)));
        blocks.push(shown(has_batch, Block::amount(POUR, "Poured of a batch", Keys::Pour)));
        blocks.extend(list.blocks());
        blocks.extend([
            lines(HAVE, "On the shelf, a line each", "like 2 bottles pear brandy\n12 limes"),
            lines(LINES, "What else is needed, a line each", "like 2 kg sugar\n3 lemons"),
            shown(!self.batch.is_empty(), lines(BATCH, "From Bottle it", "like 1 l gin")),
            shown(
                !self.bottles.is_empty(),
                Block::field(BOTTLES, "Empty bottles", Input::Words { placeholder: "like 5 empty bottles of 700 ml" }),
            ),
            shown(!self.ice.is_empty(), Block::amount(ICE, "Ice", Keys::Weight)),
            Block::amount(WASTE, "Spilt or lost", Keys::Percent),
            shown(!list.is_empty(), Block::Buttons(vec![Button::new("Save as CSV", Act::Csv)])),
        ]);
        blocks
    }
}
