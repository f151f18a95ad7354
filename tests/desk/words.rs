//! What is said on screens, word by word: once where once is enough.

use crate::faulty::Faulty;
use meniscus::screen::{Act, Block, Input};

use crate::bar::{Tab, screens};

/// All that is in sight on a screen before anything is unfolded.
fn in_sight(tab: &mut Tab<'_>) -> String {
    let screen = tab.view().screen;
    let mut said = vec![screen.strip.also.clone(), screen.strip.below.clone()];
    for block in &screen.blocks {
        match block {
            Block::Remark(words) | Block::Caution(words) => said.push(words.clone()),
            Block::Table(_, rows) => said.extend(rows.iter().map(|row| format!("{} {}", row.name, row.detail))),
            Block::Field(field) => {
                said.push(field.label.into());
                if let Input::Chips { options, .. } = &field.input {
                    said.extend(options.iter().map(|option| option.label.clone()));
                }
            }
            _ => {}
        }
    }
    said.join("\n")
}

/// The screens, each in every way that its trays can be set.
fn all(keeper: &Faulty, look: &mut dyn FnMut(&str, &str)) {
    for route in screens() {
        let mut tab = Tab::open(keeper, &route.href());
        look(route.row().label, &in_sight(&mut tab));
        let fields: Vec<_> = tab.view().screen.blocks.to_vec();
        for block in fields {
            let Block::Field(field) = block else { continue };
            let Input::Chips { options, .. } = field.input else { continue };
            for option in options {
                tab.act(Act::Choose(field.name.into(), option.key));
                look(&format!("{}, {}", route.row().label, option.label), &in_sight(&mut tab));
            }
        }
    }
}

#[test]
fn that_a_figure_has_no_source_is_said_once_on_a_screen() {
    let keeper = Faulty::default();
    let mut often = Vec::new();
    all(&keeper, &mut |screen, said| {
        let says =
            |line: &&str| ["no source", "without a source", "from memory"].iter().any(|words| line.contains(words));
        let lines: Vec<&str> = said.lines().filter(says).collect();
        if lines.len() > 1 {
            often.push(format!("{screen}:\n{}", lines.join("\n")));
        }
    });
    assert!(often.is_empty(), "{}", often.join("\n\n"));
}

#[test]
fn what_to_do_is_said_in_a_line() {
    let keeper = Faulty::default();
    Tab::open(&keeper, "specs").act(Act::Demo);
    let mut long = Vec::new();
    for route in screens() {
        let mut tab = Tab::open(&keeper, &route.href());
        let blocks = tab.view().screen.blocks.to_vec();
        for block in blocks {
            let Block::Field(field) = block else { continue };
            let Input::Chips { options, .. } = field.input else { continue };
            for option in options {
                let also = tab.act(Act::Choose(field.name.into(), option.key)).view().screen.strip.also.clone();
                if also.chars().count() > 70 {
                    long.push(format!("{}, {}: {also}", route.row().label, option.label));
                }
            }
        }
        let also = tab.view().screen.strip.also.clone();
        if also.chars().count() > 70 {
            long.push(format!("{}: {also}", route.row().label));
        }
    }
    assert!(long.is_empty(), "{}", long.join("\n"));
}

/// What stands in an empty field is no value: it begins with "like", or says what to write.
#[test]
fn an_example_is_told_from_what_is_typed() {
    let keeper = Faulty::default();
    Tab::open(&keeper, "specs").tap("Try a demo");
    let mut bare = Vec::new();
    let mut seen = 0;
    let mut look = |tab: &mut Tab<'_>| {
        for block in &tab.view().screen.blocks {
            let Block::Field(field) = block else { continue };
            let (Input::Words { placeholder } | Input::Lines { placeholder }) = field.input else { continue };
            seen += usize::from(!placeholder.is_empty());
            let says_how = matches!(placeholder, "" | "search an ingredient" | "how it went")
                || placeholder.starts_with("where it comes from");
            if !says_how && !placeholder.starts_with("like ") {
                bare.push(format!("{}: {placeholder}", field.label));
            }
        }
    };
    for route in screens() {
        let mut tab = Tab::open(&keeper, &route.href());
        look(&mut tab);
        for block in tab.view().screen.blocks.clone() {
            let Block::Field(field) = block else { continue };
            let Input::Chips { options, .. } = field.input else { continue };
            for option in options {
                look(tab.act(Act::Choose(field.name.into(), option.key)));
            }
        }
    }
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1");
    for label in ["Change", "Add a line", "As text"] {
        look(tab.tap(label));
    }
    look(tab.tap("Done").tap("More").tap("Taste"));
    look(tab.go("shelf/ingredients").tap("New ingredient"));
    look(tab.go("batch/run").tap("New run sheet"));
    assert!(bare.is_empty(), "{bare:?}");
    assert!(seen > 60, "{seen}");
}
