//! The ice that one drink of a form takes, by its method and its ice, as Ice asks for it.

use crate::book::Way;

/// What it is stirred or shaken with and what goes in its glass, by the names of the fields; what the form does not say
/// is left out. Common practice, no source.
pub(crate) fn of_form(way: &Way) -> Vec<(String, String)> {
    let made_with = match way.method.as_str() {
        "stirred" => "180 g",
        "shaken" | "thrown" => "200 g",
        "built" => "0 g",
        _ => "",
    };
    let ice = way.ice.to_ascii_lowercase();
    let glass = match ice.trim() {
        "" => "",
        "none" | "no ice" => "0 g",
        _ if ice.contains("crush") => "200 g",
        _ if ice.contains("clear") || ice.contains("block") => "90 g",
        _ if ice.contains("cube") => "150 g",
        _ => "",
    };
    let said = [("made_with", made_with), ("glass", glass)].into_iter().filter(|(_, text)| !text.is_empty());
    said.map(|(name, text)| (name.to_owned(), text.to_owned())).collect()
}
