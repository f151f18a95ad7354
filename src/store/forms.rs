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
    /// The form, and which write of it this is.
    Form(Kept, Stamp),
    /// A form that a later version wrote, as far as we know its fields: it is shown, and not written over.
    Newer(Kept),
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
                None => Loaded::Form(opened.data, opened.stamp),
                Some(_) => Loaded::Newer(opened.data),
            };
        }
        Err(why) => why,
    };
    Loaded::Unreadable { set_aside: set_aside(keeper, &key, &text), why }
}

/// As [`load`], of a write other than this one; none while it stands.
#[must_use]
pub fn load_since(keeper: &dyn Keeper, key: &str, stamp: Stamp) -> Option<Loaded> {
    let text = keeper.get(&stored_under(key)).ok()??;
    if stamp_of(&text) == Ok((stamp, None)) { None } else { Some(load(keeper, key)) }
}

/// Saves a form over the write it was made from, and reads it back to be sure. Which write it is now.
///
/// # Errors
/// [`SaveProblem`] when it is not kept.
pub fn save(keeper: &dyn Keeper, key: &str, kept: &Kept, from: Stamp, now: u64) -> Result<Stamp, SaveProblem> {
    let stamp = from.next(now);
    let text = seal(kept, stamp).map_err(|_| SaveProblem::Blocked)?;
    put(keeper, &stored_under(key), Some(&text))?;
    Ok(stamp)
}
