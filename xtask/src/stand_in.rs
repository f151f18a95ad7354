//! A cargo that Trunk finds first: it builds the app with flags of its own, and all else as cargo does. Trunk has no place
//! for them, and in the environment they would reach the hook as well, which is built for this machine.

use std::ffi::{OsStr, OsString};
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};

use crate::build::SMALL_STD;
use crate::root;

/// Flags for the app.
pub(crate) const FLAGS: &str = "XTASK_FLAGS";
/// Whether the standard library is built with it.
pub(crate) const SMALL: &str = "XTASK_SMALL_STD";

/// A `PATH` on which the stand-in comes first.
///
/// # Errors
/// When it cannot be put in place.
pub(crate) fn first_on(path: &OsStr) -> Result<OsString> {
    let folder = root().join("target/stand-in");
    std::fs::create_dir_all(&folder)?;
    let place = folder.join(format!("cargo{}", std::env::consts::EXE_SUFFIX));
    // Cargo may have built this program anew while it runs: Linux says so behind its name.
    let own = std::env::current_exe()?.to_string_lossy().trim_end_matches(" (deleted)").to_owned();
    std::fs::copy(&own, &place).with_context(|| format!("could not copy to {}", place.display()))?;
    Ok(std::env::join_paths(std::iter::once(folder).chain(std::env::split_paths(path)))?)
}

/// Whether this program was called as cargo, by Trunk.
#[must_use]
pub fn is_called() -> bool {
    let name = std::env::args_os().next().map(PathBuf::from);
    name.as_deref().and_then(Path::file_stem) == Some(OsStr::new("cargo"))
}

/// Hands on to cargo, and ends as that does.
///
/// # Errors
/// When there is no cargo.
pub fn pass_on() -> Result<()> {
    let args: Vec<OsString> = std::env::args_os().skip(1).collect();
    // The cargo that began all this says where it is.
    let mut cargo = Command::new(std::env::var_os("CARGO").context("call it through cargo xtask")?);
    if args.first().is_some_and(|first| first == "build") {
        cargo.env("RUSTFLAGS", std::env::var_os(FLAGS).unwrap_or_default());
        if std::env::var_os(SMALL).is_some_and(|small| !small.is_empty()) {
            cargo.envs(SMALL_STD);
        }
    }
    let status = cargo.args(args).status().context("cargo is not to be found")?;
    std::process::exit(status.code().unwrap_or(1));
}
