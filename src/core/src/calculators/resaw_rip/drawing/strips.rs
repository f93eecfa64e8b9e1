//! Cleaning the first edge, and all strips across the board.

use super::super::fields::{BOARD_THICKNESS, BOARD_WIDTH, FIRST_EDGE, KERF, STRIP_WIDTH};
use super::super::strips::Plan;
use super::super::strips::{Answer, Band, Falls, Input, Stretch};
use super::end_view::{BESIDE, EndView, FENCE, tell_blade};
use super::{MARGIN, Page, ROW};
use crate::drawing::{Role, SCENE_WIDTH, Scene, Size};
use crate::measure::{Length, Tape};
use crate::say;
use crate::sheet::Side;

/// Tallest that the board is drawn.
const TALLEST: f64 = 150.0;

/// End view of the board, the fence on the user's side.
pub(in super::super) fn strips(input: &Input, answer: &Answer, side: Side, tape: Tape) -> Scene {
    let mut page = Page::new(tape);
    // Beside the fence stands the thickness.
    let room = SCENE_WIDTH - 2.0 * MARGIN - FENCE - 2.0 * BESIDE;
    let high = input.thickness.max(answer.sweep.height).to_f64();
    let scale = (room / input.width.to_f64()).min(TALLEST / high);
    let aside = match side {
        Side::Right => -BESIDE / 2.0,
        Side::Left => BESIDE / 2.0,
    };
    let middle = SCENE_WIDTH / 2.0 + aside;
    let view =
        |table_y: f64| EndView::around(middle, input.width, scale, side, table_y, input.thickness);
    let tall = high * scale;
    let mut top = 0.0;
    if answer.cuts.first().is_some_and(|cut| cut.strip.is_none()) {
        let table_y = top + 3.0 * ROW + tall;
        clean_up(&mut page, &view(table_y), input, answer, top);
        top = table_y + ROW + 10.0;
    }
    let table_y = top + 3.0 * ROW + tall;
    all_strips(&mut page, &view(table_y), input, answer, top);
    let strips = match answer.strips.len() {
        1 => "one strip".to_owned(),
        n => format!("{n} strips"),
    };
    let title = say![format!(
        "End view of the board, fence on the {}: {}, {} left over.",
        match side {
            Side::Left => "left",
            Side::Right => "right",
        },
        strips,
        page.amount(answer.leftover)
    )];
    page.scene(title, table_y + 4.0 * ROW + 4.0)
}

/// The other edge at the fence, the first edge coming off.
fn clean_up(page: &mut Page, view: &EndView, input: &Input, answer: &Answer, top: f64) {
    let Some(cut) = answer.cuts.first() else { return };
    let far = (cut.fence + cut.dust).unwrap_or(input.width);
    let heading = "Clean the first edge";
    page.row(SCENE_WIDTH / 2.0, top + ROW - 3.0, heading);
    view.wood(page, Role::EndGrain, Length::ZERO, cut.fence);
    view.wood(page, Role::Waste, far, input.width);
    view.kerf(page, &answer.sweep, cut.fence, far);
    view.fence_and_table(page, input.width);
    view.heights(page, &answer.sweep, input.width);
    let label = page.amount(cut.fence);
    let above = view.top().min(view.y(answer.sweep.height)) - 8.0;
    page.across(view.x(Length::ZERO), view.x(cut.fence), above, label, None);
    let label = format!("off {}", page.amount(input.first_edge));
    let below = view.table_y + ROW - 4.0;
    page.across(view.x(cut.fence), view.x(input.width), below, label, Some(FIRST_EDGE.id));
}

fn all_strips(page: &mut Page, view: &EndView, input: &Input, answer: &Answer, top: f64) {
    let board = (input.width - input.first_edge).unwrap_or(input.width);
    // The cleaned edge is at the fence, or on the far side, as the strips come off.
    let from_fence = |from_first_edge: Length| match input.falls {
        Falls::AtFence => from_first_edge - input.first_edge,
        Falls::FarSide => input.width - from_first_edge,
    };
    let heading = match (input.falls, input.first_edge.is_positive()) {
        (Falls::AtFence, true) => "Strips, the clean edge at the fence",
        (Falls::FarSide, true) => "Strips, the clean edge on the far side",
        (Falls::AtFence, false) => "Strips come off at the fence",
        (Falls::FarSide, false) => "Strips fall on the far side",
    };
    page.row(SCENE_WIDTH / 2.0, top + ROW - 3.0, heading);
    let n_strips = u32::try_from(answer.strips.len()).unwrap_or(u32::MAX);
    let numbers_y = view.table_y + ROW - 3.0;
    for Band { stretch, from, to } in &answer.bands {
        let (Ok(from), Ok(to)) = (from_fence(*from), from_fence(*to)) else { continue };
        if from.is_negative() || to.is_negative() || from.max(to) > board {
            continue; // It came off with the first edge.
        }
        let (near, far) = (from.min(to), from.max(to));
        match stretch {
            Stretch::Sliver => {}
            Stretch::Kerf => view.kerf(page, &answer.sweep, near, far),
            Stretch::Strip(number) => {
                view.wood(page, Role::EndGrain, near, far);
                let has_room = view.label(page, (near, far), &number.to_string(), Size::Medium);
                if !has_room && (*number == 1 || *number == n_strips) {
                    let x = (view.x(near) + view.x(far)) / 2.0;
                    page.draft.number(Role::Ink, x, numbers_y, number.to_string());
                }
            }
            Stretch::Leftover => {
                let width = (far - near).unwrap_or(Length::ZERO);
                let is_waste = width < input.saw.thinnest;
                let role = if is_waste { Role::Waste } else { Role::Mate };
                view.wood(page, role, near, far);
                if !is_waste {
                    view.label(page, (near, far), "left", Size::Small);
                }
            }
        }
    }
    view.fence_and_table(page, board);
    view.heights(page, &answer.sweep, board);
    if let Some(cut) = answer.cuts.iter().find(|cut| cut.strip.is_some()) {
        let label = page.amount(cut.fence);
        let above = view.top().min(view.y(answer.sweep.height)) - 8.0;
        page.across(view.x(Length::ZERO), view.x(cut.fence), above, label, None);
    }
    sizes(page, view, input, answer, &from_fence);
    let good = if answer.sweep.sides == 1 {
        view.mark_upper(page, board);
        "thick line: good face up"
    } else {
        view.mark_at_fence(page);
        "thick line: face that stays at the fence"
    };
    let left = match (answer.leftover.is_positive(), answer.is_leftover_raw) {
        (false, _) => "nothing left over".to_owned(),
        (true, false) => format!("left over {}", page.amount(answer.leftover)),
        (true, true) => format!("left over {}, one raw edge", page.amount(answer.leftover)),
    };
    page.tell(left);
    tell_blade(page, &answer.sweep);
    page.tell(good);
}

/// What was asked for, below the table and beside the board.
fn sizes(
    page: &mut Page,
    view: &EndView,
    input: &Input,
    answer: &Answer,
    from_fence: &dyn Fn(Length) -> Result<Length, crate::measure::OutOfRange>,
) {
    // Below the numbers of strips too thin to hold them.
    let row = |n: f64| view.table_y + (n + 1.0) * ROW - 4.0;
    let first = |wanted: fn(&Stretch) -> bool| {
        answer.bands.iter().find(|band| wanted(&band.stretch)).and_then(|band| {
            let ends = from_fence(band.from).and_then(|from| Ok((from, from_fence(band.to)?)));
            ends.ok().map(|(from, to)| (view.x(from), view.x(to)))
        })
    };
    if let (Plan::Fit(width), Some((from, to))) =
        (&input.plan, first(|it| matches!(it, Stretch::Strip(1))))
    {
        let label = format!("strip {}", page.amount(*width));
        page.across(from, to, row(1.0), label, Some(STRIP_WIDTH.id));
    }
    if let Some((from, to)) = first(|it| matches!(it, Stretch::Kerf)) {
        let label = format!("kerf {}", page.amount(input.saw.kerf));
        page.across(from, to, row(2.0), label, Some(KERF.id));
    }
    let outward = match view.side {
        Side::Right => 1.0,
        Side::Left => -1.0,
    };
    let x = view.fence_x + outward * (FENCE + 9.0);
    let label = page.amount(input.thickness);
    page.upright(x, view.top(), view.table_y, label, Some(BOARD_THICKNESS.id));
    if !input.first_edge.is_positive() {
        let label = page.amount(input.width);
        let (from, to) = (view.x(Length::ZERO), view.x(input.width));
        page.across(from, to, row(0.0) - 2.0, label, Some(BOARD_WIDTH.id));
    }
}
