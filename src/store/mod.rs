//! The store: a versioned envelope round everything saved, and the one file that touches local storage.
//!
//! What cannot be read is set aside untouched and reported; it is never overwritten.

mod envelope;
#[cfg(feature = "app")]
mod local;

pub use envelope::{Kept, Unreadable, VERSION, open, seal};
#[cfg(feature = "app")]
pub use local::{Loaded, SaveProblem, load, save, trial};
