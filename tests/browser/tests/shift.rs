//! Thirty questions of a shift, asked by taps: two to get there, and at most eight after. DEVELOPERS.md lists them, and
//! this file counts its list.

use anyhow::{Result, ensure};
use browser::{Phone, Setup};
use xtask::server::Serving;

/// Most taps to get to a tool, or to a spec in the book, and after.
const THERE: usize = 2;
const MOST: usize = 8;

/// Where a question is asked.
enum At {
    /// At a tool of a place.
    Tool(&'static str, &'static str),
    /// On the page of the first spec of the demo, which lies open: its place, and the spec that was looked at last.
    Spec,
}

use At::{Spec, Tool};

/// The question; where it is asked; what is tapped there, parted by commas: words, keys of the pad after a colon, a choice
/// from a list after @; and what then is in the strip, or on the page.
const QUESTIONS: [(&str, At, &str, &str); 30] = [
    ("How much is 2¼ oz, and with which jiggers?", Tool("Service", "Measure"), ":2 ¼ oz", "66.5 ml"),
    ("This one, for six", Tool("Service", "Scale"), ":6", "6 serves"),
    ("How strong, sweet and sour is it?", Tool("Service", "Balance"), "", "27.3 % vol"),
    ("How cold after 45 seconds?", Tool("Service", "Chill"), ":4 5", "°C"),
    ("How much ice for forty?", Tool("Service", "Ice"), ":4 0", "kg"),
    ("Does it fit the glass?", Tool("Service", "Glass"), ":1 5 8 ml", "Over by 18 ml"),
    ("Too sharp: what do I add?", Tool("Service", "Aim"), "", "To 20.3 : 1"),
    ("Too strong: what do I add?", Tool("Service", "Aim"), "Too strong", "% vol"),
    ("How many limes for 300 ml?", Tool("Prep", "Fruit"), ":3 0 0 ml", "limes"),
    ("Enzyme for 2 l of juice?", Tool("Prep", "Clarify"), ":2 l", "enzyme"),
    ("Sugar and acid for 800 ml of juice?", Tool("Prep", "Cordial"), ":8 0 0 ml", "g sugar"),
    ("Milk for 1.2 l, and does it clot?", Tool("Prep", "Milk wash"), ":1 . 2 l", "240 ml milk"),
    ("Salt for saline?", Tool("Prep", "Infuse"), "", "g"),
    ("Out of limes: which powders?", Tool("Prep", "Acid"), ":5 0 0 ml", "g citric"),
    ("Sugar for 750 ml of syrup?", Tool("Prep", "Syrup"), ":7 5 0 ml", "g sugar"),
    ("Water to let this bottle down?", Tool("Prep", "Strength"), ":7 0 0 ml", "water"),
    ("A batch for forty, with its water", Tool("Batch", "Bottle it"), ":4 0", "40 serves"),
    ("Will the batch freeze?", Tool("Batch", "Bottle it"), "", "begins to freeze near"),
    ("What pressure for four volumes?", Tool("Batch", "Bubbles"), ":4", "1.7 bar"),
    ("How many serves are in 1.1 l?", Tool("Batch", "Serves"), ":1 . 1 l", "serves"),
    ("What is missing, and what does it cost?", Tool("Batch", "To buy"), "@from_spec=demo-1/1", "to get"),
    ("A label for it", Tool("Batch", "Label"), "", "use by"),
    ("How is it made?", Spec, "", "Build over half the ice"),
    ("How is its other form made?", Spec, "stirred", "Stir 30 s"),
    ("Two of them", Spec, "+", "90 ml"),
    ("What must start when for it?", Spec, "Run sheet,See it", "Then build over half the ice"),
    ("Time its stir", Spec, "stirred,Start 30 s", "Stop"),
    ("Whom must I tell of what?", Spec, "stirred", "sulphites"),
    ("What does it cost?", Spec, "More,Cost", "a serve"),
    ("Which of its forms is sharper?", Spec, "More,Compare", "≠"),
];

#[tokio::test]
async fn thirty_questions_of_a_shift() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    // What the bar pays is on its shelf.
    phone.open("shelf").await?;
    let paid = "pear brandy, 700 ml, 24.00\npear juice, 1 l, 3.20\nlemon juice, 1 l, 6.00\nhoney syrup, 1 l, 9.00";
    phone.put("prices", paid).await?;
    let mut unanswered = Vec::new();
    for (question, at, taps, answer) in QUESTIONS {
        if let Err(why) = asked(&phone, &at, taps, answer).await {
            unanswered.push(format!("{question} {why:#}"));
        }
    }
    ensure!(unanswered.is_empty(), "{}", unanswered.join("\n"));
    Ok(())
}

async fn asked(phone: &Phone, at: &At, taps: &str, answer: &str) -> Result<()> {
    let there = match at {
        Tool(place, tool) => {
            phone.go_to(place, tool).await?;
            2
        }
        Spec => {
            // From another place to the spec that is being made: Specs leads to what was looked at there last.
            phone.open("specs/spec?id=demo-1&at=0").await?;
            phone.go_to("Service", "Measure").await?;
            phone.go_to("Specs", "Spec").await?;
            2
        }
    };
    ensure!(there <= THERE, "{there} taps to get there");
    let mut after = 0;
    for words in taps.split(',').filter(|words| !words.is_empty()) {
        // Two taps choose from a list.
        if let Some((field, key)) = words.strip_prefix('@').and_then(|choice| choice.split_once('=')) {
            phone.choose(field, key).await?;
            after += 2;
            continue;
        }
        match words.strip_prefix(':') {
            Some(keys) => {
                if phone.run("return !document.querySelector('.pad')").await? == true {
                    phone.tap("main .field input[inputmode=none]").await?;
                    after += 1;
                }
                phone.press(keys).await?;
                after += keys.split(' ').count();
            }
            None => {
                phone.tap_on(words).await?;
                after += 1;
            }
        }
    }
    ensure!(after <= MOST, "{after} taps");
    let (strip, page) = (phone.strip().await?, phone.words().await?);
    ensure!(strip.contains(answer) || page.contains(answer), "no “{answer}” in {strip}, nor in {page}");
    Ok(())
}

/// The list in DEVELOPERS.md is this one.
#[test]
fn the_questions_are_listed() -> Result<()> {
    let page = std::fs::read_to_string(xtask::root().join("DEVELOPERS.md"))?;
    for (question, ..) in QUESTIONS {
        ensure!(page.contains(question), "not listed: {question}");
    }
    Ok(())
}
