//! A fold: one row, which opens in place. It stays as it was left while its page stands, whatever is made anew in between.

use std::cell::RefCell;
use std::collections::BTreeSet;
use std::rc::Rc;

use yew::prelude::*;

use crate::platform::dom;

/// The folds of a page that stand open, by name.
#[derive(Clone, Default)]
pub(crate) struct Opened(Rc<RefCell<BTreeSet<String>>>);

impl PartialEq for Opened {
    fn eq(&self, other: &Opened) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

/// Whether the fold of this name stands open, and what opens or closes it.
#[hook]
pub(crate) fn use_fold(name: &str) -> (bool, Callback<bool>) {
    let own = use_memo((), |()| Opened::default());
    let opened = use_context::<Opened>().unwrap_or_else(|| (*own).clone());
    let again = use_force_update();
    let is_open = opened.0.borrow().contains(name);
    let name = name.to_owned();
    let set = Callback::from(move |is: bool| {
        let is_other = if is {
            opened.0.borrow_mut().insert(name.clone())
        } else {
            opened.0.borrow_mut().remove(&name)
        };
        if is_other {
            again.force_update();
        }
    });
    (is_open, set)
}

#[derive(Properties, PartialEq)]
pub(crate) struct FoldProps {
    /// Among those of its page.
    pub(crate) name: String,
    #[prop_or_default]
    pub(crate) class: Classes,
    #[prop_or_default]
    pub(crate) testid: Option<String>,
    /// Of its row.
    #[prop_or_default]
    pub(crate) toggle: Option<&'static str>,
    /// What stands in its row.
    pub(crate) summary: Html,
    pub(crate) children: Html,
}

/// A fold.
#[component]
pub(crate) fn Fold(props: &FoldProps) -> Html {
    let FoldProps { name, class, testid, toggle, summary, children } = props;
    let (is_open, set) = use_fold(name);
    let ontoggle = Callback::from(move |event: Event| {
        if let Some(now) = dom::toggled(&event, ".fold") {
            set.emit(now);
        }
    });
    html! {
        <details class={classes!("fold", class.clone())} data-testid={testid.clone()} open={is_open} {ontoggle}>
            <summary data-testid={*toggle}>{ summary.clone() }</summary>
            { children.clone() }
        </details>
    }
}
