//! The forms of the tools in the store: `tool/<key>` holds the texts of one, and those that Undo brings back.

use super::envelope::{Unreadable, open, seal, stamp_of};
use super::keeper::{Keeper, SaveProblem, put, set_aside};
use super::kept::Kept;
use crate::book::Stamp;

/// What was found under a form's key.
#[derive(Clone, Debug)]
pub enum Loaded {
    /// Nothing yet.
    Nothing,
    /// The form.
    Form(Kept),
    /// A form that a later version wrote, as far as we know its fields: it is shown, and not written over.
    Newer(Kept, u32),
    /// Something that cannot be used. It has been copied aside, untouched, when `set_aside` is true.
    Unreadable {
        /// Why.
        why: Unreadable,
        /// Whether it is safe under a key of its own.
        set_aside: bool,
    },
}

/// Where forms are kept.
pub const TOOLS: &str = "tool/";

/// Where a form is kept.
#[must_use]
pub fn stored_under(key: &str) -> String {
    format!("{TOOLS}{key}")
}

/// Reads a form. A text that cannot be read is copied aside before anything could overwrite it.
#[must_use]
pub fn load(keeper: &dyn Keeper, key: &str) -> Loaded {
    let key = stored_under(key);
    let Ok(Some(text)) = keeper.get(&key) else { return Loaded::Nothing };
    let why = match open::<Kept>(&text) {
        Ok(opened) => {
            return match opened.newer {
                None => Loaded::Form(opened.data),
                Some(version) => Loaded::Newer(opened.data, version),
            };
        }
        Err(why) => why,
    };
    Loaded::Unreadable { set_aside: set_aside(keeper, &key, &text), why }
}

/// Saves a form, and reads it back to be sure.
///
/// # Errors
/// [`SaveProblem`] when it is not kept.
pub fn save(keeper: &dyn Keeper, key: &str, kept: &Kept, now: u64) -> Result<(), SaveProblem> {
    let key = stored_under(key);
    let stamp = match keeper.get(&key)?.and_then(|text| stamp_of(&text).ok()) {
        Some((_, Some(_))) => return Err(SaveProblem::ReadOnly),
        there => there.map_or_else(Stamp::default, |(stamp, _)| stamp),
    };
    let text = seal(kept, stamp.next(now)).map_err(|_| SaveProblem::Blocked)?;
    put(keeper, &key, Some(&text))
}
