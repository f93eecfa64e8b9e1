//! Strength: how far a plank, slat, rail or round rail sags under a load, and whether it holds.
//!
//! *"The top bounces: where does a support go? Is a flat 2×6 enough for 44 in? On edge or flat? My
//! dowel rail bends. Is there a load that benches are made for?"*
//!
//! Sag = kb W L³ ÷ (E I); stress = moment ÷ S. Each stretch between supports is taken as a beam
//! that rests on its two ends, which is on the safe side for a plank that runs over a middle
//! support. Half the span has an eighth of the sag; twice the depth an eighth; twice the width a
//! half. A check, not engineering: local code and a licensed engineer decide.
//!
//! A load on one spot may come suddenly, as a person who sits down does: [`SUDDENLY`] as much sag and
//! stress, of which [`FOR_A_MOMENT`] as much is let pass.
//!
//! # Source
//!
//! Loadings: USDA FPL Wood Handbook, FPL-GTR-190 (2010), Chapter 9, Table 9-1. I and S: geometry.
//! Stiffness of the species: the same, Chapter 5. The stress limit and the stiffness of an unknown
//! softwood are our own cautious choices.

mod beam;
mod drawing;
// A table: a field in two lines.
#[rustfmt::skip]
mod fields;
mod question;
mod sheet;
mod shown;
#[cfg(test)]
mod tests;
mod wood;

pub use beam::{Load, Section, span_for_sag, span_for_stress};
pub use sheet::CALCULATOR;
pub use wood::{UNKNOWN_SOFTWOOD, Wood, at_moisture};

use crate::measure::{Length, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{Field, Refusal, Refused, WayOut};
use fields::{DEPTH, DIAMETER, PLACES};

/// What is asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Input {
    /// Cross-section.
    pub section: Section,
    /// Between the outer supports, or the overhang, in inches.
    pub span: f64,
    /// Evenly placed supports between the outer ones.
    pub middle_supports: u32,
    /// What lies on it; with middle supports, what lies on one stretch.
    pub load: Load,
    /// How many equal pieces share the load.
    pub sharing: u32,
    /// The wood.
    pub wood: Wood,
    /// Sag that is let pass: one part in so many of the span.
    pub span_over_sag: f64,
    /// Bending stress that is let pass, in psi.
    pub most_stress: f64,
}

/// A load that is let go on the beam all at once, from no height, bends and strains it twice as much
/// as the same load at rest: the work W × y of the load is the work k × y² ÷ 2 of the bending, so
/// y = 2 × W ÷ k. From a height it is more.
pub const SUDDENLY: f64 = 2.0;

/// Stress that is let pass for a moment, over that of ten years.
///
/// Source: AWC NDS 2018 Table 2.3.2 and its note 2, read in a text copy: 2.0 for impact, but not over
/// 1.6 for wood that is treated with water-borne preservatives, as outdoor wood may be.
pub const FOR_A_MOMENT: f64 = 1.6;

/// Whether to build it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Within both limits.
    Stiff,
    /// Strong enough, but it sags more than the limit.
    Springy,
    /// Strained more than the limit.
    Dont,
}

impl Verdict {
    /// In a word.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Verdict::Stiff => "Stiff",
            Verdict::Springy => "Springy",
            Verdict::Dont => "Don't",
        }
    }
}

/// How it bends. Inches and psi; every number is finite.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bend {
    /// One stretch between supports, or the overhang.
    pub bay: f64,
    /// Greatest sag.
    pub sag: f64,
    /// Sag that is let pass.
    pub most_sag: f64,
    /// Greatest bending moment on one piece, in inch-pounds.
    pub moment: f64,
    /// Greatest bending stress, the load at rest.
    pub stress: f64,
    /// Greatest bending stress for a moment, of a load that may come suddenly.
    pub sudden_stress: Option<f64>,
    /// Whether to build it.
    pub verdict: Verdict,
}

/// What a limit asks for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// Longest span between two supports; `None` for loads at fixed places, or when it is longer
    /// than any length that is kept.
    pub longest_span: Option<Length>,
    /// Least depth of the same width, or diameter.
    pub least_depth: Length,
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// As asked.
    pub bend: Bend,
    /// With one middle support more; `None` for an overhang and for loads at fixed places.
    pub supported: Option<Bend>,
    /// The plank turned over on its side; `None` for a round or square one.
    pub turned: Option<Bend>,
    /// Two of them side by side.
    pub doubled: Bend,
    /// Sag with the ends held stiff, where the table has it.
    pub clamped_sag: Option<f64>,
    /// To keep the sag within its limit.
    pub for_sag: Limit,
    /// To keep the stress within its limit.
    pub for_stress: Limit,
    /// Pounds on the left and right support, for loads at fixed places.
    pub on_supports: Option<(f64, f64)>,
}

impl Answer {
    /// Longest span within both limits.
    #[must_use]
    pub fn longest_span(&self) -> Option<Length> {
        match (self.for_sag.longest_span, self.for_stress.longest_span) {
            (Some(sag), Some(stress)) => Some(sag.min(stress)),
            (one, other) => one.or(other),
        }
    }

    /// Least depth within both limits.
    #[must_use]
    pub fn least_depth(&self) -> Length {
        self.for_sag.least_depth.max(self.for_stress.least_depth)
    }
}

/// Sag over span beyond which the formula for small bends no longer holds: a tenth.
const FARTHEST_BEND: f64 = 0.1;

/// Bends the beam, and the ways to make it stiffer.
///
/// # Errors
///
/// - `load-off-the-span`, beside the places: a load stands beyond an end.
/// - `no-load`, beside the places: nothing lies on it.
/// - `bends-too-far`, beside the depth or the diameter: more than a tenth of its span; sets the
///   depth that would do.
/// - [`Refused::OutOfRange`]: a number beyond the limits.
///
/// # Examples
///
/// ```
/// # use reckoner_core::{calculators::strength::*, tables::beams::Loading};
/// // A flat 2×6 over 44 in, 250 lb in the middle.
/// let answer = reckon(&Input {
///     section: Section::Plank { across: 5.5, depth: 1.5 },
///     span: 44.0, middle_supports: 0,
///     load: Load::Point(Loading::MiddleResting, 250.0), sharing: 1,
///     wood: Wood::of_stiffness(UNKNOWN_SOFTWOOD),
///     span_over_sag: 360.0, most_stress: 850.0,
/// }).map_err(|_| "refused")?;
/// assert_eq!(answer.bend.verdict, Verdict::Dont);
/// assert!((answer.bend.sag - 0.239).abs() < 0.0005);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    refuse_load(input)?;
    let bend = bend(input)?;
    let (for_sag, for_stress) = limits(input, &bend)?;
    if bend.sag > FARTHEST_BEND * bend.bay {
        let least_depth = for_sag.least_depth.max(for_stress.least_depth);
        return Err(bends_too_far(input.section, least_depth).into());
    }
    let with = |change: &dyn Fn(&mut Input)| {
        let mut other = input.clone();
        change(&mut other);
        self::bend(&other)
    };
    let loading = input.load.loading();
    let can_be_supported = loading.is_some_and(|loading| !loading.is_overhang());
    let supported = can_be_supported
        .then(|| with(&|other| other.middle_supports = other.middle_supports.saturating_add(1)))
        .transpose()?;
    let turned = (input.section.turned() != input.section)
        .then(|| with(&|other| other.section = other.section.turned()))
        .transpose()?;
    let doubled = with(&|other| other.sharing = other.sharing.saturating_mul(2))?;
    let clamped_sag = loading.and_then(|loading| {
        let clamped = loading.clamped()?;
        Some(bend.sag * clamped.sag_factor() / loading.sag_factor())
    });
    let on_supports =
        loading.is_none().then(|| input.load.shared_by(input.sharing).on_supports(input.span));
    Ok(Answer { bend, supported, turned, doubled, clamped_sag, for_sag, for_stress, on_supports })
}

fn refuse_load(input: &Input) -> Result<(), Refused> {
    let mut refusals = Vec::new();
    if let Load::Several { points, .. } = &input.load {
        let off = points.iter().find(|(at, _)| !(0.0..=input.span).contains(at));
        if let (Some((at, _)), Ok(span)) = (off, Length::near(input.span)) {
            let at = Length::near(*at).unwrap_or(span);
            refusals.push(Refusal::at(
                &PLACES,
                "load-off-the-span",
                say!["A load stands at ", at, ", off the span of ", span, "."],
                WayOut::advice(say!["Places run from 0 at the left support to ", span, "."]),
            ));
        }
        if input.load.total(input.span) <= 0.0 {
            refusals.push(Refusal::at(
                &PLACES,
                "no-load",
                say!["Nothing lies on it. Say where the loads stand."],
                WayOut::advice(say!["One load at 12 is written 12."]),
            ));
        }
    }
    Refused::unless_none(refusals)
}

/// The formula no longer holds.
fn bends_too_far(section: Section, least_depth: Length) -> Refusal {
    // To the next mark up, so that what is set is a size one can cut.
    let depth = (least_depth, Rounding::Up);
    let (field, words): (&Field, _) = match section {
        Section::Round { .. } => (&DIAMETER, "A diameter of "),
        Section::Plank { .. } => (&DEPTH, "A depth of "),
    };
    Refusal::at(
        field,
        "bends-too-far",
        say![
            "It would bend more than a tenth of its span: no sag can be told, and do not build it."
        ],
        WayOut::set(say![words, depth, " is enough. Or put in a middle support."], field, depth),
    )
}

/// Bends one piece.
fn bend(input: &Input) -> Result<Bend, OutOfRange> {
    let bay = input.span / (f64::from(input.middle_supports) + 1.0);
    let load = input.load.shared_by(input.sharing);
    let sag = load.sag_times_stiffness(bay) / (input.wood.stiffness * input.section.inertia());
    let moment = load.moment(bay);
    let stress = moment / input.section.modulus();
    let is_overhang = load.loading().is_some_and(|loading| loading.is_overhang());
    let most_sag = bay * if is_overhang { 2.0 } else { 1.0 } / input.span_over_sag;
    if ![sag, moment, stress, most_sag].into_iter().all(f64::is_finite) {
        return Err(OutOfRange);
    }
    let verdict = if stress * counted(&load) > input.most_stress {
        Verdict::Dont
    } else if sag > most_sag {
        Verdict::Springy
    } else {
        Verdict::Stiff
    };
    let sudden_stress = load.may_come_suddenly().then_some(stress * SUDDENLY);
    Ok(Bend { bay, sag, most_sag, moment, stress, sudden_stress, verdict })
}

/// What a stress at rest is multiplied by before it is held against its limit.
fn counted(load: &Load) -> f64 {
    if load.may_come_suddenly() { SUDDENLY / FOR_A_MOMENT } else { 1.0 }
}

/// Longest span and least depth for the limit of sag, and for that of stress.
fn limits(input: &Input, bend: &Bend) -> Result<(Limit, Limit), OutOfRange> {
    let (section, stiffness) = (input.section, input.wood.stiffness);
    let load = input.load.shared_by(input.sharing);
    let longest = |span: Option<f64>| span.and_then(|span| Length::near(span).ok());
    let inertia = load.sag_times_stiffness(bend.bay) / (stiffness * bend.most_sag);
    let for_sag = Limit {
        longest_span: longest(span_for_sag(&load, stiffness, section, input.span_over_sag)),
        least_depth: Length::near(section.depth_for_inertia(inertia))?,
    };
    let most_stress = input.most_stress / counted(&load);
    let modulus = bend.moment / most_stress;
    let for_stress = Limit {
        longest_span: longest(span_for_stress(&load, section, most_stress)),
        least_depth: Length::near(section.depth_for_modulus(modulus))?,
    };
    Ok((for_sag, for_stress))
}
