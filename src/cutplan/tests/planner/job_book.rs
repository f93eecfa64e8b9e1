//! Plans made from the job book: the demo, and random jobs whose every strip goes through the resaw-and-rip calculator.

use reckoner_core::calculators::resaw_rip::saw::{Rise, Saw};
use reckoner_core::calculators::resaw_rip::strips::{self, Falls, Input, OtherEdge};
use reckoner_core::cutting::{Backing, Layout, Plan, Source, Units, check_certificate};
use reckoner_core::job::demo::demo;
use reckoner_core::job::{Grain, Item, Job, Part, RackBoard, Reckoned, Step, YardBoard};
use reckoner_core::measure::{Length, Unit, length};
use reckoner_core::planning::demo::demo_in_work;
use reckoner_core::planning::wanted::{Options, Wanted, WantedProblem, from_job_book};
use reckoner_core::sheet::Bench;

use crate::support::{Dice, solve};

pub(crate) fn inches(text: &str) -> Length {
    length(text).expect("a length")
}

pub(crate) fn options() -> Options {
    Options {
        kerf: inches("1/8"),
        reach: inches("3 1/8"),
        may_rip: true,
        may_resaw: true,
        crosscut_first: false,
        end_trim: inches("1/2"),
        edge_cleanup: inches("1/8"),
        face_cleanup: Length::ZERO,
        spare_each: 0,
        extra_percent: 0,
        rack_only: false,
        keep_from: inches("12"),
    }
}

pub(crate) fn wanted(job: &Job, options: &Options) -> Result<Wanted, Vec<WantedProblem>> {
    let bench = Bench::default();
    from_job_book(job, &Reckoned::of(job, &bench), &bench, options)
}

pub(crate) fn with(items: Vec<Item>) -> Job {
    let mut job = Job::new("random", Unit::Inch);
    let changes = (0..).zip(items).map(|(offset, item)| job.adding(offset, item)).collect();
    job.make(&Step::new("begin", changes)).expect("a fresh job");
    job
}

/// The strips and layers of a board, each asked of the calculator. Gives how many questions were asked.
fn saw_agrees(wanted: &Wanted, plan: &Plan, options: &Options) -> u32 {
    let bench = Bench::default();
    let real = |units: Units| wanted.labels.length(units).expect("in range");
    let ask = |thickness: Units, width: Units, piece: Units, clean: Length, list: Vec<Units>| {
        let input = Input {
            thickness: real(thickness),
            width: real(width),
            plan: strips::Plan::List(list.into_iter().map(real).collect()),
            first_edge: clean,
            other_edge: if clean.is_positive() { OtherEdge::Cut } else { OtherEdge::Clean },
            allowance: Length::ZERO,
            falls: Falls::AtFence,
            tape: bench.tape,
            saw: Saw {
                kerf: options.kerf,
                reach: options.reach,
                rise: Rise::AtOnce,
                core_by_hand: false,
                thinnest: bench.thinnest_strip,
                piece_length: real(piece),
            },
        };
        let answer = strips::reckon(&input);
        assert!(answer.is_ok(), "{answer:?} for {input:?}");
    };
    let mut asked = 0;
    for cut in &plan.boards {
        let (section, long) = match cut.source {
            Source::Board(at) => (&wanted.job.boards[at].section, wanted.job.boards[at].length),
            Source::Scrap(at) => (&wanted.job.scraps[at].section, wanted.job.scraps[at].length),
        };
        let Some(size) = wanted.job.section(section).expect("known").size else { continue };
        match &cut.layout {
            Layout::Crosscut(_) => {}
            Layout::RipFirst(list) => {
                if !(list.len() == 1 && list[0].width == size.width) {
                    let widths = list.iter().map(|strip| strip.width).collect();
                    ask(size.thickness, size.width, long, options.edge_cleanup, widths);
                    asked += 1;
                }
                for strip in list {
                    let layers: Vec<Units> = strip.layers.iter().map(|l| l.thickness).collect();
                    if layers != [size.thickness] {
                        ask(strip.width, size.thickness, long, options.face_cleanup, layers);
                        asked += 1;
                    }
                }
            }
            Layout::CrosscutFirst(blocks) => {
                for block in blocks {
                    let across: Vec<Units> = block
                        .parts
                        .iter()
                        .map(|placed| {
                            let part = &wanted.job.parts[placed.part];
                            let own = wanted.job.section(&part.section).expect("known").size;
                            if placed.turned { part.length } else { own.expect("sized").width }
                        })
                        .collect();
                    if across != [size.width] {
                        ask(size.thickness, size.width, block.length, options.edge_cleanup, across);
                        asked += 1;
                    }
                }
            }
        }
    }
    asked
}

/// All numbers of the demo are invented.
#[test]
fn the_demo_is_planned_and_the_saw_can_do_it() {
    let job = demo();
    let wanted = wanted(&job, &options()).expect("the demo can be planned");
    // The shelf rails and what hangs on them wait until the frame is measured.
    let waiting: Vec<&str> = wanted.left_out.iter().map(|not_yet| not_yet.name.as_str()).collect();
    assert_eq!(waiting, ["long rail, shelf"]);
    assert!(wanted.notes.iter().any(|note| note.to_string().contains("still wet")));
    let outcome = solve(&wanted.job, 400_000_000).expect("a plan");
    assert!(outcome.proved, "{} {}", outcome.plan.cost_cents, outcome.bound_cents);
    assert!(saw_agrees(&wanted, &outcome.plan, &options()) > 3);
}

/// What the demo in the middle of the work says of its plan is what the planner proves of one as good.
#[test]
fn the_plan_of_the_demo_claims_what_the_planner_proves() {
    let (job, _) = demo_in_work();
    let (kept, _) = job.find_cut_plan(false).and_then(|id| job.cut_plan(id)).expect("a plan");
    let outcome = solve(&kept.asked, 400_000_000).expect("a plan");
    let work = |plan: &Plan| {
        let effort = plan.effort(&kept.asked).expect("a plan of this job");
        (plan.cost_cents, plan.boards.len(), effort.settings.len(), effort.cuts)
    };
    assert_eq!(work(&kept.plan), work(&outcome.plan));
    let is_checked =
        outcome.certificates.iter().all(|it| check_certificate(&kept.asked, it).is_ok());
    let proved = Backing {
        is_proved: outcome.proved,
        is_checked,
        ties: Some(outcome.ties),
        in_place_of: None,
    };
    assert_eq!(kept.backing, Some(proved));
}

const WIDTHS: [&str; 7] = ["1/8", "1/4", "3/8", "5/8", "1 1/2", "2 3/4", "5 1/2"];
const THICK: [&str; 6] = ["1/8", "1/2", "5/8", "3/4", "1", "1 1/2"];
const BOARDS: [(&str, &str); 7] = [
    ("3/4", "5 1/2"),
    ("1 1/2", "7 1/4"),
    ("3 1/2", "3 1/2"),
    ("5/8", "5/8"),
    ("1", "11 1/4"),
    ("7", "9 1/4"),
    ("5/8", "3 1/2"),
];

fn pick<'a>(dice: &mut Dice, from: &[&'a str]) -> &'a str {
    from[usize::try_from(dice.roll(0, 99)).expect("small") % from.len()]
}

pub(crate) fn part(name: &str, quantity: i64, size: [&str; 3], stock: &str) -> Part {
    let (stock, quantity) = (stock.to_owned(), quantity.to_string());
    Part { stock, may_rip: true, may_resaw: true, ..Part::new(name, &quantity, size) }
}

pub(crate) fn random_job(dice: &mut Dice) -> Job {
    let mut items = Vec::new();
    let (thickness, width) = BOARDS[usize::try_from(dice.roll(0, 6)).expect("small")];
    for number in 0..dice.roll(1, 2) {
        let long = ["48", "5", "72"][usize::try_from(dice.roll(0, 2)).expect("small")];
        let price = 500 + u64::try_from(number).expect("small") * 310;
        items.push(Item::YardBoard(YardBoard::new("fir", [thickness, width, long], price)));
    }
    if dice.one_in(2) {
        items.push(Item::RackBoard(RackBoard {
            name: "end".to_owned(),
            section: "fir".to_owned(),
            thickness: thickness.to_owned(),
            width: width.to_owned(),
            length: pick(dice, &["5 1/2", "30"]).to_owned(),
            quantity: 1,
            wet: false,
            sawn_ends: dice.one_in(2),
            knots: String::new(),
        }));
    }
    for number in 0..dice.roll(1, 4) {
        let own = dice.one_in(4);
        let size = [
            if own || dice.one_in(2) { thickness } else { pick(dice, &THICK) },
            if own { width } else { pick(dice, &WIDTHS) },
            pick(dice, &["3", "4 1/2", "7", "18 1/4", "22"]),
        ];
        let free = dice.one_in(5);
        let grain = if free { Grain::Free } else { Grain::Locked };
        let quantity = dice.roll(1, 3);
        items
            .push(Item::Part(Part { grain, ..part(&format!("P{number}"), quantity, size, "fir") }));
    }
    with(items)
}

#[test]
fn no_plan_asks_for_a_strip_that_the_calculator_refuses() {
    let (mut asked, mut refused, mut planned) = (0, 0, 0);
    for seed in 0..1_500 {
        let mut dice = Dice(seed);
        let job = random_job(&mut dice);
        let clean = pick(&mut dice, &["0", "1/8", "1/4"]);
        let face_cleanup = inches(pick(&mut dice, &["0", "1/16"]));
        let crosscut_first = dice.one_in(2);
        let options =
            Options { edge_cleanup: inches(clean), face_cleanup, crosscut_first, ..options() };
        match wanted(&job, &options) {
            Ok(wanted) => {
                if let Ok(outcome) = solve(&wanted.job, 3_000_000) {
                    planned += 1;
                    asked += saw_agrees(&wanted, &outcome.plan, &options);
                }
            }
            Err(problems) => refused += problems.len(),
        }
    }
    assert!(asked > 300 && refused > 300 && planned > 300, "{asked} {refused} {planned}");
}

#[test]
fn from_the_rack_only_what_it_does_not_have_is_left_out() {
    let only = Options { rack_only: true, ..options() };
    let wanted = wanted(&demo(), &only).expect("a rack");
    let outcome = crate::support::solve_rack(&wanted.job, 400_000_000).expect("a plan");
    let left: Vec<&str> = outcome
        .plan
        .left_out
        .iter()
        .map(|left| wanted.labels.parts[left.part].name.as_str())
        .collect();
    assert!(left.contains(&"leg") && left.contains(&"tool dowel"), "{left:?}");
    assert!(!outcome.plan.boards.is_empty() && outcome.plan.cost_cents == 0);
}

/// A rack board that is all knot is named; so is a part longer than every board.
#[test]
fn a_board_that_is_all_knot_and_a_part_too_long_are_named() {
    let rail = |long: &str| Item::Part(part("rail", 2, ["1 1/2", "5 1/2", long], "2x6"));
    let knotty = |knots: &str| {
        Item::RackBoard(RackBoard {
            name: "by the door".to_owned(),
            section: "2x6".to_owned(),
            thickness: "1 1/2".to_owned(),
            width: "5 1/2".to_owned(),
            length: "40".to_owned(),
            quantity: 1,
            wet: false,
            sawn_ends: false,
            knots: knots.to_owned(),
        })
    };
    for (items, words) in [
        (vec![rail("30"), knotty("0 to 40")], "by the door has nothing left"),
        (
            vec![rail("30"), knotty("30 to 45")],
            "by the door has a place to keep clear of that lies outside",
        ),
        (
            vec![rail("39 1/2"), knotty("")],
            "rail is 39 1/2 in long. The longest clear stretch of a board for it is 39 in.",
        ),
        (vec![rail("30"), knotty("")], "The boards are not enough. Without a place: 1 of rail."),
    ] {
        let wanted = wanted(&with(items), &options()).expect("wanted");
        let problem = solve(&wanted.job, 10_000_000).expect_err(words);
        let told = wanted.labels.explain(&wanted.job, &problem);
        assert!(told.sentence.to_string().contains(words), "{told:?}");
        assert!(told.item.is_some());
    }
}
