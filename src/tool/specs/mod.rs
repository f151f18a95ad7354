//! Specs: the book.

pub mod all;
pub mod backup;
pub mod card;
mod remarks;
