//! What is tapped in a list, as it stands at the tap: the one before may not be drawn yet.

use std::cell::RefCell;
use std::rc::Rc;

use yew::prelude::*;

/// What is chosen, in the order of the taps.
#[derive(Clone)]
pub(super) struct Chosen<T> {
    now: Rc<RefCell<Vec<T>>>,
    update: UseForceUpdateHandle,
}

impl<T: Clone + PartialEq> Chosen<T> {
    /// What is chosen at this moment.
    pub(super) fn now(&self) -> Vec<T> {
        self.now.borrow().clone()
    }

    /// Chooses something, or no longer.
    pub(super) fn toggle(&self, it: &T) {
        {
            let mut now = self.now.borrow_mut();
            match now.iter().position(|other| other == it) {
                Some(at) => drop(now.remove(at)),
                None => now.push(it.clone()),
            }
        }
        self.update.force_update();
    }
}

/// What is chosen, at first this.
#[hook]
pub(super) fn use_chosen<T: 'static>(first: impl FnOnce() -> Vec<T>) -> Chosen<T> {
    Chosen { now: use_mut_ref(first), update: use_force_update() }
}
