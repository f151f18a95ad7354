//! Forms: what was typed → what to show. Plain structs, no signals, no browser.
//!
//! Text is the state and every figure is derived from it, so nothing can fall out of step.
//! A whole screen is data ([`screen::Screen`]): the app draws it and knows no tool by name, so a
//! new tool is a file here and one in `craft`, and adds next to nothing to what a phone downloads.

mod answer;
mod bench;
pub mod clock;
mod fields;
pub mod label;
pub mod pad;
pub mod plan;
pub mod route;
pub mod run;
pub mod screen;
mod taken;

pub mod acid;
pub mod backup;
pub mod balance;
pub mod card;
pub mod clear;
pub mod cordial;
pub mod fruit;
pub mod infuse;
pub mod measure;
pub mod milk_wash;
pub mod own;
pub mod scale;
pub mod serves;
pub mod shelf;
pub mod specs;
pub mod strength;
pub mod syrup;

pub use answer::{Answer, Carry, Cell, Fix, Problem, Row, Share, Strip, Tone};
pub use bench::{Bench, Held};
pub use fields::{Choice, Fields, Texts, fill};
