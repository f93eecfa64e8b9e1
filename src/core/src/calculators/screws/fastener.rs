//! The fastener that is asked about, and how it is bought.

use crate::measure::Length;
use crate::sheet::{Ask, Field, Goods};
use crate::tables::fasteners::{Fastener, fastener};

/// The fastener chosen in a field.
pub(super) fn chosen(ask: &Ask, field: &Field) -> Option<Fastener> {
    fastener(ask.choice(field).id)
}

/// So many screws of one size to buy, and so many spares; `None` where they are not counted.
pub(super) fn goods(screw: Fastener, length: Length, counted: Option<(u64, u64)>) -> Goods {
    let (count, spares) = counted.unzip();
    Goods {
        name: format!("{}s", screw.name),
        across: None,
        length: Some(length),
        count,
        spares: spares.unwrap_or(0),
        each: None,
    }
}
