//! Which cans to buy.

use crate::measure::{Number, OutOfRange};

/// Prices of the cans a shop has, where known. A can without a price is not bought when the other
/// has one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Prices {
    /// Of a gallon.
    pub gallon: Option<Number>,
    /// Of a quart: a quarter of a gallon.
    pub quart: Option<Number>,
}

/// Cans to buy.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cans {
    /// Whole gallons.
    pub gallons: u64,
    /// Quarts.
    pub quarts: u64,
    /// What they cost, where prices are known.
    pub cost: Option<Number>,
    /// Why these.
    pub why: Why,
}

/// Why cans were chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// No prices: the cans that leave least over.
    LeastOver,
    /// The only can that has a price.
    OnlyOneHasAPrice,
    /// The cheapest of the two.
    Cheapest,
}

impl Cans {
    /// Cans that hold so many gallons.
    ///
    /// With both prices the cheapest; with one price only that can; without prices the gallons and
    /// quarts that leave least over.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] beyond the limits.
    pub fn that_hold(gallons: Number, prices: Prices) -> Result<Cans, OutOfRange> {
        let quarts = whole((gallons * Number::whole(4))?.ceil())?;
        let (full, rest) = (quarts / 4, quarts % 4);
        let all_gallons = (quarts.div_ceil(4), 0);
        match (prices.gallon, prices.quart) {
            (None, None) => {
                Ok(Cans { gallons: full, quarts: rest, cost: None, why: Why::LeastOver })
            }
            (Some(gallon), None) => {
                let cans = Cans::priced(all_gallons, gallon, Number::ZERO)?;
                Ok(Cans { why: Why::OnlyOneHasAPrice, ..cans })
            }
            (None, Some(quart)) => {
                let cans = Cans::priced((0, quarts), Number::ZERO, quart)?;
                Ok(Cans { why: Why::OnlyOneHasAPrice, ..cans })
            }
            // The cost is linear in each can, so the cheapest choice is one of these three.
            (Some(gallon), Some(quart)) => {
                let mut best = Cans::priced(all_gallons, gallon, quart)?;
                for choice in [(full, rest), (0, quarts)] {
                    let cans = Cans::priced(choice, gallon, quart)?;
                    if cans.cost < best.cost {
                        best = cans;
                    }
                }
                Ok(best)
            }
        }
    }

    fn priced(
        (gallons, quarts): (u64, u64),
        gallon: Number,
        quart: Number,
    ) -> Result<Cans, OutOfRange> {
        let gallons_cost = (Number::ratio(gallons.into(), 1)? * gallon)?;
        let quarts_cost = (Number::ratio(quarts.into(), 1)? * quart)?;
        let cost = Some((gallons_cost + quarts_cost)?);
        Ok(Cans { gallons, quarts, cost, why: Why::Cheapest })
    }

    /// `1 gallon and 2 quarts`.
    #[must_use]
    pub fn in_words(&self) -> String {
        let can = |n: u64, name: &str| match n {
            1 => format!("1 {name}"),
            _ => format!("{n} {name}s"),
        };
        match (self.gallons, self.quarts) {
            (0, quarts) => can(quarts, "quart"),
            (gallons, 0) => can(gallons, "gallon"),
            (gallons, quarts) => format!("{} and {}", can(gallons, "gallon"), can(quarts, "quart")),
        }
    }
}

fn whole(number: i128) -> Result<u64, OutOfRange> {
    u64::try_from(number).map_err(|_| OutOfRange)
}
