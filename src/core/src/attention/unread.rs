//! Texts of a job that cannot be read or worked out, wherever they stand.

use super::fact::{Attention, Fact};
use crate::job::{Dimension, Item, ItemId, Job, Reckoned, Sketch};
use crate::measure::text::TextProblem;
use crate::planning::wanted::places_to_keep_out_of;
use crate::sheet::Bench;

/// Everything of a job that cannot be read or worked out, item by item: sizes first, then parts, then the rest.
pub(super) fn unread(job: &Job, reckoned: &Reckoned, bench: &Bench, found: &mut Attention) {
    let mut add = |item: ItemId, piece: Option<usize>, what: &'static str, why: String| {
        found.facts.push(Fact::Unread { item, piece, what, why });
    };
    for (id, _) in job.measures() {
        let Some(state) = reckoned.measure(id) else { continue };
        if let Some(Err(problem)) = &state.as_cut {
            add(id, None, "what the tape says", problem.to_string());
        }
        if let Err(problem) = &state.planned {
            add(id, None, "planned", problem.to_string());
        }
    }
    for (id, part) in job.parts() {
        let Some(sizes) = reckoned.part(id) else { continue };
        let texts = [
            ("how many", sizes.quantity.as_ref().err()),
            ("thickness", sizes.thickness.as_ref().err()),
            ("width", sizes.width.as_ref().err()),
            ("length", sizes.length.as_ref().err()),
        ];
        for (what, problem) in texts {
            if let Some(problem) = problem {
                add(id, None, what, problem.to_string());
            }
        }
        for (index, piece) in part.pieces.iter().enumerate() {
            for of in Dimension::ALL {
                if let Some(Err(problem)) = piece.tape(of).map(|text| reckoned.on_tape(text)) {
                    add(id, Some(index), of.word(), problem.to_string());
                }
            }
        }
    }
    for (id, item) in job.items() {
        for (what, why) in of_item(item, reckoned, bench) {
            add(id, None, what, why);
        }
    }
}

/// How a text is read.
type Reads = fn(&Reckoned, &str) -> Option<TextProblem>;

/// With the names of the job.
fn with_names(reckoned: &Reckoned, text: &str) -> Option<TextProblem> {
    reckoned.length_of(text).err()
}

/// The same; what is empty is left out of the job.
fn if_any(reckoned: &Reckoned, text: &str) -> Option<TextProblem> {
    reckoned.length_of(text).err().filter(|_| !text.trim().is_empty())
}

/// Off the tape, without names; what is empty is as the bench has it.
fn on_tape(reckoned: &Reckoned, text: &str) -> Option<TextProblem> {
    reckoned.on_tape(text).err().filter(|_| !text.trim().is_empty())
}

/// Of an item that is worked out nowhere else: what cannot be read, and why.
fn of_item(item: &Item, reckoned: &Reckoned, bench: &Bench) -> Vec<(&'static str, String)> {
    let mut knots = None;
    let texts: Vec<(&'static str, &str, Reads)> = match item {
        // One that is used up is wanted by nobody.
        Item::RackBoard(board) if board.quantity > 0 => {
            knots = places_to_keep_out_of(&board.knots, reckoned, bench).err();
            size_of([&board.thickness, &board.width, &board.length])
        }
        Item::YardBoard(board) => size_of([&board.thickness, &board.width, &board.length]),
        Item::Match(group) => vec![("how far they may drift", &group.drift, if_any)],
        Item::Round(round) => vec![("diameter", &round.diameter, if_any)],
        Item::Saw(saw) => vec![("kerf", &saw.kerf, if_any), ("reach", &saw.reach, if_any)],
        Item::Screw(screw) => vec![("length", &screw.length, if_any)],
        Item::CloseEnough(close) => vec![("size", &close.size, on_tape)],
        Item::Sketch(sketch) => of_sketch(sketch),
        _ => Vec::new(),
    };
    let texts = texts.into_iter();
    let mut all: Vec<_> = texts
        .filter_map(|(what, text, reads)| Some((what, reads(reckoned, text)?.to_string())))
        .collect();
    all.extend(knots.map(|why| ("places to keep clear of", why)));
    all
}

fn size_of(texts: [&String; 3]) -> Vec<(&'static str, &str, Reads)> {
    let mut all: Vec<(&'static str, &str, Reads)> = Vec::new();
    for (of, text) in Dimension::ALL.into_iter().zip(texts) {
        all.push((of.word(), text, with_names));
    }
    all
}

/// One without a length is not drawn.
fn of_sketch(sketch: &Sketch) -> Vec<(&'static str, &str, Reads)> {
    let Sketch { length, depth, height, leg, rail, shelf, top, overhang } = sketch;
    if length.trim().is_empty() {
        return Vec::new();
    }
    vec![
        ("length", length, with_names),
        ("depth", depth, with_names),
        ("height", height, with_names),
        ("leg", leg, with_names),
        ("rail", rail, with_names),
        ("shelf", shelf, if_any),
        ("top", top, if_any),
        ("overhang", overhang, if_any),
    ]
}
