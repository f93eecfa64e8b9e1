//! What the angles ask, and which of their questions the entries mean.

mod lay_out;

use super::{Lay, leg, sides, two_ways};
use crate::calculators::angles::fields::{
    ACROSS, ANGLE, APART, APART_FRONT, BOARD, BUTT, FACES, FIELDS, FOOT_OUT, FOOT_OUT_KNOWN,
    HEIGHT, JOINT, KNOWN, LAY, LEAN, LEG, MODE, ON_EDGE, RAKE, RESULTS, SIDES, SPLAY, SQUARE,
    THICKNESS, TWO_WAYS, WIDTH,
};
use crate::calculators::{Calculator, Stage};
use crate::sheet::{self, Ask, Refusal};

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

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    match ask.choice(&MODE) {
        LEG => work_leg(ask),
        TWO_WAYS => work_two_ways(ask),
        _ => work_sides(ask),
    }
}

fn too_large() -> Refusal {
    Refusal::too_large(&MODE, "Use lengths that a tape can show.")
}

fn work_leg(ask: &mut Ask) -> Option<sheet::Answer> {
    let (height, width) = (ask.length(&HEIGHT), ask.length(&WIDTH));
    let lean = if ask.choice(&KNOWN) == FOOT_OUT_KNOWN {
        ask.length(&FOOT_OUT).map(leg::Lean::FootOut)
    } else {
        ask.number(&ANGLE).map(leg::Lean::Degrees)
    };
    let apart = ask.optional_length(&APART);
    let input = leg::Input { height: height?, lean: lean?, width: width?, apart: apart? };
    match leg::reckon(&input) {
        Ok(answer) => Some(lay_out::leg(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused.into(), too_large()),
    }
}

fn work_two_ways(ask: &mut Ask) -> Option<sheet::Answer> {
    let (height, thickness) = (ask.length(&HEIGHT), ask.length(&THICKNESS));
    let (rake, splay) = (ask.number(&RAKE), ask.number(&SPLAY));
    let apart_splay = ask.optional_length(&APART);
    let apart_rake = ask.optional_length(&APART_FRONT);
    let faces = match ask.choice(&FACES) {
        SQUARE => two_ways::Faces::Square,
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
        Err(refused) => ask.refused(refused, too_large()),
    }
}

fn work_sides(ask: &mut Ask) -> Option<sheet::Answer> {
    let (sides, lean) = (ask.count(&SIDES), ask.number(&LEAN));
    let joint = match ask.choice(&JOINT) {
        BUTT => sides::Joint::Butt,
        _ => sides::Joint::Mitred,
    };
    let lay = match ask.choice(&LAY) {
        ON_EDGE => Lay::OnEdge,
        _ => Lay::Flat,
    };
    // Lengths are worked out only when both sizes are given.
    let size = if joint == sides::Joint::Mitred {
        let (across, board) = (ask.optional_length(&ACROSS), ask.optional_length(&BOARD));
        across?.zip(board?).map(|(across, board)| sides::Size { across, board })
    } else {
        None
    };
    let input = sides::Input { sides: sides?, lean: lean?, joint, lay, size };
    match sides::reckon(&input) {
        Ok(answer) => Some(lay_out::sides(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, too_large()),
    }
}
