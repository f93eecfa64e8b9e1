//! Reports of random plans: nothing is lost between the plan and what the builder reads, and no writing runs into other
//! writing.

use reckoner_core::cutting::scale::CommonUnit;
use reckoner_core::cutting::{CutKind, Job, Layout, Plan};
use reckoner_core::drawing::{Anchor, SCENE_WIDTH, Scene, Shape};
use reckoner_core::job::cut_labels::{Label, Labels, Money, SectionLabel};
use reckoner_core::measure::{Length, Tape};
use reckoner_core::planning::report::{BoardCut, How, Report, What, report};

use crate::random::{ripped, straight};
use crate::support::{Dice, solve};

fn labels(job: &Job) -> Labels {
    let names = ["leg", "long rail, upper", "slat", "end bracket, left and right", "a", "kneeler"];
    let named = |at: usize| Label { item: None, name: names[at % names.len()].to_owned() };
    let size = Some((Length::sixty_fourths(96), Length::sixty_fourths(480)));
    Labels {
        unit: CommonUnit::of(&[(1, 2)]).expect("halves"),
        sections: vec![SectionLabel { name: "2x8".to_owned(), size }; job.sections.len()],
        parts: (0..job.parts.len()).map(named).collect(),
        boards: (0..job.boards.len()).map(named).collect(),
        scraps: (0..job.scraps.len()).map(named).collect(),
        money: Money::Cents,
    }
}

fn no_writing_collides(scene: &Scene) {
    let boxes: Vec<[f64; 4]> = scene
        .items
        .iter()
        .filter_map(|item| match &item.shape {
            Shape::Text(x, y, anchor, size, words) => {
                let wide = size.width_of(words, item.role);
                let left = match anchor {
                    Anchor::Start => *x,
                    Anchor::Middle => x - wide / 2.0,
                    Anchor::End => x - wide,
                };
                Some([left, y - size.height() * 0.8, left + wide, y + size.height() * 0.2])
            }
            _ => None,
        })
        .collect();
    for (at, a) in boxes.iter().enumerate() {
        assert!(a[0] > -1.0 && a[2] < SCENE_WIDTH + 1.0, "beside the page: {scene:#?}");
        assert!(a[1] > -1.0 && a[3] < scene.height + 1.0, "off the page: {scene:#?}");
        for b in &boxes[at + 1..] {
            let apart = a[2] <= b[0] || b[2] <= a[0] || a[3] <= b[1] || b[3] <= a[1];
            assert!(apart, "{a:?} and {b:?} collide: {scene:#?}");
        }
    }
}

fn rows_have_no_gap(board: &BoardCut) {
    for row in &board.rows {
        let mut at = Length::ZERO;
        for stretch in &row.stretches {
            assert_eq!(stretch.from, at, "{row:?}");
            assert!(stretch.to > stretch.from, "{row:?}");
            at = stretch.to;
        }
        assert_eq!(at, board.length, "{row:?}");
    }
}

fn pieces_in(board: &BoardCut) -> usize {
    let stretches = board.rows.iter().flat_map(|row| &row.stretches);
    stretches
        .map(|stretch| match &stretch.what {
            What::Part { .. } => 1,
            What::Block { parts, .. } => parts.len(),
            _ => 0,
        })
        .sum()
}

fn nothing_is_lost(job: &Job, plan: &Plan, report: &Report) {
    for (cut, board) in plan.boards.iter().zip(&report.boards) {
        let placed = cut.placed().len();
        assert_eq!(pieces_in(board), placed);
        let told: u32 = board.parts.iter().map(|(_, count)| count).sum();
        assert_eq!(usize::try_from(told).expect("small"), placed);
        let of = |kind: CutKind| -> u32 {
            board.orders.iter().filter(|order| order.kind == kind).map(|order| order.pieces).sum()
        };
        if !matches!(cut.layout, Layout::CrosscutFirst(_)) {
            assert_eq!(usize::try_from(of(CutKind::Crosscut)).expect("small"), placed);
        }
        rows_have_no_gap(board);
        no_writing_collides(&board.scene);
    }
    let in_batches: u32 = report.batches.iter().map(|batch| batch.pieces).sum();
    let in_orders: u32 = report
        .boards
        .iter()
        .flat_map(|board| &board.orders)
        .filter(|order| order.kind.is_set_once())
        .map(|order| order.pieces)
        .sum();
    assert_eq!(in_batches, in_orders);
    let effort = plan.effort(job).expect("of this job");
    assert_eq!(report.batches.len(), effort.settings.len());
    let sum: i64 = report.shopping.iter().filter_map(|line| line.price).map(|price| price.1).sum();
    assert_eq!(sum, plan.price(job).expect("of this job"));
}

#[test]
fn nothing_is_lost_between_the_plan_and_the_report() {
    let (mut seen, mut blocks) = (0, 0);
    for seed in 0..600 {
        let mut dice = Dice(seed);
        let job = if dice.one_in(2) { straight(&mut dice, 14) } else { ripped(&mut dice, 9) };
        if job.validate().is_err() {
            continue;
        }
        let Ok(outcome) = solve(&job, 2_000_000) else { continue };
        let how = How { tape: Tape::SIXTEENTHS, keep_from: Length::sixty_fourths(128) };
        let report = report(&job, &outcome.plan, &labels(&job), how).expect("of this job");
        nothing_is_lost(&job, &outcome.plan, &report);
        let is_block =
            |cut: &reckoner_core::cutting::CutBoard| matches!(cut.layout, Layout::CrosscutFirst(_));
        blocks += outcome.plan.boards.iter().filter(|cut| is_block(cut)).count();
        seen += 1;
    }
    assert!(seen > 200 && blocks > 10, "{seen} {blocks}");
}
