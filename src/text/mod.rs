//! Text ↔ quantity, in and out: the only floor that knows locale.
//!
//! What is shown can be typed back in and means the same.

mod amount;
mod figures;
mod glasses;
mod length;
mod list;
mod number;
mod prices;
mod qr;
mod ratio;
mod show;
mod spec;
mod strength;
mod sweetness;
mod temperature;
mod unit_name;
mod units;
mod unread;
mod wait;
mod yields;

pub use amount::{AmountProblem, Dimension, Reading, is_part, read_amount, read_count, read_percent};
pub use figures::{Named, read_figures, read_named, read_taken, whole_figures};
pub use glasses::read_glass;
pub use length::read_length;
pub use list::read_marks;
pub use number::{Decimal, NumberProblem, is_digit, read_number, replaced};
pub use prices::{read_offer, read_price, with_price};
pub use qr::{Qr, qr};
pub use ratio::{MilkRatio, RatioProblem, read_milk_ratio, read_sides};
pub use show::{
    Figure, count, editable, exact_millilitres, figure, fine_grams, fraction_of, grams, litres_or_ml, millilitres,
    ounces, percent, plain, pounds, signed_percent, written,
};
pub use spec::{BOTTLE_SIZES, LineProblem, SpecLine, amount_ends, read_spec};
pub use strength::read_strength;
pub use sweetness::{Sweetness, read_sweetness};
pub use temperature::{is_fahrenheit, other_scale, read_temperature, says_degrees};
pub use unit_name::name;
pub use units::{typed, unit_of};
pub use unread::Unread;
pub use wait::{read_seconds, read_wait};
pub use yields::{read_yield, unasked_yield, unread_yield, with_yield};
