//! The floors of the house: each imports only from those below it. Read from the `use` lines.

use std::fs;
use std::path::{Path, PathBuf};

/// From the ground up.
const FLOORS: [&str; 8] = ["quantity", "substance", "book", "craft", "text", "form", "store", "app"];

fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            found.extend(sources(&path));
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            found.push(path);
        }
    }
    found
}

/// The floors a source names: every `crate::floor`, in `use` lines and elsewhere, comments left out.
fn named_floors(source: &str) -> Vec<&str> {
    source
        .lines()
        .map(|line| line.split("//").next().unwrap_or(""))
        .flat_map(|line| line.match_indices("crate::").map(|(at, name)| &line[at + name.len()..]).collect::<Vec<_>>())
        .map(|rest| rest.split(|c: char| !c.is_ascii_lowercase()).next().unwrap_or(""))
        .collect()
}

/// What breaks the rule: (floor, what it names).
fn upward(floor: &str, source: &str) -> Vec<String> {
    let height = FLOORS.iter().position(|known| *known == floor).expect("a floor");
    named_floors(source)
        .into_iter()
        .filter(|named| FLOORS.iter().position(|known| known == named).is_none_or(|other| other > height))
        .map(|named| format!("{floor} names {named}"))
        .collect()
}

#[test]
fn floors_import_only_downward() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut checked = 0;
    for floor in FLOORS {
        for path in sources(&root.join(floor)) {
            let source = fs::read_to_string(&path).expect("a source");
            assert_eq!(upward(floor, &source), Vec::<String>::new(), "{}", path.display());
            checked += 1;
        }
    }
    assert!(checked > 40, "only {checked} sources were found");
}

#[test]
fn the_rule_would_notice() {
    assert_eq!(upward("craft", "use crate::text::Figure;"), ["craft names text"]);
    assert_eq!(upward("craft", "let x = crate::form::Bench::default();"), ["craft names form"]);
    assert_eq!(upward("text", "use crate::quantity::Unit; // not crate::app"), Vec::<String>::new());
    assert_eq!(upward("book", "use crate::attic::Box;"), ["book names attic"]);
}

/// Only the app and the one file of the store that touches local storage know a browser.
#[test]
fn the_pure_floors_know_no_browser() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    for floor in FLOORS.iter().filter(|floor| **floor != "app") {
        for path in sources(&root.join(floor)).iter().filter(|path| !path.ends_with("store/local.rs")) {
            let source = fs::read_to_string(path).expect("a source");
            for word in ["leptos", "web_sys", "js_sys", "wasm_bindgen", "gloo_storage"] {
                assert!(!source.contains(word), "{} names {word}", path.display());
            }
        }
    }
}

/// No effect writes a signal: effects live in one function, and only app/mod.rs calls it, for the look.
#[test]
fn effects_stay_outside() {
    let app = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/app");
    for path in sources(&app) {
        let source = fs::read_to_string(&path).expect("a source");
        let made = source.matches("Effect::new").count();
        assert_eq!(made, usize::from(path.ends_with("part.rs")), "{}", path.display());
        let used = source.matches("outside(").count();
        assert!(
            used == 0 || (used == 1 && (path.ends_with("part.rs") || path.ends_with("app/mod.rs"))),
            "{}",
            path.display()
        );
    }
}

/// Files stay short enough to read at one sitting.
#[test]
fn no_file_is_over_400_lines() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    for folder in ["src", "xtask/src", "tests"] {
        for path in sources(&root.join(folder)) {
            let lines = fs::read_to_string(&path).expect("a source").lines().count();
            assert!(lines <= 400, "{} has {lines} lines", path.display());
        }
    }
}
