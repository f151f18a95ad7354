//! Specs: the list of them, to search and open.

use std::sync::Arc;

use super::remarks::reminder;
use super::served::served;
use crate::book::{Card, DEMO, Entry, Pairs, Way};
use crate::reading::{Contents, named};
use crate::screen::route::Route;
use crate::screen::{
    Act, Answer, Bench, Block, Button, Choice, Figure, Input, Opt, Row, Strip, Tone, Tool, choice, form, plural,
};
use crate::text;

/// The order of the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sort {
    /// By name.
    Name,
    /// What was written down last first.
    Newest,
    /// What is strongest as it is served first.
    Strongest,
}

choice! { Sort:
    Name = "name", "By name";
    Newest = "newest", "Newest";
    Strongest = "strongest", "Strongest";
}

form! {
    /// What is searched for, and how much is shown.
    SpecsForm {
        /// Words to search for.
        search = "",
        /// A tag that those shown have, in small letters; empty for all.
        tag = "",
        /// Which tags are offered: empty for the commonest, else all.
        tags = "",
        /// The order: a key of [`Sort`].
        sort = "name",
        /// How many are shown.
        shown = "40",
    }
}

/// How many more are shown at a time.
pub const STEP: usize = 40;
/// How many at first while something is searched for: each letter reads them anew.
const FOUND: usize = 8;
/// Tags that are offered at once, and at most.
const FEW_TAGS: usize = 3;
const MOST_TAGS: usize = 24;

impl Tool for SpecsForm {
    fn empty_label(&self, _bench: &Bench) -> &'static str {
        if self.search.is_empty() { "" } else { "Clear search" }
    }

    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let mut blocks = Vec::new();
        if bench.book.cards.is_empty() {
            blocks.push(Block::Remark("A spec is a drink's recipe: what it is made of, and how.".into()));
            blocks.push(Block::Buttons(vec![
                Button::new("New spec", Act::NewSpec),
                Button::new("Try a demo", Act::Demo),
            ]));
        } else {
            blocks.push(Block::field("search", "Search", Input::Search { placeholder: "name, tag or ingredient" }));
            let (tags, has_more) = self.tags_offered(bench);
            let has_tags = |entry: &Arc<Entry<Card>>| !entry.value.tags.is_empty();
            if bench.book.cards.iter().any(has_tags) {
                blocks.push(Block::field("tag", "Tag", Input::Chips { options: tags, captioned: false }));
            }
            blocks.push(Block::chips::<Sort>("sort", "Order", false));
            if has_more {
                let more = Act::Choose("tags".into(), "all".into());
                blocks.push(Block::Buttons(vec![Button::new("More tags", more)]));
            }
        }
        blocks.push(Block::Table("", Vec::new()));
        // The answer's own: More.
        blocks.push(Block::Buttons(Vec::new()));
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer { rows_title: "Specs", ..Answer::default() };
        let all = bench.book.cards.len();
        // No more are looked for than are shown, and one to see whether there are more.
        let in_order = self.in_order(bench);
        let mut found = self.found(in_order);
        // Each letter draws them anew: a glass is for the list that stands.
        let has_glass = self.search.trim().is_empty();
        answer.rows = found.by_ref().take(self.shown()).map(|entry| row(entry, has_glass, bench)).collect();
        let has_more = found.next().is_some();
        if has_more {
            answer.buttons.push(Button::new("More", Act::More));
        }
        if all > 0 {
            answer.head.push(Button::new("New", Act::NewSpec));
        }
        let is_searched = !self.search.trim().is_empty() || !self.tag.is_empty();
        let found = if is_searched { answer.rows.len() } else { all };
        let count = |value: usize| text::count(value as f64, bench.decimal);
        let noun = plural(found, "spec", "specs");
        let more = if is_searched && has_more { "+" } else { "" };
        let sought: Vec<&str> =
            [self.search.trim(), self.tag.as_str()].into_iter().filter(|words| !words.is_empty()).collect();
        answer.strip = Strip {
            figures: vec![match is_searched {
                true => Figure::new(format!("{}{more}", count(found)), format!("of {}", count(all))),
                false => Figure::new(count(found), noun),
            }],
            also: match (all, is_searched) {
                (0, _) => "Start one, or try the demo".into(),
                (_, false) => "Kept on this device".into(),
                (_, true) => sought.join(", "),
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
        if has_glass && bench.book.cards.iter().any(|entry| entry.id.starts_with(DEMO)) {
            answer.notes.push("The harvest supper is a demo. Backup takes it away in one tap.".into());
        }
        answer.cautions.extend(reminder(bench));
        answer
    }

    fn empty(&mut self) {
        self.search.clear();
        self.tag.clear();
    }

    fn take(&mut self, _name: &str, _text: &str) {}
}

impl SpecsForm {
    fn shown(&self) -> usize {
        let shown = text::read_number(&self.shown, text::Decimal::Point).ok().flatten();
        match shown.map_or(STEP, |shown| shown.max(0.0) as usize) {
            0..=STEP if self.search.trim().is_empty() => STEP,
            0..=STEP => FOUND,
            more => more,
        }
    }

    /// The specs in the order asked for.
    fn in_order<'a>(&self, bench: &'a Bench) -> Vec<&'a Entry<Card>> {
        let by_name = bench.book.cards.iter().map(AsRef::as_ref);
        match Sort::read(&self.sort) {
            Sort::Name => by_name.collect(),
            Sort::Newest => bench.book.newest().collect(),
            Sort::Strongest => {
                let cards = &bench.book.cards;
                let placed = bench.strongest.iter().filter_map(|at| cards.get(*at)).map(AsRef::as_ref);
                // While it is not known, as they come.
                if bench.strongest.len() == cards.len() { placed.collect() } else { by_name.collect() }
            }
        }
    }

    /// Those of them that have the tag and hold every word searched for.
    fn found<'a>(&'a self, all: Vec<&'a Entry<Card>>) -> impl Iterator<Item = &'a Entry<Card>> {
        let words: Vec<(Pairs, Vec<u8>)> = self
            .search
            .split_whitespace()
            .map(|word| (Pairs::within(word), word.to_ascii_lowercase().into_bytes()))
            .collect();
        let is_sought = move |entry: &&Entry<Card>| {
            (self.tag.is_empty() || tags(&entry.value).any(|tag| tag.eq_ignore_ascii_case(&self.tag)))
                && words.iter().all(|(pairs, _)| entry.pairs.may_hold(pairs))
                && words.iter().all(|(_, word)| holds(&entry.value, word))
        };
        all.into_iter().filter(is_sought)
    }

    /// All, then the commonest tags, and whether there are more. While something is searched for, no more than the one
    /// that is chosen: each letter would count them anew.
    fn tags_offered(&self, bench: &Bench) -> (Vec<Opt>, bool) {
        let mut counted: Vec<(String, usize)> = Vec::new();
        if self.search.is_empty() {
            for tag in bench.book.cards.iter().flat_map(|entry| tags(&entry.value)) {
                match counted.iter_mut().find(|(known, _)| known.eq_ignore_ascii_case(tag)) {
                    Some((_, count)) => *count += 1,
                    None => counted.push((tag.to_ascii_lowercase(), 1)),
                }
            }
        }
        let most = if self.tags.is_empty() { FEW_TAGS } else { MOST_TAGS };
        let mut options = vec![Opt::new("", "All")];
        while options.len() <= most
            && let Some(at) = commonest(&counted)
        {
            let (tag, _) = counted.remove(at);
            options.push(Opt::new(tag.clone(), tag));
        }
        if !self.tag.is_empty() && options.iter().all(|option| option.key != self.tag) {
            options.push(Opt::new(self.tag.clone(), self.tag.clone()));
        }
        (options, !counted.is_empty() && self.tags.is_empty())
    }
}

/// How strong a spec is in its first form, as that is served, in percent by volume; below zero where nothing in it is known.
#[must_use]
pub fn strength(card: &Card, bench: &Bench) -> f64 {
    let nothing = Way::default();
    let first = card.ways.first().unwrap_or(&nothing);
    let read = Contents::of(&first.lines, bench);
    if read.whole().is_some() && read.is_something() { served(first, &read, bench).strength } else { -1.0 }
}

/// The place of the one that is counted most; of several the first.
fn commonest(counted: &[(String, usize)]) -> Option<usize> {
    let mut most: Option<usize> = None;
    for (at, (_, count)) in counted.iter().enumerate() {
        if most.is_none_or(|most| counted[most].1 < *count) {
            most = Some(at);
        }
    }
    most
}

/// The tags of a spec, as they are written.
fn tags(card: &Card) -> impl Iterator<Item = &str> {
    card.tags.split(',').map(str::trim).filter(|tag| !tag.is_empty())
}

fn row(entry: &Entry<Card>, has_glass: bool, bench: &Bench) -> Row {
    let Card { name, tags, ways, .. } = &entry.value;
    let mut details = vec![format!("{} {}", ways.len(), plural(ways.len(), "form", "forms"))];
    let nothing = Way::default();
    let first = ways.first().unwrap_or(&nothing);
    let read = Contents::of(&first.lines, bench);
    let mut picture = None;
    if read.whole().is_some() && read.is_something() {
        let served = served(first, &read, bench);
        picture = if has_glass { served.glass(first, bench) } else { None };
        details.push(text::litres_or_ml(served.volume, bench.decimal).to_string());
        details.push(format!("{} %", text::plain(served.strength, 0, bench.decimal)));
    }
    let has_rival = bench.book.rivals(&entry.id).next().is_some();
    if has_rival {
        details.insert(0, "two versions are kept: open it to choose".into());
    }
    if entry.newer.is_some() {
        details.insert(0, "from a newer Meniscus: to read only".into());
    }
    if !tags.trim().is_empty() {
        details.push(tags.trim().to_owned());
    }
    Row {
        name: named(name),
        detail: details.join(" · "),
        marked: has_rival,
        picture,
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
    use crate::screen::picture::Picture;

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
        assert_eq!(names(""), ["Hedgerow clerk", "Orchard lantern", "Teapot magistrate"]);
        assert_eq!(names("LANTERN"), ["Orchard lantern"]);
        assert_eq!(names("autumn rye"), ["Teapot magistrate"]);
        assert_eq!(names("verjus"), ["Hedgerow clerk"]);
        assert!(names("moon").is_empty());
        let all = SpecsForm::default().answer(&bench());
        assert_eq!(all.rows[2].name, "Teapot magistrate");
        // Near 95 ml at 27 % vol, shaken 12 s, take up half of themselves.
        assert_eq!(all.rows[2].detail, "3 forms · 142 ml · 18 % · harvest supper, autumn");
        // Its glass, as full as it is served: 142 ml in one of 140.
        let glasses = all.rows.iter().map(|row| match &row.picture {
            Some(Picture::Vessels { text, .. }) => text.as_str(),
            other => panic!("{other:?}"),
        });
        let full = ["tumbler, 48 % full", "tumbler, 47 % full", "small wine glass, more than it holds"];
        assert_eq!(glasses.collect::<Vec<_>>(), full);
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
        assert_eq!(SpecsForm::default().answer(&bench).rows.len(), 40);
        assert_eq!(SpecsForm { search: "drink".into(), ..SpecsForm::default() }.answer(&bench).rows.len(), 8);
        assert_eq!(SpecsForm { shown: "60".into(), ..SpecsForm::default() }.answer(&bench).rows.len(), 60);
    }

    fn tagged(name: &str, tags: &str, made: u64) -> std::sync::Arc<Entry<Card>> {
        let value = Card { name: name.into(), tags: tags.into(), made, ways: vec![Way::default()], ..Card::default() };
        let id = name.to_owned();
        std::sync::Arc::new(Entry { id, value, stamp: Default::default(), newer: None, pairs: Pairs::default() })
    }

    #[test]
    fn the_commonest_tags_are_offered_and_one_of_them_leaves_the_rest_out() {
        let cards = vec![
            tagged("A", "low, Autumn", 3),
            tagged("B", "autumn", 9),
            tagged("C", "winter", 3),
            tagged("D", "", 1),
            tagged("E", "sour, low,autumn ,", 2),
        ];
        let bench = Bench { book: Held::new(Book { cards, ..Book::default() }), ..Bench::default() };
        let offered = |form: &SpecsForm| {
            let keys = |field: &crate::screen::Field| match &field.input {
                Input::Chips { options, .. } if field.name == "tag" => {
                    options.iter().map(|o| o.label.clone()).collect()
                }
                _ => Vec::new(),
            };
            form.layout(&bench)
                .iter()
                .flat_map(|block| if let Block::Field(field) = block { keys(field) } else { Vec::new() })
                .collect::<Vec<String>>()
        };
        let names = |form: &SpecsForm| form.answer(&bench).rows.into_iter().map(|row| row.name).collect::<Vec<_>>();
        let all = SpecsForm::default();
        assert_eq!(offered(&all), ["All", "autumn", "low", "winter"]);
        assert_eq!(
            offered(&SpecsForm { tags: "all".into(), ..all.clone() }),
            ["All", "autumn", "low", "winter", "sour"]
        );
        let low = SpecsForm { tag: "low".into(), ..all.clone() };
        assert_eq!(names(&low), ["A", "E"]);
        assert_eq!(low.answer(&bench).strip.also, "low");
        let searched = SpecsForm { search: "e".into(), tag: "sour".into(), ..all.clone() };
        assert_eq!((offered(&searched), names(&searched)), (vec!["All".into(), "sour".into()], vec!["E".into()]));
        assert_eq!(names(&SpecsForm { sort: "newest".into(), ..all }), ["B", "A", "C", "E", "D"]);
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
