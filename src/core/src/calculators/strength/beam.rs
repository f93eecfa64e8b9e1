//! How far a load bends a straight beam, and how hard it strains it.
//!
//! Sags and stresses follow from measured properties of wood, so they are floating-point numbers
//! here; lengths are inches, forces pounds.

use core::f64::consts::PI;

use crate::tables::beams::Loading;

/// Cross-section of a beam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Section {
    /// A plank, slat or rail: width from side to side, depth up and down.
    Plank {
        /// Level, from side to side.
        across: f64,
        /// Up and down.
        depth: f64,
    },
    /// A round rail or dowel.
    Round {
        /// Its diameter.
        diameter: f64,
    },
}

impl Section {
    /// Moment of inertia I: b d³ ÷ 12, or π d⁴ ÷ 64.
    #[must_use]
    pub fn inertia(self) -> f64 {
        match self {
            Section::Plank { across, depth } => across * cube(depth) / 12.0,
            Section::Round { diameter } => PI * diameter * cube(diameter) / 64.0,
        }
    }

    /// Section modulus S: b d² ÷ 6, or π d³ ÷ 32.
    #[must_use]
    pub fn modulus(self) -> f64 {
        match self {
            Section::Plank { across, depth } => across * depth * depth / 6.0,
            Section::Round { diameter } => PI * cube(diameter) / 32.0,
        }
    }

    /// Up and down.
    #[must_use]
    pub fn depth(self) -> f64 {
        match self {
            Section::Plank { depth, .. } => depth,
            Section::Round { diameter } => diameter,
        }
    }

    /// The same plank turned over on its side; a round rail stays as it is.
    #[must_use]
    pub fn turned(self) -> Section {
        match self {
            Section::Plank { across, depth } => Section::Plank { across: depth, depth: across },
            round @ Section::Round { .. } => round,
        }
    }

    /// Depth of the same width, or diameter, that has this moment of inertia.
    #[must_use]
    pub fn depth_for_inertia(self, inertia: f64) -> f64 {
        match self {
            Section::Plank { across, .. } => libm::cbrt(12.0 * inertia / across),
            Section::Round { .. } => libm::sqrt(libm::sqrt(64.0 * inertia / PI)),
        }
    }

    /// Depth of the same width, or diameter, that has this section modulus.
    #[must_use]
    pub fn depth_for_modulus(self, modulus: f64) -> f64 {
        match self {
            Section::Plank { across, .. } => libm::sqrt(6.0 * modulus / across),
            Section::Round { .. } => libm::cbrt(32.0 * modulus / PI),
        }
    }
}

fn cube(x: f64) -> f64 {
    x * x * x
}

/// What lies on a beam.
#[derive(Clone, Debug, PartialEq)]
pub enum Load {
    /// So many pounds in all, as in the published table of loadings.
    Point(Loading, f64),
    /// So many pounds on each inch, as in the published table of loadings.
    Even(Loading, f64),
    /// Both ends resting: points at places from the left end, and so many pounds on each inch.
    Several {
        /// Place from the left end, pounds.
        points: Vec<(f64, f64)>,
        /// Pounds on each inch.
        even: f64,
    },
}

impl Load {
    /// The load when it is shared by so many equal beams.
    #[must_use]
    pub fn shared_by(&self, beams: u32) -> Load {
        let n = f64::from(beams.max(1));
        match self {
            Load::Point(loading, pounds) => Load::Point(*loading, pounds / n),
            Load::Even(loading, per_inch) => Load::Even(*loading, per_inch / n),
            Load::Several { points, even } => Load::Several {
                points: points.iter().map(|(at, pounds)| (*at, pounds / n)).collect(),
                even: even / n,
            },
        }
    }

    /// The loading of the published table, if it is one.
    #[must_use]
    pub fn loading(&self) -> Option<Loading> {
        match self {
            Load::Point(loading, _) | Load::Even(loading, _) => Some(*loading),
            Load::Several { .. } => None,
        }
    }

    /// Whether it may come all at once: a load on one spot, such as a person who sits down. An even
    /// one is taken as standing.
    #[must_use]
    pub fn may_come_suddenly(&self) -> bool {
        match self {
            Load::Point(..) => true,
            Load::Even(..) => false,
            Load::Several { points, .. } => !points.is_empty(),
        }
    }

    /// Pounds in all on a span.
    #[must_use]
    pub fn total(&self, span: f64) -> f64 {
        match self {
            Load::Point(_, pounds) => *pounds,
            Load::Even(_, per_inch) => per_inch * span,
            Load::Several { points, even } => {
                points.iter().map(|(_, pounds)| pounds).sum::<f64>() + even * span
            }
        }
    }

    /// Sag times E times I, in the middle, at the free end, or where it is greatest.
    #[must_use]
    pub fn sag_times_stiffness(&self, span: f64) -> f64 {
        match self {
            Load::Point(loading, _) | Load::Even(loading, _) => {
                loading.sag_factor() * self.total(span) * cube(span)
            }
            Load::Several { .. } => peak(span, |x| self.curve(span, x)),
        }
    }

    /// Greatest bending moment in inch-pounds.
    #[must_use]
    pub fn moment(&self, span: f64) -> f64 {
        match self {
            Load::Point(loading, _) | Load::Even(loading, _) => {
                loading.moment_factor() * self.total(span) * span
            }
            Load::Several { points, even } => {
                let (left, _) = self.on_supports(span);
                peak(span, |x| {
                    let before = points.iter().filter(|(at, _)| *at < x);
                    left * x
                        - even * x * x / 2.0
                        - before.map(|(at, pounds)| pounds * (x - at)).sum::<f64>()
                })
            }
        }
    }

    /// Pounds on the left and on the right support of a beam that rests on both ends.
    #[must_use]
    pub fn on_supports(&self, span: f64) -> (f64, f64) {
        let (points, even) = self.as_several(span);
        let right =
            points.iter().map(|(at, pounds)| pounds * at / span).sum::<f64>() + even * span / 2.0;
        (self.total(span) - right, right)
    }

    /// Sag times E times I at a place from the left end (from the held end of an overhang).
    #[must_use]
    pub fn curve(&self, span: f64, x: f64) -> f64 {
        match self {
            Load::Point(Loading::EndOverhang, pounds) => pounds * x * x * (3.0 * span - x) / 6.0,
            Load::Even(Loading::EvenOverhang, per_inch) => {
                per_inch * x * x * (6.0 * span * span - 4.0 * span * x + x * x) / 24.0
            }
            _ => {
                let (points, even) = self.as_several(span);
                let evenly = even * x * (cube(span) - 2.0 * span * x * x + cube(x)) / 24.0;
                evenly + points.iter().map(|(at, pounds)| pounds * point(span, *at, x)).sum::<f64>()
            }
        }
    }

    /// The same load as points and pounds on each inch, for both ends resting.
    fn as_several(&self, span: f64) -> (Vec<(f64, f64)>, f64) {
        match self {
            Load::Several { points, even } => (points.clone(), *even),
            Load::Even(_, per_inch) => (Vec::new(), *per_inch),
            Load::Point(Loading::QuartersResting, pounds) => {
                let half = pounds / 2.0;
                (vec![(span / 4.0, half), (span * 0.75, half)], 0.0)
            }
            Load::Point(_, pounds) => (vec![(span / 2.0, *pounds)], 0.0),
        }
    }
}

/// Sag times E times I at `x` from one pound at `at`, both ends resting.
fn point(span: f64, at: f64, x: f64) -> f64 {
    let (x, beyond) = if x <= at { (x, span - at) } else { (span - x, at) };
    beyond * x * (span * span - beyond * beyond - x * x) / (6.0 * span)
}

/// Greatest value along the span of a curve that rises to one peak and falls again, as the sag
/// and the moment of a beam under downward loads do.
fn peak(span: f64, curve: impl Fn(f64) -> f64) -> f64 {
    let (mut left, mut right) = (0.0, span);
    // Each round leaves two thirds, so 100 rounds leave less than the last digit of a float.
    for _ in 0..100 {
        let third = (right - left) / 3.0;
        if curve(left + third) < curve(right - third) {
            left += third;
        } else {
            right -= third;
        }
    }
    curve((left + right) / 2.0)
}

/// Longest span whose sag is one part in `span_over_sag` of it, for a load of the table.
///
/// Sag grows with the cube of the span for a point load, with its fourth power for an even one.
/// The span of an overhang is taken as twice the overhang (IRC Table R301.7, note b).
#[must_use]
pub fn span_for_sag(
    load: &Load,
    stiffness: f64,
    section: Section,
    span_over_sag: f64,
) -> Option<f64> {
    let loading = load.loading()?;
    let parts = if loading.is_overhang() { 2.0 } else { 1.0 };
    let room = parts * stiffness * section.inertia() / (loading.sag_factor() * span_over_sag);
    match load {
        Load::Point(_, pounds) => Some(libm::sqrt(room / pounds)),
        Load::Even(_, per_inch) => Some(libm::cbrt(room / per_inch)),
        Load::Several { .. } => None,
    }
}

/// Longest span that keeps the bending stress within a limit, for a load of the table.
#[must_use]
pub fn span_for_stress(load: &Load, section: Section, most_stress: f64) -> Option<f64> {
    let loading = load.loading()?;
    let room = most_stress * section.modulus() / loading.moment_factor();
    match load {
        Load::Point(_, pounds) => Some(room / pounds),
        Load::Even(_, per_inch) => Some(libm::sqrt(room / per_inch)),
        Load::Several { .. } => None,
    }
}
