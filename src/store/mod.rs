//! The store: a versioned envelope round everything saved, the book of specs and ingredients in it, and the one
//! file that touches local storage.
//!
//! What cannot be read is set aside untouched and reported; it is never overwritten.

pub mod backup;
pub mod deeds;
mod envelope;
pub mod forms;
pub mod journal;
mod keeper;
pub mod ledger;
#[cfg(feature = "app")]
mod local;
pub mod memory;
pub mod recipe;

pub use envelope::{Kept, Opened, Unreadable, VERSION, checksum, open, seal};
pub use keeper::{ASIDE, Keeper, SaveProblem, put, set_aside};
#[cfg(feature = "app")]
pub use local::{Local, now, trial};
