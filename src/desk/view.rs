//! What is to be drawn: the screen, and what stands round it.

use std::rc::Rc;

use crate::quantity::Unit;
use crate::screen::pad::Key;
use crate::screen::route::Place;
use crate::screen::{Button, Screen};
use crate::text::Decimal;

/// Everything that is drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct View {
    /// The name of the screen.
    pub title: &'static str,
    /// The places.
    pub places: Vec<PlaceLink>,
    /// The sheet of tools: of the place whose tools stand there.
    pub tools: Vec<ToolLink>,
    /// The question over them.
    pub asks: &'static str,
    /// Where anything is found by a few letters.
    pub find: String,
    /// Whether that sheet is open, where it does not stand open beside the page.
    pub is_open: bool,
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
    /// Whether the pad waits behind its word in the head.
    pub pad_waits: bool,
    /// Whether the pad is for the left hand.
    pub is_left: bool,
    /// The unit that a bare number is read in.
    pub bare_unit: &'static str,
    /// What Undo would take back; none where there is nothing.
    pub undo: Option<String>,
    /// What the copy button says for a moment after it was tapped; else empty.
    pub copied: String,
    /// Whether the app is installed.
    pub is_installed: bool,
    /// Whether the browser can be asked to install it.
    pub can_install: bool,
    /// Whether the time changes what the screen says.
    pub shows_time: bool,
    /// The look: "slate", "paper", or empty for the device's.
    pub look: &'static str,
}

/// A place at the bottom.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlaceLink {
    /// The place.
    pub place: Place,
    /// Whether what is shown is there.
    pub is_here: bool,
    /// Whether its tools stand on the sheet.
    pub has_sheet: bool,
}

/// A tool on the sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ToolLink {
    /// Its name.
    pub label: &'static str,
    /// The question it answers.
    pub question: &'static str,
    /// Its address.
    pub href: String,
    /// Whether it is what is shown.
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
#[derive(Clone, Debug, PartialEq)]
pub struct Pad {
    /// The field it types into.
    pub field: &'static str,
    /// What stands along its top.
    pub units: Vec<Key>,
    /// Its keys, in rows of five.
    pub keys: Vec<Key>,
    /// Whether these are the other units.
    pub is_turned: bool,
    /// What is lit of the units.
    pub lit: Option<Key>,
    /// The unit that is typed, or that a number without one takes; none while it is asked.
    pub unit: Option<Unit>,
    /// The decimal mark.
    pub decimal: Decimal,
}
