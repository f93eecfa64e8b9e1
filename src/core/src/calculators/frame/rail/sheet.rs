//! Reads the rail's fields and lays its answer out.

use super::{Answer, Find, Input, Joint, reckon};
use crate::calculators::frame::MORTISE_EXTRA;
use crate::calculators::frame::fields::{
    FIND, FIND_LEGS, FIND_OVERALL, JOINT, LAP_SHORT, LAPPED, LEG_EACH, LEG_LEFT, LEG_RIGHT,
    LEG_TO_LEG, MORTISE, OVERALL, OVERALL_LENGTH, RAIL, RAIL_CUT, TENON, TENONED, out_of_range,
};
use crate::drawing::{Board, Role, Scene};
use crate::measure::{Length, OutOfRange, Rounding, Tape};
use crate::say;
use crate::sheet::{self, Act, Ask, Caution, Note, Source, Step, Term, Value, Working};

pub(in crate::calculators::frame) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let input = read(ask)?;
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, out_of_range()),
    }
}

fn read(ask: &mut Ask) -> Option<Input> {
    let joint = match ask.choice(&JOINT) {
        TENONED => ask.length(&TENON).map(Joint::Tenoned),
        LAPPED => ask.length(&LAP_SHORT).map(Joint::Lapped),
        _ => Some(Joint::Butted),
    };
    let find = match ask.choice(&FIND) {
        FIND_OVERALL => {
            let (cut, legs) = (ask.length(&RAIL), legs(ask));
            Find::Overall { cut: cut?, legs: legs? }
        }
        FIND_LEGS => {
            let (overall, cut) = (ask.length(&OVERALL), ask.length(&RAIL));
            Find::Leg { overall: overall?, cut: cut? }
        }
        _ => {
            let (overall, legs) = (ask.length(&OVERALL), legs(ask));
            Find::Rail { overall: overall?, legs: legs? }
        }
    };
    Some(Input { find, joint: joint? })
}

fn legs(ask: &mut Ask) -> Option<[Length; 2]> {
    let (left, right) = (ask.length(&LEG_LEFT), ask.optional_length(&LEG_RIGHT));
    let (left, right) = (left?, right?);
    Some([left, right.unwrap_or(left)])
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let rail = RAIL_CUT.called("Cut the rail").figure("end to end", answer.cut);
    let overall = OVERALL_LENGTH.figure("outside to outside of legs", answer.overall);
    let between = LEG_TO_LEG.figure("shoulder to shoulder", answer.between);
    let [left, right] = answer.legs;
    let (headline, others) = match input.find {
        Find::Rail { .. } => (rail, vec![between]),
        Find::Overall { .. } => (overall, vec![between]),
        Find::Leg { .. } => (LEG_EACH.figure("along the rail", left), vec![between]),
    };
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = others;
    match (input.joint, answer.mortise) {
        (Joint::Tenoned(tenon), Some(mortise)) => {
            let value = Value::Length(mortise, Rounding::Up);
            let from = "face of leg to bottom";
            laid.figures.push(MORTISE.called("Mortise").figure(from, value));
            laid.notes.push(Note::new(
                "cut_has_tenons",
                say![
                    "The cut has ",
                    (tenon, Rounding::Nearest),
                    " of tenon in it at each end. Mark the shoulders ",
                    answer.between,
                    " apart."
                ],
            ));
        }
        (Joint::Tenoned(_), None) => laid.notes.push(Note::new(
            "mortise_goes_through",
            say![
                "A mortise ",
                MORTISE_EXTRA,
                " deeper than the tenon comes out of the leg: cut it right through."
            ],
        )),
        (Joint::Lapped(_), _) => laid.notes.push(Note::new(
            "mark_shoulders_from_leg",
            say![
                "Mark each shoulder from the leg itself, not from the numbers. See half-lap depth."
            ],
        )),
        (Joint::Butted, _) => {}
    }
    if let Find::Rail { .. } = input.find {
        laid.notes.push(Note::new(
            "measure_real_legs",
            say!["Measure the real legs: all that they are thin is added to the rail."],
        ));
    }
    laid.cautions = Caution::of(&[Act::Saw]);
    laid.drawing = draw(input, answer, [left, right], tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let [left, right] = answer.legs;
    let overall = || Term::of("overall", answer.overall);
    let between = || Term::of("leg to leg", answer.between);
    let rail = || Term::of("rail", answer.cut);
    let legs = || [Term::of("left leg", left), Term::of("right leg", right)];
    let tenons = |tenon| Term::fixed(2) * Term::of("tenon", tenon);
    let short = |short| Term::fixed(2) * Term::of("short of the outside", short);
    let less_tenons = || {
        let formula = match input.joint {
            Joint::Tenoned(tenon) => rail() - tenons(tenon),
            Joint::Butted | Joint::Lapped(_) => rail(),
        };
        Step::of("leg to leg", formula, answer.between)
    };
    let mut steps = match (input.find, input.joint) {
        (Find::Rail { .. }, joint) => {
            let [left, right] = legs();
            let cut = match joint {
                Joint::Butted => between(),
                Joint::Tenoned(tenon) => between() + tenons(tenon),
                Joint::Lapped(by) => overall() - short(by),
            };
            vec![
                Step::of("leg to leg", overall() - left - right, answer.between),
                Step::of("rail", cut, answer.cut),
            ]
        }
        (Find::Overall { .. }, Joint::Lapped(by)) => {
            vec![Step::of("overall", rail() + short(by), answer.overall)]
        }
        (Find::Overall { .. }, _) => {
            let [left, right] = legs();
            vec![less_tenons(), Step::of("overall", between() + left + right, answer.overall)]
        }
        (Find::Leg { .. }, _) => {
            let each = (overall() - between()) / Term::fixed(2);
            vec![less_tenons(), Step::of("each leg", each, left)]
        }
    };
    let mut sources = vec![Source::Arithmetic];
    if let (Joint::Tenoned(tenon), Some(mortise)) = (input.joint, answer.mortise) {
        let deep = Term::of("tenon", tenon) + Term::fixed(MORTISE_EXTRA);
        steps.push(Step::of("mortise", deep, mortise));
        sources.push(Source::CommonPractice);
    }
    Working { steps, sources }
}

/// From the front: two legs, the rail, tenons dashed inside the legs.
fn draw(
    input: &Input,
    answer: &Answer,
    [left, right]: [Length; 2],
    tape: Tape,
) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let overall = answer.overall;
    let high = (overall / 3)?;
    let (top, rail_high) = ((high / 6)?, (high / 3)?);
    let mut board = Board::fit(tape, overall, high, 130.0, 2, 2);
    let right_face = (overall - right)?;
    board.rect(Role::Wood, zero, zero, left, high);
    board.rect(Role::Wood, right_face, zero, right, high);
    let rail_left = ((overall - answer.cut)? / 2)?;
    match input.joint {
        Joint::Lapped(short) => board.rect(Role::Mate, short, top, answer.cut, rail_high),
        Joint::Butted => board.rect(Role::Mate, left, top, answer.between, rail_high),
        Joint::Tenoned(tenon) => {
            board.rect(Role::Mate, left, top, answer.between, rail_high);
            let (inset, tall) = ((rail_high / 6)?, ((rail_high * 2)? / 3)?);
            board.rect(Role::Ghost, (left - tenon)?, (top + inset)?, tenon, tall);
            board.rect(Role::Ghost, right_face, (top + inset)?, tenon, tall);
        }
    }
    if answer.cut != answer.between || matches!(input.joint, Joint::Lapped(_)) {
        let rail_left = match input.joint {
            Joint::Tenoned(tenon) => (left - tenon)?,
            _ => rail_left,
        };
        board.given(-1, rail_left, (rail_left + answer.cut)?, Some(RAIL.id));
    }
    match input.joint {
        Joint::Tenoned(tenon) => {
            let label = format!("tenon {}", board.amount(tenon));
            board.labelled(-2, (left - tenon)?, left, label, Some(TENON.id));
        }
        Joint::Lapped(short) if short.is_positive() => {
            let label = format!("short {}", board.amount(short));
            board.labelled(-2, zero, short, label, Some(LAP_SHORT.id));
        }
        _ => {}
    }
    board.given(0, zero, left, Some(LEG_LEFT.id));
    board.given(0, left, right_face, (input.joint == Joint::Butted).then_some(RAIL.id));
    board.given(0, right_face, overall, Some(LEG_RIGHT.id));
    board.given(1, zero, overall, Some(OVERALL.id));
    Ok(board.scene(say![
        "Two legs from the front, ",
        answer.overall,
        " overall, with a rail of ",
        answer.cut,
        " and ",
        answer.between,
        " from leg to leg."
    ]))
}
