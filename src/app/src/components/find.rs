//! Finding a question by its words: the line for them, and the questions that have them.

use reckoner_core::calculators::{Found, find_questions};
use yew::prelude::*;

use super::icon::{Icon, icon};
use crate::platform::{address, dom};
use crate::route;

/// The calculator at hand: what is found of it is asked in place, all else is a page of its own.
#[derive(Clone)]
pub(crate) struct Here {
    pub(crate) slug: &'static str,
    pub(crate) on_choose: Callback<&'static str>,
}

/// The field and the choice of a question that is asked in place.
fn in_place(found: &Found, here: Option<&Here>) -> Option<(Callback<&'static str>, &'static str)> {
    let here = here.filter(|here| here.slug == found.calculator.slug)?;
    let (_, choice) = found.question?;
    Some((here.on_choose.clone(), choice.id))
}

/// Where a question is asked.
fn address_of(found: &Found) -> String {
    let query = found.question.map(|(field, choice)| format!("{field}={}", choice.id));
    route::address(found.calculator.slug, &query.unwrap_or_default())
}

/// The line for the words. Enter opens the first question that has them.
pub(crate) fn line(
    label: &'static str,
    wanted: &UseStateHandle<String>,
    here: Option<&Here>,
) -> Html {
    let oninput = {
        let wanted = wanted.clone();
        Callback::from(move |event: InputEvent| {
            wanted.set(dom::value_of(&event).unwrap_or_default());
        })
    };
    let onkeydown = {
        let here = here.cloned();
        Callback::from(move |event: KeyboardEvent| {
            let words = dom::value_of(&event).unwrap_or_default();
            let all = find_questions(&words);
            if let Some(first) = all.first().filter(|_| event.key() == "Enter") {
                event.prevent_default();
                match in_place(first, here.as_ref()) {
                    Some((on_choose, id)) => on_choose.emit(id),
                    None => address::go(&address_of(first)),
                }
            }
        })
    };
    html! {
        <label class="find">
            { icon(Icon::Find) }
            <span class="voice">{ label }</span>
            <input class="find__input" type="search" placeholder={label} value={(**wanted).clone()}
                {oninput} {onkeydown} autocomplete="off" autocapitalize="off" spellcheck="false" enterkeyhint="search"
                data-testid="find" />
        </label>
    }
}

/// The questions that were found, each with its calculator; nothing where there are none.
pub(crate) fn founds(all: &[Found], here: Option<&Here>) -> Html {
    let one = |it: &Found| {
        let calculator = it.calculator;
        let (id, label) =
            it.question.map_or(("", calculator.question), |(_, choice)| (choice.id, choice.label));
        let key = format!("found-{}-{id}", calculator.slug);
        let inside = html! {
            <>
                <span class="found__name">{ label }</span>
                <span class="found__of">{ calculator.title }</span>
            </>
        };
        match in_place(it, here) {
            Some((on_choose, id)) => {
                let onclick = on_choose.reform(move |_: MouseEvent| id);
                html! { <li><button type="button" class="found" data-testid={key} {onclick}>{ inside }</button></li> }
            }
            None => {
                html! { <li><a class="found" href={address_of(it)} data-testid={key}>{ inside }</a></li> }
            }
        }
    };
    html! {
        <>
            <p class="voice" role="status">{ format!("{} found", all.len()) }</p>
            if !all.is_empty() { <ul class="founds" data-testid="found">{ for all.iter().map(one) }</ul> }
        </>
    }
}
