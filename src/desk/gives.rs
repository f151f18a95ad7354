//! What is given out of the app: files, links, prints; and files asked for.

use super::effect::{give, raise, send};
use super::{Desk, Effect, World};
use crate::book::DEMO;
use crate::screen::route::Route;
use crate::screen::{Act, Face};
use crate::store::{backup, besides, recipe};
use crate::tool::specs::card;

/// What a backup is called, before the date.
const BACKUP_FILE: &str = "meniscus-backup";
/// Most letters of a name that a file is called by.
const LONGEST_NAME: usize = 40;

/// A name in letters that every system keeps in the names of files: other scripts too, but no signs.
fn file_name(name: &str) -> String {
    let is_letter = |c: char| {
        c.is_ascii_alphanumeric()
            || matches!(c, '\u{c0}'..='\u{60f}' | '\u{620}'..='\u{1fff}' | '\u{3040}'..='\u{d7ff}')
    };
    let words = name.split(|c| !is_letter(c)).filter(|word| !word.is_empty());
    let joined = words.collect::<Vec<_>>().join("-").to_ascii_lowercase();
    let short: String = joined.chars().take(LONGEST_NAME).collect();
    match short.trim_end_matches('-') {
        "" => "spec".into(),
        // A backup is known by its name.
        short if short.starts_with(BACKUP_FILE) => format!("spec-{short}"),
        short => short.into(),
    }
}

impl Desk {
    /// A file called so, with the date on the clock on the wall: "orchard-lantern 2026-11-25.json".
    fn give_file(&mut self, name: &str, kind: &str, text: String) {
        let clock = &self.bench.clock;
        let written = clock.written(clock.now());
        let day = written.split('T').next().unwrap_or_default();
        self.effects.push(give(&format!("{name} {day}.{kind}"), text));
    }

    pub(super) fn give(&mut self, act: &Act, world: &World<'_>) {
        self.sight.activate(None);
        match act {
            Act::Backup => self.give_backup(world),
            Act::GiveUnsaved if self.route.row().is_of_book => self.give_backup(world),
            Act::GiveUnsaved => {
                let texts = self.texts(self.route).iter().map(|(name, text)| format!("{name}:\n{text}\n"));
                let texts = texts.collect::<Vec<_>>().join("\n");
                self.give_file("meniscus-unsaved", "txt", texts);
            }
            Act::GiveUnread => {
                let text = |key: &str| world.keeper.get(key).ok().flatten().unwrap_or_default();
                let unread = self.bench.book.unread.iter();
                let texts: Vec<String> =
                    unread.map(|unread| format!("{}\n{}\n", unread.key, text(&unread.key))).collect();
                self.give_file("meniscus-unread", "txt", texts.join("\n"));
            }
            Act::GiveAside => {
                let named = &self.bench.at_hand.aside;
                let aside = besides::unread(world.keeper, &self.bench.book).unwrap_or_default();
                let aside = aside.into_iter().filter(|aside| named.contains(&aside.key));
                let texts: Vec<String> = aside.map(|aside| format!("{}\n{}\n", aside.key, aside.text)).collect();
                self.give_file("meniscus-aside", "txt", texts.join("\n"));
            }
            Act::ChooseFile => {
                self.bench.at_hand.is_by_link = false;
                self.effects.push(raise("meniscus-choose-file"));
            }
            Act::Paste => {
                self.bench.at_hand.is_by_link = false;
                self.effects.push(raise("meniscus-paste"));
            }
            Act::Print => {
                // A spec is printed as it is read.
                if let Some((entry, _)) = self.open_spec() {
                    self.show_face(entry.id.clone(), Face::Read);
                }
                self.effects.push(raise("meniscus-print"));
            }
            Act::Picture => self.effects.push(raise("meniscus-picture")),
            Act::Csv => {
                let csv = self.shown().csv();
                self.give_file("batch", "csv", csv);
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
            Act::Recipe => self.give_file(&file_name(&entry.value.name), "json", recipe::recipes(&entry.value)),
            Act::Text => self.give_file(&file_name(&entry.value.name), "txt", card::plain(&entry.value)),
            _ => {}
        }
    }

    fn give_backup(&mut self, world: &World<'_>) {
        self.with_cards(world);
        if let Ok(text) = backup::backup(&self.bench.book, self.besides(world), world.now) {
            self.give_file(BACKUP_FILE, "json", text);
        }
    }

    /// A file has been shared or downloaded.
    pub(super) fn given(&mut self, file: &str, world: &World<'_>) {
        if file.starts_with(BACKUP_FILE) {
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn files_are_called_in_letters_that_every_system_keeps() {
        for (name, file) in [
            ("Orchard lantern", "orchard-lantern"),
            ("  50/50 “dry” martini: No. 2\n", "50-50-dry-martini-no-2"),
            ("../../etc/passwd", "etc-passwd"),
            ("Crème brûlée", "crème-brûlée"),
            ("Груша", "Груша"),
            ("a\u{202e}gpj.exe", "a-gpj-exe"),
            ("", "spec"),
            ("🍐", "spec"),
            ("Meniscus backup", "spec-meniscus-backup"),
        ] {
            assert_eq!(file_name(name), file, "{name}");
        }
        assert_eq!(file_name(&"long name ".repeat(20)).len(), 39);
    }
}
