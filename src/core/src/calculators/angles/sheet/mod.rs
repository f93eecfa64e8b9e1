//! What the angles ask, and which of their questions the entries mean.

mod lay_out;

use super::{Lay, leg, sides, two_ways};
use crate::calculators::{Calculator, ResultKind, ResultSpec, Stage};
use crate::sheet::{self, Ask, Choice, Field, Kind, Start, When};

/// Angles: leaning legs, and the sides of boxes and frames.
pub const CALCULATOR: Calculator = Calculator {
    slug: "angles",
    title: "Angles",
    question: "What do I set the saw to, and how long is the piece?",
    stage: Stage::Shape,
    fields: FIELDS,
    results: RESULTS,
    work,
};

const LEGS: When = When::Chosen("mode", &["leg", "two_ways"]);
const TWO_WAYS: When = When::Chosen("mode", &["two_ways"]);
const SIDES: When = When::Chosen("mode", &["sides"]);
const MITRED: When = When::Chosen("joint", &["mitred"]);

// The starts are those of our invented potting bench: its stool with splayed legs, and a tapered
// planter beside it.
const FIELDS: &[Field] = &[
    Field {
        id: "mode",
        label: "What leans",
        hint: "",
        kind: Kind::Choice(&[
            Choice { id: "leg", label: "Leg, one way" },
            Choice { id: "two_ways", label: "Leg, two ways" },
            Choice { id: "sides", label: "Sides of a box" },
        ]),
        start: Start::Text("leg"),
        when: When::Always,
    },
    Field {
        id: "height",
        label: "Height",
        hint: "straight up, floor to the underside of the top",
        kind: Kind::ABOVE_ZERO,
        start: Start::Inches("17"),
        when: LEGS,
    },
    Field {
        id: "known",
        label: "I know",
        hint: "",
        kind: Kind::Choice(&[
            Choice { id: "angle", label: "The angle" },
            Choice { id: "foot_out", label: "How far out the foot is" },
        ]),
        start: Start::Text("angle"),
        when: When::Chosen("mode", &["leg"]),
    },
    Field {
        id: "angle",
        label: "Lean",
        hint: "from upright",
        kind: Kind::Number { least: 0, most: 60, unit: "°" },
        start: Start::Text("10"),
        when: When::Chosen("known", &["angle"]),
    },
    Field {
        id: "foot_out",
        label: "Foot out",
        hint: "beyond the top, one edge of the leg to the same edge",
        kind: Kind::ZERO_UP,
        start: Start::Inches("3"),
        when: When::Chosen("known", &["foot_out"]),
    },
    Field {
        id: "width",
        label: "Width of the leg",
        hint: "in the direction in which it leans",
        kind: Kind::ABOVE_ZERO,
        start: Start::Inches("3 1/2"),
        when: When::Chosen("mode", &["leg"]),
    },
    Field {
        id: "rake",
        label: "Lean front to back",
        hint: "from upright, seen from the side",
        kind: Kind::Number { least: 0, most: 60, unit: "°" },
        start: Start::Text("8"),
        when: TWO_WAYS,
    },
    Field {
        id: "splay",
        label: "Lean side to side",
        hint: "from upright, seen from the front",
        kind: Kind::Number { least: 0, most: 60, unit: "°" },
        start: Start::Text("12"),
        when: TWO_WAYS,
    },
    Field {
        id: "thickness",
        label: "Leg",
        hint: "across when round, one side when square",
        kind: Kind::ABOVE_ZERO,
        start: Start::Inches("1 1/2"),
        when: TWO_WAYS,
    },
    Field {
        id: "faces",
        label: "Shape",
        hint: "",
        kind: Kind::Choice(&[
            Choice { id: "turned", label: "Round, or turned to the lean" },
            Choice { id: "square", label: "Square, side faces to the rails" },
        ]),
        start: Start::Text("turned"),
        when: TWO_WAYS,
    },
    Field {
        id: "apart",
        label: "Tops apart, side to side",
        hint: "outside to outside of two legs; may be empty",
        kind: Kind::MAYBE_LENGTH,
        start: Start::Inches("14"),
        when: LEGS,
    },
    Field {
        id: "apart_front",
        label: "Tops apart, front to back",
        hint: "outside to outside of two legs; may be empty",
        kind: Kind::MAYBE_LENGTH,
        start: Start::Inches("10"),
        when: TWO_WAYS,
    },
    Field {
        id: "sides",
        label: "Sides",
        hint: "",
        kind: Kind::Count { least: 3, most: 12 },
        start: Start::Text("6"),
        when: SIDES,
    },
    Field {
        id: "lean",
        label: "Lean",
        hint: "from upright: 0 straight, 90 a flat frame",
        kind: Kind::Number { least: 0, most: 90, unit: "°" },
        start: Start::Text("10"),
        when: SIDES,
    },
    Field {
        id: "joint",
        label: "Ends",
        hint: "",
        kind: Kind::Choice(&[
            Choice { id: "mitred", label: "Mitred" },
            Choice { id: "butt", label: "Butted" },
        ]),
        start: Start::Text("mitred"),
        when: SIDES,
    },
    Field {
        id: "lay",
        label: "Board on the saw",
        hint: "",
        kind: Kind::Choice(&[
            Choice { id: "flat", label: "Flat, face down" },
            Choice { id: "on_edge", label: "On edge" },
        ]),
        start: Start::Text("flat"),
        when: SIDES,
    },
    Field {
        id: "across",
        label: "Across the wide end",
        hint: "flat to flat outside; may be empty",
        kind: Kind::MAYBE_LENGTH,
        start: Start::Inches("16"),
        when: MITRED,
    },
    Field {
        id: "board",
        label: "Board width",
        hint: "along the slope; may be empty",
        kind: Kind::MAYBE_LENGTH,
        start: Start::Inches("7 1/4"),
        when: MITRED,
    },
];

const RESULTS: &[ResultSpec] = &[
    ResultSpec { id: "blank", label: "Blank", kind: ResultKind::Length },
    ResultSpec { id: "setting", label: "Gauge and tilt", kind: ResultKind::Words },
    ResultSpec { id: "gauge", label: "Gauge", kind: ResultKind::Number },
    ResultSpec { id: "gauge_from_edge", label: "Gauge, from the edge", kind: ResultKind::Number },
    ResultSpec { id: "tilt", label: "Blade tilt", kind: ResultKind::Number },
    ResultSpec { id: "tilt_from_table", label: "Blade, from the table", kind: ResultKind::Number },
    ResultSpec { id: "edge", label: "Along the edge", kind: ResultKind::Length },
    ResultSpec { id: "middle", label: "Along the middle", kind: ResultKind::Length },
    ResultSpec { id: "foot_out", label: "Foot out", kind: ResultKind::Length },
    ResultSpec { id: "foot_front", label: "Foot out, front to back", kind: ResultKind::Length },
    ResultSpec { id: "foot_side", label: "Foot out, side to side", kind: ResultKind::Length },
    ResultSpec { id: "spread", label: "Feet apart, side to side", kind: ResultKind::Length },
    ResultSpec { id: "spread_front", label: "Feet apart, front to back", kind: ResultKind::Length },
    ResultSpec { id: "end_cut", label: "Along the end cut", kind: ResultKind::Length },
    ResultSpec { id: "resultant", label: "Lean, both together", kind: ResultKind::Number },
    ResultSpec { id: "from_top", label: "Drill, from the top", kind: ResultKind::Number },
    ResultSpec { id: "sightline", label: "Sightline", kind: ResultKind::Number },
    ResultSpec {
        id: "sightline_side",
        label: "Sightline, from the side",
        kind: ResultKind::Number,
    },
    ResultSpec { id: "longer", label: "Longer face", kind: ResultKind::Words },
    ResultSpec { id: "wide_edge", label: "Wide end of a side", kind: ResultKind::Length },
    ResultSpec { id: "narrow_edge", label: "Narrow end of a side", kind: ResultKind::Length },
    ResultSpec { id: "other_setting", label: "The other way on the saw", kind: ResultKind::Words },
];

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    match ask.choice(ask.field("mode")).id {
        "leg" => work_leg(ask),
        "two_ways" => work_two_ways(ask),
        _ => work_sides(ask),
    }
}

fn work_leg(ask: &mut Ask) -> Option<sheet::Answer> {
    let (height, width) = (ask.length(ask.field("height")), ask.length(ask.field("width")));
    let lean = if ask.choice(ask.field("known")).id == "foot_out" {
        ask.length(ask.field("foot_out")).map(leg::Lean::FootOut)
    } else {
        ask.number(ask.field("angle")).map(leg::Lean::Degrees)
    };
    let apart = ask.optional_length(ask.field("apart"));
    let input = leg::Input { height: height?, lean: lean?, width: width?, apart: apart? };
    match leg::reckon(&input) {
        Ok(answer) => Some(lay_out::leg(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn work_two_ways(ask: &mut Ask) -> Option<sheet::Answer> {
    let (height, thickness) = (ask.length(ask.field("height")), ask.length(ask.field("thickness")));
    let (rake, splay) = (ask.number(ask.field("rake")), ask.number(ask.field("splay")));
    let apart_splay = ask.optional_length(ask.field("apart"));
    let apart_rake = ask.optional_length(ask.field("apart_front"));
    let faces = match ask.choice(ask.field("faces")).id {
        "square" => two_ways::Faces::Square,
        _ => two_ways::Faces::Turned,
    };
    let input = two_ways::Input {
        height: height?,
        rake: rake?,
        splay: splay?,
        thickness: thickness?,
        faces,
        apart_rake: apart_rake?,
        apart_splay: apart_splay?,
    };
    match two_ways::reckon(&input) {
        Ok(answer) => Some(lay_out::two_ways(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn work_sides(ask: &mut Ask) -> Option<sheet::Answer> {
    let (sides, lean) = (ask.count(ask.field("sides")), ask.number(ask.field("lean")));
    let joint = match ask.choice(ask.field("joint")).id {
        "butt" => sides::Joint::Butt,
        _ => sides::Joint::Mitred,
    };
    let lay = match ask.choice(ask.field("lay")).id {
        "on_edge" => Lay::OnEdge,
        _ => Lay::Flat,
    };
    // Lengths are worked out only when both sizes are given.
    let size = if joint == sides::Joint::Mitred {
        let (across, board) =
            (ask.optional_length(ask.field("across")), ask.optional_length(ask.field("board")));
        across?.zip(board?).map(|(across, board)| sides::Size { across, board })
    } else {
        None
    };
    let input = sides::Input { sides: sides?, lean: lean?, joint, lay, size };
    match sides::reckon(&input) {
        Ok(answer) => Some(lay_out::sides(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}
