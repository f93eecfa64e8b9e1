//! The order of the demo against one written by hand, and what a step waits for.

use super::step::cautions;
use super::{BuildOrder, Stage, Wait, build_order};
use crate::attention::attention;
use crate::calculators;
use crate::job::demo::demo;
use crate::job::kinds::{job_of, kind};
use crate::job::tests::{edit, id_of, inches};
use crate::job::{Dimension, Item, ItemId, Job, Kept, OnOurs, Part, Piece, Reckoned, Step};
use crate::measure::Unit;
use crate::measure::text::exact_text;
use crate::planning::demo::demo_in_work;
use crate::sheet::{Bench, Caution};
use crate::to_buy::Source;
use crate::to_buy::tests::planned;

fn order(job: &Job) -> BuildOrder {
    let bench = Bench::default();
    let reckoned = Reckoned::of(job, &bench);
    build_order(job, &reckoned, &bench, &attention(job, &reckoned, &bench))
}

fn titles(job: &Job, order: &BuildOrder) -> Vec<String> {
    let one = |step: &super::BuildStep| match step.setting {
        Some(setting) => format!("{}: {}", step.title(job), exact_text(setting)),
        None => step.title(job),
    };
    order.steps.iter().map(one).collect()
}

/// Two rails of 30 1/4 from one board: bought, then cut by one stop, and the board is cut up with the
/// second of them, not with the first.
#[test]
fn the_pieces_of_a_board_are_ticked_one_by_one_and_the_board_with_the_last() {
    let bench = Bench::default();
    let mut job = planned();
    let first = order(&job);
    assert_eq!(titles(&job, &first), ["Buy everything", "Cut 2 pieces to length: 30 1/4 in"]);
    assert_eq!(first.next(), Some(0));
    assert_eq!(first.steps[1].waits_for, [Wait::Step(0)]);
    assert_eq!(first.steps[1].pieces[0].board, Some(1));
    let do_next = |job: &mut Job| {
        let now = order(job);
        let at = now.next().expect("something to do");
        let step = now.steps[at].ticking(job, &Reckoned::of(job, &bench), &bench);
        job.make(&step.expect("a tick")).expect("nobody else is here");
    };
    let rack = |job: &Job| job.items().filter(|(_, it)| matches!(it, Item::RackBoard(_))).count();
    do_next(&mut job);
    assert_eq!((order(&job).next(), rack(&job)), (Some(1), 1));
    // One of them, from the list of parts: the board is off the rack, and the plan still fits.
    let reckoned = Reckoned::of(&job, &bench);
    let one = job.cutting_pieces(&reckoned, &bench, &[(ItemId(1), 0)]).expect("a piece to cut");
    job.make(&one).expect("nobody else is here");
    let now = order(&job);
    assert_eq!((now.steps[1].to_cut(), rack(&job)), (vec![(ItemId(1), 1)], 0));
    assert_eq!(attention(&job, &Reckoned::of(&job, &bench), &bench).facts, []);
    // A slip, taken back, and cut again.
    let back = job.not_cutting(ItemId(1), 0).expect("a piece that is cut");
    job.make(&back).expect("nobody else is here");
    assert_eq!(order(&job).steps[1].to_cut().len(), 2);
    job.make(&one.clone()).unwrap_err();
    do_next(&mut job);
    // 96 less 1/2 at each end, 60 1/2 of rails and two kerfs leave 34 1/4: it goes on the rack.
    let done = order(&job);
    assert!(done.steps.iter().all(|step| step.is_done) && done.next().is_none());
    let left = job.items().find_map(|(_, item)| match item {
        Item::RackBoard(board) => Some(board.length.clone()),
        _ => None,
    });
    assert_eq!(left.as_deref(), Some("34 1/4 in"));
    assert_eq!(attention(&job, &Reckoned::of(&job, &bench), &bench).facts, []);
}

/// A bench from its kind: of all that is cut, the length of the legs alone hangs on its height and the planks.
#[test]
fn a_setting_is_in_pencil_while_the_size_that_is_cut_rests_on_one_of_ours() {
    let bench = Bench::default();
    let mut job = job_of(kind("bench").expect("a kind"), Unit::Inch);
    let cuts = |job: &Job| -> Vec<(String, bool)> {
        let reckoned = Reckoned::of(job, &bench);
        let on_ours = OnOurs::of(job, &reckoned);
        let order = order(job);
        let cuts = order.steps.iter().filter(|step| step.setting.is_some());
        cuts.map(|it| {
            let parts = it.parts().into_iter().filter_map(|id| Some(job.item(id)?.name()));
            let parts = parts.collect::<Vec<_>>().join(", ");
            (parts, it.is_on_ours(job, &reckoned, &on_ours))
        })
        .collect()
    };
    let all = cuts(&job);
    assert!(all.len() > 3 && all.iter().all(|(_, is)| *is), "{all:?}");
    for (id, size) in
        job.measures().into_iter().map(|(id, it)| (id, it.name.clone())).collect::<Vec<_>>()
    {
        let confirmed = job.item(id).and_then(Item::confirmed).filter(|_| size != "height");
        if let Some(confirmed) = confirmed {
            job.make(&Step::new("", vec![job.replacing(id, confirmed)])).expect("it is right");
        }
    }
    let left: Vec<String> =
        cuts(&job).into_iter().filter(|(_, is)| *is).map(|(parts, _)| parts).collect();
    assert_eq!(left, ["leg"]);
}

/// The boards of the demo are bought, and its finish is not.
#[test]
fn of_what_is_to_buy_the_rest_is_named() {
    let (job, _) = demo_in_work();
    let order = order(&job);
    let step = order.steps.iter().find(|step| step.stage == Stage::Buy).expect("something to buy");
    assert_eq!(step.title(&job), "Buy the rest");
    assert!(step.to_buy.iter().any(|line| line.name.ends_with("of finish")), "{:?}", step.to_buy);
    assert!(
        step.to_buy.iter().all(|line| matches!(line.source, Source::Goods(_))),
        "{:?}",
        step.to_buy
    );
}

/// By hand, from the parts of the demo and their sizes (47 1/2 by 22, legs 3 1/4, top 34 1/2 high):
/// lengths 50 1/2 top, 46 1/2 dowel (outside 46 and a trim at each end), 41 long rail, 33 1/2 leg, 20 1/2
/// slat, 15 1/2 short rail, 12 bracket. What is ripped: planks as the reckoning of the top says, legs, rails,
/// slats. The shelf rails wait for the frame.
#[test]
fn the_demo_is_built_in_the_order_of_a_builder() {
    let job = demo();
    let found = order(&job);
    let lengths: Vec<_> =
        found.steps.iter().filter(|it| it.stage == Stage::Crosscut).map(|it| it.setting).collect();
    let by_hand = ["50 1/2", "46 1/2", "41", "33 1/2", "20 1/2", "15 1/2", "12"];
    let (first, rest) = (lengths.first(), lengths.len());
    assert_eq!(lengths, by_hand.map(|it| Some(inches(it))), "{first:?} of {rest}");
    let all = titles(&job, &found);
    let at = |title: &str| {
        all.iter().position(|it| it == title).unwrap_or_else(|| panic!("{title}: {all:#?}"))
    };
    let gate = at("Dry fit, and measure frame inside");
    let shelf = at("Cut 2 pieces as measured");
    assert!(at("Dowel for hand tools") < gate && gate < shelf && shelf < at("Front frame"));
    let arch = at("Arch under the shelf rail");
    assert!(shelf < arch && arch < at("Front frame"), "there is no such rail before");
    assert!(at("Front frame") < at("Top planks") && at("Top planks") < at("Oil for all of it"));
    assert!(at("End bracket") < at("Dowel for hand tools"));
    assert_eq!(found.steps[shelf].setting, None, "nobody knows yet");
    let frame = id_of(&job, "frame inside");
    assert!(found.steps[shelf].waits_for.contains(&Wait::Measure(frame)));
    // The two frames of rails share the legs: both ends and the front are cut before one measures.
    let rails = at("Cut 2 pieces to length: 41 in");
    assert!(found.steps[gate].waits_for.contains(&Wait::Step(rails)));
    // Measured: the shelf rails are cut by the same stop as the others, as they are as long.
    let mut job = job;
    edit(&mut job, "frame inside", |it| it.as_cut = Some("41".to_owned()));
    let all = titles(&job, &order(&job));
    assert!(all.contains(&"Cut 4 pieces to length: 41 in".to_owned()), "{all:#?}");
}

#[test]
fn what_uses_a_piece_that_came_out_wrong_waits_for_an_answer() {
    let mut job = demo();
    let (leg, part) =
        job.parts().into_iter().map(|(id, it)| (id, it.clone())).next().expect("legs");
    let short = Piece::cut(Default::default())
        .measured(Dimension::Thickness, Some("3 1/4".to_owned()))
        .measured(Dimension::Width, Some("3 1/4".to_owned()))
        .measured(Dimension::Length, Some("33".to_owned()));
    let cut = Item::Part(part.with_piece(0, short));
    job.make(&Step::new("cut", vec![job.replacing(leg, cut)])).expect("no conflict");
    let found = order(&job);
    let waits = |title: &str| {
        let step = found.steps.iter().find(|step| step.title(&job) == title).expect("this step");
        step.waits_for.contains(&Wait::Look(leg))
    };
    assert!(waits("Front frame") && waits("Dry fit, and measure frame inside"));
    assert!(waits("Cut 4 pieces to length"), "the other legs are not cut like a wrong one");
    assert!(!waits("Sides of the soil tray"), "the tray has no leg in it");
}

/// Long rails at a stop are told of the stop and not of a push block; short ones of both; a rip of them of the fence,
/// and a thin one at the fence of that too.
#[test]
fn a_cut_is_told_of_its_own_dangers() {
    let of = |length: &str, width: &str, stage, setting: &str| {
        let mut job = Job::new("", Unit::Inch);
        let rail = Item::Part(Part::new("rail", "2", ["1 1/2", width, length]));
        job.make(&Step::new("", vec![job.adding(0, rail)])).expect("a fresh job");
        let reckoned = Reckoned::of(&job, &Bench::default());
        let (id, _) = job.parts()[0];
        let sizes = reckoned.part(id).expect("its sizes");
        let mut all = cautions(stage, Some(inches(setting)), sizes);
        all.retain(|it| it.can_take_fingers());
        all
    };
    assert_eq!(of("50 1/2", "5 1/2", Stage::Crosscut, "50 1/2"), [Caution::StopBlock]);
    assert_eq!(
        of("11 1/2", "5 1/2", Stage::Crosscut, "11 1/2"),
        [Caution::SmallPiece, Caution::StopBlock]
    );
    assert_eq!(of("50 1/2", "5 1/2", Stage::Rip, "5 1/2"), [Caution::Ripping, Caution::SmallPiece]);
    assert_eq!(of("50 1/2", "7", Stage::Rip, "7"), [Caution::Ripping]);
    assert_eq!(
        of("50 1/2", "5/8", Stage::Rip, "5/8"),
        [Caution::Ripping, Caution::StripAtFence, Caution::SmallPiece]
    );
}

/// By hand, from what is done with the answer: common practice, no source. What is only thought about is no step.
#[test]
fn what_is_reckoned_about_screws_is_done_where_its_work_is() {
    let (_, questions) = calculators::find("screws").expect("listed").questions().expect("asked");
    let stages = questions.iter().map(|question| {
        let mut job = Job::new("t", Unit::Inch);
        let kept = Kept {
            rank: 1,
            title: "screws".into(),
            slug: "screws".into(),
            entries: vec![("question".into(), question.id.into())],
            left: Vec::new(),
        };
        let change = job.adding(0, Item::Kept(kept));
        let id = change.id;
        job.make(&Step::new("keep", vec![change])).expect("nobody else is here");
        let stage = order(&job).steps.iter().find(|it| it.about == Some(id)).map(|it| it.stage);
        (question.id, stage)
    });
    let stages: Vec<_> = stages.collect();
    assert_eq!(
        stages,
        [
            ("length", Some(Stage::Top)),
            ("pilot", Some(Stage::Holes)),
            ("placing", Some(Stage::Holes)),
            ("pocket", Some(Stage::Holes)),
            ("toe", Some(Stage::Holes)),
            ("corner", Some(Stage::Holes)),
            ("hold", None),
            ("buy", None),
        ]
    );
}
