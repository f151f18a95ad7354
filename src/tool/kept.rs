//! What an answer can be kept as: a form of the spec that it came from, or an ingredient.

use super::{filled, tool};
use crate::book::{Origin, Way};
use crate::reading::from_spec::{FROM, FromSpec, LINES, SPEC, carried};
use crate::reading::{named, origin};
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Button, Texts, Tone, Tool, empty_into};

/// The words for what an answer can be kept as.
pub(super) fn keeping(route: Route, form: &mut dyn Tool, answer: &mut Answer, bench: &Bench) {
    let (said, prep) = (answer.form.take(), answer.prep.take());
    if answer.strip.tone != Tone::Answer {
        return;
    }
    if let Some(said) = said {
        let from = text_of(form, FROM);
        let (label, way) = match FromSpec::of(&from, bench) {
            Some(source) => {
                // What was typed in the tool is noted when it is kept.
                let from = Origin { tool: route.form_key().to_owned(), ..origin::of_form(&source) };
                (format!("As a form of {}", named(&source.parts().0.value.name)), whole(*said, &source, from))
            }
            None => ("Keep it in Specs".to_owned(), *said),
        };
        answer.keeping.push(Button::new(label, Act::AsForm(Box::new(way))));
    }
    if let Some(prep) = prep {
        let label = format!("Keep {} as an ingredient", prep.name);
        answer.keeping.extend(origin::to_keep(prep, &label, bench));
    }
}

fn text_of(form: &mut dyn Tool, name: &str) -> String {
    form.fields().into_iter().find(|(field, _)| *field == name).map_or_else(String::new, |(_, text)| text.clone())
}

/// What a tool says of a form, and the rest as the form has it that it was made from.
fn whole(said: Way, source: &FromSpec<'_>, from: Origin) -> Way {
    let like = source.way().clone();
    let or = |said: String, like: String| if said.is_empty() { like } else { said };
    Way {
        name: said.name,
        lines: said.lines,
        method: or(said.method, like.method),
        steps: or(said.steps, like.steps),
        makes: said.makes,
        gives: said.gives,
        from,
        tastings: Vec::new(),
        notes: String::new(),
        ..like
    }
}

/// What was typed in a tool: what is not as it begins, nor as its spec brings it.
#[must_use]
pub fn typed(route: Route, texts: &Texts, bench: &Bench) -> Texts {
    let mut usual = Texts::default();
    empty_into(tool(route).as_mut(), &mut usual);
    let from = texts.get(FROM).map_or("", String::as_str);
    for (name, text) in carried(route, from, bench) {
        usual.insert(name, text);
    }
    let mut form = filled(route, texts);
    let fields = form.fields().into_iter();
    let own = fields.filter(|(name, text)| !matches!(*name, FROM | SPEC | LINES) && usual.get(name) != Some(text));
    own.map(|(name, text)| (name.to_owned(), text.clone())).collect()
}

/// The tool that made a form, with what that was made from as it is now, and what was typed there then; none where no tool
/// made it, or where that is gone.
#[must_use]
pub fn made_by(way: &Way, bench: &Bench) -> Option<(Route, Texts)> {
    let source = origin::source(&way.from, bench)?;
    let route = Route::of_key(&way.from.tool)?;
    let (entry, at) = source.parts();
    let mut texts = Texts::default();
    let brought = carried(route, &format!("{}/{at}", entry.id), bench);
    let lines = [(SPEC.to_owned(), source.lines().to_owned()), (LINES.to_owned(), source.lines().to_owned())];
    let own = way.from.texts.iter().map(|(name, text)| (name.to_owned(), text.clone()));
    for (name, text) in lines.into_iter().chain(brought).chain(own) {
        texts.insert(name, text);
    }
    Some((route, texts))
}

/// A form of a spec, worked out anew from what it was made from as that is now.
///
/// # Errors
/// Why that cannot be, in the words of its tool.
pub fn worked_out(way: &Way, bench: &Bench) -> Result<Way, String> {
    let found = made_by(way, bench).zip(origin::source(&way.from, bench));
    let Some(((route, texts), source)) = found else { return Err("What it was made from is gone.".into()) };
    let (_, answer) = filled(route, &texts).show(bench);
    match answer.form {
        Some(said) if answer.strip.tone == Tone::Answer => {
            let from =
                Origin { tool: way.from.tool.clone(), texts: way.from.texts.clone(), ..origin::of_form(&source) };
            Ok(whole(*said, &source, from))
        }
        _ => Err(answer.strip.also),
    }
}
