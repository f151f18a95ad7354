//! What crates may bring along: their licences, where they come from, and what is known against them.

use std::process::Command;

use anyhow::{Context, Result};

use crate::{run, tools};

/// Licences, crates that are not wanted, and sources, of everything in Cargo.lock.
///
/// # Errors
/// When one is not allowed by xtask/deny.toml.
pub fn check() -> Result<()> {
    run(deny()?.args(["check", "licenses", "bans", "sources"]))
}

/// Advisories on what is in Cargo.lock. The only command that asks a server for more than crates.
///
/// # Errors
/// When the list of advisories cannot be fetched, or names a crate of ours.
pub fn audit() -> Result<()> {
    run(deny()?.args(["fetch", "db"])).context(
        "NOT AUDITED: the list of advisories could not be fetched. \
         It comes by git from https://github.com/RustSec/advisory-db: this command needs the network",
    )?;
    run(deny()?.args(["check", "advisories"]))
}

fn deny() -> Result<Command> {
    let mut command = Command::new(tools::cargo_deny()?);
    command.args(["--locked", "--workspace", "--config", "xtask/deny.toml"]);
    Ok(command)
}
