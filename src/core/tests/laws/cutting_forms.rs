//! The forms of the cut planner, whatever stands in their fields.

use proptest::prelude::*;
use reckoner_core::calculators::Calculator;
use reckoner_core::job::demo::demo;
use reckoner_core::job::{Item, Job, Reckoned, Step};
use reckoner_core::measure::text::NoNames;
use reckoner_core::planning::quick_list::{QUICK_LIST, quick_list};
use reckoner_core::planning::wanted::{OPTIONS, Wanted, from_job_book, options};
use reckoner_core::sheet::{Ask, Bench, Entries};

use crate::judged::{self, Judged, answered};

/// A text that someone or something might leave in a field of a list.
fn text() -> impl Strategy<Value = String> {
    let piece = prop_oneof![
        (1_u32..300, 0_u32..64).prop_map(|(whole, part)| format!("{whole} {part}/64")),
        (1_u32..40, 1_u32..90).prop_map(|(count, long)| format!("{count} @ {long}")),
        (1_u32..9, 1_u32..90).prop_map(|(count, long)| format!("leg: {count} @ {long} mm")),
        (20_u32..200, 0_u32..3000).prop_map(|(long, price)| format!("{long} at {price}.50")),
        (20_u32..200, 0_u32..9).prop_map(|(long, most)| format!("{long} at 9 max {most}")),
        (20_u32..200, 1_u32..12).prop_map(|(long, wide)| format!("{long} wide {wide}")),
        (20_u32..200, 1_u32..12).prop_map(|(long, wide)| format!("{long} wide {wide} at 9")),
        (2_u32..40, 1_u32..12).prop_map(|(long, wide)| format!("{long} x {wide} 1/2")),
        Just("1/3 + 1/7".to_owned()),
        Just("1/99999989".to_owned()),
        Just("1/999999999999999989".to_owned()),
        Just("100000".to_owned()),
        Just("0".to_owned()),
        Just("-4".to_owned()),
        Just("1000 @ 1/64".to_owned()),
        Just("96 at 99999999999".to_owned()),
        Just("yes".to_owned()),
        Just(":@ wide at max".to_owned()),
        "\\PC{0,12}",
    ];
    prop::collection::vec(piece, 0..4).prop_map(|pieces| pieces.join(", "))
}

fn entries(form: &'static Calculator) -> impl Strategy<Value = Entries> {
    let field = any::<prop::sample::Index>();
    prop::collection::vec((field, text()), 0..6).prop_map(move |texts| {
        let texts = texts.into_iter().map(|(field, text)| (field.get(form.fields).id, text));
        Entries::from_pairs(texts)
    })
}

/// The demo with the texts of some of its sizes replaced.
fn spoilt_demo() -> impl Strategy<Value = Job> {
    let change = (any::<prop::sample::Index>(), 0_usize..4, text());
    prop::collection::vec(change, 0..4).prop_map(|changes| {
        let mut job = demo();
        for (at, which, text) in changes {
            let items: Vec<_> = job.items().map(|(id, item)| (id, item.clone())).collect();
            let (id, item) = at.get(&items).clone();
            let spoilt = match item {
                Item::Part(mut part) => {
                    *[&mut part.thickness, &mut part.width, &mut part.length, &mut part.stock]
                        [which] = text;
                    Item::Part(part)
                }
                Item::RackBoard(mut board) => {
                    *[
                        &mut board.thickness,
                        &mut board.width,
                        &mut board.length,
                        &mut board.knots,
                    ][which] = text;
                    Item::RackBoard(board)
                }
                Item::YardBoard(mut board) => {
                    *[
                        &mut board.thickness,
                        &mut board.width,
                        &mut board.length,
                        &mut board.section,
                    ][which] = text;
                    Item::YardBoard(board)
                }
                other => other,
            };
            let change = job.replacing(id, spoilt);
            job.make(&Step::new("spoil", vec![change])).expect("nobody else is here");
        }
        job
    })
}

#[test]
fn a_quick_list_is_a_job_or_refuses_with_a_reason() {
    let judged = Judged::default();
    let drawn = entries(&QUICK_LIST);
    judged::law(ProptestConfig::with_cases(1500), &drawn, |entries| {
        let bench = Bench::default();
        let mut ask = Ask::new(QUICK_LIST.fields, &entries, &bench, &NoNames);
        let wanted = quick_list(&mut ask);
        let (_, refusals) = ask.finish();
        prop_assert_eq!(wanted.is_none(), !refusals.is_empty());
        for refusal in &refusals {
            prop_assert!(QUICK_LIST.fields.iter().any(|field| field.id == refusal.field));
            prop_assert!(!refusal.sentence.to_string().is_empty());
        }
        let Some(wanted) = wanted else {
            judged.note("refused", 1);
            return Ok(());
        };
        judged.note("a job", 1);
        // What no planner takes is refused where it is written.
        prop_assert_eq!(wanted.job.validate(), Ok(()));
        Ok(())
    });
    judged.at_least(600, "refused");
    judged.at_least(200, "a job");
}

/// Whether a job is one that no planner takes, which is told with a way out.
fn is_told(wanted: &Wanted) -> bool {
    let Err(problem) = wanted.job.validate() else { return false };
    let told = wanted.labels.explain(&wanted.job, &problem);
    assert!(!told.sentence.to_string().is_empty() && !told.way_out.to_string().is_empty());
    true
}

/// What a job book can say and no planner takes: a knot beyond the end of its board.
#[test]
fn a_knot_beyond_its_board_is_told_with_a_way_out() {
    let bench = Bench::default();
    let mut job = demo();
    let rack = job.items().find_map(|(id, item)| match item {
        Item::RackBoard(board) => Some((id, board.clone())),
        _ => None,
    });
    let (id, mut board) = rack.expect("the demo has a rack");
    board.knots = "9000 to 9001".to_owned();
    let step = Step::new("spoil", vec![job.replacing(id, Item::RackBoard(board))]);
    job.make(&step).expect("nobody else is here");
    let fresh = Entries::default();
    let options = options(&mut Ask::new(OPTIONS.fields, &fresh, &bench, &NoNames));
    let wanted = from_job_book(&job, &Reckoned::of(&job, &bench), &bench, &options.expect("ours"));
    assert!(is_told(&wanted.expect("a cutting job")));
}

#[test]
fn a_job_book_is_a_cutting_job_or_says_what_is_in_the_way() {
    let judged = Judged::default();
    // Each case works a whole job out.
    judged::law(judged::cases(300), &(spoilt_demo(), entries(&OPTIONS)), |(job, entries)| {
        let bench = Bench::default();
        let mut ask = Ask::new(OPTIONS.fields, &entries, &bench, &NoNames);
        let read = options(&mut ask);
        let (_, refusals) = ask.finish();
        prop_assert_eq!(read.is_none(), !refusals.is_empty());
        let options = answered(read.ok_or("refused"))?;
        match from_job_book(&job, &Reckoned::of(&job, &bench), &bench, &options) {
            Ok(wanted) => {
                prop_assert_eq!(wanted.labels.parts.len(), wanted.job.parts.len());
                prop_assert_eq!(wanted.labels.sections.len(), wanted.job.sections.len());
                prop_assert_eq!(wanted.pieces.len(), wanted.job.parts.len());
                judged.note("told", usize::from(is_told(&wanted)));
                judged.note("a job", 1);
            }
            Err(problems) => {
                prop_assert!(!problems.is_empty());
                for problem in problems {
                    prop_assert!(!problem.sentence().to_string().is_empty());
                    prop_assert!(!problem.way_out().to_string().is_empty());
                }
                judged.note("in the way", 1);
            }
        }
        Ok(())
    });
    judged.at_least(75, "a job");
    judged.at_least(75, "in the way");
}
