//! Preps: from fruit to label on a phone, with no network, with timers that outlive the browser.

use std::time::{Duration, SystemTime, UNIX_EPOCH};

use anyhow::Result;
use browser::{Phone, Setup, phone_with};
use serde_json::json;
use xtask::server::Serving;

/// A clock that can be put on by `__put_on(seconds)`, also for the pages that follow; and what rang, was shown and was
/// kept awake.
const CLOCK: &str = "
const real = Date.now.bind(Date);
const skew = () => Number(localStorage.getItem('test/skew') ?? 0);
Date.now = () => real() + skew();
window.__put_on = (seconds) => localStorage.setItem('test/skew', skew() + seconds * 1000);
window.__rang = [];
addEventListener('meniscus-ring', ({ text }) => __rang.push(text));
window.__buzzed = 0;
navigator.vibrate = () => { __buzzed++; return true };
window.__awake = [];
Object.defineProperty(navigator, 'wakeLock', { value: { request: async (what) => {
  __awake.push(what); return { release: async () => { __awake.push('released') } } } } });
window.__tones = 0;
window.AudioContext = class { constructor() { this.state = 'suspended'; this.currentTime = 0; this.destination = {} }
  resume() { this.state = 'running' }
  createOscillator() { __tones++; return { frequency: {}, connect: (to) => to, start() {}, stop() {} } }
  createGain() { return { gain: { setValueAtTime() {}, exponentialRampToValueAtTime() {} }, connect: (to) => to } } };
window.__asked = 0;
window.Notification = class { static permission = 'default'; static async requestPermission() { __asked++; Notification.permission = 'granted'; return 'granted' } };
Object.defineProperty(document, 'visibilityState', { get: () => window.__hidden ? 'hidden' : 'visible' });
window.__shown = [];
ServiceWorkerRegistration.prototype.showNotification = async (title, { body, data }) => { __shown.push([title, body, data].join(' | ')) };
";

async fn pick_pears(phone: &Phone) -> Result<()> {
    phone.open("prep/fruit").await?;
    phone.choose("fruit", "pear").await?;
    phone.press("1 l").await?;
    phone.strip_says("10 pears + 1 742 g").await
}

#[tokio::test]
async fn from_fruit_to_label_without_a_network_through_a_kill() -> Result<()> {
    let profile = tempfile::tempdir()?;
    let setup = || Setup { profile: Some(profile.path().to_path_buf()), ..Setup::default() };
    let serving = Serving::start(&xtask::dist())?;
    let (url, port) = (serving.url(), serving.port());
    let phone = Phone::start(&url, &setup()).await?;
    phone.open("prep/fruit").await?;
    phone.is_kept().await?;
    phone.reload().await?;
    // From here on there is no network.
    drop(serving);
    pick_pears(&phone).await?;
    phone.finish("To the run sheet").await?;
    phone.finish("Clarify it").await?;
    phone.strip_says("2.6 g enzyme").await?;
    phone.finish("To the run sheet").await?;
    phone.finish("Make a cordial").await?;
    phone.strip_says("334 g sugar + 18.6 g acid").await?;
    phone.finish("To the run sheet").await?;
    phone.open("batch/run").await?;
    phone.strip_says("Press 10 pears").await?;
    // Less came out than was reckoned with: what follows is less too.
    phone.put("got", "900 ml").await?;
    phone.until("document.querySelector('main').innerText.includes('Blend 2.4 g enzyme into 941 g')").await?;
    phone.tap_on("Done").await?;
    phone.strip_says("Blend 2.4 g enzyme").await?;
    phone.put("notes", "dry fruit").await?;
    phone.tap_on("Undo").await?;
    phone.until("document.getElementById('notes').value === ''").await?;
    phone.tap_on("Redo").await?;
    phone.until("document.getElementById('notes').value === 'dry fruit'").await?;
    // Words typed since stay when a tick is taken back, of which alone the journal knows.
    phone.reload().await?;
    phone.tap_on("Undo").await?;
    phone.strip_says("Press 10 pears").await?;
    assert_eq!((phone.value("notes").await?, phone.value("got").await?), ("dry fruit".into(), "900 ml".into()));
    assert_eq!(phone.stored("run/").await?.len(), 1);
    phone.tap_on("Done").await?;
    phone.strip_says("Blend 2.4 g enzyme").await?;
    phone.tap_on("Start 45 min").await?;
    phone.strip_says("to go").await?;
    let started = phone.stored("run/").await?;
    assert_eq!(started.len(), 1, "{started:?}");
    // Chromium itself writes local storage to disk every five seconds.
    tokio::time::sleep(Duration::from_secs(7)).await;
    // Killed in the middle of the wait: SIGKILL to the whole group. The real clock goes on.
    drop(phone);
    // Worse than no network: one that takes the call and never answers.
    let _hanging = std::net::TcpListener::bind(("127.0.0.1", port))?;
    let phone = Phone::start(&url, &setup()).await?;
    phone.open("service/measure").await?;
    // The line on every screen counts on, by the clock on the wall.
    phone.until("/^44 min [0-9]+ s$/.test(document.querySelector('.due b')?.textContent)").await?;
    phone.tap(".due a").await?;
    phone.strip_says("Blend 2.4 g enzyme").await?;
    phone.reload().await?;
    phone.strip_says("to go").await?;
    assert_eq!(phone.stored("run/").await?, started, "nothing of it changed");
    phone.tap_on("Done").await?;
    phone.strip_says("Filter through paper").await?;
    phone.put("got", "700 ml").await?;
    phone.put("brix", "12").await?;
    phone.put("ph", "3.9").await?;
    phone.tap_on("Done").await?;
    phone.strip_says("Stir 300 g sugar, 16.7 g citric acid into 700 ml").await?;
    phone.tap_on("Done").await?;
    phone.tap_on("Done").await?;
    phone.strip_says("All steps are ticked off").await?;
    phone.tap_on("Finish").await?;
    phone.strip_says("Finished").await?;
    let words = phone.words().await?;
    for said in ["got 900 ml", "got 700 ml, 12 °Bx, pH 3.9", "waits 45 min"] {
        assert!(words.contains(said), "{said}: {words}");
    }
    phone.finish("Label it").await?;
    phone.strip_says("use by | Pear cordial").await?;
    // Made when the last of it was done, not when it is labelled.
    assert!(phone.value("made").await?.starts_with("20"), "{:?}", phone.value("made").await);
    assert_eq!(phone.wrongs().await?, Vec::<String>::new());
    assert_eq!(phone.foreign_requests().await?, Vec::<String>::new());
    Ok(())
}

#[tokio::test]
async fn timers_ring_by_the_clock_several_at_once() -> Result<()> {
    let (_serving, phone) = phone_with(CLOCK).await?;
    pick_pears(&phone).await?;
    for (tool, start) in [("prep/clear", "enzyme"), ("prep/infuse", "oleo")] {
        phone.open(tool).await?;
        if start == "oleo" {
            phone.tap_on("Peel in sugar").await?;
        }
        phone.finish("To the run sheet").await?;
    }
    phone.open("batch/run").await?;
    phone.tap_on("Start 45 min").await?;
    phone.until("__asked === 1 && __awake[0] === 'screen'").await?;
    // The page is loaded again: the first touch readies the bell, and the screen is kept awake once more.
    phone.reload().await?;
    phone.until("__awake[0] === 'screen'").await?;
    phone.tap_on("Press 200 g sugar, 200 g peel together").await?;
    phone.tap_on("Start 12 h").await?;
    phone.strip_says("to go").await?;
    phone.run("__put_on(44 * 60)").await?;
    // The strip counts the step that is chosen; the other wait stands in the line below.
    phone.until("/^5[0-9] s$/.test(document.querySelector('.due b')?.textContent)").await?;
    assert_eq!(phone.run("return __rang.length").await?, json!(0));
    phone.run("__put_on(70)").await?;
    phone.until("__rang.length === 1 && __tones > 0 && __buzzed === 1").await?;
    assert!(phone.run("return __rang[0]").await?.as_str().is_some_and(|words| words.starts_with("Blend")));
    phone.until("document.querySelector('.due.over')?.innerText.includes('Blend')").await?;
    phone.strip_says("Press 200 g sugar").await?;
    // On every other screen it says so too, and leads back.
    phone.open("service/scale").await?;
    phone.until("document.querySelector('.due.over')?.innerText.includes('Blend')").await?;
    phone.tap(".due a").await?;
    phone.tap_on("Done").await?;
    phone.strip_says("Filter through paper").await?;
    // Out of sight, it says so in a notice that leads back to the step.
    phone.is_kept().await?;
    phone.run("__hidden = true; __put_on(12 * 3600)").await?;
    phone
        .until("__shown.length === 1 && /^Time is up . Press 200 g sugar.* . #.batch.run.id=.*step=/.test(__shown[0])")
        .await?;
    // The page is opened again: it rings once more, for nobody has ticked it off.
    phone.reload().await?;
    phone.until("__rang.length === 1 && __rang[0].startsWith('Press')").await?;
    phone.tap_on("Stop").await?;
    phone.until("!document.documentElement.hasAttribute('data-awake') && __awake.at(-1) === 'released'").await?;
    phone.tap_on("Undo").await?;
    phone.strip_says("over").await?;
    assert_eq!(phone.wrongs().await?, Vec::<String>::new());
    Ok(())
}

#[tokio::test]
async fn a_run_works_back_from_its_time() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.tap_on("Orchard lantern").await?;
    phone.strip_says("as swizzled 10 s").await?;
    phone.tap_on("washed").await?;
    phone.tap_on("Run sheet").await?;
    phone.open("batch/run").await?;
    phone.strip_says("Freeze clear ice").await?;
    // Two days from now: the ice is frozen the day before, and nothing begins too late.
    let now = SystemTime::now().duration_since(UNIX_EPOCH)?.as_secs() + 2 * 86_400;
    let wall = phone.run(&format!("const d = new Date({now}000); return new Date(d - d.getTimezoneOffset() * 60000).toISOString().slice(0, 10)")).await?;
    let day = wall.as_str().unwrap_or_default().to_owned();
    phone.put("ready", &format!("{day}T18:30")).await?;
    phone.until("document.querySelectorAll('.event').length >= 5").await?;
    let words = phone.words().await?;
    assert!(words.contains("“orchard cordial” is a prep of its own"), "{words}");
    assert!(!words.contains("Too late"), "{words}");
    phone.strip_says("latest").await?;
    phone.put("times", "2").await?;
    phone.until("document.querySelector('main').innerText.replaceAll('\\u202f', '').includes('Measure 1800 ml pear brandy')").await?;
    phone.put("ready", "2020-01-01T10:00").await?;
    phone.until("document.querySelector('main').innerText.includes('Too late by')").await?;
    // What goes in is made before: the cordial comes in front of the drink.
    phone.open("prep/cordial").await?;
    phone.finish("To the run sheet").await?;
    phone.open("batch/run").await?;
    phone.until("document.querySelector('main').innerText.includes('Stir again and bottle')").await?;
    let order = phone.run("return [...document.querySelectorAll('.event .step')].map(e => e.textContent)").await?;
    let order: Vec<&str> = order.as_array().into_iter().flatten().filter_map(|name| name.as_str()).collect();
    let at = |words: &str| order.iter().position(|name| name.contains(words)).unwrap_or(usize::MAX);
    assert!(at("Stir again and bottle") < at("Measure 1"), "{order:?}");
    phone.tap("[aria-label='Take out: Clear ice']").await?;
    phone.until("!document.querySelector('main').innerText.includes('Freeze clear ice')").await?;
    phone.tap_on("Undo").await?;
    phone.until("document.querySelector('main').innerText.includes('Freeze clear ice')").await?;
    phone.tap_on("Delete").await?;
    phone.strip_says("run sheets open").await?;
    phone.tap_on("Undo").await?;
    phone.strip_says("Freeze clear ice").await?;
    Ok(())
}

#[tokio::test]
async fn a_yield_is_kept_on_the_shelf_and_counts() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("prep/fruit").await?;
    phone.tap_on("Weighed").await?;
    phone.put("weight", "1 kg").await?;
    phone.put("got", "380 g").await?;
    phone.tap_on("Keep 38.0 % as my yield").await?;
    phone.strip_says("at 38.0 %, your own yield").await?;
    phone.open("shelf").await?;
    assert_eq!(phone.value("yields").await?, "lime juice 38 %");
    phone.put("yields", "lime juice 38 %\nmilk wash 90 %").await?;
    phone.open("prep/milk-wash").await?;
    phone.until("document.querySelector('main').innerText.includes('90.0 %, your own')").await?;
    phone.open("shelf").await?;
    phone.put("yields", "lime juice plenty").await?;
    phone.until("document.querySelector('.problem')?.innerText.includes('is no yield')").await?;
    Ok(())
}

#[tokio::test]
async fn a_cordial_stands_for_juice_citrus_and_syrup() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.tap_on("Orchard lantern").await?;
    phone.strip_says("as swizzled 10 s").await?;
    phone.tap_on("More").await?;
    phone.tap_on("Clarify the pear juice").await?;
    // 30 ml at 1.045 g/ml is 31.4 g; a quarter of a percent of that.
    phone.strip_says("0.078 g enzyme").await?;
    phone.back().await?;
    phone.strip_says("as swizzled 10 s").await?;
    phone.tap_on("More").await?;
    phone.finish("A cordial for its juice").await?;
    phone.strip_says("60 ml cordial | in each serve").await?;
    let cells = phone.run("return Object.fromEntries([...document.querySelectorAll('.list > div')].map(c => [c.querySelector('dt').textContent, c.querySelector('dd').textContent.trim()]))").await?;
    for what in ["volume", "strength", "sugar", "acid"] {
        assert_eq!(cells[format!("{what}, fresh")], cells[format!("{what}, cordial")], "{cells}");
    }
    phone.tap_on("Balance").await?;
    phone.strip_says("% vol | Sugar 103, acid 6.99").await?;
    // The cordial goes on with all that it holds.
    let spec = phone.value("spec").await?;
    for part in ["59.97 ml pear cordial (sugar 180.09 g/l, invert ", "citric ", "malic ", "salts "] {
        assert!(spec.contains(part), "{spec}");
    }
    Ok(())
}
