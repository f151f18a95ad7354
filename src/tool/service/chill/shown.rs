//! What Chill says of a drink: strip, curve, what is in the glass, and where that comes from.

use super::{ChillForm, Chilled, choices};
use crate::craft::chill::{Method, Moment, Pace, Why, band, second_opinion};
use crate::craft::fit::Kind;
use crate::craft::vessel::TUMBLER;
use crate::quantity::{Acidity, Density, Mass, Temperature, Volume};
use crate::reading::Contents;
use crate::reading::contents::washed_words;
use crate::reading::glass::InGlass;
use crate::screen::picture::{Line, Picture};
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Figure, Row, Strip, Tone};
use crate::substance::cold::DENSITY_OF_ICE;
use crate::substance::mix::Mix;
use crate::text;

/// How many times what is in it the vessel holds that is drawn, and the most that is drawn in one, ml or g.
const ROOMY: f64 = 1.5;
const MOST_DRAWN: f64 = 500.0;

const BALANCE: &str = "What the drink and its vessel give up warms the ice and melts it: a balance of heat, down to where \
    such a drink freezes (CRC Handbook, IAPWS, CoolProp). Real drinks lie within a fifth of it (from memory). The room is \
    left out: under a gram a minute (our estimate). Mixing gives off heat, 5 to 12 % of what melts the ice (from memory)";
const PACE: &str = "How fast is a rule of thumb: stirring comes to 85 % of its water in 30 s. Shaking is done in about \
    15 s, and hardly depends on the ice (D. Arnold, Science of Shaking II, 2009).";

/// Whole millilitres: it is an estimate.
fn whole(mass: Mass) -> Volume {
    let ml = mass.volume_at(Density::WATER).ml();
    Volume::from_ml(if ml < 2.0 { ml } else { ml.round() }).unwrap_or(Volume::ZERO)
}

fn volume(mix: &Mix) -> Volume {
    mix.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO)
}

/// One drink on what is left of its ice; none of more.
fn in_ice(chilled: &Chilled, drink: Volume, bench: &Bench) -> Option<Picture> {
    let left = Mass::from_g(chilled.start.ice.mass.g() - chilled.moment.water.g()).unwrap_or(Mass::ZERO);
    let kind = match chilled.method {
        _ if left <= Mass::ZERO => Kind::None,
        Method::Stir | Method::Shake | Method::Throw => Kind::Cubes,
        Method::Swizzle | Method::Build => Kind::Crushed,
        Method::Block => Kind::Block,
    };
    let vessel = TUMBLER.holding(ROOMY * (drink.ml() + left.g() / DENSITY_OF_ICE));
    let text = format!("{} on {} ice", text::litres_or_ml(drink, bench.decimal), bench.weight(left));
    (drink.ml() < MOST_DRAWN && left.g() < MOST_DRAWN).then(|| {
        match InGlass::of(vessel, drink, kind, Some(left)).picture("", kind) {
            Picture::Vessels { vessels, .. } => Picture::Vessels { text, vessels },
            other => other,
        }
    })
}

impl ChillForm {
    /// A temperature on the scale that the drink's was typed on.
    fn degrees(&self, at: Temperature) -> f64 {
        if text::is_fahrenheit(&self.drink_at) { at.celsius() * 1.8 + 32.0 } else { at.celsius() }
    }

    fn degrees_figure(&self, at: Temperature, bench: &Bench) -> Figure {
        let unit = if text::is_fahrenheit(&self.drink_at) { "°F" } else { "°C" };
        Figure::new(text::plain(self.degrees(at), 1, bench.decimal), unit)
    }

    pub(super) fn show_it(
        &self,
        mut answer: Answer,
        read: &Contents,
        is_washed: bool,
        chilled: &Chilled,
        bench: &Bench,
    ) -> Answer {
        let (start, moment) = (&chilled.start, &chilled.moment);
        let drink = *start.drink + Mix::water(moment.water);
        let written = read.lines.iter().find_map(|line| line.read.as_ref().ok()?.unit);
        let strength = |mix: &Mix| text::plain(mix.strength().fraction() * 100.0, 1, bench.decimal);
        let water = bench.headline_of(whole(moment.water), "water", written);
        let (called, _) = choices::called(chilled.method);
        answer.strip = Strip {
            picture: in_ice(chilled, volume(&drink), bench),
            figures: vec![self.degrees_figure(moment.at, bench)],
            also: match read.missing.first() {
                None => format!("+{water}, {} % vol", strength(&drink)),
                Some(name) => format!("Without “{name}”: see its line below"),
            },
            below: match chilled.pace {
                Pace::Usual => "± a fifth in a bar".into(),
                Pace::Own(_) => format!("Your own, {called}"),
            },
            tone: Tone::Answer,
        };
        answer.pictures.push((String::new(), self.drawn(chilled, bench)));
        let count = |value| text::count(value, bench.decimal);
        let sugar = |mix: &Mix| count(mix.g_per_l(mix.sugar()));
        let acid = |mix: &Mix| count(mix.titratable_acidity().map_or(0.0, Acidity::g_per_l));
        let shown = |mix| bench.headline(volume(mix), written).to_string();
        let row = |name: &str, now: String, unit: &str, was: String| Row {
            name: name.into(),
            amount: format!("{now}{unit}"),
            detail: format!("was {was}"),
            ..Row::default()
        };
        answer.rows.splice(
            0..0,
            [
                row("strength", strength(&drink), " %", strength(start.drink)),
                row("volume", shown(&drink), "", shown(start.drink)),
                row("sugar", sugar(&drink), " g/l", sugar(start.drink)),
                row("acid, as citric", acid(&drink), " g/l", acid(start.drink)),
            ],
        );
        self.sources(&mut answer, chilled, bench);
        if is_washed {
            answer.remarks.push(washed_words(bench));
        }
        answer.carry("Does it fit", Route::Glass.href_with("drink", &bench.carried(volume(&drink))));
        answer.carry("Bottle it", Route::BottleIt.href_with("spec", &self.spec));
        answer.carry("Into serves", Route::Serves.href_with("serve", &bench.carried(volume(&drink))));
        answer.carry("Balance", Route::Balance.href_with("spec", &self.spec));
        answer
    }

    /// Temperature and water against time, with the chosen time.
    fn drawn(&self, chilled: &Chilled, bench: &Bench) -> Picture {
        let (moment, last) = (&chilled.moment, chilled.curve.last().unwrap_or(&chilled.moment));
        let line = |of: &dyn Fn(&Moment) -> f64, name, unit| Line {
            name,
            points: chilled.curve.iter().map(|moment| [moment.seconds, of(moment)]).collect(),
            now: of(moment),
            unit,
        };
        let ml = |moment: &Moment| moment.water.volume_at(Density::WATER).ml();
        let plain = |value| text::plain(value, 0, bench.decimal);
        let seconds = |seconds| plain(seconds) + " s";
        let at = |at| self.degrees_figure(at, bench);
        let name = if text::is_fahrenheit(&self.drink_at) { "°F, left" } else { "°C, left" };
        let text = format!(
            "From {} to {} in {}, with {} ml of water; {} and {} ml after {}",
            at(chilled.start.at),
            at(moment.at),
            seconds(moment.seconds),
            plain(ml(moment)),
            at(last.at),
            plain(ml(last)),
            seconds(last.seconds),
        );
        let between = f64::midpoint(moment.seconds, last.seconds);
        Picture::Curve {
            text,
            lines: vec![line(&|moment| self.degrees(moment.at), name, "°"), line(&ml, "ml water, right", "")],
            seconds: [moment.seconds, last.seconds],
            foot: vec![
                (0.0, "0".into()),
                (moment.seconds, seconds(moment.seconds)),
                (between, plain(between)),
                (last.seconds, seconds(last.seconds)),
            ],
        }
    }

    /// Where it comes from, and what else is remembered.
    fn sources(&self, answer: &mut Answer, chilled: &Chilled, bench: &Bench) {
        let ice = bench.weight(chilled.start.ice.mass);
        if self.ice.trim().is_empty() {
            answer.notes.push(format!("On {ice} ice, as is usual for it (rule of thumb)."));
        }
        let [least, most] = band(&chilled.start, &chilled.moment).map(|mass| mass.volume_at(Density::WATER).ml());
        let more = text::plain(most - least, 0, bench.decimal);
        answer.remarks.push(format!("{BALANCE}: here up to {more} ml of water more."));
        answer.remarks.push(match chilled.pace {
            Pace::Usual => PACE.into(),
            Pace::Own(_) => {
                let seconds = text::plain(chilled.pace.seconds_to_95(chilled.method), 0, bench.decimal);
                format!("How fast is your own: 95 % of the water after {seconds} s.")
            }
        });
        let Some(second) = second_opinion(&chilled.start, chilled.method, chilled.pace, &chilled.moment) else {
            return;
        };
        let water = text::millilitres(whole(second.water), bench.decimal);
        let why = second.differs.map_or("", |why| match why {
            Why::ColdIce => " Ice colder than 0 °C melts less.",
            Why::ColdDrink => " A drink that is cold before melts less.",
            Why::ColdVessel => " A cold vessel takes some of the heat.",
            Why::LittleIce => " All your ice is melted.",
            Why::ShortTime => " It is for the usual time, which is longer.",
            Why::WetIce => " The water on your ice goes in too.",
            Why::WarmVessel => " Your vessel gives off heat of its own.",
            Why::WarmDrink => " Your drink is warmer than a room.",
            Why::LongTime => " It is for the usual time, which is shorter.",
            Why::NotCounted => " Mixing gives off heat, and shaking beats in some, which no balance here counts.",
        });
        let how = if chilled.method == Method::Shake { "shaken" } else { "stirred" };
        answer.remarks.push(format!(
            "A second opinion: curves fitted on {how} drinks of a bar (D. Arnold, Liquid Intelligence, 2014; from memory) \
             have {water} water.{why}"
        ));
    }
}
