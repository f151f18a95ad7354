//! What is to be drawn, of the state as it is.

use std::rc::Rc;

use super::view::{Notice, Pad, PlaceLink, ToolLink, View};
use super::{Desk, World};
use crate::screen::pad::{Key, Keys, face, others, units};
use crate::screen::route::{Place, Route};
use crate::screen::{Act, Button, Choice, Screen};
use crate::text;
use crate::tool;
use crate::tool::shelf::settings::{Hand, Theme};

/// Seconds before a wait ends in which no new version is offered.
const NEAR: i64 = 120;

impl Desk {
    /// The screen shown, worked out when something has changed.
    pub(super) fn shown(&mut self) -> &Rc<Screen> {
        if std::mem::take(&mut self.is_stale) {
            if self.route.row().shows_time {
                self.timed();
            }
            self.put_strongest_first();
            self.screen = Rc::new(tool::screen(self.route, self.texts(self.route), &self.bench));
        }
        &self.screen
    }

    /// Everything that is to be drawn.
    #[must_use]
    pub fn view(&mut self, world: &World<'_>) -> View {
        self.set_clock(world);
        if !self.bench.book.runs.is_empty() && !self.route.row().shows_time {
            self.timed();
        }
        let screen = Rc::clone(self.shown());
        let row = self.route.row();
        let sight = &self.sight;
        let has_sheet = sight.sheet.unwrap_or(row.place);
        let place = |place| PlaceLink { place, is_here: place == row.place, has_sheet: place == has_sheet };
        View {
            title: row.label,
            places: Place::ALL.map(place).to_vec(),
            tools: self.tools(has_sheet),
            asks: has_sheet.question(),
            find: Route::Find.href(),
            is_open: sight.sheet.is_some(),
            not_saved: self.not_saved(),
            notice: self.notice(),
            due: self.due(),
            pad: self.pad(&screen),
            active: sight.active.map(|(field, _)| field),
            as_typed: self.as_typed(&screen),
            has_pad: self.has_pad(),
            pad_waits: sight.active.is_some() && self.pad_waits(),
            is_left: Hand::of(self.texts(Route::Shelf)) == Hand::Left,
            bare_unit: text::typed(self.bench.house.usual_unit),
            undo: self.undo_words(),
            copied: sight.copied.clone(),
            is_installed: sight.is_installed,
            can_install: sight.can_install,
            shows_time: row.shows_time,
            look: match Theme::of(self.texts(Route::Shelf)) {
                Theme::System => "",
                look => look.key(),
            },
            screen,
        }
    }

    /// The tools of a place.
    fn tools(&self, place: Place) -> Vec<ToolLink> {
        let tool = |route: Route| {
            let row = route.row();
            ToolLink { label: row.label, question: row.question, href: route.href(), is_here: route == self.route }
        };
        place.screens().map(tool).collect()
    }

    /// What could not be saved can be taken home as a file; nothing puts these words away but that it is saved.
    fn not_saved(&self) -> Option<Notice> {
        let words = self.why_unsaved?.to_string();
        Some(Notice { words, buttons: vec![Button::new("Save as a file", Act::GiveUnsaved)] })
    }

    /// What is said above the pad or the foot; else a new version, where nothing else is going on; else, to a newcomer, what
    /// this is.
    fn notice(&self) -> Option<Notice> {
        let words = self.sight.notice.clone();
        if !words.is_empty() {
            let (said, offered) = &self.sight.offered;
            let mut buttons = if *said == words { offered.clone() } else { Vec::new() };
            if buttons.len() < 2 {
                buttons.push(Button::new("OK", Act::Dismiss));
            }
            return Some(Notice { words, buttons });
        }
        if self.sight.update_waits && self.sight.active.is_none() && !self.is_due_within(NEAR) {
            let buttons = vec![Button::new("Later", Act::UpdateLater), Button::new("Use it", Act::Update)];
            return Some(Notice { words: "A newer version is here; all you typed stays.".into(), buttons });
        }
        let words = "Works out bar measures. Type over this example. Every tool is under the five words below.";
        let buttons = vec![Button::new("Got it", Act::Dismiss)];
        self.sight.is_first.then(|| Notice { words: words.into(), buttons })
    }

    /// Whether the pad waits behind its word in the head.
    fn pad_waits(&self) -> bool {
        self.has_pad() && self.device.has_keyboard && !self.sight.wants_pad
    }

    /// The pad; none while no field is active, a choice has taken it off the screen, or the phone's keyboard is chosen.
    fn pad(&self, screen: &Screen) -> Option<Pad> {
        let (field, keys) = self.sight.active.filter(|_| self.has_pad() && !self.pad_waits())?;
        let shown = screen.field(field)?;
        let unit = self.lit(shown, keys);
        let decimal = self.bench.decimal;
        let is_turned = self.sight.is_turned;
        let units = units(keys);
        let lit = match keys {
            Keys::Celsius if text::is_fahrenheit(&shown.text) => Some(Key::Fahrenheit),
            Keys::Celsius => Some(Key::Celsius),
            _ => unit.map(Key::Unit),
        };
        let keys = if is_turned { others(keys) } else { face(keys, decimal) };
        Some(Pad { field, units, keys, is_turned, lit, unit, decimal })
    }
}
