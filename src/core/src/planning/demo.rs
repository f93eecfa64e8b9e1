//! The demo in the middle of the work: its boards are bought, three are cut, and one leg came out thin.

use super::wanted::{OPTIONS, from_job_book, options, start_entries};
use crate::cutting::{Backing, CutBoard, Layer, Layout, Placed, Plan, Source, Strip, Ties, Units};
use crate::job::demo::demo;
use crate::job::{CutPlan, Dimension, History, Item, Job, Reckoned, Step};
use crate::sheet::{Ask, Bench};

/// A layer: where it starts, how thick it is, and its parts with where each starts.
type LayerOf = (Units, Units, &'static [(usize, Units)]);
/// A strip: where it starts, how wide it is, its layers. One of no width is a board that is not ripped.
type StripOf = (Units, Units, &'static [LayerOf]);

/// The plan that the planner finds for the demo, in eighths of an inch. The planner's tests find it again.
#[rustfmt::skip]
const BOARDS: &[(Source, &[StripOf])] = &[
    (Source::Board(0), &[(1, 26, &[(0, 26, &[(0, 4), (0, 273)])])]),
    (Source::Board(0), &[(1, 26, &[(0, 26, &[(0, 4), (0, 273)])])]),
    (Source::Board(2), &[
        (1, 26, &[(0, 12, &[(1, 4), (2, 333)])]),
        (28, 26, &[(0, 12, &[(1, 4), (2, 333), (3, 458), (3, 583)])]),
    ]),
    (Source::Board(4), &[(0, 0, &[(0, 0, &[(6, 4), (6, 101)])])]),
    (Source::Board(6), &[(1, 38, &[(0, 8, &[(4, 4), (4, 409)])])]),
    (Source::Board(6), &[(1, 38, &[(0, 8, &[(4, 4), (4, 409)])])]),
    (Source::Board(7), &[
        (1, 20, &[(0, 6, &[(5, 4), (5, 169), (5, 334)])]),
        (22, 20, &[(0, 6, &[(5, 4), (5, 169), (5, 334)])]),
    ]),
    (Source::Board(9), &[(0, 0, &[(0, 0, &[(7, 4)])])]),
    (Source::Scrap(1), &[(1, 38, &[(0, 8, &[(4, 4)])])]),
    (Source::Scrap(2), &[(1, 20, &[(0, 6, &[(5, 4), (5, 169)])]), (22, 20, &[(0, 6, &[(5, 4), (5, 169)])])]),
    (Source::Scrap(2), &[(1, 20, &[(0, 6, &[(5, 4), (5, 169)])]), (22, 20, &[(0, 6, &[(5, 4), (5, 169)])])]),
];

/// What the boards of the plan cost: two posts of 8 ft at 11.80, and 10.90, 8.20, two at 14.25, 4.15 and 3.85.
const COST_CENTS: i64 = 7_920;

/// What the planner proves of it. The planner's tests find it again.
const BACKING: Backing = Backing {
    is_proved: true,
    is_checked: true,
    ties: Some(Ties {
        fewest_boards: true,
        fewest_settings: true,
        fewest_cuts: false,
        longest_offcut: false,
    }),
    in_place_of: None,
};

/// How many boards are cut.
const CUT: usize = 3;

/// The thickness of the second leg on the tape, in place of 3 1/4.
const THIN_LEG: &str = "3 3/16";

/// The demo in the middle of the work, with the steps that led there: each can be taken back.
#[must_use]
pub fn demo_in_work() -> (Job, History) {
    let (mut job, mut history) = (demo(), History::default());
    let mut make = |step: &dyn Fn(&Job) -> Option<Step>| {
        if let Some(step) = step(&job) {
            // Each step is made of the job as it stands: there is nothing to be in conflict with.
            let _made = history.make(&mut job, step);
        }
    };
    make(&keeping);
    make(&|job| job.buying(job.find_cut_plan(false)?, None));
    for board in 0..CUT {
        make(&|job| {
            let keep_from = Reckoned::of(job, &Bench::default()).length_of("12").ok()?;
            job.cutting(job.find_cut_plan(false)?, board, keep_from)
        });
    }
    make(&measuring);
    (job, history)
}

fn keeping(job: &Job) -> Option<Step> {
    let bench = Bench::default();
    let reckoned = Reckoned::of(job, &bench);
    let mut entries = start_entries(job);
    // Invented as the whole demo is: nothing of it waits to be confirmed.
    for field in OPTIONS.sheet(&entries, &bench, &reckoned).assumed.fields() {
        entries.set(field.id, field.start_text(&bench, job.unit));
    }
    let mut ask = Ask::new(OPTIONS.fields, &entries, &bench, &reckoned);
    let wanted = from_job_book(job, &reckoned, &bench, &options(&mut ask)?).ok()?;
    let placed = |parts: &[(usize, Units)]| {
        parts.iter().map(|(part, at)| Placed { part: *part, at: *at, turned: false }).collect()
    };
    let layer = |(at, thickness, parts): &LayerOf| Layer {
        at: *at,
        thickness: *thickness,
        parts: placed(parts),
    };
    let layout = |strips: &[StripOf]| match strips {
        [(_, 0, [(_, _, parts)])] => Layout::Crosscut(placed(parts)),
        strips => Layout::RipFirst(
            strips
                .iter()
                .map(|(at, width, layers)| Strip {
                    at: *at,
                    width: *width,
                    layers: layers.iter().map(layer).collect(),
                })
                .collect(),
        ),
    };
    let boards = BOARDS
        .iter()
        .map(|(source, strips)| CutBoard { source: *source, layout: layout(strips) })
        .collect();
    let plan = Plan { boards, left_out: Vec::new(), cost_cents: COST_CENTS };
    let typed = entries.pairs().map(|(id, text)| (id.to_owned(), text.to_owned())).collect();
    Some(job.keeping_plan(CutPlan {
        title: "Boards".to_owned(),
        is_list: false,
        entries: typed,
        asked: wanted.job,
        labels: wanted.labels,
        pieces: wanted.pieces,
        plan,
        bound_cents: COST_CENTS,
        backing: Some(BACKING),
        paid_cents: 0,
    }))
}

/// The second leg is measured.
fn measuring(job: &Job) -> Option<Step> {
    let (id, part) = job.parts().into_iter().find(|(_, part)| part.name == "leg")?;
    let piece = part.piece(1).measured(Dimension::Thickness, Some(THIN_LEG.to_owned()));
    let new = Item::Part(part.clone().with_piece(1, piece));
    Some(Step::new("measure leg 2", vec![job.replacing(id, new)]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::attention::{Fact, attention};
    use crate::calculators;
    use crate::cutting::{CheckOptions, check_plan};
    use crate::measure::length;
    use crate::planning::so_far::{Board, so_far};
    use crate::to_buy::to_buy;

    /// By hand: 11 boards, three of them cut; 4 legs and 6 rails are cut of 34 pieces; all eight boards of the yard are
    /// bought for 2 × 11.80 + 10.90 + 8.20 + 2 × 14.25 + 4.15 + 3.85 = 79.20.
    #[test]
    fn the_demo_stands_in_the_middle_of_the_work() {
        let (job, history) = demo_in_work();
        assert_eq!(history.made().count(), 6);
        let bench = Bench::default();
        let reckoned = Reckoned::of(&job, &bench);
        let so_far = so_far(&job, &reckoned);
        assert_eq!((so_far.count(Board::Cut), so_far.boards.len()), (3, 11));
        assert_eq!((so_far.pieces_cut, so_far.pieces), (10, 34));
        let money = to_buy(&job, &reckoned, &bench).money;
        assert_eq!((money.spent, money.to_come), (7_920, 0));
        let thin =
            attention(&job, &reckoned, &bench).facts.into_iter().find_map(|fact| match fact {
                Fact::Off { pieces, of, is, wanted, .. } => Some((pieces, of, is, wanted)),
                _ => None,
            });
        let (is, wanted) =
            (length("3 3/16").expect("a length"), length("3 1/4").expect("a length"));
        assert_eq!(thin, Some((vec![1], Dimension::Thickness, is, wanted)));
    }

    /// By hand: 5 planks over 2 short rails with 2 screws each time are 20, and a tenth more are 22, of 120 that are there; 14
    /// slats over 2 long rails with 2 each time are 56, and a tenth more, 61.6, are 62, and none of 2 in is there.
    #[test]
    fn its_screws_are_in_the_list_to_buy() {
        let (job, _) = demo_in_work();
        let bench = Bench::default();
        let list = to_buy(&job, &Reckoned::of(&job, &bench), &bench);
        let screws: Vec<_> = list
            .lines
            .iter()
            .filter(|line| line.name == "No. 8 screws")
            .map(|it| (it.what().to_string(), it.how_many(), it.uses()))
            .collect();
        let row = |what: &str, count: &str, uses: &str| {
            (format!("No. 8 screws, {what} long"), count.to_owned(), format!("for {uses}"))
        };
        let shelf =
            row("2 in", "62 wanted, 6 of them spare, 62 to buy", "Shelf slats screwed down");
        let planks = row(
            "2 1/2 in",
            "22 wanted, 2 of them spare, 22 that I have, nothing to buy",
            "Planks screwed down",
        );
        assert_eq!(screws, [planks, shelf]);
        // Nobody is asked to count what is counted.
        assert_eq!(list.in_the_way.len(), 1, "{:?}", list.in_the_way);
    }

    #[test]
    fn its_plan_keeps_every_rule() {
        let (job, _) = demo_in_work();
        let (kept, _) = job.find_cut_plan(false).and_then(|id| job.cut_plan(id)).expect("a plan");
        assert_eq!(check_plan(&kept.asked, &kept.plan, CheckOptions::default()), Ok(()));
    }

    /// Taken back step by step it is the demo as it began.
    #[test]
    fn every_step_can_be_taken_back() {
        let (mut job, mut history) = demo_in_work();
        while history.undo(&mut job).is_ok_and(|undone| undone) {}
        let items =
            |job: &Job| job.items().map(|(id, item)| (id, item.clone())).collect::<Vec<_>>();
        assert_eq!(items(&job), items(&demo()));
    }

    /// Every reckoning of the demo has its answer, and none has a fault.
    #[test]
    fn its_reckonings_are_without_faults() {
        let (job, _) = demo_in_work();
        let bench = Bench::default();
        let reckoned = Reckoned::of(&job, &bench);
        for (_, kept) in job.kept() {
            let calculator = calculators::find(&kept.slug).expect("a calculator");
            let sheet = calculator.sheet(&kept.as_entries(job.unit), &bench, &reckoned);
            let faults: Vec<String> =
                sheet.refusals.iter().map(|it| it.sentence.to_string()).collect();
            assert_eq!(faults, Vec::<String>::new(), "{}", kept.title);
            assert!(sheet.answer.is_some(), "{}", kept.title);
        }
    }
}
