//! How fast the app starts and answers, on a processor four times slower than this one.

use anyhow::Result;
use browser::{Phone, Setup};
use serde_json::{Value, json};
use xtask::server::Serving;

const SLOWER: u32 = 4;
const STARTS: usize = 5;

#[tokio::main]
async fn main() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    println!("\nin Chromium, processor slowed {SLOWER} times");
    let mut cold = Vec::new();
    for _ in 0..STARTS {
        let phone = slow_phone(&serving).await?;
        phone.open("service/measure").await?;
        cold.push(start_times(&phone).await?);
    }
    let phone = slow_phone(&serving).await?;
    phone.open("service/measure").await?;
    phone.is_kept().await?;
    let mut kept = Vec::new();
    for _ in 0..STARTS {
        phone.reload().await?;
        kept.push(start_times(&phone).await?);
    }
    print_starts("first visit", &cold);
    print_starts("kept offline", &kept);
    for (route, field) in [
        ("service/measure", "amount"),
        ("service/scale", "serves"),
        ("service/balance", "makes"),
        ("prep/syrup", "amount"),
        ("prep/acid", "juice"),
    ] {
        phone.open(route).await?;
        println!(
            "{:>9.1} ms  one keystroke in {route} (median of 60), input to drawn",
            keystroke(&phone, field).await?
        );
    }
    Ok(())
}

async fn slow_phone(serving: &Serving) -> Result<Phone> {
    // Notes when the strip of the app first stands.
    let before = "new MutationObserver((_, o) => { if (document.getElementById('page')) { window.__up = performance.now(); o.disconnect() } }).observe(document, { subtree: true, childList: true })";
    let phone = Phone::start(&serving.url(), &Setup { before: before.into(), ..Setup::default() }).await?;
    phone.cdp("Emulation.setCPUThrottlingRate", json!({ "rate": SLOWER })).await?;
    Ok(phone)
}

async fn start_times(phone: &Phone) -> Result<(f64, f64)> {
    let times = phone
        .run("return [performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0, window.__up]")
        .await?;
    let number = |at: usize| times.get(at).and_then(Value::as_f64).unwrap_or(f64::NAN);
    Ok((number(0), number(1)))
}

fn print_starts(name: &str, times: &[(f64, f64)]) {
    println!("{:>9.0} ms  {name}: first paint (median of {STARTS})", median(times.iter().map(|time| time.0)));
    println!("{:>9.0} ms  {name}: answering", median(times.iter().map(|time| time.1)));
}

fn median(values: impl Iterator<Item = f64>) -> f64 {
    let mut sorted: Vec<f64> = values.collect();
    sorted.sort_by(f64::total_cmp);
    sorted[sorted.len() / 2]
}

/// From the input event until everything it changed has been drawn into the document.
async fn keystroke(phone: &Phone, field: &str) -> Result<f64> {
    let script = format!(
        "(async () => {{
           const e = document.getElementById('{field}'); const times = [];
           const turn = () => new Promise(go => {{ const c = new MessageChannel(); c.port1.onmessage = go; c.port2.postMessage(0) }});
           for (let i = 0; i < 60; i++) {{
             e.value = String(20 + i); const from = performance.now();
             e.dispatchEvent(new Event('input', {{ bubbles: true }})); await turn(); document.body.offsetHeight;
             times.push(performance.now() - from); await turn();
           }}
           return times
         }})().then(done)"
    );
    let times = phone.run_async(&script).await?;
    Ok(median(times.as_array().into_iter().flatten().filter_map(Value::as_f64)))
}
