//! What a keystroke and a second cost at the desk, without drawing: `cargo bench --no-default-features --bench desk`.

#[path = "../faulty/mod.rs"]
mod faulty;

use std::cell::Cell;
use std::hint::black_box;
use std::time::Instant;

use meniscus::app::draw::Canvas;
use meniscus::desk::{Desk, Device, News, World};
use meniscus::screen::pad::Keys;
use meniscus::screen::route::{Record, Route};
use meniscus::screen::{Act, Block, Field, Input};
use meniscus::text::Decimal;

use faulty::Faulty;

const NOW: u64 = 1_795_620_600_000;
const TIMES: u32 = 200;

thread_local! {
    static IDS: Cell<u32> = const { Cell::new(0) };
}

fn world(keeper: &Faulty, now: u64) -> World<'_> {
    World { keeper, now, fresh: &|| IDS.with(|ids| ids.replace(ids.get() + 1)).to_string() }
}

fn main() {
    let keeper = Faulty::default();
    let device = Device { decimal: Decimal::Point, ahead: |_| 60, page: String::new(), has_keyboard: false };
    let (mut desk, _) = Desk::open(device, Ok(()), &world(&keeper, NOW));
    let tell = |desk: &mut Desk, news: News, now| drop(desk.tell(&news, &world(&keeper, now)));
    let act = |desk: &mut Desk, act: Act| drop(desk.act(&act, &world(&keeper, NOW)));
    tell(&mut desk, News::Address("#/specs".into()), NOW);
    act(&mut desk, Act::Demo);
    act(&mut desk, Act::NewIngredient);
    let own = keeper.dump().keys().filter_map(|key| key.strip_prefix("ingredient/")).next_back().map(str::to_owned);
    for prep in ["prep/fruit", "prep/clear", "prep/cordial", "prep/milk-wash", "prep/infuse", "specs/spec?id=demo-1"] {
        tell(&mut desk, News::Address(format!("#/{prep}")), NOW);
        act(&mut desk, Act::ToRun);
    }
    let run = keeper.dump().keys().find_map(|key| key.strip_prefix("run/")).map(str::to_owned).expect("a run");
    println!("one keystroke at the desk: act, view, pieces of the page; microseconds");
    for route in Route::ALL {
        let address = match route.row().record {
            Some(Record::Run) => format!("{}?id={run}&step=0/press", route.href()),
            Some(Record::Spec) => format!("{}?id=demo-1", route.href()),
            Some(Record::Ingredient) => format!("{}?id={}", route.href(), own.clone().unwrap_or_default()),
            None => route.href(),
        };
        tell(&mut desk, News::Address(address), NOW);
        let first = |block: &Block| match block {
            Block::Field(Field { name, input: Input::Amount(keys), .. }) => Some((*name, *keys)),
            _ => None,
        };
        let view = desk.view(&world(&keeper, NOW));
        let Some((field, keys)) = view.screen.blocks.iter().find_map(first) else { continue };
        let mut canvas = Canvas::of(view);
        let (mut acting, mut viewing, mut drawing) = (0.0, 0.0, 0.0);
        for time in 0..TIMES {
            let from = Instant::now();
            let unit = if keys == Keys::Seconds { "s" } else { "ml" };
            act(&mut desk, Act::Type(field.into(), format!("{} {unit}", 20 + time % 7)));
            let acted = Instant::now();
            let view = desk.view(&world(&keeper, NOW));
            let viewed = Instant::now();
            canvas.draw(view);
            black_box(canvas.frame());
            acting += (acted - from).as_secs_f64();
            viewing += (viewed - acted).as_secs_f64();
            drawing += viewed.elapsed().as_secs_f64();
        }
        let micro = |seconds: f64| seconds / f64::from(TIMES) * 1e6;
        println!(
            "{:>8.1} = {:>7.1} act + {:>7.1} view + {:>6.1} pieces  {}",
            micro(acting + viewing + drawing),
            micro(acting),
            micro(viewing),
            micro(drawing),
            route.row().path
        );
    }
    tell(&mut desk, News::Address(format!("#/batch/run?id={run}")), NOW);
    act(&mut desk, Act::Start("0/press".into()));
    println!("one second of a running timer");
    for at in [format!("#/batch/run?id={run}"), "#/service/measure".into()] {
        tell(&mut desk, News::Address(at.clone()), NOW);
        let mut canvas = Canvas::of(desk.view(&world(&keeper, NOW)));
        let from = Instant::now();
        for second in 1..=TIMES {
            let now = NOW + u64::from(second) * 1000;
            tell(&mut desk, News::Tick, now);
            canvas.draw(desk.view(&world(&keeper, now)));
            black_box(canvas.frame());
        }
        println!("{:>8.1}  {at}", from.elapsed().as_secs_f64() / f64::from(TIMES) * 1e6);
    }
}
