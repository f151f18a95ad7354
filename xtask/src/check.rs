//! Everything that must hold before a change is kept.

use std::process::Command;
use std::time::Instant;

use anyhow::{Context, Result, ensure};

use crate::engines::Engine;
use crate::{browser, build, cargo, deny, root, run, size, tools};

/// Runs every check, the quick ones first.
///
/// # Errors
/// At the first that fails.
pub fn check() -> Result<()> {
    let started = Instant::now();
    let so_far = |what: &str| println!("\n{what}: {} s so far.", started.elapsed().as_secs());
    tools::ensure()?;
    so_far("Tools");
    run(&mut cargo(&["fmt", "--all", "--check"]))?;
    deny::check()?;
    run(&mut cargo(&["clippy", "--workspace", "--exclude", "meniscus", "--all-targets", "--", "-D", "warnings"]))?;
    run(&mut cargo(&["clippy", "--no-default-features", "--all-targets", "--", "-D", "warnings"]))?;
    run(&mut cargo(&["clippy", "--target", "wasm32-unknown-unknown", "--", "-D", "warnings"]))?;
    so_far("Read");
    run(&mut cargo(&["test", "--no-default-features"]))?;
    run(&mut cargo(&["test", "--package", "xtask"]))?;
    so_far("Tried without a browser");
    build::build()?;
    size::report()?;
    so_far("Built");
    in_browser()?;
    so_far("Tried in Chromium");
    let not_run = in_engines()?;
    println!("\nAll checks hold, after {} s.", started.elapsed().as_secs());
    println!(
        "Not run here: `cargo xtask sweep`, a host that goes wrong in every way with every file. It takes minutes."
    );
    if !not_run.is_empty() {
        println!("Not run, as something could not be installed:\n{}", not_run.join("\n"));
    }
    Ok(())
}

/// Runs the sweeps over every file, of which a check runs one of each kind.
///
/// # Errors
/// When there is no browser or one fails.
pub fn sweep() -> Result<()> {
    browser::ensure()?;
    build::build()?;
    run(&mut cargo(&["test", "--package", "browser", "--test", "all", "sweeps::", "--", "--ignored", "--nocapture"]))
}

/// Runs the browser tests against dist/.
///
/// # Errors
/// When there is no browser or a test fails.
pub fn in_browser() -> Result<()> {
    browser::ensure()?;
    ensure_axe()?;
    run(&mut cargo(&["test", "--package", "browser", "--", "--test-threads", "3", "--nocapture"]))
}

/// Runs the smoke set in each other engine that can be had, and says of the rest how to get it.
///
/// # Errors
/// When it fails in one.
fn in_engines() -> Result<Vec<String>> {
    let mut not_run = Vec::new();
    for engine in Engine::ALL {
        let name = engine.name();
        match engine.ensure() {
            Ok(_) => run(&mut cargo(&["run", "--quiet", "--package", "browser", "--bin", "engines", name]))?,
            Err(problem) => not_run.push(format!("- the smoke set in {name}: {problem:#}")),
        }
    }
    Ok(not_run)
}

/// Runs the smoke set in every other engine.
///
/// # Errors
/// When one cannot be had, or it fails in one.
pub fn in_all_engines() -> Result<()> {
    let not_run = in_engines()?;
    ensure!(not_run.is_empty(), "not run:\n{}", not_run.join("\n"));
    Ok(())
}

/// The accessibility rules have no Rust twin: they come from npm, pinned by a lock file.
fn ensure_axe() -> Result<()> {
    let folder = root().join("tests/browser");
    if folder.join("node_modules/axe-core/axe.min.js").exists() {
        return Ok(());
    }
    println!("Installing axe-core for the accessibility tests.");
    let folder = folder.to_string_lossy().into_owned();
    run(Command::new("npm").args(["ci", "--no-audit", "--no-fund", "--prefix", &folder]))
        .context("the accessibility tests need npm, which comes with Node.js")
}

/// Prints how fast the app starts and answers, in the browser.
///
/// # Errors
/// When there is no browser.
pub fn measure_in_browser() -> Result<()> {
    browser::ensure()?;
    run(&mut cargo(&["run", "--quiet", "--package", "browser", "--bin", "measure"]))
}

/// Draws the icons and screenshots in public/ from the app itself.
///
/// # Errors
/// When there is no browser.
pub fn pictures() -> Result<()> {
    browser::ensure()?;
    build::build()?;
    run(&mut cargo(&["run", "--quiet", "--package", "browser", "--bin", "pictures"]))
}
