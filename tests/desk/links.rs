//! Links between tools: what one carries, the other takes.

use std::collections::BTreeSet;

use crate::faulty::Faulty;
use meniscus::screen::address::{self, Address};
use meniscus::screen::{Act, Block, Input, Texts};
use meniscus::tool::{Change, after};

use crate::bar::{Tab, screens};

/// Every link that a screen shows, in each way that its choices can be set.
fn links(keeper: &Faulty) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    let mut gather = |tab: &mut Tab<'_>| {
        let screen = tab.view().screen;
        found.extend(screen.links().into_iter().map(|link| link.href));
        for block in &screen.blocks {
            if let Block::Table(_, rows) = block {
                found.extend(rows.iter().map(|row| row.href.clone()).filter(|href| !href.is_empty()));
            }
        }
    };
    for route in screens() {
        let mut tab = Tab::open(keeper, &route.href());
        gather(&mut tab);
        let view = tab.view();
        let choices = view.screen.blocks.iter().filter_map(|block| match block {
            Block::Field(field) => match &field.input {
                Input::Chips { options, .. } => Some((field.name, options.clone())),
                _ => None,
            },
            _ => None,
        });
        for (name, options) in choices {
            for option in options {
                gather(tab.act(Act::Choose(name.into(), option.key)));
            }
        }
    }
    for id in ["demo-1", "demo-2", "demo-3"] {
        let mut tab = Tab::open(keeper, &format!("specs/spec?id={id}"));
        gather(&mut tab);
        gather(tab.act(Act::Serves(3)));
        gather(tab.tap("More"));
    }
    let mut tab = Tab::open(keeper, "specs/spec?id=demo-1");
    tab.act(Act::ToRun).go("batch/run");
    gather(&mut tab);
    found
}

#[test]
fn every_carried_name_is_taken_where_it_is_sent() {
    let keeper = Faulty::default();
    Tab::open(&keeper, "specs").act(Act::Demo);
    let links = links(&keeper);
    let carrying = links.iter().filter(|href| href.contains('?')).count();
    assert!(carrying > 60, "only {carrying} links were found");
    for href in links {
        let Address { route, carried, unknown } = address::read(&href);
        assert!(!unknown, "{href}");
        // A form in which every text is something else.
        let fields = after(route, &Texts::new(), Change::Put(&[]));
        let other: Texts = fields.iter().map(|(name, _)| (name.to_owned(), "zz".to_owned())).collect();
        for (name, text) in carried {
            let taken = after(route, &other, Change::Take(&name, &text));
            assert!(taken != other, "{route:?} does not take {name:?} of {href}");
        }
    }
}
