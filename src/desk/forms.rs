//! The forms of the tools: opened once, saved at every edit, with taps of Undo.

use super::{Desk, World};
use crate::screen::Texts;
use crate::screen::route::Route;
use crate::store::forms::{Loaded, load, save, stored_under};
use crate::store::{Kept, SaveProblem};
use crate::tool::shelf::settings::ShelfForm;
use crate::tool::{Change, after};

/// A form that outlives the screen it is shown on.
#[derive(Clone, Debug)]
pub(super) struct Form {
    pub(super) key: &'static str,
    pub(super) kept: Kept,
    /// How often its texts were replaced, less those taken back.
    pub(super) replaced: u32,
    /// Whether each tab has its own.
    is_tabs_own: bool,
    /// False when what is stored could be neither read nor set aside, and so must not be overwritten.
    may_write: bool,
}

impl Form {
    /// Opens a form; empty texts stand for the defaults where nothing is stored. What is wrong with it, in words.
    fn open(route: Route, world: &World<'_>) -> (Form, Option<String>) {
        let key = route.form_key();
        let (kept, may_write, problem) = match load(world.keeper, key) {
            Loaded::Form(kept) => (kept, true, None),
            Loaded::Nothing => (Kept::default(), true, None),
            Loaded::Newer(kept, version) => {
                let words = format!(
                    "A newer Meniscus (version {version}) saved “{key}”. It is shown, and what you type there now is not saved."
                );
                (kept, false, Some(words))
            }
            Loaded::Unreadable { why, set_aside } => {
                let then = if set_aside {
                    "It is kept aside, untouched, and the usual values stand in."
                } else {
                    "It is left as it is, and what you type here now is not saved."
                };
                let words = format!("What was saved for “{key}” could not be used: {why}. {then}");
                (Kept::default(), set_aside, Some(words))
            }
        };
        let replaced = kept.before.len() as u32;
        (Form { key, kept, replaced, is_tabs_own: route.row().is_tabs_own, may_write }, problem)
    }
}

impl Form {
    /// Takes over what is kept by now.
    pub(super) fn take(&mut self, kept: Kept) {
        // What was replaced elsewhere came after what was typed here.
        self.replaced += u32::from(kept.before != self.kept.before);
        self.kept = kept;
    }
}

impl Desk {
    /// Opens each form once.
    pub(super) fn open_forms(&mut self, world: &World<'_>) {
        for route in Route::ALL {
            if self.forms.iter().all(|form| form.key != route.form_key()) {
                let (form, problem) = Form::open(*route, world);
                self.forms.push(form);
                if let Some(words) = problem {
                    self.sight.notice = words;
                }
            }
        }
    }

    fn form_mut(&mut self, route: Route) -> Option<&mut Form> {
        self.forms.iter_mut().find(|form| form.key == route.form_key())
    }

    /// The texts of a screen's form.
    pub(super) fn texts(&self, route: Route) -> &Texts {
        static NONE: Texts = Texts::new();
        self.forms.iter().find(|form| form.key == route.form_key()).map_or(&NONE, |form| &form.kept.now)
    }

    /// A text of a screen's form.
    pub(super) fn text(&self, route: Route, name: &str) -> String {
        self.texts(route).get(name).cloned().unwrap_or_default()
    }

    /// Types a text into a form.
    pub(super) fn type_into(&mut self, route: Route, name: &str, text: String, world: &World<'_>) {
        if let Some(form) = self.form_mut(route) {
            form.kept.now.insert(name.to_owned(), text);
            self.save_form(route, world);
        }
    }

    /// Changes a form; Undo brings back what stood there.
    pub(super) fn change_form(&mut self, route: Route, change: Change<'_>, world: &World<'_>) {
        let next = after(route, self.texts(route), change);
        self.note_deed(route.form_key());
        self.replace_form(route, next, world);
    }

    /// Puts other texts in place of those of a form; Undo brings these back.
    pub(super) fn replace_form(&mut self, route: Route, next: Texts, world: &World<'_>) {
        if let Some(form) = self.form_mut(route) {
            if form.kept.replace(next) {
                form.replaced += 1;
            }
            self.save_form(route, world);
        }
    }

    /// Brings back what was replaced last; what stood there.
    pub(super) fn undo_form(&mut self, route: Route, world: &World<'_>) -> Option<Texts> {
        let form = self.form_mut(route)?;
        let stood = form.kept.undo()?;
        form.replaced = form.replaced.saturating_sub(1);
        self.save_form(route, world);
        Some(stood)
    }

    /// Takes over what another tab has saved. Which record is open, each tab decides for itself.
    pub(super) fn follow_forms(&mut self, world: &World<'_>) {
        for form in self.forms.iter_mut().filter(|form| !form.is_tabs_own) {
            match load(world.keeper, form.key) {
                Loaded::Form(kept) => form.take(kept),
                Loaded::Newer(kept, _) => (form.kept, form.may_write) = (kept, false),
                Loaded::Nothing | Loaded::Unreadable { .. } => {}
            }
        }
        self.read_shelf();
    }

    /// Reads the tools' forms anew after a deed; one that has been taken away is as it starts.
    pub(super) fn reread_forms(&mut self, world: &World<'_>) {
        let is_unsaved = |key: &str| self.unsaved.contains(&stored_under(key));
        for form in self.forms.iter_mut().filter(|form| !form.is_tabs_own && form.may_write && !is_unsaved(form.key)) {
            match load(world.keeper, form.key) {
                Loaded::Form(kept) => form.take(kept),
                Loaded::Nothing if world.keeper.get(&stored_under(form.key)) == Ok(None) => form.take(Kept::default()),
                _ => {}
            }
        }
        self.read_shelf();
    }

    /// Saves once more what could not be saved before.
    pub(super) fn save_forms_again(&mut self, world: &World<'_>) {
        for route in Route::ALL {
            if self.unsaved.contains(&stored_under(route.form_key())) {
                self.save_form(*route, world);
            }
        }
    }

    pub(super) fn save_form(&mut self, route: Route, world: &World<'_>) {
        let Some(form) = self.form_mut(route) else { return };
        let key = form.key;
        if form.may_write {
            let saved = save(world.keeper, key, &form.kept, world.now);
            self.note(&stored_under(key), saved);
        }
        if key == Route::Shelf.form_key() {
            self.read_shelf();
        }
    }

    /// Says what was not saved, until it is: the notice goes when nothing is unsaved any more.
    pub(super) fn note(&mut self, key: &str, saved: Result<(), SaveProblem>) {
        let at = self.unsaved.iter().position(|unsaved| unsaved == key);
        match (saved, at) {
            (Ok(()), Some(at)) => {
                self.unsaved.remove(at);
                if self.unsaved.is_empty() {
                    self.sight.notice.clear();
                }
            }
            (Ok(()), None) => {}
            (Err(problem), at) => {
                if at.is_none() {
                    self.unsaved.push(key.to_owned());
                }
                self.sight.notice = problem.to_string();
            }
        }
    }

    /// Sets the bench by what stands on the shelf.
    pub(super) fn read_shelf(&mut self) {
        let shelf = ShelfForm::of(self.texts(Route::Shelf)).bench(self.device.decimal);
        self.bench = crate::screen::Bench {
            book: self.bench.book.clone(),
            at_hand: std::mem::take(&mut self.bench.at_hand),
            clock: self.bench.clock,
            ..shelf
        };
        self.bench.read_own();
        self.worked_out.clear();
    }
}
