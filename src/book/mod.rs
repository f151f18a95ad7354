//! The book: plain data a bar writes down. No arithmetic, no text, no browser.

mod allergens;
mod bottle;
mod by_name;
mod card;
mod demo;
mod differ;
mod glass;
mod house;
mod import;
mod ingredient;
mod library;
mod loose;
mod named;
mod order;
mod origin;
mod own;
mod price;
mod records;
mod run;
mod slot;
mod sought;
mod spec;

pub use allergens::{allergens_in, asked_in};
pub use bottle::{BOTTLES, Bottle, GLASSES, glass_of};
pub use by_name::{ByName, Texts};
pub use card::{Card, MOST_WAYS, Tasting, Way};
pub use demo::{DEMO, demo_cards, demo_own};
pub use differ::{Compare, compare};
pub use glass::{GENERIC, Glass};
pub use house::{House, Jigger, Mark};
pub use import::{Aside, Besides, Import, Standing, run_standing, standing};
pub use ingredient::{Allergen, Ask, COMMON, Handled, Ingredient, Kind, Sugar};
pub use library::{LIBRARY, ingredient};
pub use loose::Loose;
pub use named::{
    Fit, Holds, Made, Measured, Taken, abroad, alike, ends_with_words, fit, folded, is_poured, named, named_to_the_end,
    taken_as, whole,
};
pub use order::{order, stood_before};
pub use origin::Origin;
pub use own::Own;
pub use price::Price;
pub use records::{Book, Deed, Entry, Pairs, Stamp, Unread};
pub use run::{Logged, MOST_KEY, MOST_PARTS, Part, Run, Tick};
pub use slot::{Field, Many, Record, Rule, Slot, Written};
pub use sought::{BESIDE, Sought, best};
pub use spec::{Line, Spec};
