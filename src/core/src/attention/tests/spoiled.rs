//! A spoiled piece, and what is left of it.

use super::super::{length_left, most_left, spoiling};
use super::*;
use crate::measure::Length;
use crate::planning::wanted::{OPTIONS, from_job_book, options, start_entries};
use crate::sheet::{Ask, Entries, Field, Kind, Least, Start};

/// Two rails of 2x4, wanted 37 long and both cut, the first of them 37 1/8 on the tape; a board of the yard is 96 long.
fn two_rails(stock: &str) -> (Job, ItemId) {
    let mut job = job_of(&[]);
    let wanted = ["1 1/2", "3 1/2", "37"];
    let cut = || {
        let [thickness, width, length] = wanted.map(inches).map(Some);
        Piece::cut(Dimensions { thickness, width, length })
    };
    let rails = Part { stock: stock.to_owned(), ..Part::new("rail", "2", wanted) }
        .with_piece(0, cut().measured(Dimension::Length, Some("37 1/8".to_owned())))
        .with_piece(1, cut());
    let adding = vec![
        job.adding(0, Item::Part(rails)),
        job.adding(1, Item::YardBoard(YardBoard::new("2x4", ["1 1/2", "3 1/2", "96"], 500))),
    ];
    let id = adding[0].id;
    job.make(&Step::new("add", adding)).expect("fresh");
    (job, id)
}

/// How many pieces are planned.
fn planned(job: &Job) -> u32 {
    let bench = Bench::default();
    let reckoned = Reckoned::of(job, &bench);
    let entries = start_entries(job);
    let options = options(&mut Ask::new(OPTIONS.fields, &entries, &bench, &reckoned));
    let wanted = from_job_book(job, &reckoned, &bench, &options.expect("ours can be read"));
    wanted.map_or(0, |it| it.pieces.iter().sum())
}

fn board(length: &str) -> RackBoard {
    RackBoard {
        name: "was for rail".to_owned(),
        section: "2x4".to_owned(),
        thickness: "1 1/2 in".to_owned(),
        width: "3 1/2 in".to_owned(),
        length: length.to_owned(),
        quantity: 1,
        sawn_ends: true,
        ..RackBoard::default()
    }
}

/// By hand: of the rail that is 37 1/8 the saw left 22 1/2, so a board of 1 1/2 × 3 1/2 × 22 1/2 is on the rack, and one rail of
/// two is planned again. One step does it, and one takes it back.
#[test]
fn what_is_left_of_a_spoiled_piece_is_as_long_as_was_said() {
    let bench = Bench::default();
    let (mut job, id) = two_rails("2x4");
    let before = job.clone();
    let reckoned = Reckoned::of(&job, &bench);
    assert_eq!(planned(&job), 0);
    let step = spoiling(&job, &reckoned, (id, 0), inches("22 1/2")).expect("less than the rail");
    job.make(&step).expect("fresh");
    let rack = job.items().filter_map(|(_, item)| match item {
        Item::RackBoard(board) => Some(board.clone()),
        _ => None,
    });
    assert_eq!(rack.collect::<Vec<_>>(), [board("22 1/2 in")]);
    let Some(Item::Part(rails)) = job.item(id) else { panic!("a part") };
    let [thickness, width, length] = ["1 1/2", "3 1/2", "37 1/8"].map(inches).map(Some);
    assert_eq!(rails.piece(0), Piece::again(Dimensions { thickness, width, length }));
    assert!(rails.piece(1).is_cut());
    assert_eq!(planned(&job), 1);
    job.make(&step.turned_round()).expect("no conflict");
    assert!(job.items().eq(before.items()));
}

/// All of the 37 1/8 may be left, and no more; of a piece that is not cut, or whose section nobody wrote, nothing goes on the rack.
#[test]
fn no_more_is_left_than_the_piece_was() {
    let bench = Bench::default();
    let (job, id) = two_rails("2x4");
    let reckoned = Reckoned::of(&job, &bench);
    let can = |left: Length| spoiling(&job, &reckoned, (id, 0), left).is_some();
    assert!(can(inches("37 1/8")) && !can(inches("37 3/16")) && !can(Length::ZERO));
    assert_eq!(most_left(&job, &reckoned, id, 0), Some(inches("37 1/8")));
    assert_eq!(most_left(&job, &reckoned, id, 1), Some(inches("37")));
    assert_eq!(most_left(&job, &reckoned, id, 2), None);
    let (job, id) = two_rails(" ");
    assert_eq!(most_left(&job, &Reckoned::of(&job, &bench), id, 0), None);
    // One that is to be cut again has been on the rack already.
    let (mut job, id) = two_rails("2x4");
    job.make(&spoiling(&job, &reckoned, (id, 0), inches("10")).expect("less")).expect("fresh");
    assert_eq!(most_left(&job, &Reckoned::of(&job, &bench), id, 0), None);
}

#[test]
fn what_cannot_be_left_is_refused_with_a_way_out() {
    const FIELD: &Field =
        &Field::new("left", "Left of it", "", Kind::Length(Least::AboveZero), Start::Text(""));
    let bench = Bench::default();
    let read = |text: &str| {
        let entries = Entries::from_pairs([("left", text)]);
        let mut ask = Ask::new(&[], &entries, &bench, &crate::measure::text::NoNames);
        let left = length_left(&mut ask, FIELD, inches("37 1/8"));
        let refused = ask.finish().1.into_iter().map(|it| {
            let way = it.way_out.map_or_else(String::new, |way| way.sentence.on(bench.tape));
            (it.code, it.sentence.on(bench.tape), way)
        });
        (left, refused.collect::<Vec<_>>())
    };
    let told =
        |code, words: &str, way: &str| (None, vec![(code, words.to_owned(), way.to_owned())]);
    assert_eq!(read("22 1/2"), (Some(inches("22 1/2")), vec![]));
    assert_eq!(read("37 1/8"), (Some(inches("37 1/8")), vec![]));
    let too_long = "The piece was 37 1/8 in long, so no more is left of it.";
    assert_eq!(read("38"), told("longer-than-piece", too_long, "Use 37 1/8 in or less."));
    let way = "Where nothing of it can be used, only cut another.";
    assert_eq!(read(" "), told("empty", "Write how long it is.", way));
    assert_eq!(read("0").1[0].0, "too-small");
}
