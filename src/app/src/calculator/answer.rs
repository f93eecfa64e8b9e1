//! The answer on the screen: the headline first, then the drawing, then all else.

use reckoner_core::measure::Tape;
use reckoner_core::sheet::{Answer, Bench, Face, Figure, Sheet, Value, WayOut, face};
use yew::prelude::*;

use crate::components::field;
use crate::components::fold::Fold;
use crate::components::headline::Headline;
use crate::components::icon::{Icon, icon};
use crate::components::measure;
use crate::components::notes::{Safety, notes};
use crate::components::table::table;
use crate::components::working::working;
use crate::form::at_hand::AtHand;
use crate::form::{Form, Needed, named, needed};
use crate::recent::LastAnswer;
use crate::words;

/// How many places the headline can be stepped through: each mark, after the headline itself where
/// that is no mark.
pub(crate) fn places(answer: &Answer) -> usize {
    match (&answer.headline.value, answer.marks().map(|figure| &figure.value)) {
        (Value::Lengths(marks), _) => marks.len(),
        (_, Some(Value::Lengths(marks))) => marks.len().saturating_add(1),
        _ => 1,
    }
}

/// What the headline shows at a place, and which of its marks.
pub(crate) fn shown(answer: &Answer, at: usize) -> (&Figure, usize) {
    match (&answer.headline.value, answer.marks(), at.checked_sub(1)) {
        (Value::Lengths(_), ..) => (&answer.headline, at),
        (_, Some(marks), Some(index)) => (marks, index),
        _ => (&answer.headline, 0),
    }
}

/// What stands beside the headline's own figure: the one wanted next, if it is short.
fn second(answer: &Answer) -> Option<&Figure> {
    answer.figures.first().filter(|it| {
        matches!(it.value, Value::Length(..) | Value::Count(_) | Value::Exact(..) | Value::Real(..))
    })
}

/// The headline, or what is needed for one, with the answer before: never an answer to another question as if it were to
/// this one.
pub(crate) fn headline(
    form: &Form,
    sheet: &Sheet,
    bench: &Bench,
    at: usize,
    before: Option<&LastAnswer>,
    on_step: &Callback<usize>,
    on_way_out: &Callback<Vec<(&'static str, String)>>,
) -> Html {
    let inside = match &sheet.answer {
        Some(answer) => {
            let (figure, index) = shown(answer, at);
            html! {
                <>
                    <Headline figure={figure.clone()} rests={sheet.assumed.spoken()} bench={*bench}
                        {index} {at} places={places(answer)} on_step={on_step.clone()} />
                    if let Some(second) = second(answer) {
                        <dl class="headline__second">{ self::figure(second, bench) }</dl>
                    }
                </>
            }
        }
        None => wanting(form, sheet, bench.tape, before, on_way_out),
    };
    let has_answer = sheet.answer.is_some();
    html! {
        <div class={classes!(
                "headline",
                (!has_answer).then_some("is-wanting"),
                (has_answer && !sheet.assumed.is_empty()).then_some("is-pencil"),
            )}
            data-testid="answer-headline">
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
    before: Option<&LastAnswer>,
    on_way_out: &Callback<Vec<(&'static str, String)>>,
) -> Html {
    let (words, way_out) = still_needed(form, sheet, tape);
    html! {
        <div class="headline__inside is-words">
            <p class="headline__label">
                { "No answer yet" }
                if let Some(LastAnswer { label, value, .. }) = before {
                    { ". Before: " }<span class="headline__before">{ format!("{label}, {value}") }</span>
                }
            </p>
            <p class="headline__need">{ words }</p>
            if let Some(out) = way_out {
                { field::way_out("headline-way-out".to_owned(), out, tape, on_way_out) }
            }
        </div>
    }
}

/// The answer for a voice, or what is needed for one.
pub(crate) fn to_hear(form: &Form, sheet: &Sheet, bench: &Bench, at: usize) -> String {
    match &sheet.answer {
        Some(answer) => {
            let (figure, index) = shown(answer, at);
            words::to_say(figure, bench, index, &sheet.assumed)
        }
        None => format!("No answer yet. {}", still_needed(form, sheet, bench.tape).0),
    }
}

/// Whether the answer rests on sizes of ours; `None` while there is none.
pub(crate) fn on_ours(sheet: &Sheet) -> Option<bool> {
    sheet.answer.is_some().then(|| !sheet.assumed.is_empty())
}

/// What is needed for an answer, and the way to it.
fn still_needed<'a>(form: &Form, sheet: &'a Sheet, tape: Tape) -> (String, Option<&'a WayOut>) {
    match needed(form, sheet) {
        Needed::WaitingFor(label) => (format!("Still needs: {label}"), None),
        Needed::Refused(refusal) => {
            // Of the one that is written it is plain which is meant; any other may be out of sight.
            let is_here = form.editing().is_some_and(|slot| slot.field == refusal.field);
            let words =
                if is_here { refusal.sentence.on(tape) } else { named(form, refusal, tape) };
            (words, refusal.way_out.as_ref())
        }
        Needed::Nothing => (
            "There is no answer to this, and no reason for it. That is our fault: report it."
                .to_owned(),
            None,
        ),
    }
}

/// The drawing under the headline.
pub(crate) fn drawn(at_hand: &AtHand) -> Html {
    html! {
        <div class={classes!("rest-of-answer", (!at_hand.sheet.assumed.is_empty()).then_some("is-pencil"))}
            tabindex={at_hand.is_typing.then_some("0")}>
            { at_hand.drawn() }
        </div>
    }
}

/// All that the answer says besides: each mark once, the rest where no list says it.
pub(crate) fn results(
    answer: &Answer,
    bench: &Bench,
    at: usize,
    on_step: &Callback<usize>,
    question: &str,
    is_pencil: bool,
    on_way: &Callback<Vec<(&'static str, String)>>,
) -> Html {
    let others = answer.figures.iter().skip(usize::from(second(answer).is_some()));
    let others = others.filter(|it| !answer.is_repeated(it));
    // The marks have a fold of their own, and a list that is long is one: it pushes what is read at a glance away.
    let marks = answer.marks().map(|it| it.id);
    let (long, others): (Vec<_>, Vec<_>) =
        others.filter(|it| Some(it.id) != marks).partition(|it| is_long(it));
    html! {
        <div class={classes!("rest-of-answer", is_pencil.then_some("is-pencil"))}>
            if !others.is_empty() {
                <dl class="figures">{ for others.iter().map(|it| figure(it, bench)) }</dl>
            }
            { for answer.tables.iter().map(|it| table(it, answer.marks_column(it), bench, on_way)) }
            { notes(answer, bench.tape) }
            <div class="folds">
                { all_marks(answer, bench, at, on_step) }
                { for long.iter().map(|it| folded(it, bench)) }
                <Safety question={question.to_owned()} cautions={answer.cautions.clone()} tape={bench.tape} />
                { working(&answer.working, bench) }
            </div>
        </div>
    }
}

/// Every mark that the headline can show; a tap on one shows it.
fn all_marks(answer: &Answer, bench: &Bench, at: usize, on_step: &Callback<usize>) -> Option<Html> {
    let marks = answer.marks()?;
    let Face::Measures(all) = face(&marks.value, bench) else { return None };
    let first = places(answer).saturating_sub(all.len());
    Some(html! {
        <Fold name="marks" toggle="marks-toggle" summary={heading(marks, all.len())}>
        <ol class="marks" aria-label={marks.label}>
            { for all.iter().enumerate().map(|(index, shown)| {
                let place = index.saturating_add(first);
                let onclick = on_step.reform(move |_: MouseEvent| place);
                html! {
                    <li>
                        <button type="button" class="mark" {onclick}
                            aria-pressed={if place == at { "true" } else { "false" }}>
                            <span class="mark__place">{ index.saturating_add(1) }</span>
                            { measure::marks(shown) }
                        </button>
                    </li>
                }
            }) }
        </ol>
        </Fold>
    })
}

/// Most lengths that a figure shows at a glance.
const MOST_AT_A_GLANCE: usize = 3;

fn is_long(figure: &Figure) -> bool {
    matches!(&figure.value, Value::Lengths(all) if all.len() > MOST_AT_A_GLANCE)
}

/// What a fold holds, from where it is measured, and how many.
fn heading(figure: &Figure, count: usize) -> Html {
    html! {
        <>
            <span>
                { figure.label }
                if !figure.from.is_empty() { <span class="figure__from">{ figure.from }</span> }
            </span>
            <span class="fold__count">{ count }</span>
        </>
    }
}

/// A list of lengths, folded.
fn folded(figure: &Figure, bench: &Bench) -> Html {
    let count = match &figure.value {
        Value::Lengths(all) => all.len(),
        _ => 1,
    };
    html! {
        <Fold key={figure.id} name={figure.id} testid={format!("figure-{}", figure.id)} summary={heading(figure, count)}>
            <div class="fold__body fold__lengths">{ measure::value(&figure.value, bench) }</div>
        </Fold>
    }
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
