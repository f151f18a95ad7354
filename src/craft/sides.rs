//! Drinks side by side: which stand apart by more than people taste, and in what they are alike.
//!
//! The tongue goes by what is in a sip: sugar and acid are compared to the litre, whatever the size of the drink.

/// What is compared, in the order in which a difference is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Of {
    /// Acid, as citric, g/l.
    Acid,
    /// Sugar, g/l.
    Sugar,
    /// Strength by volume at 20 °C, a fraction.
    Strength,
    /// Millilitres at 20 °C.
    Volume,
}

impl Of {
    /// All of them.
    pub const ALL: [Of; 4] = [Of::Acid, Of::Sugar, Of::Strength, Of::Volume];
}

/// Of sourness, how much more of itself is tasted. Source: S. Camacho et al., J. Food Science 80 (2015), doi
/// 10.1111/1750-3841.12922: a Weber fraction of 0.26 of thickness, "comparable to" those of sourness and bitterness.
const SOURNESS: f64 = 0.26;
/// The same of sweetness: 0.1 to 0.2 from memory (R. L. McBride worked on it). The larger of the two.
const SWEETNESS: f64 = 0.2;
/// Difference of strength: 1 % vol. Common practice, no source.
const STRENGTH: f64 = 0.01;
/// The same of the size of a drink: a fifth. Common practice, no source.
const SIZE: f64 = 0.2;
/// Differences below these are of next to nothing, g/l. Common practice, no source.
const LEAST_ACID: f64 = 0.5;
const LEAST_SUGAR: f64 = 5.0;

/// What is in a glass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Glass {
    /// Acid, as citric, g/l.
    pub acid: f64,
    /// Sugar, g/l.
    pub sugar: f64,
    /// Strength by volume at 20 °C, a fraction.
    pub strength: f64,
    /// Millilitres at 20 °C.
    pub volume: f64,
}

impl Glass {
    /// How much it has of one.
    #[must_use]
    pub const fn of(&self, of: Of) -> f64 {
        match of {
            Of::Acid => self.acid,
            Of::Sugar => self.sugar,
            Of::Strength => self.strength,
            Of::Volume => self.volume,
        }
    }
}

/// Whether most people tell these two amounts apart.
#[must_use]
pub fn differs(of: Of, one: f64, other: f64) -> bool {
    let (less, more) = (one.min(other), one.max(other));
    let by = more - less;
    match of {
        Of::Acid => by > LEAST_ACID && by > less * SOURNESS,
        Of::Sugar => by > LEAST_SUGAR && by > less * SWEETNESS,
        Of::Strength => by > STRENGTH,
        Of::Volume => by > less * SIZE,
    }
}

/// Which of several glasses stand apart in one thing: those that are not in the largest company of glasses that nobody
/// tells apart. Where two companies are as large, those that are in both belong, and no others. A glass that is not known
/// does not stand apart, and is nobody's company.
#[must_use]
pub fn stands_apart(of: Of, glasses: &[Option<Glass>]) -> Vec<bool> {
    let value = |at: usize| glasses[at].map(|glass| glass.of(of));
    // A company begins with the least, and reaches as far as nobody tells from it.
    let joins = |first: usize, at: usize| {
        value(first).zip(value(at)).is_some_and(|(least, value)| value >= least && !differs(of, least, value))
    };
    let size = |first: usize| (0..glasses.len()).filter(|at| joins(first, *at)).count();
    let largest = (0..glasses.len()).map(size).max().unwrap_or(0);
    let is_largest = |first: &usize| size(*first) == largest;
    let belongs = |at: usize| (0..glasses.len()).filter(is_largest).all(|first| joins(first, at));
    (0..glasses.len()).map(|at| glasses[at].is_some() && !belongs(at)).collect()
}

/// What there is to say of several glasses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Fewer than two are known.
    TooFew,
    /// Nobody tells them apart.
    Alike,
    /// Of three or more this one alone stands apart, with more of it than the others, or less.
    One(Of, usize, bool),
    /// They differ, and this one has most of it.
    Most(Of, usize),
}

/// Says it, of the first thing in which they differ.
#[must_use]
pub fn verdict(glasses: &[Option<Glass>]) -> Verdict {
    let known = glasses.iter().flatten().count();
    if known < 2 {
        return Verdict::TooFew;
    }
    for of in Of::ALL {
        let apart = stands_apart(of, glasses);
        let value = |at: usize| glasses[at].map_or(f64::NEG_INFINITY, |glass| glass.of(of));
        let most = (1..glasses.len()).fold(0, |most, at| if value(at) > value(most) { at } else { most });
        match (apart.iter().filter(|apart| **apart).count(), apart.iter().position(|apart| *apart)) {
            (1, Some(one)) if known > 2 => return Verdict::One(of, one, one == most),
            (0, _) => {}
            _ => return Verdict::Most(of, most),
        }
    }
    Verdict::Alike
}

/// In what nobody tells them apart.
#[must_use]
pub fn alike(glasses: &[Option<Glass>]) -> Vec<Of> {
    let is_alike = |of: &Of| stands_apart(*of, glasses).iter().all(|apart| !apart);
    Of::ALL.into_iter().filter(is_alike).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn glass(acid: f64, sugar: f64, strength: f64, volume: f64) -> Option<Glass> {
        Some(Glass { acid, sugar, strength, volume })
    }

    /// Of one thing alone.
    fn told(of: Of, values: &[f64]) -> Vec<bool> {
        let one = |value: &f64| match of {
            Of::Acid => glass(*value, 0.0, 0.0, 1.0),
            Of::Sugar => glass(0.0, *value, 0.0, 1.0),
            Of::Strength => glass(0.0, 0.0, *value, 1.0),
            Of::Volume => glass(0.0, 0.0, 0.0, *value),
        };
        stands_apart(of, &values.iter().map(one).collect::<Vec<_>>())
    }

    /// By hand: 8 × 1.26 = 10.08 g/l acid, 50 × 1.2 = 60 g/l sugar, 20 + 1 = 21 % vol, 100 × 1.2 = 120 ml.
    #[test]
    fn what_is_tasted_begins_where_its_source_has_it() {
        for (of, less, not_yet, tasted) in [
            (Of::Acid, 8.0, 10.0, 10.1),
            (Of::Sugar, 50.0, 59.9, 60.1),
            (Of::Strength, 0.20, 0.2099, 0.2101),
            (Of::Volume, 100.0, 119.9, 120.1),
            // Next to nothing is nothing, however many times more it is.
            (Of::Acid, 0.0, 0.5, 0.51),
            (Of::Sugar, 0.0, 5.0, 5.1),
        ] {
            assert!(!differs(of, less, not_yet) && !differs(of, not_yet, less), "{of:?} {not_yet}");
            assert!(differs(of, less, tasted) && differs(of, tasted, less), "{of:?} {tasted}");
        }
    }

    #[test]
    fn the_odd_one_out_stands_apart_wherever_it_stands() {
        assert_eq!(told(Of::Volume, &[145.0, 112.0, 95.0]), [true, false, false]);
        assert_eq!(told(Of::Volume, &[95.0, 145.0, 112.0]), [false, true, false]);
        assert_eq!(told(Of::Acid, &[8.8, 3.9, 3.9]), [true, false, false]);
        assert_eq!(told(Of::Strength, &[0.198, 0.199, 0.143]), [false, false, true]);
        // Two that differ both do; so do three of which no two are alike.
        assert_eq!(told(Of::Acid, &[8.0, 4.0]), [true, true]);
        assert_eq!(told(Of::Acid, &[8.0, 4.0, 2.0]), [true, true, true]);
        assert_eq!(told(Of::Acid, &[8.0, 8.0, 4.0, 4.0]), [true; 4]);
        // One between two that differ is like either.
        assert_eq!(told(Of::Sugar, &[70.0, 84.0, 60.0]), [false, true, true]);
        assert_eq!(told(Of::Sugar, &[60.0]), [false]);
        assert_eq!(told(Of::Sugar, &[]), [false; 0]);
    }

    #[test]
    fn one_that_is_not_known_is_left_out() {
        let known = [glass(8.0, 60.0, 0.2, 100.0), None, glass(4.0, 60.0, 0.2, 100.0)];
        assert_eq!(stands_apart(Of::Acid, &known), [true, false, true]);
        assert_eq!(verdict(&known), Verdict::Most(Of::Acid, 0));
        assert_eq!(verdict(&known[..2]), Verdict::TooFew);
        assert_eq!(verdict(&[]), Verdict::TooFew);
        assert_eq!(verdict(&[None, glass(4.0, 60.0, 0.2, 100.0), known[0]]), Verdict::Most(Of::Acid, 2));
    }

    #[test]
    fn the_verdict_is_of_what_is_tasted_first() {
        let (sharp, soft) = (glass(8.8, 66.0, 0.143, 145.0), glass(3.9, 63.0, 0.198, 112.0));
        assert_eq!(verdict(&[sharp, soft, soft]), Verdict::One(Of::Acid, 0, true));
        assert_eq!(verdict(&[sharp, sharp, soft]), Verdict::One(Of::Acid, 2, false));
        assert_eq!(verdict(&[soft, sharp]), Verdict::Most(Of::Acid, 1));
        assert_eq!(verdict(&[soft, soft, soft]), Verdict::Alike);
        let strong = glass(3.9, 63.0, 0.3, 112.0);
        assert_eq!(verdict(&[soft, strong, soft, soft]), Verdict::One(Of::Strength, 1, true));
        let small = glass(3.9, 63.0, 0.198, 60.0);
        assert_eq!(verdict(&[soft, soft, small]), Verdict::One(Of::Volume, 2, false));
        assert_eq!(alike(&[sharp, soft, soft]), [Of::Sugar]);
        assert_eq!(alike(&[soft, strong]), [Of::Acid, Of::Sugar, Of::Volume]);
    }
}
