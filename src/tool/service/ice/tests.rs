//! Ice as it is asked for.

use super::*;
use crate::screen::picture::Picture;
use crate::screen::plan::HOUR;
use crate::screen::{Fields, Tone};

/// The form with these texts in its fields.
fn form(ask: &str, texts: &[(&str, &str)]) -> IceForm {
    let mut form = IceForm { ask: ask.into(), ..IceForm::default() };
    for (name, text) in texts {
        let mut fields = form.fields();
        let (_, field) = fields.iter_mut().find(|(field, _)| field == name).expect(name);
        (*text).clone_into(field);
    }
    form
}

fn answer(ask: &str, texts: &[(&str, &str)]) -> Answer {
    form(ask, texts).answer(&Bench::default())
}

/// What the strip says: its figures, and what to do.
fn strip(ask: &str, texts: &[(&str, &str)]) -> (String, String) {
    let strip = answer(ask, texts).strip;
    (strip.figures.iter().map(ToString::to_string).collect::<Vec<_>>().join(" + "), strip.also)
}

fn rows(answer: &Answer) -> Vec<String> {
    answer.rows.iter().map(|row| format!("{}: {}; {}", row.name, row.amount, row.detail)).collect()
}

#[test]
fn a_night() {
    // ((180 + 90) × 30 + 4000) / 0.8 = 15 125 g.
    let night = answer("night", &[]);
    assert_eq!(strip("night", &[]), ("15.1 kg".into(), "4 bags of 5 kg".into()));
    let Some(Picture::Vessels { text, vessels }) = &night.strip.picture else { panic!("no bags") };
    assert_eq!((text.as_str(), vessels.len()), ("4 bags of 5 kg", 4));
    let full: Vec<f64> = vessels.iter().map(|one| (one.vessel.ml_to(one.level) / 8.0).round()).collect();
    // Of the fourth 125 g, 2.5 %, are wanted.
    assert_eq!(full, [100.0, 100.0, 100.0, 3.0]);
    let Some((title, Picture::Shares { bars, key })) = night.pictures.first() else { panic!("no shares") };
    let key: Vec<&str> = key.iter().map(|(_, words)| words.as_str()).collect();
    assert_eq!(title, "Goes where");
    assert_eq!(key, ["stir 5.4 kg", "glass 2.7 kg", "tubs 4.0 kg", "melts 3.0 kg"]);
    assert!((bars[0].parts.iter().map(|(_, share)| share).sum::<f64>() - 1.0).abs() < 1e-9);
    // 15 cubes of 46 mm from a block; 12 425 g are no clear ice: three bags.
    assert_eq!(
        rows(&night),
        [
            "of which clear: 2.7 kg; 30 cubes of 46.1 mm",
            "freeze clear blocks: 2 × 1.6 kg; 31 h before",
            "bags for the rest: 3 × 5 kg; ",
        ]
    );
}

#[test]
fn a_night_with_less() {
    // Nothing in the glass, nothing in tubs, nothing melts: 180 × 30; and then there is nothing clear.
    let plain = [("glass", ""), ("tubs", "0"), ("melts", "0"), ("bag", "")];
    assert_eq!(strip("night", &plain), ("5.4 kg".into(), String::new()));
    let plain = answer("night", &plain);
    assert!(plain.rows.is_empty() && plain.plan.is_none() && plain.strip.picture.is_none());
    assert_eq!(plain.strip.tone, Tone::Answer);
    // 90 × 4 / 1 in one bag of it.
    let few = [("serves", "4"), ("made_with", ""), ("tubs", ""), ("melts", "")];
    assert_eq!(strip("night", &few), ("360 g".into(), "1 bag of 5 kg".into()));
    assert_eq!(strip("night", &[("serves", "4"), ("made_with", ""), ("glass", "0"), ("tubs", "")]).0, "–");
    // Many bags are drawn as four.
    let Some(Picture::Vessels { vessels, .. }) = answer("night", &[("serves", "3000")]).strip.picture else {
        panic!("no bags")
    };
    assert_eq!(vessels.len(), 4);
}

/// What is wrong in the tray of clear ice is said there; here it is said where to look.
#[test]
fn a_night_points_to_clear_ice() {
    for wrong in [("thick", "0"), ("freezer", "4"), ("thick", "40"), ("cut", "60")] {
        let night = answer("night", &[wrong]);
        assert!(night.problems.is_empty() && night.plan.is_none(), "{wrong:?}");
        assert_eq!(rows(&night)[1], "freeze clear blocks: ; what size, and when: see Clear ice", "{wrong:?}");
        assert_eq!(night.strip.figures[0].to_string(), "15.1 kg");
    }
}

#[test]
fn pieces_by_size_and_by_weight() {
    // 4.6³ × 0.91672 = 89.2 g, 5 × 3 of them; 5000 / 89.2 = 56.
    let of_block = |texts: &[(&str, &str)]| strip("pieces", texts);
    assert_eq!(of_block(&[]), ("89.2 g".into(), "15 out of a block of 1.6 kg".into()));
    assert_eq!(of_block(&[("source", "bag")]).1, "56 out of a bag of 5 kg");
    // 3.2² × 12 × 0.91672 = 112.6 g, seven side by side: 7 × 32 + 6 × 2 = 236 of 240 mm.
    assert_eq!(of_block(&[("shape", "spear")]), ("113 g".into(), "7 out of a block of 1.6 kg".into()));
    // π/6 × 6³ × 0.91672; 60 mm is more than 50.
    let round = ("104 g".to_owned(), "None out of a block: it is larger".to_owned());
    assert_eq!(of_block(&[("shape", "sphere")]), round);
    // 2 in are 50.8 mm: 120.2 g.
    assert_eq!(of_block(&[("side", "2 in"), ("thick", "2 in")]).0, "120 g");
    let by_weight = |shape| strip("pieces", &[("known_by", "weight"), ("shape", shape)]).0;
    assert_eq!(by_weight("cube"), "46.1 mm a side");
    assert_eq!(by_weight("sphere"), "57.2 mm across");
    // 98.176 ml / 3.2².
    assert_eq!(by_weight("spear"), "95.9 mm long");
    // 90 / (0.55 × 0.91672).
    assert_eq!(by_weight("crushed"), "179 ml, as it lies");
    assert_eq!(of_block(&[("shape", "crushed")]), ("151 g".into(), "10 out of a block of 1.6 kg".into()));
    assert_eq!(of_block(&[("source", "bag"), ("bag", "50 g")]).1, "None out of a bag: it is larger");
    // A mould bursts; crushed ice has none.
    let warns = |texts: &[(&str, &str)]| answer("pieces", texts).cautions.iter().any(|words| words.contains("bursts"));
    assert!(warns(&[]) && !warns(&[("shape", "crushed")]));
}

#[test]
fn clear_ice() {
    // 30.6 h in still air, 13.8 with a fan: tests/published/ice.rs.
    assert_eq!(strip("clear", &[]), ("13–31 h to freeze".into(), "Start 31 h before, look after 13 h".into()));
    let clear = answer("clear", &[]);
    // 1 − 15 × 90 / 1595.09 = 15.4 %.
    assert_eq!(
        rows(&clear),
        [
            "weighs: 1.6 kg; 240 × 145 × 50 mm",
            "gives cubes: 15 of 46.1 mm; 15.4 % lost to cuts and trim",
            "for the night: 2 × 1.6 kg; 30 cubes",
        ]
    );
    assert!(clear.cautions[0].starts_with("Ice slips"));
    // 0 °F is −17.8 °C.
    assert_eq!(strip("clear", &[("freezer", "0 °F")]).0, "14–31 h to freeze");
    // A thin sheet, to the half hour. In still air 4.6312e6 × (0.0000245 + 0.00154) = 7 245 s, and 1 451 to cool; with a
    // fan 2 966 and 580.
    assert_eq!(strip("clear", &[("thick", "7"), ("freezer", "−30"), ("glass", "0.2 g")]).0, "0.5–2.5 h to freeze");
    let small = answer("clear", &[("thick", "40")]);
    assert_eq!(small.problems[0].field, "glass");
    assert!(small.problems[0].words.starts_with("A cube of that is 46.1 mm a side"), "{:?}", small.problems);
    assert!(small.plan.is_none() && small.strip.tone == Tone::Answer);
}

#[test]
fn to_the_run_sheet() {
    for ask in ["night", "clear"] {
        let plan = answer(ask, &[]).plan.expect("a plan");
        let steps: Vec<(&str, u32)> = plan.steps.iter().map(|step| (step.key.as_str(), step.wait)).collect();
        assert_eq!(steps, [("freeze", 31 * HOUR), ("temper", 900), ("cut", 0)], "{ask}");
        assert!(plan.steps[0].words.contains("2 insulated tubs"), "{}", plan.steps[0].words);
    }
    for ask in ["pieces", "melt"] {
        assert!(answer(ask, &[]).plan.is_none(), "{ask}");
    }
    // Both bags and water are to be had for a night.
    let needs = answer("night", &[]).plan.expect("a plan").needs;
    assert_eq!(needs.iter().map(|need| need.what.as_str()).collect::<Vec<_>>(), ["water", "bagged ice"]);
}

#[test]
fn what_melts_in_a_glass() {
    // 10.7 and 26.7 g in 20 min, all 90 g in 67 to 169 min: tests/published/ice.rs.
    assert_eq!(strip("melt", &[]), ("11–27 g of water".into(), "in 20 min; gone in 67–169 min".into()));
    assert_eq!(rows(&answer("melt", &[])), ["5 min: 3–7 g; ", "10 min: 5–13 g; ", "40 min: 21–53 g; "]);
    let melt = answer("melt", &[]);
    let Some((_, Picture::Curve { text, lines, seconds, .. })) = melt.pictures.first() else { panic!("no curve") };
    assert_eq!(text, "11–27 g after 20 min, 21–53 g after 40 min");
    assert_eq!(format!("{seconds:?}"), "[1200.0, 2400.0]");
    // What comes in goes on the same, so that what melts is twice as much in twice the time.
    for line in lines {
        let [after, last] = line.points.last().expect("points");
        assert!((last / line.now - 2.0).abs() < 1e-9 && (after - 2400.0).abs() < 1e-9, "{line:?}");
    }
    assert!(lines[0].now > lines[1].now);
    assert_eq!(strip("melt", &[("minutes", "600")]).0, "90 g of water");
    assert_eq!(strip("melt", &[("room", "0")]), ("0 g of water".into(), "in 20 min; in the cold it stays".into()));
}

/// Each mistake is said next to its field, in words that say what to type, and there is no answer.
#[test]
fn mistakes_have_their_words() {
    for (ask, field, text, words) in [
        ("night", "serves", "0", "Type a number above zero, like 18 or 2½."),
        ("night", "melts", "100", "Type a percentage from 0 to under 100, like 5 %."),
        ("night", "glass", "2 cl", ""),
        ("pieces", "side", "0", "Type a length from 5 to 500 mm."),
        ("pieces", "side", "10 m", "Type a length from 5 to 500 mm."),
        ("pieces", "side", "wide", "Type a length, like 45 mm, 4.5 cm or 1¾ in."),
        ("pieces", "long", "3 m", "Type a length from 5 to 2\u{202f}000 mm."),
        ("pieces", "cut", "-1", "Type a length, like 45 mm, 4.5 cm or 1¾ in."),
        ("pieces", "cut", "30", "Type a length from 0 to 20 mm."),
        ("clear", "thick", "0", "Type a length from 5 to 300 mm."),
        ("clear", "thick", "10 m", "Type a length from 5 to 300 mm."),
        ("clear", "freezer", "0", COLD),
        ("clear", "freezer", "4", COLD),
        ("clear", "freezer", "", COLD),
        ("clear", "freezer", "−80", COLD),
        ("clear", "water", "120", "Known from 0 to 100 °C. Type a temperature between."),
        ("clear", "glass", "0.05 g", "Too small to cut. Type what a piece weighs, like 90 g."),
        ("melt", "minutes", "0", "Type minutes, from 1 to 600."),
        ("melt", "holds", "60 ml", "That is more ice than the glass holds. Type ice and drink together."),
    ] {
        let wrong = answer(ask, &[(field, text)]);
        let problem = wrong.problems.iter().find(|problem| problem.field == field);
        let problem = problem.unwrap_or_else(|| panic!("{ask} {field} {text}: {:?}", wrong.problems));
        assert!(words.is_empty() || problem.words == words, "{field} {text}: {}", problem.words);
        assert_eq!(wrong.strip.tone, Tone::Problem, "{field} {text}");
    }
    let sea = answer("night", &[("serves", "900000"), ("glass", "9000 kg")]);
    assert_eq!(sea.problems[0].words, "That is more ice than there is. Check serves and weights.");
    // A saw that takes more than the piece is thick; a weight that makes no such piece.
    let saw = answer("pieces", &[("side", "10"), ("cut", "15")]);
    assert_eq!((saw.problems[0].field.as_str(), saw.strip.tone), ("cut", Tone::Problem));
    let heavy = answer("pieces", &[("known_by", "weight"), ("shape", "spear"), ("weight", "5 kg")]);
    assert_eq!(heavy.problems[0].words, "That comes to 5\u{202f}326 mm. Check the weight.");
    // What is empty is asked for, and is no mistake.
    for (ask, field) in [("night", "serves"), ("pieces", "side"), ("clear", "thick"), ("melt", "ice")] {
        assert_eq!(answer(ask, &[(field, "")]).strip.tone, Tone::Waiting, "{ask} {field}");
    }
}

const COLD: &str = "Type how cold the freezer is, from −40 to −1 °C, like −18: at 0 °C and above nothing freezes.";

#[test]
fn emptied_it_asks() {
    for ask in ["night", "pieces", "clear", "melt"] {
        let mut form = form(ask, &[]);
        form.empty();
        let answer = form.answer(&Bench::default());
        assert_eq!((answer.strip.tone, answer.problems.len()), (Tone::Waiting, 0), "{ask}");
    }
}
