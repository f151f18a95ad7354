//! A phone with the built app on it: real Chromium, real taps.
//!
//! A missing browser or build is an error with the line that mends it, never a pass.

use anyhow::Result;
use meniscus::screen::route::{Record, Route};
use meniscus::screen::{Bench, Block, Field, Input, Texts};
use meniscus::tool;
use xtask::server::Serving;

mod builds;
mod driver;
mod engine;
mod host;
mod page;
mod twin;
mod version;

pub use builds::{build_of, marked_build};
pub use driver::{DESK, NARROW, PHONE, Phone, Setup, Shape};
pub use engine::Saving;
pub use host::{FAULTS, Fault, Host};
pub use page::CATCH_FILES;
pub use twin::Twin;

/// Serves the app and starts a phone on which a script runs in every page before anything else.
///
/// # Errors
/// When there is no build, no browser, or it does not start.
pub async fn phone_with(before: &str) -> Result<(Serving, Phone)> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup { before: before.into(), ..Setup::default() }).await?;
    Ok((serving, phone))
}

/// The address of every screen, as the app's own table has it.
pub fn routes() -> impl Iterator<Item = &'static str> {
    Route::ALL.iter().map(|route| route.row().path)
}

/// Every screen that has a number field: its address, and the name of the first; of a record, one that it has when it is
/// open.
#[must_use]
pub fn number_fields() -> Vec<(&'static str, &'static str)> {
    let first = |block: &Block| match block {
        Block::Field(Field { name, input: Input::Amount(_), .. }) => Some(*name),
        _ => None,
    };
    let field = |route: &Route| match route.row().record {
        Some(Record::Run) => Some("got"),
        Some(Record::Spec) => Some("holds"),
        Some(Record::Ingredient) => Some("strength"),
        None => tool::screen(*route, &Texts::new(), &Bench::default()).blocks.iter().find_map(first),
    };
    Route::ALL.iter().filter_map(|route| Some((route.row().path, field(route)?))).collect()
}
