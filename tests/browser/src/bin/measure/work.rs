//! How long the page is busy with one thing: a keystroke, a second of the clock.

use anyhow::{Context, Result, ensure};
use browser::Phone;
use serde_json::Value;

use crate::median;

pub const KEYSTROKES: usize = 60;
pub const SECONDS: usize = 20;

/// Holds the callbacks that the app has called every second, so that they come when they are called for, and gives
/// them a clock that can be put on.
pub const HOLD_CLOCK: &str = "
const every = window.setInterval; window.__seconds = [];
window.setInterval = (then, wait, ...more) => wait === 1000 ? __seconds.push(() => then(...more)) : every(then, wait, ...more);
const real = Date.now; window.__later = 0; Date.now = () => real() + __later;";

/// Milliseconds from an event until all that it changed stands in the document and is laid out: scripts, the work they
/// put off to the end of the turn, and layout; not painting.
const TIMED: &str = "
const turn = () => new Promise(go => { const c = new MessageChannel(); c.port1.onmessage = go; c.port2.postMessage(0) });
const timed = async (event) => { const from = performance.now(); event(); await turn(); document.body.offsetHeight;
    const took = performance.now() - from; await turn(); return took };";

/// One keystroke in a field of the screen that is open.
pub async fn keystroke(phone: &Phone, field: &str) -> Result<f64> {
    let typed = format!("const e = document.getElementById('{field}'); e.value = String(20 + i)");
    let event = "e.dispatchEvent(new Event('input', { bubbles: true }))";
    let before = phone.stored("").await?;
    let took = median_of(phone, KEYSTROKES, &typed, event).await.with_context(|| format!("a keystroke in {field}"))?;
    ensure!(before != phone.stored("").await?, "nothing typed in {field} was taken");
    Ok(took)
}

/// One second of the clock; `shown` is the element that counts it.
pub async fn second(phone: &Phone, shown: &str) -> Result<f64> {
    let figure = format!("return document.querySelector('{shown}')?.textContent ?? ''");
    let before = phone.run(&figure).await?;
    let took = median_of(phone, SECONDS, "__later += 1000", "__seconds.forEach(then => then())").await?;
    let after = phone.run(&figure).await?;
    ensure!(before != "" && before != after, "the clock does not go on in {shown}: {before}, {after}");
    Ok(took)
}

async fn median_of(phone: &Phone, count: usize, first: &str, event: &str) -> Result<f64> {
    let script = format!(
        "(async () => {{ {TIMED} const times = [];
           for (let i = 0; i < {count}; i++) {{ {first}; times.push(await timed(() => {event})) }}
           return times }})().then(done, problem => done(String(problem)))"
    );
    let times = phone.run_async(&script).await?;
    let numbers: Vec<f64> = times.as_array().into_iter().flatten().filter_map(Value::as_f64).collect();
    ensure!(numbers.len() == count, "{times}");
    Ok(median(numbers.into_iter()))
}
