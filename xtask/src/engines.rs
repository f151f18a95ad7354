//! The engines of two other browsers, Firefox and WebKit: found, or installed where apt can, or it is said how.

use std::path::PathBuf;

use anyhow::{Context, Result};

use crate::browser::{install, on_path};
use crate::tools;

/// An engine besides Chromium's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Gecko, in Firefox.
    Firefox,
    /// WebKit, in the small browser that comes with WebKitGTK.
    WebKit,
}

/// Where an engine is.
#[derive(Clone, Debug)]
pub struct Found {
    /// Its WebDriver.
    pub driver: PathBuf,
    /// Firefox, or the display that WebKit draws on: it has no mode without one.
    pub program: PathBuf,
}

impl Engine {
    /// Both.
    pub const ALL: [Engine; 2] = [Engine::Firefox, Engine::WebKit];

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Engine::Firefox => "firefox",
            Engine::WebKit => "webkit",
        }
    }

    const fn packages(self) -> &'static [&'static str] {
        match self {
            Engine::Firefox => &["firefox-esr"],
            Engine::WebKit => &["webkit2gtk-driver", "xvfb"],
        }
    }

    /// Finds it, installing what is missing.
    ///
    /// # Errors
    /// When something cannot be installed, with how to get it.
    pub fn ensure(self) -> Result<Found> {
        if self.on_path().is_none() {
            println!("Installing {} for the smoke set in {}.", self.packages().join(" and "), self.name());
            install(self.packages())?;
        }
        self.on_path().context("what was installed is not on the PATH")?.driven()
    }

    /// What apt brings of it.
    fn on_path(self) -> Option<OnPath> {
        match self {
            Engine::Firefox => ["firefox-esr", "firefox"].into_iter().find_map(on_path).map(OnPath::Firefox),
            Engine::WebKit => on_path("WebKitWebDriver").zip(on_path("Xvfb")).map(OnPath::WebKit),
        }
    }
}

enum OnPath {
    Firefox(PathBuf),
    WebKit((PathBuf, PathBuf)),
}

impl OnPath {
    /// With its driver. That of Firefox is not among Debian's packages.
    fn driven(self) -> Result<Found> {
        match self {
            OnPath::Firefox(program) => Ok(Found { driver: tools::geckodriver()?, program }),
            OnPath::WebKit((driver, program)) => Ok(Found { driver, program }),
        }
    }
}
