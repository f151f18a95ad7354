//! The house: floors that import only downward, places that stay apart, no circle of files, no tool named in the app.
//! Read from the sources, comments left out.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// From the ground up; those of one storey know nothing of each other.
const FLOORS: [&[&str]; 9] = [
    &["quantity"],
    &["substance"],
    &["book"],
    &["craft", "text", "store"],
    &["screen"],
    &["reading"],
    &["tool"],
    &["desk"],
    &["app"],
];

/// The places of the tools, and what each may name of the others: run sheets ask what Prep makes, and the
/// ice that Service freezes.
const PLACES: [(&str, &[&str]); 5] =
    [("service", &[]), ("prep", &[]), ("batch", &["prep", "service"]), ("specs", &[]), ("shelf", &[])];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("src")
}

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

/// A source without its comments, and without the tests at its end, which name what they like.
fn code(path: &Path) -> String {
    let source = fs::read_to_string(path).expect("a source");
    let source = source.split("#[cfg(test)]\nmod tests {").next().unwrap_or_default();
    source.lines().map(|line| line.split("//").next().unwrap_or("")).collect::<Vec<_>>().join("\n")
}

/// The module of a file: `tool/prep/acid.rs` is tool, prep, acid.
fn module_of(path: &Path) -> Vec<String> {
    let relative = path.strip_prefix(root()).expect("in src").with_extension("");
    let mut module: Vec<String> = relative.iter().map(|part| part.to_string_lossy().into_owned()).collect();
    if matches!(module.last().map(String::as_str), Some("mod" | "lib")) {
        module.pop();
    }
    module
}

/// Every path that code names, from `crate::` or `super::` on, seen from the module it stands in: `use` lines with their
/// braces opened, and paths in the midst of code.
fn named(code: &str, module: &[String]) -> Vec<Vec<String>> {
    let mut found = Vec::new();
    let starts = code.match_indices("crate::").chain(code.match_indices("super::"));
    for (at, _) in starts {
        let before = code[..at].chars().next_back();
        if before.is_some_and(|c| c.is_alphanumeric() || matches!(c, ':' | '_' | '$')) {
            continue;
        }
        let mut base: Vec<String> = Vec::new();
        let mut rest = &code[at..];
        if let Some(after) = rest.strip_prefix("crate::") {
            rest = after;
        } else {
            base = module.to_vec();
            while let Some(after) = rest.strip_prefix("super::") {
                base.pop();
                rest = after;
            }
        }
        open(&base, rest, &mut found);
    }
    found
}

/// Reads a path, opening its braces; what follows it.
fn open<'a>(base: &[String], mut rest: &'a str, found: &mut Vec<Vec<String>>) -> &'a str {
    let mut path = base.to_vec();
    loop {
        if let Some(mut inside) = rest.strip_prefix('{') {
            loop {
                inside = inside.trim_start_matches(|c: char| c.is_whitespace() || c == ',');
                if let Some(after) = inside.strip_prefix('}') {
                    return after;
                }
                let before = inside.len();
                inside = open(&path, inside, found);
                if inside.len() == before {
                    return inside;
                }
            }
        }
        let end = rest.find(|c: char| !c.is_alphanumeric() && c != '_').unwrap_or(rest.len());
        path.push(rest[..end].to_owned());
        rest = &rest[end..];
        match rest.strip_prefix("::") {
            Some(after) if !after.starts_with('<') => rest = after,
            _ => break,
        }
    }
    path.retain(|part| part != "self");
    found.push(path);
    // "name as other"
    match rest.strip_prefix(" as ") {
        Some(after) => &after[after.find(|c: char| !c.is_alphanumeric() && c != '_').unwrap_or(after.len())..],
        None => rest,
    }
}

fn storey(floor: &str) -> Option<usize> {
    FLOORS.iter().position(|storey| storey.contains(&floor))
}

/// What breaks the rule: (floor, what it names).
fn upward(floor: &str, code: &str) -> Vec<String> {
    let height = storey(floor).expect("a floor");
    let module = vec![floor.to_owned(), "file".to_owned()];
    let mut broken: Vec<String> = named(code, &module)
        .iter()
        .filter_map(|path| path.first())
        .filter(|named| *named != floor && storey(named).is_none_or(|other| other >= height))
        .map(|named| format!("{floor} names {named}"))
        .collect();
    broken.dedup();
    broken
}

#[test]
fn floors_import_only_downward() {
    let mut checked = 0;
    for floor in FLOORS.iter().copied().flatten() {
        for path in sources(&root().join(floor)) {
            assert_eq!(upward(floor, &code(&path)), Vec::<String>::new(), "{}", path.display());
            checked += 1;
        }
    }
    assert!(checked > 100, "only {checked} sources were found");
    for entry in fs::read_dir(root()).expect("src") {
        let path = entry.expect("an entry").path();
        let name = path.file_name().expect("a name").to_string_lossy().into_owned();
        assert!(!path.is_dir() || storey(&name).is_some(), "{name} is no floor");
    }
}

#[test]
fn the_rule_would_notice() {
    assert_eq!(upward("craft", "use crate::text::Figure;"), ["craft names text"]);
    assert_eq!(upward("craft", "let x = crate::screen::Bench::default();"), ["craft names screen"]);
    assert_eq!(upward("text", "use crate::quantity::Unit;"), Vec::<String>::new());
    assert_eq!(upward("book", "use crate::attic::Box;"), ["book names attic"]);
    assert_eq!(upward("screen", "use crate::{book::Card, tool::prep};"), ["screen names tool"]);
}

/// The files, and the files that each names; a name that a file hands on from one below it is that one's.
fn arrows() -> BTreeMap<Vec<String>, BTreeSet<Vec<String>>> {
    let is_test = |module: &[String]| module.last().is_some_and(|last| last == "tests");
    let files: BTreeMap<Vec<String>, String> =
        sources(&root()).iter().map(|path| (module_of(path), code(path))).filter(|(file, _)| !is_test(file)).collect();
    let mut handed_on: BTreeMap<Vec<String>, Vec<String>> = BTreeMap::new();
    for (module, code) in &files {
        for (at, _) in code.match_indices("use ").filter(|(at, _)| *at == 0 || code[..*at].ends_with(['\n', ' '])) {
            let mut paths = Vec::new();
            open(module, &code[at + 4..], &mut paths);
            for path in paths.into_iter().filter(|path| files.contains_key(&path[..module.len() + 1])) {
                let name = path.last().cloned().unwrap_or_default();
                handed_on.insert(module.iter().cloned().chain([name]).collect(), path);
            }
        }
    }
    let file_of = |path: &[String]| {
        let mut path = path.to_vec();
        for _ in 0..4 {
            let Some(length) = (1..=path.len()).rev().find(|length| files.contains_key(&path[..*length])) else {
                break;
            };
            match path.get(..length + 1).and_then(|name| handed_on.get(name)).filter(|to| **to != path) {
                Some(to) => path.clone_from(to),
                None => return Some(path[..length].to_vec()),
            }
        }
        None
    };
    let arrows_of = |(module, code): (&Vec<String>, &String)| {
        let to = named(code, module).iter().filter_map(|path| file_of(path)).filter(|file| file != module).collect();
        (module.clone(), to)
    };
    files.iter().map(arrows_of).collect()
}

/// The circles, each as the files in it. A file and those in the folder of its name are one room, and the file is its
/// door: what they name of each other makes no circle by itself.
fn circles(arrows: &BTreeMap<Vec<String>, BTreeSet<Vec<String>>>) -> Vec<Vec<String>> {
    let is_own_room = |from: &[String], to: &[String]| to.starts_with(from) || from.starts_with(to);
    let reached = |from: &Vec<String>| {
        let mut reached: BTreeSet<&Vec<String>> = BTreeSet::new();
        let mut next = vec![from];
        while let Some(at) = next.pop() {
            for to in arrows.get(at).into_iter().flatten().filter(|to| !is_own_room(at, to)) {
                if reached.insert(to) {
                    next.push(to);
                }
            }
        }
        reached
    };
    let all: BTreeMap<&Vec<String>, BTreeSet<&Vec<String>>> = arrows.keys().map(|file| (file, reached(file))).collect();
    let mut found: Vec<Vec<String>> = Vec::new();
    for (file, reached) in all.iter().filter(|(file, reached)| reached.contains(**file)) {
        let circle = reached.iter().filter(|other| all[**other].contains(*file)).map(|other| other.join("/")).collect();
        if !found.contains(&circle) {
            found.push(circle);
        }
    }
    found
}

#[test]
fn no_circle_of_files() {
    let arrows = arrows();
    assert!(arrows.values().map(BTreeSet::len).sum::<usize>() > 300, "the arrows were not found");
    assert_eq!(circles(&arrows), Vec::<Vec<String>>::new());
}

#[test]
fn a_circle_would_be_noticed() {
    let file = |name: &str| vec!["tool".to_owned(), name.to_owned()];
    let mut arrows = BTreeMap::from([
        (file("a"), BTreeSet::from([file("b")])),
        (file("b"), BTreeSet::from([file("c")])),
        (file("c"), BTreeSet::new()),
    ]);
    assert_eq!(circles(&arrows), Vec::<Vec<String>>::new());
    arrows.insert(file("c"), BTreeSet::from([file("a")]));
    assert_eq!(circles(&arrows), [["tool/a", "tool/b", "tool/c"]]);
}

#[test]
fn places_stay_apart() {
    for (place, may) in PLACES {
        for path in sources(&root().join("tool").join(place)) {
            if path.ends_with("tests.rs") {
                continue;
            }
            for named in named(&code(&path), &module_of(&path)) {
                let Some(other) = named.get(1).filter(|_| named[0] == "tool") else { continue };
                let other = other.as_str();
                assert!(other == place || may.contains(&other), "{} names {other}", path.display());
            }
        }
    }
}

/// Only the app and the one file of the store that touches local storage know a browser.
#[test]
fn the_pure_floors_know_no_browser() {
    for floor in FLOORS.iter().copied().flatten().filter(|floor| **floor != "app") {
        for path in sources(&root().join(floor)).iter().filter(|path| !path.ends_with("store/local.rs")) {
            let source = fs::read_to_string(path).expect("a source");
            for word in ["leptos", "web_sys", "js_sys", "wasm_bindgen", "gloo_storage"] {
                assert!(!source.contains(word), "{} names {word}", path.display());
            }
        }
    }
}

/// The app draws what it is handed: it names no route and no tool.
#[test]
fn the_app_names_no_tool() {
    for path in sources(&root().join("app")).iter().filter(|path| !path.ends_with("tests.rs")) {
        let code = code(path);
        for word in ["Route::", "crate::tool", "Place::"] {
            assert!(!code.contains(word), "{} has {word}", path.display());
        }
    }
}

/// No effect writes a signal: the app makes none.
#[test]
fn the_app_makes_no_effect() {
    for path in sources(&root().join("app")) {
        assert!(!code(&path).contains("Effect::new"), "{}", path.display());
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
