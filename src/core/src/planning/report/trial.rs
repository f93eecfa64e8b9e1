//! What the tests of a plan beside others share: a small yard, and plans of it.

use super::seen::How;
use crate::cutting::scale::CommonUnit;
use crate::cutting::{
    Board, CutBoard, Ends, Job, Layout, Part, Placed, Plan, SawRules, Scrap, Section, Source,
};
use crate::job::cut_labels::{Label, Labels, Money, SectionLabel};
use crate::measure::{Tape, length};

const RAIL: i64 = 320;

/// In eighths: six rails of 40 in; 12 ft at 9.80, 8 ft at 7.00, and three of 12 ft at 9.50. Kerf 1/8, trims 1/2.
pub(super) fn yard() -> (Job, Labels) {
    let board = |id: &str, length, price_cents, limit| Board {
        id: id.into(),
        section: "a".into(),
        length,
        price_cents,
        limit,
        trims: Ends { left: 4, right: 4 },
        knots: Vec::new(),
    };
    let named = |name: &str| Label { item: None, name: name.to_owned() };
    let job = Job {
        sections: vec![Section { id: "a".into(), wood: "fir".into(), size: None }],
        parts: vec![Part {
            id: "rail".into(),
            name: "rail".into(),
            section: "a".into(),
            length: RAIL,
            quantity: 6,
            priority: 1,
            may_rip: false,
            may_resaw: false,
            grain_free: false,
        }],
        boards: vec![
            board("long", 1152, 980, None),
            board("short", 768, 700, None),
            board("old", 1152, 950, Some(3)),
        ],
        scraps: Vec::<Scrap>::new(),
        saw: SawRules { kerf: 1, rip: None },
    };
    let labels = Labels {
        unit: CommonUnit::of(&[(1, 8)]).expect("eighths"),
        sections: vec![SectionLabel { name: "2x4".to_owned(), size: None }],
        parts: vec![named("rail")],
        boards: vec![named("2x4"); 3],
        scraps: Vec::new(),
        money: Money::Cents,
    };
    (job, labels)
}

/// So many rails on each of these boards, from the left end.
pub(super) fn plan(job: &Job, boards: &[(usize, i64)]) -> Plan {
    let cut = |&(board, rails): &(usize, i64)| CutBoard {
        source: Source::Board(board),
        layout: Layout::Crosscut(
            (0..rails).map(|n| Placed { part: 0, at: 4 + n * (RAIL + 1), turned: false }).collect(),
        ),
    };
    let mut plan = Plan { boards: boards.iter().map(cut).collect(), ..Plan::default() };
    plan.cost_cents = plan.price(job).expect("boards of the job");
    plan
}

pub(super) fn how(keep_from: &str) -> How {
    How { tape: Tape::SIXTEENTHS, keep_from: length(keep_from).expect("a length") }
}
