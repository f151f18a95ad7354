//! What is poured for an amount, at a glance: under the amount, on a spec that is read.

use super::pours::measures;
use crate::book::Mark;
use crate::craft::jigger::plan;
use crate::craft::measure::nearest;
use crate::quantity::{Amount, Mass, Unit};
use crate::screen::Bench;
use crate::screen::pad::unit_typed;
use crate::text;

/// Pours that are counted at a glance. Common practice, no source.
const AT_A_GLANCE: u32 = 3;

/// "≈ 1½ oz": what is poured for an amount that is shown as `shown`, with the bar's own jiggers where that is a glance,
/// else the same in the other unit. Empty where that is no help: a dasher and a spoon are no jiggers.
pub(crate) fn at_a_glance(amount: Amount, unit: Option<Unit>, shown: &str, bench: &Bench) -> String {
    let volume = match amount {
        Amount::Volume(volume) => volume,
        Amount::Mass(mass) if unit.is_some_and(|unit| !matches!(unit, Unit::Gram | Unit::Kilogram)) => {
            return text::fine_grams(mass, bench.decimal).to_string();
        }
        Amount::Mass(mass) if bench.in_pounds && mass >= Mass::OUNCE => {
            return text::pounds(mass, bench.decimal).to_string();
        }
        Amount::Mass(_) | Amount::Count(_) => return String::new(),
    };
    if let Some(Unit::Dash | Unit::Drop | Unit::Barspoon) = unit {
        return String::new();
    }
    let plan = plan(volume, &bench.house).filter(|plan| plan.is_close() && plan.count() <= AT_A_GLANCE);
    let is_metric = unit.is_none_or(Unit::is_metric_volume);
    // A jigger has a line for it: it is poured as it is written.
    if is_metric && bench.house.marks().any(|mark| mark.label == shown) {
        return String::new();
    }
    if let Some(plan) = plan.filter(|plan| measures(plan) != shown) {
        return format!("{}{}", if plan.is_exact() { "" } else { "≈ " }, measures(&plan));
    }
    if !is_metric {
        return text::litres_or_ml(volume, bench.decimal).to_string();
    }
    let has_ounces = |mark: &Mark| unit_typed(&mark.label) == Some(Unit::Ounce);
    if bench.house.usual_unit != Unit::Ounce && !bench.house.marks().any(has_ounces) {
        return String::new();
    }
    let near = nearest(volume, bench.house.conventions.ounce.volume() / 4).filter(|near| near.error.abs() < 0.1);
    let Some(near) = near else { return String::new() };
    format!("≈ {}", text::ounces(near.volume, &bench.house.conventions, bench.decimal))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::Line;
    use crate::quantity::Volume;
    use crate::text::{Decimal, Dimension, read_spec};
    use crate::tool::shelf::settings::ShelfForm;

    #[test]
    fn a_pour_is_said_with_the_jiggers_or_in_the_other_unit() {
        let bench = ShelfForm::default().bench(Decimal::Point);
        for (line, said) in [
            ("45 ml rum", "≈ 1½ oz"),
            ("20 ml vermouth", "≈ ½ oz + 1 bsp"),
            // More than three pours: a jug, in quarters of an ounce.
            ("450 ml rum", "≈ 15¼ oz"),
            ("2 oz gin", "59.1 ml"),
            ("2 dash bitters", ""),
            ("1 bsp anise", ""),
            ("½ lb sugar", "227 g"),
            ("10 g gum", ""),
            ("8 mint leaves", ""),
        ] {
            let line = read_spec(line, &bench.reading(Dimension::Either)).remove(0);
            let Ok(Line { amount, unit, .. }) = line.read else { panic!("{line:?}") };
            let shown = super::super::rows::exact_words(amount, unit, &bench);
            assert_eq!(at_a_glance(amount, unit, &shown, &bench), said, "{}", line.typed);
        }
        let metric = ShelfForm {
            brim_1: "40 ml".into(),
            lines_1: "20 ml".into(),
            brim_2: String::new(),
            lines_2: String::new(),
            ..ShelfForm::default()
        }
        .bench(Decimal::Point);
        let rum = Amount::Volume(Volume::from_ml(60.0).expect("a volume"));
        assert_eq!(at_a_glance(rum, Some(Unit::Millilitre), "60 ml", &metric), "40 ml + 20 ml");
        let jug = Amount::Volume(Volume::from_ml(450.0).expect("a volume"));
        assert_eq!(at_a_glance(jug, Some(Unit::Millilitre), "450 ml", &metric), "", "no ounces at this bar");
    }

    /// A line of the jigger that says what is written goes before an ounce that is near it.
    #[test]
    fn what_a_jigger_has_a_line_for_is_poured_as_it_is_written() {
        for (brim_1, lines_1, ounce) in
            [("30 ml", "15 ml; 20 ml; 25 ml", "us"), ("1 oz", "½ oz; 15 ml; 25 ml", "round")]
        {
            let form = ShelfForm {
                brim_1: brim_1.into(),
                lines_1: lines_1.into(),
                brim_2: String::new(),
                lines_2: String::new(),
                usual_unit: "oz".into(),
                ounce: ounce.into(),
                ..ShelfForm::default()
            };
            let bench = form.bench(Decimal::Point);
            for ml in [15, 25] {
                let shown = format!("{ml} ml");
                let amount = Amount::Volume(Volume::whole_ml(ml));
                assert_eq!(at_a_glance(amount, Some(Unit::Millilitre), &shown, &bench), "", "{shown} {brim_1}");
            }
        }
    }
}
