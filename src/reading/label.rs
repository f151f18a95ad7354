//! What is known of a thing that is to be labelled, and the address of a label that says it.

use crate::book::{Allergen, Ask, Kind};
use crate::craft::keeping::{Keeping, keeping};
use crate::quantity::Mass;
use crate::screen::percent::encode;
use crate::screen::route::Route;
use crate::screen::{Answer, Choice, Tone, choice};
use crate::text::SpecLine;

const NAME: &str = "name";
const STRENGTH: &str = "strength";
const MADE: &str = "made";

/// How what is labelled keeps; each has a rule of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keeps {
    /// Anything made that must be kept cold.
    Cold,
    /// Fresh juice.
    Fresh,
    /// Strong spirit, salt, dry things.
    Long,
    /// A drink washed with milk, for which no time is published.
    Washed,
}

choice! { Ask:
    Gelatin = "gelatin", "Gelatin";
    Coconut = "coconut", "Coconut";
    Enzyme = "enzyme", "Enzyme";
}

choice! { Keeps:
    Cold = "cold", "Kept cold";
    Fresh = "fresh", "Fresh juice";
    Long = "long", "Strong or dry";
    Washed = "washed", "Milk-washed";
}

/// What is known of a thing that is to be labelled.
#[derive(Clone, Debug, Default)]
pub(crate) struct Facts {
    /// What it is.
    pub(crate) name: String,
    /// Its strength, % vol, as text.
    pub(crate) strength: String,
    /// What it contains that guests must be told of.
    pub(crate) allergens: String,
    /// What must be asked about before that is known.
    pub(crate) asks: Vec<Ask>,
    /// What is poured of it.
    pub(crate) pour: String,
    /// How it keeps.
    pub(crate) keeps: Option<Keeps>,
    /// When it was made, as texts hold it; empty for now.
    pub(crate) made: String,
    /// Id of its spec, and which form.
    pub(crate) spec: Option<(String, String)>,
}

/// Offers a label for what a tool makes.
pub(crate) fn offer(name: &str, keeps: Option<Keeps>, answer: &mut Answer) {
    if answer.strip.tone == Tone::Answer {
        answer.carry("Label it", href(&Facts { name: name.to_owned(), keeps, ..Facts::default() }));
    }
}

/// What decides how long a drink of these lines keeps, by its pH, where that is known, and its alcohol.
pub(crate) fn keeping_of(lines: &[SpecLine], ph: Option<f64>, ethanol: Mass) -> Keeping {
    let mut all = lines.iter().filter_map(|line| Some(line.read.as_ref().ok()?.taken?.ingredient));
    let has_animal = all.clone().any(|of| matches!(of.kind, Kind::Dairy | Kind::Egg));
    let has_juice = all.any(|of| of.kind == Kind::Juice && of.key != "vinegar");
    keeping(ph, ethanol, has_juice, has_animal)
}

/// Whether it is its fresh juice that decides it.
pub(crate) fn is_fresh(lines: &[SpecLine]) -> bool {
    keeping_of(lines, None, Mass::ZERO) == Keeping::Fresh
}

/// Allergens as a label names them, each once.
pub(crate) fn declared(allergens: impl IntoIterator<Item = Allergen>) -> String {
    let mut names: Vec<&str> = Vec::new();
    for allergen in allergens {
        if !names.contains(&allergen.name()) {
            names.push(allergen.name());
        }
    }
    names.join(", ")
}

/// The address of a label for it.
pub(crate) fn href(known: &Facts) -> String {
    let mut href = Route::Label.href_with(NAME, known.name.trim());
    let (spec, at) = known.spec.clone().unwrap_or_default();
    let keeps = known.keeps.map_or_else(String::new, |keeps| keeps.key().to_owned());
    let asks: Vec<&str> = known.asks.iter().map(|ask| ask.key()).collect();
    for (name, text) in [
        (STRENGTH, &known.strength),
        ("allergens", &known.allergens),
        ("asks", &asks.join(" ")),
        ("pour", &known.pour),
        ("keeps", &keeps),
        (MADE, &known.made),
        ("spec", &spec),
        ("at", &at),
    ] {
        if !text.is_empty() {
            href.push_str(&format!("&{name}={}", encode(text)));
        }
    }
    href
}
