//! The lines of a spec as what each brings to the drink.

use super::contents::{Content, guesses, question, words};
use super::name::poured_name;
use super::rows::{beneath, exact_words, unread_row, with_said};
use crate::book::Line;
use crate::craft::balance;
use crate::screen::{Bench, Row};
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
        Content::Poured(mix) => {
            let row = plain(as_words(read, bench));
            Row { detail: with_said(row.detail, &brings(mix, whole, bench)), ..row }
        }
        Content::Counted(_) => plain("By the piece, not in the volume.".into()),
        Content::Weighed => wrong("A powder is weighed: write it in g. It is not counted."),
        Content::Unmade => {
            wrong(&format!("{} It is not counted.", bench.prep(read.taken).map_or("", |prep| &prep.why)))
        }
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
    let name = poured_name(&row.name, bench.decimal).to_owned();
    Row { name, detail: with_said(pour, &row.detail), ..row }
}

fn as_words(line: &Line, bench: &Bench) -> String {
    line.taken.as_ref().map_or_else(String::new, |taken| words(taken, bench))
}

/// "volume 57 %, alcohol 84 %": how much of the whole it brings of what.
fn brings(part: &Mix, whole: &Mix, bench: &Bench) -> String {
    let share = balance::share(part, whole);
    let each = [("volume", share.volume), ("alcohol", share.ethanol), ("sugar", share.sugar), ("acid", share.acid)];
    let shown = each.iter().filter(|(_, fraction)| *fraction >= 0.005);
    let shown: Vec<String> = shown.map(|(of, fraction)| whole_percent(of, *fraction, bench)).collect();
    shown.join(", ")
}

/// "sugar 12 %", of a fraction of one.
pub(super) fn whole_percent(of: &str, fraction: f64, bench: &Bench) -> String {
    format!("{of} {} %", text::plain(fraction * 100.0, 0, bench.decimal))
}
