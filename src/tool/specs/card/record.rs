//! A card as the record it is: its texts, changed one by one.

use super::CardForm;
use crate::book::Card;
use crate::reading::rows::rewritten;
use crate::screen::{Act, Bench, Fields};

/// Which way of making a card a text says: its number, from 0.
#[must_use]
pub fn way_at(at: &str, card: &Card) -> usize {
    at.parse().unwrap_or(0_usize).min(card.ways.len().saturating_sub(1))
}

/// Whether nothing is written on it yet.
#[must_use]
pub fn is_blank(card: &Card) -> bool {
    card.name.trim().is_empty() && card.ways.iter().all(|way| way.lines.trim().is_empty())
}

/// A card with a text in place; none for a field that it has not.
#[must_use]
pub fn edited(card: &Card, at: usize, name: &str, text: &str) -> Option<Card> {
    let mut card = card.clone();
    let shared = card.fields().into_iter().find(|(field, _)| *field == name).map(|(_, field)| text.clone_into(field));
    if shared.is_none() {
        let way = card.ways.get_mut(at)?;
        let (_, field) = way.fields().into_iter().find(|(field, _)| *field == name)?;
        text.clone_into(field);
    }
    Some(card)
}

/// A card after an act on the form that is open; none when it changes nothing.
#[must_use]
pub fn changed(card: &Card, at: usize, act: &Act) -> Option<Card> {
    let put = |card, name: &str, text: &str| edited(&card, at, name, text).unwrap_or(card);
    let after = match act {
        Act::Put(puts) => puts.iter().fold(card.clone(), |card, (name, text)| put(card, name, text)),
        Act::Rewrite(typed, fixed) => put(card.clone(), "lines", &rewritten(&card.ways.get(at)?.lines, typed, fixed)),
        _ => return None,
    };
    (after != *card).then_some(after)
}

/// Letters lost at one stroke that are worth a tap on Undo.
const MUCH: usize = 12;

/// Whether a change loses so much that it is no typing: a field emptied, cut or pasted over.
#[must_use]
pub fn loses_much(before: &Card, after: &Card) -> bool {
    let texts = |card: &Card| {
        let mut card = card.clone();
        let shared = card.fields().map(|(_, text)| std::mem::take(text));
        let ways = card.ways.iter_mut().flat_map(|way| way.fields().map(|(_, text)| std::mem::take(text)));
        shared.into_iter().chain(ways).collect::<Vec<String>>()
    };
    texts(before).iter().zip(&texts(after)).any(|(before, after)| loses(before, after))
}

/// Whether a text loses so much at one stroke.
#[must_use]
pub fn loses(before: &str, after: &str) -> bool {
    let same = before.bytes().zip(after.bytes()).take_while(|(a, b)| a == b).count();
    let rest = before.bytes().rev().zip(after.bytes().rev()).take_while(|(a, b)| a == b).count();
    before.len().saturating_sub(same + rest) > MUCH
}

impl CardForm {
    /// Takes in the texts of the card that is open, in the way of making it that is.
    pub(super) fn open(&mut self, bench: &Bench) {
        let Some(entry) = bench.book.card(&self.id) else { return };
        let mut card = entry.value.clone();
        let at = way_at(&self.at, &card);
        self.at = at.to_string();
        let way = card.ways.get(at).cloned();
        let shared = card.fields().into_iter().map(|(name, text)| (name, std::mem::take(text)));
        let mut texts: Vec<(&str, String)> = shared.collect();
        if let Some(mut way) = way {
            texts.extend(way.fields().into_iter().map(|(name, text)| (name, std::mem::take(text))));
        }
        for (name, field) in self.fields() {
            if let Some((_, text)) = texts.iter_mut().find(|(other, _)| *other == name) {
                *field = std::mem::take(text);
            }
        }
        self.open_line(bench);
    }
}
