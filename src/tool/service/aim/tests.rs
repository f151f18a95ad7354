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
        answer.rows[0].name.contains("simple syrup") && answer.rows[0].detail.contains(": 12.1 : 1"),
        "{:?}",
        answer.rows
    );
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
        for field in [RATIO, STRENGTH, SERVE, SERVES] {
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
    // And as it is in another form, in its own glass.
    let like = aimed(AimForm { like: "a/1".into(), ..form("sharp") });
    let other = stands(&Contents::of(SWEET, &bench).mix, Of::SugarToAcid);
    let there = stands(&in_glass(&like.form.expect("a form").lines), Of::SugarToAcid);
    assert!((there / other - 1.0).abs() < 5e-3, "{there} {other}");
}
