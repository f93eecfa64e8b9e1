//! What the lumber calculator asks, and how it is read.

use super::weight::BasicGravity;
use super::{amount, cover, size, weight};
use crate::measure::{Length, Number};
use crate::sheet::{Ask, Choice, Field, Kind, Start};
use crate::tables::gravity::{self, GROUPS};
use crate::tables::lumber::{self, SECTIONS, Seasoning};
use crate::tables::species::{self, Trust};

/// The sections of a yard, and any other.
const SECTION_CHOICES: &[Choice] = &{
    let mut choices = [Choice { id: "other", label: "Another size" }; SECTIONS.len() + 1];
    let mut i = 0;
    while i < SECTIONS.len() {
        choices[i] = Choice { id: SECTIONS[i].id, label: SECTIONS[i].label };
        i += 1;
    }
    choices
};

/// Species that are not sold under a group of the gravity table.
const MORE_WOODS: [Choice; 7] = [
    Choice { id: "baldcypress", label: "Baldcypress" },
    Choice { id: "black_locust", label: "Black locust" },
    Choice { id: "white_ash", label: "White ash" },
    Choice { id: "black_walnut", label: "Black walnut" },
    Choice { id: "black_cherry", label: "Black cherry" },
    Choice { id: "teak", label: "Teak" },
    Choice { id: "ipe", label: "Ipe" },
];

/// Lumber groups first, because a stamp names the group.
const WOOD_CHOICES: &[Choice] = &{
    let mut choices = [Choice { id: "", label: "" }; GROUPS.len() + MORE_WOODS.len()];
    let mut i = 0;
    while i < GROUPS.len() {
        choices[i] = Choice { id: GROUPS[i].id, label: GROUPS[i].name };
        i += 1;
    }
    while i < choices.len() {
        choices[i] = MORE_WOODS[i - GROUPS.len()];
        i += 1;
    }
    choices
};

/// Questions that need the actual size.
const ACTUAL: &[&str] = &["size", "weight", "cover"];

/// Our invented potting bench: its top of 2×6 boards, eight feet long.
pub(super) const FIELDS: &[Field] = &[
    Field::new(
        "ask",
        "What",
        "",
        Kind::Choice(&[
            Choice { id: "size", label: "Real size" },
            Choice { id: "amount", label: "Board feet, price" },
            Choice { id: "weight", label: "Weight" },
            Choice { id: "cover", label: "Boards for a width" },
        ]),
        Start::Question("size"),
    ),
    Field::new(
        "section",
        "Tag says",
        "nominal size",
        Kind::Choice(SECTION_CHOICES),
        Start::Text("2x6"),
    ),
    Field::new(
        "nominal_thickness",
        "Nominal thickness",
        "5/4 is 1 1/4",
        Kind::ABOVE_ZERO,
        Start::Inches("2"),
    )
    .only_for("section", &["other"]),
    Field::new("nominal_width", "Nominal width", "", Kind::ABOVE_ZERO, Start::Inches("6"))
        .only_for("section", &["other"]),
    Field::new(
        "seasoning",
        "Dressed",
        "wet treated boards: as measured",
        Kind::Choice(&[Choice { id: "dry", label: "Dry" }, Choice { id: "green", label: "Green" }]),
        Start::Text("dry"),
    )
    .only_for("ask", ACTUAL),
    Field::new(
        "measured_thickness",
        "Thickness measured",
        "empty: as the table",
        Kind::MAYBE_LENGTH,
        Start::Text(""),
    )
    .only_for("ask", ACTUAL),
    Field::new(
        "measured_width",
        "Width measured",
        "empty: as the table",
        Kind::MAYBE_LENGTH,
        Start::Text(""),
    )
    .only_for("ask", ACTUAL),
    Field::new("length", "Length", "one board", Kind::ABOVE_ZERO, Start::Inches("96"))
        .only_for("ask", &["amount", "weight"]),
    Field::new("count", "Boards", "", Kind::Count { least: 1, most: 100_000 }, Start::Text("6"))
        .only_for("ask", &["amount", "weight"]),
    Field::new("price", "Price", "of what is named below", Kind::OptionalMoney, Start::Text(""))
        .only_for("ask", &["amount"]),
    Field::new(
        "per",
        "Price is for",
        "",
        Kind::Choice(&[
            Choice { id: "piece", label: "A board" },
            Choice { id: "foot", label: "A foot" },
            Choice { id: "board_foot", label: "A board foot" },
        ]),
        Start::Text("piece"),
    )
    .only_for("ask", &["amount"]),
    Field::new(
        "wood",
        "Wood",
        "as stamped",
        Kind::Choice(WOOD_CHOICES),
        Start::Text("southern_pine"),
    )
    .only_for("ask", &["weight"]),
    Field::new(
        "moisture",
        "Moisture",
        "wet treated 35 to 75, kiln dried 19, shop 12",
        Kind::Number { least: 0, most: 300, unit: "%" },
        Start::Text("19"),
    )
    .only_for("ask", &["weight"]),
    Field::new("cover_width", "Width to cover", "", Kind::ABOVE_ZERO, Start::Inches("48"))
        .only_for("ask", &["cover"]),
    Field::new("gap", "Gap", "between two boards", Kind::ZERO_UP, Start::Inches("0"))
        .only_for("ask", &["cover"]),
    Field::new(
        "waste",
        "Waste",
        "15 for good boards, 30 for low grades",
        Kind::Number { least: 0, most: 100, unit: "%" },
        Start::Text("15"),
    )
    .only_for("ask", &["cover"]),
];

/// Nominal thickness and width.
pub(super) fn nominal(ask: &mut Ask) -> Option<(Length, Length)> {
    match lumber::section(ask.choice(ask.field("section")).id) {
        Some(section) => Some((section.thickness, section.width)),
        None => {
            let (thickness, width) = (
                ask.length(ask.field("nominal_thickness")),
                ask.length(ask.field("nominal_width")),
            );
            thickness.zip(width)
        }
    }
}

/// The size question, which the weight and the cover start from.
pub(super) fn size(ask: &mut Ask) -> Option<size::Input> {
    let nominal = nominal(ask);
    let seasoning = match ask.choice(ask.field("seasoning")).id {
        "green" => Seasoning::Green,
        _ => Seasoning::Dry,
    };
    let thickness = ask.optional_length(ask.field("measured_thickness"));
    let width = ask.optional_length(ask.field("measured_width"));
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
    let (length, count, price) = (
        ask.length(ask.field("length")),
        ask.count(ask.field("count")),
        ask.optional_money(ask.field("price")),
    );
    let per = match ask.choice(ask.field("per")).id {
        "foot" => amount::Per::Foot,
        "board_foot" => amount::Per::BoardFoot,
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
    let (length, count, moisture) = (
        ask.length(ask.field("length")),
        ask.count(ask.field("count")),
        ask.real(ask.field("moisture")),
    );
    let wood = wood(ask.choice(ask.field("wood")).id);
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
    let (width, gap, waste) = (
        ask.length(ask.field("cover_width")),
        ask.length(ask.field("gap")),
        ask.number(ask.field("waste")),
    );
    Some(Covering { size: size?, width: width?, gap: gap?, waste: waste? })
}
