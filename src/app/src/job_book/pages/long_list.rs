//! A long list: only the rows near the screen are drawn. The others are held open by a space of
//! their height, so that the list scrolls as if they were there.

use std::rc::Rc;

use yew::prelude::*;

use crate::platform::near;

/// Rows that come and go together.
const TOGETHER: usize = 40;

/// A list of so many rows is drawn whole.
const SHORT: usize = 80;

/// How tall a row is before it was drawn, in pixels.
const ROW: usize = 76;

/// How a row is drawn. Another one each time: what it draws may have changed.
#[derive(Clone)]
struct Draw(Rc<dyn Fn(usize) -> Html>);

impl PartialEq for Draw {
    fn eq(&self, other: &Draw) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

/// `count` rows of a list, each drawn by `draw` as an `li`.
pub(super) fn long_list(count: usize, draw: impl Fn(usize) -> Html + 'static) -> Html {
    if count <= SHORT {
        return html! { { for (0..count).map(draw) } };
    }
    let draw = Draw(Rc::new(draw));
    html! {
        { for (0..count).step_by(TOGETHER).map(|first| html! {
            <Stretch key={first.to_string()} {first} last={first.saturating_add(TOGETHER).min(count)} draw={draw.clone()} />
        }) }
    }
}

#[derive(Properties, PartialEq)]
struct StretchProps {
    first: usize,
    last: usize,
    draw: Draw,
}

/// Some rows of a long list.
#[component]
fn Stretch(props: &StretchProps) -> Html {
    let StretchProps { first, last, draw } = props;
    let is_near = use_state_eq(|| *first == 0);
    let height = use_mut_ref(|| None::<f64>);
    let place = use_node_ref();
    {
        let (place, is_near, height) = (place.clone(), is_near.clone(), height.clone());
        use_effect_with((), move |()| {
            let watch = near::watch(&place, near::NEAR, move |now, tall| {
                if !now && tall > 0.0 {
                    *height.borrow_mut() = Some(tall);
                }
                is_near.set(now);
            });
            move || drop(watch)
        });
    }
    let estimate = last.saturating_sub(*first).saturating_mul(ROW).to_string();
    let height = height.borrow().map_or(estimate, |tall| tall.to_string());
    html! {
        <li class="stretch" ref={place}>
            if *is_near {
                <ul class="rows">{ for (*first..*last).map(|index| (draw.0)(index)) }</ul>
            } else {
                <svg class="stretch__space" width="1" {height} aria-hidden="true"></svg>
            }
        </li>
    }
}
