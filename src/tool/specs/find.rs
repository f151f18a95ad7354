//! Find: a tool, a spec or an ingredient, by a few letters.

use crate::book::{BESIDE, Card, Entry, Kind, LIBRARY, Pairs, Sought, abroad, best, ingredient};
use crate::reading::from_spec::href;
use crate::reading::named;
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Block, Button, Figure, Input, Row, Strip, Tone, Tool, form, plural};
use crate::text;

form! {
    /// What is looked for.
    FindForm {
        /// A few letters of it.
        search = "",
        /// The address of the tool that a spec is looked for; empty for anything.
        into = "",
    }
}

/// The field that is typed in.
pub const SEARCH: &str = "search";
/// What says for which tool a spec is looked for.
pub const INTO: &str = "into";

/// Most rows of each kind.
const MOST: usize = 8;
/// Most specs, where nothing else is looked for.
const MOST_SPECS: usize = 40;

impl Tool for FindForm {
    fn empty_label(&self, _bench: &Bench) -> &'static str {
        if self.search.is_empty() { "" } else { "Empty" }
    }

    fn show(&mut self, bench: &Bench) -> (Vec<Block>, Answer) {
        let found = self.found(bench);
        let answer = self.told(&found, bench);
        (self.laid_out(found), answer)
    }

    fn layout(&self, bench: &Bench) -> Vec<Block> {
        self.laid_out(self.found(bench))
    }

    fn answer(&self, bench: &Bench) -> Answer {
        self.told(&self.found(bench), bench)
    }

    fn empty(&mut self) {
        self.search.clear();
    }

    fn take(&mut self, name: &str, text: &str) {
        if name == INTO {
            text.clone_into(&mut self.into);
            self.search.clear();
        }
    }
}

/// What is found: tools, specs, ingredients.
type Found = [Vec<Row>; 3];

impl FindForm {
    fn laid_out(&self, [tools, specs, ingredients]: Found) -> Vec<Block> {
        let placeholder = match self.into() {
            Some(_) => "name, tag or ingredient",
            None => "tool, spec or ingredient",
        };
        let title = if Sought::of(&self.search).is_nothing() { "Changed last" } else { "Specs" };
        let mut blocks = vec![Block::field(SEARCH, "Find", Input::Search { placeholder })];
        blocks.extend([("Tools", tools), (title, specs), ("Ingredients", ingredients)].map(|(title, rows)| {
            // An empty table would be where the answer's goes.
            if rows.is_empty() { Block::Nothing } else { Block::Table(title, rows) }
        }));
        blocks
    }

    fn told(&self, found: &Found, bench: &Bench) -> Answer {
        let is_nothing = Sought::of(&self.search).is_nothing();
        let kinds = [("tool", "tools"), ("spec", "specs"), ("ingredient", "ingredients")];
        let counts = found.iter().zip(kinds).filter(|(rows, _)| !rows.is_empty());
        let there: Vec<String> = counts
            .map(|(rows, (one, several))| format!("{} {}", rows.len(), plural(rows.len(), one, several)))
            .collect();
        let count: usize = found.iter().map(Vec::len).sum();
        let waits = |also: String, below: &str| Strip { also, below: below.into(), ..Strip::default() };
        let strip = match (is_nothing, count, self.into()) {
            (true, _, Some(to)) => waits(format!("A spec for {}", to.row().label), "Type a few letters of it"),
            (true, ..) => waits("Type a few letters".into(), "of a tool, a spec or an ingredient"),
            (_, 0, _) => waits("Nothing is called so".into(), "Try fewer letters"),
            _ => Strip {
                figures: vec![Figure::new(text::count(count as f64, bench.decimal), "found")],
                also: there.join(", "),
                tone: Tone::Answer,
                ..Strip::default()
            },
        };
        let mut answer = Answer { strip, ..Answer::default() };
        if self.into().is_some() {
            answer.head.push(Button::new("Find anything", Act::Put(vec![(INTO, String::new())])));
        }
        answer
    }

    fn found(&self, bench: &Bench) -> Found {
        let sought = Sought::of(&self.search);
        let specs = self.specs(&sought, bench);
        // For a tool a spec alone is looked for.
        match sought.is_nothing() || self.into().is_some() {
            true => [Vec::new(), specs, Vec::new()],
            false => [tools(&sought), specs, ingredients(&self.search, &sought, bench)],
        }
    }

    /// The tool that a spec is looked for.
    fn into(&self) -> Option<Route> {
        Route::ALL.iter().copied().find(|route| route.row().path == self.into)
    }

    /// Specs that are called so, are tagged so or have that in their lines; where nothing is looked for, those that were
    /// changed last.
    fn specs(&self, sought: &Sought, bench: &Bench) -> Vec<Row> {
        let (cards, into) = (&bench.book.cards, self.into());
        let most = if into.is_some() { MOST_SPECS } else { MOST };
        let rank = |at: usize| {
            let entry = &cards[at];
            if sought.is_nothing() {
                return Some(u64::MAX - entry.stamp.at);
            }
            let Card { name, tags, ways, .. } = &entry.value;
            let ways = ways.iter().flat_map(|way| [way.name.as_str(), way.lines.as_str()]);
            let texts: Vec<&str> = [name.as_str(), tags].into_iter().chain(ways).collect();
            sought.rank(&texts, &entry.pairs)
        };
        let found = best(cards.len(), most, &rank).into_iter();
        let rows = |at: usize| match into {
            Some(to) => rows_into(&cards[at], to, bench),
            None => vec![row(&cards[at])],
        };
        found.flat_map(rows).collect()
    }
}

fn row(entry: &Entry<Card>) -> Row {
    let Card { name, tags, ways, .. } = &entry.value;
    let ways: Vec<&str> = ways.iter().map(|way| way.name.trim()).filter(|name| !name.is_empty()).collect();
    let mut details = vec![ways.join(", "), tags.trim().to_owned()];
    details.retain(|detail| !detail.is_empty());
    let href = Route::Card.href_with("id", &entry.id);
    Row { name: named(name), detail: details.join(" · "), href, ..Row::default() }
}

/// Each form of a spec, as it goes into a tool.
fn rows_into(entry: &Entry<Card>, to: Route, bench: &Bench) -> Vec<Row> {
    let row = |at: usize| Row {
        name: crate::reading::of_form(&entry.value, at),
        href: href(to, &entry.id, at, bench),
        ..Row::default()
    };
    (0..entry.value.ways.len()).map(row).collect()
}

/// Screens, by their names, their questions and what they are used for.
fn tools(sought: &Sought) -> Vec<Row> {
    let rank = |at: usize| {
        let row = Route::ALL[at].row();
        let none = Pairs::default();
        // In all it says of itself a letter may be wrong.
        let wrong = || sought.rank(&[&[row.label, row.question, row.words].join(" ")], &none);
        let found = sought.rank(&[row.label, row.question, row.words], &none).or_else(wrong);
        found.filter(|_| Route::ALL[at] != Route::Find)
    };
    let row = |at: usize| {
        let route = Route::ALL[at];
        Row {
            name: route.row().label.into(),
            detail: route.row().question.into(),
            href: route.href(),
            ..Row::default()
        }
    };
    best(Route::ALL.len(), MOST, &rank).into_iter().map(row).collect()
}

/// Ingredients of the bar's own, which lead to their figures; and what the library pours, which leads to Measure.
fn ingredients(search: &str, sought: &Sought, bench: &Bench) -> Vec<Row> {
    let own = &bench.book.own;
    let poured: Vec<_> = LIBRARY.iter().filter(|row| row.kind != Kind::Powder && row.key != "ice").collect();
    let elsewhere = abroad(search).and_then(ingredient);
    let rank = |at: usize| {
        let none = Pairs::default();
        let Some(row) = at.checked_sub(own.len()).map(|at| poured[at]) else {
            return sought.rank(&[&own[at].value.name], &none);
        };
        let names = row.names.iter().filter_map(|name| sought.rank(&[name], &none)).min();
        let called = sought.rank(&[row.name], &none);
        let meant = (elsewhere == Some(row)).then_some(0);
        meant.or_else(|| called.into_iter().chain(names.map(|rank| rank + BESIDE)).min())
    };
    let row = |at: usize| match at.checked_sub(own.len()).map(|at| poured[at]) {
        None => Row {
            name: named(&own[at].value.name),
            detail: "your own".into(),
            href: Route::Ingredients.href_with("id", &own[at].id),
            ..Row::default()
        },
        Some(row) => Row {
            name: row.name.into(),
            detail: row.kind.plural().into(),
            href: Route::Measure.href_with("liquid", row.key),
            ..Row::default()
        },
    };
    best(own.len() + poured.len(), MOST, &rank).into_iter().map(row).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::{Book, Own, Way, demo_cards};
    use crate::screen::Held;

    fn entry<T>(id: String, value: T) -> Entry<T> {
        Entry { id, value, stamp: Default::default(), newer: None, pairs: Pairs::default() }
    }

    fn bench() -> Bench {
        let mut book = Book { has_cards: true, ..Book::default() };
        book.cards = demo_cards(0).into_iter().map(|(id, card)| entry(id, card).noted().into()).collect();
        let lines = "30 ml crème de pêche\n60 ml rye whiskey".into();
        let peach = Card { name: "Été".into(), ways: vec![Way { lines, ..Way::default() }], ..Card::default() };
        book.cards.push(entry("peach".into(), peach).noted().into());
        let own = Own { name: "Pêche cordial".into(), like: "cordial".into(), ..Own::default() };
        book.own.push(entry("own".into(), own).into());
        Bench::default().with_book(Held::new(book))
    }

    /// What is found, of each kind.
    fn found(search: &str) -> [Vec<String>; 3] {
        let form = FindForm { search: search.into(), ..FindForm::default() };
        form.found(&bench()).map(|rows| rows.into_iter().map(|row| row.name).collect())
    }

    #[test]
    fn a_few_letters_find_tools_specs_and_ingredients_the_best_first() {
        let [tools, specs, ingredients] = found("mi");
        assert_eq!(tools[0], "Milk wash");
        assert!(ingredients.iter().any(|name| name == "Whole milk"), "{ingredients:?}");
        assert!(specs.iter().all(|name| name != "Milk wash"));
        assert_eq!(found("LANT")[1], ["Orchard lantern"]);
        assert_eq!(found("lantern orch")[1], ["Orchard lantern"]);
        // By its question, its tag, its lines.
        assert_eq!(found("clot")[0], ["Milk wash"]);
        assert_eq!(found("autumn rye")[1], ["Teapot magistrate"]);
        assert_eq!(found("verjus")[1], ["Hedgerow clerk"]);
        assert!(found("xyloph").iter().all(Vec::is_empty));
    }

    #[test]
    fn accents_and_case_are_nothing_and_a_letter_may_be_wrong() {
        for peach in ["pêche", "peche", "PECHE", "Pêc"] {
            let [_, specs, ingredients] = found(peach);
            assert_eq!((specs[0].as_str(), ingredients[0].as_str()), ("Été", "Pêche cordial"), "{peach}");
        }
        assert_eq!(found("ete")[1], ["Été"]);
        for lantern in ["lantrn", "lanterm", "latnern", "lanntern", "lantr"] {
            assert_eq!(found(lantern)[1], ["Orchard lantern"], "{lantern}");
        }
        assert_eq!(found("Cordail")[0][0], "Cordial");
        assert_eq!(found("Zitrone")[2], ["Lemon juice"]);
        // Where something is called so, what is nearly called so is passed over.
        assert!(found("acid")[0].iter().all(|name| name == "Acid" || name == "Cordial"), "{:?}", found("acid"));
    }

    #[test]
    fn a_tool_is_found_by_what_it_is_used_for() {
        for (search, tool) in [
            ("jigers", "Settings"),
            ("jiggers", "Settings"),
            ("dilution", "Chill"),
            ("dilutoin", "Chill"),
            ("fat wash", "Infuse"),
            ("freezer", "Bottle it"),
            ("batch", "Bottle it"),
            ("cl to oz", "Measure"),
            ("convert", "Measure"),
            ("pH", "Acid"),
            ("enzyme", "Clarify"),
            ("keep", "Label"),
            ("price", "Cost"),
            ("shopping", "To buy"),
        ] {
            let found = &found(search)[0];
            assert!(found.iter().any(|name| name == tool), "{search}: {found:?}");
        }
    }

    #[test]
    fn no_more_than_eight_of_a_kind() {
        assert!(found("e").iter().all(|rows| rows.len() <= MOST));
        assert_eq!(found("e")[2].len(), MOST);
        assert_eq!(found("").map(|rows| rows.len()), [0, 4, 0]);
    }

    #[test]
    fn for_a_tool_each_form_of_a_spec_leads_there() {
        let form = FindForm { search: "lantern".into(), into: "service/scale".into() };
        let [tools, specs, ingredients] = form.found(&bench());
        assert!(tools.is_empty() && ingredients.is_empty());
        let names: Vec<&str> = specs.iter().map(|row| row.name.as_str()).collect();
        assert_eq!(names, ["Orchard lantern, quick", "Orchard lantern, stirred", "Orchard lantern, washed"]);
        assert!(specs[1].href.starts_with("#/service/scale?spec=") && specs[1].href.ends_with("&from_spec=demo-1%2F1"));
    }
}
