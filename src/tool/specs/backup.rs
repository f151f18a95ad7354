//! Backup: everything in one file, and back again.

use super::remarks::{OLD_DAYS, age};
use crate::book::{DEMO, Deed, Import, Standing};
use crate::reading::named;
use crate::screen::{Act, Answer, Bench, Block, Button, Figure, Row, Strip, Tone, Tool, form, plural};
use crate::text;

form! {
    /// When the last backup was made.
    BackupForm {
        /// In milliseconds since 1970; empty for never.
        last = "",
    }
}

/// Rows of an import that are shown.
const MOST_ROWS: usize = 50;

impl Tool for BackupForm {
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
            let mut buttons = Vec::new();
            if new > 0 {
                buttons.push(Button::new("Take what is new", Act::TakeNew));
            }
            if differing > 0 {
                buttons.push(Button::new("Take all, replacing mine", Act::TakeAll));
                buttons.push(Button::new("Take all, keeping mine too", Act::TakeBoth));
            }
            buttons.push(Button::new("Close without taking", Act::PutAway));
            blocks.push(Block::Buttons(buttons));
        }
        blocks.push(Block::Table("", Vec::new()));
        let mut buttons = Vec::new();
        if !bench.book.unread.is_empty() {
            buttons.push(Button::new("Download what can't be opened", Act::GiveUnread));
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
                answer.strip = Strip { figures: vec![Figure::new("?", "")], also: words.clone(), tone: Tone::Problem };
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
        answer.remarks.push(
            "A backup is one file of plain JSON, yours to keep. Nothing is sent anywhere by Meniscus itself.".into(),
        );
        answer
    }

    fn empty(&mut self) {}

    fn take(&mut self, name: &str, text: &str) {
        if name == "last" {
            text.clone_into(&mut self.last);
        }
    }
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
    answer.strip = Strip {
        figures: vec![Figure::new(count(new), "new")],
        also: format!("{} the same, {} differing. Nothing is taken until you say", count(same), count(differing)),
        tone: Tone::Answer,
    };
    let word = |standing| match standing {
        Standing::New => "new",
        Standing::Same => "the same",
        Standing::Differing => "differs from yours",
    };
    let cards = import.cards.iter().enumerate().map(|(at, (_, card))| (&card.name, import.card_standing(book, at)));
    let own = import.own.iter().enumerate().map(|(at, (_, own))| (&own.name, import.own_standing(book, at)));
    let runs = import.runs.iter().enumerate().map(|(at, (_, run))| (&run.name, import.run_standing(book, at)));
    let rows = cards.chain(own).chain(runs).filter(|(_, standing)| *standing != Standing::Same);
    answer.rows = rows
        .take(MOST_ROWS)
        .map(|(name, standing)| Row { name: named(name), detail: word(standing).into(), ..Row::default() })
        .collect();
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
    }
}
