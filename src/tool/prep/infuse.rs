//! Infuse and salt: saline, tinctures, peel in sugar, fat-washing, gomme.

use crate::book::{Allergen, Own, allergens_in, asked_in};
use crate::craft::infuse::{gomme, solution};
use crate::quantity::{Amount, Mass, Ratio, Volume};
use crate::reading::label::{self, Keeps};
use crate::reading::origin;
use crate::screen::pad::Keys;
use crate::screen::plan::{HOUR, MINUTE, Making, Need, Plan, Step};
use crate::screen::{Answer, Bench, Block, Choice, Figure, Input, Problem, Tone, Tool, choice, form};
use crate::text::{self, Dimension};

/// What is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Make {
    /// Salt in water.
    Saline,
    /// Botanicals in strong spirit.
    Tincture,
    /// Peel in sugar.
    Oleo,
    /// Fat in spirit.
    FatWash,
    /// Gum in syrup.
    Gomme,
}

choice! { Make:
    Saline = "saline", "Saline";
    Tincture = "tincture", "Tincture";
    Oleo = "oleo", "Peel in sugar";
    FatWash = "fat-wash", "Fat wash";
    Gomme = "gomme", "Gomme";
}

form! {
    /// What is typed.
    InfuseForm {
        /// What is made: a key of [`Make`].
        make = "saline",
        /// Saline to make.
        saline = "100 g",
        /// Salt in it, percent by weight.
        salt = "20",
        /// Spirit for a tincture.
        tincture = "100 ml",
        /// Botanicals : spirit, grams to millilitres.
        tincture_ratio = "1:5",
        /// Peel for an oleo.
        oleo = "200 g",
        /// Peel : sugar, by weight.
        oleo_ratio = "1:1",
        /// Spirit to wash.
        fat_wash = "700 ml",
        /// Fat : spirit, grams to millilitres.
        fat_ratio = "1:8",
        /// Sugar for a gomme.
        gomme = "1 kg",
        /// Gum, percent of the sugar.
        gum = "12",
        /// What of: botanicals, peel, fat.
        of = "",
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
    }
}

const PRACTICE: &str = "rule of thumb, no source";

/// The words of what is made by a ratio.
struct Words {
    amount: &'static str,
    ratio: &'static str,
    solid: &'static str,
    remark: &'static str,
    caution: &'static str,
    example: &'static str,
}

impl Make {
    const fn words(self) -> Words {
        match self {
            Make::Saline => Words {
                amount: "Saline to make",
                ratio: "Salt, % by weight",
                solid: "salt",
                remark: "Salt by weight of the whole; 20 % is usual, a few drops a drink",
                caution: "",
                example: "like sea salt",
            },
            Make::Tincture => Words {
                amount: "Strong spirit",
                ratio: "Botanicals to spirit, g to ml",
                solid: "botanicals",
                remark: "Dried botanicals 1:5, fresh 1:2, a week in the dark, shaken daily",
                caution: "Use only botanicals sold as food: some plants are poisonous, and strong spirit draws out more. Keep it from flames.",
                example: "like star anise",
            },
            Make::Oleo => Words {
                amount: "Peel",
                ratio: "Peel to sugar",
                solid: "sugar",
                remark: "Equal weights to 1:2, pressed in and left 4 to 24 h",
                caution: "Unwaxed fruit, washed.",
                example: "like lemon peel",
            },
            Make::FatWash => Words {
                amount: "Spirit",
                ratio: "Fat to spirit, g to ml",
                solid: "fat",
                remark: "1:4 for what tastes faintly to 1:10 for what tastes strongly; 4 h at room temperature, frozen overnight, filtered",
                caution: "Butter is milk, nut oils are nuts: tell guests. Keep it cold and use it within your local code.",
                example: "like butter",
            },
            Make::Gomme => Words {
                amount: "Sugar",
                ratio: "Gum, % of the sugar",
                solid: "gum",
                remark: "Gum swells overnight in twice its weight of hot water, then goes into a 2:1 syrup",
                caution: "",
                example: "like gum arabic",
            },
        }
    }
}

impl Tool for InfuseForm {
    fn is_tall(&self) -> bool {
        true
    }

    fn layout(&self, _bench: &Bench) -> Vec<Block> {
        let Words { amount, ratio, .. } = self.make().words();
        let (name, of) = self.names();
        let keys = match self.make() {
            Make::Saline | Make::Oleo | Make::Gomme => Keys::Weight,
            Make::Tincture | Make::FatWash => Keys::Batch,
        };
        let ratio_keys = if matches!(self.make(), Make::Saline | Make::Gomme) { Keys::Percent } else { Keys::Ratio };
        vec![
            Block::chips::<Make>("make", "What is made", false),
            Block::amount(name, amount, keys),
            Block::amount(of, ratio, ratio_keys),
            Block::field("of", "Ingredient", Input::Words { placeholder: self.make().words().example }),
            Block::Cells("", Vec::new()),
        ]
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let Words { remark, caution, .. } = self.make().words();
        if !caution.is_empty() {
            answer.cautions.push(caution.into());
        }
        let Some(parts) = self.parts(bench, &mut answer.problems) else {
            return answer.without_answer("Type how much, and the proportion.");
        };
        let figure = |(what, amount): &(&str, Amount)| match amount {
            Amount::Mass(mass) => bench.grams_of(*mass, what),
            Amount::Volume(volume) => bench.headline_of(*volume, what, None),
            Amount::Count(_) => Figure::new(shown(*amount, bench).value, *what),
        };
        answer.strip.figures = parts.weighed.iter().take(2).map(figure).collect();
        answer.strip.also.clone_from(&parts.also);
        answer.strip.tone = Tone::Answer;
        answer.cells_title = "All of it";
        for (what, amount) in parts.weighed.iter().skip(2) {
            answer.cell(*what, shown(*amount, bench));
        }
        answer.remarks.push(format!("{remark} ({PRACTICE})."));
        let declared: Vec<&str> = allergens_in(&self.of).map(Allergen::name).collect();
        if !declared.is_empty() {
            answer.cautions.push(format!("Contains {}: tell guests.", declared.join(", ")));
        } else if self.make() == Make::FatWash && self.of.trim().is_empty() {
            answer.cautions.push("Say what fat it is, so that its label can name the allergen.".into());
        }
        let keeps = matches!(self.make(), Make::Saline | Make::Tincture).then_some(Keeps::Long);
        let known =
            label::Facts { name: self.title(), allergens: declared.join(", "), keeps, ..label::Facts::default() };
        answer.carry("Label it", label::href(&known));
        let plan = self.steps(&parts, bench);
        answer.prep = Some(Box::new(Own {
            name: self.title().to_ascii_lowercase(),
            like: match self.make() {
                Make::Saline => "saline",
                Make::Tincture | Make::FatWash => "spirit-40",
                Make::Oleo => "rich-syrup",
                Make::Gomme => "gomme",
            }
            .to_owned(),
            parts: origin::parts(&plan.needs, bench),
            ..Own::default()
        }));
        answer.plan = Some(plan);
        answer
    }

    fn making(&self, _bench: &Bench) -> Making {
        let asks = asked_in(&self.of).collect();
        Making { allergens: allergens_in(&self.of).collect(), asks, ..Making::default() }
    }

    fn empty(&mut self) {
        for text in [&mut self.saline, &mut self.tincture, &mut self.oleo, &mut self.fat_wash, &mut self.gomme] {
            text.clear();
        }
    }

    fn take(&mut self, name: &str, text: &str) {
        if name == "fat_wash" {
            text.clone_into(&mut self.fat_wash);
            Make::FatWash.key().clone_into(&mut self.make);
        }
    }
}

/// What goes in, and the words below it.
struct Parts {
    weighed: Vec<(&'static str, Amount)>,
    also: String,
}

impl InfuseForm {
    /// "Fat wash, butter".
    fn title(&self) -> String {
        match self.of.trim() {
            "" => self.make().label().to_owned(),
            of => format!("{}, {of}", self.make().label()),
        }
    }

    /// Making it, step by step.
    fn steps(&self, parts: &Parts, bench: &Bench) -> Plan {
        let said: Vec<String> =
            parts.weighed.iter().map(|(what, amount)| format!("{} {what}", shown(*amount, bench))).collect();
        let all = said.join(", ");
        let gives = match self.make() {
            Make::Saline => bench.mass("", &self.saline, &mut Vec::new()).map(Amount::Mass),
            Make::Tincture => bench.volume("", &self.tincture, &mut Vec::new()).map(Amount::Volume),
            Make::FatWash => bench.volume("", &self.fat_wash, &mut Vec::new()).map(Amount::Volume),
            Make::Oleo => parts.weighed.first().map(|(_, sugar)| *sugar),
            Make::Gomme => Mass::from_g(
                parts
                    .weighed
                    .iter()
                    .take(3)
                    .map(|(_, amount)| if let Amount::Mass(mass) = amount { mass.g() } else { 0.0 })
                    .sum::<f64>(),
            )
            .ok()
            .map(Amount::Mass),
        };
        let mut steps = match self.make() {
            Make::Saline => vec![Step::work("mix", format!("Dissolve {all}"), 5 * MINUTE)],
            Make::Tincture => vec![
                Step::work("steep", format!("Steep {all}, in the dark"), 10 * MINUTE).then_wait(7 * 24 * HOUR),
                Step::work("strain", "Strain through paper and label", 10 * MINUTE),
            ],
            Make::Oleo => vec![
                Step::work("press", format!("Press {all} together"), 15 * MINUTE).then_wait(12 * HOUR),
                Step::work("strain", "Strain, or wash out with juice", 10 * MINUTE),
            ],
            Make::FatWash => vec![
                Step::work("stir", format!("Stir melted fat into the spirit: {all}"), 10 * MINUTE).then_wait(4 * HOUR),
                Step::work("freeze", "Freeze it", 5 * MINUTE).then_wait(12 * HOUR),
                Step::work("filter", "Lift the fat off, filter through paper, label", 15 * MINUTE),
            ],
            Make::Gomme => vec![
                Step::work("swell", format!("Stir gum into hot water, of {all}"), 10 * MINUTE).then_wait(12 * HOUR),
                Step::work("syrup", "Dissolve the sugar, stir the gum in, strain", 20 * MINUTE),
            ],
        };
        if let Some(last) = steps.last_mut() {
            last.gives = gives;
        }
        let needs = parts.weighed.iter().map(|(what, amount)| Need::of(what, *amount)).collect();
        Plan { title: self.title(), steps, needs, ..Plan::default() }
    }

    fn make(&self) -> Make {
        Make::read(&self.make)
    }

    /// The names of its two fields.
    fn names(&self) -> (&'static str, &'static str) {
        match self.make() {
            Make::Saline => ("saline", "salt"),
            Make::Tincture => ("tincture", "tincture_ratio"),
            Make::Oleo => ("oleo", "oleo_ratio"),
            Make::FatWash => ("fat_wash", "fat_ratio"),
            Make::Gomme => ("gomme", "gum"),
        }
    }

    fn parts(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Parts> {
        let (name, of) = self.names();
        let solid = self.make().words().solid;
        let ratio = |text: &str, problems: &mut Vec<Problem>| {
            text::read_milk_ratio(text, &bench.reading(Dimension::Either)).unwrap_or_else(|_| {
                problems.push(Problem::new(of, "Type a ratio, like 1:5."));
                None
            })
        };
        let by_volume = |volume: Volume, parts: Ratio| Mass::from_g(volume.ml() / parts.value()).ok();
        match self.make() {
            Make::Saline => {
                let strength = bench.percent(of, &self.salt, 27, problems).filter(|strength| *strength > Ratio::ZERO);
                if strength.is_none() && problems.is_empty() {
                    problems.push(Problem::new(of, "Type how much salt, above 0 and under 27 %: no more dissolves."));
                }
                let (salt, water) = solution(bench.mass(name, &self.saline, problems)?, strength?);
                let per = text::plain(salt.g() / water.g() * 100.0, 1, bench.decimal);
                let also = format!("{per} g of salt to 100 g of water");
                Some(Parts { weighed: vec![(solid, Amount::Mass(salt)), ("water", Amount::Mass(water))], also })
            }
            Make::Gomme => {
                let gum = bench.percent(of, &self.gum, 60, problems)?;
                let sugar = bench.mass(name, &self.gomme, problems)?;
                let made = gomme(sugar, gum);
                let water = made.gum_water + made.water;
                let weighed = vec![
                    ("gum arabic", Amount::Mass(made.gum)),
                    ("water in all", Amount::Mass(water)),
                    ("sugar", Amount::Mass(made.sugar)),
                    ("of the water, hot for the gum", Amount::Mass(made.gum_water)),
                ];
                Some(Parts { weighed, also: "The gum first, overnight; then the syrup".into() })
            }
            Make::Oleo => {
                let peel = bench.mass(name, &self.oleo, problems);
                let sugar = peel? * ratio(&self.oleo_ratio, problems)?;
                let also = "Press, leave 4 to 24 h, strain".to_owned();
                Some(Parts { weighed: vec![(solid, Amount::Mass(sugar)), ("peel", Amount::Mass(peel?))], also })
            }
            Make::Tincture | Make::FatWash => {
                let is_tincture = self.make() == Make::Tincture;
                let (amount, parts) = if is_tincture {
                    (&self.tincture, &self.tincture_ratio)
                } else {
                    (&self.fat_wash, &self.fat_ratio)
                };
                let spirit = bench.volume(name, amount, problems);
                let mass = by_volume(spirit?, ratio(parts, problems)?)?;
                let also = if is_tincture {
                    "A week in the dark, shaken daily"
                } else {
                    "4 h, then frozen overnight, then filtered"
                };
                Some(Parts {
                    weighed: vec![(solid, Amount::Mass(mass)), ("spirit", Amount::Volume(spirit?))],
                    also: also.into(),
                })
            }
        }
    }
}

fn shown(amount: Amount, bench: &Bench) -> Figure {
    match amount {
        Amount::Mass(mass) => bench.weight(mass),
        Amount::Volume(volume) => text::litres_or_ml(volume, bench.decimal),
        Amount::Count(count) => Figure::new(text::count(count.value(), bench.decimal), ""),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plain_ratios() {
        for (make, first, second) in [
            ("saline", "20.0 g salt", "80.0 g water"),
            ("tincture", "20.0 g botanicals", "100 ml spirit"),
            ("oleo", "200 g sugar", "200 g peel"),
            ("fat-wash", "87.5 g fat", "700 ml spirit"),
            ("gomme", "120 g gum arabic", "740 g water in all"),
        ] {
            let form = InfuseForm { make: make.into(), ..InfuseForm::default() };
            let answer = form.answer(&Bench::default());
            let figures: Vec<String> = answer.strip.figures.iter().map(ToString::to_string).collect();
            assert_eq!(figures, [first, second], "{make}");
            assert!(form.answer(&Bench::default()).plan.is_some_and(|plan| !plan.steps.is_empty()), "{make}");
        }
        let too_salty = InfuseForm { salt: "30".into(), ..InfuseForm::default() };
        assert_eq!(too_salty.answer(&Bench::default()).problems[0].field, "salt");
    }
}
