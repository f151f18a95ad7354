//! The one file that touches local storage.

use gloo_storage::{LocalStorage, Storage};
use wasm_bindgen::JsValue;

use super::envelope::{Unreadable, open, seal, stamp_of};
use super::keeper::{Keeper, SaveProblem, put, set_aside};
use super::memory::Memory;
use crate::book::{Stamp, Written};

const PREFIX: &str = "meniscus/";

/// The browser's local storage, under the app's own prefix; memory where it is blocked, which [`trial`] says.
#[derive(Clone, Copy, Debug, Default)]
pub struct Local;

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

/// The browser's store (`gloo_storage::LocalStorage::raw` would panic where it is blocked).
fn storage() -> Result<web_sys::Storage, SaveProblem> {
    let there = web_sys::window().and_then(|window| window.local_storage().ok().flatten());
    there.map(|_| LocalStorage::raw()).ok_or(SaveProblem::Blocked)
}

thread_local! {
    /// Stands in where the browser allows no storage: what is typed lasts as long as the page.
    static MEMORY: Memory = Memory::default();
}

impl Keeper for Local {
    fn get(&self, key: &str) -> Result<Option<String>, SaveProblem> {
        match storage() {
            Ok(storage) => storage.get_item(&format!("{PREFIX}{key}")).map_err(|error| reason(&error)),
            Err(_) => MEMORY.with(|memory| memory.get(key)),
        }
    }

    fn set(&self, key: &str, text: &str) -> Result<(), SaveProblem> {
        match storage() {
            Ok(storage) => storage.set_item(&format!("{PREFIX}{key}"), text).map_err(|error| reason(&error)),
            Err(_) => MEMORY.with(|memory| memory.set(key, text)),
        }
    }

    fn remove(&self, key: &str) -> Result<(), SaveProblem> {
        match storage() {
            Ok(storage) => storage.remove_item(&format!("{PREFIX}{key}")).map_err(|error| reason(&error)),
            Err(_) => MEMORY.with(|memory| memory.remove(key)),
        }
    }

    fn keys(&self) -> Result<Vec<String>, SaveProblem> {
        let Ok(storage) = storage() else { return MEMORY.with(Keeper::keys) };
        let length = storage.length().map_err(|error| reason(&error))?;
        let key = |at| storage.key(at).ok().flatten();
        Ok((0..length).filter_map(key).filter_map(|key| key.strip_prefix(PREFIX).map(str::to_owned)).collect())
    }
}

/// The time, in milliseconds since 1970.
#[must_use]
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
pub fn now() -> u64 {
    js_sys::Date::now() as u64
}

/// Whether anything can be saved at all, by trying.
///
/// # Errors
/// [`SaveProblem`] when not.
pub fn trial() -> Result<(), SaveProblem> {
    storage()?;
    Local.set("trial", "1")?;
    Local.remove("trial")
}

/// Reads what is saved under `key`. A text that cannot be read, or that a later version wrote, is copied under
/// `meniscus/aside/…` before anything could overwrite it.
#[must_use]
pub fn load<T: Written>(key: &str) -> Loaded<T> {
    let Ok(Some(text)) = Local.get(key) else { return Loaded::Nothing };
    let why = match open(&text) {
        Ok(opened) => match opened.newer {
            None => return Loaded::Value(opened.data),
            Some(version) => Unreadable::Newer(version),
        },
        Err(why) => why,
    };
    Loaded::Unreadable { set_aside: set_aside(&Local, key, &text), why }
}

/// Saves `value` under `key`, and reads it back to be sure.
///
/// # Errors
/// [`SaveProblem`] when it is not kept.
pub fn save<T: Written>(key: &str, value: &T) -> Result<(), SaveProblem> {
    let stamp = match Local.get(key)?.and_then(|text| stamp_of(&text).ok()) {
        Some((_, Some(_))) => return Err(SaveProblem::ReadOnly),
        there => there.map_or_else(Stamp::default, |(stamp, _)| stamp),
    };
    let text = seal(value, stamp.next(now())).map_err(|_| SaveProblem::Blocked)?;
    put(&Local, key, Some(&text))
}

/// Storage that is there but refuses is full; browsers that forbid it say so by name.
fn reason(error: &JsValue) -> SaveProblem {
    let name = js_sys::Reflect::get(error, &JsValue::from_str("name")).ok().and_then(|name| name.as_string());
    if name.as_deref() == Some("SecurityError") { SaveProblem::Blocked } else { SaveProblem::Full }
}
