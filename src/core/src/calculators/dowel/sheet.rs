//! What the dowel asks and how its answer is laid out.

use super::working::{fine, working};
use super::{Answer, Apart, Bits, Blind, Hold, Input, drawing, reckon, template};
use crate::calculators::dowel::fields::{
    ACROSS, BETWEEN_LEGS, BETWEEN_THE_PARTS, BIT, BITS, CLEAR, CLEARANCE, CUT, DEPTH, DOWEL,
    FIELDS, FINISHED, FRAME_COLUMN, FROM_FRONT, FROM_LEFT_HAND_COLUMN, FROM_TOP, FROM_TOP_COLUMN,
    FRONT_AT_YOUR_COLUMN, HOLD, HOLES, LEAST_WOOD, LEFT_PART, LEG, LEGS, MEASURED, MILLIMETRES,
    ONE_END, OVERALL, OVERALL_FOUND, PART_HEIGHT, PART_LENGTH, RESULTS, RIGHT_PART, ROOM, SET_BACK,
    SIXTEENTHS, THIRTY_SECONDS, THROUGH, TRIM, UNDER, VISIBLE, WOOD,
};
use crate::calculators::{Calculator, Stage};
use crate::measure::text::exact_text;
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::{self, Act, Ask, Bench, Caution, Goods, Note, Refusal, Table, Value, WayOut};

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

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let hold = hold(ask);
    let apart = match ask.choice(&MEASURED) {
        BETWEEN_THE_PARTS => ask.length(&CLEAR).map(Apart::Clear),
        LEGS => {
            let clear = ask.length(&BETWEEN_LEGS);
            let leg = ask.length(&LEG);
            let set_back = ask.optional_length(&SET_BACK);
            clear.zip(leg).zip(set_back).map(|((clear, leg), set_back)| Apart::Legs {
                clear,
                leg,
                set_back,
            })
        }
        _ => ask.length(&OVERALL).map(Apart::Overall),
    };
    let left = ask.length(&LEFT_PART);
    let right = ask.optional_length(&RIGHT_PART);
    let dowel = ask.length(&DOWEL);
    let across = ask.optional_length(&ACROSS);
    let bits = match ask.choice(&BITS) {
        THIRTY_SECONDS => Bits::ThirtySeconds,
        SIXTEENTHS => Bits::Sixteenths,
        MILLIMETRES => Bits::Millimetres,
        _ => Bits::SixtyFourths,
    };
    let height = ask.length(&PART_HEIGHT);
    let from_top = ask.optional_length(&FROM_TOP);
    let length = ask.length(&PART_LENGTH);
    let from_front = ask.optional_length(&FROM_FRONT);
    let least_wood = ask.optional_length(&LEAST_WOOD);
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
        Err(refused) => ask.refused(refused, too_fine()),
    }
}

fn too_fine() -> Refusal {
    Refusal::at(
        &DOWEL,
        "too-fine",
        say!["These numbers have too many digits to be kept exactly."],
        WayOut::advice(say!["Use sizes from a tape."]),
    )
}

fn hold(ask: &mut Ask) -> Option<Hold> {
    let choice = ask.choice(&HOLD);
    if choice == THROUGH {
        return ask.length(&TRIM).map(|trim| Hold::Through { trim });
    }
    let trim = if choice == ONE_END { ask.length(&TRIM) } else { Some(Length::ZERO) };
    let (depth, room) = (ask.length(&DEPTH), ask.length(&ROOM));
    let blind = Blind { depth: depth?, room: room? };
    if choice == ONE_END {
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
    let headline = CUT.figure(
        if is_blind { "end to end" } else { "end to end, with trim" },
        Value::Length(answer.rough, rounding),
    );
    let words = |words: String| Value::Words(say![words]);
    let mut figures = vec![BIT.figure("", words(exact_text(answer.bit)))];
    if !is_blind {
        figures.push(FINISHED.called("When done").figure("flush, end to end", answer.finished));
    }
    figures.push(VISIBLE.called("Seen").figure("between the pieces", answer.clear));
    figures.push(OVERALL_FOUND.called("Frames").figure("outside to outside", answer.overall));
    figures.push(CLEARANCE.figure("hole less dowel", words(clearance(answer, bench))));
    figures.push(WOOD.called("Least wood").figure("hole to edge", answer.wood));
    if let Some(under) = answer.under {
        figures.push(UNDER.called("Under the hole").figure("to the far face", under));
    }
    sheet::Answer {
        figures,
        tables: vec![holes(answer)],
        notes: notes(input, answer, bench),
        cautions: Caution::of(&[Act::Drill, Act::Saw]),
        drawing: Some(drawing::draw(input, answer, bench)),
        template: Some(template::holes(input, answer)),
        goods: vec![Goods {
            name: "dowel rod".to_owned(),
            across: Some(input.dowel.max(input.across)),
            length: Some(answer.rough),
            count: Some(1),
            spares: 0,
            each: None,
        }],
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
    let row = |frame: &'static str, hand: &'static str, from_left_hand: Length| {
        vec![
            Value::Words(say![frame]),
            Value::Words(say![hand]),
            from_left_hand.into(),
            answer.from_top.into(),
        ]
    };
    HOLES.called("Holes, a mirrored pair: inside faces toward you").table(
        &[FRAME_COLUMN, FRONT_AT_YOUR_COLUMN, FROM_LEFT_HAND_COLUMN, FROM_TOP_COLUMN],
        vec![
            row("Left", "left hand", answer.from_front),
            row("Right", "right hand", answer.from_back),
        ],
    )
}

fn notes(input: &Input, answer: &Answer, bench: &Bench) -> Vec<Note> {
    let mut notes = vec![Note::new(
        "measure_frames_as_built",
        say![
            "Measure the frames as built, and drill both pieces clamped together, or the second through the first."
        ],
    )];
    if answer.clearance.is_zero() {
        notes.push(Note::new("bit_is_tight", say!["The bit is no bigger than the dowel: a tight fit. Try it in scrap; sand the dowel, or take the next bit."]));
    }
    let oval = (input.dowel - input.across).map(Length::abs);
    if let Ok(oval) = oval
        && !oval.is_zero()
    {
        notes.push(Note::new(
            "dowel_is_oval",
            say![format!("The dowel is oval by {}: it is looser one way.", fine(oval, bench))],
        ));
    }
    if let Some(under) = answer.under
        && under < Length::sixty_fourths(16)
    {
        notes.push(Note::new(
            "point_may_come_through",
            say![
                "Only ",
                under,
                " stays under the hole: a long point may come through. Set a stop."
            ],
        ));
    }
    if matches!(input.hold, Hold::Blind(_)) {
        notes.push(Note::new(
            "blind_at_both_ends",
            say!["Blind at both ends: it goes in while the frames are put together."],
        ));
    }
    let longest_rod = Length::sixty_fourths(48 * 64);
    if answer.rough > longest_rod {
        notes.push(Note::new(
            "rod_is_not_listed",
            say![
                "Longer than ",
                longest_rod,
                ", the longest rod that is listed: ask for it before you plan on it."
            ],
        ));
    }
    notes
}
