//! Paper: what is printed of a run sheet.

use crate::printed::print;
use anyhow::{Result, ensure};
use browser::phone_with;

#[tokio::test]
async fn a_run_of_five_preps_is_one_a4() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    for prep in ["fruit", "clear", "cordial", "infuse", "milk-wash"] {
        phone.open(&format!("prep/{prep}")).await?;
        phone.finish("To the run sheet").await?;
    }
    phone.open("batch/run").await?;
    phone.until("document.querySelectorAll('.event').length === 12").await?;
    phone.put("ready", "2030-06-14T18:00").await?;
    phone.until("document.querySelector('.event .at').textContent").await?;
    let made = phone.run("return document.querySelectorAll('.run-head .tape span')[1].textContent").await?;
    let made = made.as_str().unwrap_or_default().to_owned();
    // In all of its rows there is a box to tick, and lines to sign at.
    let sheet = print(&phone, 0).await?;
    let (wide, high) = sheet.size;
    ensure!((wide - 210.0).abs() < 0.4 && (high - 297.0).abs() < 0.4, "{wide} by {high} mm");
    ensure!(sheet.pages == 1, "{} pages for {made}", sheet.pages);
    let inked = |left, right| sheet.dark_within(left, 40.0, right, 120.0);
    ensure!(inked(10.0, 16.0) > 5_000, "no boxes: {}", inked(10.0, 16.0));
    ensure!(inked(33.0, 90.0) > 20_000, "nothing to do: {}", inked(33.0, 90.0));
    // Nothing runs off the edges.
    for (left, top, right, bottom) in
        [(0.0, 0.0, 210.0, 9.0), (0.0, 288.0, 210.0, 297.0), (0.0, 0.0, 9.0, 297.0), (201.0, 0.0, 210.0, 297.0)]
    {
        ensure!(sheet.dark_within(left, top, right, bottom) == 0, "an edge at {left} {top}");
    }
    assert_eq!(phone.wrongs().await?, Vec::<String>::new());
    Ok(())
}
