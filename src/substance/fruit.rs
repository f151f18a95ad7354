//! Fruit: what one weighs, and how much of it becomes juice or purée.
//!
//! Fresh fruit varies by a fifth and more with cultivar, season and the press: a bar's own yield goes before these.

/// A share of the whole fruit by weight: least, usual, most.
pub type Share = [f64; 3];

/// A fruit as it is bought.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fruit {
    /// Stable key, kept in saved data.
    pub key: &'static str,
    /// One of it.
    pub name: &'static str,
    /// Many of it.
    pub plural: &'static str,
    /// Grams each, whole.
    pub each: f64,
    /// What becomes juice, pressed.
    pub juice: Share,
    /// What becomes purée, sieved.
    pub puree: Share,
    /// Key of the ingredient that its juice is.
    pub ingredient: &'static str,
    /// Where the figures come from.
    pub source: &'static str,
}

/// Of juice, what comes through a fine filter: least, usual, most. Common practice, no source.
pub const FILTERED: Share = [0.8, 0.9, 0.95];

const PRACTICE: &str = "common practice, no source";
const LIME: &str = "UNECE Standard FFV-14 asks for 42 % juice at least, a minimum of the trade; 35 to 55 % and juice of one, 25 to 30 ml, from memory; weight common practice, no source";
const LEMON: &str = "UNECE Standard FFV-14 asks for 20 % juice at least; juice of one, 48 g, from memory (USDA); the rest common practice, no source";
const ORANGE: &str = "UNECE Standard FFV-14 asks for 35 % juice at least; juice of one, 86 g, from memory (USDA); the rest common practice, no source";

#[allow(clippy::too_many_arguments)]
const fn fruit(
    key: &'static str,
    name: &'static str,
    plural: &'static str,
    each: f64,
    juice: Share,
    puree: Share,
    ingredient: &'static str,
    source: &'static str,
) -> Fruit {
    Fruit { key, name, plural, each, juice, puree, ingredient, source }
}

/// The fruit, in the order of the list.
pub const FRUIT: &[Fruit] = &[
    fruit("lime", "lime", "limes", 65.0, [0.35, 0.45, 0.55], [0.45, 0.55, 0.65], "lime-juice", LIME),
    fruit("lemon", "lemon", "lemons", 120.0, [0.20, 0.40, 0.50], [0.40, 0.55, 0.65], "lemon-juice", LEMON),
    fruit("orange", "orange", "oranges", 190.0, [0.35, 0.45, 0.55], [0.50, 0.62, 0.70], "orange-juice", ORANGE),
    fruit(
        "grapefruit",
        "grapefruit",
        "grapefruit",
        400.0,
        [0.35, 0.47, 0.55],
        [0.5, 0.6, 0.7],
        "grapefruit-juice",
        PRACTICE,
    ),
    fruit("pear", "pear", "pears", 180.0, [0.50, 0.60, 0.70], [0.75, 0.82, 0.90], "pear-juice", PRACTICE),
    fruit("apple", "apple", "apples", 180.0, [0.50, 0.62, 0.72], [0.75, 0.82, 0.90], "apple-juice", PRACTICE),
    fruit("quince", "quince", "quinces", 250.0, [0.40, 0.50, 0.60], [0.65, 0.75, 0.82], "puree", PRACTICE),
    fruit("grape", "grape", "grapes", 5.0, [0.65, 0.72, 0.80], [0.75, 0.85, 0.92], "grape-juice", PRACTICE),
    fruit("plum", "plum", "plums", 65.0, [0.50, 0.60, 0.68], [0.75, 0.85, 0.92], "puree", PRACTICE),
    fruit("strawberry", "strawberry", "strawberries", 15.0, [0.55, 0.65, 0.75], [0.85, 0.92, 0.96], "puree", PRACTICE),
    fruit(
        "raspberry",
        "raspberry",
        "raspberries",
        4.0,
        [0.50, 0.60, 0.70],
        [0.70, 0.80, 0.88],
        "raspberry-puree",
        PRACTICE,
    ),
    fruit("blackberry", "blackberry", "blackberries", 6.0, [0.50, 0.60, 0.70], [0.70, 0.80, 0.88], "puree", PRACTICE),
    fruit(
        "passion-fruit",
        "passion fruit",
        "passion fruit",
        40.0,
        [0.20, 0.28, 0.35],
        [0.35, 0.42, 0.50],
        "passion-fruit",
        PRACTICE,
    ),
    fruit(
        "pomegranate",
        "pomegranate",
        "pomegranates",
        280.0,
        [0.30, 0.38, 0.45],
        [0.38, 0.45, 0.52],
        "pomegranate-juice",
        PRACTICE,
    ),
    fruit(
        "pineapple",
        "pineapple",
        "pineapples",
        1400.0,
        [0.40, 0.48, 0.55],
        [0.48, 0.55, 0.62],
        "pineapple-juice",
        PRACTICE,
    ),
    fruit("melon", "melon", "melons", 1500.0, [0.40, 0.48, 0.55], [0.48, 0.56, 0.62], "juice", PRACTICE),
    fruit("cucumber", "cucumber", "cucumbers", 350.0, [0.60, 0.70, 0.80], [0.88, 0.93, 0.97], "water", PRACTICE),
    fruit("tomato", "tomato", "tomatoes", 110.0, [0.55, 0.65, 0.75], [0.75, 0.85, 0.92], "tomato-juice", PRACTICE),
];

impl Fruit {
    /// The fruit of this key; the first for a key we do not know.
    #[must_use]
    pub fn of(key: &str) -> &'static Fruit {
        FRUIT.iter().find(|fruit| fruit.key == key).unwrap_or(&FRUIT[0])
    }
}
