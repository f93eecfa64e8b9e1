//! Guide for a hand-held circular saw: fields in, place of the guide out.

use super::super::drawing;
use super::super::fields::{
    BOARD_THERE_COLUMN, FROM_KEPT_EDGE_COLUMN, GUIDE, GUIDE_BOARD, GUIDE_FROM_OTHER_EDGE, GUIDE_ON,
    GUIDE_ON_COLUMN, GUIDE_STRIP, KEPT_EDGE, KEPT_STRIP, KERF, OFFSET, ON_STRIP, PLACEMENTS,
    SHOE_NARROW, SHOE_SIDE, SHOE_SIDE_COLUMN, SHOE_WIDE, WASTE_LEFT, WIDE,
};
use super::super::guide::{Answer, GuideOn, Input, Placement, ShoeSide, reckon};
use super::super::refused::out_of_range;
use super::told::side;
use crate::say;
use crate::sheet::{
    self, Act, Ask, Caution, Note, Row, Sentence, Side, Source, Step, Term, Value, Working,
};

pub(super) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let board_width = ask.length(&GUIDE_BOARD);
    let strip = ask.length(&GUIDE_STRIP);
    let narrow = ask.length(&SHOE_NARROW);
    let wide = ask.length(&SHOE_WIDE);
    let kerf = ask.kerf(&KERF);
    let guide_on = match ask.choice(&GUIDE_ON) {
        ON_STRIP => GuideOn::Strip,
        _ => GuideOn::Waste,
    };
    let shoe_side = match ask.choice(&SHOE_SIDE) {
        WIDE => ShoeSide::Wide,
        _ => ShoeSide::Narrow,
    };
    let input = Input {
        board_width: board_width?,
        strip: strip?,
        kerf: kerf?,
        narrow: narrow?,
        wide: wide?,
        guide_on,
        shoe_side,
        kept_edge: side(ask, &KEPT_EDGE),
    };
    let answer = match reckon(&input) {
        Ok(answer) => answer,
        Err(refused) => return ask.refused(refused, out_of_range()),
    };
    Some(lay_out(&input, &answer, drawing::guide(&input, &answer, ask.bench().tape)))
}

fn lay_out(input: &Input, answer: &Answer, drawing: crate::drawing::Scene) -> sheet::Answer {
    let (kept, other) = match input.kept_edge {
        Side::Left => ("from the left edge", "from the right edge"),
        Side::Right => ("from the right edge", "from the left edge"),
    };
    let guide = answer.chosen.from_kept_edge;
    let mut figures = Vec::new();
    if let Ok(from_other) = input.board_width - guide {
        figures.push(GUIDE_FROM_OTHER_EDGE.called("Guide").figure(other, from_other));
    }
    figures.extend([
        OFFSET.figure("shoe edge to near tooth", answer.offset),
        KEPT_STRIP.figure("edge to near tooth", input.strip),
        WASTE_LEFT.figure("past the kerf", answer.waste),
    ]);
    let strip = Term::of("strip", input.strip);
    let offset = Term::of("offset", answer.offset);
    let place = match input.guide_on {
        GuideOn::Waste => strip + Term::of("kerf", input.kerf) + offset,
        GuideOn::Strip => strip - offset,
    };
    let step = Step::of("guide", place, guide).remarked("from the kept edge", "");
    sheet::Answer {
        goods: Vec::new(),
        headline: GUIDE.called("Guide edge").figure(kept, guide),
        figures,
        tables: vec![PLACEMENTS.called("The four ways to place it").table(
            &[GUIDE_ON_COLUMN, SHOE_SIDE_COLUMN, FROM_KEPT_EDGE_COLUMN, BOARD_THERE_COLUMN],
            answer.all.iter().map(row).collect(),
        )],
        notes: vec![
            Note::new(
                "blade_on_waste_side",
                say![
                    "The blade runs on the waste side of the line. Mark the waste before you clamp."
                ],
            ),
            Note::new(
                "saw_a_test_stick",
                say![
                    "Saw a test stick once: what is left beside the guide is your offset, with no tape at all."
                ],
            ),
            Note::new(
                "other_side_of_shoe",
                say![
                    "To run the other side of the shoe along the guide, saw from the other end of the board."
                ],
            ),
        ],
        cautions: Caution::of(&[Act::SawByHand]),
        drawing: Some(drawing),
        template: None,
        working: Working {
            steps: vec![step],
            sources: vec![Source::Arithmetic, Source::CommonPractice],
        },
    }
}

fn row(placement: &Placement) -> Row {
    vec![
        Value::Words(say![placement.guide_on.choice().id]),
        Value::Words(say![placement.shoe_side.choice().id]),
        placement.from_kept_edge.into(),
        Value::Words(bearing(placement)),
    ]
}

fn bearing(placement: &Placement) -> Sentence {
    if placement.stands() {
        say!["yes, ", placement.bearing]
    } else if placement.bearing.is_negative() {
        say!["hangs off by ", -placement.bearing]
    } else {
        say!["only ", placement.bearing]
    }
}
