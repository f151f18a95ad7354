//! What a form was made from: where that stands, and whether it has changed since.

use super::from_spec::FromSpec;
use super::name::free;
use super::rows::carried;
use crate::book::{Card, Origin, Own};
use crate::quantity::Volume;
use crate::screen::plan::Need;
use crate::screen::{Act, Bench, Button};
use crate::substance::mix::Mix;
use crate::text;

/// The form that something was made from: the one of its key; none where that is gone.
pub(crate) fn source<'a>(from: &Origin, bench: &'a Bench) -> Option<FromSpec<'a>> {
    let entry = bench.book.card(&from.spec)?;
    let at = entry.value.ways.iter().position(|way| !way.key.is_empty() && way.key == from.form)?;
    FromSpec::of(&format!("{}/{at}", entry.id), bench)
}

/// Whether what something was made from has changed since, or is gone.
pub(crate) fn is_out_of_step(from: &Origin, bench: &Bench) -> bool {
    !from.spec.is_empty() && source(from, bench).is_none_or(|form| form.lines().trim() != from.lines.trim())
}

/// The forms of a spec that were made from one of them and are out of step with it.
pub(crate) fn out_of_step(id: &str, card: &Card, at: usize, bench: &Bench) -> Vec<usize> {
    let is_of_it = |from: &Origin| {
        from.spec == id && source(from, bench).is_some_and(|form| form.parts().1 == at) && is_out_of_step(from, bench)
    };
    (0..card.ways.len()).filter(|other| *other != at && is_of_it(&card.ways[*other].from)).collect()
}

/// What a form is made from, noted with it.
pub(crate) fn of_form(form: &FromSpec<'_>) -> Origin {
    let (entry, at) = form.parts();
    let form = entry.value.ways[at].key.clone();
    Origin { spec: entry.id.clone(), form, lines: entry.value.ways[at].lines.clone(), ..Origin::default() }
}

/// What must be there for something, as the lines of what it is made of.
pub(crate) fn parts(needs: &[Need], bench: &Bench) -> String {
    let line = |need: &Need| format!("{} {}", carried(need.amount, bench), need.what);
    let needs = needs.iter().filter(|need| !need.amount.is_none());
    needs.map(line).collect::<Vec<_>>().join("\n")
}

/// How much there is, as other amounts are shown; of less than a litre to a hundredth, as its strength counts on it.
fn given(gives: Volume, bench: &Bench) -> String {
    match gives >= Volume::LITRE {
        true => text::millilitres(gives, bench.decimal).to_string(),
        false => bench.carried(gives),
    }
}

/// What was made, as an ingredient of the bar's own: all that is in it, how much of it there is, and of what.
pub(crate) fn prep(name: &str, like: &str, (mix, gives): (&Mix, Volume), needs: &[Need], bench: &Bench) -> Box<Own> {
    Box::new(Own {
        name: name.to_owned(),
        like: like.to_owned(),
        holds: text::whole_figures(mix, bench.decimal),
        parts: parts(needs, bench),
        gives: given(gives, bench),
        ..Own::default()
    })
}

/// What an ingredient can be kept as: itself; where there is one of its name that is another, in its place, or beside it. `label` is what keeping it says where there is none.
pub(crate) fn to_keep(prep: Box<Own>, label: &str, bench: &Bench) -> Vec<Button> {
    let called = |name: &str| bench.book.own.iter().find(|entry| entry.value.name.trim().eq_ignore_ascii_case(name));
    let there = called(prep.name.trim());
    let keep = |label: String, prep| Button::new(label, Act::KeepIngredient(prep));
    let Some(there) = there else { return vec![keep(label.to_owned(), prep)] };
    if there.value.holds == prep.holds && there.value.parts == prep.parts {
        return Vec::new();
    }
    let name = free(&prep.name, &|name| called(name).is_none());
    let beside = Box::new(Own { name: name.clone(), ..*prep.clone() });
    vec![keep(format!("Put it in place of {}", prep.name), prep), keep(format!("Keep it as {name}"), beside)]
}

/// What something that was mixed is most like, by what is in it.
pub(crate) fn like(mix: &Mix) -> &'static str {
    let is_strong = mix.strength().fraction() > 0.005;
    match (is_strong, mix.g_per_l(mix.sugar()) > 50.0) {
        (true, true) => "liqueur",
        (true, false) => "spirit-40",
        (false, true) => "cordial",
        (false, false) => "water",
    }
}
