//! Bottle it: a drink for a night, with its water in it, onto one scale and into bottles.

mod drink;
mod plan;
mod shown;
#[cfg(test)]
mod tests;

pub use shown::IN_HAND;

use crate::craft::bottle_it::Measure;
use crate::quantity::Density;
use crate::reading::from_spec::{self, SPEC};
use crate::reading::{self, Contents, label};
use crate::screen::pad::Keys;
use crate::screen::plan::{Makes, Making};
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Block, Button, Choice, Input, Opt, Pour, Pours, Tool, choice, form};
use crate::text;

/// What says how much is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// Serves wanted.
    Serves,
    /// Bottles to fill.
    Bottles,
    /// What there is of some of its lines.
    Have,
}

choice! { By:
    Serves = "serves", "Serves";
    Bottles = "bottles", "Bottles";
    Have = "have", "What I have";
}

/// How its water is known. Those of ice have the keys that a spec's method has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Water {
    /// As it would take up when it is stirred.
    Stirred,
    /// Or shaken.
    Shaken,
    /// None: it is chilled on ice when it is served.
    None,
    /// So much of the drink.
    Percent,
    /// As much as makes it so strong.
    Strength,
}

choice! { Water:
    Stirred = "stirred", "as stirred";
    Shaken = "shaken", "as shaken";
    None = "none", "none";
    Percent = "percent", "a percentage";
    Strength = "strength", "to a strength";
}

choice! { Measure:
    OneMl = "1ml", "1 ml";
    FiveMl = "5ml", "5 ml";
    TenMl = "10ml", "10 ml";
    Gram = "1g", "1 g";
}

form! {
    /// What is typed.
    BottleItForm {
        /// What says how much: a key of [`By`].
        by = "serves",
        /// The drink, a line for each ingredient.
        spec = reading::EXAMPLE,
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
        /// Serves the drink makes as written.
        makes = "1",
        /// Serves wanted.
        serves = "30",
        /// Bottles to fill.
        bottles = "6",
        /// What there is, a line each.
        have = "1 l pear brandy\n500 ml dry vermouth",
        /// How its water is known: a key of [`Water`].
        water = "stirred",
        /// Water, percent of what is poured.
        percent = "25",
        /// The strength to reach, % vol.
        strength = "20",
        /// What a bottle holds, to the brim.
        bottle = "700 ml",
        /// Left empty in each, percent.
        headspace = "3",
        /// Lost on the way, percent; nothing until it is typed, as no figure of it is published.
        loss = "",
        /// How cold the freezer is; empty where it goes in none.
        freezer = "−18",
        /// What amounts are rounded to: a key of [`Measure`].
        rounding = "1ml",
        /// Full bottles left, mid-shift.
        left = "",
        /// What an open one weighs.
        open = "",
        /// What that bottle weighs when it is empty.
        empty = "",
    }
}

const MAKES: &str = "makes";
const SERVES: &str = "serves";
const BOTTLES: &str = "bottles";
const HAVE: &str = "have";
const WATER: &str = "water";
const PERCENT: &str = "percent";
const STRENGTH: &str = "strength";
const BOTTLE: &str = "bottle";
const HEADSPACE: &str = "headspace";
const LOSS: &str = "loss";
const FREEZER: &str = "freezer";
const LEFT: &str = "left";
const OPEN: &str = "open";
const EMPTY: &str = "empty";

impl Tool for BottleItForm {
    fn layout(&self, bench: &Bench) -> Vec<Block> {
        self.clone().show(bench).0
    }

    fn answer(&self, bench: &Bench) -> Answer {
        self.clone().show(bench).1
    }

    fn show(&mut self, bench: &Bench) -> (Vec<Block>, Answer) {
        let mut answer = Answer::default();
        let read = Contents::of(&self.spec, bench);
        let drink = self.drink(&read, bench, &mut answer);
        // Said beside the choice: what a serve takes up.
        let water = drink.as_ref().map_or_else(String::new, |drink| {
            format!(", {}", text::millilitres(drink.water_each().volume_at(Density::WATER), bench.decimal))
        });
        let mut pours = Vec::new();
        match drink {
            Some(drink) => answer = self.answered(answer, &read, &drink, &mut pours, bench),
            None => answer = self.unanswered(answer, &read, bench),
        }
        (self.fields(&water, pours, bench), answer)
    }

    fn making(&self, bench: &Bench) -> Making {
        let lines = text::read_spec(&self.spec, &bench.reading(text::Dimension::Either));
        let (allergens, asks) = (reading::allergens(&lines, bench), reading::asks(&lines, bench));
        Making { makes: Makes::Drink, allergens, asks, is_fresh: label::is_fresh(&lines), ..Making::default() }
    }

    /// The drink stays: it is cleared in Specs.
    fn empty(&mut self) {
        for text in [&mut self.serves, &mut self.bottles, &mut self.have, &mut self.left, &mut self.open] {
            text.clear();
        }
    }

    fn take(&mut self, name: &str, text: &str) {
        let field = match name {
            SPEC => &mut self.spec,
            MAKES => &mut self.makes,
            WATER => &mut self.water,
            SERVES => {
                By::Serves.key().clone_into(&mut self.by);
                &mut self.serves
            }
            _ => return,
        };
        text.clone_into(field);
    }
}

impl BottleItForm {
    fn by(&self) -> By {
        By::read(&self.by)
    }

    fn water(&self) -> Water {
        Water::read(&self.water)
    }

    fn measure(&self) -> Measure {
        Measure::read(&self.rounding)
    }

    /// The fields, with what goes onto the scale between them.
    fn fields(&self, water: &str, pours: Vec<Pour>, bench: &Bench) -> Vec<Block> {
        let lines = |name, label, placeholder| Block::field(name, label, Input::Lines { placeholder });
        let mut blocks = vec![Block::Pictures(Vec::new()), Block::chips::<By>("by", "How much", false)];
        blocks.extend(from_spec::fields(Route::BottleIt, &self.from_spec, Some(&self.spec), bench));
        blocks.push(match self.by() {
            By::Serves => Block::amount(SERVES, "Serves", Keys::Count),
            By::Bottles => Block::amount(BOTTLES, "Bottles", Keys::Count),
            By::Have => lines(HAVE, "What there is, a line for each", "like 1 l gin\n500 ml dry vermouth"),
        });
        let chosen = self.water();
        let option = |of: &Water| match of {
            _ if *of != chosen || chosen == Water::None => Opt::new(of.key(), of.label()),
            _ => Opt::new(of.key(), format!("{}{water}", of.label())),
        };
        blocks.push(Block::pick(WATER, "Water in it", Water::ALL.iter().map(option).collect()));
        blocks.push(match chosen {
            Water::Percent => Block::amount(PERCENT, "Water, of what is poured", Keys::Percent),
            Water::Strength => Block::amount(STRENGTH, "Strength to reach, % vol", Keys::Percent),
            _ => Block::Nothing,
        });
        blocks.push(Block::amount(BOTTLE, "Bottle, keg or jug", Keys::Batch));
        let is_all_in = !pours.is_empty() && pours.iter().all(|pour| pour.tick == Some(true));
        match pours.is_empty() {
            true => blocks.extend([Block::Nothing, Block::Nothing]),
            false => blocks
                .extend([Block::Heading("Onto one scale, added up"), Block::Pours(Pours { lines: pours, serves: 1 })]),
        }
        blocks.push(match is_all_in {
            true => Block::Buttons(vec![Button::new("Untick all", Act::UntickLines)]),
            false => Block::Nothing,
        });
        blocks.extend([
            Block::Table("", Vec::new()),
            Block::Cells("", Vec::new()),
            Block::amount(FREEZER, "Freezer", Keys::Celsius),
            Block::chips::<Measure>("rounding", "Round to", true),
            Block::amount(HEADSPACE, "Headspace", Keys::Percent),
            Block::amount(LOSS, "Lost on the way", Keys::Percent),
            lines(SPEC, "The drink, a line for each ingredient", reading::PLACEHOLDER),
            Block::amount(MAKES, "Serves the drink makes", Keys::Count),
            Block::Heading("Left, mid-shift"),
            Block::amount(LEFT, "Full bottles", Keys::Count),
            Block::amount(OPEN, "An open one weighs", Keys::Weight),
            Block::amount(EMPTY, "That bottle empty", Keys::Weight),
            Block::Buttons(vec![Button::new("Print", Act::Print), Button::new("Save as CSV", Act::Csv)]),
        ]);
        blocks
    }

    /// Name of the field that says how much.
    fn asked(&self) -> &'static str {
        match self.by() {
            By::Serves => SERVES,
            By::Bottles => BOTTLES,
            By::Have => HAVE,
        }
    }
}
