//! Beams: how a load bends them, what sag is let pass, and what a bench may have to carry.

use crate::measure::Number;
use crate::say;
use crate::sentence::Sentence;

/// The document behind [`Loading`].
pub const LOADING_SOURCE: &str =
    "USDA FPL Wood Handbook, FPL-GTR-190 (2010), Chapter 9, Table 9-1 (kb)";

/// How a beam is held and where its load lies.
///
/// Sag of a straight beam from bending is kb · W · L³ ÷ (E · I), with W the whole load and L the
/// span (Wood Handbook Equation 9-2 without its shear term). The greatest bending moment is
/// km · W · L, which follows from statics.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Loading {
    /// Spread evenly, both ends resting.
    EvenResting,
    /// Spread evenly, both ends held stiff.
    EvenClamped,
    /// In the middle, both ends resting.
    MiddleResting,
    /// In the middle, both ends held stiff.
    MiddleClamped,
    /// Half at each quarter point, both ends resting.
    QuartersResting,
    /// Spread evenly over an overhang, one end held stiff.
    EvenOverhang,
    /// At the free end of an overhang, the other held stiff.
    EndOverhang,
}

impl Loading {
    /// Every loading.
    pub const ALL: [Loading; 7] = [
        Loading::EvenResting,
        Loading::EvenClamped,
        Loading::MiddleResting,
        Loading::MiddleClamped,
        Loading::QuartersResting,
        Loading::EvenOverhang,
        Loading::EndOverhang,
    ];

    /// kb: sag in the middle, or at the free end.
    #[must_use]
    pub fn sag_factor(self) -> f64 {
        match self {
            Loading::EvenResting => 5.0 / 384.0,
            Loading::EvenClamped => 1.0 / 384.0,
            Loading::MiddleResting => 1.0 / 48.0,
            Loading::MiddleClamped => 1.0 / 192.0,
            Loading::QuartersResting => 11.0 / 768.0,
            Loading::EvenOverhang => 1.0 / 8.0,
            Loading::EndOverhang => 1.0 / 3.0,
        }
    }

    /// km: greatest bending moment, over load times span.
    #[must_use]
    pub fn moment_factor(self) -> f64 {
        match self {
            Loading::EvenResting | Loading::MiddleClamped | Loading::QuartersResting => 1.0 / 8.0,
            Loading::EvenClamped => 1.0 / 12.0,
            Loading::MiddleResting => 1.0 / 4.0,
            Loading::EvenOverhang => 1.0 / 2.0,
            Loading::EndOverhang => 1.0,
        }
    }

    /// The same load with both ends held stiff, where the table has it.
    #[must_use]
    pub fn clamped(self) -> Option<Loading> {
        match self {
            Loading::EvenResting => Some(Loading::EvenClamped),
            Loading::MiddleResting => Some(Loading::MiddleClamped),
            _ => None,
        }
    }

    /// Whether the beam is an overhang held at one end.
    #[must_use]
    pub fn is_overhang(self) -> bool {
        matches!(self, Loading::EvenOverhang | Loading::EndOverhang)
    }
}

/// How much sag is let pass: one part in so many of the span.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SagLimit {
    /// Stable name, also in links.
    pub id: &'static str,
    /// For the user.
    pub name: &'static str,
    /// Span over sag.
    pub span_over_sag: u32,
    /// The document, or `None` for common practice.
    pub source: Option<&'static str>,
}

/// A seat or a floor.
pub const FLOOR: SagLimit = SagLimit {
    id: "floor",
    name: "Seat or floor: 1/360",
    span_over_sag: 360,
    source: Some("International Residential Code, Table R301.7: floors, live load, L/360"),
};

/// Every limit offered, stiffest first. For an overhang the span is taken as twice the overhang
/// (IRC Table R301.7, note b).
pub const SAG_LIMITS: [SagLimit; 4] = [
    SagLimit {
        id: "shelf",
        name: "Shelf: 1/600 of the span",
        span_over_sag: 600,
        // 0.02 in to the foot.
        source: None,
    },
    FLOOR,
    SagLimit {
        id: "other",
        name: "Other parts: 1/240",
        span_over_sag: 240,
        source: Some("International Residential Code, Table R301.7: all other members, L/240"),
    },
    SagLimit {
        id: "farm",
        name: "Shed or farm: 1/180",
        span_over_sag: 180,
        source: Some("International Building Code, Table 1604.3: farm buildings, L/180"),
    },
];

/// The limit with this id.
#[must_use]
pub fn sag_limit(id: &str) -> Option<SagLimit> {
    SAG_LIMITS.into_iter().find(|limit| limit.id == id)
}

/// What may sit, stand or lie on a bench.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DesignLoad {
    /// Who bears on it, for the user.
    pub who: &'static str,
    /// Pounds, or pounds to the foot of span.
    pub pounds: f64,
    /// `lb`, or `lb/ft` of span.
    pub unit: &'static str,
    /// Where; empty for all along.
    pub place: &'static str,
    /// The document.
    pub source: &'static str,
}

impl DesignLoad {
    /// As a load case: `one person, 250 lb on one spot`.
    #[must_use]
    pub fn case(self) -> Sentence {
        say![self.who, ", ", (Number::whole(self.pounds as i64), self.unit), self.place]
    }
}

/// One person on one spot.
pub const PERSON: DesignLoad = DesignLoad {
    who: "one person",
    pounds: 250.0,
    unit: "lb",
    place: " on one spot",
    source: "2010 ADA Standards 903.6: 250 lbf at any point of a bench seat",
};

/// A row of people, for each foot of seat.
pub const ROW_OF_PEOPLE: DesignLoad = DesignLoad {
    who: "a row of people",
    pounds: 120.0,
    unit: "lb/ft",
    place: "",
    source: "ICC 300-2017 Table 303.2 (public comment draft): 120 lb per foot of seat",
};

/// A foot put down hard.
pub const STEP: DesignLoad = DesignLoad {
    who: "someone steps up on it",
    pounds: 300.0,
    unit: "lb",
    place: " on one spot",
    source: "ICC 300-2017 Table 303.2 (public comment draft): 300 lb on a stair tread",
};
