//! One sweetener for another at equal sugar.

use super::SyrupForm;
use crate::book::{Ingredient, Kind, LIBRARY, Measured, Taken, ingredient};
use crate::craft::pour::{litre_of, pour};
use crate::craft::syrup::{Instead, instead};
use crate::quantity::{Mass, Unit, Volume};
use crate::reading::pours::poured;
use crate::reading::rows::with_said;
use crate::screen::pad::{Keys, unit_typed};
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Block, Figure, Opt, Problem, Row, Strip, Tone};
use crate::text::{self, Dimension};

const SWAPPED: &str = "swapped";

/// What sweetens and does nothing else.
fn sweeteners() -> impl Iterator<Item = &'static Ingredient> {
    LIBRARY
        .iter()
        .filter(|row| row.sugar > 0.0 && row.acids.is_empty() && matches!(row.kind, Kind::Syrup | Kind::Powder))
}

fn taken(key: &str) -> Taken {
    let row = sweeteners().find(|row| row.key == key).or_else(|| ingredient("simple-syrup"));
    Taken { ingredient: row.unwrap_or(&LIBRARY[0]), measured: Measured::default() }
}

impl SyrupForm {
    pub(super) fn swap_layout(&self) -> Vec<Block> {
        let options = || sweeteners().map(|row| Opt::new(row.key, row.name)).collect();
        vec![
            Block::amount(SWAPPED, "Amount to replace", Keys::Either),
            Block::pick("swap_from", "Sweetener to replace", options()),
            Block::pick("swap_to", "Sweetener to use", options()),
        ]
    }

    pub(super) fn swap(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let Some(amount) = bench.amount(SWAPPED, &self.swapped, Dimension::Either, &mut answer.problems) else {
            return answer.without_answer("Type how much sweetener there was.");
        };
        let Some(was) = pour(&taken(&self.swap_from), amount) else {
            answer.problems.push(Problem::new(SWAPPED, "Sugar is weighed. Type it in g."));
            return answer.without_answer("");
        };
        let to = taken(&self.swap_to);
        let written = unit_typed(&self.swapped);
        let Some(made) = instead(&was, &litre_of(&to)) else { return answer.without_answer("") };
        let name = to.ingredient.name;
        let water = water_words(&made, bench);
        answer.strip = Strip {
            figures: vec![amount_of(to.ingredient, &made, written, bench)],
            also: format!("of {name}"),
            below: format!("The same sugar. {water}"),
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.cells_title = "The same in both";
        answer.cell("sugar", text::grams(was.sugar(), 1, bench.decimal));
        answer.explained(
            "water brought before",
            text::grams(was.water, 1, bench.decimal),
            "A sweetener brings water too. When that changes, so do the length and the strength of the drink.",
        );
        answer.rows_title = "Each, with your jiggers";
        let others = sweeteners().filter(|row| row.key != self.swap_from && row.key != to.ingredient.key);
        // What is taken first, for how it is poured.
        answer.rows = std::iter::once(to.ingredient)
            .chain(others)
            .filter_map(|row| Some(row_of(row, &instead(&was, &litre_of(&taken(row.key)))?, written, bench)))
            .collect();
        answer.remarks.push(
            "At equal sugar. Honey and agave taste sweeter than table sugar by their fructose (rule of thumb).".into(),
        );
        if let Some(volume) = volume_of(&made, to.ingredient) {
            answer.carry("Measure this much", Route::Measure.href_with("amount", &bench.carried(volume)));
        }
        answer
    }
}

fn volume_of(made: &Instead, row: &Ingredient) -> Option<Volume> {
    (row.kind != Kind::Powder).then(|| Volume::LITRE * made.times)
}

fn amount_of(row: &Ingredient, made: &Instead, written: Option<Unit>, bench: &Bench) -> Figure {
    match volume_of(made, row) {
        Some(volume) => bench.headline(volume, written),
        None => text::grams(made.mix.mass(), 1, bench.decimal),
    }
}

/// What to do about the water it brings, more or less than before.
fn water_words(made: &Instead, bench: &Bench) -> String {
    let grams = Mass::from_g(made.more_water.abs()).unwrap_or(Mass::ZERO);
    let ml = text::grams(grams, 1, bench.decimal).value;
    match made.more_water {
        more if more >= 0.05 => format!("It brings {ml} ml more water"),
        less if less <= -0.05 => format!("Add {ml} ml water"),
        _ => "No water to add".into(),
    }
}

fn row_of(row: &Ingredient, made: &Instead, written: Option<Unit>, bench: &Bench) -> Row {
    let amount = amount_of(row, made, written, bench).to_string();
    let pour = volume_of(made, row).and_then(|volume| poured(volume, &amount, bench));
    let detail = with_said(water_words(made, bench), &pour.unwrap_or_default());
    Row { name: row.name.into(), amount, detail, ..Row::default() }
}
