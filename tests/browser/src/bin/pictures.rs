//! Draws the icons from icon.svg and icon-16.svg and takes the screenshots, all into public/. `icons` draws no others.

use anyhow::{Context, Result};
use base64::prelude::*;
use browser::{DESK, Phone, Setup};
use serde_json::json;
use xtask::server::Serving;

#[tokio::main]
async fn main() -> Result<()> {
    let public = xtask::root().join("public");
    let serving = Serving::start(&xtask::dist())?;
    draw_icons(&public, &serving.url()).await?;
    if std::env::args().any(|arg| arg == "icons") {
        return Ok(());
    }
    let shots = public.join("screenshots");
    std::fs::create_dir_all(&shots)?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    for (route, file) in [
        ("service/measure", "narrow-measure"),
        ("service/scale", "narrow-scale"),
        ("service/balance", "narrow-balance"),
        ("prep/acid", "narrow-acid"),
        ("prep/cordial", "narrow-cordial"),
    ] {
        phone.open(route).await?;
        phone.run(NO_LONGER_NEW).await?;
        phone.run("document.activeElement.setSelectionRange?.(99, 99)").await?;
        let has_pad = phone.run("return !!document.querySelector('.pad')").await? == true;
        if has_pad && route != "service/measure" {
            phone.press("Done").await?;
            phone.run("document.activeElement.blur()").await?;
        }
        take(&phone, &shots.join(format!("{file}.png"))).await?;
    }
    let desk = Phone::start(&serving.url(), &Setup { shape: DESK, light: true, ..Setup::default() }).await?;
    desk.open("batch/serves").await?;
    desk.run(NO_LONGER_NEW).await?;
    desk.press("Done").await?;
    take(&desk, &shots.join("wide-serves.png")).await?;
    println!("drawn into {}", public.display());
    Ok(())
}

/// Puts away what a newcomer is told.
const NO_LONGER_NEW: &str =
    "[...document.querySelectorAll('.bar button')].find(b => b.textContent === 'Got it')?.click()";

/// A picture of what is on the screen, without the bars that a mouse would scroll by.
async fn take(phone: &Phone, file: &std::path::Path) -> Result<()> {
    phone.cdp("Emulation.setScrollbarsHidden", json!({ "hidden": true })).await?;
    phone.picture(file).await
}

/// How round the corners are, in shares of the width.
const ROUND: f64 = 0.22;

/// Rounded where it is shown as it is, square to the edge for phones that cut their own shape: all of the glass is
/// within the safe circle of a maskable icon, eight tenths of the width. The smallest have a simpler drawing.
async fn draw_icons(public: &std::path::Path, url: &str) -> Result<()> {
    let read = |file: &str| std::fs::read_to_string(public.join(file)).with_context(|| format!("public/{file}"));
    let (large, small) = (read("icon.svg")?, read("icon-16.svg")?);
    let single = in_one_colour(&large).context("icon.svg is not a ground with drawings on it")?;
    let phone = Phone::start(url, &Setup { shape: DESK, ..Setup::default() }).await?;
    phone.cdp("Page.navigate", json!({ "url": "about:blank" })).await?;
    for (drawing, size, round, file) in [
        (&small, 32, 0.0, "icon-32"),
        (&large, 180, 0.0, "icon-180"),
        (&large, 192, ROUND, "icon-192"),
        (&large, 512, ROUND, "icon-512"),
        (&large, 512, 0.0, "icon-maskable-512"),
        (&single, 512, 0.0, "icon-monochrome-512"),
    ] {
        let round = f64::from(size) * round;
        let script = format!(
            "document.body.style.margin = 0; document.body.innerHTML = {};
             const svg = document.querySelector('svg'); svg.setAttribute('width', {size}); svg.setAttribute('height', {size});
             svg.style.cssText = 'display: block; border-radius: {round}px'",
            json!(drawing)
        );
        phone.run(&script).await?;
        phone
            .cdp("Emulation.setDefaultBackgroundColorOverride", json!({ "color": { "r": 0, "g": 0, "b": 0, "a": 0 } }))
            .await?;
        let clip = json!({ "x": 0, "y": 0, "width": size, "height": size, "scale": 1 });
        let shot = phone.cdp("Page.captureScreenshot", json!({ "format": "png", "clip": clip })).await?;
        let data = shot["data"].as_str().context("no picture")?;
        std::fs::write(public.join(format!("{file}.png")), BASE64_STANDARD.decode(data)?)?;
    }
    Ok(())
}

/// The tape alone, with what is dark on it cut out: the device gives it a colour.
fn in_one_colour(svg: &str) -> Option<String> {
    let (head, rest) = svg.split_once("<rect ")?;
    let (_, drawings) = rest.split_once("/>")?;
    let (drawings, _) = drawings.rsplit_once("</svg>")?;
    let mask = drawings.replace("#efe6c8", "#fff").replace("#15191c", "#000");
    Some(format!("{head}<mask id=\"tape\">{mask}</mask><rect width=\"512\" height=\"512\" mask=\"url(#tape)\"/></svg>"))
}
