//! What each form asks.

use reckoner_core::calculators::{Calculator, Stage};
use reckoner_core::job::{MOST_NAME, MOST_NOTE};
use reckoner_core::sheet::{Answer, Ask, Choice, Field, Kind, Least, Start, When};

use super::ids::*;

const fn field(id: &'static str, label: &'static str, hint: &'static str, kind: Kind) -> Field {
    let start = match kind {
        Kind::YesNo => Start::Text("no"),
        Kind::Count { .. } => Start::Text("1"),
        _ => Start::Text(""),
    };
    Field::new(id, label, hint, kind, start)
}

/// A length that the tape says on the real thing.
const fn reading(id: &'static str, label: &'static str, hint: &'static str) -> Field {
    Field::new(id, label, hint, Kind::MAYBE_LENGTH, Start::Reading)
}

/// What a size is.
pub(crate) const A_LENGTH: Choice = Choice::new("length", "A length");
pub(crate) const A_NUMBER: Choice = Choice::new("number", "A number");

const A_NAME: Kind = Kind::Words(MOST_NAME);

/// A form: it reads every field that is asked, so that each echoes and refuses; it has no answer.
const fn form(title: &'static str, fields: &'static [Field]) -> Calculator {
    Calculator {
        slug: "",
        title,
        question: "",
        stage: Stage::Measure,
        fields,
        results: &[],
        work: read_all,
    }
}

fn read_all(ask: &mut Ask) -> Option<Answer> {
    for field in ask.fields() {
        if !ask.is_asked(field) {
            continue;
        }
        match field.kind {
            Kind::Length(_) if field.id == KERF => drop(ask.kerf(field)),
            Kind::Length(_) => drop(ask.length(field)),
            Kind::OptionalLength(_) => drop(ask.optional_length(field)),
            Kind::Count { .. } => drop(ask.count(field)),
            Kind::OptionalMoney => drop(ask.optional_cents(field)),
            Kind::Spans => drop(ask.spans(field)),
            Kind::Words(_) => drop(ask.words(field)),
            _ => {}
        }
    }
    None
}

const A_SIZE: [Field; 8] = [
    field(NAME, "Name", "what you call it: front rail", A_NAME),
    Field {
        start: Start::Text(A_LENGTH.id),
        ..field(KIND, "It is", "", Kind::Choice(&[A_LENGTH, A_NUMBER]))
    },
    Field {
        when: When::Chosen(KIND, &[A_LENGTH.id]),
        ..field(
            FORMULA,
            "Planned",
            "a size, or a formula with other names",
            Kind::Length(Least::Any),
        )
    },
    Field {
        when: When::Chosen(KIND, &[A_NUMBER.id]),
        ..field(
            NUMBER,
            "Planned",
            "a number, or a formula with other names",
            Kind::Count { least: 0, most: 100_000 },
        )
    },
    reading(AS_CUT, "The tape says", "on the real piece"),
    field(IS_CUT, "Cut already", "a change to it is then a piece to cut again", Kind::YesNo),
    field(WAIT, "Measure it first", "pieces that need it wait for what the tape says", Kind::YesNo),
    field(NOTE, "Note", "", Kind::Words(MOST_NOTE)),
];

/// A size that is new: what it is first.
pub(super) static MEASURE: Calculator = form("Size", &A_SIZE);

/// A size that is there: what was planned, and what the tape says, stand before what it is called.
pub(super) static MEASURE_AT_HAND: Calculator = form("Size", &A_SIZE_AT_HAND);

const A_SIZE_AT_HAND: [Field; 8] = {
    let [name, kind, formula, number, as_cut, is_cut, wait, note] = A_SIZE;
    [formula, number, as_cut, is_cut, wait, name, kind, note]
};

pub(super) static PART: Calculator = form(
    "Piece",
    &[
        field(STOCK, "Cut from", "or write it; empty for any", A_NAME),
        field(NAME, "Name", "", A_NAME),
        field(QUANTITY, "How many", "", Kind::Count { least: 1, most: 1_000 }),
        field(LENGTH, "Length", "along the grain", Kind::ABOVE_ZERO),
        field(THICKNESS, "Thickness", "", Kind::ABOVE_ZERO),
        field(WIDTH, "Width", "", Kind::ABOVE_ZERO),
        field(GRAIN_FREE, "Grain either way", "", Kind::YesNo),
        field(PAIRS, "Left and right", "half of them mirrored", Kind::YesNo),
        field(MAY_RIP, "May be ripped", "from a wider board", Kind::YesNo),
        field(MAY_RESAW, "May be resawn", "from a thicker board", Kind::YesNo),
        field(SHOW_FACE, "Show face", "", A_NAME),
        field(NOTE, "Note", "", Kind::Words(MOST_NOTE)),
    ],
);

pub(super) static RACK_BOARD: Calculator = form(
    "Board on my rack",
    &[
        field(NAME, "Name", "scrap by the door", A_NAME),
        field(SECTION, "Section", "as pieces ask for it: 2x6", A_NAME),
        field(QUANTITY, "How many", "", Kind::Count { least: 1, most: 1_000 }),
        field(THICKNESS, "Thickness", "as measured", Kind::ABOVE_ZERO),
        field(WIDTH, "Width", "at its narrowest", Kind::ABOVE_ZERO),
        field(LENGTH, "Length", "as measured", Kind::ABOVE_ZERO),
        field(WET, "Still wet", "", Kind::YesNo),
        field(SAWN_ENDS, "Ends are sawn", "nothing to trim off them", Kind::YesNo),
        field(KNOTS, "Keep clear of", "from the marked end: 10 to 12 1/2", Kind::Spans),
    ],
);

pub(super) static YARD_BOARD: Calculator = form(
    "Length at the yard",
    &[
        field(SECTION, "Section", "or write it, as pieces ask for it", A_NAME),
        field(LENGTH, "Length", "", Kind::ABOVE_ZERO),
        field(PRICE, "Price", "of one", Kind::OptionalMoney),
        field(THICKNESS, "Thickness", "as planed", Kind::ABOVE_ZERO),
        field(WIDTH, "Width", "as planed", Kind::ABOVE_ZERO),
    ],
);

pub(super) static ROUND: Calculator = form(
    "Round thing",
    &[
        field(NAME, "Name", "paint can", A_NAME),
        field(DIAMETER, "Diameter", "across the rim", Kind::ABOVE_ZERO),
    ],
);

pub(super) static SAW: Calculator = form(
    "Saw",
    &[
        field(NAME, "Name", "", A_NAME),
        field(KERF, "Kerf", "width of the cut", Kind::ABOVE_ZERO),
        field(REACH, "Reach", "deepest cut", Kind::ABOVE_ZERO),
        Field {
            start: Start::Fence,
            ..field(
                FENCE,
                "Fence",
                "as you stand at it",
                Kind::Choice(&[Choice::new("left", "Left"), Choice::new("right", "Right")]),
            )
        },
    ],
);

pub(super) static SCREW: Calculator = form(
    "Screws I have",
    &[
        Field {
            start: Start::Text("8"),
            ..field(GAUGE, "Gauge", "number", Kind::Count { least: 0, most: 24 })
        },
        field(LENGTH, "Length", "", Kind::ABOVE_ZERO),
        field(QUANTITY, "How many", "", Kind::Count { least: 0, most: 100_000 }),
    ],
);

pub(super) static SKETCH: Calculator = form(
    "Sketch",
    &[
        field(LENGTH, "Front", "outside of the legs", Kind::MAYBE_LENGTH),
        field(DEPTH, "Depth", "front to back, outside", Kind::MAYBE_LENGTH),
        field(HEIGHT, "Leg height", "from the floor", Kind::MAYBE_LENGTH),
        field(LEG, "Leg", "its side", Kind::MAYBE_LENGTH),
        field(RAIL, "Rail height", "of the upper rail", Kind::MAYBE_LENGTH),
        field(SHELF, "Shelf", "floor to its top; empty for none", Kind::MAYBE_LENGTH),
        field(TOP, "Top", "its thickness; empty for none", Kind::MAYBE_LENGTH),
        field(OVERHANG, "Overhang", "all round", Kind::OptionalLength(Least::Zero)),
    ],
);

/// What is close enough.
pub(super) static CLOSE_ENOUGH: Calculator = form(
    "Close enough",
    &[field(
        SIZE,
        "Close enough",
        "off by less is right; empty for half a mark of the tape",
        Kind::OptionalLength(Least::Zero),
    )],
);

/// One piece of a part.
pub static PIECE: Calculator = form(
    "Piece",
    &[
        reading(AS_CUT, "Length", "the tape says"),
        reading(WIDTH, "Width", "the tape says"),
        reading(THICKNESS, "Thickness", "the tape says"),
        field(DONE, "Cut already", "", Kind::YesNo),
    ],
);

/// What is left of a piece that is spoiled.
pub static SPOILED: Calculator = form(
    "What is left",
    &[field(
        LEFT,
        "Left of it",
        "the length that can still be used, as measured",
        Kind::Length(Least::AboveZero),
    )],
);

/// Measures that must match; which ones is tapped in a list.
pub static MATCH: Calculator = form(
    "Must match",
    &[
        field(NAME, "Name", "the four legs", A_NAME),
        field(DRIFT, "May drift", "empty for not at all", Kind::OptionalLength(Least::Zero)),
    ],
);

#[cfg(test)]
mod tests {
    use reckoner_core::sheet::Start;

    use super::PIECE;
    use crate::job_book::forms::Form;

    #[test]
    fn what_the_tape_says_is_a_reading_and_nothing_else_is() {
        let forms = Form::ALL.iter().map(|(form, _)| form.asks()).chain([&PIECE]);
        let mut readings = 0;
        for field in forms.flat_map(|form| form.fields) {
            let says = |words: &str| words.eq_ignore_ascii_case("the tape says");
            let is_reading = matches!(field.start, Start::Reading);
            assert_eq!(is_reading, says(field.label) || says(field.hint), "{}", field.label);
            readings += u32::from(is_reading);
        }
        // One of a size, three of a piece.
        assert_eq!(readings, 4);
    }
}
