//! Which ingredient of the library a name means, and what a bar has measured of its own.

mod abroad;
mod near;

pub use abroad::{abroad, folded};
pub use near::nearly;

use super::ingredient::{Handled, Ingredient, Kind};
use super::library::{LIBRARY, ingredient};
use crate::quantity::{Abv, Acidity, Brix, Mass, Ratio};
use crate::substance::acid::Acid;
use crate::substance::mix::Mix;

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
    /// Whether it is made here, and of what.
    pub made: Made,
}

/// Whether a thing is made here of others, and what is in it then.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Made {
    /// It is bought, or goes by its figures.
    #[default]
    No,
    /// It is the prep of this place in the list of the bench, with all that is in it, in some amount; none where that
    /// cannot be known.
    Here(u32, Option<Mix>),
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
    /// Whether nothing was measured, whether it is made here or not.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        Measured { made: Made::No, ..*self } == Measured::default()
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

/// What a name may mean.
#[expect(clippy::large_enum_variant, reason = "nearly all are `As`, and it is copied, not kept")]
#[derive(Clone, Debug, PartialEq)]
pub enum Fit {
    /// This; and the phrase that it is read as, where it is spelt otherwise.
    As(Taken, String),
    /// One of these names of the library: it is asked which.
    Maybe(Vec<&'static str>),
    /// Nothing here.
    Nothing,
}

/// As [`fit`], where that is one thing.
#[must_use]
pub fn taken_as(name: &str, own: &[(String, Taken)]) -> Option<Taken> {
    if let Fit::As(taken, _) = fit(name, own) { Some(taken) } else { None }
}

/// As [`named`], with a bar's own ingredients before the library's of the same length; what is misspelt or may mean two
/// things says so.
#[must_use]
pub fn fit(name: &str, own: &[(String, Taken)]) -> Fit {
    let exactly = |taken| Fit::As(taken, String::new());
    // A bar's own name may hold any word.
    let own_name = own.iter().rev().find(|(phrase, _)| phrase.eq_ignore_ascii_case(name.trim()));
    if let Some((_, taken)) = own_name {
        return exactly(*taken);
    }
    let ends_in = |end: usize, words: &[&str]| words.iter().any(|word| ends_with_words(&name[..end], word));
    if word_ends(name).any(|end| ends_in(end, &NOTHING_LIKE)) {
        return Fit::Nothing;
    }
    // "Orange liqueur, dry" is the whole of it; of "gin, tea-infused" and "gin with tea" the beginning counts.
    let Some(whole) = word_ends(name).next().map(|end| best_at(&name[..end], own)) else { return Fit::Nothing };
    let cut = |at: usize| DONE_TO_IT.iter().any(|word| name[at..].starts_with(word));
    let mut joints = name.char_indices().filter(|(at, c)| *at > 0 && matches!(c, ' ' | ','));
    let end = joints.find(|(at, _)| cut(*at)).map_or(name.len(), |(at, _)| at);
    match whole {
        End::Found(taken, _) if name[end..].starts_with(',') => return exactly(taken),
        End::Unlike => return Fit::Nothing,
        _ => {}
    }
    let mut ends = word_ends(&name[..end]);
    let Some(last) = ends.next() else { return Fit::Nothing };
    let text = &name[..last];
    match if end == name.len() { whole } else { best_at(text, own) } {
        End::Unlike => return Fit::Nothing,
        End::Found(taken, length) if length >= text.trim_start().len() => return exactly(taken),
        End::Found(taken, length) => return less_exactly(text, Some((taken, length)), own),
        End::Unknown => match less_exactly(text, None, own) {
            Fit::Nothing => {}
            fit => return fit,
        },
    }
    let earlier = ends.find_map(|end| match best_at(&name[..end], own) {
        End::Found(taken, _) => Some(exactly(taken)),
        End::Unlike => Some(Fit::Nothing),
        End::Unknown => None,
    });
    earlier.unwrap_or(Fit::Nothing)
}

/// What a text is that is no phrase of the library to the letter: a name abroad, or misspelt; else what it ends in.
fn less_exactly(text: &str, exact: Option<(Taken, usize)>, own: &[(String, Taken)]) -> Fit {
    let folded = abroad::folded(text);
    let folded = abroad::without_fresh(&folded);
    let plain = |key| ingredient(key).map(|ingredient| Taken { ingredient, measured: Measured::default() });
    let longest = abroad::names().filter(|(name, _)| ends_with_words(folded, name)).max_by_key(|(name, _)| name.len());
    let mut exact = exact;
    if let Some((name, keys)) = longest.filter(|(name, _)| exact.is_none_or(|(_, length)| name.len() > length)) {
        if let Some((one, other)) = keys.split_once(',') {
            let names = [one, other].map(|key| ingredient(key).map_or("", |ingredient| ingredient.name));
            return Fit::Maybe(names.to_vec());
        }
        exact = plain(keys).map(|taken| (taken, name.len()));
        if name.len() == folded.trim_start().len() {
            return exact.map_or(Fit::Nothing, |(taken, _)| Fit::As(taken, String::new()));
        }
    }
    if let Some((key, of)) = abroad::of(folded) {
        let is_such =
            |taken: &Taken| plain(key).map_or(Kind::Liqueur, |like| like.ingredient.kind) == taken.ingredient.kind;
        let known = taken_as(of, own).filter(is_such).or_else(|| plain(key));
        return known.map_or(Fit::Nothing, |taken| Fit::As(taken, String::new()));
    }
    let exact = exact.as_ref();
    let phrase = exact.and_then(|(_, length)| folded.get(folded.len().checked_sub(*length)?..)).unwrap_or_default();
    match near::near(folded, phrase, exact.map(|(taken, _)| taken), own) {
        Fit::Nothing => exact.map_or(Fit::Nothing, |(taken, _)| Fit::As(*taken, String::new())),
        fit => fit,
    }
}

/// What a text ends in.
#[expect(clippy::large_enum_variant, reason = "as of `Fit`")]
enum End {
    /// This, by a phrase of so many bytes.
    Found(Taken, usize),
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
    best.map_or(End::Unknown, |(taken, length)| End::Found(taken, length))
}

/// As [`named`], when the phrase is the end of the name: of "coffee beans" nothing is coffee.
#[must_use]
pub fn named_to_the_end(name: &str) -> Option<&'static Ingredient> {
    word_ends(name).next().and_then(|end| ending_with(&name[..end])).map(|(ingredient, _)| ingredient)
}

/// The ingredient of the library that a name is in full, here or abroad: of "London dry gin" and "gin" the gin, of
/// "lemon-leaf gin" none.
#[must_use]
pub fn whole(name: &str) -> Option<&'static Ingredient> {
    let name = name.trim();
    let is_called = |row: &&Ingredient| {
        row.name.eq_ignore_ascii_case(name) || row.names.iter().any(|other| other.eq_ignore_ascii_case(name))
    };
    LIBRARY.iter().find(is_called).or_else(|| abroad(name).and_then(ingredient))
}

/// Words that end the name of what is pressed from a fruit.
const PRESSED: [&str; 7] = ["juice", "saft", "purée", "puree", "pulp", "vinegar", "verjus"];

/// Whether a name is of something poured, so that it wants an amount with a unit. A bare "lime" is a fruit; eggs, ice and
/// spoons of sugar are counted.
#[must_use]
pub fn is_poured(name: &str) -> bool {
    let known = named_to_the_end(name).or_else(|| abroad(name).and_then(ingredient));
    known.map_or_else(
        || abroad::of(&abroad::folded(name)).is_some_and(|(key, _)| !key.is_empty()),
        |ingredient| match ingredient.handled {
            Handled::Poured => true,
            Handled::Counted => false,
            Handled::ByName => PRESSED.iter().any(|noun| name.ends_with(noun)),
        },
    )
}

/// Names of the library that a name which nothing fits may mean: those it nearly is, then three at most that share a
/// longer word with it.
#[must_use]
pub fn alike(name: &str) -> Vec<&'static str> {
    let bare = name.split('(').next().unwrap_or(name);
    let mut names = if let Fit::Maybe(names) = fit(bare, &[]) { names } else { Vec::new() };
    let most = names.len() + 3;
    for ingredient in LIBRARY {
        let mut theirs = ingredient.name.split(|c| !is_of_word(c));
        let shares = theirs.any(|their| {
            let mut words = name.split(|c| !is_of_word(c)).filter(|word| word.len() >= 4);
            words.any(|word| their.eq_ignore_ascii_case(word))
        });
        if shares && names.len() < most && !names.contains(&ingredient.name) {
            names.push(ingredient.name);
        }
    }
    names
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

/// Whether a text ends in the words of a phrase, in any case.
#[must_use]
pub fn ends_with_words(text: &str, phrase: &str) -> bool {
    let phrase = phrase.strip_suffix(" %").unwrap_or(phrase); // "Saline, 20 %" ends in the word 20
    let Some(start) = text.len().checked_sub(phrase.len()) else { return false };
    // Most differ in their last letter already.
    let last = |text: &str| text.bytes().next_back().map(|byte| byte.to_ascii_lowercase());
    last(text) == last(phrase)
        && text.as_bytes()[start..].eq_ignore_ascii_case(phrase.as_bytes())
        && text.get(..start).is_some_and(|before| !before.ends_with(is_of_word))
}

#[cfg(test)]
mod tests;
