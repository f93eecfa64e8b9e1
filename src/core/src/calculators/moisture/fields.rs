//! What the moisture calculator asks, and how it is read.

use super::movement::{Moistures, Wood};
use super::woods::{SPECIES_IDS, WOODS};
use super::{air, board, gap, swing};
use crate::sheet::{Ask, Choice, Field, Kind, Start};
use crate::tables::air::{PLACES, place};
use crate::tables::species::{Grain, species};

const PERCENT: Kind = Kind::Number { least: 0, most: 300, unit: "%" };

/// Questions about wood, not about air.
const ABOUT_WOOD: &[&str] = &["board", "gap", "swing"];

const TODAY_AND_LATER: &[&str] = &["board", "gap"];

/// Given air, and the places.
const AIRS: &[Choice] = &{
    let mut choices = [Choice { id: "air", label: "Warmth and humidity" }; PLACES.len() + 1];
    let mut i = 0;
    while i < PLACES.len() {
        choices[i + 1] = Choice { id: PLACES[i].id, label: PLACES[i].name };
        i += 1;
    }
    choices
};

/// Our invented potting bench: its top of wet treated 2×6 boards.
pub(super) const FIELDS: &[Field] = &[
    Field::new(
        "ask",
        "What",
        "",
        Kind::Choice(&[
            Choice { id: "board", label: "One board" },
            Choice { id: "gap", label: "Gaps of a top" },
            Choice { id: "swing", label: "Over the year" },
            Choice { id: "air", label: "Wood in this air" },
        ]),
        Start::Text("board"),
    ),
    Field::new(
        "width",
        "Width today",
        "as measured; over the year: when driest",
        Kind::ABOVE_ZERO,
        Start::Inches("5 5/8"),
    )
    .only_for("ask", ABOUT_WOOD),
    Field::new(
        "thickness",
        "Thickness today",
        "as measured",
        Kind::ABOVE_ZERO,
        Start::Inches("1 9/16"),
    )
    .only_for("ask", &["board"]),
    Field::new("boards", "Boards", "", Kind::Count { least: 2, most: 500 }, Start::Text("7"))
        .only_for("ask", &["gap"]),
    Field::new(
        "known",
        "Find",
        "",
        Kind::Choice(&[
            Choice { id: "later", label: "Gap later" },
            Choice { id: "today", label: "Gap to leave today" },
        ]),
        Start::Text("later"),
    )
    .only_for("ask", &["gap"]),
    Field::new("gap_now", "Gap today", "0 when laid tight", Kind::ZERO_UP, Start::Inches("0"))
        .only_for("known", &["later"]),
    Field::new("gap_later", "Gap wanted later", "", Kind::ZERO_UP, Start::Inches("1/4"))
        .only_for("known", &["today"]),
    Field::new(
        "now",
        "Moisture today",
        "wet 28, yard-dry 19, shop-dry 12",
        PERCENT,
        Start::Text("28"),
    )
    .only_for("ask", TODAY_AND_LATER),
    Field::new(
        "later",
        "Moisture later",
        "12 under cover, 15 outdoors",
        PERCENT,
        Start::Text("15"),
    )
    .only_for("ask", TODAY_AND_LATER),
    Field::new("driest", "Driest of the year", "", PERCENT, Start::Text("12"))
        .only_for("ask", &["swing"]),
    Field::new("wettest", "Wettest of the year", "", PERCENT, Start::Text("19"))
        .only_for("ask", &["swing"]),
    Field::new("wood", "Wood", "", Kind::Choice(WOODS), Start::Text("softwood"))
        .only_for("ask", ABOUT_WOOD),
    Field::new(
        "grain",
        "Rings",
        "seen on the end",
        Kind::Choice(&[
            Choice { id: "unsure", label: "Unsure" },
            Choice { id: "flat", label: "Along the face (flat-sawn)" },
            Choice { id: "quarter", label: "Across it (quarter-sawn)" },
        ]),
        Start::Text("unsure"),
    )
    .only_for("wood", SPECIES_IDS),
    Field::new("air", "Air", "", Kind::Choice(AIRS), Start::Text("air")).only_for("ask", &["air"]),
    Field::new(
        "degrees",
        "Degrees",
        "",
        Kind::Choice(&[
            Choice { id: "fahrenheit", label: "°F" },
            Choice { id: "celsius", label: "°C" },
        ]),
        Start::Text("fahrenheit"),
    )
    .only_for("air", &["air"]),
    Field::new(
        "fahrenheit",
        "Warmth",
        "",
        Kind::Number { least: 32, most: 212, unit: "°F" },
        Start::Text("60"),
    )
    .only_for("degrees", &["fahrenheit"]),
    Field::new(
        "celsius",
        "Warmth",
        "",
        Kind::Number { least: 0, most: 100, unit: "°C" },
        Start::Text("15"),
    )
    .only_for("degrees", &["celsius"]),
    Field::new(
        "humidity",
        "Humidity",
        "relative, on average",
        Kind::Number { least: 0, most: 95, unit: "%" },
        Start::Text("65"),
    )
    .only_for("air", &["air"]),
];

fn wood(ask: &Ask) -> Option<Wood> {
    match ask.choice(ask.field("wood")).id {
        "softwood" => Some(Wood::OrdinarySoftwood),
        id => {
            let grain = match ask.choice(ask.field("grain")).id {
                "flat" => Some(Grain::FlatSawn),
                "quarter" => Some(Grain::QuarterSawn),
                _ => None,
            };
            species(id).map(|species| Wood::Species(species, grain))
        }
    }
}

fn today_and_later(ask: &mut Ask) -> Option<Moistures> {
    let (now, later) = (ask.number(ask.field("now")), ask.number(ask.field("later")));
    Some(Moistures::now_and_later(now?, later?))
}

pub(super) fn board(ask: &mut Ask) -> Option<board::Input> {
    let (width, thickness) = (ask.length(ask.field("width")), ask.length(ask.field("thickness")));
    let (moistures, wood) = (today_and_later(ask), wood(ask));
    Some(board::Input { thickness: thickness?, width: width?, wood: wood?, moistures: moistures? })
}

pub(super) fn gap(ask: &mut Ask) -> Option<gap::Input> {
    let (width, boards) = (ask.length(ask.field("width")), ask.count(ask.field("boards")));
    let known = match ask.choice(ask.field("known")).id {
        "today" => ask.length(ask.field("gap_later")).map(gap::Known::Later),
        _ => ask.length(ask.field("gap_now")).map(gap::Known::Today),
    };
    let (moistures, wood) = (today_and_later(ask), wood(ask));
    Some(gap::Input {
        width: width?,
        boards: boards?,
        known: known?,
        wood: wood?,
        moistures: moistures?,
    })
}

pub(super) fn swing(ask: &mut Ask) -> Option<swing::Input> {
    let width = ask.length(ask.field("width"));
    let (driest, wettest) = (ask.number(ask.field("driest")), ask.number(ask.field("wettest")));
    let moistures = Moistures::driest_and_wettest(driest?, wettest?);
    Some(swing::Input { width: width?, wood: wood(ask)?, moistures })
}

pub(super) fn air(ask: &mut Ask) -> Option<air::Input> {
    if let Some(place) = place(ask.choice(ask.field("air")).id) {
        return Some(air::Input::Place(place));
    }
    let temperature = match ask.choice(ask.field("degrees")).id {
        "celsius" => ask.real(ask.field("celsius")).map(air::Temperature::Celsius),
        _ => ask.real(ask.field("fahrenheit")).map(air::Temperature::Fahrenheit),
    };
    let humidity = ask.real(ask.field("humidity"));
    Some(air::Input::Air(temperature?, humidity?))
}
