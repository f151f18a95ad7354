//! The lines of a spec as rows of a table: scaled, as read, or kept and explained.

use super::pours::poured;
use crate::book::{Line, Mark, Spec};
use crate::craft::scale::{Rounding, ScaledLine, With, scaled, with};
use crate::quantity::{Amount, Mass, Ratio, Unit, Volume};
use crate::screen::pad::unit_typed;
use crate::screen::{Bench, Figure, Row, fixes};
use crate::text::{self, LineProblem, SpecLine};

/// A change in a line's share of the drink that is worth a word: 0.05 %.
pub(crate) const NOTICEABLE: f64 = 5e-4;

pub(crate) fn measured(lines: &[SpecLine]) -> Spec {
    Spec { lines: lines.iter().filter_map(|line| line.read.clone().ok()).collect() }
}

/// `spec` with `fixed` in place of the first line that reads `typed`.
pub(crate) fn rewritten(spec: &str, typed: &str, fixed: &str) -> String {
    let mut lines: Vec<&str> = spec.lines().collect();
    if let Some(line) = lines.iter_mut().find(|line| line.trim() == typed) {
        *line = fixed;
    }
    lines.join("\n")
}

pub(crate) fn unread_row(line: &SpecLine, problem: &LineProblem) -> Row {
    Row {
        name: line.typed.clone(),
        amount: String::new(),
        detail: problem.to_string(),
        marked: !problem.is_words(),
        fixes: fixes(problem.fixes(&line.typed)),
        ..Row::default()
    }
}

pub(crate) fn unscaled_row(line: &SpecLine, bench: &Bench) -> Row {
    match &line.read {
        Ok(Line { amount, unit, name, said, .. }) => {
            let words = exact_words(*amount, *unit, bench);
            let detail = with_said(beneath(*amount, *unit, &words, bench), said);
            Row { name: name.clone(), amount: words, detail, ..Row::default() }
        }
        Err(problem) => unread_row(line, problem),
    }
}

pub(crate) fn scaled_row(line: &ScaledLine, rounding: Rounding, bench: &Bench) -> Row {
    let amount = pour_words(line, rounding, bench);
    let exact = exact_words(line.exact, line.unit, bench);
    let mut detail = if exact == amount { String::new() } else { format!("exactly {exact}") };
    if line.drift.abs() >= NOTICEABLE {
        let sign = if line.drift > 0.0 { "+" } else { "−" };
        let drift = text::percent(line.drift.abs(), bench.decimal);
        detail.push_str(&format!("{}share {sign}{drift}", if detail.is_empty() { "" } else { ", " }));
    }
    let detail = with_said(detail, &beneath(line.rounded, line.unit, &amount, bench));
    let detail = with_said(detail, &line.said);
    Row { name: line.name.clone(), amount, detail, ..Row::default() }
}

/// A detail, and behind it what was decided in reading the line.
pub(crate) fn with_said(detail: String, said: &str) -> String {
    match (detail.is_empty(), said.is_empty()) {
        (_, true) => detail,
        (true, _) => said.to_owned(),
        _ => format!("{detail}; {said}"),
    }
}

/// What stands beneath an amount: the same in millilitres or grams where it is written in another unit, in ounces where
/// the bar counts in them, and how to pour it.
pub(super) fn beneath(amount: Amount, unit: Option<Unit>, shown: &str, bench: &Bench) -> String {
    let is_metric = unit.is_none_or(|unit| unit.is_metric_volume() || matches!(unit, Unit::Gram | Unit::Kilogram));
    match amount {
        Amount::Volume(volume) => {
            let same = if !is_metric {
                text::litres_or_ml(volume, bench.decimal).to_string()
            } else if bench.house.usual_unit == Unit::Ounce && !shown.ends_with("oz") {
                text::ounces(volume, &bench.house.conventions, bench.decimal).to_string()
            } else {
                String::new()
            };
            // A dasher and a spoon are no jiggers.
            let pour = match unit {
                Some(Unit::Dash | Unit::Drop | Unit::Barspoon) => None,
                _ => poured(volume, shown, bench),
            };
            with_said(same, &pour.unwrap_or_default())
        }
        Amount::Mass(mass) if is_metric && bench.in_pounds && mass >= Mass::OUNCE => {
            text::pounds(mass, bench.decimal).to_string()
        }
        Amount::Mass(mass) if !is_metric => text::fine_grams(mass, bench.decimal).to_string(),
        Amount::Mass(_) | Amount::Count(_) => String::new(),
    }
}

/// An amount in full, in the unit it is written in.
pub(crate) fn exact_words(amount: Amount, unit: Option<Unit>, bench: &Bench) -> String {
    exact_figure(amount, unit, bench).to_string()
}

/// The same, its unit apart.
pub(crate) fn exact_figure(amount: Amount, unit: Option<Unit>, bench: &Bench) -> Figure {
    let written = unit.and_then(|unit| text::written(amount, unit, &bench.house.conventions, bench.decimal));
    written.unwrap_or_else(|| match amount {
        Amount::Volume(volume) => text::exact_millilitres(volume, bench.decimal),
        Amount::Mass(mass) => text::grams(mass, 1, bench.decimal),
        Amount::Count(count) => Figure::new(counted_words(count, bench), ""),
    })
}

/// An amount as it is poured or weighed: "780 ml", and "26½ oz (780 ml)" where the bar counts in ounces.
pub(crate) fn amount_words(amount: Amount, bench: &Bench) -> String {
    match amount {
        Amount::Volume(volume) => {
            let words = bench.headline(volume, None).to_string();
            words.split_once(", ").map_or(words.clone(), |(ounces, ml)| format!("{ounces} ({ml})"))
        }
        other => exact_words(other, None, bench),
    }
}

/// A line of so much: "45 ml pear brandy", in the unit that it is written in.
pub(crate) fn line_of(amount: Amount, unit: Option<Unit>, name: &str, bench: &Bench) -> String {
    format!("{} {name}", exact_words(amount, unit, bench))
}

/// An amount as text for another tool.
pub(crate) fn carried(amount: Amount, bench: &Bench) -> String {
    match amount {
        Amount::Volume(volume) => bench.carried(volume),
        Amount::Mass(mass) => format!("{} g", text::editable(mass.g(), bench.decimal)),
        Amount::Count(count) => text::editable(count.value(), bench.decimal),
    }
}

/// A line so many times, as a bar says it: "60 oz gin", "12 dashes bitters", "900 ml rum". In the unit that it is written in.
pub(crate) fn line_words(line: &Line, times: Ratio, bench: &Bench) -> String {
    let amount = match line.unit {
        Some(unit) if !unit.is_metric_volume() && !matches!(unit, Unit::Gram | Unit::Kilogram) => {
            let spec = Spec { lines: vec![line.clone()] };
            let scaled = scaled(&spec, times, Rounding::OneMl, &bench.house);
            scaled.first().map_or_else(String::new, |scaled| pour_words(scaled, Rounding::OneMl, bench))
        }
        _ => amount_words(line.amount.times(times), bench),
    };
    format!("{amount} {}", line.name)
}

fn counted_words(count: Ratio, bench: &Bench) -> String {
    text::fraction_of(count.value()).unwrap_or_else(|| text::count(count.value(), bench.decimal))
}

/// A rounded amount as it is poured: ounces where the jiggers are in house ounces, dashes when tiny.
fn pour_words(line: &ScaledLine, rounding: Rounding, bench: &Bench) -> String {
    let conventions = &bench.house.conventions;
    if let Some(unit) = line.unit.filter(|unit| !matches!(unit, Unit::Millilitre | Unit::Gram))
        && let Some(figure) = text::written(line.rounded, unit, conventions, bench.decimal)
    {
        return figure.to_string();
    }
    match (line.rounded, line.exact) {
        (Amount::Volume(volume), Amount::Volume(exact)) if rounding == Rounding::Jiggers => {
            let in_ounces = |mark: &Mark| unit_typed(&mark.label) == Some(Unit::Ounce);
            match with(exact, &bench.house) {
                With::Jiggers(_) if bench.house.marks().all(in_ounces) => {
                    text::ounces(volume, conventions, bench.decimal).to_string()
                }
                With::Dasher => text::written(line.rounded, Unit::Dash, conventions, bench.decimal)
                    .map_or_else(String::new, |dashes| dashes.to_string()),
                _ => whole_ml(volume, bench),
            }
        }
        (Amount::Volume(volume), _) => whole_ml(volume, bench),
        (Amount::Mass(mass), _) => text::grams(mass, 1, bench.decimal).to_string(),
        (Amount::Count(count), _) => counted_words(count, bench),
    }
}

fn whole_ml(volume: Volume, bench: &Bench) -> String {
    text::millilitres(volume, bench.decimal).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::{Decimal, Dimension, read_spec};
    use crate::tool::shelf::settings::ShelfForm;

    fn bench(usual_unit: &str) -> Bench {
        ShelfForm { usual_unit: usual_unit.into(), ..ShelfForm::default() }.bench(Decimal::Point)
    }

    /// What a line comes to so many times, and what stands beneath it.
    fn times(line: &str, factor: f64, rounding: Rounding, bench: &Bench) -> (String, String) {
        let spec = measured(&read_spec(line, &bench.reading(Dimension::Either)));
        let factor = Ratio::from_value(factor).expect("a factor");
        let row = scaled_row(&scaled(&spec, factor, rounding, &bench.house)[0], rounding, bench);
        (row.amount, row.detail)
    }

    #[test]
    fn an_amount_is_shown_as_it_was_written_and_poured_beneath() {
        let ml = bench("ml");
        for (line, amount, detail) in [
            ("2 oz gin", "2 oz", "59.1 ml"),
            ("⅔ oz syrup", "⅔ oz", "19.7 ml; pour ½ oz + 1 bsp, +0.1 ml, +0.4 %"),
            ("4 dashes bitters", "4 dashes", "3.2 ml"),
            ("1 bsp anise", "1 bsp", "5 ml"),
            ("4 cl rum", "4 cl", "pour 1 oz + 2 bsp, −0.4 ml, −1.1 %"),
            ("45 ml rum", "45 ml", "pour 1½ oz, −0.6 ml, −1.4 %"),
            ("½ lb sugar", "½ lb", "227 g"),
            ("10 g gum", "10.0 g", ""),
            ("8 mint leaves", "8", ""),
        ] {
            let line = read_spec(line, &ml.reading(Dimension::Either)).remove(0);
            let row = unscaled_row(&line, &ml);
            assert_eq!((row.amount.as_str(), row.detail.as_str()), (amount, detail), "{line:?}");
        }
        let line = read_spec("45 ml rum", &ml.reading(Dimension::Either)).remove(0);
        let pounds = Bench { in_pounds: true, ..bench("ml") };
        let sugar = read_spec("500 g sugar", &ml.reading(Dimension::Either)).remove(0);
        assert_eq!(unscaled_row(&sugar, &pounds).detail, "1 lb 1.6 oz");
        assert_eq!(unscaled_row(&line, &bench("oz")).detail, "1.52 oz; pour 1½ oz, −0.6 ml, −1.4 %");
    }

    #[test]
    fn a_scaled_amount_keeps_its_unit_with_the_fractions_of_a_bar() {
        let (ml, oz) = (bench("ml"), bench("oz"));
        let amount = |line, factor, bench: &Bench| times(line, factor, Rounding::OneMl, bench).0;
        assert_eq!(amount("¾ oz lemon juice", 18.0, &ml), "13½ oz");
        assert_eq!(amount("2 oz gin", 1.1, &ml), "2¼ oz");
        assert_eq!(times("2 oz gin", 1.1, Rounding::OneMl, &ml).1, "exactly 2.2 oz; 66.5 ml; pour 2 oz + ¼ oz, exact");
        assert_eq!(amount("2 dashes bitters", 6.0, &ml), "12 dashes");
        assert_eq!(amount("2 dashes bitters", 7.0, &ml), "2 bsp");
        assert_eq!(amount("2 dashes bitters", 36.0, &ml), "58 ml");
        assert_eq!(amount("2 dashes bitters", 36.0, &oz), "2 oz");
        assert_eq!(amount("4 cl gin", 18.0, &ml), "72 cl");
        assert_eq!(amount("45 ml gin", 18.0, &oz), "810 ml");
        // Rounded to the jiggers it is what they pour, weighed it is weighed.
        assert_eq!(times("45 ml gin", 1.0, Rounding::Jiggers, &ml).0, "1½ oz");
        assert_eq!(times("4 cl gin", 1.0, Rounding::Jiggers, &ml).0, "1¼ oz");
        assert_eq!(times("1 bsp anise", 1.0, Rounding::Jiggers, &ml).0, "1 bsp");
        assert_eq!(times("2 oz water", 1.0, Rounding::TenthGram, &ml).0, "59.0 g");
    }
}
