//! Handing a job on: as a file, as a link, as lists. None of it needs a signal.

use reckoner_core::job::part_sizes;
use reckoner_formats::{build_order_csv, pack, parts_csv, write_job, write_job_file};
use yew::prelude::*;

use super::open::{Open, Shared};
use super::{build, removed};
use crate::job_book::reminder;
use crate::platform::{address, files, sharing, storage};

/// Longest link that is offered: some programs cut longer ones short. Common practice, no source.
const MOST_LINK: usize = 8_000;

pub(super) fn view(open: &Open) -> Html {
    html! { <HandOn open={Shared(open.clone())} /> }
}

#[derive(Properties, PartialEq)]
struct HandOnProps {
    open: Shared,
}

/// A file name of the title: letters and digits of any script, and hyphens.
pub(super) fn file_name(title: &str, ending: &str) -> String {
    let name: String =
        title.chars().map(|c| if c.is_alphanumeric() { c } else { '-' }).take(60).collect();
    let name = name.trim_matches('-');
    format!("{}.{ending}", if name.is_empty() { "job" } else { name })
}

/// Gives the user the job as a file, and notes that it was saved.
pub(super) fn save_as_file(open: &Open) {
    let job = &open.book.job;
    files::save(
        &file_name(&job.title, "job.json"),
        "application/json",
        write_job_file(job).as_bytes(),
    );
    storage::set(&storage::saved(&open.key), reminder::SAVED);
}

#[component]
fn HandOn(props: &HandOnProps) -> Html {
    let open = &props.open.0;
    let job = &open.book.job;
    let said = use_state_eq(String::new);
    let save = |ending: &'static str, kind: &'static str, text: Box<dyn Fn(&Open) -> String>| {
        let open = open.clone();
        Callback::from(move |_: MouseEvent| {
            files::save(&file_name(&open.book.job.title, ending), kind, text(&open).as_bytes());
        })
    };
    let as_file = {
        let open = open.clone();
        Callback::from(move |_: MouseEvent| save_as_file(&open))
    };
    let parts = save(
        "parts.csv",
        "text/csv",
        Box::new(|open| {
            let sizes = part_sizes(&open.book.job, &open.reckoned);
            parts_csv(&open.book.job, &sizes, open.settings.bench.tape)
        }),
    );
    let steps = save(
        "build-order.csv",
        "text/csv",
        Box::new(|open| {
            let order = build::order_of(open);
            build_order_csv(&open.book.job, &order, open.settings.bench.tape)
        }),
    );
    let packed = pack(&write_job(job));
    let link = (packed.len() <= MOST_LINK).then(|| {
        let said = said.clone();
        Callback::from(move |_: MouseEvent| {
            let page = address::whole();
            let page = page.split('#').next().unwrap_or_default().to_owned();
            let said = said.clone();
            sharing::copy(format!("{page}#/take?{packed}"), move |worked| {
                said.set(
                    if worked { "Link copied." } else { "This browser does not let me copy." }
                        .to_owned(),
                );
            });
        })
    });
    let remove = {
        let (on_page, said, title) = (open.on_page.clone(), said.clone(), job.title.clone());
        Callback::from(move |_: MouseEvent| {
            let (on_page, said, title) = (on_page.clone(), said.clone(), title.clone());
            wasm_bindgen_futures::spawn_local(async move {
                match on_page.remove().await {
                    Ok(()) => {
                        removed::just_removed((on_page.key().to_owned(), title));
                        address::go("#/jobs");
                    }
                    Err(problem) => said.set(format!("It is still here: {problem}.")),
                }
            });
        })
    };
    html! {
        <div class="hand-on">
            <h2 class="job__title">{ "To another phone" }</h2>
            <div class="adds">
                <a class="tool tool--main" href={open.at("codes")} data-testid="to-codes">{ "Show as codes" }</a>
                <button type="button" class="tool" data-testid="save-file" onclick={as_file}>{ "Save as a file" }</button>
                if let Some(onclick) = link {
                    <button type="button" class="tool" data-testid="copy-job-link" {onclick}>{ "Copy as a link" }</button>
                } else {
                    <p class="job__words">{ "This job is too large for a link. Send it as a file." }</p>
                }
            </div>
            <h2 class="job__title">{ "On paper" }</h2>
            <div class="adds">
                <a class="tool" href={open.at("card")} data-testid="to-card">{ "Shop card" }</a>
                <a class="tool" href={open.at("labels")} data-testid="to-labels">{ "Labels for pieces" }</a>
                <a class="tool" href={open.at("buy/paper")} data-testid="to-yard-paper">{ "To buy, for the yard" }</a>
            </div>
            <p class="job__words">{ "Templates to print full size stand with the kept calculators." }</p>
            <h2 class="job__title">{ "To a spreadsheet" }</h2>
            <div class="adds">
                <button type="button" class="tool" data-testid="save-parts" onclick={parts}>{ "Pieces as a list (CSV)" }</button>
                <button type="button" class="tool" data-testid="save-steps" onclick={steps}>{ "Build order as a list (CSV)" }</button>
                <a class="tool" href={open.at("buy")} data-testid="to-buy-page">{ "Everything to buy" }</a>
            </div>
            <div class="adds">
                <button type="button" class="tool" data-testid="remove-job" onclick={remove}>{ "Take it off this device" }</button>
            </div>
            <p role="status" data-testid="hand-on-said">{ &*said }</p>
        </div>
    }
}
