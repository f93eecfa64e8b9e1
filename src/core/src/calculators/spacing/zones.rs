//! [`Zones`]: the board with its ends and the stretches that are taken.

use super::asked::{End, Input, MOST_ZONES, Wish};
use super::fields::{KEEP_OUT, LEFT_END, LEFT_SLAT, RIGHT_END, RIGHT_SLAT, SLAT_WIDTH};
use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{Field, Refusal, Refused, Span, WayOut};

/// The board as the search sees it: first and last place, and where no place may be.
///
/// A place is a mark or the left edge of a slat. An end that leaves a gap like the others has a
/// place of its own just beyond the board, so that its gap is counted like any other.
#[derive(Clone, Debug)]
pub(super) struct Zones {
    /// The first place.
    pub(super) from: Length,
    /// The last place.
    pub(super) to: Length,
    /// Where no place may be, in order and apart; their edges are free.
    pub(super) taken: Vec<Span>,
    /// The zones as given, those that meet joined.
    pub(super) joined: Vec<Span>,
    /// How many of the two end places lie beyond the board: 0, 1 or 2.
    pub(super) beyond: usize,
}

impl Zones {
    /// Checks the ends and the zones.
    pub(super) fn of(input: &Input) -> Result<Zones, Refused> {
        let mut refusals = Vec::new();
        let n_zones = input.keep_out.len();
        if n_zones > MOST_ZONES {
            refusals.push(Refusal::at(
                &KEEP_OUT,
                "too-many-zones",
                say![format!("There are {n_zones} zones; up to {MOST_ZONES} can be minded.")],
                WayOut::advice(say!["Join zones that lie close together."]),
            ));
        }
        let outside = |zone: &&Span| zone.from >= input.length || !zone.to.is_positive();
        if let Some(zone) = input.keep_out.iter().find(outside) {
            let length = input.length;
            let rest = input.keep_out.iter().filter(|zone| !outside(zone));
            // As they were written: only the one that is nowhere is left out.
            let rest =
                rest.map(|zone| format!("{} to {}", exact_text(zone.from), exact_text(zone.to)));
            let rest: Vec<String> = rest.collect();
            refusals.push(Refusal::at(
                &KEEP_OUT,
                "zone-outside",
                say![
                    "The zone ",
                    zone.from,
                    " to ",
                    zone.to,
                    " is not on a length of ",
                    length,
                    "."
                ],
                WayOut::set(say!["Leave it out."], &KEEP_OUT, rest.join(", ")),
            ));
        }
        let width = input.wish.slat_width().unwrap_or(Length::ZERO);
        let joined = join(&input.keep_out, |near, far| far.from <= near.to);
        let mut taken = Vec::new();
        for zone in &joined {
            let zone = Span { from: (zone.from - width)?, to: zone.to };
            if zone.from < zone.to {
                taken.push(zone);
            }
        }
        let taken = join(&taken, |near, far| far.from < near.to);
        let (from, to) = ends(input, width)?;
        if width > input.length {
            let length = input.length;
            refusals.push(Refusal::at(
                &SLAT_WIDTH,
                "slat-too-wide",
                say!["A slat ", width, " wide does not go into ", length, "."],
                WayOut::set(
                    say!["Up to ", (length, Rounding::Down), " fits."],
                    &SLAT_WIDTH,
                    (length, Rounding::Down),
                ),
            ));
        } else if from >= to {
            let right = ((input.length - to)? - width)?;
            refusals.push(Refusal::at(
                end_field(input, true),
                "ends-meet",
                say!["The two ends leave nothing between them on ", input.length, "."],
                ends_apart(input, width, from, right),
            ));
        }
        if !matches!(input.wish, Wish::Step(_)) {
            refusals.extend(ends_in_zones(input, &taken, from, to, width)?);
        }
        Refused::unless_none(refusals)?;
        let beyond = [input.left, input.right].iter().filter(|e| **e == End::LikeTheGaps).count();
        Ok(Zones { from, to, taken, joined, beyond })
    }

    /// The zone that a place lies inside of.
    pub(super) fn around(&self, place: Length) -> Option<Span> {
        around(&self.taken, place)
    }
}

/// The first and the last place.
fn ends(input: &Input, width: Length) -> Result<(Length, Length), OutOfRange> {
    let from = match (input.left, input.wish) {
        (End::At(distance), _) => distance,
        (End::LikeTheGaps, Wish::Step(step)) => step,
        (End::LikeTheGaps, _) => -width,
    };
    let to = match (input.right, input.wish) {
        (End::At(distance), _) => ((input.length - distance)? - width)?,
        (End::LikeTheGaps, Wish::Step(step)) => (input.length - step)?,
        (End::LikeTheGaps, _) => input.length,
    };
    Ok((from, to))
}

/// A fixed first or last place inside a zone, with the nearest mark of the tape that is clear and
/// no nearer to the end of the board than was asked: who wants 2 in of wood beside a screw does
/// not want it on the end.
fn ends_in_zones(
    input: &Input,
    taken: &[Span],
    from: Length,
    to: Length,
    width: Length,
) -> Result<Vec<Refusal>, OutOfRange> {
    let mut refusals = Vec::new();
    for (end, place, is_left) in [(input.left, from, true), (input.right, to, false)] {
        let (End::At(distance), Some(zone)) = (end, around(taken, place)) else { continue };
        let clear = clear_inward(input, taken, (is_left, zone), [from, to], width)?;
        let field = end_field(input, is_left);
        refusals.push(Refusal::at(
            field,
            "end-in-zone",
            say!["At ", distance, " it stands in a zone to keep clear of."],
            match clear {
                Some(clear) => WayOut::set(say!["It is clear at ", clear, "."], field, clear),
                None => WayOut::advice(say!["Make the zone smaller, or leave it out."]),
            },
        ));
    }
    Ok(refusals)
}

/// The distance from the end at which the first or last place is clear: past this zone and those
/// behind it, and short of the other end.
fn clear_inward(
    input: &Input,
    taken: &[Span],
    (is_left, mut zone): (bool, Span),
    [from, to]: [Length; 2],
    width: Length,
) -> Result<Option<Length>, OutOfRange> {
    let at = |distance: Length| {
        if is_left { Ok(distance) } else { (input.length - width)? - distance }
    };
    // Each round goes past one zone more.
    for _ in taken {
        let edge = if is_left { zone.to } else { zone.from };
        let exact = if is_left { edge } else { ((input.length - width)? - edge)? };
        let mark = input.tape.read(exact, Rounding::Up)?.mark;
        for distance in [mark, exact] {
            let place = at(distance)?;
            let is_short_of_the_other = if is_left { place < to } else { place > from };
            if is_short_of_the_other && around(taken, place).is_none() {
                return Ok(Some(distance));
            }
        }
        match around(taken, at(mark)?) {
            Some(next) if next != zone => zone = next,
            _ => break,
        }
    }
    Ok(None)
}

/// The field of one of the two ends.
fn end_field(input: &Input, is_left: bool) -> &'static Field {
    match (is_left, input.wish.slat_width().is_some()) {
        (true, false) => &LEFT_END,
        (false, false) => &RIGHT_END,
        (true, true) => &LEFT_SLAT,
        (false, true) => &RIGHT_SLAT,
    }
}

/// The left end moved, where that is enough; else both. The first stands `from` the left end,
/// the last `right` from the right end.
fn ends_apart(input: &Input, width: Length, from: Length, right: Length) -> Option<WayOut> {
    let (left_field, right_field) = (end_field(input, true), end_field(input, false));
    let room = ((input.length - width).ok()? / 4).ok()?;
    let spare = ((input.length - width).ok()? - right).ok()?;
    let spare = (spare / 2).ok()?;
    let both = |sentence, left, right| WayOut {
        sentence,
        set: vec![
            (left_field.id, (left, Rounding::Down).into()),
            (right_field.id, (right, Rounding::Down).into()),
        ],
    };
    if spare.is_positive() && right.is_positive() && from != right && from > spare {
        let words = say!["Set the left end at ", (spare, Rounding::Down), " or less."];
        return Some(both(words, spare, right));
    }
    if !room.is_positive() {
        return WayOut::advice(say!["Use fewer, or narrower ones."]);
    }
    let words = say!["Set both ends at ", (room, Rounding::Down), " or less."];
    Some(both(words, room, room))
}

fn around(taken: &[Span], place: Length) -> Option<Span> {
    taken.iter().find(|zone| zone.from < place && place < zone.to).copied()
}

/// In order, and joined where `meets` says that one runs into the next.
fn join(zones: &[Span], meets: impl Fn(&Span, &Span) -> bool) -> Vec<Span> {
    let mut sorted = zones.to_vec();
    crate::order::sort(&mut sorted);
    let mut joined: Vec<Span> = Vec::new();
    for zone in sorted {
        match joined.last_mut() {
            Some(last) if meets(last, &zone) => last.to = last.to.max(zone.to),
            _ => joined.push(zone),
        }
    }
    joined
}
