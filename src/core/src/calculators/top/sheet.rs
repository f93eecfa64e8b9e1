//! What the top calculator asks, and which question is answered.

use super::{overhang, planks, season, slot, tip};
use crate::calculators::{Calculator, ResultKind, ResultSpec, Stage};
use crate::sheet::{Answer, Ask, Choice, Field, Kind, Start};

/// Top: planks, gaps, overhang and movement.
pub const CALCULATOR: Calculator = Calculator {
    slug: "top",
    title: "Top",
    question: "Which planks and gaps make the top, and where does it land?",
    stage: Stage::Shape,
    fields: FIELDS,
    results: RESULTS,
    work,
};

// The sizes are those of our invented potting bench for a school garden.
#[rustfmt::skip]
const FIELDS: &[Field] = &[
    Field::new("question", "Question", "", Kind::Choice(&[
        Choice { id: "planks", label: "Planks and gaps" },
        Choice { id: "overhang", label: "Overhang" },
        Choice { id: "season", label: "Today and later" },
        Choice { id: "slot", label: "Holes to slot" },
        Choice { id: "tip", label: "Does it tip" },
    ]), Start::Text("planks")),

    Field::new("find", "Find", "", Kind::Choice(&[
        Choice { id: "gap", label: "Gap" },
        Choice { id: "rip_all", label: "Rip all alike" },
        Choice { id: "rip_outer", label: "Rip outer two" },
        Choice { id: "top", label: "Top width" },
    ]), Start::Text("gap")).only_for("question", &["planks"]),
    Field::new("planks", "Plank widths", "as measured, from the left; 5 @ 5 1/2 for five",
        Kind::Lengths, Start::Text("5 @ 5 1/2 in")).only_for("question", &["planks", "season"]),
    Field::new("top_width", "Top width", "across the planks",
        Kind::ABOVE_ZERO, Start::Inches("28 1/2")).only_for("find", &["gap", "rip_all", "rip_outer"]),
    Field::new("gap", "Gap", "between two planks",
        Kind::ZERO_UP, Start::Inches("1/4")).only_for("find", &["rip_all", "rip_outer", "top"]),

    Field::new("overhang_find", "Find", "", Kind::Choice(&[
        Choice { id: "overhang", label: "Overhang" },
        Choice { id: "top", label: "Top size" },
    ]), Start::Text("overhang")).only_for("question", &["overhang"]),
    Field::new("base_length", "Base length", "as built, outside to outside",
        Kind::ABOVE_ZERO, Start::Inches("46")).only_for("question", &["overhang"]),
    Field::new("base_width", "Base width", "as built, outside to outside",
        Kind::ABOVE_ZERO, Start::Inches("24")).only_for("question", &["overhang"]),
    Field::new("top_length", "Top length", "end to end",
        Kind::ABOVE_ZERO, Start::Inches("52")).only_for("overhang_find", &["overhang"]),
    Field::new("top_across", "Top width", "across the planks",
        Kind::ABOVE_ZERO, Start::Inches("28 1/2")).only_for("overhang_find", &["overhang"]),
    Field::new("overhang_end", "Overhang at ends", "each end",
        Kind::ZERO_UP, Start::Inches("3")).only_for("overhang_find", &["top"]),
    Field::new("overhang_side", "Overhang at sides", "front and back",
        Kind::ZERO_UP, Start::Inches("2 1/4")).only_for("overhang_find", &["top"]),

    Field::new("season_find", "Find", "", Kind::Choice(&[
        Choice { id: "later", label: "Gaps later" },
        Choice { id: "today", label: "Gap to leave today" },
    ]), Start::Text("later")).only_for("question", &["season"]),
    Field::new("gap_now", "Gap today", "0 when laid tight",
        Kind::ZERO_UP, Start::Text("0")).only_for("season_find", &["later"]),
    Field::new("gap_later", "Smallest gap later", "",
        Kind::ZERO_UP, Start::Inches("1/4")).only_for("season_find", &["today"]),

    Field::new("loose_screws", "Loose screws", "each from the fixed one, across the grain",
        Kind::Lengths, Start::Text("3 1/2 in")).only_for("question", &["slot"]),
    Field::new("hole", "Hole", "that the screw slips through",
        Kind::ABOVE_ZERO, Start::Inches("13/64")).only_for("question", &["slot"]),

    Field::new("shrinks_by", "Wood", "", Kind::Choice(&[
        Choice { id: "softwood", label: "Ordinary softwood" },
        Choice { id: "own", label: "My own figure" },
    ]), Start::Text("softwood")).only_for("question", &["season", "slot"]),
    Field::new("now", "Boards today", "", Kind::Choice(&[
        Choice { id: "wet", label: "Wet" },
        Choice { id: "measured", label: "Drier, in percent" },
    ]), Start::Text("wet")).only_for("shrinks_by", &["softwood"]),
    Field::new("moisture_now", "Moisture today", "8 to 19 %",
        Kind::Number { least: 0, most: 300, unit: "%" }, Start::Text("12")).only_for("now", &["measured"]),
    Field::new("moisture_later", "Moisture later", "outdoors about 12 to 15 %",
        Kind::Number { least: 0, most: 300, unit: "%" }, Start::Text("12")).only_for("shrinks_by", &["softwood"]),
    Field::new("percent", "Shrinks across", "of its width, as for one species; below 0 when it swells",
        Kind::Number { least: -15, most: 15, unit: "%" }, Start::Text("2.5")).only_for("shrinks_by", &["own"]),

    Field::new("beyond_legs", "Load beyond feet", "outside of feet to the load",
        Kind::ZERO_UP, Start::Inches("4")).only_for("question", &["tip"]),
    Field::new("leg_spacing", "Feet apart", "outside to outside",
        Kind::ABOVE_ZERO, Start::Inches("46")).only_for("question", &["tip"]),
    Field::new("weight", "Weight of the piece", "",
        Kind::Number { least: 0, most: 5000, unit: "lb" }, Start::Text("70")).only_for("question", &["tip"]),
    Field::new("load", "Load", "a person leaning or sitting",
        Kind::Number { least: 0, most: 5000, unit: "lb" }, Start::Text("250")).only_for("question", &["tip"]),
];

const fn a_length(id: &'static str, label: &'static str) -> ResultSpec {
    ResultSpec { id, label, kind: ResultKind::Length }
}

const RESULTS: &[ResultSpec] = &[
    a_length("plank_gap", "Gap"),
    a_length("plank_width", "Plank width"),
    a_length("outer_width", "Outer plank width"),
    a_length("top_overall", "Top width"),
    ResultSpec { id: "left_edges", label: "Left edges", kind: ResultKind::Lengths },
    a_length("gaps_together", "All spacers together"),
    ResultSpec { id: "spacers", label: "Spacers on a mark", kind: ResultKind::Table },
    a_length("end_overhang", "Overhang at ends"),
    a_length("side_overhang", "Overhang at sides"),
    a_length("top_size_length", "Top length"),
    a_length("top_size_width", "Top width"),
    a_length("gap_today", "Gap today"),
    a_length("gap_smallest", "Smallest gap later"),
    a_length("gap_widest", "Widest gap later"),
    a_length("top_today", "Top today"),
    a_length("top_later", "Top later"),
    ResultSpec { id: "movement", label: "Movement across", kind: ResultKind::Number },
    ResultSpec { id: "season", label: "Planks today and later", kind: ResultKind::Table },
    a_length("loose_by", "Loose by"),
    ResultSpec { id: "slots", label: "Slots", kind: ResultKind::Table },
    ResultSpec { id: "most_load", label: "Largest load", kind: ResultKind::Number },
    a_length("most_beyond", "Farthest beyond feet"),
    ResultSpec { id: "tip_verdict", label: "Tips", kind: ResultKind::Words },
];

fn work(ask: &mut Ask) -> Option<Answer> {
    match ask.choice(ask.field("question")).id {
        "overhang" => overhang::work(ask),
        "season" => season::work(ask),
        "slot" => slot::work(ask),
        "tip" => tip::work(ask),
        _ => planks::work(ask),
    }
}
