//! The ice that one drink of a form takes, by its method and its ice, as Ice asks for it.

use crate::book::Way;

/// Of all ice, percent that melts before it is used. Common practice, no source.
pub(crate) const MELTS: &str = "20";

/// What it is stirred or shaken with and what goes in its glass, g; none where the form does not say. Common practice,
/// no source.
pub(crate) fn grams(way: &Way) -> [Option<u32>; 2] {
    let made_with = match way.method.as_str() {
        "stirred" => Some(180),
        "shaken" | "thrown" => Some(200),
        "built" => Some(0),
        _ => None,
    };
    let ice = way.ice.to_ascii_lowercase();
    let glass = match ice.trim() {
        "none" | "no ice" => Some(0),
        _ if ice.contains("crush") => Some(200),
        _ if ice.contains("clear") || ice.contains("block") => Some(90),
        _ if ice.contains("cube") => Some(150),
        _ => None,
    };
    [made_with, glass]
}

/// The same by the names of the fields; what the form does not say is left out.
pub(crate) fn of_form(way: &Way) -> Vec<(String, String)> {
    let said = ["made_with", "glass"].into_iter().zip(grams(way));
    said.filter_map(|(name, grams)| Some((name.to_owned(), format!("{} g", grams?)))).collect()
}
