//! The tools a build needs: those on the PATH where they are of the right version, else in .tools, where what is
//! missing is installed. Nothing global, nothing twice.

use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::browser::on_path;
use crate::{cargo, root, run};

const TRUNK: &str = "0.21.14";
const GECKODRIVER: &str = "0.37.1";
const CARGO_DENY: &str = "0.20.2";
const CARGO_MUTANTS: &str = "27.1.0";

/// Where the tools are.
#[derive(Clone, Debug)]
pub struct Tools {
    /// Trunk.
    pub trunk: PathBuf,
    /// The command-line tool of wasm-bindgen.
    pub wasm_bindgen: PathBuf,
    /// A `PATH` on which that wasm-bindgen is found first: Trunk looks it up there.
    pub path: OsString,
}

/// Finds or installs what a build needs: the wasm target, Trunk, and the wasm-bindgen that Cargo.lock names.
///
/// # Errors
/// When an install fails, with what to do.
pub fn ensure() -> Result<Tools> {
    ensure_target()?;
    let trunk = ensure_tool("trunk", TRUNK, &["--locked", "--no-default-features", "--features", "rustls"])?;
    // Not --locked: the published lock file names versions that are no longer served.
    let wasm_bindgen = ensure_tool("wasm-bindgen-cli", &locked_wasm_bindgen()?, &[])?;
    let path = path_with(&wasm_bindgen);
    Ok(Tools { trunk, wasm_bindgen, path })
}

/// Finds or installs the WebDriver of Firefox.
///
/// # Errors
/// When it does not install, with what to do.
pub fn geckodriver() -> Result<PathBuf> {
    ensure_tool("geckodriver", GECKODRIVER, &["--locked"])
}

/// Finds or installs what asks where crates come from and on which terms.
///
/// # Errors
/// When it does not install, with what to do.
pub fn cargo_deny() -> Result<PathBuf> {
    ensure_tool("cargo-deny", CARGO_DENY, &["--locked"])
}

/// Finds or installs what puts small errors into the code.
///
/// # Errors
/// When it does not install, with what to do.
pub fn cargo_mutants() -> Result<PathBuf> {
    ensure_tool("cargo-mutants", CARGO_MUTANTS, &["--locked"])
}

fn folder() -> PathBuf {
    root().join(".tools")
}

/// The `PATH`, with .tools first where a tool is there. Another is found on it as it is, and moving its folder to the
/// front could put another cargo before the one in use.
fn path_with(tool: &Path) -> OsString {
    let old = std::env::var_os("PATH").unwrap_or_default();
    let ours = folder().join("bin");
    if !tool.starts_with(&ours) {
        return old;
    }
    std::env::join_paths(std::iter::once(ours).chain(std::env::split_paths(&old))).unwrap_or(old)
}

/// The source of the standard library, where the toolchain has it or rustup can fetch it.
///
/// # Errors
/// When rustc does not say where it lives.
pub(crate) fn std_source() -> Result<Option<PathBuf>> {
    if !has_std_source()? {
        println!("Fetching the source of the standard library.");
        let _ = run(Command::new("rustup").args(["component", "add", "rust-src"]).current_dir(root()));
    }
    Ok(if has_std_source()? { Some(place_of_std()?) } else { None })
}

/// Whether the toolchain has the source of the standard library.
///
/// # Errors
/// When rustc does not say where it lives.
pub(crate) fn has_std_source() -> Result<bool> {
    Ok(place_of_std()?.join("library/std").is_dir())
}

fn place_of_std() -> Result<PathBuf> {
    let out = Command::new("rustc").args(["--print", "sysroot"]).current_dir(root()).output()?;
    Ok(PathBuf::from(String::from_utf8(out.stdout)?.trim()).join("lib/rustlib/src/rust"))
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

/// What comes of looking for a tool.
#[derive(Clone, Debug, Default)]
struct Found {
    /// What the first on the PATH says its version is.
    on_path: Option<String>,
    /// What the one in .tools says.
    in_tools: Option<String>,
    /// Whether there is a cargo-binstall that has not failed yet.
    binstall: bool,
}

/// How a tool is come by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Way {
    OnPath,
    InTools,
    Binstall,
    Build,
}

fn way(version: &str, found: &Found) -> Way {
    let is_right = |said: &Option<String>| said.as_deref().is_some_and(|said| says(said, version));
    match found {
        found if is_right(&found.on_path) => Way::OnPath,
        found if is_right(&found.in_tools) => Way::InTools,
        found if found.binstall => Way::Binstall,
        _ => Way::Build,
    }
}

/// Whether what a tool says of itself, as in "trunk 0.21.14", names this version.
fn says(said: &str, version: &str) -> bool {
    said.split_whitespace().any(|word| word == version)
}

/// Where a tool of this version is, after installing it where it was missing.
fn ensure_tool(package: &str, version: &str, flags: &[&str]) -> Result<PathBuf> {
    let name = package.trim_end_matches("-cli");
    let (outside, ours) = (on_path(name), folder().join("bin").join(name));
    let mut found = Found {
        on_path: outside.as_deref().and_then(said_version),
        in_tools: said_version(&ours),
        binstall: on_path("cargo-binstall").is_some(),
    };
    if matches!(way(version, &found), Way::Binstall | Way::Build) {
        let other = found.on_path.as_ref().map(|said| format!(" The one on the PATH is left alone: it is {said}."));
        println!("Installing {package} {version} into .tools.{}", other.unwrap_or_default());
    }
    if way(version, &found) == Way::Binstall {
        if let Err(problem) = fetch(package, version) {
            println!("{problem:#}");
        }
        found = Found { in_tools: said_version(&ours), binstall: false, ..found };
    }
    match way(version, &found) {
        Way::OnPath => Ok(outside.unwrap_or(ours)),
        Way::InTools => Ok(ours),
        Way::Binstall | Way::Build => {
            println!("Building {package} from source. This happens once and takes a few minutes.");
            compile(package, version, flags).map(|()| ours)
        }
    }
}

fn said_version(binary: impl AsRef<Path>) -> Option<String> {
    let binary = binary.as_ref();
    let asked = |args: &[&str]| Command::new(binary).args(args).output().ok().filter(|out| out.status.success());
    // Some that cargo calls answer only as it calls them: `cargo-mutants mutants --version`.
    let called = || binary.file_name()?.to_str()?.strip_prefix("cargo-").map(str::to_owned);
    let out = asked(&["--version"]).or_else(|| asked(&[&called()?, "--version"]))?;
    Some(String::from_utf8_lossy(&out.stdout).trim().to_owned())
}

/// Fetches what the makers of a tool have built, and nothing that others have.
fn fetch(package: &str, version: &str) -> Result<()> {
    let mut binstall = Command::new("cargo-binstall");
    binstall
        .arg(format!("{package}@{version}"))
        .args(["--no-confirm", "--force", "--no-symlinks", "--strategies", "crate-meta-data", "--install-path"])
        .arg(folder().join("bin"));
    std::fs::create_dir_all(folder().join("bin"))?;
    run(&mut binstall)
}

fn compile(package: &str, version: &str, flags: &[&str]) -> Result<()> {
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

    fn found(on_path: &str, in_tools: &str, binstall: bool) -> Found {
        let said = |text: &str| (!text.is_empty()).then(|| text.to_owned());
        Found { on_path: said(on_path), in_tools: said(in_tools), binstall }
    }

    #[test]
    fn the_path_goes_first_then_what_was_installed_then_the_quicker_install() {
        let of = |on_path, in_tools, binstall| way("0.21.14", &found(on_path, in_tools, binstall));
        assert_eq!(of("trunk 0.21.14", "trunk 0.21.14", true), Way::OnPath);
        assert_eq!(of("trunk 0.21.13", "trunk 0.21.14", true), Way::InTools);
        assert_eq!(of("", "trunk 0.21.14", false), Way::InTools);
        assert_eq!(of("trunk 0.21.13", "trunk 0.20.0", true), Way::Binstall);
        assert_eq!(of("", "", true), Way::Binstall);
        assert_eq!(of("trunk 0.21.13", "trunk 0.20.0", false), Way::Build);
        assert_eq!(of("", "", false), Way::Build);
    }

    #[test]
    fn a_version_is_named_whole() {
        assert!(says("wasm-bindgen 0.2.130", "0.2.130"));
        assert!(says("wasm-bindgen 0.2.130 (2f1a9b0c7 2026-01-05)", "0.2.130"));
        assert!(!says("wasm-bindgen 0.2.130-rc.1", "0.2.130"));
        assert!(!says("wasm-bindgen 0.2.1", "0.2.130"));
        assert!(!says("", "0.2.130"));
    }

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
