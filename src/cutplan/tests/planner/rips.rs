//! Ripping and resawing in jobs of the size people have.

use reckoner_core::cutting::{
    Board, CrossSize, CutProblem, Ends, Job, Layout, Part, ResawRules, RipRules, SawRules, Section,
};

use crate::support::{board, part, solve};

/// Sixteenths of an inch: whole inches, and sixteenths over.
fn inches(whole: i64, sixteenths: i64) -> i64 {
    whole * 16 + sixteenths
}

fn section(id: &str, width: i64, thickness: i64) -> Section {
    Section { id: id.into(), wood: "fir".into(), size: Some(CrossSize { width, thickness }) }
}

fn from(section: &str, part: Part) -> Part {
    Part { section: section.into(), ..part }
}

fn yard(section: &str, feet: i64, price: i64) -> Board {
    Board {
        section: section.into(),
        trims: Ends { left: 8, right: 8 },
        ..board(format!("{section} x {feet}"), inches(feet * 12, 0), price, None)
    }
}

fn rules() -> RipRules {
    RipRules {
        kerf: 2,
        near_edge: 4,
        far_edge: 0,
        least_width: 8,
        least_length: 0,
        crosscut_first: false,
        resaw: None,
    }
}

/// Worked by hand: a 9 1/4 board, 1/4 lost cleaning the first edge, strips of 1 3/4, kerf 1/8: four strips.
#[test]
fn four_strips_from_a_wide_board() {
    let strips = |count| Job {
        sections: vec![section("2x10", 148, 24), section("strip", 28, 24)],
        parts: vec![from("strip", part("strip".into(), 160, count))],
        boards: vec![Board { section: "2x10".into(), ..board("wide".into(), 160, 900, None) }],
        scraps: vec![],
        saw: SawRules { kerf: 2, rip: Some(rules()) },
    };
    assert_eq!(solve(&strips(4), 1_000_000_000).unwrap().plan.boards.len(), 1);
    assert_eq!(solve(&strips(5), 1_000_000_000).unwrap().plan.boards.len(), 2);
}

/// Worked by hand: a 3 1/2 post, 1/8 off each face, gives four pieces 1 9/16 square: ripped once, resawn once.
#[test]
fn four_square_legs_from_a_post() {
    let job = Job {
        sections: vec![section("4x4", 56, 56), section("leg", 25, 25)],
        parts: vec![from("leg", part("leg".into(), 480, 4))],
        boards: vec![Board { section: "4x4".into(), ..board("post".into(), 480, 1_200, None) }],
        scraps: vec![],
        saw: SawRules {
            kerf: 2,
            rip: Some(RipRules {
                near_edge: 2,
                far_edge: 2,
                resaw: Some(ResawRules {
                    kerf: 2,
                    near_face: 2,
                    far_face: 2,
                    least_thickness: 8,
                    greatest_width: None,
                }),
                ..rules()
            }),
        },
    };
    let outcome = solve(&job, 1_000_000_000).unwrap();
    assert!(outcome.proved);
    assert_eq!(outcome.plan.boards.len(), 1);
    let Layout::RipFirst(strips) = &outcome.plan.boards[0].layout else {
        panic!("not ripped");
    };
    assert!(strips.len() == 2 && strips.iter().all(|strip| strip.layers.len() == 2));
}

/// An invented potting bench for a school garden: rails, slats and battens from 2x4, 2x6 and 2x10, all invented prices.
fn potting_bench(rip: bool) -> Job {
    let sizes = [("2x4", 56), ("2x6", 88), ("2x10", 148), ("slat", 40), ("batten", 24)];
    let sections = sizes.map(|(id, width)| section(id, width, 24)).to_vec();
    let wanted = [
        ("2x4", 34, 0, 4),
        ("2x4", 45, 8, 4),
        ("2x4", 21, 4, 6),
        ("2x4", 58, 0, 2),
        ("2x6", 60, 0, 5),
        ("2x6", 22, 8, 3),
        ("slat", 44, 12, 9),
        ("slat", 19, 6, 8),
        ("batten", 21, 0, 6),
        ("batten", 58, 0, 2),
        ("2x10", 24, 0, 2),
    ];
    let parts = wanted
        .iter()
        .enumerate()
        .map(|(n, &(s, whole, over, count))| {
            from(s, part(format!("P{n}"), inches(whole, over), count))
        })
        .collect();
    let mut boards = Vec::new();
    for (name, prices) in [
        ("2x4", [398, 512, 655, 940]),
        ("2x6", [620, 815, 990, 1_405]),
        ("2x10", [1_180, 1_520, 1_840, 2_575]),
    ] {
        for (feet, price) in [8, 10, 12, 16].into_iter().zip(prices) {
            boards.push(yard(name, feet, price));
        }
    }
    Job { sections, parts, boards, scraps: vec![], saw: SawRules { kerf: 2, rip: rip.then(rules) } }
}

#[test]
fn ripping_makes_the_bench_possible() {
    // Without rips there is no slat and no batten to be had.
    assert!(matches!(
        solve(&potting_bench(false), 1_000_000),
        Err(CutProblem::PartFitsNowhere { .. })
    ));
}

#[test]
fn a_bench_that_needs_rips_is_proved() {
    let outcome = solve(&potting_bench(true), 4_000_000_000).unwrap();
    assert!(outcome.proved, "{} {}", outcome.plan.cost_cents, outcome.bound_cents);
}

/// Two names for boards of one wood and one size: a piece of the one comes off a board of the other as it is, but as a
/// strip of its own size, for a board that is only crosscut has its own pieces.
#[test]
fn a_piece_of_another_name_and_the_same_size_is_not_the_boards_own() {
    let job = |of: &str| Job {
        sections: vec![section("2x4", 56, 24), section("rail", 56, 24)],
        parts: vec![from(of, part("piece".into(), 160, 2))],
        boards: vec![Board { section: "2x4".into(), ..board("board".into(), 480, 900, None) }],
        scraps: vec![],
        saw: SawRules { kerf: 2, rip: Some(RipRules { near_edge: 0, ..rules() }) },
    };
    let layout = |of: &str| {
        let outcome = solve(&job(of), 1_000_000).unwrap();
        assert!(outcome.proved);
        outcome.plan.boards[0].layout.clone()
    };
    assert!(matches!(layout("2x4"), Layout::Crosscut(parts) if parts.len() == 2));
    assert!(matches!(layout("rail"), Layout::RipFirst(strips) if strips.len() == 1));
}
