//! The root: which page is shown, and the settings that all of them share.

use std::rc::Rc;

use reckoner_core::sheet::Entries;
use yew::prelude::*;

use crate::calculator::{CalculatorPage, Opening};
use crate::home::Home;
use crate::platform::{address, dom, shell, storage};
use crate::route::Route;
use crate::settings::{Hand, SETTINGS, Settings, SettingsPage, settled};
use crate::{link, recent};

/// The pages of the job book, in the program that has them.
pub(crate) type Jobs = fn(Route, Rc<Settings>) -> Html;

#[derive(Properties)]
pub(crate) struct AppProps {
    pub(crate) jobs: Option<Jobs>,
}

impl PartialEq for AppProps {
    /// A program has the job book or not, from its start to its end.
    fn eq(&self, other: &AppProps) -> bool {
        self.jobs.is_some() == other.jobs.is_some()
    }
}

/// The whole app.
#[component]
pub(crate) fn App(props: &AppProps) -> Html {
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
    // The shell starts the program that the address asks for.
    let has_jobs = props.jobs.is_some();
    use_effect_with((*place).clone(), move |place| {
        if !is_here(Route::read(place), has_jobs) {
            address::load_again();
        }
    });
    // Read once for each visit: what is typed later belongs to the page.
    let bench = settings.bench;
    let opening = use_memo((*place).clone(), |place| match Route::read(place) {
        Route::Calculator(calculator, query) => Some(Opening::of(calculator, query, &bench)),
        _ => None,
    });
    match (Route::read(&place), &*opening) {
        (asked, _) if !is_here(asked, has_jobs) => html! {
            <p class="skeleton__slow" role="status">{ "Opening." }</p>
        },
        (Route::Calculator(calculator, _), Some(opening)) => html! {
            <CalculatorPage key={(*place).clone()} {calculator} opening={opening.clone()} {settings} />
        },
        (Route::Settings, _) => {
            let on_change = {
                let entries = entries.clone();
                Callback::from(move |changed: Entries| entries.set(changed))
            };
            html! { <SettingsPage entries={(*entries).clone()} {settings} {on_change} /> }
        }
        (
            asked @ (Route::Cut(_)
            | Route::Jobs
            | Route::Job(..)
            | Route::Take(_)
            | Route::Keep(..)
            | Route::Print(..)),
            _,
        ) => props.jobs.map(|page| page(asked, settings)).unwrap_or_default(),
        (Route::Home, _) => html! { <Home is_lost={false} /> },
        _ => html! { <Home is_lost={true} /> },
    }
}

/// Whether this program carries what an address asks for.
fn is_here(asked: Route, has_jobs: bool) -> bool {
    match asked {
        Route::Cut(_)
        | Route::Jobs
        | Route::Job(..)
        | Route::Take(_)
        | Route::Keep(..)
        | Route::Print(..) => has_jobs,
        Route::Calculator(calculator, _) => calculator.is_here(),
        Route::Home | Route::Settings | Route::Unknown => true,
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
