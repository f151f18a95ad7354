//! What the app does for the desk once an act is done: everything that only a browser can.

use super::News;

/// Something to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Effect {
    /// Goes to an address.
    Go(String),
    /// Puts an address in place of the one shown, without a step in the history.
    Replace(String),
    /// Notes a step in the history at the address shown, for Back to undo.
    Step,
    /// Takes that step back.
    Back,
    /// Goes to an address in the place of that step.
    Instead(String),
    /// Copies a text, and tells whether it could.
    Copy(String),
    /// Raises an event of ours with texts, for boot.js.
    Send(&'static str, Vec<(&'static str, String)>),
    /// Has words read out, where someone listens.
    Speak(String),
    /// Tells this after so many milliseconds.
    Later(u64, News),
    /// Names the page after the screen, and scrolls it to its top.
    Begin(&'static str),
    /// Focuses a field, once the screen is drawn; a number is selected whole.
    Enter(&'static str),
    /// Scrolls a field into sight.
    Show(&'static str),
    /// Scrolls a piece of the page into sight, and focuses it.
    Reach(&'static str),
    /// Takes the focus off whatever field has it.
    Leave,
}

/// A file to share or to keep.
pub(super) fn give(name: &str, text: String) -> Effect {
    Effect::Send("meniscus-give", vec![("file", name.to_owned()), ("text", text)])
}

/// An event that carries one text.
pub(super) fn send(name: &'static str, text: impl Into<String>) -> Effect {
    Effect::Send(name, vec![("text", text.into())])
}

/// An event alone.
pub(super) const fn raise(name: &'static str) -> Effect {
    Effect::Send(name, Vec::new())
}
