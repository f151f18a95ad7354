//! What is bought: from a spec, a batch, the ice of a night and a run, to a list that is ticked.

use crate::bar::Tab;
use crate::faulty::Faulty;
use meniscus::screen::{Act, Block};

/// The list: "x pear brandy 700 ml".
fn list(tab: &mut Tab<'_>) -> Vec<String> {
    let mut list = Vec::new();
    for block in &tab.view().screen.blocks {
        let Block::Pours(pours) = block else { continue };
        list.extend(pours.lines.iter().map(|line| {
            let tick = if line.tick == Some(true) { "x " } else { "" };
            format!("{tick}{} {}", line.name, line.amount).replace('\u{202f}', " ")
        }));
    }
    list
}

/// Taps a thing of the list.
fn tick(tab: &mut Tab<'_>, name: &str) {
    let view = tab.view();
    let mut lines = view.screen.blocks.iter().flat_map(|block| match block {
        Block::Pours(pours) => pours.lines.clone(),
        _ => Vec::new(),
    });
    let act = lines.find(|line| line.name == name).and_then(|line| line.act).expect("a thing to tick");
    tab.act(act);
}

fn with_demo() -> Faulty {
    let keeper = Faulty::default();
    Tab::open(&keeper, "specs").act(Act::Demo);
    keeper
}

#[test]
fn a_spec_is_bought_for_ticked_and_still_so_tomorrow() {
    let keeper = with_demo();
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1&at=1");
    let buy = tab.tap("More").link("To buy");
    tab.go(&buy);
    assert_eq!(tab.value("serves"), "10");
    tab.type_in("serves", "40");
    let all = [
        "orchard cordial 600 ml",
        "orange bitters 64 ml",
        "pear brandy 3 × 700 ml",
        "dry vermouth 2 × 750 ml",
        "ice 9 kg",
        "lemon twist 40",
    ];
    let mut there = list(&mut tab);
    there.sort();
    assert_eq!(there.len(), all.len(), "{there:?}");
    assert!(all.iter().all(|thing| there.iter().any(|there| there == thing)), "{there:?}");
    assert_eq!(tab.strip(), "6 of 6 to get | No prices yet");
    tick(&mut tab, "pear brandy");
    assert_eq!(tab.strip(), "5 of 6 to get | No prices yet");
    tab.act(Act::Undo);
    assert_eq!(tab.strip(), "6 of 6 to get | No prices yet");
    tick(&mut tab, "pear brandy");
    // Another spec beside it, from its own page; then the same tomorrow.
    let buy = tab.go("specs/spec?id=demo-2&at=0").tap("More").link("To buy");
    tab.go(&buy);
    assert_eq!(tab.rows(), ["Orchard lantern, stirred|40|", "Hedgerow clerk, quick|10|Its number stands above."]);
    let mut later = Tab::open(&keeper, "batch/buy");
    assert!(list(&mut later).contains(&"x pear brandy 3 × 700 ml".to_owned()), "{:?}", list(&mut later));
    later.tap("Untick all");
    assert!(list(&mut later).iter().all(|thing| !thing.starts_with("x ")));
    // A price typed on the shelf is what it costs.
    later.go("shelf").type_in("prices", "pear brandy, 700 ml, 24.00").go("batch/buy");
    assert_eq!(later.strip(), "11 of 11 to get | at least 72.00 of 72.00 still to pay");
    later.act(Act::Csv);
    assert!(format!("{:?}", later.effects.last()).contains("3 × 700 ml"), "{:?}", later.effects.last());
    later.act(Act::Empty);
    assert_eq!(later.strip(), "– | Choose a spec, or type what is needed.");
    later.act(Act::Undo);
    assert_eq!(later.strip(), "11 of 11 to get | at least 72.00 of 72.00 still to pay");
}

#[test]
fn a_batch_the_ice_and_a_run_are_bought_for() {
    let keeper = with_demo();
    let mut tab = Tab::open(&keeper, "batch/bottle");
    tab.act(Act::Choose("from_spec".into(), "demo-1/1".into())).type_in("serves", "30");
    let buy = tab.link("To buy");
    tab.go(&buy);
    assert!(list(&mut tab).contains(&"pear brandy 2 × 700 ml".to_owned()), "{:?}", list(&mut tab));
    assert_eq!(tab.value("from_spec"), "", "the amounts are those of the batch");
    assert!(tab.value("batch").starts_with("1350 ml pear brandy\n"), "{}", tab.value("batch"));
    assert!(list(&mut tab).contains(&"empty bottles of 700 ml 6".to_owned()), "{:?}", list(&mut tab));
    let buy = tab.go("service/ice").type_in("serves", "30").link("To buy");
    tab.go(&buy);
    assert!(
        list(&mut tab).iter().any(|thing| thing.starts_with("ice ") && thing.ends_with(" kg")),
        "{:?}",
        list(&mut tab)
    );
    tab.act(Act::Empty);
    // A run: what its parts make of each other is not bought.
    let buy = tab.go("prep/cordial?fruit=lime").tap("To the run sheet").go("batch/run").link("To buy");
    tab.go(&buy);
    assert!(list(&mut tab).iter().any(|thing| thing.starts_with("sugar ")), "{:?}", list(&mut tab));
    assert!(tab.rows().iter().any(|row| row.contains("|run sheet|")), "{:?}", tab.rows());
    tab.act(Act::Put(vec![("run", String::new())]));
    assert!(list(&mut tab).is_empty(), "{:?}", list(&mut tab));
}
