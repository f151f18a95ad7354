//! Milk washing has no published ratio that we know of.
//!
//! Common practice, no source: 1 oz of whole milk to a drink of 5¾ oz; usual range 1:3 to 1:6.

use meniscus::craft::milk_wash::{drink_for, milk_for};
use meniscus::quantity::{Ratio, Volume};
use meniscus::substance::milk::USUAL_DRINK_PER_MILK;

use crate::near;

#[test]
fn an_ounce_of_milk_to_a_drink_of_five_and_three_quarters() {
    let ratio = Ratio::from_value(5.75).expect("a ratio");
    let ounce = Volume::US_FLUID_OUNCE;
    let wash = milk_for(ounce * ratio, ratio).expect("a wash");
    near(wash.milk.ml(), ounce.ml(), 1e-9, "milk");
    near(drink_for(ounce, ratio).drink.ml(), 170.047_794_984, 1e-6, "drink");
    assert!(USUAL_DRINK_PER_MILK.contains(&5.75));
}
