//! Back, as a phone has it: it closes what was opened over the page before it leaves the page.
//!
//! A page over which something opens gets a second entry in the history, with the same address. Back goes to the first
//! one: what is open closes. What is closed by a tap leaves the second entry for the next opening; Back then goes past
//! the first one too, so that it leaves the page. Nothing is ever done to the history but in one of these two events, so
//! that no tap meets a step that is still on its way. Both entries know the visit they belong to, across a reload too.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use gloo::events::EventListener;
use gloo::utils::window;
use wasm_bindgen::JsValue;
use yew::prelude::*;

use super::clock;
use super::later::{Later, later};

/// An entry of the history that belongs to a visit: when it began, and whether it is the second one.
type Entry = (u64, bool);

const FIRST: &str = "under";
const SECOND: &str = "over";

/// Closes something.
type Close = Rc<dyn Fn()>;

thread_local! {
    /// The visit that is on the screen, once it has a second entry, and which of the two is the present one.
    static SHOWN: Cell<Option<Entry>> = const { Cell::new(None) };
    /// The step past the first entry.
    static PAST: RefCell<Option<Later>> = const { RefCell::new(None) };
    /// What is open, in the order of opening.
    static OPEN: RefCell<Vec<Close>> = const { RefCell::new(Vec::new()) };
}

/// The present entry, where it is one of ours.
fn entry() -> Option<Entry> {
    let state = window().history().ok()?.state().ok()?.as_string()?;
    let (place, visit) = state.split_once(' ')?;
    let is_second = match place {
        FIRST => false,
        SECOND => true,
        _ => return None,
    };
    Some((visit.parse().ok()?, is_second))
}

/// Whether the present entry was made by [`use_back`]: somebody was here before.
pub(super) fn is_known() -> bool {
    entry().is_some()
}

/// Whether the present entry belongs to the visit that is on the screen. If not, its own is from now on.
pub(super) fn is_of_this_visit() -> bool {
    let visit = |entry: Option<Entry>| entry.map(|(visit, _)| visit);
    let now = entry();
    let shown = SHOWN.replace(now);
    shown.is_some() && visit(shown) == visit(now)
}

/// Whether a step past the page is on its way: who writes into its entry now may stop it.
pub(super) fn is_leaving() -> bool {
    PAST.with_borrow(Option::is_some)
}

/// Hears of Back, for as long as what is returned is kept. `other_entry` is called in the other entry of the visit on the
/// screen: what was typed stands in the address of both.
pub(super) fn listen(other_entry: fn()) -> EventListener {
    // The entry that is here now, before any step.
    SHOWN.set(entry());
    EventListener::new(&window(), "popstate", move |_| {
        PAST.set(None);
        let (now, shown) = (entry(), SHOWN.get());
        let (Some((visit, is_second)), Some((same, was_second))) = (now, shown) else { return };
        if visit != same {
            return;
        }
        SHOWN.set(now);
        other_entry();
        if was_second && !is_second {
            match OPEN.with_borrow_mut(Vec::pop) {
                Some(close) => close(),
                // A browser takes no step while it takes one.
                None => PAST.with_borrow_mut(|past| {
                    *past = Some(later(0, || {
                        if let Ok(history) = window().history() {
                            drop(history.back());
                        }
                    }));
                }),
            }
        }
    })
}

/// Gives the page its second entry, if it has none.
fn hold() {
    PAST.set(None);
    let Ok(history) = window().history() else { return };
    let visit = match entry() {
        Some((_, true)) => return,
        Some((visit, false)) => visit,
        None => clock::now(),
    };
    let state = |place: &str| JsValue::from_str(&format!("{place} {visit}"));
    // A browser may refuse too many changes a minute: Back then leaves the page at once.
    if history.replace_state(&state(FIRST), "").is_ok()
        && history.push_state(&state(SECOND), "").is_ok()
    {
        SHOWN.set(Some((visit, true)));
    }
}

/// While something is open, Back closes it by `close`.
#[hook]
pub(crate) fn use_back(is_open: bool, close: Callback<()>) {
    let now = use_mut_ref(Callback::noop);
    *now.borrow_mut() = close;
    use_effect_with(is_open, move |is_open| {
        let own: Option<Close> = is_open.then(|| {
            let own: Close = Rc::new(move || {
                let close = now.borrow().clone();
                close.emit(());
            });
            hold();
            OPEN.with_borrow_mut(|open| open.push(own.clone()));
            own
        });
        move || {
            if let Some(own) = own {
                OPEN.with_borrow_mut(|open| open.retain(|it| !Rc::ptr_eq(it, &own)));
            }
        }
    });
}
