//! Guide for a hand-held circular saw: fields in, place of the guide out.

use super::super::drawing;
use super::super::guide::{Answer, GuideOn, Input, Placement, ShoeSide, reckon};
use super::{exactly, side};
use crate::measure::Rounding;
use crate::say;
use crate::sheet::{
    self, Ask, Caution, Figure, Row, Sentence, Side, Source, Step, Table, Value, Working,
};

pub(super) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let board_width = ask.length(ask.field("guide_board"));
    let strip = ask.length(ask.field("guide_strip"));
    let narrow = ask.length(ask.field("shoe_narrow"));
    let wide = ask.length(ask.field("shoe_wide"));
    let kerf = ask.length(ask.field("kerf"));
    let guide_on = match ask.choice(ask.field("guide_on")).id {
        "strip" => GuideOn::Strip,
        _ => GuideOn::Waste,
    };
    let shoe_side = match ask.choice(ask.field("shoe_side")).id {
        "wide" => ShoeSide::Wide,
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
        kept_edge: side(ask, "kept_edge"),
    };
    let answer = match reckon(&input) {
        Ok(answer) => answer,
        Err(problems) => return ask.refuse(&problems),
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
        figures.push(Figure::length("guide_from_other_edge", "Guide", other, from_other));
    }
    figures.extend([
        Figure::length("offset", "Guide offset", "shoe edge to near tooth", answer.offset),
        Figure::length("kept_strip", "Strip kept", "edge to near tooth", input.strip),
        Figure::length("waste", "Waste", "past the kerf", answer.waste),
    ]);
    let (rule, put_in) = match input.guide_on {
        GuideOn::Waste => (
            "guide = strip + kerf + offset, from the kept edge",
            say![input.strip, " + ", input.kerf, " + ", answer.offset],
        ),
        GuideOn::Strip => {
            ("guide = strip - offset, from the kept edge", say![input.strip, " - ", answer.offset])
        }
    };
    sheet::Answer {
        headline: Figure::length("guide", "Guide edge", kept, guide),
        figures,
        tables: vec![Table {
            id: "placements",
            title: "The four ways to place it",
            columns: &["Guide on", "Shoe side", "From kept edge", "Board there"],
            rows: answer.all.iter().map(row).collect(),
        }],
        notes: vec![
            say!["The blade runs on the waste side of the line. Mark the waste before you clamp."],
            say![
                "Saw a test stick once: what is left beside the guide is your offset, with no tape at all."
            ],
            say![
                "To run the other side of the shoe along the guide, saw from the other end of the board."
            ],
        ],
        cautions: vec![Caution::HandSaw, Caution::DustAndNoise, Caution::TreatedWood],
        drawing: Some(drawing),
        template: None,
        working: Working {
            steps: exactly(vec![Step::length(rule, put_in, guide)]),
            sources: vec![Source::Arithmetic, Source::CommonPractice],
        },
    }
}

fn row(placement: &Placement) -> Row {
    let on = match placement.guide_on {
        GuideOn::Waste => "waste",
        GuideOn::Strip => "strip",
    };
    let shoe = match placement.shoe_side {
        ShoeSide::Narrow => "narrow",
        ShoeSide::Wide => "wide",
    };
    vec![
        Value::Words(say![on]),
        Value::Words(say![shoe]),
        Value::Length(placement.from_kept_edge, Rounding::Nearest),
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
