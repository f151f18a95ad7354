//! What comes clear, kept: as an ingredient, and as a form of the drink that it is for.

use super::{ClarifyForm, Worked};
use crate::book::{Way, ingredient};
use crate::reading::from_spec::FromSpec;
use crate::reading::rows::exact_words;
use crate::reading::{Contents, origin};
use crate::screen::plan::Plan;
use crate::screen::{Answer, Bench, Choice};
use crate::text::{self, SpecLine};

impl ClarifyForm {
    /// The juice as an ingredient; and the drink it came from with it in place of what is not clear.
    pub(super) fn keep(&self, answer: &mut Answer, worked: &Worked, plan: &Plan, bench: &Bench) {
        let Some(juice) = ingredient(worked.fruit.ingredient) else { return };
        let name = format!("clear {}", juice.name.to_ascii_lowercase());
        let made = (&worked.litre, worked.clear.volume);
        answer.prep = Some(origin::prep(&name, juice.key, made, &plan.needs, bench));
        let Some(form) = FromSpec::of(&self.from_spec, bench) else { return };
        let figures = match worked.agar {
            Some(_) => format!(" ({})", text::whole_figures(&worked.litre, bench.decimal)),
            None => String::new(),
        };
        let read = Contents::of(form.lines(), bench);
        let cleared = |line: &SpecLine| match &line.read {
            Ok(read) if read.taken.is_some_and(|taken| taken.ingredient.key == juice.key) => {
                format!("{} {name}{figures}", exact_words(read.amount, read.unit, bench))
            }
            _ => line.typed.clone(),
        };
        let lines: Vec<String> = read.lines.iter().map(cleared).collect();
        let how = self.method().label().to_ascii_lowercase();
        let steps = format!("Clarify the {}: {how}\n{}", juice.name.to_ascii_lowercase(), form.way().steps);
        answer.form = Some(Box::new(Way {
            name: "clarified".into(),
            lines: lines.join("\n"),
            method: "clarified".into(),
            steps,
            makes: form.way().makes.clone(),
            ..Way::default()
        }));
    }
}
