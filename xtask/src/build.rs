//! Builds the app into dist/.

use std::path::PathBuf;
use std::process::Command;

use anyhow::Result;

use crate::{root, run, tools};

/// Installs what is missing and builds the release.
///
/// # Errors
/// When a step fails.
pub fn build() -> Result<()> {
    let tools = tools::ensure()?;
    println!("Building the app into dist/.");
    run(Command::new(tools.trunk)
        .args(["build", "--release"])
        .env("PATH", tools.path)
        .env("TRUNK_SKIP_VERSION_CHECK", "true")
        .env("RUSTFLAGS", flags())
        .env_remove("NO_COLOR"))
}

/// Keeps the folders of this machine out of what is published: panic messages name source files.
pub(crate) fn flags() -> String {
    let from = std::iter::once(root()).chain(registries());
    from.map(|folder| format!("--remap-path-prefix={}/=", folder.display())).collect::<Vec<_>>().join(" ")
}

/// Where cargo has put the sources of crates: each registry has a folder of its own.
pub(crate) fn registries() -> Vec<PathBuf> {
    let home = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = home.or_else(|| std::env::var_os("HOME").map(|home| PathBuf::from(home).join(".cargo")));
    let folders = home.and_then(|home| std::fs::read_dir(home.join("registry/src")).ok());
    folders.into_iter().flatten().flatten().map(|entry| entry.path()).collect()
}
