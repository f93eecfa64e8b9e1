//! [`Reckoned`]: every measure and kept reckoning of a job worked out, in the order they need.

use core::fmt;
use std::collections::{BTreeMap, BTreeSet, VecDeque};

use super::names::NameIndex;
use super::{Item, ItemId, Job, Kept, Linked, Measure, MeasureKind, Written};
use crate::calculators;
use crate::measure::text::{Formula, Names, NoNames, Quantity, TextProblem, parse};
use crate::measure::{Length, Unit};
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

    /// The value in use as a length.
    #[must_use]
    pub fn length(&self) -> Option<Length> {
        match self.in_use() {
            Some(Quantity::Length(length)) => Some(length),
            _ => None,
        }
    }
}

/// A job worked out. Its names can be used in any formula.
#[derive(Clone, Debug)]
pub struct Reckoned {
    unit: Unit,
    names: NameIndex<ItemId>,
    measures: BTreeMap<ItemId, MeasureState>,
    kept: BTreeMap<ItemId, Sheet>,
    needs: BTreeMap<ItemId, BTreeSet<ItemId>>,
}

impl Names for Reckoned {
    fn longest_match(&self, text: &str) -> usize {
        self.names.longest_match(text)
    }

    fn value(&self, name: &str) -> Option<Quantity> {
        self.measures.get(&self.names.get(name)?)?.in_use()
    }
}

/// A measure or kept reckoning before it is worked out.
enum Node<'a> {
    Measure(&'a Measure, Result<Formula, TextProblem>),
    Linked(&'a Measure, &'a Linked),
    Kept(&'a Kept),
}

impl Reckoned {
    /// Works a job out with the sizes as cut.
    #[must_use]
    pub fn of(job: &Job, bench: &Bench) -> Reckoned {
        Reckoned::with(job, bench, true)
    }

    /// Works a job out as if nothing had been cut yet: the plan.
    #[must_use]
    pub fn as_planned(job: &Job, bench: &Bench) -> Reckoned {
        Reckoned::with(job, bench, false)
    }

    fn with(job: &Job, bench: &Bench, as_cut: bool) -> Reckoned {
        let measures = job.measures();
        let names = NameIndex::new(measures.iter().map(|(id, m)| (m.name.clone(), *id)));
        let mut reckoned = Reckoned {
            unit: job.unit,
            names,
            measures: BTreeMap::new(),
            kept: BTreeMap::new(),
            needs: BTreeMap::new(),
        };
        let mut nodes = BTreeMap::new();
        for (id, measure) in measures {
            let node = match &measure.written {
                Written::Formula(text) => Node::Measure(measure, parse(text, &reckoned)),
                Written::Linked(linked) => Node::Linked(measure, linked),
            };
            nodes.insert(id, node);
        }
        nodes.extend(job.kept().into_iter().map(|(id, kept)| (id, Node::Kept(kept))));
        for (id, node) in &nodes {
            let mut needs = reckoned.needs_of(node);
            needs.retain(|need| nodes.contains_key(need));
            reckoned.needs.insert(*id, needs);
        }
        reckoned.work_out(&nodes, bench, as_cut);
        reckoned
    }

    fn needs_of(&self, node: &Node) -> BTreeSet<ItemId> {
        match node {
            Node::Measure(_, Ok(formula)) => {
                formula.names().into_iter().filter_map(|name| self.names.get(name)).collect()
            }
            Node::Measure(_, Err(_)) => BTreeSet::new(),
            Node::Linked(_, linked) => BTreeSet::from([linked.kept]),
            Node::Kept(kept) => {
                kept.entries.iter().flat_map(|(_, text)| self.names_in(text)).collect()
            }
        }
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

    /// Works the nodes out, each after all that it needs. What is left over needs itself.
    ///
    /// A measure as cut needs nothing to be used by others, so taking one on the real part also
    /// opens a circle; what its formula wants is worked out last.
    fn work_out(&mut self, nodes: &BTreeMap<ItemId, Node>, bench: &Bench, as_cut: bool) {
        let mut needed_by: BTreeMap<ItemId, Vec<ItemId>> = BTreeMap::new();
        let mut waiting: BTreeMap<ItemId, usize> = BTreeMap::new();
        let mut measured = BTreeSet::new();
        for (id, needs) in &self.needs {
            if let Some(Node::Measure(measure, _) | Node::Linked(measure, _)) = nodes.get(id)
                && let Some(Ok(quantity)) = self.as_cut(measure, as_cut)
            {
                measured.insert(*id);
                let state = MeasureState { planned: Ok(quantity), as_cut: Some(Ok(quantity)) };
                self.measures.insert(*id, state);
            }
            waiting.insert(*id, if measured.contains(id) { 0 } else { needs.len() });
            for need in needs {
                needed_by.entry(*need).or_default().push(*id);
            }
        }
        let mut ready: VecDeque<ItemId> =
            waiting.iter().filter(|(_, left)| **left == 0).map(|(id, _)| *id).collect();
        while let Some(id) = ready.pop_front() {
            if let Some(node) = nodes.get(&id).filter(|_| !measured.contains(&id)) {
                self.work_out_one(id, node, nodes, bench, as_cut);
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
        self.refuse_circles(nodes, waiting.into_keys().collect(), as_cut);
        for id in measured {
            if let Some(node) = nodes.get(&id) {
                self.work_out_one(id, node, nodes, bench, as_cut);
            }
        }
    }

    fn work_out_one(
        &mut self,
        id: ItemId,
        node: &Node,
        nodes: &BTreeMap<ItemId, Node>,
        bench: &Bench,
        as_cut: bool,
    ) {
        let (measure, planned) = match node {
            Node::Measure(measure, formula) => {
                (*measure, self.formula_value(measure.kind, formula))
            }
            Node::Linked(measure, linked) => {
                let kept = match nodes.get(&linked.kept) {
                    Some(Node::Kept(kept)) => Some(*kept),
                    _ => None,
                };
                (*measure, self.linked_value(measure.kind, linked, kept, bench))
            }
            Node::Kept(kept) => {
                if let Some(calculator) = calculators::find(&kept.slug) {
                    let entries = kept.as_entries(self.unit);
                    let sheet = calculator.sheet(&entries, bench, self);
                    self.kept.insert(id, sheet);
                }
                return;
            }
        };
        let state = MeasureState { planned, as_cut: self.as_cut(measure, as_cut) };
        self.measures.insert(id, state);
    }

    fn as_cut(&self, measure: &Measure, wanted: bool) -> Option<Result<Quantity, TextProblem>> {
        let text = measure.as_cut.as_ref().filter(|_| wanted)?;
        Some(parse(text, &NoNames).and_then(|f| value_of(&f, measure.kind, self.unit, &NoNames)))
    }

    fn formula_value(
        &self,
        kind: MeasureKind,
        formula: &Result<Formula, TextProblem>,
    ) -> Result<Quantity, MeasureProblem> {
        formula
            .as_ref()
            .map_err(Clone::clone)
            .and_then(|formula| value_of(formula, kind, self.unit, self))
            .map_err(MeasureProblem::Text)
    }

    fn refuse_circles(
        &mut self,
        nodes: &BTreeMap<ItemId, Node>,
        left: BTreeSet<ItemId>,
        as_cut: bool,
    ) {
        for id in &left {
            let Some(Node::Measure(measure, _) | Node::Linked(measure, _)) = nodes.get(id) else {
                continue;
            };
            let circle = self.circle_from(*id, &left, nodes);
            let planned = Err(MeasureProblem::Circle(circle));
            let state = MeasureState { planned, as_cut: self.as_cut(measure, as_cut) };
            self.measures.insert(*id, state);
        }
    }

    /// Follows what is needed from `id` until something comes round again.
    fn circle_from(
        &self,
        id: ItemId,
        left: &BTreeSet<ItemId>,
        nodes: &BTreeMap<ItemId, Node>,
    ) -> Vec<String> {
        let mut path = vec![id];
        let mut at = id;
        while let Some(next) =
            self.needs.get(&at).and_then(|needs| needs.iter().find(|need| left.contains(need)))
        {
            if let Some(start) = path.iter().position(|seen| seen == next) {
                path.push(*next);
                path.drain(..start);
                break;
            }
            path.push(*next);
            at = *next;
        }
        path.into_iter()
            .map(|id| match nodes.get(&id) {
                Some(Node::Measure(measure, _) | Node::Linked(measure, _)) => measure.name.clone(),
                Some(Node::Kept(kept)) => kept.title.clone(),
                None => String::new(),
            })
            .collect()
    }

    /// What a measure comes to.
    #[must_use]
    pub fn measure(&self, id: ItemId) -> Option<&MeasureState> {
        self.measures.get(&id)
    }

    /// What a kept reckoning answers. `None` when its calculator is not known to this version.
    #[must_use]
    pub fn kept(&self, id: ItemId) -> Option<&Sheet> {
        self.kept.get(&id)
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
        self.needs.get(&id)
    }

    /// Works out a length written in this job: a size of a part, a board, a sketch.
    ///
    /// # Errors
    ///
    /// [`TextProblem`] at the part that cannot be read or worked out.
    pub fn length_of(&self, text: &str) -> Result<Length, TextProblem> {
        parse(text, self)?.length(self.unit, self)
    }

    /// The measures that a text written in this job uses.
    #[must_use]
    pub fn used_in(&self, text: &str) -> BTreeSet<ItemId> {
        let names = parse(text, self).map(|f| f.names().into_iter().map(str::to_owned).collect());
        let names: Vec<String> = names.unwrap_or_default();
        names.iter().filter_map(|name| self.names.get(name)).collect()
    }

    /// Everything that is needed, directly or through others, for a text.
    #[must_use]
    pub fn all_needed_for(&self, text: &str) -> BTreeSet<ItemId> {
        let mut all = self.used_in(text);
        let mut next: Vec<ItemId> = all.iter().copied().collect();
        while let Some(id) = next.pop() {
            for need in self.needs.get(&id).into_iter().flatten() {
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
        let Some(Item::Measure(measure)) = self.item(id) else { return Vec::new() };
        let old = &measure.name;
        let mut changes = Vec::new();
        for (other, item) in self.items() {
            let mut renamed = item.clone();
            renamed.each_text(&mut |text| *text = reckoned.with_name(text, old, name));
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
    /// A text with one name written differently, wherever the grammar finds that name.
    fn with_name(&self, text: &str, old: &str, new: &str) -> String {
        let mut out = String::new();
        let mut at = 0;
        let mut before = ' ';
        while let Some(c) = text.get(at..).and_then(|rest| rest.chars().next()) {
            let rest = text.get(at..).unwrap_or("");
            let begins = !(before.is_alphanumeric() && c.is_alphanumeric());
            let length = if begins { self.names.longest_match(rest) } else { 0 };
            let piece = if length > 0 { rest.get(..length) } else { rest.get(..c.len_utf8()) };
            let piece = piece.unwrap_or("");
            out.push_str(if length > 0 && piece == old { new } else { piece });
            before = piece.chars().next_back().unwrap_or(' ');
            at += piece.len().max(1);
        }
        out
    }
}
