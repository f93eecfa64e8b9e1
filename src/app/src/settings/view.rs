//! The page of the settings: the same kind of form as a calculator's.

use std::rc::Rc;

use reckoner_core::measure::text::NoNames;
use reckoner_core::sheet::Entries;
use yew::prelude::*;

use super::{SETTINGS, Settings, along, folded, settled};
use crate::components::device_line::ThisDevice;
use crate::components::icon::{Icon, icon};
use crate::form::at_hand::{KnownNames, use_at_hand};
use crate::form::view::{asks, undo_and_redo};
use crate::form::{Action, Form};
use crate::link;
use crate::platform::{dom, storage};

#[derive(Properties, PartialEq)]
pub(crate) struct SettingsPageProps {
    pub(crate) entries: Entries,
    pub(crate) settings: Rc<Settings>,
    pub(crate) on_change: Callback<Entries>,
}

/// The settings as kept; what cannot be read counts as never changed.
pub(crate) fn kept() -> Entries {
    let kept = storage::get(storage::SETTINGS).map(|text| link::kept(&SETTINGS, &text));
    settled(kept.unwrap_or_default())
}

/// The settings. A change is in force, and kept, at once.
#[component]
pub(crate) fn SettingsPage(props: &SettingsPageProps) -> Html {
    let SettingsPageProps { entries, settings, on_change } = props;
    let form = use_reducer(|| {
        let form = Form::new(&SETTINGS, entries.clone(), None).bringing_along(along);
        form.kept_by(|before, after| {
            let all = folded(&kept(), before, after);
            storage::set(storage::SETTINGS, &link::typed(&all));
        })
    });
    {
        let form = form.dispatcher();
        use_effect_with((), move |()| {
            let listener = storage::on_set_elsewhere(storage::SETTINGS, move || {
                form.dispatch(Action::Follow(kept()));
            });
            move || drop(listener)
        });
    }
    let usual = Rc::new(Settings { bench: settings.usual_bench(), ..(**settings).clone() });
    let sheet = use_memo((form.entries().clone(), usual.bench), |(entries, bench)| {
        SETTINGS.sheet(entries, bench, &NoNames)
    });
    let at_hand = use_at_hand(form.clone(), sheet, usual, KnownNames::default());
    {
        let on_change = on_change.clone();
        use_effect_with(form.entries().clone(), move |entries| on_change.emit(entries.clone()));
    }
    use_effect_with((), |()| dom::set_title("Settings · Sawdust Reckoner"));
    let is_keying = at_hand.is_keying();
    html! {
        <div class={classes!("page", "page--settings", is_keying.then_some("is-keying"))}>
            <header class="bar">
                <a class="bar__link" href="#/" aria-label="All calculators" data-testid="home">
                    { icon(Icon::Back) }
                </a>
                <h1 class="bar__title">{ SETTINGS.title }</h1>
                { undo_and_redo(&at_hand) }
            </header>
            <main class="settings">
                { asks(&at_hand) }
                <ThisDevice />
                <p><a class="tool" href="#/notices" data-testid="notices-link">{ "What this is made of" }</a></p>
            </main>
        </div>
    }
}
