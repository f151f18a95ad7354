use super::*;
use crate::book::{Book, Card, Entry, Own, Pairs, Way};
use crate::screen::{Field, Held, Tone, empty_into};
use crate::text::Decimal;
use crate::tool::shelf::settings::ShelfForm;

const PRICES: &str = "London dry gin, 700 ml, 22.00, 2026-10-03\nLondon dry gin, 700 ml, 24.50, 2026-11-20\n\
                      lime juice, 1 l, 9.00\nsimple syrup, 1 kg, 2.00, 95 %";
const SOUR: &str = "60 ml gin\n30 ml lime juice\n20 ml simple syrup\nLime wheel";

fn bench(prices: &str) -> Bench {
    ShelfForm { prices: prices.into(), ..ShelfForm::default() }.bench(Decimal::Point)
}

fn form(spec: &str) -> CostForm {
    CostForm { spec: spec.into(), ..CostForm::default() }
}

fn rows(answer: &Answer) -> Vec<[&str; 3]> {
    answer.rows.iter().map(|row| [row.name.as_str(), row.amount.as_str(), row.detail.as_str()]).collect()
}

fn cells(answer: &Answer) -> Vec<String> {
    answer.cells.iter().map(|cell| format!("{} {}", cell.label, cell.figure)).collect()
}

/// By hand: 60 / 700 × 24.50 = 2.10; 30 / 1000 × 9 = 0.27; 20 ml of syrup at 1.2297 g/ml (ICUMSA, 1:1 by weight) are
/// 24.59 g, / 1000 × 2 / 0.95 = 0.0518. In all 2.4218; with 20 % in 12.10 the net price is 10.083, and 24 % of it are cost.
/// For 20 %: × 5 × 1.2 = 14.53.
#[test]
fn a_sour_is_costed_line_by_line() {
    let form = CostForm { menu: "12.10".into(), tax: "20 %".into(), ..form(SOUR) };
    let answer = form.answer(&bench(PRICES));
    assert_eq!(answer.strip.figures[0].to_string(), "2.42 a serve");
    assert_eq!(answer.strip.also, "Pour cost 24 % of 12.10, tax off");
    assert_eq!((answer.strip.below.as_str(), answer.strip.tone), ("", Tone::Answer));
    assert_eq!(
        rows(&answer),
        [
            [
                "gin",
                "2.10",
                "Costs most, 87 %; 60 ml of 700 ml at 24.50 for London dry gin; was 22.00 for 700 ml on Sat 3 Oct 2026"
            ],
            ["lime juice", "0.27", "30 ml of 1 l at 9.00"],
            ["simple syrup", "0.05", "20 ml of 1 kg at 2.00, 95 % of it used"],
        ]
    );
    assert_eq!(cells(&answer), ["Left of a sale 7.66", "For 20 %, ask 14.53"]);
    let Picture::Shares { bars, key } = &answer.pictures[0].1 else { panic!("{:?}", answer.pictures) };
    assert_eq!(key.len(), 3);
    let shares: Vec<f64> = bars[0].parts.iter().map(|(_, share)| (share * 100.0).round()).collect();
    assert_eq!(shares, [87.0, 11.0, 2.0]);
    let added = CostForm { tax_is: "added".into(), serves: "30".into(), ..form };
    let answer = added.answer(&bench(PRICES));
    assert_eq!(answer.strip.also, "Pour cost 20 % of 12.10");
    assert_eq!(
        cells(&answer),
        ["Left of a sale 9.68", "For 20 %, ask 12.11", "That is, with tax 14.53", "For 30 72.65"]
    );
}

#[test]
fn without_a_menu_price_it_says_what_to_ask() {
    let bench = ShelfForm { prices: PRICES.into(), currency: "€".into(), ..ShelfForm::default() }.bench(Decimal::Comma);
    // The point of a price is read under a comma as well.
    let answer = CostForm { extras: "0,62".into(), makes: "2".into(), ..form(SOUR) }.answer(&bench);
    assert_eq!(answer.strip.figures[0].to_string(), "1,83 € a serve");
    assert_eq!(answer.strip.also, "For 20 %, ask 9,15 €");
    assert_eq!(rows(&answer).last(), Some(&["Garnish, glass and ice", "0,62 €", ""]));
    assert_eq!(rows(&answer)[1], ["lime juice", "0,14 €", "15 ml of 1 l at 9,00 €"]);
    assert_eq!(CostForm { aim: String::new(), ..form(SOUR) }.answer(&bench).strip.also, "");
}

#[test]
fn what_has_no_price_is_listed_and_the_sum_says_at_least() {
    let mut form = CostForm { menu: "10".into(), ..form("60 ml gin\n20 ml moon dust\n30 ml water\n8 mint leaves") };
    let bench = bench(PRICES);
    let answer = form.answer(&bench);
    assert_eq!(answer.strip.figures[0].to_string(), "2.10 a serve, at least");
    assert_eq!(answer.strip.also, "Pour cost at least 21 % of 10.00");
    assert_eq!((answer.strip.below.as_str(), answer.leads.as_str()), ("2 prices missing", "2 prices missing"));
    assert_eq!(cells(&answer), ["Left of a sale, at most 7.90", "For 20 %, ask at least 10.50"]);
    assert_eq!(
        rows(&answer)[1..3],
        [["moon dust", "?", "20 ml. No price yet"], ["water", "0.00", "30 ml, taken as free"]]
    );
    let marked: Vec<bool> = answer.rows.iter().map(|row| row.marked).collect();
    assert_eq!(marked, [false, true, false, true]);
    assert!(answer.remarks[0].starts_with("Water and ice"), "{:?}", answer.remarks);
    // The first without a price is asked for, until another is chosen.
    form.show(&bench);
    assert_eq!(form.price_of, "moon dust");
    form.price_of = "gin".into();
    form.show(&bench);
    assert_eq!(form.price_of, "gin");
    form.price_of = "gone".into();
    form.show(&bench);
    assert_eq!(form.price_of, "moon dust");
}

#[test]
fn a_price_is_kept_in_a_tap() {
    let mut bench = bench("gin, 700 ml, 22.00, 2026-10-03");
    bench.clock.now = 1_795_000_000_000; // 18 Nov 2026
    let mut form = CostForm { price: "24.00 for 700 ml".into(), ..form("60 ml gin\n20 ml moon dust") };
    form.price_of = "gin".into();
    let (_, answer) = form.show(&bench);
    assert_eq!(answer.buttons[0].label, "Keep 24.00 for 700 ml for gin");
    let kept = "gin, 700 ml, 22.00, 2026-10-03\ngin, 700 ml, 24.00, 2026-11-18";
    assert_eq!(answer.buttons[0].act, Act::KeepPrice(kept.into()));
    // Nothing is asked where nothing is missing and nobody wants to.
    let all = CostForm { price: String::new(), price_of: String::new(), ..form };
    let mut known = CostForm { spec: "60 ml gin".into(), ..all };
    let (blocks, answer) = known.show(&bench);
    assert_eq!((answer.buttons.len(), answer.leads.as_str()), (0, ""));
    assert!(!blocks.iter().any(|block| matches!(block, Block::Field(field) if field.name == PRICE)));
}

#[test]
fn a_line_without_an_amount_is_no_missing_price() {
    let answer = form("60 ml gin\n60 vodka\nsoda").answer(&bench(PRICES));
    assert_eq!(answer.leads, "2 lines not costed");
    assert_eq!(answer.strip.figures[0].to_string(), "2.10 a serve, at least");
    assert_eq!(rows(&answer)[1][0], "60 vodka");
    assert!(answer.rows[1].marked && !answer.rows[1].fixes.is_empty(), "{:?}", answer.rows[1]);
    assert_eq!(answer.pictures.len(), 0);
}

/// What a bar calls its own has its own price, and none of the library's that it ends like.
#[test]
fn the_bar_s_own_has_its_own_price() {
    let mut book = Book::default();
    for (id, name) in [("one", "pear cordial"), ("two", "quince cordial")] {
        let value = Own { name: name.into(), like: "cordial".into(), ..Own::default() };
        let entry = Entry { id: id.into(), value, stamp: Default::default(), newer: None, pairs: Pairs::default() };
        book.own.push(entry.into());
    }
    let book = Held::new(book);
    let cost =
        |line: &str, prices: &str| form(line).answer(&bench(prices).with_book(book.clone())).rows[0].amount.clone();
    assert_eq!(cost("15 ml pear cordial", "pear cordial, 1 l, 4.10"), "0.06");
    assert_eq!(cost("150 ml clear Pear Cordial", "pear cordial, 1 l, 4.00"), "0.60");
    for prices in ["quince cordial, 1 l, 4.10", "cordial, 1 l, 4.10"] {
        assert_eq!(cost("15 ml pear cordial", prices), "?", "{prices}");
    }
    assert_eq!(cost("15 ml apple cordial", "cordial, 1 l, 4.00"), "0.06");
}

/// By hand: 500 ml of juice at 9.00 a litre and 300 g of sugar at 1.20 a kilogram are 4.50 + 0.36 = 4.86; 30 ml of what
/// they make are their share of it. One in the other, and the other in the one, is asked about like what nobody knows.
#[test]
fn a_prep_costs_what_its_spec_costs() {
    let bench = |specs: &[(&str, &str)], prices: &str| {
        let mut book = Book { has_cards: true, ..Book::default() };
        for (at, (name, lines)) in specs.iter().enumerate() {
            let ways = vec![Way { lines: (*lines).into(), ..Way::default() }];
            let value = Card { name: (*name).into(), ways, ..Card::default() };
            let (id, pairs) = (at.to_string(), Pairs::default());
            book.cards.push(Entry { id, value, stamp: Default::default(), newer: None, pairs }.into());
        }
        bench(prices).with_book(Held::new(book))
    };
    let parts = "lime juice, 1 l, 9.00\nsugar, 1 kg, 1.20\ngin, 1 l, 20";
    let sherbet = [("Lime sherbet", "500 ml lime juice\n300 g sugar")];
    let there = bench(&sherbet, parts);
    let made =
        Contents::of(sherbet[0].1, &there).mix.volume(crate::quantity::Temperature::TWENTY).expect("a volume").ml();
    let answer = form("60 ml gin\n300 ml lime sherbet").answer(&there);
    assert_eq!(answer.rows[1].amount, format!("{:.2}", 4.86 * 300.0 / made));
    let by = format!("300 ml of {made:.0} ml, whose parts cost 4.86");
    assert!(answer.rows[1].detail.ends_with(&by), "{}", answer.rows[1].detail);
    assert_eq!(answer.leads, "");
    // Its own price goes first; of parts that are not all priced nothing is made up.
    let priced = bench(&sherbet, "lime sherbet, 1 l, 10");
    assert_eq!(form("300 ml lime sherbet").answer(&priced).rows[0].amount, "3.00");
    assert_eq!(form("300 ml lime sherbet").answer(&bench(&sherbet, "sugar, 1 kg, 1.20")).rows[0].amount, "?");
    // A prep in a prep.
    let nested = [sherbet[0], ("Sour base", "500 ml lime sherbet\n500 ml gin")];
    assert_eq!(form("30 ml sour base").answer(&bench(&nested, parts)).leads, "");
    for round in [
        &[("Moon dust", "100 ml moon dust\n10 ml gin")][..],
        &[("Moon dust", "1 l star dust"), ("Star dust", "1 l moon dust")],
    ] {
        assert_eq!(form("30 ml moon dust").answer(&bench(round, parts)).rows[0].amount, "?");
    }
}

#[test]
fn a_price_is_of_what_a_line_is_taken_as() {
    let cost = |spec: &str, prices: &str| {
        let answer = form(spec).answer(&bench(prices));
        answer.rows[0].amount.clone()
    };
    // 60 ml of a litre at 20.00 or 30.00.
    for (line, prices, shown) in [
        ("60 ml London dry gin", "gin, 1 l, 20", "1.20"),
        ("60 ml gin", "London dry gin, 1 l, 20", "1.20"),
        ("60 ml lemon-leaf gin", "gin, 1 l, 20", "1.20"),
        ("60 ml gin", "London dry gin, 1 l, 20\ngin, 1 l, 30", "1.80"),
        ("60 ml GIN", "gin, 1 l, 30, 2026-11-01\ngin, 1 l, 20, 2026-10-01", "1.80"),
        ("60 ml gin", "gin, 1 l, 30, 2026-10-01\ngin, 1 l, 20, 2026-10-01", "1.20"),
        ("60 ml Limettensaft", "lime juice, 1 l, 20", "1.20"),
        // A price of one thing is none of another that a bar writes so.
        ("60 ml gin", "lemon-leaf gin, 1 l, 20", "?"),
        ("60 ml sloe gin", "gin, 1 l, 20", "?"),
        ("60 ml vodka", "gin, 1 l, 20", "?"),
        // What nobody knows has a price by its own name.
        ("60 ml moon dust", "moon dust, 1 l, 20", "1.20"),
        // By another measure, and nothing says how the two go together.
        ("60 ml moon dust", "moon dust, 1 kg, 20", "?"),
        ("2 eggs", "eggs, 10 pieces, 3", "0.60"),
        ("8 mint leaves", "mint leaves, 40 pieces, 3", "0.60"),
        ("8 mint leaves", "mint leaves, 1 kg, 3", "?"),
        // What is paid for as something else. 100 ml of lime juice at 1.026 g/ml are 102.6 g: at 50 % of 205.2 g, at 45 %
        // of 228 g, which are 3.51 limes of 65 g.
        ("100 ml lime juice", "limes, 1 kg, 10, 50 %", "2.05"),
        ("100 ml lime juice", "lime, 1 kg, 10", "2.28"),
        ("100 ml lime juice", "limes, 10 pieces, 3", "1.05"),
        ("2 limes", "limes, 10 pieces, 3, 50 %", "0.60"),
        ("1 egg white", "eggs, 10 pieces, 3", "0.30"),
        // 614.8 g in a litre; its own price goes first.
        ("100 ml simple syrup", "sugar, 1 kg, 10", "0.61"),
        ("100 ml simple syrup", "sugar, 1 kg, 10\nsugar syrup, 1 l, 30", "3.00"),
        ("10 ml vanilla syrup", "sugar, 1 kg, 10", "?"),
        // Juice and purée that are bought as that, by weight too.
        ("100 ml lime juice", "limes, 1 kg, 10\nlime juice, 1 l, 20", "2.00"),
        ("100 g raspberry purée", "raspberry purée, 1 kg, 20", "2.00"),
    ] {
        assert_eq!(cost(line, prices), shown, "{line} / {prices}");
    }
}

#[test]
fn what_is_paid_for_as_something_else_says_how_much_of_that_it_takes() {
    let answer = CostForm { makes: "2".into(), ..form("200 ml lime juice\n200 ml simple syrup") };
    let answer = answer.answer(&bench("limes, 1 kg, 10, 50 %\nsugar, 1 kg, 1"));
    assert_eq!(
        rows(&answer),
        [
            ["lime juice", "2.05", "Costs most, 97 %; 100 ml takes 205.2 g of 1 kg at 10.00 for limes"],
            ["simple syrup", "0.06", "100 ml takes 61.5 g of 1 kg at 1.00 for sugar"],
        ]
    );
    assert_eq!(answer.leads, "");
}

#[test]
fn bad_input_is_said_at_its_field() {
    let said = |field: &str, text: &str| {
        let mut form = form(SOUR);
        let mut texts = crate::screen::Texts::new();
        empty_into(&mut form.clone(), &mut texts);
        texts.insert(field.into(), text.into());
        crate::screen::fill(&mut form, &texts);
        let answer = form.answer(&bench(PRICES));
        assert!(answer.strip.figures.iter().all(|figure| !figure.value.contains("NaN")));
        answer
            .problems
            .iter()
            .map(|problem| format!("{}: {}", problem.field, problem.words))
            .collect::<Vec<_>>()
            .join("|")
    };
    let menu = "menu: Type a price above zero, like 9.50.";
    let aim = "aim: Type a pour cost from 0.1 to 100 %, like 20 %.";
    let tax = "tax: Type a percentage from 0 to under 100, like 5 %.";
    let paid = "price: A price is above zero. Type what a pack costs, like 24.00.";
    for (field, text, words) in [
        ("menu", "0", menu),
        ("menu", "-3", menu),
        ("menu", "lots", menu),
        ("menu", "1,000", "menu: 1,000 can be read two ways. Did you mean 1000 or 1?"),
        ("tax", "100 %", tax),
        ("tax", "-1", tax),
        ("aim", "0", aim),
        ("aim", "101 %", aim),
        ("aim", "-20", aim),
        ("extras", "-1", "extras: Type what they cost for a serve, like 0.62."),
        ("makes", "0", "makes: Type a number above zero, like 18 or 2½."),
        ("serves", "0", "serves: Type a number above zero, like 18 or 2½."),
        ("price", "0 for 700 ml", paid),
        ("price", "-24 for 700 ml", paid),
        ("price", "24 for 0 ml", "price: A pack of nothing has no price. Type what is in it, like 700 ml."),
        ("price", "24", "price: “24” can't be read as a price. Write it like 24.00 for 700 ml."),
        ("menu", "9.50", ""),
        ("aim", "100 %", ""),
        ("extras", "0", ""),
        ("tax", "", ""),
    ] {
        assert_eq!(said(field, text), words, "{field} {text}");
    }
}

#[test]
fn nothing_to_cost_is_said() {
    let empty = form("").answer(&bench(PRICES));
    assert_eq!(empty.strip.also, "Type or paste a spec, a line for each ingredient.");
    let unpriced = CostForm::default().answer(&Bench::default());
    assert_eq!(unpriced.strip.also, "No prices yet. Type what a pack costs, like 24.00 for 700 ml.");
    assert_eq!(unpriced.strip.tone, Tone::Waiting);
    assert_eq!(unpriced.leads, "4 prices missing");
}

#[test]
fn an_old_price_is_told() {
    let mut bench = bench("gin, 700 ml, 22.00, 2026-03-03");
    bench.clock.now = 1_795_000_000_000; // 18 Nov 2026
    assert_eq!(form("60 ml gin").answer(&bench).cautions, ["gin: the price is of Tue 3 Mar 2026."]);
    // Once, however many lines are of it.
    assert_eq!(form("60 ml gin\n10 ml gin").answer(&bench).cautions.len(), 1);
    bench.clock.now = 1_780_000_000_000; // 28 May 2026
    assert_eq!(form("60 ml gin").answer(&bench).cautions, Vec::<String>::new());
}

/// What is typed for one line is not said to be the price of another; it stands there again when one comes back.
#[test]
fn a_price_stays_with_the_line_it_was_typed_for() {
    let mut form = CostForm { price_of: "gin".into(), price: "24 for 700 ml".into(), ..form("60 ml gin\n20 ml rye") };
    form.take("price_of", "rye");
    let (_, answer) = form.show(&bench(""));
    assert_eq!((form.price.as_str(), answer.buttons.len()), ("", 0));
    assert_eq!(answer.notes, ["Typed and not kept yet: 24 for 700 ml for gin. Tap Price there to go on."]);
    form.price = "30 for".into();
    form.take("price_of", "gin");
    assert_eq!((form.price.as_str(), form.typed.as_str()), ("24 for 700 ml", "rye\t30 for"));
    form.take("price_of", "gin");
    // Other lines are written: the price is still of gin.
    form.spec = "50 ml rum".into();
    let (blocks, answer) = form.show(&bench(""));
    assert_eq!(answer.buttons[0].label, "Keep 24 for 700 ml for gin");
    let options = blocks.iter().find_map(|block| match block {
        Block::Field(Field { name: "price_of", input: Input::Pick(options), .. }) => Some(options.clone()),
        _ => None,
    });
    let keys: Vec<String> = options.expect("a list").into_iter().map(|option| option.key).collect();
    assert_eq!(keys, ["rum", "gin", "rye"]);
}

/// Four for a kilo of lemons is no price of a kilo of juice: what is meant is asked, the usual first.
#[test]
fn what_fruit_costs_is_kept_for_the_fruit() {
    let offered = |line: &str, price: &str| {
        let form = CostForm { price: price.into(), ..form(line) };
        let buttons = form.answer(&bench("")).buttons;
        buttons.into_iter().map(|button| button.label).collect::<Vec<_>>().join(" | ")
    };
    for (line, price, labels) in [
        ("30 ml lemon juice", "4 for 1 kg", "Keep 4 for 1 kg for lemons | Keep 4 for 1 kg for lemon juice"),
        ("30 ml lime juice", "3 for 10 pieces", "Keep 3 for 10 pieces for limes | Keep 3 for 10 pieces for lime juice"),
        ("30 ml lemon juice", "4 for 1 l", "Keep 4 for 1 l for lemon juice"),
        ("30 ml raspberry purée", "9 for 1 kg", "Keep 9 for 1 kg for raspberry purée"),
        ("30 ml honey", "9 for 1 kg", "Keep 9 for 1 kg for honey"),
    ] {
        assert_eq!(offered(line, price), labels);
    }
}
