//! Reports of plans made by hand.

use super::bars::letter;
use super::*;
use crate::cutting::scale::CommonUnit;
use crate::cutting::{
    Block, Board, CrossSize, CutBoard, CutKind, Ends, KnotZone, Layer, Part, Placed, ResawRules,
    RipRules, SawRules, Scrap, Section, Strip, Ties, Units,
};
use crate::job::cut_labels::{Label, Money, SectionLabel};
use crate::measure::{Length, Tape, length};

/// Eighths of an inch.
fn labels(parts: &[&str], boards: usize, scraps: usize) -> Labels {
    let named = |name: &str| Label { item: None, name: name.to_owned() };
    let size = Some((inches("1 1/2"), inches("9 1/4")));
    Labels {
        unit: CommonUnit::of(&[(1, 8)]).expect("eighths"),
        sections: vec![SectionLabel { name: "2x10".to_owned(), size }; 4],
        parts: parts.iter().map(|name| named(name)).collect(),
        boards: vec![named("2x10"); boards],
        scraps: vec![named("end by the door"); scraps],
        money: Money::Cents,
    }
}

fn inches(text: &str) -> Length {
    length(text).expect("a length")
}

fn part(id: &str, section: &str, length: Units, quantity: u32) -> Part {
    Part {
        id: id.into(),
        name: id.into(),
        section: section.into(),
        length,
        quantity,
        priority: 1,
        may_rip: true,
        may_resaw: true,
        grain_free: false,
    }
}

fn at(part: usize, at: Units) -> Placed {
    Placed { part, at, turned: false }
}

fn section(id: &str, width: Units, thickness: Units) -> Section {
    Section { id: id.into(), wood: "fir".into(), size: Some(CrossSize { width, thickness }) }
}

fn how() -> How {
    How { tape: Tape::SIXTEENTHS, keep_from: inches("6") }
}

/// [WH] C1: a 96 board, 1/2 trim each end, parts 17 1/2, kerf 1/8: five, and 6 7/8 is left. With a knot in what is left.
fn straight() -> (Job, Plan, Labels) {
    let trims = Ends { left: 4, right: 4 };
    let job = Job {
        sections: vec![Section { id: "a".into(), wood: "fir".into(), size: None }],
        parts: vec![part("shelf slat", "a", 140, 5), part("peg", "a", 16, 1)],
        boards: vec![Board {
            id: "yard".into(),
            section: "a".into(),
            length: 768,
            price_cents: 1090,
            limit: None,
            trims,
            knots: vec![],
        }],
        scraps: vec![Scrap {
            id: "rack".into(),
            section: "a".into(),
            length: 80,
            quantity: 1,
            trims: Ends::default(),
            knots: vec![KnotZone { from: 0, to: 8 }, KnotZone { from: 30, to: 40 }],
        }],
        saw: SawRules { kerf: 1, rip: None },
    };
    let five = (0..5).map(|n| at(0, 4 + n * 141)).collect();
    let plan = Plan {
        boards: vec![
            CutBoard { source: Source::Board(0), layout: Layout::Crosscut(five) },
            CutBoard { source: Source::Scrap(0), layout: Layout::Crosscut(vec![at(1, 40)]) },
        ],
        left_out: vec![],
        cost_cents: 1090,
    };
    let labels = labels(&["shelf slat", "peg"], 1, 1);
    (job, plan, labels)
}

fn sentences(board: &BoardCut) -> Vec<String> {
    board.orders.iter().map(|order| order.sentence.to_string()).collect()
}

#[test]
fn a_board_cut_to_length_from_the_left_end() {
    let (job, plan, labels) = straight();
    let report = report(&job, &plan, &labels, how()).expect("a plan of this job");
    assert_eq!(report.headline().to_string(), "Buy 1 board for 10.90.");
    let purchase = &report.shopping[0];
    assert_eq!(
        (purchase.length, purchase.count, purchase.price),
        (inches("96"), 1, Some((1090, 1090)))
    );
    let [board, scrap] = report.boards.as_slice() else { panic!("two boards") };
    assert_eq!(
        sentences(board)[..3],
        [
            "Square the left end; 1/2 in comes off.",
            "shelf slat: stop at 17 1/2 in, cut at 18 in from the left end.",
            "shelf slat: stop at 17 1/2 in, cut at 35 5/8 in from the left end.",
        ]
    );
    assert_eq!(board.parts, [("shelf slat".to_owned(), 5)]);
    let whats: Vec<_> = board.rows[0].stretches.iter().map(|s| (&s.what, s.to)).collect();
    assert_eq!(whats[0], (&What::Trim, inches("1/2")));
    assert_eq!(whats[2], (&What::Kerf, inches("18 1/8")));
    assert_eq!(whats[11..], [(&What::Leftover, inches("95 1/2")), (&What::Trim, inches("96"))]);
    // The knot at the end goes with the end; the other one is cut off, and the kerf lies in it.
    assert_eq!(
        sentences(scrap),
        [
            "Cut off what is before 5 in from the left end.",
            "peg: stop at 2 in, cut at 7 in from the left end.",
        ]
    );
    let kept: Vec<String> = report.offcuts.iter().map(|keep| keep.sentence.to_string()).collect();
    assert_eq!(kept, ["1 × 6 7/8 in from board 1"]);
    let rack = report.offcuts[0].rack.clone().expect("sizes are known");
    assert_eq!(
        (rack.section.as_str(), rack.length.as_str(), rack.width.as_str(), rack.sawn_ends),
        ("2x10", "6 7/8 in", "9 1/4 in", true)
    );
    // Short pieces, the stop of the batches, and what is in the dust and the wood of every cut.
    assert_eq!(
        report.cautions,
        [
            Caution::SmallPiece,
            Caution::StopBlock,
            Caution::DustAndNoise,
            Caution::TreatedWood,
            Caution::Reclaimed
        ]
    );
}

#[test]
fn batches_go_across_boards_the_largest_setting_first() {
    let (mut job, mut plan, labels) = straight();
    job.scraps[0].knots.clear();
    plan.boards[1].layout = Layout::Crosscut(vec![at(1, 0), at(1, 17)]);
    let report = report(&job, &plan, &labels, how()).expect("a plan of this job");
    let batches: Vec<_> =
        report.batches.iter().map(|b| (b.sentence.to_string(), b.cuts.len())).collect();
    assert_eq!(
        batches,
        [("Stop at 17 1/2 in: 5 pieces.".to_owned(), 1), ("Stop at 2 in: 2 pieces.".to_owned(), 1)]
    );
}

/// A 9 1/4 by 1 1/2 board, ripped into 1 3/4 strips and one of 3, which is resawn.
fn ripped() -> (Job, Plan, Labels) {
    let job = Job {
        sections: vec![section("board", 74, 12), section("strip", 14, 12), section("thin", 24, 5)],
        parts: vec![part("batten", "strip", 160, 2), part("slat", "thin", 200, 2)],
        boards: vec![Board {
            id: "yard".into(),
            section: "board".into(),
            length: 480,
            price_cents: 1500,
            limit: None,
            trims: Ends::default(),
            knots: vec![],
        }],
        scraps: vec![],
        saw: SawRules {
            kerf: 1,
            rip: Some(RipRules {
                kerf: 1,
                near_edge: 2,
                far_edge: 0,
                least_width: 2,
                least_length: 48,
                crosscut_first: true,
                resaw: Some(ResawRules {
                    kerf: 1,
                    near_face: 0,
                    far_face: 0,
                    least_thickness: 2,
                    greatest_width: Some(40),
                }),
            }),
        },
    };
    let strip = Strip {
        at: 2,
        width: 14,
        layers: vec![Layer { at: 0, thickness: 12, parts: vec![at(0, 0), at(0, 161)] }],
    };
    let layer = |from| Layer { at: from, thickness: 5, parts: vec![at(1, 0)] };
    let wide = Strip { at: 17, width: 24, layers: vec![layer(0), layer(6)] };
    let layout = Layout::RipFirst(vec![strip, wide]);
    let plan = Plan {
        boards: vec![CutBoard { source: Source::Board(0), layout }],
        left_out: vec![],
        cost_cents: 1500,
    };
    let labels = labels(&["batten", "slat"], 1, 0);
    (job, plan, labels)
}

#[test]
fn a_board_is_ripped_then_resawn_then_cut_to_length() {
    let (job, plan, labels) = ripped();
    assert_eq!(crate::cutting::check_plan(&job, &plan, Default::default()), Ok(()));
    let report = report(&job, &plan, &labels, how()).expect("a plan of this job");
    let [board] = report.boards.as_slice() else { panic!("one board") };
    assert_eq!(
        sentences(board),
        [
            "Clean the near edge: fence at 9 in.",
            "Rip 1 strip: fence at 3 in.",
            "Rip 1 strip: fence at 1 3/4 in.",
            "Strip 1: resaw 2 layers: fence at 5/8 in, from both edges, the same face to the fence.",
            "Strip 1, layer 1: slat: stop at 25 in, cut at 25 in from the left end.",
            "Strip 1, layer 2: slat: stop at 25 in, cut at 25 in from the left end.",
            "Strip 2: batten: stop at 20 in, cut at 20 in from the left end.",
            "Strip 2: batten: stop at 20 in, cut at 40 1/8 in from the left end.",
        ]
    );
    let titles: Vec<String> = board.rows.iter().map(|row| row.title.to_string()).collect();
    assert_eq!(
        titles,
        [
            "Strip 1, layer 1, 3 in wide, 5/8 in thick",
            "Strip 1, layer 2, 3 in wide, 5/8 in thick",
            "Strip 2, 1 3/4 in wide",
        ]
    );
    // 9 1/4 - 1/4 - 1 3/4 - 1/8 - 3 - 1/8 = 4 is left beside the strips, as long as the board.
    let beside = report.offcuts.iter().find(|keep| keep.length == inches("60")).expect("beside");
    let rack = beside.rack.clone().expect("sizes are known");
    assert_eq!((rack.width.as_str(), rack.sawn_ends), ("4 in", false));
    assert!(report.cautions.contains(&Caution::Ripping));
    assert!(report.cautions.contains(&Caution::DeepCut));
    let kinds: Vec<CutKind> = report.batches.iter().map(|batch| batch.kind).collect();
    use CutKind::{Crosscut, Resaw, Rip};
    assert_eq!(kinds, [Rip, Rip, Resaw, Crosscut, Crosscut]);
}

#[test]
fn a_block_is_cut_off_first_and_ripped_then() {
    let (mut job, mut plan, labels) = ripped();
    job.parts = vec![part("batten", "strip", 160, 3)];
    let parts = vec![at(0, 2), at(0, 17), at(0, 32)];
    let block = Block { at: 0, length: 160, parts };
    plan.boards[0].layout = Layout::CrosscutFirst(vec![block]);
    assert_eq!(crate::cutting::check_plan(&job, &plan, Default::default()), Ok(()));
    let report = report(&job, &plan, &labels, how()).expect("a plan of this job");
    assert_eq!(
        sentences(&report.boards[0]),
        [
            "block 1: stop at 20 in, cut at 20 in from the left end.",
            "Block 1: clean the near edge: fence at 9 in.",
            "Block 1: rip 3 strips: fence at 1 3/4 in.",
        ]
    );
    assert_eq!(report.batches[0].sentence.to_string(), "Stop at 20 in: 1 block.");
}

/// Settings and cuts of the three plans above, counted by hand.
#[test]
fn settings_and_cuts_are_counted() {
    let told = |job: &Job, plan: &Plan| {
        let effort = plan.effort(job).expect("a plan of this job");
        (effort.settings.len(), effort.cuts)
    };
    // Stops at 17 1/2 and 2. One end squared and five slats; what is before the peg, and the peg.
    let (job, mut plan, _) = straight();
    assert_eq!(told(&job, &plan), (2, 8));
    // Moved to the end of its board, the peg is what is left once the knot before it is off.
    plan.boards[1].layout = Layout::Crosscut(vec![at(1, 64)]);
    assert_eq!(told(&job, &plan), (2, 7));
    // Fence at 3 and 1 3/4, at 5/8 to resaw, stops at 25 and 20. The edge, two strips, two layers, four parts.
    let (mut job, mut plan, _) = ripped();
    assert_eq!(told(&job, &plan), (5, 9));
    // A board as wide as both strips with their edge and kerf: 1/4 + 3 + 1/8 + 1 3/4. The last strip is what is left.
    job.sections[0].size = Some(CrossSize { width: 41, thickness: 12 });
    assert_eq!(told(&job, &plan), (5, 8));
    // As thick as both layers and their kerf, and the last layer is. The other strip is as thick as the board.
    job.sections[0].size = Some(CrossSize { width: 41, thickness: 11 });
    if let Layout::RipFirst(strips) = &mut plan.boards[0].layout {
        strips[0].layers[0].thickness = 11;
    }
    assert_eq!(told(&job, &plan), (5, 7));
    // One stop, one fence. The block, its edge, three parts.
    job.parts = vec![part("batten", "strip", 160, 3)];
    let block = Block { at: 0, length: 160, parts: vec![at(0, 2), at(0, 17), at(0, 32)] };
    plan.boards[0].layout = Layout::CrosscutFirst(vec![block]);
    job.sections[0].size = Some(CrossSize { width: 74, thickness: 12 });
    assert_eq!(told(&job, &plan), (2, 5));
}

#[test]
fn what_is_proved_of_the_work_is_said_and_what_is_only_found_as_such() {
    let (job, plan, labels) = straight();
    let told = |ties| work(&job, &plan, &labels, ties).expect("a plan of this job").to_string();
    assert_eq!(told(None), "2 settings of fence and stop, 8 cuts.");
    let mut ties = Ties { fewest_boards: true, fewest_settings: true, ..Ties::default() };
    assert_eq!(
        told(Some(ties)),
        "2 settings of fence and stop, 8 cuts. No plan at this price does better on the boards to cut, then the \
         settings. The best we found, not proved: the cuts, the longest offcut."
    );
    (ties.fewest_cuts, ties.longest_offcut) = (true, true);
    assert_eq!(
        told(Some(ties)),
        "2 settings of fence and stop, 8 cuts. No plan at this price does better on the boards to cut, then the \
         settings, then the cuts, then the longest offcut."
    );
    // Nothing is said of a rank before the ranks above it.
    ties.fewest_boards = false;
    assert_eq!(
        told(Some(ties)),
        "2 settings of fence and stop, 8 cuts. The best we found, not proved: the boards to cut, the settings, the \
         cuts, the longest offcut."
    );
}

#[test]
fn money_is_exact_and_a_gap_is_never_told_smaller_than_it_is() {
    let labels = labels(&[], 1, 0);
    assert_eq!(
        proof(&labels, 2490, 2490, &[]).sentence.to_string(),
        "No cheaper way with these boards, prices and cuts."
    );
    let left_out = ["long rail, shelf".to_owned(), "shelf slat".to_owned()];
    assert_eq!(
        proof(&labels, 2490, 2490, &left_out).sentence.to_string(),
        "No cheaper way with these boards, prices and cuts. Left out: long rail, shelf; shelf slat."
    );
    assert_eq!(
        proof(&labels, 3000, 2999, &[]).sentence.to_string(),
        "Not proved yet. No plan takes less than 29.99: at most 0.01 (0.1 %) could be saved."
    );
    let wood = Labels { money: Money::Wood { each: inches("24") }, ..labels };
    let told = spent(&wood, 13, 3).expect("in range");
    assert_eq!(told.sentence().to_string(), "3 boards, 26 ft");
    assert_eq!(proof(&wood, 13, 12, &[]).bound, "24 ft");
}

/// Two boards at 10.90 of which one is bought: one is to buy, for 10.90.
#[test]
fn what_is_bought_is_not_to_buy_any_more() {
    let (job, mut plan, labels) = straight();
    let board = plan.boards[0].clone();
    plan.boards.insert(1, board);
    plan.cost_cents = 2180;
    let report = report(&job, &plan, &labels, how()).expect("a plan of this job");
    let told = |bought: &[usize]| {
        let report = report.clone().with_bought(|at| bought.contains(&at));
        let line = &report.shopping[0];
        (report.headline().to_string(), line.to_buy(), line.bought_words())
    };
    let words = |text: &str| Some(text.to_owned());
    assert_eq!(told(&[]), ("Buy 2 boards for 21.80.".to_owned(), 2, None));
    // The last one of the plan is from the rack, and no board of the yard.
    assert_eq!(told(&[2]), ("Buy 2 boards for 21.80.".to_owned(), 2, None));
    let one = ("Still to buy: 1 board for 10.90.".to_owned(), 1, words("1 bought, 1 to buy"));
    assert_eq!(told(&[1]), one);
    let all = ("Nothing to buy: it is all bought.".to_owned(), 0, words("bought"));
    assert_eq!(told(&[0, 1]), all);
}

#[test]
fn a_plan_of_another_job_is_refused_not_misread() {
    let (job, plan, labels) = straight();
    let (other, other_plan, _) = ripped();
    assert_eq!(report(&other, &plan, &labels, how()), None);
    assert_eq!(report(&job, &other_plan, &labels, how()), None);
}

#[test]
fn a_glance_buys_and_spends_as_the_whole_and_draws_less() {
    let (job, plan, labels) = straight();
    let whole = report(&job, &plan, &labels, how()).expect("a report");
    assert!(whole.boards.len() > 1, "{whole:?}");
    let first = glance(&job, &plan, &labels, how(), 1).expect("a report");
    assert_eq!((&first.spent, &first.shopping), (&whole.spent, &whole.shopping));
    assert_eq!(first.headline(), whole.headline());
    assert_eq!(first.boards, whole.boards[..1]);
    assert_eq!(glance(&job, &plan, &labels, how(), 9), Some(whole));
}

#[test]
fn letters_go_on_after_z() {
    let letters: Vec<String> = [0, 25, 26, 27, 702].into_iter().map(letter).collect();
    assert_eq!(letters, ["A", "Z", "AA", "AB", "AAA"]);
}
