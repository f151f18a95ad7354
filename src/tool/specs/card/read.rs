//! A spec as it is read and made: its lines to tick, its glass, its steps with their waits.

use super::taste::in_a_line;
use super::{origin, ways};
use crate::book::{Card, Line, Way};
use crate::craft::fit::Kind;
use crate::quantity::{Ratio, Volume};
use crate::reading::freezer::freezer_cells;
use crate::reading::glance::at_a_glance;
use crate::reading::glass::{self, InGlass};
use crate::reading::rows::exact_figure;
use crate::reading::{self, Content, Contents, counted_row, from_spec, label, named};
use crate::screen::clock;
use crate::screen::route::Route;
use crate::screen::{
    Act, Answer, Bench, Block, Button, Choice, Doing, Face, Figure, InHand, Input, Pour, Pours, Printed, Strip, Timing,
    Tone, form_of,
};
use crate::substance::mix::Mix;
use crate::text::{self, SpecLine};
use crate::tool::specs::method::Method;
use crate::tool::specs::served::{Served, is_none, served};

/// A form of a spec that is read.
pub(in crate::tool::specs) struct Read<'a> {
    /// The spec.
    pub(in crate::tool::specs) card: &'a Card,
    /// Which form, from 0.
    pub(in crate::tool::specs) at: usize,
    /// Its id, where it is the bar's own: only then is there something to tick.
    pub(in crate::tool::specs) id: Option<&'a str>,
    /// Where.
    pub(in crate::tool::specs) bench: &'a Bench,
}

impl Read<'_> {
    /// The screen of it, with what stands above it.
    pub(in crate::tool::specs) fn show(&self, above: Vec<Block>) -> (Vec<Block>, Answer) {
        let (bench, nothing) = (self.bench, Way::default());
        let way = self.card.ways.get(self.at).unwrap_or(&nothing);
        let in_hand = self.in_hand();
        let serves = in_hand.serves.max(1);
        let read = Contents::of(&way.lines, bench);
        let served = served(way, &read, bench);
        let mut answer = Answer { name: named(&self.card.name), ..Answer::default() };
        answer.leads = read.not_counted();
        let in_glass = served.in_glass(way, glass::ice(&way.ice), bench);
        self.warn(&mut answer, way, &read, (&served, in_glass.as_ref()));
        answer.strip = self.strip(way, &read, (&served, in_glass), serves);
        if read.is_something() {
            answer.cells_title = "Before ice";
            reading::four_cells(&mut answer, &served.before, bench);
            freezer_cells(&mut answer, &served.before, bench);
        }
        let pours: Vec<Pour> =
            read.pairs().enumerate().map(|(at, pair)| self.pour(at, pair, serves, &in_hand)).collect();
        // The head has room for three words.
        answer.text = Some(String::new());
        let is_all_in = !pours.is_empty() && pours.iter().all(|line| line.tick == Some(true));
        let mut blocks = vec![Block::Printed(self.printed(way, &answer.strip, serves))];
        blocks.extend(above);
        if self.card.ways.len() > 1 {
            let options = ways(self.card);
            blocks.push(Block::field("at", "Form", Input::Chips { options, captioned: false }));
        }
        if self.id.is_some() && !pours.is_empty() {
            blocks.push(Block::Serves(if served.is_batch { "Times" } else { "Serves" }, serves));
        }
        blocks.push(Block::Pours(Pours { lines: pours, serves }));
        blocks.push(match is_all_in {
            true => Block::Buttons(vec![Button::new("Untick all", Act::UntickLines)]),
            false => Block::Nothing,
        });
        blocks.extend(self.id.map_or_else(Vec::new, |id| origin::said(id, self.card, self.at, bench)));
        let how = how(way, bench);
        if !how.is_empty() {
            blocks.push(Block::Remark(how.join(" · ")));
        }
        blocks.extend(reading::declared(&read.lines, bench).map(Block::Caution));
        let steps: Vec<Doing> = steps(way).map(|step| self.step(step)).collect();
        if !steps.is_empty() {
            blocks.push(Block::Doing(steps));
        }
        let notes = [&self.card.notes, &way.notes].map(|notes| notes.trim());
        let said = notes.into_iter().filter(|notes| !notes.is_empty()).map(str::to_owned);
        let tasted = way.tastings.last().map(|last| in_a_line(last, bench));
        blocks.extend(said.chain(tasted).map(Block::Remark));
        if let Some(id) = self.id {
            answer.head = vec![
                Button::new("Change", Act::Show(Face::Change)),
                Button::new(Route::Specs.row().label, Act::Go(Route::Specs.href())),
            ];
            answer.foot = self.foot(id, &read, serves);
            if read.is_something() {
                // One too: what stood in the tin before was of another drink.
                let aim = from_spec::href(Route::Aim, id, self.at, bench);
                answer.carry("Too sharp?", format!("{aim}&serves={serves}"));
            }
        }
        (blocks, answer)
    }

    fn strip(&self, way: &Way, read: &Contents, (served, in_glass): (&Served, Option<InGlass>), serves: u32) -> Strip {
        let bench = self.bench;
        let written = read.lines.iter().find_map(|line| line.read.as_ref().ok()?.unit);
        let all = served.volume * whole(serves);
        let place = match (served.is_batch, served.place()) {
            (false, "in the glass") if serves > 1 => format!("in {serves} glasses"),
            (false, "before ice") if serves > 1 => format!("for {serves}, before ice"),
            (_, place) => place.to_owned(),
        };
        let mut also = served.strength_words(bench);
        let each =
            served.one.map(|one| served.volume * one).or((serves > 1 && !served.is_batch).then_some(served.volume));
        if let Some(each) = each {
            also.push_str(&format!(", {} each", bench.headline(each, written)));
        }
        let nothing = |words: &str| Strip {
            figures: vec![Figure::new("–", "")],
            also: words.into(),
            tone: if read.lines.is_empty() { Tone::Waiting } else { Tone::Answer },
            ..Strip::default()
        };
        match (read.lines.is_empty(), read.is_something()) {
            (true, _) if self.id.is_none() => nothing("No lines in it"),
            (true, _) => nothing("No lines yet. Change adds them"),
            (_, false) if read.missing.is_empty() => nothing("Nothing in it is measured"),
            (_, false) => nothing(&read.not_counted()),
            _ => Strip {
                figures: vec![bench.headline_of(all, &place, written)],
                also,
                below: read.not_counted(),
                tone: Tone::Answer,
                picture: in_glass.map(|found| found.picture(&way.glass, glass::ice(&way.ice))),
            },
        }
    }

    /// What to mind, and where figures come from.
    fn warn(&self, answer: &mut Answer, way: &Way, read: &Contents, (served, in_glass): (&Served, Option<&InGlass>)) {
        let bench = self.bench;
        let mut problems = Vec::new();
        let holds = bench.volume("holds", &way.holds, &mut problems);
        let over = match in_glass {
            Some(found) => found.fit.over.zip(Volume::from_ml(found.brim()).ok()),
            // Of no shape that is known, with what it holds.
            None => holds.filter(|holds| served.volume > *holds).map(|holds| (served.volume.less(holds), holds)),
        };
        if let Some((over, holds)) = over.filter(|_| !served.is_batch) {
            let ml = |volume| text::litres_or_ml(volume, bench.decimal);
            let kind = glass::ice(&way.ice);
            let with = if kind == Kind::None { String::new() } else { format!(" with {}", kind.label()) };
            let [volume, holds, over] = [served.volume, holds, over].map(ml);
            answer.cautions.push(format!("{volume}{with} in a glass of {holds}: {over} too much."));
            let pairs = glass::carried(way, served.volume, bench);
            answer.carry("Does it fit?", from_spec::href_of(Route::Glass, &pairs));
        }
        reading::ask_part(answer, "lines", &way.lines, &read.lines, bench);
        problems.append(&mut answer.problems);
        answer.cautions.extend(problems.into_iter().map(|problem| problem.words));
        answer.cautions.extend(reading::asks(&read.lines, bench).into_iter().map(|ask| reading::about(ask).to_owned()));
        if served.is_washed {
            answer.remarks.push(reading::contents::washed_words(bench));
        }
        if !served.source().is_empty() {
            answer.remarks.push(served.source().into());
        }
    }

    fn pour(&self, at: usize, pair: (&SpecLine, &Content), serves: u32, in_hand: &InHand) -> Pour {
        let (bench, line) = (self.bench, pair.0);
        let row = counted_row(pair, &Mix::default(), bench);
        let is_in = in_hand.ticked.iter().any(|(there, typed)| *there == at && *typed == line.typed);
        let mut pour = Pour {
            name: reading::poured_name(&row.name, bench.decimal).to_owned(),
            marked: row.marked,
            tick: self.id.is_some().then_some(is_in),
            typed: line.typed.clone(),
            ..Pour::default()
        };
        if let Ok(Line { amount, unit, said, .. }) = &line.read {
            let all = amount.times(whole(serves));
            pour.amount = exact_figure(all, *unit, bench);
            pour.one = exact_figure(*amount, *unit, bench).to_string();
            pour.beneath = at_a_glance(all, *unit, &pour.amount.to_string(), bench);
            pour.note.clone_from(said);
        }
        if row.marked {
            pour.note = row.detail;
        }
        pour
    }

    fn step(&self, step: &str) -> Doing {
        let bench = self.bench;
        let Some((id, lasts)) = self.id.zip(text::read_wait(step, bench.decimal)) else {
            return Doing { words: step.to_owned(), wait: None };
        };
        let which = form_of(id, self.at);
        let begun = bench.at_hand.begun.iter().find(|begun| begun.which == which && begun.step == step);
        let wait = match begun {
            None => {
                let label = format!("Start {}", clock::lasting(i64::from(lasts)));
                let spoken = format!("{label}: {step}");
                let button = Button { label, spoken, act: Act::Begin(step.to_owned(), lasts) };
                Timing { to_go: String::new(), is_over: false, button }
            }
            Some(begun) => {
                let seconds = (begun.due() - bench.clock.now() + 999).div_euclid(1000);
                let is_over = seconds <= 0;
                let label = if is_over { "Done" } else { "Stop" };
                let button =
                    Button { spoken: format!("{label}: {step}"), ..Button::new(label, Act::End(step.to_owned())) };
                let to_go = if is_over { "over".into() } else { clock::to_go(seconds) };
                Timing { to_go, is_over, button }
            }
        };
        Doing { words: step.to_owned(), wait: Some(wait) }
    }

    /// What there is to do with it.
    fn foot(&self, id: &str, read: &Contents, serves: u32) -> Vec<Button> {
        if read.lines.is_empty() {
            return vec![Button::new("More", Act::Show(Face::More))];
        }
        let mut batch = from_spec::href(Route::BottleIt, id, self.at, self.bench);
        if serves > 1 {
            batch.push_str(&format!("&serves={serves}"));
        }
        let label = label::href(&from_spec::facts(id, self.card, self.at, self.bench));
        vec![
            Button::new("Batch it", Act::Go(batch)),
            Button::new("Run sheet", Act::ToRun),
            Button::new("Label it", Act::Go(label)),
            Button::new("More", Act::Show(Face::More)),
        ]
    }

    fn printed(&self, way: &Way, strip: &Strip, serves: u32) -> Printed {
        let mut said = vec![way.name.trim().to_owned()];
        if serves > 1 {
            said.push(format!("for {serves}"));
        }
        said.retain(|part| !part.is_empty());
        let figure = strip.figures.iter().map(ToString::to_string).collect::<Vec<_>>().join(" + ");
        Printed {
            name: named(&self.card.name),
            how: said.join(" · "),
            strip: [figure, strip.also.clone()],
            day: format!("Printed {}", self.bench.clock.day(self.bench.clock.now())),
        }
    }

    /// As text to copy: what it is called, its lines, its steps.
    pub(super) fn as_text(&self, way: &Way, read: &Contents) -> String {
        let in_hand = self.in_hand();
        let serves = in_hand.serves.max(1);
        let mut head = vec![named(&self.card.name), way.name.trim().to_owned()];
        if serves > 1 {
            head.push(format!("for {serves}"));
        }
        head.retain(|part| !part.is_empty());
        let mut said = vec![head.join(", ")];
        for (at, pair) in read.pairs().enumerate() {
            let line = self.pour(at, pair, serves, &in_hand);
            said.push(format!("{} {}", line.amount, line.name).trim_start().to_owned());
        }
        said.extend(steps(way).map(str::to_owned));
        said.join("\n")
    }

    fn in_hand(&self) -> InHand {
        self.id.map_or_else(InHand::default, |id| self.bench.at_hand.in_hand(&form_of(id, self.at)))
    }
}

fn whole(serves: u32) -> Ratio {
    Ratio::from_value(f64::from(serves)).unwrap_or(Ratio::ONE)
}

/// The steps, a line each.
fn steps(way: &Way) -> impl Iterator<Item = &str> {
    way.steps.lines().map(str::trim).filter(|step| !step.is_empty())
}

/// "Stirred · small wine glass, 140 ml · no ice · garnish: lemon twist · makes 12 serves · gives 1.1 l", in parts.
fn how(way: &Way, bench: &Bench) -> Vec<String> {
    let method = Method::read_or_none(&way.method).map_or("", Method::label);
    let glass = [way.glass.trim(), way.holds.trim()];
    let glass: Vec<&str> = glass.into_iter().filter(|part| !part.is_empty()).collect();
    let said = |label: &str, text: &str| match (text.trim(), is_none(text)) {
        ("", _) => String::new(),
        (_, true) if label == "ice" => "no ice".into(),
        (_, true) => String::new(),
        (text, _) => format!("{label}: {text}"),
    };
    let mut how = vec![method.to_owned(), glass.join(", "), said("ice", &way.ice), said("garnish", &way.garnish)];
    let (makes, gives) = (way.makes.trim(), way.gives.trim());
    // What cannot be read is said where it is typed.
    if let Some(count) = bench.count("makes", makes, &mut Vec::new()) {
        how.push(format!("makes {makes} {}", if count == Ratio::ONE { "serve" } else { "serves" }));
    }
    if bench.volume("gives", gives, &mut Vec::new()).is_some() {
        how.push(format!("gives {gives}"));
    }
    how.retain(|part| !part.is_empty());
    how
}
