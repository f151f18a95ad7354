//! What is put back at a start, and what is not.

use anyhow::{Result, ensure};
use browser::{Phone, phone_with};

/// Does something with the mirrored writes.
const MIRROR: &str = "const mirror = (then, mode) => indexedDB.open('meniscus').onsuccess = (e) => then(e.target.result.transaction('writes', mode ?? 'readonly').objectStore('writes'));";

/// Waits until the form of Measure is mirrored with this text in it.
async fn is_mirrored(phone: &Phone, text: &str) -> Result<()> {
    let script = format!(
        "{MIRROR} (function look() {{ mirror((s) => s.get('meniscus/tool/measure').onsuccess = (e) => e.target.result?.text.includes('{text}') ? done() : setTimeout(look, 20)) }})()"
    );
    phone.run_async(&script).await.map(|_| ())
}

/// Leaves local storage as a browser that was killed does, with this in the form of Measure.
fn rewind(text: &str) -> String {
    format!("localStorage['meniscus-writes'] = 0; localStorage['meniscus/tool/measure'] = {text}")
}

/// What was there before.
const OLD: &str = "localStorage['meniscus/tool/measure'].replace('33', '22').replace(/\"rev\":\\d+/, '\"rev\":0')";

/// What another Meniscus wrote since, that mirrors nothing, is not written over, nor is what cannot be read.
#[tokio::test]
async fn an_older_write_never_goes_over_a_later_one() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("service/measure").await?;
    phone.type_in("amount", "33 ml").await?;
    is_mirrored(&phone, "33 ml").await?;
    phone.run(&rewind(OLD)).await?;
    phone.reload().await?;
    assert_eq!(phone.value("amount").await?, "33 ml", "the older one is written over");
    let later =
        r#"JSON.stringify({ v: 1, rev: 9999, at: Date.now() + 1, data: { now: { amount: '44 ml' }, before: [] } })"#;
    phone.run(&rewind(later)).await?;
    phone.reload().await?;
    assert_eq!(phone.value("amount").await?, "44 ml", "the later one stays");
    Ok(())
}

/// However long the mirror takes, within reason: the app reads nothing before.
#[tokio::test]
async fn the_app_waits_for_what_was_lost() -> Result<()> {
    // Something else is in the mirror at every start but the first.
    let busy = format!(
        "{MIRROR} localStorage['meniscus-writes'] === '0' && mirror((s) => {{ const start = Date.now(); (function again() {{ Date.now() - start < 1500 ? s.get('').onsuccess = again : window.__free = true }})() }}, 'readwrite')"
    );
    let (_serving, phone) = phone_with(&busy).await?;
    phone.open("service/measure").await?;
    phone.type_in("amount", "33 ml").await?;
    is_mirrored(&phone, "33 ml").await?;
    phone.run(&rewind(OLD)).await?;
    phone.reload().await?;
    ensure!(phone.run("return window.__free").await? == true, "it did not wait");
    assert_eq!(phone.value("amount").await?, "33 ml");
    Ok(())
}

/// What was mirrored a day ago is on disk, if the store lacks nothing.
#[tokio::test]
async fn the_mirror_is_trimmed() -> Result<()> {
    let at_once = "const wait = setTimeout; window.setTimeout = (then, after, ...rest) => wait(then, after === 10000 ? 0 : after, ...rest)";
    let (_serving, phone) = phone_with(at_once).await?;
    phone.open("service/measure").await?;
    phone.type_in("amount", "33 ml").await?;
    is_mirrored(&phone, "33 ml").await?;
    let put = "const at = Date.now() - 90000000; const deal = (s) => { s.put({ key: 'meniscus/old', text: '1', count: 1, at }); s.transaction.oncomplete = done };";
    phone.run_async(&format!("{MIRROR} {put} mirror(deal, 'readwrite')")).await?;
    phone.reload().await?;
    let keys = format!("{MIRROR} mirror((s) => s.getAllKeys().onsuccess = (e) => done(e.target.result))");
    let started = std::time::Instant::now();
    let mut left = phone.run_async(&keys).await?;
    while left.to_string().contains("old") {
        ensure!(started.elapsed().as_secs() < 5, "{left}");
        left = phone.run_async(&keys).await?;
    }
    ensure!(left.to_string().contains("meniscus/tool/measure"), "{left}");
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
    // What is refused at once is not waited for: this clock never comes to three seconds.
    let patient = "const wait = setTimeout; window.setTimeout = (then, after, ...rest) => after === 3000 || wait(then, after, ...rest);";
    for before in [absent, blocked, refused, hangs, full] {
        let is_refused = before != hangs;
        let before = format!("{} {before}", if is_refused { patient } else { "" });
        let (_serving, phone) = phone_with(&before).await?;
        phone.open("service/measure").await?;
        phone.press("3 3 ml").await?;
        phone.reload().await?;
        assert_eq!(phone.value("amount").await?, "33 ml", "{before}");
        assert_eq!(phone.wrongs().await?, Vec::<String>::new(), "{before}");
    }
    Ok(())
}
