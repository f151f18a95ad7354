//! Specs as schema.org Recipes in JSON-LD, out and in: an open standard that other programs read.
//!
//! Each form of a card is a Recipe of the card's name, with the form's name as its `alternateName`: read back, those
//! of one name become one card again. Terms are schema.org's for Recipe, HowTo and their parts.

use super::fit::loose;
use super::limits::{Checked, short};
use super::problem::ImportProblem;
use super::write::{Layout, written};
use crate::book::{Card, Import, Loose, MOST_WAYS, Way, Written};

/// Most that are taken.
const MOST_RECIPES: usize = 2_000;

/// The text of a card as Recipes.
#[must_use]
pub fn recipes(card: &Card) -> String {
    let graph = card.ways.iter().map(|way| recipe(card, way)).collect();
    let vocabulary = Loose::names([("@vocab", "https://schema.org/".into())]);
    let mut whole = Loose::names([("@context", vocabulary), ("@graph", graph)]);
    written(whole.slot(), Layout::Wide).unwrap_or_default()
}

fn lines(text: &str) -> Vec<&str> {
    text.lines().map(str::trim).filter(|line| !line.is_empty()).collect()
}

fn recipe(card: &Card, way: &Way) -> Loose {
    let always = [
        ("@type", "Recipe".into()),
        ("name", card.name.as_str().into()),
        ("recipeCategory", "Drink".into()),
        ("recipeIngredient", lines(&way.lines).into_iter().map(Loose::from).collect()),
    ];
    let step = |step| Loose::names([("@type", "HowToStep".into()), ("text", Loose::from(step))]);
    let thing = |kind: &str, name: &str, text: &str| {
        Loose::names([("@type", kind.into()), ("name", name.into()), ("description", text.into())])
    };
    let supply = [("ice", &way.ice), ("garnish", &way.garnish)].into_iter().filter(|(_, text)| !text.is_empty());
    let has_glass = !way.glass.is_empty() || !way.holds.is_empty();
    let tool = has_glass.then(|| thing("HowToTool", &way.glass, &way.holds));
    let filled = [
        ("alternateName", way.name.as_str().into()),
        ("keywords", card.tags.as_str().into()),
        ("description", card.notes.as_str().into()),
        ("recipeYield", if is_count(&way.makes) { way.makes.as_str() } else { yield_in(&card.notes) }.into()),
        ("cookingMethod", way.method.as_str().into()),
        ("recipeInstructions", lines(&way.steps).into_iter().map(step).collect()),
        ("supply", supply.map(|(name, text)| thing("HowToSupply", name, text)).collect()),
        ("tool", tool.into_iter().collect()),
    ];
    let filled = filled.into_iter().filter(|(_, value): &(&str, Loose)| !value.is_empty());
    Loose::Names(always.into_iter().chain(filled).map(|(term, value)| (term.to_owned(), value)).collect())
}

/// Reads Recipes out of JSON-LD: one, a list, or a graph of them. Ids are made from names, so that the same file read
/// twice brings the same.
///
/// # Errors
/// [`ImportProblem`] where there are none or too many.
pub fn read(text: &str) -> Result<Import, ImportProblem> {
    read_in(&loose(text)?)
}

/// As [`read`], of a value.
pub(super) fn read_in(value: &Loose) -> Result<Import, ImportProblem> {
    let mut found = Vec::new();
    gather(value, &mut found);
    if found.is_empty() {
        return Err(ImportProblem::OtherKind);
    }
    if found.len() > MOST_RECIPES {
        return Err(ImportProblem::TooLarge);
    }
    let mut import = Import::default();
    for (at, recipe) in found.into_iter().enumerate() {
        let mut way = way(recipe);
        let mut notes = text_of(recipe.get("description"));
        add_yield(&mut way.makes, &mut notes, recipe.get("recipeYield"));
        let mut card = Card {
            name: text_of(recipe.get("name")),
            tags: tags(recipe.get("keywords")),
            notes,
            made: 0,
            ways: vec![way],
        };
        match card.unusable() {
            Some(field) => {
                import.refused.push(format!("Recipe {}, “{}”: its {field} can't be used.", at + 1, short(&card.name)));
            }
            None => take(card, &mut import.cards),
        }
    }
    Ok(import)
}

/// Takes a card, as a form of the one before it that has its name, unless they say different things of it or are too
/// many.
fn take(mut card: Card, cards: &mut Vec<(String, Card)>) {
    let id = format!("r-{:08x}", super::envelope::checksum(&card.name));
    let same = |there: &Card| {
        !card.name.is_empty() && there.notes == card.notes && there.tags == card.tags && there.ways.len() < MOST_WAYS
    };
    let alike = cards.iter().filter(|(other, _)| other.starts_with(&id)).count();
    let id = if alike == 0 { id } else { format!("{id}-{alike}") };
    match cards.iter_mut().rfind(|(_, there)| there.name == card.name && same(there)) {
        Some((_, there)) => there.ways.append(&mut card.ways),
        None => cards.push((id, card)),
    }
}

/// What a recipe says it gives in words is a line of the notes, behind "Yield: "; how many it serves is one, "Serves 4", in
/// notes of an earlier version.
const SERVES: &str = "Serves ";
const YIELD: &str = "Yield: ";

fn is_count(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit())
}

/// What a recipe gives: a number is how many serves its form makes, words go into the notes, unless these say it.
fn add_yield(makes: &mut String, notes: &mut String, value: &Loose) {
    let given = match listed(value).next() {
        Some(Loose::Number(count)) => count.to_string(),
        Some(value @ Loose::Names(_)) => match value.get("value") {
            Loose::Number(count) => count.to_string(),
            value => text_of(value),
        },
        Some(value) => text_of(value),
        None => return,
    };
    // A line of notes is one line.
    let given = lines(&given).join(", ");
    let line = format!("{}{given}", if is_count(&given) { SERVES } else { YIELD });
    if given.is_empty() || lines(notes).contains(&line.as_str()) {
        return;
    }
    if is_count(&given) {
        *makes = given;
        return;
    }
    if !notes.is_empty() {
        notes.push('\n');
    }
    notes.push_str(&line);
}

/// What the notes say a recipe gives, as [`add_yield`] has it; empty where they say nothing.
fn yield_in(notes: &str) -> &str {
    let given = |line: &&str| line.strip_prefix(SERVES).is_some_and(is_count);
    let worded = |line: &&str| line.strip_prefix(YIELD).is_some_and(|words| !is_count(words) && words == words.trim());
    let lines = lines(notes);
    let line = lines.iter().copied().find(|line| given(line) || worded(line)).unwrap_or_default();
    line.strip_prefix(SERVES).or_else(|| line.strip_prefix(YIELD)).unwrap_or_default()
}

/// Recipes in a value, its lists and its graph.
fn gather<'a>(value: &'a Loose, found: &mut Vec<&'a Loose>) {
    match value {
        Loose::List(all) => all.iter().for_each(|value| gather(value, found)),
        Loose::Names(_) if is_recipe(value.get("@type")) => found.push(value),
        Loose::Names(_) => gather(value.get("@graph"), found),
        _ => {}
    }
}

fn is_recipe(kind: &Loose) -> bool {
    match kind {
        Loose::Text(kind) => matches!(kind.rsplit(['/', ':']).next(), Some("Recipe")),
        Loose::List(all) => all.iter().any(is_recipe),
        _ => false,
    }
}

fn way(recipe: &Loose) -> Way {
    let mut way = Way {
        name: text_of(recipe.get("alternateName")),
        lines: all_of(recipe.get("recipeIngredient")).join("\n"),
        method: text_of(recipe.get("cookingMethod")),
        steps: all_of(recipe.get("recipeInstructions")).join("\n"),
        ..Way::default()
    };
    for supply in listed(recipe.get("supply")) {
        match text_of(supply.get("name")).as_str() {
            "ice" => way.ice = text_of(supply.get("description")),
            "garnish" => way.garnish = text_of(supply.get("description")),
            _ => {}
        }
    }
    if let Some(tool) = listed(recipe.get("tool")).next() {
        way.glass = text_of(tool.get("name"));
        way.holds = text_of(tool.get("description"));
    }
    way
}

fn listed(value: &Loose) -> impl Iterator<Item = &Loose> {
    match value {
        Loose::List(all) => all.as_slice(),
        Loose::Nothing => &[],
        one => std::slice::from_ref(one),
    }
    .iter()
}

/// Texts of a value: itself, its `text`, `name` or `itemListElement`, one below the other.
fn all_of(value: &Loose) -> Vec<String> {
    match value {
        Loose::Text(text) => lines(text).into_iter().map(str::to_owned).collect(),
        Loose::List(all) => all.iter().flat_map(all_of).collect(),
        Loose::Names(_) if *value.get("itemListElement") != Loose::Nothing => all_of(value.get("itemListElement")),
        Loose::Names(_) if *value.get("text") != Loose::Nothing => all_of(value.get("text")),
        Loose::Names(_) => all_of(value.get("name")),
        _ => Vec::new(),
    }
}

fn text_of(value: &Loose) -> String {
    match value {
        Loose::Text(text) => text.trim().to_owned(),
        Loose::List(all) => all.first().map_or_else(String::new, text_of),
        _ => String::new(),
    }
}

fn tags<'a>(value: &'a Loose) -> String {
    let text = |value: &'a Loose| match value {
        Loose::Text(text) => Some(text.trim()),
        _ => None,
    };
    listed(value).filter_map(text).collect::<Vec<_>>().join(", ")
}
