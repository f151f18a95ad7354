//! The project's own commands, as a library so that tests can use the same server and worker writer.

pub mod browser;
pub mod build;
pub mod check;
pub mod deny;
pub mod engines;
pub mod first_screen;
pub mod inline;
pub mod licences;
pub mod mutants;
pub mod named;
pub mod precache;
pub mod server;
pub mod size;
pub mod smaller;
mod split;
pub mod stand_in;
pub mod tools;
pub mod weigh;

use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result, bail};

/// The project's folder.
#[must_use]
pub fn root() -> PathBuf {
    let manifest = PathBuf::from(env!("CARGO_MANIFEST_DIR"));
    manifest.parent().map_or(manifest.clone(), PathBuf::from)
}

/// Where a build lands.
#[must_use]
pub fn dist() -> PathBuf {
    root().join("dist")
}

/// Runs a command in the project's folder, saying so first.
///
/// # Errors
/// When it cannot be started or fails.
pub fn run(command: &mut Command) -> Result<()> {
    println!("\n› {}", shown(command));
    let status = command.current_dir(root()).status().with_context(|| format!("could not start {}", shown(command)))?;
    if !status.success() {
        bail!("failed: {}", shown(command));
    }
    Ok(())
}

/// `cargo` with these arguments.
#[must_use]
pub fn cargo(args: &[&str]) -> Command {
    let mut command = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.args(args);
    command
}

fn shown(command: &Command) -> String {
    let program = PathBuf::from(command.get_program());
    let name = program.file_name().map_or_else(String::new, |name| name.to_string_lossy().into_owned());
    std::iter::once(name)
        .chain(command.get_args().map(|arg| arg.to_string_lossy().into_owned()))
        .collect::<Vec<_>>()
        .join(" ")
}
