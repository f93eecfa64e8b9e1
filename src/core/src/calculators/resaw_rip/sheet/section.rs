//! Resize a section: fields in, fence list out.

use super::super::drawing;
use super::super::section::{Answer, Cut, Faces, Input, Share, reckon};
use super::stock_source;
use super::{
    blade_figures, blade_notes, blade_step, blade_words, cautions, exactly, saw, side, stock,
};
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::{self, Ask, Figure, Note, Row, Sentence, Source, Step, Table, Value, Working};

pub(super) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let stock = stock(ask, "stock", "stock_dressed", ["stock_thickness", "stock_width"]);
    let target_width = ask.length(ask.field("target_width"));
    let target_thickness = ask.length(ask.field("target_thickness"));
    let n_pieces = ask.count(ask.field("n_pieces"));
    let saw = saw(ask);
    let (width_faces, thickness_faces) = match ask.choice(ask.field("faces")).id {
        "two" => (Faces::One, Faces::One),
        "width_both" => (Faces::Both, Faces::One),
        "thickness_both" => (Faces::One, Faces::Both),
        _ => (Faces::Both, Faces::Both),
    };
    let share = match ask.choice(ask.field("share")).id {
        "kerf_first" => Share::KerfFirst,
        _ => Share::Even,
    };
    let (thickness, width) = stock?;
    let input = Input {
        thickness,
        width,
        target_thickness: target_thickness?,
        target_width: target_width?,
        thickness_faces,
        width_faces,
        share,
        n_pieces: n_pieces?,
        saw: saw?,
    };
    let answer = match reckon(&input) {
        Ok(answer) => answer,
        Err(problems) => return ask.refuse(&problems),
    };
    let mut sources = vec![Source::Arithmetic, Source::CommonPractice];
    sources.extend(stock_source(ask, "stock"));
    let drawing = drawing::section(&input, &answer, side(ask, "fence"), ask.bench().tape);
    lay_out(&input, &answer, sources, drawing)
}

fn lay_out(
    input: &Input,
    answer: &Answer,
    sources: Vec<Source>,
    drawing: crate::drawing::Scene,
) -> Option<sheet::Answer> {
    let (first, last) = (answer.cuts.first()?, answer.cuts.last()?);
    let mut figures = blade_figures(&first.sweep, first.step_if_turned);
    figures.extend([
        Figure::length("finished_width", "Width after", "face 1 to face 3", last.width_after),
        Figure::length(
            "finished_thickness",
            "Thickness after",
            "face 2 to face 4",
            last.thickness_after,
        ),
        Figure::count("n_settings", "Fence settings", answer.n_settings),
        Figure {
            id: "n_passes",
            label: "Passes, all pieces",
            from: "",
            value: Value::Count(answer.n_passes),
        },
    ]);
    let cuts = answer.cuts.iter();
    let narrowest = cuts.clone().map(|cut| cut.fence).min().unwrap_or(Length::ZERO);
    let deepest = cuts.clone().map(|cut| cut.sweep.depth).max().unwrap_or(Length::ZERO);
    Some(sheet::Answer {
        headline: Figure::length("fence", "First fence", "fence to near tooth", first.fence),
        figures,
        tables: vec![
            Table {
                id: "fence_list",
                title: "Fence, in this order",
                columns: &["Set", "Fence", "Cut face", "At fence", "Blade up"],
                rows: cuts.clone().map(fence_row).collect(),
            },
            Table {
                id: "off_list",
                title: "What comes off",
                columns: &["Face", "Off", "Falls", "Width", "Thickness"],
                rows: cuts.clone().map(off_row).collect(),
            },
        ],
        notes: notes(input, answer),
        cautions: cautions(&input.saw, narrowest, narrowest, deepest),
        drawing: Some(drawing),
        template: None,
        working: working(input, answer, sources),
    })
}

fn fence_row(cut: &Cut) -> Row {
    vec![
        Value::Count(cut.setting.into()),
        Value::Length(cut.fence, Rounding::Nearest),
        Value::Count(cut.face.into()),
        Value::Count(cut.at_fence.into()),
        Value::Words(blade_words(&cut.sweep)),
    ]
}

fn off_row(cut: &Cut) -> Row {
    vec![
        Value::Count(cut.face.into()),
        Value::Length(cut.off, Rounding::Nearest),
        Value::Words(falls(cut)),
        Value::Length(cut.width_after, Rounding::Nearest),
        Value::Length(cut.thickness_after, Rounding::Nearest),
    ]
}

/// What falls besides dust.
fn falls(cut: &Cut) -> Sentence {
    if cut.strip.is_positive() { say!["strip ", cut.strip] } else { say!["dust only"] }
}

fn notes(input: &Input, answer: &Answer) -> Vec<Note> {
    let mut notes = vec![
        say!["Faces count round the near end: 3 is opposite 1, and 4 is opposite 2."],
        say![
            "Run every piece through one setting before you move the fence. Fresh faces go to the fence and the table."
        ],
    ];
    let sweeps: Vec<_> = answer.cuts.iter().map(|cut| &cut.sweep).collect();
    notes.extend(blade_notes(&sweeps));
    let is_skim = |cut: &&Cut| cut.off < input.saw.kerf;
    if let Some(cut) = answer.cuts.iter().find(is_skim) {
        notes.push(say![
            "Face ",
            cut.face,
            " loses ",
            cut.off,
            ", less than a kerf: the blade runs partly in air. Hold the piece tight to the fence."
        ]);
    }
    let is_tall = |cut: &&Cut| (cut.fence * 2).is_ok_and(|twice| cut.sweep.depth > twice);
    if let Some(cut) = answer.cuts.iter().find(is_tall) {
        notes.push(say![
            "For face ",
            cut.face,
            " the piece stands ",
            cut.sweep.depth,
            " tall on ",
            cut.fence,
            ". Use a tall fence and a featherboard."
        ]);
    }
    notes.push(say![
        "Saw a test piece first and measure it. Start with the hollow face on the table."
    ]);
    notes
}

fn working(input: &Input, answer: &Answer, sources: Vec<Source>) -> Working {
    let mut steps = Vec::new();
    for cut in &answer.cuts {
        let across = match cut.way {
            super::super::section::Way::Width => cut.width_before,
            super::super::section::Way::Thickness => cut.thickness_before,
        };
        steps.push(Step {
            rule: "fence = what there is - what comes off this face".into(),
            put_in: say!["Face ", cut.face, ": ", across, " - ", cut.off],
            gives: Value::Length(cut.fence, Rounding::Nearest),
        });
        if cut.strip.is_positive() {
            steps.push(Step {
                rule: "strip = what comes off - kerf".into(),
                put_in: say![cut.off, " - ", cut.dust],
                gives: Value::Length(cut.strip, Rounding::Nearest),
            });
        }
    }
    let mut depths: Vec<&Cut> = Vec::new();
    for cut in &answer.cuts {
        // One step for each blade height, from the deepest cut that it is set for.
        match depths.iter_mut().find(|seen| seen.sweep.height == cut.sweep.height) {
            Some(seen) if seen.sweep.depth < cut.sweep.depth => *seen = cut,
            Some(_) => {}
            None => depths.push(cut),
        }
    }
    steps.extend(depths.iter().map(|cut| blade_step(&cut.sweep)));
    let turned = answer.cuts.iter().find(|cut| cut.sweep.sides == 2);
    if let Some(cut) = turned {
        let across = (cut.fence + cut.off).unwrap_or(cut.fence);
        steps.push(Step {
            rule: "step with opposite faces at the fence = thickness - kerf - 2 × fence".into(),
            put_in: say![across, " - ", input.saw.kerf, " - 2 × ", cut.fence],
            gives: Value::Length(cut.step_if_turned, Rounding::Nearest),
        });
    }
    steps.push(Step {
        rule: "passes = passes for one piece × pieces".into(),
        put_in: say![answer.passes_per_piece, " × ", input.n_pieces],
        gives: Value::Count(answer.n_passes),
    });
    Working { steps: exactly(steps), sources }
}
