//! What each form asks.

use reckoner_core::calculators::{Calculator, Stage};
use reckoner_core::job::{MOST_NAME, MOST_NOTE};
use reckoner_core::sheet::{Answer, Ask, Choice, Field, Kind, Least, Start, When};

const fn field(id: &'static str, label: &'static str, hint: &'static str, kind: Kind) -> Field {
    let start = match kind {
        Kind::YesNo => Start::Text("no"),
        Kind::Count { .. } => Start::Text("1"),
        _ => Start::Text(""),
    };
    Field::new(id, label, hint, kind, start)
}

const NAME: Kind = Kind::Words(MOST_NAME);

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

pub(super) static MEASURE: Calculator = form(
    "Size",
    &[
        field("name", "Name", "what you call it: front rail", NAME),
        Field {
            start: Start::Text("length"),
            ..field(
                "kind",
                "It is",
                "",
                Kind::Choice(&[
                    Choice::new("length", "A length"),
                    Choice::new("number", "A number"),
                ]),
            )
        },
        Field {
            when: When::Chosen("kind", &["length"]),
            ..field(
                "formula",
                "Planned",
                "a size, or a formula with other names",
                Kind::Length(Least::Any),
            )
        },
        Field {
            when: When::Chosen("kind", &["number"]),
            ..field(
                "number",
                "Planned",
                "a number, or a formula with other names",
                Kind::Count { least: 0, most: 100_000 },
            )
        },
        field("as_cut", "The tape says", "on the real piece", Kind::MAYBE_LENGTH),
        field("is_cut", "Cut already", "a change to it is then a piece to cut again", Kind::YesNo),
        field(
            "wait",
            "Measure it first",
            "pieces that need it wait for what the tape says",
            Kind::YesNo,
        ),
        field("note", "Note", "", Kind::Words(MOST_NOTE)),
    ],
);

pub(super) static PART: Calculator = form(
    "Piece",
    &[
        field("stock", "Cut from", "or write it; empty for any", NAME),
        field("name", "Name", "", NAME),
        field("quantity", "How many", "", Kind::Count { least: 1, most: 1_000 }),
        field("length", "Length", "along the grain", Kind::ABOVE_ZERO),
        field("thickness", "Thickness", "", Kind::ABOVE_ZERO),
        field("width", "Width", "", Kind::ABOVE_ZERO),
        field("grain_free", "Grain either way", "", Kind::YesNo),
        field("pairs", "Left and right", "half of them mirrored", Kind::YesNo),
        field("may_rip", "May be ripped", "from a wider board", Kind::YesNo),
        field("may_resaw", "May be resawn", "from a thicker board", Kind::YesNo),
        field("show_face", "Show face", "", NAME),
        field("note", "Note", "", Kind::Words(MOST_NOTE)),
    ],
);

pub(super) static RACK_BOARD: Calculator = form(
    "Board on my rack",
    &[
        field("name", "Name", "scrap by the door", NAME),
        field("section", "Section", "as pieces ask for it: 2x6", NAME),
        field("quantity", "How many", "", Kind::Count { least: 1, most: 1_000 }),
        field("thickness", "Thickness", "as measured", Kind::ABOVE_ZERO),
        field("width", "Width", "at its narrowest", Kind::ABOVE_ZERO),
        field("length", "Length", "as measured", Kind::ABOVE_ZERO),
        field("wet", "Still wet", "", Kind::YesNo),
        field("sawn_ends", "Ends are sawn", "nothing to trim off them", Kind::YesNo),
        field("knots", "Keep out of", "from the marked end: 10 to 12 1/2", Kind::Spans),
    ],
);

pub(super) static YARD_BOARD: Calculator = form(
    "Length at the yard",
    &[
        field("section", "Section", "or write it, as pieces ask for it", NAME),
        field("length", "Length", "", Kind::ABOVE_ZERO),
        field("price", "Price", "of one", Kind::OptionalMoney),
        field("thickness", "Thickness", "as planed", Kind::ABOVE_ZERO),
        field("width", "Width", "as planed", Kind::ABOVE_ZERO),
    ],
);

pub(super) static ROUND: Calculator = form(
    "Round thing",
    &[
        field("name", "Name", "paint can", NAME),
        field("diameter", "Diameter", "across the rim", Kind::ABOVE_ZERO),
    ],
);

pub(super) static SAW: Calculator = form(
    "Saw",
    &[
        field("name", "Name", "", NAME),
        field("kerf", "Kerf", "width of the cut", Kind::ABOVE_ZERO),
        field("reach", "Reach", "deepest cut", Kind::ABOVE_ZERO),
        Field {
            start: Start::Fence,
            ..field(
                "fence",
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
            ..field("gauge", "Gauge", "number", Kind::Count { least: 0, most: 24 })
        },
        field("length", "Length", "", Kind::ABOVE_ZERO),
        field("quantity", "How many", "", Kind::Count { least: 0, most: 100_000 }),
    ],
);

pub(super) static SKETCH: Calculator = form(
    "Sketch",
    &[
        field("length", "Front", "outside of the legs", Kind::MAYBE_LENGTH),
        field("depth", "Depth", "front to back, outside", Kind::MAYBE_LENGTH),
        field("height", "Leg height", "from the floor", Kind::MAYBE_LENGTH),
        field("leg", "Leg", "its side", Kind::MAYBE_LENGTH),
        field("rail", "Rail height", "of the upper rail", Kind::MAYBE_LENGTH),
        field("shelf", "Shelf", "floor to its top; empty for none", Kind::MAYBE_LENGTH),
        field("top", "Top", "its thickness; empty for none", Kind::MAYBE_LENGTH),
        field("overhang", "Overhang", "all round", Kind::OptionalLength(Least::Zero)),
    ],
);

/// What is close enough.
pub(super) static CLOSE_ENOUGH: Calculator = form(
    "Close enough",
    &[field(
        "size",
        "Close enough",
        "off by less is right; empty for half a mark of the tape",
        Kind::OptionalLength(Least::Zero),
    )],
);

/// One piece of a part.
pub static PIECE: Calculator = form(
    "Piece",
    &[
        field("as_cut", "Length", "the tape says", Kind::MAYBE_LENGTH),
        field("width", "Width", "the tape says", Kind::MAYBE_LENGTH),
        field("thickness", "Thickness", "the tape says", Kind::MAYBE_LENGTH),
        field("done", "Cut already", "", Kind::YesNo),
    ],
);

/// What is left of a piece that is spoiled.
pub static SPOILED: Calculator = form(
    "What is left",
    &[field(
        "left",
        "Left of it",
        "the length that can still be used, as measured",
        Kind::Length(Least::AboveZero),
    )],
);

/// Measures that must match; which ones is tapped in a list.
pub static MATCH: Calculator = form(
    "Must match",
    &[
        field("name", "Name", "the four legs", NAME),
        field("drift", "May drift", "empty for not at all", Kind::OptionalLength(Least::Zero)),
    ],
);
