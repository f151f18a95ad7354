//! Starts a browser, shapes it like a phone, and stops it whatever happens.

use std::net::TcpListener;
use std::os::unix::process::CommandExt;
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout, Command, Stdio};
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail};
use serde_json::{Value, json};
use tempfile::TempDir;
use thirtyfour::common::capabilities::chrome::ChromeCapabilities;
use thirtyfour::common::capabilities::chromium::ChromiumLikeCapabilities;
use thirtyfour::prelude::*;

/// The shape of a screen, in CSS pixels.
#[derive(Clone, Copy, Debug)]
pub struct Shape {
    /// Across.
    pub width: u32,
    /// Down.
    pub height: u32,
    /// Whether it is touched.
    pub touch: bool,
}

/// The phone most people have.
pub const PHONE: Shape = Shape { width: 390, height: 844, touch: true };
/// The smallest phone we mind.
pub const NARROW: Shape = Shape { width: 320, height: 640, touch: true };
/// A laptop.
pub const DESK: Shape = Shape { width: 1280, height: 800, touch: false };

/// How to start.
#[derive(Clone, Debug)]
pub struct Setup {
    /// The screen.
    pub shape: Shape,
    /// Whether the device prefers light colours.
    pub light: bool,
    /// A profile to go on with, as a phone would; a new one otherwise.
    pub profile: Option<PathBuf>,
    /// Runs in every page before anything else.
    pub before: String,
}

impl Default for Setup {
    fn default() -> Self {
        Setup { shape: PHONE, light: false, profile: None, before: String::new() }
    }
}

/// A browser with one page.
pub struct Phone {
    pub(crate) driver: WebDriver,
    pub(crate) _processes: Vec<Group>,
    pub(crate) _profile: Option<TempDir>,
    /// The address of the app.
    pub url: String,
    /// Its screen.
    pub shape: Shape,
}

/// Notes what must not happen, from before the first script of the page.
const WATCH: &str = "
window.__wrong = [];
addEventListener('securitypolicyviolation', (e) => __wrong.push('policy: ' + e.violatedDirective + ' ' + e.blockedURI));
addEventListener('error', (e) => __wrong.push('error: ' + e.message));
addEventListener('unhandledrejection', (e) => __wrong.push('rejection: ' + e.reason));
const say = console.error; console.error = (...all) => { __wrong.push('console: ' + all.join(' ')); say(...all); };
window.__shift = 0;
new PerformanceObserver((list) => { for (const e of list.getEntries()) if (!e.hadRecentInput) __shift += e.value; })
  .observe({ type: 'layout-shift', buffered: true });
";

impl Phone {
    /// Starts a browser for the app at `url`. It shows nothing yet.
    ///
    /// # Errors
    /// When there is no browser, or it does not start.
    pub async fn start(url: &str, setup: &Setup) -> Result<Phone> {
        let browser = xtask::browser::find()
            .context("Chromium or its driver is missing: run `cargo xtask check`, which installs them or says how")?;
        let port = free_port()?;
        let mut command = Command::new(&browser.driver);
        command.arg(format!("--port={port}")).stdout(Stdio::null()).stderr(Stdio::null());
        let process = Group::start(&mut command)?;
        let (folder, profile) = match &setup.profile {
            Some(folder) => (folder.clone(), None),
            None => {
                let made = tempfile::tempdir()?;
                (made.path().to_path_buf(), Some(made))
            }
        };
        let driver = connect(port, chromium(&browser.chromium, &folder)?).await?;
        let phone =
            Phone { driver, _processes: vec![process], _profile: profile, url: url.to_owned(), shape: setup.shape };
        phone.dress(setup).await?;
        Ok(phone)
    }

    async fn dress(&self, setup: &Setup) -> Result<()> {
        let Shape { width, height, touch } = setup.shape;
        self.cdp(
            "Emulation.setDeviceMetricsOverride",
            json!({ "width": width, "height": height, "deviceScaleFactor": if touch { 2 } else { 1 }, "mobile": touch }),
        )
        .await?;
        self.cdp("Emulation.setTouchEmulationEnabled", json!({ "enabled": touch, "maxTouchPoints": 1 })).await?;
        self.prefer("prefers-color-scheme", if setup.light { "light" } else { "dark" }).await?;
        let source = format!("{WATCH}\n{}", setup.before);
        self.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": source })).await?;
        Ok(())
    }

    /// Makes the device prefer something.
    ///
    /// # Errors
    /// When the browser refuses.
    pub async fn prefer(&self, feature: &str, value: &str) -> Result<()> {
        let features = json!({ "features": [{ "name": feature, "value": value }] });
        self.cdp("Emulation.setEmulatedMedia", features).await.map(|_| ())
    }

    /// Calls a method of the browser's own protocol.
    ///
    /// # Errors
    /// When the browser refuses.
    pub async fn cdp(&self, method: &str, arguments: Value) -> Result<Value> {
        self.driver.cdp().send_raw(method, arguments).await.with_context(|| method.to_owned())
    }

    /// Runs a script that returns a value.
    ///
    /// # Errors
    /// When it throws.
    pub async fn run(&self, script: &str) -> Result<Value> {
        let answer = self.driver.execute(script, Vec::<Value>::new()).await.with_context(|| script.to_owned())?;
        Ok(answer.json().clone())
    }

    /// Runs an async script: its last argument, `done`, is called with the value.
    ///
    /// # Errors
    /// When it throws or never answers.
    pub async fn run_async(&self, script: &str) -> Result<Value> {
        let script = format!("const done = arguments[arguments.length - 1]; {script}");
        let answer =
            self.driver.execute_async(script.as_str(), Vec::<Value>::new()).await.with_context(|| script.clone())?;
        Ok(answer.json().clone())
    }

    /// What the browser itself complained of since it was last asked: on its console, of what no script is told.
    ///
    /// # Errors
    /// When the browser refuses.
    pub async fn complaints(&self) -> Result<Vec<String>> {
        Ok(self.driver.browser_log().await?.into_iter().map(|entry| entry.message).collect())
    }

    /// Waits until a script returns true.
    ///
    /// # Errors
    /// When it has not within ten seconds.
    pub async fn until(&self, condition: &str) -> Result<()> {
        let started = Instant::now();
        loop {
            // A page on its way out answers with an error: ask again.
            if matches!(self.run(&format!("return !!({condition})")).await, Ok(Value::Bool(true))) {
                return Ok(());
            }
            if started.elapsed() > Duration::from_secs(10) {
                let wrong = self.run("return JSON.stringify(window.__wrong)").await.unwrap_or_default();
                bail!("never came true: {condition}; on screen: {:?}; wrong: {wrong}", self.screen_text().await);
            }
            tokio::time::sleep(Duration::from_millis(25)).await;
        }
    }

    async fn screen_text(&self) -> String {
        self.run("return document.body.innerText")
            .await
            .map_or_else(|problem| problem.to_string(), |text| text.to_string())
    }

    /// Writes a picture of the screen.
    ///
    /// # Errors
    /// When it cannot be taken or written.
    pub async fn picture(&self, file: &Path) -> Result<()> {
        std::fs::write(file, self.driver.screenshot_as_png().await?)?;
        Ok(())
    }

    /// Closes the browser properly, so that its profile is whole.
    ///
    /// # Errors
    /// When the driver does not answer.
    pub async fn close(self) -> Result<()> {
        self.driver.clone().quit().await?;
        Ok(())
    }
}

impl Drop for Phone {
    fn drop(&mut self) {
        // The driver is stopped by force: its own farewell would wait for an answer.
        let _ = self.driver.clone().leak();
    }
}

/// A process and all it starts, which go when this is dropped.
pub(crate) struct Group(Child);

impl Group {
    /// Starts it in a group of its own.
    pub(crate) fn start(command: &mut Command) -> Result<Group> {
        let child = command.process_group(0).spawn();
        child.map(Group).with_context(|| format!("{} did not start", command.get_program().display()))
    }

    /// What it prints, once.
    pub(crate) fn output(&mut self) -> Option<ChildStdout> {
        self.0.stdout.take()
    }
}

impl Drop for Group {
    fn drop(&mut self) {
        let group = format!("-{}", self.0.id());
        let _ = Command::new("kill").args(["-9", "--", &group]).stderr(Stdio::null()).status();
        let _ = self.0.wait();
    }
}

/// A port of this machine that nobody listens on.
pub(crate) fn free_port() -> Result<u16> {
    Ok(TcpListener::bind("127.0.0.1:0")?.local_addr()?.port())
}

fn chromium(chromium: &Path, profile: &Path) -> Result<ChromeCapabilities> {
    let mut capabilities = DesiredCapabilities::chrome();
    capabilities.set_binary(&chromium.to_string_lossy())?;
    for flag in [
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--lang=en-GB",
        // Nothing but this machine exists.
        "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost",
    ] {
        capabilities.add_arg(flag)?;
    }
    capabilities.add_arg(&format!("--user-data-dir={}", profile.display()))?;
    Ok(capabilities)
}

/// Opens a session with the driver at a port, as soon as it listens.
pub(crate) async fn connect(port: u16, capabilities: impl Into<Capabilities>) -> Result<WebDriver> {
    let capabilities: Capabilities = capabilities.into();
    let address = format!("http://127.0.0.1:{port}");
    let started = Instant::now();
    loop {
        match WebDriver::new(&address, capabilities.clone()).await {
            Ok(driver) => {
                driver.set_script_timeout(Duration::from_secs(30)).await?;
                return Ok(driver);
            }
            Err(problem) if started.elapsed() > Duration::from_secs(20) => {
                return Err(problem).context("no browser session");
            }
            Err(_) => tokio::time::sleep(Duration::from_millis(100)).await,
        }
    }
}
