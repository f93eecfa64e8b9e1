//! Reads fastener and wood and lays the bits out.

use super::{Answer, Input, reckon};
use crate::calculators::screws::{Wood, sheet::chosen};
use crate::drawing::{Anchor, Board, Role, Scene, Shape, Size};
use crate::measure::{Length, OutOfRange, Rounding, Tape, text::exact_text};
use crate::say;
use crate::sheet::{self, Ask, Caution, Figure, Source, Step, Value, Working};
use crate::tables::fasteners::{Make, SIZES_SOURCE};

pub(in crate::calculators::screws) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let length = ask.length(ask.field("screw_length"));
    let top = ask.length(ask.field("top_thickness"));
    let input = Input {
        fastener: chosen(ask, "fastener")?,
        wood: Wood::read(ask)?,
        length: length?,
        top: top?,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn thousandths(id: &'static str, label: &'static str, length: Length) -> Figure {
    Figure { id, label, from: "diameter", value: Value::Exact(length.in_inches(), 3, "in") }
}

/// A bit as it is sold, whatever the tape: `3/32 in`.
fn bit(id: &'static str, label: &'static str, from: &'static str, bit: Length) -> Figure {
    Figure { id, label, from, value: Value::Words(say![exact_text(bit)]) }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let make = input.fastener.make;
    let from = if make == Make::Nail { "at most" } else { "in the receiver" };
    let headline = bit("pilot_bit", "Pilot bit", from, answer.pilot);
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    if let Some(clearance) = answer.clearance {
        let from = "in the piece under the head";
        laid.figures.push(bit("clearance_bit", "Clearance bit", from, clearance));
    }
    if make != Make::Nail {
        laid.figures.push(Figure::length(
            "pilot_depth",
            "Pilot depth",
            "face of receiver down",
            answer.depth,
        ));
    }
    if let Some(head) = answer.head {
        laid.figures.push(thousandths("head_width", "Countersink to", head));
    }
    if let (Ok(shank), Ok(root)) = (input.fastener.shank(), input.fastener.root()) {
        laid.figures.push(thousandths("shank", "Shank", shank));
        if make != Make::Nail {
            laid.figures.push(thousandths("root", "Root of thread", root));
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
    let exact = |length: Length| Value::Exact(length.in_inches(), 4, "in");
    let (rule, source) = match fastener.make {
        Make::WoodScrew => (
            "pilot = 70 % of the root in softwood, 90 % in hardwood",
            "USDA FPL Wood Handbook FPL-GTR-282 (2021), p. 8-10",
        ),
        Make::LagScrew => (
            "pilot = middle of 40 to 70 % of the shank, 60 to 75 % over G 0.50, 65 to 85 % over 0.60",
            "AWC NDS 2018, 12.1.4.2",
        ),
        Make::Nail => ("hole at most 75 % of the nail, 90 % over G 0.60", "AWC NDS 2018, 12.1.6.2"),
    };
    let sort = if wood.hardwood { "hardwood" } else { "softwood" };
    let put_in = say![format!(
        "shank {:.3} in, root {:.3} in, {sort}, G {:.2}",
        f64::from(fastener.shank) / 1000.0,
        f64::from(fastener.root) / 1000.0,
        wood.gravity
    )];
    let mut steps = vec![
        Step { rule: rule.into(), put_in, gives: exact(answer.wanted) },
        Step {
            rule: if fastener.make == Make::Nail {
                "bit = next 64th below"
            } else {
                "bit = nearest 64th, never above the root"
            }
            .into(),
            put_in: say![format!("{:.4} in", answer.wanted.to_f64())],
            gives: Value::Words(say![exact_text(answer.pilot)]),
        },
    ];
    if let Some(clearance) = answer.clearance {
        steps.push(Step {
            rule: "clearance = next 64th at or above the shank".into(),
            put_in: say![format!("{:.3} in", f64::from(fastener.shank) / 1000.0)],
            gives: Value::Words(say![exact_text(clearance)]),
        });
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
