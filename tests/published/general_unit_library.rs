//! Every unit with a definition, against a general-purpose calculator from the registry.
//!
//! Source: fend-core 1.5 (its own table of units, kept apart from ours).

use meniscus::quantity::{Conventions, Size, Unit};

use crate::near;

fn ask(expression: &str) -> f64 {
    let mut context = fend_core::Context::new();
    let answer = fend_core::evaluate(expression, &mut context).expect(expression);
    let text = answer.get_main_result().trim_start_matches("approx. ");
    text.split_whitespace().next().and_then(|number| number.parse().ok()).expect(text)
}

#[test]
fn agrees_unit_by_unit() {
    let ours = |unit: Unit| match unit.size(&Conventions::default()) {
        Size::Volume(one) => one.ml(),
        Size::Mass(one) => one.g(),
    };
    let table = [
        (Unit::Millilitre, "1 ml to ml"),
        (Unit::Centilitre, "1 cl to ml"),
        (Unit::Decilitre, "1 dl to ml"),
        (Unit::Litre, "1 litre to ml"),
        (Unit::Ounce, "1 floz to ml"),
        (Unit::UsFluidOunce, "1 floz to ml"),
        (Unit::Teaspoon, "1 teaspoon to ml"),
        (Unit::Tablespoon, "1 tablespoon to ml"),
        (Unit::Cup, "1 cup to ml"),
        (Unit::FluidDram, "1 fluid_dram to ml"),
        (Unit::Gill, "1 gill to ml"),
        (Unit::Pint, "1 pint to ml"),
        (Unit::Quart, "1 quart to ml"),
        (Unit::Gallon, "1 gallon to ml"),
        (Unit::Grain, "1 grain to g"),
        (Unit::Gram, "1 g to g"),
        (Unit::Kilogram, "1 kg to g"),
        (Unit::OunceWeight, "1 oz to g"),
        (Unit::Pound, "1 lb to g"),
    ];
    for (unit, expression) in table {
        // It prints ten significant digits or so.
        near(ours(unit), ask(expression), ours(unit) * 1e-9, expression);
    }
    // It knows no imperial volumes (nist_units.rs checks those), and dash, drop and barspoon have no definition.
    assert_eq!(table.len(), Unit::ALL.len() - 7);
}
