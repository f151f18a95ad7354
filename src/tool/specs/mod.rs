//! Specs: the book.

pub mod all;
mod arrived;
pub mod backup;
pub mod card;
pub mod cost;
pub mod find;
mod method;
mod remarks;
mod served;
pub mod sides;
pub mod texts;

use crate::screen::Tool;
use crate::screen::route::Route;

/// The tool of a route, as it starts; none for one of another place.
#[must_use]
pub fn tool(route: Route) -> Option<Box<dyn Tool>> {
    Some(match route {
        Route::Specs => Box::new(all::SpecsForm::default()),
        Route::Card => Box::new(card::CardForm::default()),
        Route::Cost => Box::new(cost::CostForm::default()),
        Route::Find => Box::new(find::FindForm::default()),
        Route::Sides => Box::new(sides::SidesForm::default()),
        Route::Backup => Box::new(backup::BackupForm::default()),
        _ => return None,
    })
}
