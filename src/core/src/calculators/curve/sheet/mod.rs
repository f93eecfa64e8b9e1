//! What the curve asks, and which of its questions the entries mean.

mod lay_out;

use super::{Board, arc, corner, rim, s_curve};
use crate::calculators::curve::fields::{
    ARC, AROUND, BOARD, BOTH, CHORD, CORNER, CORNERS, CROWN, EDGE, END, END_WIDTH, FIELDS, KEEP,
    MEASURED, MODE, OFFSET, RADIUS, RESULTS, RIM, RISE, ROUND_CORNER, ROUND_THE_RIM, RUN, SHAPE,
    SHORT_CHORD, SHORT_RISE, STEP, THINGS,
};
use crate::calculators::{Calculator, Stage};
use crate::sheet::{self, Ask, Refusal, Refused};

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

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    match ask.choice(&MODE) {
        ARC => work_arc(ask),
        RIM => work_rim(ask),
        ROUND_CORNER => work_corner(ask),
        END => work_end(ask),
        _ => work_s_curve(ask),
    }
}

fn too_large() -> Refusal {
    Refusal::too_large(&MODE, "Use a length that a tape can show, and a larger rise.")
}

fn work_arc(ask: &mut Ask) -> Option<sheet::Answer> {
    let (chord, rise, step) = (ask.length(&CHORD), ask.length(&RISE), ask.length(&STEP));
    let (board, things) = (board(ask), ask.lengths(&THINGS));
    let crown = ask.choice(&SHAPE) == CROWN;
    let input =
        arc::Input { chord: chord?, rise: rise?, step: step?, board: board?, things: things? };
    match arc::reckon(&input) {
        Ok(answer) => Some(lay_out::arc(&input, &answer, crown, ask.bench().tape)),
        Err(refused) => ask.refused(refused, too_large()),
    }
}

fn work_rim(ask: &mut Ask) -> Option<sheet::Answer> {
    let input = if ask.choice(&MEASURED) == ROUND_THE_RIM {
        rim::Input::Around(ask.length(&AROUND)?)
    } else {
        let (chord, rise) = (ask.length(&SHORT_CHORD), ask.length(&SHORT_RISE));
        rim::Input::Straightedge { chord: chord?, rise: rise? }
    };
    match rim::reckon(&input) {
        Ok(answer) => Some(lay_out::rim(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, too_large()),
    }
}

fn work_corner(ask: &mut Ask) -> Option<sheet::Answer> {
    let (radius, corner) = (ask.length(&RADIUS), ask.number(&CORNER));
    let (edge, things) = (ask.optional_length(&EDGE), ask.lengths(&THINGS));
    let both = ask.choice(&CORNERS) == BOTH;
    let input =
        corner::Input { radius: radius?, corner: corner?, edge: edge?, both, things: things? };
    match corner::reckon(&input) {
        Ok(answer) => Some(lay_out::corner(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, too_large()),
    }
}

fn work_end(ask: &mut Ask) -> Option<sheet::Answer> {
    let (width, things) = (ask.length(&END_WIDTH), ask.lengths(&THINGS));
    let (width, things) = (width?, things?);
    let result = corner::Input::whole_end(width, things)
        .map_err(Refused::from)
        .and_then(|input| corner::reckon(&input).map(|answer| (input, answer)));
    match result {
        Ok((input, answer)) => Some(lay_out::end(width, &input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, too_large()),
    }
}

fn work_s_curve(ask: &mut Ask) -> Option<sheet::Answer> {
    let (run, offset, step) = (ask.length(&RUN), ask.length(&OFFSET), ask.length(&STEP));
    let (board, things) = (board(ask), ask.lengths(&THINGS));
    let input =
        s_curve::Input { run: run?, offset: offset?, step: step?, board: board?, things: things? };
    match s_curve::reckon(&input) {
        Ok(answer) => Some(lay_out::s_curve(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, too_large()),
    }
}

/// The board, or `Some(None)` when its width is left empty; the wood to leave matters only then.
fn board(ask: &mut Ask) -> Option<Option<Board>> {
    let Some(width) = ask.optional_length(&BOARD)? else { return Some(None) };
    let keep = ask.length(&KEEP)?;
    Some(Some(Board { width, keep }))
}
