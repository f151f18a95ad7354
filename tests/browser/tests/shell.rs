//! The shell: addresses, memory, settings, and what it says when something is missing.

use anyhow::Result;
use browser::{DESK, PHONE, Phone, Setup, phone_with};
use serde_json::json;
use xtask::server::Serving;

#[tokio::test]
async fn every_tool_has_an_address_and_back_works() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("prep/milk-wash").await?;
    phone.strip_says("345 ml milk").await?;
    phone.go_to("Batch", "Serves").await?;
    phone.strip_says("serves of 92 ml").await?;
    assert_eq!(phone.run("return document.title").await?, "Serves · Meniscus");
    phone.go_to("Service", "Measure").await?;
    phone.go_to("Service", "Scale").await?;
    phone.strip_says("18 serves").await?;
    phone.back().await?;
    phone.strip_says("51.8 ml").await?;
    phone.back().await?;
    phone.strip_says("serves of 92 ml").await?;
    phone.back().await?;
    phone.strip_says("345 ml milk").await?;
    // Loaded again with the sheet of tools open, its step in the history is gone.
    phone.go_to("Service", "Measure").await?;
    phone.tap_on("Batch").await?;
    phone.reload().await?;
    phone.until("history.state === null").await?;
    phone.back().await?;
    phone.strip_says("345 ml milk").await?;
    phone.open("cellar/rats").await?;
    phone.strip_says("51.8 ml").await?;
    assert!(phone.words().await?.contains("No page has that address."));
    assert_eq!(phone.run("return location.hash").await?, "#/service/measure");
    Ok(())
}

#[tokio::test]
async fn what_is_typed_survives_a_reload_and_the_end_of_the_app() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let profile = tempfile::tempdir()?;
    let setup = Setup { profile: Some(profile.path().to_path_buf()), ..Setup::default() };
    let phone = Phone::start(&serving.url(), &setup).await?;
    phone.open("prep/acid").await?;
    phone.press("1 2 5 ml").await?;
    phone.go_to("Service", "Measure").await?;
    phone.press("3 3 ml").await?;
    phone.reload().await?;
    assert_eq!(phone.value("amount").await?, "33 ml");
    phone.close().await?;
    let phone = Phone::start(&serving.url(), &setup).await?;
    phone.open("prep/acid").await?;
    assert_eq!(phone.value("juice").await?, "125 ml");
    phone.strip_says("5.7 g citric | in water to 125 ml").await?;
    Ok(())
}

#[tokio::test]
async fn settings_reach_every_tool() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("shelf").await?;
    phone.tap_on("Round, 30 ml").await?;
    phone.tap_on("1,5").await?;
    phone.tap_on("Paper").await?;
    phone.until("document.documentElement.dataset.theme === 'paper'").await?;
    phone.tap("#dash").await?;
    phone.press("1 ml Done").await?;
    phone.go_to("Service", "Measure").await?;
    phone.strip_says("52,5 ml").await?;
    phone.press("3 dash").await?;
    phone.strip_says("3 ml | Pour 3 dashes").await?;
    assert!(phone.run("return [...document.querySelectorAll('.key')].some(k => k.textContent === ',')").await? == true);
    // The look is there before the app is.
    phone.reload().await?;
    assert_eq!(phone.run("return document.documentElement.dataset.theme").await?, "paper");
    // The phone's own keyboard instead of the pad.
    phone.open("shelf").await?;
    phone.tap_on("Phone keyboard").await?;
    phone.go_to("Service", "Measure").await?;
    phone.tap("#amount").await?;
    assert!(phone.run("return !document.querySelector('.pad')").await? == true);
    assert_eq!(phone.run("return document.getElementById('amount').inputMode").await?, "text");
    Ok(())
}

#[tokio::test]
async fn a_jigger_added_pours_and_one_emptied_does_not() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("shelf").await?;
    phone.strip_says("6 jigger measures").await?;
    phone.tap("#brim_3").await?;
    phone.press("5 0 ml Done").await?;
    phone.strip_says("7 jigger measures").await?;
    phone.go_to("Service", "Measure").await?;
    phone.press("5 0 ml").await?;
    phone.strip_says("Pour 50 ml").await?;
    phone.go_to("Shelf", "Settings").await?;
    phone.type_in("brim_3", "").await?;
    phone.strip_says("6 jigger measures").await?;
    Ok(())
}

#[tokio::test]
async fn blocked_storage_is_said_and_the_tools_still_answer() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let before =
        "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError') } })";
    let setup = Setup { before: before.into(), ..Setup::default() };
    let phone = Phone::start(&serving.url(), &setup).await?;
    phone.open("service/measure").await?;
    assert!(phone.words().await?.contains("lets no page save here"));
    phone.press("2 oz").await?;
    phone.strip_says("59.1 ml").await?;
    // The book stands too, for as long as the page does.
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.tap_on("Orchard lantern").await?;
    phone.tap_on("Change").await?;
    phone.put("notes", "for tonight").await?;
    phone.open("specs").await?;
    phone.tap_on("Orchard lantern").await?;
    assert_eq!(phone.value("notes").await?, "for tonight");
    Ok(())
}

#[tokio::test]
async fn the_first_tap_selects_and_a_later_one_places_the_caret() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    // Under a finger Chromium itself keeps a selection through one more tap; a mouse it obeys at once.
    for (shape, more) in [(DESK, 1), (PHONE, 2)] {
        let phone = Phone::start(&serving.url(), &Setup { shape, ..Setup::default() }).await?;
        phone.open("prep/milk-wash").await?;
        let selected = "return (e => e.selectionEnd - e.selectionStart)(document.getElementById('ratio'))";
        phone.tap("#ratio").await?;
        assert_eq!(phone.run(selected).await?, 3, "{shape:?}");
        for _ in 0..more {
            // Slower than a double tap, which selects a word.
            tokio::time::sleep(std::time::Duration::from_millis(700)).await;
            phone.tap("#ratio").await?;
        }
        assert_eq!(phone.run(selected).await?, 0, "{shape:?}");
    }
    Ok(())
}

#[tokio::test]
async fn the_install_button_comes_when_the_browser_offers() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("shelf").await?;
    phone.run("dispatchEvent(new Event('beforeinstallprompt'))").await?;
    phone.until("[...document.querySelectorAll('.hint button')].some(b => b.textContent === 'Install')").await?;
    phone.run("dispatchEvent(new Event('appinstalled'))").await?;
    phone.until("!document.querySelector('.hint')").await?;
    Ok(())
}

#[tokio::test]
async fn two_tabs_do_not_overwrite_each_other() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("service/scale").await?;
    let first = phone.tab().await?;
    phone.new_tab().await?;
    phone.open("service/scale").await?;
    phone.type_in("spec", "60 ml gin").await?;
    phone.go_to_tab(&first).await?;
    phone.until("document.getElementById('spec').value === '60 ml gin'").await?;
    phone.tap("#serves").await?;
    phone.press("7").await?;
    phone.reload().await?;
    assert_eq!(phone.value("spec").await?, "60 ml gin");
    Ok(())
}

#[tokio::test]
async fn carrying_on_works_where_commas_show_decimals() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("shelf").await?;
    phone.tap_on("1,5").await?;
    phone.go_to("Service", "Measure").await?;
    phone.finish("Wash it with milk").await?;
    phone.strip_says("10,4 ml milk").await?;
    assert_eq!(phone.value("drink").await?, "51,75 ml");
    Ok(())
}

#[tokio::test]
async fn full_storage_is_said_and_unsaid() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let before = "window.__full = false; const set = Storage.prototype.setItem;
        Storage.prototype.setItem = function (k, v) { if (window.__full) throw new DOMException('full', 'QuotaExceededError'); return set.call(this, k, v) }";
    let setup = Setup { before: before.into(), ..Setup::default() };
    let phone = Phone::start(&serving.url(), &setup).await?;
    phone.open("service/measure").await?;
    phone.run("window.__full = true").await?;
    phone.press("2 oz").await?;
    assert!(phone.words().await?.contains("Not saved"));
    phone.strip_says("59.1 ml").await?;
    phone.run("window.__full = false").await?;
    phone.press("½").await?;
    assert!(!phone.words().await?.contains("Not saved"));
    Ok(())
}

/// Types where the caret stands, as a keyboard does.
async fn type_on(phone: &Phone, text: &str) -> Result<()> {
    phone.cdp("Input.insertText", serde_json::json!({ "text": text })).await?;
    Ok(())
}

/// Notes the field that is typed in, with its caret at a place.
async fn watch(phone: &Phone, name: &str, caret: usize) -> Result<()> {
    let script = format!(
        "__field = document.getElementById('{name}'); __field.focus(); __field.setSelectionRange({caret}, {caret})"
    );
    phone.run(&script).await?;
    Ok(())
}

/// Whether that very field is still typed in, its caret at a place.
async fn is_typed_in(phone: &Phone, name: &str, caret: usize) -> Result<()> {
    let stands = format!(
        "__field === document.getElementById('{name}') && __field === document.activeElement && __field.selectionStart === {caret} && __field.selectionEnd === {caret}"
    );
    phone.until(&stands).await
}

#[tokio::test]
async fn a_field_keeps_its_caret_while_others_come_and_go() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let before = "window.__full = false; const set = Storage.prototype.setItem;
        Storage.prototype.setItem = function (k, v) { if (window.__full) throw new DOMException('full', 'QuotaExceededError'); return set.call(this, k, v) }";
    let phone = Phone::start(&serving.url(), &Setup { before: before.into(), ..Setup::default() }).await?;
    // A notice above the field and a problem below it, both at once, there and gone again.
    phone.open("service/measure").await?;
    phone.type_in("amount", "1725 ml").await?;
    watch(&phone, "amount", 1).await?;
    phone.run("window.__full = true").await?;
    type_on(&phone, ",").await?;
    phone.until("document.querySelector('.bars .bar') && document.querySelector('main .field:first-child + #amount-problem')").await?;
    is_typed_in(&phone, "amount", 2).await?;
    phone.run("window.__full = false").await?;
    phone.press("⌫").await?;
    phone.until("!document.querySelector('.bar, .problem')").await?;
    is_typed_in(&phone, "amount", 1).await?;
    // The fields above it become others: they are not the same ones under another name.
    phone.open("prep/infuse").await?;
    phone.type_in("of", "rosmary").await?;
    phone.tap("#of").await?;
    watch(&phone, "of", 3).await?;
    phone.run("__other = document.getElementById('saline')").await?;
    phone.run("const r = document.querySelector('[value=tincture]'); r.checked = true; r.dispatchEvent(new Event('change', { bubbles: true }))").await?;
    phone
        .until("document.getElementById('tincture') && !document.getElementById('saline') && !__other.isConnected")
        .await?;
    type_on(&phone, "e").await?;
    is_typed_in(&phone, "of", 4).await?;
    assert_eq!(phone.value("of").await?, "rosemary");
    // Another screen has fields of its own, and none of them is typed in.
    phone.run("location.hash = '#/service/balance'").await?;
    phone
        .until("document.getElementById('spec') && !__field.isConnected && document.activeElement.id === 'head'")
        .await?;
    Ok(())
}

#[tokio::test]
async fn a_field_keeps_its_caret_while_another_tab_brings_what_stands_above_it() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.open("specs/spec?id=demo-1").await?;
    phone.tap_on("Change").await?;
    watch(&phone, "name", 7).await?;
    let other = "const k = 'meniscus/spec/demo-1'; localStorage[k + '~other'] = localStorage[k];
        dispatchEvent(new StorageEvent('storage', { key: k + '~other' }))";
    phone.run(other).await?;
    phone
        .until("document.querySelector('main .caution:first-child')?.textContent.includes('More than one version')")
        .await?;
    is_typed_in(&phone, "name", 7).await?;
    phone.run("const k = 'meniscus/spec/demo-1~other'; delete localStorage[k]; dispatchEvent(new StorageEvent('storage', { key: k }))").await?;
    phone.until("document.querySelector('main .field:first-child #name')").await?;
    is_typed_in(&phone, "name", 7).await
}

#[tokio::test]
async fn what_cannot_be_read_is_set_aside_and_said() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("service/measure").await?;
    for (number, bad) in ["{\"v\":1,\"data\":", "{\"v\":7,\"data\":{}}"].into_iter().enumerate() {
        phone.run(&format!("localStorage.setItem('meniscus/tool/measure', {bad:?})")).await?;
        phone.reload().await?;
        assert!(phone.words().await?.contains("could not be used"), "{bad}");
        phone.press("4 5 ml").await?;
        let aside =
            phone.run(&format!("return localStorage.getItem('meniscus/aside/tool/measure/{}')", number + 1)).await?;
        assert_eq!(aside, bad);
    }
    Ok(())
}

#[tokio::test]
async fn a_browser_without_webassembly_is_told() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let setup = Setup { before: "delete window.WebAssembly".into(), shape: PHONE, ..Setup::default() };
    let phone = Phone::start(&serving.url(), &setup).await?;
    // It never comes up, so the page is opened without waiting for that.
    phone.cdp("Page.navigate", serde_json::json!({ "url": serving.url() })).await?;
    phone
        .until("document.querySelector('[data-first=failed] > .strip')?.textContent.includes('no WebAssembly')")
        .await?;
    Ok(())
}

/// The veil over the page lies behind the sheet of tools, not on it.
#[tokio::test]
async fn the_sheet_of_tools_lies_on_its_own_ground() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("service/measure").await?;
    for look in ["light", "dark"] {
        phone.prefer("prefers-color-scheme", look).await?;
        phone.tap_on("Prep").await?;
        phone.until("document.querySelector('.places.open .sheet')").await?;
        // Between its first two tools.
        let place = phone.run("const r = document.querySelector('.sheet .tool').getBoundingClientRect(); return { x: r.right + 3, y: r.top + 20, width: 1, height: 1, scale: 1 }").await?;
        let picture = phone.cdp("Page.captureScreenshot", json!({ "clip": place })).await?;
        let seen = phone
            .run_async(&format!(
                "createImageBitmap(new Blob([Uint8Array.from(atob('{}'), (c) => c.charCodeAt(0))])).then((picture) => {{
                    const pen = new OffscreenCanvas(1, 1).getContext('2d');
                    pen.drawImage(picture, 0, 0);
                    done('rgb(' + [...pen.getImageData(0, 0, 1, 1).data].slice(0, 3).join(', ') + ')');
                }})",
                picture["data"].as_str().unwrap_or_default()
            ))
            .await?;
        let ground = phone.run("return getComputedStyle(document.querySelector('.sheet')).backgroundColor").await?;
        assert_eq!(seen, ground, "{look}");
        phone.tap_on("Close").await?;
    }
    Ok(())
}
