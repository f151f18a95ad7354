//! Shelf: what stands in this bar, and how the app behaves.

pub mod ingredients;
pub mod settings;

use crate::screen::Tool;
use crate::screen::route::Route;

/// The tool of a route, as it starts; none for one of another place.
#[must_use]
pub fn tool(route: Route) -> Option<Box<dyn Tool>> {
    Some(match route {
        Route::Shelf => Box::new(settings::ShelfForm::default()),
        Route::Ingredients => Box::new(ingredients::OwnForm::default()),
        _ => return None,
    })
}
