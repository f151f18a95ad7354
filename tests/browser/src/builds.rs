//! Builds to publish one after the other.

use std::path::Path;

use anyhow::{Context, Result};
use tempfile::TempDir;
use xtask::precache;

/// A copy of the build in a folder that says which one it is: in its page, in two files that keep their names, and by
/// its first script, within the page, and its last, which is named anew. Gives its version.
///
/// # Errors
/// When there is no build, or the folder cannot be written.
pub fn marked_build(folder: &Path, mark: &str) -> Result<String> {
    for file in precache::files(&xtask::dist())? {
        let to = folder.join(&file);
        std::fs::create_dir_all(to.parent().unwrap_or(folder))?;
        std::fs::copy(xtask::dist().join(&file), to)?;
    }
    let edit = |file: &str, old: &str, new: &str| -> Result<()> {
        let text = std::fs::read_to_string(folder.join(file))?;
        Ok(std::fs::write(folder.join(file), text.replacen(old, new, 1))?)
    };
    edit("index.html", "<html", &format!("<html data-build=\"{mark}\""))?;
    edit("icon.svg", "<svg", &format!("<svg data-build=\"{mark}\""))?;
    edit("manifest.webmanifest", "{", &format!("{{ \"build\": \"{mark}\","))?;
    let ran = |script: &str| format!(";document.documentElement.dataset.{script}_ran = \"{mark}\";");
    // The look is set in the page itself.
    edit("index.html", "<script>", &format!("<script>{}", ran("theme")))?;
    let is_boot = |file: &&String| file.starts_with("boot-");
    let name = precache::files(folder)?.iter().find(is_boot).cloned().context("no boot.js")?;
    let renamed = name.replacen('-', &format!("-{mark}"), 1);
    let code = std::fs::read_to_string(folder.join(&name))?;
    std::fs::write(folder.join(&renamed), format!("{code}{}", ran("boot")))?;
    std::fs::remove_file(folder.join(&name))?;
    edit("index.html", &name, &renamed)?;
    let version = precache::write(folder)?;
    // Builds are not published within a second of each other, and servers tell files apart by the second.
    let published = std::time::SystemTime::now() + std::time::Duration::from_secs(if mark == "A" { 0 } else { 60 });
    for file in [precache::WORKER, "index.html"] {
        std::fs::File::options().write(true).open(folder.join(file))?.set_modified(published)?;
    }
    Ok(version)
}

/// As [`marked_build`], in a folder of its own.
///
/// # Errors
/// As [`marked_build`].
pub fn build_of(mark: &str) -> Result<TempDir> {
    let folder = tempfile::tempdir()?;
    marked_build(folder.path(), mark)?;
    Ok(folder)
}
