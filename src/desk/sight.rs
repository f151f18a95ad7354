//! What is in sight besides the screen.

use crate::screen::Button;
use crate::screen::pad::Keys;
use crate::screen::route::{Place, Route};

/// As many names as are said, of so many things: "Measure, Scale, Fruit and 2 more".
pub(super) fn few(names: &[&str], all: usize) -> String {
    let names = &names[..names.len().min(3)];
    match (names, all - names.len()) {
        (_, 0) => names.join(", "),
        ([], all) => format!("{all} of them"),
        (_, more) => format!("{} and {more} more", names.join(", ")),
    }
}

/// A number being typed.
#[derive(Clone, Debug)]
pub(super) struct Typing {
    /// Its field.
    pub(super) field: &'static str,
    /// The text as it was typed.
    pub(super) typed: String,
    /// The text as it is kept, with its unit.
    pub(super) made: String,
    /// What stood there last that says its unit.
    pub(super) stood: String,
}

/// What is in sight. Nothing of it is kept.
#[derive(Clone, Debug, Default)]
pub(super) struct Sight {
    /// The field the pad types into, and its keys.
    pub(super) active: Option<(&'static str, Keys)>,
    /// What is being typed into a number's field.
    pub(super) typing: Option<Typing>,
    /// Whether the pad shows its other units.
    pub(super) is_turned: bool,
    /// Whether the pad was asked for where it waits behind its word.
    pub(super) wants_pad: bool,
    /// The place whose sheet of tools is open.
    pub(super) sheet: Option<Place>,
    /// The screens looked at last, one a place.
    pub(super) last: Vec<Route>,
    /// Whether nothing was ever typed on this device.
    pub(super) is_first: bool,
    /// Something to say above the page; empty when there is nothing.
    pub(super) notice: String,
    /// What can be done about what is said, beside putting it away; for the words it was said in.
    pub(super) offered: (String, Vec<Button>),
    /// What was said of a deed that could not be done: it goes with the next that is.
    pub(super) failure: String,
    /// Whether what is said above the page goes by itself.
    pub(super) is_passing: bool,
    /// What the copy button says for a moment after it was tapped; else empty.
    pub(super) copied: String,
    /// Whether a new version waits.
    pub(super) update_waits: bool,
    /// Whether the browser can be asked to install the app.
    pub(super) can_install: bool,
    /// Whether it is installed.
    pub(super) is_installed: bool,
}

impl Sight {
    /// Makes a field the active one, or none.
    pub(super) fn activate(&mut self, field: Option<(&'static str, Keys)>) {
        if self.active != field {
            self.active = field;
            self.is_turned = false;
            self.typing = None;
        }
    }

    /// Puts away what was offered: something else was done since.
    pub(super) fn overtake(&mut self) {
        if self.notice == std::mem::take(&mut self.offered).0 {
            self.notice.clear();
        }
    }

    /// Puts away what was said of a deed that could not be done.
    pub(super) fn forget_failure(&mut self) {
        if self.notice == std::mem::take(&mut self.failure) {
            self.notice.clear();
        }
    }

    /// Puts words away that were said for a while, unless others stand there now.
    pub(super) fn is_over(&mut self, words: &str) {
        if self.notice == words {
            self.notice.clear();
        }
    }
}
