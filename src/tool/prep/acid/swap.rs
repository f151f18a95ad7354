//! One acid for another, and acidity from a titration.

use super::AcidForm;
use crate::book::{Ingredient, Kind, LIBRARY};
use crate::craft::sharpen::{from_titration, instead};
use crate::quantity::Mass;
use crate::screen::pad::Keys;
use crate::screen::{Answer, Bench, Block, Figure, Opt, Problem, Row, Strip, Tone};
use crate::substance::acid::Acid;
use crate::text;

const SWAPPED: &str = "swapped";
const BASE: &str = "base";
const NORMALITY: &str = "normality";
const SAMPLE: &str = "sample";

/// The acids that are weighed, as they are sold.
fn powders() -> impl Iterator<Item = &'static Ingredient> {
    LIBRARY.iter().filter(|row| row.kind == Kind::Powder && !row.acids.is_empty())
}

fn powder(key: &str) -> &'static Ingredient {
    powders().find(|row| row.key == key).unwrap_or(&LIBRARY[0])
}

fn options_of(which: fn(&Ingredient) -> bool) -> Vec<Opt> {
    powders().filter(|row| which(row)).map(|row| Opt::new(row.key, row.name)).collect()
}

fn options() -> Vec<Opt> {
    options_of(|_| true)
}

pub(super) fn swap_layout() -> Vec<Block> {
    vec![
        Block::amount(SWAPPED, "Amount to replace", Keys::Weight),
        Block::pick("swap_from", "Acid to replace", options()),
        Block::pick("swap_to", "Acid to use", options()),
    ]
}

pub(super) fn titration_layout() -> Vec<Block> {
    vec![
        Block::amount(BASE, "Sodium hydroxide used", Keys::Batch),
        Block::amount(NORMALITY, "Its normality, N", Keys::Count),
        Block::amount(SAMPLE, "Juice titrated", Keys::Batch),
        Block::pick("counted_as", "Acid it is counted as", options_of(|row| row.key != "citric-monohydrate")),
    ]
}

impl AcidForm {
    pub(super) fn swap(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let Some(mass) = bench.mass(SWAPPED, &self.swapped, &mut answer.problems) else {
            return answer.without_answer("Type the grams of acid there were.");
        };
        let (from, to) = (powder(&self.swap_from), powder(&self.swap_to));
        let Some(made) = instead(mass, from, to) else { return answer.without_answer("") };
        let grams = |mass: Mass| text::fine_grams(mass, bench.decimal);
        let figure = grams(made);
        answer.strip = Strip {
            figures: vec![figure],
            also: format!("{} titrates as {} {}", to.name, grams(mass), from.name),
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.rows_title = "And of the others";
        answer.rows = powders()
            .filter(|row| row.key != from.key && row.key != to.key)
            .filter_map(|row| {
                let amount = grams(instead(mass, from, row)?).to_string();
                Some(Row { name: row.name.into(), amount, ..Row::default() })
            })
            .collect();
        answer.remarks.push(
            "Equal by titration is not equal in taste: start with nine tenths, taste, and add (rule of thumb).".into(),
        );
        answer
            .remarks
            .push("Crystals sold as citric acid may be the monohydrate: 9 % heavier for the same acid.".into());
        answer
    }

    pub(super) fn titrate(&self, mut answer: Answer, bench: &Bench) -> Answer {
        answer.cautions =
            vec!["Sodium hydroxide burns eyes and skin: gloves and goggles. Don't drink the sample.".into()];
        let problems = &mut answer.problems;
        let base = bench.volume(BASE, &self.base, problems);
        let sample = bench.volume(SAMPLE, &self.sample, problems);
        let words = "Type the normality of the base, from 0.001 to 10, like 0.1.";
        let normality = bench.number(NORMALITY, &self.normality, (0.001, 10.0), words, problems);
        let (Some(base), Some(sample), Some(normality)) = (base, sample, normality) else {
            return answer.without_answer("Type the base used, its strength, and the juice titrated.");
        };
        let acid = powder(&self.counted_as).acids.first().map_or(Acid::Citric, |(acid, _)| *acid);
        let Some(acidity) = from_titration(base, normality, sample, acid) else {
            answer.problems.push(Problem::new(BASE, "That is more acid than a litre holds. Check the amounts."));
            return answer.without_answer("");
        };
        let per_litre = |value| Figure::new(text::count(value, bench.decimal), "g/l");
        answer.strip = Strip {
            figures: vec![per_litre(acidity.g_per_l())],
            also: format!(
                "acid, as {}: {} g in 100 ml",
                acid.name(),
                text::count(acidity.g_per_l() / 10.0, bench.decimal)
            ),
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.cells_title = "The same counted as";
        let counted_as = acid;
        let others = [Acid::Citric, Acid::Malic, Acid::Tartaric, Acid::Lactic].into_iter();
        for acid in others.filter(|acid| *acid != counted_as) {
            if let Some(acidity) = from_titration(base, normality, sample, acid) {
                answer.cell(acid.name(), per_litre(acidity.g_per_l()));
            }
        }
        let milliequivalents = base.ml() * normality / sample.ml() * 1000.0;
        answer.cell("base neutralised", Figure::new(text::count(milliequivalents, bench.decimal), "meq/l"));
        answer.remarks.push("To pH 8.2 or the pink of phenolphthalein: ml × N × equivalent mass ÷ ml of juice.".into());
        answer
    }
}
