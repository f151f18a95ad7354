//! How fast the app starts and answers, on a processor four times slower than this one.

mod planted;
mod starts;
mod work;

use anyhow::Result;
use browser::{Phone, number_fields};
use meniscus::screen::route::Route;
use xtask::server::Serving;

const SLOWER: u32 = 4;

#[tokio::main]
async fn main() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    println!("\nin Chromium, processor slowed {SLOWER} times; what else the machine does makes these longer");
    starts::measure(&serving).await?;
    let phone = starts::slow_phone(&serving, false).await?;
    keystrokes(&phone).await?;
    drop(phone);
    seconds(&starts::slow_phone(&serving, false).await?).await
}

async fn keystrokes(phone: &Phone) -> Result<()> {
    println!(
        "\none keystroke in a number field: from its input event until all it changed stands and is laid out\n\
         (scripts and layout, not painting), median of {}",
        work::KEYSTROKES
    );
    let (of_records, tools): (Vec<_>, Vec<_>) = number_fields().into_iter().partition(|(path, _)| is_of_record(path));
    for (route, field) in tools {
        phone.open(route).await?;
        print_keystroke(phone, route, field).await?;
    }
    planted::plant(phone).await?;
    for (route, field) in of_records {
        let step = if route == "batch/run" { format!("&step={}", planted::STEP_THAT_GIVES) } else { String::new() };
        phone.open(&format!("{route}?id={}{step}", planted::ID)).await?;
        // A spec is read first.
        if phone
            .run("return [...document.querySelectorAll('.head button')].some(b => b.textContent === 'Change')")
            .await?
            == true
        {
            phone.tap_on("Change").await?;
        }
        print_keystroke(phone, route, field).await?;
    }
    Ok(())
}

/// Whether a screen shows a record of the book: one must be open.
fn is_of_record(path: &str) -> bool {
    Route::ALL.iter().any(|route| route.row().path == path && route.row().record.is_some())
}

async fn print_keystroke(phone: &Phone, route: &str, field: &str) -> Result<()> {
    println!("{:>9.1} ms  {route}, {field}", work::keystroke(phone, field).await?);
    Ok(())
}

async fn seconds(phone: &Phone) -> Result<()> {
    phone.open("service/measure").await?;
    planted::plant(phone).await?;
    println!(
        "\none second of a running timer: from the call of what the app does every second, the clock a second on,\n\
         until all it changed stands and is laid out; a run sheet of six preps, one timer running; median of {}",
        work::SECONDS
    );
    phone.open(&format!("batch/run?id={}&step={}", planted::ID, planted::STEP_THAT_WAITS)).await?;
    println!("{:>9.1} ms  on the run sheet", work::second(phone, ".strip .figure").await?);
    phone.open("service/measure").await?;
    println!("{:>9.1} ms  on Measure, with the line of what is due", work::second(phone, ".due b").await?);
    Ok(())
}

fn median(values: impl Iterator<Item = f64>) -> f64 {
    let mut sorted: Vec<f64> = values.collect();
    sorted.sort_by(f64::total_cmp);
    sorted[sorted.len() / 2]
}
