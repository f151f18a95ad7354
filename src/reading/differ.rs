//! Two versions of a text as a table: what went, what came, and where an amount alone changed, both amounts.

use crate::book::{Compare, compare};
use crate::screen::{Bench, Row};
use crate::text::{Dimension, amount_ends};

/// Most lines on either side that are looked at for being the same ingredient.
const MOST: usize = 200;

/// A line that stands in one of two texts.
struct One<'a> {
    amount: &'a str,
    name: &'a str,
    is_came: bool,
    /// Where the line of the other text is that has its name.
    other: Option<usize>,
}

/// How two texts differ, a row each: "lemon juice, 30 ml → 25 ml" where the names are equal, else what went and what came,
/// said in the words of `(went, came)`. Nothing where they do not.
pub(crate) fn rows(before: &str, after: &str, (went, came): (&str, &str), bench: &Bench) -> Vec<Row> {
    let reading = bench.reading(Dimension::Either);
    let one = |line, is_came| {
        let (amount, name) = str::split_at(line, amount_ends(line, &reading).unwrap_or(0));
        One { amount, name: name.trim(), is_came, other: None }
    };
    let differing = compare(before, after).into_iter().filter_map(|line| match line {
        Compare::Stayed(_) => None,
        Compare::Went(line) => Some(one(line, false)),
        Compare::Came(line) => Some(one(line, true)),
    });
    let mut lines: Vec<One<'_>> = differing.collect();
    pair(&mut lines);
    let row = |line: &One<'_>| {
        let row = |amount: String, detail: &str| Row {
            name: line.name.to_owned(),
            amount,
            detail: detail.to_owned(),
            ..Row::default()
        };
        Some(match line.other.map(|at| &lines[at]) {
            None => row(line.amount.to_owned(), if line.is_came { came } else { went }),
            // It is told where it stands now.
            Some(_) if !line.is_came => return None,
            Some(was) if was.amount == line.amount => row(line.amount.to_owned(), "in another place"),
            Some(was) => row(changed(was.amount, line.amount), ""),
        })
    };
    lines.iter().filter_map(row).collect()
}

/// Puts together what went and what came of one name.
fn pair(lines: &mut [One<'_>]) {
    if lines.len() > MOST {
        return;
    }
    for at in 0..lines.len() {
        let line = &lines[at];
        if !line.is_came && !line.name.is_empty() {
            let is_it =
                |other: &One<'_>| other.is_came && other.other.is_none() && other.name.eq_ignore_ascii_case(line.name);
            let other = lines.iter().position(is_it);
            if let Some(other) = other {
                lines[at].other = Some(other);
                lines[other].other = Some(at);
            }
        }
    }
}

/// "tumbler → coupe", "none → coupe".
pub(crate) fn changed(before: &str, after: &str) -> String {
    let said = |text: &str| if text.is_empty() { "none".to_owned() } else { text.to_owned() };
    format!("{} → {}", said(before), said(after))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(before: &str, after: &str) -> Vec<[String; 3]> {
        let rows = rows(before, after, ("left out", "added"), &Bench::default());
        rows.into_iter().map(|row| [row.name, row.amount, row.detail]).collect()
    }

    #[test]
    fn an_amount_that_changed_is_one_change() {
        let before = "60 ml gin\n30 ml lemon juice\n1 egg white\nLemon twist";
        let after = "60 ml gin\n25 ml Lemon juice\n5 ml sugar syrup\nLemon twist";
        assert_eq!(
            said(before, after),
            [["egg white", "1", "left out"], ["Lemon juice", "30 ml → 25 ml", ""], ["sugar syrup", "5 ml", "added"]]
        );
        assert!(said(before, &format!("\n{}\r\n", before.replace('\n', "\r\n"))).is_empty());
    }

    #[test]
    fn a_line_in_another_place_is_told_so() {
        assert_eq!(
            said("10 ml syrup\n60 ml gin\n30 ml lime juice", "60 ml gin\n30 ml lime juice\n10 ml syrup"),
            [["syrup", "10 ml", "in another place"]]
        );
        // The same ingredient twice: each goes with one.
        assert_eq!(
            said("10 ml syrup\n20 ml syrup", "15 ml syrup\nStir"),
            [["syrup", "20 ml", "left out"], ["syrup", "10 ml → 15 ml", ""], ["Stir", "", "added"]]
        );
        assert_eq!(said("lemon juice", "20 ml lemon juice"), [["lemon juice", "none → 20 ml", ""]]);
    }

    #[test]
    fn of_very_many_lines_none_is_lost() {
        let long = |amount: usize| (0..150).map(|at| format!("{amount} ml tea {at}")).collect::<Vec<_>>().join("\n");
        assert_eq!(said(&long(1), &long(2)).len(), 300);
    }
}
