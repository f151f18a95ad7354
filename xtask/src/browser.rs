//! Finds Chromium and its driver, or says how to get them.

use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::run;

/// Where the browser and its driver are.
#[derive(Clone, Debug)]
pub struct Browser {
    /// Chromium or Chrome.
    pub chromium: PathBuf,
    /// Its WebDriver.
    pub driver: PathBuf,
}

const CHROMIUM: [&str; 3] = ["chromium", "chromium-browser", "google-chrome"];

/// Finds both on the PATH, or where CHROMIUM and CHROMEDRIVER point.
#[must_use]
pub fn find() -> Option<Browser> {
    let given = |name| std::env::var_os(name).map(PathBuf::from);
    let chromium = given("CHROMIUM").or_else(|| CHROMIUM.into_iter().find_map(on_path))?;
    let driver = given("CHROMEDRIVER").or_else(|| on_path("chromedriver"))?;
    Some(Browser { chromium, driver })
}

/// The first file of this name on the PATH.
pub(crate) fn on_path(name: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    std::env::split_paths(&path).map(|folder| folder.join(name)).find(|file| file.is_file())
}

/// Finds both, installing them where apt can, else failing with what to do.
///
/// # Errors
/// When there is no browser and none could be installed.
pub fn ensure() -> Result<Browser> {
    if let Some(browser) = find() {
        return Ok(browser);
    }
    println!("Installing Chromium for the browser tests.");
    install(&["chromium", "chromium-driver"]).context("or set CHROMIUM and CHROMEDRIVER to them")?;
    find().context("Chromium was installed but is not on the PATH")
}

/// Installs Debian packages where apt can, else fails with the line that does it.
pub(crate) fn install(packages: &[&str]) -> Result<()> {
    let install = format!("apt-get install -y --no-install-recommends {}", packages.join(" "));
    let by_hand = || format!("install it yourself: sudo {install}");
    if on_path("apt-get").is_none() {
        bail!("there is no apt-get here to install what Debian has as {}: put it on the PATH", packages.join(" and "));
    }
    for line in ["apt-get update", &install] {
        run(Command::new("apt-get").args(line.split(' ').skip(1))).with_context(by_hand)?;
    }
    Ok(())
}
