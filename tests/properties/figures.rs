//! One figure is said one way on a screen, and a tile does not say again what the strip says.
//!
//! Nobody can tell from two texts whether they are of one quantity. But two figures of one unit that agree, to what they are
//! rounded to, whatever amounts are typed, are: over the whole table of tools, each with the choices of its chips and
//! amounts at random, what agrees each time in the strip and in a tile must read the same each time; and then the tile must
//! be there for what it explains.

use std::collections::{BTreeMap, BTreeSet};

use proptest::prelude::RngExt;
use proptest::test_runner::{RngAlgorithm, TestRng};

use meniscus::screen::pad::Keys;
use meniscus::screen::route::Route;
use meniscus::screen::{Bench, Block, Input, Screen, Texts, Tone};
use meniscus::text::Decimal;
use meniscus::tool::shelf::settings::ShelfForm;
use meniscus::tool::{Change, after, screen};

/// Amounts tried for each choice in each unit, and how many of them must be answered.
const TRIED: usize = 12;
const ANSWERED: usize = 6;
/// Choices tried of one tool.
const CHOICES: usize = 60;

/// A figure: what it reads as, its value, and half of its last place.
struct Said {
    words: String,
    value: f64,
    half: f64,
    unit: String,
}

/// The figures in a text: numbers with a unit behind them.
fn figures(text: &str) -> Vec<Said> {
    let text = text.replace('\u{202f}', "").replace('−', "-");
    let words: Vec<&str> = text.split(' ').collect();
    let said = |pair: &[&str]| {
        let number = pair[0].trim_start_matches(['(', '×']);
        let value: f64 = number.parse().ok()?;
        let unit = pair[1].trim_end_matches([',', '.', ';', ')']).to_owned();
        let places = number.split_once('.').map_or(0, |(_, places)| places.len());
        let half = 0.5 / 10_f64.powi(i32::try_from(places).ok()?);
        let is_unit = ["ml", "l", "g", "kg", "oz", "%", "g/l", "°Bx"].contains(&unit.as_str());
        is_unit.then(|| Said { words: format!("{number} {unit}"), value, half, unit })
    };
    words.windows(2).filter_map(said).collect()
}

/// The figures of the strip, each with its place.
fn in_strip(shown: &Screen) -> Vec<(String, Said)> {
    let headlines = shown.strip.figures.iter().map(|figure| ("headline", figure.to_string()));
    let texts = headlines.chain([("beneath", shown.strip.also.clone())]).enumerate();
    texts
        .flat_map(|(at, (part, text))| {
            figures(&text).into_iter().enumerate().map(move |(turn, said)| (format!("{part} {at}.{turn}"), said))
        })
        .collect()
}

/// The figures of the tiles, each with its label and whether it explains itself.
fn in_tiles(shown: &Screen) -> Vec<(String, bool, Said)> {
    let cells = shown.blocks.iter().filter_map(|block| match block {
        Block::Cells(_, cells) => Some(cells),
        _ => None,
    });
    cells
        .flatten()
        .filter_map(|cell| {
            // A share in a label changes with what is typed.
            let label = cell.label.split(|c: char| c.is_ascii_digit()).next().unwrap_or_default().to_owned();
            Some((label, !cell.about.is_empty(), figures(&cell.figure.to_string()).into_iter().next()?))
        })
        .collect()
}

/// A screen with amounts at random in every field that is not empty.
fn typed(route: Route, texts: &Texts, units: (&str, &str), rng: &mut TestRng, bench: &Bench) -> Screen {
    let mut texts = texts.clone();
    for block in &screen(route, &texts, bench).blocks {
        let Block::Field(field) = block else { continue };
        let mut tenths = |most: u32| f64::from(rng.random_range(10..most)) / 10.0;
        let text = match (&field.input, field.text.parse::<f64>()) {
            (Input::Amount(Keys::Pour), _) => format!("{} {}", tenths(2000), units.0),
            (Input::Amount(Keys::Batch), _) => format!("{} {}", tenths(30_000), units.0),
            (Input::Amount(Keys::Bulk | Keys::Either | Keys::Compared), _) => format!("{} {}", tenths(30_000), units.1),
            (Input::Amount(Keys::Weight), _) => format!("{} g", tenths(10_000)),
            (Input::Amount(Keys::Count | Keys::Percent), Ok(value)) if value > 4.0 => {
                format!("{:.1}", value * (0.8 + tenths(50) / 12.5))
            }
            _ => continue,
        };
        if !field.text.is_empty() {
            texts.insert(field.name.to_owned(), text);
        }
    }
    screen(route, &texts, bench)
}

/// The texts of a tool with the choices of its chips, one after the other.
fn choices(route: Route, bench: &Bench) -> Vec<Texts> {
    let mut all = vec![after(route, &Texts::new(), Change::Take("", ""))];
    let mut at = 0;
    while at < all.len() && all.len() < CHOICES {
        for block in &screen(route, &all[at].clone(), bench).blocks {
            let Block::Field(field) = block else { continue };
            let Input::Chips { options, .. } = &field.input else { continue };
            for option in options {
                let mut next = all[at].clone();
                next.insert(field.name.to_owned(), option.key.clone());
                if !all.contains(&next) {
                    all.push(next);
                }
            }
        }
        at += 1;
    }
    all
}

/// Of figures in the strip and in tiles that agreed whenever there was an answer: those that then read otherwise, and those
/// that a tile says again for nothing.
fn wrong(route: Route, texts: &Texts, units: (&str, &str), rng: &mut TestRng, bench: &Bench) -> Vec<String> {
    let mut agreed: BTreeMap<(String, String), (usize, bool, Option<String>)> = BTreeMap::new();
    let mut answered = 0;
    for _ in 0..TRIED {
        let shown = typed(route, texts, units, rng, bench);
        if shown.strip.tone != Tone::Answer {
            continue;
        }
        answered += 1;
        let tiles = in_tiles(&shown);
        for (place, one) in in_strip(&shown) {
            for (label, explains, other) in &tiles {
                let is_near = (one.value - other.value).abs() <= 1.01 * (one.half + other.half);
                if one.unit == other.unit && one.value != 0.0 && is_near {
                    let pair = agreed.entry((place.clone(), label.clone())).or_default();
                    pair.0 += 1;
                    pair.1 = *explains;
                    if one.words != other.words {
                        pair.2 = Some(format!("{} and {}", one.words, other.words));
                    }
                }
            }
        }
    }
    let is_one = |count: usize| answered >= ANSWERED && count == answered;
    let told = agreed.into_iter().filter(|(_, (count, ..))| is_one(*count));
    told.filter_map(|((place, label), (_, explains, otherwise))| {
        let how = otherwise.or_else(|| (!explains).then(|| "said again".to_owned()))?;
        Some(format!("{}: {place} and tile “{label}”: {how}", route.row().label))
    })
    .collect()
}

#[test]
fn one_figure_is_said_one_way_and_once() {
    let mut rng = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let mut told = BTreeSet::new();
    for (usual, weights) in [("ml", "g"), ("oz", "lb")] {
        let shelf = ShelfForm { usual_unit: usual.into(), weights: weights.into(), ..ShelfForm::default() };
        let bench = shelf.bench(Decimal::Point);
        let is_tool =
            |route: &&Route| route.row().record.is_none() && !route.row().is_of_book && **route != Route::Shelf;
        for route in Route::ALL.iter().filter(is_tool) {
            for texts in choices(*route, &bench) {
                for units in [("ml", "ml"), ("oz", "oz"), ("ml", "g")] {
                    told.extend(wrong(*route, &texts, units, &mut rng, &bench));
                }
            }
        }
    }
    let told: Vec<String> = told.into_iter().collect();
    assert!(told.is_empty(), "{} figures:\n{}", told.len(), told.join("\n"));
}

#[test]
fn figures_are_found_in_texts() {
    let found = |text: &str| figures(text).into_iter().map(|said| said.words).collect::<Vec<_>>();
    assert_eq!(found("Makes 1\u{202f}725 ml at 40.0 °Bx, (12.5 %)"), ["1725 ml", "40.0 °Bx", "12.5 %"]);
    assert_eq!(found("pH 3.1, no figure"), [""; 0]);
}
