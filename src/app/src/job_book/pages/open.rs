//! The job that stands open: what every page of it is drawn from, and does its steps with.

use std::cell::RefCell;
use std::collections::BTreeSet;
use std::rc::Rc;

use reckoner_core::attention::{Attention, NotKept};
use reckoner_core::job::{Job, Reckoned, Step};
use yew::prelude::*;

use crate::job_book::book::{Book, Edit};
use crate::job_book::hook::OnPage;
use crate::job_book::kept_form::Keeping;
use crate::route;
use crate::settings::Settings;

/// A job worked out, with what the pages of it need.
#[derive(Clone)]
pub(super) struct Open {
    pub(super) key: String,
    pub(super) book: Rc<Book>,
    pub(super) reckoned: Rc<Reckoned>,
    pub(super) attention: Rc<Attention>,
    /// Why the device does not keep the job at this moment. The list of `attention` has it from the next edit or page on:
    /// what comes by itself moves nothing.
    pub(super) not_kept: Option<NotKept>,
    pub(super) on_page: OnPage,
    /// The forms that had something in them at the last edit or page.
    pub(super) known: Rc<BTreeSet<String>>,
    pub(super) settings: Rc<Settings>,
    /// How often something else than their fields filled the forms.
    pub(super) revision: u32,
    /// Whether the next page of an example opens with the keys out: it was come to by one of them.
    pub(super) with_keys: Rc<RefCell<bool>>,
}

/// The job at hand, compared by what is in it.
#[derive(Clone)]
pub(super) struct Shared(pub(super) Open);

impl PartialEq for Shared {
    fn eq(&self, other: &Shared) -> bool {
        Rc::ptr_eq(&self.0.book, &other.0.book)
            && Rc::ptr_eq(&self.0.attention, &other.0.attention)
            && self.0.not_kept == other.0.not_kept
            && Rc::ptr_eq(&self.0.settings, &other.0.settings)
            && self.0.revision == other.0.revision
    }
}

impl Open {
    /// The address of a section or item of the job.
    pub(super) fn at(&self, rest: &str) -> String {
        route::in_job(&self.key, rest)
    }

    /// A callback that does an edit.
    pub(super) fn doing(&self, edit: Edit) -> Callback<MouseEvent> {
        let on_page = self.on_page.clone();
        Callback::from(move |_| on_page.edit(edit.clone()))
    }

    /// A callback that makes the step that is worked out from the job as it stands then.
    pub(super) fn making(
        &self,
        step: impl Fn(&Job) -> Option<Step> + 'static,
    ) -> Callback<MouseEvent> {
        let on_page = self.on_page.clone();
        Callback::from(move |_| {
            on_page.make(&step);
        })
    }

    /// What a form in the job needs.
    pub(super) fn keeping(&self) -> Keeping {
        let bench = self.settings.bench;
        Keeping { on_page: self.on_page.clone(), reckoned: self.reckoned.clone(), bench }
    }
}
