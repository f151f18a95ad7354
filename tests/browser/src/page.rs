//! The page object: what a person sees and touches.

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};
use thirtyfour::prelude::*;

use crate::Phone;

/// Keeps the files that the app gives in `__given`, and has `hand(text)` give it one, as a person would choose it.
pub const CATCH_FILES: &str = "window.__given = []; URL.createObjectURL = (b) => { b.text().then(t => __given.push(t)); return '#' };
    navigator.canShare = undefined; HTMLAnchorElement.prototype.click = function () {};
    window.addEventListener('DOMContentLoaded', () => { window.hand = (text) => dispatchEvent(Object.assign(new Event('meniscus-file'), { text })) })";

impl Phone {
    /// Opens a screen, and waits until the app has drawn it.
    ///
    /// # Errors
    /// When it does not come up.
    pub async fn open(&self, route: &str) -> Result<()> {
        self.driver.goto(format!("{}#/{route}", self.url)).await?;
        self.is_up().await
    }

    /// Waits until the app stands.
    ///
    /// # Errors
    /// When it does not come up.
    pub async fn is_up(&self) -> Result<()> {
        self.until("document.querySelector(':not([data-starting]) > body > #app:not([data-first]) > #page')").await?;
        // It brings its first field into sight a frame later: nobody taps sooner than that.
        self.run_async("requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 0)))").await?;
        Ok(())
    }

    /// Leaves the app, so that what is opened next is loaded whole.
    ///
    /// # Errors
    /// When the browser refuses.
    pub async fn leave(&self) -> Result<()> {
        Ok(self.driver.goto("about:blank").await?)
    }

    /// Loads the page again.
    ///
    /// # Errors
    /// When it does not come up.
    pub async fn reload(&self) -> Result<()> {
        self.driver.refresh().await?;
        self.is_up().await
    }

    /// What the strip says: figures, a bar, what to do, and where there is one the line below.
    ///
    /// # Errors
    /// When there is no strip.
    pub async fn strip(&self) -> Result<String> {
        let script = "const s = document.querySelector('output.strip');
            const below = s.querySelector('.below')?.textContent;
            return [[...s.querySelectorAll('.figure')].map(f => f.textContent.trim()).join(' + '), s.querySelector('.also').textContent, ...(below ? [below] : [])].join(' | ')";
        let text = self.run(script).await?;
        Ok(text.as_str().unwrap_or_default().replace('\u{202f}', " "))
    }

    /// Waits until the strip contains a text.
    ///
    /// # Errors
    /// When it never does; says what it holds instead.
    pub async fn strip_says(&self, expected: &str) -> Result<()> {
        let mut last = String::new();
        for _ in 0..120 {
            last = self.strip().await.unwrap_or_default();
            if last.contains(expected) {
                return Ok(());
            }
            tokio::time::sleep(std::time::Duration::from_millis(25)).await;
        }
        anyhow::bail!("the strip says {last:?}, not {expected:?}")
    }

    /// What a field holds.
    ///
    /// # Errors
    /// When there is no such field.
    pub async fn value(&self, name: &str) -> Result<String> {
        let value = self.run(&format!("return document.getElementById('{name}').value")).await?;
        value.as_str().map(str::to_owned).with_context(|| format!("no field {name}"))
    }

    /// What is stored under keys that begin so, as "key=text".
    ///
    /// # Errors
    /// When the page is gone.
    pub async fn stored(&self, prefix: &str) -> Result<Vec<String>> {
        let script = format!(
            "return Object.keys(localStorage).filter(k => k.startsWith('meniscus/{prefix}')).sort()
               .map(k => k.slice(9) + '=' + localStorage[k])"
        );
        let found = self.run(&script).await?;
        Ok(found.as_array().into_iter().flatten().filter_map(|text| text.as_str().map(str::to_owned)).collect())
    }

    /// Puts a text in a field at once, as a paste does.
    ///
    /// # Errors
    /// When there is no such field.
    pub async fn put(&self, name: &str, text: &str) -> Result<()> {
        let script = format!(
            "const e = document.getElementById('{name}'); e.value = {}; \
             e.dispatchEvent(new Event('input', {{ bubbles: true }}))",
            json!(text)
        );
        self.run(&script).await?;
        self.run_async("requestAnimationFrame(() => setTimeout(done, 0))").await?;
        Ok(())
    }

    /// Chooses from a list by key, as a tap on the native list would.
    ///
    /// # Errors
    /// When there is no such list or it has no such key.
    pub async fn choose(&self, name: &str, key: &str) -> Result<()> {
        let script = format!(
            "const s = document.getElementById('{name}'); s.value = '{key}'; \
             s.dispatchEvent(new Event('change', {{ bubbles: true }})); return s.value"
        );
        let chosen = self.run(&script).await?;
        ensure!(chosen == key, "{name} has no {key}");
        Ok(())
    }

    /// All the words on the page, and below it; an amount with its unit.
    ///
    /// # Errors
    /// When the page is gone.
    pub async fn words(&self) -> Result<String> {
        // What is folded away counts, and what is said below the page.
        let script = "const bars = document.querySelector('.bars'); return [document.querySelector('main').innerText,
            ...[...document.querySelectorAll('.src p')].map(p => p.textContent), bars?.innerText ?? ''].join('\\n')
            .replace(/^([≈−\\d¼½¾⅓⅔⅛][\\d \u{202f}.,–¼½¾⅓⅔⅛]*)\\n(?=[^\\n\\d]{1,16}$)/gm, '$1 ')";
        let text = self.run(script).await?;
        Ok(text.as_str().unwrap_or_default().replace('\u{202f}', " "))
    }

    /// Taps what a selector finds.
    ///
    /// # Errors
    /// When it is not there or cannot be touched.
    pub async fn tap(&self, selector: &str) -> Result<()> {
        self.tap_found(&format!("document.querySelector({})", json!(selector))).await
    }

    /// Taps a button, link, chip or key by the words on it.
    ///
    /// # Errors
    /// When there is none or it cannot be touched.
    pub async fn tap_on(&self, words: &str) -> Result<()> {
        let find = format!(
            "[...document.querySelectorAll('button, a, label.chip')].find(e => (e.matches('.tool') ? e.firstElementChild : e).textContent.trim() === {} && e.getClientRects().length)",
            json!(words)
        );
        self.tap_found(&find).await.with_context(|| format!("tapping “{words}”"))
    }

    /// Taps what there is to do with an answer, at the foot of the screen: the pad is put away first.
    ///
    /// # Errors
    /// When there is none or it cannot be touched.
    pub async fn finish(&self, words: &str) -> Result<()> {
        if self.run("return !!document.querySelector('.pad')").await? == true {
            self.press("Done").await?;
        }
        self.tap_on(words).await
    }

    /// Goes to a tool by the sheet of its place.
    ///
    /// # Errors
    /// When one of the two is not in sight.
    pub async fn go_to(&self, place: &str, tool: &str) -> Result<()> {
        self.tap_on(place).await?;
        let find = format!(
            "[...document.querySelectorAll('.tool')].find(e => e.firstElementChild.textContent === {} && e.getClientRects().length)",
            json!(tool)
        );
        self.tap_found(&find).await.with_context(|| format!("going to {tool}"))
    }

    /// Presses keys of the pad, named by what stands on them and parted by spaces.
    ///
    /// # Errors
    /// When a key is not in sight.
    pub async fn press(&self, keys: &str) -> Result<()> {
        for key in keys.split(' ') {
            let find = format!(
                "[...document.querySelectorAll('.pad .key')].find(e => e.textContent.trim() === {})",
                json!(key)
            );
            self.tap_found(&find).await.with_context(|| format!("pressing “{key}”"))?;
        }
        Ok(())
    }

    async fn tap_found(&self, find: &str) -> Result<()> {
        self.touch(find).await?;
        // A tap is done when the page has seen its click, drawn again, and brought into sight what it chose to.
        self.run_async("requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 0)))").await?;
        Ok(())
    }

    /// Taps a button by the words on it that has the page loaded again: nothing is waited for in the page that goes.
    ///
    /// # Errors
    /// When there is none or it cannot be touched.
    pub async fn tap_away(&self, words: &str) -> Result<()> {
        let find = format!("[...document.querySelectorAll('button')].find(e => e.textContent === {})", json!(words));
        self.touch(&find).await
    }

    async fn touch(&self, find: &str) -> Result<()> {
        self.until(find).await?;
        let script = format!(
            "const e = {find}; e.scrollIntoView({{ block: 'nearest' }});
             const r = e.getBoundingClientRect(); const x = r.x + r.width / 2, y = r.y + r.height / 2;
             const hit = document.elementFromPoint(x, y);
             return {{ x, y, free: !!hit && (e.contains(hit) || hit.contains(e)) }}"
        );
        let at = self.run(&script).await?;
        ensure!(at["free"] == Value::Bool(true), "something lies over {find} at {at}");
        if self.shape.touch {
            let point = json!([{ "x": at["x"], "y": at["y"] }]);
            self.cdp("Input.dispatchTouchEvent", json!({ "type": "touchStart", "touchPoints": point })).await?;
            self.cdp("Input.dispatchTouchEvent", json!({ "type": "touchEnd", "touchPoints": [] })).await?;
        } else {
            let near = |of: &str| at[of].as_f64().unwrap_or_default().round() as i64;
            self.driver.action_chain().move_to(near("x"), near("y")).click().perform().await?;
        }
        Ok(())
    }

    /// Types on a hardware keyboard into a field, in place of what it holds.
    ///
    /// # Errors
    /// When there is no such field.
    pub async fn type_in(&self, name: &str, text: &str) -> Result<()> {
        let field = self.driver.find(By::Id(name)).await.with_context(|| format!("no field {name}"))?;
        self.run(&format!("const e = document.getElementById('{name}'); e.focus(); e.select(); if (e.tagName === 'TEXTAREA') {{ e.value = ''; e.dispatchEvent(new Event('input', {{ bubbles: true }})) }}")).await?;
        if text.is_empty() {
            field.send_keys("" + Key::Delete).await?;
        } else {
            field.send_keys(text).await?;
        }
        Ok(())
    }

    /// Goes back a page.
    ///
    /// # Errors
    /// When the browser refuses.
    pub async fn back(&self) -> Result<()> {
        Ok(self.driver.back().await?)
    }

    /// What went wrong in the page so far: errors, rejections, breaches of the policy.
    ///
    /// # Errors
    /// When the page is gone.
    pub async fn wrongs(&self) -> Result<Vec<String>> {
        let wrong = self.run("return window.__wrong").await?;
        Ok(wrong.as_array().into_iter().flatten().map(ToString::to_string).collect())
    }

    /// Addresses asked for that are not the app's own.
    ///
    /// # Errors
    /// When the page is gone.
    pub async fn foreign_requests(&self) -> Result<Vec<String>> {
        let script = "return performance.getEntriesByType('resource').map(e => e.name).filter(n => !n.startsWith(location.origin + '/'))";
        let foreign = self.run(script).await?;
        Ok(foreign.as_array().into_iter().flatten().map(ToString::to_string).collect())
    }

    /// The tab in use.
    ///
    /// # Errors
    /// When the browser refuses.
    pub async fn tab(&self) -> Result<thirtyfour::WindowHandle> {
        Ok(self.driver.window().await?)
    }

    /// Goes on in another tab.
    ///
    /// # Errors
    /// When it is gone.
    pub async fn go_to_tab(&self, tab: &thirtyfour::WindowHandle) -> Result<()> {
        Ok(self.driver.switch_to_window(tab.clone()).await?)
    }

    /// Opens another tab and goes on in it.
    ///
    /// # Errors
    /// When the browser refuses.
    pub async fn new_tab(&self) -> Result<()> {
        let tab = self.driver.new_tab().await?;
        Ok(self.driver.switch_to_window(tab).await?)
    }
}
