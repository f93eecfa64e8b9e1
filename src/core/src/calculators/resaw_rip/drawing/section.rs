//! Each cut of a section in order, two to a row.

use super::super::fields::{KERF, STOCK_THICKNESS, STOCK_WIDTH, TARGET_THICKNESS, TARGET_WIDTH};
use super::super::section::{Answer, Cut, Input, Way};
use super::end_view::{BESIDE, EndView, FENCE, tell_blade};
use super::{MARGIN, Page, ROW};
use crate::drawing::{Role, SCENE_WIDTH, Scene, Size};
use crate::measure::{Length, Tape};
use crate::say;
use crate::sheet::Side;

/// Tallest that a piece is drawn.
const TALLEST: f64 = 110.0;

/// The end view before each cut, to one scale, the fence on the user's side.
pub(in super::super) fn section(input: &Input, answer: &Answer, side: Side, tape: Tape) -> Scene {
    let mut page = Page::new(tape);
    let columns = if answer.cuts.len() > 1 { 2.0 } else { 1.0 };
    let cell = SCENE_WIDTH / columns;
    let widest = input.width.max(input.thickness).to_f64();
    let tallest = answer.cuts.iter().map(|cut| cut.sweep.depth.max(cut.sweep.height));
    let tallest = tallest.max().unwrap_or(input.thickness).to_f64();
    let room = cell - 2.0 * MARGIN - FENCE - BESIDE;
    let scale = (room / widest).min(TALLEST / tallest);
    let row_height = 5.0 * ROW + tallest * scale + 12.0;
    let mut bottom = 0.0;
    for (index, cut) in answer.cuts.iter().enumerate() {
        let (row, column) = ((index / 2) as f64, (index % 2) as f64);
        let left = column * cell;
        let top = row * row_height;
        bottom = top + row_height;
        one_cut(&mut page, input, (cut, index == 0), side, (left, top, cell), (scale, tallest));
    }
    let fences: Vec<String> = answer.cuts.iter().map(|cut| page.amount(cut.fence)).collect();
    let title = say![format!(
        "End view of each cut, fence on the {}: fence to near tooth {}.",
        match side {
            Side::Left => "left",
            Side::Right => "right",
        },
        fences.join(", ")
    )];
    if let Some(cut) = answer.cuts.first() {
        tell_blade(&mut page, &cut.sweep);
    }
    page.tell("thick line: face that stays at the fence");
    page.scene(title, bottom)
}

fn one_cut(
    page: &mut Page,
    input: &Input,
    (cut, is_first): (&Cut, bool),
    side: Side,
    (left, top, cell): (f64, f64, f64),
    (scale, tallest): (f64, f64),
) {
    let (across, depth) = match cut.way {
        Way::Width => (cut.width_before, cut.thickness_before),
        Way::Thickness => (cut.thickness_before, cut.width_before),
    };
    let middle = left + cell / 2.0;
    let table_y = top + 3.0 * ROW + tallest * scale;
    let view = EndView::around(middle, across, scale, side, table_y, depth);
    let near = cut.fence;
    let far = (near + cut.dust).unwrap_or(across);
    page.row(middle, top + ROW - 3.0, format!("{}: cut face {}", cut.setting, cut.face));
    view.wood(page, Role::EndGrain, Length::ZERO, near);
    view.wood(page, Role::Waste, far, across);
    view.kerf(page, &cut.sweep, near, far);
    view.fence_and_table(page, across);
    view.heights(page, &cut.sweep, across);
    view.mark_at_fence(page);
    view.label(page, (Length::ZERO, near), &format!("{} at fence", cut.at_fence), Size::Small);
    let label = page.amount(cut.fence);
    let above = view.top().min(view.y(cut.sweep.height)) - 8.0;
    page.across(view.x(Length::ZERO), view.x(near), above, label, None);
    // What is asked stands below the table: the stock before the cut, or what this cut brings it to.
    let (stock, target, wanted, whole) = match cut.way {
        Way::Width => (STOCK_WIDTH.id, TARGET_WIDTH.id, input.target_width, input.width),
        Way::Thickness => {
            (STOCK_THICKNESS.id, TARGET_THICKNESS.id, input.target_thickness, input.thickness)
        }
    };
    let below = table_y + ROW - 4.0;
    if near == wanted {
        let label = format!("target {}", page.amount(wanted));
        page.across(view.x(Length::ZERO), view.x(near), below, label, Some(target));
    } else if across == whole {
        let label = format!("stock {}", page.amount(whole));
        page.across(view.x(Length::ZERO), view.x(across), below, label, Some(stock));
    }
    // Said once: it is the same in all of them.
    if is_first && far > near {
        let label = format!("kerf {}", page.amount(input.saw.kerf));
        page.across(view.x(near), view.x(far), below + ROW, label, Some(KERF.id));
    }
}
