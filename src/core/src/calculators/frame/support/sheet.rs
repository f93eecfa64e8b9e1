//! Reads the supports' fields and lays their answer out.

use super::{Answer, Input, reckon};
use crate::calculators::frame::fields::{
    BAY, BETWEEN_LEGS, BETWEEN_RAILS, DEPTH_OVERALL, HOUSING, RAIL_SET_BACK, RAIL_THICKNESS,
    SUPPORT_CUT, SUPPORT_EDGES, SUPPORT_THICKNESS, SUPPORTS, out_of_range,
};
use crate::drawing::{Board, Role, Scene};
use crate::measure::{Length, OutOfRange, Tape};
use crate::say;
use crate::sentence::counted;
use crate::sheet::{self, Act, Ask, Caution, Note, Source, Step, Term, Value, Working};

pub(in crate::calculators::frame) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let depth_overall = ask.length(&DEPTH_OVERALL);
    let set_back = ask.length(&RAIL_SET_BACK);
    let rail_thickness = ask.length(&RAIL_THICKNESS);
    let between_legs = ask.length(&BETWEEN_LEGS);
    let n_supports = ask.count(&SUPPORTS);
    let support_thickness = ask.length(&SUPPORT_THICKNESS);
    let housing = ask.length(&HOUSING);
    let input = Input {
        depth_overall: depth_overall?,
        set_back: set_back?,
        rail_thickness: rail_thickness?,
        between_legs: between_legs?,
        n_supports: n_supports?,
        support_thickness: support_thickness?,
        housing: housing?,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, out_of_range()),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let headline = SUPPORT_CUT.called("Cut each support").figure("end to end", answer.cut);
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = vec![
        SUPPORT_EDGES.figure("from the left leg", Value::Lengths(answer.left_edges.clone())),
        BAY.figure("between supports and legs", answer.bay),
        BETWEEN_RAILS.figure("inside to inside", answer.between_rails),
    ];
    laid.notes.push(Note::new(
        "measure_rail_to_rail",
        say!["Measure rail to rail on the built frame before you cut."],
    ));
    laid.cautions = Caution::of(&[Act::Saw]);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let side = Term::of("set-back", input.set_back) + Term::of("rail", input.rail_thickness);
    let between = Term::of("depth", input.depth_overall) - Term::fixed(2) * side;
    let ends = Term::fixed(2) * Term::of("end that goes in", input.housing);
    let supports = || Term::of("supports", input.n_supports);
    let taken = supports() * Term::of("thickness", input.support_thickness);
    let left = Term::of("leg to leg", input.between_legs) - taken;
    let steps = vec![
        Step::of("rail to rail", between, answer.between_rails),
        Step::of("support", Term::of("rail to rail", answer.between_rails) + ends, answer.cut),
        Step::of("bay", left / (supports() + Term::fixed(1)), answer.bay),
    ];
    Working { steps, sources: vec![Source::Arithmetic] }
}

/// From above: the two rails between the legs' inner faces, and the supports.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let rail = input.rail_thickness;
    let high = (answer.between_rails + (rail * 2)?)?;
    let mut board = Board::with_sides(tape, (input.between_legs, high), 170.0, (1, 2));
    board.rect(Role::Wood, zero, zero, input.between_legs, rail);
    board.rect(Role::Wood, zero, (rail + answer.between_rails)?, input.between_legs, rail);
    let top = (rail - input.housing)?;
    let mut marks = Vec::new();
    for (number, edge) in (1_u32..).zip(&answer.left_edges) {
        board.rect(Role::Mate, *edge, top, input.support_thickness, answer.cut);
        board.line(Role::Mark, (*edge, zero), (*edge, rail));
        marks.push((*edge, number));
    }
    let numbers: Vec<_> = marks.iter().map(|(at, n)| (*at, n.to_string())).collect();
    let amounts: Vec<_> = marks.iter().map(|(at, _)| (*at, board.amount(*at))).collect();
    board.labels(-1, &numbers);
    board.labels(0, &amounts);
    board.given(1, zero, input.between_legs, Some(BETWEEN_LEGS.id));
    let right = board.x(input.between_legs) + 12.0;
    let label = board.amount(rail);
    board.upright(right, zero, rail, label, Some(RAIL_THICKNESS.id));
    let label = board.amount(answer.between_rails);
    board.upright(right, rail, (rail + answer.between_rails)?, label, None);
    if let Some(edge) = answer.left_edges.first() {
        let y = board.y(((rail + answer.between_rails)? - (answer.between_rails / 3)?)?);
        let (from, to) = (board.x(*edge), board.x((*edge + input.support_thickness)?));
        let label = board.amount(input.support_thickness);
        board.between((from, y), (to, y), label, Some(SUPPORT_THICKNESS.id));
    }
    let overall = board.amount(input.depth_overall);
    board.tell(format!(
        "depth {overall} over the legs, rails {} back",
        board.amount(input.set_back)
    ));
    Ok(board.scene(say![
        "From above: two rails ",
        answer.between_rails,
        " apart with ",
        counted(input.n_supports, " support"),
        " between them, left edges numbered from the left leg."
    ]))
}
