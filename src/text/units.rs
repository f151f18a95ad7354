//! What people call units.

use crate::quantity::Unit;

/// Names a unit may be typed by, lower case and singular; the first is what we write.
const NAMES: &[(Unit, &[&str])] = &[
    (Unit::Millilitre, &["ml", "millilitre", "milliliter", "mil", "cc"]),
    (Unit::Centilitre, &["cl", "centilitre", "centiliter"]),
    (Unit::Decilitre, &["dl", "decilitre", "deciliter"]),
    (Unit::Litre, &["l", "litre", "liter", "ltr", "lt"]),
    (Unit::Ounce, &["oz", "ounce", "fl oz", "floz", "fluid ounce", "fl ounce", "onz", "onza", "unze", "once", "oncia"]),
    (Unit::UsFluidOunce, &["us oz", "us fl oz", "fl oz us", "oz us", "us ounce", "us fluid ounce"]),
    (
        Unit::ImperialFluidOunce,
        &["imp oz", "imp fl oz", "imperial oz", "imperial ounce", "imperial fl oz", "fl oz imp", "uk oz", "uk fl oz"],
    ),
    (Unit::Dash, &["dash", "dashes", "ds", "spritzer", "trait", "golpe"]),
    (Unit::Drop, &["drop", "gtt", "tropfen", "goutte", "gota", "goccia", "gocce"]),
    (Unit::FluidDram, &["fl dr", "fl dram", "fluid dram", "fl drachm", "fluid drachm"]),
    (Unit::Barspoon, &["bsp", "barspoon", "bar spoon", "bs"]),
    (
        Unit::Teaspoon,
        &[
            "tsp",
            "teaspoon",
            "tl",
            "teelöffel",
            "c à c",
            "càc",
            "cac",
            "cuillère à café",
            "cuillères à café",
            "cucharadita",
            "cucchiaino",
            "cucchiaini",
        ],
    ),
    (
        Unit::Tablespoon,
        &[
            "tbsp",
            "tablespoon",
            "tbs",
            "el",
            "esslöffel",
            "eßlöffel",
            "c à s",
            "càs",
            "cas",
            "cuillère à soupe",
            "cuillères à soupe",
            "cucharada",
            "cucchiaio",
            "cucchiai",
        ],
    ),
    (Unit::Cup, &["cup"]),
    (Unit::Gill, &["gill"]),
    (Unit::ImperialGill, &["imp gill", "imperial gill", "uk gill"]),
    (Unit::Pint, &["pint", "pt"]),
    (Unit::ImperialPint, &["imp pint", "imperial pint", "uk pint", "imp pt"]),
    (Unit::Quart, &["quart", "qt"]),
    (Unit::Gallon, &["gal", "gallon", "us gallon", "us gal"]),
    (Unit::ImperialGallon, &["imp gal", "imperial gallon", "uk gallon", "imp gallon"]),
    // "gr" is a gram, as kitchens write it.
    (Unit::Grain, &["grain"]),
    (Unit::Gram, &["g", "gram", "gramme", "gr", "gm"]),
    (Unit::Kilogram, &["kg", "kilo", "kilogram"]),
    (
        Unit::OunceWeight,
        &["oz weight", "oz wt", "ounce weight", "wt oz", "weight oz", "oz by weight", "oz av", "oz avoirdupois"],
    ),
    (Unit::Pound, &["lb", "pound"]),
];

/// The short name that we write, and that can be typed back.
#[must_use]
pub fn typed(unit: Unit) -> &'static str {
    NAMES.iter().find(|(known, _)| *known == unit).map_or("", |(_, names)| names[0])
}

/// The unit of this name, in any case, singular or plural, with dots, brackets and spaces forgiven.
#[must_use]
pub fn unit_of(word: &str) -> Option<Unit> {
    named(&[word])
}

/// The unit that words name together.
fn named(words: &[&str]) -> Option<Unit> {
    let is_joint = |c: char| c.is_whitespace() || matches!(c, '.' | ',' | ':' | '(' | ')');
    let mut name = String::with_capacity(24);
    for part in words.iter().flat_map(|word| word.split(is_joint)).filter(|part| !part.is_empty()) {
        if !name.is_empty() {
            name.push(' ');
        }
        name.push_str(part);
    }
    name.make_ascii_lowercase();
    let known = |name: &str| NAMES.iter().find(|(_, names)| names.contains(&name)).map(|(unit, _)| *unit);
    known(&name).or_else(|| name.strip_suffix('s').and_then(known))
}

/// What the names of several words begin with, so that other lines are not searched for them.
const LONG_NAMES_BEGIN: &str = "bcfiouw";
/// Most words of a name.
pub(super) const LONGEST_NAME: usize = 4;

/// The longest run of words, from the first, that names a unit, and how many words it takes.
pub(super) fn leading_unit(words: &[&str]) -> Option<(Unit, usize)> {
    let may_be_long =
        words.first()?.trim_start_matches('(').starts_with(|c: char| LONG_NAMES_BEGIN.contains(c.to_ascii_lowercase()));
    let most = if may_be_long { words.len().min(LONGEST_NAME) } else { 1 };
    (1..=most).rev().find_map(|count| named(&words[..count]).map(|unit| (unit, count)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Conventions;
    use crate::text::{Decimal, name};

    #[test]
    fn every_unit_can_be_typed_back() {
        for unit in Unit::ALL {
            assert_eq!(unit_of(typed(unit)), Some(unit), "{unit:?}");
            assert!(!name(unit, &Conventions::default(), Decimal::Point).is_empty());
        }
    }

    #[test]
    fn names_of_several_words_begin_as_said() {
        let long = NAMES.iter().flat_map(|(_, names)| names.iter()).filter(|name| name.contains(' '));
        assert!(long.clone().count() > 20);
        for name in long {
            assert!(name.starts_with(|c| LONG_NAMES_BEGIN.contains(c)), "{name}");
        }
    }

    #[test]
    fn no_name_means_two_units() {
        let mut names: Vec<&str> = NAMES.iter().flat_map(|(_, names)| names.iter().copied()).collect();
        let total = names.len();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), total);
    }

    #[test]
    fn forgives_case_plural_and_dots() {
        for (text, unit) in [
            ("ML", Unit::Millilitre),
            ("Ozs", Unit::Ounce),
            ("fl. oz.", Unit::Ounce),
            ("fl oz (US)", Unit::UsFluidOunce),
            ("oz (weight)", Unit::OunceWeight),
            ("Dashes", Unit::Dash),
            ("bar  spoons", Unit::Barspoon),
            ("lbs", Unit::Pound),
            ("Fl. Drs", Unit::FluidDram),
            ("gills", Unit::Gill),
            ("grains", Unit::Grain),
            ("gr", Unit::Gram),
        ] {
            assert_eq!(unit_of(text), Some(unit), "{text}");
        }
        assert_eq!(unit_of("furlong"), None);
    }

    #[test]
    fn takes_the_longest_unit_at_the_start_of_a_line() {
        assert_eq!(leading_unit(&["oz", "weight", "sugar"]), Some((Unit::OunceWeight, 2)));
        assert_eq!(leading_unit(&["oz", "gin"]), Some((Unit::Ounce, 1)));
        assert_eq!(leading_unit(&["fl", "dr", "bitters"]), Some((Unit::FluidDram, 2)));
        // A dram alone is a pour of whisky to one, and a weight to another.
        assert_eq!(leading_unit(&["dram", "whisky"]), None);
        assert_eq!(leading_unit(&["mint", "leaves"]), None);
    }
}
