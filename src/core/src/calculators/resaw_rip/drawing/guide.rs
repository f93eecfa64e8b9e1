//! Top view of a board with the guide, the shoe and the cut.

use super::super::fields::{GUIDE_BOARD, GUIDE_STRIP, KERF};
use super::super::guide::{Answer, GuideOn, Input, ShoeSide};
use super::{MARGIN, Page, ROW};
use crate::drawing::{Role, SCENE_WIDTH, Scene};
use crate::measure::Tape;
use crate::say;
use crate::sheet::Side;

/// Width that the guide is drawn, in inches.
const GUIDE_WIDTH: f64 = 1.5;

/// Page units of board that are shown along the cut.
const ALONG: f64 = 130.0;

/// Board, kerf, guide and shoe from above, the kept edge on the user's side.
pub(in super::super) fn guide(input: &Input, answer: &Answer, tape: Tape) -> Scene {
    let mut page = Page::new(tape);
    let board = input.board_width.to_f64();
    let (strip, kerf) = (input.strip.to_f64(), input.kerf.to_f64());
    let edge = answer.chosen.from_kept_edge.to_f64();
    let (along_guide, beyond) = match input.shoe_side {
        ShoeSide::Narrow => (input.narrow.to_f64(), input.wide.to_f64()),
        ShoeSide::Wide => (input.wide.to_f64(), input.narrow.to_f64()),
    };
    // Where guide and shoe end, in inches from the kept edge.
    let (guide, shoe) = match input.guide_on {
        GuideOn::Waste => {
            ((edge, edge + GUIDE_WIDTH), (strip - beyond, strip + kerf + along_guide))
        }
        GuideOn::Strip => {
            ((edge - GUIDE_WIDTH, edge), (strip - along_guide, strip + kerf + beyond))
        }
    };
    let least = [0.0, guide.0, shoe.0].into_iter().fold(f64::INFINITY, f64::min);
    let most = [board, guide.1, shoe.1].into_iter().fold(f64::NEG_INFINITY, f64::max);
    let scale = (SCENE_WIDTH - 2.0 * MARGIN) / (most - least).max(1e-9);
    let x = |from_kept_edge: f64| match input.kept_edge {
        Side::Left => MARGIN + (from_kept_edge - least) * scale,
        Side::Right => SCENE_WIDTH - MARGIN - (from_kept_edge - least) * scale,
    };
    let (top, bottom) = (2.0 * ROW + 8.0, 2.0 * ROW + 8.0 + ALONG);
    page.rect(Role::Wood, (x(0.0), top), (x(strip), bottom));
    page.rect(Role::Waste, (x((strip + kerf).min(board)), top), (x(board), bottom));
    // The cut runs away from the user; half of it is done.
    page.rect(Role::Kerf, (x(strip), (top + bottom) / 2.0), (x(strip + kerf), bottom));
    page.line(Role::CutLine, (x(strip), top), (x(strip), bottom));
    page.rect(Role::Fence, (x(guide.0), top - 6.0), (x(guide.1), bottom + 6.0));
    page.rect(Role::Ghost, (x(shoe.0), top + ALONG * 0.3), (x(shoe.1), top + ALONG * 0.75));
    page.line(Role::ShowFace, (x(0.0), top), (x(0.0), bottom));
    let label = page.amount(answer.chosen.from_kept_edge);
    page.across(x(0.0), x(edge), top - 14.0, format!("guide {label}"), None);
    let label = page.amount(input.strip);
    let row = |n: f64| bottom + n * ROW + 4.0;
    page.across(x(0.0), x(strip), row(1.0), format!("keep {label}"), Some(GUIDE_STRIP.id));
    let label = page.amount(input.kerf);
    let cut = (x(strip), x(strip + kerf));
    page.across(cut.0, cut.1, row(2.0), format!("kerf {label}"), Some(KERF.id));
    let label = page.amount(input.board_width);
    page.across(x(0.0), x(board), row(4.0), format!("board {label}"), Some(GUIDE_BOARD.id));
    let offset = page.amount(answer.offset);
    let tooth = match input.guide_on {
        GuideOn::Waste => strip + kerf,
        GuideOn::Strip => strip,
    };
    page.across(x(tooth), x(edge), row(3.0), format!("offset {offset}"), None);
    page.tell(LEGEND);
    let title = say![
        "Top view: guide ",
        answer.chosen.from_kept_edge,
        " from the kept edge, strip ",
        input.strip,
        ", waste hatched."
    ];
    page.scene(title, bottom + 5.0 * ROW)
}

/// What the shapes are.
const LEGEND: &str = "block: guide; dashed: shoe; hatched: waste";
