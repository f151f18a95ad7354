//! Prep: ingredients made for the bar.

pub mod acid;
pub mod clarify;
pub mod cordial;
pub mod fruit;
pub mod infuse;
pub mod milk_wash;
pub mod strength;
pub mod syrup;

use crate::screen::Tool;
use crate::screen::route::Route;

/// The tool of a route, as it starts; none for one of another place.
#[must_use]
pub fn tool(route: Route) -> Option<Box<dyn Tool>> {
    Some(match route {
        Route::Fruit => Box::new(fruit::FruitForm::default()),
        Route::Clarify => Box::new(clarify::ClarifyForm::default()),
        Route::Cordial => Box::new(cordial::CordialForm::default()),
        Route::MilkWash => Box::new(milk_wash::MilkWashForm::default()),
        Route::Infuse => Box::new(infuse::InfuseForm::default()),
        Route::Acid => Box::new(acid::AcidForm::default()),
        Route::Syrup => Box::new(syrup::SyrupForm::default()),
        Route::Strength => Box::new(strength::StrengthForm::default()),
        _ => return None,
    })
}
