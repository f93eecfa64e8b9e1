//! Build order: whatever the job, each piece is cut in one step, nothing is cut by a size that is
//! measured later, no two steps wait for each other, and the same job has the same order.

use std::collections::BTreeMap;

use proptest::prelude::*;
use proptest::test_runner::TestCaseResult;
use reckoner_core::attention::attention;
use reckoner_core::build_order::{BuildOrder, BuildStep, Stage, Wait, build_order};
use reckoner_core::job::make_parts::make_parts;
use reckoner_core::job::{
    Dimension, Dimensions, Item, ItemId, Job, Kept, Measure, MeasureKind, Part, Piece, Reckoned,
    Step, Written,
};
use reckoner_core::measure::Unit;
use reckoner_core::sheet::{Bench, Caution};

use crate::judged::{self, Judged};

/// Sizes, of which any may be one that is measured first; the second and third need the first.
const SIZES: [(&str, &str); 4] =
    [("inside", "40"), ("shelf", "inside - 1/4"), ("slat", "shelf / 2"), ("leg", "3 1/4")];
const TEXTS: [&str; 6] = ["inside", "shelf", "slat", "leg", "20 1/2", "gone"];
const KEPT: [(&str, &str, &str); 5] = [
    ("frame", "overall", "inside + 2 × leg"),
    ("dowel", "overall", "shelf"),
    ("curve", "radius", "leg"),
    ("top", "top_width", "slat"),
    ("finish", "parts", "4 @ leg × leg × inside"),
];

#[derive(Clone, Debug)]
struct Made {
    waits: Vec<bool>,
    taken: Vec<bool>,
    parts: Vec<(usize, usize, u32, bool, Vec<u8>)>,
    kept: Vec<bool>,
    /// Whether what is kept puts its parts into the job.
    puts: bool,
}

fn made() -> impl Strategy<Value = Made> {
    let part = (
        0..TEXTS.len(),
        0..TEXTS.len(),
        1_u32..5,
        any::<bool>(),
        prop::collection::vec(0_u8..4, 0..5),
    );
    let flags = |n: usize| prop::collection::vec(any::<bool>(), n);
    (flags(4), flags(4), prop::collection::vec(part, 0..6), flags(5), any::<bool>())
        .prop_map(|(waits, taken, parts, kept, puts)| Made { waits, taken, parts, kept, puts })
}

fn job(made: &Made) -> Job {
    let mut job = Job::new("bench (invented)", Unit::Inch);
    let mut add = |item: Item| {
        let step = Step::new("add", vec![job.adding(0, item)]);
        job.make(&step).expect("fresh");
    };
    for ((name, text), (wait, taken)) in SIZES.iter().zip(made.waits.iter().zip(&made.taken)) {
        let written = Written::Formula((*text).to_owned());
        let as_cut = (*wait && *taken).then(|| "39 7/8".to_owned());
        let measure = Measure::new(*name, MeasureKind::Length, written);
        add(Item::Measure(Measure { wait: *wait, as_cut, ..measure }));
    }
    for (number, (width, length, count, may_rip, pieces)) in made.parts.iter().enumerate() {
        let size = ["1", TEXTS[*width], TEXTS[*length]];
        let part = Part::new(&format!("part {number}"), &count.to_string(), size);
        let piece = |kind: &u8| match kind {
            0 => Piece::default(),
            1 => Piece::cut(Dimensions::default()),
            2 => Piece::again(Dimensions::default()),
            _ => {
                Piece::cut(Dimensions::default()).measured(Dimension::Length, Some("19".to_owned()))
            }
        };
        let pieces = pieces.iter().map(piece).collect();
        add(Item::Part(Part { may_rip: *may_rip, pieces, ..part }));
    }
    for ((slug, field, text), is_there) in KEPT.iter().zip(&made.kept) {
        if *is_there {
            let entries = vec![((*field).to_owned(), (*text).to_owned())];
            let (title, slug) = ((*slug).to_owned(), (*slug).to_owned());
            add(Item::Kept(Kept { rank: 0, title, slug, entries, left: Vec::new() }));
        }
    }
    let kept: Vec<ItemId> = job.kept().into_iter().map(|(id, _)| id).collect();
    for id in kept.into_iter().filter(|_| made.puts) {
        let bench = Bench::default();
        let making = make_parts(&job, &Reckoned::of(&job, &bench), &bench, id);
        if let Some(step) = making.and_then(|making| making.step) {
            job.make(&step).expect("its own state");
        }
    }
    job
}

fn order(job: &Job) -> (BuildOrder, Reckoned) {
    let bench = Bench::default();
    let reckoned = Reckoned::of(job, &bench);
    let found = attention(job, &reckoned, &bench);
    (build_order(job, &reckoned, &bench, &found), reckoned)
}

fn check(made: &Made, judged: &Judged) -> TestCaseResult {
    let job = job(made);
    let (found, reckoned) = order(&job);
    prop_assert_eq!(&order(&job).0, &found, "the same job, another order");
    // Each piece is in one final cut, and in no other.
    let mut cut: BTreeMap<(ItemId, usize), u32> = BTreeMap::new();
    for step in found.steps.iter().filter(|step| step.stage.is_final_cut()) {
        for it in &step.pieces {
            for index in &it.pieces {
                *cut.entry((it.part, *index)).or_default() += 1;
            }
        }
    }
    let mut wanted = BTreeMap::new();
    for (id, _) in job.parts() {
        let count = reckoned.part(id).and_then(|it| it.quantity.clone().ok()).unwrap_or(0);
        wanted.extend((0..count as usize).map(|index| ((id, index), 1)));
    }
    judged.note("cut", cut.len());
    prop_assert_eq!(cut, wanted);

    for (place, step) in found.steps.iter().enumerate() {
        // What a later gate measures is used by no step before it, and shown by none.
        for (part, _) in step.to_cut() {
            for size in &reckoned.part(part).expect("a part").waits_for {
                let gate = found
                    .steps
                    .iter()
                    .position(|it| it.stage == Stage::DryFit && it.about == Some(*size));
                prop_assert!(gate.is_some_and(|gate| gate < place), "{step:?}");
                judged.note("behind a gate", 1);
                prop_assert!(
                    step.setting.is_none() && step.waits_for.contains(&Wait::Measure(*size))
                );
            }
        }
        prop_assert!(step.waits_for.is_empty() || !step.is_done, "done, and waits: {:?}", step);
        // Beside its tick stands every danger to fingers and no lesser one; without such a danger the first that it has.
        let told = step.worst_cautions();
        let (worst, lesser): (Vec<Caution>, Vec<Caution>) =
            step.cautions.iter().partition(|it| it.can_take_fingers());
        let wanted = if worst.is_empty() { &lesser[..lesser.len().min(1)] } else { &worst[..] };
        prop_assert_eq!(told, wanted, "{:?}", step);
    }
    // A step stands after all that it waits for, and after one of a later stage only for that.
    let gate = |size: &ItemId| {
        let is_gate = |step: &BuildStep| step.stage == Stage::DryFit && step.about == Some(*size);
        found.steps.iter().position(|step| is_gate(step) && !step.is_done)
    };
    let waits: Vec<Vec<usize>> = found
        .steps
        .iter()
        .map(|step| {
            step.waits_for
                .iter()
                .filter_map(|wait| match wait {
                    Wait::Step(at) => Some(*at),
                    Wait::Measure(size) => gate(size),
                    _ => None,
                })
                .collect()
        })
        .collect();
    for (place, (step, before)) in found.steps.iter().zip(&waits).enumerate() {
        prop_assert!(before.iter().all(|at| *at < place), "{place} waits for {before:?}");
        judged.note("waits", before.len());
        let passed = found.steps[..place].iter().position(|it| it.stage > step.stage);
        if let Some(passed) = passed {
            prop_assert!(before.iter().any(|at| *at >= passed), "{place} is late for nothing");
            judged.note("late", 1);
        }
    }
    let next = found.steps.iter().position(|it| !it.is_done && it.waits_for.is_empty());
    prop_assert_eq!(found.next(), next);
    Ok(())
}

#[test]
fn every_piece_is_cut_once_and_nothing_before_it_is_measured() {
    let judged = Judged::default();
    judged::law(ProptestConfig::with_cases(300), &made(), |it| check(&it, &judged));
    judged.at_least(1500, "cut");
    judged.at_least(400, "behind a gate");
    judged.at_least(1200, "waits");
    judged.at_least(30, "late");
}
