//! How two versions of a form, or of a spec, differ: as a table.

use super::form_name;
use crate::book::{Card, Way};
use crate::reading::differ;
use crate::screen::{Bench, Choice, Row};
use crate::tool::specs::method::Method;

/// What a text of a spec is called, and whether each of its lines stands for itself.
fn called(name: &str) -> (&'static str, bool) {
    match name {
        "name" => ("Name", false),
        "tags" => ("Tags", false),
        "notes" => ("Notes on the drink", true),
        "way" => ("Name of this form", false),
        "lines" => ("", true),
        "method" => ("Method", false),
        "glass" => ("Glass", false),
        "holds" => ("Glass holds", false),
        "ice" => ("Ice", false),
        "garnish" => ("Garnish", false),
        "steps" => ("Steps", true),
        "makes" => ("Serves it makes", false),
        "gives" => ("Comes out of it", false),
        _ => ("Notes on this form", true),
    }
}

/// How a text differs, a row each; `words` are those for a line that went, and for one that came.
fn texts(name: &str, before: &str, after: &str, words: (&str, &str), bench: &Bench) -> Vec<Row> {
    let (label, is_lines) = called(name);
    let (before, after) = (before.trim(), after.trim());
    if is_lines {
        return differ::rows(before, after, words, bench);
    }
    if before == after {
        return Vec::new();
    }
    let [before, after] = [before, after].map(|text| match Method::read_or_none(text) {
        Some(method) if name == "method" => method.label(),
        _ => text,
    });
    vec![Row { name: label.to_owned(), detail: differ::changed(before, after), ..Row::default() }]
}

/// How a form differs from another.
pub(super) fn ways(before: &Way, after: &Way, words: (&str, &str), bench: &Bench) -> Vec<Row> {
    let (mut before, mut after) = (before.clone(), after.clone());
    let pairs = before.fields().into_iter().zip(after.fields());
    pairs.flat_map(|((name, before), (_, after))| texts(name, before, after, words, bench)).collect()
}

/// How a spec differs from another of its versions, form by form; `which` is what that is called among several.
pub(super) fn cards(here: &Card, there: &Card, which: &str, bench: &Bench) -> Vec<Row> {
    let words = ("only here", "only there");
    let (mut shared, mut other) = (here.clone(), there.clone());
    let pairs = shared.fields().into_iter().zip(other.fields());
    let mut rows: Vec<Row> =
        pairs.flat_map(|((name, before), (_, after))| texts(name, before, after, words, bench)).collect();
    let nothing = Way::default();
    let forms = here.ways.len().max(there.ways.len());
    for at in 0..forms {
        let named = if at < here.ways.len() { here } else { there };
        let form = if forms > 1 { form_name(named, at) } else { String::new() };
        let [before, after] = [here, there].map(|card| card.ways.get(at).unwrap_or(&nothing));
        rows.extend(ways(before, after, words, bench).into_iter().map(|row| of(&form, row)));
    }
    rows.into_iter().map(|row| of(which, row)).collect()
}

/// A row with what it is of before its detail.
fn of(what: &str, row: Row) -> Row {
    let detail = match (what, row.detail.as_str()) {
        ("", detail) => detail.to_owned(),
        (what, "") => what.to_owned(),
        (what, detail) => format!("{what}: {detail}"),
    };
    Row { detail, ..row }
}
