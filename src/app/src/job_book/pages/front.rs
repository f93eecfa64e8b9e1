//! The front page of a job: its name, its picture, and what wants looking at.

use yew::prelude::*;

use super::attention::attention;
use super::{Open, Shared, remind, sizes, title};

pub(super) fn view(open: &Open) -> Html {
    html! {
        <div class="front" data-testid="front">
            <remind::Remind open={Shared(open.clone())} />
            { title::input(open, "title".to_owned(), &open.book.job.title, "Name of the job", "job-title") }
            { attention(open) }
            { sizes::sketch_of(open) }
        </div>
    }
}
