//! The checker refuses a plan that breaks any one rule.

use reckoner_core::cutting::{
    Block, Certificate, CertificateFault, CheckOptions, Claim, CrossSize, CutBoard, Ends, Fault,
    Job, KnotZone, Layer, Layout, LeftOut, Part, Placed, Plan, ResawRules, RipRules, SawRules,
    Section, Source, Strip, check_certificate, check_plan,
};

use crate::support::{board, job, part, scrap};

fn at(part: usize, at: i64) -> Placed {
    Placed { part, at, turned: false }
}

/// Board of 40 with trims of 1, knot from 20 to 22; parts 8 and 10; kerf 1; a scrap of 12.
fn straight() -> (Job, Plan) {
    let mut long = board("long".into(), 40, 300, Some(1));
    long.trims = Ends { left: 1, right: 1 };
    long.knots = vec![KnotZone { from: 20, to: 22 }];
    let job = job(
        vec![part("a".into(), 8, 3), part("b".into(), 10, 1)],
        vec![long],
        vec![scrap("s".into(), 12, 1)],
        1,
    );
    let plan = Plan {
        boards: vec![
            CutBoard {
                source: Source::Board(0),
                layout: Layout::Crosscut(vec![at(0, 1), at(0, 10), at(1, 22)]),
            },
            CutBoard { source: Source::Scrap(0), layout: Layout::Crosscut(vec![at(0, 4)]) },
        ],
        left_out: vec![],
        cost_cents: 300,
    };
    (job, plan)
}

fn check(job: &Job, plan: &Plan) -> Result<(), Fault> {
    check_plan(job, plan, CheckOptions::default())
}

fn row(plan: &mut Plan, board: usize) -> &mut Vec<Placed> {
    match &mut plan.boards[board].layout {
        Layout::Crosscut(parts) => parts,
        _ => panic!("not a crosscut board"),
    }
}

#[test]
fn crosscut_rules() {
    let (good_job, good) = straight();
    assert_eq!(check(&good_job, &good), Ok(()));
    let broken = |change: &dyn Fn(&mut Job, &mut Plan)| {
        let (mut job, mut plan) = straight();
        change(&mut job, &mut plan);
        check(&job, &plan).unwrap_err()
    };
    assert_eq!(broken(&|_, p| row(p, 0)[0].at = 0), Fault::BeforeStart { board: 0 });
    assert_eq!(broken(&|_, p| row(p, 0)[1].at = 9), Fault::TooClose { board: 0 });
    assert_eq!(broken(&|_, p| row(p, 0)[1].at = 13), Fault::InKnot { board: 0 });
    assert_eq!(broken(&|_, p| row(p, 0)[2].at = 21), Fault::InKnot { board: 0 });
    assert_eq!(broken(&|_, p| row(p, 0)[2].at = 30), Fault::PastEnd { board: 0 });
    assert_eq!(broken(&|_, p| row(p, 1)[0].at = 5), Fault::PastEnd { board: 1 });
    assert_eq!(broken(&|_, p| row(p, 0).swap(0, 1)), Fault::TooClose { board: 0 });
    assert_eq!(broken(&|_, p| p.cost_cents = 299), Fault::WrongCost { actual_cents: 300 });
    assert_eq!(broken(&|_, p| row(p, 1)[0].part = 7), Fault::NotInJob { board: 1 });
    assert_eq!(broken(&|_, p| p.boards[0].source = Source::Board(1)), Fault::NotInJob { board: 0 });
    assert_eq!(broken(&|_, p| row(p, 1).clear()), Fault::NothingCut { board: 1 });
    assert_eq!(
        broken(&|_, p| {
            row(p, 0).pop();
        }),
        Fault::WrongCount { part: "b".into(), wanted: 1, planned: 0 }
    );
    assert_eq!(
        broken(&|j, _| j.parts[0].quantity = 2),
        Fault::WrongCount { part: "a".into(), wanted: 2, planned: 3 }
    );
    assert_eq!(
        broken(&|_, p| {
            let again = p.boards[1].clone();
            p.boards.push(again);
        }),
        Fault::OverLimit { id: "s".into() }
    );
    assert_eq!(
        broken(&|_, p| row(p, 0)[0].turned = true),
        Fault::TurnedGrain { board: 0, part: "a".into() }
    );
    assert_eq!(
        broken(&|j, _| {
            j.sections.push(Section { id: "other".into(), wood: "any".into(), size: None });
            j.parts[1].section = "other".into();
        }),
        Fault::WrongStock { board: 0, part: "b".into() }
    );
    let left_out = |p: &mut Plan| {
        row(p, 0).pop();
        p.left_out = vec![LeftOut { part: 1, quantity: 1 }];
    };
    assert_eq!(broken(&|_, p| left_out(p)), Fault::LeftOut);
    let (job, mut plan) = straight();
    left_out(&mut plan);
    assert_eq!(check_plan(&job, &plan, CheckOptions { may_leave_out: true }), Ok(()));
    // A wider kerf: the pieces at 1 and 10 are no longer far enough apart.
    assert_eq!(broken(&|j, _| j.saw.kerf = 2), Fault::TooClose { board: 0 });
    // The saw must pass through a zone: a kerf of 3 blocks 20 to 23.
    assert_eq!(
        broken(&|j, p| {
            j.saw.kerf = 3;
            p.boards.remove(1);
            *row(p, 0) = vec![at(0, 1), at(1, 22)];
        }),
        Fault::InKnot { board: 0 }
    );
}

/// A board 20 by 9 by 5 ripped into 4 and 3; the strip of 3 resawn into layers of 2.
fn ripped() -> (Job, Plan) {
    let section = |id: &str, width, thickness| Section {
        id: id.into(),
        wood: "any".into(),
        size: Some(CrossSize { width, thickness }),
    };
    let of = |section: &str, id: &str, length, quantity| Part {
        section: section.into(),
        ..part(id.into(), length, quantity)
    };
    let mut wide = board("wide".into(), 20, 700, None);
    wide.section = "nine".into();
    let job = Job {
        sections: vec![section("nine", 9, 5), section("four", 4, 5), section("thin", 3, 2)],
        parts: vec![of("four", "rail", 9, 2), of("thin", "slat", 12, 2)],
        boards: vec![wide],
        scraps: vec![],
        saw: SawRules {
            kerf: 1,
            rip: Some(RipRules {
                kerf: 1,
                near_edge: 1,
                far_edge: 0,
                least_width: 3,
                least_length: 0,
                crosscut_first: true,
                resaw: Some(ResawRules {
                    kerf: 1,
                    near_face: 0,
                    far_face: 0,
                    least_thickness: 2,
                    greatest_width: Some(3),
                }),
            }),
        },
    };
    let layer = |from, parts| Layer { at: from, thickness: 2, parts };
    let plan = Plan {
        boards: vec![CutBoard {
            source: Source::Board(0),
            layout: Layout::RipFirst(vec![
                Strip {
                    at: 1,
                    width: 4,
                    layers: vec![Layer { at: 0, thickness: 5, parts: vec![at(0, 0), at(0, 10)] }],
                },
                Strip {
                    at: 6,
                    width: 3,
                    layers: vec![layer(0, vec![at(1, 0)]), layer(3, vec![at(1, 8)])],
                },
            ]),
        }],
        left_out: vec![],
        cost_cents: 700,
    };
    (job, plan)
}

fn strips(plan: &mut Plan) -> &mut Vec<Strip> {
    match &mut plan.boards[0].layout {
        Layout::RipFirst(strips) => strips,
        _ => panic!("not a ripped board"),
    }
}

fn rules(job: &mut Job) -> &mut RipRules {
    job.saw.rip.as_mut().unwrap()
}

#[test]
fn rip_and_resaw_rules() {
    let (good_job, good) = ripped();
    assert_eq!(check(&good_job, &good), Ok(()));
    let broken = |change: &dyn Fn(&mut Job, &mut Plan)| {
        let (mut job, mut plan) = ripped();
        change(&mut job, &mut plan);
        check(&job, &plan).unwrap_err()
    };
    let size = |part: &str| Fault::WrongSize { board: 0, part: part.into() };
    assert_eq!(broken(&|_, p| strips(p)[0].at = 0), Fault::BeforeStart { board: 0 });
    assert_eq!(broken(&|_, p| strips(p)[1].at = 5), Fault::TooClose { board: 0 });
    assert_eq!(broken(&|_, p| strips(p)[1].at = 7), Fault::PastEnd { board: 0 });
    assert_eq!(broken(&|j, _| rules(j).far_edge = 1), Fault::PastEnd { board: 0 });
    assert_eq!(broken(&|_, p| strips(p)[0].width = 3), size("rail"));
    assert_eq!(broken(&|j, _| rules(j).least_width = 4), Fault::BeyondSaw { board: 0 });
    assert_eq!(broken(&|j, _| j.saw.rip = None), Fault::RipForbidden { board: 0 });
    assert_eq!(broken(&|j, _| j.parts[0].may_rip = false), Fault::RipForbidden { board: 0 });
    assert_eq!(broken(&|j, _| j.parts[1].may_resaw = false), Fault::ResawForbidden { board: 0 });
    assert_eq!(broken(&|j, _| rules(j).resaw = None), Fault::ResawForbidden { board: 0 });
    assert_eq!(broken(&|_, p| strips(p)[1].layers[1].at = 2), Fault::TooClose { board: 0 });
    assert_eq!(broken(&|_, p| strips(p)[1].layers[1].at = 4), Fault::PastEnd { board: 0 });
    assert_eq!(broken(&|_, p| strips(p)[1].layers[1].thickness = 1), Fault::BeyondSaw { board: 0 });
    assert_eq!(
        broken(&|_, p| strips(p)[0].layers[0].parts[1].at = 9),
        Fault::TooClose { board: 0 }
    );
    assert_eq!(
        broken(&|_, p| strips(p)[0].layers[0].parts[1].at = 12),
        Fault::PastEnd { board: 0 }
    );
    assert_eq!(
        broken(&|j, _| j.sections[1].wood = "oak".into()),
        Fault::WrongStock { board: 0, part: "rail".into() }
    );
    assert_eq!(
        broken(&|_, p| strips(p)[0].layers[0].parts[0].turned = true),
        Fault::TurnedGrain { board: 0, part: "rail".into() }
    );
    let resaw = |job: &mut Job| rules(job).resaw.clone().unwrap();
    assert_eq!(
        broken(&|j, _| {
            let narrow = ResawRules { greatest_width: Some(2), ..resaw(j) };
            rules(j).resaw = Some(narrow);
        }),
        Fault::BeyondSaw { board: 0 }
    );
}

#[test]
fn crosscut_first_rules() {
    let blocks = || {
        let (mut job, mut plan) = ripped();
        job.parts[1].quantity = 0;
        plan.boards[0].layout = Layout::CrosscutFirst(vec![
            Block { at: 0, length: 9, parts: vec![at(0, 1)] },
            Block { at: 10, length: 9, parts: vec![at(0, 5)] },
        ]);
        (job, plan)
    };
    fn list(plan: &mut Plan) -> &mut Vec<Block> {
        match &mut plan.boards[0].layout {
            Layout::CrosscutFirst(blocks) => blocks,
            _ => panic!("no blocks"),
        }
    }
    let (job, plan) = blocks();
    assert_eq!(check(&job, &plan), Ok(()));
    let broken = |change: &dyn Fn(&mut Job, &mut Plan)| {
        let (mut job, mut plan) = blocks();
        change(&mut job, &mut plan);
        check(&job, &plan).unwrap_err()
    };
    assert_eq!(broken(&|j, _| rules(j).crosscut_first = false), Fault::RipForbidden { board: 0 });
    assert_eq!(broken(&|_, p| list(p)[1].at = 9), Fault::TooClose { board: 0 });
    assert_eq!(broken(&|_, p| list(p)[1].at = 12), Fault::PastEnd { board: 0 });
    assert_eq!(broken(&|_, p| list(p)[0].parts[0].at = 0), Fault::BeforeStart { board: 0 });
    assert_eq!(broken(&|_, p| list(p)[1].parts[0].at = 6), Fault::PastEnd { board: 0 });
    assert_eq!(broken(&|j, _| rules(j).least_width = 5), Fault::BeyondSaw { board: 0 });
    assert_eq!(broken(&|j, _| j.parts[0].may_rip = false), Fault::RipForbidden { board: 0 });
    let long = Fault::WrongSize { board: 0, part: "rail".into() };
    assert_eq!(broken(&|_, p| list(p)[0].length = 8), long);
    assert_eq!(
        broken(&|_, p| {
            list(p)[0].parts = vec![at(0, 1), at(0, 5)];
            list(p).pop();
        }),
        Fault::TooClose { board: 0 }
    );
}

#[test]
fn certificates_are_worked_out_again() {
    let job = job(
        vec![part("a".into(), 10, 4)],
        vec![board("long".into(), 25, 300, None)],
        vec![scrap("s".into(), 12, 1)],
        1,
    );
    // Two to a board, one from the scrap: three more need two boards.
    let claim = |bound_cents, worth: Vec<i64>| Certificate {
        parts: vec![0],
        bound_cents,
        claim: Claim::Worth(worth),
    };
    assert_eq!(check_certificate(&job, &claim(600, vec![1])), Ok(()));
    assert_eq!(check_certificate(&job, &claim(601, vec![1])), Err(CertificateFault::NotProved));
    assert_eq!(check_certificate(&job, &claim(600, vec![0])), Err(CertificateFault::NotProved));
    assert_eq!(check_certificate(&job, &claim(600, vec![])), Err(CertificateFault::Malformed));
    let finished = Certificate { claim: Claim::SearchFinished, ..claim(600, vec![]) };
    assert_eq!(check_certificate(&job, &finished), Err(CertificateFault::OnlyTheSearchKnows));
    let mut few = job;
    few.boards[0].limit = Some(1);
    // One board and the scrap hold only three: any bound at all is true.
    assert_eq!(check_certificate(&few, &claim(999_999, vec![1])), Ok(()));
}

/// Prices that have no common step are too many for a table: the checker's own bound buys the dearest worth per cent first,
/// the last board in part. By hand: five parts; three short boards give one each for 1,000,000, a long one gives two for
/// 3,000,001. Three short ones and half a long one are four parts for 4,500,000.5, and what is over is counted as a whole
/// part; the cheapest plan, three short and one long, costs 6,000,001.
#[test]
fn a_bound_of_large_prices_is_worked_out_again() {
    let short = |limit| board("short".into(), 12, 1_000_000, limit);
    let long = |limit| board("long".into(), 25, 3_000_001, limit);
    let fault = |boards, bound_cents| {
        let job = job(vec![part("a".into(), 10, 5)], boards, vec![], 1);
        let claim = Claim::Worth(vec![1]);
        check_certificate(&job, &Certificate { parts: vec![0], bound_cents, claim }).err()
    };
    for turned in [false, true] {
        let boards = || {
            let mut boards = vec![short(Some(3)), long(None)];
            if turned {
                boards.reverse();
            }
            boards
        };
        assert_eq!(fault(boards(), 4_500_001), None);
        assert_eq!(fault(boards(), 4_500_002), Some(CertificateFault::NotProved));
        assert_eq!(fault(boards(), 6_000_002), Some(CertificateFault::NotProved));
    }
    // Short ones alone: four cost four million, and a fifth is counted from its first cent.
    assert_eq!(fault(vec![short(None), long(Some(1))], 4_000_001), None);
    assert_eq!(
        fault(vec![short(None), long(Some(1))], 4_000_002),
        Some(CertificateFault::NotProved)
    );
    // Two short ones and a long one hold four: with money for all of them any bound is true.
    assert_eq!(fault(vec![short(Some(2)), long(Some(1))], 90_000_000), None);
}
