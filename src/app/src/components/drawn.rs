//! The drawing of an answer. While the keys are out it comes a frame after the headline, which is waited for.

use std::rc::Rc;

use reckoner_core::measure::Tape;
use reckoner_core::sheet::{Field, Sheet};
use yew::prelude::*;

use super::drawing::{Sizes, drawing_of_sizes};
use crate::platform::later::after_frame;

/// What a drawing shows.
#[derive(Clone)]
pub(crate) struct Seen {
    /// The answer with its scene, and how the fields were understood.
    pub(crate) sheet: Rc<Sheet>,
    /// Every field of the calculator.
    pub(crate) fields: &'static [Field],
    /// The field that is being typed in.
    pub(crate) live: Option<&'static str>,
    pub(crate) tape: Tape,
}

impl PartialEq for Seen {
    fn eq(&self, other: &Seen) -> bool {
        Rc::ptr_eq(&self.sheet, &other.sheet)
            && core::ptr::eq(self.fields, other.fields)
            && (self.live, self.tape) == (other.live, other.tape)
    }
}

#[derive(Properties, PartialEq)]
pub(crate) struct DrawnProps {
    pub(crate) seen: Seen,
    /// Whether the keys are out.
    pub(crate) is_typing: bool,
    /// Opens a field.
    pub(crate) on_open: Callback<&'static str>,
}

/// The drawing, with its sizes as buttons.
#[component]
pub(crate) fn Drawn(props: &DrawnProps) -> Html {
    let DrawnProps { seen, is_typing, on_open } = props;
    let drawn = use_mut_ref(|| None::<Seen>);
    let again = use_force_update();
    // Of another field that is live, the size is brought into sight at once.
    let is_other = drawn.borrow().as_ref().is_some_and(|drawn| drawn.live != seen.live);
    let is_late = *is_typing && !is_other;
    if !is_late {
        *drawn.borrow_mut() = Some(seen.clone());
    }
    {
        let drawn = drawn.clone();
        use_effect_with((seen.clone(), is_late), move |(seen, is_late)| {
            let seen = seen.clone();
            let rest = is_late.then(|| {
                after_frame(move || {
                    *drawn.borrow_mut() = Some(seen);
                    again.force_update();
                })
            });
            move || drop(rest)
        });
    }
    let drawn = drawn.borrow().clone();
    drawn.map_or_else(Html::default, |seen| html! { <Picture {seen} on_open={on_open.clone()} /> })
}

#[derive(Properties, PartialEq)]
struct PictureProps {
    seen: Seen,
    on_open: Callback<&'static str>,
}

/// The drawing as it was made last: nothing is made again for what it does not show.
#[component]
fn Picture(props: &PictureProps) -> Html {
    let PictureProps { seen: Seen { sheet, fields, live, tape }, on_open } = props;
    let scene = sheet.answer.as_ref().and_then(|it| it.drawing.as_ref());
    let sizes = Sizes { fields, sheet, live: *live, on_open: on_open.clone() };
    scene.map_or_else(Html::default, |scene| drawing_of_sizes(scene, *tape, &sizes))
}
