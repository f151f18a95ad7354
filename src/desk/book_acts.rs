//! What is done to the book: specs, ingredients and runs begun, copied, chosen among; the demo; imports taken.

use std::rc::Rc;

use super::as_form::left_as_it_is;
use super::{Desk, Effect, World};
use crate::book::{Import, Run};
use crate::screen::route::Route;
use crate::screen::{Act, Button, Face};
use crate::store::deeds::{self, Deed, Merge};
use crate::store::{SaveProblem, journal};
use crate::tool::specs::card;

impl Desk {
    pub(super) fn do_to_book(&mut self, act: &Act, world: &World<'_>) {
        self.sight.activate(None);
        if matches!(act, Act::Demo | Act::RemoveDemo | Act::TakeNew | Act::TakeAll | Act::TakeBoth) {
            self.with_cards(world);
        }
        if *act == Act::RemoveDemo {
            return self.remove_demo(world);
        }
        let Some(worked) = self.worked(act, world) else { return };
        let Some(done) = self.perform(worked, world) else { return };
        match (act, done.open) {
            (Act::NewSpec, Some(id)) => {
                self.show_face(id.clone(), Face::Change);
                self.effects.push(Effect::Go(Route::Card.href_with("id", &id)));
            }
            (Act::KeepIngredient(own), Some(id)) => {
                let (row, open) = (self.route.row(), self.text(self.route, "id"));
                let back = if open.is_empty() { self.route.href() } else { self.route.href_with("id", &open) };
                let back = Button::new(format!("Back to {}", row.label), Act::Go(back));
                self.offer(&format!("Kept: {}.", own.name.trim()), vec![back]);
                self.sight.is_passing = false;
                self.effects.push(Effect::Go(Route::Ingredients.href_with("id", &id)));
            }
            (Act::AsForm(way), Some(id)) => self.show_form(&id, way),
            (Act::WorkOut | Act::LeaveForm, _) => {}
            (Act::TakeNew | Act::TakeAll | Act::TakeBoth, _) => {
                let import = self.bench.at_hand.import.clone();
                self.has_taken(world);
                self.open_taken(import);
            }
            (Act::AddWay, _) => {
                if let Some((entry, _)) = self.open_spec() {
                    let last = entry.value.ways.len().saturating_sub(1);
                    self.type_into(self.route, "at", last.to_string(), world);
                }
            }
            (Act::Taste, _) => {
                for name in [card::WORDS, card::SCORE, card::WHOM, card::OPEN] {
                    self.type_into(self.route, name, String::new(), world);
                }
            }
            (Act::DropTasting(_), _) => {
                for name in [card::OPEN, card::AGAINST] {
                    self.type_into(self.route, name, String::new(), world);
                }
            }
            (act, Some(id)) => {
                if *act == Act::Duplicate {
                    self.show_face(id.clone(), Face::Change);
                }
                self.show_record(id, world);
                // Another record on the same screen: from its top, with its name.
                if matches!(act, Act::NewIngredient | Act::Duplicate) {
                    self.begin();
                }
            }
            (_, None) => {}
        }
    }

    /// One spec that has been taken, and nothing else, is opened.
    fn open_taken(&mut self, import: Option<Result<Rc<Import>, String>>) {
        let (Some(Ok(import)), None) = (import, &self.bench.at_hand.import) else { return };
        let [(_, card)] = import.cards.as_slice() else { return };
        if !import.own.is_empty() || !import.runs.is_empty() {
            return;
        }
        if let Some(entry) = self.bench.book.cards.iter().find(|entry| entry.value == *card) {
            self.effects.push(Effect::Go(Route::Card.href_with("id", &entry.id)));
        }
    }

    /// Takes the demo away, and says what stays of it.
    fn remove_demo(&mut self, world: &World<'_>) {
        let (deed, kept) = deeds::remove_demo(&self.bench.book);
        let takes_some = !deed.puts.is_empty();
        if takes_some && self.perform(Ok(deed), world).is_none() {
            return;
        }
        if !kept.is_empty() {
            let words = format!("You have changed {}: that is yours, and stays.", kept.join(", "));
            // Undo of what was just done, and of nothing said before.
            let undo = if takes_some { self.sight.offered.1.clone() } else { Vec::new() };
            self.offer(&words, undo);
        }
    }

    /// Deletes the record that is open where there is no room to write down what stood there.
    pub(super) fn delete_for_good(&mut self, world: &World<'_>) {
        let Some(Deed { words, puts, .. }) = self.deletion() else { return };
        let done = journal::without_undo(world.keeper, &puts);
        self.read_all(self.bench.book.has_cards, world);
        match done {
            Ok(()) => {
                self.unsaved.retain(|unsaved| puts.iter().all(|put| put.key != *unsaved));
                self.say(&format!("Done: {words}, without Undo."));
            }
            Err(problem) => self.fails(problem),
        }
    }

    /// The deed that an act comes to; none where it has nothing to be done to.
    fn worked(&mut self, act: &Act, world: &World<'_>) -> Option<Result<Deed, SaveProblem>> {
        let now = world.now;
        let importing = |desk: &Desk, merge| match &desk.bench.at_hand.import {
            Some(Ok(import)) => Some(
                deeds::import(&desk.bench.book, import, merge, now, world.fresh)
                    .map(|deed| desk.with_aside(deed, import, world)),
            ),
            _ => None,
        };
        match act {
            Act::NewSpec => {
                // From Scale, its spec comes along.
                let lines = self.shown().field("spec").map(|field| field.text.clone());
                return Some(deeds::new_card(&lines.unwrap_or_default(), &(world.fresh)(), now));
            }
            Act::NewIngredient => return Some(deeds::new_own(&(world.fresh)(), now)),
            Act::KeepIngredient(own) => {
                return Some(deeds::keep_own(&self.bench.book, own, &(world.fresh)(), now));
            }
            Act::AsForm(way) => return Some(self.as_form(way, world)),
            Act::NewRun => return Some(deeds::new_run(&Run { made: now, ..Run::default() }, &(world.fresh)(), now)),
            Act::Demo => return Some(deeds::demo(&self.bench.book, now)),
            Act::TakeNew => return importing(self, Merge::NewOnly),
            Act::TakeAll => return importing(self, Merge::Replace),
            Act::TakeBoth => return importing(self, Merge::Beside),
            _ => {}
        }
        let (entry, at) = self.open_spec()?;
        if let Some((value, words)) = card::tasted(&entry.value, at, act, self.texts(self.route), now) {
            return Some(deeds::change(&entry, &value, words, now));
        }
        Some(match act {
            Act::WorkOut => deeds::change(&entry, &self.worked_out_anew(&entry, at)?, "a form worked out anew", now),
            Act::LeaveForm => {
                deeds::change(&entry, &left_as_it_is(&entry.value, at, &self.bench)?, "a form as it is", now)
            }
            Act::Duplicate => deeds::duplicate(&entry, &(world.fresh)(), now),
            Act::AddWay => deeds::change(&entry, &deeds::with_way(&entry.value, at), "a new form", now),
            Act::RemoveWay => deeds::change(&entry, &deeds::without_way(&entry.value, at), "a form", now),
            Act::KeepThis => deeds::keep_this(&self.bench.book, &entry, now),
            Act::KeepAll => deeds::keep_both(&self.bench.book, &entry, now, world.fresh),
            _ => return None,
        })
    }
}
