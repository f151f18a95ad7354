//! Syrup: made to a sweetness, put right, swapped at equal sugar, and sugar into juice.

mod correct;
mod swap;

use crate::craft::syrup;
use crate::quantity::{Amount, Brix, Mass, OutOfRange, Temperature};
use crate::reading::{label, origin};
use crate::screen::pad::Keys;
use crate::screen::plan::Need;
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Block, Choice, Figure, Problem, Strip, Tone, Tool, choice, form};
use crate::substance::mix::Mix;
use crate::substance::sucrose;
use crate::text::{self, Dimension, Sweetness};

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ask {
    /// Sugar and water for a syrup.
    Make,
    /// Sugar or water for one that measures wrong.
    Correct,
    /// As much sugar in another sweetener.
    Swap,
    /// Sugar into a juice.
    Juice,
}

choice! { Ask:
    Make = "make", "Make";
    Correct = "correct", "Put right";
    Swap = "swap", "Swap";
    Juice = "juice", "Juice";
}

/// What is known of a syrup to make.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MakeBy {
    /// How much to make.
    Amount,
    /// The sugar there is.
    Sugar,
}

choice! { MakeBy:
    Amount = "amount", "Amount to make";
    Sugar = "sugar", "Sugar I have";
}

/// What a ratio counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RatioBy {
    /// Grams.
    Weight,
    /// Cups.
    Cup,
}

choice! { RatioBy:
    Weight = "weight", "Weight";
    Cup = "cup", "The cup";
}

form! {
    /// What is typed.
    SyrupForm {
        /// What is asked: a key of [`Ask`].
        ask = "make",
        /// What is known: a key of [`MakeBy`].
        make_by = "amount",
        /// How much to make.
        amount = "1 l",
        /// The sugar there is.
        sugar = "1 kg",
        /// How sweet.
        sweetness = "2:1",
        /// What a ratio counts: a key of [`RatioBy`].
        ratio_by = "weight",
        /// How cold it is kept.
        kept = "4",
        /// Syrup to put right.
        syrup = "1 l",
        /// What it reads.
        reads = "62 °Bx",
        /// What it should read.
        wants = "2:1",
        /// Sweetener to swap.
        swapped = "30 ml",
        /// Key of the sweetener there was.
        swap_from = "rich-syrup",
        /// Key of the sweetener there is.
        swap_to = "simple-syrup",
        /// Juice to sweeten.
        juice = "500 ml",
        /// What it reads.
        juice_reads = "11 °Bx",
        /// Sugar : juice by weight, or what it should read.
        juice_wants = "1:1",
    }
}

const AMOUNT: &str = "amount";
const SUGAR: &str = "sugar";
const SWEETNESS: &str = "sweetness";
const KEPT: &str = "kept";
const SYRUP: &str = "syrup";
const READS: &str = "reads";
const WANTS: &str = "wants";
const JUICE: &str = "juice";
const JUICE_READS: &str = "juice_reads";
const JUICE_WANTS: &str = "juice_wants";

/// °Brix over the limit that are worth a word.
const NOTICEABLE: f64 = 0.05;

const REFRACTOMETER: &str =
    "A refractometer lies where there is alcohol: spirit of 10 % by mass shows 4.5 °Bx, without a grain of sugar.";
const BRIX: &str = "Grams of sugar in 100 g of syrup.";
const SOLUBILITY: &str = "As sweet as sugar and water get at that temperature before crystals form. Syrup may go over for a \
    while, and a part of inverted sugar or gum holds it longer.";

impl Tool for SyrupForm {
    fn is_tall(&self) -> bool {
        true
    }

    fn layout(&self, _bench: &Bench) -> Vec<Block> {
        let mut blocks = vec![Block::chips::<Ask>("ask", "What is asked", false)];
        blocks.extend(match self.ask() {
            Ask::Make => vec![
                match MakeBy::read(&self.make_by) {
                    MakeBy::Amount => Block::amount(AMOUNT, "Amount to make", Keys::Bulk),
                    MakeBy::Sugar => Block::amount(SUGAR, "Sugar", Keys::Weight),
                },
                Block::amount(SWEETNESS, "Sugar to water, or °Brix", Keys::Ratio),
                Block::amount(KEPT, "Storage temperature", Keys::Celsius),
                Block::chips::<MakeBy>("make_by", "What is known", true),
                Block::chips::<RatioBy>("ratio_by", "Ratio by", true),
            ],
            Ask::Correct => vec![
                Block::Heading("Correct a syrup"),
                Block::amount(SYRUP, "Syrup I have", Keys::Bulk),
                Block::amount(READS, "Reads, ratio or °Brix", Keys::Ratio),
                Block::amount(WANTS, "Wanted, ratio or °Brix", Keys::Ratio),
                Block::chips::<RatioBy>("ratio_by", "Ratio by", true),
            ],
            Ask::Swap => self.swap_layout(),
            Ask::Juice => vec![
                Block::amount(JUICE, "Juice", Keys::Bulk),
                Block::amount(JUICE_READS, "Juice reads, °Brix", Keys::Ratio),
                Block::amount(JUICE_WANTS, "Sugar to juice, or °Brix", Keys::Ratio),
            ],
        });
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let answer = Answer::default();
        let mut answer = match self.ask() {
            Ask::Make => self.make(answer, bench),
            Ask::Correct => self.correct(answer, bench),
            Ask::Swap => self.swap(answer, bench),
            Ask::Juice => self.sweeten(answer, bench),
        };
        label::offer("Syrup", None, &mut answer);
        answer
    }

    fn empty(&mut self) {
        match self.ask() {
            Ask::Make => {
                self.amount.clear();
                self.sugar.clear();
            }
            Ask::Correct => self.syrup.clear(),
            Ask::Swap => self.swapped.clear(),
            Ask::Juice => self.juice.clear(),
        }
    }

    fn take(&mut self, name: &str, text: &str) {
        if name == AMOUNT {
            text.clone_into(&mut self.amount);
            Ask::Make.key().clone_into(&mut self.ask);
            MakeBy::Amount.key().clone_into(&mut self.make_by);
        }
    }
}

impl SyrupForm {
    fn ask(&self) -> Ask {
        Ask::read(&self.ask)
    }

    fn read(field: &'static str, text: &str, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Sweetness> {
        text::read_sweetness(text, &bench.reading(Dimension::Either)).unwrap_or_else(|unread| {
            problems.push(Problem::unread(field, unread));
            None
        })
    }

    fn brix(&self, field: &'static str, text: &str, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Brix> {
        match (Self::read(field, text, bench, problems)?, RatioBy::read(&self.ratio_by)) {
            (Sweetness::Degrees(brix), _) => Some(brix),
            (Sweetness::Parts(parts), RatioBy::Weight) => syrup::brix_by_weight(parts).ok(),
            (Sweetness::Parts(parts), RatioBy::Cup) => syrup::brix_by_volume(parts).ok(),
        }
    }

    fn make(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let problems = &mut answer.problems;
        let brix = self.brix(SWEETNESS, &self.sweetness, bench, problems);
        let kept = bench.temperature(KEPT, &self.kept, sucrose::VALID_CELSIUS, problems);
        let by = MakeBy::read(&self.make_by);
        let amount = match by {
            MakeBy::Amount => bench.amount(AMOUNT, &self.amount, Dimension::Either, problems),
            MakeBy::Sugar => bench.mass(SUGAR, &self.sugar, problems).map(Amount::Mass),
        };
        let (Some(brix), Some(kept), Some(amount)) = (brix, kept, amount) else {
            return answer.without_answer("Type how much, and how sweet.");
        };
        let made = match (amount, by) {
            (Amount::Volume(volume), _) => syrup::make(volume, brix),
            (Amount::Mass(sugar), MakeBy::Sugar) => syrup::with_sugar(sugar, brix),
            (Amount::Mass(mass), MakeBy::Amount) => syrup::make_mass(mass, brix),
            (Amount::Count(_), _) => return answer.without_answer(""),
        };
        let shown = made.and_then(|made| Ok((made, syrup::yielded(made)?)));
        let Ok((made, volume)) = shown else {
            answer.problems.push(Problem::new(SWEETNESS, "That is no syrup. Type a sweetness from 1 to 85 °Bx."));
            return answer.without_answer("");
        };
        let degrees = degrees(brix, bench);
        let crystals = match syrup::over_the_limit(brix, kept) {
            Ok(Some(over)) if over > NOTICEABLE => {
                format!(". May crystallise at {} °C", text::plain(kept.celsius(), 0, bench.decimal))
            }
            _ => String::new(),
        };
        answer.strip = Strip {
            figures: vec![bench.grams_of(made.sugar, "sugar"), bench.grams_of(made.water, "water")],
            also: format!("Makes {} at {degrees} °Bx{crystals}", text::litres_or_ml(volume, bench.decimal)),
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.cells_title = "The syrup";
        figures(&mut answer, brix, bench);
        warn_of_crystals(&mut answer, brix, kept, bench);
        if RatioBy::read(&self.ratio_by) == RatioBy::Cup && self.sweetness.contains(':') {
            answer.remarks.push(
                "By the cup: 200 g of sugar to the US cup (a figure from memory), give or take 5 %. Weighing is surer."
                    .into(),
            );
        }
        answer
            .remarks
            .push("ICUMSA formula (Bubník et al. 1995). Simple syrup is 50 °Bx by weight, but 46 by the cup.".into());
        answer.carry("Into serves", Route::Serves.href_with("made", &bench.carried(volume)));
        let needs = [("sugar", made.sugar), ("water", made.water)].map(|(of, mass)| Need::of(of, Amount::Mass(mass)));
        let mix = Mix::syrup(made.sugar + made.water, brix);
        answer.prep = Some(origin::prep("house syrup", "simple-syrup", (&mix, volume), &needs, bench));
        answer
    }
}

/// An amount of something this sweet, by weight.
fn weighed(amount: Amount, brix: Brix) -> Option<Mass> {
    match amount {
        Amount::Volume(volume) => Some(volume * sucrose::density(brix, Temperature::TWENTY).ok()?),
        Amount::Mass(mass) => Some(mass),
        Amount::Count(_) => None,
    }
}

fn degrees(brix: Brix, bench: &Bench) -> String {
    text::plain(brix.degrees(), 1, bench.decimal)
}

fn figures(answer: &mut Answer, brix: Brix, bench: &Bench) {
    let show = |answer: &mut Answer| -> Result<(), OutOfRange> {
        let density = sucrose::density(brix, Temperature::TWENTY)?.g_per_ml();
        answer.explained("sweetness", Figure::new(degrees(brix, bench), "°Bx"), BRIX);
        answer.cell("sugar", Figure::new(text::plain(density * 10.0 * brix.degrees(), 0, bench.decimal), "g/l"));
        answer.cell("density at 20 °C", Figure::new(text::plain(density, 3, bench.decimal), "g/ml"));
        let gravity = text::plain(sucrose::specific_gravity(brix)?, 3, bench.decimal);
        answer.explained(
            "specific gravity",
            Figure::new(gravity, "20/20"),
            "Its weight over that of as much water, as a hydrometer shows it.",
        );
        Ok(())
    };
    // Shown whole or not at all.
    let _ = show(answer);
}

fn warn_of_crystals(answer: &mut Answer, brix: Brix, kept: Temperature, bench: &Bench) {
    let Ok(limit) = sucrose::solubility(kept) else { return };
    let at = text::plain(kept.celsius(), 0, bench.decimal);
    let most = degrees(limit, bench);
    answer.explained(format!("dissolves at {at} °C"), Figure::new(most.clone(), "°Bx"), SOLUBILITY);
    // At 20 °C a 2:1 syrup stands at the limit itself.
    if brix.degrees() > limit.degrees() + NOTICEABLE {
        let over = text::plain(brix.degrees() - limit.degrees(), 1, bench.decimal);
        answer.cautions.push(format!("May crystallise at {at} °C: {over} °Bx over the {most} that dissolve there."));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn answer(change: impl FnOnce(&mut SyrupForm)) -> Answer {
        let mut form = SyrupForm::default();
        change(&mut form);
        form.answer(&Bench::default())
    }

    fn figures(answer: &Answer) -> Vec<String> {
        answer.strip.figures.iter().map(ToString::to_string).collect()
    }

    #[test]
    fn makes() {
        let rich = answer(|_| {});
        assert_eq!(figures(&rich), ["885 g sugar", "442 g water"]);
        assert_eq!(rich.strip.also, "Makes 1\u{202f}000 ml at 66.7 °Bx. May crystallise at 4 °C");
        assert_eq!(rich.cautions, ["May crystallise at 4 °C: 1.9 °Bx over the 64.8 that dissolve there."]);
        let by_cup = answer(|form| {
            form.ratio_by = "cup".into();
            form.sweetness = "1:1".into();
        });
        assert_eq!(by_cup.strip.also, "Makes 1\u{202f}000 ml at 45.9 °Bx");
        assert!(by_cup.cautions.is_empty());
        let from_sugar = answer(|form| {
            form.make_by = "sugar".into();
            form.sweetness = "1:1".into();
        });
        assert_eq!(figures(&from_sugar), ["1\u{202f}000 g sugar", "1\u{202f}000 g water"]);
        assert!(from_sugar.strip.also.starts_with("Makes 1\u{202f}62"), "{}", from_sugar.strip.also);
    }

    #[test]
    fn puts_right() {
        let sweeter = answer(|form| {
            form.ask = "correct".into();
            form.syrup = "1 kg".into();
            form.reads = "50".into();
            form.wants = "60".into();
        });
        assert_eq!(figures(&sweeter), ["250 g sugar"]);
        let thinner = answer(|form| {
            form.ask = "correct".into();
            form.syrup = "1 kg".into();
            form.reads = "60".into();
            form.wants = "1:1".into();
        });
        assert_eq!(figures(&thinner), ["200 g water"]);
    }

    #[test]
    fn sweetens_juice() {
        let made = answer(|form| {
            form.ask = "juice".into();
            form.juice = "1 kg".into();
        });
        assert_eq!(figures(&made), ["1\u{202f}000 g sugar"]);
        assert!(made.strip.also.ends_with("at 55.5 °Bx"), "{}", made.strip.also);
        let already = answer(|form| {
            form.ask = "juice".into();
            form.juice_wants = "5".into();
        });
        assert!(already.problems[0].words.starts_with("The juice is sweeter"));
    }

    #[test]
    fn swaps() {
        let swapped = answer(|form| form.ask = "swap".into());
        assert_eq!(figures(&swapped), ["43.2 ml"]);
        assert!(swapped.strip.also.starts_with("of Simple syrup 1:1 by weight"), "{}", swapped.strip.also);
        let dry = answer(|form| {
            form.ask = "swap".into();
            form.swap_to = "sugar".into();
        });
        assert_eq!(figures(&dry), ["26.5 g"]);
    }
}
