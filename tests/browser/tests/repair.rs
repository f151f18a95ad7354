//! A start that fails says what is wrong, and mends itself at a tap.

use anyhow::{Result, ensure};
use browser::{Fault, Host, NARROW, PHONE, Phone, Setup, build_of, phone_with};
use serde_json::json;
use xtask::precache;

const OFFERED: &str = "document.querySelector('main button')?.textContent === 'Repair'";

#[tokio::test]
async fn what_is_damaged_on_the_phone_is_fetched_again_and_data_stays() -> Result<()> {
    let a = build_of("A")?;
    let host = Host::start(a.path())?;
    let phone = Phone::start(&host.url(), &Setup::default()).await?;
    phone.open("service/measure").await?;
    phone.is_kept().await?;
    phone.press("3 3 ml").await?;
    let runs = |file: &String| ["boot-", "mirror-", "meniscus-"].iter().any(|start| file.starts_with(start));
    let files: Vec<String> = precache::files(a.path())?.into_iter().filter(runs).collect();
    ensure!(files.len() == 5, "{files:?}");
    // Something else, and nothing at all.
    let damages: Vec<_> = files.iter().flat_map(|file| [(file, "} not it"), (file, "")]).collect();
    for (file, damaged) in &damages {
        let type_ = precache::mime(file).unwrap_or_default();
        let damage = format!(
            "caches.keys().then(([n]) => caches.open(n)).then(c => c.put('{file}', new Response('{damaged}', {{ headers: {{ 'content-type': '{type_}' }} }}))).then(done)"
        );
        phone.run_async(&damage).await?;
        phone.cdp("Page.reload", json!({})).await?;
        phone.until(OFFERED).await?;
        let said = phone.run("return document.querySelector('.strip').textContent").await?;
        ensure!(said.as_str().is_some_and(|said| said.contains("could not start")), "{file}: {said}");
        // No network, or the login page of one: nothing is thrown away.
        for is_gone in [true, false] {
            host.gone(is_gone);
            host.fail(precache::WORKER, Fault::Login);
            phone.tap_on("Repair").await?;
            phone
                .until("document.querySelector('main [role=status]').textContent.includes(\"can't be reached\")")
                .await?;
            ensure!(phone.caches().await?.len() == 1, "{file}");
        }
        host.mend();
        phone.tap_on("Repair").await?;
        phone.is_up().await?;
        assert_eq!(phone.value("amount").await?, "33 ml", "{file}");
        phone.is_kept().await?;
        host.gone(true);
        phone.reload().await?;
        assert_eq!(phone.value("amount").await?, "33 ml", "{file}");
        host.gone(false);
    }
    println!("damaged on the phone: repaired in {} of {}", damages.len(), damages.len());
    Ok(())
}

/// Stopped half way, with nothing of the static page left.
#[tokio::test]
async fn an_app_that_stops_while_it_opens_says_so() -> Result<()> {
    for shape in [PHONE, NARROW] {
        let host = Host::start(&xtask::dist())?;
        let before = "Document.prototype.createTextNode = () => { throw new Error('broken') }".to_owned();
        let phone = Phone::start(&host.url(), &Setup { shape, before, ..Setup::default() }).await?;
        phone.cdp("Page.navigate", json!({ "url": phone.url })).await?;
        phone.until(OFFERED).await?;
        ensure!(phone.run("return document.querySelector('.strip').textContent").await? != "");
        ensure!(phone.words().await?.contains("stays as it is"));
        let policy = phone.wrongs().await?.into_iter().find(|wrong| wrong.contains("policy"));
        assert_eq!(policy, None);
        let clipped = "return [...document.querySelectorAll('.strip, .strip .also, button')].filter(e => e.scrollWidth > e.clientWidth + 1 || e.scrollHeight > e.clientHeight + 1).length";
        assert_eq!(phone.run(clipped).await?, 0);
        let button = phone.run("return document.querySelector('main button').getBoundingClientRect().height").await?;
        ensure!(button.as_f64() >= Some(48.0), "{button}");
    }
    Ok(())
}

/// A network that takes the call and never answers, on the first visit.
#[tokio::test]
async fn a_start_that_takes_long_says_so() -> Result<()> {
    let before = "const wait = setTimeout; window.setTimeout = (then, after, ...rest) => wait(then, after === 20000 ? 200 : after, ...rest);
        const get = fetch; window.fetch = (what, ...rest) => String(what).endsWith('.wasm') ? new Promise(() => {}) : get(what, ...rest)";
    let host = Host::start(&xtask::dist())?;
    let phone = Phone::start(&host.url(), &Setup { before: before.into(), ..Setup::default() }).await?;
    phone.cdp("Page.navigate", json!({ "url": phone.url })).await?;
    phone.until(OFFERED).await?;
    phone.until("document.querySelector('.strip').textContent.includes('taking long')").await
}

#[tokio::test]
async fn what_no_file_can_mend_offers_no_repair() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("service/measure").await?;
    ensure!(phone.run(&format!("return !({OFFERED})")).await? == true, "a start that went well");
    let host = Host::start(&xtask::dist())?;
    let before = "delete window.WebAssembly".to_owned();
    let phone = Phone::start(&host.url(), &Setup { before, ..Setup::default() }).await?;
    phone.cdp("Page.navigate", json!({ "url": phone.url })).await?;
    phone
        .until("document.querySelector('[data-first=failed] > .strip')?.textContent.includes('no WebAssembly')")
        .await?;
    ensure!(phone.run(&format!("return !({OFFERED})")).await? == true);
    Ok(())
}
