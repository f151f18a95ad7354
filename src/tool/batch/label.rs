//! Label: a strip for what was made, to print on tape or a sheet, or to share as a picture.

mod asks;
mod drawing;
#[cfg(test)]
mod tests;

pub use asks::{Coconut, Gelatin};
pub use drawing::Stamped;

use crate::book::Ask;
use crate::craft::keeping::{COLD_DAYS, JUICE_DAYS};
use crate::quantity::Ratio;
use crate::reading::Contents;
use crate::reading::from_spec::{self, FROM, FromSpec};
use crate::reading::label::Keeps;
use crate::screen::pad::Keys;
use crate::screen::route::Route;
use crate::screen::{
    Act, Answer, Bench, Block, Button, Choice, Figure, Input, Problem, Strip, Tone, Tool, choice, form,
};
use crate::text;
use drawing::{Size, draw};

/// What it is printed on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// A strip of tape, 50 × 25 mm each.
    Tape,
    /// A4 in 24 labels of 70 × 37 mm.
    A4,
    /// Letter in 30 labels of 2⅝ × 1 in.
    Letter,
}

choice! { Paper:
    Tape = "tape", "Tape, 50 × 25 mm";
    A4 = "a4", "A4, 24 to a sheet";
    Letter = "letter", "Letter, 30 to a sheet";
}

form! {
    /// What is typed.
    LabelForm {
        /// What it is.
        name = "Orchard cordial",
        /// When it was made; empty for now.
        made = "",
        /// How it keeps: a key of [`Keeps`].
        keeps = "cold",
        /// Days that what is kept cold is kept, the day of making counted.
        days = "7",
        /// Days that fresh juice is kept.
        days_fresh = "1",
        /// Days that strong or dry things are kept; empty for no date.
        days_long = "",
        /// Days that a drink washed with milk is kept: no time is published, so none is filled in.
        days_washed = "",
        /// Its strength.
        strength = "",
        /// What it contains that guests must be told of.
        allergens = "",
        /// What must be asked about before that is known: keys of [`Ask`], with spaces between.
        asks = "",
        /// What its gelatin is of: a key of [`Gelatin`].
        gelatin = "",
        /// What its coconut is counted as: a key of [`Coconut`].
        coconut = "",
        /// What is poured of it in a serve.
        pour = "",
        /// Anything else.
        note = "",
        /// Id of the spec that its code holds; empty for none.
        spec = "",
        /// Which form of it.
        at = "0",
        /// What it is printed on: a key of [`Paper`].
        paper = "tape",
        /// How many.
        copies = "1",
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
    }
}

const NAME: &str = "name";
const MADE: &str = "made";
const STRENGTH: &str = "strength";
const COPIES: &str = "copies";

const WHOLE_DAYS: &str = "Type whole days, like 7; empty for no date.";

/// Smallest module of a code that a common label printer and a phone's camera manage, mm. From memory.
const SMALLEST_MODULE: f64 = 0.25;

impl Tool for LabelForm {
    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let asks = self.asked(bench);
        // They come and go with what is typed in the name above them.
        let asked = |ask, block: Block| if asks.contains(&ask) { block } else { Block::Nothing };
        let [from, others] = from_spec::fields(Route::Label, &self.from_spec, None, bench);
        vec![
            Block::Label(None),
            from,
            others,
            Block::field(NAME, "What it is", Input::Words { placeholder: "like Orchard cordial" }),
            Block::chips::<Keeps>("keeps", "How it keeps", true),
            Block::amount(self.days().0, "Keeps, days", Keys::Count),
            Block::amount(STRENGTH, "% vol", Keys::Percent),
            Block::amount("pour", "Pour per serve", Keys::Pour),
            Block::field("allergens", "Contains", Input::Words { placeholder: "like milk, egg, nuts" }),
            asked(Ask::Gelatin, Block::chips::<Gelatin>("gelatin", "Its gelatin is of", true)),
            asked(Ask::Coconut, Block::chips::<Coconut>("coconut", "Its coconut is", true)),
            Block::field("note", "Note", Input::Words { placeholder: "like shake first" }),
            Block::field(MADE, "Made", Input::When),
            Block::chips::<Paper>("paper", "Printed on", true),
            Block::amount(COPIES, "Copies", Keys::Count),
        ]
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let (stamped, code_problem) = self.stamped(bench, &mut answer.problems);
        let copies = bench.count(COPIES, &self.copies, &mut answer.problems);
        let most = self.paper().most();
        if copies.is_some_and(|copies| copies.value() > f64::from(most) || copies.value() < 1.0) {
            answer.problems.push(Problem::new(COPIES, format!("Type 1 to {most} copies.")));
        }
        if self.name.trim().is_empty() {
            return answer.without_answer("Type what it is.");
        }
        let Some(stamped) = stamped else { return answer.without_answer("") };
        let (figure, rest) = match stamped.use_by.strip_prefix("Use by ") {
            Some(day) => {
                // Its day and month alone, so that it stands large.
                let day = day.split(' ').skip(1).take(2).collect::<Vec<_>>().join(" ");
                (Figure::new(day, "use by"), [stamped.name.as_str(), &stamped.contains])
            }
            None => (Figure::new(stamped.name.clone(), ""), ["no date", &stamped.contains]),
        };
        let short = |text: &str| match text.char_indices().nth(48) {
            Some((at, _)) => format!("{}…", &text[..at]),
            None => text.to_owned(),
        };
        let rest = rest.map(short);
        let rest: Vec<String> = rest.into_iter().filter(|part| !part.is_empty()).collect();
        answer.strip = Strip { figures: vec![figure], also: rest.join(". "), tone: Tone::Answer, ..Strip::default() };
        answer.remarks.push(format!(
            "{COLD_DAYS} days at 5 °C or below, the day of making counted, is the FDA Food Code's limit for ready-to-eat food that must be kept cold (3-501.17, from memory). Type your own rule; your local food code goes first. For a milk-washed drink no published time was found: cold, short, and declared."
        ));
        if Keeps::read(&self.keeps) == Keeps::Fresh {
            answer.remarks.push(format!("Fresh juice: {JUICE_DAYS} day, the day it is pressed (rule of thumb)."));
        }
        if let Some(form) = FromSpec::of(&self.from_spec, bench) {
            let read = Contents::of(form.lines(), bench);
            answer.remarks.extend(from_spec::in_the_glass(&self.from_spec, &read, Ratio::ONE, bench));
        }
        self.ask(bench, &mut answer);
        answer
            .cautions
            .push("A label is not a licence: check allergens and dates against your own recipe and local law.".into());
        if let Some(words) = code_problem {
            answer.remarks.push(words);
        } else if stamped.code.is_some() {
            answer.remarks.push("Its code holds the spec itself: a phone's camera opens it here, without a network once the app is kept.".into());
        }
        let drawn = draw(&stamped, self.paper().size(), self.paper().key(), self.copies(bench));
        if drawn.is_cut {
            answer
                .cautions
                .push("Not all of it fits so that it can be read: say it shorter, or take a larger label.".into());
        }
        answer.label = Some(drawn);
        answer.foot = vec![Button::new("Print", Act::Print), Button::new("Share as a picture", Act::Picture)];
        answer
    }

    /// The rules of the house stay, and what is printed on.
    fn empty(&mut self) {
        let LabelForm { paper, days, days_fresh, days_long, days_washed, .. } = std::mem::take(self);
        let name = String::new();
        *self = LabelForm { paper, days, days_fresh, days_long, days_washed, name, ..LabelForm::default() };
    }

    fn take(&mut self, name: &str, text: &str) {
        match name {
            NAME => {
                // Another thing: nothing of the last one's stays on its label.
                self.empty();
                text.clone_into(&mut self.name);
            }
            "keeps" => text.clone_into(&mut self.keeps),
            "days" => text.clone_into(&mut self.days),
            MADE => text.clone_into(&mut self.made),
            STRENGTH => text.clone_into(&mut self.strength),
            "allergens" => text.clone_into(&mut self.allergens),
            "asks" => text.clone_into(&mut self.asks),
            "pour" => text.clone_into(&mut self.pour),
            "spec" => text.clone_into(&mut self.spec),
            "at" => {
                text.clone_into(&mut self.at);
                self.from_spec = format!("{}/{text}", self.spec);
            }
            // Of no spec any more: its code goes, what was typed stays.
            FROM => self.spec.clear(),
            _ => {}
        }
    }
}

impl Paper {
    const fn size(self) -> Size {
        match self {
            Paper::Tape => Size { width: 50.0, height: 25.0, margin: 2.0 },
            Paper::A4 => Size { width: 70.0, height: 37.0, margin: 4.0 },
            Paper::Letter => Size { width: 66.675, height: 25.4, margin: 2.5 },
        }
    }

    /// Most that are printed at once: a yard or two of tape, one sheet.
    const fn most(self) -> u32 {
        match self {
            Paper::Tape => 50,
            Paper::A4 => 24,
            Paper::Letter => 30,
        }
    }
}

impl LabelForm {
    fn paper(&self) -> Paper {
        Paper::read(&self.paper)
    }

    /// The rule that counts: its field, and what is typed there.
    fn days(&self) -> (&'static str, &str) {
        match Keeps::read(&self.keeps) {
            Keeps::Cold => ("days", &self.days),
            Keeps::Fresh => ("days_fresh", &self.days_fresh),
            Keeps::Long => ("days_long", &self.days_long),
            Keeps::Washed => ("days_washed", &self.days_washed),
        }
    }

    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    fn copies(&self, bench: &Bench) -> usize {
        let copies = bench.count(COPIES, &self.copies, &mut Vec::new()).map_or(1.0, crate::quantity::Ratio::value);
        copies.clamp(1.0, f64::from(self.paper().most())) as usize
    }

    /// Everything that stands on it; and why its code is left off.
    fn stamped(&self, bench: &Bench, problems: &mut Vec<Problem>) -> (Option<Stamped>, Option<String>) {
        let clock = bench.clock;
        let made = match self.made.trim() {
            "" => Some(clock.now()),
            text => clock.read(text),
        };
        if made.is_none() {
            problems.push(Problem::new(MADE, "Choose a day and a time."));
        }
        let (field, typed) = self.days();
        let days = match typed.trim() {
            "" => Some(None),
            _ => bench
                .number(field, typed, (1.0, 3_650.0), WHOLE_DAYS, problems)
                .filter(|days| {
                    let is_whole = days.fract() == 0.0;
                    if !is_whole {
                        problems.push(Problem::new(field, WHOLE_DAYS));
                    }
                    is_whole
                })
                .map(Some),
        };
        let strength = bench.strength(STRENGTH, &self.strength, problems);
        let pour = bench.volume("pour", &self.pour, problems);
        let (Some(made), Some(days)) = (made, days) else { return (None, None) };
        #[allow(clippy::cast_possible_truncation)]
        let use_by = days.map(|days| clock.days_later(made, days as i64 - 1));
        let mut of_serve = Vec::new();
        if let Some(strength) = strength {
            of_serve.push(format!("{} % vol", text::plain(strength.fraction() * 100.0, 1, bench.decimal)));
        }
        if let Some(pour) = pour {
            of_serve.push(format!("pour {}", text::millilitres(pour, bench.decimal)));
        }
        if Keeps::read(&self.keeps) != Keeps::Long {
            of_serve.push("keep cold".into());
        }
        let (code, problem) = self.code(bench);
        let contains = self.contains(bench);
        let stamped = Stamped {
            name: self.name.trim().to_owned(),
            made: format!("Made {}", clock.stamp(made)),
            use_by: use_by.map_or_else(String::new, |at| format!("Use by {}", clock.day(at))),
            serve: of_serve.join(" · "),
            contains: if contains.is_empty() { String::new() } else { format!("Contains {contains}") },
            note: self.note.trim().to_owned(),
            code,
        };
        (Some(stamped), problem)
    }

    /// The code of its spec, where it has one that is not too fine to print.
    fn code(&self, bench: &Bench) -> (Option<text::Qr>, Option<String>) {
        if self.spec.is_empty() {
            return (None, None);
        }
        if bench.book.card(&self.spec).is_none() {
            return (None, Some("Its spec is no longer in the book, so this label has no code. Bring the spec back, or make the label from another.".into()));
        }
        let Some(link) = bench.at_hand.link_of(&format!("{}#{}", self.spec, self.at)) else { return (None, None) };
        let room = drawing::code_side(self.paper().size());
        match text::qr(link) {
            Some(code) if room / code.size as f64 >= SMALLEST_MODULE => (Some(code), None),
            _ => (None, Some("The spec is too long for a code on this label: take a larger label, or print its code from the spec.".into())),
        }
    }
}
