//! What every screen owes everybody: no rule of accessibility broken, nothing moving or clipped,
//! room for wet fingers, no breach of the policy, no request to anybody else.

use anyhow::{Context, Result};
use browser::{DESK, NARROW, PHONE, Phone, Setup, Shape, routes};
use serde_json::Value;
use xtask::server::Serving;

fn axe() -> Result<String> {
    let file = xtask::root().join("tests/browser/node_modules/axe-core/axe.min.js");
    std::fs::read_to_string(file).context("axe-core is missing: run `npm ci` in tests/browser")
}

async fn broken_rules(phone: &Phone, axe: &str) -> Result<Vec<String>> {
    // In an isolated script of the driver, so that the page's own policy stands.
    phone.run(&format!("if (!window.axe) {{ {axe} }}")).await?;
    let tags = "['wcag2a', 'wcag2aa', 'wcag2aaa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']";
    let script = format!(
        "axe.run(document, {{ runOnly: {tags} }}).then(r => done(r.violations.flatMap(v => v.nodes.map(n => v.id + ': ' + n.target + ' ' + n.failureSummary))), e => done([String(e)]))"
    );
    let found = phone.run_async(&script).await?;
    Ok(found.as_array().into_iter().flatten().map(ToString::to_string).collect())
}

#[tokio::test]
async fn no_rule_of_accessibility_is_broken_in_either_look() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let axe = axe()?;
    for light in [false, true] {
        let phone = Phone::start(&serving.url(), &Setup { light, ..Setup::default() }).await?;
        for route in routes() {
            phone.open(route).await?;
            assert_eq!(broken_rules(&phone, &axe).await?, Vec::<String>::new(), "{route}, light: {light}");
        }
        // With the book filled: a list, a card with its forms, an ingredient, a backup.
        phone.open("specs").await?;
        phone.tap_on("Try a demo").await?;
        for route in [
            "specs",
            "specs/spec?id=demo-1",
            // Three beside one another, then more than have room.
            "specs/sides?all=demo-1",
            "specs/sides?from_spec=demo-2%2F0",
            "specs/backup",
            "shelf/ingredients?id=demo-1",
        ] {
            phone.open(route).await?;
            assert_eq!(broken_rules(&phone, &axe).await?, Vec::<String>::new(), "{route}, light: {light}");
        }
        // A spec as it is changed, and what else there is to do with it.
        for face in ["Change", "More"] {
            phone.open("specs/spec?id=demo-1").await?;
            phone.reload().await?;
            phone.tap_on(face).await?;
            assert_eq!(broken_rules(&phone, &axe).await?, Vec::<String>::new(), "{face}, light: {light}");
        }
        phone.tap_on("Taste").await?;
        assert_eq!(broken_rules(&phone, &axe).await?, Vec::<String>::new(), "Taste, light: {light}");
        // With something to settle, and a figure that explains itself.
        phone.open("service/balance").await?;
        phone.type_in("spec", "60 ml gin\n20 ml moon dust").await?;
        phone.tap("main details summary").await?;
        assert_eq!(broken_rules(&phone, &axe).await?, Vec::<String>::new(), "balance, light: {light}");
        // With a problem on screen, and with the back of the pad.
        phone.open("service/measure").await?;
        phone.type_in("amount", "1,000 ml").await?;
        phone.press("more").await?;
        assert_eq!(broken_rules(&phone, &axe).await?, Vec::<String>::new(), "a problem, light: {light}");
    }
    Ok(())
}

#[tokio::test]
async fn the_rules_would_notice() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("service/measure").await?;
    phone.run("document.querySelector('label[for=amount]').remove()").await?;
    assert!(!broken_rules(&phone, &axe()?).await?.is_empty());
    Ok(())
}

#[tokio::test]
async fn nothing_overflows_and_everything_can_be_hit() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    for shape in [PHONE, NARROW, DESK] {
        let phone = Phone::start(&serving.url(), &Setup { shape, ..Setup::default() }).await?;
        phone.open("specs").await?;
        phone.tap_on("Try a demo").await?;
        phone.open("specs/spec?id=demo-1").await?;
        for route in routes() {
            phone.open(route).await?;
            let across = phone.run("return document.documentElement.scrollWidth - innerWidth").await?;
            assert!(across.as_f64().unwrap_or(1.0) <= 0.0, "{route} at {}: {across} too wide", shape.width);
            let clipped = phone.run(CLIPPED).await?;
            assert_eq!(clipped, Value::Array(Vec::new()), "{route} at {}", shape.width);
            // A low window has lower keys.
            let least = if shape.width >= 390 && shape.touch { 54.0 } else { 48.0 };
            let script = format!(
                "const small = (selector, least) => [...document.querySelectorAll(selector)]
                   .filter(e => {{ const r = e.getBoundingClientRect(); return r.width && (r.width < least - .5 || r.height < least - .5) }})
                   .map(e => selector + ': ' + e.textContent);
                 return [...small('.keys .key', {least}), ...small('button:not(.keys .key), .place, .tool, .carry a, .foot a, .bar a, .chip span, select, .field input, summary, .rows li:has(a), .remark a', 48)]"
            );
            assert_eq!(phone.run(&script).await?, Value::Array(Vec::new()), "{route} at {}", shape.width);
        }
    }
    Ok(())
}

/// What is cut off. A figure has room above and below its box, and the scrap of tape lies 3 px over the edge of its cell.
const CLIPPED: &str = "return [...document.querySelectorAll('.strip, .strip .figure, .strip .also, .strip .below, .head h1, .key, .chip span, .place, .tool, .foot a, button')]
   .filter(e => e.scrollWidth > e.clientWidth + 1 || !e.matches('.figure') && e.scrollHeight > e.clientHeight + (e.matches('.chip span') ? 4 : 1))
   .map(e => e.className + ' ' + e.textContent)";

/// Books that a bar may have: none, one drink in one form, in three, in six of long names; and five thousand.
fn book(forms: usize, specs: usize) -> String {
    let name = if forms > 3 { "The long way round the orchard, by lantern" } else { "Weir lamp" };
    let form = if forms > 3 { "as the kitchen likes it after service, number" } else { "form" };
    format!(
        "for (let n = 0; n < {specs}; n++) {{
           const forms = Array.from({{ length: {forms} }}, (_, at) => ({{ name: `{form} ${{at + 1}}`, method: at % 2 ? 'stirred' : 'shaken',
             glass: 'small wine glass', holds: '140 ml', steps: 'Stir 30 s\\nStrain', notes: 'Twice through the sieve.',
             lines: `${{45 + at}} ml pear brandy\\n${{20 + at}} ml lemon juice\\n20 ml ${{n ? 'honey' : 'spiced hedgerow and honey'}} syrup\\nLemon twist`,
             tastings: [{{ at: 1764072000000, words: 'Thin, and the glass was warm: stir it less, and chill the glass.', score: '6', whom: 'the kitchen' }}],
             ...(at ? {{ from: {{ spec: 'id' + n, form: '{form} 1', lines: '40 ml pear brandy', tool: 'cordial' }} }} : {{}}) }}));
           localStorage['meniscus/spec/id' + n] = JSON.stringify({{ v: 1, data: {{ name: '{name} ' + (n || ''), made: 1764072000000, forms }} }});
         }}
         if ({specs}) localStorage['meniscus/ingredient/p'] = JSON.stringify({{ v: 1, data: {{ name: 'spiced hedgerow and honey syrup',
           like: 'honey-syrup', parts: '500 g honey\\n500 g water\\n2 g hedgerow leaves', gives: '800 ml', keeps: '14', made: 1 }} }})"
    )
}

#[tokio::test]
async fn books_of_every_size_fit_in_both_looks() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let axe = axe()?;
    for (forms, specs) in [(0, 0), (1, 1), (3, 1), (6, 1), (2, 5000)] {
        for (light, shape) in [(false, NARROW), (true, PHONE)] {
            let phone = Phone::start(&serving.url(), &Setup { light, shape, ..Setup::default() }).await?;
            phone.open("service/measure").await?;
            phone.run(&book(forms, specs)).await?;
            phone.reload().await?;
            for route in [
                "specs/spec?id=id0&at=0",
                "specs/spec?id=id0&at=1",
                "specs/sides?all=id0",
                "specs/cost?from_spec=id0%2F0",
                "service/aim?from_spec=id0%2F0",
                "batch/buy?from_spec=id0%2F0",
                "shelf/ingredients?id=p",
            ] {
                let at = format!("{route}, {forms} forms, {specs} specs, light: {light}");
                phone.open(route).await?;
                let across = phone.run("return document.documentElement.scrollWidth - innerWidth").await?;
                assert!(across.as_f64().unwrap_or(1.0) <= 0.0, "{at}: {across} too wide");
                // But for a name that the head has no room for: it is whole on the page that changes it.
                let clipped = phone.run(CLIPPED).await?;
                let is_name = |cut: &Value| cut.as_str().is_some_and(|cut| cut.starts_with("two "));
                assert!(clipped.as_array().into_iter().flatten().all(is_name), "{at}: {clipped}");
                assert_eq!(phone.wrongs().await?, Vec::<String>::new(), "{at}");
                if forms > 3 {
                    assert_eq!(broken_rules(&phone, &axe).await?, Vec::<String>::new(), "{at}");
                }
            }
        }
    }
    Ok(())
}

/// The device's text set twice as large: nothing is cut off, and the places stay in sight.
#[tokio::test]
async fn twice_the_text_size_still_fits() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    for shape in [PHONE, NARROW] {
        let phone = Phone::start(&serving.url(), &Setup { shape, ..Setup::default() }).await?;
        for route in routes() {
            phone.open(route).await?;
            phone.run("document.documentElement.style.fontSize = '200%'").await?;
            assert_eq!(phone.run(CLIPPED).await?, Value::Array(Vec::new()), "{route} at {}", shape.width);
            let script = "return document.documentElement.scrollWidth <= innerWidth && document.querySelector('.places').getBoundingClientRect().bottom <= innerHeight + 1";
            assert_eq!(phone.run(script).await?, true, "{route} at {}", shape.width);
        }
    }
    Ok(())
}

/// The page that is left with the pad up, and that the pad can be put away, in every window.
#[tokio::test]
async fn the_pad_leaves_room_in_every_window() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    for (width, height, least, tall) in [
        (390, 844, 320.0, 290.0),
        (320, 640, 200.0, 170.0),
        (360, 560, 80.0, 60.0),
        (667, 375, 0.0, 0.0),
        (740, 360, 0.0, 0.0),
        (640, 400, 0.0, 0.0),
    ] {
        let shape = Shape { width, height, ..PHONE };
        let phone = Phone::start(&serving.url(), &Setup { shape, ..Setup::default() }).await?;
        for (route, least) in [("service/measure", least), ("prep/cordial", tall)] {
            phone.open(route).await?;
            // The words to a newcomer go with the first key.
            phone.press("1").await?;
            let left = phone.run("return document.querySelector('main').clientHeight").await?;
            assert!(left.as_f64().unwrap_or(0.0) >= least, "{route} at {width} × {height}: {left}");
            let whole = "const r = document.querySelector('.key.done').getBoundingClientRect(); return r.top >= 0 && r.bottom <= innerHeight + .5 && r.right <= innerWidth + .5";
            assert_eq!(phone.run(whole).await?, true, "{route} at {width} × {height}: Done is cut off");
            phone.press("Done").await?;
            assert_eq!(phone.run("return !document.querySelector('.pad')").await?, true, "{route}");
        }
    }
    Ok(())
}

#[tokio::test]
async fn the_strip_never_moves() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    let place = "const r = document.querySelector('.strip').getBoundingClientRect(); return [r.x, r.y, r.width, r.height].join(' ')";
    for route in routes() {
        phone.open(route).await?;
        phone.reload().await?;
        let before = phone.run(place).await?;
        if phone.run("return !!document.querySelector('.pad')").await? == true {
            phone.press("1 2 3 ⌫ ⌫ ⌫ ⌫").await?;
            assert_eq!(phone.run(place).await?, before, "{route}");
            phone.press("9 Done").await.context(route)?;
        }
        // The book's own screens are cleared in their own tests.
        let clear = "return ['Empty', 'Start over'].find(words => [...document.querySelectorAll('button')].some(b => b.textContent === words)) ?? ''";
        if let Some(clear) = phone.run(clear).await?.as_str().filter(|words| !words.is_empty()) {
            phone.tap_on(clear).await?;
            assert_eq!(phone.run(place).await?, before, "{route}");
            phone.tap_on("Undo").await?;
            assert_eq!(phone.run(place).await?, before, "{route}");
        } else {
            assert!(
                ["specs", "shelf/ingredients", "batch/run", "find"].iter().any(|book| route.starts_with(book)),
                "{route} clears"
            );
        }
        assert_eq!(phone.run("return window.__shift").await?, 0, "{route}: the layout shifted");
    }
    Ok(())
}

#[tokio::test]
async fn the_policy_is_kept_and_nobody_else_is_asked() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    for route in routes().chain(["specs/spec?id=demo-1", "shelf/ingredients?id=demo-1"]) {
        phone.open(route).await?;
        phone.reload().await?;
        assert_eq!(phone.wrongs().await?, Vec::<String>::new(), "{route}");
        assert_eq!(phone.foreign_requests().await?, Vec::<String>::new(), "{route}");
    }
    assert_eq!(phone.complaints().await?, Vec::<String>::new());
    // And the watch would notice a breach of each kind.
    for (breach, directive) in [
        (
            "const s = document.createElement('script'); s.append('1'); document.head.append(s)",
            "require-trusted-types-for",
        ),
        ("import('data:text/javascript,1').catch(() => {})", "script-src"),
        ("const s = document.createElement('style'); s.append('a {}'); document.head.append(s)", "style-src"),
    ] {
        phone.run(breach).await?;
        phone.until(&format!("window.__wrong.some(w => w.startsWith('policy: {directive}'))")).await?;
    }
    for trusted in [
        "document.createElement('script').textContent = '1'",
        "document.body.innerHTML = '<b>'",
        "new Worker('x.js')",
        "trustedTypes.createPolicy('other', {})",
    ] {
        phone.run("window.__wrong.length = 0").await?;
        let thrown =
            phone.run(&format!("try {{ {trusted}; return '' }} catch (problem) {{ return problem.name }}")).await?;
        assert_eq!(thrown, "TypeError", "{trusted}");
        phone.until("window.__wrong.some(w => w.includes('trusted-types'))").await.context(trusted)?;
    }
    phone.run_async("fetch('https://example.org/').then(() => done(1), () => done(0))").await?;
    phone.until("window.__wrong.some(w => w.includes('example.org'))").await?;
    Ok(())
}

#[tokio::test]
async fn it_can_be_installed() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let profile = tempfile::tempdir()?;
    let setup = Setup { profile: Some(profile.path().to_path_buf()), ..Setup::default() };
    let phone = Phone::start(&serving.url(), &setup).await?;
    phone.open("shelf").await?;
    phone.is_kept().await?;
    let manifest = phone.cdp("Page.getAppManifest", serde_json::json!({})).await?;
    assert_eq!(manifest["errors"], Value::Array(Vec::new()), "{manifest}");
    let problems = phone.cdp("Page.getInstallabilityErrors", serde_json::json!({})).await?;
    assert_eq!(problems["installabilityErrors"], Value::Array(Vec::new()), "{problems}");
    // Every picture the manifest and the page name is there.
    let missing = phone.run_async(
        "fetch('manifest.webmanifest').then(r => r.json()).then(async m => {
           const named = [...m.icons, ...m.screenshots, ...m.shortcuts.flatMap(s => s.icons)].map(p => p.src).concat([...document.querySelectorAll('link[rel*=icon]')].map(l => l.href));
           const missing = []; for (const src of named) if (!(await fetch(src)).ok) missing.push(src); done(missing) }).catch(e => done(String(e)))",
    ).await?;
    assert_eq!(missing, Value::Array(Vec::new()));
    assert!(phone.words().await?.contains("Add to Home Screen"));
    phone.tap_on("Don't show again").await?;
    phone.reload().await?;
    assert!(!phone.words().await?.contains("Add to Home Screen"));
    Ok(())
}
