//! The root: which page is shown, and the settings that all of them share.

use std::rc::Rc;

use reckoner_core::sheet::Entries;
use yew::prelude::*;

use crate::calculator::{CalculatorPage, Opening};
use crate::home::Home;
use crate::job_book::{JobPage, ShelfPage};
use crate::platform::{address, dom, shell, storage};
use crate::route::Route;
use crate::settings::{Hand, SETTINGS, Settings, SettingsPage, settled};
use crate::{link, recent};

/// The whole app.
#[component]
pub(crate) fn App() -> Html {
    use_effect_with((), |()| shell::announce_start());
    let entries = use_state_eq(kept_settings);
    let settings: Rc<Settings> = use_memo((*entries).clone(), Settings::of);
    let place = use_state_eq(address::fragment);
    {
        let place = place.clone();
        use_effect_with((), move |()| {
            let listener = address::on_change(move || {
                place.set(address::fragment());
                dom::scroll_to_top();
            });
            move || drop(listener)
        });
    }
    use_effect_with(settings.clone(), |settings| look(settings));
    use_effect_with((*place).clone(), |place| remember_use(place));
    // Read once for each visit: what is typed later belongs to the page.
    let bench = settings.bench;
    let opening = use_memo((*place).clone(), |place| match Route::read(place) {
        Route::Calculator(calculator, query) => Some(Opening::of(calculator, query, &bench)),
        _ => None,
    });
    match (Route::read(&place), &*opening) {
        (Route::Calculator(calculator, _), Some(opening)) => html! {
            <CalculatorPage key={(*place).clone()} {calculator} opening={opening.clone()} {settings} />
        },
        (Route::Settings, _) => {
            let on_change = {
                let entries = entries.clone();
                Callback::from(move |changed: Entries| {
                    storage::set(storage::SETTINGS, &link::typed(&changed));
                    entries.set(changed);
                })
            };
            html! { <SettingsPage entries={(*entries).clone()} {settings} {on_change} /> }
        }
        (Route::Jobs, _) => html! { <ShelfPage {settings} packed={None::<String>} /> },
        (Route::Take(packed), _) => {
            html! { <ShelfPage {settings} packed={Some(packed.to_owned())} /> }
        }
        (Route::Job(key, rest), _) => html! {
            <JobPage key={key.to_owned()} job={key.to_owned()} rest={rest.to_owned()} {settings} />
        },
        (Route::Home, _) => html! { <Home is_lost={false} /> },
        _ => html! { <Home is_lost={true} /> },
    }
}

/// The settings as kept; what cannot be read counts as never changed.
fn kept_settings() -> Entries {
    let kept = storage::get(storage::SETTINGS).and_then(|text| link::read(&SETTINGS, &text).ok());
    settled(kept.unwrap_or_default())
}

/// Gives the whole page the look of the settings.
fn look(settings: &Settings) {
    dom::set_look("theme", settings.theme);
    dom::set_look("hand", if settings.hand == Hand::Left { "left" } else { "right" });
    dom::set_look("answers", if settings.is_big { "big" } else { "usual" });
}

/// Puts a calculator first in the list of those used last.
fn remember_use(place: &str) {
    if let Route::Calculator(calculator, _) = Route::read(place) {
        let used = storage::get(storage::RECENT).unwrap_or_default();
        storage::set(storage::RECENT, &recent::with_first(&used, calculator.slug));
    }
}
