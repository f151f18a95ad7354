//! Measure: any amount in any unit, and how to pour it.

mod other;

use crate::book::{Ingredient, Kind, LIBRARY, ingredient};
use crate::craft::jigger;
use crate::craft::measure::{Both, both, nearest};
use crate::craft::pour;
use crate::quantity::{Amount, Density, Mass, Ounce, Ratio, Unit, Volume};
use crate::reading::contents::figures_of;
use crate::reading::pours::{jiggers, measures, off_words};
use crate::screen::pad::{Keys, unit_typed};
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Block, Figure, Opt, Problem, Strip, Tone, Tool, form};
use crate::substance::ethanol;
use crate::text;

form! {
    /// What is typed.
    MeasureForm {
        /// The amount, or a sum of amounts.
        amount = "1¾ oz",
        /// Key of the ingredient, for weights; or [`OWN`].
        liquid = "water",
        /// Its temperature.
        at = "20",
        /// Density of the person's own liquid, g/ml.
        own = "1.05",
    }
}

const AMOUNT: &str = "amount";
const AT: &str = "at";
const OWN_DENSITY: &str = "own";
/// Key for a density of one's own.
const OWN: &str = "own";

/// Keys of an earlier list of liquids, and the ingredients that took their places.
const EARLIER: [(&str, &str); 4] =
    [("milk", "whole-milk"), ("vermouth", "dry-vermouth"), ("citrus", "lemon-juice"), ("orange", "orange-juice")];

/// What is weighed: its name, its density, and where that comes from.
struct Weighed {
    name: &'static str,
    density: Density,
    source: String,
}

impl MeasureForm {
    /// The ingredient weighed; water for a key we do not know, none for a density of one's own.
    fn ingredient(&self) -> Option<&'static Ingredient> {
        let key =
            EARLIER.iter().find(|(earlier, _)| *earlier == self.liquid).map_or(self.liquid.as_str(), |(_, key)| key);
        if key == OWN { None } else { ingredient(key).or_else(|| ingredient("water")) }
    }

    /// How the ingredient keeps, and what of it must be declared.
    fn keeping(&self, answer: &mut Answer) {
        let Some(ingredient) = self.ingredient() else { return };
        if !ingredient.kind.keeping().is_empty() {
            answer.remarks.push(format!("Keeps: {}. Your food code goes first.", ingredient.kind.keeping()));
        }
        if !ingredient.allergens.is_empty() {
            let names: Vec<&str> = ingredient.allergens.iter().map(|allergen| allergen.name()).collect();
            answer.cautions.push(format!("May need declaring: {}. Read its label.", names.join(", ")));
        }
    }

    fn weighed(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Weighed> {
        let Some(ingredient) = self.ingredient() else {
            let words = "Type a density from 0.7 to 1.6 g/ml, like 1.05.";
            let density = bench.number(OWN_DENSITY, &self.own, (0.7, 1.6), words, problems)?;
            let density = Density::from_g_per_ml(density).ok()?;
            return Some(Weighed { name: "Your liquid", density, source: "your own figure".into() });
        };
        let at = bench.temperature(AT, &self.at, ethanol::VALID_CELSIUS, problems)?;
        let litre = pour::standard(ingredient);
        if let Ok(freezes) = litre.freezing_point()
            && at < freezes
        {
            let from = text::plain(freezes.celsius(), 1, bench.decimal);
            let words = format!("It begins to freeze at about {from} °C. Type a temperature above that.");
            problems.push(Problem::new(AT, words));
            return None;
        }
        let density = litre.density(at).ok()?;
        let spread =
            if ingredient.range.is_empty() { String::new() } else { format!("; published: {}", ingredient.range) };
        let figures = match figures_of(&litre, bench) {
            figures if figures.is_empty() => figures,
            figures => format!("Taken at {figures}. "),
        };
        Some(Weighed {
            name: ingredient.name,
            density,
            source: format!("{figures}Source: {}{spread}", ingredient.source),
        })
    }
}

impl Tool for MeasureForm {
    fn layout(&self, _bench: &Bench) -> Vec<Block> {
        let poured = LIBRARY.iter().filter(|ingredient| ingredient.kind != Kind::Powder && ingredient.key != "ice");
        let own = Opt::new(OWN, "My own density");
        let liquids = water_first(poured).map(Opt::ingredient).chain([own]).collect();
        let mut blocks =
            vec![Block::amount(AMOUNT, "Amount", Keys::Compared), Block::pick("liquid", "Liquid", liquids)];
        blocks.push(match self.ingredient() {
            Some(_) => Block::amount(AT, "Temperature", Keys::Celsius),
            None => Block::amount(OWN_DENSITY, "Density, g/ml", Keys::Count),
        });
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        if text::says_degrees(&self.amount) {
            return self.degrees(bench);
        }
        if self.amount.contains(':') {
            return self.ratio(bench);
        }
        let mut answer = Answer::default();
        let weighed = self.weighed(bench, &mut answer.problems);
        let typed = bench.amount(AMOUNT, &self.amount, text::Dimension::Either, &mut answer.problems);
        let (Some(weighed), Some(typed)) = (weighed, typed) else {
            return answer.without_answer("Type an amount, like 45 ml or 1½ oz.");
        };
        let Some(both) = both(typed, weighed.density) else { return answer.without_answer("") };
        let plan = jigger::plan(both.volume, &bench.house);
        answer.strip = Strip {
            figures: vec![headline(typed, both, &self.amount, bench)],
            also: plan.as_ref().map_or_else(|| no_plan(both.volume, bench), |plan| format!("Pour {}", measures(plan))),
            below: plan
                .as_ref()
                .filter(|plan| !plan.is_exact())
                .map_or_else(String::new, |plan| off_words(plan, bench)),
            picture: plan.as_ref().and_then(|plan| jiggers(plan, bench)),
            tone: Tone::Answer,
        };
        equivalents(&mut answer, both, bench);
        self.other_degrees(&mut answer, bench);
        if self.liquid != "water" || matches!(typed, Amount::Mass(_)) {
            let density = text::plain(weighed.density.g_per_ml(), 3, bench.decimal);
            answer.remarks.push(format!("{}: {density} g/ml. {}.", weighed.name, weighed.source));
            self.keeping(&mut answer);
        }
        let carried = bench.carried(both.volume);
        answer.carry("Wash it with milk", Route::MilkWash.href_with("drink", &carried));
        answer.carry("Share it out in serves", Route::Serves.href_with("made", &carried));
        answer.carry("Acid for this much lime", Route::Acid.href_with("juice", &carried));
        answer
    }

    fn empty(&mut self) {
        self.amount.clear();
    }

    fn take(&mut self, name: &str, text: &str) {
        match name {
            AMOUNT => text.clone_into(&mut self.amount),
            "liquid" => text.clone_into(&mut self.liquid),
            _ => {}
        }
    }
}

/// Water, then the others in their order.
fn water_first<'a>(all: impl Iterator<Item = &'a Ingredient> + Clone) -> impl Iterator<Item = &'a Ingredient> {
    let is_water = |ingredient: &&Ingredient| ingredient.key == "water";
    all.clone().filter(is_water).chain(all.filter(move |ingredient| !is_water(ingredient)))
}

/// Millilitres, unless they were typed: then house ounces, as everywhere in a bar that counts in them.
fn headline(typed: Amount, both: Both, text: &str, bench: &Bench) -> Figure {
    let unit = unit_typed(text).unwrap_or(bench.house.usual_unit);
    match (typed, unit) {
        (Amount::Volume(_), Unit::Millilitre) => text::ounces(both.volume, &bench.house.conventions, bench.decimal),
        (Amount::Volume(_), Unit::Ounce) => text::litres_or_ml(both.volume, bench.decimal),
        _ => bench.headline(both.volume, None),
    }
}

fn no_plan(volume: Volume, bench: &Bench) -> String {
    if volume < bench.house.conventions.dash {
        "Less than a dash: too little to pour.".into()
    } else if bench.house.marks().next().is_none() {
        "No jiggers on the shelf: add yours in Shelf.".into()
    } else if volume < Volume::whole_ml(25) {
        "No measure comes close: weigh it, or use a smaller one.".into()
    } else {
        format!("More than {} pours: measure it in a jug.", jigger::MOST_POURS)
    }
}

fn equivalents(answer: &mut Answer, both: Both, bench: &Bench) {
    answer.cells_title = "The same in";
    let house = &bench.house.conventions;
    let large = both.volume >= Volume::whole_ml(200);
    let small = both.volume <= Volume::whole_ml(30);
    let units = Unit::ALL.into_iter().filter(|unit| match unit {
        Unit::Decilitre | Unit::UsFluidOunce if house.ounce == Ounce::Us => false,
        Unit::Decilitre => false,
        Unit::Drop => both.volume <= Volume::whole_ml(2),
        Unit::Dash | Unit::FluidDram => small,
        Unit::Grain => both.mass <= Mass::OUNCE,
        Unit::Gill | Unit::ImperialGill | Unit::Pint | Unit::ImperialPint | Unit::Quart | Unit::Cup => large,
        Unit::Gallon | Unit::ImperialGallon => both.volume >= Volume::LITRE,
        Unit::Litre => large,
        Unit::Kilogram | Unit::Pound => large,
        Unit::Barspoon | Unit::Teaspoon | Unit::Tablespoon => !large,
        _ => true,
    });
    let headline = answer.strip.figures.clone();
    // What the headline says needs no tile.
    let is_said = |unit: Unit| {
        headline.iter().any(|figure| figure.unit.split(' ').any(|said| said.trim_end_matches(',') == text::typed(unit)))
    };
    for unit in units {
        let amount = if unit.weighs() { Amount::Mass(both.mass) } else { Amount::Volume(both.volume) };
        if let Some(figure) = text::figure(amount, unit, house, bench.decimal).filter(|_| !is_said(unit)) {
            let name = match unit {
                Unit::Gram => "grams of this liquid".to_owned(),
                unit => text::name(unit, house, bench.decimal),
            };
            answer.cell(name, figure);
        }
        if unit == Unit::Pound && both.mass >= Mass::POUND {
            answer.cell("lb and oz", text::pounds(both.mass, bench.decimal));
        }
        if unit == Unit::Ounce {
            rounded(answer, both.volume, bench);
        }
    }
}

/// The nearest ⅛ and ¼ of the house ounce, and how far off they are.
fn rounded(answer: &mut Answer, volume: Volume, bench: &Bench) {
    let ounce = bench.house.conventions.ounce.volume();
    if volume > Volume::LITRE {
        return;
    }
    for (label, parts) in [("nearest ¼ oz", 4), ("nearest ⅛ oz", 8)] {
        let Some(nearest) = nearest(volume, ounce / parts)
            .filter(|nearest| nearest.steps > Ratio::from_value(0.5).unwrap_or(Ratio::ONE))
        else {
            continue;
        };
        let is_exact = nearest.error.abs() < 5e-4;
        let off = if is_exact { "exact".to_owned() } else { text::signed_percent(nearest.error, bench.decimal) };
        let figure = text::ounces(nearest.volume, &bench.house.conventions, bench.decimal);
        answer.cell(format!("{label}: {off}"), figure);
        if is_exact {
            return; // An exact quarter is an exact eighth.
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::Decimal;
    use crate::tool::shelf::settings::ShelfForm;

    fn bench() -> Bench {
        ShelfForm::default().bench(Decimal::Point)
    }

    fn strip(amount: &str) -> (String, String) {
        let form = MeasureForm { amount: amount.into(), ..MeasureForm::default() };
        let Strip { figures, also, below, .. } = form.answer(&bench()).strip;
        (figures[0].to_string(), if below.is_empty() { also } else { format!("{also} | {below}") })
    }

    #[test]
    fn answers_at_once() {
        assert_eq!(strip("1¾ oz"), ("51.8 ml".into(), "Pour 1½ oz + ¼ oz".into()));
        assert_eq!(strip("45 ml"), ("1.52 oz".into(), "Pour 1½ oz | −0.6 ml, −1.4 %".into()));
        assert_eq!(strip("750 ml").1, "More than 6 pours: measure it in a jug.");
        assert_eq!(strip("2 dash").1, "Pour 2 dashes");
    }

    #[test]
    fn empty_is_not_yet_and_nonsense_is_a_problem() {
        assert_eq!(strip(""), ("–".into(), "Type an amount, like 45 ml or 1½ oz.".into()));
        assert_eq!(strip("5 splosh").0, "?");
    }

    fn remark(change: impl FnOnce(&mut MeasureForm)) -> String {
        let mut form = MeasureForm { amount: "500 g".into(), ..MeasureForm::default() };
        change(&mut form);
        let answer = form.answer(&bench());
        format!("{}|{}", answer.strip.figures[0], answer.remarks.first().cloned().unwrap_or_default())
    }

    #[test]
    fn weighs_any_ingredient_at_its_temperature() {
        assert_eq!(
            remark(|form| form.liquid = "honey".into()),
            "352 ml|Honey: 1.421 g/ml. Taken at 1\u{202f}156 g/l sugar. Source: US grade standard, at most 18.6 % moisture; published: 1.41 to 1.43 g/ml."
        );
        // tests/published/oiml_r22.rs checks the densities.
        let gin = |at: &str| {
            remark(|form| {
                form.liquid = "london-dry-gin".into();
                form.at = at.into();
            })
        };
        assert!(gin("20").starts_with("527 ml|London dry gin: 0.948 g/ml."), "{}", gin("20"));
        assert!(gin("−18").starts_with("515 ml|"), "{}", gin("−18"));
        assert!(gin("50").starts_with('?'));
        assert!(gin("").starts_with("527 ml"));
        // A key from an earlier list still means its liquid.
        assert!(remark(|form| form.liquid = "milk".into()).contains("Whole milk: 1.030 g/ml"));
        assert!(
            remark(|form| {
                form.liquid = "own".into();
                form.own = "1.25".into();
            })
            .starts_with("400 ml")
        );
    }
}
