//! [`use_book`]: a job on the page, kept on the shelf, followed when another page changes it.

use std::cell::{Cell, RefCell};
use std::collections::VecDeque;
use std::rc::Rc;

use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::book::{Book, Edit};
use crate::platform::shelf::{self, ShelfProblem};

/// A job on the page.
#[derive(Clone, PartialEq)]
pub(crate) struct OnPage {
    key: String,
    /// `None` while it is fetched, or when it cannot be.
    pub(crate) book: UseStateHandle<Option<Rc<Book>>>,
    /// What the user must be told.
    pub(crate) trouble: UseStateHandle<Option<String>>,
    /// Edits that are on the page and not on the shelf yet, in order.
    waiting: Rc<RefCell<VecDeque<Edit>>>,
    /// Whether they are on their way.
    is_sending: Rc<Cell<bool>>,
}

impl OnPage {
    /// Does an edit: on the page at once, on the shelf a moment later.
    pub(crate) fn edit(&self, edit: Edit) {
        let Some(now) = &*self.book else { return };
        let mut book = (**now).clone();
        // A page that is behind the shelf is refused there, not here, and then shows what is true.
        if book.edit(&edit).is_ok() {
            self.book.set(Some(Rc::new(book)));
        }
        self.waiting.borrow_mut().push_back(edit);
        let on_page = self.clone();
        spawn_local(async move { on_page.send().await });
    }

    /// Sends what is waiting, one after the other. What finds no room waits for the next edit.
    async fn send(&self) {
        if self.is_sending.replace(true) {
            return;
        }
        loop {
            let next = self.waiting.borrow().front().cloned();
            let Some(edit) = next else { break };
            match shelf::edit(&self.key, &edit).await {
                Ok(book) => {
                    self.waiting.borrow_mut().pop_front();
                    if self.waiting.borrow().is_empty() {
                        self.trouble.set(None);
                        self.book.set(Some(Rc::new(book)));
                    }
                }
                Err(problem @ ShelfProblem::Conflict(_)) => {
                    self.waiting.borrow_mut().clear();
                    self.fetch().await;
                    self.trouble.set(Some(problem.to_string()));
                }
                Err(problem) => {
                    // A job of this page alone has taken it.
                    if shelf::on_this_page(&self.key).is_some() {
                        self.waiting.borrow_mut().pop_front();
                    }
                    self.trouble.set(Some(problem.to_string()));
                    break;
                }
            }
        }
        self.is_sending.set(false);
    }

    async fn fetch(&self) {
        if let Some(book) = shelf::on_this_page(&self.key) {
            self.book.set(Some(Rc::new(book)));
            self.trouble.set(Some(ShelfProblem::NotTaken.to_string()));
            return;
        }
        match shelf::fetch(&self.key).await {
            Ok((book, n_set_aside)) => {
                if n_set_aside > 0 {
                    self.trouble.set(Some(format!(
                        "{n_set_aside} of its items are damaged and were set aside. Everything else is here."
                    )));
                }
                self.book.set(Some(Rc::new(book)));
            }
            Err(problem) => self.trouble.set(Some(problem.to_string())),
        }
    }

    /// Takes over what another page changed. What is not on the shelf yet is not thrown away.
    async fn follow(&self) {
        if self.waiting.borrow().is_empty() {
            self.fetch().await;
        } else {
            self.send().await;
        }
    }
}

/// The job with this key.
#[hook]
pub(crate) fn use_book(key: &str) -> OnPage {
    let book = use_state_eq(|| None);
    let trouble = use_state_eq(|| None);
    let (waiting, is_sending) =
        (use_memo((), |()| RefCell::default()), use_memo((), |()| Cell::new(false)));
    let on_page = OnPage { key: key.to_owned(), book, trouble, waiting, is_sending };
    {
        let on_page = on_page.clone();
        use_effect_with(key.to_owned(), move |key| {
            let fetching = on_page.clone();
            spawn_local(async move { fetching.fetch().await });
            let key = key.clone();
            let hearing = shelf::hear(move |changed| {
                if changed == key {
                    let on_page = on_page.clone();
                    spawn_local(async move { on_page.follow().await });
                }
            });
            move || drop(hearing)
        });
    }
    on_page
}
