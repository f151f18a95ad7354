//! What is to be drawn, of the state as it is.

use std::rc::Rc;

use super::view::{Link, Notice, Pad, View};
use super::{Desk, World};
use crate::screen::pad::{back, front};
use crate::screen::route::{Place, Route};
use crate::screen::{Act, Button, Choice, Screen};
use crate::text;
use crate::tool;
use crate::tool::shelf::settings::Theme;

impl Desk {
    /// The screen shown, worked out when something has changed.
    pub(super) fn shown(&mut self) -> &Rc<Screen> {
        if std::mem::take(&mut self.is_stale) {
            if self.route.row().shows_time {
                self.timed();
            }
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
        let (route, row) = (self.route, self.route.row());
        let link = |to: Route, label, is_here| Link { label, href: to.href(), is_here };
        let sight = &self.sight;
        View {
            title: row.label,
            pills: row.place.screens().map(|to| link(to, to.row().label, to == route)).collect(),
            places: Place::ALL
                .into_iter()
                .map(|place| link(place.first(), place.label(), place == row.place))
                .collect(),
            not_saved: self.not_saved(),
            notice: self.notice(),
            due: self.due(),
            pad: self.pad(&screen),
            active: sight.active.map(|(field, _)| field),
            as_typed: self.as_typed(&screen),
            has_pad: self.has_pad(),
            bare_unit: text::typed(self.bench.house.usual_unit),
            undo: self.undo_words(),
            copied: sight.copied.clone(),
            update_waits: sight.update_waits,
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

    /// What could not be saved can be taken home as a file; nothing puts these words away but that it is saved.
    fn not_saved(&self) -> Option<Notice> {
        let words = self.why_unsaved?.to_string();
        Some(Notice { words, buttons: vec![Button::new("Save as a file", Act::GiveUnsaved)] })
    }

    fn notice(&self) -> Option<Notice> {
        let words = self.sight.notice.clone();
        let (said, offered) = &self.sight.offered;
        let mut buttons = if *said == words { offered.clone() } else { Vec::new() };
        buttons.push(Button::new("OK", Act::Dismiss));
        (!words.is_empty()).then_some(Notice { words, buttons })
    }

    /// The pad; none while no field is active, a choice has taken it off the screen, or the phone's keyboard is chosen.
    fn pad(&self, screen: &Screen) -> Option<Pad> {
        let (field, keys) = self.sight.active.filter(|_| self.has_pad())?;
        let unit = self.lit(screen.field(field)?, keys);
        let decimal = self.bench.decimal;
        let face = if self.sight.is_turned { back(keys) } else { front(keys, decimal) };
        Some(Pad { field, keys: face, unit, decimal })
    }
}
