//! Each kind of item as a form of texts, and back.
//!
//! The forms are asked like a calculator's, so the keypad, the echoes and the problems are the
//! same everywhere in the app.

use reckoner_core::calculators::{Calculator, Stage};
use reckoner_core::job::{
    Grain, Hand, Item, MOST_NAME, MOST_NOTE, Measure, MeasureKind, Part, RackBoard, Round, Saw,
    Screw, Sketch, Written, YardBoard,
};
use reckoner_core::sheet::{Answer, Ask, Choice, Entries, Field, Kind, Least, Side, Start, When};

/// Which form an item has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// A measure.
    Measure,
    /// A part.
    Part,
    /// A board or scrap on hand.
    RackBoard,
    /// A length the yard sells.
    YardBoard,
    /// A round thing.
    Round,
    /// A saw.
    Saw,
    /// A screw size.
    Screw,
    /// The sketch.
    Sketch,
}

impl Form {
    /// Every form that the user can add one of, with its name in an address.
    pub const ALL: [(Form, &'static str); 8] = [
        (Form::Measure, "measure"),
        (Form::Part, "part"),
        (Form::RackBoard, "board"),
        (Form::YardBoard, "yard"),
        (Form::Round, "round"),
        (Form::Saw, "saw"),
        (Form::Screw, "screw"),
        (Form::Sketch, "sketch"),
    ];

    /// The form with this name in an address.
    #[must_use]
    pub fn named(name: &str) -> Option<Form> {
        Form::ALL.into_iter().find(|(_, known)| *known == name).map(|(form, _)| form)
    }

    /// The form of an item; kept reckonings and groups have none.
    #[must_use]
    pub fn of(item: &Item) -> Option<Form> {
        Some(match item {
            Item::Measure(_) => Form::Measure,
            Item::Part(_) => Form::Part,
            Item::RackBoard(_) => Form::RackBoard,
            Item::YardBoard(_) => Form::YardBoard,
            Item::Round(_) => Form::Round,
            Item::Saw(_) => Form::Saw,
            Item::Screw(_) => Form::Screw,
            Item::Sketch(_) => Form::Sketch,
            Item::Kept(_) | Item::Match(_) => return None,
        })
    }

    /// What the form asks.
    #[must_use]
    pub fn asks(self) -> &'static Calculator {
        match self {
            Form::Measure => &MEASURE,
            Form::Part => &PART,
            Form::RackBoard => &RACK_BOARD,
            Form::YardBoard => &YARD_BOARD,
            Form::Round => &ROUND,
            Form::Saw => &SAW,
            Form::Screw => &SCREW,
            Form::Sketch => &SKETCH,
        }
    }
}

const fn field(id: &'static str, label: &'static str, hint: &'static str, kind: Kind) -> Field {
    let start = match kind {
        Kind::YesNo => Start::Text("no"),
        Kind::Count { .. } => Start::Text("1"),
        _ => Start::Text(""),
    };
    Field { id, label, hint, kind, start, when: When::Always }
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
            Kind::Length(_) => drop(ask.length(field.id)),
            Kind::OptionalLength(_) => drop(ask.optional_length(field.id)),
            Kind::Count { .. } => drop(ask.count(field.id)),
            Kind::OptionalMoney => drop(ask.optional_money(field.id)),
            Kind::Spans => drop(ask.spans(field.id)),
            Kind::Words(_) => drop(ask.words(field.id)),
            _ => {}
        }
    }
    None
}

static MEASURE: Calculator = form(
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
                    Choice { id: "length", label: "A length" },
                    Choice { id: "number", label: "A number" },
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
        field("as_cut", "As cut", "what the tape says on the real part", Kind::MAYBE_LENGTH),
        field("is_cut", "Cut already", "a change to it is then a part to recut", Kind::YesNo),
        field(
            "wait",
            "Measure it first",
            "parts that need it wait for the size as cut",
            Kind::YesNo,
        ),
        field("note", "Note", "", Kind::Words(MOST_NOTE)),
    ],
);

static PART: Calculator = form(
    "Part",
    &[
        field("name", "Name", "", NAME),
        field("quantity", "How many", "", Kind::Count { least: 1, most: 1_000 }),
        field("thickness", "Thickness", "", Kind::ABOVE_ZERO),
        field("width", "Width", "", Kind::ABOVE_ZERO),
        field("length", "Length", "along the grain", Kind::ABOVE_ZERO),
        field("stock", "Cut from", "as on the rack: 2x6; empty for any", NAME),
        field("grain_free", "Grain either way", "", Kind::YesNo),
        field("pairs", "Left and right", "half of them mirrored", Kind::YesNo),
        field("may_rip", "May be ripped", "from a wider board", Kind::YesNo),
        field("show_face", "Show face", "", NAME),
        field("note", "Note", "", Kind::Words(MOST_NOTE)),
    ],
);

static RACK_BOARD: Calculator = form(
    "Board on hand",
    &[
        field("name", "Name", "scrap by the door", NAME),
        field("section", "Section", "as parts ask for it: 2x6", NAME),
        field("quantity", "How many", "", Kind::Count { least: 1, most: 1_000 }),
        field("thickness", "Thickness", "as measured", Kind::ABOVE_ZERO),
        field("width", "Width", "at its narrowest", Kind::ABOVE_ZERO),
        field("length", "Length", "as measured", Kind::ABOVE_ZERO),
        field("wet", "Still wet", "", Kind::YesNo),
        field("sawn_ends", "Ends are sawn", "nothing to trim off them", Kind::YesNo),
        field("knots", "Keep out of", "from the marked end: 10 to 12 1/2", Kind::Spans),
    ],
);

static YARD_BOARD: Calculator = form(
    "Length at the yard",
    &[
        field("section", "Section", "as parts ask for it: 2x6", NAME),
        field("thickness", "Thickness", "dressed", Kind::ABOVE_ZERO),
        field("width", "Width", "dressed", Kind::ABOVE_ZERO),
        field("length", "Length", "", Kind::ABOVE_ZERO),
        field("price", "Price", "of one", Kind::OptionalMoney),
    ],
);

static ROUND: Calculator = form(
    "Round thing",
    &[
        field("name", "Name", "paint can", NAME),
        field("diameter", "Diameter", "across the rim", Kind::ABOVE_ZERO),
    ],
);

static SAW: Calculator = form(
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
                Kind::Choice(&[
                    Choice { id: "left", label: "Left" },
                    Choice { id: "right", label: "Right" },
                ]),
            )
        },
    ],
);

static SCREW: Calculator = form(
    "Screws on hand",
    &[
        Field {
            start: Start::Text("8"),
            ..field("gauge", "Gauge", "number", Kind::Count { least: 0, most: 24 })
        },
        field("length", "Length", "", Kind::ABOVE_ZERO),
        field("quantity", "How many", "", Kind::Count { least: 0, most: 100_000 }),
    ],
);

static SKETCH: Calculator = form(
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

fn yes_no(yes: bool) -> &'static str {
    if yes { "yes" } else { "no" }
}

/// The texts of an item's form.
#[must_use]
pub fn entries_of(item: &Item) -> Entries {
    let texts: Vec<(&str, String)> = match item.clone() {
        Item::Measure(m) => {
            let formula = match m.written {
                Written::Formula(text) => text,
                Written::Linked(_) => String::new(),
            };
            let is_number = m.kind == MeasureKind::Number;
            vec![
                ("name", m.name),
                ("kind", if is_number { "number" } else { "length" }.to_owned()),
                (if is_number { "number" } else { "formula" }, formula),
                ("as_cut", m.as_cut.unwrap_or_default()),
                ("is_cut", yes_no(m.is_cut).to_owned()),
                ("wait", yes_no(m.wait).to_owned()),
                ("note", m.note),
            ]
        }
        Item::Part(p) => vec![
            ("name", p.name),
            ("quantity", p.quantity),
            ("thickness", p.thickness),
            ("width", p.width),
            ("length", p.length),
            ("stock", p.stock),
            ("grain_free", yes_no(p.grain == Grain::Free).to_owned()),
            ("pairs", yes_no(p.hand == Hand::Pairs).to_owned()),
            ("may_rip", yes_no(p.may_rip).to_owned()),
            ("show_face", p.show_face),
            ("note", p.note),
        ],
        Item::RackBoard(b) => vec![
            ("name", b.name),
            ("section", b.section),
            ("quantity", b.quantity.to_string()),
            ("thickness", b.thickness),
            ("width", b.width),
            ("length", b.length),
            ("wet", yes_no(b.wet).to_owned()),
            ("sawn_ends", yes_no(b.sawn_ends).to_owned()),
            ("knots", b.knots),
        ],
        Item::YardBoard(b) => vec![
            ("section", b.section),
            ("thickness", b.thickness),
            ("width", b.width),
            ("length", b.length),
            ("price", price_text(b.price)),
        ],
        Item::Round(r) => vec![("name", r.name), ("diameter", r.diameter)],
        Item::Saw(s) => vec![
            ("name", s.name),
            ("kerf", s.kerf),
            ("reach", s.reach),
            ("fence", if s.fence == Side::Left { "left" } else { "right" }.to_owned()),
        ],
        Item::Screw(s) => {
            vec![
                ("gauge", s.gauge.to_string()),
                ("length", s.length),
                ("quantity", s.quantity.to_string()),
            ]
        }
        Item::Sketch(s) => vec![
            ("length", s.length),
            ("depth", s.depth),
            ("height", s.height),
            ("leg", s.leg),
            ("rail", s.rail),
            ("shelf", s.shelf),
            ("top", s.top),
            ("overhang", s.overhang),
        ],
        Item::Kept(_) | Item::Match(_) => Vec::new(),
    };
    Entries::from_pairs(texts)
}

/// Hundredths of the user's money as it is written.
fn price_text(price: u64) -> String {
    let digits = format!("{price:03}");
    let (whole, part) = digits.split_at(digits.len().saturating_sub(2));
    format!("{whole}.{part}")
}

/// The item that a form comes to. `old` is what it was, or stands for what a fresh one starts
/// from; `rank` is the place of a fresh one in its list.
///
/// Texts go in as they are typed; what they come to is worked out from the job each time.
#[must_use]
pub fn item_of(form: Form, ask: &mut Ask, old: Option<&Item>, rank: i64) -> Item {
    let text = |ask: &Ask, id: &str| ask.text(id).trim().to_owned();
    match form {
        Form::Measure => {
            let before = match old {
                Some(Item::Measure(before)) => Some(before.clone()),
                _ => None,
            };
            let is_number = ask.choice("kind") == "number";
            let formula = text(ask, if is_number { "number" } else { "formula" });
            // A linked result stays until a formula is written over it.
            let written = match before.as_ref().map(|before| &before.written) {
                Some(Written::Linked(linked)) if formula.is_empty() => {
                    Written::Linked(linked.clone())
                }
                _ => Written::Formula(formula),
            };
            Item::Measure(Measure {
                rank: before.map_or(rank, |before| before.rank),
                name: text(ask, "name"),
                kind: if is_number { MeasureKind::Number } else { MeasureKind::Length },
                written,
                as_cut: Some(text(ask, "as_cut")).filter(|text| !text.is_empty()),
                is_cut: ask.yes("is_cut"),
                wait: ask.yes("wait"),
                note: text(ask, "note"),
            })
        }
        Form::Part => {
            let before = match old {
                Some(Item::Part(before)) => Some(before.clone()),
                _ => None,
            };
            Item::Part(Part {
                rank: before.as_ref().map_or(rank, |before| before.rank),
                name: text(ask, "name"),
                quantity: text(ask, "quantity"),
                thickness: text(ask, "thickness"),
                width: text(ask, "width"),
                length: text(ask, "length"),
                stock: text(ask, "stock"),
                grain: if ask.yes("grain_free") { Grain::Free } else { Grain::Locked },
                show_face: text(ask, "show_face"),
                hand: if ask.yes("pairs") { Hand::Pairs } else { Hand::Alike },
                may_rip: ask.yes("may_rip"),
                note: text(ask, "note"),
                made: before.as_ref().and_then(|before| before.made.clone()),
                pieces: before.map_or_else(Vec::new, |before| before.pieces),
            })
        }
        Form::RackBoard => Item::RackBoard(RackBoard {
            name: text(ask, "name"),
            section: text(ask, "section"),
            thickness: text(ask, "thickness"),
            width: text(ask, "width"),
            length: text(ask, "length"),
            quantity: ask.count("quantity").unwrap_or(1),
            wet: ask.yes("wet"),
            sawn_ends: ask.yes("sawn_ends"),
            knots: text(ask, "knots"),
        }),
        Form::YardBoard => {
            let quantity = match old {
                Some(Item::YardBoard(before)) => before.quantity,
                _ => None,
            };
            Item::YardBoard(YardBoard {
                section: text(ask, "section"),
                thickness: text(ask, "thickness"),
                width: text(ask, "width"),
                length: text(ask, "length"),
                price: ask.optional_cents("price").flatten().unwrap_or(0),
                quantity,
            })
        }
        Form::Round => {
            Item::Round(Round { name: text(ask, "name"), diameter: text(ask, "diameter") })
        }
        Form::Saw => Item::Saw(Saw {
            name: text(ask, "name"),
            kerf: text(ask, "kerf"),
            reach: text(ask, "reach"),
            fence: if ask.choice("fence") == "left" { Side::Left } else { Side::Right },
        }),
        Form::Screw => Item::Screw(Screw {
            gauge: ask.count("gauge").unwrap_or(8),
            length: text(ask, "length"),
            quantity: ask.count("quantity").unwrap_or(1),
        }),
        Form::Sketch => Item::Sketch(Sketch {
            length: text(ask, "length"),
            depth: text(ask, "depth"),
            height: text(ask, "height"),
            leg: text(ask, "leg"),
            rail: text(ask, "rail"),
            shelf: text(ask, "shelf"),
            top: text(ask, "top"),
            overhang: text(ask, "overhang"),
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use reckoner_core::job::demo::demo;
    use reckoner_core::measure::text::NoNames;
    use reckoner_core::sheet::Bench;

    /// Every item of the demo goes through its form and comes back as it was.
    #[test]
    fn items_go_through_their_forms_unchanged() {
        let job = demo();
        let bench = Bench::default();
        let mut seen = 0;
        for (_, item) in job.items() {
            let Some(form) = Form::of(item) else { continue };
            let entries = entries_of(item);
            let mut ask = Ask::new(form.asks().fields, &entries, &bench, &NoNames);
            assert_eq!(item_of(form, &mut ask, Some(item), 0), *item);
            seen += 1;
        }
        assert!(seen > 40, "{seen}");
    }

    #[test]
    fn a_linked_size_stays_linked_until_a_formula_is_written() {
        use reckoner_core::job::{ItemId, Linked};
        let linked =
            Written::Linked(Linked { kept: ItemId(4), result: "read".to_owned(), index: 0 });
        let old = Item::Measure(Measure {
            rank: 2,
            name: "half".to_owned(),
            kind: MeasureKind::Length,
            written: linked.clone(),
            as_cut: None,
            is_cut: false,
            wait: false,
            note: String::new(),
        });
        let bench = Bench::default();
        let mut entries = entries_of(&old);
        for (formula, expected) in [("", linked), ("22", Written::Formula("22".to_owned()))] {
            entries.set("formula", formula);
            let mut ask = Ask::new(MEASURE.fields, &entries, &bench, &NoNames);
            let Item::Measure(measure) = item_of(Form::Measure, &mut ask, Some(&old), 9) else {
                panic!()
            };
            assert_eq!((measure.written, measure.rank), (expected, 2));
        }
    }

    #[test]
    fn prices_are_written_with_two_places() {
        assert_eq!([0, 5, 95, 1090].map(price_text), ["0.00", "0.05", "0.95", "10.90"]);
    }
}
