//! The fields. One choice on top; what does not matter for it is not asked.

use crate::sheet::{Choice, Field, Kind, Start, When};
use crate::tables::lumber::SECTIONS;

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
const STOCK: [Choice; N_SECTIONS + 1] = {
    let mut choices = [choice("measured", "Measured"); N_SECTIONS + 1];
    let mut at = 0;
    while at < N_SECTIONS {
        choices[at + 1] = choice(SECTIONS[at].id, SECTIONS[at].label);
        at += 1;
    }
    choices
};

const DRESSED: &[Choice] = &[choice("dry", "Dry"), choice("green", "Wet (green)")];
const LEFT_RIGHT: &[Choice] = &[choice("left", "Left"), choice("right", "Right")];

const SECTION: When = When::Chosen("question", &["section"]);
const STRIPS: When = When::Chosen("question", &["strips"]);
const GUIDE: When = When::Chosen("question", &["guide"]);
const TABLE_SAW: When = When::Chosen("question", &["section", "strips"]);

const fn choice(id: &'static str, label: &'static str) -> Choice {
    Choice { id, label }
}

const fn field(
    id: &'static str,
    label: &'static str,
    hint: &'static str,
    kind: Kind,
    start: Start,
    when: When,
) -> Field {
    Field { id, label, hint, kind, start, when }
}

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[
    field(
        "question",
        "What to saw",
        "",
        Kind::Choice(&[
            choice("section", "Resize a section"),
            choice("strips", "Strips from a board"),
            choice("guide", "Guide for a hand saw"),
        ]),
        Start::Text("section"),
        When::Always,
    ),
    // Resize a section.
    field(
        "stock",
        "Stock",
        "The tag, or Measured: the tape is right",
        Kind::Choice(&STOCK),
        Start::Text("4x4"),
        SECTION,
    ),
    field(
        "stock_dressed",
        "Dressed",
        "Wet boards are larger",
        Kind::Choice(DRESSED),
        Start::Text("dry"),
        When::Chosen("stock", &TAGS),
    ),
    field(
        "stock_width",
        "Stock width",
        "Face 1 to face 3, at its narrowest",
        Kind::ABOVE_ZERO,
        Start::Inches("3 1/2"),
        When::Chosen("stock", &["measured"]),
    ),
    field(
        "stock_thickness",
        "Stock thickness",
        "Face 2 to face 4, at its thinnest",
        Kind::ABOVE_ZERO,
        Start::Inches("3 1/2"),
        When::Chosen("stock", &["measured"]),
    ),
    field("target_width", "Target width", "", Kind::ABOVE_ZERO, Start::Inches("3 1/4"), SECTION),
    field(
        "target_thickness",
        "Target thickness",
        "",
        Kind::ABOVE_ZERO,
        Start::Inches("3 1/4"),
        SECTION,
    ),
    field(
        "faces",
        "Faces to clean",
        "Faces 1 and 3 lie across the width",
        Kind::Choice(&[
            choice("all", "All four"),
            choice("two", "1 and 2 only"),
            choice("width_both", "1, 3 and 2"),
            choice("thickness_both", "2, 4 and 1"),
        ]),
        Start::Text("all"),
        SECTION,
    ),
    field(
        "share",
        "Off opposite faces",
        "A kerf first leaves one useful strip",
        Kind::Choice(&[
            choice("even", "The same off both"),
            choice("kerf_first", "A kerf, then the rest"),
        ]),
        Start::Text("even"),
        SECTION,
    ),
    field(
        "n_pieces",
        "Pieces",
        "All go through before the fence moves",
        Kind::Count { least: 1, most: 500 },
        Start::Text("4"),
        SECTION,
    ),
    // Strips from a board.
    field(
        "board",
        "Board",
        "The tag, or Measured: the tape is right",
        Kind::Choice(&STOCK),
        Start::Text("2x10"),
        STRIPS,
    ),
    field(
        "board_dressed",
        "Dressed",
        "Wet boards are larger",
        Kind::Choice(DRESSED),
        Start::Text("dry"),
        When::Chosen("board", &TAGS),
    ),
    field(
        "board_width",
        "Board width",
        "At its narrowest",
        Kind::ABOVE_ZERO,
        Start::Inches("9 1/4"),
        When::Chosen("board", &["measured"]),
    ),
    field(
        "board_thickness",
        "Board thickness",
        "The depth of the cut",
        Kind::ABOVE_ZERO,
        Start::Inches("1 1/2"),
        When::Chosen("board", &["measured"]),
    ),
    field(
        "plan",
        "Strips",
        "",
        Kind::Choice(&[
            choice("fit", "As many as fit"),
            choice("equal", "Equal split"),
            choice("list", "A list of widths"),
        ]),
        Start::Text("fit"),
        STRIPS,
    ),
    field(
        "strip_width",
        "Strip width",
        "Finished",
        Kind::ABOVE_ZERO,
        Start::Inches("1 3/4"),
        When::Chosen("plan", &["fit"]),
    ),
    field(
        "n_strips",
        "How many",
        "",
        Kind::Count { least: 1, most: super::super::strips::MOST_STRIPS },
        Start::Text("4"),
        When::Chosen("plan", &["equal"]),
    ),
    field(
        "widths",
        "Widths",
        "Finished; 2 @ 2 3/4 is two of them",
        Kind::Lengths,
        Start::Text("2 @ 2 3/4 in, 1 3/4 in"),
        When::Chosen("plan", &["list"]),
    ),
    field(
        "first_edge",
        "Off the first edge",
        "Kerf and all; 0 when it is good",
        Kind::ZERO_UP,
        Start::Inches("1/4"),
        STRIPS,
    ),
    field(
        "other_edge",
        "Other edge",
        "",
        Kind::Choice(&[
            choice("raw", "Raw, stays so"),
            choice("clean", "Good already"),
            choice("cut", "Clean it as the first"),
        ]),
        Start::Text("raw"),
        STRIPS,
    ),
    field(
        "allowance",
        "Planing per face",
        "Left on both sawn faces of a strip",
        Kind::ZERO_UP,
        Start::Inches("0"),
        STRIPS,
    ),
    field(
        "falls",
        "Strips come off",
        "Thin ones belong on the far side",
        Kind::Choice(&[
            choice("at_fence", "Between blade and fence"),
            choice("far_side", "On the far side"),
        ]),
        Start::Text("at_fence"),
        STRIPS,
    ),
    // Guide for a hand-held circular saw.
    field(
        "guide_board",
        "Board width",
        "Across the cut",
        Kind::ABOVE_ZERO,
        Start::Inches("9 1/4"),
        GUIDE,
    ),
    field(
        "guide_strip",
        "Strip to keep",
        "From the kept edge to the line",
        Kind::ABOVE_ZERO,
        Start::Inches("2 3/4"),
        GUIDE,
    ),
    field("kept_edge", "Kept edge", "", Kind::Choice(LEFT_RIGHT), Start::Text("left"), GUIDE),
    field(
        "shoe_narrow",
        "Shoe, narrow side",
        "Shoe edge to nearest tooth; unplug first",
        Kind::ABOVE_ZERO,
        Start::Inches("1 1/2"),
        GUIDE,
    ),
    field(
        "shoe_wide",
        "Shoe, wide side",
        "Shoe edge to nearest tooth",
        Kind::ABOVE_ZERO,
        Start::Inches("4 7/8"),
        GUIDE,
    ),
    field(
        "guide_on",
        "Guide lies on",
        "",
        Kind::Choice(&[choice("waste", "The waste"), choice("strip", "The strip kept")]),
        Start::Text("waste"),
        GUIDE,
    ),
    field(
        "shoe_side",
        "Along the guide",
        "Work from the other end to swap sides",
        Kind::Choice(&[choice("narrow", "Narrow side"), choice("wide", "Wide side")]),
        Start::Text("narrow"),
        GUIDE,
    ),
    // The saw.
    field("kerf", "Kerf", "Width of the cut", Kind::ABOVE_ZERO, Start::Kerf, When::Always),
    field(
        "reach",
        "Blade reach",
        "Deepest cut at 90 degrees",
        Kind::ABOVE_ZERO,
        Start::BladeReach,
        TABLE_SAW,
    ),
    field("fence", "Fence side", "", Kind::Choice(LEFT_RIGHT), Start::Fence, TABLE_SAW),
    field(
        "rise",
        "Raise the blade",
        "In steps for hard or wet wood",
        Kind::Choice(&[choice("at_once", "At once"), choice("in_steps", "1 in at a time")]),
        Start::Text("at_once"),
        TABLE_SAW,
    ),
    field(
        "thinnest",
        "Thinnest at fence",
        "No thinner piece between blade and fence",
        Kind::ABOVE_ZERO,
        Start::ThinnestStrip,
        TABLE_SAW,
    ),
    field(
        "piece_length",
        "Piece length",
        "Short pieces are not safe to rip",
        Kind::ABOVE_ZERO,
        Start::Inches("30"),
        TABLE_SAW,
    ),
    field(
        "core_by_hand",
        "Finish a core by hand",
        "Where the blade cannot reach the middle",
        Kind::YesNo,
        Start::Text("no"),
        TABLE_SAW,
    ),
];
