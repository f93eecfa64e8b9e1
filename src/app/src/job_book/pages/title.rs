//! A title that is written in one line: of a job, or of a kept reckoning.

use reckoner_core::calculators::{Calculator, Stage};
use reckoner_core::job::{MOST_NAME, NameProblem, check_title};
use reckoner_core::sheet::{Answer, Ask, Field, Kind, Start};
use yew::prelude::*;

use super::open::{Open, Shared};
use crate::form::{Action, Slot};
use crate::job_book::kept_form::use_kept_form;
use crate::job_book::notes::TITLE;
use crate::platform::dom;

/// The one field of it.
const LINE: Field = Field::new(TITLE, "Title", "", Kind::Words(MOST_NAME), Start::Text(""));

static ASKS: Calculator = Calculator {
    slug: "",
    title: "Title",
    question: "",
    stage: Stage::Measure,
    fields: &[LINE],
    results: &[],
    work,
};

fn work(ask: &mut Ask) -> Option<Answer> {
    ask.words(&LINE);
    None
}

/// The input of a title, whose note stands at a place.
pub(super) fn input(
    open: &Open,
    place: String,
    standing: &str,
    label: &'static str,
    id: &'static str,
) -> Html {
    html! { <Title key={place.clone()} open={Shared(open.clone())} place={place.clone()} standing={standing.to_owned()} {label} {id} /> }
}

#[derive(Properties, PartialEq)]
struct TitleProps {
    open: Shared,
    place: String,
    standing: String,
    label: &'static str,
    id: &'static str,
}

#[component]
fn Title(props: &TitleProps) -> Html {
    let TitleProps { open: Shared(open), place, standing, label, id } = props;
    let mut entries = reckoner_core::sheet::Entries::from_pairs([(TITLE, standing.as_str())]);
    entries.set_unit(Some(open.book.job.unit));
    let form = use_kept_form(open.keeping(), place, &ASKS, entries);
    let slot = Slot::of(TITLE);
    let oninput = {
        let form = form.dispatcher();
        Callback::from(move |event: InputEvent| {
            // Enter has left it, though the caret is still there.
            form.dispatch(Action::Edit(slot));
            form.dispatch(Action::Type(slot, dom::value_of(&event).unwrap_or_default()));
        })
    };
    let onfocus = {
        let form = form.dispatcher();
        Callback::from(move |_: FocusEvent| form.dispatch(Action::Edit(slot)))
    };
    let presses = use_memo((), |()| dom::Presses::listen());
    let onblur = {
        let (form, presses) = (form.dispatcher(), presses.clone());
        Callback::from(move |_: FocusEvent| {
            let form = form.clone();
            presses.after(move || form.dispatch(Action::Leave));
        })
    };
    let onchange = {
        let form = form.dispatcher();
        Callback::from(move |_: Event| form.dispatch(Action::Leave))
    };
    let text = form.entries().text(TITLE).unwrap_or_default().to_owned();
    let problem = check_title(&text).err().filter(|_| form.editing().is_none());
    let is_wrong = problem.is_some();
    html! {
        <label class={classes!("field", "is-long", is_wrong.then_some("is-wrong"))}>
            <span class="field__label">{ *label }</span>
            <input class="field__input" type="text" maxlength={MOST_NAME.to_string()} value={text} data-testid={*id}
                aria-invalid={is_wrong.then_some("true")} {oninput} {onfocus} {onblur} {onchange} />
            if let Some(problem) = problem {
                <p class="problem__words" role="alert" data-testid={format!("problem-{id}")}>
                    { words(&problem) }{ " Until then it keeps the one it has." }
                </p>
            }
        </label>
    }
}

/// What is said of a title that cannot be one.
pub(super) fn words(problem: &NameProblem) -> String {
    match problem {
        NameProblem::Empty => "Give it a title.".to_owned(),
        problem => problem.to_string(),
    }
}
