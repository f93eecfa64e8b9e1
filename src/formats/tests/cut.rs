//! Cutting jobs, plans and messages: they come back as they were, and what is damaged is refused in a sentence.

use proptest::prelude::*;
use reckoner_core::cutting::{
    Block, Board, Certificate, Claim, CrossSize, CutBoard, CutProblem, Ends, Job, KnotZone,
    LARGEST_UNITS, Layer, Layout, LeftOut, NextRun, Outcome, Part, Placed, Plan, RackOutcome,
    ResawRules, RipRules, SawRules, Scrap, Section, SingleBoard, Source, Strip, Ties,
};
use reckoner_formats::{
    Ask, Checked, CutTextProblem, News, Question, Reply, number_of_reply, read_cut, read_question,
    read_reply, write_cut, write_question, write_reply,
};
use serde_json::{Value, json};

fn size() -> impl Strategy<Value = i64> {
    1..=LARGEST_UNITS
}

fn knots() -> impl Strategy<Value = Vec<KnotZone>> {
    prop::collection::vec((size(), size()).prop_map(|(from, to)| KnotZone { from, to }), 0..3)
}

fn ends() -> impl Strategy<Value = Ends> {
    (0..99_i64, 0..99_i64).prop_map(|(left, right)| Ends { left, right })
}

fn section() -> impl Strategy<Value = Section> {
    (".{0,9}", ".{0,9}", prop::option::of((size(), size()))).prop_map(|(id, wood, size)| Section {
        id,
        wood,
        size: size.map(|(width, thickness)| CrossSize { width, thickness }),
    })
}

fn part() -> impl Strategy<Value = Part> {
    (".{0,9}", ".{0,9}", size(), 0..99_u32, 0..4_u32, any::<(bool, bool, bool)>()).prop_map(
        |(id, name, length, quantity, priority, (may_rip, may_resaw, grain_free))| Part {
            section: id.clone(),
            id,
            name,
            length,
            quantity,
            priority,
            may_rip,
            may_resaw,
            grain_free,
        },
    )
}

fn board() -> impl Strategy<Value = Board> {
    (".{0,9}", size(), 1..9999_i64, prop::option::of(0..9_u32), ends(), knots()).prop_map(
        |(id, length, price_cents, limit, trims, knots)| Board {
            section: id.clone(),
            id,
            length,
            price_cents,
            limit,
            trims,
            knots,
        },
    )
}

fn scrap() -> impl Strategy<Value = Scrap> {
    (".{0,9}", size(), 0..9_u32, ends(), knots()).prop_map(
        |(id, length, quantity, trims, knots)| Scrap {
            section: id.clone(),
            id,
            length,
            quantity,
            trims,
            knots,
        },
    )
}

fn resaw() -> impl Strategy<Value = ResawRules> {
    (size(), size(), size(), size(), prop::option::of(size())).prop_map(
        |(kerf, near_face, far_face, least_thickness, greatest_width)| ResawRules {
            kerf,
            near_face,
            far_face,
            least_thickness,
            greatest_width,
        },
    )
}

fn rip() -> impl Strategy<Value = RipRules> {
    (size(), size(), size(), size(), size(), any::<bool>(), prop::option::of(resaw())).prop_map(
        |(kerf, near_edge, far_edge, least_width, least_length, crosscut_first, resaw)| RipRules {
            kerf,
            near_edge,
            far_edge,
            least_width,
            least_length,
            crosscut_first,
            resaw,
        },
    )
}

/// Any job: most of them make no sense, and travel all the same.
fn job() -> impl Strategy<Value = Job> {
    let many = |least| least..4_usize;
    (
        prop::collection::vec(section(), many(0)),
        prop::collection::vec(part(), many(1)),
        prop::collection::vec(board(), many(1)),
        prop::collection::vec(scrap(), many(1)),
        (0..99_i64, prop::option::of(rip())),
    )
        .prop_map(|(sections, parts, boards, scraps, (kerf, rip))| Job {
            sections,
            parts,
            boards,
            scraps,
            saw: SawRules { kerf, rip },
        })
}

/// A piece of the first part: it is in every job.
fn placed() -> impl Strategy<Value = Vec<Placed>> {
    let one = (size(), any::<bool>()).prop_map(|(at, turned)| Placed { part: 0, at, turned });
    prop::collection::vec(one, 0..4)
}

fn layout() -> impl Strategy<Value = Layout> {
    let layer = (size(), size(), placed()).prop_map(|(at, thickness, parts)| Layer {
        at,
        thickness,
        parts,
    });
    let strip = (size(), size(), prop::collection::vec(layer, 0..3))
        .prop_map(|(at, width, layers)| Strip { at, width, layers });
    let block =
        (size(), size(), placed()).prop_map(|(at, length, parts)| Block { at, length, parts });
    prop_oneof![
        placed().prop_map(Layout::Crosscut),
        prop::collection::vec(strip, 0..3).prop_map(Layout::RipFirst),
        prop::collection::vec(block, 0..3).prop_map(Layout::CrosscutFirst),
    ]
}

fn plan() -> impl Strategy<Value = Plan> {
    let source = prop_oneof![Just(Source::Board(0)), Just(Source::Scrap(0))];
    let board = (source, layout()).prop_map(|(source, layout)| CutBoard { source, layout });
    let left = (0..9_u32).prop_map(|quantity| LeftOut { part: 0, quantity });
    (prop::collection::vec(board, 0..4), prop::collection::vec(left, 0..2), 0..99_999_i64)
        .prop_map(|(boards, left_out, cost_cents)| Plan { boards, left_out, cost_cents })
}

fn outcome() -> impl Strategy<Value = Outcome> {
    let claim = prop_oneof![
        any::<i64>().prop_map(|worth| Claim::Worth(vec![worth])),
        Just(Claim::SearchFinished),
    ];
    let certificate = (claim, 0..9999_i64).prop_map(|(claim, bound_cents)| Certificate {
        parts: vec![0],
        bound_cents,
        claim,
    });
    let certificates = prop::collection::vec(certificate, 0..3);
    (plan(), 0..9999_i64, any::<[bool; 6]>(), certificates, any::<u64>()).prop_map(
        |(
            plan,
            bound_cents,
            [proved, fewest_boards, fewest_settings, fewest_cuts, longest_offcut, stopped],
            certificates,
            work,
        )| {
            Outcome {
                plan,
                bound_cents,
                proved,
                ties: Ties { fewest_boards, fewest_settings, fewest_cuts, longest_offcut },
                certificates,
                work,
                stopped,
            }
        },
    )
}

fn problem() -> impl Strategy<Value = CutProblem> {
    let id = || ".{0,9}";
    prop_oneof![
        Just(CutProblem::NoParts),
        Just(CutProblem::NoBoards),
        id().prop_map(|id| CutProblem::SameId { id }),
        (id(), id()).prop_map(|(id, section)| CutProblem::UnknownSection { id, section }),
        id().prop_map(|id| CutProblem::LengthNotPositive { id }),
        id().prop_map(|id| CutProblem::LengthTooLarge { id }),
        id().prop_map(|id| CutProblem::PriceNotPositive { id }),
        id().prop_map(|id| CutProblem::PriceTooLarge { id }),
        any::<u64>().prop_map(|wanted| CutProblem::TooManyParts { wanted }),
        Just(CutProblem::LossOutOfRange { what: "rip kerf" }),
        id().prop_map(|id| CutProblem::KnotOutside { id }),
        id().prop_map(|id| CutProblem::NothingUsable { id }),
        (id(), size(), prop::option::of(size())).prop_map(|(id, length, longest_clear)| {
            CutProblem::PartFitsNowhere { id, length, longest_clear }
        }),
        (id(), any::<u32>(), any::<bool>()).prop_map(|(id, count, proved)| {
            CutProblem::NotEnoughBoards { left_out: vec![(id, count)], proved }
        }),
    ]
}

fn checked() -> impl Strategy<Value = Vec<Checked>> {
    let one =
        prop_oneof![Just(Checked::Confirmed), Just(Checked::NotCheckable), Just(Checked::Refuted)];
    prop::collection::vec(one, 0..4)
}

fn reply() -> impl Strategy<Value = Reply> {
    let news = (any::<(u64, u64, u32)>(), prop::option::of(0..999_i64), prop::option::of(plan()))
        .prop_map(|((work, budget, left_out), cost_cents, better)| {
            Reply::News(News {
                work,
                budget,
                cost_cents,
                bound_cents: 7,
                left_out,
                boards: 3,
                better,
            })
        });
    let rack = (plan(), any::<(bool, u64, bool)>()).prop_map(|(plan, (proved, work, stopped))| {
        Reply::RackOnly(RackOutcome { plan, proved, work, stopped })
    });
    let single = prop_oneof![outcome().prop_map(Ok), problem().prop_map(Err)]
        .prop_map(|outcome| Reply::SingleBoards(vec![SingleBoard { board: 0, outcome }]));
    let run = (plan(), 0..999_i64).prop_map(|(plan, bound_cents)| NextRun { plan, bound_cents });
    prop_oneof![
        news,
        (outcome(), checked()).prop_map(|(it, checked)| Reply::Cheapest(it, checked)),
        rack,
        prop::collection::vec(plan(), 0..3).prop_map(Reply::Become),
        single,
        prop::option::of(run).prop_map(Reply::NextRun),
        problem().prop_map(Reply::Problem),
    ]
}

fn ask() -> impl Strategy<Value = Ask> {
    let budget = any::<u64>();
    prop_oneof![
        budget.prop_map(|budget| Ask::Cheapest { budget }),
        budget.prop_map(|budget| Ask::RackOnly { budget }),
        Just(Ask::Become(Source::Scrap(0))),
        budget.prop_map(|budget| Ask::SingleBoards { budget }),
        (plan(), 0..999_i64, any::<u64>()).prop_map(|(plan, most_cents, budget)| Ask::NextRun {
            plan,
            most_cents,
            budget
        }),
    ]
}

proptest! {
    #[test]
    fn a_job_with_its_plan_comes_back_as_it_was(job in job(), plan in plan()) {
        prop_assert_eq!(read_cut(&write_cut(&job, &plan)), Ok((job, plan)));
    }

    #[test]
    fn a_question_comes_back_as_it_was(number: u32, job in job(), ask in ask()) {
        let question = Question { number, job, ask };
        prop_assert_eq!(read_question(&write_question(&question)), Ok(question));
    }

    #[test]
    fn a_reply_comes_back_as_it_was(number: u32, job in job(), reply in reply()) {
        let text = write_reply(number, &reply);
        prop_assert_eq!(number_of_reply(&text), Some(number));
        prop_assert_eq!(read_reply(&text, &job), Ok((number, reply)));
    }

    #[test]
    fn any_text_is_refused_in_a_sentence(text in ".{0,200}") {
        let problem = read_cut(&text).expect_err("no plan");
        prop_assert!(problem.to_string().ends_with('.'), "{}", problem);
    }

    /// A damaged number is refused, or it is another plan; it never names what is not there.
    #[test]
    fn a_damaged_plan_names_nothing_that_is_not_there(
        job in job(), plan in plan(), at in 0..4000_usize, digit in b'0'..=b'9',
    ) {
        let mut bytes = write_cut(&job, &plan).into_bytes();
        let numbers: Vec<usize> =
            (0..bytes.len()).filter(|&at| bytes[at].is_ascii_digit()).collect();
        bytes[numbers[at % numbers.len()]] = digit;
        let read = read_cut(&String::from_utf8(bytes).expect("text"));
        prop_assume!(read.is_ok(), "refused");
        let (job, plan) = read.expect("no refusal");
        for board in &plan.boards {
            let is_there = match board.source { Source::Board(at) => at < job.boards.len(), Source::Scrap(at) => at < job.scraps.len(), };
            prop_assert!(is_there);
            prop_assert!(board.placed().iter().all(|it| it.part < job.parts.len()));
        }
    }
}

fn stored() -> Value {
    json!({
        "version": 1,
        "job": {
            "sections": [{"id": "s", "wood": "w"}],
            "parts": [{"id": "p", "name": "leg", "section": "s", "length": 10, "quantity": 2}],
            "boards": [{"id": "b", "section": "s", "length": 96, "price_cents": 1000}],
            "kerf": 1,
        },
        "plan": {
            "boards": [{"from": {"board": 0}, "crosscut": [{"part": 0, "at": 0}, {"part": 0, "at": 11}]}],
            "cost_cents": 1000,
        },
    })
}

/// A stored plan of every version that was ever written must open.
#[test]
fn the_first_version_still_opens() {
    let (job, plan) = read_cut(&stored().to_string()).expect("a plan");
    assert_eq!(job.parts[0].name, "leg");
    assert_eq!(plan.boards[0].placed()[1], Placed { part: 0, at: 11, turned: false });
}

#[test]
fn what_is_damaged_is_named() {
    let damaged = |place: &str, value: Value| {
        let mut stored = stored();
        *stored.pointer_mut(place).expect("a place") = value;
        read_cut(&stored.to_string()).expect_err("refused")
    };
    for (place, value, expected) in [
        ("/version", json!(2), CutTextProblem::Later(2)),
        ("/version", json!(0), CutTextProblem::NotReadable),
        ("/job/kerf", json!(0.5), CutTextProblem::NotReadable),
        ("/job/kerf", json!(LARGEST_UNITS + 1), CutTextProblem::OutOfRange("kerf")),
        ("/job/parts/0/length", json!(i64::MIN), CutTextProblem::OutOfRange("length")),
        ("/job/parts/0/quantity", json!(-1), CutTextProblem::OutOfRange("quantity")),
        ("/job/boards/0/price_cents", json!(i64::MAX), CutTextProblem::OutOfRange("price_cents")),
        ("/job/parts/0/name", json!("x".repeat(501)), CutTextProblem::NameTooLong),
        ("/plan/boards/0/from", json!({"board": 1}), CutTextProblem::NotThere("board")),
        ("/plan/boards/0/from", json!({"scrap": 0}), CutTextProblem::NotThere("scrap")),
        ("/plan/boards/0/crosscut/1/part", json!(7), CutTextProblem::NotThere("part")),
        ("/plan/boards/0/crosscut/1/at", json!(i64::MAX), CutTextProblem::OutOfRange("at")),
        ("/plan/cost_cents", json!(-1), CutTextProblem::OutOfRange("cost_cents")),
    ] {
        assert_eq!(damaged(place, value), expected, "{place}");
    }
    let section = stored()["job"]["sections"][0].clone();
    assert_eq!(
        damaged("/job/sections", json!(vec![section; 10_001])),
        CutTextProblem::TooMany("sections")
    );
}
