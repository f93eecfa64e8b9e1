//! The picture of a step: of a cut its setting, of a reckoning its own drawing.

use super::step::{BuildStep, Stage};
use crate::drawing::{Anchor, Draft, Role, SCENE_WIDTH, Scene, Shape, Size};
use crate::job::Reckoned;
use crate::measure::text::show;
use crate::measure::{Rounding, Tape};
use crate::say;

/// Height of the picture of a setting.
const HIGH: f64 = 112.0;

/// What is drawn of a step; `None` where there is nothing to draw.
#[must_use]
pub fn picture(step: &BuildStep, reckoned: &Reckoned, tape: Tape) -> Option<Scene> {
    if let Some(id) = step.about {
        return reckoned.kept(id)?.answer.as_ref()?.drawing.clone();
    }
    let setting = step.setting?;
    let is_stop = matches!(step.stage, Stage::Rough | Stage::Crosscut);
    let words = show(setting, tape, Rounding::Nearest).map(|shown| shown.mark.to_string()).ok()?;
    let mut draft = Draft::default();
    let mut add = |role, shape| draft.add(role, shape);
    // From the side: the table, the board on it, the blade through it, the fence or the stop.
    let (blade, end, table) = (110.0, 286.0, 92.0);
    add(Role::Mate, Shape::Rect(24.0, 52.0, blade - 24.0, 40.0));
    add(Role::Wood, Shape::Rect(blade + 6.0, 52.0, end - blade - 6.0, 40.0));
    add(Role::Kerf, Shape::Rect(blade, 40.0, 6.0, 66.0));
    let (wide, high) = if is_stop { (18.0, 54.0) } else { (30.0, 68.0) };
    add(Role::Fence, Shape::Rect(end, table - high, wide, high));
    add(Role::Dimension, Shape::Line(8.0, table, SCENE_WIDTH - 8.0, table));
    draft.dimension(Role::StrongInk, (blade + 6.0, 26.0), (end, 26.0), words, None);
    let name = if is_stop { "stop" } else { "fence" };
    let ink = (Role::Ink, Size::Medium);
    draft.name(ink, (end + wide / 2.0, 108.0, Anchor::Middle), name, None);
    draft.name(ink, (blade - 6.0, 108.0, Anchor::End), "blade", None);
    let title = say!["The ", name, " stands ", setting, " from the near tooth of the blade."];
    Some(draft.scene(title, HIGH))
}
