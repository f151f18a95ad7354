//! Specs in files of text: as we save them, as a table, or as somebody wrote them down.

mod written;

use super::card::read_plain;
use crate::book::{Card, Import, Way};
use crate::screen::Bench;
use crate::store::{ImportProblem, checksum};
use crate::text::{Dimension, read_spec};
use written::{as_written, is_headed};

/// Longest text that is a spec, as in a backup.
const LONGEST: usize = 200_000;

/// Reads a spec. Its id is made of the text, so that the same file brings the same.
///
/// # Errors
/// [`ImportProblem::NoSpec`] where no line is an amount of something.
pub fn read(text: &str, bench: &Bench) -> Result<Import, ImportProblem> {
    let text = text.trim_start_matches('\u{feff}').trim();
    if text.len() > LONGEST {
        return Err(ImportProblem::TooLong);
    }
    let is_read =
        |lines: &str| read_spec(lines, &bench.reading(Dimension::Either)).iter().any(|line| line.read.is_ok());
    let is_spec = |card: &Card| !is_read(&card.name) && card.ways.iter().any(|way| is_read(&way.lines));
    // Where there are not several forms to keep apart, a block of words is no form.
    let is_ours = |card: &Card| {
        let measured = card.ways.iter().filter(|way| is_read(&way.lines)).count();
        measured > 1 || (measured == card.ways.len() && !is_headed(text))
    };
    let ours = table(text).or_else(|| read_plain(text).filter(is_ours)).filter(is_spec);
    let card = ours.unwrap_or_else(|| as_written(text, &is_read));
    if !is_spec(&card) {
        return Err(ImportProblem::NoSpec);
    }
    let id = format!("t-{:08x}", checksum(text));
    Ok(Import { cards: vec![(id, card)], ..Import::default() })
}

fn card(name: &str, lines: String) -> Card {
    Card { name: name.into(), ways: vec![Way { lines, ..Way::default() }], ..Card::default() }
}

/// The table that Scale saves, parted by commas or, as spreadsheets may save it again, by semicolons. What the remarks
/// say follows from the rest.
fn table(text: &str) -> Option<Card> {
    let head = text.lines().next()?;
    let comma = if head.contains(';') { ';' } else { ',' };
    let names: Vec<String> = cells(head, comma).into_iter().flatten().collect();
    if names.first()? != "ingredient" || names.get(1)? != "amount" {
        return None;
    }
    let line = |row: Vec<String>| {
        let mut row = row.into_iter();
        let (name, amount) = (row.next().unwrap_or_default(), row.next().unwrap_or_default());
        // What guards it from being taken for a formula.
        let name = name.strip_prefix('\'').filter(|rest| rest.starts_with(['=', '+', '-', '@', '\t'])).unwrap_or(&name);
        format!("{amount} {name}").trim().to_owned()
    };
    let lines: Vec<String> = cells(text, comma).into_iter().skip(1).map(line).filter(|line| !line.is_empty()).collect();
    Some(card("", lines.join("\n")))
}

/// The rows of a table as CSV (RFC 4180).
fn cells(text: &str, comma: char) -> Vec<Vec<String>> {
    let mut rows = vec![vec![String::new()]];
    let mut is_quoted = false;
    let mut signs = text.chars().peekable();
    while let Some(sign) = signs.next() {
        let Some(row) = rows.last_mut() else { break };
        match sign {
            '"' if is_quoted && signs.next_if_eq(&'"').is_some() => row.last_mut().map_or((), |cell| cell.push('"')),
            '"' => is_quoted = !is_quoted,
            '\n' if !is_quoted => rows.push(vec![String::new()]),
            '\r' if !is_quoted => {}
            sign if sign == comma && !is_quoted => row.push(String::new()),
            sign => row.last_mut().map_or((), |cell| cell.push(sign)),
        }
    }
    rows
}
