//! Starts the app in the engine of another browser.

use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};

use anyhow::{Context, Result};
use serde_json::{Value, json};
use tempfile::TempDir;
use thirtyfour::Capabilities;
use xtask::engines::{Engine, Found};

use crate::driver::{Group, connect, free_port};
use crate::{DESK, Phone};

/// Whether pages may save anything.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Saving {
    /// As the browser comes.
    Allowed,
    /// Forbidden by the person, in the browser's own settings.
    Blocked,
}

impl Phone {
    /// Starts another engine for the app at `url`. It shows nothing yet.
    ///
    /// # Errors
    /// When it cannot be had, or does not start.
    pub async fn in_engine(engine: Engine, url: &str, saving: Saving) -> Result<Phone> {
        let found = engine.ensure()?;
        let home = tempfile::tempdir()?;
        let mut processes = Vec::new();
        let mut driver = at_home(&found.driver, &home);
        if engine == Engine::WebKit {
            let (display, number) = display(&found, &home)?;
            processes.push(display);
            driver.env("DISPLAY", format!(":{number}"));
        }
        let port = free_port()?;
        driver.arg(format!("--port={port}")).stdout(Stdio::null());
        processes.push(Group::start(&mut driver)?);
        let driver = connect(port, capabilities(engine, &found, saving)?).await?;
        Ok(Phone { driver, _processes: processes, _profile: Some(home), url: url.to_owned(), shape: DESK })
    }
}

/// A command that leaves nothing behind in the person's own folders.
fn at_home(program: &Path, home: &TempDir) -> Command {
    let mut command = Command::new(program);
    for name in ["HOME", "TMPDIR", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME", "XDG_STATE_HOME"] {
        command.env(name, home.path());
    }
    command.stderr(Stdio::null());
    command
}

/// A display in memory, and its number, which it chooses itself.
fn display(found: &Found, home: &TempDir) -> Result<(Group, String)> {
    let mut command = at_home(&found.program, home);
    command.args(["-displayfd", "1", "-screen", "0", "1280x800x24", "-nolisten", "tcp"]).stdout(Stdio::piped());
    let mut group = Group::start(&mut command)?;
    let mut number = String::new();
    BufReader::new(group.output().context("no output")?).read_line(&mut number)?;
    Ok((group, number.trim().to_owned()))
}

fn capabilities(engine: Engine, found: &Found, saving: Saving) -> Result<Capabilities> {
    let is_blocked = saving == Saving::Blocked;
    let capabilities: Value = match engine {
        Engine::Firefox => {
            // 2 is "block all cookies", with which Firefox blocks everything else that a page saves.
            let prefs = if is_blocked { json!({ "network.cookie.cookieBehavior": 2 }) } else { json!({}) };
            json!({ "moz:firefoxOptions": { "binary": found.program, "args": ["-headless"], "prefs": prefs } })
        }
        Engine::WebKit => {
            let storage = format!("--enable-html5-local-storage={}", !is_blocked);
            json!({ "webkitgtk:browserOptions": { "args": ["--automation", storage] } })
        }
    };
    Ok(serde_json::from_value(capabilities)?)
}
