//! The library: the book as it is in this tab, kept in step with the store at every edit.

use std::sync::Arc;

use leptos::prelude::*;

use super::browser;
use super::desk::Sight;
use super::slot::note;
use crate::book::{Book, Card, Entry, Own, Run, Written};
use crate::form::{Held, card, own, run};
use crate::store::deeds::{self, Deed};
use crate::store::ledger::{self, INGREDIENTS, RUNS, SPECS, Saved};
use crate::store::{self, Local, SaveProblem, backup, journal, now};

/// The book, in a signal. Cheap to copy.
#[derive(Clone, Copy)]
pub(super) struct Library {
    held: RwSignal<Held>,
    sight: RwSignal<Sight>,
}

const BOTH_KEPT: &str = "This was changed in another tab too. Both are kept: choose one on its page.";
const TWO_INGREDIENTS: &str =
    "This was changed in another tab too. Both are kept in the list: delete the one you don't want.";

const TWO_RUNS: &str = "This was changed in another tab too. Both are kept in the list: delete the one you don't want.";

/// A run sheet as it was before a deed, with what has been typed since.
fn merged(key: &str, was: &str, there: &str) -> Option<String> {
    let (was, there) = (store::open::<Run>(was).ok()?, store::open::<Run>(there).ok()?);
    let is_ours = key.starts_with(RUNS) && was.newer.is_none() && there.newer.is_none();
    let run = run::undone(&was.data, &there.data);
    store::seal(&run, there.stamp.next(now())).ok().filter(|_| is_ours)
}

impl Library {
    /// Opens the ingredients; the specs are read when they are first asked for.
    pub(super) fn open(sight: RwSignal<Sight>) -> Library {
        let library = Library { held: RwSignal::new(Held::default()), sight };
        library.recover();
        library.read_all(false);
        library
    }

    /// Looks at the book, and looks again when it changes.
    pub(super) fn held(self) -> Held {
        self.held.get()
    }

    fn book(self) -> Held {
        self.held.get_untracked()
    }

    /// Reads the store anew. What could not be saved stays as it is in this tab.
    pub(super) fn read_all(self, with_cards: bool) {
        let mut book = match ledger::load(&Local, with_cards) {
            Ok(book) => book,
            Err(problem) => return self.say(problem),
        };
        let mine = self.book();
        let unsaved = self.sight.with_untracked(|sight| sight.unsaved.clone());
        for entry in mine.cards.iter().filter(|entry| unsaved.contains(&format!("{SPECS}{}", entry.id))) {
            book.cards.retain(|there| there.id != entry.id);
            book.cards.push(Arc::clone(entry));
        }
        for entry in mine.own.iter().filter(|entry| unsaved.contains(&format!("{INGREDIENTS}{}", entry.id))) {
            book.own.retain(|there| there.id != entry.id);
            book.own.push(Arc::clone(entry));
        }
        for entry in mine.runs.iter().filter(|entry| unsaved.contains(&format!("{RUNS}{}", entry.id))) {
            book.runs.retain(|there| there.id != entry.id);
            book.runs.push(Arc::clone(entry));
        }
        book.sort();
        book.import.clone_from(&mine.import);
        book.shared.clone_from(&mine.shared);
        book.now = now();
        self.held.set(Held::new(book));
    }

    /// Takes back what a tab that was killed had begun, now or when no other tab can be at it any more.
    fn recover(self) {
        if let Ok(true) = journal::recover(&Local, now()) {
            browser::later(6_000, move || {
                let _ = journal::recover(&Local, now());
                self.read_all(self.book().has_cards);
            });
        }
    }

    /// Saves once more what could not be saved. True when nothing is unsaved.
    pub(super) fn save_the_unsaved(self) -> bool {
        let book = self.book();
        for key in self.sight.with_untracked(|sight| sight.unsaved.clone()) {
            if let Some(entry) = key.strip_prefix(SPECS).and_then(|id| book.card(id)) {
                self.save_card(Entry::clone(entry));
            } else if let Some(entry) = key.strip_prefix(INGREDIENTS).and_then(|id| book.own(id)) {
                self.save_own(Entry::clone(entry));
            } else if let Some(entry) = key.strip_prefix(RUNS).and_then(|id| book.run(id)) {
                self.save(RUNS, Entry::clone(entry), TWO_RUNS, |book| &mut book.runs);
            }
        }
        let is_of_book = |key: &String| key.starts_with(SPECS) || key.starts_with(INGREDIENTS) || key.starts_with(RUNS);
        self.sight.with_untracked(|sight| !sight.unsaved.iter().any(is_of_book))
    }

    /// Reads the specs, unless they have been read.
    pub(super) fn with_cards(self) {
        if !self.book().has_cards {
            self.read_all(true);
        }
    }

    /// Whether the specs have been read.
    pub(super) fn has_cards(self) -> bool {
        self.book().has_cards
    }

    /// Counts the room taken.
    pub(super) fn count_room(self) {
        self.change(|book| {
            book.usage = ledger::usage(&Local);
            book.now = now();
        });
    }

    fn change(self, change: impl FnOnce(&mut Book)) {
        let mut book = Book::clone(&self.book());
        change(&mut book);
        self.held.set(Held::new(book));
    }

    fn say(self, problem: SaveProblem) {
        self.sight.update(|sight| sight.notice = problem.to_string());
    }

    /// Takes over what another tab has changed under a key; what is unsaved here stays.
    pub(super) fn follow(self, key: &str) {
        if self.sight.with_untracked(|sight| sight.unsaved.iter().any(|unsaved| unsaved == key)) {
            return;
        }
        let id = |prefix: &str| key.strip_prefix(prefix).map(str::to_owned);
        if let Some(id) = id(SPECS).filter(|_| self.book().has_cards) {
            let read = ledger::card(&Local, &id);
            self.change(|book| {
                book.cards.retain(|entry| entry.id != id);
                book.cards.extend(read.map(Arc::new));
                book.sort();
            });
        } else if id(INGREDIENTS).or_else(|| id(RUNS)).is_some() {
            self.read_all(self.book().has_cards);
        } else if key == journal::KEY {
            self.change(|book| book.last_act = journal::last(&Local));
        }
    }

    /// Types a text into a card; what could not be saved stays on the screen. The id it is open under, when that has
    /// changed.
    pub(super) fn edit_card(self, id: &str, at: usize, name: &str, text: &str) -> Option<String> {
        self.save_the_unsaved();
        let entry = self.book().card(id).cloned()?;
        let value = card::edited(&entry.value, at, name, text)?;
        // A field emptied or pasted over: Undo brings it back.
        let is_deed = card::loses_much(&entry.value, &value) && entry.newer.is_none();
        if is_deed && self.perform(deeds::change(&entry, &value, "a text", now())).is_ok() {
            return None;
        }
        self.save_card(Entry { value, ..Entry::clone(&entry) }.noted())
    }

    /// Types a text into an ingredient.
    pub(super) fn edit_own(self, id: &str, name: &str, text: &str) -> Option<String> {
        let entry = self.book().own(id).cloned()?;
        let value = own::edited(&entry.value, name, text)?;
        self.save_own(Entry { value, ..Entry::clone(&entry) })
    }

    /// Types a text into a run, at a step.
    pub(super) fn edit_run(self, id: &str, step: &str, name: &str, text: &str) -> Option<String> {
        let entry = self.book().run(id).cloned()?;
        let value = run::edited(&entry.value, step, name, text)?;
        // A text emptied or pasted over: Undo brings it back.
        let is_deed = card::loses(&run::text_of(&entry.value, step, name), text) && entry.newer.is_none();
        if is_deed && self.perform(deeds::change_run(&entry, &value, "a text", now())).is_ok() {
            return None;
        }
        self.save(RUNS, Entry { value, ..Entry::clone(&entry) }, TWO_RUNS, |book| &mut book.runs)
    }

    fn save_card(self, entry: Entry<Card>) -> Option<String> {
        self.save(SPECS, entry, BOTH_KEPT, |book| &mut book.cards)
    }

    fn save_own(self, entry: Entry<Own>) -> Option<String> {
        self.save(INGREDIENTS, entry, TWO_INGREDIENTS, |book| &mut book.own)
    }

    /// Saves an edited record and puts it in the book of this tab; the id it is kept under, when another tab had
    /// changed it too.
    fn save<T: Written + PartialEq>(
        self,
        prefix: &str,
        mut entry: Entry<T>,
        both_kept: &str,
        list: fn(&mut Book) -> &mut Vec<Arc<Entry<T>>>,
    ) -> Option<String> {
        let key = format!("{prefix}{}", entry.id);
        match ledger::save(&Local, prefix, &entry, now(), &browser::fresh_id()) {
            Ok(Saved::Kept(stamp)) => {
                entry.stamp = stamp;
                note(self.sight, &key, Ok(()));
            }
            Ok(Saved::Beside(id, _)) => {
                note(self.sight, &key, Ok(()));
                self.sight.update(|sight| both_kept.clone_into(&mut sight.notice));
                self.read_all(self.book().has_cards);
                return Some(id);
            }
            Err(SaveProblem::ReadOnly) => {
                self.say(SaveProblem::ReadOnly);
                return None;
            }
            Err(problem) => note(self.sight, &key, Err(problem)),
        }
        self.change(|book| {
            if let Some(place) = list(book).iter_mut().find(|there| there.id == entry.id) {
                *place = Arc::new(entry);
            }
            book.sort();
        });
        None
    }

    /// Does a deed, all of it or nothing; the record to open, when it was done.
    ///
    /// # Errors
    /// Nothing: what went wrong has been said. The book is as it was.
    pub(super) fn perform(self, deed: Result<Deed, SaveProblem>) -> Result<Option<String>, ()> {
        if !self.save_the_unsaved() {
            return Err(());
        }
        let done = deed.and_then(|deed| {
            journal::transact(&Local, &deed.words, &deed.puts, now())?;
            Ok(deed.open)
        });
        self.read_all(true);
        match done {
            Ok(open) => {
                // There is something to lose now.
                browser::raise("meniscus-persist");
                Ok(open)
            }
            Err(problem) => {
                self.say(problem);
                Err(())
            }
        }
    }

    /// Takes the last deed back.
    pub(super) fn undo(self) {
        let beside = |key: &str| format!("{key}~{}", browser::fresh_id());
        if !self.save_the_unsaved() {
            return;
        }
        if let Err(problem) = journal::undo(&Local, now(), merged, beside) {
            self.say(problem);
        }
        self.read_all(true);
    }

    /// Looks at a file that was chosen.
    pub(super) fn look_at(self, text: &str) {
        // What boot.js hands over for a link that does not unpack.
        let import = match text {
            "!" => Err("This link was cut short or changed. Nothing was taken.".to_owned()),
            text => backup::read(text).map_err(|problem| problem.to_string()),
        };
        self.change(|book| book.import = Some(import));
    }

    /// Remembers which spec is being shared.
    pub(super) fn share(self, id: &str) {
        self.change(|book| book.shared = Some((id.to_owned(), String::new())));
    }

    /// The spec being shared has been packed.
    pub(super) fn packed(self, text: &str) {
        let link = format!("{}#/specs/backup?packed={text}", browser::page_address());
        self.change(|book| {
            if let Some((_, shared)) = &mut book.shared {
                *shared = link;
            }
        });
    }

    /// Puts the import away.
    pub(super) fn put_away(self) {
        self.change(|book| book.import = None);
    }

    /// A backup has been made now.
    pub(super) fn backed_up(self) {
        self.change(|book| book.last_backup = Some(now()));
    }

    /// The text of a backup.
    pub(super) fn backup(self) -> Option<String> {
        backup::backup(&self.book(), now()).ok()
    }
}
