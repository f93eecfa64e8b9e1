//! The answer on the screen: the headline first, then the drawing, then all else.

use reckoner_core::measure::Tape;
use reckoner_core::sheet::{Answer, Assumed, Bench, Figure, Sheet, WayOut};
use yew::prelude::*;

use crate::components::drawing::drawing;
use crate::components::field;
use crate::components::headline::Headline;
use crate::components::icon::{Icon, icon};
use crate::components::measure;
use crate::components::notes::notes;
use crate::components::table::table;
use crate::components::working::working;
use crate::form::{Form, Needed, needed};

/// The headline, or what is needed for one: never an answer to another question.
pub(crate) fn headline(
    form: &Form,
    sheet: &Sheet,
    bench: &Bench,
    index: usize,
    on_index: &Callback<usize>,
    on_way_out: &Callback<Vec<(&'static str, String)>>,
) -> Html {
    let inside = match &sheet.answer {
        Some(answer) => html! {
            <Headline figure={answer.headline.clone()} rests={sheet.assumed.spoken()} bench={*bench}
                {index} on_index={on_index.clone()} />
        },
        None => wanting(form, sheet, bench.tape, on_way_out),
    };
    let has_answer = sheet.answer.is_some();
    html! {
        <div class={classes!(
                "headline",
                (!has_answer).then_some("is-wanting"),
                (has_answer && !sheet.assumed.is_empty()).then_some("is-pencil"),
            )}
            data-testid="answer-headline" role="status">
            { inside }
        </div>
    }
}

/// Which sizes the answer rests on that are ours.
pub(crate) fn pencil_line(sheet: &Sheet) -> Html {
    html! {
        if let Some(line) = sheet.assumed.line() {
            <p class="pencil-line" data-testid="pencil-line">{ icon(Icon::Pencil) }<span>{ line }</span></p>
        }
    }
}

/// What is needed for an answer.
pub(crate) fn wanting(
    form: &Form,
    sheet: &Sheet,
    tape: Tape,
    on_way_out: &Callback<Vec<(&'static str, String)>>,
) -> Html {
    let (words, way_out): (String, Option<&WayOut>) = match needed(form, sheet) {
        Needed::WaitingFor(label) => (format!("Waiting for: {label}"), None),
        Needed::Refused(refusal) => (refusal.sentence.on(tape), refusal.way_out.as_ref()),
        Needed::Nothing => {
            ("There is no answer to this, and no reason for it. Please report it.".to_owned(), None)
        }
    };
    html! {
        <div class="headline__inside is-words">
            <p class="headline__label">{ "No answer yet" }</p>
            <p class="headline__need">{ words }</p>
            if let Some(out) = way_out {
                { field::way_out("headline-way-out".to_owned(), out, tape, on_way_out) }
            }
        </div>
    }
}

/// What stands below the headline.
pub(crate) fn rest(
    answer: &Answer,
    assumed: &Assumed,
    bench: &Bench,
    index: usize,
    on_index: &Callback<usize>,
) -> Html {
    html! {
        <div class={classes!("rest-of-answer", (!assumed.is_empty()).then_some("is-pencil"))}>
            if let Some(scene) = &answer.drawing { { drawing(scene, bench.tape) } }
            { all_marks(&answer.headline, bench, index, on_index) }
            if !answer.figures.is_empty() {
                <dl class="figures">
                    { for answer.figures.iter().map(|it| figure(it, bench)) }
                </dl>
            }
            { for answer.tables.iter().map(|it| table(it, bench)) }
            { notes(answer, bench.tape) }
            { working(&answer.working, bench) }
        </div>
    }
}

/// Every mark of a headline that shows one at a time; a tap on one shows it.
fn all_marks(
    headline: &Figure,
    bench: &Bench,
    index: usize,
    on_index: &Callback<usize>,
) -> Option<Html> {
    use reckoner_core::sheet::{Face, face};
    let Face::Measures(all) = face(&headline.value, bench) else { return None };
    Some(html! {
        <ol class="marks" aria-label={headline.label}>
            { for all.iter().enumerate().map(|(at, shown)| {
                let onclick = on_index.reform(move |_: MouseEvent| at);
                html! {
                    <li>
                        <button type="button" class="mark" {onclick}
                            aria-pressed={if at == index { "true" } else { "false" }}>
                            <span class="mark__place">{ at.saturating_add(1) }</span>
                            { measure::marks(shown) }
                        </button>
                    </li>
                }
            }) }
        </ol>
    })
}

fn figure(figure: &Figure, bench: &Bench) -> Html {
    html! {
        <div class="figure" data-testid={format!("figure-{}", figure.id)}>
            <dt>
                { figure.label }
                if !figure.from.is_empty() {
                    <span class="figure__from">{ figure.from }</span>
                }
            </dt>
            <dd>{ measure::value(&figure.value, bench) }</dd>
        </div>
    }
}
