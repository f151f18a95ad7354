//! Balance: what a spec reads as, and what each of its lines brings.

use crate::book::Way;
use crate::craft::balance::balance;
use crate::quantity::{Density, Mass, Ratio, Temperature, Volume};
use crate::reading::chilled::{self, Chilled, serve_of};
use crate::reading::contents::{guesses, question, washed_words};
use crate::reading::from_spec::{self, FromSpec};
use crate::reading::rows::rewritten;
use crate::reading::{self, Content, Contents, cells, counted_row, links};
use crate::screen::pad::Keys;
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Block, Figure, Fix, Input, Opt, Problem, Strip, Tone, Tool, form};
use crate::substance::mix::Mix;
use crate::text;

form! {
    /// The texts of Scale that this screen shows, and the dilution.
    BalanceForm {
        /// The spec, a line for each ingredient.
        spec = reading::EXAMPLE,
        /// Serves the spec makes as written.
        makes = "1",
        /// Water from ice or added, percent of what is poured: where that is typed.
        water = "0",
        /// How it is chilled: empty for not, [`OWN`], a key of a method, or [`TYPED`].
        ice = "",
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
    }
}

const SPEC: &str = "spec";
const MAKES: &str = "makes";
const WATER: &str = "water";
const ICE: &str = "ice";
/// As the spec says that it came from.
const OWN: &str = "own";
/// As much water as is typed.
const TYPED: &str = "typed";

/// More than this is no drink: as much water again and twice.
const MOST_WATER: u8 = 200;

impl Tool for BalanceForm {
    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let placeholder = reading::PLACEHOLDER;
        let [from, others] = from_spec::fields(Route::Balance, &self.from_spec, Some(&self.spec), bench);
        vec![
            from,
            others,
            Block::field(SPEC, "The spec, a line for each ingredient", Input::Lines { placeholder }),
            Block::amount(MAKES, "The spec makes", Keys::Count),
            Block::pick(ICE, "Water from ice", self.ices(bench)),
            match self.is_typed() {
                true => Block::amount(WATER, "Of its volume", Keys::Percent),
                false => Block::Nothing,
            },
            Block::Cells("", Vec::new()),
            Block::Pictures(Vec::new()),
            Block::Table("", Vec::new()),
        ]
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let read = Contents::of(&self.spec, bench);
        if read.lines.is_empty() {
            return answer.without_answer("Type or paste a spec, a line for each ingredient.");
        }
        let makes = match self.makes.trim() {
            "" => Some(Ratio::ONE),
            makes => bench.count(MAKES, makes, &mut answer.problems),
        };
        let typed = match self.is_typed() {
            true => bench.percent(WATER, &self.water, MOST_WATER, &mut answer.problems),
            false => Some(Ratio::ZERO),
        };
        self.ask(&mut answer, &read, bench);
        answer.leads = read.not_counted();
        answer.rows_title = "What each line brings";
        answer.rows = read.pairs().map(|line| counted_row(line, &read.mix, bench)).collect();
        reading::cautions(&mut answer, &read.lines, bench);
        let (Some(makes), Some(typed)) = (makes, typed) else { return answer.without_answer("") };
        if !read.is_something() {
            return answer.without_answer(match read.missing.as_slice() {
                [] => "Add a line with an amount, like 60 ml gin.",
                _ => "None of it can be counted yet: see its lines below.",
            });
        }
        self.show(answer, &read, makes, typed, bench)
    }

    fn empty(&mut self) {
        self.spec.clear();
    }

    fn take(&mut self, name: &str, text: &str) {
        match name {
            SPEC => text.clone_into(&mut self.spec),
            MAKES => text.clone_into(&mut self.makes),
            ICE => text.clone_into(&mut self.ice),
            _ => {}
        }
    }
}

impl BalanceForm {
    /// Whether a percentage counts: also one that was typed before there was another way.
    fn is_typed(&self) -> bool {
        self.ice == TYPED || (self.ice.is_empty() && !matches!(self.water.trim(), "" | "0"))
    }

    /// How it is chilled; none where it is not, or a percentage counts.
    fn chilled(&self, bench: &Bench) -> Option<Chilled> {
        match self.ice.as_str() {
            OWN => Chilled::of(FromSpec::of(&self.from_spec, bench)?.way(), bench),
            key => Chilled::usual(key),
        }
    }

    /// The ways to chill it: its own first.
    fn ices(&self, bench: &Bench) -> Vec<Opt> {
        let mut options = vec![Opt::new("", "none, before ice")];
        let as_said = |key: &str| {
            let chilled = BalanceForm { ice: key.into(), from_spec: self.from_spec.clone(), ..Self::default() };
            chilled.chilled(bench).map(|chilled| Opt::new(key, chilled.words(bench)))
        };
        match as_said(OWN) {
            Some(own) => options.push(Opt { label: format!("{}, its own", own.label), ..own }),
            None if self.ice == OWN => options.push(Opt::new(OWN, "its own, which is not said")),
            None => {}
        }
        options.extend(chilled::keys().filter_map(as_said));
        options.push(Opt::new(TYPED, "a share of it, typed"));
        options
    }

    /// Asks under the spec what the first line that nothing fits is like: each guess is the whole spec with that said.
    fn ask(&self, answer: &mut Answer, read: &Contents, bench: &Bench) {
        let unknown = read.pairs().find(|(_, content)| matches!(content, Content::Unknown));
        let Some((line, read)) = unknown.and_then(|(line, _)| Some((line, line.read.as_ref().ok()?))) else { return };
        let whole = |fix: Fix| Fix { text: rewritten(&self.spec, &line.typed, &fix.text), ..fix };
        let fixes = guesses(line, &read.name).into_iter().map(whole).collect();
        let words = format!("“{}”. {}", read.name, question(&read.name, bench));
        answer.problems.push(Problem { fixes, ..Problem::new(SPEC, words) });
    }

    fn show(&self, mut answer: Answer, read: &Contents, makes: Ratio, typed: Ratio, bench: &Bench) -> Answer {
        // What was typed over the lines of a spec.
        let typed_over = FromSpec::of(&self.from_spec, bench).filter(|form| form.lines().trim() != self.spec.trim());
        answer.form = typed_over.map(|form| {
            let makes = form.way().makes.clone();
            Box::new(Way { name: "changed".into(), lines: self.spec.clone(), makes, ..Way::default() })
        });
        let (drunk, is_washed) = read.drunk(bench);
        let poured = drunk.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
        let one = serve_of(&drunk, makes);
        let chilled = self.chilled(bench);
        let water = match chilled {
            Some(chilled) => chilled.water(&one, bench),
            None => Some(one.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO) * typed * Density::WATER),
        };
        if water.is_none() {
            answer.problems.push(Problem::new(ICE, "How such a drink chills is not in our tables: type a share."));
        }
        let water = water.unwrap_or(Mass::ZERO);
        let serve = one + Mix::water(water);
        let drink = serve * makes;
        let mut reading = balance(&drink);
        if is_washed {
            // What the milk took up of the acid is not reckoned here: Milk wash tells the pH.
            reading.ph = None;
            answer.remarks.push(washed_words(bench));
        }
        let is_diluted = water > Mass::ZERO;
        let serve_volume = serve.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
        let also = match read.missing.as_slice() {
            [] => {
                let per = |value| text::count(value, bench.decimal);
                let ratio = reading.sugar_to_acid.map_or(String::new(), |ratio| format!(", {} : 1", per(ratio)));
                format!("Sugar {}, acid {} g/l{ratio}", per(reading.sugar), per(reading.acid))
            }
            [name] => format!("Without “{name}”: see its line below"),
            [name, ..] => format!("Without “{name}” and others: see their lines below"),
        };
        let strength = text::plain(reading.strength.fraction() * 100.0, 1, bench.decimal);
        let written = read.lines.iter().find_map(|line| line.read.as_ref().ok()?.unit);
        let when = match (is_diluted, chilled) {
            (false, _) => "before ice".into(),
            (_, Some(chilled)) => chilled.words(bench),
            _ => format!("with {} % of water", text::count(typed.value() * 100.0, bench.decimal)),
        };
        answer.strip = Strip {
            figures: vec![Figure::new(strength, "% vol")],
            also,
            below: match read.missing.is_empty() {
                true => format!("A serve is {} {when}", bench.headline(serve_volume, written)),
                false => String::new(),
            },
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.pictures.extend(reading::made_of(read, bench).map(|bars| ("What it is made of".to_owned(), bars)));
        answer.cells_title = if is_diluted { "The drink" } else { "The drink, before ice" };
        cells::all(&mut answer, &reading, (&serve, serve_volume, read.has_more_energy), bench);
        answer.remarks.extend(chilled.filter(|_| is_diluted).map(|chilled| chilled.source().into()));
        if read.has_counted {
            answer.remarks.push(
                "Fruit by the piece is not in the volume. Half a lime is about 15 ml (rule of thumb): write it in ml \
                 to count it."
                    .into(),
            );
        }
        if read.has_more_energy {
            answer.remarks.push("Milk, fat and protein are not in the energy; milk hides the pH.".into());
        }
        answer.remarks.push("Write your own figures behind a name: gin 57 %, quince liqueur (22 % vol, sugar 250 g/l, acid 4 g/l), apple juice 12.5 °Bx, moon dust (as spirit).".into());
        reading::ask_part(&mut answer, SPEC, &self.spec, &read.lines, bench);
        answer.carry("Scale it", Route::Scale.href());
        match is_washed {
            true => links::milk_wash(read, is_washed, &self.spec, &mut answer, bench),
            false => answer.carry("Wash it with milk", Route::MilkWash.href_with("drink", &bench.carried(poured))),
        }
        answer
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn answer(spec: &str) -> Answer {
        BalanceForm { spec: spec.into(), ..BalanceForm::default() }.answer(&Bench::default())
    }

    fn marked(answer: &Answer) -> Vec<String> {
        answer.rows.iter().filter(|row| row.marked).map(|row| row.name.clone()).collect()
    }

    #[test]
    fn reads_a_sour() {
        // 60 ml at 40 %, 22.5 ml of lime at 45.9 − 1.6 g/l, 22.5 ml of 614.8 g/l syrup: 14.2 g of sugar to 1.00 g of acid.
        let sour = answer("60 ml aged rum\n22.5 ml lime juice\n22.5 ml simple syrup");
        assert_eq!(sour.strip.figures[0].to_string(), "22.9 % vol");
        assert_eq!(sour.strip.also, "Sugar 135, acid 9.51 g/l, 14.2 : 1");
        assert_eq!(sour.strip.below, "A serve is 105 ml before ice");
        assert!(sour.cautions.is_empty());
        assert!(marked(&sour).is_empty());
        assert!(sour.rows[1].detail.ends_with("; volume 21 %, sugar 2 %, acid 100 %"), "{}", sour.rows[1].detail);
        assert_eq!(sour.pictures.len(), 1);
    }

    /// The water of ice by the balance of heat, by a percentage that is typed, and by one that was typed before there was a
    /// choice. By hand, near enough: the sour holds 0.43 kJ/K, freezes at −7.3 °C with its water in it, gives 11.7 kJ down to
    /// there and its ice 2.5, the melt 1.5; by 333 kJ/kg that is 47 g, with 4 g that were on the ice, 98 % of it after 15 s.
    #[test]
    fn water_from_ice_is_worked_out_or_typed() {
        let form = |ice: &str, water: &str| BalanceForm {
            spec: "60 ml aged rum\n22.5 ml lime juice\n22.5 ml simple syrup".into(),
            ice: ice.into(),
            water: water.into(),
            ..BalanceForm::default()
        };
        let below = |ice: &str, water: &str| form(ice, water).answer(&Bench::default()).strip.below;
        assert_eq!(below("", "0"), "A serve is 105 ml before ice");
        assert_eq!(below("own", "0"), "A serve is 105 ml before ice");
        assert_eq!(below("shake", "0"), "A serve is 155 ml as shaken 15 s");
        assert_eq!(below("typed", "20"), "A serve is 126 ml with 20 % of water");
        assert_eq!(below("", "20"), "A serve is 126 ml with 20 % of water");
        let has_field = |ice: &str, water: &str| {
            let blocks = form(ice, water).layout(&Bench::default());
            blocks.iter().any(|block| matches!(block, Block::Field(field) if field.name == WATER))
        };
        assert!(has_field("", "20") && has_field("typed", "0") && !has_field("", "0") && !has_field("shake", "20"));
        let strong = BalanceForm { spec: "60 ml vodka 96 %".into(), ..form("stir", "0") }.answer(&Bench::default());
        assert_eq!(strong.problems[0].field, ICE);
        assert!(strong.problems[0].words.ends_with("type a share."));
    }

    #[test]
    fn what_is_not_counted_is_never_silent() {
        for (spec, name) in [
            ("60 ml gin\n20 ml moon dust", "moon dust"),
            ("60 gin\n20 ml lemon juice", "60 gin"),
            ("60 ml gin\ntop with soda", "top with soda"),
            ("60 ml gin\n5 ml citric acid", "citric acid"),
            ("60 ml gin\n20 ml vodka 140 %", "vodka 140 %"),
            ("60 ml gin\n20 ml liqueur (60 % vol, sugar 900 g/l)", "liqueur (60 % vol, sugar 900 g/l)"),
            ("60 ml gin\n20 ml alcohol-free gin", "alcohol-free gin"),
        ] {
            let answer = answer(spec);
            assert_eq!(answer.strip.also, format!("Without “{name}”: see its line below"));
            assert_eq!(marked(&answer), [name]);
        }
        assert!(answer("60 ml gin\nLemon twist\nStir").strip.also.starts_with("Sugar"));
    }

    #[test]
    fn an_unknown_line_is_asked_about_and_a_tap_settles_it() {
        let asked = answer("60 ml gin\n20 ml wild cherry dust");
        let labels: Vec<&str> = asked.problems[0].fixes.iter().map(|fix| fix.label.as_str()).collect();
        assert_eq!(
            labels,
            ["Cherry liqueur", "Clear cherry liqueur", "Spirit", "Liqueur", "Fruit juice", "Syrup", "Water"]
        );
        let settled = answer(&asked.problems[0].fixes[5].text);
        assert!(settled.problems.is_empty() && settled.strip.also.starts_with("Sugar"), "{:?}", settled.strip);
    }

    #[test]
    fn next_to_no_sugar_is_no_ratio() {
        assert!(answer("60 ml gin\n30 ml wine vinegar").strip.also.contains(" : 1"));
        assert!(!answer("60 ml gin\n2 g citric acid").strip.also.contains(" : 1"));
    }

    #[test]
    fn allergens_come_from_names_and_from_the_library() {
        let caution = |spec| answer(spec).cautions.first().cloned().unwrap_or_default();
        assert!(caution("20 ml sweet vermouth\n1 whole egg").contains("sulphites, egg."));
        assert!(caution("60 ml gin\nfloat cream").contains("milk"));
        assert!(caution("20 ml hazelnut liqueur").contains("nuts"));
    }
}
