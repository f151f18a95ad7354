//! What the book survives: two tabs, writes that fail, a full store, a killed browser, hostile files.

use std::time::Duration;

use anyhow::{Result, ensure};
use browser::{Phone, Setup, phone_with};
use serde_json::json;
use xtask::server::Serving;

#[tokio::test]
async fn an_edit_in_one_tab_shows_in_the_other() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.tap_on("Teapot magistrate").await?;
    phone.strip_says("in the glass").await?;
    let first = phone.tab().await?;
    phone.new_tab().await?;
    phone.open("specs/spec").await?;
    phone.strip_says("in the glass").await?;
    phone.tap_on("Change").await?;
    phone.put("name", "Teapot magistrate, late").await?;
    phone.go_to_tab(&first).await?;
    phone.until("document.body.innerText.includes('Teapot magistrate, late')").await?;
    phone.tap_on("Change").await?;
    assert_eq!(phone.value("name").await?, "Teapot magistrate, late");
    Ok(())
}

#[tokio::test]
async fn a_conflicting_edit_is_kept_twice_and_chosen_from() -> Result<()> {
    // Neither tab hears of the other.
    let (_serving, phone) = phone_with(
        "for (const e of ['storage', 'visibilitychange']) addEventListener(e, e => e.stopImmediatePropagation(), true)",
    )
    .await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.tap_on("Teapot magistrate").await?;
    phone.strip_says("in the glass").await?;
    phone.tap_on("Change").await?;
    let first = phone.tab().await?;
    phone.new_tab().await?;
    phone.open("specs/spec").await?;
    phone.tap_on("Change").await?;
    phone.put("notes", "by the second").await?;
    phone.go_to_tab(&first).await?;
    phone.put("notes", "by the first").await?;
    phone.until("document.body.innerText.includes('Both are kept')").await?;
    phone.until("document.getElementById('notes')?.value === 'by the first'").await?;
    assert!(phone.words().await?.contains("More than one version of this spec"));
    let specs = phone.stored("spec/demo-3").await?;
    assert_eq!(specs.len(), 2, "{specs:?}");
    assert!(specs.iter().any(|text| text.contains("by the second")), "{specs:?}");
    phone.tap_on("Keep this one").await?;
    let specs = phone.stored("spec/demo-3").await?;
    ensure!(specs.len() == 1 && specs[0].contains("by the first"), "{specs:?}");
    phone.tap_on("Undo").await?;
    assert_eq!(phone.stored("spec/demo-3").await?.len(), 2);
    Ok(())
}

#[tokio::test]
async fn markup_in_every_field_is_text_and_runs_nothing() -> Result<()> {
    let (_serving, phone) = phone_with(browser::CATCH_FILES).await?;
    let evil = "<img src=x onerror=\"window.__wrong.push('ran')\"><script>window.__wrong.push('ran')</script>";
    let spec = json!({ "name": evil, "tags": evil, "notes": evil, "made": 1, "forms": [{ "name": evil, "lines": format!("45 ml {evil}\n{evil}"),
        "method": evil, "glass": evil, "holds": evil, "ice": evil, "garnish": evil, "steps": evil }, { "name": evil }] });
    let own = json!({ "name": evil, "like": evil, "strength": evil, "sugar": evil, "brix": evil, "acid": evil, "notes": evil, "made": 1 });
    let file = json!({ "kind": "meniscus backup", "version": 1, "at": 1,
        "specs": [{ "id": "evil", "data": spec }], "ingredients": [{ "id": "evil", "data": own }] });
    phone.open("specs/backup").await?;
    phone.run(&format!("hand({})", json!(file.to_string()))).await?;
    phone.strip_says("2 new").await?;
    phone.tap_on("Add 2 to my book").await?;
    for address in [
        "specs",
        "specs/spec?id=evil",
        "shelf/ingredients?id=evil",
        "specs/backup",
        "service/balance?spec=45+ml+%3Cimg+src%3Dx%3E",
    ] {
        phone.open(address).await?;
        phone.reload().await?;
        assert_eq!(
            phone.run("return document.querySelectorAll('main img, main script').length").await?,
            0,
            "{address}"
        );
    }
    assert_eq!(phone.wrongs().await?, Vec::<String>::new());
    Ok(())
}

/// Every so many writes throw, or are dropped. What the app does not say is unsaved, is saved.
#[tokio::test]
async fn with_writes_that_fail_nothing_acknowledged_is_lost() -> Result<()> {
    for (nth, fault) in [(3, "throw new DOMException('full', 'QuotaExceededError')"), (4, "return"), (7, "return")] {
        let before = format!(
            "window.__n = 0; window.__faults = 0; window.__fail = false; const set = Storage.prototype.setItem;
             Storage.prototype.setItem = function (k, v) {{ if (window.__fail && ++__n % {nth} === 0) {{ __faults++; {fault} }} return set.call(this, k, v) }}"
        );
        let (_serving, phone) = phone_with(&before).await?;
        phone.open("specs").await?;
        phone.tap_on("Try a demo").await?;
        phone.tap_on("Orchard lantern").await?;
        phone.strip_says("as swizzled 10 s").await?;
        phone.tap_on("Change").await?;
        phone.run("window.__fail = true").await?;
        for round in 0..12 {
            let typed = format!("note {round}");
            phone.put("notes", &typed).await?;
            assert_eq!(phone.value("notes").await?, typed, "what was typed stays on the screen");
            let says_unsaved = phone.words().await?.contains("Not saved");
            let is_saved = phone.stored("spec/demo-1").await?[0].contains(&format!("\"{typed}\""));
            ensure!(is_saved || says_unsaved, "every {nth} {fault}, round {round}: lost in silence");
        }
        // A write that failed is tried again at once; some did fail.
        ensure!(phone.run("return window.__faults").await?.as_u64() >= Some(1), "no write failed");
        // A deed on several keys is whole or not done at all, and an act not done says so.
        for _ in 0..4 {
            // A copy that was made opens with its fields.
            phone.tap_on("Done").await?;
            phone
                .until("[...document.querySelectorAll('button')].some(button => button.textContent === 'More')")
                .await?;
            phone.tap_on("More").await?;
            phone.tap_on("Duplicate").await?;
            let book = phone.stored("spec/").await?;
            ensure!(book.iter().all(|text| text.contains("\"sum\"")), "{book:?}");
        }
        phone.run("window.__fail = false").await?;
        phone.reload().await?;
        let unread = phone.words().await?;
        ensure!(!unread.contains("could not be opened"), "{unread}");
    }
    Ok(())
}

#[tokio::test]
async fn a_browser_killed_in_the_middle_opens_with_what_was_written() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let profile = tempfile::tempdir()?;
    let setup = || Setup { profile: Some(profile.path().to_path_buf()), ..Setup::default() };
    let phone = Phone::start(&serving.url(), &setup()).await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.tap_on("Orchard lantern").await?;
    phone.tap_on("Change").await?;
    phone.type_in("notes", "written before the lights went out").await?;
    // Chromium itself writes local storage to disk every five seconds.
    tokio::time::sleep(Duration::from_secs(7)).await;
    phone.tap_on("Done").await?;
    phone.tap_on("More").await?;
    phone.tap_on("Duplicate").await?;
    phone.type_in("name", "half").await?;
    // SIGKILL to the whole group.
    drop(phone);
    let phone = Phone::start(&serving.url(), &setup()).await?;
    phone.open("specs").await?;
    phone.strip_says("specs").await?;
    assert!(!phone.words().await?.contains("could not be opened"));
    phone.open("specs/spec?id=demo-1").await?;
    phone.tap_on("Change").await?;
    assert_eq!(phone.value("notes").await?, "written before the lights went out");
    Ok(())
}

/// The browser's own limit, reached for real.
#[tokio::test]
async fn a_full_store_says_so_keeps_what_was_typed_and_recovers() -> Result<()> {
    let (_serving, phone) = phone_with(browser::CATCH_FILES).await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.tap_on("Orchard lantern").await?;
    phone.strip_says("as swizzled 10 s").await?;
    phone.tap_on("Change").await?;
    phone.run("let n = 0; for (let size = 1e6; size >= 1; size = Math.floor(size / 2)) { try { for (;;) localStorage['other/' + n++] = 'x'.repeat(size) } catch {} }").await?;
    let long = "a long note ".repeat(40);
    phone.put("notes", &long).await?;
    phone.until("document.body.innerText.includes('Not saved')").await?;
    assert_eq!(phone.value("notes").await?, long);
    // It can be taken home.
    phone.tap_on("Save as a file").await?;
    phone.until("window.__given.length === 1").await?;
    assert!(
        phone
            .run("return window.__given[0]")
            .await?
            .as_str()
            .is_some_and(|text| text.contains("a long note a long note"))
    );
    phone.tap_on("Done").await?;
    phone.tap_on("More").await?;
    phone.tap_on("Duplicate").await?;
    phone.until("document.body.innerText.includes('Not saved')").await?;
    phone.tap_on("Done").await?;
    phone.tap_on("Change").await?;
    phone
        .run("for (const key of Object.keys(localStorage)) if (key.startsWith('other/')) localStorage.removeItem(key)")
        .await?;
    phone.put("notes", &format!("{long}!")).await?;
    phone.until("!document.body.innerText.includes('Not saved')").await?;
    phone.reload().await?;
    phone.tap_on("Change").await?;
    assert_eq!(phone.value("notes").await?, format!("{long}!"));
    Ok(())
}

/// Another tab that hears of every write does not take back what is being done.
#[tokio::test]
async fn deeds_are_done_whole_beside_another_tab() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("shelf/ingredients").await?;
    let first = phone.tab().await?;
    phone.new_tab().await?;
    phone.open("specs").await?;
    phone.go_to_tab(&first).await?;
    for made in 1..=15 {
        phone.tap_on("New ingredient").await?;
        let there = phone.stored("ingredient/").await?;
        ensure!(there.len() == made, "{} of {made}", there.len());
    }
    phone.open("specs/backup").await?;
    phone.tap_on("Put the demo in").await?;
    assert_eq!(phone.stored("spec/").await?.len(), 3);
    Ok(())
}

/// Each tab has its own record open, whatever another opens.
#[tokio::test]
async fn a_tab_types_into_the_record_it_has_open() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.open("specs/spec?id=demo-1").await?;
    phone.tap_on("washed").await?;
    phone.tap_on("Change").await?;
    let first = phone.tab().await?;
    phone.new_tab().await?;
    phone.open("specs/spec?id=demo-2").await?;
    phone.until("document.body.innerText.includes('hedge syrup')").await?;
    phone.go_to_tab(&first).await?;
    phone.put("garnish", "a fan of pear").await?;
    phone.strip_says("through the milk").await?;
    ensure!(
        phone.stored("spec/demo-1").await?[0].contains("\"washed\"")
            && phone.stored("spec/demo-1").await?[0].contains("a fan of pear")
    );
    ensure!(!phone.stored("spec/demo-2").await?[0].contains("a fan of pear"));
    phone.reload().await?;
    phone.tap_on("washed").await?;
    phone.until("document.body.innerText.includes('a fan of pear')").await?;
    Ok(())
}

/// What could not be saved stays on the screen and says so, whatever else is tapped, until it is saved.
#[tokio::test]
async fn unsaved_text_outlives_other_saves_and_deeds() -> Result<()> {
    let before = "window.__full = false; const set = Storage.prototype.setItem;
        Storage.prototype.setItem = function (k, v) { if (window.__full && k.startsWith('meniscus/spec/')) throw new DOMException('full', 'QuotaExceededError'); return set.call(this, k, v) }";
    let (_serving, phone) = phone_with(before).await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.open("specs/spec?id=demo-1").await?;
    phone.tap_on("Change").await?;
    phone.run("window.__full = true").await?;
    phone.put("notes", "typed while it was full").await?;
    phone.until("document.body.innerText.includes('Not saved')").await?;
    phone.tap_on("stirred").await?;
    phone.tap_on("Done").await?;
    phone.tap_on("More").await?;
    phone.tap_on("Duplicate").await?;
    phone.tap_on("Done").await?;
    phone.tap_on("quick").await?;
    ensure!(phone.words().await?.contains("Not saved"), "it is still said");
    ensure!(phone.words().await?.contains("typed while it was full"));
    assert_eq!(phone.stored("spec/").await?.len(), 3, "no deed meanwhile");
    phone.run("window.__full = false").await?;
    phone.tap_on("More").await?;
    phone.tap_on("Duplicate").await?;
    phone.until("!document.body.innerText.includes('Not saved')").await?;
    ensure!(phone.stored("spec/demo-1").await?[0].contains("typed while it was full"));
    assert_eq!(phone.stored("spec/").await?.len(), 4);
    Ok(())
}

/// A browser that stops letting the page save: that is said, nothing stands in unseen, and it is saved when it may be.
#[tokio::test]
async fn storage_that_stops_is_said_until_it_goes_on() -> Result<()> {
    let before = "const store = localStorage; window.__stopped = false;
        Object.defineProperty(window, 'localStorage', { get() { if (window.__stopped) throw new DOMException('no', 'SecurityError'); return store } });
        window.__store = store";
    let (_serving, phone) = phone_with(before).await?;
    phone.open("service/measure").await?;
    phone.put("amount", "2 oz").await?;
    phone.run("window.__stopped = true").await?;
    phone.put("amount", "3 oz").await?;
    phone.until("document.body.innerText.includes('has stopped letting this page save')").await?;
    phone.open("shelf").await?;
    phone.open("service/measure").await?;
    assert_eq!(phone.value("amount").await?, "3 oz");
    ensure!(
        phone.run("return __store['meniscus/tool/measure']").await?.as_str().is_some_and(|text| text.contains("2 oz"))
    );
    phone.run("window.__stopped = false").await?;
    phone
        .until("__store['meniscus/tool/measure'].includes('3 oz') && !document.body.innerText.includes('Not saved')")
        .await
}
