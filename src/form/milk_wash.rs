//! Milk wash: how much milk for a drink, or how much drink for the milk.

use super::Bench;
use super::answer::{Answer, Figure, Problem, Strip, Tone};
use super::fields::{Choice, choice, form};
use super::pad::Keys;
use super::route::Route;
use super::screen::{Block, Tool};
use crate::craft::milk_wash::{Wash, drink_for, milk_for};
use crate::quantity::Ratio;
use crate::substance::milk::USUAL_DRINK_PER_MILK;
use crate::text;

/// Which of the two is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Known {
    /// The drink.
    Drink,
    /// The milk.
    Milk,
}

choice! { Known:
    Drink = "drink", "A drink to wash";
    Milk = "milk", "Milk to use";
}

form! {
    /// What is typed.
    MilkWashForm {
        /// Which is known: a key of [`Known`].
        known = "drink",
        /// Volume of the drink.
        drink = "1725 ml",
        /// Volume of the milk.
        milk = "1 l",
        /// Milk : drink.
        ratio = "1:5",
    }
}

const DRINK: &str = "drink";
const MILK: &str = "milk";
const RATIO: &str = "ratio";

impl Tool for MilkWashForm {
    fn layout(&self, _bench: &Bench) -> Vec<Block> {
        vec![
            Block::chips::<Known>("known", "What is known", false),
            match self.known() {
                Known::Drink => Block::amount(DRINK, "Drink to wash", Keys::Batch),
                Known::Milk => Block::amount(MILK, "Milk to use", Keys::Batch),
            },
            Block::amount(RATIO, "Milk : drink", Keys::Ratio),
        ]
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        answer.cautions.push(
            "Contains milk, however clear it looks: tell every guest. Keep it cold and follow your local food code."
                .into(),
        );
        let ratio = text::read_milk_ratio(&self.ratio, bench.decimal).unwrap_or_else(|problem| {
            answer.problems.push(Problem::new(RATIO, problem));
            None
        });
        let known = match self.known() {
            Known::Drink => bench.volume(DRINK, &self.drink, &mut answer.problems),
            Known::Milk => bench.volume(MILK, &self.milk, &mut answer.problems),
        };
        let (Some(ratio), Some(known)) = (ratio, known) else {
            return answer.without_answer(match self.known() {
                Known::Drink => "Type how much drink there is to wash, and the ratio.",
                Known::Milk => "Type how much milk there is, and the ratio.",
            });
        };
        let wash = match self.known() {
            Known::Drink => milk_for(known, ratio),
            Known::Milk => Some(drink_for(known, ratio)),
        };
        match wash {
            Some(wash) => self.laid_out(answer, &wash, ratio, bench),
            None => answer.without_answer(""),
        }
    }

    fn clear(&mut self) {
        self.drink.clear();
        self.milk.clear();
    }

    fn take(&mut self, name: &str, text: &str) {
        match name {
            DRINK => {
                text.clone_into(&mut self.drink);
                Known::Drink.key().clone_into(&mut self.known);
            }
            MILK => {
                text.clone_into(&mut self.milk);
                Known::Milk.key().clone_into(&mut self.known);
            }
            _ => {}
        }
    }
}

impl MilkWashForm {
    fn known(&self) -> Known {
        Known::read(&self.known)
    }

    fn laid_out(&self, mut answer: Answer, wash: &Wash, ratio: Ratio, bench: &Bench) -> Answer {
        let ml = |volume| text::litres_or_ml(volume, bench.decimal);
        let (volume, noun) = match self.known() {
            Known::Drink => (wash.milk, "milk"),
            Known::Milk => (wash.drink, "drink"),
        };
        let figure = ml(volume);
        let parts = text::fraction_of(ratio.value()).unwrap_or_else(|| text::count(ratio.value(), bench.decimal));
        answer.strip = Strip {
            figures: vec![Figure::new(figure.value, format!("{} {noun}", figure.unit))],
            also: format!("1 part milk to {parts} parts drink, {} together", ml(wash.together())),
            tone: Tone::Answer,
        };
        answer.cells_title = "The wash";
        answer.cell("milk, in first", ml(wash.milk));
        answer.cell("milk in oz", text::ounces(wash.milk, &bench.house.conventions, bench.decimal));
        answer.cell("drink, over the milk", ml(wash.drink));
        answer.cell("vessel holds at least", ml(wash.together()));
        answer.remarks.push(
            "Milk into the vessel first. Pour the drink over the milk, slowly, not the milk into the drink.".into(),
        );
        answer
            .remarks
            .push("Let it stand, then filter. The first runnings are cloudy: pour them back through the curd.".into());
        if !USUAL_DRINK_PER_MILK.contains(&ratio.value()) {
            let way = if ratio.value() < *USUAL_DRINK_PER_MILK.start() { "More" } else { "Less" };
            answer.remarks.push(format!("{way} milk than the usual 1:3 to 1:6 (common practice, no source)."));
        }
        answer.carry("Share it out in serves", Route::Serves.href_with("made", &bench.carried(wash.drink)));
        answer
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn answers_both_ways() {
        let answer = MilkWashForm::default().answer(&Bench::default());
        assert_eq!(answer.strip.figures[0].to_string(), "345 ml milk");
        assert_eq!(answer.strip.also, "1 part milk to 5 parts drink, 2\u{202f}070 ml together");
        assert_eq!(answer.cautions.len(), 1);

        let milk =
            MilkWashForm { known: "milk".into(), ratio: "1:5¾".into(), milk: "1 oz".into(), ..Default::default() };
        assert_eq!(milk.answer(&Bench::default()).strip.figures[0].to_string(), "170 ml drink");
    }

    #[test]
    fn an_unusual_ratio_is_remarked_on() {
        let remarks =
            |ratio: &str| MilkWashForm { ratio: ratio.into(), ..Default::default() }.answer(&Bench::default()).remarks;
        assert_eq!(remarks("1:5").len(), 2);
        assert!(remarks("1:2")[2].starts_with("More milk"));
        assert!(remarks("1:10")[2].starts_with("Less milk"));
    }
}
