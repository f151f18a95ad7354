//! Names of records.

use crate::book::{Card, Holds};
use crate::text::{Decimal, read_figures};

/// A name, or what stands for one.
pub(crate) fn named(name: &str) -> String {
    if name.trim().is_empty() { "Without a name".into() } else { name.trim().to_owned() }
}

/// What a line calls its ingredient, without all that this holds, where it was made by a tool: nobody reads that while pouring.
pub(crate) fn poured_name(name: &str, decimal: Decimal) -> &str {
    match name.split_once('(') {
        Some((before, inside)) if read_figures(inside, decimal).holds != Holds::default() => before.trim_end(),
        _ => name,
    }
}

/// A name with the first number behind it that makes it free: "house syrup 2".
pub(crate) fn free(name: &str, is_free: &dyn Fn(&str) -> bool) -> String {
    let mut numbered = (2..).map(|number| format!("{name} {number}"));
    numbered.find(|name| is_free(name)).unwrap_or_default()
}

/// What a form of a spec is called: "Orchard lantern, stirred".
pub(crate) fn of_form(card: &Card, at: usize) -> String {
    let name = named(&card.name);
    match card.ways.get(at).map_or("", |way| way.name.trim()) {
        "" => name,
        way => format!("{name}, {way}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_of_a_tool_are_not_read_while_pouring() {
        for (name, poured) in [
            ("pear cordial (sugar 180.09 g/l, citric 11.04 g/l, salts 23.66 mmol/l)", "pear cordial"),
            ("quince liqueur (22 % vol, sugar 250 g/l)", "quince liqueur (22 % vol, sugar 250 g/l)"),
            ("gin (chilled)", "gin (chilled)"),
            ("gin", "gin"),
        ] {
            assert_eq!(poured_name(name, Decimal::Point), poured);
        }
    }
}
