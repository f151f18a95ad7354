//! Specs: the list of them, to search and open.

use super::remarks::reminder;
use crate::book::{Card, Entry, Pairs};
use crate::craft::balance::balance;
use crate::reading::Contents;
use crate::reading::named;
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Block, Button, Figure, Input, Row, Strip, Tone, Tool, form, plural};
use crate::text;

form! {
    /// What is searched for, and how much is shown.
    SpecsForm {
        /// Words to search for.
        search = "",
        /// How many are shown.
        shown = "10",
    }
}

/// How many more are shown at a time.
pub const STEP: usize = 10;

impl Tool for SpecsForm {
    fn empty_label(&self, _bench: &Bench) -> &'static str {
        if self.search.is_empty() { "" } else { "Clear search" }
    }

    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let mut buttons = vec![Button::new("New spec", Act::NewSpec)];
        if bench.book.cards.is_empty() {
            buttons.push(Button::new("Try a demo", Act::Demo));
        }
        vec![
            Block::field("search", "Search", Input::Words { placeholder: "name, tag or ingredient" }),
            Block::Buttons(buttons),
            Block::Table("", Vec::new()),
            // The answer's own: Show more.
            Block::Buttons(Vec::new()),
        ]
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer { rows_title: "Specs", ..Answer::default() };
        let all = bench.book.cards.len();
        // No more are looked for than are shown, and one to see whether there are more.
        let mut found = self.found(bench);
        answer.rows = found.by_ref().take(self.shown()).map(|entry| row(entry, bench)).collect();
        let has_more = found.next().is_some();
        if has_more {
            answer.buttons.push(Button::new("Show more", Act::More));
        }
        let is_searched = !self.search.trim().is_empty();
        let found = if is_searched { answer.rows.len() } else { all };
        let count = |value: usize| text::count(value as f64, bench.decimal);
        let noun = plural(found, "spec", "specs");
        let more = if is_searched && has_more { "+" } else { "" };
        answer.strip = Strip {
            figures: vec![Figure::new(format!("{}{more}", count(found)), noun)],
            also: match (all, is_searched) {
                (0, _) => "Start one, or try the demo".into(),
                (_, false) => "Kept on this device".into(),
                (all, true) => format!("of {} match", count(all)),
            },
            tone: Tone::Answer,
            ..Strip::default()
        };
        for unread in &bench.book.unread {
            answer.cautions.push(format!(
                "{} could not be opened: {}. It is left as it is; Backup can download it.",
                unread.key, unread.why
            ));
        }
        if bench.book.cards.iter().any(|entry| entry.id.starts_with(crate::book::DEMO)) {
            answer.remarks.push("The harvest supper is a demo. Backup takes it away in one tap.".into());
        }
        answer.cautions.extend(reminder(bench));
        answer
    }

    fn empty(&mut self) {
        self.search.clear();
    }

    fn take(&mut self, _name: &str, _text: &str) {}
}

impl SpecsForm {
    fn shown(&self) -> usize {
        text::read_number(&self.shown, text::Decimal::Point)
            .ok()
            .flatten()
            .map_or(STEP, |shown| shown.max(1.0) as usize)
    }

    /// Specs that hold every word searched for.
    fn found<'a>(&'a self, bench: &'a Bench) -> impl Iterator<Item = &'a Entry<Card>> {
        let words: Vec<(Pairs, Vec<u8>)> = self
            .search
            .split_whitespace()
            .map(|word| (Pairs::within(word), word.to_ascii_lowercase().into_bytes()))
            .collect();
        let holds_all = move |entry: &&Entry<Card>| {
            words.iter().all(|(pairs, _)| entry.pairs.may_hold(pairs))
                && words.iter().all(|(_, word)| holds(&entry.value, word))
        };
        bench.book.cards.iter().map(AsRef::as_ref).filter(holds_all)
    }
}

fn row(entry: &Entry<Card>, bench: &Bench) -> Row {
    let Card { name, tags, ways, .. } = &entry.value;
    let first = ways.first().map_or("", |way| &way.lines);
    let read = Contents::of(first, bench);
    let strength = balance(&read.drunk(bench).0).strength.fraction();
    let is_whole = read.whole().is_some() && read.is_something();
    let ways: Vec<&str> = ways.iter().map(|way| way.name.trim()).filter(|name| !name.is_empty()).collect();
    let mut details = vec![ways.join(", "), tags.trim().to_owned()];
    let has_rival = bench.book.rivals(&entry.id).next().is_some();
    if has_rival {
        details.insert(0, "two versions are kept: open it to choose".into());
    }
    if entry.newer.is_some() {
        details.insert(0, "from a newer Meniscus: to read only".into());
    }
    details.retain(|detail| !detail.is_empty());
    Row {
        name: named(name),
        amount: if is_whole {
            format!("{} % vol", text::plain(strength * 100.0, 0, bench.decimal))
        } else {
            String::new()
        },
        detail: details.join(" · "),
        marked: has_rival,
        href: Route::Card.href_with("id", &entry.id),
        ..Row::default()
    }
}

/// Whether a card holds a lower-case word, in any case.
fn holds(card: &Card, word: &[u8]) -> bool {
    let within = |text: &str| {
        let text = text.as_bytes();
        let Some((first, rest)) = word.split_first() else { return true };
        text.len() >= word.len()
            && (0..=text.len() - word.len()).any(|at| {
                text[at].to_ascii_lowercase() == *first && text[at + 1..at + word.len()].eq_ignore_ascii_case(rest)
            })
    };
    within(&card.name) || within(&card.tags) || card.ways.iter().any(|way| within(&way.lines) || within(&way.name))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::{Book, Way, demo_cards};
    use crate::screen::Held;

    fn bench() -> Bench {
        let entry = |(id, value)| {
            std::sync::Arc::new(Entry { id, value, stamp: Default::default(), newer: None, pairs: Default::default() })
        };
        let mut book =
            Book { cards: demo_cards(0).into_iter().map(entry).collect(), has_cards: true, ..Book::default() };
        book.sort();
        Bench { book: Held::new(book), ..Bench::default() }
    }

    fn names(search: &str) -> Vec<String> {
        let form = SpecsForm { search: search.into(), ..SpecsForm::default() };
        form.answer(&bench()).rows.into_iter().map(|row| row.name).collect()
    }

    #[test]
    fn finds_by_name_tag_and_ingredient() {
        assert_eq!(names(""), ["Barn owl", "Hedgerow clerk", "Orchard lantern"]);
        assert_eq!(names("LANTERN"), ["Orchard lantern"]);
        assert_eq!(names("autumn rye"), ["Barn owl"]);
        assert_eq!(names("verjus"), ["Hedgerow clerk"]);
        assert!(names("moon").is_empty());
        let all = SpecsForm::default().answer(&bench());
        assert_eq!(all.rows[0].amount, "27 % vol");
        assert!(all.rows[0].href.starts_with("#/specs/spec?id=demo-"));
    }

    #[test]
    fn shows_no_more_than_asked() {
        let card = |number| Entry {
            id: format!("id{number}"),
            value: Card { name: format!("Drink {number:03}"), ways: vec![Way::default()], ..Card::default() },
            stamp: Default::default(),
            newer: None,
            pairs: Pairs::default(),
        };
        let book = Book { cards: (0..100).map(card).map(std::sync::Arc::new).collect(), ..Book::default() };
        let bench = Bench { book: Held::new(book), ..Bench::default() };
        assert_eq!(SpecsForm::default().answer(&bench).rows.len(), 10);
        assert_eq!(SpecsForm { shown: "60".into(), ..SpecsForm::default() }.answer(&bench).rows.len(), 60);
    }

    #[test]
    fn letters_side_by_side_pass_nothing_by() {
        let entry = |(id, value)| Entry { id, value, stamp: Default::default(), newer: None, pairs: Pairs::default() };
        for entry in demo_cards(0).into_iter().map(entry) {
            let noted = entry.clone().noted();
            for way in &entry.value.ways {
                for word in way.lines.split_whitespace().chain(entry.value.name.split_whitespace()) {
                    for part in (1..=word.len()).filter_map(|end| word.get(..end)) {
                        assert!(noted.pairs.may_hold(&Pairs::within(part)), "{part}");
                    }
                }
            }
            assert!(!noted.pairs.may_hold(&Pairs::within("xylophonic")), "it passes something by");
        }
    }
}
