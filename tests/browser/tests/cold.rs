//! Cold, on a phone: chill, ice, the glass, a night's batch, the freezer and bubbles, with real taps.

use anyhow::{Result, ensure};
use browser::{NARROW, Phone, Setup, phone_with};
use xtask::server::Serving;

/// A phone with the demo in its book.
async fn with_demo() -> Result<(Serving, Phone)> {
    let (serving, phone) = phone_with("").await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.strip_says("3 specs").await?;
    Ok((serving, phone))
}

#[tokio::test]
async fn a_drink_is_chilled_and_one_that_was_weighed_counts_from_then_on() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("service/chill").await?;
    phone.strip_says("−5.0 °C").await?;
    phone.strip_says("+35 ml water, 19.1 % vol").await?;
    ensure!(phone.run("return !document.querySelector('.pad')").await? == true, "a pad nobody asked for");
    // The curve, in words and within the page, with its dots.
    phone.until("document.querySelector('svg.curve')?.getAttribute('aria-label')?.includes('30 s')").await?;
    phone.until("document.documentElement.scrollWidth <= innerWidth").await?;
    phone.type_in("time", "0").await?;
    phone.until("document.body.innerText.includes('Type how long, like 30 s.')").await?;
    phone.type_in("time", "1:30").await?;
    phone.until("document.body.innerText.includes('About 180 turns')").await?;
    phone.type_in("time", "30").await?;
    for (cold, says) in [("4", "Ice is at 0 °C or below."), ("0", "")] {
        phone.type_in("ice_at", cold).await?;
        phone.until(&format!("document.body.innerText.includes('{says}')")).await?;
    }
    phone.strip_says("−5.0 °C").await?;
    phone.tap_on("Weigh mine").await?;
    phone.type_in("went_in", "90 ml").await?;
    phone.type_in("came_out", "180 ml").await?;
    phone.until("document.body.innerText.includes('That is more water than so much heat melts.')").await?;
    phone.type_in("came_out", "120 ml").await?;
    phone.strip_says("+28 ml water, 20.3 % vol").await?;
    phone.tap_on("Keep as my own, stirred").await?;
    phone.until("document.body.innerText.includes('Kept in Shelf, under your own chill.')").await?;
    phone.reload().await?;
    phone.strip_says("+28 ml water, 20.3 % vol").await?;
    Ok(())
}

#[tokio::test]
async fn ice_for_a_night_in_pieces_and_clear() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("service/ice").await?;
    phone.strip_says("15.1 kg").await?;
    phone.strip_says("4 bags of 5 kg").await?;
    phone.tap_on("Pieces").await?;
    phone.strip_says("out of a block of").await?;
    phone.tap_on("Clear ice").await?;
    phone.strip_says("h to freeze").await?;
    phone.type_in("freezer", "4").await?;
    phone.until("document.body.innerText.includes('at 0 °C and above nothing freezes')").await?;
    phone.tap_on("Melt").await?;
    phone.strip_says("g of water").await?;
    phone.tap_on("For a night").await?;
    phone.type_in("serves", "60").await?;
    phone.strip_says("kg").await?;
    Ok(())
}

#[tokio::test]
async fn a_drink_is_set_against_its_glass() -> Result<()> {
    let (_serving, phone) = with_demo().await?;
    phone.open("service/glass").await?;
    phone.strip_says("It fits: 15 mm to the brim").await?;
    phone.type_in("drink", "158 ml").await?;
    phone.strip_says("Over by 18 ml").await?;
    phone.strip_says("Make it 0.83 of it").await?;
    phone.type_in("drink", "112 ml").await?;
    phone.tap_on("coupe, 180 ml").await?;
    phone.strip_says("68 ml to spare").await?;
    phone.tap_on("cubes").await?;
    phone.until("document.querySelector('main .ice')").await?;
    // A card whose glass is too small says so, once, and leads here.
    phone.open("specs/spec?id=demo-1&at=1").await?;
    phone.tap_on("Change").await?;
    phone.type_in("holds", "90 ml").await?;
    phone.finish("Done").await?;
    phone.until("document.body.innerText.includes('117 ml in a glass of 90 ml: 27 ml too much.')").await?;
    phone.tap_on("Does it fit?").await?;
    phone.strip_says("Over by 27 ml").await?;
    Ok(())
}

#[tokio::test]
async fn a_spec_is_bottled_for_a_night() -> Result<()> {
    let (_serving, phone) = with_demo().await?;
    phone.open("specs/spec?id=demo-1&at=1").await?;
    phone.strip_says("about 19 % vol, as stirred 30 s").await?;
    phone.tap_on("Batch it").await?;
    phone.strip_says("30 serves, pour 117 ml").await?;
    phone.until("document.body.innerText.includes('Slush at −18 °C: it begins to freeze near −')").await?;
    // Two lines are in; the rest of the app is looked at, and they still are.
    let tick = "[...document.querySelectorAll('.pours button, .pours input')]";
    phone.until(&format!("{tick}.length >= 5")).await?;
    for at in 0..2 {
        phone.run(&format!("{tick}[{at}].click()")).await?;
    }
    let ticked = "document.querySelectorAll('.pours [aria-pressed=true], .pours [aria-checked=true], .pours input:checked').length";
    phone.until(&format!("{ticked} === 2")).await?;
    phone.open("service/measure").await?;
    phone.open("batch/bottle").await?;
    phone.until(&format!("{ticked} === 2")).await?;
    phone.tap_on("What I have").await?;
    phone.strip_says("serves").await?;
    Ok(())
}

#[tokio::test]
async fn bubbles_by_pressure_and_back() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("batch/bubbles").await?;
    phone.strip_says("15 psi on the gauge, at 4 °C").await?;
    phone.until("document.body.innerText.includes('never in glass not made for it')").await?;
    phone.tap_on("Lively, 4").await?;
    phone.strip_says("25 psi on the gauge, at 4 °C").await?;
    phone.tap_on("psi").await?;
    phone.strip_says("25 psi").await?;
    phone.type_in("at", "-2").await?;
    phone.until("document.body.innerText.includes('Known from −1 to 40 °C.')").await?;
    Ok(())
}

/// The new screens on the narrowest phone: nothing is wider than the page.
#[tokio::test]
async fn all_of_it_fits_the_narrowest_phone() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup { shape: NARROW, ..Setup::default() }).await?;
    for at in ["service/chill", "service/ice", "service/glass", "service/aim", "batch/bottle", "batch/bubbles"] {
        phone.open(at).await?;
        phone.until("document.querySelector('.strip')?.textContent").await?;
        phone.until("document.documentElement.scrollWidth <= innerWidth").await?;
    }
    Ok(())
}
