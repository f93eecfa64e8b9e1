//! Each cut of a section in order, two to a row.

use super::super::section::{Answer, Cut, Input, Way};
use super::end_view::{BESIDE, EndView, FENCE, blade_label};
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
    let row_height = 3.0 * ROW + tallest * scale + ROW + 12.0;
    let mut bottom = 0.0;
    for (index, cut) in answer.cuts.iter().enumerate() {
        let (row, column) = ((index / 2) as f64, (index % 2) as f64);
        let left = column * cell;
        let top = row * row_height;
        bottom = top + row_height;
        one_cut(&mut page, cut, side, (left, top, cell), (scale, tallest));
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
    let legend = "thick line: face that stays at the fence";
    page.text(Role::Ink, SCENE_WIDTH / 2.0, bottom + 4.0, Size::Small, legend);
    page.scene(title, bottom + 10.0)
}

fn one_cut(
    page: &mut Page,
    cut: &Cut,
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
    page.text(
        Role::Ink,
        middle,
        top + ROW - 3.0,
        Size::Small,
        format!("Setting {}: cut face {}", cut.setting, cut.face),
    );
    view.wood(page, Role::EndGrain, Length::ZERO, near);
    view.wood(page, Role::Waste, far, across);
    view.kerf(page, &cut.sweep, near, far);
    view.fence_and_table(page, across);
    view.heights(page, &cut.sweep, across);
    view.mark_at_fence(page);
    view.label(page, (Length::ZERO, near), &format!("{} at fence", cut.at_fence), Size::Small);
    let label = page.amount(cut.fence);
    let above = view.top().min(view.y(cut.sweep.height)) - 8.0;
    page.across(view.x(Length::ZERO), view.x(near), above, label);
    let blade = blade_label(page, &cut.sweep);
    page.text(Role::Ink, middle, table_y + ROW - 3.0, Size::Small, blade);
}
