//! The same desk without a browser: what a screen must say.

use std::time::SystemTime;

use meniscus::app::draw::{Canvas, Node};
use meniscus::desk::{Desk, Device, News, World};
use meniscus::screen::Act;
use meniscus::store::memory::Memory;
use meniscus::text::Decimal;

/// A desk that keeps everything in memory and is told what the browser is told.
pub struct Twin {
    desk: Desk,
    memory: Memory,
}

fn fresh() -> String {
    "fresh".to_owned()
}

fn world(memory: &Memory) -> World<'_> {
    let now = SystemTime::UNIX_EPOCH.elapsed().map_or(0, |time| time.as_millis());
    World { keeper: memory, now: u64::try_from(now).unwrap_or_default(), fresh: &fresh }
}

fn opened(memory: &Memory) -> Desk {
    let device = Device { decimal: Decimal::Point, ahead: |_| 0, page: String::new(), has_keyboard: false };
    Desk::open(device, Ok(()), &world(memory)).0
}

impl Default for Twin {
    /// An app opened for the first time.
    fn default() -> Self {
        let memory = Memory::default();
        Twin { desk: opened(&memory), memory }
    }
}

impl Twin {
    /// Opens a screen.
    pub fn open(&mut self, route: &str) {
        let _ = self.desk.tell(&News::Address(format!("#/{route}")), &world(&self.memory));
    }

    /// Leaves the app: what lay at hand in its tab is gone, and what is kept is read anew.
    pub fn leave(&mut self) {
        self.desk = opened(&self.memory);
    }

    /// Does what a person does.
    pub fn act(&mut self, act: &Act) {
        let _ = self.desk.act(act, &world(&self.memory));
    }

    /// Types into a field.
    pub fn type_in(&mut self, name: &str, text: &str) {
        self.act(&Act::Type(name.to_owned(), text.to_owned()));
    }

    /// What the strip says, as [`crate::Phone::strip`] reads it.
    pub fn strip(&mut self) -> String {
        let canvas = Canvas::of(self.desk.view(&world(&self.memory)));
        let [_, strip, ..] = canvas.frame();
        let said = |class: &str| {
            let mut found = Vec::new();
            of_class(&strip, class, &mut found);
            found
        };
        let parts = [vec![said("figure").join(" + "), said("also").concat()], said("below")].concat();
        parts.join(" | ").replace('\u{202f}', " ")
    }
}

/// The words of the elements of a class, each trimmed.
fn of_class(nodes: &[Node], class: &str, found: &mut Vec<String>) {
    for node in nodes {
        let Node::Element(element) = node else { continue };
        let fixed = element.fixed.iter().map(|(name, value)| (*name, *value));
        let mut all = fixed.chain(element.attributes.iter().map(|(name, value)| (*name, value.as_ref())));
        if all.any(|(name, value)| name == "class" && value.split(' ').next() == Some(class)) {
            found.push(words_of(&element.children).trim().to_owned());
        } else {
            of_class(&element.children, class, found);
        }
    }
}

fn words_of(nodes: &[Node]) -> String {
    let words = |node: &Node| match node {
        Node::Words(words) => words.to_string(),
        Node::Element(element) => words_of(&element.children),
    };
    nodes.iter().map(words).collect()
}
