//! Acid: powders and water in place of citrus, and back.

use super::Bench;
use super::answer::{Answer, Figure, Problem, Strip, Tone};
use super::fields::{Choice, choice, form};
use super::pad::Keys;
use super::route::Route;
use super::screen::{Block, Opt, Tool};
use crate::craft::acid::{Acids, StandIn, stand_in, stands_in_for};
use crate::quantity::{Acidity, Mass, Volume};
use crate::substance::juice::{JuiceAcids, PROFILES};
use crate::text;

/// Which way the question goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// Juice → powders and water.
    Replace,
    /// Powders → juice.
    Backwards,
}

choice! { Direction:
    Replace = "replace", "Replace juice";
    Backwards = "powder", "Use up powder";
}

/// The finest step of the scale.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScaleStep {
    /// 0.1 g.
    Tenth,
    /// 0.01 g.
    Hundredth,
    /// 1 g.
    Gram,
}

choice! { ScaleStep:
    Tenth = "0.1", "0.1 g";
    Hundredth = "0.01", "0.01 g";
    Gram = "1", "1 g";
}

impl ScaleStep {
    fn grams(self) -> Mass {
        let grams = match self {
            ScaleStep::Hundredth => 0.01,
            ScaleStep::Tenth => 0.1,
            ScaleStep::Gram => 1.0,
        };
        Mass::from_g(grams).unwrap_or(Mass::ZERO)
    }

    const fn decimals(self) -> usize {
        match self {
            ScaleStep::Hundredth => 2,
            ScaleStep::Tenth => 1,
            ScaleStep::Gram => 0,
        }
    }
}

form! {
    /// What is typed.
    AcidForm {
        /// Which way: a key of [`Direction`].
        direction = "replace",
        /// Juice to replace.
        juice = "300 ml",
        /// Key of the profile, or [`OWN`].
        profile = PROFILES[0].key,
        /// Own profile: citric acid, g/l.
        own_citric = "45",
        /// Own profile: malic acid, g/l.
        own_malic = "15",
        /// What the scale reads to: a key of [`ScaleStep`].
        step = "0.1",
        /// Citric acid there is.
        citric = "12 g",
        /// Malic acid there is.
        malic = "6 g",
    }
}

const JUICE: &str = "juice";
const OWN_CITRIC: &str = "own_citric";
const OWN_MALIC: &str = "own_malic";
const CITRIC: &str = "citric";
const MALIC: &str = "malic";
/// Profile key of the person's own figures.
pub const OWN: &str = "own";

/// Acid that still dissolves and is still a juice: 0 to 400 g/l.
const MOST_ACID: f64 = 400.0;

impl Tool for AcidForm {
    fn is_tall(&self) -> bool {
        true
    }

    fn layout(&self, _bench: &Bench) -> Vec<Block> {
        let named = PROFILES.iter().map(|profile| Opt::new(profile.key, profile.name));
        let profiles = named.chain([Opt::new(OWN, "My own")]).collect();
        let replacing = self.direction() == Direction::Replace;
        let mut blocks = vec![Block::chips::<Direction>("direction", "Which way", false)];
        if replacing {
            blocks.push(Block::amount(JUICE, "Juice to replace", Keys::Batch));
        } else {
            blocks.push(Block::amount(CITRIC, "Citric acid", Keys::Weight));
            blocks.push(Block::amount(MALIC, "Malic acid", Keys::Weight));
        }
        blocks.push(Block::pick("profile", "Taken as", profiles));
        if self.named_profile().is_none() {
            blocks.push(Block::amount(OWN_CITRIC, "Own: citric, g/l", Keys::Count));
            blocks.push(Block::amount(OWN_MALIC, "Own: malic, g/l", Keys::Count));
        }
        if replacing {
            blocks.push(Block::chips::<ScaleStep>("step", "The scale reads to", true));
        }
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        answer.cautions.push("Food-grade acid only. Keep the powder and strong solutions off eyes and skin.".into());
        let acids = self.acids(bench, &mut answer.problems);
        match self.direction() {
            Direction::Replace => self.replace(answer, acids, bench),
            Direction::Backwards => self.backwards(answer, acids, bench),
        }
    }

    fn clear(&mut self) {
        self.juice.clear();
        self.citric.clear();
        self.malic.clear();
    }

    fn take(&mut self, name: &str, text: &str) {
        if name == JUICE {
            text.clone_into(&mut self.juice);
            Direction::Replace.key().clone_into(&mut self.direction);
        }
    }
}

impl AcidForm {
    fn direction(&self) -> Direction {
        Direction::read(&self.direction)
    }

    fn step(&self) -> ScaleStep {
        ScaleStep::read(&self.step)
    }

    fn named_profile(&self) -> Option<&'static JuiceAcids> {
        PROFILES.iter().find(|profile| profile.key == self.profile)
    }

    /// What the juice is called in a sentence.
    fn fruit(&self) -> &'static str {
        self.named_profile().map_or("of your juice", |profile| match profile.fruit {
            "lemon" => "lemon juice",
            _ => "lime juice",
        })
    }

    fn acids(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Acids> {
        let acidity = |g_per_l| Acidity::from_g_per_l(g_per_l).ok();
        if let Some(profile) = self.named_profile() {
            return Some(Acids { citric: acidity(profile.citric)?, malic: acidity(profile.malic)? });
        }
        let mut own = |field, text: &str| {
            let words = "Type grams per litre from 0 to 400, like 45.";
            if text.trim().is_empty() {
                return acidity(0.0);
            }
            acidity(bench.number(field, text, (0.0, MOST_ACID), words, problems)?)
        };
        let (citric, malic) = (own(OWN_CITRIC, &self.own_citric), own(OWN_MALIC, &self.own_malic));
        let acids = Acids { citric: citric?, malic: malic? };
        if acids.as_citric() > 0.0 {
            return Some(acids);
        }
        let words = "Give your juice some acid: at least one of the two above zero.".to_owned();
        problems.push(Problem::new(OWN_CITRIC, words));
        None
    }

    fn replace(&self, mut answer: Answer, acids: Option<Acids>, bench: &Bench) -> Answer {
        let juice = bench.volume(JUICE, &self.juice, &mut answer.problems);
        let (Some(acids), Some(juice)) = (acids, juice) else {
            return answer.without_answer("Type how much juice to replace.");
        };
        let Some(made) = stand_in(juice, &acids, self.step().grams()) else {
            return answer.without_answer("");
        };
        let nothing_to_weigh = made.citric_weighed + made.malic_weighed <= Mass::ZERO;
        if nothing_to_weigh {
            let words =
                format!("Under one step of a {} scale. Make more, or use a finer scale.", self.step_shown(bench));
            answer.problems.push(Problem::new(JUICE, words));
            return answer.without_answer("");
        }
        self.show_stand_in(&mut answer, &made, juice, &acids, bench);
        answer
    }

    fn show_stand_in(&self, answer: &mut Answer, made: &StandIn, juice: Volume, acids: &Acids, bench: &Bench) {
        let grams = |mass| text::grams(mass, self.step().decimals(), bench.decimal);
        let acid_figure = |mass: Mass, name| {
            let figure = grams(mass);
            Figure::new(figure.value, format!("{} {name}", figure.unit))
        };
        let mut figures = Vec::new();
        if made.citric > Mass::ZERO {
            figures.push(acid_figure(made.citric_weighed, "citric"));
        }
        if made.malic > Mass::ZERO {
            figures.push(acid_figure(made.malic_weighed, "malic"));
        }
        let ml = |volume| text::litres_or_ml(volume, bench.decimal);
        answer.strip = Strip {
            figures,
            also: format!("in water to {}: as sour as that much {}", ml(juice), self.fruit()),
            tone: Tone::Answer,
        };
        answer.cells_title = "To make it";
        answer.cell("water, about", ml(made.water));
        answer.cell("true strength", Figure::new(text::percent(made.true_strength, bench.decimal), ""));
        answer.cell("citric, exactly", text::grams(made.citric, 2, bench.decimal));
        answer.cell("malic, exactly", text::grams(made.malic, 2, bench.decimal));
        answer.cell(
            "acid, as citric",
            Figure::new(text::plain(acids.as_citric() * made.true_strength, 1, bench.decimal), "g/l"),
        );
        self.remark_on_profile(answer, bench);
        answer.carry("Measure this much", Route::Measure.href_with("amount", &bench.carried(juice)));
    }

    fn backwards(&self, mut answer: Answer, acids: Option<Acids>, bench: &Bench) -> Answer {
        let citric = bench.mass_or_none(CITRIC, &self.citric, &mut answer.problems);
        let malic = bench.mass_or_none(MALIC, &self.malic, &mut answer.problems);
        let juice = acids.and_then(|acids| Some((acids, stands_in_for(citric?, malic?, &acids)?)));
        let Some((acids, juice)) = juice else {
            return answer.without_answer("Type the grams of acid there are.");
        };
        let figure = text::litres_or_ml(juice, bench.decimal);
        answer.strip = Strip {
            figures: vec![Figure::new(figure.value, format!("{} {}", figure.unit, self.fruit()))],
            also: "is as sour as this acid in water made up to the same volume".into(),
            tone: Tone::Answer,
        };
        answer.cells_title = "By titration";
        answer.cell("acid, as citric", Figure::new(text::plain(acids.as_citric(), 1, bench.decimal), "g/l"));
        let ounces = text::ounces(juice, &bench.house.conventions, bench.decimal);
        answer.cell("juice in oz", ounces);
        answer.remarks.push("By equal titratable acidity. Malic and citric do not taste alike.".into());
        self.remark_on_profile(&mut answer, bench);
        answer.carry("Measure this much", Route::Measure.href_with("amount", &bench.carried(juice)));
        answer
    }

    fn remark_on_profile(&self, answer: &mut Answer, bench: &Bench) {
        answer.remarks.push(match self.named_profile() {
            Some(profile) => {
                format!("{}. Fresh fruit varies by a fifth and more: taste it.", figures_of(profile, bench))
            }
            None => "Your own figures.".into(),
        });
    }

    fn step_shown(&self, bench: &Bench) -> String {
        text::grams(self.step().grams(), self.step().decimals(), bench.decimal).to_string()
    }
}

fn figures_of(profile: &JuiceAcids, bench: &Bench) -> String {
    let g_per_l = |acid| text::count(acid, bench.decimal);
    format!("{} g/l citric and {} g/l malic: {}", g_per_l(profile.citric), g_per_l(profile.malic), profile.source)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn replaces_lime_by_the_bar_rule() {
        let answer = AcidForm::default().answer(&Bench::default());
        let figures: Vec<String> = answer.strip.figures.iter().map(ToString::to_string).collect();
        assert_eq!(figures, ["12.0 g citric", "6.0 g malic"]);
        assert_eq!(answer.strip.also, "in water to 300 ml: as sour as that much lime juice");
        assert_eq!(answer.cells[0].figure.to_string(), "289 ml");
    }

    #[test]
    fn says_the_true_strength_after_rounding() {
        let form =
            AcidForm { juice: "10 ml".into(), step: "1".into(), profile: "lime-2008".into(), ..Default::default() };
        let answer = form.answer(&Bench::default());
        assert!(answer.problems[0].words.starts_with("Under one step of a 1 g scale"));
        let form = AcidForm { juice: "30 ml".into(), ..form };
        let answer = form.answer(&Bench::default());
        assert_eq!(answer.strip.figures[0].to_string(), "1 g citric");
        assert_eq!(answer.cells[1].figure.to_string(), "72.6 %");
    }

    #[test]
    fn backwards_is_the_inverse() {
        let form = AcidForm { direction: "powder".into(), ..Default::default() };
        assert_eq!(form.answer(&Bench::default()).strip.figures[0].to_string(), "300 ml lime juice");
        let none = AcidForm { citric: String::new(), malic: String::new(), ..form };
        assert_eq!(none.answer(&Bench::default()).strip.tone, Tone::Waiting);
    }
}
