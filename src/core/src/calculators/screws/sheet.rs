//! What the screw calculator asks, and which question is answered.

use super::wood::WOODS;
use super::{angled, buy, corner, hold, length, pilot, placing};
use crate::calculators::{Calculator, ResultKind, ResultSpec, Stage};
use crate::sheet::{Answer, Ask, Choice, Field, Kind, Start};
use crate::tables::fasteners::{FASTENERS, Fastener, fastener};

/// Screws: lengths, bits, places, angles and what they hold.
pub const CALCULATOR: Calculator = Calculator {
    slug: "screws",
    title: "Screws",
    question: "Which screw, which bits, where, and will it show through?",
    stage: Stage::Fasten,
    fields: FIELDS,
    results: RESULTS,
    work,
};

const ALL_FASTENERS: [Choice; FASTENERS.len()] = {
    let mut choices = [Choice { id: "", label: "" }; FASTENERS.len()];
    let mut index = 0;
    while index < FASTENERS.len() {
        choices[index] = Choice { id: FASTENERS[index].id, label: FASTENERS[index].name };
        index += 1;
    }
    choices
};

const GAUGES: &[Choice] = &[
    Choice { id: "screw_6", label: "No. 6" },
    Choice { id: "screw_7", label: "No. 7" },
    Choice { id: "screw_8", label: "No. 8" },
    Choice { id: "screw_9", label: "No. 9" },
    Choice { id: "screw_10", label: "No. 10" },
    Choice { id: "screw_12", label: "No. 12" },
    Choice { id: "screw_14", label: "No. 14" },
];

// The sizes are those of our invented potting bench for a school garden.
#[rustfmt::skip]
const FIELDS: &[Field] = &[
    Field::new("question", "Question", "", Kind::Choice(&[
        Choice { id: "length", label: "How long" },
        Choice { id: "pilot", label: "Which bits" },
        Choice { id: "placing", label: "How far from ends" },
        Choice { id: "pocket", label: "Pocket screw" },
        Choice { id: "toe", label: "Toed screw" },
        Choice { id: "corner", label: "Do two meet" },
        Choice { id: "hold", label: "What it holds" },
        Choice { id: "buy", label: "How many to buy" },
    ]), Start::Text("length")),

    Field::new("gauge", "Screw", "", Kind::Choice(GAUGES),
        Start::Text("screw_8")).only_for("question", &["length", "pocket", "toe"]),
    Field::new("fastener", "Screw or nail", "", Kind::Choice(&ALL_FASTENERS),
        Start::Text("screw_8")).only_for("question", &["pilot", "placing", "hold"]),
    Field::new("wood", "Wood", "", Kind::Choice(&WOODS),
        Start::Text("southern_pine")).only_for("question", &["pilot", "placing", "hold"]),
    Field::new("screw_length", "Its length", "",
        Kind::ABOVE_ZERO, Start::Inches("2 1/2")).only_for("question", &["pilot", "hold"]),
    Field::new("part_thickness", "Drilled part", "thickness, drilled face to far face",
        Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for("question", &["pocket", "toe"]),
    Field::new("top_thickness", "Piece under head", "thickness",
        Kind::ABOVE_ZERO, Start::Inches("1")).only_for("question", &["length", "pilot", "hold"]),
    Field::new("receiver_thickness", "Receiver", "thickness, along the screw",
        Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for("question", &["length", "pocket", "toe"]),
    Field::new("into", "Into", "", Kind::Choice(&[
        Choice { id: "side", label: "Face or edge" },
        Choice { id: "end", label: "End grain" },
    ]), Start::Text("side")).only_for("question", &["length", "hold"]),
    Field::new("head_sunk", "Head sunk", "top of head below the face",
        Kind::ZERO_UP, Start::Inches("1/8")).only_for("question", &["length"]),
    Field::new("margin", "Margin", "wood left behind the tip",
        Kind::ZERO_UP, Start::Inches("1/8")).only_for("question", &["length", "pocket", "toe"]),
    Field::new("at_hand", "Screws at hand", "their length; empty if none",
        Kind::MAYBE_LENGTH, Start::Text("")).only_for("question", &["length"]),

    Field::new("drilled", "Pilot hole drilled", "", Kind::YesNo,
        Start::Text("yes")).only_for("question", &["placing"]),
    Field::new("steel", "Through a steel plate", "", Kind::YesNo,
        Start::Text("no")).only_for("question", &["placing"]),
    Field::new("board_width", "Board width", "edge to edge",
        Kind::ABOVE_ZERO, Start::Inches("3 1/2")).only_for("question", &["placing"]),

    Field::new("pocket_angle", "Angle", "",
        Kind::Number { least: 5, most: 80, unit: "°" }, Start::Text("15")).only_for("question", &["pocket"]),
    Field::new("toe_angle", "Angle", "",
        Kind::Number { least: 5, most: 80, unit: "°" }, Start::Text("30")).only_for("question", &["toe"]),
    Field::new("angle_from", "Angle is from", "", Kind::Choice(&[
        Choice { id: "face", label: "Drilled face" },
        Choice { id: "receiver", label: "Receiver's face" },
    ]), Start::Text("face")).only_for("question", &["pocket", "toe"]),
    Field::new("angled_find", "Find", "", Kind::Choice(&[
        Choice { id: "start", label: "Where to start" },
        Choice { id: "exit", label: "Where it comes out" },
    ]), Start::Text("start")).only_for("question", &["pocket", "toe"]),
    Field::new("exit", "Leaves the end", "from the drilled face; empty for the middle",
        Kind::MAYBE_LENGTH, Start::Text("")).only_for("angled_find", &["start"]),
    Field::new("start_back", "Starts", "from the end, along the drilled face",
        Kind::ABOVE_ZERO, Start::Inches("1 1/4")).only_for("angled_find", &["exit"]),
    Field::new("seat_wood", "Wood under the head", "seat to end, along the screw",
        Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for("question", &["pocket"]),
    Field::new("wanted_deep", "Go in at least", "square into the receiver",
        Kind::ABOVE_ZERO, Start::Inches("3/4")).only_for("question", &["pocket", "toe"]),
    Field::new("beyond", "Receiver goes on", "past the far face of the part",
        Kind::ZERO_UP, Start::Text("0")).only_for("question", &["pocket", "toe"]),

    Field::new("section", "They are", "", Kind::Choice(&[
        Choice { id: "round", label: "Screws or dowels" },
        Choice { id: "tenon", label: "Tenons" },
    ]), Start::Text("round")).only_for("question", &["corner"]),
    Field::new("leg", "Leg", "square, as measured",
        Kind::ABOVE_ZERO, Start::Inches("3 1/2")).only_for("question", &["corner"]),
    Field::new("size", "Thickness", "diameter, or cheek to cheek",
        Kind::ABOVE_ZERO, Start::Inches("3/8")).only_for("question", &["corner"]),
    Field::new("tall", "Tenon height", "along the leg",
        Kind::ABOVE_ZERO, Start::Inches("2 1/2")).only_for("section", &["tenon"]),
    Field::new("a_deep", "First goes in", "from the inner face",
        Kind::ABOVE_ZERO, Start::Inches("2")).only_for("question", &["corner"]),
    Field::new("a_outside", "First from outside", "outside face to its middle",
        Kind::ABOVE_ZERO, Start::Inches("1 3/4")).only_for("question", &["corner"]),
    Field::new("a_height", "First height", "to its middle, same end for both",
        Kind::ZERO_UP, Start::Inches("30")).only_for("question", &["corner"]),
    Field::new("b_deep", "Second goes in", "from the other inner face",
        Kind::ABOVE_ZERO, Start::Inches("2")).only_for("question", &["corner"]),
    Field::new("b_outside", "Second from outside", "outside face to its middle",
        Kind::ABOVE_ZERO, Start::Inches("1 3/4")).only_for("question", &["corner"]),
    Field::new("b_height", "Second height", "to its middle, same end for both",
        Kind::ZERO_UP, Start::Inches("33")).only_for("question", &["corner"]),

    Field::new("wet", "Wet in use", "over 19 % moisture, as outdoors on the ground", Kind::YesNo,
        Start::Text("yes")).only_for("question", &["hold"]),

    Field::new("planks", "Planks or joints", "",
        Kind::Count { least: 1, most: 10_000 }, Start::Text("5")).only_for("question", &["buy"]),
    Field::new("rails", "Rails crossed by each", "1 for joints",
        Kind::Count { least: 1, most: 1000 }, Start::Text("3")).only_for("question", &["buy"]),
    Field::new("per_crossing", "Screws each time", "",
        Kind::Count { least: 1, most: 100 }, Start::Text("2")).only_for("question", &["buy"]),
    Field::new("spare", "Spare", "lost, snapped, spoilt",
        Kind::Number { least: 0, most: 200, unit: "%" }, Start::Text("10")).only_for("question", &["buy"]),
    Field::new("box_of", "Box of", "1 when sold singly",
        Kind::Count { least: 1, most: 10_000 }, Start::Text("1")).only_for("question", &["buy"]),
];

const fn a(kind: ResultKind, id: &'static str, label: &'static str) -> ResultSpec {
    ResultSpec { id, label, kind }
}

#[rustfmt::skip]
const RESULTS: &[ResultSpec] = &[
    a(ResultKind::Length, "best_length", "Screw length"),
    a(ResultKind::Length, "enough", "Long enough"),
    a(ResultKind::Length, "longest", "Longest by geometry"),
    a(ResultKind::Length, "into_receiver", "Into the receiver"),
    a(ResultKind::Length, "thread_in_receiver", "Thread in the receiver"),
    a(ResultKind::Length, "behind_tip", "Wood behind the tip"),
    a(ResultKind::Words, "verdict_at_hand", "The one at hand"),
    a(ResultKind::Table, "stock", "Stock lengths"),
    a(ResultKind::Words, "pilot_bit", "Pilot bit"),
    a(ResultKind::Words, "clearance_bit", "Clearance bit"),
    a(ResultKind::Number, "shank", "Shank"),
    a(ResultKind::Number, "root", "Root of thread"),
    a(ResultKind::Number, "head_width", "Countersink width"),
    a(ResultKind::Length, "pilot_depth", "Pilot depth in the receiver"),
    a(ResultKind::Length, "end_distance", "From an end, pulled towards"),
    a(ResultKind::Length, "end_pushed", "From an end, pushed away"),
    a(ResultKind::Length, "edge_distance", "From an edge"),
    a(ResultKind::Count, "rows_that_fit", "Rows that fit"),
    a(ResultKind::Table, "spacing", "Least distances"),
    a(ResultKind::Length, "start", "Start"),
    a(ResultKind::Length, "exit_from_face", "Leaves the end"),
    a(ResultKind::Length, "axis", "Axis in the part"),
    a(ResultKind::Length, "to_seat", "Pocket depth"),
    a(ResultKind::Length, "deep", "Deep in the receiver"),
    a(ResultKind::Length, "drift", "Drift sideways"),
    a(ResultKind::Number, "from_face", "Angle from the drilled face"),
    a(ResultKind::Number, "from_receiver", "Angle from the receiver's face"),
    a(ResultKind::Length, "between", "Wood between"),
    a(ResultKind::Length, "always_clear", "Clear at any depth"),
    a(ResultKind::Number, "side_load", "Side load"),
    a(ResultKind::Number, "pull", "Pull"),
    a(ResultKind::Number, "pull_per_inch", "Pull per inch of thread"),
    a(ResultKind::Words, "gives_way", "What gives way first"),
    a(ResultKind::Number, "test_pull", "Pulled out in tests"),
    a(ResultKind::Number, "test_side", "Stays bent in tests"),
    a(ResultKind::Count, "to_buy", "Buy"),
    a(ResultKind::Count, "needed", "In the work"),
    a(ResultKind::Count, "boxes", "Boxes"),
    a(ResultKind::Count, "spare_left", "Left over"),
];

/// The fastener chosen in a field.
pub(super) fn chosen(ask: &Ask, field: &str) -> Option<Fastener> {
    fastener(ask.choice(ask.field(field)).id)
}

fn work(ask: &mut Ask) -> Option<Answer> {
    match ask.choice(ask.field("question")).id {
        "pilot" => pilot::work(ask),
        "placing" => placing::work(ask),
        "pocket" | "toe" => angled::work(ask),
        "corner" => corner::work(ask),
        "hold" => hold::work(ask),
        "buy" => buy::work(ask),
        _ => length::work(ask),
    }
}
