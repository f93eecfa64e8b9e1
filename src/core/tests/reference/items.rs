//! What jobs of worked examples are made of, each from as few words as it takes.

use reckoner_core::job::{
    Item, ItemId, Job, Kept, Linked, Measure, MeasureKind, MeasureState, Reckoned, Step, Written,
};
use reckoner_core::measure::{Length, Unit, length};
use reckoner_core::sheet::Bench;

pub(crate) fn inches(text: &str) -> Length {
    length(text).expect("a length in a test")
}

fn size(name: &str, written: Written) -> Item {
    Item::Measure(Measure::new(name, MeasureKind::Length, written))
}

pub(crate) fn planned(name: &str, formula: &str) -> Item {
    size(name, Written::Formula(formula.to_owned()))
}

/// A size that is the result of the reckoning with this id.
pub(crate) fn result(name: &str, kept: u64, result: &str) -> Item {
    let linked = Linked { kept: ItemId(kept), result: result.to_owned(), index: 0 };
    size(name, Written::Linked(linked))
}

/// A reckoning that is kept under a title.
pub(crate) fn kept(title: &str, slug: &str, entries: &[(&str, &str)]) -> Item {
    let entries = entries.iter().map(|(id, text)| ((*id).to_owned(), (*text).to_owned()));
    let (title, slug) = (title.to_owned(), slug.to_owned());
    Item::Kept(Kept { rank: 0, title, slug, entries: entries.collect(), left: Vec::new() })
}

/// A job of these items; their ids count from 1.
pub(crate) fn job(items: Vec<Item>) -> Job {
    let mut job = Job::new("worked example", Unit::Inch);
    let changes = (0..).zip(items).map(|(offset, item)| job.adding(offset, item)).collect();
    job.make(&Step::new("begin", changes)).expect("a fresh job");
    job
}

/// The size of this name, as it is now.
pub(crate) fn value(job: &Job, name: &str) -> Length {
    let reckoned = Reckoned::of(job, &Bench::default());
    let state = reckoned.named(name).and_then(|id| reckoned.measure(id));
    state.and_then(MeasureState::length).unwrap_or_else(|| panic!("{name} has no length"))
}
