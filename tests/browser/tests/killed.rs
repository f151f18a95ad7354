//! The browser is killed outright: what was typed a moment before is there. It writes local storage to disk five seconds
//! late, and after a busy minute much later.

use std::path::Path;
use std::time::Duration;

use anyhow::{Result, ensure};
use browser::{Phone, Setup};
use xtask::server::Serving;

async fn phone_of(serving: &Serving, profile: &Path, before: &str) -> Result<Phone> {
    let setup = Setup { profile: Some(profile.into()), before: before.into(), ..Setup::default() };
    Phone::start(&serving.url(), &setup).await
}

/// Where something is typed: the screen, the field, and whether it is of the demo's book.
const TYPED: [(&str, &str, &str); 3] =
    [("service/measure", "amount", "33 ml"), ("shelf", "dash", "0.75 ml"), ("specs/spec?id=demo-1", "notes", "late")];

/// A spec is read first: its fields come with Change.
async fn fields(phone: &Phone, screen: &str) -> Result<()> {
    if screen.starts_with("specs/spec") { phone.tap_on("Change").await } else { Ok(()) }
}

#[tokio::test]
async fn what_was_typed_half_a_second_before_is_kept() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let (mut held, mut tried) = (0, 0);
    for milliseconds in [500, 1000, 6000] {
        for (screen, field, text) in TYPED {
            let profile = tempfile::tempdir()?;
            let phone = phone_of(&serving, profile.path(), "").await?;
            phone.open("specs").await?;
            phone.tap_on("Try a demo").await?;
            phone.open(screen).await?;
            fields(&phone, screen).await?;
            phone.type_in(field, text).await?;
            tokio::time::sleep(Duration::from_millis(milliseconds)).await;
            // SIGKILL to the whole group.
            drop(phone);
            let phone = phone_of(&serving, profile.path(), "").await?;
            phone.open(screen).await?;
            fields(&phone, screen).await?;
            tried += 1;
            let found = phone.value(field).await.unwrap_or_default();
            if found == text {
                held += 1;
            } else {
                println!("{screen} after {milliseconds} ms: {found:?}");
            }
            assert_eq!(phone.wrongs().await?, Vec::<String>::new());
        }
    }
    println!("killed after typing: kept in {held} of {tried}");
    assert_eq!(held, tried);
    Ok(())
}

/// Deeds come back whole too: what was removed stays removed, and what Undo brought back is there.
#[tokio::test]
async fn what_was_removed_stays_removed() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let profile = tempfile::tempdir()?;
    let phone = phone_of(&serving, profile.path(), "").await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    // On disk, by the browser's own measure.
    tokio::time::sleep(Duration::from_secs(7)).await;
    phone.open("specs/spec?id=demo-1").await?;
    phone.tap_on("More").await?;
    phone.tap_on("Delete").await?;
    let left = phone.stored("").await?;
    ensure!(!left.iter().any(|kept| kept.starts_with("spec/demo-1=")), "{left:?}");
    tokio::time::sleep(Duration::from_millis(500)).await;
    drop(phone);
    let phone = phone_of(&serving, profile.path(), "").await?;
    phone.open("specs").await?;
    assert_eq!(phone.stored("").await?, left);
    ensure!(!phone.words().await?.contains("could not be opened"));
    phone.tap_on("Undo").await?;
    let back = phone.stored("").await?;
    ensure!(back.iter().any(|kept| kept.starts_with("spec/demo-1=")), "{back:?}");
    // Killed again before a browser writes: the start before has put back nothing that is lost now.
    tokio::time::sleep(Duration::from_millis(500)).await;
    drop(phone);
    let phone = phone_of(&serving, profile.path(), "").await?;
    phone.open("specs").await?;
    assert_eq!(phone.stored("").await?, back);
    Ok(())
}

/// Chromium writes local storage at most once a minute when it is busy: five seconds are no bound.
#[tokio::test]
async fn what_was_typed_in_a_busy_minute_is_kept() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let profile = tempfile::tempdir()?;
    let phone = phone_of(&serving, profile.path(), "").await?;
    phone.open("service/measure").await?;
    for second in 1..=16 {
        phone.type_in("amount", &format!("{second} ml")).await?;
        tokio::time::sleep(Duration::from_secs(1)).await;
    }
    drop(phone);
    let phone = phone_of(&serving, profile.path(), "").await?;
    phone.open("service/measure").await?;
    assert_eq!(phone.value("amount").await?, "16 ml");
    Ok(())
}
