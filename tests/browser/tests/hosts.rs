//! What a host, or what stands before it, may do wrong: the version that is here goes on working.

use anyhow::{Result, ensure};
use browser::{FAULTS, Fault, Host, Phone, Setup, build_of, marked_build};
use serde_json::json;
use tempfile::TempDir;
use xtask::precache;

/// A phone that keeps what `host` serves.
async fn keeper_of(host: &Host) -> Result<Phone> {
    let phone = Phone::start(&host.url(), &Setup::default()).await?;
    phone.open("service/measure").await?;
    phone.is_kept().await?;
    Ok(phone)
}

/// Loads the page again without a network: the build with this mark stands and answers.
async fn stands_alone(host: &Host, phone: &Phone, mark: &str) -> Result<()> {
    host.gone(true);
    phone.reload().await?;
    phone.strip_says("ml").await?;
    let build = phone.build().await?;
    ensure!(build == mark, "{build}, not {mark}");
    host.gone(false);
    Ok(())
}

#[tokio::test]
async fn no_wrong_answer_takes_the_old_version_away_or_is_kept() -> Result<()> {
    let (mut old, mut new) = ((build_of("A")?, "A"), (build_of("B")?, "B"));
    let host = Host::start(old.0.path())?;
    let phone = keeper_of(&host).await?;
    let (mut tried, mut held) = (0, 0);
    let files = precache::files(old.0.path())?;
    for file in &files {
        host.publish(new.0.path());
        let ours = phone.caches().await?;
        for fault in FAULTS {
            // Of a file that is the same in both builds there is no stale one.
            let read = |folder: &TempDir| std::fs::read(folder.path().join(file));
            if fault == Fault::Stale && read(&old.0)? == read(&new.0)? {
                continue;
            }
            tried += 1;
            host.fail(file, fault);
            let state = phone.ask_for_update().await?;
            let stands = stands_alone(&host, &phone, old.1).await;
            let caches = phone.caches().await?;
            if state == "redundant" && stands.is_ok() && caches == ours {
                held += 1;
            } else {
                println!("{file}, {fault:?}: {state}, {stands:?}, {caches:?}");
            }
            ensure!(phone.run("return !document.querySelector('.update')").await? == true, "{file}, {fault:?}");
        }
        // A clean retry installs; then the same the other way round, with the next file.
        host.mend();
        assert_eq!(phone.ask_for_update().await?, "installed", "{file}");
        phone.take_update(new.1).await?;
        stands_alone(&host, &phone, new.1).await?;
        assert_eq!(phone.caches().await?.len(), 1, "{file}");
        std::mem::swap(&mut old, &mut new);
    }
    println!("wrong answers to an update: the old version stayed in {held} of {tried}");
    println!("a clean retry installed in {} of {}", files.len(), files.len());
    assert_eq!(held, tried);
    Ok(())
}

#[tokio::test]
async fn a_wrong_type_does_no_harm() -> Result<()> {
    let (a, b) = (build_of("A")?, build_of("B")?);
    let host = Host::start(a.path())?;
    let phone = keeper_of(&host).await?;
    host.publish(b.path());
    host.fail("", Fault::WrongType);
    assert_eq!(phone.ask_for_update().await?, "installed");
    phone.take_update("B").await?;
    stands_alone(&host, &phone, "B").await?;
    let wasm =
        "fetch(document.querySelector('link[data-boot=wasm]').href).then(r => done(r.headers.get('content-type')))";
    assert_eq!(phone.run_async(wasm).await?, "application/wasm");
    Ok(())
}

/// A first visit with a file wrong: what is wrong is said, and a later visit is right.
#[tokio::test]
async fn a_first_visit_keeps_nothing_that_is_wrong() -> Result<()> {
    let a = build_of("A")?;
    let files = precache::files(a.path())?;
    let mut held = 0;
    for file in &files {
        let host = Host::start(a.path())?;
        host.fail(file, Fault::Flipped);
        let phone = Phone::start(&host.url(), &Setup::default()).await?;
        phone.cdp("Page.navigate", json!({ "url": phone.url })).await?;
        phone.until("document.getElementById('page') || document.querySelector('main button')").await?;
        // Whatever of it came to run, none of it is kept.
        let kept = "navigator.serviceWorker.getRegistration().then(r => done(!!(r && r.active)))";
        tokio::time::sleep(std::time::Duration::from_millis(500)).await;
        ensure!(phone.run_async(kept).await? == false && phone.caches().await?.is_empty(), "{file} is kept");
        host.mend();
        phone.run("location.reload()").await?;
        // The browser's own cache may have it for a year: then it is repaired.
        phone.until("document.getElementById('page') || document.querySelector('main button')").await?;
        if phone.run("return !!document.querySelector('#first-strip')").await? == true {
            phone.tap_on("Repair").await?;
        }
        phone.is_up().await?;
        phone.is_kept().await?;
        stands_alone(&host, &phone, "A").await?;
        held += 1;
    }
    println!("a first visit with one bit wrong: nothing wrong was kept in {held} of {}", files.len());
    Ok(())
}

#[tokio::test]
async fn a_step_back_and_forth_works_without_a_network() -> Result<()> {
    let (a, b) = (build_of("A")?, build_of("B")?);
    let host = Host::start(a.path())?;
    let phone = keeper_of(&host).await?;
    // B waits when the host goes back to A: what is in use is installed beside itself.
    host.publish(b.path());
    assert_eq!(phone.ask_for_update().await?, "installed");
    host.publish(a.path());
    phone.ask_for_update().await?;
    stands_alone(&host, &phone, "A").await?;
    // B takes over, then A again.
    for (build, mark) in [(&b, "B"), (&a, "A"), (&b, "B")] {
        host.publish(build.path());
        phone.ask_for_update().await?;
        phone.take_update(mark).await?;
        stands_alone(&host, &phone, mark).await?;
        assert_eq!(phone.caches().await?.len(), 1, "{mark}");
    }
    Ok(())
}

#[tokio::test]
async fn another_worker_for_the_same_files_does_no_harm() -> Result<()> {
    let a = build_of("A")?;
    let host = Host::start(a.path())?;
    let phone = keeper_of(&host).await?;
    let worker = a.path().join(precache::WORKER);
    for round in 0..4 {
        // Of the same version even, as no build of ours is: it shares the cache that is in use.
        let script = std::fs::read_to_string(&worker)?;
        std::fs::write(&worker, format!("{script}\n// Changed {round}."))?;
        host.fail("icon.svg", Fault::NotFound);
        assert_eq!(phone.ask_for_update().await?, "redundant");
        stands_alone(&host, &phone, "A").await?;
        host.mend();
        assert_eq!(phone.ask_for_update().await?, "installed");
        stands_alone(&host, &phone, "A").await?;
        phone.reload().await?;
        phone.take_update("A").await?;
        stands_alone(&host, &phone, "A").await?;
    }
    Ok(())
}

#[tokio::test]
async fn two_copies_on_one_host_leave_each_other_alone() -> Result<()> {
    // One within the folder of the other, and one beside that.
    let (root, b) = (tempfile::tempdir()?, build_of("B")?);
    marked_build(root.path(), "A")?;
    for folder in ["one", "two"] {
        marked_build(&root.path().join(folder), "A")?;
    }
    let host = Host::start(root.path())?;
    let mut phone = keeper_of(&host).await?;
    let at = |folder: &str| format!("{}{folder}", host.url());
    for folder in ["one/", "two/"] {
        phone.url = at(folder);
        phone.open("service/measure").await?;
        phone
            .until(&format!("navigator.serviceWorker.controller?.scriptURL.endsWith('{folder}service-worker.js')"))
            .await?;
        phone.is_kept().await?;
    }
    assert_eq!(phone.caches().await?.len(), 3);
    // A new version of one; then a repair of it.
    for file in precache::files(b.path())?.iter().map(String::as_str).chain([precache::WORKER]) {
        std::fs::copy(b.path().join(file), root.path().join("two").join(file))?;
    }
    assert_eq!(phone.ask_for_update().await?, "installed");
    phone.take_update("B").await?;
    assert_eq!(phone.caches().await?.len(), 3);
    for (folder, mark) in [("", "A"), ("one/", "A"), ("two/", "B")] {
        phone.url = at(folder);
        host.gone(true);
        phone.open("service/measure").await?;
        stands_alone(&host, &phone, mark).await?;
    }
    Ok(())
}

#[tokio::test]
async fn what_the_browser_drops_comes_back() -> Result<()> {
    let a = build_of("A")?;
    let host = Host::start(a.path())?;
    let phone = keeper_of(&host).await?;
    let count =
        "caches.keys().then(([n]) => n ? caches.open(n).then(c => c.keys()).then(k => done(k.length)) : done(0))";
    let all = phone.run_async(count).await?;
    let drop_all = "caches.keys().then(ns => Promise.all(ns.map(n => caches.delete(n)))).then(done)";
    phone.run_async(drop_all).await?;
    phone.reload().await?;
    // What the app starts with is back; the pictures of the home screen when they are asked for.
    stands_alone(&host, &phone, "A").await?;
    let entries = "caches.keys().then(([n]) => caches.open(n)).then(c => c.keys()).then(k => k.map(r => r.url))";
    let dropped = phone.run_async(&format!("{entries}.then(done)")).await?;
    let dropped: Vec<_> = dropped.as_array().into_iter().flatten().filter_map(|url| url.as_str()).collect();
    ensure!(all.as_u64() > Some(10) && dropped.len() > 8, "{dropped:?} of {all}");
    let mut back = 0;
    for url in &dropped {
        phone
            .run_async(&format!("caches.keys().then(([n]) => caches.open(n)).then(c => c.delete({url:?})).then(done)"))
            .await?;
        // Wrong bytes are not kept in its place, nor served to the app.
        host.fail("icon.svg", Fault::Login);
        let icon = phone.run_async("fetch('icon.svg').then(r => r.text()).then(done, () => done('refused'))").await?;
        ensure!(!icon.as_str().unwrap_or_default().contains("room"), "{icon}");
        host.mend();
        phone.reload().await?;
        phone.run_async(&format!("fetch({url:?}).then(() => done(1))")).await?;
        stands_alone(&host, &phone, "A").await?;
        back += 1;
    }
    println!("entries that were dropped: back in {back} of {}", dropped.len());
    Ok(())
}

#[tokio::test]
async fn a_host_that_redirects_its_start_page_is_kept_too() -> Result<()> {
    let a = build_of("A")?;
    for (from, to) in [("/", "/index.html"), ("/index.html", "/")] {
        let host = Host::start(a.path())?;
        host.redirect(from, to);
        let phone = keeper_of(&host).await?;
        for path in ["", "index.html", "?from=home"] {
            host.gone(true);
            phone.cdp("Page.navigate", json!({ "url": "about:blank" })).await?;
            phone.cdp("Page.navigate", json!({ "url": format!("{}{path}#/service/scale", host.url()) })).await?;
            phone.is_up().await?;
            phone.strip_says("×18").await?;
            stands_alone(&host, &phone, "A").await?;
        }
    }
    Ok(())
}
