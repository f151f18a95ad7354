//! The browser is killed outright: what was typed a moment before is there. It writes local storage to disk five seconds
//! late, and after a busy minute much later.

use std::path::Path;
use std::time::Duration;

use anyhow::{Result, ensure};
use browser::{Phone, Setup, phone_with};
use xtask::server::Serving;

async fn phone_of(serving: &Serving, profile: &Path, before: &str) -> Result<Phone> {
    let setup = Setup { profile: Some(profile.into()), before: before.into(), ..Setup::default() };
    Phone::start(&serving.url(), &setup).await
}

/// Where something is typed: the screen, the field, and whether it is of the demo's book.
const TYPED: [(&str, &str, &str); 3] =
    [("service/measure", "amount", "33 ml"), ("shelf", "dash", "0.75 ml"), ("specs/spec?id=demo-1", "notes", "late")];

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
            phone.type_in(field, text).await?;
            tokio::time::sleep(Duration::from_millis(milliseconds)).await;
            // SIGKILL to the whole group.
            drop(phone);
            let phone = phone_of(&serving, profile.path(), "").await?;
            phone.open(screen).await?;
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

/// What another Meniscus wrote since, that mirrors nothing, is not written over, nor is what cannot be read.
#[tokio::test]
async fn an_older_write_never_goes_over_a_later_one() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("service/measure").await?;
    phone.type_in("amount", "33 ml").await?;
    // As a browser that was killed leaves it, and then an older Meniscus.
    let rewind =
        |text: &str| format!("localStorage['meniscus-writes'] = 0; localStorage['meniscus/tool/measure'] = {text}");
    let old = "localStorage['meniscus/tool/measure'].replace('33', '22')";
    let mirrored = "indexedDB.open('meniscus').onsuccess = (e) => e.target.result.transaction('writes').objectStore('writes').get('meniscus/tool/measure').onsuccess = (e) => done(e.target.result?.text ?? '')";
    let mut text = serde_json::Value::Null;
    while !text.as_str().is_some_and(|text| text.contains("33 ml")) {
        text = phone.run_async(mirrored).await?;
    }
    phone.run(&rewind(&format!("{old}.replace(/\"rev\":\\d+/, '\"rev\":0')"))).await?;
    phone.reload().await?;
    assert_eq!(phone.value("amount").await?, "33 ml", "the older one is written over");
    let later =
        r#"JSON.stringify({ v: 1, rev: 9999, at: Date.now() + 1, data: { now: { amount: '44 ml' }, before: [] } })"#;
    phone.run(&rewind(later)).await?;
    phone.reload().await?;
    assert_eq!(phone.value("amount").await?, "44 ml", "the later one stays");
    Ok(())
}

#[tokio::test]
async fn a_browser_without_a_mirror_works_as_ever() -> Result<()> {
    let absent = "Object.defineProperty(window, 'indexedDB', { value: undefined })";
    let blocked =
        "Object.defineProperty(window, 'indexedDB', { get() { throw new DOMException('no', 'SecurityError') } })";
    let refused = "IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError') }";
    let hangs = "IDBFactory.prototype.open = () => ({})";
    let full = "IDBObjectStore.prototype.put = function () { this.transaction.abort() }";
    for before in [absent, blocked, refused, hangs, full] {
        let (_serving, phone) = phone_with(before).await?;
        phone.open("service/measure").await?;
        phone.press("3 3 ml").await?;
        phone.reload().await?;
        assert_eq!(phone.value("amount").await?, "33 ml", "{before}");
        assert_eq!(phone.wrongs().await?, Vec::<String>::new(), "{before}");
    }
    Ok(())
}
