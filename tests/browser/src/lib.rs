//! A phone with the built app on it: real Chromium, real taps.
//!
//! A missing browser or build is an error with the line that mends it, never a pass.

use anyhow::Result;
use xtask::server::Serving;

mod driver;
mod page;

pub use driver::{DESK, NARROW, PHONE, Phone, Setup, Shape};
pub use page::{CATCH_FILES, ROUTES};

/// Serves the app and starts a phone on which a script runs in every page before anything else.
///
/// # Errors
/// When there is no build, no browser, or it does not start.
pub async fn phone_with(before: &str) -> Result<(Serving, Phone)> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup { before: before.into(), ..Setup::default() }).await?;
    Ok((serving, phone))
}

/// Every tool that has a number field: its address, and the name of that field.
#[must_use]
pub fn number_fields() -> Vec<(&'static str, &'static str)> {
    vec![
        ("service/measure", "amount"),
        ("service/scale", "serves"),
        ("service/balance", "makes"),
        ("prep/fruit", "wanted"),
        ("prep/clear", "juice"),
        ("prep/cordial", "juice"),
        ("prep/milk-wash", "drink"),
        ("prep/infuse", "saline"),
        ("prep/acid", "juice"),
        ("prep/syrup", "amount"),
        ("prep/strength", "spirit"),
        ("batch/serves", "made"),
        ("batch/run", "got"),
        ("batch/label", "days"),
        ("specs/spec", "holds"),
        ("shelf", "dash"),
        ("shelf/ingredients", "strength"),
    ]
}
