//! Balance: what a spec reads as, and what each of its lines brings.

mod cells;

use super::Bench;
use super::answer::{Answer, Figure, Row, Share, Strip, Tone};
use super::fields::form;
use super::pad::Keys;
use super::route::Route;
use super::scale::{ScaleForm, exact_words, unread_row};
use super::screen::{Block, Input, Tool};
use super::taken::{self, Known, Read, known};
use crate::book::{Allergen, Line};
use crate::craft::balance::{self, balance};
use crate::quantity::{Density, Ratio, Temperature, Volume};
use crate::substance::mix::Mix;
use crate::text::{self, Kind, SpecLine, read_spec};

form! {
    /// The texts of Scale that this screen shows, and the water from ice.
    BalanceForm {
        /// The spec, a line for each ingredient.
        spec = ScaleForm::EXAMPLE,
        /// Serves the spec makes as written.
        makes = "1",
        /// Water from ice or added, percent of what is poured.
        water = "0",
    }
}

const SPEC: &str = "spec";
const MAKES: &str = "makes";
const WATER: &str = "water";

/// More than this is no drink: as much water again and twice.
const MOST_WATER: u8 = 200;

impl Tool for BalanceForm {
    fn layout(&self, _bench: &Bench) -> Vec<Block> {
        let placeholder = ScaleForm::PLACEHOLDER;
        vec![
            Block::field(SPEC, "The spec, a line for each ingredient", Input::Lines { placeholder }),
            Block::amount(MAKES, "The spec makes", Keys::Count),
            Block::amount(WATER, "Water from ice", Keys::Percent),
            Block::Cells("", Vec::new()),
            Block::Table("", Vec::new()),
        ]
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let lines = read_spec(&self.spec, &bench.reading(Kind::Either));
        if lines.is_empty() {
            return answer.without_answer("Type or paste a spec, a line for each ingredient.");
        }
        let makes = match self.makes.trim() {
            "" => Some(Ratio::ONE),
            makes => bench.count(MAKES, makes, &mut answer.problems),
        };
        let water = bench.percent(WATER, &self.water, MOST_WATER, &mut answer.problems);
        let read = Read::of(&lines);
        answer.rows_title = "What each line brings";
        answer.rows = lines.iter().map(|line| row(line, &read.mix, bench)).collect();
        cautions(&mut answer, &lines);
        let (Some(makes), Some(water)) = (makes, water) else { return answer.without_answer("") };
        if read.mix.mass().g() <= 0.0 {
            return answer.without_answer(match read.unknown.as_slice() {
                [] => "Add a line with an amount, like 60 ml gin.",
                _ => "None of it is known yet. Say below what it is like.",
            });
        }
        self.show(answer, &read, makes, water, bench)
    }

    fn clear(&mut self) {
        self.spec.clear();
    }

    fn take(&mut self, _name: &str, _text: &str) {}
}

/// The balance of a spec's lines, when every one that is poured or weighed is known.
pub(super) fn whole(lines: &[SpecLine]) -> Result<Mix, Vec<String>> {
    let read = Read::of(lines);
    if read.unknown.is_empty() { Ok(read.mix) } else { Err(read.unknown) }
}

/// Strength, sugar, acid and their ratio, before ice.
pub(super) fn four_cells(answer: &mut Answer, mix: &Mix, bench: &Bench) {
    cells::four(answer, &balance(mix), bench);
}

impl BalanceForm {
    fn show(&self, mut answer: Answer, read: &Read, makes: Ratio, water: Ratio, bench: &Bench) -> Answer {
        let poured = read.mix.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
        let drink = read.mix + Mix::water(poured * water * Density::WATER);
        let serve = drink * makes.inverse().unwrap_or(Ratio::ONE);
        let reading = balance(&drink);
        let is_diluted = water > Ratio::ZERO;
        let serve_volume = serve.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
        let also = match read.unknown.as_slice() {
            [] => {
                let per = |value| text::count(value, bench.decimal);
                let ratio = reading.sugar_to_acid.map_or(String::new(), |ratio| format!(", {} : 1", per(ratio)));
                let when = if is_diluted { "with its ice" } else { "before ice" };
                let serve = text::litres_or_ml(serve_volume, bench.decimal);
                format!(
                    "Sugar {}, acid {} g/l{ratio}. A serve is {serve} {when}",
                    per(reading.sugar),
                    per(reading.acid)
                )
            }
            [name] => format!("Without {name}: say below what it is like"),
            [name, ..] => format!("Without {name} and others: say below what they are like"),
        };
        let strength = text::plain(reading.strength.fraction() * 100.0, 1, bench.decimal);
        answer.strip = Strip { figures: vec![Figure::new(strength, "% vol")], also, tone: Tone::Answer };
        answer.cells_title = if is_diluted { "The drink" } else { "The drink, before ice" };
        cells::all(&mut answer, &reading, &serve, serve_volume, bench);
        if read.has_counted {
            answer.remarks.push("Counted things are left out. An egg white is about 30 ml, half a lime about 15 ml (common practice, no source): write them in ml to count them.".into());
        }
        if read.mix.milk.g() > 0.0 {
            answer.remarks.push("Milk, fat and protein are not in the energy, and milk hides the pH.".into());
        }
        answer.remarks.push("Write your own figures behind a name: gin 57 %, quince liqueur (22 % vol, sugar 250 g/l, acid 4 g/l), apple juice 12.5 °Bx, moon dust (as spirit).".into());
        answer.carry("Scale it", Route::Scale.href());
        answer.carry("Wash it with milk", Route::MilkWash.href_with("drink", &bench.carried(poured)));
        answer
    }
}

/// A line with what it is taken as and what it brings, or asked about.
pub(super) fn row(line: &SpecLine, whole: &Mix, bench: &Bench) -> Row {
    let read = match &line.read {
        Ok(read) => read,
        Err(problem) => return unread_row(line, problem),
    };
    let amount = exact_words(read.amount, bench);
    let plain = |detail: String| Row { name: read.name.clone(), amount: amount.clone(), detail, ..Row::default() };
    match known(read) {
        Known::Poured(mix) => Row { shares: shares(&mix, whole, bench), ..plain(as_words(read, bench)) },
        Known::Counted => plain("Counted, so left out.".into()),
        Known::Weighed => {
            Row { marked: true, ..plain("A powder is weighed: write it in g. It is not counted.".into()) }
        }
        Known::Overfull => {
            Row { marked: true, ..plain("These figures don't fit in one litre. It is not counted.".into()) }
        }
        Known::Unknown => taken::asked(line, &read.name, amount),
    }
}

fn as_words(line: &Line, bench: &Bench) -> String {
    line.taken.as_ref().map_or_else(String::new, |taken| taken::words(taken, bench))
}

fn shares(part: &Mix, whole: &Mix, bench: &Bench) -> Vec<Share> {
    let share = balance::share(part, whole);
    let one = |of, fraction: f64| Share {
        of,
        words: format!("{} %", text::plain(fraction * 100.0, 0, bench.decimal)),
        percent: percent(fraction),
    };
    vec![one("volume", share.volume), one("alcohol", share.ethanol), one("sugar", share.sugar), one("acid", share.acid)]
}

/// A fraction of one as a whole percentage.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
fn percent(fraction: f64) -> u8 {
    (fraction.clamp(0.0, 1.0) * 100.0).round() as u8
}

/// Who must be told of what, and eggs.
fn cautions(answer: &mut Answer, lines: &[SpecLine]) {
    let taken = || lines.iter().filter_map(|line| line.read.as_ref().ok()?.taken.as_ref());
    let mut declared: Vec<Allergen> = Vec::new();
    for allergen in taken().flat_map(|taken| taken.ingredient.allergens) {
        if !declared.contains(allergen) {
            declared.push(*allergen);
        }
    }
    if declared.is_empty() {
        return;
    }
    let names: Vec<&str> = declared.iter().map(|allergen| allergen.name()).collect();
    let egg =
        if declared.contains(&Allergen::Egg) { " Raw egg: pasteurised where your food code asks for it." } else { "" };
    answer.cautions.push(format!("May need declaring: {}. Read the labels of what you pour.{egg}", names.join(", ")));
}
