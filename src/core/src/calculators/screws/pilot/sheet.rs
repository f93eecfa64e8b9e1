//! Reads fastener and wood and lays the bits out.

use super::{Answer, Input, lag_range, nail_share, reckon, root_share};
use crate::calculators::screws::fields::{
    CLEARANCE_BIT, FASTENER, HEAD_WIDTH, PILOT_BIT, PILOT_DEPTH, ROOT, SCREW_LENGTH, SHANK,
    TOP_THICKNESS,
};
use crate::calculators::screws::sheet::out_of_range;
use crate::calculators::screws::{Wood, sheet::chosen};
use crate::drawing::{Anchor, Board, Role, Scene, Shape, Size};
use crate::measure::text::{exact_number, exact_text};
use crate::measure::{Length, Number, OutOfRange, Rounding, Tape};
use crate::say;
use crate::sheet::{self, Amount, Ask, Caution, Rounded, Source, Step, Term, Value, Working};
use crate::tables::fasteners::{Make, SIZES_SOURCE};

pub(in crate::calculators::screws) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let length = ask.length(&SCREW_LENGTH);
    let top = ask.length(&TOP_THICKNESS);
    let input = Input {
        fastener: chosen(ask, &FASTENER)?,
        wood: Wood::read(ask)?,
        length: length?,
        top: top?,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, out_of_range()),
    }
}

fn thousandths(length: Length) -> Value {
    Value::Exact(length.in_inches(), 3, "in")
}

/// A bit as it is sold, whatever the tape: `3/32 in`.
fn bit(bit: Length) -> Value {
    Value::Words(say![exact_text(bit)])
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let make = input.fastener.make;
    let from = if make == Make::Nail { "at most" } else { "in the receiver" };
    let headline = PILOT_BIT.figure(from, bit(answer.pilot));
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    if let Some(clearance) = answer.clearance {
        let from = "in the piece under the head";
        laid.figures.push(CLEARANCE_BIT.figure(from, bit(clearance)));
    }
    if make != Make::Nail {
        laid.figures
            .push(PILOT_DEPTH.called("Pilot depth").figure("face of receiver down", answer.depth));
    }
    if let Some(head) = answer.head {
        laid.figures
            .push(HEAD_WIDTH.called("Countersink to").figure("diameter", thousandths(head)));
    }
    if let (Ok(shank), Ok(root)) = (input.fastener.shank(), input.fastener.root()) {
        laid.figures.push(SHANK.figure("diameter", thousandths(shank)));
        if make != Make::Nail {
            laid.figures.push(ROOT.figure("diameter", thousandths(root)));
        }
    }
    laid.notes.push(match make {
        Make::Nail => say!["Nails hold without a hole; near an end a hole keeps the wood whole."],
        Make::LagScrew => say![
            "Bore the clearance hole as deep as the smooth shank. Wax or soap the thread."
        ],
        Make::WoodScrew => {
            say!["Tabulated root, not two thirds of the shank, which would run small. Try it in scrap."]
        }
    });
    laid.cautions = vec![Caution::Drilling, Caution::Corrosion];
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let Input { fastener, wood, .. } = *input;
    let inches = |length: Length| format!("{} in", exact_number(length.in_inches(), 5));
    let thousandths = |size: u16| format!("{:.3} in", f64::from(size) / 1000.0);
    let percent = |name, share: u8| Term::of(name, Amount::percent(Number::whole(share.into())));
    let wanted = Value::Exact(answer.wanted.in_inches(), 4, "in");
    let shank = || Term::of("shank", thousandths(fastener.shank));
    let root = || Term::of("root", thousandths(fastener.root));
    let (mut by_rule, source) = match fastener.make {
        Make::WoodScrew => (
            Step::of("pilot", root() * percent("share", root_share(wood)), wanted)
                .remarked("70 % in softwood, 90 % in hardwood", ""),
            "USDA FPL Wood Handbook FPL-GTR-282 (2021), p. 8-10",
        ),
        Make::LagScrew => {
            let [least, most] = lag_range(wood);
            let middle =
                (percent("least share", least) + percent("most share", most)) / Term::fixed(2);
            (
                Step::of("pilot", shank() * middle, wanted)
                    .remarked("40 to 70 %, 60 to 75 % over G 0.50, 65 to 85 % over 0.60", ""),
                "AWC NDS 2018, 12.1.4.2",
            )
        }
        Make::Nail => (
            Step::of("hole at most", shank() * percent("share", nail_share(wood)), wanted)
                .remarked("75 %, or 90 % over G 0.60", ""),
            "AWC NDS 2018, 12.1.6.2",
        ),
    };
    let sort = if wood.hardwood { "hardwood" } else { "softwood" };
    by_rule.put_in.0.push(format!(", {sort}, G {:.2}", wood.gravity).into());
    let pilot = |from, rounded| Step::of("bit", from, bit(answer.pilot)).then(rounded);
    let pilot = match fastener.make {
        _ if answer.root_sets_it => pilot(root(), Rounded::Down64th),
        Make::Nail => pilot(Term::of("hole at most", inches(answer.wanted)), Rounded::Down64th),
        _ => pilot(Term::of("pilot", inches(answer.wanted)), Rounded::Nearest64th),
    };
    let mut steps = vec![by_rule, pilot];
    if let Some(clearance) = answer.clearance {
        steps.push(Step::of("clearance", shank(), bit(clearance)).then(Rounded::Up64th));
    }
    let sources =
        vec![Source::Published(source), Source::Published(SIZES_SOURCE), Source::CommonPractice];
    Working { steps, sources }
}

/// Section through the hole: clearance in the top piece, pilot in the receiver.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let below = (input.length - input.top)?;
    let receiver = ((below * 5)? / 4)?;
    let high = (input.top + receiver)?;
    let mut board = Board::fit(tape, (high * 2)?, high, 180.0, 0, 0);
    let wide = (high * 2)?;
    board.rect(Role::Mate, zero, zero, wide, input.top);
    board.rect(Role::Wood, zero, input.top, wide, receiver);
    let left = |size: Length| -> Result<Length, OutOfRange> { (wide - size)? / 2 };
    let upper = answer.clearance.unwrap_or(answer.pilot);
    board.rect(Role::Hole, left(upper)?, zero, upper, input.top);
    board.rect(Role::Hole, left(answer.pilot)?, input.top, answer.pilot, answer.depth);
    if let Some(head) = answer.head {
        let (x, y) = (board.x((wide / 2)?), board.y(zero));
        let (half, bore) = (board.size(head) / 2.0, board.size(upper) / 2.0);
        let deep = (half - bore).clamp(0.0, board.size(input.top));
        let cone = vec![(x - half, y), (x + half, y), (x + bore, y + deep), (x - bore, y + deep)];
        board.add(Role::Hole, Shape::Polygon(cone));
    }
    let x = board.x((wide / 2)?) + board.size(upper) / 2.0 + 10.0;
    let rows = [
        (answer.clearance.map(|bit| format!("clearance {}", exact_text(bit))), zero, input.top),
        (Some(format!("pilot {}", exact_text(answer.pilot))), input.top, receiver),
    ];
    for (label, from, size) in rows {
        let Some(label) = label else { continue };
        let y = board.y(from) + board.size(size) / 2.0 + 4.0;
        board.text(Role::StrongInk, x, y, Anchor::Start, Size::Small, label);
    }
    let x = board.x(zero) + 6.0;
    let y = board.y(input.top) + 14.0;
    let label = format!("deep {}", board.amount(answer.depth));
    board.text(Role::Ink, x, y, Anchor::Start, Size::Small, label);
    Ok(board.scene(say![
        "Section through the hole: a pilot of ",
        exact_text(answer.pilot),
        ", ",
        (answer.depth, Rounding::Nearest),
        " deep in the receiver."
    ]))
}
