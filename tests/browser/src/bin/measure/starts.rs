//! How a start feels on a phone of the middling sort: a processor four times slower than this one, on a slow mobile network.

use anyhow::{Context, Result};
use browser::{Phone, Setup};
use serde_json::json;
use xtask::server::Serving;

use crate::{SLOWER, median, work};

/// Starts of each kind, of which the median is told.
pub const STARTS: usize = 5;

/// "Slow 4G" as browsers' own tools throttle it: 150 ms for a round trip and 1.6 Mbit/s, which at this level come to
/// 3.75 times the latency and nine tenths of the rate. From memory, no source.
const LATENCY_MS: f64 = 562.5;
const BYTES_PER_SECOND: f64 = 0.9 * 1.6 * 1024.0 * 1024.0 / 8.0;

/// Notes what the browser itself says of a start, and when the app first stands.
const WATCH: &str = "
window.__start = { long: [], shift: 0 };
const seen = (type, then) => new PerformanceObserver((list) => list.getEntries().forEach(then)).observe({ type, buffered: true });
seen('largest-contentful-paint', (e) => (__start.largest = e.startTime));
seen('longtask', (e) => __start.long.push([e.startTime, e.duration]));
seen('layout-shift', (e) => (__start.shift += e.value));
addEventListener('meniscus-opened', () => (__start.up = performance.now()), { once: true });";

/// The figures of one start. Milliseconds, but for the shift.
const FIGURES: [(&str, &str); 6] = [
    ("first paint", "performance.getEntriesByName('first-contentful-paint')[0]?.startTime"),
    ("largest paint", "__start.largest"),
    ("answering", "__start.up"),
    // All that is over 50 ms in each long task, after the first paint.
    (
        "blocked",
        "__start.long.filter(([at]) => at >= performance.getEntriesByName('first-contentful-paint')[0]?.startTime).reduce((sum, [, long]) => sum + long - 50, 0)",
    ),
    ("longest task", "Math.max(0, ...__start.long.map(([, long]) => long))"),
    ("moved, thousandths", "__start.shift * 1000"),
];

/// Prints the figures of a first visit on a slow network, of one on a fast, and of a start from what is kept.
pub async fn measure(serving: &Serving) -> Result<()> {
    let mut lines = Vec::new();
    for (name, is_slow) in [("first visit, slow 4G", true), ("first visit", false)] {
        let mut starts = Vec::new();
        for _ in 0..STARTS {
            let phone = slow_phone(serving, is_slow).await?;
            starts.push(start(&phone, "").await?);
        }
        lines.push((name, starts));
    }
    let phone = slow_phone(serving, false).await?;
    start(&phone, "").await?;
    phone.is_kept().await?;
    let mut starts = Vec::new();
    for _ in 0..STARTS {
        phone.leave().await?;
        starts.push(start(&phone, "#/service/measure").await?);
    }
    lines.push(("kept offline", starts));
    for (name, starts) in lines {
        println!("{name} (median of {STARTS})");
        for (at, (figure, _)) in FIGURES.iter().enumerate() {
            println!("{:>9.0} ms  {figure}", median(starts.iter().map(|start| start[at])));
        }
    }
    Ok(())
}

/// A phone with a slow processor, and a slow network if need be.
pub async fn slow_phone(serving: &Serving, has_slow_network: bool) -> Result<Phone> {
    let before = format!("{WATCH}\n{}", work::HOLD_CLOCK);
    let phone = Phone::start(&serving.url(), &Setup { before, ..Setup::default() }).await?;
    phone.cdp("Emulation.setCPUThrottlingRate", json!({ "rate": SLOWER })).await?;
    if has_slow_network {
        phone.cdp("Network.enable", json!({})).await?;
        let network = json!({ "offline": false, "latency": LATENCY_MS, "downloadThroughput": BYTES_PER_SECOND,
            "uploadThroughput": BYTES_PER_SECOND / 2.0 });
        phone.cdp("Network.emulateNetworkConditions", network).await?;
    }
    Ok(phone)
}

/// Opens the app, and waits a little for what it does once it stands.
async fn start(phone: &Phone, at: &str) -> Result<[f64; FIGURES.len()]> {
    phone.cdp("Page.navigate", json!({ "url": format!("{}{at}", phone.url) })).await?;
    phone.until("window.__start?.up").await?;
    tokio::time::sleep(std::time::Duration::from_secs(2)).await;
    let mut figures = [f64::NAN; FIGURES.len()];
    for (figure, (name, script)) in figures.iter_mut().zip(FIGURES) {
        *figure = phone.run(&format!("return {script}")).await?.as_f64().with_context(|| format!("no {name}"))?;
    }
    Ok(figures)
}
