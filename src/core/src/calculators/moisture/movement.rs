//! How much a width or a thickness changes between two moisture contents.

use super::fields::{DRIEST, FLAT, GRAIN, MOISTURE_LATER, MOISTURE_TODAY, WETTEST, WOOD};
use super::woods::{SOFTWOOD, SUBALPINE_FIR, WESTERN_LARCH};
use crate::measure::{Length, Number, OutOfRange};
use crate::say;
use crate::sheet::{Field, Refusal, Refused, WayOut};
use crate::tables::shrinkage::{self, Across, Moisture};
use crate::tables::species::{self, Cell, Grain, Species, Trust};

/// The wood, as far as it is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wood {
    /// Softwood lumber as sold, of unknown species and rings; not redwood or cedar.
    OrdinarySoftwood,
    /// A species, and how the board lies in the tree where that is known.
    Species(&'static Species, Option<Grain>),
}

/// Two moisture contents in percent, and the fields they were asked in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Moistures {
    /// The first.
    pub from: Number,
    /// The second.
    pub to: Number,
    asked: Asked,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Asked {
    TodayAndLater,
    DriestAndWettest,
}

impl Moistures {
    /// Today and later.
    #[must_use]
    pub fn now_and_later(from: Number, to: Number) -> Moistures {
        Moistures { from, to, asked: Asked::TodayAndLater }
    }

    /// The driest and the wettest of the year.
    #[must_use]
    pub fn driest_and_wettest(from: Number, to: Number) -> Moistures {
        Moistures { from, to, asked: Asked::DriestAndWettest }
    }

    fn fields(self) -> [&'static Field; 2] {
        match self.asked {
            Asked::TodayAndLater => [&MOISTURE_TODAY, &MOISTURE_LATER],
            Asked::DriestAndWettest => [&DRIEST, &WETTEST],
        }
    }
}

/// Which rule gave a figure, and its own number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rule {
    /// Ordinary softwood lumber, 8 to 19 % and wet: its width or its thickness.
    Lumber(Across),
    /// A coefficient of the species for each point, 6 to 14 %.
    EachPoint(Number),
    /// Total shrinkage of the species, as a part of the green size, in proportion to the moisture
    /// lost.
    General(Number),
}

/// What a size is multiplied by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Movement {
    /// Size later over size now.
    pub factor: Number,
    /// By which rule.
    pub rule: Rule,
    /// Whether it rests on a cell that was not seen.
    pub is_unverified: bool,
}

/// The likely figure, and how far single boards may lie from it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spread {
    /// The likely one; for a species of unknown rings that of a flat-sawn board, which moves most.
    pub likely: Movement,
    /// Factors of the board that moves least and of the one that moves most, where known.
    pub ends: Option<(Number, Number)>,
}

impl Spread {
    /// The size later, likely.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] beyond the limits.
    pub fn later(&self, now: Length) -> Result<Length, OutOfRange> {
        now * self.likely.factor
    }

    /// The sizes later of the board that moves least and of the one that moves most.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] beyond the limits.
    pub fn ends_later(&self, now: Length) -> Result<Option<(Length, Length)>, OutOfRange> {
        self.ends.map(|(least, most)| Ok(((now * least)?, (now * most)?))).transpose()
    }
}

/// Moisture below and above which the coefficients of a species do not hold, in percent.
const EACH_POINT: (i64, i64) = (6, 14);

/// Moisture above which wood no longer swells, in percent, where no other figure is known.
pub(super) const FIBERS_FULL: i64 = 30;

/// The softwoods, cedars and redwood left out, whose shrinkage was read and is the least across
/// the rings and the most along them: between them lie most boards of ordinary softwood.
const LEAST_AND_MOST: (&str, &str) = (SUBALPINE_FIR.id, WESTERN_LARCH.id);

/// How much a width or thickness changes.
///
/// # Errors
///
/// - `below-formula`, `between-formula`: outside the lumber formula; both moistures where both are.
/// - `no-figure-outside`: a species of which only the coefficient from 6 to 14 % is known.
/// - `no-quarter-figure`: a species of which only the flat-sawn figure is known.
/// - [`Refused::OutOfRange`]: a number beyond the limits.
pub fn spread(wood: Wood, across: Across, moistures: Moistures) -> Result<Spread, Refused> {
    match wood {
        Wood::OrdinarySoftwood => lumber(across, moistures),
        Wood::Species(species, grain) => {
            // The thickness of a flat-sawn board lies across the rings, and the other way round.
            let of_side = |grain: Grain| match across {
                Across::Width => grain,
                Across::Thickness => grain.other(),
            };
            let one = |grain: Grain| of_species(species, of_side(grain), moistures);
            match grain {
                Some(grain) => Ok(Spread { likely: one(grain)?, ends: None }),
                None => {
                    let flat = one(Grain::FlatSawn)?;
                    let ends = one(Grain::QuarterSawn).ok().map(|q| (q.factor, flat.factor));
                    Ok(Spread { likely: flat, ends })
                }
            }
        }
    }
}

fn lumber(across: Across, moistures: Moistures) -> Result<Spread, Refused> {
    let ends = [moistures.from, moistures.to];
    let [Some(from), Some(to)] = ends.map(lumber_moisture) else {
        let outside = ends.into_iter().zip(moistures.fields());
        let outside = outside.filter(|(percent, _)| lumber_moisture(*percent).is_none());
        let refusals = outside.map(|(percent, field)| outside_lumber(percent, field)).collect();
        return Err(Refused::For(refusals));
    };
    let factor = shrinkage::factor(across, from, to)?;
    // Wet is wet in both rules: 28 % here is the 30 % of the general one.
    let full = |percent: Number| {
        let green = percent >= Moisture::green().in_percent();
        if green { Number::whole(FIBERS_FULL) } else { percent }
    };
    let moistures = Moistures { from: full(moistures.from), to: full(moistures.to), ..moistures };
    let end = |id: &str, grain| {
        let cell = species::species(id).and_then(|s| s.shrinkage).map(|s| s.of(grain));
        cell.map(|cell| general(total(cell)?, moistures)).transpose()
    };
    let least = end(LEAST_AND_MOST.0, Grain::QuarterSawn)?;
    let most = end(LEAST_AND_MOST.1, Grain::FlatSawn)?;
    let likely = Movement { factor, rule: Rule::Lumber(across), is_unverified: false };
    Ok(Spread { likely, ends: least.zip(most) })
}

/// `None` outside the lumber formula.
fn lumber_moisture(percent: Number) -> Option<Moisture> {
    let green = Moisture::green();
    if percent >= green.in_percent() { Some(green) } else { Moisture::percent(percent) }
}

fn outside_lumber(percent: Number, field: &Field) -> Refusal {
    if percent < Number::whole(shrinkage::DRIEST) {
        return Refusal::at(
            field,
            "below-formula",
            say!["The formula for ordinary softwood stands from 8 to 19 %, not below."],
            WayOut::set(say!["Use 8 %, or choose the species."], field, "8".to_owned()),
        );
    }
    Refusal::at(
        field,
        "between-formula",
        say!["The formula for ordinary softwood stands from 8 to 19 %, and for wet wood at 28 %."],
        WayOut::set(say!["Take it as wet: 28 %. Or choose the species."], field, "28".to_owned()),
    )
}

fn of_species(
    species: &'static Species,
    grain: Grain,
    moistures: Moistures,
) -> Result<Movement, Refused> {
    let each_point = Number::whole(EACH_POINT.0)..=Number::whole(EACH_POINT.1);
    let inside = each_point.contains(&moistures.from) && each_point.contains(&moistures.to);
    let coefficient = species.change.filter(|_| inside).and_then(|change| change.of(grain));
    let shrinkage = species.shrinkage.map(|shrinkage| shrinkage.of(grain));
    let (cell, rule, factor) = match (coefficient, shrinkage) {
        (Some(cell), _) => {
            let per_point = cell.over(100_000)?;
            let factor = by_points(per_point, moistures.from, moistures.to)?;
            (cell, Rule::EachPoint(per_point), factor)
        }
        (None, Some(cell)) => {
            let total = total(cell)?;
            (cell, Rule::General(total), general(total, moistures)?)
        }
        (None, None) if inside => {
            return Err(Refusal::at(
                &GRAIN,
                "no-quarter-figure",
                say!["Of this wood only the flat-sawn figure is known."],
                WayOut::set(
                    say!["Reckon with flat-sawn, which moves more."],
                    &GRAIN,
                    FLAT.id.to_owned(),
                ),
            )
            .into());
        }
        (None, None) => {
            return Err(Refusal::at(
                &WOOD,
                "no-figure-outside",
                say!["Of this wood only the figure from 6 to 14 % is known."],
                WayOut::set(
                    say!["Keep both moistures from 6 to 14 %, or reckon with ordinary softwood."],
                    &WOOD,
                    SOFTWOOD.id.to_owned(),
                ),
            )
            .into());
        }
    };
    Ok(Movement { factor, rule, is_unverified: cell.trust == Trust::Unverified })
}

/// Size later over size now, for a change of `per_point` of the size with each point of moisture.
///
/// # Errors
///
/// [`OutOfRange`] beyond the limits.
///
/// # Source
///
/// USDA FPL Wood Handbook, FPL-GTR-190 (2010), Equation 13-2, p. 13-16.
pub fn by_points(per_point: Number, from: Number, to: Number) -> Result<Number, OutOfRange> {
    Number::ONE + (per_point * (to - from)?)?
}

/// Total shrinkage as a part of the green size; the table has tenths of a percent.
fn total(shrinkage: Cell) -> Result<Number, OutOfRange> {
    shrinkage.over(1000)
}

/// Size later over size now, from the total shrinkage: each size is green size × (1 - S0 (1 - M ÷ 30)), M not over 30.
///
/// # Source
///
/// USDA FPL Wood Handbook, FPL-GTR-282 (2021), Equation 4-9, p. 4-10.
fn general(total: Number, moistures: Moistures) -> Result<Number, OutOfRange> {
    let full = Number::whole(FIBERS_FULL);
    let kept = |moisture: Number| -> Result<Number, OutOfRange> {
        let lost = (Number::ONE - (moisture.min(full) / full)?)?;
        Number::ONE - (total * lost)?
    };
    kept(moistures.to)? / kept(moistures.from)?
}
