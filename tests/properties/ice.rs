//! Ice: what holds for every piece, night, block and glass.

use proptest::prelude::*;

use meniscus::craft::ice::{Piece, clear_in, comes_in, crushed, freezes_in, heap, melted, night, together};
use meniscus::quantity::{Mass, Ratio, Temperature, Volume};
use meniscus::substance::cold::LATENT_HEAT_OF_ICE;

fn grams(g: f64) -> Mass {
    Mass::from_g(g).expect("in range")
}

fn celsius(t: f64) -> Temperature {
    Temperature::from_celsius(t).expect("in range")
}

proptest! {
    /// What a size weighs is of that size.
    #[test]
    fn size_and_mass_go_there_and_back(mass in 1.0_f64..1e5, side in 5.0_f64..200.0) {
        let mass = grams(mass);
        let same = |other: Option<Mass>| other.is_some_and(|other| (other.g() / mass.g() - 1.0).abs() < 1e-9);
        prop_assert!(same(Piece::cube(mass).mass()));
        prop_assert!(same(Piece::sphere(mass).mass()));
        prop_assert!(same(Piece::spear(mass, side).mass()));
        prop_assert!(same(heap(mass).and_then(crushed)));
    }

    /// Pieces and what the cuts between them take are no more than the block, whichever way it lies, and a narrower saw
    /// gives no fewer.
    #[test]
    fn a_block_is_never_cut_into_more_than_it_is(
        block in [20.0_f64..600.0, 20.0..600.0, 20.0..300.0],
        piece in [5.0_f64..120.0, 5.0..120.0, 5.0..200.0],
        cut in 0.0_f64..10.0,
    ) {
        let one = Piece::Block(piece);
        let pieces = together(one.cut_from(block, cut));
        let mass = |piece: Piece| piece.mass().expect("a mass").g();
        prop_assert!(f64::from(pieces) * mass(one) <= mass(Piece::Block(block)) * (1.0 + 1e-9));
        prop_assert_eq!(together(one.cut_from([block[2], block[0], block[1]], cut)), pieces);
        prop_assert!(together(one.cut_from(block, cut / 2.0)) >= pieces);
        let fits = (0..3).all(|at| {
            let mut sorted = [block, piece];
            sorted.iter_mut().for_each(|edges| edges.sort_by(f64::total_cmp));
            sorted[1][at] <= sorted[0][at]
        });
        prop_assert_eq!(pieces > 0, fits);
    }

    /// Of all the ice of a night the share that melts is the one that was said, and the rest is what is used.
    #[test]
    fn what_melts_is_its_share_of_all(
        serves in 0.5_f64..1e4,
        each in [0.0_f64..500.0, 0.0..500.0, 0.1..1e5],
        melts in 0.0_f64..0.99,
    ) {
        let share = |value| Ratio::from_value(value).expect("in range");
        let [made_with, glass, tubs] = each.map(grams);
        let all = night(share(serves), made_with, glass, tubs, share(melts)).expect("a night");
        prop_assert!((all.melts.g() / all.total().g() - melts).abs() < 1e-9);
        let used = (each[0] + each[1]) * serves + each[2];
        prop_assert!((all.total().g() - all.melts.g() - used).abs() < 1e-9 * used.max(1.0));
    }

    /// Thicker, less cold, stiller or warmer takes longer; twice as thick more than twice and at most four times as long.
    #[test]
    fn clear_ice_takes_its_time(mm in 5.0_f64..150.0, freezer in -40.0_f64..-1.5, water in 1.0_f64..90.0) {
        let at = celsius(freezer);
        let [early, late] = clear_in(mm, celsius(water), at).expect("it freezes");
        prop_assert!(early > 0.0 && early < late);
        let later = |mm, water, freezer: f64| clear_in(mm, celsius(water), celsius(freezer)).expect("it freezes")[1];
        prop_assert!(later(mm * 1.1, water, freezer) > late);
        prop_assert!(later(mm, water * 1.1, freezer) > late);
        prop_assert!(later(mm, water, freezer + 0.5) > late);
        for film in [1.0, 10.0, 1e9] {
            let frozen = |mm| freezes_in(mm, at, film).expect("it freezes");
            prop_assert!((2.0..=4.0 + 1e-9).contains(&(frozen(2.0 * mm) / frozen(mm))));
        }
    }

    /// What melts takes the heat that comes in, until there is no more of it.
    #[test]
    fn melting_takes_the_heat_that_comes_in(
        ice in 1.0_f64..2000.0,
        holds in 10_u32..2000,
        room in 0.0_f64..45.0,
        seconds in 0.0_f64..1e5,
    ) {
        let [least, most] = comes_in(Volume::whole_ml(holds), celsius(room));
        prop_assert!(least <= most);
        for watts in [least, most] {
            let water = melted(grams(ice), watts, seconds).g();
            prop_assert!(water <= ice && water * LATENT_HEAT_OF_ICE <= watts * seconds + 1e-9);
            prop_assert!(water >= ice || (water * LATENT_HEAT_OF_ICE - watts * seconds).abs() < 1e-6);
        }
    }
}
