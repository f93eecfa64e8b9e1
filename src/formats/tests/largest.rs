//! The largest job that the limits allow opens, goes out and comes in again; a step beyond is
//! refused before it is kept, with a way out.

use reckoner_core::job::{
    Dimension, Dimensions, History, Item, ItemId, Job, MOST_MEASURES, MOST_NAME, MOST_NOTE,
    MOST_OTHERS, MOST_PARTS, MOST_PIECES, MOST_PIECES_OF_JOB, Measure, MeasureKind, Part, Piece,
    Round, Step, Written,
};
use reckoner_core::measure::{Length, Unit};
use reckoner_formats::{
    MAX_FILE, MAX_HISTORY, NotKept, check_job, open_job, pack, read_history, unpack, write_history,
    write_job, write_job_file,
};

fn size(number: usize, note: &str) -> Item {
    let formula = Written::Formula("47 1/2 - 2 × size no 0".to_owned());
    Item::Measure(Measure {
        rank: number as i64,
        as_cut: Some("3 3/16".to_owned()),
        is_cut: true,
        wait: true,
        note: note.to_owned(),
        ..Measure::new(format!("size no {number}"), MeasureKind::Length, formula)
    })
}

fn part(number: usize, pieces: usize) -> Item {
    let inches = |n| Length::of_inch(n, 16).ok();
    let sizes = Dimensions { thickness: inches(12), width: inches(40), length: inches(544) };
    let piece = Piece::cut(sizes).measured(Dimension::Length, Some("33 15/16".to_owned()));
    Item::Part(Part {
        rank: number as i64,
        name: format!("slat no {number}"),
        quantity: pieces.to_string(),
        length: "34".to_owned(),
        pieces: vec![piece; pieces],
        ..Part::default()
    })
}

fn job(items: impl Iterator<Item = Item>) -> Job {
    let mut job = Job::new("largest", Unit::Inch);
    let changes = (0..).zip(items).map(|(at, item)| job.adding(at, item)).collect();
    job.make(&Step::new("fill", changes)).expect("within the limits");
    job
}

fn goes_out_and_comes_in_again(job: &Job) {
    let all: Vec<ItemId> = job.items().map(|(id, _)| id).collect();
    assert_eq!(check_job(job, &all), Ok(()));
    for text in [write_job(job), write_job_file(job)] {
        assert!(text.len() <= MAX_FILE, "{}", text.len());
        let opened = open_job(&text).expect("opens");
        assert_eq!(opened.set_aside, []);
        assert!(opened.job == *job);
    }
    let unpacked = unpack(&pack(&write_job(job))).expect("unpacks");
    assert!(open_job(&unpacked).expect("opens").job == *job);
}

#[test]
fn two_hundred_parts_of_a_thousand_pieces() {
    goes_out_and_comes_in_again(&job((0..200).map(|n| part(n, MOST_PIECES as usize))));
}

#[test]
fn the_most_sizes_parts_and_other_things_at_once() {
    let round = |n: usize| Item::Round(Round { name: format!("can {n}"), diameter: "6".into() });
    let sizes = (0..MOST_MEASURES).map(|n| size(n, "measured twice, by the door"));
    let parts = (0..MOST_PARTS).map(|n| part(n, MOST_PIECES_OF_JOB / MOST_PARTS));
    goes_out_and_comes_in_again(&job(sizes.chain(parts).chain((0..MOST_OTHERS).map(round))));
}

#[test]
fn one_piece_more_than_a_job_holds_is_refused_and_fewer_are_not() {
    let mut full = job((0..200).map(|n| part(n, 1_000)).chain([part(200, 0)]));
    let more = Step::new("tick", vec![full.replacing(ItemId(201), part(200, 1))]);
    let words = full.make(&more).expect_err("full").to_string();
    assert_eq!(
        words,
        "A job holds up to 200000 pieces ticked off. Take one out, or begin another job."
    );
    let fewer = Step::new("untick", vec![full.replacing(ItemId(1), part(0, 999))]);
    full.make(&fewer).expect("room again");
    full.make(&more).expect("there is room now");
    let long = Step::new("tick", vec![full.replacing(ItemId(201), part(200, 1_001))]);
    let words = full.make(&long).expect_err("too many of one").to_string();
    assert!(words.starts_with("A job holds up to 1000 pieces of one kind."), "{words}");
}

/// 2,000 notes of 5,000 letters are 10 MB: no single one is too long, and together they are.
#[test]
fn a_step_that_makes_the_text_too_large_is_refused_in_words() {
    let note = "n".repeat(MOST_NOTE);
    let mut all = job((0..MOST_MEASURES).map(|n| size(n, "")));
    let first: Vec<ItemId> = all.items().map(|(id, _)| id).take(1_400).collect();
    let notes = first.iter().enumerate().map(|(n, id)| all.replacing(*id, size(n, &note)));
    all.make(&Step::new("notes", notes.collect())).expect("its own state");
    goes_out_and_comes_in_again(&all);
    let rest = (1_400..MOST_MEASURES).map(|n| all.replacing(ItemId(n as u64 + 1), size(n, &note)));
    let step = Step::new("notes", rest.collect());
    all.make(&step).expect("its own state");
    let problem = check_job(&all, &[]).expect_err("too large");
    assert_eq!(problem, NotKept::TooLarge);
    assert_eq!(
        problem.to_string(),
        "Not kept: a job holds up to 8 MB. Shorten notes, take out what is done, or begin another job."
    );
    assert!(open_job(&write_job(&all)).is_err(), "the check is right");
}

#[test]
fn an_item_that_would_be_set_aside_is_refused_in_words() {
    let long = Item::Round(Round { name: "c".repeat(MOST_NAME + 1), diameter: "6".into() });
    let one = job([long].into_iter());
    let problem = check_job(&one, &[ItemId(1)]).expect_err("too long");
    let words = problem.to_string();
    assert!(
        words.ends_with(": a text in it is longer than 500 characters. Change that first."),
        "{words}"
    );
    assert_eq!(open_job(&write_job(&one)).expect("the rest").set_aside.len(), 1);
}

/// Steps of the largest parts: the newest stay, the oldest are let go, and it opens again.
#[test]
fn a_history_lets_its_oldest_steps_go_where_they_find_no_room() {
    let mut all = job((0..3).map(|n| part(n, 999)));
    let mut history = History::default();
    for n in 0..190 {
        let Some(Item::Part(mut changed)) = all.item(ItemId(1)).cloned() else { panic!() };
        changed.note = format!("note no {n}");
        for piece in &mut changed.pieces {
            let long = "33 15/16 and some more to be long".to_owned();
            *piece = piece.clone().measured(Dimension::Length, Some(long));
        }
        let step =
            Step::new(format!("note {n}"), vec![all.replacing(ItemId(1), Item::Part(changed))]);
        history.make(&mut all, step).expect("its own state");
    }
    for _ in 0..10 {
        history.undo(&mut all).expect("nobody else is here");
    }
    let text = write_history(&history);
    assert!(text.len() <= MAX_HISTORY && text.len() > MAX_HISTORY / 10 * 9, "{}", text.len());
    let read = read_history(&text);
    let count = read.made().count();
    assert!((50..180).contains(&count), "{count}");
    assert!(read.made().rev().eq(history.made().rev().take(count)));
    assert!(read.undone().eq(history.undone()));
    assert_eq!(read_history(&" ".repeat(MAX_HISTORY + 1)), History::default());
}
