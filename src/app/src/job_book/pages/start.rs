//! A job begun from a kind of piece.

use std::rc::Rc;

use reckoner_core::job::kinds::{KINDS, Kind, job_of};
use reckoner_core::job::sketch::{Look, picture};
use reckoner_core::job::{Job, Reckoned};
use reckoner_core::measure::Unit;
use yew::prelude::*;

use super::shelf::putting;
use crate::components::drawing::drawing;
use crate::components::icon::{Icon, icon};
use crate::job_book::book::Book;
use crate::platform::dom;
use crate::settings::Settings;

#[derive(Properties, PartialEq)]
pub(super) struct StartPageProps {
    pub(super) settings: Rc<Settings>,
}

/// Every kind of piece, drawn from its own sizes.
#[component]
pub(super) fn StartPage(props: &StartPageProps) -> Html {
    use_effect_with((), |()| dom::set_title("Start from a piece · Sawdust Reckoner"));
    let put = putting();
    let bench = props.settings.bench;
    let unit = if bench.tape.unit().is_metric() { Unit::Millimetre } else { Unit::Inch };
    let one = |kind: &'static Kind| {
        let job: Job = job_of(kind, unit);
        let reckoned = Reckoned::of(&job, &bench);
        let drawn = picture(&job, &reckoned, &|_, _| Look::Cut);
        let onclick = put.reform(move |_: MouseEvent| Book::new(job_of(kind, unit)));
        html! {
            <li>
                <button type="button" class="kind" data-testid={format!("kind-{}", kind.id)} {onclick}>
                    <span class="kind__picture" aria-hidden="true">
                        { drawn.map(|it| drawing(&it.scene, bench.tape)) }
                    </span>
                    <span class="row__name">{ kind.name }</span>
                    <span class="row__more">{ kind.about }</span>
                </button>
            </li>
        }
    };
    html! {
        <div class="page page--jobs">
            <header class="bar">
                <a class="bar__link" href="#/jobs" aria-label="All jobs" data-testid="back">{ icon(Icon::Back) }</a>
                <h1 class="bar__title">{ "Start from a piece" }</h1>
            </header>
            <main class="job">
                <p class="job__words">{ "Its sizes are in pencil until you make them yours. The rest follows them." }</p>
                <ul class="kinds" data-testid="kinds">{ for KINDS.iter().map(one) }</ul>
            </main>
        </div>
    }
}
