//! What is to be drawn: the screen, and what stands round it.

use std::rc::Rc;

use crate::quantity::Unit;
use crate::screen::pad::{FACE, Key};
use crate::screen::{Button, Screen};
use crate::text::Decimal;

/// Everything that is drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct View {
    /// The name of the screen.
    pub title: &'static str,
    /// The tools of the place.
    pub pills: Vec<Link>,
    /// The places.
    pub places: Vec<Link>,
    /// The screen.
    pub screen: Rc<Screen>,
    /// That something is not saved, for as long as it is not.
    pub not_saved: Option<Notice>,
    /// Something to say above it.
    pub notice: Option<Notice>,
    /// What is due next, of the run sheets.
    pub due: Option<Due>,
    /// The pad, while a field is active that it types into.
    pub pad: Option<Pad>,
    /// The field that is active.
    pub active: Option<&'static str>,
    /// The text as it is being typed in a field that holds it with its unit.
    pub as_typed: Option<(&'static str, String)>,
    /// Whether numbers are typed on the pad, and not on the phone's keyboard.
    pub has_pad: bool,
    /// The unit that a bare number is read in.
    pub bare_unit: &'static str,
    /// What Undo would take back; none where there is nothing.
    pub undo: Option<String>,
    /// What the copy button says for a moment after it was tapped; else empty.
    pub copied: String,
    /// Whether a new version waits.
    pub update_waits: bool,
    /// Whether the app is installed.
    pub is_installed: bool,
    /// Whether the browser can be asked to install it.
    pub can_install: bool,
    /// Whether the time changes what the screen says.
    pub shows_time: bool,
    /// The look: "slate", "paper", or empty for the device's.
    pub look: &'static str,
}

/// A link of the frame.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Link {
    /// What it says.
    pub label: &'static str,
    /// Its address.
    pub href: String,
    /// Whether it leads to what is shown.
    pub is_here: bool,
}

/// Something to say above the page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Notice {
    /// What it says.
    pub words: String,
    /// What can be done about it.
    pub buttons: Vec<Button>,
}

/// What is due next.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Due {
    /// The time to go, or the time it is due.
    pub figure: String,
    /// What it is.
    pub words: String,
    /// Whether it is over.
    pub is_over: bool,
    /// Where its step is.
    pub href: String,
}

/// The pad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pad {
    /// The field it types into.
    pub field: &'static str,
    /// Its keys, four rows of five.
    pub keys: [Key; FACE],
    /// The unit that is typed, or that a number without one takes; none while it is asked.
    pub unit: Option<Unit>,
    /// The decimal mark.
    pub decimal: Decimal,
}
