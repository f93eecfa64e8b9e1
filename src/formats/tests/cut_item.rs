//! A cut plan kept in a job goes into the file and comes back; a damaged one is set aside by itself.

use reckoner_core::cutting::{Backing, CutBoard, Layout, Placed, Plan, Source, Ties};
use reckoner_core::job::{BoardState, CutPlan, CutTicks, Item, ItemId, Job, Step};
use reckoner_core::measure::Unit;
use reckoner_core::measure::text::NoNames;
use reckoner_core::planning::quick_list::{QUICK_LIST, quick_list};
use reckoner_core::sheet::{Ask, Bench, Entries};
use reckoner_formats::{open_job, write_job, write_job_file};
use serde_json::{Value, json};

/// A plan of a quick list: two pieces from a board, one from a scrap. All numbers are invented.
fn plan(boards: &str) -> CutPlan {
    let entries = [("parts", "rail: 2 @ 30 1/4, peg: 1 @ 7"), ("boards", boards), ("scraps", "10")];
    let (texts, bench) = (Entries::from_pairs(entries), Bench::default());
    let mut ask = Ask::new(QUICK_LIST.fields, &texts, &bench, &NoNames);
    let wanted = quick_list(&mut ask).expect("a list");
    let place = |part: usize, at: i64| Placed { part, at, turned: false };
    let unit = |numer, denom| wanted.labels.unit.units(numer, denom).expect("whole");
    let (trim, kerf, rail) = (unit(1, 2), unit(1, 8), unit(121, 4));
    let board = Layout::Crosscut(vec![place(0, trim), place(0, trim + rail + kerf)]);
    let scrap = Layout::Crosscut(vec![place(1, 0)]);
    let cost_cents = wanted.job.boards[0].price_cents;
    CutPlan {
        title: "Rails".to_owned(),
        is_list: true,
        entries: entries.map(|(id, text)| (id.to_owned(), text.to_owned())).to_vec(),
        pieces: wanted.pieces,
        bound_cents: cost_cents,
        backing: None,
        paid_cents: 1_485,
        plan: Plan {
            boards: vec![
                CutBoard { source: Source::Board(0), layout: board },
                CutBoard { source: Source::Scrap(0), layout: scrap },
            ],
            left_out: vec![],
            cost_cents,
        },
        asked: wanted.job,
        labels: wanted.labels,
    }
}

fn job(plan: CutPlan) -> Job {
    let mut job = Job::new("rails", Unit::Inch);
    // As it stands after another one, with what that one paid.
    let kept = job.adding(0, Item::CutPlan(Box::new(plan)));
    job.make(&Step::new("keep", vec![kept])).expect("a fresh job");
    let ticks = CutTicks {
        plan: ItemId(1),
        boards: vec![
            BoardState::Bought(Some(ItemId(7))),
            BoardState::Different { good: vec![(1, 1)], left: vec!["3 1/2".to_owned()] },
        ],
    };
    let change = job.adding(0, Item::CutTicks(ticks));
    job.make(&Step::new("tick", vec![change])).expect("fresh");
    job
}

#[test]
fn a_plan_and_its_ticks_come_back_as_they_were() {
    for boards in ["96 at 10.90", "96, 120"] {
        let job = job(plan(boards));
        for text in [write_job(&job), write_job_file(&job)] {
            let opened = open_job(&text).expect("a job");
            assert_eq!(opened.set_aside, []);
            assert_eq!(opened.job, job);
        }
    }
}

/// What was proved of a plan comes back as it was; in a file of before it stands nowhere, and nothing is claimed then.
#[test]
fn what_was_proved_of_a_plan_comes_back_as_it_was() {
    let ties = Ties { fewest_boards: true, fewest_cuts: true, ..Ties::default() };
    let all = [
        None,
        Some(Backing::default()),
        Some(Backing { is_proved: true, is_checked: true, ties: Some(ties), in_place_of: None }),
        Some(Backing { ties: Some(Ties::default()), ..Backing::default() }),
        Some(Backing { in_place_of: Some(1_090), ..Backing::default() }),
    ];
    for backing in all {
        let job = job(CutPlan { backing, ..plan("96 at 10.90") });
        let text = write_job(&job);
        assert_eq!(text.contains("backing"), backing.is_some());
        assert_eq!(open_job(&text).expect("a job").job, job);
    }
    // Called proved, with a bound below the cost.
    let bold = Backing { is_proved: true, ..Backing::default() };
    let job = job(CutPlan { backing: Some(bold), bound_cents: 1_089, ..plan("96 at 10.90") });
    assert_eq!(open_job(&write_job(&job)).expect("a job").set_aside.len(), 1);
}

#[test]
fn a_damaged_plan_is_set_aside_and_the_rest_opens() {
    let whole: Value = serde_json::from_str(&write_job(&job(plan("96 at 10.90")))).expect("json");
    let damage: [(&str, Value, &str); 11] = [
        ("/items/0/per_inch", json!(0), "unit"),
        ("/items/0/bound_cents", json!(999_999), "bound"),
        ("/items/0/paid_cents", json!(-1), "paid"),
        // Taken in place of one that costs less than any can.
        ("/items/0/backing", json!({"in_place_of": 1_089}), "more is said"),
        ("/items/0/backing", json!({"proved": 1}), "proved"),
        ("/items/0/parts", json!([]), "name"),
        ("/items/0/pieces", json!([1]), "missing"),
        ("/items/0/cut/plan/boards/0/crosscut/1/at", json!(5), "does not keep"),
        ("/items/0/cut/plan/boards/0/crosscut/1/part", json!(9), "not there"),
        ("/items/0/cut/job/parts/0/length", json!(-1), "cannot be planned"),
        ("/items/0/wood_for_a_cent", json!("wide"), ""),
    ];
    for (place, value, why) in damage {
        let mut file = whole.clone();
        match file.pointer_mut(place) {
            Some(there) => *there = value,
            None => {
                file["items"][0][place.trim_start_matches("/items/0/")] = value;
            }
        }
        let opened = open_job(&file.to_string()).expect("a job");
        assert_eq!(opened.set_aside.len(), 1, "{place}");
        assert!(opened.set_aside[0].why.contains(why), "{place}: {}", opened.set_aside[0].why);
        assert!(opened.job.items().count() == 1 && opened.job.find_cut_plan(true).is_none());
    }
}
