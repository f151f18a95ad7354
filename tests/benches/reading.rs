//! How long the full reading of a spec takes, a pH alone and the curve of a drink on ice, beside one conversion of a general-purpose
//! calculator. `cargo bench --no-default-features`

use std::hint::black_box;
use std::time::Instant;

use meniscus::book::Line;
use meniscus::craft::balance::{Balance, balance};
use meniscus::craft::chill::{self, Method, Pace};
use meniscus::craft::pour::pour;
use meniscus::quantity::{Abv, Conventions, Unit, Volume};
use meniscus::substance::acid::Acid;
use meniscus::substance::mix::Mix;
use meniscus::substance::ph::{Dissolved, ph};
use meniscus::text::{Decimal, Dimension, Reading, read_spec};

const SPEC: &str = "45 ml London dry gin\n15 ml Bitter red aperitif\n20 ml Dry vermouth\n22.5 ml Lemon juice\n\
    15 ml Simple syrup 1:1 by weight\n10 ml Pear cordial\n2 dash Orange bitters\n30 ml Soda water";

fn main() {
    let reading = microseconds(|| {
        black_box(read(black_box(SPEC)));
    });
    let lime = [(Acid::Citric, 0.239), (Acid::Malic, 0.03)];
    let acidity = microseconds(|| {
        let _ = black_box(ph(&Dissolved { acids: black_box(&lime), cations: 0.025 }));
    });
    let drink = Mix::spirit(Volume::whole_ml(90), Abv::from_fraction(0.3).expect("a strength"));
    let chilling = microseconds(|| {
        let _ = black_box(chill::curve(
            &chill::usual(black_box(&drink), Method::Stir),
            Method::Stir,
            Pace::Usual,
            [30.0, 90.0],
        ));
    });
    let general = microseconds(|| {
        let _ = black_box(fend_core::evaluate(black_box("1.75 floz to ml"), &mut fend_core::Context::new()));
    });
    println!("{reading:>9.2} µs  the full reading of an 8-line spec (limit 20)");
    println!("{acidity:>9.2} µs  one pH (limit 5)");
    println!("{chilling:>9.2} µs  a drink on its ice, in {} moments (limit 1000)", chill::STEPS);
    println!("{general:>9.2} µs  one unit conversion by fend-core");
    println!("{:>9.3}     reading / conversion", reading / general);
    println!("{:>9.3}     pH / conversion", acidity / general);
    assert!(reading < 20.0 && acidity < 5.0 && chilling < 1000.0, "slower than its limit");
}

/// Text → lines → ingredients by name → what is in them → balance.
fn read(spec: &str) -> Balance {
    let conventions = Conventions::default();
    let reading = Reading {
        conventions: &conventions,
        decimal: Decimal::Point,
        bare: Unit::Millilitre,
        kind: Dimension::Either,
        own: &[],
    };
    let mix: Mix = read_spec(spec, &reading).into_iter().filter_map(|line| poured(line.read.as_ref().ok()?)).sum();
    balance(&mix)
}

fn poured(line: &Line) -> Option<Mix> {
    pour(line.taken.as_ref()?, line.amount)
}

/// Median over batches of a few milliseconds.
fn microseconds(mut work: impl FnMut()) -> f64 {
    let mut times: Vec<f64> = (0..41)
        .map(|_| {
            let started = Instant::now();
            for _ in 0..200 {
                work();
            }
            started.elapsed().as_secs_f64() * 1e6 / 200.0
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}
