//! A slot: the texts of one form, kept in local storage, with taps of undo.

use leptos::prelude::*;

use super::desk::Sight;
use crate::screen::Texts;
use crate::store::{self, Kept, Loaded, SaveProblem};

/// A form that outlives the screen it is shown on. Every edit is saved at once.
#[derive(Clone, Copy)]
pub(super) struct Slot {
    key: &'static str,
    kept: RwSignal<Kept>,
    /// Says when something could not be saved or read.
    sight: RwSignal<Sight>,
    /// False when what is stored could be neither read nor set aside, and so must not be overwritten.
    may_write: bool,
}

impl Slot {
    /// Opens the slot; empty texts stand for the defaults where nothing is stored.
    pub(super) fn open(key: &'static str, sight: RwSignal<Sight>) -> Slot {
        let (kept, may_write) = match store::load(&stored_under(key)) {
            Loaded::Value(kept) => (kept, true),
            Loaded::Nothing => (Kept::default(), true),
            Loaded::Unreadable { why, set_aside } => {
                let then = if set_aside {
                    "It is kept aside, untouched, and the usual values stand in."
                } else {
                    "It is left as it is, and what you type here now is not saved."
                };
                let words = format!("What was saved for “{key}” could not be used: {why}. {then}");
                sight.update(|sight| sight.notice = words);
                (Kept::default(), set_aside)
            }
        };
        Slot { key, kept: RwSignal::new(kept), sight, may_write }
    }

    /// Its key.
    pub(super) const fn key(self) -> &'static str {
        self.key
    }

    /// Looks at the texts, and looks again when they change.
    pub(super) fn with<T>(self, look: impl FnOnce(&Texts) -> T) -> T {
        self.kept.with(|kept| look(&kept.now))
    }

    /// Types a text into a field.
    pub(super) fn set(self, name: &str, text: String) {
        self.kept.update(|kept| {
            kept.now.insert(name.to_owned(), text);
        });
        self.save();
    }

    /// Puts other texts in place of these; Undo brings these back.
    pub(super) fn replace(self, next: impl FnOnce(&Texts) -> Texts) {
        self.kept.update(|kept| kept.replace(next(&kept.now)));
        self.save();
    }

    /// Brings back what was replaced last.
    pub(super) fn undo(self) {
        self.kept.update(Kept::undo);
        self.save();
    }

    /// Takes over what another tab has saved. Which record is open, each tab decides for itself.
    pub(super) fn follow(self) {
        if matches!(self.key, "card" | "ingredients" | "specs" | "run") {
            return;
        }
        if let Loaded::Value(kept) = store::load::<Kept>(&stored_under(self.key))
            && self.kept.with_untracked(|mine| *mine != kept)
        {
            self.kept.set(kept);
        }
    }

    /// Whether there is something to undo.
    pub(super) fn can_undo(self) -> bool {
        self.kept.with(|kept| !kept.before.is_empty())
    }

    /// Saves once more, if it could not be saved before.
    pub(super) fn save_again(self) {
        let key = stored_under(self.key);
        if self.sight.with_untracked(|sight| sight.unsaved.contains(&key)) {
            self.save();
        }
    }

    fn save(self) {
        if !self.may_write {
            return;
        }
        let key = stored_under(self.key);
        let saved = self.kept.with_untracked(|kept| store::save(&key, kept));
        note(self.sight, &key, saved);
    }
}

/// Says what was not saved, until it is: the notice goes when nothing is unsaved any more.
pub(super) fn note(sight: RwSignal<Sight>, key: &str, saved: Result<(), SaveProblem>) {
    let was_unsaved = sight.with_untracked(|sight| sight.unsaved.iter().any(|unsaved| unsaved == key));
    match saved {
        Ok(()) if was_unsaved => sight.update(|sight| {
            sight.unsaved.retain(|unsaved| unsaved != key);
            if sight.unsaved.is_empty() {
                sight.notice.clear();
            }
        }),
        Ok(()) => {}
        Err(problem) => sight.update(|sight| {
            if !was_unsaved {
                sight.unsaved.push(key.to_owned());
            }
            sight.notice = problem.to_string();
        }),
    }
}

fn stored_under(key: &str) -> String {
    format!("tool/{key}")
}
