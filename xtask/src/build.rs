//! Builds the app into dist/.

use std::path::PathBuf;
use std::process::Command;

use anyhow::Result;

use crate::{cargo, root, run, stand_in, tools};

/// Installs what is missing and builds the release.
///
/// # Errors
/// When a step fails.
pub fn build() -> Result<()> {
    let tools = tools::ensure()?;
    let small = small_std()?;
    println!("Building the app into dist/.");
    run(Command::new(tools.trunk)
        .args(["build", "--release"])
        .env("PATH", stand_in::first_on(&tools.path)?)
        .env("TRUNK_SKIP_VERSION_CHECK", "true")
        .env(stand_in::FLAGS, flags(&small))
        .env(stand_in::SMALL, if small.source.is_some() { "yes" } else { "" })
        .env_remove("NO_COLOR"))
}

/// The standard library, compiled with the app for size and without what panics say, where its source can be had: 16 KB
/// of 297 less to download. A panic then is a trap without words; of those there are to be none.
///
/// Cargo allows it on a stable toolchain by `RUSTC_BOOTSTRAP` only. `trunk build` by itself does without, and so does a
/// machine that cannot get the source: the app is the same but for its size, which `check` then says.
pub(crate) struct SmallStd {
    /// The folder of the source; none where it cannot be had.
    source: Option<PathBuf>,
}

/// Finds or fetches the source of the standard library, and what that is built of.
///
/// # Errors
/// When rustc does not say where it lives.
pub(crate) fn small_std() -> Result<SmallStd> {
    let source = tools::std_source()?;
    let fetch = |source: &PathBuf| {
        let manifest = source.join("library/Cargo.toml").to_string_lossy().into_owned();
        let target = "wasm32-unknown-unknown";
        run(cargo(&["fetch", "--locked", "--target", target, "--manifest-path", &manifest]).env("RUSTC_BOOTSTRAP", "1"))
            .is_ok()
    };
    let source = source.filter(fetch);
    if source.is_none() {
        println!("The source of the standard library is not to be had: the app is built larger than it could be.");
    }
    Ok(SmallStd { source })
}

/// What cargo must be told for it.
pub(crate) const SMALL_STD: [(&str, &str); 3] = [
    ("RUSTC_BOOTSTRAP", "1"),
    ("CARGO_UNSTABLE_BUILD_STD", "std,panic_abort"),
    ("CARGO_UNSTABLE_BUILD_STD_FEATURES", "optimize_for_size"),
];

impl SmallStd {
    /// What cargo must be told.
    pub(crate) fn env(&self) -> impl Iterator<Item = (&'static str, &'static str)> {
        SMALL_STD.into_iter().filter(|_| self.source.is_some())
    }
}

/// Keeps the folders of this machine out of what is published: panic messages name source files.
pub(crate) fn flags(small: &SmallStd) -> String {
    let from = std::iter::once(root()).chain(registries()).chain(small.source.clone());
    let mut flags: Vec<_> = from.map(|folder| format!("--remap-path-prefix={}/=", folder.display())).collect();
    // Names that say what a generic function was made for.
    flags.push("-Csymbol-mangling-version=v0".to_owned());
    if small.source.is_some() {
        flags.extend(["-Zunstable-options", "-Cpanic=immediate-abort"].map(str::to_owned));
    }
    flags.join(" ")
}

/// Where cargo has put the sources of crates: each registry has a folder of its own.
pub(crate) fn registries() -> Vec<PathBuf> {
    let home = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = home.or_else(|| std::env::var_os("HOME").map(|home| PathBuf::from(home).join(".cargo")));
    let folders = home.and_then(|home| std::fs::read_dir(home.join("registry/src")).ok());
    folders.into_iter().flatten().flatten().map(|entry| entry.path()).collect()
}
