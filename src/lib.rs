//! Meniscus, a bench calculator for people who make mixed drinks.
//!
//! The floors, each importing only from those above it in this list (see DEVELOPERS.md):

pub mod book;
pub mod craft;
pub mod quantity;
pub mod reading;
pub mod screen;
pub mod store;
pub mod substance;
pub mod text;
pub mod tool;

#[cfg(feature = "app")]
pub mod app;
