//! The worked examples of stages 5 and 12 as jobs: what is measured moves the rest, and cuts that
//! share a setting are made together. Source: [WH] J1, J3, J4 and G2.

use reckoner_core::attention::attention;
use reckoner_core::build_order::{Stage, build_order};
use reckoner_core::drawing::{Role, Shape};
use reckoner_core::job::demo::demo;
use reckoner_core::job::kinds::{KINDS, job_of};
use reckoner_core::job::sketch::{Look, picture};
use reckoner_core::job::{Item, ItemId, Job, Measure, Part, Reckoned, Step};
use reckoner_core::measure::{Length, Tape, Unit};
use reckoner_core::planning::demo::demo_in_work;
use reckoner_core::planning::report::{How, report};
use reckoner_core::sheet::Bench;

use crate::items::{inches, job, kept, planned, result, value};

fn measure(job: &mut Job, name: &str, tape: &str) {
    let (id, old) = job.measures().into_iter().find(|(_, m)| m.name == name).expect("this name");
    let new = Measure { as_cut: Some(tape.to_owned()), ..old.clone() };
    job.make(&Step::new("measure", vec![job.replacing(id, Item::Measure(new))])).expect("no other");
}

#[test]
fn j1_the_rail_or_the_overall_gives_way_to_legs_cut_thin() {
    let rail = |find: &[(&str, &str)]| kept("Frame", "frame", find);
    let mut overall_kept = job(vec![
        rail(&[("overall", "overall"), ("leg_left", "leg")]),
        planned("overall", "44"),
        planned("leg", "3 1/2"),
        result("rail", 1, "rail_cut"),
    ]);
    assert_eq!(value(&overall_kept, "rail"), inches("37"));
    measure(&mut overall_kept, "leg", "3 7/16");
    assert_eq!(value(&overall_kept, "rail"), inches("37 1/8"));

    let mut rails_cut = job(vec![
        rail(&[("find", "overall"), ("rail", "rail"), ("leg_left", "leg")]),
        planned("rail", "37"),
        planned("leg", "3 1/2"),
        result("overall", 1, "overall_length"),
    ]);
    assert_eq!(value(&rails_cut, "overall"), inches("44"));
    measure(&mut rails_cut, "leg", "3 7/16");
    assert_eq!(value(&rails_cut, "overall"), inches("43 7/8"));
}

#[test]
fn j3_the_spacer_follows_what_was_dressed() {
    let spacer = |lay: &str| {
        let entries = [
            ("question", "spacer"),
            ("lay", lay),
            ("leg", "leg"),
            ("rail_thickness", "rail"),
            ("set_back", "set-back"),
        ];
        let asked = if lay == "centred" { &entries[..4] } else { &entries[..] };
        let mut job = job(vec![
            kept("Frame", "frame", asked),
            planned("leg", "3 1/2"),
            planned("rail", "1 1/2"),
            planned("set-back", "3/4"),
            result("block", 1, "spacer_block"),
        ]);
        let at_first = value(&job, "block");
        measure(&mut job, "leg", "3 1/4");
        measure(&mut job, "rail", "1 7/16");
        (at_first, value(&job, "block"))
    };
    assert_eq!(spacer("outside").0, inches("3/4"));
    assert_eq!(spacer("inside").0, inches("1 1/4"));
    assert_eq!(spacer("centred"), (inches("1"), inches("29/32")));
}

#[test]
fn j4_the_dowel_is_measured_on_the_built_frame() {
    let mut job = job(vec![
        kept(
            "Dowel",
            "dowel",
            &[("overall", "over both frames"), ("left_part", "1 1/2"), ("trim", "1/4")],
        ),
        planned("over both frames", "38"),
        result("dowel", 1, "cut"),
    ]);
    assert_eq!(value(&job, "dowel"), inches("38 1/2"));
    measure(&mut job, "over both frames", "38 3/16");
    assert_eq!(value(&job, "dowel"), inches("38 11/16"));
}

#[test]
fn g2_widths_that_are_sizes_of_the_job_share_their_settings() {
    let strip = |name: &str, quantity: &str, width: &str| {
        Item::Part(Part { may_rip: true, ..Part::new(name, quantity, ["3/4", width, "20"]) })
    };
    let mut job = job(vec![
        planned("slat", "2 3/4"),
        strip("batten", "4", "1 1/2"),
        strip("rail", "8", "slat + 3/4"),
        strip("slat", "6", "slat"),
    ]);
    let settings = |job: &Job| -> Vec<(Length, u32)> {
        let bench = Bench::default();
        let reckoned = Reckoned::of(job, &bench);
        let found = attention(job, &reckoned, &bench);
        let order = build_order(job, &reckoned, &bench, &found);
        let rips = order.steps.iter().filter(|step| step.stage == Stage::Rip);
        rips.filter_map(|step| Some((step.setting?, step.many()))).collect()
    };
    let widest_first = [(inches("3 1/2"), 8), (inches("2 3/4"), 6), (inches("1 1/2"), 4)];
    assert_eq!(settings(&job), widest_first);
    // The slats come out as wide as the battens: one setting fewer.
    measure(&mut job, "slat", "1 1/2");
    assert_eq!(settings(&job), [(inches("2 1/4"), 8), (inches("1 1/2"), 10)]);
}

/// Lengths at the yard are of 8 and of 10 feet: 96 and 120, of every section that a kind of piece is made from.
#[test]
fn the_yard_of_a_new_piece_sells_eight_and_ten_feet() {
    for kind in &KINDS {
        let job = job_of(kind, Unit::Inch);
        let reckoned = Reckoned::of(&job, &Bench::default());
        let boards = job.items().filter_map(|(_, item)| match item {
            Item::YardBoard(board) => Some(reckoned.length_of(&board.length).expect("a length")),
            _ => None,
        });
        let lengths: Vec<Length> = boards.collect();
        assert!(!lengths.is_empty(), "{}", kind.id);
        for two in lengths.chunks(2) {
            assert_eq!(two, [inches("96"), inches("120")], "{}", kind.id);
        }
    }
}

/// In the picture what stands farther back stands higher on the page: of the four legs of the demo two
/// have their feet above those of the other two, which stand lowest.
#[test]
fn the_legs_at_the_back_stand_higher_on_the_page() {
    let job = demo();
    let (leg, _) = job.parts().into_iter().find(|(_, part)| part.name == "leg").expect("legs");
    let reckoned = Reckoned::of(&job, &Bench::default());
    let look = |id: ItemId, _| if id == leg { Look::Cut } else { Look::ToCut };
    let scene = picture(&job, &reckoned, &look).expect("a picture").scene;
    // The lowest place of each face that stands: the front and the side of a leg, not its upper end.
    let mut feet: Vec<f64> = Vec::new();
    for item in scene.items.iter().filter(|item| item.role == Role::Wood) {
        if let Shape::Polygon(points) = &item.shape {
            feet.push(points.iter().map(|(_, y)| *y).fold(f64::MIN, f64::max));
        }
    }
    let lowest = feet.iter().copied().fold(f64::MIN, f64::max);
    // The front faces come before the sides and the ends, leg by leg, those at the back first.
    let fronts: Vec<f64> = feet.chunks(3).map(|leg| leg[0]).collect();
    let [a, b, c, d] = fronts[..] else { panic!("{fronts:?}") };
    assert!(a == b && c == d && c == lowest && b < c - 10.0, "{fronts:?}");
}

/// What is written into a piece on the drawing of its board stands in its wood.
#[test]
fn the_name_of_a_piece_stands_in_its_wood() {
    let (job, _) = demo_in_work();
    let plan = job.find_cut_plan(false).and_then(|id| job.cut_plan(id));
    let (kept, _) = plan.expect("the demo has a plan");
    let how = How { tape: Tape::SIXTEENTHS, keep_from: inches("6") };
    let report = report(&kept.asked, &kept.plan, &kept.labels, how).expect("of this job");
    let mut names = 0;
    for board in &report.boards {
        let items = &board.scene.items;
        let is_in = |(x, y): (f64, f64)| {
            items.iter().filter(|item| item.role == Role::Wood).any(|item| match item.shape {
                Shape::Rect(left, top, wide, high) => {
                    (left..left + wide).contains(&x) && (top..top + high).contains(&y)
                }
                _ => false,
            })
        };
        for item in items.iter().filter(|item| item.role == Role::StrongInk) {
            if let Shape::Text(x, y, _, size, words) = &item.shape {
                assert!(is_in((*x, y - 0.3 * size.height())), "{words} on {:?}", board.scene.title);
                names += 1;
            }
        }
    }
    assert!(names > 10, "{names}");
}
