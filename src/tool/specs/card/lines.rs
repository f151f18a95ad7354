//! What stands beside the lines of a card that is changed: ingredients to add, moves.

use super::{CardForm, LINES};
use crate::book::LIBRARY;
use crate::screen::{Act, Bench, Button, Row};

impl CardForm {
    /// Ingredients whose names hold what is typed, each as the line it adds.
    pub(super) fn suggestions(&self, bench: &Bench) -> Vec<Button> {
        let wanted = self.add_name.trim();
        if wanted.is_empty() {
            return Vec::new();
        }
        let amount = if self.add_amount.trim().is_empty() { "30 ml" } else { self.add_amount.trim() };
        let add = |name: &str| {
            let line = format!("{amount} {name}");
            let lines = match self.lines.trim_end() {
                "" => line,
                lines => format!("{lines}\n{line}"),
            };
            Button::new(name, Act::Put(vec![(LINES, lines), ("add_name", String::new())]))
        };
        let holds = |name: &str| {
            let (name, wanted) = (name.as_bytes(), wanted.as_bytes());
            name.windows(wanted.len()).any(|part| part.eq_ignore_ascii_case(wanted))
        };
        let own =
            bench.book.own.iter().map(|entry| entry.value.name.trim()).filter(|name| !name.is_empty() && holds(name));
        let library = LIBRARY.iter().map(|row| row.name).filter(|name| holds(name));
        let mut names: Vec<&str> = own.chain(library).take(6).collect();
        if !names.iter().any(|name| name.eq_ignore_ascii_case(wanted)) {
            names.push(wanted);
        }
        names.into_iter().map(add).collect()
    }

    /// Up and Remove beside each line: each is the whole text of the lines after it.
    pub(super) fn offer_moves(&self, rows: &mut [Row]) {
        let lines: Vec<&str> = self.lines.lines().map(str::trim).filter(|line| !line.is_empty()).collect();
        for (at, row) in rows.iter_mut().enumerate().take(lines.len()) {
            let mut moved = lines.clone();
            if at > 0 {
                moved.swap(at - 1, at);
                let spoken = format!("move {} up", row.name);
                row.buttons.push(Button::sign("↑", spoken, Act::Put(vec![(LINES, moved.join("\n"))])));
            }
            let mut fewer = lines.clone();
            fewer.remove(at);
            let spoken = format!("remove {}", row.name);
            row.buttons.push(Button::sign("✕", spoken, Act::Put(vec![(LINES, fewer.join("\n"))])));
        }
    }
}
