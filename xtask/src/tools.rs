//! The tools a build needs, installed into .tools when missing: nothing global, nothing twice.

use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::{cargo, root, run};

const TRUNK: &str = "0.21.14";

/// Where the tools are.
#[must_use]
pub fn folder() -> PathBuf {
    root().join(".tools")
}

/// A `PATH` with our tools first.
#[must_use]
pub fn path() -> std::ffi::OsString {
    let old = std::env::var_os("PATH").unwrap_or_default();
    let all = std::iter::once(folder().join("bin")).chain(std::env::split_paths(&old));
    std::env::join_paths(all).unwrap_or(old)
}

/// Installs what is missing: the wasm target, Trunk, and the wasm-bindgen that Cargo.lock names.
///
/// # Errors
/// When an install fails, with what to do.
pub fn ensure() -> Result<()> {
    ensure_target()?;
    ensure_tool("trunk", TRUNK, &["--locked", "--no-default-features", "--features", "rustls"])?;
    // Not --locked: the published lock file names versions that are no longer served.
    ensure_tool("wasm-bindgen-cli", &locked_wasm_bindgen()?, &[])
}

/// rustup reads rust-toolchain.toml, but where its auto-install is turned off the target must be asked for.
fn ensure_target() -> Result<()> {
    let list = Command::new("rustc")
        .args(["--print", "target-libdir", "--target", "wasm32-unknown-unknown"])
        .current_dir(root())
        .output();
    let installed = list.ok().is_some_and(|out| PathBuf::from(String::from_utf8_lossy(&out.stdout).trim()).is_dir());
    if installed {
        return Ok(());
    }
    println!("Installing the wasm32 target of Rust.");
    run(Command::new("rustup").args(["target", "add", "wasm32-unknown-unknown"]))
        .context("install rustup from rustup.rs, then run this again")
}

fn ensure_tool(package: &str, version: &str, flags: &[&str]) -> Result<()> {
    let binary = folder().join("bin").join(package.trim_end_matches("-cli"));
    let has = Command::new(&binary).arg("--version").output();
    let current =
        has.is_ok_and(|out| String::from_utf8_lossy(&out.stdout).split_whitespace().any(|word| word == version));
    if current {
        return Ok(());
    }
    println!("Installing {package} {version} into .tools. This happens once and takes a few minutes.");
    let mut install = cargo(&["install", package, "--version", version, "--force"]);
    install
        .args(flags)
        .arg("--root")
        .arg(folder())
        .env("CARGO_TARGET_DIR", folder().join("build"))
        // A tool that runs for a second need not be optimised for minutes.
        .env("CARGO_PROFILE_RELEASE_LTO", "off")
        .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "0")
        .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16")
        .env("CARGO_PROFILE_RELEASE_DEBUG", "0")
        .env_remove("CARGO_BUILD_TARGET");
    run(&mut install).with_context(|| format!("{package} did not install; a C compiler is needed (cc)"))
}

/// The version of wasm-bindgen in Cargo.lock: the command-line tool must match it to the letter.
fn locked_wasm_bindgen() -> Result<String> {
    let lock = std::fs::read_to_string(root().join("Cargo.lock")).context("Cargo.lock is missing")?;
    match version_in(&lock, "wasm-bindgen") {
        Some(version) => Ok(version.to_owned()),
        None => bail!("Cargo.lock does not name wasm-bindgen"),
    }
}

fn version_in<'a>(lock: &'a str, package: &str) -> Option<&'a str> {
    let (_, after) = lock.split_once(&format!("name = \"{package}\"\nversion = \""))?;
    after.split('"').next()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_a_version_in_a_lock_file() {
        let lock = "[[package]]\nname = \"wasm-bindgen-macro\"\nversion = \"9\"\n\n[[package]]\nname = \"wasm-bindgen\"\nversion = \"0.2.130\"\n";
        assert_eq!(version_in(lock, "wasm-bindgen"), Some("0.2.130"));
        assert_eq!(version_in(lock, "serde"), None);
    }

    #[test]
    fn trunk_toml_names_the_same_wasm_bindgen() {
        let trunk = std::fs::read_to_string(root().join("Trunk.toml")).expect("Trunk.toml");
        let version = locked_wasm_bindgen().expect("a version");
        assert!(trunk.contains(&format!("wasm_bindgen = \"{version}\"")), "Trunk.toml [tools] should name {version}");
    }
}
