//! Service: mid-shift, one drink at a time.

pub mod aim;
pub mod balance;
pub mod chill;
pub mod glass;
pub mod ice;
pub mod measure;
pub mod scale;

use crate::screen::Tool;
use crate::screen::route::Route;

/// The tool of a route, as it starts; none for one of another place.
#[must_use]
pub fn tool(route: Route) -> Option<Box<dyn Tool>> {
    Some(match route {
        Route::Measure => Box::new(measure::MeasureForm::default()),
        Route::Scale => Box::new(scale::ScaleForm::default()),
        Route::Chill => Box::new(chill::ChillForm::default()),
        Route::Balance => Box::new(balance::BalanceForm::default()),
        Route::Ice => Box::new(ice::IceForm::default()),
        Route::Aim => Box::new(aim::AimForm::default()),
        Route::Glass => Box::new(glass::GlassForm::default()),
        _ => return None,
    })
}
