//! The forms of the tools: opened once, saved at every edit, with taps of Undo.

use super::sight::few;
use super::{Desk, World};
use crate::book::Stamp;
use crate::screen::Texts;
use crate::screen::route::Route;
use crate::store::forms::{Loaded, load, load_since, save, stored_under};
use crate::store::{Kept, SaveProblem};
use crate::tool::shelf::settings::ShelfForm;
use crate::tool::{Change, after};

/// Two tabs typed in one field.
const TYPED_IN_BOTH: &str = "Another tab had typed there too. Undo brings its text back.";

/// A form that outlives the screen it is shown on.
#[derive(Clone, Debug)]
pub(super) struct Form {
    pub(super) key: &'static str,
    pub(super) kept: Kept,
    /// Which write it was made from.
    stamp: Stamp,
    /// The texts as they were saved last, while what was changed since could not be saved.
    saved: Option<Texts>,
    /// How often its texts were replaced, less those taken back.
    pub(super) replaced: u32,
    /// Whether each tab has its own.
    is_tabs_own: bool,
    /// False when what is stored could be neither read nor set aside, and so must not be overwritten.
    may_write: bool,
}

/// Forms that could not be used as they were saved, by what becomes of them.
#[derive(Default)]
struct Unusable {
    set_aside: Vec<&'static str>,
    left: Vec<&'static str>,
    newer: Vec<&'static str>,
}

impl Form {
    /// Opens a form; empty texts stand for the defaults where nothing is stored.
    fn open(route: Route, unusable: &mut Unusable, world: &World<'_>) -> Form {
        let (key, row) = (route.form_key(), route.row());
        let (kept, stamp, may_write) = match load(world.keeper, key) {
            Loaded::Form(kept, stamp) => (kept, stamp, true),
            Loaded::Nothing => (Kept::default(), Stamp::default(), true),
            Loaded::Newer(kept) => {
                unusable.newer.push(row.label);
                (kept, Stamp::default(), false)
            }
            Loaded::Unreadable { set_aside, .. } => {
                let list = if set_aside { &mut unusable.set_aside } else { &mut unusable.left };
                list.push(row.label);
                (Kept::default(), Stamp::default(), set_aside)
            }
        };
        let replaced = kept.before.len() as u32;
        Form { key, kept, stamp, saved: None, replaced, is_tabs_own: row.is_tabs_own, may_write }
    }

    /// Takes over what is kept by now; what could not be saved here stays. True where both changed a field.
    fn take(&mut self, theirs: Kept, stamp: Stamp) -> bool {
        if stamp == self.stamp {
            return false;
        }
        self.stamp = stamp;
        // What was replaced elsewhere came after what was typed here.
        self.replaced += u32::from(theirs.before != self.kept.before);
        match &mut self.saved {
            Some(saved) => {
                let their_texts = theirs.now.clone();
                let is_both = self.kept.merge(saved, theirs);
                self.replaced += u32::from(is_both);
                *saved = their_texts;
                is_both
            }
            None => {
                self.kept = theirs;
                false
            }
        }
    }

    /// Takes over what another tab has saved, as [`Form::take`].
    fn catch_up(&mut self, world: &World<'_>) -> bool {
        match load_since(world.keeper, self.key, self.stamp) {
            Some(Loaded::Form(_, stamp)) if self.is_tabs_own => self.stamp = stamp,
            Some(Loaded::Form(theirs, stamp)) => return self.take(theirs, stamp),
            Some(Loaded::Newer(theirs)) => (self.kept, self.may_write) = (theirs, false),
            Some(Loaded::Unreadable { set_aside, .. }) => self.may_write = set_aside,
            Some(Loaded::Nothing) | None => {}
        }
        false
    }
}

impl Desk {
    /// Opens each form once, and names those that could not be used.
    pub(super) fn open_forms(&mut self, world: &World<'_>) {
        let is_new = |route: &Route| matches!(world.keeper.get(&stored_under(route.form_key())), Ok(None));
        self.sight.is_first = Route::ALL.iter().all(is_new);
        let mut unusable = Unusable::default();
        for route in Route::ALL {
            if self.forms.iter().all(|form| form.key != route.form_key()) {
                self.forms.push(Form::open(*route, &mut unusable, world));
            }
        }
        let said = [
            (unusable.set_aside, "could not be used. It is kept aside, untouched, and the usual values stand in."),
            (unusable.left, "could not be used. It is left as it is, and what you type there now is not saved."),
            (unusable.newer, "is of a newer Meniscus. It is shown, and what you type there now is not saved."),
        ];
        let said = said.into_iter().filter(|(labels, _)| !labels.is_empty());
        let said: Vec<String> =
            said.map(|(labels, then)| format!("What was saved for {} {then}", few(&labels, labels.len()))).collect();
        if !said.is_empty() {
            self.sight.notice = said.join(" ");
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
        self.change_kept(route, world, |form| form.kept.now.insert(name.to_owned(), text));
    }

    /// Changes a form; Undo brings back what stood there.
    pub(super) fn change_form(&mut self, route: Route, change: Change<'_>, world: &World<'_>) {
        let next = after(route, self.texts(route), change);
        self.note_deed(route.form_key());
        self.replace_form(route, next, world);
    }

    /// Puts other texts in place of those of a form; Undo brings these back.
    pub(super) fn replace_form(&mut self, route: Route, next: Texts, world: &World<'_>) {
        self.change_kept(route, world, |form| {
            if form.kept.replace(next) {
                form.replaced += 1;
            }
        });
    }

    /// Brings back what was replaced last; what stood there.
    pub(super) fn undo_form(&mut self, route: Route, world: &World<'_>) -> Option<Texts> {
        self.change_kept(route, world, |form| {
            let stood = form.kept.undo()?;
            form.replaced = form.replaced.saturating_sub(1);
            Some(stood)
        })?
    }

    /// Changes a form and saves it.
    fn change_kept<T>(&mut self, route: Route, world: &World<'_>, change: impl FnOnce(&mut Form) -> T) -> Option<T> {
        let form = self.form_mut(route)?;
        if form.saved.is_none() {
            form.saved = Some(form.kept.now.clone());
        }
        let changed = change(form);
        self.save_form(route, world);
        Some(changed)
    }

    /// Takes over what another tab has saved under a key; empty for all of them. Which record is open, each tab decides
    /// for itself.
    pub(super) fn follow_forms(&mut self, key: &str, world: &World<'_>) {
        let is_meant = |form: &&mut Form| !form.is_tabs_own && (key.is_empty() || stored_under(form.key) == key);
        let mut is_both = false;
        for form in self.forms.iter_mut().filter(is_meant) {
            is_both |= form.catch_up(world);
        }
        self.read_shelf();
        if is_both {
            self.say(TYPED_IN_BOTH);
        }
    }

    /// Reads the tools' forms anew after a deed; one that has been taken away is as it starts.
    pub(super) fn reread_forms(&mut self, world: &World<'_>) {
        for form in self.forms.iter_mut().filter(|form| !form.is_tabs_own && form.may_write && form.saved.is_none()) {
            match world.keeper.get(&stored_under(form.key)) {
                Ok(None) => drop(form.take(Kept::default(), Stamp::default())),
                _ => drop(form.catch_up(world)),
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

    /// Saves a form over what another tab may have saved since.
    pub(super) fn save_form(&mut self, route: Route, world: &World<'_>) {
        let Some(form) = self.form_mut(route) else { return };
        let (key, is_both) = (form.key, form.may_write && form.catch_up(world));
        if form.may_write {
            let saved = save(world.keeper, key, &form.kept, form.stamp, world.now);
            if let Ok(stamp) = saved {
                (form.stamp, form.saved) = (stamp, None);
            }
            self.note(&stored_under(key), saved.map(|_| ()));
        }
        if key == Route::Shelf.form_key() {
            self.read_shelf();
        }
        if is_both {
            self.say(TYPED_IN_BOTH);
        }
    }

    /// Notes what was saved, and what was not.
    pub(super) fn note(&mut self, key: &str, saved: Result<(), SaveProblem>) {
        self.unsaved.retain(|unsaved| unsaved != key);
        match saved {
            Err(problem) => {
                self.unsaved.push(key.to_owned());
                self.why_unsaved = Some(problem);
            }
            // Where nothing can be saved, what is kept for now is lost with the page.
            Ok(()) if self.why_unsaved != Some(SaveProblem::Blocked) && self.unsaved.is_empty() => {
                self.why_unsaved = None;
            }
            Ok(()) => {}
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
