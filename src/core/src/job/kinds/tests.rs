//! Kinds of pieces, with sizes worked by hand.

use super::*;
use crate::job::sketch::views;
use crate::job::{Kept, part_sizes};
use crate::measure::length;
use crate::sheet::Bench;

fn worked(job: &Job) -> Reckoned {
    Reckoned::of(job, &Bench::default())
}

fn of(id: &str) -> Job {
    job_of(kind(id).expect("a kind"), Unit::Inch)
}

fn size(job: &Job, name: &str) -> Length {
    worked(job).length_of(name).expect("a size")
}

fn inches(text: &str) -> Length {
    length(text).expect("a length")
}

fn named(job: &Job, name: &str) -> (ItemId, Measure) {
    let all = job.measures();
    let (id, it) = all.into_iter().find(|(_, it)| it.name == name).expect("a size");
    (id, it.clone())
}

fn written(job: &mut Job, name: &str, text: &str) {
    let (id, it) = named(job, name);
    let new = Measure { written: Written::Formula(text.to_owned()), is_ours: false, ..it };
    let step = Step::new("", vec![job.replacing(id, Item::Measure(new))]);
    job.make(&step).expect("a size is written");
}

/// Whatever the kind and the unit: every size is known, every part has its sizes, the sketch is drawn, and a gap
/// between planks is none that planks would need to overlap for.
#[test]
fn every_kind_is_whole_from_the_start() {
    for kind in &KINDS {
        for unit in [Unit::Inch, Unit::Millimetre] {
            let job = job_of(kind, unit);
            let reckoned = worked(&job);
            for (id, measure) in job.measures() {
                let value = reckoned.measure(id).and_then(|it| it.in_use());
                assert!(value.is_some(), "{} {}", kind.id, measure.name);
            }
            for part in part_sizes(&job, &reckoned) {
                let sizes = part.all_wanted();
                let all = [sizes.thickness, sizes.width, sizes.length];
                assert!(all.iter().all(|it| it.is_some_and(Length::is_positive)), "{part:?}");
                assert!(part.quantity.is_ok() && part.waits_for.is_empty(), "{part:?}");
            }
            let gap = reckoned.length_of("gap").expect("a gap");
            assert!(gap.is_positive() && gap < inches("1"), "{} {gap}", kind.id);
            assert!(
                views(&job, &reckoned, &std::collections::BTreeSet::new(), Bench::default().tape)
                    .is_some()
            );
            // What is published is kept to from the start.
            assert_eq!(checks(&job, &reckoned), [], "{}", kind.id);
        }
    }
}

/// By hand. A bench 60 long with legs of 3 1/2 has rails of 60 - 7 = 53 between them; its seat is 18 high and 1 1/2
/// thick, so its legs are 16 1/2; five slats of 3 1/2 in a seat 20 deep leave 20 - 17 1/2 = 2 1/2 for four gaps.
#[test]
fn the_sizes_of_a_bench_are_linked() {
    let mut job = of("bench");
    written(&mut job, "length", "60");
    assert_eq!(size(&job, "long rail"), inches("53"));
    assert_eq!(size(&job, "leg length"), inches("16 1/2"));
    assert_eq!(size(&job, "gap"), inches("5/8"));
    written(&mut job, "leg", "3");
    assert_eq!(size(&job, "long rail"), inches("54"));
    assert_eq!(size(&job, "short rail"), inches("14"));
}

/// 2010 ADA Standards 903.5: a seat is 17 to 19 inches high.
#[test]
fn a_low_seat_is_told() {
    let mut job = of("bench");
    written(&mut job, "height", "16 1/2");
    let told = checks(&job, &worked(&job));
    let words: Vec<String> = told.iter().map(|it| it.sentence.to_string()).collect();
    assert_eq!(words, ["seat height 16 1/2 in; published benches are 17 in to 19 in"]);
    // Forest Service: 27 inches for knees. A table 30 high with a top of 1 and rails of 3 1/2 has 25 1/2.
    let mut table = of("table");
    written(&mut table, "height", "30");
    let words: Vec<String> =
        checks(&table, &worked(&table)).iter().map(|it| it.sentence.to_string()).collect();
    assert_eq!(words, ["height for knees 25 1/2 in; published tables are 27 in or more"]);
    // Forest Service: 19 inches front to back.
    let mut narrow = of("table");
    written(&mut narrow, "top depth", "18");
    let words: Vec<String> =
        checks(&narrow, &worked(&narrow)).iter().map(|it| it.sentence.to_string()).collect();
    assert_eq!(words, ["depth for knees 18 in; published tables are 19 in or more"]);
}

#[test]
fn every_published_size_is_one_of_some_kind() {
    for usual in &crate::tables::furniture::USUAL {
        let is_used = KINDS.iter().any(|kind| {
            let job = job_of(kind, Unit::Inch);
            job.measures().iter().any(|(_, measure)| measure.usual == usual.id)
        });
        assert!(is_used, "{}", usual.id);
    }
}

#[test]
fn a_size_is_in_pencil_until_it_is_written_or_confirmed() {
    let mut job = of("bench");
    let first = ours(&job, &worked(&job)).len();
    let line = ours_line(&job, &worked(&job)).expect("a line");
    assert_eq!(
        line,
        "Not your sizes yet: length, top depth and 8 more. 4 prices at the yard are our example"
    );
    written(&mut job, "length", "60");
    assert_eq!(ours(&job, &worked(&job)).len(), first - 1);
    for id in ours(&job, &worked(&job)) {
        let item = job.item(id).and_then(Item::confirmed).expect("ours");
        assert_eq!(item.confirmed(), None);
        let step = Step::new("", vec![job.replacing(id, item)]);
        job.make(&step).expect("it is confirmed");
    }
    let reckoned = worked(&job);
    assert_eq!((ours(&job, &reckoned), ours_line(&job, &reckoned)), (Vec::new(), None));
    assert_eq!(examples_left(&job, &reckoned), 0);
}

/// The way through them goes on from a size that is typed by now, and comes to what was passed over in the end.
#[test]
fn what_is_ours_is_gone_through_in_its_order() {
    let mut job = of("bench");
    let all = ours(&job, &worked(&job));
    let next = |job: &Job, id| next_ours(job, &worked(job), id);
    let size = |id: ItemId| job.item(id).map_or("", Item::name).to_owned();
    let (second, third) = (size(all[1]), all[2]);
    assert_eq!(next(&job, all[1]), Some(third));
    written(&mut job, &second, "21");
    assert_eq!(next(&job, all[1]), Some(third));
    assert_eq!(next(&job, all[all.len() - 1]), Some(all[0]));
    assert_eq!(next(&Job::new("none", Unit::Inch), all[0]), None);
}

fn keep(job: &mut Job, title: &str, entries: &[(&str, &str)]) -> ItemId {
    let entries = entries.iter().map(|(id, text)| ((*id).to_owned(), (*text).to_owned())).collect();
    let (title, slug) = (title.to_owned(), "crosscut".to_owned());
    let change =
        job.adding(0, Item::Kept(Kept { rank: 0, title, slug, entries, left: Vec::new() }));
    let id = change.id;
    job.make(&Step::new("", vec![change])).expect("it is kept");
    id
}

/// A board of 96 and pieces of 17 are the person's: what is left of ours in that reckoning is counted and named, after the
/// sizes and before the prices, and gone through where it stands.
#[test]
fn a_reckoning_is_ours_until_the_last_of_its_examples_is_the_persons() {
    let mut job = of("bench");
    let before = ours(&job, &worked(&job));
    let left = examples_left(&job, &worked(&job));
    assert_eq!(left, before.len(), "one of each size and each price");
    let rails = keep(&mut job, "rails", &[("board", "96"), ("part", "17")]);
    let fields = |job: &Job, id| -> Vec<&'static str> {
        let reckoned = worked(job);
        let assumed = &reckoned.kept(id).expect("known").assumed;
        assumed.fields().map(|field| field.id).collect()
    };
    let own = fields(&job, rails);
    assert!(own.len() > 1 && !own.contains(&"part"), "{own:?}");
    let reckoned = worked(&job);
    assert_eq!(examples_left(&job, &reckoned), left + own.len());
    let said = format!(
        "Not your sizes yet: length, top depth and 8 more. {} examples in rails. 4 prices at the yard are our example",
        own.len()
    );
    assert_eq!(ours_line(&job, &reckoned), Some(said));
    // Ten sizes, then the reckoning, then the boards.
    assert_eq!(ours(&job, &reckoned)[10], rails);
    assert_eq!(next_ours(&job, &reckoned, before[9]), Some(rails));
    assert_eq!(next_ours(&job, &reckoned, rails), Some(before[10]));
    let Some(Item::Kept(kept)) = job.item(rails).cloned() else { panic!("kept") };
    let calculator = crate::calculators::find("crosscut").expect("known");
    let bench = Bench::default();
    let texts = calculator.fields.iter().filter(|field| own.contains(&field.id));
    let texts = texts.map(|field| (field.id.to_owned(), field.start_text(&bench, Unit::Inch)));
    let entries = kept.entries.iter().cloned().chain(texts).collect();
    let step = Step::new("", vec![job.replacing(rails, Item::Kept(Kept { entries, ..kept }))]);
    job.make(&step).expect("all of it is confirmed");
    assert_eq!(ours(&job, &worked(&job)), before);
    assert_eq!(next_ours(&job, &worked(&job), before[9]), Some(before[10]));
}

/// Reckonings alone, without a size or a price of ours.
#[test]
fn examples_of_several_reckonings_are_one_number() {
    let mut job = Job::new("", Unit::Inch);
    let names = ["first", "second", "third", "fourth"];
    for name in names {
        keep(&mut job, name, &[]);
    }
    let count = examples_left(&job, &worked(&job));
    let said = format!("{count} examples in first, second and 2 more");
    assert_eq!(ours_line(&job, &worked(&job)), Some(said));
}
