//! The licences of all that is shipped, on one page that the app links to.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, ensure};

use crate::{build, cargo, root};

/// The page in a build.
pub const PAGE: &str = "licences.html";

/// Licences that we know, the shortest first, and words that only their texts have. Where there is a choice, the first
/// is taken whose text comes with the crate.
const KNOWN: [(&str, &str); 5] = [
    ("MIT", "Permission is hereby granted, free of charge, to any person obtaining a copy of this software"),
    ("Zlib", "redistribute it freely, subject to the following restrictions"),
    ("BSL-1.0", "Boost Software License - Version 1.0"),
    ("Unicode-3.0", "UNICODE LICENSE V3"),
    ("Apache-2.0", "Apache License Version 2.0, January 2004"),
];

/// Part of the app.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Part {
    /// Name and version.
    name: String,
    /// Its licences, as its makers write them: "MIT OR Apache-2.0".
    terms: String,
    folder: PathBuf,
}

/// Writes the page into a build.
///
/// # Errors
/// When a licence has no text that we can find.
pub fn write(folder: &Path) -> Result<()> {
    fs::write(folder.join(PAGE), page(&parts()?)?).context("the page of licences could not be written")
}

/// Every crate that the wasm is built of; macros and what runs in the build are not in it.
fn parts() -> Result<Vec<Part>> {
    let registries = build::registries();
    let mut parts = Vec::new();
    for line in tree()?.lines() {
        let (package, terms) = line.split_once('|').with_context(|| format!("no licence: {line}"))?;
        let mut words = package.split(' ');
        let (name, version) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
        let version = version.trim_start_matches('v');
        let folder = match words.next() {
            // Where its source is, for our own.
            Some(_) => root(),
            None => registries
                .iter()
                .map(|registry| registry.join(format!("{name}-{version}")))
                .find(|folder| folder.is_dir())
                .with_context(|| format!("the source of {name} {version} is not there"))?,
        };
        parts.push(Part { name: format!("{name} {version}"), terms: terms.to_owned(), folder });
    }
    parts.sort_by(|a, b| a.name.cmp(&b.name));
    parts.dedup();
    Ok(parts)
}

/// "name v1.2.3|MIT", a line a crate.
fn tree() -> Result<String> {
    let target = ["--target", "wasm32-unknown-unknown", "--edges", "normal,no-proc-macro"];
    let mut command = cargo(&["tree", "--locked", "--package", "meniscus", "--prefix", "none", "--format", "{p}|{l}"]);
    let out = command.args(target).current_dir(root()).output().context("cargo tree did not start")?;
    ensure!(out.status.success(), "cargo tree failed: {}", String::from_utf8_lossy(&out.stderr));
    Ok(String::from_utf8(out.stdout)?.replace(" (*)", ""))
}

/// Parts with the same text stand together.
fn page(parts: &[Part]) -> Result<String> {
    let std = format!("Copyright (c) The Rust Project Contributors\n\n{}", mit());
    let mut texts = vec![(vec!["The standard library of Rust".to_owned()], std)];
    for part in parts {
        let files = files(&part.folder)?;
        for text in chosen(&part.terms, &files, &authors(part)?).with_context(|| part.name.clone())? {
            match texts.iter_mut().find(|(_, known)| flat(known) == flat(&text)) {
                Some((names, _)) => names.push(part.name.clone()),
                None => texts.push((vec![part.name.clone()], text)),
            }
        }
    }
    let mut page = include_str!("licences.html").to_owned();
    for (names, text) in texts {
        page += &format!("<h2>{}</h2>\n", escaped(&names.join(", ")));
        for paragraph in text.replace('\r', "").split("\n\n").map(str::trim).filter(|words| !words.is_empty()) {
            page += &format!("<p>{}</p>\n", escaped(paragraph));
        }
    }
    Ok(page + "</main>\n")
}

/// The texts that fulfil a crate's terms, one for each that is joined by AND.
fn chosen(terms: &str, files: &[String], authors: &str) -> Result<Vec<String>> {
    let one = |joined: &str| {
        let options = joined.trim_matches(['(', ')']).split(" OR ").map(str::trim).collect::<Vec<_>>();
        let known = KNOWN.iter().filter(|(name, _)| options.contains(name));
        let text = known.filter_map(|(_, words)| files.iter().find(|text| flat(text).contains(words))).next();
        // Some crates name the licence and leave out its text.
        let named = options.contains(&"MIT").then(|| format!("Copyright (c) {authors}\n\n{}", mit()));
        text.cloned().or(named).with_context(|| format!("no text of {joined}: add the licence to KNOWN"))
    };
    terms.replace('/', " OR ").split(" AND ").map(one).collect()
}

/// The files of a crate that look like licences.
fn files(folder: &Path) -> Result<Vec<String>> {
    let mut found = Vec::new();
    for place in [folder.to_path_buf(), folder.join("LICENSES")].iter().filter(|place| place.is_dir()) {
        for entry in fs::read_dir(place)? {
            let path = entry?.path();
            let name = path.file_name().unwrap_or_default().to_string_lossy().to_ascii_lowercase();
            let is_licence = name.contains("licen") || name.starts_with("copying") || place != folder;
            if path.is_file() && is_licence {
                found.push((name, String::from_utf8_lossy(&fs::read(&path)?).into_owned()));
            }
        }
    }
    found.sort();
    Ok(found.into_iter().map(|(_, text)| text).collect())
}

/// Who wrote a crate, from its manifest; where that does not say, "the authors of" it.
fn authors(part: &Part) -> Result<String> {
    let manifest = fs::read_to_string(part.folder.join("Cargo.toml"))?;
    let list = manifest.split_once("\nauthors = [").and_then(|(_, rest)| rest.split_once(']')).map(|(list, _)| list);
    let names: Vec<&str> = list.unwrap_or_default().split('"').skip(1).step_by(2).collect();
    Ok(if names.is_empty() { format!("the authors of {}", part.name) } else { names.join(", ") })
}

/// The text of the MIT licence without its first lines, from our own.
fn mit() -> &'static str {
    let ours = include_str!("../../LICENSE");
    ours.find("Permission is hereby").map_or(ours, |at| &ours[at..])
}

/// With single spaces only.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_crate_of_the_app_is_named_and_nothing_of_this_machine() {
        let page = page(&parts().expect("parts")).expect("a page");
        let tree = tree().expect("a tree");
        assert!(tree.lines().count() > 50, "{tree}");
        for line in tree.lines() {
            let name = line.split(['|', '(']).next().unwrap_or_default().trim().replacen(" v", " ", 1);
            let is_named = page.lines().any(|shown| {
                shown
                    .strip_prefix("<h2>")
                    .is_some_and(|names| names.trim_end_matches("</h2>").split(", ").any(|shown| shown == name))
            });
            assert!(is_named, "{name} is not on the page");
        }
        // What the manifest of the app asks for, whatever the tree says.
        for name in ["leptos", "wasm-bindgen", "web-sys", "serde_json", "qrcodegen", "crc", "time", "gloo-storage"] {
            assert!(page.contains(&format!("{name} ")), "{name}");
        }
        assert!(!page.contains("thirtyfour") && !page.contains("proptest"), "what only tests use is not shipped");
        assert!(!page.contains(&*root().to_string_lossy()));
    }

    #[test]
    fn the_first_licence_is_taken_whose_text_is_there() {
        let of = |terms: &str, files: &[&str]| {
            let files: Vec<String> = files.iter().map(|text| (*text).to_owned()).collect();
            chosen(terms, &files, "A. Author <a@b>")
        };
        let (mit, zlib) = (format!("(c) X\n{}", KNOWN[0].1.replace(' ', "\n")), KNOWN[1].1);
        let unicode = KNOWN[3].1;
        assert_eq!(of("Apache-2.0/MIT", &["Apache", &mit]).expect("texts"), [mit.as_str()]);
        assert_eq!(of("MIT OR Zlib", &[zlib]).expect("texts"), [zlib]);
        assert_eq!(
            of("(MIT OR Apache-2.0) AND Unicode-3.0", &[unicode, &mit]).expect("texts"),
            [mit.as_str(), unicode]
        );
        let filled = of("MIT", &[]).expect("texts");
        assert!(filled[0].starts_with("Copyright (c) A. Author <a@b>\n\nPermission is hereby granted"), "{filled:?}");
        for terms in ["GPL-3.0", "Zlib", "MIT AND Unicode-3.0", ""] {
            assert!(of(terms, &[&mit]).is_err(), "{terms}");
        }
    }
}
