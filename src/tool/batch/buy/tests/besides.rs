//! What is bought besides what is poured, and what is bought or counted as something else.

use super::*;
use crate::screen::address;

/// By hand, 20 serves: (180 g to stir with + 90 g in the glass) × 20 are 5.4 kg, and a fifth of all melts: 6.75 kg. 30 more
/// with 200 g to shake with and no ice in the glass: 11.4 kg, 14.3 kg.
#[test]
fn ice_and_garnish_stand_at_the_end() {
    let iced = |name: &str, method: &str, ice: &str, garnish: &str| {
        let mut card = card(name, "60 ml gin\n20 ml lemon juice");
        let way = &mut card.ways[0];
        (way.method, way.ice, way.garnish) = (method.into(), ice.into(), garnish.into());
        card
    };
    let mut bowl = iced("Bowl", "stirred", "cubes", "orange wheel");
    bowl.ways[0].lines = "900 ml gin\n600 ml dry vermouth".into();
    let cards = [
        ("a", iced("Stirred", "stirred", "one clear block", "Lemon peel")),
        ("b", iced("Shaken", "shaken", "none", "2 olives")),
        ("c", iced("Plain", "", "", "none")),
        ("d", bowl),
    ];
    let bench = bench(&cards, &[], "olives, 100 pieces, 6.00");
    let end = |texts: &[(&str, &str)]| {
        let list = list(&shown(&bench, texts));
        let from = list.iter().position(|line| line == "# Ice").unwrap_or(list.len());
        list[from..].to_vec()
    };
    let one = [
        "# Ice",
        "ice|6.75 kg|no price|for 5.4 kg in tins and glasses; the rest melts before use",
        "# Garnish",
        "Lemon peel|20|no price|lemons for juice are counted apart",
    ];
    assert_eq!(end(&[("of", "a/0=20")]), one);
    // What is chosen, and what there is.
    let all = [("of", "a/0=20\nb/0=30\nc/0=10\nd/0=12"), ("have", "2.25 kg ice\n10 olives")];
    assert_eq!(
        end(&all)[1],
        "ice|12 kg|no price|need 14.3 kg, have 2.25 kg; for 11.4 kg in tins and glasses; the rest melts before use"
    );
    assert_eq!(end(&all)[3..], [one[3], "olives|100 pieces|6.00|need 60, have 10"]);
    // Ice counts the same, and what it brings back is all of it.
    let both = shown(&bench, &[("of", "a/0=20\nb/0=30")]);
    let at_foot = both.foot.iter().filter_map(|button| match &button.act {
        Act::Go(href) => Some((button.label.clone(), href.clone())),
        _ => None,
    });
    let mut all = at_foot.chain(both.links().into_iter().map(|link| (link.label, link.href)));
    let (_, ice) = all.find(|(label, _)| label == "Ice for the night").expect("a way to Ice");
    let start = Texts::from([("tubs".to_owned(), "0 g".to_owned())]);
    let carried = address::read(&ice).carried;
    let texts = carried.iter().fold(start, |texts, (name, text)| after(Route::Ice, &texts, Change::Take(name, text)));
    let night = screen(Route::Ice, &texts, &bench);
    assert_eq!(night.strip.figures[0].to_string(), "14.3 kg");
    assert_eq!(end(&[("of", "a/0=20"), ("ice", "9 kg")])[1], "ice|9 kg|no price|");
    assert_eq!(end(&[("of", "c/0=20\nd/0=12")]), [""; 0]);
    // What stands among the lines is read as well.
    let lines = super::bench(&[("e", card("Lines", "60 ml gin\nGarnish: 2 mint sprigs"))], &[], "");
    assert_eq!(list(&shown(&lines, &[("of", "e/0=8")]))[2..], ["# Garnish", "mint sprigs|16||"]);
}

#[test]
fn a_batch_goes_into_empty_bottles() {
    let of =
        |bottles: &str| shown(&bench(&[], &[], "gin, 700 ml, 20.00"), &[("batch", "2 l gin"), ("bottles", bottles)]);
    let screen = of("3 empty bottles of 700 ml");
    assert_eq!(list(&screen)[2..], ["# Empty bottles", "empty bottles of 700 ml|3|no price|"]);
    assert_eq!(strip(&screen), "2 of 2 to get | at least 60.00 of 60.00 still to pay");
    assert!(of("").field("bottles").is_none());
    let wrong = of("some bottles").field("bottles").and_then(|field| field.problem.clone()).expect("a problem");
    assert_eq!(wrong.words, "Type a number above zero, like 18 or 2½.");
    let stale = taken(&Texts::default(), &[("bottles", "3 empty bottles of 700 ml"), ("batch", "1 l gin")]);
    assert_eq!(stale["bottles"], "");
}

/// A bottle is the pack that there is a price for; else it is asked what it holds, with what would settle it.
#[test]
fn what_is_on_the_shelf_is_counted_in_bottles() {
    let bench = bench(&[], &[], "London dry gin, 1 l, 30.00");
    let screen =
        shown(&bench, &[("lines", "1.7 l gin\n1 l dry vermouth"), ("have", "1½ bottles gin\n1 bottle dry vermouth")]);
    assert_eq!(list(&screen)[1], "gin|1 l|30.00|need 1 700 ml, have 1 500 ml");
    assert!(list(&screen)[2].starts_with("dry vermouth|2 × 750 ml|"), "{:?}", list(&screen));
    let problem = screen.field("have").and_then(|field| field.problem.clone()).expect("a problem");
    assert_eq!(
        problem.words,
        "“1 bottle dry vermouth”: How much is a bottle? 700 ml is usual: write 1 × 700 ml dry vermouth."
    );
    assert_eq!(problem.fixes[1].label, "1 × 750 ml dry vermouth");
    assert_eq!(problem.fixes[1].text, "1½ bottles gin\n1 × 750 ml dry vermouth");
    let fixed = shown(&bench, &[("lines", "1.7 l gin\n1 l dry vermouth"), ("have", &problem.fixes[1].text)]);
    assert!(fixed.field("have").is_some_and(|field| field.problem.is_none()));
    assert_eq!(list(&fixed)[2], "dry vermouth|750 ml|no price|need 1 000 ml, have 750 ml");
    // What else is needed is read so too.
    assert_eq!(list(&shown(&bench, &[("lines", "2 bottles gin")]))[1], "gin|2 × 1 l|60.00|need 2 000 ml");
}

/// What is read counts while a bottle is asked about, and one tap says what all of them hold.
#[test]
fn all_bottles_are_settled_in_a_tap() {
    let have = "2 bottles gin\n1 bottle rye\n3 lemons\n500 ml rum";
    let lines = "1.7 l gin\n1 l rye\n5 lemons\n1 l rum";
    let screen = shown(&bench(&[], &[], ""), &[("lines", lines), ("have", have)]);
    let read = list(&screen);
    assert!(read[1].starts_with("lemons|2|") && read.last().expect("rum").starts_with("rum|700 ml|"), "{read:?}");
    let problem = screen.field("have").and_then(|field| field.problem.clone()).expect("a problem");
    assert_eq!(problem.words, "“2 bottles gin”: How much is a bottle? 700 ml is usual: write 2 × 700 ml gin.");
    let labels: Vec<&str> = problem.fixes.iter().map(|fix| fix.label.as_str()).collect();
    assert_eq!(labels, ["700 ml each", "750 ml each", "1000 ml each"]);
    assert_eq!(problem.fixes[0].text, "2 × 700 ml gin\n1 × 700 ml rye\n3 lemons\n500 ml rum");
}

/// By the library: 614.8 g of sugar in a litre of simple syrup, 884.5 g in one of rich, 230 g of salt in one of saline.
#[test]
fn syrups_of_the_library_are_bought_as_sugar() {
    let of = |prices: &str, lines: &str, have: &str| {
        list(&shown(&bench(&[], &[], prices), &[("lines", lines), ("have", have)]))
    };
    let lines = "1.2 l simple syrup\n100 ml rich syrup (2:1)\n30 ml sugar syrup\n10 ml saline\n100 g sugar";
    assert_eq!(
        of("", lines, ""),
        [
            "# Dairy and dry",
            "sugar|945 g||for 1 200 ml simple syrup and 100 ml rich syrup (2:1) and 30 ml sugar syrup",
            "salt|2.3 g||for 10 ml saline",
        ]
    );
    // What there is of it is so much less sugar.
    assert_eq!(
        of("sugar, 1 kg, 1.10", "1.5 l simple syrup", "500 ml simple syrup\n100 g sugar")[1],
        "sugar|1 kg|1.10|need 922 g, have 407 g; for 1 500 ml simple syrup"
    );
    assert_eq!(of("", "1 l demerara syrup", "")[1], "demerara sugar|885 g||for 1 000 ml demerara syrup");
    // What is bought is bought, and what is made of more than sugar is not taken apart.
    assert_eq!(of("sugar syrup, 1 l, 4.00", "1.2 l simple syrup", "")[1], "simple syrup|2 × 1 l|8.00|need 1 200 ml");
    for syrup in ["vanilla syrup", "honey syrup", "orgeat", "gomme syrup", "maple syrup"] {
        assert_eq!(of("", &format!("100 ml {syrup}"), "")[1], format!("{syrup}|100 ml||"));
    }
}
