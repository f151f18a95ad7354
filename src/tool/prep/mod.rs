//! Prep: ingredients made for the bar.

pub mod acid;
pub mod clarify;
pub mod cordial;
pub mod fruit;
pub mod infuse;
pub mod milk_wash;
pub mod strength;
pub mod syrup;
