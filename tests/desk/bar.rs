//! A bar: a store, and desks at it as tabs of one browser are.

use std::cell::Cell;

use crate::faulty::Faulty;
use meniscus::desk::{Desk, Device, Effect, News, View, World};
use meniscus::screen::route::Route;
use meniscus::screen::{Act, Block, Fix, Row};
use meniscus::store::SaveProblem;
use meniscus::text::Decimal;

/// Wednesday, 25 November 2026, 15:30.
pub const NOW: u64 = 1_795_620_600_000;

thread_local! {
    static IDS: Cell<u32> = const { Cell::new(0) };
}

fn fresh() -> String {
    IDS.with(|ids| ids.replace(ids.get() + 1)).to_string() + "id"
}

/// A tab.
pub struct Tab<'a> {
    pub keeper: &'a Faulty,
    pub desk: Desk,
    pub now: u64,
    /// What the app was asked to do, the latest last.
    pub effects: Vec<Effect>,
}

fn world(keeper: &Faulty, now: u64) -> World<'_> {
    World { keeper, now, fresh: &fresh }
}

impl<'a> Tab<'a> {
    /// Opens the app at an address, as a browser does.
    pub fn open(keeper: &'a Faulty, at: &str) -> Tab<'a> {
        Tab::open_later(keeper, at, NOW)
    }

    pub fn open_later(keeper: &'a Faulty, at: &str, now: u64) -> Tab<'a> {
        Tab::open_with(keeper, at, now, Ok(()))
    }

    pub fn open_with(keeper: &'a Faulty, at: &str, now: u64, trial: Result<(), SaveProblem>) -> Tab<'a> {
        let device =
            Device { decimal: Decimal::Point, ahead: |_| 0, page: "https://bar.example/".into(), has_keyboard: false };
        let (desk, effects) = Desk::open(device, trial, &world(keeper, now));
        let mut tab = Tab { keeper, desk, now, effects };
        tab.go(at);
        tab
    }

    #[allow(clippy::needless_pass_by_value)]
    pub fn act(&mut self, act: Act) -> &mut Tab<'a> {
        let effects = self.desk.act(&act, &world(self.keeper, self.now));
        self.effects.extend(effects);
        self
    }

    #[allow(clippy::needless_pass_by_value)]
    pub fn tell(&mut self, news: News) -> &mut Tab<'a> {
        let effects = self.desk.tell(&news, &world(self.keeper, self.now));
        self.effects.extend(effects);
        self
    }

    /// Goes to an address.
    pub fn go(&mut self, at: &str) -> &mut Tab<'a> {
        let hash = if at.starts_with('#') { at.to_owned() } else { format!("#/{at}") };
        self.tell(News::Address(hash))
    }

    /// Goes where the app last asked to go.
    pub fn follow(&mut self) -> &mut Tab<'a> {
        let to = self.effects.iter().rev().find_map(|effect| match effect {
            Effect::Go(to) | Effect::Instead(to) => Some(to.clone()),
            _ => None,
        });
        let to = to.expect("somewhere to go");
        self.go(&to)
    }

    /// Types into a field; on a spec that is being read, after Change.
    pub fn type_in(&mut self, field: &str, text: &str) -> &mut Tab<'a> {
        self.fields_for(field);
        self.act(Act::Type(field.into(), text.into()))
    }

    /// Taps the button that says this.
    pub fn tap(&mut self, label: &str) -> &mut Tab<'a> {
        let act = self.button(label).unwrap_or_else(|| panic!("no button {label:?} in {:?}", self.labels()));
        self.act(act)
    }

    /// Taps the small button called so.
    pub fn tap_sign(&mut self, spoken: &str) -> &mut Tab<'a> {
        let view = self.view();
        let rows = view.screen.blocks.iter().filter_map(|block| match block {
            Block::Table(_, rows) => Some(rows),
            _ => None,
        });
        let button = rows.flatten().flat_map(|row| &row.buttons).find(|button| button.spoken == spoken);
        let act = button.unwrap_or_else(|| panic!("no {spoken:?}")).act.clone();
        self.act(act)
    }

    /// Taps a line of a spec, by the name of what it is of.
    pub fn open_line(&mut self, name: &str) -> &mut Tab<'a> {
        let view = self.view();
        let rows = view.screen.blocks.iter().filter_map(|block| match block {
            Block::Table(_, rows) => Some(rows),
            _ => None,
        });
        let act = rows.flatten().find(|row| row.name == name).and_then(|row| row.opens.clone());
        self.act(act.unwrap_or_else(|| panic!("no line {name:?}")))
    }

    /// Taps what would settle a question under a field, or beside a row, by what it says.
    pub fn settle(&mut self, label: &str) -> &mut Tab<'a> {
        let view = self.view();
        let mut acts = view.screen.blocks.iter().flat_map(|block| -> Vec<(String, Act)> {
            match block {
                Block::Field(field) => {
                    let fixes = field.problem.iter().flat_map(|problem| &problem.fixes);
                    fixes.map(|fix| (fix.label.clone(), Act::Type(field.name.into(), fix.text.clone()))).collect()
                }
                Block::Table(_, rows) => {
                    let typed = |row: &Row| if row.typed.is_empty() { row.name.clone() } else { row.typed.clone() };
                    let of = |row: &Row| {
                        let typed = typed(row);
                        let act = |fix: &Fix| (fix.label.clone(), Act::Rewrite(typed.clone(), fix.text.clone()));
                        row.fixes.iter().map(act).collect::<Vec<_>>()
                    };
                    rows.iter().flat_map(of).collect()
                }
                _ => Vec::new(),
            }
        });
        let act = acts.find(|(said, _)| said == label).map(|(_, act)| act);
        self.act(act.unwrap_or_else(|| panic!("nothing to settle by {label:?}")))
    }

    fn button(&mut self, label: &str) -> Option<Act> {
        let view = self.view();
        let in_notice = view.not_saved.iter().chain(&view.notice).flat_map(|notice| notice.buttons.clone());
        view.screen.buttons().into_iter().chain(in_notice).find(|button| button.label == label).map(|button| button.act)
    }

    /// Whether there is a button that says this.
    pub fn has_button(&mut self, label: &str) -> bool {
        self.button(label).is_some()
    }

    /// What the buttons say.
    pub fn labels(&mut self) -> Vec<String> {
        self.view().screen.buttons().into_iter().map(|button| button.label).collect()
    }

    pub fn view(&mut self) -> View {
        self.desk.view(&world(self.keeper, self.now))
    }

    /// What the strip says: figures, a bar, the line below.
    pub fn strip(&mut self) -> String {
        let view = self.view();
        let figures: Vec<String> = view.screen.strip.figures.iter().map(ToString::to_string).collect();
        format!("{} | {}", figures.join(" + "), view.screen.strip.also).replace('\u{202f}', " ")
    }

    /// What its third line says.
    pub fn below(&mut self) -> String {
        self.view().screen.strip.below.replace('\u{202f}', " ")
    }

    /// A spec is read first: its fields come with Change.
    fn fields_for(&mut self, field: &str) {
        for label in ["Done", "Change", "As text"] {
            if self.view().screen.field(field).is_none() && self.has_button(label) {
                self.tap(label);
            }
        }
    }

    /// What a field holds; on a spec that is being read, after Change.
    pub fn value(&mut self, field: &str) -> String {
        self.fields_for(field);
        let view = self.view();
        view.screen.field(field).unwrap_or_else(|| panic!("no field {field}")).text.clone()
    }

    /// What is said above the page: that something is not saved, and what else there is to say.
    pub fn notice(&mut self) -> String {
        let view = self.view();
        view.not_saved.into_iter().chain(view.notice).map(|notice| notice.words).collect::<Vec<_>>().join(" ")
    }

    /// The rows of the tables, name and amount; and the steps of a run, with their times.
    pub fn rows(&mut self) -> Vec<String> {
        let view = self.view();
        let rows = view.screen.blocks.iter().flat_map(|block| match block {
            Block::Table(_, rows) => {
                rows.iter().map(|row| format!("{}|{}|{}", row.name, row.amount, row.detail)).collect()
            }
            Block::Timeline(events) => events
                .iter()
                .map(|event| format!("{}|{}|{}|{}", event.words, event.at, event.detail, event.mind))
                .collect(),
            _ => Vec::new(),
        });
        rows.collect()
    }

    /// Where the links of a label lead.
    pub fn link(&mut self, label: &str) -> String {
        let view = self.view();
        let mut links = view.screen.links().into_iter().filter(|link| link.label == label);
        links.next().unwrap_or_else(|| panic!("no link {label:?}")).href
    }

    /// Texts that were sent to boot.js under a name.
    pub fn sent(&self, name: &str) -> Vec<String> {
        let sent = self.effects.iter().filter_map(|effect| match effect {
            Effect::Send(sent, texts) if *sent == name => Some(texts),
            _ => None,
        });
        sent.map(|texts| texts.last().map(|(_, text)| text.clone()).unwrap_or_default()).collect()
    }
}

/// Texts stored under keys that begin so.
pub fn stored(keeper: &Faulty, prefix: &str) -> Vec<String> {
    let all = keeper.dump().into_iter();
    all.filter(|(key, _)| key.starts_with(prefix)).map(|(key, text)| format!("{key}={text}")).collect()
}

/// Every screen.
pub fn screens() -> impl Iterator<Item = Route> {
    Route::ALL.iter().copied()
}
