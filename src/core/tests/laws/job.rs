//! Job book: any order of edits gives the same values as working the sizes out by hand, undoing
//! everything gives the first state back, and a step that meets another edit changes nothing.

use proptest::prelude::*;
use reckoner_core::job::{
    Change, History, Item, ItemId, Job, Measure, MeasureKind, MeasureState, Reckoned, Step, Written,
};
use reckoner_core::measure::{Length, Number, Unit};
use reckoner_core::sheet::Bench;

/// A measure as the test knows it: so many of each earlier measure, and so many 64ths.
#[derive(Clone, Debug)]
struct Known {
    terms: Vec<(usize, i32)>,
    sixty_fourths: i32,
    as_cut: Option<i32>,
}

fn formula(known: &Known) -> String {
    let mut text = format!("{}/64", known.sixty_fourths);
    for (index, factor) in &known.terms {
        text.push_str(&format!(" + {factor} × part no {index}"));
    }
    text
}

fn measure(index: usize, known: &Known) -> Measure {
    Measure {
        rank: index as i64,
        as_cut: known.as_cut.map(|n| format!("{n}/64")),
        ..Measure::new(
            format!("part no {index}"),
            MeasureKind::Length,
            Written::Formula(formula(known)),
        )
    }
}

/// The same sums in plain integers, without the core.
fn by_hand(all: &[Known]) -> Vec<i128> {
    let mut values: Vec<i128> = Vec::new();
    for known in all {
        let planned = known.terms.iter().map(|(i, f)| values[*i] * i128::from(*f)).sum::<i128>()
            + i128::from(known.sixty_fourths);
        values.push(known.as_cut.map_or(planned, i128::from));
    }
    values
}

fn known(index: usize) -> impl Strategy<Value = Known> {
    let terms = if index == 0 {
        Just(Vec::new()).boxed()
    } else {
        prop::collection::vec((0..index, -2_i32..3), 0..3).boxed()
    };
    (terms, 0_i32..2000, prop::option::weighted(0.3, 1_i32..2000))
        .prop_map(|(terms, sixty_fourths, as_cut)| Known { terms, sixty_fourths, as_cut })
}

fn jobs() -> impl Strategy<Value = Vec<Known>> {
    (1_usize..9).prop_flat_map(|n| (0..n).map(known).collect::<Vec<_>>())
}

fn values(job: &Job, ids: &[ItemId]) -> Vec<Option<Length>> {
    let reckoned = Reckoned::of(job, &Bench::default());
    ids.iter().map(|id| reckoned.measure(*id).and_then(MeasureState::length)).collect()
}

fn put(job: &mut Job, history: &mut History, id: ItemId, item: Item) {
    let change = Change { id, before: job.item(id).cloned(), after: Some(item) };
    history.make(job, Step::new("edit", vec![change])).expect("the latest state");
}

proptest! {
    #[test]
    fn any_order_of_edits_gives_the_values_worked_out_by_hand(
        first in jobs(), edits in prop::collection::vec((any::<prop::sample::Index>(), 0_i32..2000, any::<bool>()), 0..12), seed in any::<u64>(),
    ) {
        let mut order: Vec<usize> = (0..first.len()).collect();
        // A cheap shuffle: the measures are added in any order, also before what they need.
        order.sort_by_key(|i| (seed.rotate_left(*i as u32 * 7)).wrapping_mul(0x9E37_79B9_7F4A_7C15));
        let mut job = Job::new("law", Unit::Inch);
        let mut history = History::default();
        let mut ids = vec![ItemId(0); first.len()];
        for i in order {
            ids[i] = job.next_id();
            put(&mut job, &mut history, ids[i], Item::Measure(measure(i, &first[i])));
        }
        let mut now = first.clone();
        let mut kept_up = Reckoned::of(&job, &Bench::default());
        for (which, size, cut) in edits {
            let i = which.index(now.len());
            if cut { now[i].as_cut = Some(size) } else { now[i].sixty_fourths = size }
            put(&mut job, &mut history, ids[i], Item::Measure(measure(i, &now[i])));
            kept_up = kept_up.after(&job, &Bench::default());
        }
        let from_nothing = Reckoned::of(&job, &Bench::default());
        for id in &ids {
            prop_assert_eq!(kept_up.measure(*id), from_nothing.measure(*id));
        }
        let expected: Vec<_> = by_hand(&now)
            .into_iter()
            .map(|n| Some(Length::inches(Number::ratio(n, 64).expect("small"))))
            .collect();
        prop_assert_eq!(values(&job, &ids), expected);
        while history.undo(&mut job).expect("no other page") {}
        prop_assert_eq!(job.items().count(), 0);
        while history.redo(&mut job).expect("no other page") {}
        let again: Vec<_> = by_hand(&now).into_iter().map(|n| Some(Length::inches(Number::ratio(n, 64).expect("small")))).collect();
        prop_assert_eq!(values(&job, &ids), again);
    }

    #[test]
    fn a_step_made_from_an_older_state_loses_neither_edit_or_says_which(
        first in jobs(), mine in any::<prop::sample::Index>(), theirs in any::<prop::sample::Index>(), a in 1_i32..500, b in 1_i32..500,
    ) {
        let mut stored = Job::new("law", Unit::Inch);
        let mut history = History::default();
        let ids: Vec<ItemId> = (0..first.len()).map(|i| ItemId(i as u64 + 1)).collect();
        for (i, known) in first.iter().enumerate() {
            put(&mut stored, &mut history, ids[i], Item::Measure(measure(i, known)));
        }
        let page = stored.clone();
        let edited = |job: &Job, i: usize, size: i32| {
            let known = Known { sixty_fourths: size + 5000, ..first[i].clone() };
            Step::new("edit", vec![job.replacing(ids[i], Item::Measure(measure(i, &known)))])
        };
        let (i, j) = (mine.index(first.len()), theirs.index(first.len()));
        stored.make(&edited(&page, j, b)).expect("the first edit");
        let before = stored.clone();
        match stored.make(&edited(&page, i, a)) {
            Ok(()) => {
                prop_assert_ne!(i, j);
                prop_assert!(values(&stored, &ids)[i].is_some() || first[i].as_cut.is_some());
                prop_assert_eq!(stored.item(ids[j]), before.item(ids[j]));
            }
            Err(conflict) => {
                prop_assert_eq!(i, j);
                prop_assert_eq!(&conflict.items[0].id, &ids[i]);
                prop_assert_eq!(stored, before);
            }
        }
    }
}
