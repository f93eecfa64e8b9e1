//! Parts made from a kept reckoning of a frame, a top or a dowel.
//!
//! A size that the reckoning knows becomes a measure linked to it, and the part uses the name of
//! that measure: no number is copied, so the part moves with the reckoning. Made again, the parts
//! are found by where they came from and brought up to date; what the user wrote in them stays.
//!
//! A dowel is measured where it is thickest, and is bought by the size that its rod is called by. So its part is
//! cut from that rod, of the job or of what is sold, and takes its thickness and width from there.

mod behind;
mod plans;
#[cfg(test)]
mod tests;

pub(super) use behind::left_with;
pub use behind::{Behind, behind, leaving, without};

use std::collections::BTreeSet;

use super::sections;
use super::{
    Change, Grain, Hand, Item, ItemId, Job, Kept, Linked, MOST_NAME, Made, Measure, MeasureKind,
    Part, Reckoned, Step, Written,
};
use plans::{HowMany, Plan, Taken, of_dowel, of_frame, of_top};

use crate::calculators::{self, Calculator};
use crate::measure::Length;
use crate::order::set_of;
use crate::sheet::{Ask, Bench};

/// What making would do with a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Does {
    /// It is not in the job yet.
    Adds,
    /// It is in the job and some of its sizes come from elsewhere now.
    Changes,
    /// It is in the job as it would be.
    Nothing,
}

/// A part as it would be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MadePart {
    /// The part.
    pub part: Part,
    /// Where it stands in the job; `None` for one that is not in it yet.
    pub id: Option<ItemId>,
    /// What making does with it.
    pub does: Does,
    /// The texts that making changes and that came of this reckoning, as they would be: what stood in them comes from
    /// elsewhere now. What the user wrote himself is not among them.
    pub elsewhere: Vec<String>,
}

impl MadePart {
    /// The sizes that nobody has written yet.
    #[must_use]
    pub fn still_to_write(&self) -> Vec<&'static str> {
        let Part { thickness, width, length, .. } = &self.part;
        let sides = [("thickness", thickness), ("width", width), ("length", length)];
        sides.into_iter().filter(|(_, text)| text.trim().is_empty()).map(|(name, _)| name).collect()
    }
}

/// What "make parts of it" comes to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Making {
    /// The parts, in the order of the reckoning.
    pub parts: Vec<MadePart>,
    /// Names of the linked measures that come with them.
    pub measures: Vec<String>,
    /// Parts made before that the reckoning does not have any more; they stay.
    pub left: Vec<ItemId>,
    /// The step that does it; `None` when all is in the job already.
    pub step: Option<Step>,
}

/// The parts of a kept reckoning, and the step that puts them into the job. `None` when its
/// question has no parts, or when it has no answer.
#[must_use]
pub fn make_parts(job: &Job, reckoned: &Reckoned, bench: &Bench, id: ItemId) -> Option<Making> {
    let Some(Item::Kept(kept)) = job.item(id) else { return None };
    let calculator = calculators::find(&kept.slug)?;
    reckoned.kept(id)?.answer.as_ref()?;
    let entries = kept.as_entries(job.unit);
    let mut ask = Ask::new(calculator.fields, &entries, bench, reckoned);
    let plans = match kept.slug.as_str() {
        "frame" => of_frame(&mut ask),
        "top" => of_top(&mut ask),
        "dowel" => of_dowel(&mut ask),
        _ => Vec::new(),
    };
    if plans.is_empty() {
        return None;
    }
    let mut maker = Maker::new(job, reckoned, id, kept, calculator);
    let parts = plans.iter().map(|plan| maker.part(plan)).collect();
    let left = job.parts().into_iter().filter(|(_, part)| {
        let here = part.made.as_ref().filter(|made| made.kept == id);
        here.is_some_and(|made| plans.iter().all(|plan| plan.what != made.what))
    });
    let left = left.map(|(id, _)| id).collect();
    let step = (!maker.changes.is_empty())
        .then(|| Step::new(format!("make pieces of {}", kept.title), maker.changes));
    Some(Making { parts, measures: maker.measures, left, step })
}

/// How many there are without the outer two.
const WITHOUT_OUTER: &str = " - 2";

/// Collects the changes, so that each measure is added once.
struct Maker<'a> {
    job: &'a Job,
    reckoned: &'a Reckoned,
    id: ItemId,
    kept: &'a Kept,
    calculator: &'static Calculator,
    names: BTreeSet<String>,
    linked: Vec<(Linked, MeasureKind, String)>,
    measures: Vec<String>,
    changes: Vec<Change>,
    rank: i64,
}

impl<'a> Maker<'a> {
    fn new(
        job: &'a Job,
        reckoned: &'a Reckoned,
        id: ItemId,
        kept: &'a Kept,
        calculator: &'static Calculator,
    ) -> Self {
        let measures = job.measures();
        let linked = measures.iter().filter_map(|(_, measure)| match &measure.written {
            Written::Linked(linked) => Some((linked.clone(), measure.kind, measure.name.clone())),
            Written::Formula(_) => None,
        });
        let ranks = job.items().filter_map(|(_, item)| match item {
            Item::Measure(measure) => Some(measure.rank),
            Item::Part(part) => Some(part.rank),
            _ => None,
        });
        Maker {
            job,
            reckoned,
            id,
            kept,
            calculator,
            names: set_of(measures.iter().map(|(_, measure)| measure.name.clone())),
            linked: linked.collect(),
            measures: Vec::new(),
            changes: Vec::new(),
            rank: ranks.max().unwrap_or(0),
        }
    }

    fn add(&mut self, item: Item) {
        let offset = self.changes.iter().filter(|change| change.before.is_none()).count();
        self.changes.push(self.job.adding(offset.try_into().unwrap_or(u64::MAX), item));
    }

    /// The name of the measure that is linked there already.
    fn linked_as(&self, Taken(result, index): Taken, kind: MeasureKind) -> Option<&str> {
        let is_it = |it: &Linked| (it.kept, &*it.result, it.index) == (self.id, result, index);
        let mut all = self.linked.iter();
        all.find(|(other, of, _)| is_it(other) && *of == kind).map(|(.., name)| &**name)
    }

    /// The name of the measure that is linked there; it is added when there is none.
    fn link(&mut self, Taken(result, index): Taken, kind: MeasureKind) -> String {
        if let Some(name) = self.linked_as(Taken(result, index), kind) {
            return name.to_owned();
        }
        let linked = Linked { kept: self.id, result: result.to_owned(), index };
        let name = self.free_name(&self.label(result, index, kind));
        self.rank = self.rank.saturating_add(1);
        self.add(Item::Measure(Measure {
            rank: self.rank,
            ..Measure::new(name.clone(), kind, Written::Linked(linked.clone()))
        }));
        self.names.insert(name.clone());
        self.measures.push(name.clone());
        self.linked.push((linked, kind, name.clone()));
        name
    }

    fn label(&self, id: &str, index: u32, kind: MeasureKind) -> String {
        let result = self.calculator.results.iter().find(|it| it.id == id).map(|it| it.label);
        let field = self.calculator.fields.iter().find(|it| it.id == id).map(|it| it.label);
        let label = result.or(field).unwrap_or(id).to_lowercase();
        match (kind, index) {
            (MeasureKind::Number, _) if id == "planks" => "number of planks".to_owned(),
            (_, 0) => label,
            (_, index) => format!("{label} {}", index.saturating_add(1)),
        }
    }

    fn free_name(&self, label: &str) -> String {
        let wanted = linked_name(&self.kept.title, label);
        let numbered = (2_u32..).map(|n| format!("{wanted} {n}"));
        let mut names = core::iter::once(wanted.clone()).chain(numbered);
        names.find(|name| !self.names.contains(name)).unwrap_or_default()
    }

    fn part(&mut self, plan: &Plan) -> MadePart {
        let made = Made { kept: self.id, what: plan.what.clone() };
        let parts = self.job.parts();
        let old = parts.into_iter().find(|(_, part)| part.made.as_ref() == Some(&made));
        let old = old.map(|(id, part)| (id, part.clone()));
        let mut part = match &old {
            Some((_, part)) => part.clone(),
            None => self.fresh(plan, made),
        };
        match plan.quantity {
            HowMany::Text(_) => {}
            HowMany::Of(from) => part.quantity = self.link(from, MeasureKind::Number),
            HowMany::WithoutOuter(from) => {
                part.quantity = self.link(from, MeasureKind::Number) + WITHOUT_OUTER;
            }
        }
        // A round one takes its sides from its rod.
        let is_square =
            plan.round.is_none_or(|across| self.cut_from_a_rod(across, plan, &mut part));
        let side = |from: Option<Taken>| from.filter(|_| is_square);
        let sides = [
            (side(plan.thickness), &mut part.thickness),
            (side(plan.width), &mut part.width),
            (plan.length, &mut part.length),
        ];
        for (from, text) in sides {
            if let Some(from) = from {
                *text = self.link(from, MeasureKind::Length);
            }
        }
        let id = old.as_ref().map(|(id, _)| *id);
        let elsewhere = old.as_ref().map_or_else(Vec::new, |(_, old)| self.elsewhere(old, &part));
        let does = match old {
            None => {
                self.add(Item::Part(part.clone()));
                Does::Adds
            }
            Some((_, old)) if old == part => Does::Nothing,
            Some((id, _)) => {
                self.changes.push(self.job.replacing(id, Item::Part(part.clone())));
                Does::Changes
            }
        };
        MadePart { part, id, does, elsewhere }
    }

    /// The texts of a part made before that came of this reckoning and are others now, as they are now.
    fn elsewhere(&self, old: &Part, new: &Part) -> Vec<String> {
        let is_linked = |text: &str| {
            let text = text.strip_suffix(WITHOUT_OUTER).unwrap_or(text);
            self.linked.iter().any(|(it, _, name)| it.kept == self.id && name == text)
        };
        let sizes = [
            (&old.quantity, &new.quantity),
            (&old.thickness, &new.thickness),
            (&old.width, &new.width),
            (&old.length, &new.length),
        ];
        let moved = sizes.into_iter().filter(|(old, new)| old != new && is_linked(old));
        let rod = (old.stock != new.stock && sections::is_a_rod(&old.stock)).then_some(&new.stock);
        moved.map(|(_, new)| new).chain(rod).cloned().collect()
    }

    /// Has a round part cut from the rod of its size, and whether it takes its sides from the reckoning, since there is
    /// none. Where the user wrote what else it is cut from, all of it stays his.
    fn cut_from_a_rod(&self, across: Length, plan: &Plan, part: &mut Part) -> bool {
        if !part.stock.trim().is_empty() && !sections::is_a_rod(&part.stock) {
            return false;
        }
        let Some(rod) = sections::rod(self.job, self.reckoned, across) else {
            part.stock.clear();
            return true;
        };
        for (text, from) in [(&mut part.thickness, plan.thickness), (&mut part.width, plan.width)] {
            let linked = from.and_then(|from| self.linked_as(from, MeasureKind::Length));
            if linked == Some(text.as_str()) {
                text.clear();
            }
        }
        let all = sections::sections(self.job);
        (part.thickness, part.width) =
            sections::filled(&all, &rod, &part.stock, &part.thickness, &part.width);
        part.stock = rod.name;
        false
    }

    fn fresh(&mut self, plan: &Plan, made: Made) -> Part {
        self.rank = self.rank.saturating_add(1);
        let quantity = match plan.quantity {
            HowMany::Text(text) => text.to_owned(),
            HowMany::Of(_) | HowMany::WithoutOuter(_) => String::new(),
        };
        Part {
            rank: self.rank,
            name: short(&format!("{}: {}", self.kept.title, plan.what), MOST_NAME),
            quantity,
            thickness: String::new(),
            width: String::new(),
            length: String::new(),
            stock: String::new(),
            grain: Grain::Locked,
            show_face: String::new(),
            hand: Hand::Alike,
            may_rip: false,
            may_resaw: false,
            note: String::new(),
            pieces: Vec::new(),
            made: Some(made),
        }
    }
}

/// The name of a measure that is linked to a result: the title and what it is.
///
/// A comma would end an item of a list field, so none is taken over from the title.
#[must_use]
pub fn linked_name(title: &str, label: &str) -> String {
    let (title, label) = (one_item(title), one_item(label));
    // Room is left for a number behind it.
    let most = MOST_NAME.saturating_sub(label.chars().count()).saturating_sub(16);
    format!("{}: {label}", short(&title, most))
}

fn one_item(text: &str) -> String {
    let text = text.replace([',', ';', '@'], " ");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn short(text: &str, most: usize) -> String {
    text.chars().take(most).collect()
}
