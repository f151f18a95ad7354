//! Clarifying as it is asked for.

use super::*;

fn answer(change: impl FnOnce(&mut ClarifyForm)) -> Answer {
    let mut form = ClarifyForm::default();
    change(&mut form);
    form.answer(&Bench::default())
}

fn figures(answer: &Answer) -> Vec<String> {
    answer.strip.figures.iter().map(ToString::to_string).collect()
}

#[test]
fn doses() {
    assert_eq!(figures(&answer(|_| {})), ["1.0 g enzyme"]);
    let agar = answer(|form| {
        form.method = "agar".into();
        form.juice = "1 kg".into();
        form.agar_water = "20".into();
        form.agar_at = "20".into();
    });
    assert_eq!(figures(&agar), ["2.5 g agar", "250 g water"]);
    assert!(
        agar.cautions[0].starts_with("At 37 °C it may set while you whisk. Warm the juice to 27 °C"),
        "{:?}",
        agar.cautions
    );
    let gelatin = answer(|form| {
        form.method = "gelatin".into();
        form.juice = "2 kg".into();
    });
    assert_eq!(figures(&gelatin), ["10.0 g gelatin"]);
    let rest = answer(|form| form.method = "rest".into());
    assert!(rest.strip.figures[0].to_string().ends_with("ml clear"));
}

#[test]
fn sour_cold_and_heat_are_said() {
    assert!(answer(|_| {}).cautions[0].contains("near pH 2.2"));
    // The words name what was typed, as it was typed.
    for typed in ["2.3", "2.35", "1.9"] {
        let caution = answer(|form| form.ph = typed.into()).cautions[0].clone();
        assert!(caution.contains(&format!("at pH {typed}:")) && !caution.contains("2.2"), "{caution}");
    }
    assert!(answer(|form| form.ph = "3.4".into()).cautions.is_empty());
    assert!(answer(|form| form.enzyme_at = "4".into()).cautions[1].starts_with("Cold slows"));
    assert!(answer(|form| form.enzyme_at = "70".into()).cautions[1].starts_with("From about 60 °C"));
    // 54 °C is where it worked best in carrot juice: no limit.
    assert_eq!(answer(|form| form.enzyme_at = "54".into()).cautions.len(), answer(|_| {}).cautions.len());
}

#[test]
fn agar_hands_on_what_it_thinned() {
    let href = |method: &str| {
        let answer = answer(|form| {
            form.method = method.into();
            form.juice = "1 kg".into();
        });
        answer
            .carry
            .into_iter()
            .find(|carry| carry.label == "Make a cordial")
            .map(|carry| carry.href)
            .unwrap_or_default()
    };
    // 45.9 g/l of acid, three parts of juice to one of water by weight.
    let agar = href("agar");
    let acid = agar.split("came_acid=").nth(1).and_then(|acid| acid.parse::<f64>().ok()).expect("a figure");
    assert!((acid - 34.2).abs() < 0.3, "{agar}");
    assert!(!href("enzyme").contains("came_acid"));
}
