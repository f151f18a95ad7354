//! What the lines of a spec are taken to be, each read once; and that in words.

use std::sync::Arc;

use super::yields;
use crate::book::{Fit, Ingredient, Kind, Made, Taken, alike, fit, is_poured};
use crate::craft::milk_wash::{Clots, through, verdict};
use crate::craft::pour::{fits, litre_of, pour};
use crate::quantity::{Acidity, Amount, Mass, Ratio, Temperature, Volume};
use crate::screen::{Bench, Figure, Fix, plural};
use crate::substance::milk::{MILKS, Milk};
use crate::substance::mix::Mix;
use crate::text::{self, Dimension, LineProblem, SpecLine, read_spec};

#[cfg(test)]
thread_local! {
    /// How often a spec was read.
    pub(crate) static READ: std::cell::Cell<u32> = const { std::cell::Cell::new(0) };
}

/// A spec, read.
pub(crate) struct Contents {
    /// Its lines.
    pub(crate) lines: Arc<Vec<SpecLine>>,
    /// What is known of each.
    pub(crate) each: Vec<Content>,
    /// All that is known of it.
    pub(crate) mix: Mix,
    /// Its volumes before they are poured together, added up.
    pub(crate) apart: Volume,
    /// Lines that are not counted and should be, by name.
    pub(crate) missing: Vec<String>,
    /// Whether an egg or a fruit is counted, and so left out.
    pub(crate) has_counted: bool,
    /// Whether something has energy that is not in its figures: milk, fat, protein.
    pub(crate) has_more_energy: bool,
}

impl Contents {
    /// Reads the lines of a text.
    pub(crate) fn of(text: &str, bench: &Bench) -> Contents {
        #[cfg(test)]
        READ.with(|count| count.set(count.get() + 1));
        Contents::of_lines(&Arc::new(read_spec(text, &bench.reading(Dimension::Either))))
    }

    /// Lines that have been read.
    pub(crate) fn of_lines(lines: &Arc<Vec<SpecLine>>) -> Contents {
        let mut read = Contents {
            each: lines.iter().map(content).collect(),
            lines: Arc::clone(lines),
            mix: Mix::default(),
            apart: Volume::ZERO,
            missing: Vec::new(),
            has_counted: false,
            has_more_energy: false,
        };
        for (line, content) in lines.iter().zip(&read.each) {
            match (content, &line.read) {
                (Content::Poured(mix), Ok(line)) => {
                    read.mix = read.mix + **mix;
                    read.apart = read.apart + mix.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
                    let kind = line.taken.map(|taken| taken.ingredient.kind);
                    read.has_more_energy |= matches!(kind, Some(Kind::Dairy | Kind::Egg)) || mix.milk.g() > 0.0;
                }
                (Content::Counted(is_eaten), _) => read.has_counted |= is_eaten,
                (Content::Words, _) => {}
                (_, Ok(line)) => read.missing.push(line.name.clone()),
                (_, Err(_)) => read.missing.push(line.typed.clone()),
            }
        }
        read
    }

    /// Each line with what is known of it.
    pub(crate) fn pairs(&self) -> impl Iterator<Item = (&SpecLine, &Content)> + Clone {
        self.lines.iter().zip(&self.each)
    }

    /// Whether something in it is poured or weighed, and known.
    pub(crate) fn is_something(&self) -> bool {
        self.mix.mass().g() > 0.0
    }

    /// "2 lines not counted", of those that should be; empty where all are.
    pub(crate) fn not_counted(&self) -> String {
        match self.missing.len() {
            0 => String::new(),
            count => format!("{count} {} not counted", plural(count, "line", "lines")),
        }
    }

    /// What is drunk of it: all of it; or, where its milk clots by its acid, what comes through the filter, and that it does.
    pub(crate) fn drunk(&self, bench: &Bench) -> (Mix, bool) {
        let washed = self.washed(yields::through_milk(bench).0);
        (washed.unwrap_or(self.mix), washed.is_some())
    }

    /// What comes through the filter, so much of drink and milk together, where milk of a cow is in it and clots.
    fn washed(&self, share: Ratio) -> Option<Mix> {
        let (drink, milk, kind) = self.wash()?;
        (verdict(&drink, milk).clots == Clots::Yes).then(|| through(&drink, milk, kind, share))?
    }

    /// The drink and the milk of a cow in it, apart; none where there is none, or where not all of it is known.
    pub(crate) fn wash(&self) -> Option<(Mix, Volume, &'static Milk)> {
        let (mut drink, mut milk, mut kind) = (Mix::default(), Volume::ZERO, None);
        self.whole().filter(|mix| mix.milk > Mass::ZERO)?;
        for (line, content) in self.pairs() {
            let Content::Poured(mix) = content else { continue };
            if mix.milk <= Mass::ZERO {
                drink = drink + **mix;
                continue;
            }
            let name = line.read.as_ref().ok()?.taken?.ingredient.key.strip_suffix("-milk")?;
            let of = MILKS.iter().find(|milk| milk.key == name && milk.is_of_cows())?;
            if kind.is_some_and(|kind| kind != of) {
                return None;
            }
            kind = Some(of);
            milk = milk + mix.volume(Temperature::TWENTY).ok()?;
        }
        Some((drink, milk, kind?))
    }

    /// What is in it, when every line that is poured or weighed is known; none else.
    pub(crate) fn whole(&self) -> Option<&Mix> {
        self.missing.is_empty().then_some(&self.mix)
    }
}

/// What is known of a line.
pub(crate) enum Content {
    /// What is in it.
    Poured(Box<Mix>),
    /// Counted; whether it is an egg or a fruit, which would count if it were measured.
    Counted(bool),
    /// Words: a title, a garnish, a step.
    Words,
    /// Something poured, without an amount.
    NoAmount,
    /// An amount that cannot be read.
    Unclear,
    /// A powder by volume, which is no measure.
    Weighed,
    /// Nothing fits its name.
    Unknown,
    /// A figure in its name that cannot be used.
    Misread,
    /// Its own figures do not go together.
    Overfull,
    /// It is made here, of what is not known, or of itself.
    Unmade,
}

fn content(line: &SpecLine) -> Content {
    let line = match &line.read {
        Ok(line) => line,
        Err(LineProblem::Top(_)) => return Content::NoAmount,
        Err(LineProblem::NoAmount) if is_poured(&line.typed) => return Content::NoAmount,
        Err(problem) if problem.is_words() => return Content::Words,
        Err(_) => return Content::Unclear,
    };
    match (&line.taken, line.amount) {
        (taken, Amount::Count(_)) => {
            Content::Counted(taken.is_some_and(|taken| matches!(taken.ingredient.kind, Kind::Egg | Kind::Juice)))
        }
        _ if line.unread.is_some() => Content::Misread,
        (None, _) => Content::Unknown,
        (Some(taken), _) if matches!(taken.measured.made, Made::Here(_, None)) => Content::Unmade,
        (Some(taken), _) if !fits(taken) => Content::Overfull,
        (Some(taken), amount) => pour(taken, amount).map_or(Content::Weighed, |mix| Content::Poured(Box::new(mix))),
    }
}

/// That the figures of a spec are those of what comes through the filter.
pub(crate) fn washed_words(bench: &Bench) -> String {
    let (share, is_own) = yields::through_milk(bench);
    format!(
        "Its milk clots by its acid: strength, sugar, acid and volume are those of the clear drink without the curd, a yield of {} ({}).",
        text::percent(share.value(), bench.decimal),
        if is_own { "your own yield" } else { "rule of thumb" }
    )
}

/// "40 % vol, 20 g/l sugar", or nothing for what is as water.
pub(crate) fn figures_of(mix: &Mix, bench: &Bench) -> String {
    let shown: Vec<String> = figures(mix, bench).iter().map(ToString::to_string).collect();
    shown.join(", ")
}

/// Strength, sugar and acid, as far as there are any.
pub(crate) fn figures(mix: &Mix, bench: &Bench) -> Vec<Figure> {
    let acid = mix.titratable_acidity().map_or(0.0, Acidity::g_per_l);
    let figures =
        [(mix.strength().fraction() * 100.0, "% vol"), (mix.g_per_l(mix.sugar()), "g/l sugar"), (acid, "g/l acid")];
    let shown = figures.iter().filter(|(value, _)| *value >= 0.05);
    shown.map(|(value, unit)| Figure::new(text::count(*value, bench.decimal), *unit)).collect()
}

/// "as London dry gin, 40 % vol", with the published spread where there is one.
pub(crate) fn words(taken: &Taken, bench: &Bench) -> String {
    let Ingredient { name, range, kind, is_milk, .. } = *taken.ingredient;
    if is_milk && !taken.measured.is_nothing() {
        return format!("as {name}; figures of your own for milk are not used");
    }
    if matches!(taken.measured.made, Made::Here(..)) {
        let figures = figures_of(&litre_of(taken), bench);
        return format!("made here{}{figures}", if figures.is_empty() { "" } else { ", " });
    }
    // A syrup by another ratio is not "1:1 by weight".
    let is_its_own = taken.measured.reads.is_some() || taken.measured.sugar_per_litre.is_some();
    let ratio = name.find(|c: char| c.is_ascii_digit()).filter(|_| kind == Kind::Syrup && is_its_own);
    let name = name[..ratio.unwrap_or(name.len())].trim_end();
    let figures = if kind == Kind::Powder { String::new() } else { figures_of(&litre_of(taken), bench) };
    let joint = if figures.is_empty() { "" } else { ", " };
    let spread = if range.is_empty() || !taken.measured.is_nothing() { String::new() } else { format!(" ({range})") };
    format!("as {name}{joint}{figures}{spread}")
}

/// Why a line is asked about that nothing fits, or more than one thing.
pub(crate) fn question(name: &str, bench: &Bench) -> String {
    let bare = name.split('(').next().unwrap_or(name);
    match fit(bare, bench.reading(Dimension::Either).own) {
        Fit::Maybe(names) => format!("May be {}, so not counted. Which?", names.join(" or ")),
        _ => "Not known, so not counted. What is it like?".into(),
    }
}

/// What a line that nothing fits may be like, each as the line with that said.
pub(crate) fn guesses(line: &SpecLine, name: &str) -> Vec<Fix> {
    let like = |key: &str, label: &str| Fix {
        label: label.to_owned(),
        spoken: String::new(),
        text: likened(&line.typed, name, key),
    };
    let similar = alike(name).into_iter().map(|known| like(known, known));
    let usual = ["Spirit", "Liqueur", "Fruit juice", "Syrup", "Water"];
    similar.chain(usual.into_iter().map(|label| like(&label.to_ascii_lowercase(), label))).collect()
}

/// A line with "(as …)" behind its name; behind the line where the name was typed with other spaces.
fn likened(typed: &str, name: &str, key: &str) -> String {
    // The last place of the name: "20 ml l" begins with an l of its own.
    let place = typed.char_indices().map(|(at, _)| at).rfind(|at| typed[*at..].starts_with(name));
    match place {
        Some(at) => {
            let (before, after) = typed.split_at(at + name.len());
            format!("{before} (as {key}){after}")
        }
        None => format!("{typed} (as {key})"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_syrup_is_not_called_by_a_ratio_that_it_is_not() {
        let said = |line: &str| {
            let read = Contents::of(line, &Bench::default());
            words(&read.lines[0].read.as_ref().expect("a line").taken.expect("known"), &Bench::default())
        };
        assert_eq!(said("20 ml 2:1 syrup"), "as Simple syrup, 885 g/l sugar");
        assert_eq!(said("20 ml simple syrup"), "as Simple syrup 1:1 by weight, 615 g/l sugar");
        assert_eq!(said("20 ml honey syrup 2:1"), "as Honey syrup, 680 g/l sugar");
    }

    #[test]
    fn likeness_goes_behind_the_name() {
        assert_eq!(likened("20 ml moon dust", "moon dust", "spirit"), "20 ml moon dust (as spirit)");
        assert_eq!(likened("Moon dust 20 ml", "Moon dust", "spirit"), "Moon dust (as spirit) 20 ml");
        assert_eq!(likened("20 ml  moon  dust", "moon dust", "spirit"), "20 ml  moon  dust (as spirit)");
        assert_eq!(likened("20 ml l", "l", "spirit"), "20 ml l (as spirit)");
    }
}
