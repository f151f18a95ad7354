//! Backup: everything in one file, and back again.

use super::arrived;
use super::remarks::{OLD_DAYS, age};
use crate::book::{DEMO, Deed, Import, Standing};
use crate::reading::named;
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Block, Button, Figure, Row, Strip, Tone, Tool, form, plural};
use crate::store::forms::TOOLS;
use crate::text;

form! {
    /// When the last backup was made.
    BackupForm {
        /// In milliseconds since 1970; empty for never.
        last = "",
        /// Which form of a spec that is looked at is open, from 0.
        at = "0",
    }
}

/// Rows of an import that are shown.
const MOST_ROWS: usize = 50;

/// Whether one spec that came from elsewhere is on the screen.
#[must_use]
pub fn is_looked_at(bench: &Bench) -> bool {
    matches!(&bench.at_hand.import, Some(Ok(import)) if arrived::is_one_spec(import, bench))
}

impl Tool for BackupForm {
    fn show(&mut self, bench: &Bench) -> (Vec<Block>, Answer) {
        match &bench.at_hand.import {
            Some(Ok(import)) if arrived::is_one_spec(import, bench) => arrived::show(import, &self.at, bench),
            _ => (self.layout(bench), self.answer(bench)),
        }
    }

    fn empty_label(&self, _bench: &Bench) -> &'static str {
        ""
    }

    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let mut blocks = vec![Block::Buttons(vec![
            Button::new("Save a backup", Act::Backup),
            Button::new("Open a file", Act::ChooseFile),
            Button::new("Paste", Act::Paste),
        ])];
        if let Some(Ok(import)) = &bench.at_hand.import {
            let [new, _, differing] = import.count(&bench.book);
            let stands = &bench.at_hand.stands;
            let mut buttons = Vec::new();
            if new + stands.aside > 0 {
                let count = text::count((new + stands.aside) as f64, bench.decimal);
                let is_specs_alone = import.own.is_empty() && import.runs.is_empty() && stands.aside == 0;
                let whole = if is_specs_alone { "specs" } else { "book" };
                buttons.push(Button::new(format!("Add {count} to my {whole}"), Act::TakeNew));
            }
            if differing > 0 {
                buttons.push(Button::new("Take all, replacing mine", Act::TakeAll));
                buttons.push(Button::new("Take all, keeping mine too", Act::TakeBoth));
            }
            if stands.settings {
                buttons.push(Button::new("Take its settings", Act::TakeSettings));
            }
            if !stands.tools.is_empty() {
                buttons.push(Button::new("Take what is typed in its tools", Act::TakeTools));
            }
            buttons.push(Button::new("Close without taking", Act::PutAway));
            blocks.push(Block::Buttons(buttons));
        }
        blocks.push(Block::Table("", Vec::new()));
        let mut buttons = Vec::new();
        if !bench.book.unread.is_empty() {
            buttons.push(Button::new("Download what can't be opened", Act::GiveUnread));
        }
        if !bench.at_hand.aside.is_empty() {
            buttons.push(Button::new("Download what is set aside", Act::GiveAside));
        }
        let has_demo = bench.book.cards.iter().any(|entry| entry.id.starts_with(DEMO));
        if has_demo {
            buttons.push(Button::new("Take the demo away", Act::RemoveDemo));
        } else if bench.at_hand.import.is_none() {
            buttons.push(Button::new("Put the demo in", Act::Demo));
        }
        blocks.push(Block::Buttons(buttons));
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer { rows_title: "In the file", ..Answer::default() };
        let book = &bench.book;
        let count = |value: usize| text::count(value as f64, bench.decimal);
        match &bench.at_hand.import {
            Some(Ok(import)) => preview(import, &mut answer, bench),
            Some(Err(words)) => {
                answer.strip = Strip {
                    figures: vec![Figure::new("?", "")],
                    also: words.clone(),
                    tone: Tone::Problem,
                    ..Strip::default()
                };
            }
            None => {
                answer.strip = at_rest(bench);
                answer.rows_title = "Can be taken back";
                answer.rows = can_be_taken_back(bench);
            }
        }
        for unread in &book.unread {
            answer.cautions.push(format!("{} could not be opened: {}. It is left as it is.", unread.key, unread.why));
        }
        for key in bench.at_hand.aside.iter().take(MOST_ROWS) {
            let words = "could not be used. It is kept, untouched, and goes into backups.";
            answer.cautions.push(format!("What was saved for “{}” {words}", called(key)));
        }
        answer.cells_title = "On this device";
        answer.cell("specs", Figure::new(count(book.cards.len()), ""));
        answer.cell("ingredients", Figure::new(count(book.own.len()), ""));
        if bench.at_hand.usage > 0 {
            let kilobytes = text::plain((bench.at_hand.usage as f64 / 1000.0).ceil(), 0, bench.decimal);
            answer.explained(
                "room taken",
                Figure::new(kilobytes, "kB"),
                "Of about 5 000 kB that browsers give a page. Counted as they do: two bytes to a character.",
            );
        }
        answer.notes.push(
            "A backup is one file of plain JSON, yours to keep: specs, ingredients, run sheets, settings and what is typed in the tools. Nothing is sent anywhere by Meniscus itself."
                .into(),
        );
        answer
    }

    fn empty(&mut self) {}

    /// Nothing: when the last backup was made, no link can say.
    fn take(&mut self, _name: &str, _text: &str) {}
}

/// What a person calls what stands under a key: the name of its tool, where it has one.
fn called(key: &str) -> &str {
    let of_tool = |route: &&Route| key.strip_prefix(TOOLS) == Some(route.form_key());
    Route::ALL.iter().find(of_tool).map_or(key, |route| route.row().label)
}

/// Deeds on many records, the latest first, each with its own Undo.
fn can_be_taken_back(bench: &Bench) -> Vec<Row> {
    let deeds = bench.book.deeds.iter().rev().filter(|deed| deed.on.is_empty());
    let row = |deed: &Deed| Row {
        name: deed.words.clone(),
        detail: if deed.at == 0 { String::new() } else { bench.clock.words(i64::try_from(deed.at).unwrap_or(0)) },
        buttons: vec![Button::sign("Undo", format!("undo {}", deed.words), Act::UndoDeed(deed.number, false))],
        ..Row::default()
    };
    deeds.map(row).collect()
}

/// What an import would bring.
fn preview(import: &Import, answer: &mut Answer, bench: &Bench) {
    let book = &bench.book;
    let count = |value: usize| text::count(value as f64, bench.decimal);
    let [new, same, differing] = import.count(book);
    let stands = &bench.at_hand.stands;
    let mut also = Vec::new();
    for (number, words) in
        [(same, "already here"), (differing, "differing from yours"), (import.refused.len(), "can't be taken")]
    {
        if number > 0 {
            also.push(format!("{} {words}", count(number)));
        }
    }
    let dot = if also.is_empty() { "" } else { ". " };
    answer.strip = Strip {
        figures: vec![Figure::new(count(new + stands.aside), "new")],
        also: format!("{}{dot}Nothing is taken until you say", also.join(", ")),
        tone: Tone::Answer,
        ..Strip::default()
    };
    let word = |standing| match standing {
        Standing::New => "new",
        Standing::Same => "already here",
        Standing::Differing => "differs from yours",
    };
    let row = |name: &str, detail: &str| Row { name: name.to_owned(), detail: detail.to_owned(), ..Row::default() };
    if stands.settings {
        answer.rows.push(row("Settings", "yours here differ: take the file's?"));
    }
    answer.rows.extend(stands.tools.iter().map(|tool| row(tool, "something else is typed in it here")));
    if stands.aside > 0 {
        let texts = plural(stands.aside, "text that could not be read", "texts that could not be read");
        answer.rows.push(row(&format!("{} {texts}", count(stands.aside)), "new, kept aside again"));
    }
    let cards = import.cards.iter().enumerate().map(|(at, (_, card))| (&card.name, import.card_standing(book, at), ""));
    let own = import.own.iter().enumerate().map(|(at, (_, own))| (&own.name, import.own_standing(book, at), ""));
    let runs = import.runs.iter().enumerate().map(|(at, (_, run))| {
        let stilled = if run.has_running() { "; its waits are taken as not begun" } else { "" };
        (&run.name, import.run_standing(book, at), stilled)
    });
    let rows = cards.chain(own).chain(runs).filter(|(_, standing, _)| *standing != Standing::Same);
    let rows = rows.map(|(name, standing, and)| row(&named(name), &format!("{}{and}", word(standing))));
    answer.rows.extend(rows.take(MOST_ROWS));
    if stands.takes > stands.free {
        let kilobytes = |bytes: usize| text::plain((bytes as f64 / 1000.0).ceil(), 0, bench.decimal);
        answer.cautions.push(format!(
            "With its Undo this takes about {} kB, and {} kB are free here. Save a backup, then delete what you no longer need.",
            kilobytes(stands.takes),
            kilobytes(stands.free)
        ));
    }
    let said = import.refused.iter().map(|words| format!("Not taken: {words}"));
    answer.cautions.extend(said.chain(import.remarks.iter().cloned()).take(MOST_ROWS));
    let left = (import.refused.len() + import.remarks.len()).saturating_sub(MOST_ROWS);
    if left > 0 {
        answer.cautions.push(format!("… and {} more of these.", count(left)));
    }
}

/// How many specs there are, and how old their backup is.
fn at_rest(bench: &Bench) -> Strip {
    let book = &bench.book;
    let count = text::count(book.cards.len() as f64, bench.decimal);
    Strip {
        figures: vec![Figure::new(count, plural(book.cards.len(), "spec", "specs"))],
        also: match (book.cards.len() + book.own.len(), age(bench)) {
            (0, _) => "Nothing to back up yet".into(),
            (_, None) => "Never backed up. Save a backup now and then".into(),
            (_, Some(0)) => "Backed up today".into(),
            (_, Some(1)) => "Backed up yesterday".into(),
            (_, Some(days)) if days > OLD_DAYS => format!("Last backup {days} days ago. Save one now"),
            (_, Some(days)) => format!("Last backup {days} days ago"),
        },
        tone: Tone::Answer,
        ..Strip::default()
    }
}
