//! [`Search`]: even spacing by count, by greatest gap, and of slats.

use std::collections::BTreeMap;

use super::track::{Track, count};
use super::zones::Zones;
use super::{Input, MOST_MARKS, Other, Problem};
use crate::measure::{Length, OutOfRange, Rounding};
use crate::sheet::Problems;

/// An even spacing in progress.
pub(super) struct Search<'a> {
    input: &'a Input,
    zones: &'a Zones,
    track: Track,
    width: Length,
    /// Fewest places, those beyond the ends included.
    fewest: usize,
    /// Most places.
    most: usize,
    /// What was found for a number of places, since the same number is asked for again.
    found: BTreeMap<usize, Option<Vec<Length>>>,
}

impl<'a> Search<'a> {
    pub(super) fn new(input: &'a Input, zones: &'a Zones) -> Result<Search<'a>, OutOfRange> {
        let width = input.wish.slat_width().unwrap_or(Length::ZERO);
        let least = (width + input.least_gap.unwrap_or(Length::ZERO))?;
        Ok(Search {
            input,
            zones,
            track: Track::new(zones.from, zones.to, &zones.taken, least, input.left == input.right),
            width,
            fewest: (zones.beyond + 1).max(2),
            most: zones.beyond + MOST_MARKS as usize,
            found: BTreeMap::new(),
        })
    }
}

impl Search<'_> {
    /// The best of so many places.
    fn best(&mut self, points: usize) -> Result<Option<Vec<Length>>, OutOfRange> {
        if let Some(places) = self.found.get(&points) {
            return Ok(places.clone());
        }
        let places = self.track.best(points)?;
        self.found.insert(points, places.clone());
        Ok(places)
    }

    /// So many; `field` is the one that says how many.
    pub(super) fn so_many(
        &mut self,
        wanted: u32,
        field: &'static str,
    ) -> Result<Vec<Length>, Problems<Problem>> {
        let points = usize::try_from(wanted).map_err(|_| OutOfRange)? + self.zones.beyond;
        if points < 2 {
            return Err(Problem::OneForTwoEnds { field }.into());
        }
        match self.best(points)? {
            Some(places) => Ok(places),
            None => Err(self.no_room(points, field)?.into()),
        }
    }

    /// The fewest that leave no gap over `greatest`.
    pub(super) fn no_gap_over(
        &mut self,
        greatest: Length,
    ) -> Result<Vec<Length>, Problems<Problem>> {
        if let Some(least) = self.input.least_gap.filter(|least| *least > greatest) {
            return Err(Problem::LeastOverGap { least, gap: greatest }.into());
        }
        let fewest = self.track.fewest(greatest, self.fewest, self.most)?;
        if let Some(points) = fewest
            && let Some(places) = self.best(points)?
        {
            return Ok(places);
        }
        let smallest = self.track.smallest_widest(greatest, self.fewest, self.most)?;
        let Some(smallest) = smallest else { return Err(self.nothing_fits().into()) };
        let across = self.zones.taken.iter().copied().find(|zone| {
            let (near, far) = (zone.from.max(self.zones.from), zone.to.min(self.zones.to));
            (far - near).is_ok_and(|width| width > greatest)
        });
        Err(Problem::GapTooSmall {
            greatest,
            // A wider limit never does harm, so the next mark up is as good.
            smallest: self.input.tape.read(smallest, Rounding::Up)?.mark,
            across,
            has_zones: !self.zones.taken.is_empty(),
        }
        .into())
    }

    /// As many slats as bring the middle gap nearest to `gap`.
    pub(super) fn near(&mut self, gap: Length) -> Result<Vec<Length>, Problems<Problem>> {
        if let Some(least) = self.input.least_gap.filter(|least| *least > gap) {
            return Err(Problem::LeastOverGap { least, gap }.into());
        }
        let step = (self.width + gap)?;
        let whole = (self.zones.to - self.zones.from)?;
        let steps = (whole / step)?.floor();
        let Some(steps) = usize::try_from(steps).ok().filter(|steps| *steps < self.most) else {
            let widest = (whole / count(self.most.saturating_sub(1))?)?;
            let gap = self.input.tape.read((widest - self.width)?, Rounding::Up)?.mark;
            return Err(Problem::TooManySlats { gap }.into());
        };
        // The more slats, as a rule, the smaller the middle gap: the fewest that bring it to
        // `gap` or under are close.
        let (mut low, mut high) = (self.fewest, (steps + 2).clamp(self.fewest, self.most));
        while low < high {
            let points = low.midpoint(high);
            match self.best(points)? {
                Some(places) if self.middle_gap(&places)? > gap => low = points + 1,
                _ => high = points,
            }
        }
        if self.best(high)?.is_none() {
            let nearest = self.track.nearest_count(high, self.fewest, self.most)?;
            let Some(points) = nearest else { return Err(self.nothing_fits().into()) };
            high = points;
        }
        let mut best = (Length::ZERO, Vec::new());
        let mut next = Some(high);
        // From there on to a neighbour while that is nearer. Of two gaps equally near, the one
        // with fewer slats stands.
        while let Some(points) = next.take() {
            if let Some(found) = self.off(points, gap)? {
                best = found;
            }
            let fewer = self.off(points - 1, gap)?.filter(|(off, _)| *off <= best.0);
            let more = self.off(points + 1, gap)?.filter(|(off, _)| *off < best.0);
            if fewer.is_some() {
                next = Some(points - 1);
            } else if more.is_some() {
                next = Some(points + 1);
            }
        }
        Ok(best.1)
    }

    /// How far the middle gap of so many places is from `gap`, and the places.
    fn off(
        &mut self,
        points: usize,
        gap: Length,
    ) -> Result<Option<(Length, Vec<Length>)>, OutOfRange> {
        if !(self.fewest..=self.most).contains(&points) {
            return Ok(None);
        }
        let Some(places) = self.best(points)? else { return Ok(None) };
        let off = (self.middle_gap(&places)? - gap)?.abs();
        Ok(Some((off, places)))
    }

    /// The middle one of the gaps by size: what a gap is like where no zone widens it.
    fn middle_gap(&self, places: &[Length]) -> Result<Length, OutOfRange> {
        let steps = places.windows(2).filter_map(|pair| match pair {
            [near, far] => Some(*far - *near),
            _ => None,
        });
        let mut steps = steps.collect::<Result<Vec<Length>, OutOfRange>>()?;
        steps.sort_unstable();
        let middle = steps.get(steps.len().saturating_sub(1) / 2).copied();
        middle.unwrap_or(Length::ZERO) - self.width
    }

    /// Why `points` places cannot stand, and what can.
    fn no_room(&self, points: usize, field: &'static str) -> Result<Problem, OutOfRange> {
        let nearest = self.track.nearest_count(points, self.fewest, self.most)?;
        let real = |points: usize| count(points.saturating_sub(self.zones.beyond));
        Ok(match nearest {
            Some(nearest) => Problem::NoRoom {
                field,
                wanted: real(points)?,
                fits: real(nearest)?,
                least: self.input.least_gap,
                has_zones: !self.zones.taken.is_empty(),
            },
            None => self.nothing_fits(),
        })
    }

    fn nothing_fits(&self) -> Problem {
        match self.input.least_gap {
            Some(least) => Problem::LeastTooLarge { least },
            None => Problem::NoFreePlace,
        }
    }

    /// One fewer, as many, and one more.
    pub(super) fn others(&mut self, points: usize) -> Result<Vec<Other>, OutOfRange> {
        let mut others = Vec::new();
        for points in points.saturating_sub(1)..=points.saturating_add(1) {
            if points < self.fewest || points > self.most {
                continue;
            }
            if let Some(places) = self.best(points)? {
                others.push(Other {
                    count: count(points.saturating_sub(self.zones.beyond))?,
                    widest: (widest_step(&places)? - self.width)?,
                });
            }
        }
        Ok(others)
    }
}

fn widest_step(places: &[Length]) -> Result<Length, OutOfRange> {
    let mut widest = Length::ZERO;
    for pair in places.windows(2) {
        if let [near, far] = pair {
            widest = widest.max((*far - *near)?);
        }
    }
    Ok(widest)
}
