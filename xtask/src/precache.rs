//! Writes the service worker of a build: which files it keeps, and a version made from their contents.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result, bail};
use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use sha2::{Digest, Sha256};

use crate::{first_screen, inline, licences, named, smaller, split};

const TEMPLATE: &str = include_str!("service_worker.js");

/// The name of the worker in a build.
pub const WORKER: &str = "service-worker.js";

/// What a host or a shop window needs, but the app does not run on.
const NOT_KEPT: [&str; 3] = ["_headers", "screenshots/", WORKER];

/// What each ending is served as.
const TYPES: [(&str, &str); 9] = [
    ("html", "text/html; charset=utf-8"),
    ("css", "text/css"),
    ("js", "text/javascript"),
    ("wasm", "application/wasm"),
    ("webmanifest", "application/manifest+json"),
    ("json", "application/json"),
    ("svg", "image/svg+xml"),
    ("png", "image/png"),
    ("txt", "text/plain; charset=utf-8"),
];

/// Called by Trunk at the end of a build, which says where its files are.
///
/// # Errors
/// When the folder cannot be read or written.
pub fn write_from_hook() -> Result<()> {
    let staging = std::env::var_os("TRUNK_STAGING_DIR").context("TRUNK_STAGING_DIR is not set: run by Trunk only")?;
    let staging = Path::new(&staging);
    licences::write(staging)?;
    let files = files(staging)?;
    let ending = |end: &str| files.iter().find(|file| file.ends_with(end)).map(|file| staging.join(file));
    if let Some(wasm) = ending("_bg.wasm") {
        let script = wasm.to_string_lossy().replace("_bg.wasm", ".js");
        smaller::number_imports(Path::new(&script), &wasm)?;
        split::split(staging, &wasm)?;
    }
    for file in files.iter().filter(|file| file.ends_with(".js") || file.ends_with(".css")) {
        smaller::minify(&staging.join(file))?;
    }
    first_screen::write(staging)?;
    inline::write_into_page(staging)?;
    named::after_contents(staging)?;
    let version = write(staging)?;
    smaller::minify(&staging.join(WORKER))?;
    println!("service worker of version {version}");
    Ok(())
}

/// Seals the page of the build in `folder`, writes its worker, and returns its version.
///
/// # Errors
/// When the folder cannot be read or written, or holds a file of a type we do not know.
pub fn write(folder: &Path) -> Result<String> {
    inline::seal(folder)?;
    let kept: Vec<Kept> = files(folder)?.into_iter().map(|name| Kept::of(folder, name)).collect::<Result<_>>()?;
    let version = version(&kept);
    fs::write(folder.join(WORKER), worker(&kept, &version)).context("the service worker could not be written")?;
    Ok(version)
}

/// A file that the worker keeps.
struct Kept {
    name: String,
    sum: [u8; 32],
    /// What the worker serves it as, whatever the host said.
    mime: &'static str,
}

impl Kept {
    fn of(folder: &Path, name: String) -> Result<Kept> {
        let contents = fs::read(folder.join(&name)).with_context(|| format!("{name} could not be read"))?;
        let Some(mime) = mime(&name) else {
            bail!("{name} has a type that the worker does not know: add it to TYPES in xtask/src/precache.rs");
        };
        Ok(Kept { sum: Sha256::digest(&contents).into(), mime, name })
    }
}

/// What a file is served as, by the ending of its name.
#[must_use]
pub fn mime(name: &str) -> Option<&'static str> {
    let (_, ending) = name.rsplit_once('.')?;
    TYPES.iter().find(|(known, _)| *known == ending).map(|(_, mime)| *mime)
}

/// Every file the app runs on, as a path with forward slashes, in order.
///
/// # Errors
/// When the folder cannot be read.
pub fn files(folder: &Path) -> Result<Vec<String>> {
    let mut found = Vec::new();
    let mut folders = vec![folder.to_path_buf()];
    while let Some(next) = folders.pop() {
        for entry in fs::read_dir(&next).with_context(|| format!("{} could not be read", next.display()))? {
            let path = entry?.path();
            if path.is_dir() {
                folders.push(path);
            } else {
                found.push(relative(folder, &path));
            }
        }
    }
    found.retain(|file| !NOT_KEPT.iter().any(|not| file == not || (not.ends_with('/') && file.starts_with(not))));
    found.sort();
    Ok(found)
}

fn relative(folder: &Path, path: &Path) -> String {
    let parts = path.strip_prefix(folder).unwrap_or(path).components();
    parts.map(|part| part.as_os_str().to_string_lossy().into_owned()).collect::<Vec<_>>().join("/")
}

/// Twelve hex digits of a hash over the worker's own code and the names and contents of all files.
fn version(kept: &[Kept]) -> String {
    let mut hash = Sha256::new();
    hash.update(TEMPLATE);
    for Kept { name, sum, mime } in kept {
        for text in [name, *mime] {
            hash.update(text.len().to_le_bytes());
            hash.update(text);
        }
        hash.update(sum);
    }
    hash.finalize().iter().take(6).map(|byte| format!("{byte:02x}")).collect()
}

/// The template filled in. The start page has no name, as it is asked for.
fn worker(kept: &[Kept], version: &str) -> String {
    let listed: Vec<String> = kept
        .iter()
        .map(|Kept { name, sum, mime }| {
            let name = if name == "index.html" { "" } else { name };
            format!("[{name:?}, [{:?}, {mime:?}]]", BASE64_STANDARD.encode(sum))
        })
        .collect();
    TEMPLATE.replace("__VERSION__", version).replace("__FILES__", &format!("[{}]", listed.join(", ")))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn build(files: &[(&str, &str)]) -> tempfile::TempDir {
        let folder = tempfile::tempdir().expect("a folder");
        for (name, contents) in files {
            let path = folder.path().join(name);
            fs::create_dir_all(path.parent().expect("a parent")).expect("made");
            fs::write(path, contents).expect("written");
        }
        folder
    }

    const BUILD: [(&str, &str); 5] = [
        ("index.html", "<p>"),
        ("app-1.wasm", "\0asm"),
        ("screenshots/wide.png", "png"),
        ("_headers", "/*"),
        ("fonts/a.txt", "a"),
    ];

    #[test]
    fn lists_what_the_app_runs_on_and_nothing_else() {
        let folder = build(&BUILD);
        write(folder.path()).expect("written");
        let worker = fs::read_to_string(folder.path().join(WORKER)).expect("a worker");
        let start = worker.find("new Map([").expect("a list");
        let list = worker[start..].lines().next().expect("a line");
        assert_eq!(
            list,
            r#"new Map([["app-1.wasm", ["zV1JNaSMBnLLBkB7tEO8AIev+UfGuGS6yIaYLHOzAn8=", "application/wasm"]], ["fonts/a.txt", ["ypeBEsobvcr6wjGzmiPcTaeG7/gUfE5yuYB3ha/uSLs=", "text/plain; charset=utf-8"]], ["", ["M/J5lGcXcoeikmB4ChB6yY6mPdYWX2f8wNdHZ9CoIJA=", "text/html; charset=utf-8"]]]);"#
        );
        assert!(!worker.contains("__"), "{worker}");
    }

    #[test]
    fn a_type_nobody_knows_is_an_error_that_says_what_to_do() {
        let folder = build(&[("index.html", "<p>"), ("sound.mp3", "la")]);
        let problem = write(folder.path()).expect_err("no type").to_string();
        assert!(problem.contains("sound.mp3") && problem.contains("TYPES"), "{problem}");
    }

    #[test]
    fn the_version_follows_contents_and_names_only() {
        let of = |files: &[(&str, &str)]| write(build(files).path()).expect("written");
        let first = of(&BUILD);
        assert_eq!(first.len(), 12);
        assert_eq!(first, of(&BUILD));
        let folder = build(&BUILD);
        write(folder.path()).expect("written");
        assert_eq!(first, write(folder.path()).expect("again"), "the worker does not count itself");
        let mut changed = BUILD;
        changed[1].1 = "\0asm!";
        assert_ne!(first, of(&changed));
        let mut renamed = BUILD;
        renamed[1].0 = "app-2.wasm";
        assert_ne!(first, of(&renamed));
        let mut shop_window = BUILD;
        shop_window[2].1 = "another picture";
        assert_eq!(first, of(&shop_window));
    }
}
