//! What this page knows of its notes: those that are not known to be in the database, who listens, and under which names
//! something stands where.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use gloo::utils::window;
use reckoner_core::order::set_of;
use web_sys::Storage;

use crate::platform::database::{NOTES, Problem, Write};
use crate::platform::later::Later;
use crate::platform::{alive, clock};

/// What a name begins with in the local storage while the database has not taken the note.
pub(super) const ASIDE: &str = "reckoner.note.";
/// Names of what is no note of a job begin with this in the database.
pub(super) const KEPT: &str = "kept";
/// Under this and the name of a page the database says which writings of it it has taken.
pub(super) const TAKEN: &str = "taken";

/// A note that is not known to be in the database: its text, or that it is to go.
pub(super) struct Unsaved {
    pub(super) text: Option<String>,
    /// Which writing of it this is.
    pub(super) number: u64,
    /// On its way, and not known to have failed.
    pub(super) is_sent: bool,
    /// The writings of other pages in whose place it lies beside the database.
    pub(super) over: Vec<Writing>,
}

/// Which writing of which page.
pub(super) type Writing = (String, u64);

#[derive(Default)]
pub(super) struct State {
    pub(super) unsaved: BTreeMap<String, Unsaved>,
    /// Texts that are kept by name and that the local storage does not take: this page has them from here, the next one
    /// from the database.
    pub(super) held: BTreeMap<String, String>,
    /// Notes of pages that live no more that this page shows, as they lie beside the database: they are to be brought in.
    pub(super) shown: BTreeSet<String>,
    /// Somebody waits for a note to come into the database.
    pub(super) is_awaited: bool,
    pub(super) number: u64,
    pub(super) problem: Option<Problem>,
    /// What is in trouble: jobs by their keys, and the notes.
    pub(super) in_trouble: BTreeSet<String>,
    /// What the listeners know: the problem, and whether a text that is kept by name is nowhere but here.
    pub(super) told: (Option<Problem>, bool),
    pub(super) listeners: BTreeMap<u64, Rc<dyn Fn()>>,
    /// Those who ask for something again that could not be read.
    pub(super) readers: BTreeMap<u64, Rc<dyn Fn()>>,
    pub(super) wait: u32,
    pub(super) again: Option<Later>,
}

thread_local! {
    pub(super) static STATE: RefCell<State> = RefCell::default();
}

impl State {
    /// What the database has taken once it has done a writing that is to be begun, apart from `without`: what is on its
    /// way before it may still be given up.
    pub(super) fn taken(&self, without: BTreeSet<u64>) -> Write {
        let taken = Taken { at: clock::now(), up_to: self.number, without };
        Write::Put(NOTES, Taken::key(&alive::page()), taken.written().into())
    }

    pub(super) fn not_kept(&self) -> Option<Problem> {
        let is_out = self.held.keys().any(|name| self.unsaved.contains_key(&kept_key(name)));
        self.problem.clone().filter(|_| is_out)
    }
}

/// Which writings of a page the database has taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Taken {
    /// When it said so, in milliseconds.
    pub(super) at: u64,
    /// All up to this,
    pub(super) up_to: u64,
    /// without these.
    pub(super) without: BTreeSet<u64>,
}

impl Taken {
    pub(super) fn has(&self, number: u64) -> bool {
        number <= self.up_to && !self.without.contains(&number)
    }

    pub(super) fn written(&self) -> String {
        let without: Vec<String> = self.without.iter().map(u64::to_string).collect();
        format!("{} {} {}", self.at, self.up_to, without.join(","))
    }

    pub(super) fn read(text: &str) -> Option<Taken> {
        let mut words = text.splitn(3, ' ');
        let mut number = || words.next()?.parse().ok();
        let (at, up_to) = (number()?, number()?);
        let without = set_of(words.next()?.split(',').filter_map(|number| number.parse().ok()));
        Some(Taken { at, up_to, without })
    }

    /// The key of what is said of a page.
    pub(super) fn key(page: &str) -> String {
        format!("{TAKEN}/{page}")
    }
}

pub(super) fn local() -> Option<Storage> {
    window().local_storage().ok().flatten()
}

/// What stands in the local storage under names that begin so: the rest of each name, with its text.
pub(super) fn standing(begin: &str) -> Vec<(String, String)> {
    let Some(local) = local() else { return Vec::new() };
    let names = (0..local.length().unwrap_or(0)).filter_map(|at| local.key(at).ok()?);
    let text = |name: &str| local.get_item(name).ok().flatten();
    names.filter_map(|name| Some((name.strip_prefix(begin)?.to_owned(), text(&name)?))).collect()
}

/// Whether a note of a job: what is kept for every start stands in the local storage already.
pub(in crate::platform) fn is_of_job(key: &str) -> bool {
    ![KEPT, TAKEN].iter().any(|other| key.starts_with(other))
}

/// What a name is in the local storage,
pub(in crate::platform) fn named(name: &str) -> String {
    format!("reckoner.{name}")
}

/// and in the database.
pub(super) fn kept_key(name: &str) -> String {
    format!("{KEPT}/{name}")
}
