//! Batch: bottling, and getting it all ready in time.

pub mod bottle_it;
pub mod bubbles;
pub mod buy;
pub mod label;
pub mod run;
pub mod serves;

use crate::screen::Tool;
use crate::screen::route::Route;

/// The tool of a route, as it starts; none for one of another place.
#[must_use]
pub fn tool(route: Route) -> Option<Box<dyn Tool>> {
    Some(match route {
        Route::BottleIt => Box::new(bottle_it::BottleItForm::default()),
        Route::Serves => Box::new(serves::ServesForm::default()),
        Route::Run => Box::new(run::RunForm::default()),
        Route::Bubbles => Box::new(bubbles::BubblesForm::default()),
        Route::Buy => Box::new(buy::BuyForm::default()),
        Route::Label => Box::new(label::LabelForm::default()),
        _ => return None,
    })
}
