//! Where texts are kept by key: local storage in the app, memory in tests.

use std::fmt;

/// Why a text was not kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SaveProblem {
    /// The browser allows no local storage here.
    Blocked,
    /// The space is used up, or a write did not arrive.
    Full,
}

impl fmt::Display for SaveProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            SaveProblem::Blocked => "This browser lets no page save here, so what you type is gone when you close it.",
            SaveProblem::Full => {
                "Not saved: this browser's space for Meniscus is full. What you typed is still on screen."
            }
        })
    }
}

/// Keeps texts by key. Keys are without the app's own prefix.
pub trait Keeper {
    /// The text under a key.
    ///
    /// # Errors
    /// [`SaveProblem::Blocked`].
    fn get(&self, key: &str) -> Result<Option<String>, SaveProblem>;

    /// Keeps a text under a key, in place of what is there.
    ///
    /// # Errors
    /// [`SaveProblem`]; what was there is there still.
    fn set(&self, key: &str, text: &str) -> Result<(), SaveProblem>;

    /// Takes a key away.
    ///
    /// # Errors
    /// [`SaveProblem::Blocked`].
    fn remove(&self, key: &str) -> Result<(), SaveProblem>;

    /// All keys, in no order.
    ///
    /// # Errors
    /// [`SaveProblem::Blocked`].
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
