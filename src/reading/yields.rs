//! The yields that the tools ask the shelf for, by name.

use crate::craft::clarify::Method;
use crate::craft::fruit::Product;
use crate::craft::milk_wash::COMES_THROUGH;
use crate::quantity::Ratio;
use crate::screen::{Bench, Choice, choice};
use crate::substance::fruit::{FRUIT, Fruit};

choice! { Product:
    Juice = "juice", "Juice";
    Filtered = "filtered", "Filtered juice";
    Puree = "puree", "Purée";
}

choice! { Method:
    Enzyme = "enzyme", "Enzyme";
    Agar = "agar", "Agar";
    Gelatin = "gelatin", "Gelatin";
    Rest = "rest", "Rest";
}

/// What comes through a milk wash.
pub(crate) const MILK_WASH: &str = "milk wash";

/// What comes through a milk wash of drink and milk together, and whether that is the bar's own figure.
pub(crate) fn through_milk(bench: &Bench) -> (Ratio, bool) {
    let own = bench.own_yield(MILK_WASH);
    let share = own.or_else(|| Ratio::from_value(COMES_THROUGH[1]).ok());
    (share.unwrap_or(Ratio::ONE), own.is_some())
}

/// What comes of a fruit: "lime juice".
pub(crate) fn of_fruit(fruit: &Fruit, product: Product) -> String {
    format!("{} {}", fruit.name, product.label().to_ascii_lowercase())
}

/// What comes clear of its juice: "lime by enzyme".
pub(crate) fn of_clear(fruit: &Fruit, method: Method) -> String {
    format!("{} by {}", fruit.name, method.label().to_ascii_lowercase())
}

/// Whether a tool asks for a yield of this name, in any case.
pub(crate) fn is_asked_for(name: &str) -> bool {
    let is_named = |asked: String| asked.eq_ignore_ascii_case(name);
    let of = |fruit: &Fruit| {
        Product::ALL.iter().any(|product| is_named(of_fruit(fruit, *product)))
            || Method::ALL.iter().any(|method| is_named(of_clear(fruit, *method)))
    };
    name.eq_ignore_ascii_case(MILK_WASH) || FRUIT.iter().any(of)
}
