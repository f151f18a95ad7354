//! To buy: what specs, a run or any lines need, down to what is bought, less what is on the shelf, in packs.

mod chosen;
mod shown;
#[cfg(test)]
mod tests;

use super::run;
use crate::book::{Line, taken_as};
use crate::quantity::Amount;
use crate::reading::bought::Needs;
use crate::reading::from_spec::{self, FROM};
use crate::screen::pad::Keys;
use crate::screen::plan::Need;
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Block, Button, Input, Problem, Row, Tool, form};
use crate::text::{Dimension, read_spec};
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
        let (rows, has_batch) = self.chosen(&mut needs, &mut answer, bench);
        self.besides(&mut needs, &mut answer, bench);
        let list = List::of(needs.bought(), &self.got, bench);
        let of: Vec<String> = rows.iter().map(|row| format!("{}: {}", row.name, row.amount)).collect();
        let is_all = rows.iter().all(|row| !row.marked) && answer.problems.is_empty();
        let answer = list.answer(answer, is_all, bench);
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
            BATCH => &mut self.batch,
            ICE => &mut self.ice,
            _ => return,
        };
        text.clone_into(field);
    }
}

impl BuyForm {
    /// What the run and the lines need, and what there is.
    fn besides(&self, needs: &mut Needs<'_>, answer: &mut Answer, bench: &Bench) {
        let line = |need: &Need| Line {
            amount: need.amount,
            unit: None,
            name: need.what.clone(),
            taken: taken_as(&need.what, &bench.own),
            unread: None,
            said: String::new(),
        };
        if let Some(entry) = bench.book.run(&self.run) {
            run::sheet_of(entry, bench).needs.iter().for_each(|need| needs.line(&line(need), 1.0));
        }
        if !self.ice.is_empty()
            && let Some(mass) = bench.mass(ICE, &self.ice, &mut answer.problems)
        {
            needs.line(&line(&Need::of("ice", Amount::Mass(mass))), 1.0);
        }
        for (field, typed) in [(BATCH, &self.batch), (LINES, &self.lines), (HAVE, &self.have)] {
            for typed in read_spec(typed, &bench.reading(Dimension::Either)) {
                match typed.read {
                    Ok(line) if field == HAVE => needs.there(&line),
                    Ok(line) => needs.line(&line, 1.0),
                    Err(problem) => {
                        let words =
                            if problem.is_words() { "Say how much, like 2 kg.".into() } else { problem.to_string() };
                        answer.problems.push(Problem::new(field, format!("“{}”: {words}", typed.typed)));
                    }
                }
            }
        }
    }

    /// The fields, with the list between them.
    fn fields(&self, rows: Vec<Row>, has_batch: bool, list: &List, bench: &Bench) -> Vec<Block> {
        let mut blocks = Vec::from(from_spec::fields(Route::Buy, &self.from_spec, None, bench));
        let shown = |is_shown: bool, block: Block| if is_shown { block } else { Block::Nothing };
        let lines = |name, label, placeholder| Block::field(name, label, Input::Lines { placeholder });
        blocks.push(shown(!self.from_spec.is_empty(), Block::amount(SERVES, "Serves", Keys::Count)));
        blocks.push(shown(!rows.is_empty(), Block::Table("For", rows)));
        blocks.push(shown(has_batch, Block::amount(POUR, "Poured of a batch", Keys::Pour)));
        blocks.extend(list.blocks());
        blocks.extend([
            lines(HAVE, "On the shelf, a line each", "like 400 ml pear brandy\n12 limes"),
            lines(LINES, "What else is needed, a line each", "like 2 kg sugar\n3 lemons"),
            shown(!self.batch.is_empty(), lines(BATCH, "From Bottle it", "like 1 l gin")),
            shown(!self.ice.is_empty(), Block::amount(ICE, "Ice", Keys::Weight)),
            Block::amount(WASTE, "Spilt or lost", Keys::Percent),
            shown(!list.is_empty(), Block::Buttons(vec![Button::new("Save as CSV", Act::Csv)])),
        ]);
        blocks
    }
}
