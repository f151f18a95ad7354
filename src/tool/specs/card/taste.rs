//! How a form of a spec tastes: what is said of it, and what was said before, with what has changed since.

use super::{CardForm, differ, ways};
use crate::book::{Card, Tasting, Way};
use crate::reading::named;
use crate::screen::{Act, Answer, Bench, Block, Button, Face, Figure, Input, Opt, Problem, Row, Strip, Texts, Tone};

/// What is typed of a tasting, until it is kept.
pub const WORDS: &str = "taste_words";
/// See [`WORDS`].
pub const SCORE: &str = "taste_score";
/// See [`WORDS`].
pub const WHOM: &str = "taste_whom";
/// The spec that it is typed for.
pub const OF: &str = "taste_of";
/// Which of the earlier ones is open: the number of the form and its own, from 0, as "0/3".
pub const OPEN: &str = "tasting";
/// Which of them the others are compared with: its number, from 0; empty for the form of today.
pub const AGAINST: &str = "tasting_with";

/// Most letters of a score.
const LONGEST_SCORE: usize = 20;
/// Most letters of its words in a line.
const LONGEST_LINE: usize = 120;

/// Whether nothing is typed of a tasting.
#[must_use]
pub fn is_untold(texts: &Texts) -> bool {
    [WORDS, SCORE, WHOM].iter().all(|name| texts.get(name).is_none_or(|text| text.trim().is_empty()))
}

fn is_too_long(score: &str) -> bool {
    score.trim().chars().count() > LONGEST_SCORE
}

/// A card after an act on the tastings of a form of it, and what that is called for Undo; none where it changes nothing.
#[must_use]
pub fn tasted(card: &Card, at: usize, act: &Act, texts: &Texts, now: u64) -> Option<(Card, &'static str)> {
    let mut card = card.clone();
    let way = card.ways.get_mut(at)?;
    let words = match act {
        Act::Taste => {
            let text = |name: &str| texts.get(name).map_or("", |text| text.trim()).to_owned();
            let [words, score, whom] = [WORDS, SCORE, WHOM].map(text);
            if is_untold(texts) || is_too_long(&score) {
                return None;
            }
            way.tastings.push(Tasting { at: now, words, score, whom, was: way.version(&Way::default()) });
            "keeping a tasting"
        }
        Act::BringBack(which) => {
            *way = way.tastings.get(*which)?.was.version(way);
            "bringing back what was tasted"
        }
        Act::DropTasting(which) if *which < way.tastings.len() => {
            way.tastings.remove(*which);
            "deleting a tasting"
        }
        _ => return None,
    };
    Some((card, words))
}

/// "7 · Thin, stir less · the kitchen, 26 Nov": the words to so many letters.
pub(super) fn in_a_line(tasting: &Tasting, bench: &Bench) -> String {
    let words = tasting.words.lines().map(str::trim).filter(|line| !line.is_empty()).collect::<Vec<_>>().join(" ");
    let words = match words.char_indices().nth(LONGEST_LINE) {
        Some((at, _)) => format!("{}…", &words[..at]),
        None => words,
    };
    let mut said = vec![tasting.score.clone(), words, for_whom(tasting, bench)];
    said.retain(|part| !part.is_empty());
    said.join(" · ")
}

/// "the kitchen, 26 Nov".
fn for_whom(tasting: &Tasting, bench: &Bench) -> String {
    let day = bench.clock.date(i64::try_from(tasting.at).unwrap_or(i64::MAX));
    let comma = if tasting.whom.is_empty() { "" } else { ", " };
    format!("{}{comma}{day}", tasting.whom)
}

impl CardForm {
    /// The screen of it.
    pub(super) fn tasting(&self, card: &Card, at: usize, above: Vec<Block>, bench: &Bench) -> (Vec<Block>, Answer) {
        let nothing = Way::default();
        let way = card.ways.get(at).unwrap_or(&nothing);
        let mut answer = Answer { name: named(&card.name), text: Some(String::new()), ..Answer::default() };
        answer.head = vec![Button::new("Done", Act::Show(Face::Read))];
        let is_untold =
            [&self.taste_words, &self.taste_score, &self.taste_whom].iter().all(|text| text.trim().is_empty());
        if is_too_long(&self.taste_score) {
            let words =
                format!("A score has up to {LONGEST_SCORE} letters, like 7 or 7/10. The rest is for the words.");
            answer.problems.push(Problem::new(SCORE, words));
        } else if !is_untold {
            answer.foot = vec![Button::new("Keep this tasting", Act::Taste)];
        }
        answer.strip = match way.tastings.last() {
            None => Strip { also: "Say how it tastes, and keep it".into(), tone: Tone::Answer, ..Strip::default() },
            Some(last) => Strip {
                figures: (!last.score.is_empty()).then(|| Figure::new(last.score.as_str(), "")).into_iter().collect(),
                also: format!("last tasted: {}", for_whom(last, bench)),
                tone: Tone::Answer,
                ..Strip::default()
            },
        };
        let mut blocks = above;
        if card.ways.len() > 1 {
            let options = ways(card);
            blocks.push(Block::field("at", "Form", Input::Chips { options, captioned: false }));
        }
        blocks.push(Block::field(WORDS, "How it tastes", Input::Lines { placeholder: "like thin, stir less" }));
        blocks.push(Block::field(SCORE, "Score, if you like", Input::Words { placeholder: "like 7" }));
        blocks.push(Block::field(WHOM, "For whom", Input::Words { placeholder: "like the kitchen" }));
        blocks.extend(self.typed_for_another(is_untold, bench));
        self.earlier(way, at, &mut blocks, bench);
        (blocks, answer)
    }

    /// That what is typed was begun for another spec.
    fn typed_for_another(&self, is_untold: bool, bench: &Bench) -> Option<Block> {
        let other = bench.book.card(&self.taste_of).filter(|_| !is_untold && self.taste_of != self.id)?;
        Some(Block::Caution(format!("You began to type this for {}.", named(&other.value.name))))
    }

    /// What was said before, the latest first; of the one that is open, what has changed since, or how it differs from another.
    fn earlier(&self, way: &Way, at: usize, blocks: &mut Vec<Block>, bench: &Bench) {
        let (mut heading, mut rows) = ("Earlier tastings", Vec::new());
        if way.tastings.len() > 1 {
            let option = |(which, tasting): (usize, &Tasting)| {
                let dot = if tasting.score.is_empty() { "" } else { " · " };
                Opt::new(which.to_string(), format!("{}{dot}{}", for_whom(tasting, bench), tasting.score))
            };
            let tastings = way.tastings.iter().enumerate().rev().map(option);
            blocks.push(Block::pick(
                AGAINST,
                "Compared with",
                [Opt::new("", "today")].into_iter().chain(tastings).collect(),
            ));
        }
        let against = self.tasting_with.parse().ok().filter(|other| *other < way.tastings.len());
        let was = |which: usize| way.tastings[which].was.version(way);
        for (which, tasting) in way.tastings.iter().enumerate().rev() {
            let key = format!("{at}/{which}");
            let differing = |before: &Way, after: &Way| differ::ways(before, after, ("left out", "added"), bench);
            let today = differing(&was(which), way);
            let is_as_now = today.is_empty();
            let (title, since) = match against {
                None => ("Changed since", today),
                Some(other) => ("Earlier → later", differing(&was(which.min(other)), &was(which.max(other)))),
            };
            let is_open = self.tasting == key && !since.is_empty();
            let label = match (is_open, against) {
                _ if since.is_empty() => "",
                (true, _) => "Hide what changed",
                (false, None) => "Show what changed since",
                (false, Some(_)) => "Show how it differs",
            };
            rows.push(row(tasting, which, (label, if is_open { "" } else { &key }, is_as_now), bench));
            if is_open {
                blocks.push(Block::Table(std::mem::replace(&mut heading, "Before that"), std::mem::take(&mut rows)));
                blocks.push(Block::Table(title, since));
            }
        }
        if !rows.is_empty() {
            blocks.push(Block::Table(heading, rows));
        }
    }
}

fn row(tasting: &Tasting, which: usize, (label, key, is_as_now): (&str, &str, bool), bench: &Bench) -> Row {
    let mut detail = for_whom(tasting, bench);
    let said = in_a_line(tasting, bench);
    let button = |label: &str, act| Button { spoken: format!("{label}: {said}"), ..Button::new(label, act) };
    let mut buttons = Vec::new();
    if !label.is_empty() {
        buttons.push(button(label, Act::Choose(OPEN.into(), key.into())));
    }
    match is_as_now {
        true => detail.push_str(". As it is made now"),
        false => buttons.push(button("Bring it back", Act::BringBack(which))),
    }
    buttons.push(button("Delete", Act::DropTasting(which)));
    let name = if tasting.words.is_empty() { "No words".to_owned() } else { tasting.words.clone() };
    Row { name, amount: tasting.score.clone(), detail, buttons, ..Row::default() }
}
