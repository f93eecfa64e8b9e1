//! [`Track`]: the exact search for places that make the widest step as small as it can be.
//!
//! # The question
//!
//! `points` places `x1 < x2 < …`; the first and the last are fixed, the others must lie in the
//! free stretches; each step from one place to the next is at least `least`. Which places make
//! the widest step smallest?
//!
//! # Why the search is exact
//!
//! Say which free stretch each place lies in. Then every limit is on one place (`from ≤ x ≤ to`)
//! or on two neighbours (`least ≤ step ≤ widest`). Such limits can be met unless some chain of
//! them contradicts itself, and a chain that does not turn back on itself runs from the far edge
//! of one stretch (or the first place) over `k` steps to the near edge of another (or the last
//! place). So `widest` is held up by `distance ÷ k`, or by `least`, and by nothing else. The
//! smallest widest step is therefore one of finitely many exact numbers: those distances divided
//! by 1, 2, 3 … . The same holds for the largest least step, with near and far edges exchanged.
//!
//! A wider limit never does harm, so the candidates are searched by halving. A candidate is
//! tested by reachability: the set of places that `i` steps can reach is a list of stretches, and
//! grows from one step to the next by adding `least` and `widest` to its edges and cutting out
//! what is not free.
//!
//! Among the answers with that widest step a mirrored one is kept where there is any, and of
//! those the one with the largest least step. With the stretch of each place chosen so, the places are drawn
//! tight like a string through gates ([`tight`]), which makes the steps as even as the gates
//! allow: the widest is smallest and the narrowest largest at the same time.

use super::gates::{count, tight};
use super::stretches::{holds, nearest, overlap};
use crate::measure::{Length, OutOfRange};
use crate::order::sort;
use crate::sheet::Span;

/// How often the range of a search is halved before its candidates are listed.
const HALVINGS: u32 = 8;

/// A line with free stretches on which places are to be found.
#[derive(Clone, Debug)]
pub(super) struct Track {
    from: Length,
    to: Length,
    free: Vec<Span>,
    least: Length,
    wants_mirror: bool,
}

/// Exact places, or `None` when there are none.
type Places = Result<Option<Vec<Length>>, OutOfRange>;

impl Track {
    /// A track from the first place to the last, both of which always count as free. `zones` are
    /// in order and apart; their inside is not free, their edges are.
    ///
    /// With `wants_mirror`, mirrored places are taken wherever some have the smallest widest step.
    pub(super) fn new(
        from: Length,
        to: Length,
        zones: &[Span],
        least: Length,
        wants_mirror: bool,
    ) -> Track {
        let mut free = Vec::new();
        let mut near = from;
        for zone in zones.iter().filter(|zone| zone.to > from && zone.from < to) {
            free.push(Span { from: near, to: zone.from.max(from) });
            near = zone.to.min(to);
        }
        free.push(Span { from: near, to });
        Track { from, to, free, least, wants_mirror }
    }

    /// Distance from the first place to the last.
    fn whole(&self) -> Result<Length, OutOfRange> {
        self.to - self.from
    }

    /// How many places are free: without end where a stretch has any length.
    fn spots(&self) -> usize {
        if self.free.iter().any(|span| span.from < span.to) { usize::MAX } else { self.free.len() }
    }

    /// Where `i` steps can lead, for every `i` up to `steps`.
    fn reach(
        &self,
        steps: usize,
        least: Length,
        widest: Length,
    ) -> Result<Vec<Vec<Span>>, OutOfRange> {
        let mut reached = vec![vec![Span { from: self.from, to: self.from }]];
        while reached.len() <= steps {
            let last = reached.last().map_or(&[][..], Vec::as_slice);
            let next = self.step(last, least, widest)?;
            reached.push(next);
        }
        Ok(reached)
    }

    /// Where one more step leads.
    fn step(
        &self,
        places: &[Span],
        least: Length,
        widest: Length,
    ) -> Result<Vec<Span>, OutOfRange> {
        let mut wide: Vec<Span> = Vec::new();
        if least > widest {
            return Ok(wide);
        }
        for place in places {
            let next = Span { from: (place.from + least)?, to: (place.to + widest)? };
            match wide.last_mut() {
                Some(last) if next.from <= last.to => last.to = last.to.max(next.to),
                _ => wide.push(next),
            }
        }
        Ok(overlap(&wide, &self.free))
    }

    /// The places that make the widest step as small as it can be, evenly drawn; the first and
    /// the last included. `None` when `points` places cannot stand with the least step between.
    pub(super) fn best(&self, points: usize) -> Places {
        let Some(steps) = points.checked_sub(1).filter(|steps| *steps > 0) else { return Ok(None) };
        let even = (self.whole()? / count(steps)?)?;
        if even < self.least || points > self.spots() {
            return Ok(None);
        }
        if self.free.len() == 1 {
            return even_places(self.from, even, points).map(Some);
        }
        let widest = {
            let fits = |widest| self.reaches(points, self.least, widest);
            if fits(even)? {
                even
            } else if fits(self.whole()?)? {
                furthest(self.whole()?, even, &self.widest_held_by()?, steps, fits)?
            } else {
                return Ok(None);
            }
        };
        // A mirrored answer is worth more at the bench than an even one.
        if self.wants_mirror
            && let Some(places) = self.with_its_image()?.evenest(points, widest, Track::mirrored)?
        {
            return Ok(Some(places));
        }
        self.evenest(points, widest, Track::reachable)
    }

    /// Of the places that `find` gives with no step over `widest`, those with the largest least
    /// step, drawn tight.
    fn evenest(
        &self,
        points: usize,
        widest: Length,
        find: impl Fn(&Track, usize, Length, Length) -> Places,
    ) -> Places {
        let steps = points.saturating_sub(1);
        let even = (self.whole()? / count(steps)?)?;
        let fits = |least| find(self, points, least, widest).map(|places| places.is_some());
        let narrowest = if fits(even)? {
            even
        } else if fits(self.least)? {
            furthest(self.least, even, &self.least_held_by()?, steps, fits)?
        } else {
            return Ok(None);
        };
        // Two places on one spot are not two places.
        if !narrowest.is_positive() {
            return Ok(None);
        }
        let places = find(self, points, narrowest, widest)?;
        places.map(|places| self.drawn_tight(&places)).transpose()
    }

    /// Fewest places, the first and the last included, with no step above `widest`; at least
    /// `fewest` and at most `most` of them.
    pub(super) fn fewest(
        &self,
        widest: Length,
        fewest: usize,
        most: usize,
    ) -> Result<Option<usize>, OutOfRange> {
        let mut places = vec![Span { from: self.from, to: self.from }];
        for points in 2..=most.min(self.spots()) {
            places = self.step(&places, self.least, widest)?;
            if places.is_empty() {
                return Ok(None);
            }
            if points >= fewest && holds(&places, self.to) {
                return Ok(Some(points));
            }
        }
        Ok(None)
    }

    /// The smallest widest step that any number of places from `fewest` to `most` can keep,
    /// knowing that `too_small` is none.
    pub(super) fn smallest_widest(
        &self,
        too_small: Length,
        fewest: usize,
        most: usize,
    ) -> Result<Option<Length>, OutOfRange> {
        let fits = |widest| Ok(self.fewest(widest, fewest, most)?.is_some());
        let whole = self.whole()?;
        if too_small >= whole || !fits(whole)? {
            return Ok(None);
        }
        // The least step holds the widest up too.
        let mut held_by = self.widest_held_by()?;
        held_by.push(self.least);
        furthest(whole, too_small, &held_by, most, fits).map(Some)
    }

    /// The number of places nearest to `wanted` that can stand at all, `wanted` itself if it can;
    /// the smaller one of two.
    pub(super) fn nearest_count(
        &self,
        wanted: usize,
        fewest: usize,
        most: usize,
    ) -> Result<Option<usize>, OutOfRange> {
        let reached = self.reach(most.saturating_sub(1), self.least, self.whole()?)?;
        let mut counts: Vec<usize> = reached
            .iter()
            .zip(1..)
            .filter(|(places, points)| *points >= fewest && holds(places, self.to))
            .map(|(_, points)| points)
            .collect();
        crate::order::sort_by(&mut counts, |a, b| a.abs_diff(wanted).cmp(&b.abs_diff(wanted)));
        for points in counts {
            if self.best(points)?.is_some() {
                return Ok(Some(points));
            }
        }
        Ok(None)
    }

    /// Whether there are places with every step between `least` and `widest`.
    fn reaches(&self, points: usize, least: Length, widest: Length) -> Result<bool, OutOfRange> {
        let mut places = vec![Span { from: self.from, to: self.from }];
        for _ in 1..points {
            places = self.step(&places, least, widest)?;
            if places.is_empty() {
                return Ok(false);
            }
        }
        Ok(holds(&places, self.to))
    }

    /// Places with every step between `least` and `widest`.
    fn reachable(&self, points: usize, least: Length, widest: Length) -> Places {
        let reached = self.reach(points.saturating_sub(1), least, widest)?;
        if !reached.last().is_some_and(|places| holds(places, self.to)) {
            return Ok(None);
        }
        self.trace(&reached, self.to, least, widest)
    }

    /// Places with every step between `least` and `widest`, each the mirror image of another, on
    /// a track that is [its own image](Track::with_its_image).
    fn mirrored(&self, points: usize, least: Length, widest: Length) -> Places {
        if least > widest {
            return Ok(None);
        }
        let middle = ((self.from + self.to)? / 2)?;
        let is_odd = points % 2 == 1;
        let reached = self.reach(points.div_ceil(2).saturating_sub(1), least, widest)?;
        let last = reached.last().map_or(&[][..], Vec::as_slice);
        let end = if is_odd {
            holds(last, middle).then_some(middle)
        } else {
            // The step across the middle is shared by both halves.
            let window = Span { from: (middle - (widest / 2)?)?, to: (middle - (least / 2)?)? };
            let even = (self.whole()? / count(points.saturating_sub(1).max(1))?)?;
            nearest(last, window, (middle - (even / 2)?)?)?
        };
        let Some(end) = end else { return Ok(None) };
        let Some(mut places) = self.trace(&reached, end, least, widest)? else { return Ok(None) };
        let both = (self.from + self.to)?;
        let skip = usize::from(is_odd);
        let others: Result<Vec<Length>, OutOfRange> =
            places.iter().rev().skip(skip).map(|place| both - *place).collect();
        places.extend(others?);
        Ok(Some(places))
    }

    /// Free only where it is free at the same distance from the other end too.
    fn with_its_image(&self) -> Result<Track, OutOfRange> {
        let both = (self.from + self.to)?;
        let mut image = Vec::new();
        for span in self.free.iter().rev() {
            image.push(Span { from: (both - span.to)?, to: (both - span.from)? });
        }
        Ok(Track { free: overlap(&self.free, &image), ..self.clone() })
    }

    /// Walks back from `end` through what was reached, dividing what is ahead as evenly as it
    /// goes.
    fn trace(&self, reached: &[Vec<Span>], end: Length, least: Length, widest: Length) -> Places {
        let mut places = vec![end];
        let mut place = end;
        for (steps, spans) in reached.iter().enumerate().rev().skip(1) {
            let window = Span { from: (place - widest)?, to: (place - least)? };
            let part = ((place - self.from)? / count(steps + 1)?)?;
            let Some(before) = nearest(spans, window, (place - part)?)? else { return Ok(None) };
            place = before;
            places.push(place);
        }
        places.reverse();
        Ok(Some(places))
    }

    /// The places drawn tight within the free stretches that they lie in.
    fn drawn_tight(&self, places: &[Length]) -> Result<Vec<Length>, OutOfRange> {
        let mut gates: Vec<Span> = places
            .iter()
            .map(|place| {
                let own = self.free.iter().find(|span| span.from <= *place && *place <= span.to);
                own.copied().unwrap_or(Span { from: *place, to: *place })
            })
            .collect();
        if let Some(first) = gates.first_mut() {
            *first = Span { from: self.from, to: self.from };
        }
        if let Some(last) = gates.last_mut() {
            *last = Span { from: self.to, to: self.to };
        }
        tight(&gates)
    }

    /// Distances that can hold up the widest step: from a far edge, or the first place, on to a
    /// near edge, or the last place.
    fn widest_held_by(&self) -> Result<Vec<Length>, OutOfRange> {
        let starts = self.free.iter().map(|span| span.to).chain([self.from]);
        let ends: Vec<Length> = self.free.iter().map(|span| span.from).chain([self.to]).collect();
        distances(starts, &ends)
    }

    /// Distances that can hold down the least step: from a near edge, or the first place, on to a
    /// far edge, or the last place.
    fn least_held_by(&self) -> Result<Vec<Length>, OutOfRange> {
        let starts = self.free.iter().map(|span| span.from).chain([self.from]);
        let ends: Vec<Length> = self.free.iter().map(|span| span.to).chain([self.to]).collect();
        distances(starts, &ends)
    }
}

/// `points` places, each `step` after the one before.
pub(super) fn even_places(
    from: Length,
    step: Length,
    points: usize,
) -> Result<Vec<Length>, OutOfRange> {
    (0..points).map(|index| from + (step * count(index)?)?).collect()
}

/// Every distance from a start to an end that lies beyond it.
fn distances(
    starts: impl Iterator<Item = Length>,
    ends: &[Length],
) -> Result<Vec<Length>, OutOfRange> {
    let mut all = Vec::new();
    for start in starts {
        for end in ends.iter().filter(|end| **end > start) {
            all.push((*end - start)?);
        }
    }
    sort(&mut all);
    all.dedup();
    Ok(all)
}

/// The value furthest from `good` towards `bad` that still fits, among the distances divided by
/// 1 to `parts`. `good` fits and `bad` does not, and what fits lies all on the side of `good`.
fn furthest(
    mut good: Length,
    mut bad: Length,
    distances: &[Length],
    parts: usize,
    fits: impl Fn(Length) -> Result<bool, OutOfRange>,
) -> Result<Length, OutOfRange> {
    for _ in 0..HALVINGS {
        let middle = ((good + bad)? / 2)?;
        if fits(middle)? {
            good = middle;
        } else {
            bad = middle;
        }
    }
    let (low, high) = (good.min(bad), good.max(bad));
    let mut candidates = Vec::new();
    for distance in distances {
        let first = (*distance / high)?.ceil().max(1);
        for part in first..=i128::try_from(parts).map_err(|_| OutOfRange)? {
            let value = (*distance / u32::try_from(part).map_err(|_| OutOfRange)?)?;
            if value < low {
                break;
            }
            candidates.push(value);
        }
    }
    sort(&mut candidates);
    candidates.dedup();
    if good > bad {
        candidates.reverse();
    }
    // From the side of `good`: those that fit come first.
    let mut rest = candidates.as_slice();
    while let Some(value) = rest.get(rest.len() / 2) {
        let (nearer, beyond) = rest.split_at(rest.len() / 2);
        if fits(*value)? {
            good = *value;
            rest = beyond.get(1..).unwrap_or(&[]);
        } else {
            rest = nearer;
        }
    }
    Ok(good)
}
