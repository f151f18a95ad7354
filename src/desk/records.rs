//! Typing into records: saved at the keystroke, over the write it was made from.

use std::sync::Arc;

use super::{Desk, World};
use crate::book::{Book, Card, Entry, Own, Run, Written};
use crate::reading::from_spec::LINES;
use crate::screen::route::{Record, Route};
use crate::store::ledger::{self, INGREDIENTS, RUNS, SPECS, Saved};
use crate::store::{SaveProblem, deeds};
use crate::tool::batch::run;
use crate::tool::shelf::ingredients;
use crate::tool::specs::card;

const BOTH_KEPT: &str = "This was changed in another tab too. Both are kept: choose one on its page.";
const TWO_IN_THE_LIST: &str =
    "This was changed in another tab too. Both are kept in the list: delete the one you don't want.";

/// A record that is open.
pub(super) enum Open {
    /// A spec, and which way of making it.
    Spec(Arc<Entry<Card>>, usize),
    /// An ingredient.
    Ingredient(Arc<Entry<Own>>),
    /// A run.
    Run(Arc<Entry<Run>>),
}

impl Open {
    /// The key it is kept under.
    pub(super) fn key(&self) -> String {
        match self {
            Open::Spec(entry, _) => format!("{SPECS}{}", entry.id),
            Open::Ingredient(entry) => format!("{INGREDIENTS}{}", entry.id),
            Open::Run(entry) => format!("{RUNS}{}", entry.id),
        }
    }
}

impl Desk {
    /// The record that is open on the screen shown.
    pub(super) fn open_record(&self) -> Option<Open> {
        let (book, id) = (&self.bench.book, self.text(self.route, "id"));
        match self.route.row().record? {
            Record::Spec => {
                let entry = book.card(&id)?;
                Some(Open::Spec(Arc::clone(entry), card::way_at(&self.text(self.route, "at"), &entry.value)))
            }
            Record::Ingredient => book.own(&id).cloned().map(Open::Ingredient),
            Record::Run => book.run(&id).cloned().map(Open::Run),
        }
    }

    /// The spec that is open.
    pub(super) fn open_spec(&self) -> Option<(Arc<Entry<Card>>, usize)> {
        match self.open_record()? {
            Open::Spec(entry, at) => Some((entry, at)),
            _ => None,
        }
    }

    /// Keeps a text of the screen shown: in the record that is open, or among the texts of its form.
    pub(super) fn type_text(&mut self, name: &str, text: &str, world: &World<'_>) {
        let opened = match self.open_record() {
            Some(Open::Spec(entry, at)) if card::FIELDS.contains(&name) => {
                self.keep_fields();
                if name == LINES {
                    // Where the amount of the line that is open ends is read anew.
                    let open = self.text(self.route, card::LINE);
                    let which = open.split('/').next().unwrap_or_default();
                    self.type_into(self.route, card::LINE, which.to_owned(), world);
                }
                self.edit_card(&entry, at, name, text, world)
            }
            Some(Open::Spec(entry, at)) if card::is_of_line(name) => {
                self.keep_fields();
                let lines = entry.value.ways.get(at).map_or("", |way| way.lines.as_str());
                let (lines, open) = card::typed_in(lines, &self.text(self.route, card::LINE), name, text, &self.bench);
                self.type_into(self.route, card::LINE, open, world);
                self.edit_card(&entry, at, LINES, &lines, world)
            }
            Some(Open::Run(entry)) if run::FIELDS.contains(&name) => self.edit_run(&entry, name, text, world),
            Some(Open::Ingredient(entry)) if ingredients::FIELDS.contains(&name) => {
                let value = ingredients::edited(&entry.value, name, text);
                value.and_then(|value| self.save(INGREDIENTS, Entry { value, ..Entry::clone(&entry) }, world))
            }
            open => {
                self.type_into(self.route, name, text.to_owned(), world);
                if let (Some(Open::Spec(..)), "at") = (open, name) {
                    self.type_into(self.route, card::LINE, String::new(), world);
                }
                None
            }
        };
        // The same form of it stays open under its other id, and so do its fields.
        if let Some(id) = opened {
            let face = self.bench.at_hand.face_of(&self.text(self.route, "id"));
            self.show_face(id.clone(), face);
            self.type_into(self.route, "id", id, world);
        }
    }

    fn edit_card(
        &mut self,
        entry: &Entry<Card>,
        at: usize,
        name: &str,
        text: &str,
        world: &World<'_>,
    ) -> Option<String> {
        let value = card::edited(&entry.value, at, name, text)?;
        // A field emptied or pasted over: Undo brings it back.
        let is_deed = card::loses_much(&entry.value, &value) && entry.newer.is_none() && !self.is_undoing;
        if is_deed {
            let what = self.as_deed(name);
            if self.perform(deeds::change(entry, &value, &what, world.now), world).is_some() {
                return None;
            }
            // It is saved as any other letter, or said not to be.
            self.sight.forget_failure();
        }
        self.save(SPECS, Entry { value, ..entry.clone() }.noted(), world)
    }

    fn edit_run(&mut self, entry: &Entry<Run>, name: &str, text: &str, world: &World<'_>) -> Option<String> {
        let step = self.open_step(entry);
        let value = run::edited(&entry.value, &step, name, text)?;
        // A text emptied or pasted over: Undo brings it back.
        let is_deed =
            card::loses(&run::text_of(&entry.value, &step, name), text) && entry.newer.is_none() && !self.is_undoing;
        if is_deed {
            let what = self.as_deed(name);
            if self.perform(deeds::change_run(entry, &value, &what, world.now), world).is_some() {
                return None;
            }
            // It is saved as any other letter, or said not to be.
            self.sight.forget_failure();
        }
        self.save(RUNS, Entry { value, ..entry.clone() }, world)
    }

    /// Saves once more what could not be saved: there may be room now.
    pub(super) fn save_again(&mut self, world: &World<'_>) {
        if !self.unsaved.is_empty() {
            // What another tab has saved comes along.
            self.is_stale = true;
            self.save_forms_again(world);
            self.save_the_unsaved(world);
        }
    }

    /// Saves once more what could not be saved. True when nothing of the book is unsaved.
    pub(super) fn save_the_unsaved(&mut self, world: &World<'_>) -> bool {
        for key in self.unsaved.clone() {
            let book = &self.bench.book;
            if let Some(entry) = key.strip_prefix(SPECS).and_then(|id| book.card(id)) {
                self.save(SPECS, Entry::clone(entry), world);
            } else if let Some(entry) = key.strip_prefix(INGREDIENTS).and_then(|id| book.own(id)) {
                self.save(INGREDIENTS, Entry::clone(entry), world);
            } else if let Some(entry) = key.strip_prefix(RUNS).and_then(|id| book.run(id)) {
                self.save(RUNS, Entry::clone(entry), world);
            }
        }
        let is_of_book = |key: &String| [SPECS, INGREDIENTS, RUNS].iter().any(|prefix| key.starts_with(prefix));
        !self.unsaved.iter().any(is_of_book)
    }

    /// Saves an edited record and puts it in the book of this tab; the id it is kept under, when another tab had changed it
    /// too. What could not be saved stays on the screen.
    fn save<T: Kind>(&mut self, prefix: &str, mut entry: Entry<T>, world: &World<'_>) -> Option<String> {
        let key = format!("{prefix}{}", entry.id);
        match ledger::save(world.keeper, prefix, &entry, world.now, &(world.fresh)()) {
            Ok(Saved::Kept(stamp)) => {
                entry.stamp = stamp;
                self.note(&key, Ok(()));
            }
            Ok(Saved::Beside(id, _)) => {
                self.note(&key, Ok(()));
                let words = if prefix == SPECS { BOTH_KEPT } else { TWO_IN_THE_LIST };
                words.clone_into(&mut self.sight.notice);
                self.read_all(self.bench.book.has_cards, world);
                return Some(id);
            }
            Err(SaveProblem::ReadOnly) => {
                self.sight.notice = SaveProblem::ReadOnly.to_string();
                return None;
            }
            Err(problem) => self.note(&key, Err(problem)),
        }
        self.change_book(|book| {
            if let Some(place) = T::list(book).iter_mut().find(|there| there.id == entry.id) {
                *place = Arc::new(entry);
            }
            book.sort();
        });
        if prefix == INGREDIENTS {
            self.bench.read_own();
            self.worked_out.clear();
        }
        None
    }

    /// Opens a record on the screen shown.
    pub(super) fn show_record(&mut self, id: String, world: &World<'_>) {
        self.effects.push(super::Effect::Replace(self.route.href_with("id", &id)));
        let mut texts = self.texts(self.route).clone();
        texts.insert("id".into(), id);
        texts.insert("at".into(), "0".into());
        texts.insert(card::LINE.into(), String::new());
        self.replace_form(self.route, texts, world);
    }

    /// The step of a run that is open.
    pub(super) fn open_step(&mut self, entry: &Entry<Run>) -> String {
        let sheet = run::sheet_of(entry, self.timed());
        let open = sheet.open(&self.text(Route::Run, "step"));
        open.map(|step| step.key.clone()).unwrap_or_default()
    }
}

/// A kind of record, and where the book has it.
trait Kind: Written + PartialEq {
    fn list(book: &mut Book) -> &mut Vec<Arc<Entry<Self>>>
    where
        Self: Sized;
}

impl Kind for Card {
    fn list(book: &mut Book) -> &mut Vec<Arc<Entry<Card>>> {
        &mut book.cards
    }
}

impl Kind for Own {
    fn list(book: &mut Book) -> &mut Vec<Arc<Entry<Own>>> {
        &mut book.own
    }
}

impl Kind for Run {
    fn list(book: &mut Book) -> &mut Vec<Arc<Entry<Run>>> {
        &mut book.runs
    }
}
