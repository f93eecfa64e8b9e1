//! Reads the spacer's fields and lays its answer out.

use super::{Answer, Input, Lay, reckon};
use crate::calculators::frame::fields::{
    BLOCK, BLOCK_AT_HAND, BLOCK_COLUMN, BLOCKS, INSIDE, LAY, LEG, ON_THE_BENCH_COLUMN,
    RAIL_CENTRED, RAIL_SET_BACK_INSIDE, RAIL_SET_BACK_OUTSIDE, RAIL_THICKNESS, SET_BACK,
    SPACER_BLOCK, out_of_range,
};
use crate::drawing::{Anchor, Board, Role, Scene, Shape, Size};
use crate::measure::{Length, OutOfRange, Tape};
use crate::say;
use crate::sheet::{self, Act, Ask, Caution, Note, Source, Step, Term, Value, Working};

/// A difference that is seen where faces are to be flush: 1/32 in. Common practice, no source.
const SEEN: Length = Length::sixty_fourths(2);

pub(in crate::calculators::frame) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let (leg, rail) = (ask.length(&LEG), ask.length(&RAIL_THICKNESS));
    let lay = match ask.choice(&LAY) {
        INSIDE => ask.length(&SET_BACK).map(Lay::InsideDown),
        RAIL_CENTRED => Some(Lay::Centred),
        BLOCK_AT_HAND => ask.length(&BLOCK).map(Lay::Block),
        _ => ask.length(&SET_BACK).map(Lay::OutsideDown),
    };
    let input = Input { leg: leg?, rail: rail?, lay: lay? };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, out_of_range()),
    }
}

/// The block that is used for the lay that was chosen.
fn block(input: &Input, answer: &Answer) -> Length {
    match input.lay {
        Lay::InsideDown(_) => answer.inside_down,
        _ => answer.outside_down,
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let block = block(input, answer);
    let set_back = RAIL_SET_BACK_OUTSIDE
        .called("Set-back")
        .figure("outside of leg to rail", answer.outside_down);
    let inside = RAIL_SET_BACK_INSIDE.figure("inside of leg to rail", answer.inside_down);
    let figure = SPACER_BLOCK.figure("bench to rail", block);
    let mut laid = match input.lay {
        Lay::Block(_) => sheet::Answer::new(set_back, working(input, answer)),
        _ => {
            let mut laid = sheet::Answer::new(figure, working(input, answer));
            laid.figures.push(set_back);
            laid
        }
    };
    laid.figures.push(inside);
    let row = |words: &'static str, length| vec![Value::Words(say![words]), Value::from(length)];
    laid.tables.push(BLOCKS.called("Block for each way").table(
        &[ON_THE_BENCH_COLUMN, BLOCK_COLUMN],
        vec![
            row("Outside faces down", answer.outside_down),
            row("Inside faces down", answer.inside_down),
            row("Rail centered", answer.centred),
        ],
    ));
    if block.is_zero() {
        laid.notes
            .push(Note::new("no_block", say!["No block: rail and leg both lie on the bench."]));
    }
    if answer.outside_down.is_zero() && !block.is_zero() {
        laid.notes.push(Note::new(
            "flush_shows_differences",
            say!["Flush outside shows every ", SEEN, " of difference. A small set-back hides it."],
        ));
    }
    // A block is sawn for it, if it is not the one at hand.
    laid.cautions = Caution::of(&[Act::Saw]);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let [leg, rail] = [Term::of("leg", input.leg), Term::of("rail", input.rail)];
    let steps = match input.lay {
        Lay::OutsideDown(set_back) => {
            let block = Term::of("set-back", set_back);
            vec![Step::of("outside down: block", block, answer.outside_down)]
        }
        Lay::InsideDown(set_back) => {
            let block = leg - rail - Term::of("set-back", set_back);
            vec![Step::of("inside down: block", block, answer.inside_down)]
        }
        Lay::Centred => {
            let block = (leg - rail) / Term::fixed(2);
            vec![Step::of("centered: block", block, answer.centred)]
        }
        Lay::Block(block) => {
            let block = || Term::of("block", block);
            vec![
                Step::of("outside down: set-back", block(), answer.outside_down),
                Step::of("turned over: set-back", leg - rail - block(), answer.inside_down),
            ]
        }
    };
    Working { steps, sources: vec![Source::Arithmetic] }
}

/// The corner as it lies on the bench, seen along the leg: leg, rail and block to scale.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let leg = input.leg;
    let zero = Length::ZERO;
    let block = block(input, answer);
    let is_inside_down = matches!(input.lay, Lay::InsideDown(_));
    let width = (leg * 3)?;
    let mut board = Board::with_sides(tape, (width, leg), 130.0, (1, 1));
    let rail_top = ((leg - block)? - input.rail)?;
    board.rect(Role::EndGrain, zero, zero, leg, leg);
    board.rect(Role::Mate, leg, rail_top, (leg * 2)?, input.rail);
    board.rect(Role::Waste, (leg + (leg / 2)?)?, (leg - block)?, leg, block);
    let bench = board.bottom() + 1.5;
    board.add(Role::Kerf, Shape::Rect(board.x(zero) - 6.0, bench, board.size(width) + 12.0, 3.0));
    let x = board.x(zero) + board.size(leg) / 2.0;
    let y = (board.top() + board.bottom()) / 2.0 + 4.0;
    board.text(Role::Ink, x, y, Anchor::Middle, Size::Small, "leg");
    let x = board.x(leg) + board.size((leg * 2)?) / 2.0;
    let y = board.y(rail_top) + board.size(input.rail) / 2.0 + 4.0;
    board.text(Role::Ink, x, y, Anchor::Middle, Size::Small, "rail");
    let face = if is_inside_down { "outside face up" } else { "outside face down" };
    let (x, y) = (board.x(zero), if is_inside_down { board.row(-1) } else { board.row(0) });
    board.text(Role::Ink, x, y, Anchor::Start, Size::Small, face);
    let label = board.amount(leg);
    board.upright(board.x(zero) - 12.0, zero, leg, label, Some(LEG.id));
    let beside = board.x(width) + 12.0;
    let label = board.amount(input.rail);
    board.upright(beside, rail_top, (rail_top + input.rail)?, label, Some(RAIL_THICKNESS.id));
    // Outside down the set-back is the block, inside down it is what is left above the rail.
    let (from, to, field) = match input.lay {
        Lay::InsideDown(_) => (zero, rail_top, Some(SET_BACK.id)),
        Lay::OutsideDown(_) => ((leg - block)?, leg, Some(SET_BACK.id)),
        Lay::Block(_) => ((leg - block)?, leg, Some(BLOCK.id)),
        Lay::Centred => (leg, leg, None),
    };
    if to > from {
        let label = (to - from).map_or_else(|_| String::new(), |it| board.amount(it));
        let x = if is_inside_down { board.x((leg * 2)?) } else { board.x((leg + (leg / 4)?)?) };
        board.upright(x, from, to, label, field);
    }
    if block.is_positive() && (is_inside_down || input.lay == Lay::Centred) {
        let label = format!("block {}", board.amount(block));
        let left = board.x((leg + (leg / 2)?)?) - 12.0;
        board.upright(left, (leg - block)?, leg, label, None);
    }
    Ok(board.scene(say![
        "The leg on the bench, the rail on a block of ",
        block,
        ", ",
        answer.outside_down,
        " back from the outside of the leg."
    ]))
}
