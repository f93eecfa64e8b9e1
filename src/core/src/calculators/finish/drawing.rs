//! Each kind of part taken apart into face, edge, underside and end, to one scale.

use super::{Answer, Faces, Input};
use crate::drawing::{Anchor, Draft, Role, SCENE_WIDTH, Scene, Shape, Size};
use crate::measure::text::show;
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::{Bench, PartSize, Value};

/// Most kinds of part that are drawn; the table has them all.
const MOST_DRAWN: usize = 5;

/// Border left and right.
const MARGIN: f64 = 18.0;

/// Room between the pieces of a part.
const GAP: f64 = 4.0;

/// Draws the parts. What is coated is filled; what is left bare is a dashed outline.
pub(super) fn draw(input: &Input, answer: &Answer, bench: &Bench) -> Scene {
    let drawn: Vec<_> = input.parts.iter().zip(&answer.part_areas).take(MOST_DRAWN).collect();
    let parts: Vec<&PartSize> = drawn.iter().map(|(part, _)| *part).collect();
    let scale = scale(&parts);
    let mut draft = Draft::default();
    let mut y = 0.0;
    for (part, area) in drawn {
        y += 20.0;
        let covered = Value::Area(*area).in_line(bench);
        let name = if part.name.is_empty() { String::new() } else { format!("{}, ", part.name) };
        let label = format!(
            "{name}{} × {} long, {} × {}: {covered}",
            part.count,
            amount(part.length, bench),
            amount(part.width, bench),
            amount(part.thickness, bench)
        );
        draft.row(WRITING, (MARGIN, y - 5.0, Anchor::Start), label);
        y = apart(&mut draft, part, input.faces, scale, y);
        y += 6.0;
    }
    if input.parts.len() > MOST_DRAWN {
        y += 20.0;
        let label = format!("and {} more kinds of piece", input.parts.len() - MOST_DRAWN);
        draft.row(WRITING, (MARGIN, y - 5.0, Anchor::Start), label);
    }
    let title = say![
        "The pieces taken apart; ",
        match input.faces {
            Faces::All => "every face is coated.",
            Faces::NotTheUnderside => "all but the underside is coated.",
            Faces::ShowFace => "one face is coated.",
            Faces::Ends => "only the ends are coated.",
        }
    ];
    draft.scene(title, y + 4.0)
}

fn amount(length: Length, bench: &Bench) -> String {
    show(length, bench.tape, Rounding::Nearest)
        .map_or_else(|_| length.to_string(), |shown| shown.mark.amount())
}

/// How all is written.
const WRITING: (Role, Size) = (Role::Ink, Size::Small);

/// Page units to the inch, so that the longest part fills the width and all fit in the height.
fn scale(parts: &[&PartSize]) -> f64 {
    let widest = parts
        .iter()
        .map(|part| part.length.to_f64() + part.thickness.to_f64())
        .fold(1e-9, f64::max);
    let high: f64 =
        parts.iter().map(|part| 2.0 * part.width.to_f64() + part.thickness.to_f64()).sum();
    ((SCENE_WIDTH - 2.0 * MARGIN - GAP) / widest).min(170.0 / high.max(1e-9))
}

/// Face, edge and underside one below the other, the end beside the face. Gives the lower edge.
fn apart(draft: &mut Draft, part: &PartSize, faces: Faces, scale: f64, top: f64) -> f64 {
    let (wide, edges, ends) = faces.coated();
    let [length, width, thickness] =
        [part.length, part.width, part.thickness].map(|side| side.to_f64() * scale);
    let mut piece = |name: &str, is_coated: bool, x: f64, y: f64, w: f64, h: f64| {
        let role = if is_coated { Role::Wood } else { Role::Ghost };
        draft.add(role, Shape::Rect(x, y, w, h));
        let label = if is_coated { name.to_owned() } else { format!("{name}, bare") };
        if h > 17.0 && w > Size::Small.width_of(&label, Role::Ink) + 4.0 {
            draft.number(Role::Ink, x + w / 2.0, y + h / 2.0 + 4.0, label);
        }
    };
    piece("face", wide > 0, MARGIN, top, length, width);
    piece("end", ends > 0, MARGIN + length + GAP, top, thickness, width);
    let edge_top = top + width + GAP;
    piece("edge", edges > 0, MARGIN, edge_top, length, thickness);
    let under_top = edge_top + thickness + GAP;
    piece("underside", wide > 1, MARGIN, under_top, length, width);
    under_top + width
}
