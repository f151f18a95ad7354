//! Names of records.

use crate::book::Card;

/// A name, or what stands for one.
pub(crate) fn named(name: &str) -> String {
    if name.trim().is_empty() { "Without a name".into() } else { name.trim().to_owned() }
}

/// What a form of a spec is called: "Orchard lantern, stirred".
pub(crate) fn of_form(card: &Card, at: usize) -> String {
    let name = named(&card.name);
    match card.ways.get(at).map_or("", |way| way.name.trim()) {
        "" => name,
        way => format!("{name}, {way}"),
    }
}
