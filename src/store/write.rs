//! The one writer of JSON: what is saved, and the files that are given away.

use crate::book::{Field, Loose, Many, Rule, Slot};

/// How a text is laid out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Layout {
    /// As short as it goes.
    Close,
    /// A value a line, two spaces in for each that it stands in.
    Wide,
}

/// What stands in a slot, as JSON.
///
/// # Errors
/// Never in practice: every text has JSON.
pub(super) fn written(slot: Slot<'_>, layout: Layout) -> Result<String, serde_json::Error> {
    let mut writing = Writing { text: String::new(), depth: 0, layout };
    writing.value(slot)?;
    Ok(writing.text)
}

struct Writing {
    text: String,
    depth: usize,
    layout: Layout,
}

impl Writing {
    fn value(&mut self, slot: Slot<'_>) -> Result<(), serde_json::Error> {
        match slot {
            Slot::Text(text) => self.text.push_str(&serde_json::to_string(text)?),
            Slot::Number(number) => self.text.push_str(&number.to_string()),
            Slot::Small(number) => self.text.push_str(&number.to_string()),
            Slot::Flag(flag) => self.text.push_str(if *flag { "true" } else { "false" }),
            Slot::MaybeText(Some(text)) => self.value(Slot::Text(text))?,
            Slot::MaybeSmall(Some(number)) => self.value(Slot::Small(number))?,
            Slot::List(many) => self.many(['[', ']'], many)?,
            Slot::Names(many) => self.many(['{', '}'], many)?,
            Slot::Record(record) => self.fields(record.slots())?,
            Slot::Loose(Loose::Number(number)) => self.value(Slot::Number(number))?,
            Slot::Loose(Loose::Text(text)) => self.value(Slot::Text(text))?,
            Slot::Loose(Loose::List(list)) => self.value(Slot::List(list))?,
            Slot::Loose(Loose::Names(names)) => self.value(Slot::Names(names))?,
            Slot::MaybeText(None) | Slot::MaybeSmall(None) | Slot::Loose(_) | Slot::Passed => {
                self.text.push_str("null");
            }
        }
        Ok(())
    }

    fn many(&mut self, [open, close]: [char; 2], many: &mut dyn Many) -> Result<(), serde_json::Error> {
        self.text.push(open);
        let mut count = 0;
        while let Some((name, slot)) = many.at(count) {
            self.begin(count, (open == '{').then_some(name))?;
            self.value(slot)?;
            self.depth -= 1;
            count += 1;
        }
        self.end(count, close);
        Ok(())
    }

    fn fields(&mut self, fields: Vec<Field<'_>>) -> Result<(), serde_json::Error> {
        self.text.push('{');
        let mut count = 0;
        for Field { name, rule, slot } in fields {
            let Some(mut slot) = slot else { continue };
            if rule == Rule::Spare && slot.is_empty() {
                continue;
            }
            self.begin(count, Some(name))?;
            self.value(slot)?;
            self.depth -= 1;
            count += 1;
        }
        self.end(count, '}');
        Ok(())
    }

    /// Before a value that stands in another: the comma after the one before it, and its name.
    fn begin(&mut self, count: usize, name: Option<&str>) -> Result<(), serde_json::Error> {
        if count > 0 {
            self.text.push(',');
        }
        self.depth += 1;
        self.line();
        if let Some(name) = name {
            self.text.push_str(&serde_json::to_string(name)?);
            self.text.push_str(if self.layout == Layout::Wide { ": " } else { ":" });
        }
        Ok(())
    }

    fn end(&mut self, count: usize, close: char) {
        if count > 0 {
            self.line();
        }
        self.text.push(close);
    }

    fn line(&mut self) {
        if self.layout == Layout::Wide {
            self.text.push('\n');
            for _ in 0..self.depth {
                self.text.push_str("  ");
            }
        }
    }
}
