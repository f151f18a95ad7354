//! The book: plain data a bar writes down. No arithmetic, no text, no browser.

mod bottle;
mod house;
mod spec;

pub use bottle::{BOTTLES, Bottle};
pub use house::{House, Jigger, Mark};
pub use spec::{Line, Spec};
