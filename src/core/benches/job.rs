//! How long a job of the largest size takes: 2,000 measures in a chain and a fan, 1,000 parts.

use std::hint::black_box;
use std::time::Instant;

use reckoner_core::attention::attention;
use reckoner_core::build_order::build_order;
use reckoner_core::job::bars::Bars;
use reckoner_core::job::moved::{moved, moved_parts};
use reckoner_core::job::{
    Conflict, Item, ItemId, Job, Measure, MeasureKind, Part, Reckoned, Step, Written, part_sizes,
};
use reckoner_core::measure::Unit;
use reckoner_core::sheet::Bench;
use reckoner_core::to_buy::to_buy;

fn measure(rank: i64, name: String, formula: String) -> Item {
    Item::Measure(Measure {
        rank,
        wait: rank == 3,
        ..Measure::new(name, MeasureKind::Length, Written::Formula(formula))
    })
}

fn part(rank: i64) -> Item {
    let rail = format!("rail {}", 1_000 + rank);
    Item::Part(Part {
        rank,
        stock: "2x6".to_owned(),
        may_rip: true,
        ..Part::new(&format!("part {rank}"), "4", ["leg", "3 1/4", &rail])
    })
}

/// A chain of 1,000 sizes that begins at the leg, and a fan of 1,000 rails between two legs.
fn large() -> Result<Job, Conflict> {
    let mut job = Job::new("large", Unit::Inch);
    let sizes = (0..2_000).map(|n: i64| match n {
        0 => measure(n, "leg".to_owned(), "3 1/4".to_owned()),
        1 => measure(n, "size 1".to_owned(), "leg + 1/16".to_owned()),
        2..1_000 => measure(n, format!("size {n}"), format!("size {} + 1/16", n - 1)),
        _ => measure(n, format!("rail {n}"), format!("size {} + 40 - 3 × leg", (n - 1_000).max(1))),
    });
    let all = sizes.chain((0..1_000).map(part));
    let changes = (0..).zip(all).map(|(offset, item)| job.adding(offset, item)).collect();
    job.make(&Step::new("fill", changes))?;
    Ok(job)
}

fn time<T>(what: &str, mut work: impl FnMut() -> T) -> T {
    let last = black_box(work());
    let begin = Instant::now();
    for _ in 0..20 {
        black_box(work());
    }
    println!("{what:44} {:>9.2} ms", begin.elapsed().as_secs_f64() * 1_000.0 / 20.0);
    last
}

fn main() -> Result<(), Conflict> {
    let bench = Bench::default();
    let job = large()?;
    let before = time("worked out from nothing", || Reckoned::of(&job, &bench));
    let leg = ItemId(1);
    let mut changed = job.clone();
    let edit = Step::new(
        "edit",
        vec![job.replacing(leg, measure(0, "leg".to_owned(), "3 3/16".to_owned()))],
    );
    changed.make(&edit)?;
    time("a step made", || {
        let mut job = job.clone();
        job.make(&edit).map(|()| job)
    })?;
    let after = time("worked out after a change of all", || before.after(&changed, &bench));
    let mut little = job.clone();
    let last = job.measures()[1_999].0;
    let note = measure(1_999, "rail 1999".to_owned(), "40".to_owned());
    little.make(&Step::new("edit", vec![job.replacing(last, note)]))?;
    time("worked out after a change of one size", || before.after(&little, &bench));
    let list = time("what moved", || moved(&changed, &before, &after));
    assert_eq!(list.len(), 2_000);
    time("parts that moved", || moved_parts(&changed, &before, &after));
    time("parts", || part_sizes(&changed, &after));
    time("parts as bars", || Bars::of(&changed, &after));
    let found = time("what wants looking at", || attention(&changed, &after, &bench));
    time("everything to buy", || to_buy(&changed, &after, &bench));
    time("the build order", || build_order(&changed, &after, &bench, &found));
    Ok(())
}
