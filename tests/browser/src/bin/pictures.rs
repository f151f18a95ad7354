//! Draws the icons from icon.svg and takes the screenshots, all into public/.

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
        phone.run("document.activeElement.setSelectionRange?.(99, 99)").await?;
        let has_pad = phone.run("return !!document.querySelector('.pad')").await? == true;
        if has_pad && route != "service/measure" {
            phone.press("Done").await?;
            phone.run("document.activeElement.blur()").await?;
        }
        phone.picture(&shots.join(format!("{file}.png"))).await?;
    }
    let desk = Phone::start(&serving.url(), &Setup { shape: DESK, light: true, ..Setup::default() }).await?;
    desk.open("batch/serves").await?;
    desk.picture(&shots.join("wide-serves.png")).await?;
    println!("drawn into {}", public.display());
    Ok(())
}

/// Rounded for the browser, square to the edge for phones that cut their own shape.
async fn draw_icons(public: &std::path::Path, url: &str) -> Result<()> {
    let svg = std::fs::read_to_string(public.join("icon.svg")).context("public/icon.svg")?;
    let square = svg.replace("rx=\"112\"", "rx=\"0\"");
    // Within the safe circle of a maskable icon: eight tenths of the width.
    let maskable =
        square.replace("viewBox=\"0 0 512 512\"", "viewBox=\"-64 -64 640 640\" style=\"background:#15191c\"");
    let phone = Phone::start(url, &Setup { shape: DESK, ..Setup::default() }).await?;
    phone.cdp("Page.navigate", json!({ "url": "about:blank" })).await?;
    for (drawing, size, file) in [
        (&svg, 192, "icon-192"),
        (&svg, 512, "icon-512"),
        (&square, 180, "icon-180"),
        (&maskable, 512, "icon-maskable-512"),
    ] {
        let drawing = drawing.replace("<svg ", &format!("<svg width=\"{size}\" height=\"{size}\" "));
        phone.run(&format!("document.body.style.margin = 0; document.body.innerHTML = {}", json!(drawing))).await?;
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
