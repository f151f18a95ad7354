//! Densities at 20 °C, for pouring by weight.

use crate::quantity::Density;

/// A liquid whose density is known well enough to weigh it out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Liquid {
    /// Stable key, kept in saved data.
    pub key: &'static str,
    /// Name in the trade's words.
    pub name: &'static str,
    /// Words in a line of a spec that mean this liquid, lower case.
    pub words: &'static [&'static str],
    /// Kilograms per cubic metre at 20 °C.
    pub kg_per_m3: f64,
    /// Where the figure comes from.
    pub source: &'static str,
}

impl Liquid {
    /// The density at 20 °C.
    ///
    /// Every row of [`LIQUIDS`] lies in the range of [`Density`], held by a test.
    #[must_use]
    pub fn density(&self) -> Density {
        Density::from_g_per_ml(self.kg_per_m3 / 1000.0).unwrap_or(Density::WATER)
    }
}

const OIML: &str = "OIML R 22 (1975), general formula at 20 °C";
const SUCROSE: &str = "sucrose solution, ICUMSA formula (Bubník et al. 1995) at 20 °C";
const COMMON: &str = "common practice, no source";
const MEMORY: &str = "from memory";
const EU_BRIX: &str = "as a sucrose solution of the minimum °Brix in Directive 2009/106/EC, ICUMSA formula";

/// The built-in list, in the order in which a guess tries them. A figure from memory or common practice says so.
pub const LIQUIDS: &[Liquid] = &[
    Liquid { key: "water", name: "Water", words: &["water", "soda"], kg_per_m3: 998.201, source: OIML },
    Liquid {
        key: "rich-syrup",
        name: "Rich syrup 2:1",
        words: &["rich syrup", "syrup 2:1", "2:1"],
        kg_per_m3: 1326.8,
        source: SUCROSE,
    },
    Liquid {
        key: "simple-syrup",
        name: "Simple syrup 1:1",
        words: &["syrup", "cordial", "grenadine"],
        kg_per_m3: 1229.65,
        source: SUCROSE,
    },
    Liquid {
        key: "puree", name: "Fruit purée", words: &["purée", "puree", "pulp"], kg_per_m3: 1040.0, source: COMMON
    },
    Liquid { key: "milk", name: "Whole milk", words: &["milk"], kg_per_m3: 1030.0, source: MEMORY },
    Liquid { key: "cream", name: "Cream", words: &["cream"], kg_per_m3: 1000.0, source: MEMORY },
    Liquid { key: "vermouth", name: "Vermouth", words: &["vermouth"], kg_per_m3: 1040.0, source: COMMON },
    Liquid {
        key: "liqueur",
        name: "Liqueur, sweet",
        words: &["liqueur", "aperitif", "amaro", "curaçao", "triple sec"],
        kg_per_m3: 1080.0,
        source: COMMON,
    },
    Liquid { key: "spirit-50", name: "Spirit, 50 % vol", words: &["overproof"], kg_per_m3: 930.142, source: OIML },
    Liquid {
        key: "spirit-40",
        name: "Spirit, 40 % vol",
        words: &[
            "gin", "vodka", "rum", "whisky", "whiskey", "brandy", "tequila", "mezcal", "pisco", "spirit", "bitters",
        ],
        kg_per_m3: 948.045,
        source: OIML,
    },
    Liquid {
        key: "citrus",
        name: "Lemon or lime juice",
        words: &["lemon", "lime"],
        kg_per_m3: 1029.9,
        source: EU_BRIX,
    },
    Liquid {
        key: "orange",
        name: "Orange or apple juice",
        words: &["orange", "apple", "grapefruit", "pear", "juice"],
        kg_per_m3: 1043.1,
        source: EU_BRIX,
    },
    Liquid { key: "honey", name: "Honey", words: &["honey"], kg_per_m3: 1420.0, source: MEMORY },
];

/// The liquid with this key.
#[must_use]
pub fn liquid(key: &str) -> Option<&'static Liquid> {
    LIQUIDS.iter().find(|liquid| liquid.key == key)
}

/// A sensible guess from the words of a recipe line; none when nothing fits.
///
/// Whole words only, the first row of [`LIQUIDS`] that fits: "pear brandy" is a spirit before
/// it is a juice, and "ginger syrup" is not gin.
#[must_use]
pub fn guess(name: &str) -> Option<&'static Liquid> {
    let name = name.to_ascii_lowercase();
    let is_letter = |c: char| c.is_ascii_alphabetic() || !c.is_ascii();
    let stands_alone = |word: &&'static str| {
        let mut before = None;
        name.char_indices().any(|(at, c)| {
            let starts = !before.replace(c).is_some_and(is_letter);
            starts && name[at..].strip_prefix(*word).is_some_and(|rest| !rest.chars().next().is_some_and(is_letter))
        })
    };
    LIQUIDS.iter().find(|liquid| liquid.words.iter().any(stands_alone))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_a_density_with_a_source_and_its_own_key() {
        for liquid in LIQUIDS {
            assert!((liquid.density().g_per_ml() * 1000.0 - liquid.kg_per_m3).abs() < 1e-9, "{}", liquid.key);
            assert!(!liquid.source.is_empty(), "{}", liquid.key);
            assert_eq!(LIQUIDS.iter().filter(|other| other.key == liquid.key).count(), 1, "{}", liquid.key);
        }
    }

    #[test]
    fn guesses_from_the_last_noun() {
        for (name, key) in [
            ("London dry gin", "spirit-40"),
            ("pear brandy", "spirit-40"),
            ("Ginger syrup", "simple-syrup"),
            ("rich syrup 2:1", "rich-syrup"),
            ("lemon juice", "citrus"),
            ("pear juice", "orange"),
            ("honey", "honey"),
            ("apple purée", "puree"),
            ("whole milk", "milk"),
        ] {
            assert_eq!(guess(name).map(|liquid| liquid.key), Some(key), "{name}");
        }
        assert_eq!(guess("mint leaves"), None);
        assert_eq!(guess("😀"), None);
    }
}
