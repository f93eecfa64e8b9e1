//! What the curve asks, and which of its questions the entries mean.

mod lay_out;

use super::{Board, Problem, arc, corner, rim, s_curve};
use crate::calculators::{Calculator, ResultKind, ResultSpec, Stage};
use crate::sheet::{self, Ask, Choice, Field, Kind, Problems, Start, When};

/// Curve: radius, batten marks, rounded corners and the round thing that draws them.
pub const CALCULATOR: Calculator = Calculator {
    slug: "curve",
    title: "Curve",
    question: "What radius is it, and how do I draw it?",
    stage: Stage::Shape,
    fields: FIELDS,
    results: RESULTS,
    work,
};

const DRAWN_OVER: When = When::Chosen("mode", &["arc", "s_curve"]);
const FOR_THINGS: When = When::Chosen("mode", &["arc", "corner", "end", "s_curve"]);

// The starts are those of our invented potting bench: the arched rail at its front, the rounded
// ends of its top, a paint can and its two curved brackets.
const FIELDS: &[Field] = &[
    Field {
        id: "mode",
        label: "What to draw",
        hint: "",
        kind: Kind::Choice(&[
            Choice { id: "arc", label: "Arc" },
            Choice { id: "rim", label: "Round thing" },
            Choice { id: "corner", label: "Corner" },
            Choice { id: "end", label: "Round end" },
            Choice { id: "s_curve", label: "S-curve" },
        ]),
        start: Start::Text("arc"),
        when: When::Always,
    },
    Field {
        id: "chord",
        label: "Width of the arc",
        hint: "straight across, end to end",
        kind: Kind::ABOVE_ZERO,
        start: Start::Inches("36"),
        when: When::Chosen("mode", &["arc"]),
    },
    Field {
        id: "rise",
        label: "Rise",
        hint: "in the middle, from that straight line to the curve",
        kind: Kind::ABOVE_ZERO,
        start: Start::Inches("2"),
        when: When::Chosen("mode", &["arc"]),
    },
    Field {
        id: "shape",
        label: "Edge of the board",
        hint: "",
        kind: Kind::Choice(&[
            Choice { id: "hollow", label: "Hollow, an arch" },
            Choice { id: "crown", label: "Crowned" },
        ]),
        start: Start::Text("hollow"),
        when: When::Chosen("mode", &["arc"]),
    },
    Field {
        id: "measured",
        label: "Measured",
        hint: "",
        kind: Kind::Choice(&[
            Choice { id: "around", label: "Round the rim" },
            Choice { id: "straightedge", label: "With a straightedge" },
        ]),
        start: Start::Text("straightedge"),
        when: When::Chosen("mode", &["rim"]),
    },
    Field {
        id: "around",
        label: "Once round",
        hint: "along the edge that the pencil will follow",
        kind: Kind::ABOVE_ZERO,
        start: Start::Inches("37 3/4"),
        when: When::Chosen("measured", &["around"]),
    },
    Field {
        id: "short_chord",
        label: "Straightedge",
        hint: "between the two places where it touches",
        kind: Kind::ABOVE_ZERO,
        start: Start::Inches("6"),
        when: When::Chosen("measured", &["straightedge"]),
    },
    Field {
        id: "short_rise",
        label: "Rise under its middle",
        hint: "from the straightedge to the rim",
        kind: Kind::ABOVE_ZERO,
        start: Start::Inches("13/16"),
        when: When::Chosen("measured", &["straightedge"]),
    },
    Field {
        id: "radius",
        label: "Radius",
        hint: "",
        kind: Kind::ABOVE_ZERO,
        start: Start::Inches("2"),
        when: When::Chosen("mode", &["corner"]),
    },
    Field {
        id: "corner",
        label: "Angle of the corner",
        hint: "of the wood, 90 when square",
        kind: Kind::Number { least: 10, most: 170, unit: "°" },
        start: Start::Text("90"),
        when: When::Chosen("mode", &["corner"]),
    },
    Field {
        id: "corners",
        label: "Round",
        hint: "",
        kind: Kind::Choice(&[
            Choice { id: "one", label: "One corner" },
            Choice { id: "both", label: "Both ends of the edge" },
        ]),
        start: Start::Text("both"),
        when: When::Chosen("mode", &["corner"]),
    },
    Field {
        id: "edge",
        label: "Length of the edge",
        hint: "leave empty when there is plenty",
        kind: Kind::MAYBE_LENGTH,
        start: Start::Inches("5 1/2"),
        when: When::Chosen("mode", &["corner"]),
    },
    Field {
        id: "end_width",
        label: "Width of the end",
        hint: "",
        kind: Kind::ABOVE_ZERO,
        start: Start::Inches("5 1/2"),
        when: When::Chosen("mode", &["end"]),
    },
    Field {
        id: "run",
        label: "Run",
        hint: "along the board, end to end of the curve",
        kind: Kind::ABOVE_ZERO,
        start: Start::Inches("9"),
        when: When::Chosen("mode", &["s_curve"]),
    },
    Field {
        id: "offset",
        label: "Offset",
        hint: "across the board, end to end of the curve",
        kind: Kind::ABOVE_ZERO,
        start: Start::Inches("3"),
        when: When::Chosen("mode", &["s_curve"]),
    },
    Field {
        id: "step",
        label: "A mark every",
        hint: "",
        kind: Kind::ABOVE_ZERO,
        start: Start::Inches("3"),
        when: DRAWN_OVER,
    },
    Field {
        id: "board",
        label: "Board width",
        hint: "empty when it does not matter",
        kind: Kind::MAYBE_LENGTH,
        start: Start::Text(""),
        when: DRAWN_OVER,
    },
    Field {
        id: "keep",
        label: "Wood to leave",
        hint: "at the narrowest place",
        kind: Kind::ZERO_UP,
        start: Start::Inches("2"),
        when: DRAWN_OVER,
    },
    Field {
        id: "things",
        label: "Round things I own",
        hint: "across each, separated by commas",
        kind: Kind::Lengths,
        start: Start::Text("4 1/4 in, 5 1/2 in, 6 1/2 in, 8 in, 10 1/4 in, 11 3/4 in, 23 in"),
        when: FOR_THINGS,
    },
];

const RESULTS: &[ResultSpec] = &[
    ResultSpec { id: "radius", label: "Radius", kind: ResultKind::Length },
    ResultSpec { id: "touches", label: "Round meets the edge", kind: ResultKind::Length },
    ResultSpec { id: "diameter", label: "Diameter", kind: ResultKind::Length },
    ResultSpec { id: "centre", label: "Centre", kind: ResultKind::Length },
    ResultSpec { id: "corner_to_centre", label: "Corner to centre", kind: ResultKind::Length },
    ResultSpec { id: "lost", label: "Off the corner", kind: ResultKind::Length },
    ResultSpec { id: "straight", label: "Straight edge left", kind: ResultKind::Length },
    ResultSpec { id: "meet_along", label: "Arcs meet, along", kind: ResultKind::Length },
    ResultSpec { id: "meet_across", label: "Arcs meet, across", kind: ResultKind::Length },
    ResultSpec { id: "narrowest", label: "Left at the narrowest", kind: ResultKind::Length },
    ResultSpec { id: "curve_length", label: "Along the curve", kind: ResultKind::Length },
    ResultSpec { id: "around", label: "Once round", kind: ResultKind::Length },
    ResultSpec { id: "least", label: "Radius, at least", kind: ResultKind::Length },
    ResultSpec { id: "most", label: "Radius, at most", kind: ResultKind::Length },
    ResultSpec { id: "sticks", label: "Between two sticks", kind: ResultKind::Number },
    ResultSpec { id: "steepest", label: "Steepest place", kind: ResultKind::Number },
    ResultSpec { id: "waste", label: "Cut away", kind: ResultKind::Number },
    ResultSpec { id: "thing", label: "Nearest round thing", kind: ResultKind::Length },
    ResultSpec { id: "thing_centre", label: "Its centre", kind: ResultKind::Length },
    ResultSpec { id: "thing_off", label: "Its radius", kind: ResultKind::Words },
    ResultSpec { id: "marks", label: "Marks for a batten", kind: ResultKind::Table },
    ResultSpec { id: "things", label: "Round things", kind: ResultKind::Table },
];

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    match ask.choice(ask.field("mode")).id {
        "arc" => work_arc(ask),
        "rim" => work_rim(ask),
        "corner" => work_corner(ask),
        "end" => work_end(ask),
        _ => work_s_curve(ask),
    }
}

fn work_arc(ask: &mut Ask) -> Option<sheet::Answer> {
    let (chord, rise, step) = (
        ask.length(ask.field("chord")),
        ask.length(ask.field("rise")),
        ask.length(ask.field("step")),
    );
    let (board, things) = (board(ask), ask.lengths(ask.field("things")));
    let crown = ask.choice(ask.field("shape")).id == "crown";
    let input =
        arc::Input { chord: chord?, rise: rise?, step: step?, board: board?, things: things? };
    match arc::reckon(&input) {
        Ok(answer) => Some(lay_out::arc(&input, &answer, crown, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn work_rim(ask: &mut Ask) -> Option<sheet::Answer> {
    let input = if ask.choice(ask.field("measured")).id == "around" {
        rim::Input::Around(ask.length(ask.field("around"))?)
    } else {
        let (chord, rise) =
            (ask.length(ask.field("short_chord")), ask.length(ask.field("short_rise")));
        rim::Input::Straightedge { chord: chord?, rise: rise? }
    };
    match rim::reckon(&input) {
        Ok(answer) => Some(lay_out::rim(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn work_corner(ask: &mut Ask) -> Option<sheet::Answer> {
    let (radius, corner) = (ask.length(ask.field("radius")), ask.number(ask.field("corner")));
    let (edge, things) = (ask.optional_length(ask.field("edge")), ask.lengths(ask.field("things")));
    let both = ask.choice(ask.field("corners")).id == "both";
    let input =
        corner::Input { radius: radius?, corner: corner?, edge: edge?, both, things: things? };
    match corner::reckon(&input) {
        Ok(answer) => Some(lay_out::corner(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn work_end(ask: &mut Ask) -> Option<sheet::Answer> {
    let (width, things) = (ask.length(ask.field("end_width")), ask.lengths(ask.field("things")));
    let (width, things) = (width?, things?);
    let result = corner::Input::whole_end(width, things)
        .map_err(Problems::<Problem>::from)
        .and_then(|input| corner::reckon(&input).map(|answer| (input, answer)));
    match result {
        Ok((input, answer)) => Some(lay_out::end(width, &input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn work_s_curve(ask: &mut Ask) -> Option<sheet::Answer> {
    let (run, offset, step) = (
        ask.length(ask.field("run")),
        ask.length(ask.field("offset")),
        ask.length(ask.field("step")),
    );
    let (board, things) = (board(ask), ask.lengths(ask.field("things")));
    let input =
        s_curve::Input { run: run?, offset: offset?, step: step?, board: board?, things: things? };
    match s_curve::reckon(&input) {
        Ok(answer) => Some(lay_out::s_curve(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

/// The board, or `Some(None)` when its width is left empty; the wood to leave matters only then.
fn board(ask: &mut Ask) -> Option<Option<Board>> {
    let Some(width) = ask.optional_length(ask.field("board"))? else { return Some(None) };
    let keep = ask.length(ask.field("keep"))?;
    Some(Some(Board { width, keep }))
}
