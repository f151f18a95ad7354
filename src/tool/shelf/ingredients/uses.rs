//! What an ingredient goes into: the specs and preps that change with it.

use crate::book::ends_with_words;
use crate::reading::named;
use crate::reading::of_form;
use crate::screen::route::Route;
use crate::screen::{Bench, Block, Carry, plural};

/// Most that are listed.
const MOST: usize = 20;

/// Whether a line of a spec names an ingredient.
fn names(lines: &str, name: &str) -> bool {
    let bare = |line: &str| ends_with_words(line.split('(').next().unwrap_or_default().trim_end(), name);
    lines.lines().any(bare)
}

/// Links to all that names it, and how many specs and preps those are.
fn found(name: &str, bench: &Bench) -> (Vec<Carry>, [usize; 2]) {
    let (mut links, mut counts) = (Vec::new(), [0, 0]);
    if name.is_empty() {
        return (links, counts);
    }
    for entry in &bench.book.cards {
        for (at, _) in entry.value.ways.iter().enumerate().filter(|(_, way)| names(&way.lines, name)) {
            let href = format!("{}&at={at}", Route::Card.href_with("id", &entry.id));
            links.push(Carry { label: of_form(&entry.value, at), href });
            counts[0] += 1;
        }
    }
    for entry in bench.book.own.iter().filter(|entry| names(&entry.value.parts, name)) {
        let href = Route::Ingredients.href_with("id", &entry.id);
        links.push(Carry { label: named(&entry.value.name), href });
        counts[1] += 1;
    }
    (links, counts)
}

/// What it goes into, where it goes into anything.
pub(super) fn goes_into(name: &str, bench: &Bench) -> Vec<Block> {
    let (mut links, [specs, preps]) = found(name, bench);
    if links.is_empty() {
        return Vec::new();
    }
    let rest = (specs + preps).saturating_sub(MOST);
    links.truncate(MOST);
    let mut blocks = vec![Block::Heading("Goes into"), Block::Carry(links)];
    if rest > 0 {
        blocks.push(Block::Remark(format!("And {rest} more.")));
    }
    blocks
}

/// "3 forms of specs and 1 prep"; empty for none.
fn counted(name: &str, bench: &Bench) -> String {
    let (_, [specs, preps]) = found(name, bench);
    let mut said = Vec::new();
    if specs > 0 {
        said.push(format!("{specs} {}", plural(specs, "form of a spec", "forms of specs")));
    }
    if preps > 0 {
        said.push(format!("{preps} {}", plural(preps, "prep", "preps")));
    }
    said.join(" and ")
}

/// "Changes 3 forms of specs and 1 prep".
pub(super) fn changes(name: &str, bench: &Bench) -> String {
    match counted(name.trim(), bench).as_str() {
        "" => "Your own figures, in every spec".into(),
        said => format!("Changes {said}"),
    }
}

/// What is without an ingredient once it is deleted; empty where it went into nothing.
#[must_use]
pub fn went_into(name: &str, bench: &Bench) -> String {
    match counted(name.trim(), bench).as_str() {
        "" => String::new(),
        said => {
            format!("It went into {said}: what is in them, their cost and their allergens are told without it now.")
        }
    }
}
