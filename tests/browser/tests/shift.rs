//! Eighteen questions of a shift, asked by taps: two to get there, and at most eight after.

use anyhow::{Result, ensure};
use browser::{Phone, Setup};
use xtask::server::Serving;

/// The place and the tool, what is pressed there, and what the strip then says.
const QUESTIONS: [(&str, &str, &str, &str); 18] = [
    ("Service", "Measure", "2 ¼ oz", "66.5 ml"),
    ("Service", "Scale", "6", "6 serves"),
    ("Service", "Balance", "", "27.3 % vol"),
    ("Service", "Chill", "4 5", "°C"),
    ("Service", "Ice", "4 0", "kg"),
    ("Service", "Glass", "1 5 8 ml", "Over by 18 ml"),
    ("Service", "Aim", "", "To 20.3 : 1"),
    ("Prep", "Fruit", "3 0 0 ml", "limes"),
    ("Prep", "Clarify", "2 l", "enzyme"),
    ("Prep", "Cordial", "8 0 0 ml", "g sugar"),
    ("Prep", "Milk wash", "1 . 2 l", "240 ml milk"),
    ("Prep", "Infuse", "", "g"),
    ("Prep", "Acid", "5 0 0 ml", "g citric"),
    ("Prep", "Syrup", "7 5 0 ml", "g sugar"),
    ("Prep", "Strength", "7 0 0 ml", "water"),
    ("Batch", "Bottle it", "4 0", "40 serves"),
    ("Batch", "Bubbles", "4", "1.7 bar"),
    ("Batch", "Serves", "1 . 1 l", "serves"),
];

/// Most taps after one has got there.
const MOST: usize = 8;

#[tokio::test]
async fn eighteen_questions_of_a_shift() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("shelf").await?;
    for (place, tool, keys, answer) in QUESTIONS {
        phone.go_to(place, tool).await?;
        if !keys.is_empty() {
            ensure!(keys.split(' ').count() <= MOST, "{tool} takes more than {MOST} taps");
            if phone.run("return !document.querySelector('.pad')").await? == true {
                phone.tap("main .field input[inputmode=none]").await?;
            }
            phone.press(keys).await?;
        }
        phone.strip_says(answer).await?;
    }
    Ok(())
}
