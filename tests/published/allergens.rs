//! Allergens against the lists of the law.

use meniscus::book::{Allergen, LIBRARY, allergens_in};

/// The nine of the United States: FALCPA 2004 with sesame of the FASTER Act 2021. From memory.
const UNITED_STATES: [&str; 9] =
    ["milk", "eggs", "fish", "shellfish", "almonds", "wheat", "peanuts", "soybeans", "sesame"];

/// The fourteen of the European Union: Regulation (EU) 1169/2011, Annex II. From memory.
const EUROPEAN_UNION: [&str; 14] = [
    "wheat",
    "crustaceans",
    "eggs",
    "fish",
    "peanuts",
    "soybeans",
    "milk",
    "almonds",
    "celery",
    "mustard",
    "sesame",
    "sulphites",
    "lupin",
    "molluscs",
];

/// Every word of both lists in a line of a spec is told.
#[test]
fn what_the_law_lists_is_declared() {
    for word in UNITED_STATES.iter().chain(&EUROPEAN_UNION) {
        assert_eq!(allergens_in(&format!("30 ml {word} syrup")).count(), 1, "{word}");
    }
    // And what no law lists is not.
    assert_eq!(allergens_in("30 ml pear cordial").count(), 0);
}

/// Regulation (EU) 1169/2011, Annex II no. 7: milk and products of it, lactose included. A milk-washed drink is one.
#[test]
fn milk_is_declared() {
    for key in ["whole-milk", "skim-milk", "cream", "yoghurt"] {
        let row = LIBRARY.iter().find(|row| row.key == key).expect("in the library");
        assert!(row.allergens.contains(&Allergen::Milk), "{key}");
    }
}
