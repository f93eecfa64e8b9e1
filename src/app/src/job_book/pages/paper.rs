//! Paper of a job: the shop card, and labels for its parts. Printed by the browser, on letter or A4.

use std::collections::BTreeSet;

use reckoner_core::build_order::BuildStep;
use reckoner_core::job::kinds::ours_line;
use reckoner_core::job::{
    Hand, Item, ItemId, Label, Measure, MeasureState, OnOurs, PartSizes, Piece, cautions, labels,
    part_sizes, sketch,
};
use reckoner_core::measure::Length;
use reckoner_core::sheet::Side;
use yew::prelude::*;

use super::build;
use super::head::bar;
use super::open::Open;
use crate::components::drawing::drawing;
use crate::components::icon::{Icon, icon};
use crate::components::measure::{self, length as length_view, quantity};
use crate::components::sentence::sentence;
use crate::platform::dom;

/// Most tick boxes of one part on the card.
const MOST_BOXES: u32 = 40;

/// A page that is printed; `back` is where it comes from.
pub(super) fn page(open: &Open, back: &str, title: &str, tools: Html, body: Html) -> Html {
    let print = Callback::from(|_: MouseEvent| dom::print());
    html! {
        <div class="page page--job page--paper">
            { bar(open, &open.at(back), title) }
            <main class="job">
                <div class="not-printed">
                    <p class="job__words">{ "For letter or A4: choose the paper in the window that opens. It can also save a PDF there." }</p>
                    <div class="adds">
                        <button type="button" class="tool tool--main" data-testid="print" onclick={print}>{ "Print" }</button>
                    </div>
                    { tools }
                </div>
                { body }
            </main>
        </div>
    }
}

/// The shop card: everything of the job that is wanted at the bench.
pub(super) fn card(open: &Open) -> Html {
    let sizes = part_sizes(&open.book.job, &open.reckoned);
    let warnings = cautions(&open.book.job, &open.reckoned, &sizes);
    let on_ours = OnOurs::of(&open.book.job, &open.reckoned);
    let body = html! {
        // Its tables are wider than a phone: it scrolls by itself, and by keys.
        <article class="card" tabindex="0" aria-label="Shop card" data-testid="card">
            <header class="card__head">
                <h2>{ &open.book.job.title }</h2>
                <p>{ "Date" }<span class="blank" aria-hidden="true"></span></p>
            </header>
            if let Some(ours) = ours_line(&open.book.job, &open.reckoned) {
                <p data-testid="card-ours">{ ours }{ "." }</p>
            }
            if !warnings.is_empty() {
                <section class="card__cautions">
                    <h3>{ "Cautions" }</h3>
                    <ul>{ for warnings.iter().map(|it| html! { <li>{ it.line().on(open.settings.bench.tape) }</li> }) }</ul>
                </section>
            }
            { measures(open, &on_ours) }
            { parts(open, &on_ours, &sizes) }
            { together(open, &on_ours) }
            { drawings(open) }
        </article>
    };
    page(open, "hand-on", "Shop card", html! {}, body)
}

/// A figure in a table of the card; what rests on an example of ours says so.
fn figure(inside: Html, is_ours: bool) -> Html {
    html! {
        <td class={classes!("card__figure", is_ours.then_some("is-pencil"))}>
            { inside }
            if is_ours { { " (example)" } }
        </td>
    }
}

fn measures(open: &Open, on_ours: &OnOurs) -> Html {
    let all = open.book.job.measures();
    if all.is_empty() {
        return html! {};
    }
    html! {
        <section>
            <h3>{ "Sizes" }</h3>
            <table class="card__table">
                <thead><tr><th scope="col">{ "Size" }</th><th scope="col">{ "Planned" }</th><th scope="col" class="card__as-cut">{ "The tape says" }</th><th scope="col">{ "Note" }</th></tr></thead>
                <tbody>{ for all.iter().map(|(id, it)| measure_row(open, on_ours, *id, it)) }</tbody>
            </table>
        </section>
    }
}

fn measure_row(open: &Open, on_ours: &OnOurs, id: ItemId, it: &Measure) -> Html {
    let tape = open.settings.bench.tape;
    let state = open.reckoned.measure(id);
    let planned = state.and_then(|state| state.planned.as_ref().ok().copied());
    let as_cut = state.filter(|state| state.is_as_cut()).map(MeasureState::in_use);
    html! {
        <tr>
            <th scope="row">{ &it.name }</th>
            { figure(quantity(planned, tape), on_ours.has(id)) }
            // An empty place to write in what the tape says.
            <td class="card__figure">{ match as_cut { Some(value) => quantity(value, tape), None => html! {} } }</td>
            <td>{ if it.is_to_measure() { "Measure first. " } else { "" } }{ &it.note }</td>
        </tr>
    }
}

/// Thickness, width and length, with what is not known as a question mark.
fn size(open: &Open, sides: [Option<Length>; 3]) -> Html {
    let side = |side: Option<Length>| match side {
        Some(length) => length_view(length, open.settings.bench.tape),
        None => "?".into(),
    };
    let [thickness, width, length] = sides.map(side);
    html! { <>{ thickness }{ " × " }{ width }{ " × " }{ length }</> }
}

fn parts(open: &Open, on_ours: &OnOurs, sizes: &[PartSizes]) -> Html {
    if sizes.is_empty() {
        return html! {};
    }
    html! {
        <section>
            <h3>{ "Pieces" }</h3>
            <table class="card__table">
                <thead><tr><th scope="col">{ "Piece" }</th><th scope="col">{ "Cut" }</th><th scope="col">{ "Thickness × width × length" }</th><th scope="col">{ "From" }</th><th scope="col">{ "Note" }</th></tr></thead>
                <tbody>{ for sizes.iter().map(|it| part_row(open, on_ours, it)) }</tbody>
            </table>
        </section>
    }
}

fn part_row(open: &Open, on_ours: &OnOurs, it: &PartSizes) -> Html {
    let Some(Item::Part(part)) = open.book.job.item(it.id) else { return html! {} };
    let count = it.quantity.as_ref().copied().unwrap_or(0);
    let is_done = |index: u32| part.pieces.get(index as usize).is_some_and(Piece::is_cut);
    let name = |id: &ItemId| open.book.job.item(*id).map_or("", Item::name);
    let waits: Vec<&str> = it.waits_for.iter().map(name).collect();
    let is_pair = part.hand == Hand::Pairs;
    let mut notes: Vec<String> = Vec::new();
    if !waits.is_empty() {
        notes.push(format!("Wait for {}.", waits.join(", ")));
    }
    if is_pair {
        notes.push("Left and right pairs.".to_owned());
    }
    notes.extend([&part.show_face, &part.note].into_iter().filter(|it| !it.is_empty()).cloned());
    let lengths = [&it.thickness, &it.width, &it.length].map(|side| side.clone().ok());
    html! {
        <tr>
            <th scope="row">{ &part.name }</th>
            <td>
                <span class="boxes">
                    { for (0..count.min(MOST_BOXES)).map(|index| html! {
                        <span class="box">if is_done(index) { { icon(Icon::Tick) } }</span>
                    }) }
                </span>
                { match &it.quantity { Ok(count) => format!("{} of {count} cut", it.done), Err(_) => "how many?".to_owned() } }
            </td>
            { figure(size(open, lengths), on_ours.has_sizes_of(&open.reckoned, it.id, part)) }
            <td>{ &part.stock }</td>
            <td>{ notes.join(" ") }</td>
        </tr>
    }
}

/// The build order, to be ticked off with a pencil.
fn together(open: &Open, on_ours: &OnOurs) -> Html {
    let order = build::order_of(open);
    if order.steps.is_empty() {
        return html! {};
    }
    let job = &open.book.job;
    let tape = open.settings.bench.tape;
    let row = |(number, it): (u32, &BuildStep)| {
        let pieces = it.pieces.iter().map(|piece| {
            let name = job.item(piece.part).map_or("", Item::name);
            let from = piece.board.map_or_else(String::new, |board| format!(" (board {board})"));
            format!("{} × {name}{from}", piece.pieces.len())
        });
        let waits = it.waits_for.first().map(|wait| sentence(&wait.sentence(job, &order), tape));
        let setting = it.setting.map(|size| length_view(size, tape)).unwrap_or_default();
        let is_ours = it.setting.is_some() && it.is_on_ours(job, &open.reckoned, on_ours);
        html! {
            <tr>
                <td><span class="box">if it.is_done { { icon(Icon::Tick) } }</span></td>
                <th scope="row">{ format!("{number}. {}", it.title(job)) }</th>
                { figure(setting, is_ours) }
                <td>{ pieces.collect::<Vec<_>>().join(", ") }</td>
                <td>{ waits.unwrap_or_default() }</td>
            </tr>
        }
    };
    html! {
        <section>
            <h3>{ "Build order" }</h3>
            <table class="card__table">
                <thead><tr><td></td><th scope="col">{ "Step" }</th><th scope="col">{ "Set to" }</th><th scope="col">{ "Pieces" }</th><th scope="col">{ "Waits for" }</th></tr></thead>
                <tbody>{ for (1..).zip(&order.steps).map(row) }</tbody>
            </table>
        </section>
    }
}

fn drawings(open: &Open) -> Html {
    let bench = &open.settings.bench;
    let views = sketch::views(&open.book.job, &open.reckoned, &BTreeSet::new(), bench.tape);
    let views = views.into_iter().flat_map(|views| {
        [("Front", views.front), ("Side", views.side), ("From above", views.top)]
    });
    let kept = open.book.job.kept().into_iter().filter_map(|(id, kept)| {
        let sheet = open.reckoned.kept(id)?;
        let answer = sheet.answer.as_ref()?;
        let headline = &answer.headline;
        Some(html! {
            <figure>
                <figcaption>
                    { &kept.title }{ ": " }{ headline.label }{ " " }{ measure::value(&headline.value, bench) }
                    if !headline.from.is_empty() { { format!(" {}", headline.from) } }
                    if let Some(noted) = sheet.assumed.noted() { { format!(", {noted}") } }
                </figcaption>
                if let Some(scene) = &answer.drawing { { drawing(scene, bench.tape) } }
            </figure>
        })
    });
    let all: Vec<Html> = views
        .map(|(name, scene)| html! { <figure><figcaption>{ name }</figcaption>{ drawing(&scene, bench.tape) }</figure> })
        .chain(kept)
        .collect();
    if all.is_empty() {
        return html! {};
    }
    html! { <section><h3>{ "Drawings" }</h3><div class="card__drawings">{ for all }</div></section> }
}

/// Labels: one for each piece, to be cut out; of one part when the address names it.
pub(super) fn label_sheet(open: &Open, argument: &str) -> Html {
    let only = argument.parse().ok().map(ItemId);
    let sizes = part_sizes(&open.book.job, &open.reckoned);
    let choice = |id: Option<ItemId>, name: &str| {
        let rest = id.map_or_else(|| "labels".to_owned(), |id| format!("labels/{}", id.0));
        html! {
            <a class="section-link" href={open.at(&rest)} aria-current={(id == only).then_some("page")}>{ name.to_owned() }</a>
        }
    };
    let tools = html! {
        <nav class="sections sections--wrapped" aria-label="Which pieces">
            { choice(None, "All pieces") }
            { for open.book.job.parts().iter().map(|(id, part)| choice(Some(*id), &part.name)) }
        </nav>
    };
    let body = match labels(&open.book.job, &open.reckoned, &sizes, only) {
        Ok(all) if all.is_empty() => html! {
            <p class="job__words" data-testid="no-labels">{ "No piece here has a number yet." }</p>
        },
        Ok(all) => html! {
            <ul class="labels" data-testid="labels">{ for all.iter().map(|it| label(open, it)) }</ul>
        },
        Err(problem) => html! {
            <p class="trouble" role="alert" data-testid="label-trouble">{ problem.to_string() }</p>
        },
    };
    page(open, "hand-on", "Labels", tools, body)
}

fn label(open: &Open, it: &Label) -> Html {
    let hand = it.hand.map(|hand| if hand == Side::Left { "LEFT" } else { "RIGHT" });
    html! {
        <li class="label">
            <p class="label__name">{ &it.name }</p>
            <p class="label__piece">{ format!("{} of {}", it.piece, it.of) }</p>
            <p class="label__size">{ size(open, it.size) }</p>
            <p class="label__up">
                <svg viewBox="0 0 24 24" aria-hidden="true"><path d="M12 1 4 11h5v12h6V11h5z" /></svg>
                { "this way up" }
            </p>
            <p class="label__face">
                if let Some(hand) = hand { <b>{ hand }</b>{ " " } }
                if !it.show_face.is_empty() { { format!("Show face: {}. ", it.show_face) } }
                { &it.stock }
            </p>
            <p class="label__job">{ &open.book.job.title }</p>
        </li>
    }
}
