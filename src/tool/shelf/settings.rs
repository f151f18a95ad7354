//! The shelf: what this bar means by its units, what it pours with, and how the app looks.

mod choices;
mod glasses;
mod paces;
mod small;
#[cfg(test)]
mod tests;

pub use choices::{DecimalMark, Hand, Keyboard, Theme, UsualUnit, Weights};

use glasses::{GLASS_LIKE, GLASSES, read_glasses};

use crate::book::{self, House, Jigger, Price};
use crate::quantity::{Conventions, Ounce, Unit};
use crate::reading::yields;
use crate::screen::pad::Keys;
use crate::screen::{
    Answer, Bench, Block, Choice, Figure, Input, Problem, Strip, Texts, Tone, Tool, fill, fixes, form, plural,
};
use crate::substance::energy::StandardDrink;
use crate::substance::juice::Citrus;
use crate::text::{self, Decimal, Dimension, Reading};

form! {
    /// What is typed and chosen.
    ShelfForm {
        /// The house ounce: a key of [`Ounce`].
        ounce = "us",
        /// The unit of a bare number: a key of [`UsualUnit`].
        usual_unit = "ml",
        /// What weights are shown in: a key of [`Weights`].
        weights = "g",
        /// One dash.
        dash = "0.8 ml",
        /// One barspoon.
        barspoon = "5 ml",
        /// Brim of the first jigger.
        brim_1 = "2 oz",
        /// Lines inside it.
        lines_1 = "1½ oz",
        /// Brim of the second jigger.
        brim_2 = "1 oz",
        /// Lines inside it.
        lines_2 = "¼; ½; ¾ oz",
        /// Brim of the third jigger; empty when there is none.
        brim_3 = "",
        /// Lines inside it.
        lines_3 = "",
        /// Brim of the fourth jigger; empty when there is none.
        brim_4 = "",
        /// Lines inside it.
        lines_4 = "",
        /// Brim of the fifth jigger; empty when there is none.
        brim_5 = "",
        /// Lines inside it.
        lines_5 = "",
        /// Brim of the sixth jigger; empty when there is none.
        brim_6 = "",
        /// Lines inside it.
        lines_6 = "",
        /// Yields of its own, a line each.
        yields = "",
        /// What it pays, a line each.
        prices = "",
        /// What money is called.
        currency = "",
        /// Seconds in which a stirred drink has taken up 95 % of its water; empty as usual.
        pace_stir = "",
        /// The same of a shaken one.
        pace_shake = "",
        /// The same of a thrown one.
        pace_throw = "",
        /// The same of a swizzled one.
        pace_swizzle = "",
        /// The same on crushed ice.
        pace_build = "",
        /// The same over a block.
        pace_block = "",
        /// The glasses it owns, a line each.
        glasses = book::GENERIC,
        /// The decimal mark: a key of [`DecimalMark`].
        decimal = "device",
        /// The look: a key of [`Theme`].
        theme = "system",
        /// How numbers are entered: a key of [`Keyboard`].
        keyboard = "pad",
        /// The hand that types on the pad: a key of [`Hand`].
        hand = "right",
        /// The standard drink: a key of [`StandardDrink`].
        region = "us",
        /// How sour limes and lemons are: a key of [`Citrus`].
        citrus = "published",
        /// "away" once the hint on installing has been put away.
        install_hint = "",
        /// "said" once it was offered, after a spec had been kept.
        install_said = "",
    }
}

const DASH: &str = "dash";
const BARSPOON: &str = "barspoon";

/// Names and labels of the jigger fields: brim, then lines.
const JIGGERS: [[(&str, &str); 2]; 6] = [
    [("brim_1", "Jigger 1, to the brim"), ("lines_1", "Lines inside it")],
    [("brim_2", "Jigger 2, to the brim"), ("lines_2", "Lines inside it")],
    [("brim_3", "Jigger 3, to the brim"), ("lines_3", "Lines inside it")],
    [("brim_4", "Jigger 4, to the brim"), ("lines_4", "Lines inside it")],
    [("brim_5", "Jigger 5, to the brim"), ("lines_5", "Lines inside it")],
    [("brim_6", "Jigger 6, to the brim"), ("lines_6", "Lines inside it")],
];

impl Tool for ShelfForm {
    fn empty_label(&self, _bench: &Bench) -> &'static str {
        "Start over"
    }

    fn layout(&self, _bench: &Bench) -> Vec<Block> {
        let mut blocks = Vec::new();
        if self.install_hint.is_empty() {
            blocks.push(Block::InstallHint);
        }
        let remark = |words: &str| Block::Remark(words.into());
        blocks.extend([
            Block::chips::<Ounce>("ounce", "One oz is", true),
            remark("30 ml is a rule of thumb. Spoons, cup and pints follow the ounce."),
            Block::chips::<UsualUnit>("usual_unit", "Numbers without a unit are", true),
            Block::chips::<Weights>("weights", "Weights are shown in", true),
            Block::Heading("Small measures"),
            Block::amount(DASH, "One dash", Keys::Pour),
            Block::amount(BARSPOON, "One barspoon", Keys::Pour),
            remark("0.8 ml and 5 ml are rules of thumb. Measure ten of yours and type what one is."),
            Block::chips::<Citrus>("citrus", "Acid of limes and lemons", true),
            remark("Of both, in every tool: 45.9 and 48 g/l of citric acid, Penniston et al. 2008; or 4 % citric with 2 % malic, and 6 % citric (rule of thumb)."),
            Block::Heading("Jiggers"),
        ]);
        for [brim, lines] in &JIGGERS[..self.jiggers_shown()] {
            blocks.push(Block::amount(brim.0, brim.1, Keys::Pour));
            blocks.push(Block::amount(lines.0, lines.1, Keys::Marks));
        }
        blocks.extend([
            remark("Part the lines inside a jigger with ; as in ½; ¾; 1 oz. Empty a jigger to take it off the shelf."),
            Block::field("yields", "Your own yields", Input::Lines { placeholder: "like lime juice 38 %" }),
            Block::field(GLASSES, "Your glasses", Input::Lines { placeholder: GLASS_LIKE }),
            remark("A line each: name, what it holds to the brim, and a shape where the name says none."),
        ]);
        blocks.extend(paces::fields());
        blocks.extend([
            Block::Heading("Prices"),
            Block::field("prices", "What you pay", Input::Lines { placeholder: "like London dry gin, 700 ml, 24.00" }),
            remark("Name, pack, price; then what of it is used and the day, as in 38 %, 2026-11-20. The newest line of a name counts."),
            Block::field("currency", "Money is called", Input::Words { placeholder: "like €" }),
            Block::Heading("This app"),
            Block::chips::<Theme>("theme", "Look", true),
            Block::chips::<Keyboard>("keyboard", "Numbers are typed on", true),
            Block::chips::<Hand>("hand", "Hand on the pad", true),
            Block::chips::<DecimalMark>("decimal", "Decimals", true),
            Block::chips::<StandardDrink>("region", "Standard drink", true),
            remark("Everything stays on this device. Nothing is sent anywhere."),
            Block::Link("What this app is made of, and its licences", "licences.html"),
        ]);
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let (read, problems) = self.read(bench.decimal);
        let count = read.house.marks().count();
        let also = match problems.first() {
            Some(problem) => problem.words.clone(),
            None => "Every tool reads and pours by what stands here".to_owned(),
        };
        let noun = plural(count, "jigger measure", "jigger measures");
        let strip =
            Strip { figures: vec![Figure::new(count.to_string(), noun)], also, tone: Tone::Answer, ..Strip::default() };
        Answer { strip, problems, ..Answer::default() }
    }

    /// Back to how a shelf starts; what is paid is no setting.
    fn empty(&mut self) {
        let kept = [&mut self.install_hint, &mut self.install_said, &mut self.prices, &mut self.currency];
        let [install_hint, install_said, prices, currency] = kept.map(std::mem::take);
        *self = ShelfForm { install_hint, install_said, prices, currency, ..ShelfForm::default() };
    }

    fn take(&mut self, _name: &str, _text: &str) {}
}

impl Theme {
    /// The look chosen on the shelf of these texts.
    #[must_use]
    pub fn of(texts: &Texts) -> Theme {
        chosen(texts, "theme")
    }
}

impl Keyboard {
    /// What numbers are entered with on the shelf of these texts.
    #[must_use]
    pub fn of(texts: &Texts) -> Keyboard {
        chosen(texts, "keyboard")
    }
}

impl Hand {
    /// The hand that types on the pad, on the shelf of these texts.
    #[must_use]
    pub fn of(texts: &Texts) -> Hand {
        chosen(texts, "hand")
    }
}

/// One choice, without reading the whole shelf for it; where none is kept the first, as in [`ShelfForm`].
fn chosen<C: Choice>(texts: &Texts, name: &str) -> C {
    C::read(texts.get(name).map_or("", String::as_str))
}

impl ShelfForm {
    /// The shelf of these texts.
    #[must_use]
    pub fn of(texts: &Texts) -> ShelfForm {
        let mut shelf = ShelfForm::default();
        fill(&mut shelf, texts);
        shelf
    }

    fn jigger_texts(&self) -> [(&str, &str); 6] {
        [
            (&self.brim_1, &self.lines_1),
            (&self.brim_2, &self.lines_2),
            (&self.brim_3, &self.lines_3),
            (&self.brim_4, &self.lines_4),
            (&self.brim_5, &self.lines_5),
            (&self.brim_6, &self.lines_6),
        ]
    }

    /// Those on the shelf, and an empty place for one more.
    fn jiggers_shown(&self) -> usize {
        let texts = self.jigger_texts();
        let used = texts.iter().rposition(|(brim, lines)| !brim.trim().is_empty() || !lines.trim().is_empty());
        (used.map_or(0, |last| last + 1) + 1).min(texts.len())
    }

    /// The bench this shelf makes, on a device that shows decimals with `device`.
    ///
    /// What cannot be read falls back to its default; [`ShelfForm::problems`] says so beside the field.
    #[must_use]
    pub fn bench(&self, device: Decimal) -> Bench {
        self.read(device).0
    }

    /// What is wrong, by field.
    #[must_use]
    pub fn problems(&self, device: Decimal) -> Vec<Problem> {
        self.read(device).1
    }

    fn read(&self, device: Decimal) -> (Bench, Vec<Problem>) {
        let decimal = match DecimalMark::read(&self.decimal) {
            DecimalMark::Device => device,
            DecimalMark::Point => Decimal::Point,
            DecimalMark::Comma => Decimal::Comma,
        };
        let mut problems = Vec::new();
        let ounce = Ounce::read(&self.ounce);
        let plain = Conventions { ounce, ..Conventions::default() };
        let usual_unit = match UsualUnit::read(&self.usual_unit) {
            UsualUnit::Millilitre => Unit::Millilitre,
            UsualUnit::Centilitre => Unit::Centilitre,
            UsualUnit::Ounce => Unit::Ounce,
        };
        let reading = Reading { conventions: &plain, decimal, bare: usual_unit, kind: Dimension::Volume, own: &[] };
        let dash = small::read(DASH, &self.dash, (0.1, 5.0), &reading, &mut problems).unwrap_or(Conventions::DASH);
        let barspoon = small::read(BARSPOON, &self.barspoon, (1.0, 20.0), &reading, &mut problems)
            .unwrap_or(Conventions::BARSPOON);
        let conventions = Conventions { ounce, dash, barspoon, part: None };
        let jiggers = self.read_jiggers(&reading, &mut problems);
        if let Some(line) = text::unread_yield(&self.yields, decimal) {
            problems.push(Problem::new("yields", format!("“{line}” is no yield. Write it like: lime juice 38 %.")));
        } else if let Some(name) = text::unasked_yield(&self.yields, decimal, yields::is_asked_for) {
            problems.push(Problem::new(
                "yields",
                format!("No tool asks for “{name}”. They ask for: lime juice, lime filtered juice, lime purée, lime by enzyme (agar, gelatin, rest), milk wash."),
            ));
        }
        let glasses = read_glasses(&self.glasses, &reading, &mut problems);
        let (region, citrus) = (StandardDrink::read(&self.region), Citrus::read(&self.citrus));
        let reading = Reading { conventions: &conventions, kind: Dimension::Either, ..reading };
        let prices = self.read_prices(&reading, &mut problems);
        let house = House { conventions, usual_unit, jiggers, region, citrus };
        let in_pounds = Weights::read(&self.weights) == Weights::Pounds;
        let mut bench = Bench {
            house,
            decimal,
            in_pounds,
            yields: self.yields.clone(),
            glasses,
            price_lines: self.prices.clone(),
            prices,
            currency: self.currency.trim().to_owned(),
            ..Bench::default()
        };
        bench.paces = paces::read(self, &bench, &mut problems);
        bench.read_own();
        (bench, problems)
    }

    /// The prices that can be read; the first line that can't is said.
    fn read_prices(&self, reading: &Reading<'_>, problems: &mut Vec<Problem>) -> Vec<Price> {
        let mut prices = Vec::new();
        for line in self.prices.lines().filter(|line| !line.trim().is_empty()) {
            match text::read_price(line.trim(), reading) {
                Ok(price) => prices.push(price),
                Err(_) if problems.iter().any(|problem| problem.field == "prices") => {}
                Err(unread) => problems.push(Problem::new("prices", unread.words)),
            }
        }
        prices
    }

    fn read_jiggers(&self, reading: &Reading<'_>, problems: &mut Vec<Problem>) -> Vec<Jigger> {
        let mut marks = |field: &str, text: &str| {
            text::read_marks(text, reading).unwrap_or_else(|problem| {
                problems.push(Problem { fixes: fixes(problem.fixes(text)), ..Problem::new(field, problem) });
                Vec::new()
            })
        };
        let mut one_brim = Vec::new();
        let jiggers = self
            .jigger_texts()
            .into_iter()
            .zip(JIGGERS)
            .filter_map(|((brim, lines), [brim_field, lines_field])| {
                let lines = marks(lines_field.0, lines);
                let all = marks(brim_field.0, brim);
                if all.len() > 1 {
                    let words = "One measure to the brim. The others belong below, to the lines inside it.";
                    one_brim.push(Problem::new(brim_field.0, words));
                }
                let mut brims = all.into_iter();
                // Without a brim the lines still measure: the largest stands in for it.
                let largest = || lines.iter().max_by(|a, b| a.volume.ml().total_cmp(&b.volume.ml())).cloned();
                let brim = brims.next().or_else(largest)?;
                Some(Jigger { brim, lines })
            })
            .collect();
        problems.append(&mut one_brim);
        jiggers
    }
}
