//! [`Reckoned`]: every measure and kept reckoning of a job worked out, in the order they need.

use core::fmt;
use std::collections::{BTreeMap, BTreeSet, VecDeque};
use std::sync::Arc;

use super::circles::Circles;
use super::item::takes_names;
use super::names::NameIndex;
use super::{Item, ItemId, Job, Kept, Measure, MeasureKind, Part, PartSizes, Written, parts};
use crate::calculators;
use crate::measure::text::{Formula, Names, NoNames, Quantity, TextProblem, parse};
use crate::measure::{Length, Unit};
use crate::order::set_of;
use crate::sheet::{Bench, Sheet};

/// Why a measure has no value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MeasureProblem {
    /// Its text cannot be read or worked out.
    Text(TextProblem),
    /// It needs itself: the names of the circle, in order.
    Circle(Vec<String>),
    /// The reckoning that it is linked to is gone, refuses, or has no such result.
    Link(String),
    /// Another size has the same name, as it is seen; formulas use that one.
    SameName,
}

impl fmt::Display for MeasureProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            MeasureProblem::Text(problem) => fmt::Display::fmt(problem, f),
            MeasureProblem::Circle(names) => {
                write!(
                    f,
                    "This needs itself: {}. Give one of them a size of its own.",
                    names.join(" ← ")
                )
            }
            MeasureProblem::Link(why) => f.write_str(why),
            MeasureProblem::SameName => f.write_str(
                "Another size has this name, and formulas use that one. Rename one of them.",
            ),
        }
    }
}

impl core::error::Error for MeasureProblem {}

/// What a measure comes to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MeasureState {
    /// Its formula with the sizes in use put in.
    pub planned: Result<Quantity, MeasureProblem>,
    /// What the tape said on the real part.
    pub as_cut: Option<Result<Quantity, TextProblem>>,
}

impl MeasureState {
    /// The value that everything else uses: as cut if there is one, else planned.
    #[must_use]
    pub fn in_use(&self) -> Option<Quantity> {
        match &self.as_cut {
            Some(Ok(quantity)) => Some(*quantity),
            _ => self.planned.as_ref().ok().copied(),
        }
    }

    /// Whether the value in use is what the tape said: not where that cannot be read.
    #[must_use]
    pub const fn is_as_cut(&self) -> bool {
        matches!(self.as_cut, Some(Ok(_)))
    }

    /// The value in use as a length.
    #[must_use]
    pub fn length(&self) -> Option<Length> {
        let Some(Quantity::Length(length)) = self.in_use() else { return None };
        Some(length)
    }
}

/// A job worked out. Its names can be used in any formula.
#[derive(Clone, Debug)]
pub struct Reckoned {
    unit: Unit,
    bench: Bench,
    /// What was worked out, to see what changed since.
    items: BTreeMap<ItemId, Arc<Item>>,
    names: Arc<NameIndex<ItemId>>,
    read: BTreeMap<ItemId, Arc<Read>>,
    needed_by: Arc<BTreeMap<ItemId, Vec<ItemId>>>,
    measures: BTreeMap<ItemId, MeasureState>,
    kept: BTreeMap<ItemId, Arc<Sheet>>,
    parts: BTreeMap<ItemId, Arc<PartSizes>>,
    has_circle: bool,
}

impl Names for Reckoned {
    fn longest_match(&self, text: &str) -> usize {
        self.names.longest_match(text)
    }

    fn value(&self, name: &str) -> Option<Quantity> {
        self.measures.get(&self.names.get(name)?)?.in_use()
    }
}

/// An item with its texts read, and what it needs directly.
#[derive(Debug)]
struct Read {
    texts: Vec<Result<Formula, TextProblem>>,
    /// The names in its texts: so few that they are found sooner than among all names.
    names: Vec<(String, ItemId)>,
    needs: BTreeSet<ItemId>,
}

/// The names of one item's texts with their values.
struct NamesOf<'a>(&'a Read, &'a BTreeMap<ItemId, MeasureState>);

impl Names for NamesOf<'_> {
    fn longest_match(&self, _: &str) -> usize {
        0
    }

    fn value(&self, name: &str) -> Option<Quantity> {
        let (_, id) = self.0.names.iter().find(|(known, _)| known == name)?;
        self.1.get(id)?.in_use()
    }
}

/// Whether an item takes part in the reckoning.
fn counts(item: &Item) -> bool {
    matches!(item, Item::Measure(_) | Item::Kept(_) | Item::Part(_))
}

fn name_of_measure(item: &Item) -> Option<&str> {
    match item {
        Item::Measure(measure) => Some(&measure.name),
        _ => None,
    }
}

impl Reckoned {
    /// Works a job out with the sizes as cut.
    #[must_use]
    pub fn of(job: &Job, bench: &Bench) -> Reckoned {
        let counted = job.shared().filter(|(_, item)| counts(item));
        let mut items = BTreeMap::new();
        items.extend(counted.map(|(id, it)| (id, it.clone())));
        let measures = job.measures();
        let names = NameIndex::new(measures.iter().map(|(id, m)| (m.name.as_str(), *id)));
        let mut reckoned = Reckoned {
            unit: job.unit,
            bench: *bench,
            items,
            names: Arc::new(names),
            read: BTreeMap::new(),
            needed_by: Arc::default(),
            measures: BTreeMap::new(),
            kept: BTreeMap::new(),
            parts: BTreeMap::new(),
            has_circle: false,
        };
        let all = set_of(reckoned.items.keys().copied());
        for id in &all {
            reckoned.read_one(*id);
        }
        reckoned.needed_by = Arc::new(reckoned.find_needed_by());
        reckoned.work_out(&all);
        reckoned
    }

    /// Works out what changed since, and what needs it. The same as [`Reckoned::of`] the job, and
    /// quicker when little changed.
    #[must_use]
    pub fn after(&self, job: &Job, bench: &Bench) -> Reckoned {
        match self.changed_since(job, bench) {
            Some(changed) if changed.is_empty() => self.clone(),
            Some(changed) => {
                let mut next = self.clone();
                let mut is_other = false;
                for (id, item) in &changed {
                    next.items.insert(*id, item.clone());
                    is_other |= next.read_one(*id);
                }
                if is_other {
                    next.needed_by = Arc::new(next.find_needed_by());
                }
                let ids = next.with_all_needing(changed.into_keys());
                next.work_out(&ids);
                // A circle is told of everything that hangs on it.
                if next.has_circle { Reckoned::of(job, bench) } else { next }
            }
            None => Reckoned::of(job, bench),
        }
    }

    /// The items that are not as they were. `None` when more than their texts changed: names,
    /// which items there are, or what bare numbers mean.
    fn changed_since(&self, job: &Job, bench: &Bench) -> Option<BTreeMap<ItemId, Arc<Item>>> {
        if self.has_circle || self.bench != *bench || self.unit != job.unit {
            return None;
        }
        let mut changed = BTreeMap::new();
        let mut before = self.items.iter();
        for (id, item) in job.shared().filter(|(_, item)| counts(item)) {
            let (old_id, old) = before.next()?;
            if *old_id != id || name_of_measure(old) != name_of_measure(item) {
                return None;
            }
            if !Arc::ptr_eq(old, item) && old != item {
                changed.insert(id, item.clone());
            }
        }
        before.next().is_none().then_some(changed)
    }

    /// Reads the texts of an item. Whether it needs others than before.
    fn read_one(&mut self, id: ItemId) -> bool {
        let Some(item) = self.items.get(&id).cloned() else { return false };
        let texts: Vec<_> = match &*item {
            Item::Measure(Measure { written: Written::Formula(text), .. }) => {
                vec![parse(text, self)]
            }
            Item::Part(part) => {
                let Part { quantity, thickness, width, length, .. } = part;
                [quantity, thickness, width, length].map(|text| parse(text, self)).into()
            }
            _ => Vec::new(),
        };
        let names = texts.iter().flatten().flat_map(Formula::names);
        let names = names.filter_map(|name| Some((name.to_owned(), self.names.get(name)?)));
        let names: Vec<_> = names.collect();
        let mut needs = set_of(names.iter().map(|(_, id)| *id));
        match &*item {
            Item::Measure(Measure { written: Written::Linked(linked), .. }) => {
                needs.insert(linked.kept);
            }
            Item::Kept(kept) => {
                let entries = kept.as_entries(self.unit);
                let is_asked = |field: &str| {
                    let calculator = calculators::find(&kept.slug);
                    calculator
                        .is_some_and(|it| it.asked(&entries, &self.bench).any(|f| f.id == field))
                };
                for (field, text) in &kept.entries {
                    if takes_names(&kept.slug, field) && is_asked(field) {
                        needs.extend(self.names_in(text));
                    }
                }
            }
            _ => {}
        }
        needs.retain(|need| self.items.contains_key(need));
        let is_other = self.read.get(&id).is_none_or(|read| read.needs != needs);
        self.read.insert(id, Arc::new(Read { texts, names, needs }));
        is_other
    }

    /// Every name that stands at the beginning of a word: more than a calculator may use, never
    /// fewer.
    fn names_in(&self, text: &str) -> Vec<ItemId> {
        let mut found = Vec::new();
        let mut before = ' ';
        for (at, c) in text.char_indices() {
            if !(before.is_alphanumeric() && c.is_alphanumeric()) {
                let rest = text.get(at..).unwrap_or("");
                let length = self.names.longest_match(rest);
                found.extend(rest.get(..length).and_then(|name| self.names.get(name)));
            }
            before = c;
        }
        found
    }

    fn find_needed_by(&self) -> BTreeMap<ItemId, Vec<ItemId>> {
        let mut needed_by: BTreeMap<ItemId, Vec<ItemId>> = BTreeMap::new();
        for (id, read) in &self.read {
            for need in &read.needs {
                needed_by.entry(*need).or_default().push(*id);
            }
        }
        needed_by
    }

    /// These and everything that needs one of them. What was measured on the real part hands
    /// nothing on: it keeps its size.
    pub(super) fn with_all_needing(&self, first: impl Iterator<Item = ItemId>) -> BTreeSet<ItemId> {
        let mut next: Vec<ItemId> = first.collect();
        let mut all = set_of(next.iter().copied());
        while let Some(id) = next.pop() {
            for other in self.needed_by.get(&id).into_iter().flatten() {
                if all.insert(*other) && self.measured(*other).is_none() {
                    next.push(*other);
                }
            }
        }
        all
    }

    /// What the tape said, where it can be read.
    fn measured(&self, id: ItemId) -> Option<Quantity> {
        let Item::Measure(measure) = &**self.items.get(&id)? else { return None };
        self.as_cut(measure)?.ok()
    }

    /// Works these out, each after all that it needs. What is left over needs itself.
    ///
    /// A measure as cut needs nothing to be used by others, so taking one on the real part also
    /// opens a circle; what its formula wants is worked out last.
    fn work_out(&mut self, ids: &BTreeSet<ItemId>) {
        let needed_by = self.needed_by.clone();
        let mut waiting: BTreeMap<ItemId, usize> = BTreeMap::new();
        let mut measured = BTreeSet::new();
        for id in ids {
            if let Some(quantity) = self.measured(*id) {
                measured.insert(*id);
                let state = MeasureState { planned: Ok(quantity), as_cut: Some(Ok(quantity)) };
                self.measures.insert(*id, state);
            }
            let needs = self.read.get(id).into_iter().flat_map(|read| &read.needs);
            let left = needs.filter(|need| ids.contains(need)).count();
            waiting.insert(*id, if measured.contains(id) { 0 } else { left });
        }
        let mut ready: VecDeque<ItemId> =
            waiting.iter().filter(|(_, left)| **left == 0).map(|(id, _)| *id).collect();
        while let Some(id) = ready.pop_front() {
            if !measured.contains(&id) {
                self.work_out_one(id);
            }
            waiting.remove(&id);
            for next in needed_by.get(&id).into_iter().flatten().filter(|id| !measured.contains(id))
            {
                if let Some(left) = waiting.get_mut(next) {
                    *left = left.saturating_sub(1);
                    if *left == 0 {
                        ready.push_back(*next);
                    }
                }
            }
        }
        self.has_circle = !waiting.is_empty();
        self.refuse_circles(&set_of(waiting.into_keys()));
        for id in measured {
            self.work_out_one(id);
        }
        self.find_what_waits(ids);
    }

    fn work_out_one(&mut self, id: ItemId) {
        let (Some(item), Some(read)) = (self.items.get(&id).cloned(), self.read.get(&id).cloned())
        else {
            return;
        };
        match &*item {
            Item::Measure(measure) => {
                let planned = match (&measure.written, read.texts.first()) {
                    _ if self.names.get(&measure.name) != Some(id) => Err(MeasureProblem::SameName),
                    (Written::Linked(linked), _) => self.linked_value(measure.kind, linked),
                    (Written::Formula(_), Some(Ok(formula))) => {
                        let names = NamesOf(&read, &self.measures);
                        value_of(formula, measure.kind, self.unit, &names)
                            .map_err(MeasureProblem::Text)
                    }
                    (Written::Formula(_), Some(Err(problem))) => {
                        Err(MeasureProblem::Text(problem.clone()))
                    }
                    (Written::Formula(_), None) => return,
                };
                let state = MeasureState { planned, as_cut: self.as_cut(measure) };
                self.measures.insert(id, state);
            }
            Item::Kept(kept) => {
                if let Some(calculator) = calculators::find(&kept.slug) {
                    let sheet = calculator.sheet(&kept.as_entries(self.unit), &self.bench, self);
                    self.kept.insert(id, Arc::new(sheet));
                }
            }
            Item::Part(part) => {
                let sizes =
                    parts::sizes(id, part, &read.texts, self.unit, &NamesOf(&read, &self.measures));
                self.parts.insert(id, Arc::new(sizes));
            }
            _ => {}
        }
    }

    /// Tells the parts among `ids` which measures must be taken on the real thing before them.
    fn find_what_waits(&mut self, ids: &BTreeSet<ItemId>) {
        let to_measure: Vec<ItemId> = self.to_measure().collect();
        for measure in to_measure {
            for id in self.with_all_needing(core::iter::once(measure)) {
                if let Some(part) = self.parts.get_mut(&id).filter(|_| ids.contains(&id)) {
                    Arc::make_mut(part).waits_for.push(measure);
                }
            }
        }
    }

    fn as_cut(&self, measure: &Measure) -> Option<Result<Quantity, TextProblem>> {
        let text = measure.as_cut.as_ref()?;
        Some(parse(text, &NoNames).and_then(|f| value_of(&f, measure.kind, self.unit, &NoNames)))
    }

    /// Everything that needs a size which is still to be taken on the real thing, these sizes among it.
    #[must_use]
    pub fn all_that_waits(&self) -> BTreeSet<ItemId> {
        self.with_all_needing(self.to_measure())
    }

    fn to_measure(&self) -> impl Iterator<Item = ItemId> {
        let is = |item: &Item| matches!(item, Item::Measure(it) if it.is_to_measure());
        self.items.iter().filter(move |(_, item)| is(item)).map(|(id, _)| *id)
    }

    fn refuse_circles(&mut self, left: &BTreeSet<ItemId>) {
        if left.is_empty() {
            return;
        }
        let circles = Circles::among(left, |id| {
            self.needs(id).and_then(|needs| needs.iter().find(|need| left.contains(need)).copied())
        });
        for id in left {
            match self.items.get(id).cloned().as_deref() {
                Some(Item::Measure(measure)) => {
                    let names = circles.told_from(*id).into_iter();
                    let name = |id| self.items.get(&id).map_or("…", |item| item.name()).to_owned();
                    let planned = Err(MeasureProblem::Circle(names.map(name).collect()));
                    let state = MeasureState { planned, as_cut: self.as_cut(measure) };
                    self.measures.insert(*id, state);
                }
                // What it needs has no value, and that is what it says.
                Some(Item::Part(_)) => self.work_out_one(*id),
                _ => {}
            }
        }
    }

    /// What a measure comes to.
    #[must_use]
    pub fn measure(&self, id: ItemId) -> Option<&MeasureState> {
        self.measures.get(&id)
    }

    /// What a kept reckoning answers. `None` when its calculator is not known to this version.
    #[must_use]
    pub fn kept(&self, id: ItemId) -> Option<&Sheet> {
        self.kept.get(&id).map(|sheet| &**sheet)
    }

    /// A kept reckoning as it was worked out.
    pub(super) fn kept_item(&self, id: ItemId) -> Option<&Kept> {
        match self.items.get(&id).map(|item| &**item) {
            Some(Item::Kept(kept)) => Some(kept),
            _ => None,
        }
    }

    /// The sizes of a part.
    #[must_use]
    pub fn part(&self, id: ItemId) -> Option<&PartSizes> {
        self.parts.get(&id).map(|sizes| &**sizes)
    }

    /// The user's bench, as it was worked out with.
    #[must_use]
    pub fn bench(&self) -> &Bench {
        &self.bench
    }

    /// The measure with a name.
    #[must_use]
    pub fn named(&self, name: &str) -> Option<ItemId> {
        self.names.get(name)
    }

    /// The unit of bare numbers.
    #[must_use]
    pub fn unit(&self) -> Unit {
        self.unit
    }

    /// What an item needs directly: measures and kept reckonings.
    #[must_use]
    pub fn needs(&self, id: ItemId) -> Option<&BTreeSet<ItemId>> {
        self.read.get(&id).map(|read| &read.needs)
    }

    /// Works out a length written in this job: a size of a part, a board, a sketch.
    ///
    /// # Errors
    ///
    /// [`TextProblem`] at the part that cannot be read or worked out.
    pub fn length_of(&self, text: &str) -> Result<Length, TextProblem> {
        parse(text, self)?.length(self.unit, self)
    }

    /// A length that the tape says: a size of its own, without names.
    ///
    /// # Errors
    ///
    /// [`TextProblem`] at the part that cannot be read or worked out.
    pub fn on_tape(&self, text: &str) -> Result<Length, TextProblem> {
        parse(text, &NoNames)?.length(self.unit, &NoNames)
    }

    /// The measures that a text written in this job uses.
    #[must_use]
    pub fn used_in(&self, text: &str) -> BTreeSet<ItemId> {
        let names = parse(text, self).map(|f| f.names().into_iter().map(str::to_owned).collect());
        let names: Vec<String> = names.unwrap_or_default();
        set_of(names.iter().filter_map(|name| self.names.get(name)))
    }

    /// Everything that is needed, directly or through others, for a text.
    #[must_use]
    pub fn all_needed_for(&self, text: &str) -> BTreeSet<ItemId> {
        let mut all = self.used_in(text);
        let mut next: Vec<ItemId> = all.iter().copied().collect();
        while let Some(id) = next.pop() {
            for need in self.needs(id).into_iter().flatten() {
                if all.insert(*need) {
                    next.push(*need);
                }
            }
        }
        all
    }
}

fn value_of(
    formula: &Formula,
    kind: MeasureKind,
    unit: Unit,
    names: &dyn Names,
) -> Result<Quantity, TextProblem> {
    match kind {
        MeasureKind::Length => formula.length(unit, names).map(Quantity::Length),
        MeasureKind::Number => formula.number(unit, names).map(Quantity::Plain),
    }
}

impl Job {
    /// The changes that rename a measure everywhere: in the measure, in every formula and in
    /// every entry of a kept reckoning that uses it.
    #[must_use]
    pub fn renaming(&self, id: ItemId, name: &str, reckoned: &Reckoned) -> Vec<super::Change> {
        let Some(Item::Measure(_)) = self.item(id) else { return Vec::new() };
        let mut changes = Vec::new();
        for (other, item) in self.items() {
            let mut renamed = item.clone();
            renamed.each_text(&mut |text| *text = reckoned.with_name(text, id, name));
            if let (true, Item::Measure(measure)) = (other == id, &mut renamed) {
                name.clone_into(&mut measure.name);
            }
            if renamed != *item {
                changes.push(self.replacing(other, renamed));
            }
        }
        changes
    }
}

impl Reckoned {
    /// A text with the name of one measure written differently, wherever the grammar finds it.
    pub(super) fn with_name(&self, text: &str, id: ItemId, new: &str) -> String {
        let mut out = String::new();
        let mut rest = text;
        while let Some((at, length)) = self.first_place(rest, id) {
            let (before, from) = rest.split_at_checked(at).unwrap_or((rest, ""));
            out.push_str(before);
            out.push_str(new);
            rest = from.get(length..).unwrap_or("");
        }
        out.push_str(rest);
        out
    }

    /// Where the name of a measure stands first in a text, as the grammar finds it, and how long it
    /// is there.
    pub(super) fn first_place(&self, text: &str, id: ItemId) -> Option<(usize, usize)> {
        let mut at = 0;
        let mut before = ' ';
        while let Some(c) = text.get(at..).and_then(|rest| rest.chars().next()) {
            let rest = text.get(at..).unwrap_or("");
            let begins = !(before.is_alphanumeric() && c.is_alphanumeric());
            let length = if begins { self.names.longest_match(rest) } else { 0 };
            let piece = if length > 0 { rest.get(..length) } else { rest.get(..c.len_utf8()) };
            let piece = piece.unwrap_or("");
            if length > 0 && self.names.get(piece) == Some(id) {
                return Some((at, length));
            }
            before = piece.chars().next_back().unwrap_or(' ');
            at += piece.len().max(1);
        }
        None
    }
}
