//! Arriving at an address, with what it carries; and how a screen begins.

use super::{Desk, Effect, World};
use crate::screen::address;
use crate::screen::pad::Keys;
use crate::screen::route::Route;
use crate::screen::{Act, Block, Face, Field, HEAD, Input};
use crate::tool::shelf::settings::Keyboard;
use crate::tool::specs::find::{INTO, SEARCH};

impl Desk {
    /// Goes where an address leads.
    pub(super) fn arrive(&mut self, hash: &str, world: &World<'_>) {
        let address = address::read(hash);
        let is_other = self.route != address.route;
        let opens_another = address.carried.iter().any(|(name, id)| name == "id" && *id != self.text(self.route, "id"));
        let leaves_spec = (is_other || opens_another) && self.has_own_spec_open();
        if is_other || opens_another {
            self.leave_empty(world);
            // A spec is read first; one that is being changed stays so while one looks elsewhere.
            let opened = address.carried.iter().find(|(name, _)| name == "id");
            let (id, face) = &self.bench.at_hand.face;
            if matches!(face, Face::More | Face::Taste) || opened.is_some_and(|(_, opened)| opened != id) {
                self.bench.at_hand.face.1 = Face::Read;
            }
            if let Some((_, id)) = opened.filter(|_| address.route == Route::Card) {
                self.bench.at_hand.face.0.clone_from(id);
            }
        }
        self.sight.sheet = None;
        let place = address.route.row().place;
        self.sight.last.retain(|route| route.row().place != place);
        self.sight.last.push(address.route);
        if is_other {
            self.route = address.route;
            self.sight.activate(None);
            self.sight.wants_pad = false;
            self.sight.is_first &= !self.has_begun;
            if std::mem::take(&mut self.sight.is_passing) {
                self.sight.notice.clear();
            }
            if address.route.row().needs_specs {
                self.with_cards(world);
            }
            if address.route == Route::Backup {
                self.compare(world);
            }
        }
        if is_other && address.route == Route::Find && !self.text(Route::Find, INTO).is_empty() {
            // For which tool is said by the way there.
            self.type_into(Route::Find, INTO, String::new(), world);
        }
        // What was done on the way here is still said, and goes with the next screen.
        let done = if is_other { std::mem::take(&mut self.sight.offered) } else { Default::default() };
        if !address.carried.is_empty() {
            self.carry(&address.carried, world);
        }
        if is_other {
            self.sight.is_passing = !done.0.is_empty() && self.sight.notice == done.0;
            self.sight.offered = done;
        }
        if address.unknown {
            self.sight.notice = "No page has that address. This is Measure, in Service.".into();
        }
        if address.route == Route::Label {
            self.pack_label(world);
        }
        // Which record is open stays in the address: each tab has its own.
        let is_record = address.carried.iter().all(|(name, _)| name == "id");
        if address.unknown || !is_record {
            let id = address.carried.iter().find(|(name, _)| name == "id" && address.route.row().record.is_some());
            let to = id.map_or_else(|| address.route.href(), |(_, id)| address.route.href_with("id", id));
            self.effects.push(Effect::Replace(to));
        }
        if is_other || !self.has_begun {
            self.begin();
            self.has_begun = true;
        }
        // The shortcut on a home screen: `#/specs/spec?new=1`.
        if address.route == Route::Card && address.carried.iter().any(|(name, _)| name == "new") {
            self.do_to_book(&Act::NewSpec, world);
        }
        if leaves_spec {
            self.offer_install(world);
        }
    }

    /// A screen begins at its top, under its name, with its first number ready.
    pub(super) fn begin(&mut self) {
        self.is_stale = true;
        self.effects.push(Effect::Begin(self.route.row().label));
        let first = self.first_number().filter(|_| !self.route.row().is_read_first && self.has_pad());
        match first {
            Some((field, _)) => {
                self.sight.activate(first);
                self.effects.push(Effect::Enter(field));
                self.effects.push(Effect::Show(field));
            }
            None if self.has_begun => self.effects.push(Effect::Enter(HEAD)),
            None => self.effects.push(Effect::Leave),
        }
        // What is there to be looked for is typed at once.
        if self.shown().field(SEARCH).is_some_and(|field| matches!(field.input, Input::Search { .. })) {
            self.effects.push(Effect::Enter(SEARCH));
        }
        // A new record begins with its name; a run sheet is called after what it makes.
        let is_named = !self.route.row().is_read_first;
        if is_named && self.shown().field("name").is_some_and(|field| field.text.is_empty()) {
            self.effects.push(Effect::Enter("name"));
        }
    }

    /// Whether numbers are typed on the app's own pad.
    pub(super) fn has_pad(&self) -> bool {
        Keyboard::of(self.texts(Route::Shelf)) == Keyboard::Pad
    }

    /// The first number of a screen, unless words come before it: those are typed on the phone's own keyboard.
    pub(super) fn first_number(&mut self) -> Option<(&'static str, Keys)> {
        let typed_in = |block: &Block| match block {
            Block::Field(Field { name, input: Input::Amount(keys), .. }) => Some(Some((*name, *keys))),
            Block::Field(Field { input: Input::Lines { .. } | Input::Words { .. } | Input::Search { .. }, .. }) => {
                Some(None)
            }
            _ => None,
        };
        self.shown().blocks.iter().find_map(typed_in)?
    }
}
