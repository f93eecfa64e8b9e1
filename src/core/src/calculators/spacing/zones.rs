//! [`Zones`]: the board with its ends and the stretches that are taken.

use super::{End, Input, MOST_ZONES, Problem, Wish};
use crate::measure::{Length, OutOfRange};
use crate::sheet::{Problems, Span};

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
    pub(super) fn of(input: &Input) -> Result<Zones, Problems<Problem>> {
        let mut problems = Vec::new();
        if input.keep_out.len() > MOST_ZONES {
            problems.push(Problem::TooManyZones { zones: input.keep_out.len() });
        }
        let outside = |zone: &&Span| zone.from >= input.length || !zone.to.is_positive();
        if let Some(zone) = input.keep_out.iter().find(outside) {
            let rest = input.keep_out.iter().filter(|zone| !outside(zone)).copied().collect();
            problems.push(Problem::ZoneOutside { zone: *zone, length: input.length, rest });
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
            problems.push(Problem::SlatTooWide { width, length: input.length });
        } else if from >= to {
            problems.push(Problem::EndsMeet {
                length: input.length,
                width,
                from,
                right: ((input.length - to)? - width)?,
                is_slats: input.wish.slat_width().is_some(),
            });
        }
        if !matches!(input.wish, Wish::Step(_)) {
            problems.extend(ends_in_zones(input, &taken, from, to, width)?);
        }
        Problems::unless_none(problems)?;
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

/// A fixed first or last place inside a zone, with the nearer edge of that zone.
fn ends_in_zones(
    input: &Input,
    taken: &[Span],
    from: Length,
    to: Length,
    width: Length,
) -> Result<Vec<Problem>, OutOfRange> {
    let mut problems = Vec::new();
    let is_slats = input.wish.slat_width().is_some();
    for (end, place, is_left) in [(input.left, from, true), (input.right, to, false)] {
        let (End::At(distance), Some(zone)) = (end, around(taken, place)) else { continue };
        let mut edges = Vec::new();
        for edge in [zone.from, zone.to] {
            let distance = if is_left { edge } else { ((input.length - edge)? - width)? };
            let off = (edge - place)?.abs();
            if !distance.is_negative() && distance < input.length {
                edges.push((off, distance));
            }
        }
        let clear = edges.iter().min().map(|(_, distance)| *distance);
        problems.push(Problem::EndInZone { is_left, is_slats, distance, clear });
    }
    Ok(problems)
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
