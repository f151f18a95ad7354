//! Forms as plain structs of texts, and choices that are kept as texts.

pub use crate::book::Texts;

/// A form whose every field is a text.
pub trait Fields {
    /// Its fields, in order.
    fn fields(&mut self) -> Vec<(&'static str, &mut String)>;
}

/// Types kept texts into a form: what is not among them stays as it is, names it does not know are ignored.
pub fn fill(form: &mut dyn Fields, texts: &Texts) {
    for (name, field) in form.fields() {
        if let Some(text) = texts.get(name) {
            field.clone_from(text);
        }
    }
}

/// Takes the texts out of a form, over those of `texts` that have its names.
pub(crate) fn empty_into(form: &mut dyn Fields, texts: &mut Texts) {
    for (name, field) in form.fields() {
        texts.insert(name.to_owned(), std::mem::take(field));
    }
}

/// Declares a form: each field a text, with its default.
macro_rules! form {
    ($(#[$doc:meta])* $name:ident { $($(#[$each:meta])* $field:ident = $default:expr,)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Debug, PartialEq, Eq)]
        pub struct $name { $($(#[$each])* pub $field: String,)+ }

        impl Default for $name {
            fn default() -> Self {
                $name { $($field: $default.to_owned(),)+ }
            }
        }

        impl $crate::screen::Fields for $name {
            fn fields(&mut self) -> Vec<(&'static str, &mut String)> {
                vec![$((stringify!($field), &mut self.$field),)+]
            }
        }
    };
}

/// One of a few, kept by its key and shown by its label.
pub trait Choice: Copy + PartialEq + 'static {
    /// All of them, in the order shown; the first is the default.
    const ALL: &'static [Self];

    /// Stable key, kept in saved data.
    fn key(self) -> &'static str;

    /// What it is called.
    fn label(self) -> &'static str;

    /// The choice with this key; the first for a key we do not know.
    #[must_use]
    fn read(key: &str) -> Self {
        Self::ALL.iter().copied().find(|choice| choice.key() == key).unwrap_or(Self::ALL[0])
    }
}

/// Declares the keys and labels of a choice.
macro_rules! choice {
    ($name:ty: $($variant:ident = $key:literal, $label:literal;)+) => {
        impl $crate::screen::Choice for $name {
            const ALL: &'static [Self] = &[$(<$name>::$variant,)+];

            fn key(self) -> &'static str {
                match self { $(<$name>::$variant => $key,)+ }
            }

            fn label(self) -> &'static str {
                match self { $(<$name>::$variant => $label,)+ }
            }
        }
    };
}

pub(crate) use choice;
pub(crate) use form;
