//! Which version of the app a phone keeps, and how it comes to another.

use std::path::Path;

use anyhow::{Context, Result, ensure};
use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use serde_json::json;

use crate::{Host, Phone};

impl Phone {
    /// Waits until the service worker keeps this page.
    ///
    /// # Errors
    /// When it does not within ten seconds.
    pub async fn is_kept(&self) -> Result<()> {
        self.until("navigator.serviceWorker.controller && navigator.serviceWorker.controller.state === 'activated'")
            .await
    }

    /// Has the browser look for a new version, and waits until it is being installed or was refused.
    ///
    /// # Errors
    /// When the page is gone.
    pub async fn look_for_update(&self) -> Result<()> {
        let script = "navigator.serviceWorker.getRegistration().then(r => r.update()).then(done, () => done())";
        self.run_async(script).await.map(|_| ())
    }

    /// Waits for what is being installed: whether a new version then waits for its tap.
    ///
    /// # Errors
    /// When the page is gone.
    pub async fn has_update(&self) -> Result<bool> {
        let script = "navigator.serviceWorker.getRegistration().then(r => {
            const worker = r.installing;
            if (!worker) return done(!!r.waiting);
            worker.addEventListener('statechange', () => done(!!r.waiting));
        })";
        Ok(self.run_async(script).await? == true)
    }

    /// Has the browser look for a new version: whether one then waits for its tap.
    ///
    /// # Errors
    /// When the page is gone.
    pub async fn gets_update(&self) -> Result<bool> {
        self.look_for_update().await?;
        self.has_update().await
    }

    /// Taps “Use it”, and waits until the build with this mark stands.
    ///
    /// # Errors
    /// When it does not come up.
    pub async fn take_update(&self, mark: &str) -> Result<()> {
        self.run("window.__same = true").await?;
        // It is offered once the pad is put away.
        if self.run("return !!document.querySelector('.pad')").await? == true {
            self.press("Done").await?;
        }
        self.tap_away("Use it").await?;
        self.until(&format!("!window.__same && document.documentElement.dataset.build === '{mark}'")).await?;
        self.is_up().await?;
        self.is_kept().await
    }

    /// The names of the caches that the workers of this host keep.
    ///
    /// # Errors
    /// When the page is gone.
    pub async fn caches(&self) -> Result<Vec<String>> {
        let names = self.run_async("caches.keys().then(done)").await?;
        Ok(names.as_array().into_iter().flatten().filter_map(|name| name.as_str().map(str::to_owned)).collect())
    }

    /// The addresses that the one cache of this host holds.
    ///
    /// # Errors
    /// When the page is gone.
    pub async fn entries(&self) -> Result<Vec<String>> {
        let script = "caches.keys().then(([name]) => caches.open(name)).then(c => c.keys()).then(kept => done(kept.map(k => k.url)))";
        let found = self.run_async(script).await?;
        Ok(found.as_array().into_iter().flatten().filter_map(|url| url.as_str().map(str::to_owned)).collect())
    }

    /// Loads the page again with the network as it is: the build with this mark stands, whole, and answers.
    ///
    /// # Errors
    /// When it does not, or parts of another build run in it.
    pub async fn stands(&self, mark: &str) -> Result<()> {
        self.reload().await?;
        self.strip_says("ml").await?;
        let script = "const { build, theme_ran, boot_ran } = document.documentElement.dataset; return [build, theme_ran, boot_ran].join()";
        let ran = self.run(script).await?;
        ensure!(ran == format!("{mark},{mark},{mark}"), "{ran}, not {mark}");
        Ok(())
    }

    /// The same, without a network.
    ///
    /// # Errors
    /// As [`Phone::stands`].
    pub async fn stands_alone(&self, host: &Host, mark: &str) -> Result<()> {
        host.gone(true);
        let stands = self.stands(mark).await;
        host.gone(false);
        stands.context("without a network")
    }

    /// Checks every byte that is kept against the build in `folder`, in the one cache there is.
    ///
    /// # Errors
    /// When something else is kept, or a file is not.
    pub async fn keeps_all_of(&self, folder: &Path) -> Result<()> {
        let caches = self.caches().await?;
        ensure!(caches.len() == 1, "{caches:?}");
        let files = xtask::precache::files(folder)?;
        let entries = self.entries().await?;
        ensure!(entries.len() == files.len(), "{entries:?}");
        for file in files {
            let name = if file == "index.html" { "./" } else { &file };
            let script = format!(
                "caches.match({}, {{ cacheName: {} }}).then(r => r.arrayBuffer()).then(b => done(btoa(Array.from(new Uint8Array(b), (byte) => String.fromCharCode(byte)).join(''))), e => done(String(e)))",
                json!(name),
                json!(caches[0])
            );
            let kept = self.run_async(&script).await?;
            let built = BASE64_STANDARD.encode(std::fs::read(folder.join(&file))?);
            ensure!(kept == built, "{file} is kept otherwise than it was built");
        }
        Ok(())
    }
}
