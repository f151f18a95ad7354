//! What is given out of the app: files, links, prints; and files asked for.

use super::effect::{give, raise, send};
use super::{Desk, Effect, World};
use crate::book::DEMO;
use crate::screen::Act;
use crate::screen::route::Route;
use crate::store::{backup, recipe};
use crate::tool::specs::card;

/// What a backup is called.
const BACKUP_FILE: &str = "meniscus-backup.json";

impl Desk {
    pub(super) fn give(&mut self, act: &Act, world: &World<'_>) {
        self.sight.activate(None);
        match act {
            Act::Backup => self.give_backup(world),
            Act::GiveUnsaved if self.route.row().is_of_book => self.give_backup(world),
            Act::GiveUnsaved => {
                let texts = self.texts(self.route).iter().map(|(name, text)| format!("{name}:\n{text}\n"));
                let texts = texts.collect::<Vec<_>>().join("\n");
                self.effects.push(give("meniscus-unsaved.txt", texts));
            }
            Act::GiveUnread => {
                let text = |key: &str| world.keeper.get(key).ok().flatten().unwrap_or_default();
                let unread = self.bench.book.unread.iter();
                let texts: Vec<String> =
                    unread.map(|unread| format!("{}\n{}\n", unread.key, text(&unread.key))).collect();
                self.effects.push(give("meniscus-unread.txt", texts.join("\n")));
            }
            Act::ChooseFile => self.effects.push(raise("meniscus-choose-file")),
            Act::Paste => self.effects.push(raise("meniscus-paste")),
            Act::Print => self.effects.push(raise("meniscus-print")),
            Act::Picture => self.effects.push(raise("meniscus-picture")),
            Act::Csv => {
                let csv = self.shown().csv();
                self.effects.push(give("batch.csv", csv));
            }
            Act::CopyLink => {
                if let Some((_, link)) = self.bench.at_hand.shared.clone() {
                    self.effects.push(Effect::Copy(link));
                }
            }
            _ => self.give_spec(act, world),
        }
    }

    /// Gives the spec that is open.
    fn give_spec(&mut self, act: &Act, world: &World<'_>) {
        let Some((entry, _)) = self.open_spec() else { return };
        match act {
            Act::Share => {
                // What is shared of the demo is somebody's own.
                let id = if entry.id.starts_with(DEMO) { (world.fresh)() } else { entry.id.clone() };
                if let Ok(text) = backup::one(&id, &entry.value) {
                    self.bench.at_hand.shared = Some((entry.id.clone(), String::new()));
                    self.effects.push(send("meniscus-pack", text));
                }
            }
            Act::Recipe => self.effects.push(give("recipe.json", recipe::recipes(&entry.value))),
            Act::Text => self.effects.push(give("spec.txt", card::plain(&entry.value))),
            _ => {}
        }
    }

    fn give_backup(&mut self, world: &World<'_>) {
        self.with_cards(world);
        if let Ok(text) = backup::backup(&self.bench.book, world.now) {
            self.effects.push(give(BACKUP_FILE, text));
        }
    }

    /// A file has been shared or downloaded.
    pub(super) fn given(&mut self, file: &str, world: &World<'_>) {
        if file == BACKUP_FILE {
            self.type_into(Route::Backup, "last", world.now.to_string(), world);
            self.change_book(|book| book.last_backup = Some(world.now));
        }
    }

    /// Has the spec of the label shown packed, for its code.
    pub(super) fn pack_label(&mut self, world: &World<'_>) {
        self.with_cards(world);
        let (id, at) = (self.text(Route::Label, "spec"), self.text(Route::Label, "at"));
        let Some(entry) = self.bench.book.card(&id) else { return };
        let mut card = entry.value.clone();
        let at_way = at.parse().unwrap_or(0_usize).min(card.ways.len().saturating_sub(1));
        // The form alone, without notes: the code must stay coarse enough to print.
        card.ways = card.ways.into_iter().skip(at_way).take(1).collect();
        (card.notes, card.tags) = (String::new(), String::new());
        if let Ok(text) = backup::one(&id, &card) {
            self.bench.at_hand.shared = Some((format!("{id}#{at}"), String::new()));
            self.effects.push(send("meniscus-pack", text));
        }
    }
}
