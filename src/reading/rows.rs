//! The lines of a spec as rows of a table: scaled, as read, or kept and explained.

use crate::book::{Line, Mark, Spec};
use crate::craft::scale::{Rounding, ScaledLine, With, with};
use crate::quantity::{Amount, Ratio, Unit, Volume};
use crate::screen::pad::unit_typed;
use crate::screen::{Bench, Row, fixes};
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
        Ok(Line { amount, name, said, .. }) => {
            Row { name: name.clone(), amount: exact_words(*amount, bench), detail: said.clone(), ..Row::default() }
        }
        Err(problem) => unread_row(line, problem),
    }
}

pub(crate) fn scaled_row(line: &ScaledLine, rounding: Rounding, bench: &Bench) -> Row {
    let amount = pour_words(line, rounding, bench);
    let exact = exact_words(line.exact, bench);
    let mut detail = if exact == amount { String::new() } else { format!("exactly {exact}") };
    if line.drift.abs() >= NOTICEABLE {
        let sign = if line.drift > 0.0 { "+" } else { "−" };
        let drift = text::percent(line.drift.abs(), bench.decimal);
        detail.push_str(&format!("{}share {sign}{drift}", if detail.is_empty() { "" } else { ", " }));
    }
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

pub(crate) fn exact_words(amount: Amount, bench: &Bench) -> String {
    match amount {
        Amount::Volume(volume) => text::exact_millilitres(volume, bench.decimal).to_string(),
        Amount::Mass(mass) => text::grams(mass, 1, bench.decimal).to_string(),
        Amount::Count(count) => counted_words(count, bench),
    }
}

/// An amount as it is poured or weighed.
pub(crate) fn amount_words(amount: Amount, bench: &Bench) -> String {
    match amount {
        Amount::Volume(volume) => text::litres_or_ml(volume, bench.decimal).to_string(),
        other => exact_words(other, bench),
    }
}

fn counted_words(count: Ratio, bench: &Bench) -> String {
    text::fraction_of(count.value()).unwrap_or_else(|| text::count(count.value(), bench.decimal))
}

/// A rounded amount as it is poured: ounces where the jiggers are in house ounces, dashes when tiny.
fn pour_words(line: &ScaledLine, rounding: Rounding, bench: &Bench) -> String {
    let conventions = &bench.house.conventions;
    match (line.rounded, line.exact) {
        (Amount::Volume(volume), Amount::Volume(exact)) if rounding == Rounding::Jiggers => {
            let in_ounces = |mark: &Mark| unit_typed(&mark.label) == Some(Unit::Ounce);
            match with(exact, &bench.house) {
                With::Jiggers(_) if bench.house.marks().all(in_ounces) => {
                    text::ounces(volume, conventions, bench.decimal).to_string()
                }
                With::Dasher => text::figure(line.rounded, Unit::Dash, conventions, bench.decimal)
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
