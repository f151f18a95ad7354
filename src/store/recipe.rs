//! Specs as schema.org Recipes in JSON-LD, out and in: an open standard that other programs read.
//!
//! Each form of a card is a Recipe of the card's name, with the form's name as its `alternateName`: read back, those
//! of one name become one card again. Terms are schema.org's for Recipe, HowTo and their parts.

use serde_json::{Value, json};

use super::backup::ImportProblem;
use super::deeds::MOST_FORMS;
use crate::book::{Card, Import, Way};

/// Deepest and most that is looked through.
const MOST_RECIPES: usize = 2_000;
const LONGEST: usize = 200_000;

/// The text of a card as Recipes.
#[must_use]
pub fn recipes(card: &Card) -> String {
    let graph: Vec<Value> = card.forms.iter().map(|way| recipe(card, way)).collect();
    let whole = json!({ "@context": { "@vocab": "https://schema.org/" }, "@graph": graph });
    serde_json::to_string_pretty(&whole).unwrap_or_default()
}

fn lines(text: &str) -> Vec<&str> {
    text.lines().map(str::trim).filter(|line| !line.is_empty()).collect()
}

fn recipe(card: &Card, way: &Way) -> Value {
    let mut recipe = json!({
        "@type": "Recipe",
        "name": card.name,
        "recipeCategory": "Drink",
        "recipeIngredient": lines(&way.lines),
    });
    let mut put = |term: &str, value: Value| {
        let is_empty = value.as_str().is_some_and(str::is_empty) || value.as_array().is_some_and(Vec::is_empty);
        if let Some(fields) = recipe.as_object_mut().filter(|_| !is_empty) {
            fields.insert(term.to_owned(), value);
        }
    };
    put("alternateName", json!(way.name));
    put("keywords", json!(card.tags));
    put("description", json!(card.notes));
    put("cookingMethod", json!(way.method));
    put(
        "recipeInstructions",
        lines(&way.steps).iter().map(|step| json!({ "@type": "HowToStep", "text": step })).collect(),
    );
    let supply = [("ice", &way.ice), ("garnish", &way.garnish)].into_iter().filter(|(_, text)| !text.is_empty());
    put(
        "supply",
        supply.map(|(name, text)| json!({ "@type": "HowToSupply", "name": name, "description": text })).collect(),
    );
    if !way.glass.is_empty() || !way.holds.is_empty() {
        put("tool", json!([{ "@type": "HowToTool", "name": way.glass, "description": way.holds }]));
    }
    recipe
}

/// Reads Recipes out of JSON-LD: one, a list, or a graph of them. Ids are made from names, so that the same file read
/// twice brings the same.
///
/// # Errors
/// [`ImportProblem`].
pub fn read(text: &str) -> Result<Import, ImportProblem> {
    if text.len() > super::backup::MOST_BYTES {
        return Err(ImportProblem::TooLarge);
    }
    let value: Value = serde_json::from_str(text).map_err(|problem| ImportProblem::NotRead(problem.to_string()))?;
    let mut found = Vec::new();
    gather(&value, &mut found);
    if found.is_empty() {
        return Err(ImportProblem::OtherKind);
    }
    if found.len() > MOST_RECIPES {
        return Err(ImportProblem::TooLarge);
    }
    let mut import = Import::default();
    for recipe in found {
        let way = way(recipe);
        let card = Card {
            name: text_of(&recipe["name"]),
            tags: tags(&recipe["keywords"]),
            notes: text_of(&recipe["description"]),
            made: 0,
            forms: Vec::new(),
        };
        let mut all = way.clone();
        let shared = [&card.name, &card.tags, &card.notes].map(String::len);
        let longest = all.fields().into_iter().map(|(_, text)| text.len()).chain(shared).max();
        if longest.is_some_and(|longest| longest > LONGEST) {
            let name = card.name.chars().take(40).collect::<String>();
            return Err(ImportProblem::Record(format!("“{name}”:"), "length"));
        }
        let id = format!("r-{:08x}", super::envelope::checksum(&card.name));
        // Those of one name are forms of one card, unless they say different things of it or are too many.
        let same = |there: &Card| {
            !card.name.is_empty()
                && there.notes == card.notes
                && there.tags == card.tags
                && there.forms.len() < MOST_FORMS
        };
        let alike = import.cards.iter().filter(|(other, _)| other.starts_with(&id)).count();
        let id = if alike == 0 { id } else { format!("{id}-{alike}") };
        match import.cards.iter_mut().rfind(|(_, there)| there.name == card.name && same(there)) {
            Some((_, card)) => card.forms.push(way),
            None => import.cards.push((id, Card { forms: vec![way], ..card })),
        }
    }
    Ok(import)
}

/// Recipes in a value, its lists and its graph.
fn gather<'a>(value: &'a Value, found: &mut Vec<&'a Value>) {
    match value {
        Value::Array(all) => all.iter().for_each(|value| gather(value, found)),
        Value::Object(_) if is_recipe(&value["@type"]) => found.push(value),
        Value::Object(_) => gather(&value["@graph"], found),
        _ => {}
    }
}

fn is_recipe(kind: &Value) -> bool {
    match kind {
        Value::String(kind) => matches!(kind.rsplit(['/', ':']).next(), Some("Recipe")),
        Value::Array(all) => all.iter().any(is_recipe),
        _ => false,
    }
}

fn way(recipe: &Value) -> Way {
    let mut way = Way {
        name: text_of(&recipe["alternateName"]),
        lines: all_of(&recipe["recipeIngredient"]).join("\n"),
        method: text_of(&recipe["cookingMethod"]),
        steps: all_of(&recipe["recipeInstructions"]).join("\n"),
        ..Way::default()
    };
    for supply in listed(&recipe["supply"]) {
        match text_of(&supply["name"]).as_str() {
            "ice" => way.ice = text_of(&supply["description"]),
            "garnish" => way.garnish = text_of(&supply["description"]),
            _ => {}
        }
    }
    if let Some(tool) = listed(&recipe["tool"]).next() {
        way.glass = text_of(&tool["name"]);
        way.holds = text_of(&tool["description"]);
    }
    way
}

fn listed(value: &Value) -> impl Iterator<Item = &Value> {
    match value {
        Value::Array(all) => all.as_slice(),
        Value::Null => &[],
        one => std::slice::from_ref(one),
    }
    .iter()
}

/// Texts of a value: itself, its `text`, `name` or `itemListElement`, one below the other.
fn all_of(value: &Value) -> Vec<String> {
    match value {
        Value::String(text) => lines(text).into_iter().map(str::to_owned).collect(),
        Value::Array(all) => all.iter().flat_map(all_of).collect(),
        Value::Object(_) if !value["itemListElement"].is_null() => all_of(&value["itemListElement"]),
        Value::Object(_) if !value["text"].is_null() => all_of(&value["text"]),
        Value::Object(_) => all_of(&value["name"]),
        _ => Vec::new(),
    }
}

fn text_of(value: &Value) -> String {
    match value {
        Value::String(text) => text.trim().to_owned(),
        Value::Array(all) => all.first().map_or_else(String::new, text_of),
        _ => String::new(),
    }
}

fn tags(value: &Value) -> String {
    listed(value).filter_map(Value::as_str).map(str::trim).collect::<Vec<_>>().join(", ")
}
