//! Reads fastener and wood and lays the bits out.

use super::{
    Answer, DEPTH_SOURCE, Input, LAG_DEPTH_SOURCE, is_to_the_tip, lag_range, nail_share, reckon,
    root_share, smooth,
};
use crate::calculators::screws::Wood;
use crate::calculators::screws::fastener::chosen;
use crate::calculators::screws::fields::{
    CLEARANCE_BIT, CLEARANCE_DEPTH, FASTENER, HEAD_WIDTH, PILOT_BIT, PILOT_DEPTH, ROOT,
    SCREW_LENGTH, SHANK, TOP_THICKNESS, out_of_range,
};
use crate::drawing::{Board, Role, Scene, Shape};
use crate::measure::text::{decimal, exact_number, exact_text};
use crate::measure::{Length, Number, OutOfRange, Rounding, Tape, Unit};
use crate::say;
use crate::sheet::{
    self, Act, Amount, Ask, Caution, Note, Rounded, Source, Step, Term, Value, Working,
};
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

/// A width that is finer than a tape's marks: `0.164 in`, `4.2 mm`.
fn fine(length: Length, tape: Tape) -> Result<Value, OutOfRange> {
    Ok(if tape.unit().is_metric() {
        Value::Exact(length.in_unit(Unit::Millimetre)?, 1, "mm")
    } else {
        Value::Exact(length.in_inches(), 3, "in")
    })
}

/// A bit as the table has it, and beside a metric tape how wide it is: `3/32 in`, `3/32 in · 2.4 mm`.
fn bit(bit: Length, tape: Tape) -> String {
    match bit.in_unit(Unit::Millimetre) {
        Ok(across) if tape.unit().is_metric() => {
            format!("{} · {} mm", exact_text(bit), decimal(across, 1))
        }
        _ => exact_text(bit),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let make = input.fastener.make;
    let from = if make == Make::Nail { "at most" } else { "in the other piece" };
    let headline = PILOT_BIT.figure(from, Value::Words(say![bit(answer.pilot, tape)]));
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    if let Some(clearance) = answer.clearance {
        let from = "in the piece under the head";
        laid.figures.push(CLEARANCE_BIT.figure(from, Value::Words(say![bit(clearance, tape)])));
        let from = "face under the head down";
        laid.figures.push(CLEARANCE_DEPTH.figure(from, answer.clearance_depth));
        // A hole that is a mark too deep does no harm; one that is too shallow does.
        let depth = Value::Length(answer.depth, Rounding::Up);
        laid.figures
            .push(PILOT_DEPTH.called("Pilot depth").figure("face of the other piece down", depth));
    }
    if let Some(head) = answer.head.and_then(|head| fine(head, tape).ok()) {
        laid.figures.push(HEAD_WIDTH.called("Countersink to").figure("diameter", head));
    }
    let width = |width: Result<Length, OutOfRange>| width.and_then(|width| fine(width, tape));
    if let (Ok(shank), Ok(root)) = (width(input.fastener.shank()), width(input.fastener.root())) {
        laid.figures.push(SHANK.figure("diameter", shank));
        if make != Make::Nail {
            laid.figures.push(ROOT.figure("diameter", root));
        }
    }
    laid.notes.push(match make {
        Make::Nail => Note::new("nails_hold_without_hole", say!["Nails hold without a hole; near an end a hole keeps the wood whole."]),
        Make::LagScrew => Note::new("two_holes_for_a_lag", say![
            "Two holes: the wide one as deep as the smooth shank, the narrow one on to the tip. Wax \
             the thread."
        ]),
        Make::WoodScrew => {
            Note::new("tabulated_root", say!["Tabulated root, not two thirds of the shank, which would run small. Try it in scrap."])
        }
    });
    laid.cautions = Caution::of(&[Act::Drill, Act::Fasten]);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let Input { fastener, wood, .. } = *input;
    let inches = |length: Length| format!("{} in", exact_number(length.in_inches(), 5));
    let thousandths = |size: u16| format!("{:.3} in", f64::from(size) / 1000.0);
    let percent = |name, share: u8| Term::of(name, Amount::percent(Number::whole(share.into())));
    let wanted = Value::Exact(answer.wanted.in_inches(), 4, "in");
    let shank = || Term::of("shank", fastener.shank_text());
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
    let pilot = |from, rounded| {
        Step::of("bit", from, Value::Words(say![exact_text(answer.pilot)])).then(rounded)
    };
    let pilot = match fastener.make {
        _ if answer.root_sets_it => pilot(root(), Rounded::Down64th),
        Make::Nail => pilot(Term::of("hole at most", inches(answer.wanted)), Rounded::Down64th),
        _ => pilot(Term::of("pilot", inches(answer.wanted)), Rounded::Nearest64th),
    };
    let mut steps = vec![by_rule, pilot];
    if let Some(clearance) = answer.clearance {
        steps.push(
            Step::of("clearance", shank(), Value::Words(say![exact_text(clearance)]))
                .then(Rounded::Up64th),
        );
        steps.extend(depths(input, answer));
    }
    let mut sources = vec![Source::Published(source), Source::Published(SIZES_SOURCE)];
    match fastener.make {
        Make::WoodScrew => sources.push(Source::Published(DEPTH_SOURCE)),
        Make::LagScrew => sources.push(Source::Published(LAG_DEPTH_SOURCE)),
        Make::Nail => sources.push(Source::CommonPractice),
    }
    Working { steps, sources }
}

/// How deep the two holes of a screw are.
fn depths(input: &Input, answer: &Answer) -> Vec<Step> {
    let Input { fastener, wood, length, top } = *input;
    let (Ok(thread), Ok(smooth)) = (fastener.thread(length), smooth(fastener, length)) else {
        return Vec::new();
    };
    let (long, half_inch) = (|| Term::of("length", length), Length::sixty_fourths(32));
    let step = match fastener.make {
        Make::LagScrew => {
            let step = Step::of("thread", long() / Term::fixed(2) + Term::fixed(half_inch), thread);
            if thread == length {
                step.at_most("the length", length)
            } else {
                step.at_most("6 in", Length::sixty_fourths(6 * 64))
            }
        }
        _ => Step::of("thread", long() * Term::fixed(2) / Term::fixed(3), thread),
    };
    let mut steps = vec![step];
    let under_head = || Term::of("piece under the head", top);
    let clearance = if smooth > top { long() - Term::of("thread", thread) } else { under_head() };
    steps.push(Step::of("clearance depth", clearance, answer.clearance_depth));
    let pilot = if is_to_the_tip(fastener, wood) {
        long() - under_head()
    } else {
        let bored = || Term::of("clearance depth", answer.clearance_depth);
        (bored() - under_head()) + (long() - bored()) / Term::fixed(2)
    };
    steps.push(Step::of("pilot depth", pilot, answer.depth));
    steps
}

/// Section through the holes: the wide one with its depth left, the narrow one right.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let below = (input.length - input.top)?;
    let receiver = ((below * 5)? / 4)?;
    let high = (input.top + receiver)?;
    let mut board = Board::with_sides(tape, ((high * 2)?, high), 190.0, (1, 1));
    let wide = (high * 2)?;
    board.rect(Role::Mate, zero, zero, wide, input.top);
    board.rect(Role::Wood, zero, input.top, wide, receiver);
    let left = |size: Length| -> Result<Length, OutOfRange> { (wide - size)? / 2 };
    let tip = (input.top + answer.depth)?;
    let upper = answer.clearance.unwrap_or(answer.pilot);
    let wide_to = answer.clearance_depth.max(input.top);
    board.rect(Role::Hole, left(upper)?, zero, upper, wide_to);
    if tip > wide_to {
        board.rect(Role::Hole, left(answer.pilot)?, wide_to, answer.pilot, (tip - wide_to)?);
    }
    if let Some(head) = answer.head {
        let (x, y) = (board.x((wide / 2)?), board.y(zero));
        let (half, bore) = (board.size(head) / 2.0, board.size(upper) / 2.0);
        let deep = (half - bore).clamp(0.0, board.size(input.top));
        let cone = vec![(x - half, y), (x + half, y), (x + bore, y + deep), (x - bore, y + deep)];
        board.add(Role::Hole, Shape::Polygon(cone));
    }
    let middle = board.x((wide / 2)?);
    let beside = board.size(answer.head.unwrap_or(upper)) / 2.0 + 12.0;
    if let Some(bit) = answer.clearance {
        let label = format!("{} wide", exact_text(bit));
        depth_mark(&mut board, middle - beside, [zero, answer.clearance_depth], &label);
    }
    let label = format!("{} wide", exact_text(answer.pilot));
    depth_mark(&mut board, middle + beside, [input.top, tip], &label);
    let edge = board.x(zero) - 12.0;
    let label = board.amount(input.top);
    board.upright(edge, zero, input.top, label, Some(TOP_THICKNESS.id));
    let deep = (answer.depth, Rounding::Up);
    let pilot = bit(answer.pilot, tape);
    Ok(board.scene(match answer.clearance {
        Some(bit) => say![
            "Section through the holes: a clearance hole of ",
            exact_text(bit),
            ", ",
            answer.clearance_depth,
            " deep from under the head, and a pilot of ",
            pilot,
            ", ",
            deep,
            " deep in the other piece."
        ],
        None => say!["Section through the hole: ", pilot, " at most, ", deep, " deep."],
    }))
}

/// A depth beside the hole, and how wide the hole is.
fn depth_mark(board: &mut Board, x: f64, [from, to]: [Length; 2], label: &str) {
    let deep = (to - from).map_or_else(|_| String::new(), |deep| board.amount(deep));
    board.upright(x, from, to, format!("{deep} deep, {label}"), None);
}
