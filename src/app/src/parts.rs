//! The parts of the program that come after the first page: which page needs which, and whether it is here.
//!
//! The part that the page asks for is fetched at once; as soon as there is a page on the screen, the others are, so
//! that going to them is no wait. A part that could not be fetched is asked for again whenever its page is.

use std::rc::Rc;

use reckoner_core::calculators::{Calculator, JOINTS, Run, SHAPES, WOOD};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use crate::components::icon::{Icon, icon};
use crate::platform::{dom, shell};
use crate::route::Route;
use crate::settings::Settings;

/// Draws a page of a part; `None` when there is no such page.
pub(crate) type Pages = fn(Route, Rc<Settings>) -> Option<Html>;

/// A part of the program.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Part {
    /// The calculators of one run of stages.
    Calculators(Run),
    /// The shelf of jobs and the ways on to it.
    Shelf,
    /// The quick list of the cut planner.
    Cut,
    /// A job with all its pages.
    Job,
}

impl Part {
    /// In the order in which they are fetched when nobody waits.
    const ALL: [Part; 6] = [
        Part::Calculators(Run::Wood),
        Part::Calculators(Run::Joints),
        Part::Calculators(Run::Shapes),
        Part::Shelf,
        Part::Cut,
        Part::Job,
    ];

    /// The part that a page is in; `None` for what every visit starts with.
    pub(crate) fn of(route: Route) -> Option<Part> {
        match route {
            Route::Home | Route::Settings | Route::Unknown => None,
            Route::Calculator(listed, _) => Some(Part::Calculators(listed.stage.run())),
            Route::Jobs | Route::Start | Route::Removed | Route::Take(_) | Route::Notices => {
                Some(Part::Shelf)
            }
            Route::Cut(_) => Some(Part::Cut),
            Route::Job(..) | Route::Keep(..) | Route::Print(..) => Some(Part::Job),
        }
    }
}

/// How it stands with a part.
#[derive(Clone, Copy, Default)]
pub(crate) enum Standing {
    /// It was not asked for, or is on its way.
    #[default]
    Awaited,
    /// It could not be fetched.
    Missing,
    /// It is here.
    Here(Pages),
}

/// How it stands with every part.
#[derive(Clone, Copy, Default)]
pub(crate) struct Parts([Standing; Part::ALL.len()]);

impl Parts {
    /// How it stands with a part.
    pub(crate) fn standing(&self, part: Part) -> Standing {
        let mut all = Part::ALL.iter().zip(&self.0);
        all.find(|(it, _)| **it == part).map_or(Standing::Awaited, |(_, standing)| *standing)
    }

    fn is_here(&self, part: Part) -> bool {
        matches!(self.standing(part), Standing::Here(_))
    }
}

impl Reducible for Parts {
    type Action = (Part, Standing);

    fn reduce(self: Rc<Self>, (part, standing): Self::Action) -> Rc<Self> {
        let mut parts = *self;
        for (it, known) in Part::ALL.iter().zip(&mut parts.0) {
            if *it == part {
                *known = standing;
            }
        }
        Rc::new(parts)
    }
}

/// The parts, of which the page on the screen needs `wanted`.
#[hook]
pub(crate) fn use_parts(wanted: Option<Part>) -> UseReducerHandle<Parts> {
    let parts = use_reducer(Parts::default);
    {
        let parts = parts.clone();
        use_effect_with(wanted, move |wanted| {
            if let Some(part) = wanted.filter(|part| !parts.is_here(*part)) {
                fetch(part, parts.dispatcher());
            }
        });
    }
    let has_page = wanted.is_none_or(|it| !matches!(parts.standing(it), Standing::Awaited));
    {
        let dispatcher = parts.dispatcher();
        use_effect_with(has_page, move |has_page| {
            if *has_page {
                spawn_local(async move {
                    for part in Part::ALL.into_iter().filter(|part| Some(*part) != wanted) {
                        // One that fails is fetched again, with all that is to be said of it, when it is wanted.
                        if let Ok(pages) = part.pages().await {
                            dispatcher.dispatch((part, Standing::Here(pages)));
                        }
                    }
                    shell::announce_completion();
                });
            }
        });
    }
    parts
}

/// A part could not be fetched.
pub(crate) struct NotFetched;

impl Part {
    /// What draws the pages of the part, once it is here.
    async fn pages(self) -> Result<Pages, NotFetched> {
        match self {
            Part::Calculators(Run::Wood) => apart::wood().await,
            Part::Calculators(Run::Joints) => apart::joints().await,
            Part::Calculators(Run::Shapes) => apart::shapes().await,
            Part::Shelf => apart::shelf().await,
            Part::Cut => apart::cut().await,
            Part::Job => apart::job().await,
        }
    }
}

/// Asks for the part of the page at `place` while there is nothing to draw yet: so the line has something to do while
/// the app starts. Who fetches it next is given the same; a failure is told then.
pub(crate) fn ask_ahead(place: &str) {
    if let Some(part) = Part::of(Route::read(place)) {
        spawn_local(async move { drop(part.pages().await) });
    }
}

/// Fetches a part for the page that needs it.
fn fetch(part: Part, parts: UseReducerDispatcher<Parts>) {
    parts.dispatch((part, Standing::Awaited));
    spawn_local(async move {
        let pages = part.pages().await;
        parts.dispatch((part, pages.map_or(Standing::Missing, Standing::Here)));
    });
}

#[derive(Properties, PartialEq)]
pub(crate) struct MissingPageProps {
    pub(crate) part: Part,
    pub(crate) parts: UseReducerDispatcher<Parts>,
}

/// Stands where a page would be whose part could not be fetched.
#[component]
pub(crate) fn MissingPage(props: &MissingPageProps) -> Html {
    let MissingPageProps { part, parts } = props;
    let part = *part;
    use_effect_with((), |()| dom::set_title("Not here yet · Sawdust Reckoner"));
    let onclick = {
        let parts = parts.clone();
        Callback::from(move |_: MouseEvent| fetch(part, parts.clone()))
    };
    html! {
        <div class="page">
            <header class="bar">
                <a class="bar__link" href="#/" aria-label="All calculators" data-testid="home">{ icon(Icon::Back) }</a>
                <h1 class="bar__title">{ "Not here yet" }</h1>
            </header>
            <main class="job">
                <div class="trouble" role="alert" data-testid="part-missing">
                    <p>{ "This page could not be fetched. What you typed is kept. Try again where there is a signal." }</p>
                    <button type="button" {onclick} data-testid="part-again">{ "Try again" }</button>
                </div>
            </main>
        </div>
    }
}

/// The page of one of these calculators.
fn page_of(
    calculators: &[&'static Calculator],
    route: Route,
    settings: Rc<Settings>,
) -> Option<Html> {
    match route {
        Route::Calculator(listed, query) => {
            crate::calculator::page(calculators, listed.slug, query, settings)
        }
        _ => None,
    }
}

fn page_of_wood(route: Route, settings: Rc<Settings>) -> Option<Html> {
    page_of(WOOD, route, settings)
}

fn page_of_joints(route: Route, settings: Rc<Settings>) -> Option<Html> {
    page_of(JOINTS, route, settings)
}

fn page_of_shapes(route: Route, settings: Rc<Settings>) -> Option<Html> {
    page_of(SHAPES, route, settings)
}

fn page_of_shelf(route: Route, settings: Rc<Settings>) -> Option<Html> {
    match route {
        Route::Notices => Some(html! { <crate::notices::NoticesPage /> }),
        asked => crate::job_book::page_of_shelf(asked, settings),
    }
}

fn page_of_cut(route: Route, settings: Rc<Settings>) -> Option<Html> {
    match route {
        Route::Cut(query) => Some(crate::cutting::page(query, settings)),
        _ => None,
    }
}

/// Each function here is the only way into its part, so all that nothing else needs can be cut off behind it.
#[cfg(feature = "parts")]
mod apart {
    use wasm_split_helpers::{SplitLoaderError, wasm_split};

    use super::{NotFetched, Pages};

    impl From<SplitLoaderError> for NotFetched {
        fn from(_: SplitLoaderError) -> NotFetched {
            NotFetched
        }
    }

    #[wasm_split(wood, fallible)]
    pub(super) fn wood() -> Result<Pages, NotFetched> {
        Ok(super::page_of_wood)
    }

    #[wasm_split(joints, fallible)]
    pub(super) fn joints() -> Result<Pages, NotFetched> {
        Ok(super::page_of_joints)
    }

    #[wasm_split(shapes, fallible)]
    pub(super) fn shapes() -> Result<Pages, NotFetched> {
        Ok(super::page_of_shapes)
    }

    #[wasm_split(shelf, fallible)]
    pub(super) fn shelf() -> Result<Pages, NotFetched> {
        Ok(super::page_of_shelf)
    }

    #[wasm_split(cut, fallible)]
    pub(super) fn cut() -> Result<Pages, NotFetched> {
        Ok(super::page_of_cut)
    }

    #[wasm_split(job, fallible)]
    pub(super) fn job() -> Result<Pages, NotFetched> {
        Ok(crate::job_book::page)
    }
}

/// The program in one piece: every part is here from the start.
#[cfg(not(feature = "parts"))]
mod apart {
    use super::{NotFetched, Pages};

    pub(super) async fn wood() -> Result<Pages, NotFetched> {
        Ok(super::page_of_wood)
    }

    pub(super) async fn joints() -> Result<Pages, NotFetched> {
        Ok(super::page_of_joints)
    }

    pub(super) async fn shapes() -> Result<Pages, NotFetched> {
        Ok(super::page_of_shapes)
    }

    pub(super) async fn shelf() -> Result<Pages, NotFetched> {
        Ok(super::page_of_shelf)
    }

    pub(super) async fn cut() -> Result<Pages, NotFetched> {
        Ok(super::page_of_cut)
    }

    pub(super) async fn job() -> Result<Pages, NotFetched> {
        Ok(crate::job_book::page)
    }
}
