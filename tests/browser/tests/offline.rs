//! Without a network, and from one version to the next.

use anyhow::Result;
use browser::{Phone, Setup, marked_build};
use xtask::server::Serving;

#[tokio::test]
async fn every_tool_answers_when_the_server_is_gone() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let port = serving.port();
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("service/measure").await?;
    phone.is_kept().await?;
    drop(serving);
    // The server is gone: a request that passes the worker by fails.
    let gone = phone.run_async("fetch('./no-such-file').then(() => done('answered'), () => done('gone'))").await?;
    assert_eq!(gone, "gone");
    phone.reload().await?;
    phone.press("2 oz").await?;
    phone.strip_says("59.1 ml | Pour 2 oz").await?;
    phone.open("service/scale").await?;
    phone.tap("#serves").await?;
    phone.press("1 0").await?;
    phone.strip_says("10 serves").await?;
    phone.open("service/balance").await?;
    phone.strip_says("27.3 % vol").await?;
    phone.open("prep/strength").await?;
    phone.press("5 0 0 ml").await?;
    phone.strip_says("218 g water").await?;
    phone.open("prep/syrup").await?;
    phone.press("5 0 0 ml").await?;
    phone.strip_says("442 g sugar + 221 g water").await?;
    phone.open("batch/serves").await?;
    phone.press("1 l").await?;
    phone.strip_says("10 serves of 92 ml").await?;
    phone.new_tab().await?;
    phone.open("prep/milk-wash").await?;
    phone.press("5 0 0 ml").await?;
    phone.strip_says("100 ml milk").await?;
    phone.open("prep/acid").await?;
    phone.press("1 l").await?;
    phone.strip_says("45.9 g citric").await?;
    phone.reload().await?;
    phone.strip_says("45.9 g citric").await?;
    // Worse than no network: one that takes the call and never answers.
    let _hanging = std::net::TcpListener::bind(("127.0.0.1", port))?;
    phone.reload().await?;
    phone.strip_says("45.9 g citric").await?;
    Ok(())
}

#[tokio::test]
async fn a_new_version_waits_for_a_tap_and_nothing_typed_is_lost() -> Result<()> {
    let (a, b) = (tempfile::tempdir()?, tempfile::tempdir()?);
    assert_ne!(marked_build(a.path(), "A")?, marked_build(b.path(), "B")?);
    let serving = Serving::start(a.path())?;
    let port = serving.port();
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("service/measure").await?;
    phone.is_kept().await?;
    phone.press("3 3 ml").await?;
    assert!(phone.run("return !document.querySelector('.bar')?.textContent.includes('newer version')").await? == true);
    drop(serving);
    let _serving = Serving::on(b.path(), port)?;
    // As when the app comes back to the foreground.
    phone.run("window.__same = true; document.dispatchEvent(new Event('visibilitychange'))").await?;
    // It is offered once the pad is put away.
    phone.press("Done").await?;
    phone.until("document.querySelector('.bar')?.textContent.includes('newer version')").await?;
    assert!(
        phone.run("return window.__same === true && document.documentElement.dataset.build === 'A'").await? == true,
        "it reloaded by itself"
    );
    // Still version A after a reload: only the tap brings B.
    phone.reload().await?;
    assert_eq!(phone.run("return document.documentElement.dataset.build").await?, "A");
    phone.press("⌫ 4 ml Done").await?;
    phone.tap_away("Use it").await?;
    phone.until("document.documentElement.dataset.build === 'B'").await?;
    phone.is_up().await?;
    assert_eq!(phone.value("amount").await?, "4 ml");
    phone.is_kept().await?;
    let names = phone.run_async("caches.keys().then(done)").await?;
    assert_eq!(names.as_array().map(Vec::len), Some(1), "the old cache is gone: {names}");
    Ok(())
}

#[tokio::test]
async fn a_build_with_a_file_missing_does_not_take_over() -> Result<()> {
    let (a, b) = (tempfile::tempdir()?, tempfile::tempdir()?);
    marked_build(a.path(), "A")?;
    marked_build(b.path(), "B")?;
    std::fs::remove_file(b.path().join("icon.svg"))?;
    let serving = Serving::start(a.path())?;
    let port = serving.port();
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("service/measure").await?;
    phone.is_kept().await?;
    drop(serving);
    let _serving = Serving::on(b.path(), port)?;
    let state = phone.run_async(
        "navigator.serviceWorker.getRegistration().then(r => r.update().then(() => {
           const w = r.installing; if (!w) return done('nothing new');
           w.addEventListener('statechange', () => { if (w.state === 'redundant' || w.state === 'installed') done(w.state) });
         })).catch(e => done(String(e)))",
    ).await?;
    assert_eq!(state, "redundant");
    phone.reload().await?;
    assert_eq!(phone.run("return document.documentElement.dataset.build").await?, "A");
    assert!(phone.run("return !document.querySelector('.bar')?.textContent.includes('newer version')").await? == true);
    Ok(())
}
