//! The first screen, before the app stands; and what the device hands over to it.

use anyhow::{Result, ensure};
use browser::{DESK, NARROW, PHONE, Phone, Setup, phone_with};
use serde_json::json;
use xtask::server::Serving;

/// Notes where everything stands, and what it says: at first, and when it is asked.
const PLACES: &str = "
window.__places = () => [...document.querySelectorAll('#app *')].map((e) => {
  const r = e.getBoundingClientRect();
  return [e.localName, e.value ?? e.textContent, r.x, r.y, r.width, r.height].join('|');
});
addEventListener('DOMContentLoaded', () => (window.__first = __places()));";

/// Holds the wasm back until `__go()`, or what of it is named, in a tab that says so; and counts what could not wait for it.
const HOLD: &str = "
const held = sessionStorage.hold;
window.__asked = 0;
addEventListener('meniscus-rest', () => window.__asked++);
if (held) {
  const get = fetch;
  const open = [];
  let holds = true;
  window.fetch = (what, ...rest) => {
    if (!holds || !String(what).endsWith(held)) return get(what, ...rest);
    window.__go ??= () => { holds = false; open.forEach((go) => go()); };
    return new Promise((go) => open.push(() => go(get(what, ...rest))));
  };
}";

/// Opens an address anew while the wasm is held back.
async fn open_held(phone: &Phone, at: &str) -> Result<()> {
    open_without(phone, ".wasm", at).await
}

/// Opens an address anew while what ends so is held back.
async fn open_without(phone: &Phone, held: &str, at: &str) -> Result<()> {
    phone.run(&format!("sessionStorage.hold = '{held}'")).await?;
    // Left first, as a person does, and come back to.
    phone.run(&format!("location.assign('?again={at}#/{at}')")).await?;
    phone.until(&format!("window.__go && location.hash === '#/{at}'")).await
}

async fn go_on(phone: &Phone) -> Result<()> {
    phone.run("const go = __go; delete window.__go; sessionStorage.clear(); go()").await?;
    phone.is_up().await
}

#[tokio::test]
async fn the_app_takes_the_place_of_the_first_screen_and_nothing_moves() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    for shape in [PHONE, NARROW, DESK] {
        let phone = Phone::start(&serving.url(), &Setup { shape, before: PLACES.into(), ..Setup::default() }).await?;
        phone.open("service/measure").await?;
        let differences =
            "return __places().map((now, at) => [__first[at], now]).filter(([before, now]) => before !== now)";
        assert_eq!(phone.run(differences).await?, json!([]), "at {}", shape.width);
        ensure!(phone.run("return __first.length === __places().length && __first.length > 40").await? == true);
        assert_eq!(phone.run("return __shift").await?, json!(0), "at {}", shape.width);
    }
    Ok(())
}

#[tokio::test]
async fn what_is_tapped_before_the_app_stands_is_done_when_it_does() -> Result<()> {
    let (_serving, phone) = phone_with(HOLD).await?;
    phone.open("service/measure").await?;
    open_held(&phone, "service/measure").await?;
    phone.press("2 oz").await?;
    assert_eq!(phone.run("return document.getElementById('amount').value !== '2 oz'").await?, true);
    go_on(&phone).await?;
    phone.strip_says("59.1 ml | Pour 2 oz").await?;
    // Another place opens its sheet of tools.
    phone.run("localStorage.clear()").await?;
    open_held(&phone, "service/measure").await?;
    phone.tap_on("Batch").await?;
    ensure!(phone.run("return !document.querySelector('.places.open')").await? == true);
    go_on(&phone).await?;
    phone.until("document.querySelector('.places.open .tool[href=\"#/batch/serves\"]')").await?;
    Ok(())
}

#[tokio::test]
async fn a_first_visit_is_answered_before_the_rest_of_the_app_is_here() -> Result<()> {
    let (_serving, phone) = phone_with(HOLD).await?;
    phone.open("service/measure").await?;
    phone.run("localStorage.clear()").await?;
    open_without(&phone, "_rest.wasm", "service/measure").await?;
    phone.until("document.querySelector('#app:not([data-first]) > #page')").await?;
    // All that can be typed on it.
    phone.press("2 oz").await?;
    phone.strip_says("59.1 ml | Pour 2 oz").await?;
    phone.choose("liquid", "simple-syrup").await?;
    phone.put("at", "30").await?;
    phone.strip_says("59.1 ml | Pour 2 oz").await?;
    assert_eq!(phone.run("return __asked").await?, 0, "nothing had to wait for it");
    // What needs it is kept, and done then.
    phone.tap_on("Batch").await?;
    ensure!(phone.run("return !document.querySelector('.places.open')").await? == true);
    go_on(&phone).await?;
    phone.until("document.querySelector('.places.open .tool[href=\"#/batch/serves\"]')").await?;
    assert_eq!(phone.run("return __asked").await?, 0);
    // An address that is typed in cannot be kept: the rest is fetched there and then.
    phone.run("localStorage.clear()").await?;
    open_without(&phone, "_rest.wasm", "service/measure").await?;
    phone.until("document.querySelector('#app:not([data-first]) > #page')").await?;
    phone.run("location.hash = '#/prep/syrup'").await?;
    phone.until("document.title.startsWith('Syrup')").await?;
    ensure!(phone.run("return __asked > 0 && document.documentElement.hasAttribute('data-starting')").await? == true);
    go_on(&phone).await
}

#[tokio::test]
async fn no_answer_stands_there_that_is_not_so() -> Result<()> {
    let (_serving, phone) = phone_with(HOLD).await?;
    phone.open("prep/milk-wash").await?;
    phone.press("5 0 0 ml").await?;
    phone.strip_says("100 ml milk").await?;
    let seen = "return [...document.querySelectorAll('#app[data-first] > *')].filter(e => getComputedStyle(e).visibility === 'visible').map(e => e.localName)";
    // The one that was left: what it said last.
    open_held(&phone, "prep/milk-wash").await?;
    phone.strip_says("100 ml milk").await?;
    assert_eq!(phone.run(seen).await?, json!(["output"]));
    go_on(&phone).await?;
    phone.strip_says("100 ml milk").await?;
    // Another: nothing yet.
    open_held(&phone, "batch/serves").await?;
    phone.strip_says("Opening the bench").await?;
    assert_eq!(phone.run(seen).await?, json!(["output"]));
    go_on(&phone).await?;
    phone.strip_says("serves of").await?;
    // Measure again, with texts of a person's own: the pad is as it will be, the fields are not.
    open_held(&phone, "service/measure").await?;
    phone.strip_says("Opening the bench").await?;
    let seen = phone.run(seen).await?;
    ensure!(
        seen.as_array().is_some_and(|seen| seen.contains(&json!("nav")) && !seen.contains(&json!("main"))),
        "{seen}"
    );
    phone.press("3 3 ml").await?;
    go_on(&phone).await?;
    phone.until("document.getElementById('amount').value === '33 ml'").await?;
    // What time changes is not shown when it has gone on.
    phone.open("batch/run").await?;
    open_held(&phone, "batch/run").await?;
    phone.strip_says("Opening the bench").await?;
    go_on(&phone).await
}

#[tokio::test]
async fn the_bar_of_the_phone_follows_the_look() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("shelf").await?;
    let bars = "return [...document.querySelectorAll('meta[name=theme-color]')].map(m => m.content).join()";
    let own = phone.run(bars).await?;
    assert_eq!(own, "#f6f3ea,#15191c");
    phone.tap_on("Paper").await?;
    phone.until("document.documentElement.dataset.theme === 'paper'").await?;
    assert_eq!(phone.run(bars).await?, "#f6f3ea,#f6f3ea");
    // The very colour of the page.
    assert_eq!(
        phone.run("return getComputedStyle(document.documentElement).backgroundColor").await?,
        "rgb(246, 243, 234)"
    );
    phone.reload().await?;
    assert_eq!(phone.run(bars).await?, "#f6f3ea,#f6f3ea");
    Ok(())
}

#[tokio::test]
async fn a_recipe_shared_from_another_app_is_looked_at_once() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    let shared = "?title=Orchard+lantern&text=45+ml+pear+brandy%0A20+ml+dry+vermouth&url=";
    phone.cdp("Page.navigate", json!({ "url": format!("{}{shared}", phone.url) })).await?;
    phone.strip_says("64.9 ml before ice").await?;
    ensure!(phone.words().await?.contains("Not yours yet"));
    assert_eq!(phone.run("return location.hash + location.search").await?, "#/specs/backup");
    assert_eq!(phone.stored("spec/").await?, Vec::<String>::new());
    phone.tap_on("Keep it").await?;
    phone.until("location.hash.startsWith('#/specs/spec')").await?;
    ensure!(phone.stored("spec/").await?[0].contains("Orchard lantern"));
    // It is taken once.
    phone.reload().await?;
    ensure!(!phone.words().await?.contains("Not yours yet"), "{}", phone.words().await?);
    Ok(())
}

#[tokio::test]
async fn a_file_opened_with_the_app_and_a_shortcut_come_to_the_page_that_is_open() -> Result<()> {
    let before =
        "Object.defineProperty(window, 'launchQueue', { value: { setConsumer(then) { window.__launch = then } } })";
    let (_serving, phone) = phone_with(before).await?;
    phone.open("service/measure").await?;
    // The launch that opened it changes nothing.
    phone.run("__launch({ files: [], targetURL: location.href })").await?;
    phone.run("__launch({ files: [], targetURL: new URL('./#/batch/run', location.href).href })").await?;
    phone.until("location.hash === '#/batch/run'").await?;
    phone.run("__launch({ files: [{ getFile: async () => new File(['Orchard lantern\\n45 ml pear brandy'], 'a.meniscus') }], targetURL: location.href })").await?;
    phone.until("location.hash === '#/specs/backup'").await?;
    phone.strip_says("45 ml before ice").await?;
    let accepts = phone
        .run("return fetch('manifest.webmanifest').then(r => r.json()).then(m => m.file_handlers[0].accept)")
        .await?;
    assert_eq!(accepts, json!({ "application/x-meniscus": [".meniscus"] }));
    Ok(())
}
