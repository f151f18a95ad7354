//! The book: plain data a bar writes down. No arithmetic, no text, no browser.

mod bottle;
mod house;
mod ingredient;
mod library;
mod spec;

pub use bottle::{BOTTLES, Bottle};
pub use house::{House, Jigger, Mark};
pub use ingredient::{Allergen, COMMON, Ingredient, Kind, Sugar};
pub use library::{LIBRARY, ingredient};
pub use spec::{Line, Spec};
