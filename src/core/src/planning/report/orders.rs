//! The cuts of a board in order, from its left end, with the setting of fence or stop for each.

use super::Seen;
use super::rows::{What, in_cutting_order, raw_rows, spans};
use crate::cutting::{Layout, ResawRules, RipRules, Strip, Units};
use crate::measure::Length;
use crate::say;
use crate::sheet::Sentence;

/// What kind of cut it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum OrderKind {
    /// An end or a knot comes off.
    Trim,
    /// A block comes off the whole board, to be ripped.
    Block,
    /// An edge or a face is cleaned.
    Clean,
    /// Strips come off along the board.
    Rip,
    /// Layers come off by thickness.
    Resaw,
    /// A part is cut to length.
    Crosscut,
}

/// One line of the cut order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Order {
    /// From 1 on each board.
    pub number: u32,
    /// What kind of cut.
    pub kind: OrderKind,
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
    let mut list = List { orders: Vec::new() };
    match (&seen.cut.layout, &seen.job.saw.rip) {
        (Layout::RipFirst(strips), Some(rip)) => rip_first(seen, strips, rip, &mut list)?,
        (Layout::CrosscutFirst(_), Some(rip)) => crosscut_first(seen, rip, &mut list)?,
        (Layout::Crosscut(_), _) => along(seen, &mut list)?,
        // A ripped board in a job that forbids rips is no plan of that job.
        _ => return None,
    }
    Some(list.orders)
}

struct List {
    orders: Vec<Order>,
}

impl List {
    fn add(
        &mut self,
        kind: OrderKind,
        setting: Length,
        running: Option<Length>,
        (name, pieces): (&str, u32),
        sentence: Sentence,
    ) {
        let number = u32::try_from(self.orders.len()).unwrap_or(u32::MAX).saturating_add(1);
        let name = name.to_owned();
        self.orders.push(Order { number, kind, setting, running, name, pieces, sentence });
    }
}

/// The crosscuts of every row: ends and knots off, then part after part.
fn along(seen: &Seen<'_>, list: &mut List) -> Option<()> {
    let view = seen.view;
    for row in raw_rows(seen) {
        let on = if row.name.is_empty() { String::new() } else { format!("{}: ", row.name) };
        let spans = spans(seen, &row)?;
        let mut clear_from = 0;
        for (from, to) in view.segments(seen.job.saw.kerf) {
            let own: Vec<_> = spans.iter().filter(|span| span.0 >= from && span.1 <= to).collect();
            if own.is_empty() {
                continue;
            }
            if from > clear_from {
                let (off, at) = (seen.length(from.checked_sub(clear_from)?)?, seen.length(from)?);
                let words = if from == view.trims.left {
                    say![on.clone(), verb(&on, "Square the left end; "), off, " comes off."]
                } else {
                    say![
                        on.clone(),
                        verb(&on, "Cut off what is before "),
                        at,
                        " from the left end."
                    ]
                };
                let what = if from == view.trims.left { "end" } else { "knot" };
                list.add(OrderKind::Trim, off, Some(at), (what, 1), words);
            }
            for (begin, finish, what) in own {
                let (stop, at) = (seen.length(finish.checked_sub(*begin)?)?, seen.length(*finish)?);
                // At the very end of the board nothing is left to cut off.
                let is_last = *finish == view.length;
                let (kind, name) = match what {
                    What::Block { number, .. } => (OrderKind::Block, format!("block {number}")),
                    What::Part { name, .. } => (OrderKind::Crosscut, name.clone()),
                    _ => continue,
                };
                let words = if is_last {
                    say![on.clone(), name.clone(), ", ", stop, ", is what is left: no cut."]
                } else {
                    say![
                        on.clone(),
                        name.clone(),
                        ": stop at ",
                        stop,
                        ", cut at ",
                        at,
                        " from the left end."
                    ]
                };
                let running = (!is_last).then_some(at);
                list.add(kind, stop, running, (&name, 1), words);
            }
            clear_from = to;
        }
    }
    Some(())
}

/// Widths with how many of each, widest first.
fn grouped(mut sizes: Vec<Units>) -> Vec<(Units, u32)> {
    crate::order::sort_by(&mut sizes, |a, b| b.cmp(a));
    let mut groups: Vec<(Units, u32)> = Vec::new();
    for size in sizes {
        match groups.last_mut() {
            Some((known, count)) if *known == size => *count = count.saturating_add(1),
            _ => groups.push((size, 1)),
        }
    }
    groups
}

/// A verb as it begins a sentence, or as it goes on after the name of a strip.
fn verb(on: &str, verb: &'static str) -> String {
    if on.is_empty() { verb.to_owned() } else { verb.to_lowercase() }
}

fn pieces(count: u32, one: &'static str, many: &'static str) -> String {
    if count == 1 { format!("1 {one}") } else { format!("{count} {many}") }
}

fn rip_first(seen: &Seen<'_>, strips: &[Strip], rip: &RipRules, list: &mut List) -> Option<()> {
    let size = seen.job.section(seen.view.section)?.size?;
    let is_whole = matches!(strips, [only] if only.width == size.width);
    if !is_whole {
        let widths = strips.iter().map(|strip| strip.width).collect();
        rips(seen, "", size.width, widths, rip, list)?;
    }
    if let Some(resaw) = &rip.resaw {
        for (number, strip) in (1_u32..).zip(in_cutting_order(strips)) {
            let layers: Vec<Units> = strip.layers.iter().map(|layer| layer.thickness).collect();
            if layers != [size.thickness] {
                let on = if is_whole { String::new() } else { format!("Strip {number}: ") };
                resaws(seen, &on, (strip.width, size.thickness), layers, resaw, list)?;
            }
        }
    }
    along(seen, list)
}

fn rips(
    seen: &Seen<'_>,
    on: &str,
    width: Units,
    widths: Vec<Units>,
    rip: &RipRules,
    list: &mut List,
) -> Option<()> {
    if rip.near_edge > 0 {
        let fence = seen.length(width.checked_sub(rip.near_edge)?)?;
        let words = say![on.to_owned(), verb(on, "Clean the near edge: fence at "), fence, "."];
        list.add(OrderKind::Clean, fence, None, ("edge", 1), words);
    }
    for (width, count) in grouped(widths) {
        let fence = seen.length(width)?;
        let strips = pieces(count, "strip", "strips");
        let words = say![on.to_owned(), verb(on, "Rip "), strips, ": fence at ", fence, "."];
        list.add(OrderKind::Rip, fence, None, ("strip", count), words);
    }
    Some(())
}

fn resaws(
    seen: &Seen<'_>,
    on: &str,
    (width, thickness): (Units, Units),
    layers: Vec<Units>,
    resaw: &ResawRules,
    list: &mut List,
) -> Option<()> {
    // The greatest width is twice what the blade reaches: beyond half of it the cut comes from both edges.
    let is_from_both =
        resaw.greatest_width.is_some_and(|most| width.checked_mul(2).is_none_or(|w| w > most));
    let how = if is_from_both { ", from both edges, the same face to the fence." } else { "." };
    if resaw.near_face > 0 {
        let fence = seen.length(thickness.checked_sub(resaw.near_face)?)?;
        let words = say![on.to_owned(), verb(on, "Clean the near face: fence at "), fence, how];
        list.add(OrderKind::Clean, fence, None, ("face", 1), words);
    }
    for (thickness, count) in grouped(layers) {
        let fence = seen.length(thickness)?;
        let layers = pieces(count, "layer", "layers");
        let words = say![on.to_owned(), verb(on, "Resaw "), layers, ": fence at ", fence, how];
        list.add(OrderKind::Resaw, fence, None, ("layer", count), words);
    }
    Some(())
}

fn crosscut_first(seen: &Seen<'_>, rip: &RipRules, list: &mut List) -> Option<()> {
    along(seen, list)?;
    let width = seen.job.section(seen.view.section)?.size?.width;
    let Layout::CrosscutFirst(blocks) = &seen.cut.layout else { return None };
    for (number, block) in (1_u32..).zip(blocks) {
        let across = block.parts.iter().map(|placed| super::rows::across(seen, placed));
        let widths: Vec<Units> = across.collect::<Option<_>>()?;
        if widths != [width] {
            rips(seen, &format!("Block {number}: "), width, widths, rip, list)?;
        }
    }
    Some(())
}
