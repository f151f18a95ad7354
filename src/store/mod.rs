//! The store: a versioned envelope round everything saved, the book of specs and ingredients in it, and the one
//! file that touches local storage.
//!
//! What cannot be read is set aside untouched and reported; it is never overwritten.

pub mod backup;
pub mod besides;
pub mod deeds;
mod envelope;
mod fit;
pub mod forms;
pub mod journal;
mod keeper;
mod kept;
pub mod ledger;
mod limits;
#[cfg(feature = "app")]
mod local;
pub mod memory;
mod problem;
mod read;
pub mod recipe;
mod write;

pub use envelope::{Opened, Unreadable, VERSION, checksum, open, seal, stamp_of};
pub use keeper::{ASIDE, Keeper, SaveProblem, put, set_aside};
pub use kept::Kept;
#[cfg(feature = "app")]
pub use local::{Local, now, trial};
pub use problem::{ImportProblem, MOST_BYTES};
