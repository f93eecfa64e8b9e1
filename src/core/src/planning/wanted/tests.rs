//! Each way a job book can fail to make a cutting job, and what it makes when it does.

use super::*;
use crate::cutting::{CutProblem, Ends, KnotZone};
use crate::job::{Dimensions, Part, Piece, RackBoard, Step, YardBoard};
use crate::measure::{Length, Unit, length};
use crate::sheet::Caution;

fn inches(text: &str) -> Length {
    length(text).expect("a length")
}

fn standard() -> Options {
    let entries = crate::sheet::Entries::default();
    let bench = Bench::default();
    let mut ask =
        crate::sheet::Ask::new(OPTIONS.fields, &entries, &bench, &crate::measure::text::NoNames);
    options(&mut ask).expect("the form starts with values that can be read")
}

fn part(name: &str, quantity: &str, size: [&str; 3], stock: &str) -> Part {
    let stock = stock.to_owned();
    Part { stock, may_rip: true, may_resaw: true, ..Part::new(name, quantity, size) }
}

fn yard(section: &str, thickness: &str, width: &str, length: &str, price: u64) -> Item {
    Item::YardBoard(YardBoard::new(section, [thickness, width, length], price))
}

fn rack(name: &str, section: &str, length: &str, knots: &str) -> RackBoard {
    RackBoard {
        name: name.to_owned(),
        section: section.to_owned(),
        thickness: "1 1/2".to_owned(),
        width: "5 1/2".to_owned(),
        length: length.to_owned(),
        quantity: 1,
        wet: false,
        sawn_ends: false,
        knots: knots.to_owned(),
    }
}

fn ask_for(items: Vec<Item>, options: &Options) -> Result<Wanted, Vec<WantedProblem>> {
    let mut job = Job::new("test", Unit::Inch);
    let changes = (0..).zip(items).map(|(offset, item)| job.adding(offset, item)).collect();
    job.make(&Step::new("begin", changes)).expect("a fresh job");
    let bench = Bench::default();
    from_job_book(&job, &Reckoned::of(&job, &bench), &bench, options)
}

/// Code, name of the item and whether there is a way out, of every problem.
fn problems(items: Vec<Item>) -> Vec<(&'static str, String)> {
    let problems = ask_for(items, &standard()).expect_err("a problem");
    let all = problems.iter().map(|problem| {
        assert!(!problem.way_out().to_string().is_empty());
        (problem.code(), problem.sentence().to_string())
    });
    all.collect()
}

fn rail(size: [&str; 3], stock: &str) -> Item {
    Item::Part(part("rail", "2", size, stock))
}

#[test]
fn each_obstacle_names_the_part_or_the_board() {
    let two_by_six = || yard("2x6", "1 1/2", "5 1/2", "96", 820);
    let own = ["1 1/2", "5 1/2", "30"];
    let cases: [(Vec<Item>, &str, &str); 15] = [
        (vec![two_by_six()], "no-parts", "There is no piece to cut."),
        (vec![rail(own, "2x8"), two_by_six()], "no-board", "rail is cut from 2x8"),
        (vec![rail(["1", "4", "30"], ""), two_by_six()], "no-board-of-size", "1 in by 4 in"),
        (vec![rail(["1 1/2", "flat", "30"], "2x6"), two_by_six()], "size", "rail: the width"),
        (vec![rail(["1 1/2", "5 1/2", "0"], "2x6"), two_by_six()], "not-positive", "the length"),
        (
            vec![rail(own, "2x6"), yard("2x6", "1 1/2", "5 1/2", "96", 0)],
            "no-price",
            "2x6 at the yard",
        ),
        (vec![rail(own, "2x6"), yard("2x6", "1 1/2", "wide", "96", 1)], "size", "2x6: the width"),
        (vec![rail(["2", "5 1/2", "30"], "2x6"), two_by_six()], "cannot-be-had", "large enough"),
        (
            vec![rail(["1 1/2", "3/16", "30"], "2x6"), two_by_six()],
            "cannot-be-had",
            "limit for a strip",
        ),
        (
            vec![rail(["1 1/2", "5 3/8", "30"], "2x6"), two_by_six()],
            "cannot-be-had",
            "Cleaning it up",
        ),
        (
            vec![rail(["1", "7", "30"], "2x8"), yard("2x8", "1 1/2", "7 1/4", "96", 1)],
            "cannot-be-had",
            "6 1/4 in deep at most",
        ),
        (
            vec![
                Item::Part(Part {
                    may_rip: false,
                    ..part("rail", "1", ["1 1/2", "2", "9"], "2x6")
                }),
                two_by_six(),
            ],
            "cannot-be-had",
            "It would have to be ripped, and the piece may not be",
        ),
        (
            vec![
                Item::Part(Part {
                    may_resaw: false,
                    ..part("rail", "1", ["1", "5 1/2", "9"], "2x6")
                }),
                two_by_six(),
            ],
            "cannot-be-had",
            "It would have to be resawn, and the piece may not be",
        ),
        (
            vec![rail(["1 1/2", "5 1/2", "1/999999937 in"], "2x6"), two_by_six()],
            "too-fine",
            "rail: 1/999999937 in",
        ),
        (
            vec![rail(own, "2x6"), Item::RackBoard(rack("end", "2x6", "20", "knot"))],
            "size",
            "end: the place to keep clear of",
        ),
    ];
    for (items, code, words) in cases {
        let found = problems(items);
        assert_eq!(found.len(), 1, "{found:?}");
        assert!(found[0].0 == code && found[0].1.contains(words), "{found:?} for {words}");
    }
}

#[test]
fn rips_can_be_forbidden_for_the_whole_plan() {
    let items = || {
        vec![
            rail(["1 1/2", "2", "30"], "2x6"),
            Item::Part(part("slat", "1", ["1", "5 1/2", "30"], "2x6")),
            yard("2x6", "1 1/2", "5 1/2", "96", 820),
        ]
    };
    let none = Options { may_rip: false, may_resaw: false, ..standard() };
    let words: Vec<String> = ask_for(items(), &none)
        .expect_err("forbidden")
        .iter()
        .map(|problem| problem.way_out().to_string())
        .collect();
    assert_eq!(words, ["Let the plan rip wider boards.", "Let the plan resaw thicker boards."]);
    let wanted = ask_for(items(), &standard()).expect("allowed");
    let rip = wanted.job.saw.rip.expect("rips");
    assert_eq!(wanted.labels.length(rip.least_length), Ok(inches("6")));
    let resaw = rip.resaw.expect("resaws");
    assert_eq!(resaw.greatest_width.map(|w| wanted.labels.length(w)), Some(Ok(inches("6 1/4"))));
    assert!(wanted.cautions.contains(&Caution::Ripping));
}

#[test]
fn sizes_trims_knots_and_what_is_done_go_in() {
    let cut = vec![Piece::cut(Dimensions::default()); 3];
    let sawn = RackBoard { sawn_ends: true, ..rack("offcut", " 2X6", "40", "") };
    let wanted = ask_for(
        vec![
            Item::Part(Part {
                pieces: cut,
                ..part("rail", "4 + 4", ["1 1/2", "5 1/2", "30"], "2x6")
            }),
            yard("2x6", "1 1/2", "5 1/2", "8 ft", 820),
            Item::RackBoard(sawn),
            Item::RackBoard(rack("by the door", "2x6", "50 1/3", "20 to 23")),
        ],
        &Options { spare_each: 1, extra_percent: 50, ..standard() },
    )
    .expect("wanted");
    let Wanted { job, labels, .. } = wanted;
    // Five are left; half of five is 2 1/2, so three more.
    assert_eq!(job.parts[0].quantity, 8);
    assert_eq!(labels.length(job.boards[0].length), Ok(inches("96")));
    let half = labels.unit.units(1, 2).expect("a half");
    assert_eq!(job.boards[0].trims, Ends { left: half, right: half });
    assert_eq!((job.scraps[0].trims, labels.scraps[0].name.as_str()), (Ends::default(), "offcut"));
    let inch = half * 2;
    assert_eq!(job.scraps[1].knots, [KnotZone { from: 20 * inch, to: 23 * inch }]);
    assert_eq!(labels.length(job.scraps[1].length), Ok(inches("50 1/3")));
    // No part is narrower than its board: the saw is not asked to rip, and no size makes the unit finer.
    assert!(job.saw.rip.is_none() && job.sections.iter().all(|section| section.size.is_none()));
    assert_eq!(job.validate(), Ok(()));
}

#[test]
fn a_part_without_a_stock_takes_any_board_of_its_size() {
    let any = |name: &str| Item::Part(part(name, "1", ["5 1/2", "1 1/2", "30"], ""));
    let boards = || {
        vec![
            yard("2x6 fir", "1 1/2", "5 1/2", "96", 820),
            yard("2x6 pine", "1 1/2", "5 1/2", "96", 640),
            yard("post", "3 1/2", "3 1/2", "96", 0),
        ]
    };
    let mut items = boards();
    items.push(any("rail"));
    let wanted = ask_for(items, &standard()).expect("wanted");
    assert_eq!(wanted.job.boards.len(), 2);
    assert!(wanted.job.boards.iter().all(|board| board.section == wanted.job.parts[0].section));
    let notes: Vec<String> = wanted.notes.iter().map(ToString::to_string).collect();
    assert_eq!(notes, ["post at the yard has no price. It is left out of the plan."]);

    // Another part tells the two apart: then one of them has to be chosen, and that is said.
    let mut items = boards();
    items.extend([any("rail"), rail(["1 1/2", "5 1/2", "40"], "2x6 pine")]);
    let wanted = ask_for(items, &standard()).expect("wanted");
    assert_eq!(wanted.job.parts[0].section, wanted.job.boards[0].section);
    assert_eq!(wanted.job.parts[1].section, wanted.job.boards[1].section);
    assert!(wanted.notes.iter().any(|note| note.to_string().contains("planned from 2x6 fir")));
}

#[test]
fn a_part_lies_as_its_boards_do() {
    // 1 1/2 by 3 1/2 from a square post is a rip, not a resaw.
    let wanted = ask_for(
        vec![rail(["1 1/2", "3 1/2", "30"], "4x4"), yard("4x4", "3 1/2", "3 1/2", "96", 1180)],
        &standard(),
    )
    .expect("wanted");
    let own = wanted.job.section(&wanted.job.parts[0].section).and_then(|section| section.size);
    let own = own.expect("sized");
    assert_eq!(wanted.labels.length(own.width), Ok(inches("1 1/2")));
    assert_eq!(wanted.labels.length(own.thickness), Ok(inches("3 1/2")));
}

#[test]
fn what_the_planner_refuses_is_told_by_name() {
    let wanted = ask_for(
        vec![rail(["1 1/2", "5 1/2", "97"], "2x6"), yard("2x6", "1 1/2", "5 1/2", "96", 820)],
        &standard(),
    )
    .expect("wanted");
    let id = wanted.job.parts[0].id.clone();
    let (length, clear) = (wanted.job.parts[0].length, wanted.job.boards[0].length);
    let told = wanted.labels.explain(
        &wanted.job,
        &CutProblem::PartFitsNowhere { id, length, longest_clear: Some(clear) },
    );
    assert_eq!(
        told.sentence.to_string(),
        "rail is 97 in long. The longest clear stretch of a board for it is 96 in."
    );
    assert_eq!(told.item, wanted.labels.parts[0].item);
}

#[test]
fn the_demo_waits_only_for_the_frame() {
    let job = crate::job::demo::demo();
    let bench = Bench::default();
    let reckoned = Reckoned::of(&job, &bench);
    let wanted = from_job_book(&job, &reckoned, &bench, &standard()).expect("wanted");
    assert_eq!(
        wanted.left_out[0].sentence.to_string(),
        "long rail, shelf waits for: frame inside."
    );
    assert_eq!(wanted.labels.unit.per_inch(), 8);
}
