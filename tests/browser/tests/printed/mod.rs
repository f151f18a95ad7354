//! What is printed, dot by dot.

use anyhow::{Context, Result};
use base64::Engine;
use browser::Phone;
use hayro::hayro_interpret::InterpreterSettings;
use hayro::hayro_syntax::Pdf;
use hayro::vello_cpu::color::palette::css::WHITE;
use hayro::{PixmapSettings, RenderCache, RenderSettings, render};
use serde_json::json;

/// What label printers and offices have, or twice that: a camera sees more than a dot to a module.
const DPI: f32 = 600.0;

/// A printed page as light and dark.
pub struct Page {
    pub pages: usize,
    /// Millimetres.
    pub size: (f32, f32),
    pub width: usize,
    pub height: usize,
    pub light: Vec<u8>,
}

impl Page {
    /// Whether a dot is dark, by millimetres from the top left.
    pub fn dark_within(&self, left: f32, top: f32, right: f32, bottom: f32) -> usize {
        let dots = |mm: f32| (mm / 25.4 * DPI).max(0.0) as usize;
        let rows = dots(top)..dots(bottom).min(self.height);
        rows.map(|y| (dots(left)..dots(right).min(self.width)).filter(|x| self.light[y * self.width + x] < 128).count())
            .sum()
    }
}

/// Prints the page as a person would, in the sizes that the style sheet asks for.
pub async fn print(phone: &Phone, page: usize) -> Result<Page> {
    let printed = phone.cdp("Page.printToPDF", json!({ "preferCSSPageSize": true, "printBackground": false })).await?;
    let bytes = base64::engine::general_purpose::STANDARD.decode(printed["data"].as_str().context("a PDF")?)?;
    let pdf = Pdf::new(bytes).map_err(|problem| anyhow::anyhow!("{problem:?}"))?;
    let pages = pdf.pages();
    let shown = pages.get(page).context("a page")?;
    let scale = DPI / 72.0;
    let settings = PixmapSettings { x_scale: scale, y_scale: scale, bg_color: WHITE };
    let drawn =
        render(shown, &RenderCache::new(), &InterpreterSettings::default(), &RenderSettings::default(), &settings);
    let light = drawn.data_as_u8_slice().chunks_exact(4).map(|dot| dot[..3].iter().copied().max().unwrap_or(255));
    let (wide, high) = shown.render_dimensions();
    Ok(Page {
        pages: pages.len(),
        size: (wide / 72.0 * 25.4, high / 72.0 * 25.4),
        width: drawn.width().into(),
        height: drawn.height().into(),
        light: light.collect(),
    })
}
