//! Labels: what is printed, pixel by pixel, and the picture.

use crate::printed::print;
use anyhow::{Result, ensure};
use browser::{Phone, phone_with};
use serde_json::json;

async fn label_of_the_demo(phone: &Phone) -> Result<()> {
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.tap_on("Orchard lantern").await?;
    phone.strip_says("as swizzled 10 s").await?;
    phone.tap_on("stirred").await?;
    phone.finish("Label it").await?;
    phone.strip_says("use by | Orchard lantern, stirred. Contains").await?;
    phone.until("document.querySelector('.label path[transform]')").await
}

fn near(found: f32, expected: f32) -> bool {
    // Chromium rounds pages up to whole CSS pixels.
    (found - expected).abs() < 0.4
}

#[tokio::test]
async fn tape_is_printed_to_size_with_a_code_that_reads() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    label_of_the_demo(&phone).await?;
    let tape = print(&phone, 0).await?;
    ensure!(
        tape.pages == 1 && near(tape.size.0, 50.0) && near(tape.size.1, 25.0),
        "{} pages of {:?}",
        tape.pages,
        tape.size
    );
    // Letters on the left, the code on the right, and nothing within a millimetre of the edge.
    assert!(tape.dark_within(2.0, 2.0, 26.0, 23.0) > 3_000);
    assert!(tape.dark_within(26.5, 1.5, 48.5, 23.5) > 40_000);
    for (left, top, right, bottom) in
        [(0.0, 0.0, 50.0, 1.0), (0.0, 24.0, 50.0, 26.0), (0.0, 0.0, 1.0, 25.0), (49.0, 0.0, 51.0, 25.0)]
    {
        assert_eq!(tape.dark_within(left, top, right, bottom), 0, "an edge at {left} {top}");
    }
    // Between letters and code there is a gap: nothing runs into the other.
    assert_eq!(tape.dark_within(25.5, 0.0, 26.4, 25.0), 0);
    let mut image =
        rqrr::PreparedImage::prepare_from_greyscale(tape.width, tape.height, |x, y| tape.light[y * tape.width + x]);
    let codes = image.detect_grids();
    ensure!(codes.len() == 1, "{} codes", codes.len());
    let (_, link) = codes[0].decode()?;
    ensure!(link.starts_with(&phone.url) && link.contains("#/specs/backup?packed="), "{link}");
    // The link is the spec: opened elsewhere it can be read before it is taken.
    phone.run(&format!("location.hash = {}", json!(link.split_once('#').map_or("", |(_, hash)| hash)))).await?;
    phone.strip_says("117 ml in the glass").await?;
    ensure!(phone.words().await?.contains("Not yours yet"));
    assert_eq!(phone.wrongs().await?, Vec::<String>::new());
    Ok(())
}

#[tokio::test]
async fn copies_are_printed_on_tape_one_a_page_and_on_sheets_in_rows() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    label_of_the_demo(&phone).await?;
    phone.put("copies", "3").await?;
    phone.until("document.querySelectorAll('.label').length === 3").await?;
    let last = print(&phone, 2).await?;
    assert_eq!(last.pages, 3);
    assert!(last.dark_within(2.0, 2.0, 48.0, 23.0) > 10_000);
    for (paper, copies, (wide, high), (across, down), (left, top), gap) in [
        ("A4, 24 to a sheet", 24, (210.0, 297.0), (70.0, 37.0), (0.0, 0.0), 0.0),
        ("Letter, 30 to a sheet", 30, (215.9, 279.4), (66.675, 25.4), (4.7625, 12.7), 3.175),
    ] {
        phone.tap_on(paper).await?;
        phone.put("copies", &copies.to_string()).await?;
        phone.until(&format!("document.querySelectorAll('.label').length === {copies}")).await?;
        let sheet = print(&phone, 0).await?;
        ensure!(
            sheet.pages == 1 && near(sheet.size.0, wide) && near(sheet.size.1, high),
            "{paper}: {} pages of {:?}",
            sheet.pages,
            sheet.size
        );
        let mut inked = Vec::new();
        for at in 0..copies {
            let (x, y) = (left + (at % 3) as f32 * (across + gap), top + (at / 3) as f32 * down);
            // Each label keeps clear of the next.
            assert_eq!(sheet.dark_within(x - 0.8, y, x + 0.8, y + down), 0, "{paper}, label {at}");
            assert_eq!(sheet.dark_within(x, y - 0.8, x + across, y + 0.8), 0, "{paper}, label {at}");
            inked.push(sheet.dark_within(x + 1.0, y + 1.0, x + across - 1.0, y + down - 1.0));
        }
        let (least, most) = (inked.iter().min().copied().unwrap_or(0), inked.iter().max().copied().unwrap_or(0));
        assert!(least > 10_000 && most - least < most / 20, "{paper}: {least} to {most}");
    }
    Ok(())
}

#[tokio::test]
async fn the_picture_is_the_label_in_600_dots_to_the_inch() -> Result<()> {
    let catch = "window.__pictures = []; URL.createObjectURL = (b) => { __pictures.push(b); return '#' };
        navigator.canShare = undefined; HTMLAnchorElement.prototype.click = function () {}";
    let (_serving, phone) = phone_with(catch).await?;
    label_of_the_demo(&phone).await?;
    phone.tap_on("Share as a picture").await?;
    phone.until("__pictures.length === 1").await?;
    let script = "createImageBitmap(__pictures[0]).then((picture) => {
        const canvas = document.createElement('canvas'); canvas.width = picture.width; canvas.height = picture.height;
        const pen = canvas.getContext('2d'); pen.drawImage(picture, 0, 0);
        const dots = pen.getImageData(0, 0, picture.width, picture.height).data;
        const dark = (left, top, right, bottom) => { let n = 0;
          for (let y = top * 24; y < bottom * 24; y++) for (let x = left * 24; x < right * 24; x++) n += dots[4 * (y * picture.width + x)] < 128; return n };
        done({ type: __pictures[0].type, size: [picture.width, picture.height], text: dark(2, 2, 26, 23), code: dark(27, 2, 48, 23), edge: dark(0, 0, 50, 1) }) })";
    let picture = phone.run_async(script).await?;
    assert_eq!((picture["type"].as_str(), picture["size"].clone()), (Some("image/png"), json!([1200, 600])));
    let count = |what: &str| picture[what].as_u64().unwrap_or_default();
    assert!(count("text") > 10_000 && count("code") > 50_000 && count("edge") == 0, "{picture}");
    Ok(())
}
