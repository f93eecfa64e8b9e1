//! Reads part, angle and seat and lays the angled screw out.

use super::{Answer, Fault, Find, Fit, Input, Seat, drawing, reckon};
use crate::calculators::screws::sheet::chosen;
use crate::measure::{Angle, Rounding, Tape};
use crate::say;
use crate::sheet::{self, Ask, Caution, Figure, Sentence, Source, Step, Table, Value, Working};
use crate::tables::fasteners::{Fastener, STOCK_SOURCE};

pub(in crate::calculators::screws) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let is_pocket = ask.choice(ask.field("question")).id == "pocket";
    let degrees = ask.real(ask.field(if is_pocket { "pocket_angle" } else { "toe_angle" }));
    let thickness = ask.length(ask.field("part_thickness"));
    let receiver = ask.length(ask.field("receiver_thickness"));
    let margin = ask.length(ask.field("margin"));
    let wanted_deep = ask.length(ask.field("wanted_deep"));
    let beyond = ask.length(ask.field("beyond"));
    let find = match ask.choice(ask.field("angled_find")).id {
        "exit" => ask.length(ask.field("start_back")).map(Find::Exit),
        _ => ask.optional_length(ask.field("exit")).map(Find::Start),
    };
    let seat = if is_pocket {
        ask.length(ask.field("seat_wood")).map(Seat::Shoulder)
    } else {
        Some(Seat::Face)
    };
    let given = Angle::degrees(degrees?);
    let angle = match ask.choice(ask.field("angle_from")).id {
        "receiver" => given.complement(),
        _ => given,
    };
    let input = Input {
        thickness: thickness?,
        angle,
        find: find?,
        seat: seat?,
        receiver: receiver?,
        beyond: beyond?,
        margin: margin?,
        wanted_deep: wanted_deep?,
    };
    let screw = chosen(ask, "gauge")?;
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, screw, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn verdict(input: &Input, fit: &Fit) -> Sentence {
    match fit.fault {
        Some(Fault::TooShort) => say!["too short"],
        Some(Fault::TooDeep) if fit.deep > input.receiver => say!["comes out of the back"],
        Some(Fault::TooDeep) => say!["inside the margin at the back"],
        Some(Fault::TooFarAside) => say!["too far aside"],
        None if fit.deep < input.wanted_deep => say!["fits, less than wanted"],
        None => say!["fits"],
    }
}

fn lay_out(input: &Input, answer: &Answer, screw: Fastener, tape: Tape) -> sheet::Answer {
    let best = answer.best;
    let start = Figure::length("start", "Start", "from the end, on the face", answer.start);
    let exit = Figure::length("exit_from_face", "Leaves the end", "from the face", answer.exit);
    let (headline, other) = match input.find {
        Find::Start(_) => (start, exit),
        Find::Exit(_) => (exit, start),
    };
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = vec![
        Figure::length("best_length", "Screw", "of stock lengths", best.length),
        other,
        Figure::length("deep", "Deep in receiver", "square to its face", best.deep),
        Figure::length("drift", "Drifts sideways", "away from drilled face", best.drift),
        Figure::length("axis", "Axis in the part", "face to end, along it", answer.axis),
    ];
    if let Seat::Shoulder(_) = input.seat {
        laid.figures.push(Figure::length(
            "to_seat",
            "Stop collar at",
            "face to seat, along it",
            answer.to_seat,
        ));
    }
    let degrees = |id, label, from, angle: Angle| Figure {
        id,
        label,
        from,
        value: Value::Real(angle.in_degrees(), 1, "°"),
    };
    laid.figures.push(degrees("from_face", "Angle", "from the drilled face", input.angle));
    laid.figures.push(degrees(
        "from_receiver",
        "The same angle",
        "from the receiver's face",
        input.angle.complement(),
    ));
    let length = |length| Value::Length(length, Rounding::Nearest);
    laid.tables.push(Table {
        id: "stock",
        title: "Stock lengths",
        columns: &["Length", "Deep", ""],
        rows: answer
            .stock
            .iter()
            .map(|fit| {
                vec![length(fit.length), length(fit.deep), Value::Words(verdict(input, fit))]
            })
            .collect(),
    });
    laid.notes.push(match input.seat {
        Seat::Shoulder(_) => {
            say!["The seat decides how far the screw goes in, not where the bit went in. Try it in scrap."]
        }
        Seat::Face => {
            say!["The first toed screw pushes the part: clamp it, or drive the opposite one at once."]
        }
    });
    laid.cautions = vec![Caution::Drilling, Caution::Corrosion];
    laid.drawing = drawing::draw(input, answer, screw, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let best = answer.best;
    let degrees = format!("{:.1}°", input.angle.in_degrees());
    let mut steps = Vec::new();
    match input.find {
        Find::Start(_) => steps.push(Step::length(
            "start = exit ÷ tan A, A from the drilled face",
            say![answer.exit, " ÷ tan ", degrees.clone()],
            answer.start,
        )),
        Find::Exit(_) => steps.push(Step::length(
            "exit = start × tan A, A from the drilled face",
            say![answer.start, " × tan ", degrees.clone()],
            answer.exit,
        )),
    }
    steps.push(Step::length(
        "axis in the part = exit ÷ sin A",
        say![answer.exit, " ÷ sin ", degrees.clone()],
        answer.axis,
    ));
    steps.push(Step::length(
        "P, past the end = screw - wood under the head",
        say![best.length],
        best.past_end,
    ));
    steps.push(Step::length(
        "deep = P × cos A",
        say![best.past_end, " × cos ", degrees.clone()],
        best.deep,
    ));
    steps.push(Step::length(
        "sideways = P × sin A",
        say![best.past_end, " × sin ", degrees.clone()],
        best.drift,
    ));
    let sources = vec![Source::Arithmetic, Source::Published(STOCK_SOURCE), Source::CommonPractice];
    Working { steps, sources }
}
