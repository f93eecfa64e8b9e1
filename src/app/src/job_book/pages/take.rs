//! Taking a job in: from a file, a link, a text or another phone's screen. What comes in is shown
//! before anything changes.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use reckoner_core::job::Item;
use reckoner_formats::{
    Brought, CodeProblem, Gatherer, Opened, brought, codes_seen, open_job, unpack,
};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::shelf::putting;
use crate::components::icon::{Icon, icon};
use crate::platform::later::every;
use crate::platform::shelf::{self, Card};
use crate::platform::{camera, dom, files, storage};

/// How often the camera's picture is searched, in milliseconds: twice for each code on the other
/// screen.
const LOOK: u32 = 180;

/// Element id of the camera's picture.
const PICTURE: &str = "camera";

#[derive(Properties, PartialEq)]
pub(super) struct TakePageProps {
    /// A job that came as a link, packed.
    pub(super) packed: Option<String>,
}

/// What the page knows.
#[derive(Clone)]
struct State {
    trouble: UseStateHandle<Option<String>>,
    /// A job that was opened, to be looked at.
    incoming: UseStateHandle<Option<Rc<Opened>>>,
    /// Codes that came so far.
    gathered: Rc<RefCell<Gatherer>>,
    progress: UseStateHandle<String>,
    is_watching: UseStateHandle<bool>,
}

impl State {
    fn file(&self, text: &str) -> bool {
        match open_job(text) {
            Ok(opened) => {
                self.trouble.set(None);
                self.is_watching.set(false);
                self.incoming.set(Some(Rc::new(opened)));
                dom::scroll_to_top();
                true
            }
            Err(problem) => {
                self.trouble.set(Some(problem.to_string()));
                false
            }
        }
    }

    /// Takes a text that was pasted, if it can be read.
    fn pasted(&self, text: &str) -> bool {
        match brought(text) {
            Ok(Brought::File(text)) => self.file(&text),
            Ok(Brought::Codes(codes)) => {
                self.codes(&codes);
                true
            }
            Err(problem) => {
                self.trouble.set(Some(problem.to_string()));
                false
            }
        }
    }

    /// Takes what is new of some codes. One of another job is named, and changes nothing.
    fn codes(&self, codes: &[String]) {
        let mut gathered = self.gathered.borrow_mut();
        let mut trouble = None;
        for code in codes {
            match gathered.take(code) {
                Ok(_) => {}
                // A camera sees other codes too, and this one half the time.
                Err(CodeProblem::Unreadable) if *self.is_watching => {}
                Err(problem) => trouble = Some(problem.to_string()),
            }
        }
        self.trouble.set(trouble);
        self.progress.set(gathered.in_words());
        if let Some(whole) = gathered.whole() {
            *gathered = Gatherer::default();
            drop(gathered);
            match whole {
                Ok(text) => drop(self.file(&text)),
                Err(problem) => self.trouble.set(Some(problem.to_string())),
            }
        }
    }

    fn start_afresh(&self) {
        *self.gathered.borrow_mut() = Gatherer::default();
        self.progress.set(String::new());
        self.trouble.set(None);
    }
}

/// The ways to take a job in.
#[component]
pub(super) fn TakePage(props: &TakePageProps) -> Html {
    let state = State {
        trouble: use_state_eq(|| None),
        incoming: use_state_eq(|| None),
        gathered: use_mut_ref(Gatherer::default),
        progress: use_state_eq(String::new),
        is_watching: use_state_eq(|| false),
    };
    // A text that was pasted and not looked at yet is there again.
    let text = use_state_eq(|| storage::get(storage::PASTED).unwrap_or_default());
    let cards = use_state_eq(Vec::<Card>::new);
    use_effect_with((), |()| dom::set_title("Take a job in · Sawdust Reckoner"));
    {
        let cards = cards.clone();
        use_effect_with((), move |()| {
            spawn_local(async move {
                // Without a shelf there is no name on it; putting the job there says what is wrong.
                cards.set(shelf::cards().await.unwrap_or_default());
            });
        });
    }
    {
        let state = state.clone();
        use_effect_with(props.packed.clone(), move |packed| {
            if let Some(packed) = packed {
                match unpack(packed) {
                    Ok(text) => drop(state.file(&text)),
                    Err(problem) => state.trouble.set(Some(problem.to_string())),
                }
            }
        });
    }
    let chosen = {
        let state = state.clone();
        Callback::from(move |event: Event| {
            let state = state.clone();
            files::read_chosen(&event, reckoner_formats::MAX_FILE, move |read| match read {
                Ok(text) => drop(state.file(&text)),
                Err(words) => state.trouble.set(Some(words)),
            });
        })
    };
    let typed = {
        let text = text.clone();
        Callback::from(move |event: InputEvent| {
            let now = dom::value_of(&event).unwrap_or_default();
            storage::set(storage::PASTED, &now);
            text.set(now);
        })
    };
    let look = {
        let (state, text) = (state.clone(), text.clone());
        Callback::from(move |_: MouseEvent| {
            // What cannot be read stays, with what is wrong with it.
            if state.pasted(&text) {
                storage::set(storage::PASTED, "");
                text.set(String::new());
            }
        })
    };
    let watch = {
        let state = state.clone();
        Callback::from(move |_: MouseEvent| {
            state.trouble.set(None);
            state.is_watching.set(!*state.is_watching);
        })
    };
    let on_codes = {
        let state = state.clone();
        Callback::from(move |codes: Vec<String>| state.codes(&codes))
    };
    let on_trouble = {
        let state = state.clone();
        Callback::from(move |words: String| {
            state.is_watching.set(false);
            state.trouble.set(Some(words));
        })
    };
    let afresh = {
        let state = state.clone();
        Callback::from(move |_: MouseEvent| state.start_afresh())
    };
    html! {
        <div class="page page--jobs">
            <header class="bar">
                <a class="bar__link" href="#/jobs" aria-label="All jobs" data-testid="back">{ icon(Icon::Back) }</a>
                <h1 class="bar__title">{ "Take a job in" }</h1>
            </header>
            <main class="job">
                if let Some(words) = &*state.trouble {
                    <p class="trouble" role="alert" data-testid="job-trouble">{ words }</p>
                }
                if let Some(opened) = &*state.incoming { { preview(opened, &state, &cards) } }
                <section class="way-in">
                    <h2>{ "From another phone's screen" }</h2>
                    <p class="job__words">{ "On the other phone: open the job, Hand on, Show as codes. Hold this one's camera to it." }</p>
                    if *state.is_watching { <Watch {on_codes} {on_trouble} /> }
                    <p class="progress" role="status" data-testid="progress">{ &*state.progress }</p>
                    <div class="adds">
                        <button type="button" class="tool tool--main" data-testid="watch" onclick={watch}>
                            { if *state.is_watching { "Close the camera" } else { "Open the camera" } }
                        </button>
                        if !state.progress.is_empty() {
                            <button type="button" class="tool" data-testid="start-afresh" onclick={afresh}>{ "Start afresh" }</button>
                        }
                    </div>
                </section>
                <section class="way-in">
                    <h2>{ "From a file" }</h2>
                    <div class="adds">
                        <label class="tool file">
                            { "Open a job file" }
                            <input type="file" class="voice" accept=".json,application/json" data-testid="open-file" onchange={chosen} />
                        </label>
                    </div>
                </section>
                <section class="way-in">
                    <h2>{ "From a link or a text" }</h2>
                    <label class="pasted">
                        <span>{ "Paste the link, or the text of the codes" }</span>
                        <textarea rows="4" spellcheck="false" autocapitalize="off" data-testid="pasted" value={(*text).clone()} oninput={typed} />
                    </label>
                    <div class="adds">
                        <button type="button" class="tool" data-testid="look-at-text" disabled={text.trim().is_empty()} onclick={look}>{ "Look at it" }</button>
                    </div>
                </section>
            </main>
        </div>
    }
}

#[derive(Properties, PartialEq)]
struct WatchProps {
    on_codes: Callback<Vec<String>>,
    on_trouble: Callback<String>,
}

/// The camera's picture, and what codes are in it. The camera is stopped when this goes.
#[component]
fn Watch(props: &WatchProps) -> Html {
    // What the camera's looks tell: kept new, while the camera stays open.
    let told = use_mut_ref(|| props.on_codes.clone());
    *told.borrow_mut() = props.on_codes.clone();
    {
        let on_trouble = props.on_trouble.clone();
        use_effect_with((), move |()| {
            let is_here = Rc::new(Cell::new(true));
            let eye = Rc::new(RefCell::new(None::<camera::Camera>));
            spawn_local({
                let (is_here, eye) = (is_here.clone(), eye.clone());
                async move {
                    match camera::open(PICTURE).await {
                        // Whoever left while the browser asked wants no camera.
                        Ok(camera) if is_here.get() => *eye.borrow_mut() = Some(camera),
                        Ok(_) => {}
                        Err(problem) if is_here.get() => on_trouble.emit(problem.to_string()),
                        Err(_) => {}
                    }
                }
            });
            let looking = every(LOOK, {
                let eye = eye.clone();
                move || {
                    let seen = eye.borrow().as_ref().and_then(camera::Camera::look);
                    let codes = seen.map(|(side, pixels)| codes_seen(side, &pixels));
                    if let Some(codes) = codes.filter(|codes| !codes.is_empty()) {
                        let tell = told.borrow().clone();
                        tell.emit(codes);
                    }
                }
            });
            move || {
                drop(looking);
                is_here.set(false);
                drop(eye.take());
            }
        });
    }
    html! {
        <video class="watch" data-testid="camera" aria-label="What the camera sees" id={PICTURE} muted={true} playsinline={true} />
    }
}

fn count(n: usize, one: &str, many: &str) -> String {
    if n == 1 { format!("1 {one}") } else { format!("{n} {many}") }
}

/// What would come in, before anything changes.
fn preview(opened: &Rc<Opened>, state: &State, cards: &[Card]) -> Html {
    let job = &opened.job;
    let boards = job.items().filter(|(_, item)| matches!(item, Item::RackBoard(_))).count();
    let words = [
        count(job.measures().len(), "size", "sizes"),
        count(job.parts().len(), "part", "parts"),
        count(boards, "board", "boards"),
        count(job.kept().len(), "reckoning", "reckonings"),
    ];
    let is_here = cards.iter().any(|card| card.title == job.title);
    let take = {
        let job = job.clone();
        putting().reform(move |_: MouseEvent| job.clone())
    };
    let leave = {
        let state = state.clone();
        Callback::from(move |_: MouseEvent| {
            state.incoming.set(None);
            state.start_afresh();
        })
    };
    html! {
        <section class="incoming" aria-label="Job to come in" data-testid="incoming">
            <h2>{ &job.title }</h2>
            <p>{ words.join(", ") }{ "." }</p>
            if is_here {
                <p data-testid="name-is-here">{ "A job of this name is here already. It stays as it is; this one is put beside it." }</p>
            }
            if !opened.set_aside.is_empty() {
                <p>{ count(opened.set_aside.len(), "item of it is damaged and will be left out:", "items of it are damaged and will be left out:") }</p>
                <ul class="notes">
                    { for opened.set_aside.iter().take(10).map(|it| html! {
                        <li>{ format!("item {} {}: {}", it.number, it.name, it.why) }</li>
                    }) }
                </ul>
            }
            <div class="adds">
                <button type="button" class="tool tool--main" data-testid="take-job" onclick={take}>{ "Put it on my shelf" }</button>
                <button type="button" class="tool" data-testid="leave-job" onclick={leave}>{ "Leave it" }</button>
            </div>
        </section>
    }
}
