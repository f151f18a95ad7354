//! Scale: a spec typed, pasted or taken from the book, made larger or smaller.

#[cfg(test)]
mod tests;

use crate::book::{Spec, Way};
use crate::craft::scale::{Rounding, ScaleProblem, ScaledLine, Target, factor, scaled, total};
use crate::quantity::{Amount, Ratio, Temperature};
use crate::reading::contents::washed_words;
use crate::reading::from_spec::{self, FromSpec};
use crate::reading::label;
use crate::reading::rows::{NOTICEABLE, line_of, measured, scaled_row, unread_row, unscaled_row};
use crate::reading::{self, Contents, links};
use crate::screen::pad::Keys;
use crate::screen::route::Route;
use crate::screen::{
    Act, Answer, Bench, Block, Button, Choice, Input, Opt, Problem, Row, Strip, Tone, Tool, choice, form,
};
use crate::text::{self, Dimension, SpecLine, read_spec};

/// What the spec is scaled by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// Serves wanted.
    Serves,
    /// A total volume.
    Total,
    /// A vessel, filled short of its brim.
    Vessel,
    /// A number of times.
    Factor,
    /// What there is of one ingredient.
    Have,
}

choice! { By:
    Serves = "serves", "Serves";
    Total = "total", "Total";
    Vessel = "vessel", "Vessel";
    Factor = "times", "Times";
    Have = "have", "What I have";
}

choice! { Rounding:
    OneMl = "1ml", "1 ml or ¼ oz";
    FiveMl = "5ml", "5 ml or ¼ oz";
    Jiggers = "jiggers", "My jiggers";
    TenthGram = "0.1g", "Weighed to 0.1 g";
}

form! {
    /// What is typed.
    ScaleForm {
        /// The spec, a line for each ingredient.
        spec = reading::EXAMPLE,
        /// What it is scaled by: a key of [`By`].
        by = "serves",
        /// Serves wanted.
        serves = "18",
        /// Serves the spec makes as written.
        makes = "1",
        /// Total wanted.
        total = "2 l",
        /// Brimful volume of the vessel.
        vessel = "1 l",
        /// Left empty in the vessel, percent.
        headspace = "5",
        /// Times wanted.
        factor = "2",
        /// Name of the line there is a given amount of.
        have_of = "",
        /// How much there is.
        have = "310 ml",
        /// What amounts are rounded to: a key of [`Rounding`].
        rounding = "1ml",
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
    }
}

const SERVES: &str = "serves";
const MAKES: &str = "makes";
const TOTAL: &str = "total";
const VESSEL: &str = "vessel";
const HEADSPACE: &str = "headspace";
const FACTOR: &str = "factor";
const HAVE: &str = "have";
/// Field of the spec.
pub const SPEC: &str = "spec";

impl Tool for ScaleForm {
    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let mut blocks = vec![Block::chips::<By>("by", "Scale by", false)];
        blocks.extend(from_spec::fields(Route::Scale, &self.from_spec, Some(&self.spec), bench));
        blocks.extend(match self.by() {
            By::Serves => vec![
                Block::amount(SERVES, "Serves", Keys::Count),
                Block::amount(MAKES, "Serves the spec makes", Keys::Count),
            ],
            By::Total => vec![Block::amount(TOTAL, "Total volume", Keys::Batch)],
            By::Vessel => vec![
                Block::amount(VESSEL, "Vessel, to the brim", Keys::Batch),
                Block::amount(HEADSPACE, "Headspace", Keys::Percent),
            ],
            By::Factor => vec![Block::amount(FACTOR, "Times", Keys::Count)],
            By::Have => {
                let spec = measured(&read_spec(&self.spec, &bench.reading(Dimension::Either)));
                let keys = if self.have_is_counted(&spec) { Keys::Count } else { Keys::Either };
                vec![
                    Block::amount(HAVE, "Amount I have", keys),
                    Block::pick("have_of", "Ingredient", line_options(spec)),
                ]
            }
        });
        let placeholder = reading::PLACEHOLDER;
        blocks.extend([
            Block::Table("", Vec::new()),
            Block::field(SPEC, "The spec, a line for each ingredient", Input::Lines { placeholder }),
            Block::chips::<Rounding>("rounding", "Round to", true),
            Block::Buttons(vec![Button::new("Keep it in Specs", Act::NewSpec), Button::new("Save as CSV", Act::Csv)]),
        ]);
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let read = Contents::of(&self.spec, bench);
        let spec = measured(&read.lines);
        if read.lines.is_empty() {
            return answer.without_answer("Type or paste a spec, a line for each ingredient.");
        }
        let target = self.target(bench, &spec, &mut answer.problems);
        let factor = target.map(|target| factor(&spec, target));
        answer.rows_title = "Scaled";
        let Some(Ok(factor)) = factor else {
            answer.rows = read.lines.iter().map(|line| unscaled_row(line, bench)).collect();
            if let Some(Err(problem)) = factor {
                let field = if problem == ScaleProblem::NothingMeasured { SPEC } else { self.active_field() };
                answer.problems.push(Problem::new(field, problem));
            }
            return answer.without_answer(self.missing());
        };
        self.show(answer, &read, &spec, factor, bench)
    }

    /// The spec stays: it is cleared in Specs.
    fn empty(&mut self) {
        for text in [&mut self.serves, &mut self.total, &mut self.vessel, &mut self.factor, &mut self.have] {
            text.clear();
        }
    }

    fn take(&mut self, name: &str, text: &str) {
        let (by, field) = match name {
            FACTOR => (By::Factor, &mut self.factor),
            TOTAL => (By::Total, &mut self.total),
            SERVES => (By::Serves, &mut self.serves),
            SPEC => return text.clone_into(&mut self.spec),
            MAKES => return text.clone_into(&mut self.makes),
            _ => return,
        };
        text.clone_into(field);
        by.key().clone_into(&mut self.by);
    }
}

impl ScaleForm {
    fn by(&self) -> By {
        By::read(&self.by)
    }

    /// The place of the line there is a given amount of: the first when none is chosen.
    fn have_at(&self, spec: &Spec) -> usize {
        line_keys(spec).iter().position(|key| *key == self.have_of).unwrap_or(0)
    }

    fn have_is_counted(&self, spec: &Spec) -> bool {
        spec.lines.get(self.have_at(spec)).is_some_and(|line| matches!(line.amount, Amount::Count(_)))
    }

    fn active_field(&self) -> &'static str {
        match self.by() {
            By::Serves => SERVES,
            By::Total => TOTAL,
            By::Vessel => VESSEL,
            By::Factor => FACTOR,
            By::Have => HAVE,
        }
    }

    fn missing(&self) -> &'static str {
        match self.by() {
            By::Serves => "Type how many serves.",
            By::Total => "Type the total to make.",
            By::Vessel => "Type what the vessel holds.",
            By::Factor => "Type how many times.",
            By::Have => "Type how much there is.",
        }
    }

    fn target(&self, bench: &Bench, spec: &Spec, problems: &mut Vec<Problem>) -> Option<Target> {
        match self.by() {
            By::Serves => {
                let wanted = bench.count(SERVES, &self.serves, problems);
                let makes = bench.count(MAKES, &self.makes, problems);
                let makes = if self.makes.trim().is_empty() { Some(Ratio::ONE) } else { makes };
                Ratio::from_value(wanted?.value() / makes?.value()).ok().map(Target::Factor)
            }
            By::Total => bench.volume(TOTAL, &self.total, problems).map(Target::Total),
            By::Vessel => {
                let vessel = bench.volume(VESSEL, &self.vessel, problems);
                let headspace = bench.percent(HEADSPACE, &self.headspace, 90, problems);
                let (vessel, headspace) = (vessel?, headspace?);
                Some(Target::Total(vessel.less(vessel * headspace)))
            }
            By::Factor => bench.count(FACTOR, &self.factor, problems).map(Target::Factor),
            By::Have => {
                let line = self.have_at(spec);
                let amount = if self.have_is_counted(spec) {
                    bench.count(HAVE, &self.have, problems).map(Amount::Count)
                } else {
                    bench.amount(HAVE, &self.have, Dimension::Either, problems)
                };
                amount.map(|amount| Target::Have { line, amount })
            }
        }
    }

    /// "Orchard lantern, stirred: 18 serves".
    fn how_often(&self, factor: Ratio, bench: &Bench) -> String {
        let count = |count: Ratio| {
            text::fraction_of(count.value()).unwrap_or_else(|| text::count(count.value(), bench.decimal))
        };
        let often = match (self.by(), bench.count(SERVES, &self.serves, &mut Vec::new())) {
            (By::Serves, Some(serves)) if serves == Ratio::ONE => "1 serve".to_owned(),
            (By::Serves, Some(serves)) => format!("{} serves", count(serves)),
            _ => format!("{} times the spec", count(factor)),
        };
        match FromSpec::of(&self.from_spec, bench) {
            Some(form) => format!("{}: {often}", form.name()),
            None => often,
        }
    }

    /// What is scaled as a form of the spec that it came from.
    fn form(&self, lines: &[SpecLine], results: &[ScaledLine], factor: Ratio, bench: &Bench) -> Option<Box<Way>> {
        FromSpec::of(&self.from_spec, bench)?;
        let mut results = results.iter();
        let line = |line: &SpecLine| match &line.read {
            Ok(read) => {
                let amount = results.next().map_or(read.amount, |result| result.rounded);
                line_of(amount, read.unit, &read.name, bench)
            }
            Err(_) => line.typed.clone(),
        };
        let lines: Vec<String> = lines.iter().map(line).collect();
        let one = bench.count(MAKES, &self.makes, &mut Vec::new()).unwrap_or(Ratio::ONE);
        let makes = text::editable((one * factor).value(), bench.decimal);
        let name = if self.by() == By::Serves { format!("for {makes}") } else { "scaled".to_owned() };
        Some(Box::new(Way { name, lines: lines.join("\n"), makes, ..Way::default() }))
    }

    fn show(&self, mut answer: Answer, read: &Contents, spec: &Spec, factor: Ratio, bench: &Bench) -> Answer {
        let lines = &read.lines;
        let rounding = Rounding::read(&self.rounding);
        let results = scaled(spec, factor, rounding, &bench.house);
        let whole = total(spec) * factor;
        let worst = results.iter().map(|line| line.drift.abs()).fold(0.0, f64::max);
        let drift = if worst < NOTICEABLE {
            "Proportions kept".to_owned()
        } else {
            format!("Proportions kept within {}", text::percent(worst, bench.decimal))
        };
        let written = spec.lines.first().and_then(|line| line.unit);
        answer.strip = Strip {
            figures: vec![bench.headline_of(whole, "before ice", written)],
            also: self.how_often(factor, bench),
            below: drift,
            tone: Tone::Answer,
            ..Strip::default()
        };
        let mut measured = results.iter();
        answer.rows = lines
            .iter()
            .map(|line| match &line.read {
                Ok(_) => measured.next().map_or_else(Row::default, |result| scaled_row(result, rounding, bench)),
                Err(problem) => unread_row(line, problem),
            })
            .collect();
        answer.form = self.form(lines, &results, factor, bench);
        if let Some(assumed) = results.iter().find(|line| line.density_assumed) {
            answer
                .remarks
                .push(format!("Where weight meets volume, {} is taken as water, 1 g to the ml.", assumed.name));
        }
        reading::ask_part(&mut answer, SPEC, &self.spec, lines, bench);
        if results.iter().any(|line| matches!(line.exact, Amount::Count(_))) {
            answer.remarks.push("Counted things are left out of the total.".into());
        }
        let (drunk, is_washed) = read.drunk(bench);
        if is_washed {
            answer.notes.push(washed_words(bench));
        }
        let makes = bench.count(MAKES, &self.makes, &mut Vec::new()).unwrap_or(Ratio::ONE);
        answer.notes.extend(from_spec::in_the_glass(&self.from_spec, read, makes, bench));
        match read.whole() {
            Some(_) if read.is_something() => {
                answer.cells_title = "Balance, before ice";
                reading::four_cells(&mut answer, &drunk, bench);
            }
            Some(_) => {}
            None => answer.notes.push(format!(
                "No balance yet, for what can't be counted: {}. See it in Balance.",
                read.missing.join(", ")
            )),
        }
        let made = drunk.volume(Temperature::TWENTY).ok().filter(|_| is_washed).map(|drunk| drunk * factor);
        let carried = bench.carried(made.unwrap_or(whole));
        answer.carry("Balance", Route::Balance.href());
        answer.carry("Into serves", Route::Serves.href_with("made", &carried));
        let line = |line: &crate::book::Line| line_of(line.amount.times(factor), None, &line.name, bench);
        let scaled: Vec<String> = spec.lines.iter().map(line).collect();
        links::milk_wash(read, is_washed, &scaled.join("\n"), &mut answer, bench);
        let name = FromSpec::of(&self.from_spec, bench).map_or_else(|| "Batch".into(), |form| form.name());
        let known = from_spec::of_lines(name, read, bench);
        answer.carry("Label it", label::href(&known));
        links::fruit(lines, factor, &mut answer, bench);
        links::fat_wash(lines, factor, &mut answer, bench);
        answer
    }
}

/// The measured lines, to choose from.
fn line_options(spec: Spec) -> Vec<Opt> {
    let keys = line_keys(&spec);
    keys.into_iter().zip(spec.lines).map(|(key, line)| Opt::new(key, line.name)).collect()
}

/// A key for each line: its name, and its number among those of the same name.
fn line_keys(spec: &Spec) -> Vec<String> {
    let mut keys: Vec<String> = Vec::new();
    for line in &spec.lines {
        let same = keys.iter().filter(|key| key.split('·').next() == Some(&line.name)).count();
        keys.push(if same == 0 { line.name.clone() } else { format!("{}·{}", line.name, same + 1) });
    }
    keys
}
