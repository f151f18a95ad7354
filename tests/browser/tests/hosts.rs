//! What a host, or what stands before it, may do wrong: the version that is here goes on working.

use anyhow::{Result, ensure};
use browser::{FAULTS, Fault, Host, Phone, Setup, build_of, marked_build};
use serde_json::json;
use xtask::precache;

/// A phone that keeps what `host` serves.
async fn keeper_of(host: &Host) -> Result<Phone> {
    let phone = Phone::start(&host.url(), &Setup::default()).await?;
    phone.open("service/measure").await?;
    phone.is_kept().await?;
    Ok(phone)
}

#[tokio::test]
async fn a_wrong_type_does_no_harm() -> Result<()> {
    let (a, b) = (build_of("A")?, build_of("B")?);
    let host = Host::start(a.path())?;
    let phone = keeper_of(&host).await?;
    host.publish(b.path());
    host.fail("", Fault::WrongType);
    ensure!(phone.gets_update().await?);
    phone.take_update("B").await?;
    phone.stands_alone(&host, "B").await?;
    let wasm =
        "fetch(document.querySelector('link[data-boot=wasm]').href).then(r => done(r.headers.get('content-type')))";
    assert_eq!(phone.run_async(wasm).await?, "application/wasm");
    Ok(())
}

#[tokio::test]
async fn a_step_back_and_forth_works_without_a_network() -> Result<()> {
    let (a, b) = (build_of("A")?, build_of("B")?);
    let host = Host::start(a.path())?;
    let phone = keeper_of(&host).await?;
    // B waits when the host goes back to A: what is in use is installed beside itself.
    host.publish(b.path());
    ensure!(phone.gets_update().await?);
    host.publish(a.path());
    phone.gets_update().await?;
    phone.stands_alone(&host, "A").await?;
    // B takes over, then A again.
    for (build, mark) in [(&b, "B"), (&a, "A"), (&b, "B")] {
        host.publish(build.path());
        phone.gets_update().await?;
        phone.take_update(mark).await?;
        phone.stands_alone(&host, mark).await?;
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
        ensure!(!phone.gets_update().await?);
        phone.stands_alone(&host, "A").await?;
        host.mend();
        ensure!(phone.gets_update().await?);
        phone.stands_alone(&host, "A").await?;
        phone.reload().await?;
        phone.take_update("A").await?;
        phone.stands_alone(&host, "A").await?;
    }
    Ok(())
}

#[tokio::test]
async fn a_wrong_answer_for_the_worker_itself_takes_nothing_away() -> Result<()> {
    let (a, b) = (build_of("A")?, build_of("B")?);
    let host = Host::start(a.path())?;
    let phone = keeper_of(&host).await?;
    host.publish(b.path());
    let faults = [&FAULTS[..], &[Fault::WrongType]].concat();
    let mut held = 0;
    // An empty one is a good script to a browser, which nobody can check.
    for fault in faults.iter().filter(|fault| **fault != Fault::Empty) {
        host.fail(precache::WORKER, *fault);
        if *fault == Fault::Hang {
            phone.run("navigator.serviceWorker.getRegistration().then(r => r.update()).catch(() => {})").await?;
        } else {
            ensure!(!phone.gets_update().await?, "{fault:?}");
        }
        phone.stands("A").await?;
        phone.stands_alone(&host, "A").await?;
        ensure!(host.went_wrong() > 0 && !phone.gets_update().await?, "{fault:?}");
        phone.keeps_all_of(a.path()).await?;
        held += 1;
    }
    println!("wrong answers for the worker: the old version stayed in {held} of {}", faults.len() - 1);
    host.fail(precache::WORKER, Fault::Empty);
    ensure!(phone.gets_update().await?);
    phone.stands_alone(&host, "A").await?;
    // With every page closed it comes in charge, and keeps nothing. It goes when the host is right again.
    phone.cdp("Page.navigate", json!({ "url": "about:blank" })).await?;
    host.mend();
    phone.open("service/measure").await?;
    ensure!(phone.gets_update().await?);
    phone.take_update("B").await?;
    phone.stands_alone(&host, "B").await?;
    phone.keeps_all_of(b.path()).await
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
    ensure!(phone.gets_update().await?);
    phone.take_update("B").await?;
    assert_eq!(phone.caches().await?.len(), 3);
    for (folder, mark) in [("", "A"), ("one/", "A"), ("two/", "B")] {
        phone.url = at(folder);
        host.gone(true);
        phone.open("service/measure").await?;
        phone.stands_alone(&host, mark).await?;
    }
    Ok(())
}

const DROP_ALL: &str = "caches.keys().then(names => Promise.all(names.map(name => caches.delete(name)))).then(done)";

#[tokio::test]
async fn what_the_browser_drops_comes_back() -> Result<()> {
    let a = build_of("A")?;
    let host = Host::start(a.path())?;
    let phone = keeper_of(&host).await?;
    let all = phone.entries().await?;
    phone.run_async(DROP_ALL).await?;
    // What the app starts with is back; the pictures of the home screen when they are asked for.
    phone.stands("A").await?;
    phone.stands_alone(&host, "A").await?;
    let ask =
        |url: &str| format!("fetch({url:?}).then(r => r.text()).then(() => done('given'), () => done('refused'))");
    for url in &all {
        assert_eq!(phone.run_async(&ask(url)).await?, "given", "{url}");
    }
    phone.keeps_all_of(a.path()).await?;
    let mut back = 0;
    for url in &all {
        let drop = "caches.keys().then(([name]) => caches.open(name)).then(c => c.delete(";
        assert_eq!(phone.run_async(&format!("{drop}{url:?})).then(done)")).await?, true);
        // Wrong bytes are not kept in its place, nor given to the app.
        let file = url.strip_prefix(&host.url()).filter(|file| !file.is_empty()).unwrap_or("index.html");
        host.fail(file, Fault::Login);
        assert_eq!(phone.run_async(&ask(url)).await?, "refused", "{url}");
        host.mend();
        phone.stands("A").await?;
        assert_eq!(phone.run_async(&ask(url)).await?, "given", "{url}");
        phone.stands_alone(&host, "A").await?;
        phone.keeps_all_of(a.path()).await?;
        back += 1;
    }
    println!("entries that were dropped: back in {back} of {}", all.len());
    Ok(())
}

/// There is nothing to go back to: what the host has now is taken whole.
#[tokio::test]
async fn what_was_dropped_when_the_host_has_moved_on_gives_way() -> Result<()> {
    let (a, b) = (build_of("A")?, build_of("B")?);
    let host = Host::start(a.path())?;
    let phone = keeper_of(&host).await?;
    phone.run_async(DROP_ALL).await?;
    host.publish(b.path());
    phone.stands("B").await?;
    phone.look_for_update().await?;
    // Without a tap.
    let started = std::time::Instant::now();
    while let Err(problem) = phone.keeps_all_of(b.path()).await {
        ensure!(started.elapsed().as_secs() < 10, "{problem}");
    }
    phone.stands_alone(&host, "B").await
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
            phone.strip_says("18 serves").await?;
            phone.stands_alone(&host, "A").await?;
        }
    }
    Ok(())
}

/// The policy of a page, as it stands in it.
fn policy_of(build: &std::path::Path) -> Result<String> {
    let page = std::fs::read_to_string(build.join("index.html"))?;
    let start = page.split_once("http-equiv=\"Content-Security-Policy\" content=\"").map(|(_, rest)| rest);
    Ok(start.and_then(|rest| rest.split('"').next()).unwrap_or_default().to_owned())
}

/// A host that sends the new page with the policy of the old for a while: kept so, the page would never start.
#[tokio::test]
async fn a_page_is_not_kept_with_the_policy_of_another_build() -> Result<()> {
    let (a, b) = (build_of("A")?, build_of("B")?);
    let host = Host::start(a.path())?;
    host.policy(&policy_of(a.path())?);
    let phone = keeper_of(&host).await?;
    host.publish(b.path());
    ensure!(!phone.gets_update().await?, "it was installed");
    phone.stands_alone(&host, "A").await?;
    // A policy of the host's own, that says nothing of what stands in a page, is none of our business.
    for policy in [policy_of(b.path())?, "frame-ancestors 'none'".to_owned()] {
        host.policy(&policy);
        host.publish(b.path());
        ensure!(phone.gets_update().await?, "{policy}");
        phone.take_update("B").await?;
        phone.stands_alone(&host, "B").await?;
        host.policy(&policy_of(a.path())?);
        host.publish(a.path());
        ensure!(phone.gets_update().await?, "back to A");
        phone.take_update("A").await?;
    }
    Ok(())
}

/// One letter of what stands in the page is another than the policy names.
#[tokio::test]
async fn nothing_else_may_stand_in_the_page() -> Result<()> {
    let a = build_of("A")?;
    let page = std::fs::read_to_string(a.path().join("index.html"))?;
    for (tag, changed) in [("<script>", "<script>;"), ("<style>", "<style>/**/")] {
        std::fs::write(a.path().join("index.html"), page.replacen(tag, changed, 1))?;
        let host = Host::start(a.path())?;
        let phone = Phone::start(&host.url(), &Setup::default()).await?;
        phone.cdp("Page.navigate", json!({ "url": host.url() })).await?;
        phone.until("window.__wrong?.some(wrong => wrong.startsWith('policy: '))").await?;
    }
    Ok(())
}
