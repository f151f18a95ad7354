//! Craft: what the trade computes, one pure file a tool. No text, no formatting, no browser.

pub mod acid;
pub mod balance;
pub mod clarify;
pub mod cordial;
pub mod cost;
pub mod fruit;
pub mod in_unit;
pub mod infuse;
pub mod jigger;
pub mod keeping;
pub mod measure;
pub mod milk_wash;
pub mod on_ice;
pub mod pour;
pub mod run;
pub mod scale;
pub mod serves;
pub mod sharpen;
pub mod strength;
pub mod syrup;
pub mod vessel;
