//! What is worked out, written and read for one drawing and one tap: counted.

use std::cell::{Cell, RefCell};

use super::*;
use crate::reading::contents::READ;
use crate::store::memory::Memory;
use crate::tool::batch::run::tests::WORKED_OUT;

/// A store that notes the records that are read and written.
#[derive(Default)]
struct Watched {
    memory: Memory,
    read: RefCell<Vec<String>>,
    written: RefCell<Vec<String>>,
}

impl Keeper for Watched {
    fn get(&self, key: &str) -> Result<Option<String>, SaveProblem> {
        self.read.borrow_mut().push(key.to_owned());
        self.memory.get(key)
    }

    fn set(&self, key: &str, text: &str) -> Result<(), SaveProblem> {
        self.written.borrow_mut().push(key.to_owned());
        self.memory.set(key, text)
    }

    fn remove(&self, key: &str) -> Result<(), SaveProblem> {
        self.written.borrow_mut().push(key.to_owned());
        self.memory.remove(key)
    }

    fn keys(&self) -> Result<Vec<String>, SaveProblem> {
        self.memory.keys()
    }
}

impl Watched {
    /// The records among the keys noted since the last call, each once: read, written.
    fn records(&self) -> [Vec<String>; 2] {
        [self.read.take(), self.written.take()].map(|mut keys| {
            keys.retain(|key| ["spec/", "run/", "ingredient/"].iter().any(|prefix| key.starts_with(prefix)));
            keys.sort();
            keys.dedup();
            keys
        })
    }
}

const NOW: u64 = 1_795_620_600_000;

thread_local! {
    static IDS: Cell<u32> = const { Cell::new(0) };
}

fn fresh() -> String {
    IDS.with(|ids| ids.replace(ids.get() + 1)).to_string()
}

fn world(keeper: &dyn Keeper, now: u64) -> World<'_> {
    World { keeper, now, fresh: &fresh }
}

fn desk(keeper: &dyn Keeper, at: &str) -> Desk {
    let device = Device { decimal: Decimal::Point, ahead: |_| 0, page: String::new(), has_keyboard: false };
    let (mut desk, _) = Desk::open(device, Ok(()), &world(keeper, NOW));
    let _ = desk.tell(&News::Address(format!("#/{at}")), &world(keeper, NOW));
    desk
}

/// How often something was counted while `deed` was done.
fn counted(count: &'static std::thread::LocalKey<Cell<u32>>, deed: impl FnOnce()) -> u32 {
    let before = count.with(Cell::get);
    deed();
    count.with(Cell::get) - before
}

/// A desk with the demo in the book and three sheets of several preps; the last one is open.
fn with_runs(keeper: &dyn Keeper) -> Desk {
    let mut desk = desk(keeper, "specs");
    let act = |desk: &mut Desk, act: &Act| drop(desk.act(act, &world(keeper, NOW)));
    act(&mut desk, &Act::Demo);
    for _ in 0..3 {
        for prep in ["prep/fruit", "prep/clear", "prep/cordial", "specs/spec?id=demo-1"] {
            let _ = desk.tell(&News::Address(format!("#/{prep}")), &world(keeper, NOW));
            act(&mut desk, &Act::ToRun);
        }
        let _ = desk.tell(&News::Address("#/batch/run".into()), &world(keeper, NOW));
        act(&mut desk, &Act::Start("0/press".into()));
        act(&mut desk, &Act::AllRuns);
        act(&mut desk, &Act::NewRun);
    }
    desk
}

#[test]
fn a_run_sheet_is_worked_out_once() {
    let keeper = Memory::default();
    let mut desk = with_runs(&keeper);
    let id = desk.bench.book.runs.iter().find(|entry| entry.value.parts.len() > 2).expect("a run").id.clone();
    let address = format!("#/batch/run?id={id}");
    drop(desk.tell(&News::Address(address), &world(&keeper, NOW)));
    desk.worked_out.clear();
    let runs = u32::try_from(desk.bench.book.runs.len()).expect("a few");
    assert!(runs >= 3, "{runs}");
    let draw = |desk: &mut Desk, now| drop(desk.view(&world(&keeper, now)));
    assert_eq!(counted(&WORKED_OUT, || draw(&mut desk, NOW)), runs, "each sheet once");
    let seconds = || {
        for second in 1..10 {
            let now = NOW + second * 1000;
            drop(desk.tell(&News::Tick, &world(&keeper, now)));
            draw(&mut desk, now);
        }
    };
    assert_eq!(counted(&WORKED_OUT, seconds), 0, "a second asks for its times alone");
    let tick = || {
        drop(desk.act(&Act::Tick("0/press".into()), &world(&keeper, NOW)));
        draw(&mut desk, NOW);
    };
    assert_eq!(counted(&WORKED_OUT, tick), 1, "a tick changes one");
}

#[test]
fn a_tick_writes_one_record_and_rereads_one() {
    let keeper = Watched::default();
    let mut desk = with_runs(&keeper);
    let id = desk.bench.book.runs.iter().find(|entry| entry.value.parts.len() > 2).expect("a run").id.clone();
    drop(desk.tell(&News::Address(format!("#/batch/run?id={id}")), &world(&keeper, NOW)));
    keeper.records();
    drop(desk.act(&Act::Tick("0/press".into()), &world(&keeper, NOW)));
    let one = vec![format!("run/{id}")];
    assert_eq!(keeper.records(), [one.clone(), one]);
}

#[test]
fn a_spec_is_read_once_for_a_drawing() {
    let keeper = Memory::default();
    for (at, field) in [
        ("service/scale", "serves"),
        ("service/balance", "makes"),
        ("prep/cordial?spec=45+ml+pear+brandy%0A30+ml+pear+juice%0A15+ml+honey+syrup", "serves"),
        ("prep/milk-wash?spec=60+ml+gin%0A30+ml+lemon+juice", "at"),
        ("prep/strength", "pours"),
    ] {
        let mut desk = desk(&keeper, at);
        if at == "prep/strength" {
            drop(desk.act(&Act::Choose("ask".into(), "blend".into()), &world(&keeper, NOW)));
        }
        let _ = desk.view(&world(&keeper, NOW));
        let text = desk.shown().field(field).expect(field).text.clone();
        let key = || {
            drop(desk.act(&Act::Type(field.into(), format!("{text} ")), &world(&keeper, NOW)));
            drop(desk.view(&world(&keeper, NOW)));
        };
        assert_eq!(counted(&READ, key), 1, "{at}");
    }
}

#[test]
fn how_strong_specs_are_is_worked_out_when_asked_for_and_once() {
    let keeper = Memory::default();
    let mut desk = desk(&keeper, "specs");
    drop(desk.act(&Act::Demo, &world(&keeper, NOW)));
    let mut all_after = |act: Act| {
        counted(&READ, || {
            drop(desk.act(&act, &world(&keeper, NOW)));
            drop(desk.view(&world(&keeper, NOW)));
        })
    };
    let sort = |order: &str| Act::Choose("sort".into(), order.into());
    all_after(sort("name"));
    // Each of the three is read for its row anyway.
    let anyway = all_after(sort("newest"));
    assert_eq!(all_after(sort("strongest")), anyway + 3);
    assert_eq!(all_after(sort("name")), anyway);
    assert_eq!(all_after(sort("strongest")), anyway);
    assert_eq!(all_after(Act::Type("search".into(), "clerk".into())), 1, "of those shown alone");
    assert_eq!(all_after(Act::Type("search".into(), String::new())), 3);
    // Where the tab is come back to, nothing of the book has changed.
    let seen = counted(&READ, || {
        drop(desk.tell(&News::Seen, &world(&keeper, NOW)));
        drop(desk.view(&world(&keeper, NOW)));
    });
    assert_eq!(seen, 3);
}
