//! Which cans to buy.

use crate::measure::{Number, OutOfRange, Partner};

/// A size of can that a shop has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// Quarters of a gallon or of a litre that it holds.
    pub quarters: u32,
    /// `gallon`, `5 L`.
    pub name: &'static str,
}

const fn size(quarters: u32, name: &'static str) -> Size {
    Size { quarters, name }
}

const OF_GALLONS: &[Size] = &[size(4, "gallon"), size(1, "quart")];
const OF_LITRES: &[Size] = &[size(20, "5 L"), size(10, "2.5 L"), size(4, "1 L"), size(3, "0.75 L")];

/// What finish is sold by. All sizes are common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SoldBy {
    /// Gallons and quarts.
    Gallon,
    /// Litres.
    Litre,
}

impl SoldBy {
    /// The cans that a shop has, the largest first.
    #[must_use]
    pub fn sizes(self) -> &'static [Size] {
        match self {
            SoldBy::Gallon => OF_GALLONS,
            SoldBy::Litre => OF_LITRES,
        }
    }

    /// Whole quarters of what finish is sold by, that hold so many gallons. The two numbers are not multiplied as
    /// such: of parts cut to 64ths the litres are finer than a number can be.
    fn quarters(self, gallons: Number) -> Result<u64, OutOfRange> {
        let times = match (self, Partner::of("gal")) {
            (SoldBy::Litre, Some(litres)) => litres.times,
            _ => Number::ONE,
        };
        let above = gallons.numer().checked_mul(times.numer()).and_then(|it| it.checked_mul(4));
        let below = gallons.denom().checked_mul(times.denom());
        let (above, below) = above.zip(below).filter(|(_, below)| *below > 0).ok_or(OutOfRange)?;
        let (whole, rest) = (above.div_euclid(below), above.rem_euclid(below));
        u64::try_from(whole)
            .ok()
            .and_then(|it| it.checked_add(u64::from(rest > 0)))
            .ok_or(OutOfRange)
    }
}

/// A size of can with its price, where that is known.
pub type Priced = (Size, Option<Number>);

/// Cans to buy.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cans {
    /// How many of each size, with the price of one; those of which none is bought are left out.
    pub all: Vec<(Priced, u64)>,
    /// What they cost, where prices are known.
    pub cost: Option<Number>,
    /// Why these.
    pub why: Why,
}

/// Why cans were chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// No prices: the cans that leave least over, and of those the fewest.
    LeastOver,
    /// The only can that has a price.
    OnlyOneHasAPrice,
    /// The cheapest of those with a price, and of those what leaves least over.
    Cheapest,
}

/// How good a choice is: what it costs, quarters in all, and how many cans. Less is better.
type Worth = (Number, u64, u64);

impl Cans {
    /// Cans that hold so many gallons. A can without a price is not bought when another has one.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] beyond the limits.
    pub fn that_hold(
        gallons: Number,
        sold: SoldBy,
        prices: &[Option<Number>],
    ) -> Result<Cans, OutOfRange> {
        let wanted = sold.quarters(gallons)?;
        let prices = prices.iter().copied().chain(core::iter::repeat(None));
        let sizes: Vec<Priced> = sold.sizes().iter().copied().zip(prices).collect();
        let known: Vec<Priced> =
            sizes.iter().copied().filter(|(_, price)| price.is_some()).collect();
        let (choice, why) = match known.len() {
            0 => (sizes, Why::LeastOver),
            1 => (known, Why::OnlyOneHasAPrice),
            _ => (known, Why::Cheapest),
        };
        let counts = best(wanted, &choice)?;
        let cost = match why {
            Why::LeastOver => None,
            _ => Some(worth(&choice, &counts)?.0),
        };
        let all = choice.into_iter().zip(counts).filter(|(_, count)| *count > 0).collect();
        Ok(Cans { all, cost, why })
    }

    /// `1 gallon and 2 quarts`, `1 × 2.5 L and 2 × 0.75 L`.
    #[must_use]
    pub fn in_words(&self) -> String {
        let each = self.all.iter().map(|((size, _), count)| match (size.name, count) {
            (name, _) if name.ends_with('L') => format!("{count} × {name}"),
            (name, 1) => format!("1 {name}"),
            (name, count) => format!("{count} {name}s"),
        });
        let each: Vec<String> = each.collect();
        match each.split_last() {
            Some((last, before)) if !before.is_empty() => {
                format!("{} and {last}", before.join(", "))
            }
            _ => each.concat(),
        }
    }
}

/// How many cans of each size hold so many quarters, at the best worth.
///
/// Among as many cans of other sizes as the one that is cheapest by volume has quarters, some hold together a
/// whole number of those: these take their place for no more money. So fewer of the others are looked at, all
/// of them, and the rest is filled with that one.
fn best(wanted: u64, sizes: &[Priced]) -> Result<Vec<u64>, OutOfRange> {
    let mut base = 0;
    for (at, (size, price)) in sizes.iter().enumerate() {
        // Without prices the largest, so that they are the fewest.
        let (Some(price), Some((known, Some(least)))) = (price, sizes.get(base).copied()) else {
            continue;
        };
        let quarters = |size: Size| Number::whole(size.quarters.into());
        if (*price * quarters(known))? < (least * quarters(*size))? {
            base = at;
        }
    }
    let most = sizes.get(base).map_or(0, |(size, _)| u64::from(size.quarters.saturating_sub(1)));
    let mut best: Option<(Worth, Vec<u64>)> = None;
    let mut counts = vec![0; sizes.len()];
    loop {
        let held = |counts: &[u64]| {
            let each = sizes
                .iter()
                .zip(counts)
                .map(|((size, _), count)| u64::from(size.quarters).saturating_mul(*count));
            each.fold(0_u64, u64::saturating_add)
        };
        if counts.iter().fold(0_u64, |sum, count| sum.saturating_add(*count)) <= most {
            let left = wanted.saturating_sub(held(&counts));
            let mut filled = counts.clone();
            if let (Some(count), Some((size, _))) = (filled.get_mut(base), sizes.get(base)) {
                *count = left.div_ceil(u64::from(size.quarters.max(1)));
            }
            let now = worth(sizes, &filled)?;
            if best.as_ref().is_none_or(|(known, _)| now < *known) {
                best = Some((now, filled));
            }
        }
        // The next counts of the others, like a number of many digits.
        let mut others = counts.iter_mut().enumerate().filter(|(at, _)| *at != base);
        let carried = others.all(|(_, count)| {
            *count = if *count < most { count.saturating_add(1) } else { 0 };
            *count == 0
        });
        if carried {
            return Ok(best.map_or_else(Vec::new, |(_, counts)| counts));
        }
    }
}

fn worth(sizes: &[Priced], counts: &[u64]) -> Result<Worth, OutOfRange> {
    let (mut cost, mut quarters, mut cans) = (Number::ZERO, 0_u64, 0_u64);
    for ((size, price), count) in sizes.iter().zip(counts) {
        let price = price.unwrap_or(Number::ZERO);
        cost = (cost + (price * Number::ratio((*count).into(), 1)?)?)?;
        quarters = quarters.saturating_add(u64::from(size.quarters).saturating_mul(*count));
        cans = cans.saturating_add(*count);
    }
    Ok((cost, quarters, cans))
}
