//! Writes the service worker of a build: which files it keeps, and a version made from their contents.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use sha2::{Digest, Sha256};

use crate::{licences, smaller};

const TEMPLATE: &str = include_str!("service_worker.js");

/// The name of the worker in a build.
pub const WORKER: &str = "service-worker.js";

/// What a host or a shop window needs, but the app does not run on.
const NOT_KEPT: [&str; 3] = ["_headers", "screenshots/", WORKER];

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
    }
    for file in files.iter().filter(|file| file.ends_with(".js") || file.ends_with(".css")) {
        smaller::minify(&staging.join(file))?;
    }
    let version = write(staging)?;
    smaller::minify(&staging.join(WORKER))?;
    println!("service worker of version {version}");
    Ok(())
}

/// Writes the worker of the build in `folder` and returns its version.
///
/// # Errors
/// When the folder cannot be read or written.
pub fn write(folder: &Path) -> Result<String> {
    let files = files(folder)?;
    let version = version(folder, &files)?;
    fs::write(folder.join(WORKER), worker(&files, &version)).context("the service worker could not be written")?;
    Ok(version)
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
fn version(folder: &Path, files: &[String]) -> Result<String> {
    let mut hash = Sha256::new();
    hash.update(TEMPLATE);
    for file in files {
        let contents =
            fs::read(PathBuf::from(folder).join(file)).with_context(|| format!("{file} could not be read"))?;
        hash.update(file.len().to_le_bytes());
        hash.update(file);
        hash.update(contents.len().to_le_bytes());
        hash.update(contents);
    }
    Ok(hash.finalize().iter().take(6).map(|byte| format!("{byte:02x}")).collect())
}

/// The template filled in. The start page is kept under "./", as it is asked for.
fn worker(files: &[String], version: &str) -> String {
    let listed: Vec<String> =
        files.iter().map(|file| if file == "index.html" { "./".to_owned() } else { format!("./{file}") }).collect();
    let json = format!("[{}]", listed.iter().map(|file| format!("{file:?}")).collect::<Vec<_>>().join(", "));
    TEMPLATE.replace("__VERSION__", version).replace("__FILES__", &json)
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
        assert!(worker.contains(r#"const FILES = ["./app-1.wasm", "./fonts/a.txt", "./"];"#), "{worker}");
        assert!(!worker.contains("__"), "{worker}");
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
