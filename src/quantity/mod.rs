//! Quantities: numbers that know what they measure.
//!
//! Each type holds one private `f64` in one canonical unit and is checked when it is made,
//! so that no later code meets a NaN, an infinity or a negative volume. Only operators
//! that mean something exist. Nothing here knows text, locale or a browser.

mod amount;
mod checked;
mod money;
mod ratio;
mod unit;
mod volume;

pub use amount::Amount;
pub use checked::{Abv, Acidity, Brix, Density, Mass, MassFraction, Money, OutOfRange, Pressure, Temperature, Volume};
pub use ratio::Ratio;
pub use unit::{Conventions, Ounce, Size, Unit};
