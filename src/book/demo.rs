//! Something to try the book with: a small restaurant bar gets ready for a harvest supper of forty. Invented, all of it.

use super::card::{Card, Way};
use super::own::Own;

/// What the ids of the demo begin with, so that it can be taken away in one tap.
pub const DEMO: &str = "demo-";

fn way(name: &str, lines: &str, method: &str, glass: (&str, &str), ice: &str, garnish: &str, steps: &str) -> Way {
    Way {
        name: name.into(),
        lines: lines.into(),
        method: method.into(),
        glass: glass.0.into(),
        holds: glass.1.into(),
        ice: ice.into(),
        garnish: garnish.into(),
        steps: steps.into(),
        ..Way::default()
    }
}

/// The specs, with their ids.
#[must_use]
pub fn demo_cards(now: u64) -> Vec<(String, Card)> {
    let card = |name: &str, notes: &str, ways: Vec<Way>| Card {
        name: name.into(),
        tags: "harvest supper, autumn".into(),
        notes: notes.into(),
        made: now,
        ways,
    };
    let tumbler = ("tumbler", "300 ml");
    let stem = ("small wine glass", "140 ml");
    let all = [
        card(
            "Orchard lantern",
            "First drink of the supper, forty guests. 11 coins.",
            vec![
                way(
                    "quick",
                    "45 ml pear brandy\n30 ml pear juice\n15 ml lemon juice\n15 ml honey syrup",
                    "built",
                    tumbler,
                    "crushed",
                    "pear slice",
                    "Build over half the ice\nSwizzle 10 s\nTop with the rest of the ice",
                ),
                way(
                    "stirred",
                    "45 ml pear brandy\n20 ml dry vermouth\n15 ml orchard cordial\n2 dash orange bitters",
                    "stirred",
                    stem,
                    "none",
                    "lemon twist",
                    "Stir 30 s\nStrain",
                ),
                way(
                    "washed",
                    "900 ml pear brandy\n400 ml dry vermouth\n300 ml orchard cordial\n150 ml lemon juice\n350 ml whole milk",
                    "blended",
                    stem,
                    "one clear block",
                    "none",
                    "Pour the drink slowly over the milk\nRest 45 min\nFilter through the curd, 2 h",
                ),
            ],
        ),
        card(
            "Hedgerow clerk",
            "With the second course. 12 coins. The blackberry varies: taste before the batch.",
            vec![
                way(
                    "quick",
                    "50 ml London dry gin\n20 ml lemon juice\n20 ml hedge syrup\n10 ml verjus",
                    "shaken",
                    tumbler,
                    "cubed",
                    "blackberry",
                    "Shake 12 s\nStrain over fresh ice",
                ),
                way(
                    "clear",
                    "50 ml London dry gin\n25 ml hedge syrup\n20 ml verjus\n40 ml soda water",
                    "carbonated",
                    ("tall glass", "280 ml"),
                    "one clear block",
                    "none",
                    "Chill all of it to 2 °C\nCarbonate 3 min, rest 1 min, again",
                ),
            ],
        ),
        card(
            "Teapot magistrate",
            "After supper. 10 coins. Milk: tell every guest.",
            vec![
                way(
                    "quick",
                    "45 ml rye whiskey\n20 ml amaro\n10 ml maple syrup\n20 ml lemon juice",
                    "shaken",
                    stem,
                    "none",
                    "grated nutmeg",
                    "Shake 12 s\nStrain twice",
                ),
                way(
                    "stirred",
                    "45 ml rye whiskey\n20 ml amaro\n10 ml sweet vermouth\n2 dash aromatic bitters",
                    "stirred",
                    tumbler,
                    "one clear block",
                    "orange twist",
                    "Stir 25 s\nStrain over the block",
                ),
                way(
                    "washed",
                    "900 ml rye whiskey\n400 ml black tea\n300 ml honey syrup\n250 ml lemon juice\n370 ml whole milk",
                    "blended",
                    tumbler,
                    "one clear block",
                    "none",
                    "Milk into the vessel\nPour the drink over it\nRest 1 h\nFilter",
                ),
            ],
        ),
    ];
    all.into_iter().enumerate().map(|(number, card)| (format!("{DEMO}{}", number + 1), card)).collect()
}

/// The bar's own preps, with their ids.
#[must_use]
pub fn demo_own(now: u64) -> Vec<(String, Own)> {
    let own = |name: &str, like: &str, brix: &str, acid: &str, notes: &str| Own {
        name: name.into(),
        like: like.into(),
        brix: brix.into(),
        acid: acid.into(),
        notes: notes.into(),
        made: now,
        ..Own::default()
    };
    let all = [
        own("orchard cordial", "cordial", "44", "22", "Pear, clarified; citric and malic 4 : 1. Cold, two weeks."),
        own("hedge syrup", "raspberry-syrup", "52", "9", "Blackberry and bay. Cold, one week. 3 coins the litre."),
    ];
    all.into_iter().enumerate().map(|(number, own)| (format!("{DEMO}{}", number + 1), own)).collect()
}
