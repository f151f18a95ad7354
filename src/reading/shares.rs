//! The lines of a spec as what each brings to the drink.

use super::contents::{Content, guesses, question, words};
use super::rows::{beneath, exact_words, unread_row, with_said};
use crate::book::Line;
use crate::craft::balance;
use crate::screen::{Bench, Row, Share};
use crate::substance::mix::Mix;
use crate::text::{self, LineProblem, SpecLine};

/// A line with what it is taken as and what it brings, or why it is not counted.
pub(crate) fn counted_row((line, content): (&SpecLine, &Content), whole: &Mix, bench: &Bench) -> Row {
    let read = match &line.read {
        Ok(read) => read,
        Err(problem) => {
            let row = unread_row(line, problem);
            return match content {
                Content::NoAmount if *problem == LineProblem::NoAmount => Row {
                    marked: true,
                    detail: "No amount, so it is not counted. Write it like 60 ml soda.".into(),
                    ..row
                },
                _ => row,
            };
        }
    };
    let amount = exact_words(read.amount, read.unit, bench);
    let plain = |detail: String| Row {
        name: read.name.clone(),
        amount: amount.clone(),
        detail: with_said(detail, &read.said),
        ..Row::default()
    };
    let wrong = |words: &str| Row { marked: true, ..plain(words.to_owned()) };
    match content {
        Content::Poured(mix) => Row { shares: shares(mix, whole, bench), ..plain(as_words(read, bench)) },
        Content::Counted(_) => plain("By the piece, not in the volume.".into()),
        Content::Weighed => wrong("A powder is weighed: write it in g. It is not counted."),
        Content::Overfull => wrong("These figures don't go together in one litre, so it is not counted."),
        Content::Misread => wrong(&format!(
            "“{}” can't be used, so it is not counted. Write it like 57 %, sugar 250 g/l or 12 °Bx.",
            read.unread.as_deref().unwrap_or_default()
        )),
        Content::Unknown => Row {
            marked: true,
            typed: line.typed.clone(),
            fixes: guesses(line, &read.name),
            ..plain(question(&read.name, bench))
        },
        Content::Words | Content::NoAmount | Content::Unclear => plain(String::new()),
    }
}

/// A line as it is poured and what it is taken as, on the spec itself; or why it is not counted.
pub(crate) fn card_row(pair: (&SpecLine, &Content), bench: &Bench) -> Row {
    let row = counted_row(pair, &Mix::default(), bench);
    let pour =
        pair.0.read.as_ref().map_or_else(|_| String::new(), |read| beneath(read.amount, read.unit, &row.amount, bench));
    Row { shares: Vec::new(), detail: with_said(pour, &row.detail), ..row }
}

fn as_words(line: &Line, bench: &Bench) -> String {
    line.taken.as_ref().map_or_else(String::new, |taken| words(taken, bench))
}

fn shares(part: &Mix, whole: &Mix, bench: &Bench) -> Vec<Share> {
    let share = balance::share(part, whole);
    let one = |of, fraction: f64| Share {
        of,
        words: format!("{} %", text::plain(fraction * 100.0, 0, bench.decimal)),
        percent: percent(fraction),
    };
    vec![one("volume", share.volume), one("alcohol", share.ethanol), one("sugar", share.sugar), one("acid", share.acid)]
}

/// A fraction of one as a whole percentage.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
fn percent(fraction: f64) -> u8 {
    (fraction.clamp(0.0, 1.0) * 100.0).round() as u8
}
