//! Meniscus, a bench calculator for people who make mixed drinks.
//!
//! The floors, each importing only from those above it in this list (see DEVELOPERS.md):

pub mod app;
pub mod book;
pub mod craft;
pub mod desk;
pub mod quantity;
pub mod reading;
pub mod screen;
pub mod store;
pub mod substance;
pub mod text;
pub mod tool;
