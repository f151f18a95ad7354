//! What to mind about the parts of a run.

use super::part::tool_name;
use super::spec::{SPEC, line_called};
use crate::book::{Part, Run};
use crate::reading::named;
use crate::screen::Bench;
use crate::screen::plan::{Makes, Making};
use crate::text::{Dimension, read_spec};

/// What to mind: a drink that takes a cordial without a line for it; lines that are preps of their own and not on the
/// sheet.
pub(super) fn remarks(run: &Run, makings: &[Making], bench: &Bench) -> Vec<String> {
    let has_cordial = makings.iter().any(|making| making.makes == Makes::Cordial);
    let drinks: Vec<&Part> = run.parts.iter().filter(|part| part.tool == SPEC).collect();
    let mut said: Vec<String> = Vec::new();
    for part in &drinks {
        let text = |name: &str| part.texts.get(name).map_or("", String::as_str);
        let lines = read_spec(text("lines"), &bench.reading(Dimension::Either));
        let name = named(text("name"));
        said.extend(match (line_called(&lines, "cordial"), part.from, has_cordial) {
            (Some(line), None, false) => Some(format!(
                "“{}” is a prep of its own: work it out in Cordial, and put it on this sheet too.",
                line.name
            )),
            (Some(line), None, true) => Some(format!(
                "Tap “Made of” under {name} to make it as often as a cordial allows, as its “{}”.",
                line.name
            )),
            (Some(line), Some(_), _) => {
                Some(format!("In {name} the cordial that came out is taken for “{}”.", line.name))
            }
            (None, Some(_), _) => Some(format!("No line of {name} is called cordial: it is made as often as you say.")),
            (None, None, _) => None,
        });
    }
    for (part, wash) in run.parts.iter().zip(makings).filter(|(part, _)| part.from.is_some()) {
        let is_taken = |key: u32| run.parts.iter().any(|other| other.from == Some(key));
        let others = run.parts.iter().zip(makings).filter(|(other, making)| !is_taken(other.key) && wash.takes(making));
        if wash.makes == Makes::WashedDrink && others.count() > 0 {
            let name = tool_name(&part.tool);
            said.push(format!(
                "How much {name} is made goes by one juice alone, and it waits for the others: tap “Made of” under it to go by another."
            ));
        }
    }
    if drinks.len() > 1 {
        said.push("“The spec, times” counts for the drink whose step is open: tap one of its steps first.".into());
    }
    said
}
