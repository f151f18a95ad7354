//! The job's whole story on a phone, from nothing and then with no network: one drink in its forms through Clarify, Cordial
//! and Milk wash, side by side, aimed, costed, listed, labelled, undone, reloaded; and its taps counted.

use std::cell::Cell;

use anyhow::{Result, ensure};
use browser::{Phone, Setup};
use xtask::server::Serving;

/// Taps that all of it may take; a field that is typed in counts as one.
const MOST: usize = 80;

struct Story {
    phone: Phone,
    taps: Cell<usize>,
}

impl Story {
    fn count(&self, taps: usize) {
        self.taps.set(self.taps.get() + taps);
    }

    async fn tap(&self, words: &str) -> Result<()> {
        self.count(1);
        self.phone.tap_on(words).await
    }

    async fn write(&self, field: &str, text: &str) -> Result<()> {
        self.count(1);
        self.phone.put(field, text).await
    }

    async fn go(&self, place: &str, tool: &str) -> Result<()> {
        self.count(2);
        self.phone.go_to(place, tool).await
    }

    /// Opens a form of the drink, from wherever one is.
    async fn form(&self, name: &str) -> Result<()> {
        self.go("Specs", "Book").await?;
        self.count(1);
        self.phone.tap("main a[href*=\"specs/spec?id\"]").await?;
        self.tap(name).await
    }

    /// Makes a form of what a tool under More works out.
    async fn through(&self, form: &str, link: &str, strip: &str) -> Result<()> {
        // While there is one form, it is open.
        if !form.is_empty() {
            self.form(form).await?;
        }
        self.tap("More").await?;
        self.tap(link).await?;
        self.phone.strip_says(strip).await?;
        if self.phone.run("return !!document.querySelector('.pad')").await? == true {
            self.count(1);
            self.phone.press("Done").await?;
        }
        self.tap("As a form of Weir lamp").await
    }

    async fn says(&self, words: &str) -> Result<()> {
        let shown = self.phone.words().await?;
        ensure!(shown.contains(words), "no “{words}” in {shown}");
        Ok(())
    }
}

#[tokio::test]
async fn one_drink_in_its_forms() -> Result<()> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    phone.open("specs").await?;
    phone.is_kept().await?;
    phone.reload().await?;
    // From here on there is no network.
    drop(serving);
    let story = Story { phone, taps: Cell::new(0) };
    // Written down once.
    story.tap("New spec").await?;
    story.write("name", "Weir lamp").await?;
    story.tap("As text").await?;
    story.write("lines", "45 ml pear brandy\n25 ml lime juice\n20 ml honey syrup\nPear slice").await?;
    story.tap("Shaken").await?;
    story.write("steps", "Shake 12 s\nStrain").await?;
    story.write("glass", "coupe").await?;
    story.write("way", "quick").await?;
    story.tap("Done").await?;
    story.phone.strip_says("ml in the glass").await?;
    // Its other forms come from it.
    story.through("", "Clarify the lime juice", "should come clear").await?;
    story.says("clear lime juice").await?;
    story.through("quick", "A cordial for its juice", "cordial | in each serve").await?;
    story.says("lime cordial").await?;
    story.through("quick", "Wash it with milk", "ml milk").await?;
    story.says("whole milk").await?;
    story.phone.strip_says("through the milk").await?;
    // Side by side.
    story.tap("More").await?;
    story.tap("Compare").await?;
    story.says("≠").await?;
    story.says("milk-washed").await?;
    // Too sharp.
    story.form("quick").await?;
    story.tap("Too sharp?").await?;
    story.phone.strip_says("To ").await?;
    story.tap("As a form of Weir lamp").await?;
    story.says("honey syrup").await?;
    // What it costs, priced where that is missed.
    story.tap("More").await?;
    story.tap("Cost").await?;
    for (of, price) in
        [("pear brandy", "24.00 for 700 ml"), ("lime juice", "6.00 for 1 l"), ("honey syrup", "5 for 500 ml")]
    {
        story.write("price", price).await?;
        story.tap(&format!("Keep {price} for {of}")).await?;
    }
    story.phone.strip_says("a serve").await?;
    // What to buy for forty of them.
    story.form("quick").await?;
    story.tap("More").await?;
    story.tap("To buy").await?;
    story.write("serves", "40").await?;
    story.phone.strip_says("4 of 4 to get").await?;
    // By the litre, as it was priced.
    story.says("lime juice").await?;
    // Labelled.
    story.form("milk-washed").await?;
    story.tap("Label it").await?;
    story.says("milk").await?;
    // The first form is changed: the others say so, and are worked out anew.
    story.form("quick").await?;
    story.tap("Change").await?;
    story.write("lines", "45 ml pear brandy\n22 ml lime juice\n20 ml honey syrup\nPear slice").await?;
    story.tap("Done").await?;
    story.says("out of step").await?;
    story.tap("cordial").await?;
    story.says("whose lines have changed since").await?;
    story.tap("Work it out anew").await?;
    let words = story.phone.words().await?;
    ensure!(!words.contains("have changed since"), "{words}");
    // Undone, and there after a reload.
    story.tap("Undo").await?;
    story.says("whose lines have changed since").await?;
    story.tap("Leave it as it is").await?;
    let taps = story.taps.get();
    println!("The whole story takes {taps} taps.");
    ensure!(taps <= MOST, "{taps} taps");
    story.phone.reload().await?;
    story.says("lime cordial").await?;
    for form in ["quick", "clarified", "cordial", "milk-washed", "aimed"] {
        story.says(form).await?;
    }
    ensure!(story.phone.wrongs().await?.is_empty(), "{:?}", story.phone.wrongs().await?);
    Ok(())
}
