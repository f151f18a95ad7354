//! Side by side: forms of a spec, or specs of the book, as they stand in the glass; what agrees, and what does not.

mod glass;
mod said;
#[cfg(test)]
mod tests;

use self::glass::{InGlass, in_glass};
use super::card::form_name;
use crate::book::{Card, Entry, best};
use crate::quantity::Volume;
use crate::reading::contents::washed_words;
use crate::reading::from_spec::{self, FROM, FromSpec};
use crate::reading::{named, of_form};
use crate::screen::pad::Keys;
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Block, Button, Opt, Problem, Strip, Tone, Tool, form};

form! {
    /// What is chosen.
    SidesForm {
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
        /// What stands there: the id of a spec, for all its forms; or "id/0", for one; empty for the spec that was looked at
        /// last.
        one = "",
        /// The same; empty for nothing.
        two = "",
        /// The same.
        three = "",
        /// The same.
        four = "",
        /// The same.
        five = "",
        /// The same.
        six = "",
        /// What is poured of a batch.
        pour = "90 ml",
    }
}

/// The text that takes a spec with all its forms, in place of what stands there.
pub(super) const ALL: &str = "all";
const POUR: &str = "pour";

/// Most that stand side by side.
pub const MOST: usize = 6;
const PICKS: [(&str, &str); MOST] = [
    ("one", "Spec"),
    ("two", "Beside it"),
    ("three", "Third"),
    ("four", "Fourth"),
    ("five", "Fifth"),
    ("six", "Sixth"),
];

/// A form of a spec of the book.
type Form<'a> = (&'a Entry<Card>, usize);

/// What stands side by side.
#[derive(Default)]
struct Chosen<'a> {
    forms: Vec<Form<'a>>,
    left_out: Vec<String>,
    problems: Vec<Problem>,
}

impl Tool for SidesForm {
    fn is_tall(&self) -> bool {
        true
    }

    fn show(&mut self, bench: &Bench) -> (Vec<Block>, Answer) {
        let chosen = self.chosen(bench);
        let mut answer = Answer { problems: chosen.problems, ..Answer::default() };
        // Of a drink nothing is asked.
        let mut problems = Vec::new();
        let pour = bench.volume(POUR, &self.pour, &mut problems);
        let sides = self.sides(&chosen.forms, pour, bench);
        let has_batch = sides.iter().any(|side| side.is_batch);
        if has_batch && pour.is_none() && problems.is_empty() {
            problems.push(Problem::new(POUR, "Type what is poured of it, like 90 ml."));
        }
        answer.problems.extend(problems.into_iter().filter(|_| has_batch));
        let shown = said::table(&sides, bench);
        said::say(&mut answer, &sides, bench);
        if answer.strip.tone == Tone::Answer {
            answer.text = Some(format!("{}\n{}\n{}", answer.strip.also, answer.strip.below, shown.as_text()));
        }
        if let Some((first, _)) =
            chosen.forms.first().filter(|first| chosen.forms.iter().all(|form| form.0.id == first.0.id))
        {
            answer.name = named(&first.value.name);
        }
        if !chosen.left_out.is_empty() {
            answer.notes.push(format!("Six stand side by side at most. Left out: {}.", chosen.left_out.join("; ")));
        }
        if sides.iter().any(|side| side.is_washed) {
            answer.remarks.push(washed_words(bench));
        }
        let mut blocks = self.fields_of(bench);
        blocks.push(match has_batch {
            true => Block::amount(POUR, "Poured of a batch", Keys::Pour),
            false => Block::Nothing,
        });
        blocks.push(Block::Sides(shown));
        (blocks, answer)
    }

    fn empty_label(&self, _bench: &Bench) -> &'static str {
        if self.is_empty() { "" } else { "Choose anew" }
    }

    fn layout(&self, bench: &Bench) -> Vec<Block> {
        self.clone().show(bench).0
    }

    fn answer(&self, bench: &Bench) -> Answer {
        self.clone().show(bench).1
    }

    fn empty(&mut self) {
        self.from_spec.clear();
        self.picks_mut().into_iter().for_each(String::clear);
    }

    fn take(&mut self, name: &str, text: &str) {
        match name {
            ALL => {
                self.empty();
                text.clone_into(&mut self.one);
            }
            // One that was looked for stands beside the others; of a spec that stands there whole, it does already.
            FROM => {
                let stands = |id: &str| self.picks().iter().any(|pick| *pick == id || *pick == text);
                if text.rsplit_once('/').is_some_and(|(id, _)| !stands(id)) {
                    let mut beside = self.picks_mut().into_iter().skip(1).collect::<Vec<_>>();
                    let free = beside.iter().position(|pick| pick.is_empty()).unwrap_or(MOST - 2);
                    text.clone_into(beside[free]);
                }
            }
            _ => {}
        }
    }
}

impl SidesForm {
    fn picks(&self) -> [&str; MOST] {
        [&self.one, &self.two, &self.three, &self.four, &self.five, &self.six]
    }

    fn picks_mut(&mut self) -> [&mut String; MOST] {
        [&mut self.one, &mut self.two, &mut self.three, &mut self.four, &mut self.five, &mut self.six]
    }

    fn is_empty(&self) -> bool {
        self.picks().iter().all(|pick| pick.is_empty())
    }

    /// What is chosen, each form once; first, where nothing is, all of the spec that was looked at last.
    fn chosen<'a>(&self, bench: &'a Bench) -> Chosen<'a> {
        let mut chosen = Chosen::default();
        let last = last(bench).filter(|_| self.one.is_empty()).map(|entry| ("one", entry.id.as_str()));
        let picks = PICKS.into_iter().zip(self.picks()).map(|((name, _), pick)| (name, pick));
        for (name, pick) in last.into_iter().chain(picks.filter(|(_, pick)| !pick.is_empty())) {
            let forms: Vec<Form<'a>> = match (bench.book.card(pick), FromSpec::of(pick, bench)) {
                (Some(entry), _) => (0..entry.value.ways.len()).map(|at| (&**entry, at)).collect(),
                (_, Some(form)) => vec![form.parts()],
                _ => {
                    chosen.problems.push(Problem::new(name, "No longer in the book. Choose another, or none."));
                    continue;
                }
            };
            let stands =
                |form: &Form<'_>| chosen.forms.iter().any(|other| (&other.0.id, other.1) == (&form.0.id, form.1));
            let mut new: Vec<Form<'a>> = forms.into_iter().filter(|form| !stands(form)).collect();
            if new.is_empty() {
                chosen.problems.push(Problem::new(name, "Stands there already. Choose another, or none."));
            }
            let room = MOST - chosen.forms.len();
            chosen.left_out.extend(new.iter().skip(room).map(|(entry, at)| of_form(&entry.value, *at)));
            new.truncate(room);
            chosen.forms.append(&mut new);
        }
        chosen
    }

    /// Each of them in its glass; of a batch, what is poured.
    fn sides(&self, forms: &[Form<'_>], pour: Option<Volume>, bench: &Bench) -> Vec<InGlass> {
        let is_one_spec = forms.iter().all(|form| form.0.id == forms[0].0.id);
        let name = |(entry, at): &Form<'_>| match is_one_spec {
            true => form_name(&entry.value, *at),
            false => of_form(&entry.value, *at),
        };
        forms.iter().map(|form| in_glass(name(form), &form.0.value.ways[form.1], pour, bench)).collect()
    }

    /// Where they are chosen: what is, and a place for one more.
    fn fields_of(&self, bench: &Bench) -> Vec<Block> {
        let Some(last) = last(bench) else {
            let words = "Nothing is in the book yet. Write down a drink, and a second form of it.";
            return vec![Block::Remark(words.into()), Block::Buttons(vec![Button::new("New spec", Act::NewSpec)])];
        };
        let (listed, has_more) = from_spec::listed(true, bench);
        let mut blocks = Vec::new();
        let mut has_free = false;
        for (at, ((name, label), pick)) in PICKS.into_iter().zip(self.picks()).enumerate() {
            let is_shown = at < 2 || !pick.is_empty() || !has_free;
            has_free |= at > 0 && pick.is_empty();
            if !is_shown {
                blocks.push(Block::Nothing);
                continue;
            }
            let none = match at == 0 {
                true => format!("the last: {}", named(&last.value.name)),
                false => "none".into(),
            };
            let mut options = vec![Opt::new("", none)];
            options.extend(listed.iter().cloned());
            if options.iter().all(|option| option.key != pick) {
                options.insert(1, Opt::new(pick, called(pick, bench)));
            }
            blocks.push(Block::pick(name, label, options));
        }
        blocks.push(from_spec::find_another(Route::Sides, has_more));
        blocks
    }
}

/// The spec that was looked at last in this tab, else the one that was changed last.
fn last(bench: &Bench) -> Option<&Entry<Card>> {
    let cards = &bench.book.cards;
    let latest = || best(cards.len(), 1, &|at| Some(u64::MAX - cards[at].stamp.at)).first().map(|at| &cards[*at]);
    bench.book.card(&bench.at_hand.face.0).or_else(latest).map(AsRef::as_ref)
}

/// What a choice is called.
fn called(pick: &str, bench: &Bench) -> String {
    match (bench.book.card(pick), FromSpec::of(pick, bench)) {
        (Some(entry), _) => from_spec::of_all(&entry.value),
        (_, Some(form)) => form.name(),
        _ => "no longer in the book".into(),
    }
}

/// A strip that says no more than this.
fn waits(words: &str) -> Strip {
    Strip { also: words.into(), tone: Tone::Waiting, ..Strip::default() }
}
