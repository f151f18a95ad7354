//! The line of a spec that is open: its amount, its ingredient and its note, each typed for itself. The lines stay one text,
//! of which this is a part.

use super::{CardForm, LINES};
use crate::reading::offered;
use crate::screen::{Act, Bench, Button};
use crate::text::{Dimension, amount_ends, is_digit};

/// The field that says which line is open.
pub const LINE: &str = "line";
/// The field of its amount.
pub const AMOUNT: &str = "line_amount";
/// The field of its ingredient, or of all of it.
pub const OF: &str = "line_of";
/// The field of its note.
pub const NOTE: &str = "line_note";

/// Whether a field is of the line that is open.
#[must_use]
pub fn is_of_line(name: &str) -> bool {
    name == AMOUNT || name == OF || name == NOTE
}

/// The line that is open. It is noted as "2/5/9/n/gin": its number, where its amount ends, how long it is, whether its note is
/// a field, and the ingredient that is not searched for.
pub(super) struct OpenLine<'a> {
    /// Its number among the lines as they stand, from 0.
    pub(super) at: usize,
    /// All of it.
    raw: &'a str,
    /// Where its amount ends, in bytes; none where it is changed whole.
    cut: Option<usize>,
    /// Whether its note has a field.
    pub(super) has_note: bool,
    /// The ingredient that was chosen, or stood there: nothing is offered for it.
    taken: &'a str,
}

/// Where the amount of a line ends; none where it has one that cannot be told from the rest.
fn cut_of(raw: &str, bench: &Bench) -> Option<usize> {
    amount_ends(raw, &bench.reading(Dimension::Either)).or_else(|| (!raw.contains(is_digit)).then_some(0))
}

impl<'a> OpenLine<'a> {
    /// A line of a text, opened.
    pub(super) fn of(at: usize, raw: &'a str, bench: &Bench) -> OpenLine<'a> {
        let line = OpenLine { at, raw, cut: cut_of(raw, bench), has_note: false, taken: "" };
        OpenLine { taken: line.parts()[1], ..line }
    }

    /// The one that is noted; in an empty text the first. Where the line is another than it was noted of, its amount is read.
    pub(super) fn noted(note: &'a str, lines: &'a str, bench: &Bench) -> Option<OpenLine<'a>> {
        let mut parts = note.splitn(5, '/');
        let mut next = || parts.next().unwrap_or_default();
        let count = lines.lines().count();
        let Some(at) = next().parse().ok().filter(|at| *at <= count) else {
            return lines.trim().is_empty().then(|| OpenLine::of(0, "", bench));
        };
        let raw = lines.lines().nth(at).unwrap_or_default();
        let (cut, long, note, taken) = (next(), next(), next(), next());
        let mut line = OpenLine { at, raw, cut: None, has_note: !note.is_empty(), taken };
        line.cut = if long.parse() == Ok(raw.len()) { cut.parse().ok() } else { cut_of(raw, bench) };
        line.cut = line.cut.filter(|cut| raw.is_char_boundary(*cut));
        Some(line)
    }

    /// How it is noted.
    pub(super) fn note(&self) -> String {
        let cut = self.cut.map_or_else(String::new, |cut| cut.to_string());
        format!("{}/{cut}/{}/{}/{}", self.at, self.raw.len(), if self.has_note { "n" } else { "" }, self.taken)
    }

    /// Whether it is changed whole.
    pub(super) const fn is_whole(&self) -> bool {
        self.cut.is_none()
    }

    /// Its amount, its ingredient, its note.
    pub(super) fn parts(&self) -> [&'a str; 3] {
        let (amount, rest) = self.raw.split_at(self.cut.unwrap_or(0));
        let rest = if amount.is_empty() { rest } else { rest.strip_prefix(' ').unwrap_or(rest) };
        let within = if self.has_note { rest.strip_suffix(')') } else { None };
        let (of, note) = within.and_then(|within| within.split_once('(')).unwrap_or((rest, ""));
        let of = if within.is_some() { of.strip_suffix(' ').unwrap_or(of) } else { of };
        [amount.trim_start(), of, note]
    }

    /// The line with a text in one of its fields, and how it is noted then.
    fn with(&self, name: &str, text: &str) -> (String, String) {
        let [mut amount, mut of, mut note] = self.parts();
        *(match name {
            AMOUNT => &mut amount,
            NOTE => &mut note,
            _ => &mut of,
        }) = text;
        let mut line = amount.to_owned();
        for (before, part, behind) in [("", of, ""), ("(", note, ")")] {
            if !part.is_empty() {
                if !line.is_empty() {
                    line.push(' ');
                }
                line.extend([before, part, behind]);
            }
        }
        // Where another tab has changed the line meanwhile, what is typed goes on in the field that was there.
        let cut = if self.cut.is_some() || name == AMOUNT { Some(amount.len()) } else { None };
        let note = OpenLine { raw: &line, cut, has_note: self.has_note || name == NOTE, ..*self }.note();
        (line, note)
    }
}

/// A text with a line of it in place.
fn placed(lines: &str, at: usize, line: &str) -> String {
    let mut all: Vec<&str> = lines.lines().collect();
    all.resize(all.len().max(at + 1), "");
    all[at] = line;
    all.join("\n")
}

/// The lines with a text typed in a field of the one that is noted, and how that is noted then.
#[must_use]
pub fn typed_in(lines: &str, note: &str, name: &str, text: &str, bench: &Bench) -> (String, String) {
    let Some(open) = OpenLine::noted(note, lines, bench) else { return (lines.to_owned(), note.to_owned()) };
    let (line, note) = open.with(name, text);
    (placed(lines, open.at, &line), note)
}

impl CardForm {
    /// The line that is open.
    pub(super) fn line(&self, bench: &Bench) -> Option<OpenLine<'_>> {
        OpenLine::noted(&self.line, &self.lines, bench)
    }

    /// Takes its texts into their fields.
    pub(super) fn open_line(&mut self, bench: &Bench) {
        let Some(line) = self.line(bench) else { return };
        let [amount, of, note] = line.parts().map(str::to_owned);
        (self.line_amount, self.line_of, self.line_note) = (amount, of, note);
    }

    /// Opens a line behind the last.
    pub(super) fn added(&self, bench: &Bench) -> Act {
        let last = self.lines.lines().collect::<Vec<_>>().iter().rposition(|line| !line.trim().is_empty());
        Act::Choose(LINE.into(), OpenLine::of(last.map_or(0, |last| last + 1), "", bench).note())
    }

    /// Ingredients for the letters typed in the line that is open; the last offer is the words as typed.
    pub(super) fn offers(&self, open: &OpenLine<'_>, bench: &Bench) -> Vec<Button> {
        let wanted = self.line_of.trim();
        if open.is_whole() || wanted.is_empty() || wanted == open.taken.trim() {
            return Vec::new();
        }
        let mut names = offered(wanted, bench);
        names.push(wanted);
        let offer = |name: &str| {
            let (line, note) = OpenLine { taken: name, ..*open }.with(OF, name);
            Button::new(name, Act::Put(vec![(LINES, placed(&self.lines, open.at, &line)), (LINE, note)]))
        };
        names.into_iter().map(offer).collect()
    }

    /// What can be done with the line that is open.
    pub(super) fn deeds(&self, open: &OpenLine<'_>) -> Vec<Button> {
        let all: Vec<&str> = self.lines.lines().collect();
        let name = open.raw.trim();
        if open.at >= all.len() {
            return Vec::new();
        }
        let is_line = |at: &usize| !all[*at].trim().is_empty();
        let swapped = |label: &str, with: usize| {
            let mut moved = all.clone();
            moved.swap(open.at, with);
            let puts = vec![(LINES, moved.join("\n")), (LINE, OpenLine { at: with, ..*open }.note())];
            Button::sign(label, format!("{label}: {name}"), Act::Put(puts))
        };
        let up = (0..open.at).rev().find(is_line).map(|with| swapped("Up", with));
        let down = (open.at + 1..all.len()).find(is_line).map(|with| swapped("Down", with));
        let note = || {
            let noted = OpenLine { has_note: true, ..*open };
            let note = OpenLine { taken: noted.parts()[1], ..noted }.note();
            Button::sign("Note", format!("Note: {name}"), Act::Choose(LINE.into(), note))
        };
        let mut fewer = all.clone();
        fewer.remove(open.at);
        let puts = vec![(LINES, fewer.join("\n")), (LINE, String::new())];
        let remove = Button::sign("Remove", format!("Remove: {name}"), Act::Put(puts));
        let note = (!open.has_note && !open.is_whole()).then(note);
        up.into_iter().chain(down).chain(note).chain([remove]).collect()
    }
}
