//! The specs that are bought for, each for so many; and the run.

use super::{BuyForm, POUR, RUN, SERVES, WASTE, run};
use crate::book::Way;
use crate::craft::ice::night;
use crate::quantity::{Mass, Ratio, Temperature, Volume};
use crate::reading::bought::Needs;
use crate::reading::from_spec::{FROM, FromSpec, href_of, in_all};
use crate::reading::{Contents, glass, iced};
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Button, Problem, Row};
use crate::text;

/// Serves of a spec that is chosen, until somebody says how many.
const USUAL: &str = "10";
/// Most of it that is spilt, percent.
const MOST_WASTE: u8 = 90;
const GONE: &str = "No longer in the book";

/// Specs with their numbers, as one text.
pub(super) fn joined(all: &[(String, String)]) -> String {
    all.iter().map(|(of, serves)| format!("{of}={serves}")).collect::<Vec<_>>().join("\n")
}

impl BuyForm {
    /// The specs, each with its number as it is typed now.
    pub(super) fn all(&self) -> Vec<(String, String)> {
        let pair = |line: &str| line.split_once('=').map(|(of, serves)| (of.to_owned(), serves.to_owned()));
        let mut all: Vec<(String, String)> = self.of.lines().filter_map(pair).collect();
        if !self.from_spec.is_empty() {
            put(&mut all, &self.from_spec, &self.serves);
        }
        all
    }

    /// Takes a spec beside the others, for as many as came with it; one that is there already is the one to change.
    pub(super) fn take_spec(&mut self, from: &str) {
        let mut all = self.all();
        let brought = std::mem::take(&mut self.serves);
        let there = || all.iter().find(|(of, _)| of == from).map(|(_, serves)| serves.clone());
        // A number without a spec came with this one.
        let serves = Some(brought).filter(|serves| self.from_spec.is_empty() && !serves.is_empty());
        let serves = serves.or_else(there).unwrap_or_else(|| USUAL.to_owned());
        if !from.is_empty() {
            put(&mut all, from, &serves);
            self.serves = serves;
        }
        self.of = joined(&all);
        from.clone_into(&mut self.from_spec);
    }

    /// What the specs need. A row for each, and whether one is a batch that does not say how many it serves; the ice of
    /// the others into `iced`.
    pub(super) fn chosen(
        &self,
        needs: &mut Needs<'_>,
        iced: &mut Iced,
        answer: &mut Answer,
        bench: &Bench,
    ) -> (Vec<Row>, bool) {
        let waste = bench.percent(WASTE, &self.waste, MOST_WASTE, &mut answer.problems).map_or(0.0, Ratio::value);
        let mut of_pour = Vec::new();
        let pour = bench.volume(POUR, &self.pour, &mut of_pour);
        let (all, mut rows, mut has_batch) = (self.all(), Vec::new(), false);
        for (of, serves) in &all {
            let is_open = *of == self.from_spec;
            let count = bench.count(SERVES, serves, if is_open { &mut answer.problems } else { &mut of_pour });
            let form = FromSpec::of(of, bench);
            let name = form.as_ref().map_or_else(|| GONE.to_owned(), FromSpec::name);
            let mut row = Row { amount: serves.clone(), ..Row::default() };
            if let Some(form) = &form {
                let read = Contents::of(form.lines(), bench);
                let (times, is_batch) = makings(form.way(), &read, pour, bench);
                has_batch |= is_batch;
                match count.zip(times) {
                    Some((serves, times)) => {
                        needs.spec(&read, serves.value() * times / (1.0 - waste), &name);
                        if !is_batch {
                            needs.garnish(garnish(form.way()), serves);
                            iced.add(form.way(), serves.value());
                        }
                    }
                    None => row.detail = "Not counted: type for how many.".into(),
                }
            }
            row.marked = !row.detail.is_empty() || name == GONE;
            if is_open && !row.marked && all.len() > 1 {
                row.detail = "Its number stands above.".into();
            }
            // One tap for each: a list of twenty is long. What is taken off is that whose number is typed.
            row.buttons.push(if is_open || form.is_none() {
                let mut others = all.clone();
                others.retain(|(other, _)| other != of);
                let (from, stays) = if is_open { ("", "") } else { (self.from_spec.as_str(), self.serves.as_str()) };
                button("Remove", &name, puts(&others, from, stays))
            } else {
                button("Change", &name, puts(&all, of, serves))
            });
            rows.push(Row { name, ..row });
        }
        if !self.run.is_empty() {
            let entry = bench.book.run(&self.run);
            let name = entry.map_or_else(|| GONE.to_owned(), |entry| run::title(entry, bench));
            let buttons = vec![button("Remove", &name, Act::Put(vec![(RUN, String::new())]))];
            rows.push(Row { name, amount: "run sheet".into(), marked: entry.is_none(), buttons, ..Row::default() });
        }
        if has_batch && pour.is_none() {
            let is_of_pour = |problem: &Problem| problem.field == POUR;
            let empty = || Problem::new(POUR, "Type what is poured of it, like 90 ml.");
            answer.problems.push(of_pour.into_iter().find(is_of_pour).unwrap_or_else(empty));
        }
        (rows, has_batch)
    }
}

/// What goes on a drink: its garnish, else a line of it that says so, "Garnish: lemon peel".
fn garnish(way: &Way) -> &str {
    if !way.garnish.trim().is_empty() {
        return &way.garnish;
    }
    let mut said = way.lines.lines().filter_map(|line| line.split_once(':'));
    said.find(|(word, _)| word.trim().eq_ignore_ascii_case("garnish")).map_or("", |(_, garnish)| garnish)
}

/// The ice of serves.
#[derive(Default)]
pub(super) struct Iced {
    serves: f64,
    /// What they are stirred or shaken with, and what is in their glasses, g.
    grams: [f64; 2],
}

impl Iced {
    fn add(&mut self, way: &Way, serves: f64) {
        self.serves += serves;
        for (sum, each) in self.grams.iter_mut().zip(iced::grams(way)) {
            *sum += serves * f64::from(each.unwrap_or(0));
        }
    }

    /// The ice to have for them, as Ice counts it; and the way there.
    pub(super) fn need(&self, needs: &mut Needs<'_>, answer: &mut Answer, bench: &Bench) -> Option<String> {
        let [made_with, glass] = self.grams.map(|grams| Mass::from_g(grams).unwrap_or(Mass::ZERO));
        let melts = bench.percent("", iced::MELTS, 100, &mut Vec::new()).unwrap_or(Ratio::ZERO);
        let all = night(Ratio::ONE, made_with, glass, Mass::ZERO, melts)?;
        if made_with + glass <= Mass::ZERO {
            return None;
        }
        needs.ice(made_with + glass, all.total());
        let pair = |name: &str, text: String| (name.to_owned(), text);
        let each = |grams: f64| format!("{} g", text::editable(grams / self.serves, bench.decimal));
        let [made_with, glass] = self.grams.map(each);
        let serves = text::editable(self.serves, bench.decimal);
        let pairs =
            [pair(SERVES, serves), pair("made_with", made_with), pair("glass", glass), pair(FROM, String::new())];
        answer.remarks.push(
            "Ice by the method and the ice of each spec, for those that say it, as Ice counts it (rule of thumb); a fifth of it melts. Garnish as each spec says it.".into(),
        );
        Some(href_of(Route::Ice, &pairs))
    }
}

/// How often the lines of a form are made for one serve, and whether they are a batch of which that is poured.
fn makings(way: &Way, read: &Contents, pour: Option<Volume>, bench: &Bench) -> (Option<f64>, bool) {
    if let Some(makes) = bench.count("makes", &way.makes, &mut Vec::new()) {
        return (Some(1.0 / makes.value()), false);
    }
    let drunk = read.drunk(bench).0;
    match glass::is_batch(way, drunk.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO), bench) {
        true => (pour.map(|pour| pour.ml() / in_all(way, &drunk, bench).ml()), true),
        false => (Some(1.0), false),
    }
}

fn button(label: &str, name: &str, act: Act) -> Button {
    Button { spoken: format!("{label} {name}"), ..Button::new(label, act) }
}

/// Puts a spec with its number in its place, or last.
fn put(all: &mut Vec<(String, String)>, of: &str, serves: &str) {
    match all.iter_mut().find(|(there, _)| there == of) {
        Some((_, there)) => serves.clone_into(there),
        None => all.push((of.to_owned(), serves.to_owned())),
    }
}

/// The specs, and the one whose number is typed.
fn puts(all: &[(String, String)], from: &str, serves: &str) -> Act {
    Act::Put(vec![("of", joined(all)), (FROM, from.to_owned()), (SERVES, serves.to_owned())])
}
