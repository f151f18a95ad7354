//! The yields that the tools ask the shelf for, by name.

use crate::craft::clarify::Method;
use crate::craft::fruit::Product;
use crate::screen::{Choice, choice};
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
