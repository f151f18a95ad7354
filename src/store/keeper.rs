//! Where texts are kept by key: local storage, or memory where a browser allows none.

use std::fmt;

/// Why a text was not kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SaveProblem {
    /// The browser allows no local storage here.
    Blocked,
    /// The browser allowed it when the page was opened, and does not any more.
    Stopped,
    /// The space is used up, or a write did not arrive.
    Full,
    /// What stands there cannot be read, or a later version wrote it: it is not written over.
    ReadOnly,
    /// Another tab has changed it, or is at work on the book.
    Elsewhere,
}

impl fmt::Display for SaveProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            SaveProblem::Blocked => "Not saved: this browser lets no page save here.",
            SaveProblem::Stopped => "Not saved: the browser has stopped letting this page save.",
            SaveProblem::Full => "Not saved: the browser's space here is full.",
            SaveProblem::ReadOnly => "Not changed: a newer Meniscus wrote this, or it can't be read here.",
            SaveProblem::Elsewhere => "Not done: another tab has just changed this. Look at it, and try again.",
        })
    }
}

/// Keeps texts by key. Keys are without the app's own prefix.
pub trait Keeper {
    /// The text under a key.
    ///
    /// # Errors
    /// [`SaveProblem::Blocked`] or [`SaveProblem::Stopped`].
    fn get(&self, key: &str) -> Result<Option<String>, SaveProblem>;

    /// Keeps a text under a key, in place of what is there.
    ///
    /// # Errors
    /// [`SaveProblem`]; what was there is there still.
    fn set(&self, key: &str, text: &str) -> Result<(), SaveProblem>;

    /// Takes a key away.
    ///
    /// # Errors
    /// [`SaveProblem::Blocked`] or [`SaveProblem::Stopped`].
    fn remove(&self, key: &str) -> Result<(), SaveProblem>;

    /// All keys, in no order.
    ///
    /// # Errors
    /// [`SaveProblem::Blocked`] or [`SaveProblem::Stopped`].
    fn keys(&self) -> Result<Vec<String>, SaveProblem>;
}

/// Keeps a text, and reads it back to be sure: a write may be dropped without a word.
///
/// # Errors
/// [`SaveProblem`] when it is not kept.
pub fn put(keeper: &dyn Keeper, key: &str, text: Option<&str>) -> Result<(), SaveProblem> {
    match text {
        Some(text) => keeper.set(key, text)?,
        None => keeper.remove(key)?,
    }
    if keeper.get(key)?.as_deref() == text { Ok(()) } else { Err(SaveProblem::Full) }
}

/// Where what cannot be read is set aside.
pub const ASIDE: &str = "aside/";

/// Keeps a text under the first free key of those for what is set aside; the same text is kept once. False when it
/// cannot be kept.
pub fn set_aside(keeper: &dyn Keeper, key: &str, text: &str) -> bool {
    for number in 1..1000 {
        let aside = format!("{ASIDE}{key}/{number}");
        match keeper.get(&aside) {
            Ok(Some(kept)) if kept == text => return true,
            Ok(Some(_)) => {}
            Ok(None) => return put(keeper, &aside, Some(text)).is_ok(),
            Err(_) => return false,
        }
    }
    false
}
