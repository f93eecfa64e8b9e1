//! Job book: whatever is edited in whatever order, what is worked out step by step is what is
//! worked out from nothing; taking everything back gives the first state.

use proptest::prelude::*;
use reckoner_core::attention::attention;
use reckoner_core::job::demo::demo;
use reckoner_core::job::{
    Dimension, History, Item, ItemId, Job, Measure, MeasureKind, PartSizes, Piece, Reckoned, Step,
    Written,
};
use reckoner_core::sheet::Bench;

use crate::judged::{self, Judged};

/// What a thumb may do to an item of the demo job.
#[derive(Clone, Debug)]
enum Slip {
    /// Write another text in one of its fields.
    Text(String),
    /// Measure it, or take the measurement back.
    AsCut(Option<String>),
    /// Tick it, or say that it must wait.
    Tick(bool),
    /// Give it another name.
    Rename(String),
    /// Take it out.
    TakeOut,
    /// Put a new size beside it.
    Add(String, String),
}

fn text() -> impl Strategy<Value = String> {
    prop_oneof![
        Just("leg"),
        Just("long rail"),
        Just("2 × leg + 1/8"),
        Just("overall length - 2 × leg"),
        Just("overall depth / 2"),
        Just("frame inside - 1/4"),
        Just("37 7/8"),
        Just("0"),
        Just("- 3"),
        Just("no such name"),
        Just("ripped plank"),
        Just("1/0"),
        Just(""),
    ]
    .prop_map(str::to_owned)
}

fn slip() -> impl Strategy<Value = Slip> {
    prop_oneof![
        4 => text().prop_map(Slip::Text),
        3 => prop::option::of(text()).prop_map(Slip::AsCut),
        2 => any::<bool>().prop_map(Slip::Tick),
        1 => "[a-z]{1,6}|leg|🪑".prop_map(Slip::Rename),
        1 => Just(Slip::TakeOut),
        1 => ("new [a-z]{1,5}", text()).prop_map(|(name, text)| Slip::Add(name, text)),
    ]
}

/// The step that a slip comes to, in the job as a page shows it.
fn step(job: &Job, reckoned: &Reckoned, at: &prop::sample::Index, slip: &Slip) -> Step {
    let ids: Vec<ItemId> = job.items().map(|(id, _)| id).collect();
    let Some(id) = (!ids.is_empty()).then(|| ids[at.index(ids.len())]) else {
        return Step::new("nothing", Vec::new());
    };
    let mut item = job.item(id).expect("in the list").clone();
    match (slip, &mut item) {
        (Slip::TakeOut, _) => return Step::new("take out", vec![job.removing(id)]),
        (Slip::Add(name, text), _) => {
            let new = Measure {
                rank: 99,
                ..Measure::new(name.clone(), MeasureKind::Length, Written::Formula(text.clone()))
            };
            return Step::new("add", vec![job.adding(0, Item::Measure(new))]);
        }
        (Slip::Rename(name), Item::Measure(_)) => {
            return Step::new("rename", job.renaming(id, name, reckoned));
        }
        (Slip::Text(text), Item::Measure(it)) => it.written = Written::Formula(text.clone()),
        (Slip::Text(text), Item::Part(it)) => it.length.clone_from(text),
        (Slip::Text(text), Item::Kept(it)) => {
            if let Some((_, field)) = it.entries.last_mut() {
                field.clone_from(text);
            }
        }
        (Slip::Text(text), Item::Match(it)) => it.drift.clone_from(text),
        (Slip::AsCut(text), Item::Measure(it)) => it.as_cut.clone_from(text),
        (Slip::AsCut(as_cut), Item::Part(it)) => {
            let wanted = reckoned.part(id).map(PartSizes::all_wanted).unwrap_or_default();
            it.pieces.push(Piece::cut(wanted).measured(Dimension::Length, as_cut.clone()));
        }
        (Slip::Tick(yes), Item::Measure(it)) => (it.is_cut, it.wait) = (*yes, !*yes),
        (Slip::Tick(yes), Item::Part(it)) => {
            let wanted = reckoned.part(id).map(PartSizes::all_wanted).unwrap_or_default();
            it.pieces.push(if *yes { Piece::cut(wanted) } else { Piece::again(wanted) });
        }
        _ => {}
    }
    Step::new("change", vec![job.replacing(id, item)])
}

fn all_items(job: &Job) -> Vec<(ItemId, Item)> {
    job.items().map(|(id, item)| (id, item.clone())).collect()
}

/// Everything that a page shows of a job worked out.
fn shown(job: &Job, reckoned: &Reckoned) -> Vec<String> {
    let mut all: Vec<String> = job
        .items()
        .map(|(id, _)| {
            let answer = reckoned.kept(id).map(|sheet| {
                let headline = sheet.answer.as_ref().map(|answer| answer.headline.clone());
                (headline, sheet.refusals.clone())
            });
            format!("{id:?} {:?} {:?} {answer:?}", reckoned.measure(id), reckoned.part(id))
        })
        .collect();
    all.push(format!("{:?}", attention(job, reckoned, reckoned.bench())));
    all
}

#[test]
fn worked_out_step_by_step_is_worked_out_from_nothing() {
    let judged = Judged::default();
    let drawn = (prop::collection::vec((any::<prop::sample::Index>(), slip()), 1..9), 0_usize..9);
    judged::law(ProptestConfig::with_cases(64), &drawn, |(slips, undo)| {
        let bench = Bench::default();
        let mut job = demo();
        let first = all_items(&job);
        let mut history = History::default();
        let mut kept_up = Reckoned::of(&job, &bench);
        let mut before = shown(&job, &kept_up);
        for (at, slip) in &slips {
            let step = step(&job, &kept_up, at, slip);
            history.make(&mut job, step).expect("the latest state");
            kept_up = kept_up.after(&job, &bench);
            let now = shown(&job, &kept_up);
            prop_assert_eq!(&now, &shown(&job, &Reckoned::of(&job, &bench)));
            judged.note(if now == before { "moves nothing" } else { "moves something" }, 1);
            before = now;
        }
        let last = all_items(&job);
        for _ in 0..undo.min(history.made().count()) {
            prop_assert_eq!(history.undo(&mut job), Ok(true));
            kept_up = kept_up.after(&job, &bench);
            prop_assert_eq!(shown(&job, &kept_up), shown(&job, &Reckoned::of(&job, &bench)));
            judged.note("undone", 1);
        }
        while history.undo(&mut job).expect("no other page") {}
        prop_assert_eq!(all_items(&job), first);
        while history.redo(&mut job).expect("no other page") {}
        prop_assert_eq!(all_items(&job), last);
        Ok(())
    });
    judged.at_least(100, "moves something");
    judged.at_least(80, "undone");
}
