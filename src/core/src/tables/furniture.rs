//! Published heights and depths of seats and tables: what a size of a job can be held against.
//!
//! Sources: 2010 ADA Standards for Accessible Design, 903 (benches); ADAAG 4.32.4 (table tops, as the University at
//! Buffalo quotes it); USDA Forest Service Accessibility Guidebook for Outdoor Recreation and Trails (picnic tables).
//! They are made so that most people can use a thing, and are no law in one's own garden.

use crate::measure::Length;

/// A published size: at least, at most, or between the two.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Usual {
    /// Stable name, also in job files: `seat-height`.
    pub id: &'static str,
    /// What is measured: `seat height`.
    pub what: &'static str,
    /// What has that size, for a sentence: `benches`.
    pub of: &'static str,
    /// At least.
    pub least: Option<Length>,
    /// At most.
    pub most: Option<Length>,
    /// Where it is published.
    pub source: &'static str,
}

impl Usual {
    /// Whether a size is as published.
    #[must_use]
    pub fn holds(&self, size: Length) -> bool {
        self.least.is_none_or(|least| size >= least) && self.most.is_none_or(|most| size <= most)
    }
}

const ADA: &str = "2010 ADA Standards 903";
const TOP: &str = "ADAAG 4.32.4, as quoted by Univ. at Buffalo";
const FOREST: &str = "USDA Forest Service Accessibility Guidebook";

/// From whole inches; 0 for no limit.
const fn usual(
    id: &'static str,
    what: &'static str,
    of: &'static str,
    (least, most): (i32, i32),
    source: &'static str,
) -> Usual {
    let least = if least > 0 { Some(Length::sixty_fourths(64 * least)) } else { None };
    let most = if most > 0 { Some(Length::sixty_fourths(64 * most)) } else { None };
    Usual { id, what, of, least, most, source }
}

/// Every published size.
pub const USUAL: [Usual; 8] = [
    usual("seat-height", "seat height", "benches", (17, 19), ADA),
    usual("seat-depth", "seat depth", "benches", (20, 24), ADA),
    usual("seat-length", "seat length", "benches", (42, 0), ADA),
    usual("table-height", "table height", "table tops", (28, 34), TOP),
    usual("knee-height", "height for knees", "tables", (27, 0), FOREST),
    usual("knee-width", "width for knees", "tables", (30, 0), FOREST),
    usual("knee-depth", "depth for knees", "tables", (19, 0), FOREST),
    usual("toe-height", "height for toes", "tables", (9, 0), FOREST),
];

/// The published size with this id.
#[must_use]
pub fn published(id: &str) -> Option<Usual> {
    USUAL.into_iter().find(|it| it.id == id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::length;

    /// 2010 ADA Standards 903.5: the seat is 17 inches at the least and 19 at the most.
    #[test]
    fn a_seat_is_held_against_the_standard() {
        let seat = published("seat-height").expect("a row");
        let holds = |text: &str| seat.holds(length(text).expect("a length"));
        assert_eq!(["16 1/2", "17", "19", "19 1/16"].map(holds), [false, true, true, false]);
        // 903.3: 42 inches long at the least.
        let long = published("seat-length").expect("a row");
        assert!(long.holds(length("96").expect("a length")));
        assert!(!long.holds(length("41 7/8").expect("a length")));
    }
}
