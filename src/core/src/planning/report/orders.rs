//! The cuts of a board in order, from its left end, in words, with the setting of fence or stop for each.

use super::rows::raw_rows;
use super::seen::Seen;
use crate::cutting::{Cut, CutKind, Layout, Piece, Units, in_cutting_order};
use crate::measure::Length;
use crate::say;
use crate::sheet::Sentence;

/// One line of the cut order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Order {
    /// From 1 on each board.
    pub number: u32,
    /// What kind of cut.
    pub kind: CutKind,
    /// Fence to near tooth, or stop to near tooth; for an end, what comes off.
    pub setting: Length,
    /// Where the near side of the cut is, from the left end of the board; `None` for cuts along it, and where no cut is
    /// needed.
    pub running: Option<Length>,
    /// What comes off: the name of the part, `strip`, `layer`.
    pub name: String,
    /// How many.
    pub pieces: u32,
    /// All of it in words.
    pub sentence: Sentence,
}

/// The cuts of a board in order.
pub(super) fn orders(seen: &Seen<'_>) -> Option<Vec<Order>> {
    (1_u32..).zip(seen.cut.cuts(seen.job)?).map(|(number, cut)| order(seen, number, &cut)).collect()
}

fn order(seen: &Seen<'_>, number: u32, cut: &Cut) -> Option<Order> {
    let setting = seen.length(cut.setting)?;
    let at = match cut.at {
        Some(at) => Some(seen.length(at)?),
        None => None,
    };
    let on = on(seen, cut)?;
    let name = match cut.piece {
        Piece::End => "end".to_owned(),
        Piece::Knot => "knot".to_owned(),
        Piece::Block(place) => format!("block {}", place.checked_add(1)?),
        Piece::Edge => "edge".to_owned(),
        Piece::Face => "face".to_owned(),
        Piece::Strip => "strip".to_owned(),
        Piece::Layer => "layer".to_owned(),
        Piece::Part(part) => seen.part_name(part)?.to_owned(),
    };
    let sentence = match (cut.piece, at) {
        (Piece::End, _) => say![verb(&on, "Square the left end; "), setting, " comes off."],
        (Piece::Knot, Some(at)) => {
            say![verb(&on, "Cut off what is before "), at, " from the left end."]
        }
        (Piece::Edge, _) => say![verb(&on, "Clean the near edge: fence at "), setting, "."],
        (Piece::Strip, _) => {
            let strips = pieces(cut.pieces, "strip", "strips");
            say![verb(&on, "Rip "), strips, ": fence at ", setting, "."]
        }
        (Piece::Face, _) => {
            say![verb(&on, "Clean the near face: fence at "), setting, deep(seen, cut)?]
        }
        (Piece::Layer, _) => {
            let layers = pieces(cut.pieces, "layer", "layers");
            say![verb(&on, "Resaw "), layers, ": fence at ", setting, deep(seen, cut)?]
        }
        // At the very end of the board nothing is left to cut off.
        (_, Some(at)) if cut.passes > 0 => {
            let name = name.clone();
            say![name, ": stop at ", setting, ", cut at ", at, " from the left end."]
        }
        _ => say![name.clone(), ", ", setting, ", is what is left: no cut."],
    };
    let running = at.filter(|_| cut.passes > 0);
    let sentence = if on.is_empty() { sentence } else { before(on, sentence) };
    Some(Order {
        number,
        kind: cut.piece.kind(),
        setting,
        running,
        name,
        pieces: cut.pieces,
        sentence,
    })
}

/// `Strip 2: `, `Block 1: `; empty where it is the whole board that is cut.
fn on(seen: &Seen<'_>, cut: &Cut) -> Option<String> {
    let number = cut.from.checked_add(1)?;
    let name = match (cut.piece, &seen.cut.layout) {
        (Piece::Edge | Piece::Strip, Layout::CrosscutFirst(_)) => format!("Block {number}"),
        (Piece::Edge | Piece::Strip, _) => String::new(),
        (Piece::Face | Piece::Layer, Layout::RipFirst(strips)) => {
            let size = seen.job.section(seen.view.section)?.size?;
            let is_whole = matches!(strips.as_slice(), [only] if only.width == size.width);
            if is_whole { String::new() } else { format!("Strip {number}") }
        }
        _ => raw_rows(seen).get(cut.from)?.name.clone(),
    };
    Some(if name.is_empty() { name } else { format!("{name}: ") })
}

/// How a strip is resawn, where its width makes a difference.
fn deep(seen: &Seen<'_>, cut: &Cut) -> Option<&'static str> {
    let Layout::RipFirst(strips) = &seen.cut.layout else { return None };
    let width: Units = in_cutting_order(strips).get(cut.from)?.width;
    let most = seen.job.saw.rip.as_ref()?.resaw.as_ref()?.greatest_width;
    // The greatest width is twice what the blade reaches: beyond half of it the cut comes from both edges.
    let is_from_both = most.is_some_and(|most| width.checked_mul(2).is_none_or(|w| w > most));
    Some(if is_from_both { ", from both edges, the same face to the fence." } else { "." })
}

fn before(on: String, sentence: Sentence) -> Sentence {
    let mut all = say![on];
    all.0.extend(sentence.0);
    all
}

/// A verb as it begins a sentence, or as it goes on after the name of a strip.
fn verb(on: &str, verb: &'static str) -> String {
    if on.is_empty() { verb.to_owned() } else { verb.to_lowercase() }
}

fn pieces(count: u32, one: &'static str, many: &'static str) -> String {
    if count == 1 { format!("1 {one}") } else { format!("{count} {many}") }
}
