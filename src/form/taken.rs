//! What the lines of a spec are taken to be, in words.

use super::Bench;
use super::answer::{Fix, Row};
use crate::book::{Ingredient, Kind, Line, Taken, alike};
use crate::craft::pour::{litre_of, pour};
use crate::quantity::{Acidity, Amount, Temperature, Volume};
use crate::substance::mix::Mix;
use crate::text::{self, SpecLine};

/// A spec, read.
pub(super) struct Read {
    /// All that is known of it.
    pub(super) mix: Mix,
    /// Its volumes before they are poured together, added up.
    pub(super) apart: Volume,
    /// Lines that nothing fits, by name.
    pub(super) unknown: Vec<String>,
    /// Whether something is counted, and so left out.
    pub(super) has_counted: bool,
}

impl Read {
    pub(super) fn of(lines: &[SpecLine]) -> Read {
        let mut read = Read { mix: Mix::default(), apart: Volume::ZERO, unknown: Vec::new(), has_counted: false };
        for line in lines.iter().filter_map(|line| line.read.as_ref().ok()) {
            match known(line) {
                Known::Poured(mix) => {
                    read.mix = read.mix + *mix;
                    read.apart = read.apart + mix.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
                }
                Known::Counted => read.has_counted = true,
                Known::Weighed | Known::Overfull | Known::Unknown => read.unknown.push(line.name.clone()),
            }
        }
        read
    }
}

/// What is known of a line.
pub(super) enum Known {
    /// What is in it.
    Poured(Box<Mix>),
    /// Counted: a garnish, an egg, a fruit.
    Counted,
    /// A powder by volume, which is no measure.
    Weighed,
    /// Nothing fits its name.
    Unknown,
    /// Its own figures do not go into a litre together.
    Overfull,
}

pub(super) fn known(line: &Line) -> Known {
    match (&line.taken, line.amount) {
        (_, Amount::Count(_)) => Known::Counted,
        (None, _) => Known::Unknown,
        (Some(taken), _) if is_overfull(taken) => Known::Overfull,
        (Some(taken), amount) => pour(taken, amount).map_or(Known::Weighed, |mix| Known::Poured(Box::new(mix))),
    }
}

fn is_overfull(taken: &Taken) -> bool {
    let is_a_litre = taken.ingredient.kind != Kind::Powder && !taken.measured.is_nothing();
    is_a_litre && litre_of(taken).volume(Temperature::TWENTY).is_ok_and(|volume| volume.ml() > 1_001.0)
}

/// "40 % vol, 20 g/l sugar", or nothing for what is as water.
pub(super) fn figures_of(mix: &Mix, bench: &Bench) -> String {
    let acid = mix.titratable_acidity().map_or(0.0, Acidity::g_per_l);
    let figures =
        [(mix.strength().fraction() * 100.0, " % vol"), (mix.g_per_l(mix.sugar()), " g/l sugar"), (acid, " g/l acid")];
    let shown: Vec<String> = figures
        .iter()
        .filter(|(value, _)| *value >= 0.05)
        .map(|(value, unit)| format!("{}{unit}", text::count(*value, bench.decimal)))
        .collect();
    shown.join(", ")
}

/// "as London dry gin, 40 % vol", with the published spread where there is one.
pub(super) fn words(taken: &Taken, bench: &Bench) -> String {
    let Ingredient { name, range, .. } = taken.ingredient;
    let figures = figures_of(&litre_of(taken), bench);
    let joint = if figures.is_empty() { "" } else { ", " };
    let spread = if range.is_empty() || !taken.measured.is_nothing() { String::new() } else { format!(" ({range})") };
    format!("as {name}{joint}{figures}{spread}")
}

/// A line that nothing fits: asked about, with guesses at what it may be like.
pub(super) fn asked(line: &SpecLine, name: &str, amount: String) -> Row {
    let like = |key: &str, label: &str| Fix {
        label: label.to_owned(),
        text: text::replaced(&line.typed, name, &format!("{name} (as {key})")),
    };
    let guesses = alike(name).map(|ingredient| like(ingredient.name, ingredient.name));
    let usual = ["Spirit", "Liqueur", "Fruit juice", "Syrup", "Water"];
    let usual = usual.into_iter().map(|label| like(&label.to_ascii_lowercase(), label));
    Row {
        name: name.to_owned(),
        amount,
        detail: "Not known, so not counted. What is it like?".into(),
        marked: true,
        typed: line.typed.clone(),
        fixes: guesses.chain(usual).collect(),
        ..Row::default()
    }
}
