//! Every wrong answer a host, or what stands before it, can give: with one file of each kind; and with every file, which
//! takes minutes and is run by `cargo xtask sweep`.

use std::collections::BTreeSet;
use std::path::Path;
use std::time::{Duration, Instant};

use anyhow::{Result, ensure};
use browser::{FAULTS, Fault, Host, Phone, Setup, build_of};
use serde_json::json;
use xtask::precache;

/// Where in the list of files the first of each kind is, by the ending of its name. Each part of the wasm is a kind.
fn one_of_each_kind(files: &[String]) -> Vec<usize> {
    let mut seen = BTreeSet::new();
    let is_new =
        |file: &String| seen.insert((file.ends_with("_rest.wasm"), file.rsplit('.').next().map(str::to_owned)));
    let news: Vec<bool> = files.iter().map(is_new).collect();
    (0..files.len()).filter(|at| news[*at]).collect()
}

/// Whether a file is another in these builds: otherwise there is no stale one.
fn is_changed(file: &str, before: &Path, now: &Path) -> bool {
    let read = |folder: &Path| std::fs::read(folder.join(file)).unwrap_or_default();
    read(before) != read(now)
}

#[tokio::test]
async fn no_wrong_answer_for_one_of_each_kind_takes_the_old_version_away() -> Result<()> {
    no_wrong_answer_takes_the_old_version_away(one_of_each_kind).await
}

#[tokio::test]
#[ignore = "minutes: cargo xtask sweep"]
async fn no_wrong_answer_for_any_file_takes_the_old_version_away() -> Result<()> {
    no_wrong_answer_takes_the_old_version_away(|files| (0..files.len()).collect()).await
}

async fn no_wrong_answer_takes_the_old_version_away(chosen: fn(&[String]) -> Vec<usize>) -> Result<()> {
    let (mut old, mut new) = ((build_of("A")?, "A"), (build_of("B")?, "B"));
    let host = Host::start(old.0.path())?;
    let phone = Phone::start(&host.url(), &Setup::default()).await?;
    phone.open("service/measure").await?;
    phone.is_kept().await?;
    let (mut tried, mut held, mut installed) = (0, 0, 0);
    let chosen = chosen(&precache::files(old.0.path())?);
    for at in &chosen {
        host.publish(new.0.path());
        let file = &precache::files(new.0.path())?[*at];
        for fault in FAULTS {
            if fault == Fault::Stale && !is_changed(file, old.0.path(), new.0.path()) {
                continue;
            }
            tried += 1;
            match stays(&host, &phone, file, fault, old.1).await {
                Ok(()) => held += 1,
                Err(problem) => println!("{file}, {fault:?}: {problem:#}"),
            }
        }
        // A clean retry installs; then the same the other way round, with the next file.
        host.mend();
        ensure!(phone.gets_update().await?, "{file}");
        phone.take_update(new.1).await?;
        phone.stands_alone(&host, new.1).await?;
        installed += usize::from(phone.keeps_all_of(new.0.path()).await.is_ok());
        std::mem::swap(&mut old, &mut new);
    }
    println!("wrong answers to an update: the old version stayed, online and offline, in {held} of {tried}");
    println!("the host mended: the new version came whole in {installed} of {}", chosen.len());
    assert_eq!((held, installed), (tried, chosen.len()));
    Ok(())
}

/// With one fault in one file of the new version, the old one starts, online and offline, and all of it is kept.
async fn stays(host: &Host, phone: &Phone, file: &str, fault: Fault, mark: &str) -> Result<()> {
    let before = phone.caches().await?;
    host.fail(file, fault);
    phone.look_for_update().await?;
    if fault != Fault::Hang {
        ensure!(!phone.has_update().await?, "it was installed");
    }
    phone.stands(mark).await?;
    phone.stands_alone(host, mark).await?;
    ensure!(!phone.has_update().await?, "it was installed later");
    ensure!(host.went_wrong() > 0, "nobody asked for it");
    let after = phone.caches().await?;
    ensure!(before == after, "{before:?}, then {after:?}");
    ensure!(
        phone.run("return !document.querySelector('.bar')?.textContent.includes('newer version')").await? == true,
        "Update is offered"
    );
    Ok(())
}

#[tokio::test]
async fn a_first_visit_with_one_bit_wrong_keeps_nothing_wrong() -> Result<()> {
    first_visits(one_of_each_kind, &[Fault::Flipped]).await
}

#[tokio::test]
#[ignore = "minutes: cargo xtask sweep"]
async fn a_first_visit_with_anything_wrong_keeps_nothing_wrong() -> Result<()> {
    let faults = [&FAULTS[..], &[Fault::WrongType]].concat();
    first_visits(|files| (0..files.len()).collect(), &faults).await
}

async fn first_visits(chosen: fn(&[String]) -> Vec<usize>, faults: &[Fault]) -> Result<()> {
    let (before, now) = (build_of("A")?, build_of("B")?);
    let files = precache::files(now.path())?;
    let mut cases = Vec::new();
    for file in chosen(&files).into_iter().map(|at| files[at].as_str()) {
        let stale = is_changed(file, before.path(), now.path());
        cases.extend(faults.iter().filter(|fault| stale || **fault != Fault::Stale).map(|fault| (file, *fault)));
    }
    // Two phones, because most of it is waiting.
    let (ones, others) = cases.split_at(cases.len() / 2);
    let (ones, others) =
        tokio::try_join!(visits(ones, before.path(), now.path()), visits(others, before.path(), now.path()))?;
    let (held, tried) = (ones.0 + others.0, cases.len());
    println!("wrong answers to a first visit: nothing wrong was kept, and the next came right, in {held} of {tried}");
    println!("of these, {} by a tap on Repair", ones.1 + others.1);
    assert_eq!(held, tried);
    Ok(())
}

/// How many of these held, and how many of them with Repair.
async fn visits(cases: &[(&str, Fault)], before: &Path, build: &Path) -> Result<(usize, usize)> {
    let mut phone = Phone::start("", &Setup::default()).await?;
    let (mut held, mut repaired) = (0, 0);
    let mut hosts = Vec::new();
    for (file, fault) in cases {
        // An address nobody was at before: hosts stay, so that none gets the port of another.
        let host = Host::start(before)?;
        host.publish(build);
        host.fail(file, *fault);
        phone.url = host.url();
        match comes_right(&host, &phone, build, *fault).await {
            Ok(was_repaired) => {
                held += 1;
                repaired += usize::from(was_repaired);
            }
            Err(problem) => println!("{file}, {fault:?}: {problem:#}"),
        }
        hosts.push(host);
    }
    Ok((held, repaired))
}

/// A first visit with a fault keeps nothing; once the host is mended the app starts, after Repair where it has to be, and
/// is kept whole. Whether it was repaired.
async fn comes_right(host: &Host, phone: &Phone, build: &Path, fault: Fault) -> Result<bool> {
    phone.cdp("Page.navigate", json!({ "url": format!("{}#/service/measure", phone.url) })).await?;
    let started = Instant::now();
    while host.went_wrong() == 0 {
        ensure!(started.elapsed() < Duration::from_secs(10), "nobody asked for it");
        tokio::time::sleep(Duration::from_millis(20)).await;
    }
    // Long enough for the worker to have asked for all.
    tokio::time::sleep(Duration::from_millis(800)).await;
    if fault != Fault::WrongType {
        let kept = phone.run_async("Promise.resolve(navigator.serviceWorker?.getRegistration()).then(r => done(!!(r?.waiting || r?.active)), () => done(false))").await?;
        ensure!(kept == false && phone.caches().await.unwrap_or_default().is_empty(), "it is kept");
    }
    host.mend();
    phone.cdp("Page.reload", json!({})).await?;
    phone
        .until(
            "document.querySelector(':not([data-starting]) > body > #app:not([data-first]), #app[data-first=failed]')",
        )
        .await?;
    // The browser's own cache may have it for a year.
    let must_repair = phone.run("return !!document.querySelector('#app[data-first]')").await? == true;
    if must_repair {
        phone.tap_on("Repair").await?;
        phone.is_up().await?;
    }
    // (One bit may be wrong in what is in memory, and it starts: the next start is from what is kept.)
    phone.is_kept().await?;
    phone.stands("B").await?;
    phone.stands_alone(host, "B").await?;
    phone.keeps_all_of(build).await?;
    Ok(must_repair)
}
