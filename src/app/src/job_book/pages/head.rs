//! The head of a page of a job: the way back, the title, undo and redo, and the way to the other sections; and the page that
//! stands where nothing is any more.

use yew::prelude::*;

use super::drafts;
use super::open::Open;
use crate::components::icon::{Icon, icon};
use crate::job_book::book::Edit;
use crate::platform::dom;

/// The sections of a job that stand on every page of it, with their names in the address.
const SECTIONS: [(&str, &str, Icon); 5] = [
    ("", "Front", Icon::Front),
    ("sizes", "Sizes", Icon::Sizes),
    ("parts", "Pieces", Icon::Pieces),
    ("boards", "Boards", Icon::Boards),
    ("more", "More", Icon::More),
];

/// The head of a page of the job: back, title, undo and redo.
pub(super) fn bar(open: &Open, back: &str, title: &str) -> Html {
    bar_with(open, back, title, html! { { title } })
}

/// The same, with the title as it is drawn.
pub(super) fn bar_with(open: &Open, back: &str, title: &str, drawn: Html) -> Html {
    dom::set_title(&format!("{title} · Sawdust Reckoner"));
    let name = |word: &str, step: Option<&str>| match step {
        Some(step) => format!("{word}: {step}"),
        None => word.to_owned(),
    };
    html! {
        <header class="bar">
            <a class="bar__link" href={back.to_owned()} aria-label="Back" data-testid="back">{ icon(Icon::Back) }</a>
            <h1 class="bar__title">{ drawn }</h1>
            <button type="button" class="bar__link" data-testid="undo" aria-label={name("Undo", open.book.last_step())}
                disabled={open.book.last_step().is_none()} onclick={open.doing(Edit::Undo)}>{ icon(Icon::Undo) }</button>
            <button type="button" class="bar__link" data-testid="redo" aria-label={name("Redo", open.book.next_step())}
                disabled={open.book.next_step().is_none()} onclick={open.doing(Edit::Redo)}>{ icon(Icon::Redo) }</button>
        </header>
    }
}

/// The way to the other sections of the job.
pub(super) fn sections(open: &Open, section: &str) -> Html {
    let count = drafts::count(open);
    let is_known = SECTIONS.iter().any(|(name, ..)| *name == section);
    let here = if is_known { section } else { "more" };
    html! {
        <nav class="sections" aria-label="Sections of the job">
            { for SECTIONS.iter().map(|(name, label, face)| html! {
                <a class="section-link" href={open.at(name)} data-testid={format!("section-{}", if name.is_empty() { "front" } else { name })}
                    aria-current={(here == *name).then_some("page")}>
                    { icon(*face) }
                    <span>{ *label }</span>
                    if name.is_empty() && count > 0 {
                        <span class="section-link__count" aria-label={format!("{count} to look at")} data-testid="to-look-at">{ count }</span>
                    }
                </a>
            }) }
        </nav>
    }
}

/// The page of what is not in the job.
pub(super) fn lost(open: &Open) -> Html {
    html! {
        <div class="page">
            { bar(open, &open.at(""), "Not here") }
            <main class="job">
                <p class="trouble" role="alert">{ "This is not in the job any more. It may come back with Undo." }</p>
            </main>
        </div>
    }
}
