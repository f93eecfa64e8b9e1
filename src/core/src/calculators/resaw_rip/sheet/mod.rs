//! What is asked, and which of the three questions answers.

mod fields;
mod guide;
mod section;
mod strips;

use super::saw::{Rise, Saw, Sweep};
use crate::calculators::{Calculator, ResultKind, ResultSpec, Stage};
use crate::measure::Length;
use crate::measure::text::exact_text;
use crate::say;
use crate::sheet::{Answer, Ask, Caution, Figure, Note, Piece, Sentence, Side, Source, Step};
use crate::tables::lumber::{self, Seasoning};

/// Resaw and rip.
pub const CALCULATOR: Calculator = Calculator {
    slug: "resaw-rip",
    title: "Resaw and rip",
    question: "Where do I set the fence and the blade to get the pieces I need?",
    stage: Stage::Saw,
    fields: fields::FIELDS,
    results: RESULTS,
    work,
};

const fn spec(id: &'static str, label: &'static str, kind: ResultKind) -> ResultSpec {
    ResultSpec { id, label, kind }
}

const RESULTS: &[ResultSpec] = &[
    spec("fence", "Fence", ResultKind::Length),
    spec("clean_up_fence", "Fence for the clean edge", ResultKind::Length),
    spec("n_strips", "Strips", ResultKind::Count),
    spec("strip_width", "Strip width", ResultKind::Length),
    spec("sawn_width", "Sawn width", ResultKind::Length),
    spec("leftover", "Leftover", ResultKind::Length),
    spec("leftover_edge", "Edge of the leftover", ResultKind::Words),
    spec("finished_width", "Width after", ResultKind::Length),
    spec("finished_thickness", "Thickness after", ResultKind::Length),
    spec("blade_height", "Blade height", ResultKind::Length),
    spec("overlap", "Kerfs overlap", ResultKind::Length),
    spec("core", "Uncut core", ResultKind::Length),
    spec("step_if_turned", "Step if turned wrong", ResultKind::Length),
    spec("n_settings", "Fence settings", ResultKind::Count),
    spec("n_passes", "Passes", ResultKind::Count),
    spec("guide", "Guide", ResultKind::Length),
    spec("guide_from_other_edge", "Guide from the other edge", ResultKind::Length),
    spec("offset", "Guide offset", ResultKind::Length),
    spec("kept_strip", "Strip kept", ResultKind::Length),
    spec("waste", "Waste", ResultKind::Length),
    spec("fence_list", "Fence list", ResultKind::Table),
    spec("off_list", "What comes off", ResultKind::Table),
    spec("strip_list", "Strips", ResultKind::Table),
    spec("placements", "Places for the guide", ResultKind::Table),
];

fn work(ask: &mut Ask) -> Option<Answer> {
    match ask.choice(ask.field("question")).id {
        "strips" => strips::work(ask),
        "guide" => guide::work(ask),
        _ => section::work(ask),
    }
}

/// The fields of the table saw. All are read, so that all their problems show.
fn saw(ask: &mut Ask) -> Option<Saw> {
    let kerf = ask.length(ask.field("kerf"));
    let reach = ask.length(ask.field("reach"));
    let thinnest = ask.length(ask.field("thinnest"));
    let piece_length = ask.length(ask.field("piece_length"));
    let rise = match ask.choice(ask.field("rise")).id {
        "in_steps" => Rise::InSteps,
        _ => Rise::AtOnce,
    };
    Some(Saw {
        kerf: kerf?,
        reach: reach?,
        rise,
        core_by_hand: ask.yes(ask.field("core_by_hand")),
        thinnest: thinnest?,
        piece_length: piece_length?,
    })
}

/// Which side of the blade a choice field names.
fn side(ask: &Ask, id: &str) -> Side {
    match ask.choice(ask.field(id)).id {
        "left" => Side::Left,
        _ => Side::Right,
    }
}

/// Thickness and width of the stock: by its tag, or as measured.
fn stock(
    ask: &mut Ask,
    picker: &str,
    dressed: &str,
    [thickness, width]: [&'static str; 2],
) -> Option<(Length, Length)> {
    let seasoning = match ask.choice(ask.field(dressed)).id {
        "green" => Seasoning::Green,
        _ => Seasoning::Dry,
    };
    let by_tag =
        lumber::section(ask.choice(ask.field(picker)).id).and_then(|tag| tag.dressed(seasoning));
    if by_tag.is_some() {
        return by_tag;
    }
    let (thickness, width) = (ask.length(ask.field(thickness)), ask.length(ask.field(width)));
    Some((thickness?, width?))
}

/// Where the size of the stock comes from.
fn stock_source(ask: &Ask, picker: &str) -> Option<Source> {
    lumber::section(ask.choice(ask.field(picker)).id).map(|_| Source::Published(lumber::SOURCE))
}

/// `2 in, from both edges`; with steps every height.
fn blade_words(sweep: &Sweep) -> Sentence {
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
fn blade_figures(sweep: &Sweep, step_if_turned: Length) -> Vec<Figure> {
    let mut figures =
        vec![Figure::length("blade_height", "Blade height", "above the table", sweep.height)];
    if sweep.sides == 2 {
        if sweep.core.is_positive() {
            figures.push(Figure::length("core", "Uncut core", "between the kerfs", sweep.core));
        } else {
            figures.push(Figure::length(
                "overlap",
                "Kerfs overlap",
                "in the middle",
                sweep.overlap,
            ));
        }
        figures.push(Figure::length(
            "step_if_turned",
            "Step if turned wrong",
            "with the other face at the fence",
            step_if_turned,
        ));
    }
    figures
}

/// What to know about cuts that are deep for the blade.
fn blade_notes(sweeps: &[&Sweep]) -> Vec<Note> {
    let mut notes = Vec::new();
    if sweeps.iter().any(|sweep| sweep.sides == 2) {
        notes.push(say![
            "From both edges: turn the piece end for end and keep the same face at the fence. Then the kerfs meet."
        ]);
        notes.push(say![
            "Resawn wood cups toward the fresh face. Let it rest on sticks, then take the last skim."
        ]);
    }
    let cores = sweeps.iter().map(|sweep| sweep.core).filter(|core| core.is_positive());
    if let Some(core) = cores.max() {
        notes.push(say![
            "A core of ",
            core,
            " stays uncut. Saw it by hand, away from the machine."
        ]);
    }
    let slight = sweeps
        .iter()
        .filter(|sweep| sweep.sides == 2 && sweep.core.is_zero())
        .map(|sweep| sweep.overlap)
        .filter(|overlap| *overlap < LITTLE_OVERLAP)
        .min();
    if let Some(overlap) = slight {
        notes.push(say!["The kerfs overlap only ", overlap, ". Expect a ridge to plane off."]);
    }
    if sweeps.iter().any(|sweep| sweep.sides == 1 && sweep.height <= sweep.depth) {
        notes.push(say!["At full height the blade only just comes through. Try it on a scrap."]);
    }
    notes
}

/// Kerfs that overlap by less than this may leave a ridge: 1/4 in. Common practice, no source.
const LITTLE_OVERLAP: Length = Length::sixty_fourths(16);

/// A cut deeper than this is a deep cut: 2 in. Common practice, no source.
const DEEP: Length = Length::sixty_fourths(128);

/// A piece thinner than this beside the blade is a thin strip: 3/4 in. Common practice, no source.
const THIN: Length = Length::sixty_fourths(48);

/// A push block is used for pieces narrower than this (saw manuals): 6 in.
const NARROW: Length = Length::sixty_fourths(6 * 64);

/// A push block is used for pieces shorter than this (saw manuals): 12 in.
const SHORT: Length = Length::sixty_fourths(12 * 64);

/// Dangers at the table saw, most particular last.
fn cautions(saw: &Saw, narrowest: Length, thinnest_strip: Length, deepest: Length) -> Vec<Caution> {
    let mut cautions = vec![Caution::Ripping];
    if narrowest < NARROW || saw.piece_length < SHORT {
        cautions.push(Caution::SmallPiece);
    }
    if thinnest_strip < THIN {
        cautions.push(Caution::ThinStrip);
    }
    if deepest > DEEP || deepest > saw.reach {
        cautions.push(Caution::DeepCut);
    }
    cautions.extend([Caution::DustAndNoise, Caution::TreatedWood]);
    cautions
}

/// Steps with the numbers put in as they are, for a kerf of 3/32 in is no mark of every tape.
fn exactly(steps: Vec<Step>) -> Vec<Step> {
    let exact = |piece| match piece {
        Piece::Length(length, _) => Piece::from(exact_text(length)),
        Piece::Text(_) => piece,
    };
    let put_in = |sentence: Sentence| Sentence(sentence.0.into_iter().map(exact).collect());
    steps.into_iter().map(|step| Step { put_in: put_in(step.put_in), ..step }).collect()
}

/// How the height of the blade was found.
fn blade_step(sweep: &Sweep) -> Step {
    let (rule, put_in) = if sweep.sides == 1 {
        ("blade height = depth + 1/8 in, at most the reach", say![sweep.depth, " + 1/8 in"])
    } else if sweep.core.is_positive() {
        (
            "uncut core = depth - 2 × reach, the blade as high as it goes",
            say![sweep.depth, " - 2 × ", sweep.height],
        )
    } else {
        (
            "blade height from both edges = depth ÷ 2 + 1/4 in, at most the reach",
            say![sweep.depth, " ÷ 2 + 1/4 in"],
        )
    };
    let gives = if sweep.core.is_positive() { sweep.core } else { sweep.height };
    Step::length(rule, put_in, gives)
}
