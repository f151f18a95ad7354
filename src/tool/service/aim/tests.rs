use super::*;
use crate::book::{Book, Card, Entry, Pairs, Stamp, Way};
use crate::reading::chilled::Chilled;
use crate::screen::picture::Picture;
use crate::screen::{Fields, Held};

const SWEET: &str = "60 ml aged rum\n22.5 ml lime juice\n20 ml simple syrup";
const SOUR: &str = "60 ml aged rum\n22.5 ml lime juice\n15 ml simple syrup";

fn form(taste: &str) -> AimForm {
    AimForm { taste: taste.into(), spec: SOUR.into(), ..AimForm::default() }
}

fn answer(form: &AimForm) -> Answer {
    form.answer(&Bench::default())
}

/// 15 ml of syrup at 614.8 g/l and 22.5 ml of lime: 9.22 + 0.36 g of sugar to 0.997 g of acid, 9.6 : 1. To 12 : 1 there are
/// to be 11.97 g of sugar: 2.4 g more, 3.9 ml of syrup.
#[test]
fn a_sharp_drink_is_sweetened() {
    let answer = answer(&AimForm { ratio: "12".into(), ..form("sharp") });
    assert_eq!(answer.strip.figures[0].unit, "ml");
    assert!(answer.strip.also.starts_with("simple syrup: pour"), "{}", answer.strip.also);
    assert!(answer.strip.figures[0].value.starts_with("+3.9"), "{:?}", answer.strip);
    assert_eq!(answer.strip.below, "To 12 : 1");
    assert!(
        answer.rows[0].name.contains("simple syrup") && answer.rows[0].detail.contains(": as poured 12.1 : 1"),
        "{:?}",
        answer.rows
    );
    // So the form that is kept: what it says is what it comes to. What comes to the aim is not said to be off.
    let kept =
        stands(&Contents::of(&answer.form.as_ref().expect("a form").lines, &Bench::default()).mix, Of::SugarToAcid);
    assert_eq!(shown::said(Of::SugarToAcid, kept, &Bench::default()), "12.1 : 1");
    assert!(answer.rows.iter().any(|row| row.detail.starts_with("next time: 12 : 1")), "{:?}", answer.rows);
    assert!(
        answer.rows.iter().any(|row| row.name.starts_with('−') && row.detail.starts_with("next time")),
        "{:?}",
        answer.rows
    );
    let Some((_, Picture::Changed(bars))) = answer.pictures.first() else { panic!("no bars") };
    assert_eq!(bars[2].of, "sugar to acid");
    assert!((bars[2].values[1] - 12.0).abs() < 1e-9 && bars[2].aim == Some(12.0));
}

#[test]
fn four_in_the_tin_take_four_times_as_much() {
    let one = answer(&AimForm { ratio: "12".into(), ..form("sharp") });
    let four = answer(&AimForm { ratio: "12".into(), serves: "4".into(), ..form("sharp") });
    let ml = |answer: &Answer| answer.strip.figures[0].value.trim_start_matches('+').parse::<f64>().expect("a number");
    assert!((ml(&four) - 4.0 * ml(&one)).abs() < 0.3, "{} {}", ml(&four), ml(&one));
    assert!(four.strip.also.ends_with("for 4 serves"), "{}", four.strip.also);
}

#[test]
fn each_taste_has_an_answer_and_by_two_lines_the_strength_stays() {
    for taste in Taste::ALL {
        for by in By::ALL {
            let form = AimForm { by: by.key().into(), ..form(taste.key()) };
            let answer = answer(&form);
            assert_eq!(answer.strip.tone, Tone::Answer, "{taste:?} {by:?}: {:?}", answer.strip);
            let figures = if *by == By::Two && *taste != Taste::Big { 2 } else { 1 };
            assert_eq!(answer.strip.figures.len(), figures, "{taste:?} {by:?}: {:?}", answer.strip);
        }
    }
    let both = answer(&AimForm { by: "two".into(), ..form("sharp") });
    let Some((_, Picture::Changed(bars))) = both.pictures.first() else { panic!("no bars") };
    assert!((bars[3].values[0] - bars[3].values[1]).abs() < 1e-9, "{bars:?}");
    // Each figure says of what it is, and the row how both are poured.
    let units: Vec<&str> = both.strip.figures.iter().map(|figure| figure.unit.as_str()).collect();
    assert_eq!(units, ["ml aged rum", "ml simple syrup"]);
    assert_eq!((both.strip.also.as_str(), both.strip.below.as_str()), ("To 12 : 1", ""));
    assert!(both.rows[0].detail.starts_with("pour 1 bsp aged rum, pour"), "{:?}", both.rows[0]);
}

/// The bars of sugar and acid after it, g/l.
fn sugar_and_acid(answer: &Answer) -> [f64; 2] {
    let Some((_, Picture::Changed(bars))) = answer.pictures.first() else { panic!("{:?}", answer.strip) };
    assert!(bars[0].of == "sugar" && bars[1].of == "acid");
    [bars[0].values[1], bars[1].values[1]]
}

/// As poured it has 9.58 g of sugar and 1.00 g of acid in 97 ml.
#[test]
fn sugar_and_acid_are_aimed_at_by_the_litre() {
    let acid = answer(&AimForm { acid_aim: "9".into(), ..form("sweet") });
    assert!((sugar_and_acid(&acid)[1] - 9.0).abs() < 1e-6);
    assert_eq!((acid.strip.figures.len(), acid.strip.below.as_str()), (1, "To 9 g/l acid"));
    assert!(acid.rows[0].detail.contains("9 g/l acid, 2"), "{:?}", acid.rows);
    let both = AimForm { sugar_aim: "110".into(), acid_aim: "12".into(), ..form("sharp") };
    let there = answer(&both);
    let [sugar, acid] = sugar_and_acid(&there);
    assert!((sugar - 110.0).abs() < 1e-6 && (acid - 12.0).abs() < 1e-6, "{sugar} {acid}");
    assert_eq!(there.strip.figures.len(), 2);
    assert!(there.strip.also.starts_with("To 110 g/l sugar, 12 g/l acid"), "{}", there.strip.also);
    let asks_how_many = |form: &AimForm| {
        form.layout(&Bench::default()).iter().any(|block| matches!(block, Block::Field(field) if field.name == "by"))
    };
    assert!(asks_how_many(&form("sharp")) && !asks_how_many(&both));
    // By two lines the strength stays, where one figure is aimed at.
    let held = answer(&AimForm { sugar_aim: "110".into(), by: "two".into(), ..form("sharp") });
    let Some((_, Picture::Changed(bars))) = held.pictures.first() else { panic!("no bars") };
    assert!((bars[0].values[1] - 110.0).abs() < 1e-6 && (bars[3].values[0] - bars[3].values[1]).abs() < 1e-9);
    // A ratio and one of them say both; all three are taken where they agree, and asked about where they do not.
    let ratio = |ratio: &str, sugar: &str, acid: &str| {
        answer(&AimForm { ratio: ratio.into(), sugar_aim: sugar.into(), acid_aim: acid.into(), ..form("sharp") })
    };
    assert!((sugar_and_acid(&ratio("10 : 1", "110", ""))[1] - 11.0).abs() < 1e-6);
    assert_eq!(ratio("10", "110", "11").strip, ratio("", "110", "11").strip);
    let torn = ratio("12", "110", "11");
    let [problem] = torn.problems.as_slice() else { panic!("{:?}", torn.problems) };
    assert_eq!((problem.field.as_str(), problem.fixes[0].text.as_str()), (RATIO, "10 : 1"));
    assert_eq!(problem.words, "110 g/l sugar, 11 g/l acid: that is 10 : 1. Empty one of the three.");
    let far = ratio("", "300", "40").strip.also;
    assert!(far.starts_with("No two lines reach 300 g/l sugar and 40 g/l acid at once: with 300 g/l sugar, "), "{far}");
}

#[test]
fn what_cannot_be_is_said() {
    let says = |form: AimForm| answer(&form).strip.also;
    let strong = says(AimForm { strength: "60 %".into(), ..form("weak") });
    assert_eq!(strong, "No one line reaches 60.0 % vol: 35.5 % vol is as near as it gets");
    let water = says(AimForm { spec: "60 ml water".into(), ..form("weak") });
    assert_eq!(water, "Nothing in it has alcohol: add a line that has.");
    assert!(says(AimForm { spec: String::new(), ..form("sharp") }).starts_with("Type or paste a spec"));
    let unknown = answer(&AimForm { spec: "60 ml gin\n20 ml moon dust".into(), ..form("sharp") });
    assert_eq!(unknown.strip.also, "Every line must be counted first: see below.");
    assert!(unknown.rows[1].marked);
    for bad in ["x", "0", "-3", "1e99"] {
        for field in [RATIO, SUGAR, ACID, STRENGTH, SERVE, SERVES] {
            for taste in Taste::ALL {
                let mut form = form(taste.key());
                for (name, text) in form.fields() {
                    if name == field {
                        bad.clone_into(text);
                    }
                }
                let answer = answer(&form);
                assert!(!format!("{answer:?}").contains("NaN"), "{bad} in {field}");
            }
        }
    }
}

/// A stirred drink is aimed at as it is in the glass: poured as the form says, and chilled as its spec does, it hits.
#[test]
fn a_chilled_drink_is_aimed_at_in_the_glass() {
    let way = Way { lines: SOUR.into(), method: "shaken".into(), steps: "Shake 12 s".into(), ..Way::default() };
    let other = Way { lines: SWEET.into(), method: "stirred".into(), ..Way::default() };
    let value = Card { name: "Lamp".into(), ways: vec![way.clone(), other], ..Card::default() };
    let entry = Entry { id: "a".into(), value, stamp: Stamp::default(), newer: None, pairs: Pairs::default() };
    let book = Book { cards: vec![entry.into()], has_cards: true, ..Book::default() };
    let bench = Bench::default().with_book(Held::new(book));
    let in_glass = |lines: &str| {
        let mix = Contents::of(lines, &bench).mix;
        let water = Chilled::of(&way, &bench).and_then(|chilled| chilled.water(&mix, &bench)).expect("chilled");
        mix + Mix::water(water)
    };
    let aimed = |form: AimForm| AimForm { from_spec: "a/0".into(), ..form }.answer(&bench);
    for (taste, typed, of, target) in [
        ("strong", "16", Of::Strength, 0.16),
        ("weak", "19", Of::Strength, 0.19),
        ("sharp", "12", Of::SugarToAcid, 12.0),
    ] {
        let form = match of {
            Of::Strength => AimForm { strength: typed.into(), ..form(taste) },
            _ => AimForm { ratio: typed.into(), ..form(taste) },
        };
        let answer = aimed(form);
        let way = answer.form.as_ref().unwrap_or_else(|| panic!("{:?}", answer.strip));
        let there = stands(&in_glass(&way.lines), of);
        assert!((there / target - 1.0).abs() < 5e-3, "{taste}: {there}, {}", way.lines);
        assert!(answer.pictures[0].0.ends_with("before and after, as shaken 12 s"), "{}", answer.pictures[0].0);
    }
    let smaller = aimed(AimForm { serve: "100 ml".into(), ..form("big") });
    let there = in_glass(&smaller.form.expect("a form").lines).volume(crate::quantity::Temperature::TWENTY);
    assert!((there.expect("a volume").ml() - 100.0).abs() < 0.3, "{there:?}");
    // And as it is in another form, in its own glass; what is typed goes before that, and it is said.
    let like = |ratio: &str| aimed(AimForm { like: "a/1".into(), ratio: ratio.into(), ..form("sharp") });
    let other = stands(&Contents::of(SWEET, &bench).mix, Of::SugarToAcid);
    let there = stands(&in_glass(&like("").form.expect("a form").lines), Of::SugarToAcid);
    assert!((there / other - 1.0).abs() < 5e-3, "{there} {other}");
    assert_eq!(like("").strip.below, "To 12.7 : 1, as in Lamp");
    assert_eq!(like("12").strip.below, "To 12 : 1, as typed; Lamp: 12.7 : 1");
    let gone = aimed(AimForm { like: "a/7".into(), ..form("sharp") });
    assert_eq!(gone.strip.below, "To 12 : 1; no longer in the book: nothing to go by");
}

/// What is aimed at where it is already, as it is or like itself, is no amount of nothing.
#[test]
fn where_it_is_already_nothing_is_poured() {
    let now = stands(&Contents::of(SOUR, &Bench::default()).mix, Of::SugarToAcid);
    let there = answer(&AimForm { ratio: now.to_string(), ..form("sharp") });
    assert!(there.strip.figures.is_empty() && there.form.is_none() && there.rows.is_empty(), "{:?}", there.strip);
    assert_eq!((there.strip.also.as_str(), there.strip.tone), ("It is there already", Tone::Answer));
    let volume = stands(&Contents::of(SOUR, &Bench::default()).mix, Of::Volume);
    let big = answer(&AimForm { serve: format!("{volume} ml"), ..form("big") });
    assert_eq!((big.strip.figures.len(), big.strip.also.as_str()), (0, "It is there already"));
    // Of two lines only one is poured where the other comes to nothing: both halved is water alone.
    let half = |of| (stands(&Contents::of(SOUR, &Bench::default()).mix, of) / 2.0).to_string();
    let water = answer(&AimForm { sugar_aim: half(Of::Sugar), acid_aim: half(Of::Acid), ..form("sharp") });
    assert!(water.strip.figures.len() == 1 && water.strip.also.starts_with("water"), "{:?}", water.strip);
}

/// What was typed for one drink is not aimed at with another.
#[test]
fn another_spec_is_aimed_at_anew() {
    let typed = || AimForm {
        ratio: "8".into(),
        sugar_aim: "80".into(),
        acid_aim: "10".into(),
        strength: "20".into(),
        serve: "90 ml".into(),
        ..form("sharp")
    };
    let aims = |form: &AimForm| {
        Taste::ALL
            .iter()
            .map(|taste| AimForm { taste: taste.key().into(), ..form.clone() })
            .map(|form| form.aims().count())
            .sum::<usize>()
    };
    let (mut same, mut other) = (typed(), typed());
    same.take(SPEC, SOUR);
    other.take(SPEC, SWEET);
    assert!(aims(&same) > 5 && aims(&other) == 0, "{other:?}");
    assert_eq!((other.spec.as_str(), other.taste.as_str()), (SWEET, "sharp"));
}

#[test]
fn an_aim_that_makes_it_worse_is_answered_and_said() {
    let said = |form: AimForm| {
        let answer = answer(&form);
        assert_eq!(answer.strip.tone, Tone::Answer, "{:?}", answer.strip);
        let said = answer.problems.first();
        said.map_or(String::new(), |problem| format!("{}: {}", problem.field, problem.words))
    };
    let sharp = |ratio: &str| said(AimForm { ratio: ratio.into(), ..form("sharp") });
    assert_eq!(sharp("8"), "ratio: That is sharper than it is now, 9.59 : 1.");
    assert_eq!((sharp("12").as_str(), sharp("9.59").as_str()), ("", ""));
    let sweet = |acid: &str| said(AimForm { acid_aim: acid.into(), ..form("sweet") });
    assert_eq!(
        (sweet("9").as_str(), sweet("12").as_str()),
        ("acid_aim: That is sweeter than it is now, 10.2 g/l acid.", "")
    );
    let both = |taste: &str| said(AimForm { sugar_aim: "110".into(), acid_aim: "12".into(), ..form(taste) });
    assert_eq!(
        (both("sharp").as_str(), both("sweet").as_str()),
        ("sugar_aim: That is sharper than it is now, 9.59 : 1.", "")
    );
    let strength = |taste: &str| said(AimForm { strength: "20 %".into(), ..form(taste) });
    assert!(
        strength("weak").starts_with("strength: That is weaker than it is now, 2") && strength("strong").is_empty()
    );
    let big = said(AimForm { serve: "120 ml".into(), ..form("big") });
    assert!(big.starts_with("serve: That is bigger than it is now, 97"), "{big}");
}
