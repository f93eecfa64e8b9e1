//! Making parts of a kept reckoning: what will be added is shown before anything changes.

use reckoner_core::job::make_parts::{Does, MadePart, make_parts};
use reckoner_core::job::{Item, ItemId, Kept, Reckoned};
use reckoner_core::measure::text::Quantity;
use yew::prelude::*;

use super::head::bar;
use super::open::Open;
use crate::components::measure::quantity;
use crate::platform::address;

/// The page `parts-of/KEPT`.
pub(super) fn page(open: &Open, id: ItemId, kept: &Kept) -> Html {
    let back = open.at(&format!("item/{}", id.0));
    let job = &open.book.job;
    let Some(making) = make_parts(job, &open.reckoned, &open.settings.bench, id) else {
        return html! {
            <div class="page">
                { bar(open, &back, &kept.title) }
                <main class="job"><p class="job__words">{ "This question makes no pieces, or has no answer yet." }</p></main>
            </div>
        };
    };
    // The job as it would be, to say what each size comes to.
    let after = making.step.as_ref().and_then(|step| {
        let mut trial = job.clone();
        trial.make(step).ok()?;
        Some(open.reckoned.after(&trial, &open.settings.bench))
    });
    let after = after.as_ref().unwrap_or(&open.reckoned);
    let put = making.step.is_some().then(|| {
        let open = open.clone();
        Callback::from(move |_: MouseEvent| {
            address::go_by(|| {
                let step =
                    |job: &_| make_parts(job, &open.reckoned, &open.settings.bench, id)?.step;
                open.on_page.make(step).then(|| open.at("parts"))
            });
        })
    });
    let left: Vec<&str> =
        making.left.iter().filter_map(|id| job.item(*id).map(Item::name)).collect();
    html! {
        <div class="page">
            { bar(open, &back, &format!("Pieces of {}", kept.title)) }
            <main class="job" data-testid="making">
                <ul class="rows">{ for making.parts.iter().map(|it| part(open, it, after)) }</ul>
                if !making.measures.is_empty() {
                    <p class="job__words">
                        { format!("With them come sizes that follow this answer: {}.", making.measures.join("; ")) }
                    </p>
                }
                if !left.is_empty() {
                    <p class="job__words">{ format!("Made before, and no longer in this answer; they stay: {}.", left.join(", ")) }</p>
                }
                <div class="adds">
                    if let Some(onclick) = put {
                        <button type="button" class="tool tool--main" data-testid="put-parts" {onclick}>{ "Put them in the job" }</button>
                    } else {
                        <p class="job__words" role="status">{ "All of these are in the job already, and up to date." }</p>
                    }
                </div>
            </main>
        </div>
    }
}

fn part(open: &Open, it: &MadePart, after: &Reckoned) -> Html {
    let tape = open.settings.bench.tape;
    let part = &it.part;
    let side = |text: &str| match after.length_of(text) {
        Ok(length) => quantity(Some(Quantity::Length(length)), tape),
        Err(_) => html! { <span class="row__unknown">{ "?" }</span> },
    };
    let does = match it.does {
        Does::Adds => "new",
        Does::Changes => "brought up to date",
        Does::Nothing => "in the job already",
    };
    let written: Vec<&str> = [&part.thickness, &part.width, &part.length]
        .into_iter()
        .map(String::as_str)
        .filter(|text| !text.is_empty())
        .collect();
    let to_write = it.still_to_write();
    html! {
        <li class="row" data-testid={format!("made-{}", part.name)}>
            <span class="row__name">{ &part.name }</span>
            <span class="row__value">{ side(&part.thickness) }{ " × " }{ side(&part.width) }{ " × " }{ side(&part.length) }</span>
            <span class="row__more">
                <span class="badge">{ does }</span>
                { format!("How many: {}. ", part.quantity) }
                if !part.stock.is_empty() { { format!("Cut from: {}. ", part.stock) } }
                { format!("Sizes from: {}. ", written.join(", ")) }
                if !to_write.is_empty() { { format!("Still to write: {}.", to_write.join(", ")) } }
            </span>
        </li>
    }
}
