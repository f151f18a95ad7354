//! A list pasted as people send it: read, asked about, put right by taps, and poured.

use meniscus::book::{Card, Way};
use meniscus::desk::{Effect, News};
use meniscus::screen::{Act, Bench};
use meniscus::tool::specs::texts;

use crate::bar::Tab;
use crate::faulty::Faulty;

/// As `tests/browser/tests/tasks.rs` pastes it too.
const PASTED: &str = "• 1-1/2 oz — London dry gin\n| lime juise | ¾ oz |\n2 EL Zuckersirup\njuice of 1 lime\n1 egg white\n\
    2–3 dashes bitters\n- [ ] 15 ml crème de cassis\n20ml/¾oz dry vermuth\n10 % water\n20 ml moon dust\ntop with soda\nLime wheel";

/// A row without what it brings to the whole.
fn before_shares(row: &str) -> &str {
    row.split("; volume ").next().unwrap_or_default()
}

#[test]
fn a_pasted_list_is_read_asked_about_and_poured() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/balance");
    tab.type_in("spec", PASTED);
    assert_eq!(tab.strip(), "12.9 % vol | Without “10 % water” and others: see their lines below");
    assert_eq!(tab.view().screen.leads, "3 lines not counted");
    let brought = tab.rows();
    assert_eq!(brought[0], "London dry gin|1½ oz|as London dry gin, 40 % vol; volume 23 %, alcohol 72 %");
    let rows: Vec<&str> = brought.iter().map(|row| before_shares(row)).collect();
    for (at, row) in [
        (0, "London dry gin|1½ oz|as London dry gin, 40 % vol"),
        (2, "Zuckersirup|2 tbsp|as Simple syrup 1:1 by weight, 615 g/l sugar"),
        (4, "egg white|30 ml|as Egg white; 1 egg white: about 30 ml, rule of thumb"),
        (8, "10 % water||A share of how much? Write it like 30 ml water."),
        (9, "moon dust|20 ml|Not known, so not counted. What is it like?"),
        (10, "top with soda||How much fills the glass? Write it like 90 ml soda."),
        (11, "Lime wheel||No amount, so it is kept as it is."),
    ] {
        assert_eq!(rows[at], row);
    }
    for (at, said) in [(1, "read as lime juice"), (5, "2–3: the middle counts"), (7, "read as dry vermouth")] {
        assert!(rows[at].ends_with(said), "{}", rows[at]);
    }
    tab.settle("Syrup").settle("90 ml soda");
    // 50.6 ml of lime juice at 44.3 g/l by titration and 20 of vermouth at 4.7 are 2.34 g of acid.
    // 44.36 ml at 40 %, 2 at 45, 15 at 16 and 20 at 18 are 24.6 ml of ethanol, in 301.5 ml and a tenth of the whole.
    assert_eq!(tab.strip(), "7.4 % vol | Sugar 114, acid 6.97 g/l, 16.4 : 1");
    assert_eq!(tab.below(), "A serve is 11¼ oz, 335 ml before ice");
    assert_eq!(tab.rows()[8], "water|33.5 ml|as Water; 10 % of the finished whole; volume 10 %");
    assert_eq!(tab.view().screen.leads, "");
    let to = tab.link("Scale it");
    tab.go(&to).type_in("serves", "2");
    assert!(tab.strip().starts_with("22¾ oz before ice, 670 ml | "), "{}", tab.strip());
    assert!(tab.rows()[4].starts_with("egg white|60 ml|"), "{:?}", tab.rows());
}

#[test]
fn the_same_list_is_read_alike_wherever_it_is_pasted() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/balance");
    let balanced = tab.type_in("spec", PASTED).rows();
    tab.go("prep/strength").act(Act::Choose("ask".into(), "blend".into())).type_in("pours", PASTED);
    assert_eq!(tab.strip(), "12.9 % vol + 191 ml | Without “10 % water”: see its line below");
    assert_eq!(tab.rows(), balanced);
    tab.go("specs").tap("New spec").follow().type_in("lines", PASTED);
    assert_eq!(tab.strip(), "6½ oz before ice, 191 ml | 12.9 % vol. 3 lines not counted");
    tab.act(Act::Choose("write".into(), "each".into()));
    // On a spec the pour stands before what each line is read as.
    for (row, balanced) in tab.rows().iter().zip(&balanced) {
        let (named, said) = before_shares(balanced).rsplit_once('|').expect("a row");
        assert!(row.starts_with(named) && row.ends_with(said), "{row}: {balanced}");
    }
    assert!(tab.rows()[2].starts_with("Zuckersirup|2 tbsp|29.6 ml; "), "{:?}", tab.rows());
    tab.act(Act::Look);
    assert_eq!(tab.effects.last(), Some(&Effect::Reach("asked")));
    tab.settle("Syrup").settle("90 ml soda");
    assert_eq!(tab.strip(), "11¼ oz before ice, 335 ml | 7.4 % vol");
}

#[test]
fn what_a_part_is_is_asked_once_in_every_tool() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/scale");
    for (screen, field) in [("service/scale", "spec"), ("service/balance", "spec"), ("prep/strength", "pours")] {
        tab.go(screen);
        if field == "pours" {
            tab.act(Act::Choose("ask".into(), "blend".into()));
        }
        tab.type_in(field, "2 parts gin\n1 part lemon juice").settle("1 part = 30 ml");
        assert_eq!(tab.value(field), "2 parts gin\n1 part lemon juice\n1 part = 30 ml", "{screen}");
        let rows = tab.rows();
        assert!(
            before_shares(&rows[0]).ends_with("2 parts of 30 ml")
                && before_shares(&rows[1]).ends_with("1 part of 30 ml"),
            "{rows:?}"
        );
        let view = tab.view();
        assert_eq!(view.screen.field(field).and_then(|field| field.problem.clone()), None, "{screen}");
    }
}

fn pasted(text: &str) -> Card {
    texts::read(text, &Bench::default()).expect("a spec").cards.remove(0).1
}

#[test]
fn a_recipe_with_headings_is_parted_by_them() {
    let parted = |serves: &str, spaces: &str| {
        let headed =
            ["Ingredients:\n60 ml gin\n30 ml lemon juice", "GARNISH: lemon twist", "Ice: cubed", "Glassware: coupe"];
        let steps = "Method: Shake hard with ice for 12 seconds, strain\n2. Express the twist\n3) Serve";
        format!("Gin sour\n{serves}\n\n{}\n{steps}\n\nNotes:\nBest cold.", headed.join(spaces))
    };
    let way = Way {
        lines: "60 ml gin\n30 ml lemon juice".into(),
        garnish: "lemon twist".into(),
        ice: "cubed".into(),
        glass: "coupe".into(),
        method: "shaken".into(),
        steps: "Shake hard with ice for 12 seconds, strain\nExpress the twist\nServe".into(),
        ..Way::default()
    };
    let card = Card { name: "Gin sour".into(), notes: "Best cold.".into(), ways: vec![way], ..Card::default() };
    for spaces in ["\n", "\n\n"] {
        assert_eq!(pasted(&parted("Serves 1", spaces)), card);
        let mut four = card.clone();
        four.ways[0].makes = "4".into();
        assert_eq!(pasted(&parted("serves: 4", spaces)), four);
        // What is not known stays a line.
        let mut odd = card.clone();
        odd.ways[0].lines.insert_str(0, "Serves 4 to 6\n");
        assert_eq!(pasted(&parted("Serves 4 to 6", spaces)), odd);
    }
}

#[test]
fn headings_are_read_in_other_languages() {
    for (lines, steps) in [
        ("Zutaten:", "Zubereitung:"),
        ("Ingrédients :", "Préparation :"),
        ("INGREDIENTES", "Preparación"),
        ("Ingredienti", "Preparazione:"),
        ("ingredients", "Directions:"),
        ("Ingredients", "Instructions"),
    ] {
        for space in ["\n", "\n\n"] {
            let text = format!("Sour{space}{lines}\n60 ml gin\n30 ml lemon juice{space}{steps}\n1. One\nTwo");
            let Way { name, lines, steps, .. } = pasted(&text).ways.remove(0);
            let lines = (name.as_str(), lines.as_str(), steps.as_str());
            assert_eq!(lines, ("", "60 ml gin\n30 ml lemon juice", "One\nTwo"), "{text}");
        }
    }
}

#[test]
fn a_block_in_which_nothing_is_measured_is_steps() {
    let step = "Alles außer Soda kräftig shaken, 15 Sekunden, in ein Glas abseihen.";
    let lines = "4 cl Gin\n2 cl Zitronensaft\n1 cl Zuckersirup\n1 Eiweiß\n2 Dash Bitter\n6 cl Soda";
    let card = pasted(&format!("Gartenlaube\n\n{lines}\n\n{step}\n\nDeko: Zitronenzeste"));
    assert_eq!((card.name.as_str(), card.ways.len()), ("Gartenlaube", 1));
    let way = &card.ways[0];
    let read = [&way.lines, &way.steps, &way.garnish, &way.method].map(String::as_str);
    assert_eq!(read, [lines, step, "Zitronenzeste", "shaken"]);
    // A second method is kept as it is written.
    let Way { method, steps, .. } = pasted("Sour\n60 ml gin\nMethod: Stirred\nMethod: Built").ways.remove(0);
    assert_eq!((method.as_str(), steps.as_str()), ("stirred", "Built"));
    // Forms that are measured are forms.
    assert_eq!(pasted("Sour\n\nquick\n60 ml gin\n\nslow\n50 ml gin").ways.len(), 2);
}

#[test]
fn undo_leaves_the_book_alone_where_a_spec_is_looked_at() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs");
    tab.tap("Try a demo").go("specs/backup");
    let offered = tab.view().undo;
    assert!(offered.is_some());
    tab.tell(News::File("Sour\n60 ml gin".into()));
    assert_eq!(tab.view().undo, None);
    let held = crate::bar::stored(&keeper, "spec/").len();
    tab.act(Act::Undo);
    assert_eq!(crate::bar::stored(&keeper, "spec/").len(), held);
    assert_eq!(tab.tap("Not now").view().undo, offered);
}
