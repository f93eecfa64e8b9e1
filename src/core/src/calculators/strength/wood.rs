//! How stiff the wood is, and how moisture changes it.

use crate::tables::species::{self, STRENGTH_SOURCE, Species, Trust};

/// Stiffness of an outdoor softwood of which nothing is known, in psi: our cautious choice; old
/// tables have dry No. 2 lumber near 1.4 to 1.6 million.
pub const UNKNOWN_SOFTWOOD: f64 = 1_200_000.0;

/// Stiffness of green over that of wood at 12 %, and the same of the breaking stress: 2360 ÷ 2800
/// and 17600 ÷ 25700 (Army TM 5-852-4 Table 2-2, which credits the Forest Products Laboratory).
const GREEN_OVER_DRY: (f64, f64) = (2360.0 / 2800.0, 17_600.0 / 25_700.0);

/// The wood of a beam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wood {
    /// Modulus of elasticity E, in psi.
    pub stiffness: f64,
    /// Stress at which clear wood breaks in bending, in psi, where known.
    pub rupture: Option<f64>,
    /// The species and its moisture in percent, where they were given.
    pub species: Option<(&'static Species, f64)>,
}

impl Wood {
    /// Wood of which only the stiffness is known.
    #[must_use]
    pub fn of_stiffness(psi: f64) -> Wood {
        Wood { stiffness: psi, rupture: None, species: None }
    }

    /// A species at a moisture in percent; `None` where its strength is not in the table.
    #[must_use]
    pub fn of_species(id: &str, moisture: f64) -> Option<Wood> {
        let species = species::species(id)?;
        let strength = species.strength?;
        let until = f64::from(species::strength_falls_until(id));
        let (dry_stiffness, dry_rupture) = (strength.stiffness.in_psi(), strength.rupture.in_psi());
        let at = |dry: f64, ratio: f64| at_moisture(dry, dry * ratio, until, moisture);
        Some(Wood {
            stiffness: at(dry_stiffness, GREEN_OVER_DRY.0),
            rupture: Some(at(dry_rupture, GREEN_OVER_DRY.1)),
            species: Some((species, moisture)),
        })
    }

    /// Whether a value was not seen when it was entered.
    #[must_use]
    pub fn is_unverified(&self) -> bool {
        let strength = self.species.and_then(|(species, _)| species.strength);
        strength.is_some_and(|strength| strength.gravity.trust == Trust::Unverified)
    }

    /// Document behind the values of a species.
    #[must_use]
    pub fn document(&self) -> &'static str {
        STRENGTH_SOURCE
    }
}

/// A property of clear wood at another moisture: P12 × (P12 ÷ Pg)^((12 - M) ÷ (Mp - 12)), and Pg
/// from Mp on.
///
/// `dry` is the property at 12 %, `green` that of green wood, `until` the moisture Mp above which
/// it no longer changes; moistures in percent.
///
/// # Source
///
/// USDA FPL Wood Handbook, FPL-GTR-282 (2021), Equation 5-3, p. 5-34.
#[must_use]
pub fn at_moisture(dry: f64, green: f64, until: f64, moisture: f64) -> f64 {
    if moisture >= until {
        return green;
    }
    dry * libm::pow(dry / green, (12.0 - moisture) / (until - 12.0))
}
