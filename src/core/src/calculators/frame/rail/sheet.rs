//! Reads the rail's fields and lays its answer out.

use super::{Answer, Find, Input, Joint, reckon};
use crate::calculators::frame::MORTISE_EXTRA;
use crate::drawing::{Board, Role, Scene};
use crate::measure::{Length, OutOfRange, Rounding, Tape};
use crate::say;
use crate::sheet::{self, Ask, Caution, Figure, Source, Step, Value, Working};

pub(in crate::calculators::frame) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let input = read(ask)?;
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn read(ask: &mut Ask) -> Option<Input> {
    let joint = match ask.choice(ask.field("joint")).id {
        "tenon" => ask.length(ask.field("tenon")).map(Joint::Tenoned),
        "lap" => ask.length(ask.field("lap_short")).map(Joint::Lapped),
        _ => Some(Joint::Butted),
    };
    let find = match ask.choice(ask.field("find")).id {
        "overall" => {
            let (cut, legs) = (ask.length(ask.field("rail")), legs(ask));
            Find::Overall { cut: cut?, legs: legs? }
        }
        "leg" => {
            let (overall, cut) = (ask.length(ask.field("overall")), ask.length(ask.field("rail")));
            Find::Leg { overall: overall?, cut: cut? }
        }
        _ => {
            let (overall, legs) = (ask.length(ask.field("overall")), legs(ask));
            Find::Rail { overall: overall?, legs: legs? }
        }
    };
    Some(Input { find, joint: joint? })
}

fn legs(ask: &mut Ask) -> Option<[Length; 2]> {
    let (left, right) =
        (ask.length(ask.field("leg_left")), ask.optional_length(ask.field("leg_right")));
    let (left, right) = (left?, right?);
    Some([left, right.unwrap_or(left)])
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let rail = Figure::length("rail_cut", "Cut the rail", "end to end", answer.cut);
    let overall =
        Figure::length("overall_length", "Overall", "outside to outside of legs", answer.overall);
    let between =
        Figure::length("leg_to_leg", "Leg to leg", "shoulder to shoulder", answer.between);
    let [left, right] = answer.legs;
    let (headline, others) = match input.find {
        Find::Rail { .. } => (rail, vec![between]),
        Find::Overall { .. } => (overall, vec![between]),
        Find::Leg { .. } => {
            (Figure::length("leg_each", "Each leg", "along the rail", left), vec![between])
        }
    };
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = others;
    match (input.joint, answer.mortise) {
        (Joint::Tenoned(tenon), Some(mortise)) => {
            let value = Value::Length(mortise, Rounding::Up);
            let from = "face of leg to bottom";
            laid.figures.push(Figure { id: "mortise", label: "Mortise", from, value });
            laid.notes.push(say![
                "The cut has ",
                (tenon, Rounding::Nearest),
                " of tenon in it at each end. Mark the shoulders ",
                answer.between,
                " apart."
            ]);
        }
        (Joint::Tenoned(_), None) => laid.notes.push(say![
            "A mortise ",
            MORTISE_EXTRA,
            " deeper than the tenon comes out of the leg: cut it right through."
        ]),
        (Joint::Lapped(_), _) => laid.notes.push(say![
            "Mark each shoulder from the leg itself, not from the numbers. See half-lap depth."
        ]),
        (Joint::Butted, _) => {}
    }
    if let Find::Rail { .. } = input.find {
        laid.notes
            .push(say!["Measure the real legs: each 1/16 in they are thin adds to the rail."]);
    }
    laid.cautions = vec![Caution::DustAndNoise];
    laid.drawing = draw(input, answer, [left, right], tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let [left, right] = answer.legs;
    let mut steps = Vec::new();
    let between = |rule| {
        let put_in = say![answer.overall, " - ", left, " - ", right];
        Step::length(rule, put_in, answer.between)
    };
    let cut = || match input.joint {
        Joint::Butted => Step::length("rail = leg to leg", say![answer.between], answer.cut),
        Joint::Tenoned(tenon) => Step::length(
            "rail = leg to leg + 2 × tenon",
            say![answer.between, " + 2 × ", tenon],
            answer.cut,
        ),
        Joint::Lapped(short) => Step::length(
            "rail = overall - 2 × short of the outside",
            say![answer.overall, " - 2 × ", short],
            answer.cut,
        ),
    };
    let less_tenons = || match input.joint {
        Joint::Tenoned(tenon) => Step::length(
            "leg to leg = rail - 2 × tenon",
            say![answer.cut, " - 2 × ", tenon],
            answer.between,
        ),
        _ => Step::length("leg to leg = rail", say![answer.cut], answer.between),
    };
    match input.find {
        Find::Rail { .. } => {
            steps.push(between("leg to leg = overall - left leg - right leg"));
            steps.push(cut());
        }
        Find::Overall { .. } => {
            if let Joint::Lapped(short) = input.joint {
                steps.push(Step::length(
                    "overall = rail + 2 × short of the outside",
                    say![answer.cut, " + 2 × ", short],
                    answer.overall,
                ));
                return Working { steps, sources: vec![Source::Arithmetic] };
            }
            steps.push(less_tenons());
            steps.push(Step::length(
                "overall = leg to leg + left leg + right leg",
                say![answer.between, " + ", left, " + ", right],
                answer.overall,
            ));
        }
        Find::Leg { .. } => {
            steps.push(less_tenons());
            steps.push(Step::length(
                "each leg = (overall - leg to leg) ÷ 2",
                say!["(", answer.overall, " - ", answer.between, ") ÷ 2"],
                left,
            ));
        }
    }
    let mut sources = vec![Source::Arithmetic];
    if let Some(mortise) = answer.mortise {
        let put_in = match input.joint {
            Joint::Tenoned(tenon) => say![tenon, " + ", MORTISE_EXTRA],
            Joint::Butted | Joint::Lapped(_) => say![MORTISE_EXTRA],
        };
        steps.push(Step::length("mortise = tenon + 1/8 in", put_in, mortise));
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
        board.dimension(-1, rail_left, (rail_left + answer.cut)?);
    }
    board.dimension(0, zero, left);
    board.dimension(0, left, right_face);
    board.dimension(0, right_face, overall);
    board.dimension(1, zero, overall);
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
