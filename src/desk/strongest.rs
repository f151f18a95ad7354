//! How strong each spec is: worked out when the list is asked for in that order, and again where a spec has changed.

use std::sync::Arc;

use super::Desk;
use crate::book::{Card, Entry, House, Taken, order};
use crate::screen::Choice;
use crate::screen::route::Route;
use crate::tool::specs::all::{Sort, strength};

/// What is known of it in this tab.
#[derive(Default)]
pub(super) struct Strengths {
    /// The house and its own ingredients, by which they were read.
    by: Option<(House, Vec<(String, Taken)>)>,
    /// Each spec, percent by volume.
    of: Vec<(Arc<Entry<Card>>, f64)>,
}

impl Desk {
    /// Puts the specs in the order of their strength, where they are asked for so.
    pub(super) fn put_strongest_first(&mut self) {
        if self.route != Route::Specs || Sort::read(&self.text(Route::Specs, "sort")) != Sort::Strongest {
            return;
        }
        let mut known = std::mem::take(&mut self.strengths);
        if !known.by.as_ref().is_some_and(|(house, own)| *house == self.bench.house && *own == self.bench.own) {
            known = Strengths { by: Some((self.bench.house.clone(), self.bench.own.clone())), of: Vec::new() };
        }
        // Most stand where they stood: one more, one less or one changed shifts those behind it by one.
        let mut next = 0;
        let mut of = Vec::with_capacity(self.bench.book.cards.len());
        for entry in &self.bench.book.cards {
            let is_same = |at: &usize| {
                let there = known.of.get(*at).map(|(there, _)| there);
                there.is_some_and(|there| Arc::ptr_eq(there, entry) || there.value == entry.value)
            };
            let strength = match [next, next + 1].into_iter().find(is_same) {
                Some(at) => {
                    next = at + 1;
                    known.of[at].1
                }
                None => strength(&entry.value, &self.bench),
            };
            of.push((Arc::clone(entry), strength));
        }
        let placed = order(of.len(), &|a, b| of[a].1 < of[b].1);
        self.bench.strongest = placed.unwrap_or_else(|| (0..of.len()).collect());
        self.strengths = Strengths { of, ..known };
    }
}
