//! The one file that touches local storage.

use std::cell::Cell;

use gloo_storage::{LocalStorage, Storage};
use wasm_bindgen::JsValue;

use super::keeper::{Keeper, SaveProblem};
use super::memory::Memory;

const PREFIX: &str = "meniscus/";

/// The browser's local storage, under the app's own prefix; memory where it is blocked, which [`trial`] says.
#[derive(Clone, Copy, Debug, Default)]
pub struct Local;

/// The browser's store (`gloo_storage::LocalStorage::raw` would panic where it is blocked).
fn storage() -> Result<web_sys::Storage, SaveProblem> {
    let there = web_sys::window().and_then(|window| window.local_storage().ok().flatten());
    there.map(|_| LocalStorage::raw()).ok_or_else(blocked)
}

/// What it means that the browser allows no storage: at the start, or of a sudden.
fn blocked() -> SaveProblem {
    if HAS_SAVED.get() { SaveProblem::Stopped } else { SaveProblem::Blocked }
}

thread_local! {
    /// Whether this page could save when it was opened: what it keeps then stands there still, if out of reach.
    static HAS_SAVED: Cell<bool> = const { Cell::new(false) };
    /// Stands in where the browser allows no storage: what is typed lasts as long as the page.
    static MEMORY: Memory = Memory::default();
}

impl Keeper for Local {
    fn get(&self, key: &str) -> Result<Option<String>, SaveProblem> {
        match storage() {
            Ok(storage) => storage.get_item(&format!("{PREFIX}{key}")).map_err(|error| reason(&error)),
            Err(SaveProblem::Stopped) => Err(SaveProblem::Stopped),
            Err(_) => MEMORY.with(|memory| memory.get(key)),
        }
    }

    fn set(&self, key: &str, text: &str) -> Result<(), SaveProblem> {
        match storage() {
            Ok(storage) => storage.set_item(&format!("{PREFIX}{key}"), text).map_err(|error| reason(&error)),
            Err(SaveProblem::Stopped) => Err(SaveProblem::Stopped),
            Err(_) => MEMORY.with(|memory| memory.set(key, text)),
        }
    }

    fn remove(&self, key: &str) -> Result<(), SaveProblem> {
        match storage() {
            Ok(storage) => storage.remove_item(&format!("{PREFIX}{key}")).map_err(|error| reason(&error)),
            Err(SaveProblem::Stopped) => Err(SaveProblem::Stopped),
            Err(_) => MEMORY.with(|memory| memory.remove(key)),
        }
    }

    fn keys(&self) -> Result<Vec<String>, SaveProblem> {
        let storage = match storage() {
            Ok(storage) => storage,
            Err(SaveProblem::Stopped) => return Err(SaveProblem::Stopped),
            Err(_) => return MEMORY.with(Keeper::keys),
        };
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
    Local.remove("trial")?;
    HAS_SAVED.set(true);
    Ok(())
}

/// Storage that is there but refuses is full; browsers that forbid it say so by name.
fn reason(error: &JsValue) -> SaveProblem {
    let name = js_sys::Reflect::get(error, &JsValue::from_str("name")).ok().and_then(|name| name.as_string());
    if name.as_deref() == Some("SecurityError") { blocked() } else { SaveProblem::Full }
}
