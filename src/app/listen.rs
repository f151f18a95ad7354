//! One set of listeners for the whole page: what a person does becomes an act.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, Event, HtmlElement, HtmlInputElement, KeyboardEvent, MouseEvent};

use super::browser;
use super::draw::{Canvas, Press, Tap, at};
use crate::screen::Act;
use crate::screen::pad::{Entry, press};

/// Hears what is done on the page below `root`, and hands it on.
pub(super) fn listen(root: &HtmlElement, canvas: Rc<RefCell<Canvas>>, hand: Rc<dyn Fn(Act)>) {
    let ears = Ears { root: root.clone().into(), canvas, hand, fresh: Cell::new(false) };
    let hear = Closure::<dyn Fn(Event)>::new(move |event: Event| ears.hear(&event));
    for name in ["click", "input", "change", "focusin", "keydown", "mousedown"] {
        let _ = root.add_event_listener_with_callback(name, hear.as_ref().unchecked_ref());
    }
    let _ = root.add_event_listener_with_callback_and_bool("scroll", hear.as_ref().unchecked_ref(), true);
    hear.forget();
}

struct Ears {
    root: Element,
    canvas: Rc<RefCell<Canvas>>,
    hand: Rc<dyn Fn(Act)>,
    /// Whether the active field has just been entered, so that a tap selects all of it.
    fresh: Cell<bool>,
}

/// What an input is, as far as the page treats it its own way.
enum Kind {
    /// A number, on the pad.
    Amount,
    /// Words, or a day and a time.
    Other,
    /// One of a few, all in sight.
    Radio,
    /// A list.
    List,
}

impl Ears {
    fn hear(&self, event: &Event) {
        let Some(target) = event.target().and_then(|target| target.dyn_into::<Element>().ok()) else { return };
        let name = event.type_();
        let is_within = |selector| matches!(target.closest(selector), Ok(Some(_)));
        match name.as_str() {
            // Taking the press keeps the focus, and so the caret, in the field.
            "mousedown" if is_within(".pad") => event.prevent_default(),
            "mousedown" => {}
            "scroll" => self.scrolled(),
            "click" if is_within("a[href^='#']") => self.followed(event, &target),
            "click" if is_within("button") => self.tapped(&target),
            "keydown" if is_within(".places") && event.unchecked_ref::<KeyboardEvent>().key() == "Escape" => {
                self.hand(Act::Sheet(None));
            }
            _ => self.typed(&name, event, &target),
        }
    }

    fn typed(&self, event_name: &str, event: &Event, target: &Element) {
        let Some(kind) = kind_of(target) else { return };
        // Lists and text areas have the methods used here as well.
        let input: &HtmlInputElement = target.unchecked_ref();
        let name = input.id();
        match (event_name, kind) {
            ("input", Kind::Amount | Kind::Other) | ("change", Kind::List) => {
                self.hand(Act::Type(name, input.value()));
            }
            ("change", Kind::Radio) => self.hand(Act::Choose(input.name(), input.value())),
            ("focusin", Kind::Amount) => {
                self.fresh.set(true);
                // Where the window has come back to a field that never was left, nothing moves under the finger.
                if !matches!(target.closest(".on"), Ok(Some(_))) {
                    self.activate(name);
                }
                input.select();
            }
            // The first tap selects all, ready for a new number; a second one puts the caret where it lands.
            ("click", Kind::Amount) => {
                self.activate(name);
                if self.fresh.take() {
                    input.select();
                }
            }
            ("click", Kind::Other) => self.hand(Act::Activate(None)),
            ("keydown", Kind::Amount) => {
                self.fresh.set(false);
                match event.unchecked_ref::<KeyboardEvent>().key().as_str() {
                    "Enter" => input.select(),
                    "Escape" => self.hand(Act::Activate(None)),
                    _ => {}
                }
            }
            _ => {}
        }
    }

    /// A link was followed: while the sheet of tools is open, in the place of its step in the history.
    fn followed(&self, event: &Event, target: &Element) {
        let mouse: &MouseEvent = event.unchecked_ref();
        let is_elsewhere = mouse.ctrl_key() || mouse.meta_key() || mouse.shift_key();
        let link = target.closest("a").ok().flatten();
        if let (Some(to), false) = (link.and_then(|link| link.get_attribute("href")), is_elsewhere)
            && matches!(self.root.query_selector(".places.open"), Ok(Some(_)))
        {
            event.prevent_default();
            self.hand(Act::Go(to));
        }
    }

    /// The rest of a list comes as its end comes in sight.
    fn scrolled(&self) {
        if let Ok(Some(more)) = self.root.query_selector(".more")
            && more.get_bounding_client_rect().top() < self.root.get_bounding_client_rect().bottom()
        {
            self.tapped(&more);
        }
    }

    /// A button was tapped: what it does stands in what is drawn, at the same place.
    fn tapped(&self, target: &Element) {
        let mut path = Vec::new();
        let mut step = target.closest("button").ok().flatten();
        while let Some(element) = step.filter(|element| *element != self.root) {
            let mut turn = 0;
            let mut before = element.previous_element_sibling();
            while let Some(sibling) = before {
                turn += 1;
                before = sibling.previous_element_sibling();
            }
            path.insert(0, turn);
            step = element.parent_element();
        }
        let tap = at(&self.canvas.borrow().page(), &path).and_then(|button| button.tap.clone());
        match tap {
            Some(Tap::Act(act)) => self.hand(act),
            Some(Tap::Fix(field, text)) => {
                // The button goes: the focus is put where it was meant for first, and the caret behind the new text.
                browser::focus(field);
                self.hand(Act::Type(field.to_owned(), text));
            }
            Some(Tap::Press(key)) => self.pressed(key),
            None => {}
        }
    }

    /// Presses a key in the active field, at its caret; where the focus is elsewhere, over all of it.
    fn pressed(&self, Press { field, key, decimal, turns }: Press) {
        let Some(input) = browser::input(field) else { return };
        let text = input.value();
        let caret = |position: Option<u32>| position.map_or(usize::MAX, |utf16| char_index(&text, utf16));
        let start = caret(input.selection_start().ok().flatten());
        let end = caret(input.selection_end().ok().flatten());
        let is_entered = browser::has_focus(&input);
        let entry = match is_entered {
            true => Entry { text: text.clone(), start, end },
            false => Entry::selected(text.clone()),
        };
        let entry = press(&entry, key, decimal);
        input.set_value(&entry.text);
        self.fresh.set(false);
        if !is_entered {
            browser::focus(field);
        }
        let at = utf16_index(&entry.text, entry.end);
        let _ = input.set_selection_range(at, at);
        self.hand(Act::Type(field.to_owned(), entry.text));
        if turns {
            self.hand(Act::Turn);
        }
    }

    fn activate(&self, name: String) {
        self.hand(Act::Activate(Some(name.clone())));
        browser::show(name);
    }

    fn hand(&self, act: Act) {
        (self.hand)(act);
    }
}

fn kind_of(target: &Element) -> Option<Kind> {
    let input: &HtmlInputElement = target.unchecked_ref();
    match target.tag_name().as_str() {
        "SELECT" => Some(Kind::List),
        "TEXTAREA" => Some(Kind::Other),
        "INPUT" if target.has_attribute("inputmode") => Some(Kind::Amount),
        "INPUT" if input.type_() == "radio" => Some(Kind::Radio),
        "INPUT" => Some(Kind::Other),
        _ => None,
    }
}

fn char_index(text: &str, utf16: u32) -> usize {
    let mut units = 0;
    text.chars()
        .take_while(|c| {
            units += c.len_utf16();
            units <= utf16 as usize
        })
        .count()
}

fn utf16_index(text: &str, chars: usize) -> u32 {
    u32::try_from(text.chars().take(chars).map(char::len_utf16).sum::<usize>()).unwrap_or(u32::MAX)
}
