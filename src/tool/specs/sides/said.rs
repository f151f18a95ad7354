//! What is said of drinks side by side: the sentence, the table, and where that comes from.

use super::glass::InGlass;
use super::waits;
use crate::book::Allergen;
use crate::craft::sides::{Glass, Of, Verdict, alike, stands_apart, verdict};
use crate::quantity::{Mass, Unit};
use crate::reading::label::declared;
use crate::screen::{Answer, Bench, Column, Compared, Side, Sides, Strip, Tone};
use crate::substance::energy::energy;
use crate::text;

const TASTE: &str = "≠ is more than most people taste. Acid in a litre: more than a quarter (a Weber fraction of 0.26 for \
    thickness, which is comparable to that of sourness: S. Camacho et al., J. Food Science 80, 2015). Sugar in a litre: more than a \
    fifth (0.1 to 0.2, from memory). Strength: 1 % vol; volume: a fifth (rule of thumb). pH and energy are not tasted.";
const WATER: &str = "In the glass: with the water of the usual ice for the usual time, as Chill works it out, ± a fifth. What stands \
    on ice meets it once, and is drunk at once.";
const KEEPS: &str = "Keeps, by practice: mixed, before ice, as long as what in it keeps least. For a wash no time is published: your own days, \
    cold and short. Your food code goes first.";

/// Letters that three lines of the strip have room for on a narrow phone; what has none stands on the page.
const ROOM: usize = 100;
/// Longer names are told by their place.
const LONG: usize = 26;
const PLACES: [&str; super::MOST] = ["The first", "The second", "The third", "The fourth", "The fifth", "The sixth"];

/// What of it, and words for more of it: of one among others, of one of two, of the one with most, of the one with least.
const fn called(of: Of) -> [&'static str; 5] {
    match of {
        Of::Acid => ["acid", "sharp", "sharper", "sharpest", "least sharp"],
        Of::Sugar => ["sugar", "sweet", "sweeter", "sweetest", "least sweet"],
        Of::Strength => ["strength", "strong", "stronger", "strongest", "weak"],
        Of::Volume => ["volume", "big", "bigger", "biggest", "small"],
    }
}

/// Says it on the strip, and below where that comes from.
pub(super) fn say(answer: &mut Answer, sides: &[InGlass], bench: &Bench) {
    let glasses: Vec<Option<Glass>> = sides.iter().map(InGlass::glass).collect();
    let verdict = verdict(&glasses);
    let (at, also) = match verdict {
        Verdict::TooFew => {
            answer.strip = waits(match sides.len() {
                0 => "Keep a spec in the book first",
                1 => "One form only: choose one to put beside it",
                _ => "Not all lines are counted: nothing to compare yet",
            });
            return;
        }
        Verdict::Alike => (None, "Alike in the glass".to_owned()),
        Verdict::One(of, at, true) => (Some((of, at)), format!("{} is the {} one", name(sides, at), called(of)[1])),
        Verdict::One(of, at, false) => {
            let [.., least] = called(of);
            let one = if matches!(of, Of::Strength | Of::Volume) { " one" } else { "" };
            (Some((of, at)), format!("{} is the {least}{one}", name(sides, at)))
        }
        Verdict::Most(of, at) => {
            let [_, _, more, most, _] = called(of);
            let is_of_two = glasses.iter().flatten().count() == 2;
            let words = if is_of_two { more.to_owned() } else { format!("the {most}") };
            (Some((of, at)), format!("{} is {words}", name(sides, at)))
        }
    };
    let figures = at.map(|(of, at)| figures(of, at, sides, &glasses, bench));
    let mut said: Vec<String> = figures.into_iter().chain(tells(sides)).collect();
    let alike: Vec<&str> = alike(&glasses).into_iter().map(|of| called(of)[0]).collect();
    if !alike.is_empty() {
        said.push(format!("Alike in {}.", listed(&alike)));
    }
    let mut below = String::new();
    for sentence in said {
        let room = ROOM.saturating_sub(below.chars().count());
        match below.is_empty() {
            true => below = sentence,
            false if sentence.chars().count() < room => below = format!("{below} {sentence}"),
            false => answer.notes.push(sentence),
        }
    }
    answer.strip = Strip { also, below, tone: Tone::Answer, ..Strip::default() };
    let not_whole: Vec<&str> = sides.iter().filter(|side| !side.is_whole).map(|side| side.name.as_str()).collect();
    if !not_whole.is_empty() {
        answer.notes.push(format!("Shown, but not compared, as not all of it is known: {}.", not_whole.join("; ")));
    }
    answer.remarks.extend([TASTE, WATER, KEEPS].map(str::to_owned));
}

/// What it is called at the head of a sentence.
fn name(sides: &[InGlass], at: usize) -> String {
    let name = sides[at].name.trim();
    if name.chars().count() > LONG {
        return PLACES[at].to_owned();
    }
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| first.to_ascii_uppercase().to_string() + letters.as_str())
}

/// "1.27 g acid in the glass; the others 0.44 and 0.37." Where a large glass has more of it and yet tastes of less, to the
/// litre.
fn figures(of: Of, at: usize, sides: &[InGlass], glasses: &[Option<Glass>], bench: &Bench) -> String {
    let known = || (0..sides.len()).filter(|other| glasses[*other].is_some() && *other != at);
    let taste = |side: usize| glasses[side].map_or(0.0, |glass| glass.of(of));
    let grams = |side: usize| match of {
        Of::Acid => sides[side].mix.titratable().g(),
        _ => sides[side].mix.sugar().g(),
    };
    let is_alike = known().all(|other| (taste(at) > taste(other)) == (grams(at) > grams(other)));
    let said = |side: usize| match of {
        Of::Acid if is_alike => text::plain(grams(side), 2, bench.decimal),
        Of::Sugar if is_alike => text::plain(grams(side), 1, bench.decimal),
        Of::Acid | Of::Sugar => text::plain(taste(side), 1, bench.decimal),
        Of::Strength => text::plain(taste(side) * 100.0, 1, bench.decimal),
        Of::Volume => text::plain(taste(side), 0, bench.decimal),
    };
    let unit = match (of, is_alike) {
        (Of::Strength, _) => "% vol",
        (Of::Volume, _) => "ml",
        (Of::Acid, true) => "g acid",
        (Of::Sugar, true) => "g sugar",
        (Of::Acid, false) => "g/l acid",
        (Of::Sugar, false) => "g/l sugar",
    };
    let others: Vec<String> = known().map(said).collect();
    let others: Vec<&str> = others.iter().map(String::as_str).collect();
    let word = if others.len() == 1 { "other" } else { "others" };
    format!("{} {unit} in the glass; the {word} {}.", said(at), listed(&others))
}

/// "Washed holds milk.", of the one that alone has something to tell guests of that no other has.
fn tells(sides: &[InGlass]) -> Option<String> {
    let own = |at: usize| {
        let others = |allergen| (0..sides.len()).any(|other| other != at && sides[other].allergens.contains(allergen));
        declared(sides[at].allergens.iter().filter(|allergen| !others(allergen)).copied())
    };
    let mut apart = (0..sides.len()).map(|at| (at, own(at))).filter(|(_, own)| !own.is_empty());
    let (at, own) = apart.next().filter(|_| apart.next().is_none())?;
    Some(format!("{} holds {own}.", name(sides, at)))
}

/// "a, b and c".
fn listed(words: &[&str]) -> String {
    match words {
        [before @ .., last] if !before.is_empty() => format!("{} and {last}", before.join(", ")),
        _ => words.concat(),
    }
}

/// The table of them.
pub(super) fn table(sides: &[InGlass], bench: &Bench) -> Sides {
    let glasses: Vec<Option<Glass>> = sides.iter().map(InGlass::glass).collect();
    let plain = |value, decimals| text::plain(value, decimals, bench.decimal);
    let row = |of: &'static str, tasted: Option<Of>, cell: &dyn Fn(&InGlass) -> (String, String)| {
        let apart = tasted.map_or_else(|| vec![false; sides.len()], |of| stands_apart(of, &glasses));
        let side = |(side, is_apart): (&InGlass, bool)| match side.mix.mass() > Mass::ZERO {
            true => {
                let (said, below) = cell(side);
                Side { said, below, is_apart }
            }
            false => Side { said: "–".into(), ..Side::default() },
        };
        Compared { of, each: sides.iter().zip(apart).map(side).collect() }
    };
    let bare = |said: String| (said, String::new());
    let in_ounces = bench.house.usual_unit == Unit::Ounce;
    let volume = |side: &InGlass| match in_ounces {
        true => text::ounces(side.reads.volume, &bench.house.conventions, bench.decimal).value,
        false => plain(side.reads.volume.ml(), 0),
    };
    let energy = |side: &InGlass| {
        let energy = energy(&side.mix);
        let least = if side.has_more_energy { "at least, " } else { "" };
        (plain(energy.kilojoules, 0), format!("{least}{} kcal", plain(energy.kilocalories, 0)))
    };
    let strength = |side: &InGlass| bare(plain(side.reads.strength.fraction() * 100.0, 1));
    let sugar = |side: &InGlass| (plain(side.mix.sugar().g(), 1), format!("{} g/l", plain(side.reads.sugar, 0)));
    let acid = |side: &InGlass| (plain(side.mix.titratable().g(), 2), format!("{} g/l", plain(side.reads.acid, 1)));
    let ph = |side: &InGlass| bare(side.reads.ph.map_or_else(|| "–".into(), |ph| plain(ph, 1)));
    let cost = |side: &InGlass| match side.costs {
        Some((known, is_all)) => (plain(known.units(), 2), if is_all { String::new() } else { "at least".into() }),
        None => bare("no prices".into()),
    };
    let mut rows = vec![
        row("% vol", Some(Of::Strength), &strength),
        row(if in_ounces { "volume, oz" } else { "volume, ml" }, Some(Of::Volume), &|side| bare(volume(side))),
        row("sugar, g", Some(Of::Sugar), &sugar),
        row("acid, g", Some(Of::Acid), &acid),
        row("alcohol, g", None, &|side| bare(plain(side.mix.ethanol.g(), 1))),
        row("pH, about", None, &ph),
        row("energy, kJ", None, &energy),
        row("cost", None, &cost),
        allergens(sides),
        Compared {
            of: "keeps",
            each: sides.iter().map(|side| Side { said: side.keeps.into(), ..Side::default() }).collect(),
        },
    ];
    rows.retain(|row| row.of != "cost" || !bench.prices.is_empty());
    let column =
        |side: &InGlass| Column { name: side.name.clone(), below: side.below.clone(), picture: side.picture.clone() };
    Sides { sides: sides.iter().map(column).collect(), rows: if sides.is_empty() { Vec::new() } else { rows } }
}

/// What guests must be told of, whatever is counted. One that has what not all have stands apart.
fn allergens(sides: &[InGlass]) -> Compared {
    let all_have = |allergen: &Allergen| sides.iter().all(|side| side.allergens.contains(allergen));
    let side = |side: &InGlass| Side {
        said: if side.allergens.is_empty() { "none read".into() } else { declared(side.allergens.clone()) },
        below: if side.has_asks { "and ask: see its page".into() } else { String::new() },
        is_apart: !side.allergens.iter().all(all_have),
    };
    Compared { of: "allergens", each: sides.iter().map(side).collect() }
}
