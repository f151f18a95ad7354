//! Powders and water in place of juice, and juice for powders.

use super::{AcidForm, CITRIC, JUICE, MALIC, MOST_ACID, OWN_CITRIC, OWN_MALIC};
use crate::craft::acid::{Acids, StandIn, stand_in, stands_in_for};
use crate::quantity::{Acidity, Mass, Unit, Volume};
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Figure, Problem, Strip, Tone};
use crate::substance::juice::JuiceAcids;
use crate::text;

impl AcidForm {
    /// What the juice is called in a sentence.
    fn fruit(&self) -> &'static str {
        self.named_profile().map_or("of your juice", |profile| match profile.fruit {
            "lemon" => "lemon juice",
            _ => "lime juice",
        })
    }

    pub(super) fn acids(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Acids> {
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

    pub(super) fn replace(&self, mut answer: Answer, acids: Option<Acids>, bench: &Bench) -> Answer {
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
            also: format!("in water to {}", ml(juice)),
            below: format!("As sour as that much {}", self.fruit()),
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.cells_title = "To make it";
        answer.cell("water, about", ml(made.water));
        answer.cell("true strength", Figure::new(text::percent(made.true_strength, bench.decimal), ""));
        answer.cell(
            "acid, as citric",
            Figure::new(text::plain(acids.as_citric() * made.true_strength, 1, bench.decimal), "g/l"),
        );
        self.say_exactly(answer, &[("citric", made.citric), ("malic", made.malic)], bench);
        self.remark_on_profile(answer, bench);
        answer.carry("Measure this much", Route::Measure.href_with("amount", &bench.carried(juice)));
    }

    /// What is weighed before it is rounded to the step of the scale, where that is coarser than a hundredth of a gram.
    pub(super) fn say_exactly(&self, answer: &mut Answer, weighed: &[(&str, Mass)], bench: &Bench) {
        if self.step().decimals() >= 2 {
            return;
        }
        let exactly = |(name, mass): &(&str, Mass)| format!("{} {name}", text::grams(*mass, 2, bench.decimal));
        let all: Vec<String> = weighed.iter().filter(|(_, mass)| *mass > Mass::ZERO).map(exactly).collect();
        answer.remarks.push(format!("Rounded to a {} scale; exactly {}.", self.step_shown(bench), all.join(", ")));
    }

    pub(super) fn backwards(&self, mut answer: Answer, acids: Option<Acids>, bench: &Bench) -> Answer {
        let citric = bench.mass_or_none(CITRIC, &self.citric, &mut answer.problems);
        let malic = bench.mass_or_none(MALIC, &self.malic, &mut answer.problems);
        let juice = acids.and_then(|acids| Some((acids, stands_in_for(citric?, malic?, &acids)?)));
        let Some((acids, juice)) = juice else {
            return answer.without_answer("Type the grams of acid there are.");
        };
        let figure = bench.headline_of(juice, self.fruit(), None);
        let is_in_oz = figure.unit.starts_with(text::typed(Unit::Ounce));
        answer.strip = Strip {
            figures: vec![figure],
            also: "is as sour, from this acid in as much water".into(),
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.cells_title = "By titration";
        answer.cell("acid, as citric", Figure::new(text::plain(acids.as_citric(), 1, bench.decimal), "g/l"));
        let ounces = text::ounces(juice, &bench.house.conventions, bench.decimal);
        if !is_in_oz {
            answer.cell("juice in oz", ounces);
        }
        answer.remarks.push("By equal titratable acidity. Malic and citric do not taste alike.".into());
        self.remark_on_profile(&mut answer, bench);
        answer.carry("Measure this much", Route::Measure.href_with("amount", &bench.carried(juice)));
        answer
    }

    fn remark_on_profile(&self, answer: &mut Answer, bench: &Bench) {
        self.remark_on_citrus_here(answer, bench);
        answer.remarks.push(match self.named_profile() {
            Some(profile) => {
                format!("{}. Fresh fruit varies by a fifth and more: taste it.", figures_of(profile, bench))
            }
            None => "Your own figures.".into(),
        });
    }

    /// Where powder in water is sourer or less sour than the juice that every other tool counts, that is said.
    fn remark_on_citrus_here(&self, answer: &mut Answer, bench: &Bench) {
        let Some(profile) = self.named_profile() else { return };
        let Some(here) = JuiceAcids::of(profile.fruit, bench.house.citrus) else { return };
        let (powder, juice) = (profile.as_citric(), here.titrates());
        let g_per_l = |acid| text::plain(acid, 1, bench.decimal);
        let by = text::plain((powder / juice - 1.0).abs() * 100.0, 0, bench.decimal);
        let than = if powder > juice { "sourer" } else { "less sour" };
        let counted = format!(
            "{by} % {than} than {} juice as Balance counts it: {} against {} g/l by titration.",
            profile.fruit,
            g_per_l(powder),
            g_per_l(juice)
        );
        if profile.key == here.key {
            if (powder / juice - 1.0).abs() > 0.02 {
                answer.remarks.push(format!("{counted} The salts of juice hold some of its acid."));
            }
        } else {
            answer.cautions.push(format!("{counted} One setting, Acid of limes and lemons, serves both."));
        }
    }

    fn step_shown(&self, bench: &Bench) -> String {
        text::grams(self.step().grams(), self.step().decimals(), bench.decimal).to_string()
    }
}

pub(super) fn figures_of(profile: &JuiceAcids, bench: &Bench) -> String {
    let g_per_l = |acid| text::count(acid, bench.decimal);
    format!("{} g/l citric and {} g/l malic: {}", g_per_l(profile.citric), g_per_l(profile.malic), profile.source)
}
