//! What the frame calculator asks, and which question is answered.

use super::{lap, rail, spacer, square, stretcher, support, tenon};
use crate::calculators::{Calculator, ResultKind, ResultSpec, Stage};
use crate::sheet::{Answer, Ask, Choice, Field, Kind, Start};

/// Frame: rails, blocks, joints and squareness.
pub const CALCULATOR: Calculator = Calculator {
    slug: "frame",
    title: "Frame",
    question: "What length between the legs, and which block sets it?",
    stage: Stage::Frame,
    fields: FIELDS,
    results: RESULTS,
    work,
};

// The sizes are those of our invented potting bench for a school garden.
#[rustfmt::skip]
const FIELDS: &[Field] = &[
    Field::new("question", "Question", "", Kind::Choice(&[
        Choice { id: "rail", label: "Rail between legs" },
        Choice { id: "spacer", label: "Spacer under a rail" },
        Choice { id: "stretcher", label: "Stretcher height" },
        Choice { id: "support", label: "Supports between rails" },
        Choice { id: "tenons", label: "Tenons in one leg" },
        Choice { id: "lap", label: "Half-lap depth" },
        Choice { id: "square", label: "Is it square" },
    ]), Start::Question("rail")),

    Field::new("find", "Find", "", Kind::Choice(&[
        Choice { id: "rail", label: "Rail" },
        Choice { id: "overall", label: "Overall" },
        Choice { id: "leg", label: "Legs" },
    ]), Start::Question("rail")).only_for("question", &["rail"]),
    Field::new("joint", "Rail ends", "", Kind::Choice(&[
        Choice { id: "butt", label: "Square" },
        Choice { id: "tenon", label: "Tenons" },
        Choice { id: "lap", label: "Lapped over legs" },
    ]), Start::Text("butt")).only_for("question", &["rail"]),
    Field::new("overall", "Overall", "outside of leg to outside of leg",
        Kind::ABOVE_ZERO, Start::Inches("46")).only_for("find", &["rail", "leg"]),
    Field::new("rail", "Rail as cut", "end to end, joints included",
        Kind::ABOVE_ZERO, Start::Inches("39")).only_for("find", &["overall", "leg"]),
    Field::new("leg_left", "Left leg", "as measured, along the rail",
        Kind::ABOVE_ZERO, Start::Inches("3 1/2")).only_for("find", &["rail", "overall"]),
    Field::new("leg_right", "Right leg", "empty if the same as the left",
        Kind::MAYBE_LENGTH, Start::Text("")).only_for("find", &["rail", "overall"]),
    Field::new("tenon", "Tenon", "each end, shoulder to tip",
        Kind::ABOVE_ZERO, Start::Inches("1")).only_for("joint", &["tenon"]),
    Field::new("lap_short", "Short of the outside", "each end; 0 for flush",
        Kind::ZERO_UP, Start::Without("0")).only_for("joint", &["lap"]),

    Field::new("lay", "On the bench", "", Kind::Choice(&[
        Choice { id: "outside", label: "Outside down" },
        Choice { id: "inside", label: "Inside down" },
        Choice { id: "centred", label: "Rail centred" },
        Choice { id: "block", label: "I have a block" },
    ]), Start::Text("outside")).only_for("question", &["spacer"]),
    Field::new("leg", "Leg", "as measured, outside to inside face",
        Kind::ABOVE_ZERO, Start::Inches("3 1/2")).only_for("question", &["spacer", "tenons"]),
    Field::new("rail_thickness", "Rail thickness", "as measured",
        Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for("question", &["spacer", "support"]),
    Field::new("set_back", "Set-back", "outside of leg to rail",
        Kind::ZERO_UP, Start::Inches("3/4")).only_for("lay", &["outside", "inside"]),
    Field::new("block", "Block", "its thickness",
        Kind::ABOVE_ZERO, Start::Inches("3/4")).only_for("lay", &["block"]),

    Field::new("height", "Stretcher height", "above the floor",
        Kind::ABOVE_ZERO, Start::Inches("6")).only_for("question", &["stretcher"]),
    Field::new("height_to", "Measured to its", "", Kind::Choice(&[
        Choice { id: "lower", label: "Lower edge" },
        Choice { id: "middle", label: "Middle" },
        Choice { id: "upper", label: "Upper edge" },
    ]), Start::Text("lower")).only_for("question", &["stretcher"]),
    Field::new("stretcher_width", "Stretcher width", "upper to lower edge",
        Kind::ABOVE_ZERO, Start::Inches("3 1/2")).only_for("question", &["stretcher"]),
    Field::new("leg_length", "Leg length", "floor to top of leg",
        Kind::ABOVE_ZERO, Start::Inches("34 1/2")).only_for("question", &["stretcher"]),
    Field::new("apron_width", "Apron width", "0 without one",
        Kind::ZERO_UP, Start::Inches("3 1/2")).only_for("question", &["stretcher"]),
    Field::new("apron_down", "Apron below leg top", "",
        Kind::ZERO_UP, Start::Without("0")).only_for("question", &["stretcher"]),

    Field::new("depth_overall", "Depth", "outside of front leg to outside of back leg",
        Kind::ABOVE_ZERO, Start::Inches("24")).only_for("question", &["support"]),
    Field::new("rail_set_back", "Rail set-back", "outside of leg to rail",
        Kind::ZERO_UP, Start::Inches("3/4")).only_for("question", &["support"]),
    Field::new("between_legs", "Leg to leg", "along the rail",
        Kind::ABOVE_ZERO, Start::Inches("39")).only_for("question", &["support"]),
    Field::new("supports", "Supports", "",
        Kind::Count { least: 1, most: 40 }, Start::Text("1")).only_for("question", &["support"]),
    Field::new("support_thickness", "Support thickness", "along the rail",
        Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for("question", &["support"]),
    Field::new("housing", "Each end goes in", "tenon or housing; 0 for square ends",
        Kind::ZERO_UP, Start::Without("0")).only_for("question", &["support"]),

    Field::new("tenon_a", "First tenon", "shoulder to tip",
        Kind::ABOVE_ZERO, Start::Inches("1")).only_for("question", &["tenons"]),
    Field::new("tenon_b", "Second tenon", "from the neighbouring face",
        Kind::ABOVE_ZERO, Start::Inches("1")).only_for("question", &["tenons"]),
    Field::new("tenon_thickness", "Tenon thickness", "cheek to cheek",
        Kind::ABOVE_ZERO, Start::Inches("1/2")).only_for("question", &["tenons"]),
    Field::new("tenon_place", "Tenons are", "", Kind::Choice(&[
        Choice { id: "centred", label: "Centred in leg" },
        Choice { id: "measured", label: "From outside face" },
    ]), Start::Text("centred")).only_for("question", &["tenons"]),
    Field::new("cheek", "Outside to cheek", "outside of leg to nearer cheek",
        Kind::ZERO_UP, Start::Inches("1")).only_for("tenon_place", &["measured"]),

    Field::new("front_thickness", "Front piece", "thickness, cut from its back",
        Kind::ABOVE_ZERO, Start::Inches("3/4")).only_for("question", &["lap"]),
    Field::new("rear_thickness", "Rear piece", "thickness, cut from its show face",
        Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for("question", &["lap"]),
    Field::new("rear_cut", "Rear cut as made", "empty if not cut yet",
        Kind::MAYBE_LENGTH, Start::Text("")).only_for("question", &["lap"]),

    Field::new("near_side", "Near side", "left to right, corner to corner",
        Kind::ABOVE_ZERO, Start::Inches("46")).only_for("question", &["square"]),
    Field::new("left_side", "Left side", "near to far, same corners",
        Kind::ABOVE_ZERO, Start::Inches("24")).only_for("question", &["square"]),
    Field::new("diagonal_a", "Near left to far right", "empty if not measured",
        Kind::MAYBE_LENGTH, Start::Inches("52")).only_for("question", &["square"]),
    Field::new("diagonal_b", "Near right to far left", "empty if not measured",
        Kind::MAYBE_LENGTH, Start::Inches("51 3/4")).only_for("question", &["square"]),
];

const fn a_length(id: &'static str, label: &'static str) -> ResultSpec {
    ResultSpec { id, label, kind: ResultKind::Length }
}

const RESULTS: &[ResultSpec] = &[
    a_length("rail_cut", "Rail, cut length"),
    a_length("overall_length", "Overall"),
    a_length("leg_each", "Each leg"),
    a_length("leg_to_leg", "Leg to leg"),
    a_length("mortise", "Mortise depth"),
    a_length("spacer_block", "Spacer block"),
    a_length("rail_set_back_outside", "Set-back outside"),
    a_length("rail_set_back_inside", "Set-back inside"),
    ResultSpec { id: "blocks", label: "Blocks", kind: ResultKind::Table },
    a_length("floor_block", "Block on the floor"),
    a_length("apron_block", "Block at the apron"),
    a_length("upper_edge", "Upper edge"),
    a_length("from_leg_top", "From leg top"),
    a_length("support_cut", "Support, cut length"),
    a_length("between_rails", "Rail to rail"),
    a_length("bay", "Clear bay"),
    ResultSpec { id: "support_edges", label: "Left edges", kind: ResultKind::Lengths },
    a_length("longest_tenons", "Longest tenons alike"),
    a_length("tenons_clear", "Wood between tenons"),
    a_length("outside_to_cheek", "Outside to cheek"),
    a_length("lap_rear", "Cut in rear piece"),
    a_length("lap_front", "Cut in front piece"),
    a_length("lap_rear_left", "Left of rear piece"),
    a_length("lap_step", "Step at the back"),
    a_length("square_diagonal", "Diagonal when square"),
    a_length("push_by", "Push the far side"),
    ResultSpec { id: "push", label: "Which way to push", kind: ResultKind::Words },
    ResultSpec { id: "out_of_square", label: "Out of square", kind: ResultKind::Number },
];

fn work(ask: &mut Ask) -> Option<Answer> {
    match ask.choice(ask.field("question")).id {
        "spacer" => spacer::work(ask),
        "stretcher" => stretcher::work(ask),
        "support" => support::work(ask),
        "tenons" => tenon::work(ask),
        "lap" => lap::work(ask),
        "square" => square::work(ask),
        _ => rail::work(ask),
    }
}
