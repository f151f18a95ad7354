//! The library: the book as it is in this tab, kept in step with the store at every edit.

use std::sync::Arc;

use leptos::prelude::*;

use super::browser;
use super::desk::Sight;
use crate::book::{Book, Card, Entry, Own};
use crate::form::{Held, card, own};
use crate::store::deeds::Deed;
use crate::store::ledger::{self, INGREDIENTS, SPECS, Saved};
use crate::store::{Local, SaveProblem, backup, journal, now};

/// The book, in a signal. Cheap to copy.
#[derive(Clone, Copy)]
pub(super) struct Library {
    held: RwSignal<Held>,
    sight: RwSignal<Sight>,
}

/// What the notice of a save that failed begins with.
pub(super) const NOT_SAVED: &str = "Not saved";
const BOTH_KEPT: &str = "This was changed in another tab too. Both are kept: choose one on its page.";

impl Library {
    /// Opens the ingredients; the specs are read when they are first asked for.
    pub(super) fn open(sight: RwSignal<Sight>) -> Library {
        let library = Library { held: RwSignal::new(Held::default()), sight };
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

    fn read_all(self, with_cards: bool) {
        match ledger::load(&Local, with_cards) {
            Ok(mut book) => {
                book.import = self.book().import.clone();
                book.shared = self.book().shared.clone();
                book.now = now();
                self.held.set(Held::new(book));
            }
            Err(problem) => self.say(problem),
        }
    }

    /// Reads the specs, unless they have been read.
    pub(super) fn with_cards(self) {
        if !self.book().has_cards {
            self.read_all(true);
        }
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

    /// Says that what was not saved is saved now.
    fn saved(self) {
        if self.sight.with_untracked(|sight| sight.notice.starts_with(NOT_SAVED)) {
            self.sight.update(|sight| sight.notice.clear());
        }
    }

    /// Takes over what another tab has changed under a key.
    pub(super) fn follow(self, key: &str) {
        let id = |prefix: &str| key.strip_prefix(prefix).map(str::to_owned);
        if let Some(id) = id(SPECS).filter(|_| self.book().has_cards) {
            let read = ledger::card(&Local, &id);
            self.change(|book| {
                book.cards.retain(|entry| entry.id != id);
                book.cards.extend(read.map(Arc::new));
                book.sort();
            });
        } else if id(INGREDIENTS).is_some() {
            self.read_all(self.book().has_cards);
        } else if key == journal::KEY {
            self.change(|book| book.last_act = journal::last(&Local));
        }
    }

    /// Types a text into a card; what could not be saved stays on the screen.
    pub(super) fn edit_card(self, id: &str, at: usize, name: &str, text: &str) -> Option<String> {
        let entry = self.book().card(id).cloned()?;
        let value = card::edited(&entry.value, at, name, text)?;
        let entry = Entry { value, ..Entry::clone(&entry) }.noted();
        let saved = ledger::save(&Local, SPECS, &entry, now(), &browser::fresh_id());
        self.put_card(entry, saved)
    }

    /// Puts an edited card in the book; the id it is open under, when that has changed.
    fn put_card(self, mut entry: Entry<Card>, saved: Result<Saved, SaveProblem>) -> Option<String> {
        let first = entry.id.clone();
        match saved {
            Ok(Saved::Kept(stamp)) => {
                entry.stamp = stamp;
                self.saved();
            }
            Ok(Saved::Beside(id, _)) => {
                self.sight.update(|sight| BOTH_KEPT.clone_into(&mut sight.notice));
                self.read_all(true);
                return Some(id);
            }
            Err(problem) => self.say(problem),
        }
        self.change(|book| {
            if let Some(place) = book.cards.iter_mut().find(|there| there.id == first) {
                *place = Arc::new(entry);
            }
            book.sort();
        });
        None
    }

    /// Types a text into an ingredient.
    pub(super) fn edit_own(self, id: &str, name: &str, text: &str) -> Option<String> {
        let entry = self.book().own(id).cloned()?;
        let value = own::edited(&entry.value, name, text)?;
        let mut entry: Entry<Own> = Entry { value, ..Entry::clone(&entry) };
        match ledger::save(&Local, INGREDIENTS, &entry, now(), &browser::fresh_id()) {
            Ok(Saved::Kept(stamp)) => {
                entry.stamp = stamp;
                self.saved();
            }
            Ok(Saved::Beside(id, _)) => {
                self.sight.update(|sight| BOTH_KEPT.clone_into(&mut sight.notice));
                self.read_all(self.book().has_cards);
                return Some(id);
            }
            Err(problem) => self.say(problem),
        }
        self.change(|book| {
            if let Some(place) = book.own.iter_mut().find(|there| there.id == entry.id) {
                *place = Arc::new(entry);
            }
            book.sort();
        });
        None
    }

    /// Does a deed, all of it or nothing; the record to open, when it was done.
    pub(super) fn perform(self, deed: Result<Deed, SaveProblem>) -> Option<String> {
        let done = deed.and_then(|deed| {
            journal::transact(&Local, &deed.words, &deed.texts, now())?;
            Ok(deed.open)
        });
        self.read_all(true);
        match done {
            Ok(open) => {
                self.saved();
                // There is something to lose now.
                browser::raise("meniscus-persist");
                open
            }
            Err(problem) => {
                self.say(problem);
                None
            }
        }
    }

    /// Takes the last deed back.
    pub(super) fn undo(self) {
        let beside = |key: &str| format!("{key}~{}", browser::fresh_id());
        match journal::undo(&Local, now(), beside) {
            Ok(_) => self.saved(),
            Err(problem) => self.say(problem),
        }
        self.read_all(true);
    }

    /// Looks at a file that was chosen.
    pub(super) fn look_at(self, text: &str) {
        let import = backup::read(text).map_err(|problem| problem.to_string());
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
