//! Source: 21 CFR 101.9(b)(5)(viii), household measures on labels: "a teaspoon means 5 mL, a tablespoon
//! means 15 mL, a cup means 240 mL, 1 fl oz means 30 mL, and 1 oz in weight means 28 g" (read as quoted
//! in a public ticket of a unit standard, not from the regulation itself).

use meniscus::quantity::{Conventions, Ounce, Size, Unit};

use crate::near;

#[test]
fn a_house_with_a_round_ounce_measures_as_labels_do() {
    let house = Conventions { ounce: Ounce::Round30, ..Conventions::default() };
    for (unit, ml) in [(Unit::Teaspoon, 5.0), (Unit::Tablespoon, 15.0), (Unit::Cup, 240.0), (Unit::Ounce, 30.0)] {
        let Size::Volume(one) = unit.size(&house) else { panic!("{unit:?} is poured") };
        near(one.ml(), ml, 1e-9, "label measure");
    }
}

/// The rounding the rule makes, against NIST Handbook 44: 30 ml is 1.44 % over a US fluid ounce.
#[test]
fn the_round_ounce_is_known_to_be_round() {
    let round = Ounce::Round30.volume().ml() / Ounce::Us.volume().ml() - 1.0;
    near(round * 100.0, 1.44, 0.005, "percent");
}
