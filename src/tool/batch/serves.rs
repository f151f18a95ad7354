//! Serves: a batch in serves and bottles, and back.

use crate::book::{BOTTLES, Bottle, glass_of};
use crate::craft::serves::{self, Bottling, Shared};
use crate::craft::vessel::BOTTLE;
use crate::quantity::{Ratio, Temperature, Unit, Volume};
use crate::reading::from_spec::{self, FromSpec};
use crate::reading::pours::poured;
use crate::reading::{Contents, label};
use crate::screen::pad::{Keys, unit_typed};
use crate::screen::picture::{Filled, Picture};
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Block, Choice, Figure, Opt, Problem, Row, Strip, Tone, Tool, choice, form, plural};
use crate::text;

/// Which way the question goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ask {
    /// What there is → serves.
    ServesLeft,
    /// Serves wanted → what to make.
    ToMake,
}

choice! { Ask:
    ServesLeft = "left", "What I have";
    ToMake = "make", "Serves wanted";
}

form! {
    /// What is typed.
    ServesForm {
        /// Which way: a key of [`Ask`].
        ask = "left",
        /// Volume made or left.
        made = "2.8 l",
        /// Serves wanted.
        wanted = "40",
        /// One serve.
        serve = "92 ml",
        /// Lost to foam, lees and walls, percent; nothing until it is typed, as no figure of it is published.
        loss = "",
        /// Bottle size in ml.
        bottle = "700",
        /// Left empty in each bottle, percent.
        headspace = "3",
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
    }
}

const MADE: &str = "made";
const WANTED: &str = "wanted";
const SERVE: &str = "serve";
const LOSS: &str = "loss";
const HEADSPACE: &str = "headspace";

const NOTHING_LOST: &str = "No wastage is counted. Foam, lees and walls keep some: type what share yours do.";

const ALL_LOST: u8 = 100;
const HALF_EMPTY: u8 = 50;

impl Tool for ServesForm {
    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let mut blocks = vec![Block::chips::<Ask>("ask", "Which way", false)];
        blocks.extend(from_spec::fields(Route::Serves, &self.from_spec, None, bench));
        let loss = Block::amount(LOSS, "Wastage", Keys::Percent);
        match self.ask() {
            Ask::ServesLeft => blocks.extend([
                Block::amount(MADE, "Batch volume", Keys::Batch),
                Block::amount(SERVE, "One serve", Keys::Pour),
                loss,
            ]),
            Ask::ToMake => blocks.extend([
                Block::amount(WANTED, "Serves wanted", Keys::Count),
                Block::amount(SERVE, "One serve", Keys::Pour),
                loss,
                Block::pick("bottle", "Bottle", BOTTLES.iter().map(bottle_option).collect()),
                Block::amount(HEADSPACE, "Headspace", Keys::Percent),
            ]),
        }
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let problems = &mut answer.problems;
        let serve = bench.volume(SERVE, &self.serve, problems);
        let loss = bench.percent(LOSS, &self.loss, ALL_LOST, problems);
        match self.ask() {
            Ask::ServesLeft => {
                let made = bench.volume(MADE, &self.made, problems);
                let (Some(made), Some(serve), Some(loss)) = (made, serve, loss) else {
                    return answer.without_answer("Type how much there is, and one serve.");
                };
                answer = self.serves_left(answer, bench, (made, serve, loss));
            }
            Ask::ToMake => {
                let wanted = bench.count(WANTED, &self.wanted, problems);
                let headspace = bench.percent(HEADSPACE, &self.headspace, HALF_EMPTY, problems);
                let (Some(wanted), Some(serve), Some(loss), Some(headspace)) = (wanted, serve, loss, headspace) else {
                    return answer.without_answer("Type how many serves, and one serve.");
                };
                answer = self.to_make(answer, bench, (wanted, serve, loss, headspace));
            }
        }
        if let Some(row) = serve.and_then(|serve| self.poured_row(serve, bench)) {
            answer.rows_title = "With your jiggers";
            answer.rows = vec![row];
        }
        if let Some(of) = serve.and_then(glass_of) {
            answer.remarks.push(format!("That serve is a UK measure by the glass: {of}."));
        }
        if let Some((serve, form)) = serve.zip(FromSpec::of(&self.from_spec, bench)) {
            let read = Contents::of(form.lines(), bench);
            let all = read.drunk(bench).0.volume(Temperature::TWENTY).map_or(0.0, Volume::ml);
            let serves = Ratio::from_value(all / serve.ml()).unwrap_or(Ratio::ONE);
            answer.remarks.extend(from_spec::in_the_glass(&self.from_spec, &read, serves, bench));
        }
        if self.loss.trim().is_empty() {
            answer.remarks.push(NOTHING_LOST.into());
        }
        label::offer("Batch", None, &mut answer);
        answer
    }

    fn empty(&mut self) {
        self.made.clear();
        self.wanted.clear();
        self.serve.clear();
    }

    fn take(&mut self, name: &str, text: &str) {
        match name {
            MADE => {
                text.clone_into(&mut self.made);
                Ask::ServesLeft.key().clone_into(&mut self.ask);
            }
            WANTED => {
                text.clone_into(&mut self.wanted);
                Ask::ToMake.key().clone_into(&mut self.ask);
            }
            SERVE => text.clone_into(&mut self.serve),
            _ => {}
        }
    }
}

impl ServesForm {
    fn ask(&self) -> Ask {
        Ask::read(&self.ask)
    }

    /// A volume as one serve is written: in ounces where that is.
    fn as_serve(&self, volume: Volume, bench: &Bench) -> Figure {
        match unit_typed(&self.serve).unwrap_or(bench.house.usual_unit) {
            Unit::Ounce => text::ounces(volume, &bench.house.conventions, bench.decimal),
            _ => precise_ml(volume, bench),
        }
    }

    /// One serve, as the jiggers pour it; none where they cannot.
    fn poured_row(&self, serve: Volume, bench: &Bench) -> Option<Row> {
        let shown = self.as_serve(serve, bench).to_string();
        let detail = poured(serve, &shown, bench)?;
        Some(Row { name: "One serve".into(), amount: shown, detail, ..Row::default() })
    }

    /// The bottle chosen; 700 ml for a size we do not know.
    fn bottle(&self) -> Bottle {
        let size = |bottle: &&Bottle| bottle.ml.to_string() == self.bottle;
        BOTTLES.iter().find(size).copied().unwrap_or(Bottle { ml: 700, regions: "EU, UK, US" })
    }

    fn to_make(
        &self,
        mut answer: Answer,
        bench: &Bench,
        (wanted, serve, loss, headspace): (Ratio, Volume, Ratio, Ratio),
    ) -> Answer {
        let make = match serves::volume_for(wanted, serve, loss) {
            Ok(make) => make,
            Err(problem) => return too_many(answer, WANTED, &problem),
        };
        let bottling = self.bottles(&mut answer, bench, make, headspace);
        answer.strip = Strip {
            figures: vec![bench.headline(make, unit_typed(&self.serve))],
            also: bottling.map_or_else(String::new, |bottling| self.bottled(&bottling, bench)),
            picture: bottling.map(|bottling| self.drawn(&bottling, bench)),
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.carry("Scale a spec to this", Route::Scale.href_with("total", &bench.carried(make)));
        answer.carry("Wash it with milk", Route::MilkWash.href_with("drink", &bench.carried(make)));
        answer
    }

    fn serves_left(&self, mut answer: Answer, bench: &Bench, (made, serve, loss): (Volume, Volume, Ratio)) -> Answer {
        let Shared { serves, spare, lost, emptying } = match serves::share(made, serve, loss) {
            Ok(shared) => shared,
            Err(problem) => return too_many(answer, SERVE, &problem),
        };
        let ml = |volume| text::litres_or_ml(volume, bench.decimal);
        let as_serve = |volume| self.as_serve(volume, bench);
        let also = match emptying {
            Some(larger) if spare.ml() >= 0.5 => {
                format!("{} spare. Pour {} to empty it", ml(spare), as_serve(larger))
            }
            Some(_) => "Nothing spare".to_owned(),
            None => format!("Not one whole serve: {} is there", ml(spare)),
        };
        let unit = format!("{} of {}", plural(serves as usize, "serve", "serves"), as_serve(serve));
        answer.strip = Strip {
            figures: vec![Figure::new(text::count(f64::from(serves), bench.decimal), unit)],
            also,
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.cells_title = "The batch";
        answer.cell("wastage", ml(lost));
        if let Some(emptying) = emptying {
            // The strip says it as the serve is written.
            let in_oz = text::ounces(emptying, &bench.house.conventions, bench.decimal);
            let other = if as_serve(emptying).unit == in_oz.unit { precise_ml(emptying, bench) } else { in_oz };
            answer.cell(format!("serve that empties it, in {}", other.unit), other);
        }
        answer.carry("Scale a spec to this", Route::Scale.href_with("total", &bench.carried(made)));
        answer
    }

    fn bottles(&self, answer: &mut Answer, bench: &Bench, volume: Volume, headspace: Ratio) -> Option<Bottling> {
        let bottling = match serves::bottle(volume, self.bottle().volume(), headspace) {
            Ok(bottling) => bottling,
            Err(problem) => {
                answer.problems.push(Problem::new(HEADSPACE, problem));
                return None;
            }
        };
        answer.cells_title = "In bottles";
        answer.cell("full, with headspace", precise_ml(bottling.full, bench));
        if bottling.bottles > 1 {
            answer.cell("or each alike", precise_ml(bottling.even, bench));
        }
        let Bottle { ml, regions } = self.bottle();
        answer.remarks.push(format!("{ml} ml is a standard size in: {regions}."));
        Some(bottling)
    }
}

/// Bottles that a strip has room for.
const MOST_DRAWN: u32 = 6;

impl ServesForm {
    /// How many bottles, and what is in the last.
    fn bottled(&self, bottling: &Bottling, bench: &Bench) -> String {
        let Bottling { bottles, full, last, .. } = *bottling;
        let count = text::count(f64::from(bottles), bench.decimal);
        let shown = format!("{count} {} of {} ml", plural(bottles as usize, "bottle", "bottles"), self.bottle().ml);
        match bottles {
            1 => format!("{shown}, {} in it", precise_ml(last, bench)),
            _ if last >= full => format!("{shown}, each full"),
            _ => format!("{shown}, {} in the last", precise_ml(last, bench)),
        }
    }

    /// The bottles, as full as they are; of many the first and the last.
    fn drawn(&self, bottling: &Bottling, bench: &Bench) -> Picture {
        let vessel = BOTTLE.holding(f64::from(self.bottle().ml));
        let filled = |volume| Filled { level: vessel.level(volume), ice: Vec::new(), vessel: vessel.clone() };
        let mut vessels = vec![filled(bottling.full); bottling.bottles.saturating_sub(1).min(MOST_DRAWN - 1) as usize];
        vessels.push(filled(bottling.last));
        let text = format!("{}; a full one holds {}", self.bottled(bottling, bench), precise_ml(bottling.full, bench));
        Picture::Vessels { text, vessels }
    }
}

fn bottle_option(bottle: &Bottle) -> Opt {
    Opt::new(bottle.ml.to_string(), format!("{} ml", bottle.ml))
}

fn precise_ml(volume: Volume, bench: &Bench) -> Figure {
    text::millilitres(volume, bench.decimal)
}

fn too_many(mut answer: Answer, field: &'static str, problem: &serves::ServesProblem) -> Answer {
    answer.problems.push(Problem::new(field, problem));
    answer.without_answer("")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::Decimal;
    use crate::tool::shelf::settings::ShelfForm;

    #[test]
    fn answers_both_ways() {
        let form = ServesForm::default();
        let answer = form.answer(&Bench::default());
        assert_eq!(answer.strip.figures[0].to_string(), "30 serves of 92 ml");
        assert_eq!(answer.strip.also, "40 ml spare. Pour 93.3 ml to empty it");

        let form = ServesForm { ask: "make".into(), wanted: "30".into(), loss: String::new(), ..form };
        let answer = form.answer(&Bench::default());
        assert_eq!(answer.strip.figures[0].to_string(), "2\u{202f}760 ml");
        assert_eq!(answer.strip.also, "5 bottles of 700 ml, 44 ml in the last");
        assert_eq!(answer.cells[1].figure.to_string(), "552 ml");
    }

    #[test]
    fn bottles_are_drawn_as_full_as_they_are() {
        let drawn = |wanted: &str| {
            let form = ServesForm { ask: "make".into(), wanted: wanted.into(), ..ServesForm::default() };
            let strip = form.answer(&Bench::default()).strip;
            let Some(Picture::Vessels { text, vessels }) = strip.picture else { panic!("no bottles") };
            let ml = vessels.iter().map(|one| one.vessel.ml_to(one.level).round()).collect::<Vec<_>>();
            (strip.also, text, ml)
        };
        let (also, text, ml) = drawn("30");
        assert_eq!(also, "5 bottles of 700 ml, 44 ml in the last");
        assert_eq!(text, "5 bottles of 700 ml, 44 ml in the last; a full one holds 679 ml");
        assert_eq!(ml, [679.0, 679.0, 679.0, 679.0, 44.0]);
        assert_eq!(drawn("5").0, "1 bottle of 700 ml, 460 ml in it");
        assert_eq!(drawn("5").2, [460.0]);
        // Of many, six; the last is the last.
        let (also, _, ml) = drawn("4000");
        assert_eq!(also, "542 bottles of 700 ml, 661 ml in the last");
        assert_eq!(ml, [679.0, 679.0, 679.0, 679.0, 679.0, 661.0]);
        let even = ServesForm { ask: "make".into(), wanted: "14".into(), serve: "97 ml".into(), ..Default::default() };
        assert_eq!(even.answer(&Bench::default()).strip.also, "2 bottles of 700 ml, each full");
    }

    #[test]
    fn a_serve_in_ounces_is_said_in_ounces_and_poured_with_the_jiggers() {
        let shelf = |usual: &str| ShelfForm { usual_unit: usual.into(), ..ShelfForm::default() }.bench(Decimal::Point);
        let answer = ServesForm { serve: "3 oz".into(), ..ServesForm::default() }.answer(&shelf("ml"));
        assert_eq!(answer.strip.figures[0].to_string(), "31 serves of 3 oz");
        assert_eq!(answer.strip.also, "49.7 ml spare. Pour 3.05 oz to empty it");
        let row = &answer.rows[0];
        assert_eq!((row.amount.as_str(), row.detail.as_str()), ("3 oz", "pour 2 oz + 1 oz, exact"));
        // What one jigger pours needs no words.
        assert!(ServesForm { serve: "2 oz".into(), ..ServesForm::default() }.answer(&shelf("ml")).rows.is_empty());
        let make = ServesForm { ask: "make".into(), wanted: "12".into(), ..ServesForm::default() };
        let headline = |serve: &str, usual| {
            ServesForm { serve: serve.into(), ..make.clone() }.answer(&shelf(usual)).strip.figures[0].to_string()
        };
        assert_eq!(headline("90 ml", "ml"), "1\u{202f}080 ml");
        assert_eq!(headline("3 oz", "ml"), "36 oz, 1\u{202f}065 ml");
        assert_eq!(headline("90 ml", "oz"), "36½ oz, 1\u{202f}080 ml");
    }

    #[test]
    fn a_serve_that_is_a_legal_measure_is_said() {
        let says = |serve: &str| {
            let answer = ServesForm { serve: serve.into(), ..ServesForm::default() }.answer(&Bench::default());
            answer.remarks.into_iter().find(|remark| remark.contains("by the glass"))
        };
        assert_eq!(says("175 ml").as_deref(), Some("That serve is a UK measure by the glass: still wine."));
        assert!(says("½ imp pint").is_some_and(|words| words.contains("draught beer")));
        assert_eq!(says("92 ml"), None);
    }

    /// A loss has no source, so none is taken before it is typed, and that is said.
    #[test]
    fn nothing_is_lost_until_it_is_typed() {
        let lost = |loss: &str| {
            let answer = ServesForm { loss: loss.into(), ..ServesForm::default() }.answer(&Bench::default());
            (answer.cells[0].figure.to_string(), answer.remarks.contains(&NOTHING_LOST.to_owned()))
        };
        assert_eq!(ServesForm::default().loss, "");
        assert_eq!(lost(""), ("0 ml".into(), true));
        assert_eq!(lost("2"), ("56 ml".into(), false));
    }

    #[test]
    fn less_than_a_serve_is_said() {
        let form = ServesForm { made: "50 ml".into(), loss: "0".into(), ..ServesForm::default() };
        assert_eq!(form.answer(&Bench::default()).strip.also, "Not one whole serve: 50 ml is there");
    }
}
