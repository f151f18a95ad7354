//! Ice, worked by hand, each sum beside its case. Density, latent heat and heat capacity: IAPWS-06 and IAPWS-95, by iapws
//! 1.5.5. Conductivity and films of air are from memory, and so is Stefan's formula: J. Stefan, "Über die Theorie der
//! Eisbildung", Annalen der Physik 278 (1891) 269–286.

use meniscus::craft::ice::{
    CONDUCTIVITY, FILM, Piece, bags_for, clear_in, comes_in, cools_in, crushed, freezes_in, gone_in, heap, melted,
    night, pieces_in, together,
};
use meniscus::quantity::{Mass, Ratio, Temperature, Volume};
use meniscus::substance::cold::{DENSITY_OF_ICE, HEAT_CAPACITY_OF_ICE, LATENT_HEAT_OF_ICE};

use crate::near;

fn grams(g: f64) -> Mass {
    Mass::from_g(g).expect("a mass")
}

fn celsius(t: f64) -> Temperature {
    Temperature::from_celsius(t).expect("a temperature")
}

fn ratio(value: f64) -> Ratio {
    Ratio::from_value(value).expect("a factor")
}

fn weight(piece: Piece) -> f64 {
    piece.mass().expect("a mass").g()
}

#[test]
fn pieces_weigh_what_their_ice_does() {
    // 5 × 5 × 5 cm = 125 ml, times 0.91672.
    near(weight(Piece::Block([50.0; 3])), 114.59, 1e-9, "cube");
    // 3 × 3 × 12 cm = 108 ml.
    near(weight(Piece::Block([30.0, 30.0, 120.0])), 99.006, 0.001, "spear");
    // π/6 × 6³ = 113.097 ml.
    near(weight(Piece::Sphere(60.0)), 103.678, 0.001, "sphere");
    // 24 × 14.5 × 5 cm = 1740 ml.
    near(weight(Piece::Block([240.0, 145.0, 50.0])), 1595.09, 0.01, "block");
    // 300 ml × 0.55 × 0.91672.
    near(crushed(Volume::whole_ml(300)).expect("a mass").g(), 151.259, 0.001, "crushed");
    // And back: 90 / 0.91672 = 98.176 ml; its root 4.613 cm; a sphere of it 6/π as much, 5.723 cm; 3 cm thick, 10.908 cm.
    near(Piece::cube(grams(90.0)).edges()[0], 46.13, 0.01, "cube of 90 g");
    near(Piece::sphere(grams(90.0)).edges()[0], 57.23, 0.01, "sphere of 90 g");
    near(Piece::spear(grams(90.0), 30.0).edges()[2], 109.08, 0.01, "spear of 90 g");
    // 151.259 / (0.55 × 0.91672).
    near(heap(grams(151.259)).expect("a volume").ml(), 300.0, 0.001, "heap");
}

#[test]
fn a_block_gives_what_a_saw_leaves() {
    let cube = Piece::Block([46.0; 3]);
    // 5 × 46 + 4 × 2 = 238 of 240; 3 × 46 + 2 × 2 = 142 of 145; 46 of 50.
    assert_eq!(cube.cut_from([240.0, 145.0, 50.0], 2.0), [5, 3, 1]);
    // With cuts of 3 mm, 5 × 46 + 4 × 3 = 242 is too long.
    assert_eq!(cube.cut_from([240.0, 145.0, 50.0], 3.0), [4, 3, 1]);
    // What is as large as the block is cut from it once; what is larger, not at all.
    assert_eq!(cube.cut_from([46.0; 3], 3.0), [1, 1, 1]);
    assert_eq!(together(cube.cut_from([240.0, 145.0, 45.9], 0.0)), 0);
    // A spear of 30 × 30 × 140 mm in 150 × 240 × 65: across, 240 / 32 = 7.5 and (65 + 2) / 32 = 2.09: 1 × 7 × 2.
    assert_eq!(together(Piece::Block([30.0, 30.0, 140.0]).cut_from([150.0, 240.0, 65.0], 2.0)), 14);
    // A sphere takes the block round it.
    assert_eq!(Piece::Sphere(60.0).cut_from([130.0, 70.0, 60.0], 5.0), [2, 1, 1]);
    // 5000 / 90 = 55.6; 15 125 / 5000 = 3.03; 10 000 / 5000 is 2 and no more.
    assert_eq!(pieces_in(grams(5000.0), grams(90.0)), 55);
    assert_eq!(bags_for(grams(15_125.0), grams(5000.0)), 4);
    assert_eq!(bags_for(grams(10_000.0), grams(5000.0)), 2);
}

#[test]
fn the_ice_of_a_night() {
    // ((180 + 90) × 30 + 4000) / (1 − 0.2) = 12 100 / 0.8 = 15 125, of which 3 025 melt.
    let all = night(ratio(30.0), grams(180.0), grams(90.0), grams(4000.0), ratio(0.2)).expect("a night");
    near(all.made_with.g(), 5400.0, 1e-9, "made with");
    near(all.glasses.g(), 2700.0, 1e-9, "in the glasses");
    near(all.melts.g(), 3025.0, 1e-9, "melts");
    near(all.total().g(), 15_125.0, 1e-9, "total");
    assert_eq!(night(ratio(30.0), grams(180.0), grams(90.0), grams(0.0), ratio(1.0)), None);
}

#[test]
fn stefans_time() {
    // ρL = 916.72 × 333 420 = 3.05653e8 J/m³, over 2.2 × 18: 7.7185e6. x²/2 + kx/h = 0.00125 + 0.011 at 10 W/(m² K):
    // 94 552 s, 26.3 h. At 25: 0.00125 + 0.0044, 43 610 s.
    let [still, fan] = FILM.map(|film| freezes_in(50.0, celsius(-18.0), film).expect("it freezes"));
    near(still, 94_552.0, 5.0, "still air");
    near(fan, 43_610.0, 5.0, "a fan");
    // 0.05 × 4/3 × 916.72 × 4184.1 = 255 709 J/(m² K), over 10, times ln(33/18) = 0.60614: 15 499 s; over 25, 6 200 s.
    near(cools_in(50.0, celsius(15.0), celsius(-18.0), FILM[0]).expect("it cools"), 15_499.0, 5.0, "cooling");
    let [early, late] = clear_in(50.0, celsius(15.0), celsius(-18.0)).expect("it freezes");
    near(early, 43_610.0 + 6_200.0, 10.0, "early");
    near(late, 94_552.0 + 15_499.0, 10.0, "late");
    // Water at 0 °C, or below it, has nothing to cool.
    near(cools_in(50.0, celsius(-1.0), celsius(-18.0), 10.0).expect("it cools"), 0.0, 1e-12, "cold water");
    for warm in [0.0, 4.0] {
        assert_eq!(clear_in(50.0, celsius(15.0), celsius(warm)), None, "{warm} °C");
    }
}

/// Stefan's limit: without a film, t = ρLx²/(2kΔT), and twice the thickness takes four times as long.
#[test]
fn without_a_film_it_goes_by_the_square() {
    let bare = |mm| freezes_in(mm, celsius(-18.0), 1e12).expect("it freezes");
    // 3.05653e8 × 0.05² / (2 × 2.2 × 18) = 9 648 s.
    near(bare(50.0), 9_648.0, 1.0, "the limit");
    near(bare(100.0) / bare(50.0), 4.0, 1e-6, "twice as thick");
    // With one it is more than twice, less than four times.
    let still = |mm| freezes_in(mm, celsius(-18.0), FILM[0]).expect("it freezes");
    near(still(100.0) / still(50.0), 2.204, 0.001, "in still air");
}

/// F. Neumann's exact solution (from memory: √π λ exp(λ²) erf λ = c ΔT / L, x = 2λ√(αt)) counts the heat of the ice too. At
/// −18 °C it takes 3.7 % longer, which is what the formula is said to leave out.
#[test]
fn the_exact_solution_is_a_few_percent_longer() {
    let stefan_number = HEAT_CAPACITY_OF_ICE * 18.0 / LATENT_HEAT_OF_ICE;
    // exp(λ²) erf λ = 2/√π Σ 2ⁿ λ²ⁿ⁺¹ / (1·3·5…(2n+1)).
    let left = |lambda: f64| {
        let (mut term, mut sum) = (lambda, 0.0);
        for n in 1..30 {
            sum += term;
            term *= 2.0 * lambda * lambda / (2.0 * f64::from(n) + 1.0);
        }
        2.0 * lambda * sum
    };
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if left(middle) < stefan_number { low = middle } else { high = middle }
    }
    let diffusivity = CONDUCTIVITY / (DENSITY_OF_ICE * 1e3 * HEAT_CAPACITY_OF_ICE * 1e3);
    let exact = 0.05_f64.powi(2) / (4.0 * low * low * diffusivity);
    let stefan = freezes_in(50.0, celsius(-18.0), 1e12).expect("it freezes");
    near(exact / stefan, 1.037, 0.001, "Neumann over Stefan");
}

/// All the heat that leaves through ice and film while it grows is what freezing so much gives off.
#[test]
fn freezing_gives_off_its_heat() {
    let (steps, film) = (10_000, FILM[1]);
    let depth = |step: i32| 80.0 * f64::from(step) / f64::from(steps);
    let time = |mm: f64| freezes_in(mm, celsius(-18.0), film).expect("it freezes");
    let heat: f64 = (0..steps)
        .map(|step| {
            let middle = f64::midpoint(depth(step), depth(step + 1)) / 1000.0;
            18.0 / (middle / CONDUCTIVITY + 1.0 / film) * (time(depth(step + 1)) - time(depth(step)))
        })
        .sum();
    // 0.08 m × 916.72 kg/m³ × 333.42 kJ/kg.
    near(heat / 1e3, 0.08 * 916.72 * 333.42, 1e-3, "kJ to the square metre");
}

#[test]
fn melting_in_a_glass() {
    // 180 ml: r³ = 180e-6 / 2π, r = 30.60 mm, 6πr² = 0.017648 m². At 21 °C, 8 and 20 W/(m² K): 2.965 and 7.412 W.
    let [least, most] = comes_in(Volume::whole_ml(180), celsius(21.0));
    near(least, 2.965, 0.001, "least");
    near(most, 7.412, 0.001, "most");
    // 20 min: 1200 × 2.965 / 333.42 = 10.67 g, and 26.68 g.
    near(melted(grams(90.0), least, 1200.0).g(), 10.67, 0.01, "least");
    near(melted(grams(90.0), most, 1200.0).g(), 26.68, 0.01, "most");
    // 90 × 333.42 / 7.412 = 4 049 s, and no more melts after that.
    near(gone_in(grams(90.0), most).expect("gone"), 4_049.0, 1.0, "gone");
    near(melted(grams(90.0), most, 9e9).g(), 90.0, 1e-9, "all of it");
    assert_eq!(gone_in(grams(90.0), comes_in(Volume::whole_ml(180), celsius(-2.0))[1]), None);
}
