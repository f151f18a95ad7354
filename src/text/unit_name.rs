//! What units are called in a list of equivalents.

use super::number::Decimal;
use super::show::trimmed;
use crate::quantity::{Conventions, Size, Unit};

/// The name for a list of equivalents, which says which definition is meant.
#[must_use]
pub fn name(unit: Unit, house: &Conventions, decimal: Decimal) -> String {
    let size = match unit.size(house) {
        Size::Volume(one) => one.ml(),
        Size::Mass(one) => one.g(),
    };
    let with_ml = |name: &str| format!("{name} ({} ml)", trimmed(size, decimal));
    match unit {
        Unit::Millilitre => "millilitres".into(),
        Unit::Centilitre => "centilitres".into(),
        Unit::Decilitre => "decilitres".into(),
        Unit::Litre => "litres".into(),
        Unit::Ounce => with_ml("house oz"),
        Unit::UsFluidOunce => "US fl oz".into(),
        Unit::ImperialFluidOunce => "imperial fl oz".into(),
        Unit::Dash => with_ml("dashes"),
        Unit::Drop => with_ml("drops"),
        Unit::FluidDram => with_ml("fluid drams"),
        Unit::Barspoon => with_ml("barspoons"),
        Unit::Teaspoon => with_ml("teaspoons"),
        Unit::Tablespoon => with_ml("tablespoons"),
        Unit::Cup => with_ml("cups"),
        Unit::Gill => with_ml("gills"),
        Unit::ImperialGill => "imperial gills".into(),
        Unit::Pint => with_ml("pints"),
        Unit::ImperialPint => "imperial pints".into(),
        Unit::Quart => with_ml("quarts"),
        Unit::Gallon => with_ml("gallons"),
        Unit::ImperialGallon => "imperial gallons".into(),
        Unit::Grain => "grains".into(),
        Unit::Gram => "grams".into(),
        Unit::Kilogram => "kilograms".into(),
        Unit::OunceWeight => "ounces by weight".into(),
        Unit::Pound => "pounds".into(),
    }
}
