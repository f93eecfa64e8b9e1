//! The front page of a job: its name, its picture, and what wants looking at.

use yew::prelude::*;

use super::attention::attention;
use super::{Open, Shared, add, remind, sizes, title};

pub(super) fn view(open: &Open) -> Html {
    html! {
        <div class="front" data-testid="front">
            <remind::Remind open={Shared(open.clone())} />
            { title::input(open, "title".to_owned(), &open.book.job.title, "Name of the job", "job-title") }
            { attention(open) }
            if open.book.job.items().next().is_none() { { begin(open) } }
            { sizes::sketch_of(open) }
        </div>
    }
}

/// How a job begins that has nothing in it.
fn begin(open: &Open) -> Html {
    html! {
        <>
            <p class="job__words">{ "Begin with the pieces to cut, or with the sizes that they come of." }</p>
            <div class="adds">{ add(open, "part", "Add a piece") }{ add(open, "measure", "Add a size") }</div>
        </>
    }
}
