//! A phone with the built app on it: real Chromium, real taps.
//!
//! A missing browser or build is an error with the line that mends it, never a pass.

mod driver;
mod page;

pub use driver::{DESK, NARROW, PHONE, Phone, Setup, Shape};
pub use page::{CATCH_FILES, ROUTES};
