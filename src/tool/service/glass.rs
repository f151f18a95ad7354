//! Glass: does a drink fit its glass, with its ice?

use crate::book;
use crate::craft::fit::{Fit, Kind, RIM};
use crate::craft::vessel::Vessel;
use crate::quantity::{Mass, Ratio, Volume};
use crate::reading::from_spec;
use crate::reading::glass::{InGlass, SHAPES, shape, vessel};
use crate::screen::pad::Keys;
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Block, Choice, Figure, Opt, Problem, Row, Strip, Tone, Tool, form};
use crate::substance::cold::DENSITY_OF_ICE;
use crate::text::{self, Dimension, read_glass};

form! {
    /// What is typed.
    GlassForm {
        /// The glass, as a line of the shelf: "small wine glass, 140 ml"; empty for one by its shape and size.
        glass = "small wine glass, 140 ml",
        /// A word for that shape.
        shape = "tumbler",
        /// What that holds to the brim.
        brim = "300 ml",
        /// What is poured, with its water.
        drink = "112 ml",
        /// The ice in it: a key of [`Kind`].
        ice = "none",
        /// What the ice weighs; empty for the usual.
        weighs = "",
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
    }
}

const GLASS: &str = "glass";
const BRIM: &str = "brim";
const DRINK: &str = "drink";
const ICE: &str = "ice";
const WEIGHS: &str = "weighs";

/// The most that is poured in one glass, ml.
const MOST: f64 = 10_000.0;
/// Others that fit, at most.
const OTHERS: usize = 6;

impl Tool for GlassForm {
    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let [from, find] = from_spec::fields(Route::Glass, &self.from_spec, None, bench);
        let [shape, brim] = match self.glass.is_empty() {
            true => {
                let words = SHAPES.split(',').map(|word| Opt::new(word.trim(), word.trim())).collect();
                [Block::pick("shape", "Shape", words), Block::amount(BRIM, "To the brim", Keys::Pour)]
            }
            false => [Block::Nothing, Block::Nothing],
        };
        vec![
            Block::pick(GLASS, "Glass", self.options(bench)),
            shape,
            brim,
            from,
            find,
            Block::amount(DRINK, "Drink, with its water", Keys::Pour),
            Block::chips::<Kind>(ICE, "Ice", false),
            match self.kind() {
                Kind::None => Block::Nothing,
                _ => Block::amount(WEIGHS, "Ice, if you weigh it", Keys::Weight),
            },
            Block::Pictures(Vec::new()),
            Block::Cells("", Vec::new()),
            Block::Table("", Vec::new()),
        ]
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let problems = &mut answer.problems;
        let glass = self.vessel(bench, problems);
        let drink = bench.volume(DRINK, &self.drink, problems);
        if drink.is_some_and(|drink| drink.ml() > MOST) {
            problems.push(Problem::new(DRINK, "No glass takes more than 10 l. Type what is poured in one."));
        }
        let weighs = match self.kind() {
            Kind::None => None,
            _ => bench.mass(WEIGHS, &self.weighs, problems),
        };
        let (Some((name, vessel)), Some(drink), true) = (glass, drink, problems.is_empty()) else {
            return answer.without_answer("Type what is poured, like 112 ml.");
        };
        let found = InGlass::of(vessel, drink, self.kind(), weighs);
        if let Some(problem) = self.too_much_ice(&found, bench) {
            problems.push(problem);
            return answer.without_answer("");
        }
        self.show(answer, &name, (found, drink, weighs), bench)
    }

    fn empty(&mut self) {
        self.drink.clear();
        self.weighs.clear();
    }

    fn take(&mut self, name: &str, text: &str) {
        let field = match name {
            GLASS => &mut self.glass,
            DRINK => &mut self.drink,
            ICE => {
                self.weighs.clear();
                &mut self.ice
            }
            _ => return,
        };
        text.clone_into(field);
    }
}

impl GlassForm {
    fn kind(&self) -> Kind {
        Kind::read(&self.ice)
    }

    /// The glasses to choose from: the bar's own, the one chosen, and any other.
    fn options(&self, bench: &Bench) -> Vec<Opt> {
        let mut options: Vec<Opt> = bench.glasses.iter().map(|glass| line(glass, bench)).map(own).collect();
        if !self.glass.is_empty() && options.iter().all(|option| option.key != self.glass) {
            options.insert(0, own(self.glass.clone()));
        }
        options.push(Opt::new("", "another, by what it holds"));
        options
    }

    /// The glass that is chosen, and what it is called.
    fn vessel(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<(String, Vessel)> {
        if self.glass.is_empty() {
            let brim = bench.volume(BRIM, &self.brim, problems)?;
            if !(5.0..=MOST).contains(&brim.ml()) {
                problems.push(Problem::new(BRIM, "A glass holds 5 ml to 10 l. Type what yours does, to the brim."));
                return None;
            }
            return Some((self.shape.clone(), shape(&self.shape)?.holding(brim.ml())));
        }
        let glass = read_glass(&self.glass, &bench.reading(Dimension::Volume));
        let found = glass.and_then(|glass| Some((vessel(&glass.shape, glass.holds.ml(), bench)?, glass.name)));
        if found.is_none() {
            let words = format!("“{}” is no glass that is known. Choose one, or another by what it holds.", self.glass);
            problems.push(Problem::new(GLASS, words));
        }
        found.map(|(vessel, name)| (name, vessel))
    }

    /// Ice that the glass does not hold, or that does not go in.
    fn too_much_ice(&self, found: &InGlass, bench: &Bench) -> Option<Problem> {
        let most = Mass::from_g(found.brim() * DENSITY_OF_ICE).ok()?;
        if found.ice_mass() > most {
            let most = text::grams(most, 0, bench.decimal);
            return Some(Problem::new(WEIGHS, format!("The glass holds no more than {most} of ice. Type less.")));
        }
        (!found.takes_ice()).then(|| {
            let across = text::plain(found.vessel.radius_at(found.vessel.height()) * 2.0, 0, bench.decimal);
            let words =
                format!("That piece does not go in: the glass is {across} mm across. Take a smaller one, or cubes.");
            Problem::new(ICE, words)
        })
    }

    fn show(
        &self,
        mut answer: Answer,
        name: &str,
        (found, drink, weighs): (InGlass, Volume, Option<Mass>),
        bench: &Bench,
    ) -> Answer {
        let Fit { room, room_mm, over, scale, .. } = found.fit;
        let kind = self.kind();
        let ml = |volume| text::litres_or_ml(volume, bench.decimal);
        let mm = text::plain(room_mm, 0, bench.decimal);
        let brim = Volume::from_ml(found.brim()).unwrap_or(Volume::ZERO);
        let spec = if self.from_spec.is_empty() { "it" } else { "the spec" };
        // Rounded down, so that it fits.
        let times = text::editable((scale.value() * 100.0).floor() / 100.0, bench.decimal);
        let less = format!("Make it {times} of {spec}");
        let is_tight = room_mm < RIM && scale > Ratio::ZERO;
        let filled = format!("{} in {}, {}", ml(drink), ml(brim), kind.label());
        answer.strip = Strip {
            also: match over {
                Some(over) => format!("Over by {}", ml(over)),
                None => format!("It fits: {mm} mm to the brim"),
            },
            below: match over {
                Some(_) if is_tight => format!("{filled}. {less}"),
                Some(_) => filled,
                None => format!("{filled}. {} to spare", ml(room)),
            },
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.cell("to the brim", ml(brim));
        answer.cell("filled", ml(drink));
        if kind != Kind::None {
            answer.cell("ice", bench.weight(found.ice_mass()));
            answer.remarks.push("Cubes of 30 mm or crushed to four fifths of the glass, of which ice is 55 %; a block of 45 mm, a sphere of 60 and a spear of 30 × 110, or as large as goes in: rules of thumb. Weigh yours to be sure.".into());
            answer.remarks.push("What floats makes way for its own mass of drink, so the level stays as it melts; what stands on the bottom only for what is below the level. The drink is taken as 1 g/ml.".into());
        }
        if over.is_none() {
            answer.cell("to spare", ml(room));
            answer.cell("room", Figure::new(mm, "mm"));
        }
        if is_tight {
            if over.is_none() {
                answer.notes.push(format!("Under 5 mm it spills as it is carried (rule of thumb). {less}."));
            }
            let mut pairs = vec![("factor".to_owned(), times.clone())];
            if !self.from_spec.is_empty() {
                pairs.extend(from_spec::carried(Route::Scale, &self.from_spec, bench));
            }
            answer.carry(format!("Scale it to {times}"), from_spec::href_of(Route::Scale, &pairs));
        }
        answer.remarks.push("Shapes are drawn, not measured, so a depth may be some millimetres off.".into());
        answer.rows_title = "Others that fit, and their room";
        answer.rows = self.others(drink, weighs, bench);
        answer.pictures = vec![(String::new(), found.picture(name, kind))];
        answer
    }

    /// Other glasses of the shelf that it fits with the same ice.
    fn others(&self, drink: Volume, weighs: Option<Mass>, bench: &Bench) -> Vec<Row> {
        let row = |glass: &book::Glass| {
            let line = line(glass, bench);
            let found = InGlass::of(vessel(&glass.name, 0.0, bench)?, drink, self.kind(), weighs);
            let fits = line != self.glass && found.fit.room_mm >= RIM && found.takes_ice();
            fits.then(|| Row {
                href: Route::Glass.href_with(GLASS, &line),
                name: line,
                amount: text::litres_or_ml(found.fit.room, bench.decimal).to_string(),
                ..Row::default()
            })
        };
        bench.glasses.iter().filter_map(row).take(OTHERS).collect()
    }
}

/// A glass as its line is read back: "small wine glass, 140 ml".
fn line(glass: &book::Glass, bench: &Bench) -> String {
    let holds = text::editable(glass.holds.ml(), bench.decimal);
    match glass.shape == glass.name {
        true => format!("{}, {holds} ml", glass.name),
        false => format!("{}, {holds} ml, {}", glass.name, glass.shape),
    }
}

fn own(line: String) -> Opt {
    Opt::new(line.clone(), line)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::Decimal;
    use crate::tool::shelf::settings::ShelfForm;

    fn answer(form: &GlassForm) -> Answer {
        form.answer(&ShelfForm::default().bench(Decimal::Point))
    }

    fn said(form: &GlassForm) -> [String; 2] {
        let strip = answer(form).strip;
        assert_eq!((strip.tone, strip.figures.len()), (Tone::Answer, 0));
        [strip.also, strip.below]
    }

    #[test]
    fn a_drink_that_fits() {
        let form = GlassForm::default();
        assert_eq!(said(&form), ["It fits: 15 mm to the brim", "112 ml in 140 ml, no ice. 28 ml to spare"]);
        let answer = answer(&form);
        let cells: Vec<String> = answer.cells.iter().map(|cell| format!("{} {}", cell.label, cell.figure)).collect();
        assert_eq!(cells, ["to the brim 140 ml", "filled 112 ml", "to spare 28 ml", "room 15 mm"]);
        let others: Vec<String> = answer.rows.iter().map(|row| format!("{}: {}", row.name, row.amount)).collect();
        assert_eq!(others[..3], ["tumbler, 300 ml: 188 ml", "tall glass, 300 ml: 188 ml", "coupe, 180 ml: 68 ml"]);
        assert!(others.iter().all(|other| !other.starts_with("small wine glass") && !other.starts_with("shot")));
        assert_eq!(answer.rows[2].href, "#/service/glass?glass=coupe%2C+180+ml");
    }

    #[test]
    fn what_runs_over_says_by_how_much_and_what_would_fit() {
        let form = GlassForm { drink: "158 ml".into(), ..GlassForm::default() };
        let [also, below] = said(&form);
        assert_eq!(also, "Over by 18 ml");
        assert_eq!(below, "158 ml in 140 ml, no ice. Make it 0.83 of it");
        let carry = answer(&form).carry.pop().expect("a way to make it less");
        assert_eq!((carry.label.as_str(), carry.href.as_str()), ("Scale it to 0.83", "#/service/scale?factor=0.83"));
        // As much less, it fits with the room that was asked for.
        let fits = GlassForm { drink: "131.14 ml".into(), ..form };
        assert_eq!(said(&fits)[0], "It fits: 5 mm to the brim");
        let tight = answer(&GlassForm { drink: "138 ml".into(), ..GlassForm::default() });
        assert!(tight.notes[0].ends_with("Make it 0.95 of it."), "{:?}", tight.notes);
    }

    #[test]
    fn ice_takes_its_room() {
        let iced = |ice: &str, weighs: &str| GlassForm {
            glass: "tumbler, 300 ml".into(),
            ice: ice.into(),
            weighs: weighs.into(),
            drink: "120 ml".into(),
            ..GlassForm::default()
        };
        assert_eq!(said(&iced("cubes", ""))[1], "120 ml in 300 ml, cubes. 59 ml to spare");
        assert_eq!(said(&iced("cubes", "90 g"))[1], "120 ml in 300 ml, cubes. 90 ml to spare");
        // The weight of ice that is not there is not read.
        assert_eq!(said(&iced("none", "90 g"))[1], "120 ml in 300 ml, no ice. 180 ml to spare");
        assert!(answer(&iced("cubes", "90 g")).cells.iter().any(|cell| cell.figure.to_string() == "90.0 g"));
        // Of so much a part stands over the rim: 55 % of the glass is ice, and 135 ml go in beside it.
        assert_eq!(said(&iced("cubes", "190 g"))[1], "120 ml in 300 ml, cubes. 15 ml to spare");
        let more = GlassForm { drink: "160 ml".into(), ..iced("cubes", "190 g") };
        assert_eq!(said(&more), ["Over by 25 ml", "160 ml in 300 ml, cubes. Make it 0.78 of it"]);
    }

    #[test]
    fn what_is_no_glass_no_drink_and_too_much_ice_is_said_in_words() {
        let problem = |form: GlassForm| {
            let answer = answer(&form);
            assert_eq!(answer.strip.tone, Tone::Problem);
            answer.problems.into_iter().map(|problem| (problem.field, problem.words)).next().expect("a problem")
        };
        let (field, words) = problem(GlassForm { drink: "0 ml".into(), ..GlassForm::default() });
        assert_eq!((field.as_str(), words.as_str()), ("drink", "Zero makes nothing. Type an amount above zero."));
        let (field, words) = problem(GlassForm { drink: "11 l".into(), ..GlassForm::default() });
        assert_eq!((field.as_str(), words.starts_with("No glass takes more than 10 l.")), ("drink", true));
        let (field, words) = problem(GlassForm { glass: "gourd, 300 ml".into(), ..GlassForm::default() });
        assert_eq!((field.as_str(), words.starts_with("“gourd, 300 ml” is no glass that is known.")), ("glass", true));
        let (field, words) = problem(GlassForm { glass: String::new(), brim: "2 ml".into(), ..GlassForm::default() });
        assert_eq!((field.as_str(), words.starts_with("A glass holds 5 ml to 10 l.")), ("brim", true));
        let (field, words) =
            problem(GlassForm { ice: "crushed".into(), weighs: "130 g".into(), ..GlassForm::default() });
        assert_eq!(
            (field.as_str(), words.as_str()),
            ("weighs", "The glass holds no more than 128 g of ice. Type less.")
        );
        let (field, words) = problem(GlassForm { ice: "block".into(), weighs: "110 g".into(), ..GlassForm::default() });
        assert_eq!(
            (field.as_str(), words.starts_with("That piece does not go in: the glass is 44 mm across.")),
            ("ice", true)
        );
        let empty = answer(&GlassForm { drink: String::new(), ..GlassForm::default() });
        assert_eq!((empty.strip.tone, empty.problems.len()), (Tone::Waiting, 0));
        let another = GlassForm { glass: String::new(), ..GlassForm::default() };
        assert_eq!(said(&another)[1], "112 ml in 300 ml, no ice. 188 ml to spare");
    }
}
