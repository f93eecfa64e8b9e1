//! Lays the answers of the angles out.

use crate::calculators::angles::fields::{
    BLANK, EDGE, END_CUT, FOOT_FRONT, FOOT_OUT_FOUND, FOOT_SIDE, FROM_TOP, GAUGE, GAUGE_FROM_EDGE,
    LONGER, MIDDLE, NARROW_EDGE, OTHER_SETTING, RESULTANT, SETTING, SIGHTLINE, SIGHTLINE_SIDE,
    SPREAD, SPREAD_FRONT, TILT, TILT_FROM_TABLE, WIDE_EDGE,
};
use crate::calculators::angles::sides::{Face, Joint, Setting};
use crate::calculators::angles::two_ways::Faces;
use crate::calculators::angles::{self, Lay, drawing};
use crate::measure::{Angle, Tape};
use crate::say;
use crate::sheet::{
    Act, Amount, Answer, Caution, Figure, Note, Rounded, Sentence, Source, Step, Term, Value,
    Working,
};

/// The farthest that most table saws tilt, in degrees: common practice, no source.
const USUAL_TILT: f64 = 45.0;

fn degrees(angle: Angle) -> Value {
    // Without a minus before a zero.
    Value::Real(angle.in_degrees() + 0.0, 2, "°")
}

/// The gauge as the saw reads it, and the same from the edge of the board.
fn gauge(gauge: Angle) -> [Figure; 2] {
    [
        GAUGE.figure("from square across the board", degrees(gauge)),
        GAUGE_FROM_EDGE
            .called("The same")
            .figure("from the edge of the board", degrees(gauge.complement())),
    ]
}

/// The tilt as the saw reads it, and the same from the table.
fn tilt(tilt: Angle) -> [Figure; 2] {
    [
        TILT.figure("from upright", degrees(tilt)),
        TILT_FROM_TABLE.called("The same").figure("from the table", degrees(tilt.complement())),
    ]
}

/// How a cut with this tilt is made: at none, the blade stays upright.
fn sawn(tilt: Angle) -> Act {
    // Below half of the last place shown nothing is tilted.
    if tilt.in_degrees().abs() < 0.005 { Act::Saw } else { Act::SawTilted }
}

pub(super) fn leg(input: &angles::leg::Input, answer: &angles::leg::Answer, tape: Tape) -> Answer {
    let height = || Term::of("height", input.height);
    let width = Term::of("width", input.width);
    let lean = || Term::of("lean", Amount::angle(answer.lean.in_degrees()));
    let mut figures =
        vec![EDGE.called("Along one edge").figure("top cut to foot cut", answer.edge)];
    figures.extend(gauge(answer.lean));
    figures.push(FOOT_OUT_FOUND.figure("beyond the top", answer.foot_out));
    if let Some(spread) = answer.spread {
        figures.push(SPREAD.called("Feet apart").figure("outside to outside", spread));
    }
    figures.push(END_CUT.figure("edge to edge", answer.end_cut));
    let mut steps = Vec::new();
    if let angles::leg::Lean::FootOut(foot_out) = input.lean {
        let tangent = Term::of("foot out", foot_out) / height();
        steps.push(Step::of("lean", tangent.angle_by_tangent(), degrees(answer.lean)));
    }
    steps.extend([
        Step::of("along one edge", height() / lean().cos(), answer.edge),
        Step::of(
            "blank",
            Term::of("along one edge", answer.edge) + width * lean().tan(),
            answer.blank,
        ),
        Step::of("foot out", height() * lean().tan(), answer.foot_out),
    ]);
    Answer {
        goods: Vec::new(),
        headline: BLANK.figure("square end to square end", answer.blank),
        figures,
        tables: Vec::new(),
        notes: vec![Note::new(
            "end_cuts_are_parallel",
            say![
                "The two end cuts are parallel: cut both with the same face down and the same edge to the gauge."
            ],
        )],
        cautions: Caution::of(&[Act::Saw]),
        drawing: Some(drawing::leg(input, answer, tape)),
        template: None,
        working: Working { steps, sources: vec![Source::Arithmetic] },
    }
}

pub(super) fn two_ways(
    input: &angles::two_ways::Input,
    answer: &angles::two_ways::Answer,
    tape: Tape,
) -> Answer {
    let rake = || Term::of("front to back", Amount::angle(input.rake.to_f64()));
    let splay = || Term::of("side to side", Amount::angle(input.splay.to_f64()));
    let lean = || Term::of("lean", Amount::angle(answer.resultant.in_degrees()));
    let mut figures = vec![
        RESULTANT.figure("from upright", degrees(answer.resultant)),
        FROM_TOP
            .called("The same")
            .figure("from the underside of the top", degrees(answer.resultant.complement())),
        SIGHTLINE.figure("from the front-to-back line", degrees(answer.sightline)),
        SIGHTLINE_SIDE
            .called("The same")
            .figure("from the side-to-side line", degrees(answer.sightline.complement())),
    ];
    figures.extend(gauge(answer.gauge));
    if input.faces == Faces::Square {
        figures.extend(tilt(answer.tilt));
    }
    figures.push(MIDDLE.figure("top cut to foot cut", answer.middle));
    figures.push(FOOT_FRONT.called("Foot out").figure("front to back", answer.foot_rake));
    figures.push(FOOT_SIDE.called("Foot out").figure("side to side", answer.foot_splay));
    if let Some(spread) = answer.spread_rake {
        let from = "outside to outside, front to back";
        figures.push(SPREAD_FRONT.called("Feet apart").figure(from, spread));
    }
    if let Some(spread) = answer.spread_splay {
        let from = "outside to outside, side to side";
        figures.push(SPREAD.called("Feet apart").figure(from, spread));
    }
    let how = match input.faces {
        Faces::Turned => Note::new(
            "lay_lean_across_table",
            say![
                "Cut both ends with the lean lying across the table, as for a leg that leans one way."
            ],
        ),
        Faces::Square => Note::new(
            "same_face_down_both_ends",
            say![
                "Cut both ends with the same side face down and the same edge to the gauge: the cuts are parallel."
            ],
        ),
    };
    let mut steps = vec![
        Step::of(
            "lean",
            (rake().tan_squared() + splay().tan_squared()).root().angle_by_tangent(),
            degrees(answer.resultant),
        ),
        Step::of(
            "sightline",
            (splay().tan() / rake().tan()).angle_by_tangent(),
            degrees(answer.sightline),
        ),
        Step::of(
            "along the middle",
            Term::of("height", input.height) / lean().cos(),
            answer.middle,
        ),
    ];
    let middle = Term::of("along the middle", answer.middle);
    let thickness = Term::of("thickness", input.thickness);
    match input.faces {
        Faces::Turned => {
            steps.push(Step::of("blank", middle + thickness * lean().tan(), answer.blank));
        }
        Faces::Square => {
            let gauge = Term::of("gauge", Amount::angle(answer.gauge.in_degrees()));
            let tilt = Term::of("tilt", Amount::angle(answer.tilt.in_degrees()));
            let longer = gauge.tan() + tilt.sin() / lean().cos();
            steps.extend([
                Step::of(
                    "gauge",
                    (rake().tan() * splay().cos()).angle_by_tangent(),
                    degrees(answer.gauge),
                ),
                Step::of("tilt", splay(), degrees(answer.tilt)),
                Step::of("blank", middle + thickness * longer, answer.blank),
            ]);
        }
    }
    Answer {
        goods: Vec::new(),
        headline: BLANK.figure("square end to square end", answer.blank),
        figures,
        tables: Vec::new(),
        notes: vec![
            how,
            Note::new(
                "drill_along_sightline",
                say!["To drill, set a bevel to the lean and stand it along the sightline."],
            ),
        ],
        cautions: Caution::of(&[
            if input.faces == Faces::Square { sawn(answer.tilt) } else { Act::Saw },
            Act::Drill,
        ]),
        drawing: Some(drawing::two_ways(input, answer, tape)),
        template: None,
        working: Working { steps, sources: vec![Source::Arithmetic, Source::CommonPractice] },
    }
}

fn setting_words(setting: Setting) -> Sentence {
    say![format!(
        "{:.2}° and {:.2}°",
        setting.gauge.in_degrees() + 0.0,
        setting.tilt.in_degrees() + 0.0
    )]
}

pub(super) fn sides(
    input: &angles::sides::Input,
    answer: &angles::sides::Answer,
    tape: Tape,
) -> Answer {
    let mut figures = Vec::new();
    figures.extend(gauge(answer.setting.gauge));
    figures.extend(tilt(answer.setting.tilt));
    if let Some((wide, narrow)) = answer.edges {
        let from = "corner to corner, outside";
        figures.push(WIDE_EDGE.figure(from, wide));
        figures.push(NARROW_EDGE.figure(from, narrow));
    }
    if let Some(face) = answer.longer {
        let value = Value::Words(match face {
            Face::Outside => say!["outside"],
            Face::Inside => say!["inside"],
        });
        figures.push(LONGER.figure("", value));
    }
    let (lay, other_lay) = match input.lay {
        Lay::Flat => ("board face down", "gauge and tilt, on edge"),
        Lay::OnEdge => ("board on edge", "gauge and tilt, face down"),
    };
    figures.push(OTHER_SETTING.figure(other_lay, Value::Words(setting_words(answer.other))));
    let mut notes = vec![
        Note::new(
            "ends_mirror",
            say![
                "The two ends of a side mirror each other: swing the gauge the other way for the second."
            ],
        ),
        Note::new(
            "last_joint_opens",
            say![format!(
                "Each end 0.1° off opens the last joint by {:.1}°. Cut scrap, fit it, then cut the stock.",
                answer.opens_by
            )],
        ),
    ];
    if answer.setting.tilt.in_degrees() > USUAL_TILT {
        let way = match input.lay {
            Lay::Flat => "on edge",
            Lay::OnEdge => "flat",
        };
        let words = "Most saws tilt no farther than 45°.";
        notes.push(if answer.other.tilt.in_degrees() <= USUAL_TILT {
            Note::new(
                "cut_it_the_other_way",
                say![format!("{words} Laid {way} it can be cut: see the other setting.")],
            )
        } else {
            Note::new(
                "cut_on_sloping_support",
                say![format!("{words} Cut it on a sloping support.")],
            )
        });
    }
    Answer {
        goods: Vec::new(),
        headline: SETTING.figure(lay, Value::Words(setting_words(answer.setting))),
        figures,
        tables: Vec::new(),
        notes,
        cautions: Caution::of(&[sawn(answer.setting.tilt)]),
        drawing: Some(drawing::sides(input, answer, tape)),
        template: None,
        working: Working { steps: sides_steps(input, answer), sources: vec![Source::Arithmetic] },
    }
}

fn sides_steps(input: &angles::sides::Input, answer: &angles::sides::Answer) -> Vec<Step> {
    let lean = || Term::of("lean", Amount::angle(input.lean.to_f64()));
    let part_of = |turn: &str| Term::fixed(turn.to_owned()) / Term::of("sides", input.sides);
    let (half, whole) = (|| part_of("180°"), || part_of("360°"));
    let (tangent, sine) = match (input.joint, input.lay) {
        (Joint::Mitred, Lay::Flat) => (lean().sin() * half().tan(), lean().cos() * half().sin()),
        (Joint::Mitred, Lay::OnEdge) => (lean().cos() * half().tan(), lean().sin() * half().sin()),
        (Joint::Butt, Lay::Flat) => (
            lean().sin() * half().tan(),
            lean().cos_squared() * whole().cos() + lean().sin_squared(),
        ),
        (Joint::Butt, Lay::OnEdge) => (
            (lean().cos_squared() * whole().cos() + lean().sin_squared())
                / (lean().cos() * whole().sin()),
            lean().sin() * lean().cos() * (Term::fixed(1) - whole().cos()),
        ),
    };
    let mut steps = vec![
        Step::of("gauge", tangent.angle_by_tangent(), degrees(answer.setting.gauge)),
        Step::of("tilt", sine.angle_by_sine(), degrees(answer.setting.tilt)),
    ];
    if input.joint == Joint::Butt {
        steps = steps.into_iter().map(|step| step.then(Rounded::EitherWay)).collect();
    }
    if let (Some(size), Some((wide, narrow))) = (input.size, answer.edges) {
        let across = || Term::of("across", size.across);
        let inside = across() - Term::fixed(2) * Term::of("board", size.board) * lean().sin();
        steps.push(Step::of("wide end of a side", across() * half().tan(), wide));
        steps.push(Step::of("narrow end of a side", inside * half().tan(), narrow));
    }
    steps
}
