//! The one file that touches local storage.

use std::fmt;

use gloo_storage::{LocalStorage, Storage};
use serde::{Serialize, de::DeserializeOwned};
use wasm_bindgen::JsValue;

use super::envelope::{Unreadable, open, seal};

const PREFIX: &str = "meniscus/";
const ASIDE: &str = "meniscus/aside/";

/// What was found under a key.
#[derive(Clone, Debug)]
pub enum Loaded<T> {
    /// Nothing yet.
    Nothing,
    /// The value.
    Value(T),
    /// Something that cannot be used. It has been copied aside, untouched, when `set_aside` is true.
    Unreadable {
        /// Why.
        why: Unreadable,
        /// Whether it is safe under a key of its own.
        set_aside: bool,
    },
}

/// Why a value was not saved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SaveProblem {
    /// The browser allows no local storage here.
    Blocked,
    /// The space is used up.
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

/// The browser's store, or none where it is blocked (`gloo_storage::LocalStorage::raw` would panic).
fn storage() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok().flatten().map(|_| LocalStorage::raw())
}

/// Whether anything can be saved at all, by trying.
///
/// # Errors
/// [`SaveProblem`] when not.
pub fn trial() -> Result<(), SaveProblem> {
    let storage = storage().ok_or(SaveProblem::Blocked)?;
    storage.set_item("meniscus/trial", "1").map_err(|error| reason(&error))?;
    storage.remove_item("meniscus/trial").map_err(|error| reason(&error))
}

/// Reads what is saved under `key`. A text that cannot be read is copied under
/// `meniscus/aside/…` before anything could overwrite it.
#[must_use]
pub fn load<T: DeserializeOwned>(key: &str) -> Loaded<T> {
    let Some(text) = storage().and_then(|storage| storage.get_item(&format!("{PREFIX}{key}")).ok().flatten()) else {
        return Loaded::Nothing;
    };
    match open(&text) {
        Ok(value) => Loaded::Value(value),
        Err(why) => Loaded::Unreadable { set_aside: set_aside(key, &text), why },
    }
}

/// Keeps `text` under the first free key for it; the same text is kept once.
fn set_aside(key: &str, text: &str) -> bool {
    let Some(storage) = storage() else { return false };
    for number in 1..1000 {
        let aside = format!("{ASIDE}{key}/{number}");
        match storage.get_item(&aside) {
            Ok(Some(kept)) if kept == text => return true,
            Ok(Some(_)) => {}
            Ok(None) => return storage.set_item(&aside, text).is_ok(),
            Err(_) => return false,
        }
    }
    false
}

/// Saves `value` under `key`, and reads it back to be sure.
///
/// # Errors
/// [`SaveProblem`] when it is not kept.
pub fn save<T: Serialize>(key: &str, value: &T) -> Result<(), SaveProblem> {
    let storage = storage().ok_or(SaveProblem::Blocked)?;
    let key = format!("{PREFIX}{key}");
    let text = seal(value).map_err(|_| SaveProblem::Blocked)?;
    storage.set_item(&key, &text).map_err(|error| reason(&error))?;
    match storage.get_item(&key) {
        Ok(Some(kept)) if kept == text => Ok(()),
        _ => Err(SaveProblem::Full),
    }
}

/// Storage that is there but refuses is full; browsers that forbid it say so by name.
fn reason(error: &JsValue) -> SaveProblem {
    let name = js_sys::Reflect::get(error, &JsValue::from_str("name")).ok().and_then(|name| name.as_string());
    if name.as_deref() == Some("SecurityError") { SaveProblem::Blocked } else { SaveProblem::Full }
}
