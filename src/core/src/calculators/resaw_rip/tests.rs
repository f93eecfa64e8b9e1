//! Each refusal in its words with its way out, and the rules at their limits.

use crate::calculators::find;
use crate::measure::text::NoNames;
use crate::measure::{Tape, length};
use crate::sheet::{Answer, Bench, Caution, Entries, Face, Sheet, Side, face};

fn sheet(pairs: &[(&str, &str)]) -> Sheet {
    let calculator = find("resaw-rip").expect("it is in the list");
    let entries = Entries::from_pairs(pairs.iter().copied());
    calculator.sheet(&entries, &Bench::default(), &NoNames)
}

/// The refusals as lines: `field: sentence | way out`.
fn refusals(pairs: &[(&str, &str)]) -> Vec<String> {
    let line = |refusal: &crate::sheet::Refusal| {
        let way_out = refusal.way_out.as_ref().expect("every refusal has a way out");
        let on = |sentence: &crate::sheet::Sentence| sentence.on(Tape::SIXTEENTHS);
        format!("{}: {} | {}", refusal.field, on(&refusal.sentence), on(&way_out.sentence))
    };
    sheet(pairs).refusals.iter().map(line).collect()
}

fn check_refused(pairs: &[(&str, &str)], lines: &[&str]) {
    assert_eq!(refusals(pairs), lines, "{pairs:?}");
}

fn answer(pairs: &[(&str, &str)]) -> Answer {
    let sheet = sheet(pairs);
    assert!(sheet.refusals.is_empty(), "{pairs:?}: {:?}", sheet.refusals);
    sheet.answer.expect("no refusal, so an answer")
}

/// A figure as the user reads it.
fn figure(answer: &Answer, id: &str) -> String {
    let figures = core::iter::once(&answer.headline).chain(&answer.figures);
    let value = &figures.into_iter().find(|f| f.id == id).expect("the figure is there").value;
    match face(value, &Bench::default()) {
        Face::Measure(shown) => shown.mark.to_string(),
        Face::Measures(_) => panic!("{id} is a list"),
        Face::Line { text, .. } => text,
    }
}

fn has_figure(answer: &Answer, id: &str) -> bool {
    answer.figures.iter().any(|figure| figure.id == id)
}

fn has_note(answer: &Answer, words: &str) -> bool {
    answer.notes.iter().any(|note| note.on(Tape::SIXTEENTHS).contains(words))
}

const STRIPS: (&str, &str) = ("question", "strips");
/// The first edge is rough: so much comes off it.
const ROUGH: (&str, &str) = ("first_edge", "1/4");
const GUIDE: (&str, &str) = ("question", "guide");

#[test]
fn a_section_that_would_grow_is_refused() {
    check_refused(
        &[("stock", "4x4"), ("target_width", "3 3/4")],
        &["target_width: The target is 3 3/4 in but the stock only 3 1/2 in. A saw takes off. | \
           Use 3 1/2 in or less."],
    );
    // Both ways at once, when both are too large.
    assert_eq!(refusals(&[("target_width", "4"), ("target_thickness", "5")]).len(), 2);
}

#[test]
fn a_target_on_its_side_is_turned() {
    check_refused(
        &[("stock", "2x8"), ("target_width", "1 1/4"), ("target_thickness", "7")],
        &["target_thickness: The target is 7 in but the stock only 1 1/2 in. A saw takes off. | \
           Turned a quarter it fits: 7 in wide, 1 1/4 in thick."],
    );
}

#[test]
fn a_section_of_its_target_size_is_refused() {
    check_refused(
        &[("stock", "2x4"), ("target_width", "3 1/2"), ("target_thickness", "1 1/2")],
        &["target_width: The stock has this size already. There is nothing to cut. | \
           Give a target that is smaller in one way at least."],
    );
}

#[test]
fn a_kerf_first_needs_more_than_a_kerf() {
    check_refused(
        &[("target_width", "3 3/8"), ("share", "kerf_first"), ("target_thickness", "3 1/2")],
        &["share: Only 1/8 in comes off. A kerf of 1/8 in off the first face leaves nothing for \
           the second. | Take the same off both faces."],
    );
}

/// By hand: a 4x4 of 3 1/2 to 3 1/4 loses 1/4, an eighth on each of two faces: the fence stands at 3 3/8 for the one, and
/// at 3 1/4 for the other.
#[test]
fn both_fences_are_the_headline_where_two_faces_are_cleaned() {
    let two = answer(&[]);
    assert_eq!((two.headline.id, two.figures[0].id), ("fence", "second_fence"));
    assert_eq!(
        (figure(&two, "fence"), figure(&two, "second_fence")),
        ("3 3/8 in".to_owned(), "3 1/4 in".to_owned())
    );
    // Each face once, to one size: there is one setting, and the blade stands beside it.
    let one = answer(&[("faces", "two")]);
    assert_eq!((one.headline.id, one.figures[0].id), ("fence", "blade_height"));
}

#[test]
fn a_thin_target_does_not_run_beside_the_fence() {
    check_refused(
        &[("stock", "1x4"), ("target_thickness", "3/16")],
        &[
            "target_thickness: A piece 3/16 in thin would run between blade and fence. Your limit is \
           1/4 in. | Use 1/4 in or more.",
        ],
    );
}

/// By hand: 7 1/4 - 2 × 3 1/8 = 1.
#[test]
fn a_blade_that_cannot_reach_leaves_a_core_or_refuses() {
    let post = [("stock", "8x8"), ("target_width", "7"), ("target_thickness", "7")];
    check_refused(
        &post,
        &[
            "reach: The blade reaches 3 1/8 in. From both edges of 7 1/4 in it leaves 1 in uncut in \
           the middle. | Leave the 1 in core and finish it with a hand saw.",
        ],
    );
    let mut by_hand = post.to_vec();
    by_hand.push(("core_by_hand", "yes"));
    let answer = answer(&by_hand);
    assert_eq!(figure(&answer, "core"), "1 in");
    assert_eq!(figure(&answer, "blade_height"), "3 1/8 in");
    assert!(has_note(&answer, "A core of 1 in stays uncut"));
}

#[test]
fn a_piece_too_short_or_too_narrow_to_hold_is_refused() {
    check_refused(
        &[("piece_length", "5")],
        &["piece_length: A piece 5 in long is too short to rip on a table saw. | \
           Rip it from a piece of 6 in or more, then cut it to length."],
    );
    check_refused(
        &[
            ("stock", "measured"),
            ("stock_width", "5/8"),
            ("stock_thickness", "1/2"),
            ("target_width", "1/2"),
            ("target_thickness", "1/2"),
        ],
        &["stock_width: A stick no wider than 5/8 in cannot be held down and pushed. | \
           Cut it from a board of 3/4 in or wider, and let it fall on the far side."],
    );
}

#[test]
fn what_is_no_lumber_is_refused() {
    check_refused(
        &[STRIPS, ROUGH, ("board", "measured"), ("board_width", "60")],
        &["board_width: 60 in is more than lumber comes in. The limit here is 48 in. | \
           Use 48 in or less."],
    );
}

#[test]
fn thin_strips_fall_on_the_far_side() {
    check_refused(
        &[STRIPS, ROUGH, ("strip_width", "1/8")],
        &["strip_width: A piece 1/8 in thin would run between blade and fence. Your limit is \
           1/4 in. | Let the strips fall on the far side of the blade."],
    );
    // 36 fit by arithmetic; the last would need the board itself to run at nothing.
    let answer = answer(&[STRIPS, ROUGH, ("strip_width", "1/8"), ("falls", "far_side")]);
    assert_eq!(figure(&answer, "n_strips"), "35");
    assert!(has_note(&answer, "36 fit by arithmetic. After 35 the board is too thin"));
    assert!(answer.cautions.contains(&Caution::ThinStrip));
}

#[test]
fn equal_thin_strips_leave_too_little_board_on_the_far_side() {
    check_refused(
        &[
            STRIPS,
            ROUGH,
            ("plan", "equal"),
            ("n_strips", "37"),
            ("falls", "far_side"),
            ("first_edge", "0"),
            ("other_edge", "clean"),
        ],
        &["n_strips: Nothing of the board would be left between blade and fence to hold it by. | \
           Ask for 36."],
    );
}

/// By hand: 9 1/4 less 1/4 gives 9. An allowance of 1/16 on both faces is 1/8. 79 kerfs of 1/8 are 9 7/8; of strips of 1/4, the
/// thinnest that may run there, 24 and 23 kerfs are 8 7/8, 25 and 24 kerfs 9 1/4. The list is 2 × 4 + 1 + 1/2 + 3 × 1/8 = 9
/// 7/8; without the strip of 1 it is 8 3/4.
#[test]
fn strips_that_do_not_fit_are_refused() {
    check_refused(
        &[STRIPS, ROUGH, ("strip_width", "9 1/8")],
        &[
            "strip_width: One strip takes 9 1/8 in as sawn. The board gives 9 in. | Use 9 in or less.",
        ],
    );
    check_refused(
        &[STRIPS, ROUGH, ("strip_width", "9"), ("allowance", "1/16")],
        &[
            "strip_width: One strip takes 9 1/8 in as sawn. The board gives 9 in. | Use 8 7/8 in or less.",
        ],
    );
    check_refused(
        &[STRIPS, ROUGH, ("plan", "equal"), ("n_strips", "80")],
        &[
            "n_strips: Kerfs and allowances of 80 strips leave nothing of the 9 in the board gives. \
           | Ask for 24.",
        ],
    );
    check_refused(
        &[STRIPS, ROUGH, ("plan", "list"), ("widths", "2 @ 4, 1, 1/2")],
        &["widths: These strips and their kerfs take 9 7/8 in. The board gives 9 in. | \
           Cut 4 in, 4 in, 1/2 in."],
    );
    check_refused(
        &[STRIPS, ROUGH, ("plan", "list"), ("widths", "10")],
        &["widths: These strips and their kerfs take 10 in. The board gives 9 in. | \
           Use a wider board."],
    );
    check_refused(
        &[STRIPS, ROUGH, ("plan", "list"), ("widths", " ")],
        &["widths: Write at least one width, as in 2 @ 2 3/4, 1 1/2. | Start with one strip."],
    );
    check_refused(
        &[STRIPS, ("first_edge", "5"), ("other_edge", "cut")],
        &["first_edge: Cleaning the edges leaves nothing of the 9 1/4 in board. | \
           Take less off, or nothing."],
    );
}

/// By hand: 200 strips and as many kerfs of 1/64 in 9 want 9 ÷ 200 - 1/64 = 0.029 each: 1/16 on the tape.
#[test]
fn more_strips_than_anyone_cuts_are_refused() {
    let lines = refusals(&[STRIPS, ROUGH, ("strip_width", "1/64"), ("kerf", "1/64")]);
    assert_eq!(lines, ["strip_width: That is more than 200 strips. | Use 1/16 in or more."]);
}

/// By hand: 1 - 7/8 = 1/8.
#[test]
fn a_board_that_is_too_thin_once_cleaned_is_refused() {
    check_refused(
        &[
            STRIPS,
            ("board", "measured"),
            ("board_width", "1"),
            ("first_edge", "7/8"),
            ("strip_width", "1/8"),
            ("falls", "far_side"),
        ],
        &[
            "first_edge: Only 1/8 in of the board would be left between blade and fence. Your limit \
           is 1/4 in. | Leave the edge as it is.",
        ],
    );
}

/// By hand: on the strip of 2 3/4 the wide side of the shoe, 4 7/8, reaches 2 1/8 beyond it. On the waste the guide stands at
/// strip + kerf 1/8 + narrow side 1 1/2: at 3 5/8 of 3 with a strip of 2, at 4 3/8 of 5 with 2 3/4. On the strip, 2 3/4 - 1 1/2
/// = 1 1/4 carries it, of which 1 is enough. 9 1/4 less a kerf is 9 1/8.
#[test]
fn a_guide_the_board_does_not_carry_is_refused() {
    check_refused(
        &[GUIDE, ("guide_on", "strip"), ("shoe_side", "wide")],
        &["guide_on: There the guide hangs off the board by 2 1/8 in. | \
           Put the guide on the waste, the narrow side of the shoe along it."],
    );
    check_refused(
        &[GUIDE, ("guide_strip", "2"), ("guide_board", "3")],
        &["guide_on: There the guide hangs off the board by 5/8 in. | \
           Lay a second board of the same thickness beside it, to carry the guide."],
    );
    check_refused(
        &[GUIDE, ("guide_board", "5")],
        &["guide_on: Only 5/8 in of board is there to clamp the guide on. | \
           Put the guide on the strip, the narrow side of the shoe along it."],
    );
    check_refused(
        &[GUIDE, ("guide_strip", "9 1/4")],
        &["guide_strip: A strip of 9 1/4 in leaves nothing to cut off a 9 1/4 in board. | \
           Use 9 1/8 in or less."],
    );
}

/// An 8x8 is 7 1/4: neither 8 nor 9 come of it, and a piece of 4 is shorter than the 6 that may be ripped.
#[test]
fn all_problems_show_at_once() {
    let lines = refusals(&[
        ("stock", "8x8"),
        ("target_width", "8"),
        ("piece_length", "4"),
        ("target_thickness", "9"),
    ]);
    assert_eq!(lines.len(), 3, "{lines:?}");
}

/// By hand: 3 1/8 thick. From one side the blade stands 1/8 above the work, 3 1/4, if it reaches; from both sides it goes 1/4
/// past the middle, twice: 1/2.
#[test]
fn a_blade_at_its_reach_still_comes_through() {
    let at = |reach: &str| {
        answer(&[
            ("stock", "measured"),
            ("stock_width", "3 1/2"),
            ("stock_thickness", "3 1/8"),
            ("target_width", "3 1/4"),
            ("target_thickness", "3 1/8"),
            ("reach", reach),
        ])
    };
    let just = at("3 1/8");
    assert_eq!(figure(&just, "blade_height"), "3 1/8 in");
    assert!(!has_figure(&just, "overlap"));
    assert!(has_note(&just, "only just comes through"));
    let over = at("3 1/16");
    assert_eq!(figure(&over, "overlap"), "1/2 in");
    let well = at("3 1/2");
    assert_eq!(figure(&well, "blade_height"), "3 1/4 in");
}

/// By hand: a 4x4 is 3 1/2; 2 × 1 13/16 - 3 1/2 = 1/8.
#[test]
fn kerfs_that_hardly_meet_are_said_to() {
    let answer = answer(&[("reach", "1 13/16")]);
    assert_eq!(figure(&answer, "overlap"), "1/8 in");
    assert!(has_note(&answer, "The kerfs overlap only 1/8 in"));
}

#[test]
fn a_kerf_first_leaves_one_useful_strip() {
    let answer = answer(&[
        ("stock", "2x8"),
        ("stock_dressed", "green"),
        ("target_width", "3 1/4"),
        ("target_thickness", "1 9/16"),
        ("share", "kerf_first"),
    ]);
    // 7 1/2 less a kerf is 7 3/8; 3 1/4 and a second kerf leave the 4 of the same board.
    let table = answer.tables.iter().find(|table| table.id == "off_list").expect("it is there");
    let falls: Vec<String> = table
        .rows
        .iter()
        .filter_map(|row| match row.get(2).map(|value| face(value, &Bench::default())) {
            Some(Face::Line { text, .. }) => Some(text),
            _ => None,
        })
        .collect();
    assert_eq!(falls, ["dust only", "strip 4 in"]);
}

#[test]
fn less_than_a_kerf_off_a_face_is_said() {
    let answer = answer(&[("target_width", "3 3/8"), ("target_thickness", "3 3/8")]);
    assert!(has_note(&answer, "Face 1 loses 1/16 in, less than a kerf"));
}

#[test]
fn an_equal_split_is_read_down_to_the_mark_below() {
    // (9 - 6 × 1/8) ÷ 7 = 1 5/28, a little over 1 1/8 and nearer 1 3/16.
    let answer = answer(&[STRIPS, ROUGH, ("plan", "equal"), ("n_strips", "7")]);
    assert_eq!(figure(&answer, "strip_width"), "1 1/8 in");
    assert_eq!(figure(&answer, "fence"), "1 1/8 in");
    assert!(has_note(&answer, "Set the fence to the mark 1 1/8 in, not above it"));
    // 9 - 7 × 1 1/8 - 7 kerfs = 1/4.
    assert_eq!(figure(&answer, "leftover"), "1/4 in");
}

#[test]
fn an_equal_split_that_fills_the_board_keeps_its_raw_edge() {
    let raw = answer(&[STRIPS, ROUGH, ("plan", "equal"), ("n_strips", "1")]);
    assert!(has_note(&raw, "The last strip keeps the raw edge"));
    let cut = [STRIPS, ROUGH, ("plan", "equal"), ("n_strips", "1"), ("other_edge", "cut")];
    let cut = answer(&cut);
    assert_eq!(figure(&cut, "strip_width"), "8 3/4 in");
    assert!(!has_note(&cut, "The last strip keeps the raw edge"));
    let clean =
        answer(&[STRIPS, ROUGH, ("plan", "equal"), ("n_strips", "1"), ("other_edge", "clean")]);
    assert!(!has_note(&clean, "The last strip keeps the raw edge"));
}

#[test]
fn an_allowance_is_left_on_both_sawn_faces() {
    let answer = answer(&[STRIPS, ROUGH, ("allowance", "1/16")]);
    assert_eq!(figure(&answer, "sawn_width"), "1 7/8 in");
    assert_eq!(figure(&answer, "fence"), "1 7/8 in");
    // 4 × (1 7/8 + 1/8) of 9.
    assert_eq!(figure(&answer, "leftover"), "1 in");
}

#[test]
fn a_list_is_cut_widest_first_with_one_setting_for_equal_widths() {
    let answer = answer(&[STRIPS, ("plan", "list"), ("widths", "1 1/4, 2, 1 1/4, 2")]);
    assert_eq!(figure(&answer, "fence"), "2 in");
    assert_eq!(figure(&answer, "n_settings"), "2");
}

/// By hand: 11 1/4 less 1/4 is 11, and a strip with its kerf 1/2. After 21 of them 1/2 is left: a strip and a kerf, and nothing
/// that could run along the fence.
#[test]
fn a_sliver_at_the_fence_is_avoided_by_turning_the_board() {
    let answer =
        answer(&[STRIPS, ROUGH, ("board", "2x12"), ("strip_width", "3/8"), ("falls", "far_side")]);
    assert!(has_note(&answer, "Strip 22: turn the board"));
}

#[test]
fn raising_the_blade_in_steps_multiplies_the_passes() {
    let at_once = answer(&[]);
    let in_steps = answer(&[("rise", "in_steps")]);
    // 4 pieces × 4 faces × 2 edges; 1 and 2 in, then 1 and 1 15/16 in.
    assert_eq!(figure(&at_once, "n_passes"), "32");
    assert_eq!(figure(&in_steps, "n_passes"), "64");
}

#[test]
fn each_question_carries_its_cautions() {
    let post = answer(&[]).cautions;
    for caution in [Caution::Ripping, Caution::SmallPiece, Caution::DeepCut, Caution::DustAndNoise]
    {
        assert!(post.contains(&caution), "{caution:?}");
    }
    assert!(answer(&[GUIDE]).cautions.contains(&Caution::HandSaw));
    assert!(!answer(&[GUIDE]).cautions.contains(&Caution::Ripping));
}

#[test]
fn the_fence_is_drawn_on_the_side_of_the_user() {
    use crate::drawing::{Role, Shape};
    for question in ["section", "strips"] {
        for (fence, side) in [("left", Side::Left), ("right", Side::Right)] {
            let answer = answer(&[("question", question), ("fence", fence)]);
            let scene = answer.drawing.expect("every answer is drawn");
            let left_of = |role: Role| {
                let lefts = scene.items.iter().filter(|item| item.role == role);
                lefts
                    .filter_map(|item| match item.shape {
                        Shape::Rect(x, ..) => Some(x),
                        _ => None,
                    })
                    .fold(f64::INFINITY, f64::min)
            };
            let is_fence_left = left_of(Role::Fence) < left_of(Role::EndGrain);
            assert_eq!(is_fence_left, side == Side::Left, "{question}, {fence}");
        }
    }
}

#[test]
fn a_start_from_the_bench_is_used() {
    let bench = Bench { kerf: length("3/32").expect("a length"), ..Bench::default() };
    let calculator = find("resaw-rip").expect("it is in the list");
    let entries = Entries::from_pairs([STRIPS, ROUGH]);
    let sheet = calculator.sheet(&entries, &bench, &NoNames);
    let answer = sheet.answer.expect("it answers");
    // 9 - 4 × (1 3/4 + 3/32) = 1 5/8.
    assert_eq!(figure(&answer, "leftover"), "1 5/8 in");
}

/// By hand: a 4x4 is 3 1/2 deep, the blade reaches 3 1/8, so it is sawn from both edges. With a gap of
/// 1/32 at the tip over the reach each cut wanders off 1/32 ÷ 3 1/8 = 1/100 of its way: over half the
/// depth, 1 3/4, that is 0.0175 = 7/400. Once 3 3/8 is left of it, half is 1 11/16: 27/1600.
#[test]
fn a_blade_off_square_leaves_a_ridge_in_the_middle() {
    let leans = answer(&[("lean", "1/32")]);
    let ridge = leans.figures.iter().find(|figure| figure.id == "ridge").expect("a ridge");
    assert_eq!(ridge.value, length("7/400").expect("a length").into());
    assert!(has_note(&leans, "one piece gets a ridge of"));
    assert!(!has_figure(&answer(&[]), "ridge"));
}

/// By hand: a 2x4 is 1 1/2 by 3 1/2, target 3 1/4 by 1 1/4: the cuts across its width are 1 1/2 deep and
/// go through in one pass, off by 1 1/2 × 1/100 = 3/200 from edge to edge.
#[test]
fn a_blade_off_square_leaves_a_face_out_of_square_in_one_pass() {
    let leans = answer(&[
        ("lean", "1/32"),
        ("stock", "2x4"),
        ("target_width", "3 1/4"),
        ("target_thickness", "1 1/2"),
    ]);
    let out = leans.figures.iter().find(|figure| figure.id == "out_of_square").expect("it is out");
    assert_eq!(out.value, length("3/200").expect("a length").into());
    assert!(!has_figure(&leans, "ridge"));
}

/// By hand: a board of 4 is deeper than the blade reaches, so strips are sawn from both edges: 2 × 1/100 = 1/50. One of 1 1/2
/// goes through in one pass, off by 3/200.
#[test]
fn a_blade_off_square_leaves_its_ridge_on_strips_too() {
    let of = |thickness| {
        answer(&[
            STRIPS,
            ("board", "measured"),
            ("board_thickness", thickness),
            ("board_width", "9 1/4"),
            ("lean", "1/32"),
        ])
    };
    let (deep, shallow) = (of("4"), of("1 1/2"));
    for (answer, id, by) in [(&deep, "ridge", "1/50"), (&shallow, "out_of_square", "3/200")] {
        let found = answer.figures.iter().find(|figure| figure.id == id).expect(id);
        assert_eq!(found.value, length(by).expect("a length").into());
    }
    assert!(has_note(&deep, "one piece gets a ridge of"));
    assert!(!has_note(&shallow, "one piece gets a ridge of"));
}

#[test]
fn a_tilted_blade_is_refused() {
    check_refused(
        &[("lean", "1/4")],
        &["lean: A gap of 1/4 in over 3 1/8 in is a tilted blade. Set it square first. | \
           It can be 3/16 in or less here."],
    );
}
