//! Washes as they are asked for.

use super::*;
use crate::screen::picture::Picture;

#[test]
fn answers_both_ways() {
    let answer = MilkWashForm::default().answer(&Bench::default());
    assert_eq!(answer.strip.figures[0].to_string(), "345 ml milk");
    assert_eq!(answer.strip.also, "It clots: pour the drink over the milk");
    assert_eq!(answer.cautions.len(), 1);

    let milk = MilkWashForm { known: "milk".into(), ratio: "1:5¾".into(), milk: "1 oz".into(), ..Default::default() };
    assert_eq!(milk.answer(&Bench::default()).strip.figures[0].to_string(), "5¾ oz drink, 170 ml");
}

#[test]
fn an_unusual_ratio_is_remarked_on() {
    let remarks =
        |ratio: &str| MilkWashForm { ratio: ratio.into(), ..Default::default() }.answer(&Bench::default()).remarks;
    let usual = remarks("1:5").len();
    assert!(remarks("1:2")[usual].starts_with("More milk"));
    assert!(remarks("1:10")[usual].starts_with("Less milk"));
}

#[test]
fn says_plainly_whether_it_clots() {
    let said = |change: &dyn Fn(&mut MilkWashForm)| {
        let mut form = MilkWashForm::default();
        change(&mut form);
        let answer = form.answer(&Bench::default());
        (answer.strip.also.clone(), answer)
    };
    let held = said(&|form| form.acid = "1".into()).1;
    assert!(held.strip.also.starts_with("Too little acid to clot it: add about "), "{}", held.strip.also);
    // Nothing is told that would come of it, until it clots.
    assert!(held.plan.is_none() && held.rows.is_empty() && held.carry.is_empty());
    assert!(!held.cells.iter().any(|cell| cell.label.starts_with("yield")));
    // With what it says to add, it clots.
    let grams = held.strip.also.split("about ").nth(1).and_then(|words| words.split(' ').next());
    let grams: f64 = grams.and_then(|grams| grams.parse().ok()).expect("grams");
    let enough = said(&|form| form.acid = format!("{:.2}", 1.0 + (grams + 0.05) / 1.725)).1;
    assert!(enough.strip.also.starts_with("It clots") && enough.plan.is_some(), "{}", enough.strip.also);
    let close = said(&|form| form.acid = "1.4".into()).1;
    assert!(close.strip.also.ends_with("g of citric acid to be sure"), "{}", close.strip.also);
    assert!(close.notes.iter().any(|note| note.starts_with("Dissolve the acid")), "{:?}", close.notes);
    assert_eq!(said(&|form| form.acid.clear()).0, "Its acid is not known");
    assert_eq!(said(&|form| form.kind = "oat".into()).0, "How it clots is not known");
    let spec = said(&|form| form.known = "spec".into());
    assert_eq!(spec.0, "It clots: pour the drink over the milk");
    assert!(said(&|form| form.strength = "50".into()).1.cautions.iter().any(|caution| caution.contains("strong")));
    assert!(said(&|form| form.at = "70".into()).1.cautions.iter().any(|caution| caution.contains("warm")));
    assert!(said(&|form| form.acid = "0".into()).1.cautions.iter().any(|caution| caution.contains("no acid")));
}

#[test]
fn drink_milk_and_their_ph_are_drawn() {
    let drawn = |form: MilkWashForm| {
        let answer = form.answer(&Bench::default());
        let pictures = answer.pictures.into_iter();
        let (titles, pictures): (Vec<String>, Vec<Picture>) = pictures.unzip();
        (titles, pictures, answer.strip.also)
    };
    let (titles, pictures, _) = drawn(MilkWashForm::default());
    assert_eq!(titles, ["Together, 2\u{202f}070 ml", "pH of the two together"]);
    let Picture::Shares { bars, key } = &pictures[0] else { panic!("{:?}", pictures[0]) };
    assert_eq!(bars[0].text, "drink 1\u{202f}725 ml, milk 345 ml");
    let milk = bars[0].parts[1].1;
    assert!((milk - 345.0 / 2070.0).abs() < 1e-9 && key.len() == 2, "{milk}");
    // The mark, its doubt and what is said of them are the verdict's.
    for (acid, says) in [("8", "It clots"), ("1.4", "It may not clot"), ("1", "Too little acid")] {
        let (_, pictures, also) = drawn(MilkWashForm { acid: acid.into(), ..MilkWashForm::default() });
        let Picture::PhLine { text, ph: [least, likely, most], said, clots } = &pictures[1] else { panic!("no pH") };
        assert!(also.starts_with(says), "{also}");
        assert_eq!(clots, &(4.6, "4.6".into()));
        assert!(least <= likely && likely <= most && *least > 2.0, "{said}");
        assert_eq!(said, &format!("{likely:.1} ({least:.1}–{most:.1})"));
        assert!(text.starts_with(&format!("pH {likely:.1}, between")), "{text}");
        assert_eq!((*most <= 4.6, *least > 4.6), (says == "It clots", says == "Too little acid"));
    }
    // Where the acid is not known, no pH is.
    assert_eq!(drawn(MilkWashForm { acid: String::new(), ..MilkWashForm::default() }).0.len(), 1);
}

#[test]
fn its_label_names_what_is_in_it() {
    let label = |form: MilkWashForm| {
        let answer = form.answer(&Bench::default());
        answer.carry.into_iter().find(|carry| carry.label == "Label it").map(|carry| carry.href).unwrap_or_default()
    };
    let spec = "900 ml rye whiskey\n300 ml orgeat\n125 ml lemon juice\n2 egg whites";
    let washed = label(MilkWashForm { known: "spec".into(), spec: spec.into(), ..MilkWashForm::default() });
    assert!(washed.contains("allergens=milk%2C+nuts%2C+egg"), "{washed}");
    let oat = label(MilkWashForm { kind: "oat".into(), ..MilkWashForm::default() });
    assert!(oat.contains("allergens=gluten"), "{oat}");
    // No days are filled in for a wash, and coconut is asked about.
    let coconut = label(MilkWashForm { kind: "coconut".into(), ..MilkWashForm::default() });
    assert!(coconut.contains("asks=coconut") && coconut.contains("keeps=washed"), "{coconut}");
}

/// One wash, told by its own tool and by the balance of a spec with the milk in its lines: one strength, and one volume
/// that comes through.
#[test]
fn a_wash_is_told_alike_wherever_it_is_told() {
    let drink = "900 ml rye whiskey\n400 ml black tea\n300 ml honey syrup\n250 ml lemon juice";
    let own = |yields: &str| Bench { yields: yields.into(), ..Bench::default() };
    for bench in [own(""), own("milk wash 90 %")] {
        // As the drink that is measured out of its lines: the spec says how much milk that is.
        let spec = format!("{drink}\n380 ml whole milk");
        let texts = [("spec".to_owned(), spec)].into();
        let told = crate::tool::screen(Route::Balance, &texts, &bench);
        let link = told.links().into_iter().find(|link| link.label == "Its milk wash").expect("a link");
        let address = crate::screen::address::read(&link.href);
        let mut form = MilkWashForm::default();
        for (name, text) in &address.carried {
            form.take(name, text);
        }
        assert_eq!(form.spec, drink);
        let answer = form.answer(&bench);
        assert_eq!(answer.strip.figures[0].to_string(), "380 ml milk");
        assert_eq!(answer.rows[0].amount, told.strip.figures[0].to_string());
        let through = &answer.cells.iter().find(|cell| cell.label.starts_with("yield")).expect("a cell").figure;
        assert_eq!(told.strip.below, format!("A serve is {through} before ice"));
        let label = answer.carry.iter().find(|link| link.label == "Label it").expect("a label");
        let percent = label.href.split("strength=").nth(1).and_then(|text| text.split('&').next()).unwrap_or_default();
        let percent: f64 = percent.parse().expect("a strength");
        assert_eq!(format!("{percent:.1} % vol"), answer.rows[0].amount);
        // Milk that does not clot is drunk, and counts.
        let plain = [("spec".to_owned(), "60 ml aged rum\n120 ml whole milk".to_owned())].into();
        let plain = crate::tool::screen(Route::Balance, &plain, &bench);
        assert_eq!(plain.strip.below, "A serve is 180 ml before ice");
    }
}
