//! Specs: the spec that Scale holds, to read over and edit.

use super::Bench;
use super::answer::{Answer, Figure, Strip, Tone};
use super::fields::form;
use super::route::Route;
use super::scale::{ScaleForm, unscaled_row};
use super::screen::{Block, Input, Tool};
use crate::craft::scale::total;
use crate::text::{self, Kind, read_spec};

form! {
    /// The texts of Scale that this screen shows.
    SpecsForm {
        /// The spec, a line for each ingredient.
        spec = ScaleForm::EXAMPLE,
    }
}

impl Tool for SpecsForm {
    fn layout(&self, _bench: &Bench) -> Vec<Block> {
        let placeholder = ScaleForm::PLACEHOLDER;
        vec![Block::field("spec", "Your spec, a line for each ingredient", Input::Lines { placeholder })]
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let lines = read_spec(&self.spec, &bench.reading(Kind::Either));
        if lines.is_empty() {
            return answer.without_answer("Type or paste a spec, a line for each ingredient.");
        }
        let spec = super::scale::measured(&lines);
        let measured = spec.lines.len();
        answer.rows_title = "As it is read";
        answer.rows = lines.iter().map(|line| unscaled_row(line, bench)).collect();
        answer.strip = Strip {
            figures: vec![text::litres_or_ml(total(&spec), bench.decimal)],
            also: format!("{measured} of {} lines measured, before ice or water", lines.len()),
            tone: Tone::Answer,
        };
        if measured == 0 {
            answer.strip.figures = vec![Figure::new("–", "")];
        }
        answer.remarks.push("This spec is the one in Scale. It stays there until you change it.".into());
        answer.carry("Scale it", Route::Scale.href());
        answer
    }

    fn clear(&mut self) {
        self.spec.clear();
    }

    fn take(&mut self, _name: &str, _text: &str) {}
}
