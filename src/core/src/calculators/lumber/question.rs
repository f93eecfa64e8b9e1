//! How each question about lumber is read.

use super::fields::{
    BOARD_FOOT, COUNT, COVER_WIDTH, FOOT, GAP, GREEN, LENGTH, MEASURED_THICKNESS, MEASURED_WIDTH,
    MOISTURE, NOMINAL_THICKNESS, NOMINAL_WIDTH, PER, PRICE, SEASONING, SECTION, WASTE, WOOD,
};
use super::weight::BasicGravity;
use super::{amount, cover, size, weight};
use crate::measure::{Length, Number};
use crate::sheet::Ask;
use crate::tables::gravity;
use crate::tables::lumber::{self, Seasoning};
use crate::tables::species::{self, Trust};

/// Nominal thickness and width.
pub(super) fn nominal(ask: &mut Ask) -> Option<(Length, Length)> {
    match lumber::section(ask.choice(&SECTION).id) {
        Some(section) => Some((section.thickness, section.width)),
        None => {
            let (thickness, width) = (ask.length(&NOMINAL_THICKNESS), ask.length(&NOMINAL_WIDTH));
            thickness.zip(width)
        }
    }
}

/// The size question, which the weight and the cover start from.
pub(super) fn size(ask: &mut Ask) -> Option<size::Input> {
    let nominal = nominal(ask);
    let seasoning = match ask.choice(&SEASONING) {
        GREEN => Seasoning::Green,
        _ => Seasoning::Dry,
    };
    let thickness = ask.optional_length(&MEASURED_THICKNESS);
    let width = ask.optional_length(&MEASURED_WIDTH);
    let (nominal_thickness, nominal_width) = nominal?;
    Some(size::Input {
        nominal_thickness,
        nominal_width,
        seasoning,
        measured_thickness: thickness?,
        measured_width: width?,
    })
}

/// The amount question.
pub(super) fn amount(ask: &mut Ask) -> Option<amount::Input> {
    let nominal = nominal(ask);
    let (length, count, price) =
        (ask.length(&LENGTH), ask.count(&COUNT), ask.optional_money(&PRICE));
    let per = match ask.choice(&PER) {
        FOOT => amount::Per::Foot,
        BOARD_FOOT => amount::Per::BoardFoot,
        _ => amount::Per::Piece,
    };
    let (nominal_thickness, nominal_width) = nominal?;
    Some(amount::Input {
        nominal_thickness,
        nominal_width,
        length: length?,
        count: count?,
        price: price?.map(|price| (price, per)),
    })
}

/// A wood by its id, with its document.
#[derive(Clone, Copy)]
pub(super) struct Wood {
    pub(super) name: &'static str,
    pub(super) gravity: BasicGravity,
    pub(super) source: &'static str,
    pub(super) is_unverified: bool,
}

pub(super) fn wood(id: &str) -> Option<Wood> {
    if let Some(group) = gravity::group(id) {
        return Some(Wood {
            name: group.name,
            gravity: BasicGravity::over_ovendry(group.gravity()),
            source: gravity::SOURCE,
            is_unverified: false,
        });
    }
    let species = species::species(id)?;
    let cell = species.strength?.gravity;
    Some(Wood {
        name: species.name,
        gravity: BasicGravity::over_12_percent(f64::from(cell.units) / 100.0),
        source: species::STRENGTH_SOURCE,
        is_unverified: cell.trust == Trust::Unverified,
    })
}

/// The weight question for a board of an actual size.
pub(super) struct Weighing {
    pub(super) size: size::Input,
    pub(super) wood: Wood,
    pub(super) length: Length,
    pub(super) count: u32,
    pub(super) moisture: f64,
}

impl Weighing {
    /// For the size that was found.
    pub(super) fn input(&self, size: &size::Answer) -> weight::Input {
        weight::Input {
            thickness: size.thickness.to_f64(),
            width: size.width.to_f64(),
            length: self.length.to_f64(),
            count: self.count,
            gravity: self.wood.gravity,
            moisture: self.moisture,
        }
    }
}

pub(super) fn weighing(ask: &mut Ask) -> Option<Weighing> {
    let size = size(ask);
    let (length, count, moisture) = (ask.length(&LENGTH), ask.count(&COUNT), ask.real(&MOISTURE));
    let wood = wood(ask.choice(&WOOD).id);
    Some(Weighing { size: size?, wood: wood?, length: length?, count: count?, moisture: moisture? })
}

/// The cover question for a board of an actual size.
pub(super) struct Covering {
    pub(super) size: size::Input,
    pub(super) width: Length,
    pub(super) gap: Length,
    pub(super) waste: Number,
}

impl Covering {
    /// For the size that was found.
    pub(super) fn input(&self, size: &size::Answer) -> cover::Input {
        cover::Input { width: self.width, board: size.width, gap: self.gap, waste: self.waste }
    }
}

pub(super) fn covering(ask: &mut Ask) -> Option<Covering> {
    let size = size(ask);
    let (width, gap, waste) = (ask.length(&COVER_WIDTH), ask.length(&GAP), ask.number(&WASTE));
    Some(Covering { size: size?, width: width?, gap: gap?, waste: waste? })
}
