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
    let home = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = home.or_else(|| std::env::var_os("HOME").map(|home| PathBuf::from(home).join(".cargo")));
    let mut from = vec![root()];
    if let Some(home) = home {
        // Each registry has a folder of its own under src.
        let registries = std::fs::read_dir(home.join("registry/src")).into_iter().flatten().flatten();
        from.extend(registries.map(|entry| entry.path()));
    }
    from.iter().map(|folder| format!("--remap-path-prefix={}/=", folder.display())).collect::<Vec<_>>().join(" ")
}
