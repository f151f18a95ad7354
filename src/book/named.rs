//! Which ingredient of the library a name means, and what a bar has measured of its own.

use super::ingredient::{Handled, Ingredient};
use super::library::LIBRARY;
use crate::quantity::{Abv, Acidity, Brix, Mass, Ratio};
use crate::substance::acid::Acid;

/// What a bar has measured of an ingredient; it goes before the library's figure.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Measured {
    /// Strength at 20 °C.
    pub strength: Option<Abv>,
    /// Sugar in a litre.
    pub sugar_per_litre: Option<Mass>,
    /// What a refractometer shows, which is all that is dissolved; sugar alone in a syrup.
    pub reads: Option<Brix>,
    /// What a titration finds, as citric acid.
    pub acid: Option<Acidity>,
    /// What else is known to be in it.
    pub holds: Holds,
}

/// What a thing that was made holds besides strength, sugar and titratable acid, so that it stays what it is. In a litre.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Holds {
    /// Its acids, in the order of [`Acid::ALL`], with what its salts hold of them.
    pub acids: Option<[Mass; Acid::ALL.len()]>,
    /// Glucose and fructose, of its sugar.
    pub invert: Option<Mass>,
    /// Strong cations less strong anions, mmol.
    pub salts: Option<Ratio>,
    /// Anything else dissolved.
    pub solids: Option<Mass>,
}

impl Holds {
    /// What is known here, and from `other` what is not.
    #[must_use]
    pub fn or(self, other: Holds) -> Holds {
        Holds {
            acids: self.acids.or(other.acids),
            invert: self.invert.or(other.invert),
            salts: self.salts.or(other.salts),
            solids: self.solids.or(other.solids),
        }
    }
}

impl Measured {
    /// Whether nothing was measured.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        *self == Measured::default()
    }
}

/// What a line of a spec is taken to be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taken {
    /// An ingredient of the library.
    pub ingredient: &'static Ingredient,
    /// What goes before its figures.
    pub measured: Measured,
}

/// The ingredient of the library that a name means: that whose phrase ends last in it, by the longest phrase.
///
/// English puts the noun last, so "lemon-leaf gin" is a gin and "gin cordial" a cordial. Whole words
/// only: "ginger" is not gin. "Gin with tea" and "gin, tea-infused" are gins; "lemon peel" and "alcohol-free gin" are
/// nothing we know.
#[must_use]
pub fn named(name: &str) -> Option<&'static Ingredient> {
    taken_as(name, &[]).map(|taken| taken.ingredient)
}

/// Words that make of a name something that nothing here is like, wherever they stand.
const NOTHING_LIKE: [&str; 7] =
    ["alcohol-free", "non-alcoholic", "nonalcoholic", "alcoholfree", "dealcoholised", "zero", "condensed"];

/// Phrases that, last in a name, make of it something that nothing here is like.
const ENDS_UNLIKE: [&str; 24] = [
    "peel",
    "peels",
    "zest",
    "twist",
    "beans",
    "leaf",
    "leaves",
    "sprig",
    "sprigs",
    "wedge",
    "wheel",
    "slice",
    "slices",
    "skin",
    "skins",
    "seeds",
    "essence",
    "oil",
    "extract",
    "coconut milk",
    "coconut water",
    "coconut rum",
    "apple cider",
    "sweet wine",
];

/// Words after which a name says what was done to the ingredient.
const DONE_TO_IT: [&str; 4] = [" with ", " infused", " washed", ", "];

/// As [`named`], with a bar's own ingredients before the library's of the same length.
#[must_use]
pub fn taken_as(name: &str, own: &[(String, Taken)]) -> Option<Taken> {
    // A bar's own name may hold any word.
    let own_name = own.iter().rev().find(|(phrase, _)| phrase.eq_ignore_ascii_case(name.trim()));
    if let Some((_, taken)) = own_name {
        return Some(*taken);
    }
    let ends_in = |end: usize, words: &[&str]| words.iter().any(|word| ends_with_words(&name[..end], word));
    if word_ends(name).any(|end| ends_in(end, &NOTHING_LIKE)) {
        return None;
    }
    // "Orange liqueur, dry" is the whole of it; of "gin, tea-infused" and "gin with tea" the beginning counts.
    let to_the_end = word_ends(name).next().map(|end| best_at(&name[..end], own));
    let cut = |at: usize| DONE_TO_IT.iter().any(|word| name[at..].starts_with(word));
    let end = name.char_indices().map(|(at, _)| at).find(|at| *at > 0 && cut(*at)).unwrap_or(name.len());
    match to_the_end? {
        End::Found(taken) if end == name.len() || name[end..].starts_with(',') => return Some(taken),
        End::Unlike => return None,
        _ => {}
    }
    word_ends(&name[..end]).find_map(|end| match best_at(&name[..end], own) {
        End::Found(taken) => Some(Some(taken)),
        End::Unlike => Some(None),
        End::Unknown => None,
    })?
}

/// What a text ends in.
enum End {
    Found(Taken),
    /// A word that makes it something that nothing here is like.
    Unlike,
    Unknown,
}

fn best_at(text: &str, own: &[(String, Taken)]) -> End {
    if ENDS_UNLIKE.iter().any(|phrase| ends_with_words(text, phrase)) {
        return End::Unlike;
    }
    let mut best =
        ending_with(text).map(|(ingredient, length)| (Taken { ingredient, measured: Measured::default() }, length));
    for (phrase, taken) in own {
        if best.is_none_or(|(_, length)| phrase.len() >= length) && ends_with_words(text, phrase) {
            best = Some((*taken, phrase.len()));
        }
    }
    best.map_or(End::Unknown, |(taken, _)| End::Found(taken))
}

/// As [`named`], when the phrase is the end of the name: of "coffee beans" nothing is coffee.
#[must_use]
pub fn named_to_the_end(name: &str) -> Option<&'static Ingredient> {
    word_ends(name).next().and_then(|end| ending_with(&name[..end])).map(|(ingredient, _)| ingredient)
}

/// Words that end the name of what is pressed from a fruit.
const PRESSED: [&str; 6] = ["juice", "purée", "puree", "pulp", "vinegar", "verjus"];

/// Whether a name is of something poured, so that it wants an amount with a unit. A bare "lime" is a fruit; eggs, ice and
/// spoons of sugar are counted.
#[must_use]
pub fn is_poured(name: &str) -> bool {
    named_to_the_end(name).is_some_and(|ingredient| match ingredient.handled {
        Handled::Poured => true,
        Handled::Counted => false,
        Handled::ByName => PRESSED.iter().any(|noun| name.ends_with(noun)),
    })
}

/// Ingredients that share a longer word with a name, for a guess at what it may be like; three at most.
pub fn alike(name: &str) -> impl Iterator<Item = &'static Ingredient> {
    let shares = |ingredient: &&'static Ingredient| {
        let theirs = || ingredient.name.split(|c| !is_of_word(c));
        name.split(|c| !is_of_word(c))
            .filter(|word| word.len() >= 4)
            .any(|word| theirs().any(|their| their.eq_ignore_ascii_case(word)))
    };
    LIBRARY.iter().filter(shares).take(3)
}

fn is_of_word(c: char) -> bool {
    c.is_ascii_alphanumeric() || !c.is_ascii()
}

/// Where words end, the last first.
fn word_ends(name: &str) -> impl Iterator<Item = usize> {
    let mut after = false;
    name.char_indices().rev().filter_map(move |(at, c)| {
        let ends = is_of_word(c) && !after;
        after = is_of_word(c);
        ends.then_some(at + c.len_utf8())
    })
}

fn ending_with(text: &str) -> Option<(&'static Ingredient, usize)> {
    let mut best: Option<(&'static Ingredient, usize)> = None;
    for ingredient in LIBRARY {
        for phrase in [ingredient.name].into_iter().chain(ingredient.names.iter().copied()) {
            if best.is_none_or(|(_, length)| phrase.len() > length) && ends_with_words(text, phrase) {
                best = Some((ingredient, phrase.len()));
            }
        }
    }
    best
}

fn ends_with_words(text: &str, phrase: &str) -> bool {
    let phrase = phrase.strip_suffix(" %").unwrap_or(phrase); // "Saline, 20 %" ends in the word 20
    let Some(start) = text.len().checked_sub(phrase.len()) else { return false };
    // Most differ in their last letter already.
    let last = |text: &str| text.bytes().next_back().map(|byte| byte.to_ascii_lowercase());
    last(text) == last(phrase)
        && text.as_bytes()[start..].eq_ignore_ascii_case(phrase.as_bytes())
        && text.get(..start).is_some_and(|before| !before.ends_with(is_of_word))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_noun_decides() {
        for (name, key) in [
            ("London dry gin", "london-dry-gin"),
            ("gin", "london-dry-gin"),
            ("GIN", "london-dry-gin"),
            ("lemon-leaf gin", "london-dry-gin"),
            ("gin cordial", "cordial"),
            ("Ginger syrup", "ginger-syrup"),
            ("pear brandy", "pear-brandy"),
            ("pear", "pear-juice"),
            ("juice of lemon", "lemon-juice"),
            ("fresh lime juice", "lime-juice"),
            ("lime juice, strained", "lime-juice"),
            ("rich simple syrup", "rich-syrup"),
            ("gin infused with tea", "london-dry-gin"),
            ("gin, tea-infused", "london-dry-gin"),
            ("butter-washed bourbon", "bourbon"),
            ("Irish cream", "cream-liqueur"),
            ("port wine", "ruby-port"),
            ("cream soda", "sweet-soda"),
            ("1 whole egg", "whole-egg"),
            ("Orange liqueur, sweet", "blue-orange-liqueur"),
            ("syrup", "simple-syrup"),
            ("honey syrup", "honey-syrup"),
            ("orange bitters", "orange-bitters"),
            ("cherry bark bitters", "aromatic-bitters"),
            ("banana liqueur", "liqueur"),
            ("apple puree", "puree"),
            ("raspberry purée", "raspberry-puree"),
            ("whole milk", "whole-milk"),
            ("almond milk", "almond-drink"),
            ("soda", "soda-water"),
            ("cachaca", "cachaca"),
            ("egg white", "egg-white"),
            ("saline 20 %", "saline"),
        ] {
            assert_eq!(named(name).map(|ingredient| ingredient.key), Some(key), "{name}");
        }
        for name in [
            "mint leaves",
            "😀",
            "",
            "moon dust",
            "ginnel",
            "alcohol-free gin",
            "non-alcoholic beer",
            "lemon peel",
            "lime zest",
            "coffee beans",
            "coconut milk",
            "sweetened condensed milk",
        ] {
            assert_eq!(named(name), None, "{name}");
        }
        assert_eq!(named_to_the_end("coffee beans"), None);
    }

    #[test]
    fn every_name_of_the_library_means_its_own_row() {
        for row in LIBRARY {
            for phrase in [row.name].iter().chain(row.names) {
                assert_eq!(named(phrase).map(|found| found.key), Some(row.key), "{phrase}");
            }
        }
    }

    #[test]
    fn guesses_share_a_word() {
        let keys: Vec<&str> = alike("wild cherry thing").map(|ingredient| ingredient.key).collect();
        assert_eq!(keys, ["cherry-liqueur", "cherry-distillate-liqueur"]);
        assert_eq!(alike("moon dust").count(), 0);
    }
}
