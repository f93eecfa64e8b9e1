//! [`Search`]: even spacing by count, by greatest gap, and of slats.

use std::collections::BTreeMap;

use super::asked::Input;
use super::fields::{
    GREATEST_GAP, KEEP_OUT, LEAST_GAP, LEFT_END, LEFT_SLAT, MOST_MARKS, RIGHT_END, RIGHT_SLAT,
    SLAT_GAP,
};
use super::gates::count;
use super::track::Track;
use super::zones::Zones;
use crate::measure::{Length, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{Field, Refusal, Refused, WayOut};

/// Another number of marks or slats.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Other {
    /// How many.
    pub count: u32,
    /// The widest gap they leave.
    pub widest: Length,
}

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
    pub(super) fn so_many(&mut self, wanted: u32, field: &Field) -> Result<Vec<Length>, Refused> {
        let points = usize::try_from(wanted).map_err(|_| OutOfRange)? + self.zones.beyond;
        if points < 2 {
            Err(Refusal::at(
                field,
                "one-for-two-ends",
                say!["One cannot stand at both ends at once."],
                self.in_the_middle(field)?,
            ))?;
        }
        match self.best(points)? {
            Some(places) => Ok(places),
            None => Err(self.no_room(points, field)?.into()),
        }
    }

    /// A single one goes into the middle, where each end is as far off as the other; where it is
    /// not allowed to stand there, two may.
    fn in_the_middle(&self, field: &Field) -> Result<Option<WayOut>, OutOfRange> {
        let middle = ((self.input.length - self.width)? / 2)?;
        if self.zones.around(middle).is_some() {
            return Ok(WayOut::set(say!["Use two."], field, "2"));
        }
        let ends = if self.input.wish.slat_width().is_some() {
            [&LEFT_SLAT, &RIGHT_SLAT]
        } else {
            [&LEFT_END, &RIGHT_END]
        };
        Ok(Some(WayOut {
            sentence: say!["Put it in the middle, ", (self.input.length / 2)?, " from each end."],
            set: ends.map(|end| (end.id, "".into())).to_vec(),
        }))
    }

    /// The fewest that leave no gap over `greatest`.
    pub(super) fn no_gap_over(&mut self, greatest: Length) -> Result<Vec<Length>, Refused> {
        if let Some(least) = self.input.least_gap.filter(|least| *least > greatest) {
            return Err(least_over_gap(least, greatest).into());
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
        // A wider limit never does harm, so the next mark up is as good.
        let smallest = self.input.tape.read(smallest, Rounding::Up)?.mark;
        let words = match across {
            Some(zone) => {
                let (from, to) = (zone.from, zone.to);
                say!["No gap of ", greatest, " reaches over the zone ", from, " to ", to, "."]
            }
            None if self.zones.taken.is_empty() => say![
                "To keep every gap at or under ",
                greatest,
                " takes more than ",
                MOST_MARKS,
                " marks, or a smaller least gap."
            ],
            None => say!["No marks beside the zones keep every gap at or under ", greatest, "."],
        };
        let wider = say!["Allow gaps up to ", smallest, "."];
        let way_out = WayOut::set(wider, &GREATEST_GAP, smallest);
        Err(Refusal::at(&GREATEST_GAP, "gap-too-small", words, way_out).into())
    }

    /// As many slats as bring the middle gap nearest to `gap`.
    pub(super) fn near(&mut self, gap: Length) -> Result<Vec<Length>, Refused> {
        if !gap.is_positive() {
            let least = (self.input.least_gap.unwrap_or(DRAINS), Rounding::Up);
            Err(Refusal::at(
                &SLAT_GAP,
                "no-gap",
                say!["Without a gap the slats lie tight, and water stays between them."],
                WayOut::set(say!["Leave ", least, "."], &SLAT_GAP, least),
            ))?;
        }
        if let Some(least) = self.input.least_gap.filter(|least| *least > gap) {
            return Err(least_over_gap(least, gap).into());
        }
        let step = (self.width + gap)?;
        let whole = (self.zones.to - self.zones.from)?;
        let steps = (whole / step)?.floor();
        let Some(steps) = usize::try_from(steps).ok().filter(|steps| *steps < self.most) else {
            let widest = (whole / count(self.most.saturating_sub(1))?)?;
            let gap = self.input.tape.read((widest - self.width)?, Rounding::Up)?.mark;
            return Err(too_many(&SLAT_GAP, gap).into());
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
        crate::order::sort(&mut steps);
        let middle = steps.get(steps.len().saturating_sub(1) / 2).copied();
        middle.unwrap_or(Length::ZERO) - self.width
    }

    /// Why `points` places cannot stand, and what can.
    fn no_room(&self, points: usize, field: &Field) -> Result<Refusal, OutOfRange> {
        let nearest = self.track.nearest_count(points, self.fewest, self.most)?;
        let real = |points: usize| count(points.saturating_sub(self.zones.beyond));
        let Some(nearest) = nearest else { return Ok(self.nothing_fits()) };
        let (wanted, fits) = (real(points)?, real(nearest)?);
        let mut words = say![wanted, " do not fit"];
        if let Some(least) = self.input.least_gap {
            words.0.extend(say![" with ", least, " between them"].0);
        }
        words.0.push(if self.zones.taken.is_empty() { "." } else { " beside the zones." }.into());
        let way_out = WayOut::set(say![fits, " fit."], field, fits.to_string());
        Ok(Refusal::at(field, "no-room", words, way_out))
    }

    fn nothing_fits(&self) -> Refusal {
        match self.input.least_gap {
            Some(least) => least_too_large(least),
            None => Refusal::at(
                &KEEP_OUT,
                "no-free-place",
                say!["The zones leave no free place."],
                WayOut::advice(say!["Make the zone smaller, or leave it out."]),
            ),
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

/// A gap that drains once the boards are dry: 1/8 in. Common practice, no source.
const DRAINS: Length = Length::sixty_fourths(8);

/// The least gap is over the greatest one, the one wanted, or the step.
pub(super) fn least_over_gap(least: Length, gap: Length) -> Refusal {
    Refusal::at(
        &LEAST_GAP,
        "least-over-gap",
        say!["The least gap ", least, " is over the gap asked for, ", gap, "."],
        WayOut::set(
            say!["Use ", (gap, Rounding::Down), " or less."],
            &LEAST_GAP,
            (gap, Rounding::Down),
        ),
    )
}

/// No two can stand so far apart here.
pub(super) fn least_too_large(least: Length) -> Refusal {
    Refusal::at(
        &LEAST_GAP,
        "least-too-large",
        say!["Nothing fits here with ", least, " between."],
        WayOut::set(say!["Leave the least gap open."], &LEAST_GAP, String::new()),
    )
}

/// A step or a gap so small that it takes more than [`MOST_MARKS`]; `smallest` does not.
pub(super) fn too_many(field: &Field, smallest: Length) -> Refusal {
    Refusal::at(
        field,
        "too-many",
        say!["That takes more than ", MOST_MARKS, "."],
        WayOut::set(say!["Use ", smallest, " or more."], field, smallest),
    )
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
