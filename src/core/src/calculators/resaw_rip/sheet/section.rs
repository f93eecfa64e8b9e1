//! Bring a post to size: fields in, fence list out.

use super::super::drawing;
use super::super::fields::{
    AT_FENCE_COLUMN, BLADE_UP_COLUMN, CUT_FACE_COLUMN, FACE_COLUMN, FACES, FALLS_COLUMN, FENCE,
    FENCE_COLUMN, FENCE_LIST, FENCE_SIDE, FINISHED_THICKNESS, FINISHED_WIDTH, KERF_FIRST, LEAN,
    N_PASSES, N_PIECES, N_SETTINGS, OFF_COLUMN, OFF_LIST, ONE_AND_TWO, SECOND_FENCE, SET_COLUMN,
    SHARE, STOCK, STOCK_DRESSED, STOCK_THICKNESS, STOCK_WIDTH, TARGET_THICKNESS, TARGET_WIDTH,
    THICKNESS_BOTH, THICKNESS_COLUMN, WIDTH_BOTH, WIDTH_COLUMN,
};
use super::super::lean::{Left, left};
use super::super::refused::out_of_range;
use super::super::section::{Answer, Cut, Faces, Input, Share, Way, reckon};
use super::told::{
    blade_figures, blade_notes, blade_step, blade_words, cautions, lean_figure, lean_step,
    ridge_note, saw, side, stock, stock_source,
};
use crate::calculators::resaw_rip::strips::Falls;
use crate::measure::Length;
use crate::say;
use crate::sheet::{self, Ask, Note, Row, Sentence, Source, Step, Term, Value, Working};

pub(super) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let stock = stock(ask, &STOCK, &STOCK_DRESSED, [&STOCK_THICKNESS, &STOCK_WIDTH]);
    let target_width = ask.length(&TARGET_WIDTH);
    let target_thickness = ask.length(&TARGET_THICKNESS);
    let n_pieces = ask.count(&N_PIECES);
    let saw = saw(ask);
    let lean = ask.length(&LEAN);
    let (width_faces, thickness_faces) = match ask.choice(&FACES) {
        ONE_AND_TWO => (Faces::One, Faces::One),
        WIDTH_BOTH => (Faces::Both, Faces::One),
        THICKNESS_BOTH => (Faces::One, Faces::Both),
        _ => (Faces::Both, Faces::Both),
    };
    let share = match ask.choice(&SHARE) {
        KERF_FIRST => Share::KerfFirst,
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
        Err(refused) => return ask.refused(refused, out_of_range()),
    };
    let lean = lean?;
    let mut lefts = Vec::new();
    for cut in &answer.cuts {
        match left(&cut.sweep, lean, &input.saw) {
            Ok(found) => lefts.extend(found),
            Err(refused) => return ask.refused(refused, out_of_range()),
        }
    }
    let worst = |is_ridge| {
        let such = lefts.iter().filter(|it: &&Left| it.is_ridge == is_ridge);
        such.max_by_key(|it| it.by).copied()
    };
    let leans = Leans { lean, ridge: worst(true), out_of_square: worst(false) };
    let mut sources = vec![Source::Arithmetic, Source::CommonPractice];
    sources.extend(stock_source(ask, &STOCK));
    let drawing = drawing::section(&input, &answer, side(ask, &FENCE_SIDE), ask.bench().tape);
    lay_out(&input, &answer, &leans, sources, drawing)
}

/// What a blade that does not stand square leaves, at its worst.
struct Leans {
    lean: Length,
    ridge: Option<Left>,
    out_of_square: Option<Left>,
}

fn lay_out(
    input: &Input,
    answer: &Answer,
    leans: &Leans,
    sources: Vec<Source>,
    drawing: crate::drawing::Scene,
) -> Option<sheet::Answer> {
    let (first, last) = (answer.cuts.first()?, answer.cuts.last()?);
    // Two settings are what is set: one after the other, before anything else is.
    let second = answer.cuts.iter().find(|cut| cut.setting != first.setting);
    let second = second.map(|cut| SECOND_FENCE.figure("fence to near tooth", cut.fence));
    let mut figures: Vec<_> = second.into_iter().collect();
    figures.extend(blade_figures(&first.sweep, first.step_if_turned));
    figures.extend([leans.ridge, leans.out_of_square].into_iter().flatten().map(lean_figure));
    figures.extend([
        FINISHED_WIDTH.figure("face 1 to face 3", last.width_after),
        FINISHED_THICKNESS.figure("face 2 to face 4", last.thickness_after),
        N_SETTINGS.figure("", answer.n_settings),
        N_PASSES.called("Passes, all pieces").figure("", Value::Count(answer.n_passes)),
    ]);
    let cuts = answer.cuts.iter();
    let narrowest = cuts.clone().map(|cut| cut.fence).min().unwrap_or(Length::ZERO);
    let deepest = cuts.clone().map(|cut| cut.sweep.depth).max().unwrap_or(Length::ZERO);
    Some(sheet::Answer {
        goods: Vec::new(),
        headline: FENCE.called("First fence").figure("fence to near tooth", first.fence),
        figures,
        tables: vec![
            FENCE_LIST.called("Fence, in this order").table(
                &[SET_COLUMN, FENCE_COLUMN, CUT_FACE_COLUMN, AT_FENCE_COLUMN, BLADE_UP_COLUMN],
                cuts.clone().map(fence_row).collect(),
            ),
            OFF_LIST.table(
                &[FACE_COLUMN, OFF_COLUMN, FALLS_COLUMN, WIDTH_COLUMN, THICKNESS_COLUMN],
                cuts.clone().map(off_row).collect(),
            ),
        ],
        notes: notes(input, answer, leans),
        cautions: cautions(&input.saw, narrowest, Some((narrowest, Falls::AtFence)), deepest),
        drawing: Some(drawing),
        template: None,
        working: working(input, answer, leans, sources),
    })
}

fn fence_row(cut: &Cut) -> Row {
    vec![
        cut.setting.into(),
        cut.fence.into(),
        cut.face.into(),
        cut.at_fence.into(),
        Value::Words(blade_words(&cut.sweep)),
    ]
}

fn off_row(cut: &Cut) -> Row {
    vec![
        cut.face.into(),
        cut.off.into(),
        Value::Words(falls(cut)),
        cut.width_after.into(),
        cut.thickness_after.into(),
    ]
}

/// What falls besides dust.
fn falls(cut: &Cut) -> Sentence {
    if cut.strip.is_positive() { say!["strip ", cut.strip] } else { say!["dust only"] }
}

fn notes(input: &Input, answer: &Answer, leans: &Leans) -> Vec<Note> {
    let mut notes = vec![
        Note::new(
            "how_faces_count",
            say!["Faces count round the near end: 3 is opposite 1, and 4 is opposite 2."],
        ),
        Note::new(
            "run_all_at_one_setting",
            say![
                "Run every piece through one setting before you move the fence. Fresh faces go to the fence and the table."
            ],
        ),
    ];
    let sweeps: Vec<_> = answer.cuts.iter().map(|cut| &cut.sweep).collect();
    notes.extend(blade_notes(&sweeps));
    if let Some(ridge) = leans.ridge {
        notes.push(ridge_note(ridge));
    }
    let is_skim = |cut: &&Cut| cut.off < input.saw.kerf;
    if let Some(cut) = answer.cuts.iter().find(is_skim) {
        notes.push(Note::new("face_loses_less_than_kerf", say![
            "Face ",
            cut.face,
            " loses ",
            cut.off,
            ", less than a kerf: the blade runs partly in air. Hold the piece tight to the fence."
        ]));
    }
    let is_tall = |cut: &&Cut| (cut.fence * 2).is_ok_and(|twice| cut.sweep.depth > twice);
    if let Some(cut) = answer.cuts.iter().find(is_tall) {
        notes.push(Note::new(
            "stands_tall_at_fence",
            say![
                "For face ",
                cut.face,
                " the piece stands ",
                cut.sweep.depth,
                " tall on ",
                cut.fence,
                ". Use a tall fence and a featherboard."
            ],
        ));
    }
    notes.push(Note::new(
        "saw_a_test_piece",
        say!["Saw a test piece first and measure it. Start with the hollow face on the table."],
    ));
    notes
}

fn working(input: &Input, answer: &Answer, leans: &Leans, sources: Vec<Source>) -> Working {
    let mut steps = Vec::new();
    for cut in &answer.cuts {
        let across = match cut.way {
            Way::Width => cut.width_before,
            Way::Thickness => cut.thickness_before,
        };
        let off = Term::of("what comes off this face", cut.off);
        let mut fence = Step::of("fence", Term::of("what there is", across) - off, cut.fence);
        fence.put_in.0.push(format!(", face {}", cut.face).into());
        steps.push(fence);
        if cut.strip.is_positive() {
            let off = Term::of("what comes off", cut.off);
            steps.push(Step::of("strip", off - Term::of("kerf", cut.dust), cut.strip));
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
    steps.extend(depths.iter().map(|cut| blade_step(&cut.sweep, input.saw.reach)));
    let turned = answer.cuts.iter().find(|cut| cut.sweep.sides == 2);
    if let Some(cut) = turned {
        let thickness = (cut.fence + cut.off).unwrap_or(cut.fence);
        let fences = || Term::fixed(2) * Term::of("fence", cut.fence);
        let kerf = || Term::of("kerf", input.saw.kerf);
        let thick = || Term::of("thickness", thickness);
        // A fence beyond the middle puts the step on the other side; far beyond it, the step is all
        // that comes off the face.
        let is_beyond = (cut.fence + input.saw.kerf).is_ok_and(|near| near > cut.off);
        let step = if cut.step_if_turned == cut.off {
            thick() - Term::of("fence", cut.fence)
        } else if is_beyond {
            fences() + kerf() - thick()
        } else {
            thick() - kerf() - fences()
        };
        steps.push(Step::of("step with opposite faces at the fence", step, cut.step_if_turned));
    }
    for left in leans.ridge.iter().chain(&leans.out_of_square) {
        steps.push(lean_step(*left, leans.lean, input.saw.reach));
    }
    let passes = Term::of("passes for one piece", answer.passes_per_piece)
        * Term::of("pieces", input.n_pieces);
    steps.push(Step::of("passes", passes, Value::Count(answer.n_passes)));
    Working { steps, sources }
}
