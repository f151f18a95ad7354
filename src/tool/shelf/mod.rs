//! Shelf: what stands in this bar, and how the app behaves.

pub mod ingredients;
pub mod settings;
