//! A form of a spec as a part of a run: its clear ice, its lines in their amounts, its steps with their waits.

use crate::book::{Card, Line, Part};
use crate::craft::scale::{Target, density_of, factor, volume_of};
use crate::quantity::{Amount, Ratio, Temperature, Volume};
use crate::reading::rows::{amount_words, line_words, measured};
use crate::reading::{Contents, allergens, asks, label};
use crate::screen::Bench;
use crate::screen::plan::{Cut, HOUR, MINUTE, Makes, Making, Need, Plan, Step};
use crate::text::{self, Dimension, SpecLine, read_spec};

/// The key of a part that is a form of a spec.
pub const SPEC: &str = "spec-form";
/// The key of a part that is clear ice.
pub const ICE: &str = "clear-ice";

/// The parts that a form of the spec of this id comes to: clear ice where it asks for it, and the drink.
#[must_use]
pub fn parts_of(id: &str, card: &Card, at: usize) -> Vec<Part> {
    let Some(way) = card.ways.get(at) else { return Vec::new() };
    let text = |name: &str, text: &str| (name.to_owned(), text.to_owned());
    let mut parts = Vec::new();
    if way.ice.to_ascii_lowercase().contains("clear") {
        parts.push(Part { tool: ICE.into(), texts: [text("ice", &way.ice)].into(), ..Part::default() });
    }
    let name =
        [card.name.trim(), way.name.trim()].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ");
    let texts = [
        text("name", &name),
        text("lines", &way.lines),
        text("steps", &way.steps),
        text("times", "1"),
        // Which spec it is, so that a label of the run can hold it.
        text("card", id),
        text("at", &at.to_string()),
    ];
    parts.push(Part { tool: SPEC.into(), texts: texts.into(), ..Part::default() });
    parts
}

/// What it makes: the drink, which takes a cordial when it is told to, or its ice.
pub(super) fn making(part: &Part, bench: &Bench) -> Making {
    if part.tool == ICE {
        return Making { makes: Makes::Ice, ..Making::default() };
    }
    let lines = part.texts.get("lines").map_or("", String::as_str);
    let lines = read_spec(lines, &bench.reading(Dimension::Either));
    let (allergens, asks) = (allergens(&lines, bench), asks(&lines, bench));
    let is_fresh = label::is_fresh(&lines);
    Making { makes: Makes::Drink, takes: &[Makes::Cordial], allergens, asks, is_fresh, ..Making::default() }
}

/// Its steps; scaled by what came out of the part before it, where a line of it is that.
pub(super) fn plan(part: &Part, came: Option<(&str, &str)>, bench: &Bench) -> Option<Plan> {
    let text = |name: &str| part.texts.get(name).map_or("", String::as_str);
    if part.tool == ICE {
        // Common practice, no source: a day for a block of some litres, frozen from one side.
        let freeze =
            Step::work("freeze", format!("Freeze clear ice: {}", text("ice")), 10 * MINUTE).then_wait(24 * HOUR);
        let cut = Step::work("cut", "Cut the ice, put it back in the cold", 20 * MINUTE);
        return Some(Plan { title: "Clear ice".into(), steps: vec![freeze, cut], ..Plan::default() });
    }
    let read = Contents::of(text("lines"), bench);
    let (drunk, is_washed) = read.drunk(bench);
    let (lines, mix) = (read.lines, read.mix);
    let spec = measured(&lines);
    let asked = text::read_count(text("times"), bench.decimal).ok().flatten();
    let by_source = scaled_by(&lines, came, bench);
    let times = by_source.or(asked)?;
    let cut = cut(&lines, came, by_source, asked, bench);
    let factor = factor(&spec, Target::Factor(times)).ok()?;
    let total: Volume = spec.lines.iter().map(|line| volume_of(line.amount.times(factor), density_of(line).0)).sum();
    let amounts: Vec<String> = spec.lines.iter().map(|line| line_words(line, factor, bench)).collect();
    let given = came.and_then(|(makes, _)| line_called(&lines, makes));
    let need = |line: &Line| Need {
        is_given: given.is_some_and(|given| given.name == line.name),
        ..Need::of(&line.name, line.amount.times(factor))
    };
    let needs = spec.lines.iter().map(need).collect();
    let mut steps = vec![Step::work("measure", format!("Measure {}", amounts.join(", ")), 10 * MINUTE)];
    for (at, words) in text("steps").lines().map(str::trim).filter(|words| !words.is_empty()).enumerate() {
        let seconds = text::read_wait(words, bench.decimal).unwrap_or(0);
        // Half a minute of stirring is work; what takes longer is left to itself.
        let (work, wait) = if seconds <= 2 * MINUTE { (seconds.max(2 * MINUTE), 0) } else { (2 * MINUTE, seconds) };
        steps.push(Step::work((at + 1).to_string(), words, work).then_wait(wait));
    }
    // Milk in it clots: curd and filter keep their part.
    let through = drunk.volume(Temperature::TWENTY).ok().filter(|_| is_washed).map(|volume| volume * factor);
    if let Some(last) = steps.last_mut() {
        last.gives = Some(Amount::Volume(through.unwrap_or(total)));
    }
    if is_washed && !text("steps").split_whitespace().any(|word| word.eq_ignore_ascii_case("chill")) {
        steps.push(Step::chill());
    }
    let density = if is_washed { &drunk } else { &mix }.density(Temperature::TWENTY).ok();
    Some(Plan { title: text("name").to_owned(), steps, density, cut, needs, ..Plan::default() })
}

/// That it is made less often than was asked, for want of what came out of the part before it.
fn cut(
    lines: &[SpecLine],
    came: Option<(&str, &str)>,
    by_source: Option<Ratio>,
    asked: Option<Ratio>,
    bench: &Bench,
) -> Option<Cut> {
    let ((makes, amount), by_source, asked) = (came?, by_source?, asked?);
    let line = line_called(lines, makes).filter(|_| by_source.value() < asked.value() * (1.0 - 1e-6))?;
    let count = |times: Ratio| text::count(times.value(), bench.decimal);
    let there = text::read_amount(amount, &bench.reading(Dimension::Either)).ok().flatten()?;
    Some(Cut {
        made: format!("{} of {} times", count(by_source), count(asked)),
        there: format!("{} of {}", amount_words(there, bench), line.name),
        asked: amount_words(line.amount.times(asked), bench),
    })
}

/// How many times the spec is made of what came out, where one of its lines is called so.
pub(super) fn scaled_by(lines: &[SpecLine], came: Option<(&str, &str)>, bench: &Bench) -> Option<Ratio> {
    let (makes, amount) = came?;
    let have = text::read_amount(amount, &bench.reading(Dimension::Either)).ok().flatten()?;
    let line = line_called(lines, makes)?;
    let density = density_of(line).0;
    volume_of(have, density).over(volume_of(line.amount, density))
}

/// The line of a spec that is called so.
pub(super) fn line_called<'a>(lines: &'a [SpecLine], makes: &str) -> Option<&'a Line> {
    lines.iter().filter_map(|line| line.read.as_ref().ok()).find(|line| line.name.to_ascii_lowercase().contains(makes))
}
