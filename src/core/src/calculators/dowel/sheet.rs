//! What the dowel asks and how its answer is laid out.

use super::working::{fine, working};
use super::{Answer, Apart, Bits, Blind, Hold, Input, drawing, reckon, template};
use crate::calculators::{Calculator, ResultKind, ResultSpec, Stage};
use crate::measure::text::exact_text;
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::{
    self, Ask, Bench, Caution, Choice, Field, Figure, Kind, Least, Note, Start, Table, Value,
};

/// Dowel: its length, its bit and its holes.
pub const CALCULATOR: Calculator = Calculator {
    slug: "dowel",
    title: "Dowel",
    question: "How long a dowel, which bit, and where are the holes?",
    stage: Stage::Frame,
    fields: FIELDS,
    results: RESULTS,
    work,
};

const HOLDS: &[Choice] = &[
    Choice { id: "through", label: "Through both" },
    Choice { id: "blind", label: "Blind in both" },
    Choice { id: "one_end", label: "Through left, blind right" },
];
const MEASURED: &[Choice] = &[
    Choice { id: "overall", label: "Outside to outside" },
    Choice { id: "clear", label: "Between the parts" },
    Choice { id: "legs", label: "Between the legs" },
];
const BITS: &[Choice] = &[
    Choice { id: "sixty_fourths", label: "By 1/64 in" },
    Choice { id: "thirty_seconds", label: "By 1/32 in" },
    Choice { id: "sixteenths", label: "By 1/16 in" },
    Choice { id: "millimetres", label: "By 1 mm" },
];

// The starts are of our invented potting bench: a rail for hand tools through both end frames.
const FIELDS: &[Field] = &[
    Field::new("hold", "Holes", "", Kind::Choice(HOLDS), Start::Text("through")),
    Field::new("measured", "Frames measured", "", Kind::Choice(MEASURED), Start::Text("overall")),
    Field::new(
        "overall",
        "Outside to outside",
        "of the drilled parts",
        Kind::ABOVE_ZERO,
        Start::Inches("43 1/2"),
    )
    .only_for("measured", &["overall"]),
    Field::new(
        "clear",
        "Between the parts",
        "inside to inside",
        Kind::ABOVE_ZERO,
        Start::Inches("40 1/2"),
    )
    .only_for("measured", &["clear"]),
    Field::new(
        "between_legs",
        "Between the legs",
        "inside to inside",
        Kind::ABOVE_ZERO,
        Start::Inches("38 3/4"),
    )
    .only_for("measured", &["legs"]),
    Field::new("leg", "Leg", "thickness along the dowel", Kind::ABOVE_ZERO, Start::Inches("3 1/4"))
        .only_for("measured", &["legs"]),
    Field::new(
        "set_back",
        "Set-back",
        "outside of leg to outside of part; empty: the middle",
        Kind::OptionalLength(Least::Zero),
        Start::Text(""),
    )
    .only_for("measured", &["legs"]),
    Field::new(
        "left_part",
        "Part",
        "thickness along the dowel",
        Kind::ABOVE_ZERO,
        Start::Inches("1 1/2"),
    ),
    Field::new(
        "right_part",
        "Right part",
        "empty: as the left",
        Kind::MAYBE_LENGTH,
        Start::Text(""),
    ),
    Field::new("trim", "Trim", "at each through end", Kind::ZERO_UP, Start::Inches("1/4"))
        .only_for("hold", &["through", "one_end"]),
    Field::new("depth", "Hole depth", "blind hole", Kind::ABOVE_ZERO, Start::Inches("1"))
        .only_for("hold", &["blind", "one_end"]),
    Field::new(
        "room",
        "Free at the bottom",
        "of a blind hole",
        Kind::ZERO_UP,
        Start::Inches("1/16"),
    )
    .only_for("hold", &["blind", "one_end"]),
    Field::new(
        "dowel",
        "Dowel",
        "measured, at its thickest",
        Kind::ABOVE_ZERO,
        Start::Inches("0.985"),
    ),
    Field::new(
        "across",
        "Dowel across",
        "at right angles; empty: round",
        Kind::MAYBE_LENGTH,
        Start::Text(""),
    ),
    Field::new("bits", "Bits", "", Kind::Choice(BITS), Start::Text("sixty_fourths")),
    Field::new(
        "part_height",
        "Part height",
        "the face that is drilled",
        Kind::ABOVE_ZERO,
        Start::Inches("3 1/4"),
    ),
    Field::new(
        "from_top",
        "Hole from top",
        "to its center; empty: the middle",
        Kind::MAYBE_LENGTH,
        Start::Text(""),
    ),
    Field::new(
        "part_length",
        "Part length",
        "front to back",
        Kind::ABOVE_ZERO,
        Start::Inches("17"),
    ),
    Field::new(
        "from_front",
        "Hole from front",
        "to its center; empty: the middle",
        Kind::MAYBE_LENGTH,
        Start::Inches("5"),
    ),
    Field::new(
        "least_wood",
        "Least wood",
        "round the hole; empty: half the hole",
        Kind::OptionalLength(Least::Zero),
        Start::Text(""),
    ),
];

const RESULTS: &[ResultSpec] = &[
    ResultSpec { id: "cut", label: "Cut the dowel", kind: ResultKind::Length },
    ResultSpec { id: "finished", label: "Dowel when done", kind: ResultKind::Length },
    ResultSpec { id: "visible", label: "Dowel seen", kind: ResultKind::Length },
    ResultSpec { id: "overall", label: "Outside to outside", kind: ResultKind::Length },
    ResultSpec { id: "bit", label: "Bit", kind: ResultKind::Words },
    ResultSpec { id: "clearance", label: "Clearance", kind: ResultKind::Words },
    ResultSpec { id: "wood", label: "Least wood round the hole", kind: ResultKind::Length },
    ResultSpec { id: "under", label: "Wood under the hole", kind: ResultKind::Length },
    ResultSpec { id: "holes", label: "Holes", kind: ResultKind::Table },
];

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let hold = hold(ask);
    let apart = match ask.choice(ask.field("measured")).id {
        "clear" => ask.length(ask.field("clear")).map(Apart::Clear),
        "legs" => {
            let clear = ask.length(ask.field("between_legs"));
            let leg = ask.length(ask.field("leg"));
            let set_back = ask.optional_length(ask.field("set_back"));
            clear.zip(leg).zip(set_back).map(|((clear, leg), set_back)| Apart::Legs {
                clear,
                leg,
                set_back,
            })
        }
        _ => ask.length(ask.field("overall")).map(Apart::Overall),
    };
    let left = ask.length(ask.field("left_part"));
    let right = ask.optional_length(ask.field("right_part"));
    let dowel = ask.length(ask.field("dowel"));
    let across = ask.optional_length(ask.field("across"));
    let bits = Bits::of(ask.choice(ask.field("bits")).id);
    let height = ask.length(ask.field("part_height"));
    let from_top = ask.optional_length(ask.field("from_top"));
    let length = ask.length(ask.field("part_length"));
    let from_front = ask.optional_length(ask.field("from_front"));
    let least_wood = ask.optional_length(ask.field("least_wood"));
    let (left, dowel) = (left?, dowel?);
    let input = Input {
        hold: hold?,
        left,
        right: right?.unwrap_or(left),
        apart: apart?,
        dowel,
        across: across?.unwrap_or(dowel),
        bits,
        height: height?,
        from_top: from_top?,
        length: length?,
        from_front: from_front?,
        least_wood: least_wood?,
    };
    let bench = ask.bench();
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, bench)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn hold(ask: &mut Ask) -> Option<Hold> {
    let choice = ask.choice(ask.field("hold")).id;
    if choice == "through" {
        return ask.length(ask.field("trim")).map(|trim| Hold::Through { trim });
    }
    let trim = if choice == "one_end" { ask.length(ask.field("trim")) } else { Some(Length::ZERO) };
    let (depth, room) = (ask.length(ask.field("depth")), ask.length(ask.field("room")));
    let blind = Blind { depth: depth?, room: room? };
    if choice == "one_end" {
        Some(Hold::OneEnd { trim: trim?, blind })
    } else {
        Some(Hold::Blind(blind))
    }
}

fn lay_out(input: &Input, answer: &Answer, bench: &Bench) -> sheet::Answer {
    let is_blind = matches!(input.hold, Hold::Blind(_));
    // A dowel that is trimmed must not come out short. One that is blind at both ends must not
    // come out long, or the frames do not close on it; what it lacks is room at the bottom.
    let rounding = if is_blind { Rounding::Down } else { Rounding::Up };
    let headline = Figure {
        id: "cut",
        label: "Cut the dowel",
        from: if is_blind { "end to end" } else { "end to end, with trim" },
        value: Value::Length(answer.rough, rounding),
    };
    let words = |id, label, from, words: String| Figure {
        id,
        label,
        from,
        value: Value::Words(say![words]),
    };
    let mut figures = vec![words("bit", "Bit", "", exact_text(answer.bit))];
    if !is_blind {
        figures.push(Figure::length("finished", "When done", "flush, end to end", answer.finished));
    }
    figures.push(Figure::length("visible", "Seen", "between the parts", answer.clear));
    figures.push(Figure::length("overall", "Frames", "outside to outside", answer.overall));
    figures.push(words("clearance", "Clearance", "hole less dowel", clearance(answer, bench)));
    figures.push(Figure::length("wood", "Least wood", "hole to edge", answer.wood));
    if let Some(under) = answer.under {
        figures.push(Figure::length("under", "Under the hole", "to the far face", under));
    }
    sheet::Answer {
        figures,
        tables: vec![holes(answer)],
        notes: notes(input, answer, bench),
        cautions: vec![Caution::Drilling, Caution::DustAndNoise],
        drawing: Some(drawing::draw(input, answer, bench)),
        template: Some(template::holes(input, answer)),
        ..sheet::Answer::new(headline, working(input, answer, bench))
    }
}

fn clearance(answer: &Answer, bench: &Bench) -> String {
    let thick = fine(answer.clearance, bench);
    if answer.clearance == answer.clearance_across {
        thick
    } else {
        format!("{thick}, across {}", fine(answer.clearance_across, bench))
    }
}

/// The holes as seen on the inside faces: in the left frame the front end is at the left hand, in
/// the right frame at the right hand.
fn holes(answer: &Answer) -> Table {
    let length = |length: Length| Value::Length(length, Rounding::Nearest);
    let row = |frame: &'static str, hand: &'static str, from_left_hand: Length| {
        vec![
            Value::Words(say![frame]),
            Value::Words(say![hand]),
            length(from_left_hand),
            length(answer.from_top),
        ]
    };
    Table {
        id: "holes",
        title: "Holes, a mirrored pair: inside faces toward you",
        columns: &["Frame", "Front at your", "From left hand", "From top"],
        rows: vec![
            row("Left", "left hand", answer.from_front),
            row("Right", "right hand", answer.from_back),
        ],
    }
}

fn notes(input: &Input, answer: &Answer, bench: &Bench) -> Vec<Note> {
    let mut notes = vec![say![
        "Measure the frames as built, and drill both parts clamped together, or the second through the first."
    ]];
    if answer.clearance.is_zero() {
        notes.push(say!["The bit is no bigger than the dowel: a tight fit. Try it in scrap; sand the dowel, or take the next bit."]);
    }
    let oval = (input.dowel - input.across).map(Length::abs);
    if let Ok(oval) = oval
        && !oval.is_zero()
    {
        notes.push(say![format!(
            "The dowel is oval by {}: it is looser one way.",
            fine(oval, bench)
        )]);
    }
    if let Some(under) = answer.under
        && under < Length::sixty_fourths(16)
    {
        notes.push(say![
            "Only ",
            under,
            " stays under the hole: a long point may come through. Set a stop."
        ]);
    }
    if matches!(input.hold, Hold::Blind(_)) {
        notes.push(say!["Blind at both ends: it goes in while the frames are put together."]);
    }
    let longest_rod = Length::sixty_fourths(48 * 64);
    if answer.rough > longest_rod {
        notes.push(say![
            "Longer than ",
            longest_rod,
            ", the longest rod that is listed: ask for it before you plan on it."
        ]);
    }
    notes
}
