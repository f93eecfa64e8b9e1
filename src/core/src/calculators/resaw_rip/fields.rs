//! What is asked, and what each question answers with. One choice on top; what does not matter for
//! it is not asked.

use crate::calculators::{ResultKind, ResultSpec};
use crate::sheet::{Column, Choice, Field, Kind, Start};
use crate::tables::lumber::{self, SECTIONS};

/// Most strips from one board.
pub const MOST_STRIPS: u32 = 200;

const N_SECTIONS: usize = SECTIONS.len();

/// Ids of the sections that a yard sells.
const TAGS: [&str; N_SECTIONS] = {
    let mut tags = [""; N_SECTIONS];
    let mut at = 0;
    while at < N_SECTIONS {
        tags[at] = SECTIONS[at].id;
        at += 1;
    }
    tags
};

/// Measured, or a section that a yard sells.
const STOCK_CHOICES: [Choice; N_SECTIONS + 1] = {
    let mut choices = [MEASURED; N_SECTIONS + 1];
    let mut at = 0;
    while at < N_SECTIONS {
        choices[at + 1] = Choice::new(SECTIONS[at].id, SECTIONS[at].label);
        at += 1;
    }
    choices
};

const MEASURED: Choice = Choice::new("measured", "Measured");

pub(super) const QUESTION: Field = Field::new("question", "What to saw", "",
    Kind::Choice(&[RESIZE, RIP, GUIDED]), Start::Question(RESIZE.id));
const RESIZE: Choice = Choice::new("section", "Bring a post to size");
pub(super) const RIP: Choice = Choice::new("strips", "Strips from a board");
pub(super) const GUIDED: Choice = Choice::new("guide", "Where to clamp the guide");

pub(super) const STOCK: Field = Field::new("stock", "Board by its tag",
    "or Measured: the tape is right",
    Kind::Choice(&STOCK_CHOICES), Start::Text(lumber::FOUR_BY_FOUR.id))
    .only_for(QUESTION.id, &[RESIZE.id]);
pub(super) const STOCK_DRESSED: Field = Field::new("stock_dressed", "Dry or wet",
    "When it was planed; treated and wet: as measured",
    Kind::Choice(&[DRY, GREEN]), Start::Text(DRY.id)).only_for(STOCK.id, &TAGS);
const DRY: Choice = Choice::new("dry", "Dry");
pub(super) const GREEN: Choice = Choice::new("green", "Wet");

pub(super) const STOCK_WIDTH: Field = Field::new("stock_width", "Stock width",
    "Face 1 to face 3, at its narrowest",
    Kind::ABOVE_ZERO, Start::Inches("3 1/2")).only_for(STOCK.id, &[MEASURED.id]);
pub(super) const STOCK_THICKNESS: Field = Field::new("stock_thickness", "Stock thickness",
    "Face 2 to face 4, at its thinnest",
    Kind::ABOVE_ZERO, Start::Inches("3 1/2")).only_for(STOCK.id, &[MEASURED.id]);
pub(super) const TARGET_WIDTH: Field = Field::new("target_width", "Target wide", "",
    Kind::ABOVE_ZERO, Start::Inches("3 1/4")).only_for(QUESTION.id, &[RESIZE.id]);
pub(super) const TARGET_THICKNESS: Field = Field::new("target_thickness", "Target thick", "",
    Kind::ABOVE_ZERO, Start::Inches("3 1/4")).only_for(QUESTION.id, &[RESIZE.id]);
pub(super) const FACES: Field = Field::new("faces", "Faces to clean",
    "Faces 1 and 3 lie across the width",
    Kind::Choice(&[ALL_FOUR, ONE_AND_TWO, WIDTH_BOTH, THICKNESS_BOTH]), Start::Text(ALL_FOUR.id))
    .only_for(QUESTION.id, &[RESIZE.id]);
const ALL_FOUR: Choice = Choice::new("all", "All four");
pub(super) const ONE_AND_TWO: Choice = Choice::new("two", "1 and 2 only");
pub(super) const WIDTH_BOTH: Choice = Choice::new("width_both", "1, 3 and 2");
pub(super) const THICKNESS_BOTH: Choice = Choice::new("thickness_both", "2, 4 and 1");

pub(super) const SHARE: Field = Field::new("share", "Clean opposite faces",
    "One cut first leaves a strip to use",
    Kind::Choice(&[EVEN, KERF_FIRST]), Start::Text(EVEN.id)).only_for(QUESTION.id, &[RESIZE.id]);
pub(super) const EVEN: Choice = Choice::new("even", "The same off both");
pub(super) const KERF_FIRST: Choice = Choice::new("kerf_first", "One cut first, then the rest");

pub(super) const N_PIECES: Field = Field::new("n_pieces", "Pieces",
    "All go through before the fence moves",
    Kind::Count { least: 1, most: 500 }, Start::Text("4")).only_for(QUESTION.id, &[RESIZE.id]);
pub(super) const BOARD: Field = Field::new("board", "Board by its tag",
    "or Measured: the tape is right",
    Kind::Choice(&STOCK_CHOICES), Start::Text(lumber::TWO_BY_TEN.id))
    .only_for(QUESTION.id, &[RIP.id]);
pub(super) const BOARD_DRESSED: Field = Field::new("board_dressed", "Dry or wet",
    "When it was planed; treated and wet: as measured",
    Kind::Choice(&[DRY, GREEN]), Start::Text(DRY.id)).only_for(BOARD.id, &TAGS);
pub(super) const BOARD_WIDTH: Field = Field::new("board_width", "Board width", "At its narrowest",
    Kind::ABOVE_ZERO, Start::Inches("9 1/4")).only_for(BOARD.id, &[MEASURED.id]);
pub(super) const BOARD_THICKNESS: Field = Field::new("board_thickness", "Board thickness",
    "The depth of the cut",
    Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for(BOARD.id, &[MEASURED.id]);
pub(super) const PLAN: Field = Field::new("plan", "Strips", "",
    Kind::Choice(&[FIT, EQUAL, LIST]), Start::Question(FIT.id)).only_for(QUESTION.id, &[RIP.id]);
const FIT: Choice = Choice::new("fit", "As many as fit");
pub(super) const EQUAL: Choice = Choice::new("equal", "Equal split");
pub(super) const LIST: Choice = Choice::new("list", "A list of widths");

pub(super) const STRIP_WIDTH: Field = Field::new("strip_width", "Strip width", "Finished",
    Kind::ABOVE_ZERO, Start::Inches("1 3/4")).only_for(PLAN.id, &[FIT.id]);
pub(super) const N_STRIPS: Field = Field::new("n_strips", "How many", "",
    Kind::Count { least: 1, most: MOST_STRIPS }, Start::Text("4")).only_for(PLAN.id, &[EQUAL.id]);
pub(super) const WIDTHS: Field = Field::new("widths", "Widths",
    "Finished",
    Kind::Lengths, Start::Text("2 @ 2 3/4 in, 1 3/4 in")).only_for(PLAN.id, &[LIST.id]);
pub(super) const FIRST_EDGE: Field = Field::new("first_edge", "Off the first edge",
    "Kerf and all; 0 when it is good",
    Kind::ZERO_UP, Start::Without("0")).only_for(QUESTION.id, &[RIP.id]);
pub(super) const OTHER_EDGE: Field = Field::new("other_edge", "Other edge", "",
    Kind::Choice(&[RAW, CLEAN, CUT]), Start::Text(RAW.id)).only_for(QUESTION.id, &[RIP.id]);
const RAW: Choice = Choice::new("raw", "Raw, stays so");
pub(super) const CLEAN: Choice = Choice::new("clean", "Good already");
pub(super) const CUT: Choice = Choice::new("cut", "Clean it as the first");

pub(super) const ALLOWANCE: Field = Field::new("allowance", "Planing per face",
    "Left on both sawn faces of a strip",
    Kind::ZERO_UP, Start::Without("0")).only_for(QUESTION.id, &[RIP.id]);
pub(super) const FALLS: Field = Field::new("falls", "Strips come off",
    "Thin ones belong on the far side",
    Kind::Choice(&[AT_FENCE, FAR_SIDE]), Start::Text(AT_FENCE.id)).only_for(QUESTION.id, &[RIP.id]);
pub(super) const AT_FENCE: Choice = Choice::new("at_fence", "Between blade and fence");
pub(super) const FAR_SIDE: Choice = Choice::new("far_side", "On the far side");

pub(super) const GUIDE_BOARD: Field = Field::new("guide_board", "Board width", "Across the cut",
    Kind::ABOVE_ZERO, Start::Inches("9 1/4")).only_for(QUESTION.id, &[GUIDED.id]);
pub(super) const GUIDE_STRIP: Field = Field::new("guide_strip", "Strip to keep",
    "From the kept edge to the line",
    Kind::ABOVE_ZERO, Start::Inches("2 3/4")).only_for(QUESTION.id, &[GUIDED.id]);
pub(super) const KEPT_EDGE: Field = Field::new("kept_edge", "Kept edge", "",
    Kind::Choice(&[LEFT, RIGHT]), Start::Text(LEFT.id)).only_for(QUESTION.id, &[GUIDED.id]);
pub(super) const LEFT: Choice = Choice::new("left", "Left");
const RIGHT: Choice = Choice::new("right", "Right");

pub(super) const SHOE_NARROW: Field = Field::new("shoe_narrow", "Shoe, narrow side",
    "Shoe edge to nearest tooth; unplug first",
    Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for(QUESTION.id, &[GUIDED.id]);
pub(super) const SHOE_WIDE: Field = Field::new("shoe_wide", "Shoe, wide side",
    "Shoe edge to nearest tooth",
    Kind::ABOVE_ZERO, Start::Inches("4 7/8")).only_for(QUESTION.id, &[GUIDED.id]);
pub(super) const GUIDE_ON: Field = Field::new("guide_on", "Guide lies on", "",
    Kind::Choice(&[ON_WASTE, ON_STRIP]), Start::Text(ON_WASTE.id))
    .only_for(QUESTION.id, &[GUIDED.id]);
pub(super) const ON_WASTE: Choice = Choice::new("waste", "The waste");
pub(super) const ON_STRIP: Choice = Choice::new("strip", "The strip kept");

pub(super) const SHOE_SIDE: Field = Field::new("shoe_side", "Along the guide",
    "Work from the other end to swap sides",
    Kind::Choice(&[NARROW, WIDE]), Start::Text(NARROW.id)).only_for(QUESTION.id, &[GUIDED.id]);
pub(super) const NARROW: Choice = Choice::new("narrow", "Narrow side");
pub(super) const WIDE: Choice = Choice::new("wide", "Wide side");

pub(super) const KERF: Field = Field::new("kerf", "Kerf", "Width of the cut",
    Kind::ABOVE_ZERO, Start::Kerf);
pub(super) const REACH: Field = Field::new("reach", "Blade reach", "Deepest cut at 90 degrees",
    Kind::ABOVE_ZERO, Start::BladeReach).only_for(QUESTION.id, &[RESIZE.id, RIP.id]);
pub(super) const FENCE_SIDE: Field = Field::new("fence", "Fence side", "",
    Kind::Choice(&[LEFT, RIGHT]), Start::Fence).only_for(QUESTION.id, &[RESIZE.id, RIP.id]);
pub(super) const RISE: Field = Field::new("rise", "Raise the blade",
    "In steps for hard or wet wood",
    Kind::Choice(&[AT_ONCE, IN_STEPS]), Start::Text(AT_ONCE.id))
    .only_for(QUESTION.id, &[RESIZE.id, RIP.id]);
const AT_ONCE: Choice = Choice::new("at_once", "At once");
pub(super) const IN_STEPS: Choice = Choice::new("in_steps", "1 in at a time");

pub(super) const THINNEST: Field = Field::new("thinnest", "Thinnest strip I will hold at the fence",
    "No thinner piece between blade and fence",
    Kind::ABOVE_ZERO, Start::ThinnestStrip).only_for(QUESTION.id, &[RESIZE.id, RIP.id]);
pub(super) const PIECE_LENGTH: Field = Field::new("piece_length", "Piece length",
    "Short pieces are not safe to rip",
    Kind::ABOVE_ZERO, Start::Inches("30")).only_for(QUESTION.id, &[RESIZE.id, RIP.id]);
pub(super) const CORE_BY_HAND: Field = Field::new("core_by_hand", "Saw the last bit by hand",
    "Where the blade cannot reach the middle",
    Kind::YesNo, Start::Without("no")).only_for(QUESTION.id, &[RESIZE.id, RIP.id]);

pub(super) const LEAN: Field = Field::new("lean", "Blade off square",
    "Gap at its tip beside a square, at full reach",
    Kind::ZERO_UP, Start::Without("0")).only_for(QUESTION.id, &[RESIZE.id, RIP.id]);

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[
    QUESTION, STOCK, STOCK_DRESSED, STOCK_WIDTH, STOCK_THICKNESS, TARGET_WIDTH, TARGET_THICKNESS,
    FACES, SHARE, N_PIECES, BOARD, BOARD_DRESSED, BOARD_WIDTH, BOARD_THICKNESS, PLAN, STRIP_WIDTH,
    N_STRIPS, WIDTHS, FIRST_EDGE, OTHER_EDGE, ALLOWANCE, FALLS, GUIDE_BOARD, GUIDE_STRIP, KEPT_EDGE,
    SHOE_NARROW, SHOE_WIDE, GUIDE_ON, SHOE_SIDE, KERF, REACH, FENCE_SIDE, RISE, THINNEST,
    PIECE_LENGTH, CORE_BY_HAND, LEAN,
];

pub(super) const FENCE: ResultSpec = ResultSpec::new("fence", "Fence", ResultKind::Length);
pub(super) const SECOND_FENCE: ResultSpec =
    ResultSpec::new("second_fence", "Second fence", ResultKind::Length);
pub(super) const CLEAN_UP_FENCE: ResultSpec =
    ResultSpec::new("clean_up_fence", "Fence for the clean edge", ResultKind::Length);
pub(super) const STRIPS: ResultSpec = ResultSpec::new("n_strips", "Strips", ResultKind::Count);
pub(super) const EACH_STRIP: ResultSpec =
    ResultSpec::new("strip_width", "Strip width", ResultKind::Length);
pub(super) const SAWN_WIDTH: ResultSpec =
    ResultSpec::new("sawn_width", "Sawn width", ResultKind::Length);
pub(super) const LEFTOVER: ResultSpec = ResultSpec::new("leftover", "Leftover", ResultKind::Length);
pub(super) const LEFTOVER_EDGE: ResultSpec =
    ResultSpec::new("leftover_edge", "Edge of the leftover", ResultKind::Words);
pub(super) const FINISHED_WIDTH: ResultSpec =
    ResultSpec::new("finished_width", "Width after", ResultKind::Length);
pub(super) const FINISHED_THICKNESS: ResultSpec =
    ResultSpec::new("finished_thickness", "Thickness after", ResultKind::Length);
pub(super) const BLADE_HEIGHT: ResultSpec =
    ResultSpec::new("blade_height", "Blade height", ResultKind::Length);
pub(super) const OVERLAP: ResultSpec =
    ResultSpec::new("overlap", "Kerfs overlap", ResultKind::Length);
pub(super) const CORE: ResultSpec = ResultSpec::new("core", "Uncut core", ResultKind::Length);
pub(super) const STEP_IF_TURNED: ResultSpec =
    ResultSpec::new("step_if_turned", "If you turn the wrong face", ResultKind::Length);
pub(super) const RIDGE: ResultSpec = ResultSpec::new("ridge", "Ridge", ResultKind::Length);
pub(super) const OUT_OF_SQUARE: ResultSpec =
    ResultSpec::new("out_of_square", "Face out of square", ResultKind::Length);
pub(super) const N_SETTINGS: ResultSpec =
    ResultSpec::new("n_settings", "Fence settings", ResultKind::Count);
pub(super) const N_PASSES: ResultSpec = ResultSpec::new("n_passes", "Passes", ResultKind::Count);
pub(super) const GUIDE: ResultSpec = ResultSpec::new("guide", "Guide", ResultKind::Length);
pub(super) const GUIDE_FROM_OTHER_EDGE: ResultSpec =
    ResultSpec::new("guide_from_other_edge", "Guide from the other edge", ResultKind::Length);
pub(super) const OFFSET: ResultSpec = ResultSpec::new("offset", "Guide offset", ResultKind::Length);
pub(super) const KEPT_STRIP: ResultSpec =
    ResultSpec::new("kept_strip", "Strip kept", ResultKind::Length);
pub(super) const WASTE_LEFT: ResultSpec = ResultSpec::new("waste", "Waste", ResultKind::Length);
pub(super) const FENCE_LIST: ResultSpec =
    ResultSpec::new("fence_list", "Fence list", ResultKind::Table);
pub(super) const SET_COLUMN: Column = Column::new("set", "Set");
pub(super) const FENCE_COLUMN: Column = Column::new("fence", "Fence");
pub(super) const CUT_FACE_COLUMN: Column = Column::new("cut_face", "Cut face");
pub(super) const AT_FENCE_COLUMN: Column = Column::new("at_fence", "At fence");
pub(super) const BLADE_UP_COLUMN: Column = Column::new("blade_up", "Blade up");
pub(super) const CUT_COLUMN: Column = Column::new("cut", "Cut");
pub(super) const GIVES_COLUMN: Column = Column::new("gives", "Gives");
pub(super) const WHERE_COLUMN: Column = Column::new("where", "Where");
pub(super) const BOARD_LEFT_COLUMN: Column = Column::new("board_left", "Board left");
pub(super) const OFF_LIST: ResultSpec =
    ResultSpec::new("off_list", "What comes off", ResultKind::Table);
pub(super) const FACE_COLUMN: Column = Column::new("face", "Face");
pub(super) const OFF_COLUMN: Column = Column::new("off", "Off");
pub(super) const FALLS_COLUMN: Column = Column::new("falls", "Falls");
pub(super) const WIDTH_COLUMN: Column = Column::new("width", "Width");
pub(super) const THICKNESS_COLUMN: Column = Column::new("thickness", "Thickness");
pub(super) const STRIP_LIST: ResultSpec =
    ResultSpec::new("strip_list", "Strips", ResultKind::Table);
pub(super) const HOW_MANY_COLUMN: Column = Column::new("how_many", "How many");
pub(super) const SAWN_COLUMN: Column = Column::new("sawn", "Sawn");
pub(super) const FINISHED_COLUMN: Column = Column::new("finished", "Finished");
pub(super) const PLACEMENTS: ResultSpec =
    ResultSpec::new("placements", "Places for the guide", ResultKind::Table);
pub(super) const GUIDE_ON_COLUMN: Column = Column::new("guide_on", "Guide on");
pub(super) const SHOE_SIDE_COLUMN: Column = Column::new("shoe_side", "Shoe side");
pub(super) const FROM_KEPT_EDGE_COLUMN: Column = Column::new("from_kept_edge", "From kept edge");
pub(super) const BOARD_THERE_COLUMN: Column = Column::new("board_there", "Board there");

/// Every figure and table.
pub(super) const RESULTS: &[ResultSpec] = &[
    FENCE, SECOND_FENCE, CLEAN_UP_FENCE, STRIPS, EACH_STRIP, SAWN_WIDTH, LEFTOVER, LEFTOVER_EDGE, FINISHED_WIDTH,
    FINISHED_THICKNESS, BLADE_HEIGHT, OVERLAP, CORE, STEP_IF_TURNED, RIDGE, OUT_OF_SQUARE, N_SETTINGS,
    N_PASSES, GUIDE, GUIDE_FROM_OTHER_EDGE, OFFSET, KEPT_STRIP, WASTE_LEFT, FENCE_LIST, OFF_LIST, STRIP_LIST,
    PLACEMENTS,
];
