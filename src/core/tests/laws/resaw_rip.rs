//! Resaw and rip on a saw simulated cut by cut, in whole sixty-fourths of an inch: where the fence
//! stands against the wood that is still there decides what comes off, and it has to be what the
//! answer says.

use proptest::prelude::*;
use reckoner_core::calculators::resaw_rip::guide::{self, GuideOn, ShoeSide};
use reckoner_core::calculators::resaw_rip::saw::{Rise, Saw};
use reckoner_core::calculators::resaw_rip::section::{self, Faces, Share};
use reckoner_core::calculators::resaw_rip::strips::{self, Falls, OtherEdge, Plan, Stretch};
use reckoner_core::measure::{Length, Number, Tape, Unit};
use reckoner_core::sheet::Side;

use crate::judged::{self, answered};

/// A length of the answer in sixty-fourths; every one here is a whole number of them.
fn in_64ths(length: Length) -> i64 {
    let n = (length.in_inches() * Number::whole(64)).expect("a small length");
    assert!(n.is_whole(), "{length} in is no whole number of sixty-fourths");
    i64::try_from(n.numer()).expect("a small length")
}

fn of_64ths(n: i64) -> Length {
    Length::of_inch(n.into(), 64).expect("a small length")
}

fn saw(kerf: i64, thinnest: i64) -> Saw {
    Saw {
        kerf: of_64ths(kerf),
        reach: of_64ths(200),
        rise: Rise::AtOnce,
        core_by_hand: true,
        thinnest: of_64ths(thinnest),
        piece_length: of_64ths(30 * 64),
    }
}

#[derive(Clone, Debug)]
struct Board {
    width: i64,
    kerf: i64,
    first_edge: i64,
    other_edge: OtherEdge,
    falls: Falls,
    allowance: i64,
}

fn a_board() -> impl Strategy<Value = Board> {
    let other_edge = prop::sample::select(vec![OtherEdge::Raw, OtherEdge::Clean, OtherEdge::Cut]);
    let falls = prop::sample::select(vec![Falls::AtFence, Falls::FarSide]);
    (100..800_i64, 4..=12_i64, prop_oneof![Just(0_i64), 1..24_i64], other_edge, falls, 0..4_i64)
        .prop_map(|(width, kerf, first_edge, other_edge, falls, allowance)| Board {
            width,
            kerf,
            first_edge,
            other_edge,
            falls,
            allowance,
        })
}

fn a_plan() -> impl Strategy<Value = Plan> {
    prop_oneof![
        (8..300_i64).prop_map(|width| Plan::Fit(of_64ths(width))),
        (1..12_u32).prop_map(Plan::Equal),
        prop::collection::vec(8..150_i64, 1..6)
            .prop_map(|widths| Plan::List(widths.into_iter().map(of_64ths).collect())),
    ]
}

fn input(board: &Board, plan: Plan) -> strips::Input {
    strips::Input {
        thickness: of_64ths(96),
        width: of_64ths(board.width),
        plan,
        first_edge: of_64ths(board.first_edge),
        other_edge: board.other_edge,
        allowance: of_64ths(board.allowance),
        falls: board.falls,
        tape: Tape::SIXTEENTHS,
        saw: saw(board.kerf, 16),
    }
}

/// What the saw makes of a board: it knows only where the fence stands and which edge is there.
struct Sawn {
    strips: Vec<i64>,
    leftover: i64,
    dust: i64,
    slivers: i64,
}

fn saw_the_board(board: &Board, answer: &strips::Answer) -> Sawn {
    // The board that is still there, from its first edge (`near`) to the other (`far`).
    let (mut near, far) = (0, board.width);
    let (mut strips, mut dust, mut slivers) = (Vec::new(), 0, 0);
    for cut in &answer.cuts {
        let fence = in_64ths(cut.fence);
        assert!(fence >= 16, "nothing thinner than the limit runs between blade and fence");
        assert!(fence <= far - near, "the fence stands within the board");
        if cut.is_strip_at_fence {
            strips.push(fence);
            let taken = board.kerf.min(far - near - fence);
            dust += taken;
            near += fence + taken;
        } else {
            // The other edge is at the fence; what lies beyond the kerf falls on the far side.
            let taken = board.kerf.min(far - near - fence);
            let falls = far - near - fence - taken;
            dust += taken;
            near = far - fence;
            match cut.strip {
                Some(_) => strips.push(falls),
                None => slivers += falls,
            }
        }
        assert_eq!(in_64ths(cut.board_left), far - near, "what is left after each cut");
    }
    let mut leftover = far - near;
    if strips.len() < answer.strips.len() {
        // The last strip is what is left: it needs no cut of its own.
        strips.push(leftover);
        leftover = 0;
    }
    Sawn { strips, leftover, dust, slivers }
}

proptest! {
    #![proptest_config(judged::cases(2000))]

    #[test]
    fn strips_kerfs_and_leftover_are_the_board(board in a_board(), plan in a_plan()) {
        let answer = answered(strips::reckon(&input(&board, plan)))?;
        let mut at = Length::ZERO;
        let mut total = 0;
        for band in &answer.bands {
            prop_assert_eq!(band.from, at, "no gap and no overlap");
            prop_assert!(band.to > band.from);
            total += in_64ths((band.to - band.from).expect("small"));
            at = band.to;
        }
        prop_assert_eq!(total, board.width);
        let is_leftover = |stretch: Stretch| stretch == Stretch::Leftover;
        let leftover = answer.bands.last().filter(|band| is_leftover(band.stretch));
        let width = leftover.map_or(0, |band| in_64ths((band.to - band.from).expect("small")));
        prop_assert_eq!(width, in_64ths(answer.leftover));
    }

    #[test]
    fn a_simulated_saw_cuts_the_strips_of_the_answer(board in a_board(), plan in a_plan()) {
        let answer = answered(strips::reckon(&input(&board, plan)))?;
        let sawn = saw_the_board(&board, &answer);
        let expected: Vec<i64> = answer.strips.iter().map(|strip| in_64ths(strip.sawn)).collect();
        prop_assert_eq!(&sawn.strips, &expected);
        prop_assert_eq!(sawn.leftover, in_64ths(answer.leftover));
        let strips: i64 = sawn.strips.iter().sum();
        prop_assert_eq!(strips + sawn.dust + sawn.slivers + sawn.leftover, board.width);
        for strip in &answer.strips {
            let finished = in_64ths(strip.finished);
            prop_assert_eq!(finished, in_64ths(strip.sawn) - 2 * board.allowance);
            prop_assert!(finished > 0);
        }
        // Nothing of the last strip lies in the margin kept at the other edge.
        let margin = if board.other_edge == OtherEdge::Cut { board.first_edge } else { 0 };
        let last = answer.bands.iter().rev().find(|b| matches!(b.stretch, Stretch::Strip(_)));
        prop_assert!(last.is_none_or(|band| in_64ths(band.to) <= board.width - margin));
    }

    #[test]
    fn as_many_strips_fit_as_the_answer_says_and_not_one_more(
        board in a_board(), width in 16..300_i64,
    ) {
        let board = Board { falls: Falls::AtFence, ..board };
        let answer = answered(strips::reckon(&input(&board, Plan::Fit(of_64ths(width)))))?;
        let count = i64::try_from(answer.strips.len()).expect("a small count");
        let cleaned = if board.other_edge == OtherEdge::Cut { 2 } else { 1 } * board.first_edge;
        let room = |n: i64| n * (width + 2 * board.allowance) + (n - 1) * board.kerf;
        prop_assert!(room(count) <= board.width - cleaned);
        prop_assert!(room(count + 1) > board.width - cleaned);
    }

    #[test]
    fn an_equal_split_never_needs_more_than_the_board_and_wastes_less_than_a_mark_each(
        board in a_board(), n_strips in 1..12_u32,
    ) {
        let answer = answered(strips::reckon(&input(&board, Plan::Equal(n_strips))))?;
        let first = answer.strips.first().expect("at least one").sawn;
        prop_assert!(answer.strips.iter().all(|strip| strip.sawn == first));
        prop_assert_eq!(answer.strips.len(), n_strips as usize);
        let share = answer.share.expect("an equal split has one");
        prop_assert!(first <= share, "never up");
        prop_assert!((share - first).expect("small") < Tape::SIXTEENTHS.graduation());
        prop_assert_eq!(in_64ths(first) % 4, 0, "on a mark of the tape");
    }

    #[test]
    fn strips_are_the_same_in_millimetres(board in a_board(), width in 16..300_i64) {
        let inch = input(&board, Plan::Fit(of_64ths(width)));
        let mm = strips::Input { tape: Tape::Millimetres(1), ..inch.clone() };
        match (strips::reckon(&inch), strips::reckon(&mm)) {
            (Ok(a), Ok(b)) => prop_assert_eq!(a, b),
            (Err(a), Err(b)) => prop_assert_eq!(a, b),
            _ => prop_assert!(false, "one answers, the other refuses"),
        }
    }
}

/// A section on the saw table, its faces where they are: 1 and 3 across, 2 and 4 up.
struct Stick {
    faces: [i64; 4],
}

impl Stick {
    fn width(&self) -> i64 {
        self.faces[2] - self.faces[0]
    }

    fn thickness(&self) -> i64 {
        self.faces[3] - self.faces[1]
    }

    /// Cuts a face with the face opposite at the fence.
    fn cut(&mut self, face: u32, fence: i64) -> i64 {
        let (place, opposite) = match face {
            1 => (0, 2),
            2 => (1, 3),
            3 => (2, 0),
            4 => (3, 1),
            _ => panic!("a section has four faces, not face {face}"),
        };
        let before = self.faces[place];
        let inward = if self.faces[place] < self.faces[opposite] { 1 } else { -1 };
        self.faces[place] = self.faces[opposite] - inward * fence;
        (self.faces[place] - before) * inward
    }
}

proptest! {
    #![proptest_config(judged::cases(2000))]

    #[test]
    fn a_simulated_stick_comes_out_at_its_target_and_never_grows(
        (width, thickness) in (48..500_i64, 48..500_i64),
        (off_width, off_thickness) in (0..40_i64, 0..40_i64),
        kerf in 4..=12_i64,
        (width_faces, thickness_faces) in (any::<bool>(), any::<bool>()),
        is_even in any::<bool>(),
        n_pieces in 1..50_u32,
    ) {
        let faces = |is_both: bool| if is_both { Faces::Both } else { Faces::One };
        // Even amounts, so that half of each is a whole sixty-fourth.
        let (off_width, off_thickness) = (2 * off_width, 2 * off_thickness);
        let input = section::Input {
            thickness: of_64ths(thickness),
            width: of_64ths(width),
            target_thickness: of_64ths((thickness - off_thickness).max(1)),
            target_width: of_64ths((width - off_width).max(1)),
            thickness_faces: faces(thickness_faces),
            width_faces: faces(width_faces),
            share: if is_even { Share::Even } else { Share::KerfFirst },
            n_pieces,
            saw: saw(kerf, 16),
        };
        let answer = answered(section::reckon(&input))?;
        let mut stick = Stick { faces: [0, 0, width, thickness] };
        let (mut fence_before, mut settings) = (i64::MAX, 0);
        let mut passes = 0_u64;
        for cut in &answer.cuts {
            let fence = in_64ths(cut.fence);
            prop_assert!(fence <= fence_before, "the fence only moves in");
            settings += u32::from(fence != fence_before);
            prop_assert_eq!(cut.setting, settings);
            fence_before = fence;
            let depth = if cut.face % 2 == 1 { stick.thickness() } else { stick.width() };
            prop_assert_eq!(in_64ths(cut.sweep.depth), depth);
            let (width_before, thickness_before) = (stick.width(), stick.thickness());
            let off = stick.cut(cut.face, fence);
            prop_assert!(off > 0, "every cut takes something off");
            prop_assert_eq!(in_64ths(cut.off), off);
            prop_assert_eq!(in_64ths(cut.dust), off.min(kerf));
            prop_assert_eq!(in_64ths(cut.strip), (off - kerf).max(0));
            prop_assert!(stick.width() <= width_before && stick.thickness() <= thickness_before);
            prop_assert_eq!(in_64ths(cut.width_after), stick.width());
            prop_assert_eq!(in_64ths(cut.thickness_after), stick.thickness());
            passes += u64::from(cut.sweep.passes());
        }
        prop_assert_eq!(of_64ths(stick.width()), input.target_width);
        prop_assert_eq!(of_64ths(stick.thickness()), input.target_thickness);
        prop_assert_eq!(answer.n_settings, settings);
        prop_assert_eq!(answer.n_passes, passes * u64::from(n_pieces));
        if is_even && answer.cuts.len() == 4 && off_width == off_thickness && width == thickness {
            prop_assert_eq!(answer.n_settings, 2, "a square post takes two fence settings");
        }
    }

    #[test]
    fn cuts_of_one_setting_share_a_blade_height_or_stay_within_a_quarter_above_the_work(
        (width, thickness) in (48..500_i64, 48..500_i64), off in 2..40_i64,
    ) {
        let input = section::Input {
            thickness: of_64ths(thickness),
            width: of_64ths(width),
            target_thickness: of_64ths(thickness - off),
            target_width: of_64ths(width - off),
            thickness_faces: Faces::One,
            width_faces: Faces::One,
            share: Share::Even,
            n_pieces: 1,
            saw: saw(8, 8),
        };
        let answer = answered(section::reckon(&input))?;
        for cut in &answer.cuts {
            let sweep = &cut.sweep;
            prop_assert!(sweep.height <= of_64ths(200));
            if sweep.sides == 1 {
                prop_assert!(sweep.height >= sweep.depth);
                let above = (sweep.height - sweep.depth).expect("small");
                prop_assert!(above <= of_64ths(16));
            } else {
                prop_assert!(sweep.height < sweep.depth, "a cut from both edges never comes through");
            }
        }
    }

    /// With the guide there, the tooth next to the guide runs where the rule says: against a
    /// simulated saw that knows only its shoe.
    #[test]
    fn the_blade_of_a_guided_saw_leaves_the_strip(
        board in 300..1500_i64, strip in 16..600_i64, kerf in 4..=12_i64,
        narrow in 16..200_i64, wide in 100..400_i64,
        is_on_waste in any::<bool>(), is_narrow in any::<bool>(),
    ) {
        let input = guide::Input {
            board_width: of_64ths(board),
            strip: of_64ths(strip),
            kerf: of_64ths(kerf),
            narrow: of_64ths(narrow),
            wide: of_64ths(wide),
            guide_on: if is_on_waste { GuideOn::Waste } else { GuideOn::Strip },
            shoe_side: if is_narrow { ShoeSide::Narrow } else { ShoeSide::Wide },
            kept_edge: Side::Left,
        };
        let answer = answered(guide::reckon(&input))?;
        let edge = in_64ths(answer.chosen.from_kept_edge);
        let shoe = if is_narrow { narrow } else { wide };
        // The shoe lies against the guide, and its nearest tooth is that far from its edge.
        let (near, far) = if is_on_waste {
            (edge - shoe - kerf, edge - shoe)
        } else {
            (edge + shoe, edge + shoe + kerf)
        };
        prop_assert_eq!((near, far), (strip, strip + kerf), "the kerf lies in the waste");
        let carried = if is_on_waste { board - edge } else { edge };
        prop_assert!(carried >= 64, "at least an inch of board carries the guide");
        prop_assert_eq!(in_64ths(answer.waste), (board - strip - kerf).max(0));
    }
}

/// Resawing in inches or in millimetres of the same size is the same saw.
#[test]
fn a_section_in_millimetres_is_sawn_as_in_inches() {
    let mm = |n: i64| Length::of(Number::whole(n), Unit::Millimetre).expect("a small length");
    let answer = section::reckon(&section::Input {
        thickness: mm(90),
        width: mm(90),
        target_thickness: mm(84),
        target_width: mm(84),
        thickness_faces: Faces::Both,
        width_faces: Faces::Both,
        share: Share::Even,
        n_pieces: 1,
        saw: Saw { kerf: mm(3), reach: mm(80), ..saw(8, 16) },
    })
    .expect("it can be sawn");
    let fences: Vec<Length> = answer.cuts.iter().map(|cut| cut.fence).collect();
    assert_eq!(fences, [mm(87), mm(87), mm(84), mm(84)]);
    assert!(answer.cuts.iter().all(|cut| cut.strip.is_zero()), "the kerf takes all 3 mm");
}
