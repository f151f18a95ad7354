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
    let said = |change: fn(&mut ClarifyForm)| answer(change).cautions.join("\n");
    // Lime by the library; the words name what was typed, as it was typed.
    assert!(said(|_| {}).contains("this sour, about pH 2.2"), "{}", said(|_| {}));
    assert!(said(|form| form.ph = "2.3".into()).contains("this sour, at pH 2.3:"));
    assert!(said(|form| form.ph = "2.35".into()).contains("this sour, at pH 2.35:"));
    assert!(!said(|form| form.ph = "3.4".into()).contains("this sour"));
    assert!(said(|_| {}).contains("Food-grade"));
    assert!(said(|form| form.enzyme_at = "4".into()).contains("Cold slows"));
    assert!(said(|form| form.enzyme_at = "70".into()).contains("From about 60 °C"));
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
    // 45.9 g/l of acid less the 1.6 that its salts hold, three parts of juice to one of water by weight.
    let agar = href("agar");
    let carried = |name: &str| {
        let text = agar.split(name).nth(1).and_then(|rest| rest.split('&').next()).unwrap_or_default();
        text.parse::<f64>().expect("a figure")
    };
    assert!((carried("came_acid=") - 33.0).abs() < 0.3, "{agar}");
    // All of 70.9 g/l that is dissolved, in 1026 g: 5.2 % when thinned, less 0.6 for its acid.
    assert!((carried("came_brix=") - 4.55).abs() < 0.1, "{agar}");
    assert!(agar.contains("came_holds=") && agar.contains("salts"), "{agar}");
    assert!(!href("enzyme").contains("came_acid"));
}
