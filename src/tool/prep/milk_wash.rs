//! Milk wash: how much milk for a drink, whether it clots, and what is left; or how much drink for the milk.

mod drink;
mod plan;
#[cfg(test)]
mod tests;
mod verdict;

use crate::book::{Allergen, Ask, Kind, Measured, Taken, allergens_in, asked_in, ingredient};
use crate::craft::milk_wash::{Clots, Verdict, Wash, drink_for, milk_for, washed};
use crate::craft::pour::litre_of;
use crate::quantity::{Acidity, Amount, Mass, Ratio, Temperature, Unit, Volume};
use crate::reading::from_spec;
use crate::reading::label::{self, Keeps};
use crate::reading::rows::amount_words;
use crate::reading::{self, Contents, PLACEHOLDER};
use crate::screen::pad::{Keys, unit_typed};
use crate::screen::plan::{Cut, Makes, Making, Need};
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Block, Choice, Figure, Input, Opt, Problem, Strip, Tone, Tool, choice, form};
use crate::substance::milk::{MILKS, Milk, USUAL_DRINK_PER_MILK};
use crate::substance::mix::Mix;
use crate::text::{self, Dimension};

/// Which is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Given {
    /// The drink.
    Drink,
    /// Its spec.
    Spec,
    /// The milk.
    Milk,
}

choice! { Given:
    Drink = "drink", "A drink";
    Spec = "spec", "A spec";
    Milk = "milk", "Milk I have";
}

form! {
    /// What is typed.
    MilkWashForm {
        /// Which is known: a key of [`Given`].
        known = "drink",
        /// Volume of the drink.
        drink = "1725 ml",
        /// The drink, a line for each ingredient.
        spec = "900 ml rye whiskey\n400 ml black tea\n300 ml honey syrup\n125 ml lemon juice",
        /// Volume of the milk.
        milk = "1 l",
        /// Milk : drink.
        ratio = "1:5",
        /// Key of the milk.
        kind = "whole",
        /// Strength of the drink, % vol.
        strength = "20",
        /// Sugar of the drink, g/l.
        sugar = "90",
        /// Acid of the drink, g/l as citric; empty when it is not known.
        acid = "8",
        /// How warm the drink is.
        at = "20",
        /// What came through the filter.
        got = "",
        /// How much there is of the drink, where that is not its own volume; or of the juice that came for it.
        came = "",
        /// Key of that juice; empty where it is the drink that came.
        came_of = "",
        /// What that juice reads, °Bx.
        came_brix = "",
        /// What it titrates, g/l.
        came_acid = "",
        /// All that is in it, as figures.
        came_holds = "",
        /// What came out of mixing the drink.
        mixed = "",
        /// What drink and milk together read, pH.
        ph = "",
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
    }
}

const DRINK: &str = "drink";
const SPEC: &str = "spec";
const MILK: &str = "milk";
const RATIO: &str = "ratio";
const STRENGTH: &str = "strength";
const SUGAR: &str = "sugar";
const ACID: &str = "acid";
const AT: &str = "at";
const GOT: &str = "got";

impl Tool for MilkWashForm {
    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let placeholder = PLACEHOLDER;
        let mut blocks = vec![Block::chips::<Given>("known", "What is known", false)];
        if self.known() == Given::Spec {
            blocks.extend(from_spec::fields(Route::MilkWash, &self.from_spec, Some(&self.spec), bench));
        }
        blocks.extend([
            match self.known() {
                Given::Drink => Block::amount(DRINK, "Drink to wash", Keys::Batch),
                Given::Spec => {
                    Block::field(SPEC, "The drink, a line for each ingredient", Input::Lines { placeholder })
                }
                Given::Milk => Block::amount(MILK, "Milk to use", Keys::Batch),
            },
            Block::amount(RATIO, "Milk to drink", Keys::Ratio),
            Block::pick("kind", "Milk", MILKS.iter().map(|milk| Opt::new(milk.key, milk.name)).collect()),
        ]);
        if self.known() != Given::Spec {
            blocks.extend([
                Block::amount(STRENGTH, "Strength, % vol", Keys::Percent),
                Block::amount(SUGAR, "Sugar, g/l", Keys::Count),
                Block::amount(ACID, "Acid, g/l as citric", Keys::Count),
            ]);
        }
        blocks.push(Block::amount(AT, "Temperature", Keys::Celsius));
        blocks.extend([Block::amount(GOT, "What came through", Keys::Batch), Block::Buttons(Vec::new())]);
        blocks.extend([Block::Pictures(Vec::new()), Block::Cells("", Vec::new()), Block::Table("", Vec::new())]);
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let kind = Milk::of(&self.kind);
        if kind.is_of_cows() {
            answer.cautions.push(
                "Contains milk, lactose too, however clear it looks: tell every guest. Keep it cold and follow your local food code."
                    .into(),
            );
        } else {
            answer
                .cautions
                .push("Tell guests what it is washed with: oats, soya and nuts are allergens. Keep it cold.".into());
        }
        let Some(worked) = self.worked(bench, &mut answer) else {
            return answer.without_answer(match self.known() {
                Given::Drink => "Type how much drink there is to wash, and the ratio.",
                Given::Spec => "Type or paste the drink, a line for each ingredient, and the ratio.",
                Given::Milk => "Type how much milk there is, and the ratio.",
            });
        };
        let judged = worked.verdict();
        if let Some(verdict) = judged.filter(|verdict| verdict.clots == Clots::No && self.of_ph(bench).is_none()) {
            return self.held_back(answer, &worked, verdict, bench);
        }
        let plan = self.steps(&worked, bench);
        answer.form = self.form(&worked, bench);
        Answer { plan: Some(plan), ..self.laid_out(answer, &worked, judged, bench) }
    }

    fn making(&self, bench: &Bench) -> Making {
        let mut allergens: Vec<Allergen> = allergens_in(Milk::of(&self.kind).name).collect();
        let mut asks: Vec<Ask> = asked_in(Milk::of(&self.kind).name).collect();
        let mut making = Making { makes: Makes::WashedDrink, takes: &[Makes::Drink], ..Making::default() };
        if self.known() == Given::Spec {
            let lines = Contents::of(&self.spec, bench).lines;
            allergens.extend(reading::allergens(&lines, bench));
            asks.extend(reading::asks(&lines, bench));
            let taken = lines.iter().filter_map(|line| line.read.as_ref().ok()?.taken);
            let juices = taken.map(|taken| taken.ingredient).filter(|row| row.kind == Kind::Juice);
            making.juices = juices.map(|row| row.key).collect();
            making.takes = &[Makes::Drink, Makes::Juice, Makes::ClearJuice];
        }
        Making { allergens, asks, ..making }
    }

    fn empty(&mut self) {
        self.drink.clear();
        self.milk.clear();
        self.spec.clear();
        self.got.clear();
    }

    fn take(&mut self, name: &str, text: &str) {
        let (known, field) = match name {
            RATIO => return text.clone_into(&mut self.ratio),
            "kind" => return text.clone_into(&mut self.kind),
            "came_of" => return text.clone_into(&mut self.came_of),
            "came_brix" if self.is_of_juice() => return text.clone_into(&mut self.came_brix),
            "came_acid" if self.is_of_juice() => return text.clone_into(&mut self.came_acid),
            "came_holds" if self.is_of_juice() => return text.clone_into(&mut self.came_holds),
            "came_celsius" if !self.is_of_juice() => return text.clone_into(&mut self.at),
            "celsius_mix" => return text.clone_into(&mut self.at),
            "got_mix" => return text.clone_into(&mut self.mixed),
            "ph_pour" => return text.clone_into(&mut self.ph),
            "came" if self.known() == Given::Spec => return text.clone_into(&mut self.came),
            "came" if self.is_of_juice() => return,
            "came" => {
                text.clone_into(&mut self.came);
                (Given::Drink, &mut self.drink)
            }
            DRINK => (Given::Drink, &mut self.drink),
            SPEC => {
                // Another drink: what came for the last one, and was read of it, is not its own.
                for text in [&mut self.came, &mut self.came_of, &mut self.mixed, &mut self.ph] {
                    text.clear();
                }
                (Given::Spec, &mut self.spec)
            }
            MILK => (Given::Milk, &mut self.milk),
            _ => return,
        };
        text.clone_into(field);
        known.key().clone_into(&mut self.known);
    }
}

/// A wash worked out.
struct Worked {
    wash: Wash,
    ratio: Ratio,
    kind: &'static Milk,
    /// The drink that goes over the milk; none where its figures are not known.
    drink: Option<Mix>,
    /// How the drink is mixed; empty where it comes mixed.
    mix: String,
    /// What must be there for it.
    needs: Vec<Need>,
    /// How much of it should come of that.
    to_mix: Volume,
    /// Less of it than the spec says.
    cut: Option<Cut>,
    /// Whether all of it is known, its acid too.
    has_acid_figure: bool,
    at: f64,
    /// Of what it is washed with, and of what is in its lines.
    allergens: Vec<Allergen>,
    asks: Vec<Ask>,
}

impl MilkWashForm {
    fn known(&self) -> Given {
        Given::read(&self.known)
    }

    /// Whether what came for it is juice that goes into its drink.
    fn is_of_juice(&self) -> bool {
        !self.came_of.is_empty()
    }

    fn worked(&self, bench: &Bench, answer: &mut Answer) -> Option<Worked> {
        let problems = &mut answer.problems;
        let ratio = text::read_milk_ratio(&self.ratio, &bench.reading(Dimension::Either)).unwrap_or_else(|problem| {
            problems.push(Problem::new(RATIO, problem));
            None
        });
        let at = bench.temperature(AT, &self.at, (-5.0, 95.0), problems);
        let mut read = None;
        let kind = Milk::of(&self.kind);
        let mut allergens: Vec<Allergen> = allergens_in(kind.name).collect();
        let mut asks: Vec<Ask> = asked_in(kind.name).collect();
        let known = match self.known() {
            Given::Drink => bench.volume(DRINK, &self.drink, problems),
            Given::Milk => bench.volume(MILK, &self.milk, problems),
            Given::Spec => {
                let drink = self.of_spec(bench, problems);
                allergens.extend(drink.iter().flat_map(|drink| drink.allergens.iter().copied()));
                asks.extend(drink.iter().flat_map(|drink| drink.asks.iter().copied()));
                let volume = drink.as_ref().map(|drink| drink.volume);
                read = drink;
                volume
            }
        };
        let figures = if self.known() == Given::Spec { None } else { self.litre(bench, problems) };
        let (ratio, known) = (ratio?, known?);
        let mut wash = match self.known() {
            Given::Milk => drink_for(known, ratio),
            _ => milk_for(known, ratio)?,
        };
        let to_mix = wash.drink;
        let scaled = |litre: Mix| Some(litre * wash.drink.over(litre.volume(Temperature::TWENTY).ok()?)?);
        let mut drink = read.as_ref().map(|drink| drink.mix).or_else(|| figures.and_then(scaled));
        // What was mixed is measured: the milk goes by that.
        if let Some(mixed) = self.mixed(drink.as_ref(), bench) {
            wash = milk_for(mixed, ratio)?;
            drink = drink.zip(mixed.over(to_mix)).map(|(drink, times)| drink * times);
        }
        let is_mixed = !self.came.is_empty() && self.came_of.is_empty();
        let mix = match &read {
            _ if is_mixed => String::new(),
            Some(drink) => format!("Mix the drink: {}", drink.parts),
            None => format!("Mix the drink, {} of it", amount_words(Amount::Volume(to_mix), bench)),
        };
        let mut needs = match &read {
            Some(drink) if !is_mixed => drink.needs.clone(),
            _ => vec![Need::given("the drink", Amount::Volume(to_mix))],
        };
        needs.push(Need::of(&kind.name.to_ascii_lowercase(), Amount::Volume(wash.milk)));
        Some(Worked {
            ratio,
            kind,
            allergens,
            asks,
            drink,
            mix,
            needs,
            to_mix,
            cut: read.and_then(|drink| drink.cut),
            has_acid_figure: self.known() == Given::Spec || !self.acid.trim().is_empty(),
            wash,
            at: at.map_or(20.0, Temperature::celsius),
        })
    }

    /// A litre of a drink of these figures.
    fn litre(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Mix> {
        let before = problems.len();
        let strength = bench.strength(STRENGTH, &self.strength, problems);
        let sugar =
            bench.number(SUGAR, &self.sugar, (0.0, 800.0), "Type grams per litre from 0 to 800, like 90.", problems);
        let acid =
            bench.number(ACID, &self.acid, (0.0, 100.0), "Type grams per litre from 0 to 100, like 8.", problems);
        let measured = Measured {
            strength,
            sugar_per_litre: sugar.and_then(|grams| Mass::from_g(grams).ok()),
            acid: acid.and_then(|grams| Acidity::from_g_per_l(grams).ok()),
            ..Measured::default()
        };
        let litre = litre_of(&Taken { ingredient: ingredient("water")?, measured });
        if litre.volume(Temperature::TWENTY).is_ok_and(|volume| volume.ml() > 1_001.0) {
            problems.push(Problem::new(SUGAR, "These figures don't fit in one litre together."));
        }
        (problems.len() == before).then_some(litre)
    }

    /// What goes over what, and the one figure to act on.
    fn amounts(&self, answer: &mut Answer, wash: &Wash, bench: &Bench) -> Figure {
        let ml = |volume| text::litres_or_ml(volume, bench.decimal);
        let (volume, noun) = match self.known() {
            Given::Milk => (wash.drink, "drink"),
            _ => (wash.milk, "milk"),
        };
        let typed = match self.known() {
            Given::Milk => &self.milk,
            Given::Drink => &self.drink,
            Given::Spec => "",
        };
        let figure = bench.headline_of(volume, noun, unit_typed(typed));
        let is_in_oz = figure.unit.starts_with(text::typed(Unit::Ounce));
        // The other of the two is the headline, and what both come to stands beneath it.
        if self.known() == Given::Milk {
            answer.cell("milk goes in first", ml(wash.milk));
        }
        if !is_in_oz || self.known() == Given::Milk {
            answer.cell("milk in oz", text::ounces(wash.milk, &bench.house.conventions, bench.decimal));
        }
        if self.known() != Given::Milk {
            answer.cell("drink, over the milk", ml(wash.drink));
        }
        figure
    }

    fn laid_out(&self, mut answer: Answer, worked: &Worked, judged: Option<Verdict>, bench: &Bench) -> Answer {
        let Worked { wash, ratio, kind, .. } = worked;
        let verdict = self.judge(worked, judged, &mut answer, bench);
        answer.strip = Strip {
            figures: vec![self.amounts(&mut answer, wash, bench)],
            also: verdict,
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.notes.push(
            "Milk into the vessel first. Pour the drink over the milk, slowly, not the milk into the drink. Let it stand, then filter. The first runnings are cloudy: pour them back through the curd.".into(),
        );
        if !USUAL_DRINK_PER_MILK.contains(&ratio.value()) {
            let way = if ratio.value() < *USUAL_DRINK_PER_MILK.start() { "More" } else { "Less" };
            answer.remarks.push(format!("{way} milk than the usual 1:3 to 1:6 (rule of thumb)."));
        }
        let came = self.came(worked, &mut answer, bench);
        let through = bench.carried(came.unwrap_or(self.comes_through(worked, bench).0));
        answer.carry("Into serves", Route::Serves.href_with("made", &through));
        let after = worked.drink.as_ref().filter(|_| kind.is_of_cows()).map(|drink| washed(drink, wash.milk, kind));
        let strength = after.map(|after| after.liquid.strength().fraction() * 100.0);
        let known = label::Facts {
            name: "Milk-washed drink".into(),
            strength: strength.map_or_else(String::new, |percent| text::editable(percent, bench.decimal)),
            allergens: label::declared(worked.allergens.iter().copied()),
            asks: worked.asks.clone(),
            keeps: Some(Keeps::Washed),
            ..label::Facts::default()
        };
        answer.carry("Label it", label::href(&known));
        answer
    }
}
