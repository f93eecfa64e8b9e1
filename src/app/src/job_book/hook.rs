//! [`use_book`]: a job on the page, kept on the shelf, followed when another page changes it.

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
        let on_page = self.clone();
        spawn_local(async move {
            match shelf::edit(&on_page.key, &edit).await {
                Ok(book) => {
                    on_page.trouble.set(None);
                    on_page.book.set(Some(Rc::new(book)));
                }
                Err(problem @ ShelfProblem::Conflict(_)) => {
                    on_page.fetch().await;
                    on_page.trouble.set(Some(problem.to_string()));
                }
                Err(problem) => on_page.trouble.set(Some(problem.to_string())),
            }
        });
    }

    async fn fetch(&self) {
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
}

/// The job with this key.
#[hook]
pub(crate) fn use_book(key: &str) -> OnPage {
    let book = use_state_eq(|| None);
    let trouble = use_state_eq(|| None);
    let on_page = OnPage { key: key.to_owned(), book, trouble };
    {
        let on_page = on_page.clone();
        use_effect_with(key.to_owned(), move |key| {
            let fetching = on_page.clone();
            spawn_local(async move { fetching.fetch().await });
            let key = key.clone();
            let hearing = shelf::hear(move |changed| {
                if changed == key {
                    let on_page = on_page.clone();
                    spawn_local(async move { on_page.fetch().await });
                }
            });
            move || drop(hearing)
        });
    }
    on_page
}
