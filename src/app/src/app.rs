//! The root: which page is shown, and the settings that all of them share.

use std::cell::Cell;
use std::rc::Rc;

use reckoner_core::sheet::Entries;
use yew::prelude::*;

use crate::components::not_kept::NotKeptLine;
use crate::home::Home;
use crate::parts::{MissingPage, Part, Standing, use_parts};
use crate::platform::{address, dom, shell, storage};
use crate::recent;
use crate::route::Route;
use crate::settings::{self, Hand, Settings, SettingsPage};

/// The whole app.
#[component]
pub(crate) fn App() -> Html {
    let entries = use_state_eq(settings::kept);
    {
        let entries = entries.clone();
        use_effect_with((), move |()| {
            let listener = storage::on_set_elsewhere(storage::SETTINGS, move || {
                entries.set(settings::kept());
            });
            move || drop(listener)
        });
    }
    let settings: Rc<Settings> = use_memo((*entries).clone(), Settings::of);
    let place = use_state_eq(address::fragment);
    // A page writes what is typed into its address, so that going to where it began is another visit to one place.
    let visit = use_state_eq(|| 0_u32);
    {
        let (place, visit) = (place.clone(), visit.clone());
        use_effect_with((), move |()| {
            let visits = Cell::new(0_u32);
            let listener = address::on_change(move || {
                visits.set(visits.get().wrapping_add(1));
                visit.set(visits.get());
                place.set(address::fragment());
                dom::scroll_to_top();
            });
            move || drop(listener)
        });
    }
    use_effect_with(settings.clone(), |settings| look(settings));
    use_effect_with((*place).clone(), |place| remember_use(place));
    let asked = Route::read(&place);
    let part = Part::of(asked);
    let parts = use_parts(part);
    let standing = part.map(|part| parts.standing(part));
    let is_awaited = matches!(standing, Some(Standing::Awaited));
    use_announcement(!is_awaited);
    // Who waits for this page can see that it is drawn.
    use_effect_with(((*place).clone(), *visit, is_awaited), |(place, _, is_awaited)| {
        if !is_awaited {
            address::tell_drawn(place);
        }
    });
    let page = match (asked, part.zip(standing)) {
        (_, Some((_, Standing::Awaited))) => on_its_way(),
        (_, Some((part, Standing::Missing))) => {
            html! { <MissingPage {part} parts={parts.dispatcher()} /> }
        }
        (asked, Some((_, Standing::Here(pages)))) => {
            let page = pages(asked, settings).unwrap_or_else(|| html! { <Home is_lost={true} /> });
            match asked {
                // What an address holds is read once a visit.
                Route::Calculator(..) | Route::Cut(_) => {
                    html! { <Visit key={*visit}>{ page }</Visit> }
                }
                _ => page,
            }
        }
        (Route::Settings, None) => {
            let on_change = {
                let entries = entries.clone();
                Callback::from(move |changed: Entries| entries.set(changed))
            };
            html! { <SettingsPage entries={(*entries).clone()} {settings} {on_change} /> }
        }
        (asked, None) => html! { <Home is_lost={!matches!(asked, Route::Home)} /> },
    };
    // A job tells what it does not keep by itself.
    let is_typed_in = matches!(
        asked,
        Route::Settings | Route::Calculator(..) | Route::Cut(_) | Route::Take(_) | Route::Keep(..)
    );
    html! { <>{ page }if is_typed_in { <NotKeptLine /> }</> }
}

/// One visit of a page: the next has a key of its own, and begins anew.
#[component]
fn Visit(props: &VisitProps) -> Html {
    props.children.clone()
}

#[derive(Properties, PartialEq)]
struct VisitProps {
    children: Html,
}

/// The first picture of `index.html`, until the page's part is here: so it stands still while the app starts.
fn on_its_way() -> Html {
    html! {
        <main class="skeleton">
            <h1>{ "Sawdust Reckoner" }</h1>
            <ul class="skeleton__list" aria-hidden="true">
                { for [(); 4].iter().map(|()| html! { <li></li> }) }
            </ul>
            <p class="skeleton__soon" role="status">{ "This page is on its way." }</p>
        </main>
    }
}

/// Tells the shell, once, that there is a page on the screen.
#[hook]
fn use_announcement(has_page: bool) {
    let is_told = use_mut_ref(|| false);
    use_effect_with(has_page, move |has_page| {
        if *has_page && !core::mem::replace(&mut *is_told.borrow_mut(), true) {
            shell::announce_start();
        }
    });
}

/// Gives the whole page the look of the settings.
fn look(settings: &Settings) {
    dom::set_look("theme", settings.theme);
    dom::set_look("hand", if settings.hand == Hand::Left { "left" } else { "right" });
    dom::set_look("answers", if settings.is_big { "big" } else { "usual" });
}

/// Puts the page first in the list of those used last.
fn remember_use(place: &str) {
    let used = match Route::read(place) {
        Route::Calculator(calculator, _) => Some(calculator.slug),
        Route::Cut(_) => Some(recent::CUT.slug),
        _ => None,
    };
    if let Some(slug) = used {
        let used = storage::get(storage::RECENT).unwrap_or_default();
        storage::set(storage::RECENT, &recent::with_first(&used, slug));
    }
}
