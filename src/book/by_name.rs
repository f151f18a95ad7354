//! A small list of things by name, in the order of their names.

use std::ops::Index;

use super::order::order;

/// Things by name, each name once, in the order of the names. A sorted list: there are a dozen, rarely more.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ByName<T> {
    all: Vec<(String, T)>,
}

/// Texts by the name of their field: what is kept of a form.
pub type Texts = ByName<String>;

impl<T> Default for ByName<T> {
    fn default() -> Self {
        ByName::new()
    }
}

impl<T> ByName<T> {
    /// With nothing in it.
    #[must_use]
    pub const fn new() -> ByName<T> {
        ByName { all: Vec::new() }
    }

    /// Where a name stands, or would.
    fn place(&self, name: &str) -> Result<usize, usize> {
        self.all.binary_search_by(|(other, _)| other.as_str().cmp(name))
    }

    /// What has this name.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&T> {
        self.place(name).ok().map(|at| &self.all[at].1)
    }

    /// What has this name, to change it.
    pub fn get_mut(&mut self, name: &str) -> Option<&mut T> {
        self.place(name).ok().map(|at| &mut self.all[at].1)
    }

    /// Gives a thing this name, in place of what had it.
    pub fn insert(&mut self, name: String, value: T) {
        match self.place(&name) {
            Ok(at) => self.all[at].1 = value,
            Err(at) => self.all.insert(at, (name, value)),
        }
    }

    /// Takes away what has this name.
    pub fn remove(&mut self, name: &str) -> Option<T> {
        self.place(name).ok().map(|at| self.all.remove(at).1)
    }

    /// How many there are.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.all.len()
    }

    /// Whether there are none.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.all.is_empty()
    }

    /// All of it, in order.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &T)> {
        self.all.iter().map(|(name, value)| (name.as_str(), value))
    }

    /// The names, in order.
    pub fn keys(&self) -> impl Iterator<Item = &str> {
        self.all.iter().map(|(name, _)| name.as_str())
    }

    /// What has a name, in the order of the names.
    pub fn values(&self) -> impl Iterator<Item = &T> {
        self.all.iter().map(|(_, value)| value)
    }

    /// What has a name, to change it.
    pub fn values_mut(&mut self) -> impl Iterator<Item = &mut T> {
        self.all.iter_mut().map(|(_, value)| value)
    }

    /// Keeps what passes.
    pub fn retain(&mut self, mut passes: impl FnMut(&str, &mut T) -> bool) {
        self.all.retain_mut(|(name, value)| passes(name, value));
    }
}

impl<T: Default> ByName<T> {
    /// What has this name; made where there is none.
    pub fn or_default(&mut self, name: &str) -> &mut T {
        let at = self.place(name).unwrap_or_else(|at| {
            self.all.insert(at, (name.to_owned(), T::default()));
            at
        });
        &mut self.all[at].1
    }
}

/// For a list that is read from front to back, in whatever order it comes.
impl<T: Default> ByName<T> {
    /// Takes everything away.
    pub(super) fn clear(&mut self) {
        self.all.clear();
    }

    /// Puts a name at the end; [`ByName::settle`] must follow.
    pub(super) fn push(&mut self, name: &str) -> &mut T {
        self.all.push((name.to_owned(), T::default()));
        let last = self.all.len() - 1;
        &mut self.all[last].1
    }

    /// Brings the names in order; of those that came twice the later stays.
    pub(super) fn settle(&mut self) {
        let is_settled = self.all.windows(2).all(|pair| pair[0].0 < pair[1].0);
        if is_settled {
            return;
        }
        if let Some(order) = order(self.all.len(), &|a, b| self.all[a].0 > self.all[b].0) {
            self.all = order.into_iter().map(|at| std::mem::take(&mut self.all[at])).collect();
        }
        self.all.reverse();
        self.all.dedup_by(|earlier, later| earlier.0 == later.0);
        self.all.reverse();
    }

    /// What stands at a place, with its name.
    pub(super) fn at(&mut self, at: usize) -> Option<(&str, &mut T)> {
        self.all.get_mut(at).map(|(name, value)| (name.as_str(), value))
    }
}

impl<T> Index<&str> for ByName<T> {
    type Output = T;

    /// # Panics
    /// Where nothing has this name: for tests.
    fn index(&self, name: &str) -> &T {
        self.get(name).expect("something of this name")
    }
}

impl<T> IntoIterator for ByName<T> {
    type Item = (String, T);
    type IntoIter = std::vec::IntoIter<(String, T)>;

    fn into_iter(self) -> Self::IntoIter {
        self.all.into_iter()
    }
}

impl<T> FromIterator<(String, T)> for ByName<T> {
    fn from_iter<I: IntoIterator<Item = (String, T)>>(pairs: I) -> Self {
        let mut all = ByName::new();
        for (name, value) in pairs {
            all.insert(name, value);
        }
        all
    }
}

impl<T, const N: usize> From<[(String, T); N]> for ByName<T> {
    fn from(pairs: [(String, T); N]) -> Self {
        pairs.into_iter().collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pairs(names: &[&str]) -> ByName<usize> {
        names.iter().enumerate().map(|(at, name)| ((*name).to_owned(), at)).collect()
    }

    #[test]
    fn names_are_in_order_and_stand_once() {
        let mut all = pairs(&["juice", "amount", "lines", "amount"]);
        assert_eq!(all.iter().collect::<Vec<_>>(), [("amount", &3), ("juice", &0), ("lines", &2)]);
        assert_eq!((all.get("juice"), all.get("juic"), all["lines"]), (Some(&0), None, 2));
        *all.or_default("juice") += 7;
        *all.or_default("acid") += 1;
        assert_eq!(all.values().copied().collect::<Vec<_>>(), [1, 3, 7, 2]);
        all.retain(|name, value| name < "k" && *value != 3);
        assert_eq!((all.keys().collect::<Vec<_>>(), all.len()), (vec!["acid", "juice"], 2));
        assert_eq!((all.remove("acid"), all.remove("acid"), all.is_empty()), (Some(1), None, false));
    }

    #[test]
    fn a_list_read_in_any_order_settles_to_the_same() {
        for names in [&["b", "a", "c", "a", "b", "a"][..], &["a", "a"], &["a", "b"], &["b", "a"], &[]] {
            let mut read = ByName::default();
            for (at, name) in names.iter().enumerate() {
                *read.push(name) = at;
            }
            read.settle();
            assert_eq!(read, pairs(names), "{names:?}");
        }
    }
}
