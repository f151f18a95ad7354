//! The smoke set in Firefox and in WebKit: the app starts, says on every screen what it says without a browser, keeps
//! what is typed, opens links, and does so with the server gone, and where nothing can be saved.

use std::time::Instant;

use anyhow::{Context, Result, bail, ensure};
use browser::{Phone, Saving, Twin, number_fields};
use meniscus::screen::Act;
use meniscus::screen::route::Route;
use meniscus::store::SaveProblem;
use xtask::engines::Engine;
use xtask::server::Serving;

const TYPED: &str = "33";
/// A link that brings a spec of the demo to what is to be bought.
const BUYING: &str = "batch/buy?from_spec=demo-1%2F0";
/// A link that carries an amount, and one to a record of the demo.
const CARRYING: &str = "prep/milk-wash?drink=500+ml";
const RECORD: &str = "specs/spec?id=demo-1";

#[tokio::main]
async fn main() -> Result<()> {
    let asked: Vec<String> = std::env::args().skip(1).collect();
    if let Some(unknown) = asked.iter().find(|name| !Engine::ALL.iter().any(|engine| engine.name() == *name)) {
        bail!("no engine {unknown}");
    }
    for engine in Engine::ALL {
        let name = engine.name();
        if asked.is_empty() || asked.iter().any(|asked| asked == name) {
            let started = Instant::now();
            smoke(engine).await.with_context(|| format!("in {name}"))?;
            without_saving(engine).await.with_context(|| format!("in {name}, where nothing can be saved"))?;
            println!("{name}: all of it holds, after {} s", started.elapsed().as_secs());
        }
    }
    Ok(())
}

async fn smoke(engine: Engine) -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::in_engine(engine, &serving.url(), Saving::Allowed).await?;
    let twin = &mut Twin::default();
    let name = engine.name();
    answers_everywhere(&phone, twin).await?;
    println!("{name}: {} of {0} screens answer", Route::ALL.len());
    println!("{name}: {} tools follow the keyboard and keep it over a reload", is_typed_in(&phone, twin).await?);
    opens_links(&phone, twin).await?;
    println!("{name}: links open");
    if phone.run("return 'serviceWorker' in navigator").await? == true {
        phone.is_kept().await?;
        drop(serving);
        let gone = phone.run_async("fetch('./no-such-file').then(() => done('answered'), () => done('gone'))").await?;
        ensure!(gone == "gone", "the server answers though it is gone");
        phone.leave().await?;
        twin.leave();
        answers_everywhere(&phone, twin).await?;
        println!("{name}: {} of {0} screens answer with the server gone", Route::ALL.len());
    } else {
        println!("{name}: NOT TRIED with the server gone: this build of the engine has no service workers");
    }
    ensure!(phone.foreign_requests().await?.is_empty(), "asked for {:?}", phone.foreign_requests().await?);
    Ok(())
}

async fn without_saving(engine: Engine) -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::in_engine(engine, &serving.url(), Saving::Blocked).await?;
    let twin = &mut Twin::default();
    let (route, field) = number_fields()[0];
    phone.open(route).await?;
    twin.open(route);
    ensure!(phone.words().await?.contains(&SaveProblem::Blocked.to_string()), "it does not say so");
    twin.type_in(field, TYPED);
    phone.type_in(field, TYPED).await?;
    phone.strip_says(&twin.strip()).await?;
    println!("{}: starts, says so and answers where nothing can be saved", engine.name());
    Ok(())
}

/// Every screen says what it says without a browser; where that is the time, it says something.
async fn answers_everywhere(phone: &Phone, twin: &mut Twin) -> Result<()> {
    for row in Route::ALL.iter().map(|route| route.row()) {
        twin.open(row.path);
        phone.open(row.path).await?;
        let expected = if row.shows_time { " | ".to_owned() } else { twin.strip() };
        phone.strip_says(&expected).await.with_context(|| row.path)?;
        ensure!(phone.strip().await?.len() > " | ".len(), "{} says nothing", row.path);
    }
    Ok(())
}

/// What the example of Cost is made of, bought.
const PRICE: &str = "pear brandy, 700 ml, 24.00";

/// Types a number into the first field for one of each tool; says in how many.
async fn is_typed_in(phone: &Phone, twin: &mut Twin) -> Result<usize> {
    // What is lost of what is bought changes nothing until a spec is chosen: that is tried by a link.
    let is_tool = |path: &str| {
        Route::ALL.iter().any(|route| route.row().path == path && route.row().record.is_none())
            && path != Route::Buy.row().path
    };
    let fields: Vec<_> = number_fields().into_iter().filter(|(path, _)| is_tool(path)).collect();
    // What a drink costs depends on its numbers once something has a price.
    twin.open("shelf");
    phone.open("shelf").await?;
    twin.type_in("prices", PRICE);
    phone.type_in("prices", PRICE).await?;
    for (route, field) in &fields {
        twin.open(route);
        phone.open(route).await?;
        let before = twin.strip();
        twin.type_in(field, TYPED);
        phone.type_in(field, TYPED).await?;
        ensure!(before != twin.strip(), "{TYPED} in {field} of {route} changes nothing: {before}");
        phone.strip_says(&twin.strip()).await.with_context(|| format!("{TYPED} in {field} of {route}"))?;
        phone.reload().await?;
        phone.strip_says(&twin.strip()).await.with_context(|| format!("{route} after a reload"))?;
        // With the unit that stood there, where one did.
        ensure!(phone.value(field).await?.split(' ').next() == Some(TYPED), "{field} of {route} is not kept");
    }
    Ok(fields.len())
}

async fn opens_links(phone: &Phone, twin: &mut Twin) -> Result<()> {
    twin.open("specs");
    phone.open("specs").await?;
    twin.act(&Act::Demo);
    phone.tap_on("Try a demo").await?;
    for link in [CARRYING, RECORD, BUYING] {
        phone.leave().await?;
        twin.leave();
        twin.open(link);
        phone.open(link).await?;
        phone.strip_says(&twin.strip()).await.with_context(|| link)?;
    }
    Ok(())
}
