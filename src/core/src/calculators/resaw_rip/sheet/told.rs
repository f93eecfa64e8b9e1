//! What the questions at the table saw read and tell alike: the saw, the stock, the blade and its dangers.

use super::super::fields::{
    BLADE_HEIGHT, CORE, CORE_BY_HAND, GREEN, IN_STEPS, KERF, LEFT, OUT_OF_SQUARE, OVERLAP,
    PIECE_LENGTH, REACH, RIDGE, RISE, STEP_IF_TURNED, THINNEST,
};
use super::super::lean::Left;
use super::super::saw::{ABOVE_WORK, PAST_MIDDLE, Rise, Saw, Sweep};
use super::super::strips::Falls;
use crate::measure::Length;
use crate::say;
use crate::sheet::{Act, Ask, Caution, Field, Figure, Note, Sentence, Side, Source, Step, Term};
use crate::tables::lumber::{self, Seasoning};

/// The fields of the table saw. All are read, so that all their problems show.
pub(super) fn saw(ask: &mut Ask) -> Option<Saw> {
    let kerf = ask.kerf(&KERF);
    let reach = ask.length(&REACH);
    let thinnest = ask.length(&THINNEST);
    let piece_length = ask.length(&PIECE_LENGTH);
    let rise = match ask.choice(&RISE) {
        IN_STEPS => Rise::InSteps,
        _ => Rise::AtOnce,
    };
    Some(Saw {
        kerf: kerf?,
        reach: reach?,
        rise,
        core_by_hand: ask.yes(&CORE_BY_HAND),
        thinnest: thinnest?,
        piece_length: piece_length?,
    })
}

/// Which side of the blade a choice field names.
pub(super) fn side(ask: &Ask, field: &Field) -> Side {
    match ask.choice(field) {
        LEFT => Side::Left,
        _ => Side::Right,
    }
}

/// Thickness and width of the stock: by its tag, or as measured.
pub(super) fn stock(
    ask: &mut Ask,
    picker: &Field,
    dressed: &Field,
    [thickness, width]: [&Field; 2],
) -> Option<(Length, Length)> {
    let seasoning = match ask.choice(dressed) {
        GREEN => Seasoning::Green,
        _ => Seasoning::Dry,
    };
    let by_tag = lumber::section(ask.choice(picker).id).and_then(|tag| tag.dressed(seasoning));
    if by_tag.is_some() {
        return by_tag;
    }
    let (thickness, width) = (ask.length(thickness), ask.length(width));
    Some((thickness?, width?))
}

/// Where the size of the stock comes from.
pub(super) fn stock_source(ask: &Ask, picker: &Field) -> Option<Source> {
    lumber::section(ask.choice(picker).id).map(|_| Source::Published(lumber::SOURCE))
}

/// `2 in, from both edges`; with steps every height.
pub(super) fn blade_words(sweep: &Sweep) -> Sentence {
    let mut pieces = Vec::new();
    for (index, height) in sweep.heights.iter().enumerate() {
        if index > 0 {
            pieces.push(", ".into());
        }
        pieces.push((*height).into());
    }
    if sweep.sides == 2 {
        pieces.push("; both edges".into());
    }
    Sentence(pieces)
}

/// Figures of the blade.
pub(super) fn blade_figures(sweep: &Sweep, step_if_turned: Length) -> Vec<Figure> {
    let mut figures = vec![BLADE_HEIGHT.figure("above the table", sweep.height)];
    if sweep.sides == 2 {
        if sweep.core.is_positive() {
            figures.push(CORE.figure("between the kerfs", sweep.core));
        } else {
            figures.push(OVERLAP.figure("in the middle", sweep.overlap));
        }
        figures.push(STEP_IF_TURNED.figure("with the other face at the fence", step_if_turned));
    }
    figures
}

/// What to know about cuts that are deep for the blade.
pub(super) fn blade_notes(sweeps: &[&Sweep]) -> Vec<Note> {
    let mut notes = Vec::new();
    if sweeps.iter().any(|sweep| sweep.sides == 2) {
        notes.push(Note::new("turn_end_for_end", say![
            "From both edges: turn the piece end for end and keep the same face at the fence. Then the kerfs meet."
        ]));
        notes.push(Note::new("resawn_wood_cups", say![
            "Resawn wood cups toward the fresh face. Let it rest on sticks, then take the last skim."
        ]));
    }
    let cores = sweeps.iter().map(|sweep| sweep.core).filter(|core| core.is_positive());
    if let Some(core) = cores.max() {
        notes.push(Note::new(
            "core_stays_uncut",
            say!["A core of ", core, " stays uncut. Saw it by hand, away from the machine."],
        ));
    }
    let slight = sweeps
        .iter()
        .filter(|sweep| sweep.sides == 2 && sweep.core.is_zero())
        .map(|sweep| sweep.overlap)
        .filter(|overlap| *overlap < LITTLE_OVERLAP)
        .min();
    if let Some(overlap) = slight {
        notes.push(Note::new(
            "kerfs_overlap_little",
            say!["The kerfs overlap only ", overlap, ". Expect a ridge to plane off."],
        ));
    }
    if sweeps.iter().any(|sweep| sweep.sides == 1 && sweep.height <= sweep.depth) {
        notes.push(Note::new(
            "blade_only_just_through",
            say!["At full height the blade only just comes through. Try it on a scrap."],
        ));
    }
    notes
}

/// What a blade that does not stand square leaves.
pub(super) fn lean_figure(left: Left) -> Figure {
    if left.is_ridge {
        RIDGE.figure("in the middle of the face", left.by)
    } else {
        OUT_OF_SQUARE.figure("edge to edge", left.by)
    }
}

pub(super) fn ridge_note(ridge: Left) -> Note {
    Note::new(
        "ridge_and_hollow",
        say![
            "Off square from both edges: one piece gets a ridge of ",
            ridge.by,
            ", the other a hollow. Plane it off, or set the blade square."
        ],
    )
}

/// How far a cut wanders off.
pub(super) fn lean_step(left: Left, lean: Length, reach: Length) -> Step {
    let share = Term::of("gap at the tip", lean) / Term::of("reach", reach);
    Step::of("the cut wanders off", Term::of("way up", left.over) * share, left.by)
}

/// Kerfs that overlap by less than this may leave a ridge: 1/4 in. Common practice, no source.
const LITTLE_OVERLAP: Length = Length::sixty_fourths(16);

/// A cut deeper than this is a deep cut: 2 in. Common practice, no source.
const DEEP: Length = Length::sixty_fourths(128);

/// Dangers at the table saw. A thin strip is one that falls on the far side of the blade, or is
/// planned to run at the fence: never both are said.
pub(super) fn cautions(
    saw: &Saw,
    narrowest: Length,
    thin: Option<(Length, Falls)>,
    deepest: Length,
) -> Vec<Caution> {
    let mut acts = vec![Act::Rip];
    if narrowest < Caution::NARROW || saw.piece_length < Caution::SHORT {
        acts.push(Act::SawSmall);
    }
    if let Some((_, falls)) = thin.filter(|(strip, _)| *strip < Caution::THIN) {
        acts.push(match falls {
            Falls::FarSide => Act::RipThin,
            Falls::AtFence => Act::RipThinAtFence,
        });
    }
    if deepest > DEEP || deepest > saw.reach {
        acts.push(Act::SawDeep);
    }
    Caution::of(&acts)
}

/// How the height of the blade was found.
pub(super) fn blade_step(sweep: &Sweep, reach: Length) -> Step {
    let depth = Term::of("depth", sweep.depth);
    if sweep.sides == 1 {
        let above = depth + Term::fixed(ABOVE_WORK);
        Step::of("blade height", above, sweep.height).at_most("the reach", reach)
    } else if sweep.core.is_positive() {
        let both = Term::fixed(2) * Term::of("reach", sweep.height);
        Step::of("uncut core", depth - both, sweep.core)
            .remarked("the blade as high as it goes", "")
    } else {
        let past_middle = depth / Term::fixed(2) + Term::fixed(PAST_MIDDLE);
        Step::of("blade height from both edges", past_middle, sweep.height)
            .at_most("the reach", reach)
    }
}
