//! Measure: any amount in any unit, and how to pour it.

use super::Bench;
use super::answer::{Answer, Figure, Strip, Tone};
use super::fields::form;
use super::pad::{Keys, unit_typed};
use super::route::Route;
use super::screen::{Block, Opt, Tool};
use crate::craft::jigger::{self, Plan, Vessel};
use crate::craft::measure::{Both, both, nearest};
use crate::quantity::{Amount, Ounce, Ratio, Unit, Volume};
use crate::substance::density::{self, LIQUIDS, Liquid};
use crate::text::{self, Kind};

form! {
    /// What is typed.
    MeasureForm {
        /// The amount, or a sum of amounts.
        amount = "1¾ oz",
        /// Key of the liquid, for weights.
        liquid = "water",
    }
}

const AMOUNT: &str = "amount";

impl MeasureForm {
    /// The liquid weighed as; water for a key we do not know.
    #[must_use]
    pub fn liquid(&self) -> &'static Liquid {
        density::liquid(&self.liquid).unwrap_or(&LIQUIDS[0])
    }
}

impl Tool for MeasureForm {
    fn layout(&self, _bench: &Bench) -> Vec<Block> {
        let liquids = LIQUIDS.iter().map(|liquid| Opt { key: liquid.key.into(), label: liquid.name.into() }).collect();
        vec![Block::amount(AMOUNT, "Amount", Keys::Either), Block::pick("liquid", "Liquid", liquids)]
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let liquid = self.liquid();
        let typed = bench.amount(AMOUNT, &self.amount, Kind::Either, &mut answer.problems);
        let Some((typed, both)) = typed.and_then(|typed| Some((typed, both(typed, liquid.density())?))) else {
            return answer.without_answer("Type an amount, like 45 ml or 1½ oz.");
        };
        let plan = jigger::plan(both.volume, &bench.house);
        answer.strip = Strip {
            figures: vec![headline(typed, both, &self.amount, bench)],
            also: plan.as_ref().map_or_else(|| no_plan(both.volume, bench), |plan| pour_words(plan, bench)),
            tone: Tone::Answer,
        };
        equivalents(&mut answer, both, bench);
        if liquid.key != "water" || matches!(typed, Amount::Mass(_)) {
            let density = text::plain(liquid.density().g_per_ml(), 3, bench.decimal);
            answer.remarks.push(format!("{} at 20 °C: {density} g/ml. Source: {}.", liquid.name, liquid.source));
        }
        let carried = bench.carried(both.volume);
        answer.carry("Wash it with milk", Route::MilkWash.href_with("drink", &carried));
        answer.carry("Share it out in serves", Route::Serves.href_with("made", &carried));
        answer.carry("Acid for this much lime", Route::Acid.href_with("juice", &carried));
        answer
    }

    fn clear(&mut self) {
        self.amount.clear();
    }

    fn take(&mut self, name: &str, text: &str) {
        if name == AMOUNT {
            text.clone_into(&mut self.amount);
        }
    }
}

/// Millilitres, unless they were typed: then house ounces.
fn headline(typed: Amount, both: Both, text: &str, bench: &Bench) -> Figure {
    let in_ml = unit_typed(text) == Some(Unit::Millilitre)
        || (bench.house.usual_unit == Unit::Millilitre && !text.chars().any(|c| c.is_ascii_alphabetic()));
    match typed {
        Amount::Volume(_) if in_ml => text::ounces(both.volume, &bench.house.conventions, bench.decimal),
        _ => text::litres_or_ml(both.volume, bench.decimal),
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

/// "Jigger: 1½ oz + ¼ oz, exact".
pub(super) fn pour_words(plan: &Plan, bench: &Bench) -> String {
    let pours: Vec<String> = plan
        .pours
        .iter()
        .map(|pour| {
            let times = if pour.times > 1 { format!("{} × ", pour.times) } else { String::new() };
            match &pour.vessel {
                Vessel::Jigger(label) => format!("{times}{label}"),
                Vessel::Barspoon => format!("{} bsp", pour.times),
                Vessel::Dash if pour.times == 1 => "1 dash".to_owned(),
                Vessel::Dash => format!("{} dashes", pour.times),
            }
        })
        .collect();
    let error = if plan.is_exact() {
        "exact".to_owned()
    } else {
        let ml = text::plain(plan.error_ml(), 1, bench.decimal);
        let sign = if plan.error_ml() > 0.0 { "+" } else { "" };
        let verdict = if plan.is_close() { "" } else { "closest: " };
        format!("{verdict}{sign}{ml} ml, {}", text::signed_percent(plan.error(), bench.decimal))
    };
    format!("Pour {}, {error}", pours.join(" + "))
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
        Unit::Dash => small,
        Unit::Pint | Unit::ImperialPint | Unit::Quart | Unit::Cup => large,
        Unit::Gallon | Unit::ImperialGallon => both.volume >= Volume::LITRE,
        Unit::Litre => large,
        Unit::Kilogram | Unit::Pound => large,
        Unit::Barspoon | Unit::Teaspoon | Unit::Tablespoon => !large,
        _ => true,
    });
    for unit in units {
        let amount = if unit.weighs() { Amount::Mass(both.mass) } else { Amount::Volume(both.volume) };
        if let Some(figure) = text::figure(amount, unit, house, bench.decimal) {
            let name = match unit {
                Unit::Gram => "grams of this liquid".to_owned(),
                unit => text::name(unit, house, bench.decimal),
            };
            answer.cell(name, figure);
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
    use crate::form::shelf::ShelfForm;
    use crate::text::Decimal;

    fn bench() -> Bench {
        ShelfForm::default().bench(Decimal::Point)
    }

    fn strip(amount: &str) -> (String, String) {
        let form = MeasureForm { amount: amount.into(), ..MeasureForm::default() };
        let strip = form.answer(&bench()).strip;
        (strip.figures[0].to_string(), strip.also)
    }

    #[test]
    fn answers_at_once() {
        assert_eq!(strip("1¾ oz"), ("51.8 ml".into(), "Pour 1½ oz + ¼ oz, exact".into()));
        assert_eq!(strip("45 ml"), ("1.52 oz".into(), "Pour 1½ oz, −0.6 ml, −1.4 %".into()));
        assert_eq!(strip("750 ml").1, "More than 6 pours: measure it in a jug.");
        assert_eq!(strip("2 dash").1, "Pour 2 dashes, exact");
    }

    #[test]
    fn empty_is_not_yet_and_nonsense_is_a_problem() {
        assert_eq!(strip(""), ("–".into(), "Type an amount, like 45 ml or 1½ oz.".into()));
        assert_eq!(strip("5 splosh").0, "?");
    }
}
