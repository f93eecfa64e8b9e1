//! Taking a job in: from a file, a link, a text or another phone's screen. What comes in is shown
//! before anything changes, and a text and codes are kept until their job is on the shelf.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use reckoner_core::sheet::Bench;
use reckoner_formats::{
    Brought, CodeProblem, Gatherer, MAX_JOBS_FILE, OpenProblem, Opened, OpenedJobs, brought,
    codes_seen, is_of_jobs, open_job, open_jobs, unpack,
};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::shelf::put;
use super::take_all::{Many, TakeAll, damaged, inside};
use crate::components::icon::{Icon, icon};
use crate::job_book::book::Book;
use crate::job_book::hook;
use crate::job_book::incoming::count;
use crate::platform::later::every;
use crate::platform::shelf::Card;
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
    pub(super) bench: Bench,
}

/// What was opened, to be looked at.
#[derive(Clone, PartialEq)]
enum Incoming {
    One(Rc<Opened>),
    Many(Rc<Many>),
}

/// What a job comes from, as this page keeps it.
#[derive(Clone, PartialEq)]
enum Source {
    /// A file or a link, which is where it was.
    Elsewhere,
    /// What is kept here under a name, as it was when it was opened.
    Here(&'static str, String),
}

impl Source {
    fn of(name: &'static str) -> Source {
        Source::Here(name, storage::get(name).unwrap_or_default())
    }

    /// Keeps it no more: its job is on the shelf, or not wanted. What came since is another.
    fn let_go(&self) {
        if let Source::Here(name, text) = self
            && storage::get(name).as_ref() == Some(text)
        {
            storage::set(name, "");
        }
    }
}

/// What the page knows.
#[derive(Clone)]
struct State {
    bench: Bench,
    trouble: UseStateHandle<Option<String>>,
    incoming: UseStateHandle<Option<(Incoming, Source)>>,
    /// What is pasted.
    text: UseStateHandle<String>,
    /// What became of a file of jobs.
    done: UseStateHandle<Option<String>>,
    /// Codes that came so far.
    gathered: Rc<RefCell<Gatherer>>,
    progress: UseStateHandle<String>,
    is_watching: UseStateHandle<bool>,
}

impl State {
    /// Opens a file of one job or of many, and tells what is wrong with it.
    fn file(&self, text: &str, source: Source) {
        let opened = self.open(text, source);
        self.trouble.set(opened.err().map(|problem| problem.to_string()));
    }

    fn open(&self, text: &str, source: Source) -> Result<(), OpenProblem> {
        if is_of_jobs(text) {
            self.look_at_all(open_jobs(text)?, source);
        } else {
            self.look_at(Incoming::One(Rc::new(open_job(text)?)), source);
        }
        Ok(())
    }

    /// Takes what a file held, or why it could not be read.
    fn opened(&self, read: Result<String, String>) {
        match read {
            Ok(text) => self.file(&text, Source::Elsewhere),
            Err(words) => self.trouble.set(Some(words)),
        }
    }

    fn look_at(&self, incoming: Incoming, source: Source) {
        self.is_watching.set(false);
        self.done.set(None);
        self.incoming.set(Some((incoming, source)));
        dom::scroll_to_top();
    }

    /// What came in is on the shelf, or not wanted: what it came from is kept no more.
    fn end(&self) {
        if let Some((_, source)) = &*self.incoming {
            source.let_go();
        }
        self.incoming.set(None);
        self.text.set(storage::get(storage::PASTED).unwrap_or_default());
        if storage::get(storage::CODES).is_none_or(|codes| codes.is_empty()) {
            self.start_afresh();
        }
    }

    /// Shows the jobs of a file beside those that are here.
    fn look_at_all(&self, opened: OpenedJobs, source: Source) {
        let state = self.clone();
        spawn_local(async move {
            match hook::jobs(&state.bench).await {
                Ok(here) => {
                    let here = here.into_values().collect();
                    state.look_at(Incoming::Many(Rc::new(Many { opened, here })), source);
                }
                Err(problem) => {
                    let words = format!("The jobs on this device cannot be read: {problem}.");
                    state.trouble.set(Some(words));
                }
            }
        });
    }

    /// Looks at the text that is pasted. Codes that are all taken are kept as such, and make room for the next.
    fn pasted(&self) {
        match brought(&self.text) {
            Ok(Brought::File(text)) => self.file(&text, Source::of(storage::PASTED)),
            Ok(Brought::Codes(codes)) => {
                if self.codes(&codes) {
                    storage::set(storage::PASTED, "");
                    self.text.set(String::new());
                }
            }
            Err(problem) => self.trouble.set(Some(problem.to_string())),
        }
    }

    /// What was pasted, and the codes that came, before the page was loaded again.
    fn again(&self) {
        let codes = storage::get(storage::CODES).unwrap_or_default();
        let codes: Vec<String> = codes.lines().map(str::to_owned).collect();
        if !codes.is_empty() {
            self.codes(&codes);
        }
        // What cannot be read stands in its field; nobody has asked for it now.
        if let Ok(Brought::File(text)) = brought(&self.text) {
            drop(self.open(&text, Source::of(storage::PASTED)));
        }
    }

    /// Takes what is new of some codes, and keeps it. One of another job is named, and changes nothing. Says whether all of
    /// them could be taken.
    fn codes(&self, codes: &[String]) -> bool {
        let mut gathered = self.gathered.borrow_mut();
        let (mut new, mut trouble) = (String::new(), None);
        let mut is_first = gathered.progress() == (0, 0);
        for code in codes {
            let mut taken = gathered.take(code);
            // A job that is whole is followed by the next.
            if matches!(taken, Err(CodeProblem::OtherJob(..))) && gathered.whole().is_some() {
                (*gathered, is_first) = (Gatherer::default(), true);
                new.clear();
                taken = gathered.take(code);
            }
            match taken {
                Ok(true) => new.extend([code, "\n"]),
                Ok(false) => {}
                // A camera sees other codes too, and this one half the time.
                Err(CodeProblem::Unreadable) if *self.is_watching => {}
                Err(problem) => trouble = Some(problem.to_string()),
            }
        }
        if !new.is_empty() {
            let before = storage::get(storage::CODES).filter(|_| !is_first);
            storage::set(storage::CODES, &(before.unwrap_or_default() + &new));
        }
        let (is_taken, whole) = (trouble.is_none(), gathered.whole());
        self.trouble.set(trouble);
        self.progress.set(gathered.in_words());
        drop(gathered);
        match whole {
            Some(Ok(text)) => self.file(&text, Source::of(storage::CODES)),
            Some(Err(problem)) => self.trouble.set(Some(problem.to_string())),
            None => {}
        }
        is_taken
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
    let bench = props.bench;
    let state = State {
        bench,
        trouble: use_state_eq(|| None),
        incoming: use_state_eq(|| None),
        text: use_state_eq(|| storage::get(storage::PASTED).unwrap_or_default()),
        done: use_state_eq(|| None),
        gathered: use_mut_ref(Gatherer::default),
        progress: use_state_eq(String::new),
        is_watching: use_state_eq(|| false),
    };
    let cards = use_state_eq(Vec::<Card>::new);
    use_effect_with((), |()| dom::set_title("Take a job in · Sawdust Reckoner"));
    {
        let cards = cards.clone();
        use_effect_with((), move |()| {
            spawn_local(async move {
                // Without a shelf there is no name on it; putting the job there says what is wrong.
                cards.set(hook::cards(&bench).await.unwrap_or_default());
            });
        });
    }
    {
        let state = state.clone();
        use_effect_with(props.packed.clone(), move |packed| match packed.as_deref().map(unpack) {
            Some(Ok(text)) => state.file(&text, Source::Elsewhere),
            Some(Err(problem)) => state.trouble.set(Some(problem.to_string())),
            None => state.again(),
        });
    }
    {
        let state = state.clone();
        use_effect_with((), move |()| {
            files::read_opened(MAX_JOBS_FILE, move |read| state.opened(read));
        });
    }
    let chosen = {
        let state = state.clone();
        Callback::from(move |event: Event| {
            let state = state.clone();
            files::read_chosen(&event, MAX_JOBS_FILE, move |read| state.opened(read));
        })
    };
    let typed = {
        let text = state.text.clone();
        Callback::from(move |event: InputEvent| {
            let now = dom::value_of(&event).unwrap_or_default();
            storage::set(storage::PASTED, &now);
            text.set(now);
        })
    };
    let look = {
        let state = state.clone();
        Callback::from(move |_: MouseEvent| state.pasted())
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
        Callback::from(move |codes: Vec<String>| {
            state.codes(&codes);
        })
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
        Callback::from(move |_: MouseEvent| {
            storage::set(storage::CODES, "");
            state.start_afresh();
        })
    };
    let on_end = {
        let state = state.clone();
        Callback::from(move |words: Option<String>| {
            state.end();
            state.done.set(words);
        })
    };
    html! {
        <div class="page page--jobs">
            <header class="bar">
                <a class="bar__link" href="#/jobs" aria-label="All jobs" data-testid="back">{ icon(Icon::Back) }</a>
                <h1 class="bar__title">{ "Take a job in" }</h1>
            </header>
            <main class="job">
                <section class="way-in">
                    <h2>{ "From another phone's screen" }</h2>
                    <p class="job__words">{ "On the other phone: open the job, More, Send and print, Show as codes. Hold this one's camera to it." }</p>
                    if *state.is_watching { <Watch {on_codes} {on_trouble} /> }
                    <p class="progress" role="status" data-testid="progress">{ &*state.progress }</p>
                    <div class="adds">
                        <button type="button" class="tool tool--main" data-testid="watch" onclick={watch}>
                            { if *state.is_watching { "Close the camera" } else { "Open the camera" } }
                        </button>
                        <button type="button" class="tool" data-testid="start-afresh" disabled={state.progress.is_empty()} onclick={afresh}>{ "Start afresh" }</button>
                    </div>
                </section>
                <section class="way-in">
                    <h2>{ "From a file" }</h2>
                    <div class="adds">
                        <label class="tool file">
                            { "Open a file of one job or all" }
                            <input type="file" class="voice" accept=".json,application/json" data-testid="open-file" onchange={chosen} />
                        </label>
                    </div>
                </section>
                <section class="way-in">
                    <h2>{ "From a link or a text" }</h2>
                    <label class="pasted">
                        <span>{ "Paste the link, or the text of the codes" }</span>
                        <textarea rows="4" spellcheck="false" autocapitalize="off" data-testid="pasted" value={(*state.text).clone()} oninput={typed} />
                    </label>
                    <div class="adds">
                        <button type="button" class="tool" data-testid="look-at-text" disabled={state.text.trim().is_empty()} onclick={look}>{ "Look at it" }</button>
                    </div>
                </section>
                if let Some(words) = &*state.trouble {
                    <p class="trouble is-late" role="alert" data-testid="job-trouble">{ words }</p>
                }
                { match &*state.incoming {
                    Some((Incoming::One(opened), source)) => preview(opened, source, &state, &cards),
                    Some((Incoming::Many(many), _)) => html! { <TakeAll many={many.clone()} on_end={on_end} /> },
                    None => html! {},
                } }
                if let Some(words) = &*state.done {
                    <section class="incoming" aria-label="What came in">
                        <p role="status" data-testid="taken">{ words }</p>
                        <div class="adds"><a class="tool" href="#/jobs" data-testid="to-jobs">{ "To the jobs" }</a></div>
                    </section>
                }
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

/// What would come in, before anything changes.
fn preview(opened: &Rc<Opened>, source: &Source, state: &State, cards: &[Card]) -> Html {
    let job = &opened.job;
    let is_here = cards.iter().any(|card| card.title == job.title);
    let take = {
        let (job, source) = (job.clone(), source.clone());
        Callback::from(move |_: MouseEvent| {
            let source = source.clone();
            put(Book::new(job.clone()), move || source.let_go());
        })
    };
    let leave = {
        let state = state.clone();
        Callback::from(move |_: MouseEvent| state.end())
    };
    html! {
        <section class="incoming" aria-label="Job to come in" data-testid="incoming">
            <h2>{ &job.title }</h2>
            <p>{ inside(job) }</p>
            if is_here {
                <p data-testid="name-is-here">{ "A job of this name is here already. It stays as it is; this one is put beside it." }</p>
            }
            if !opened.set_aside.is_empty() {
                <p>{ count(opened.set_aside.len(), "item of it is damaged and will be left out:", "items of it are damaged and will be left out:") }</p>
                { damaged("item", &opened.set_aside) }
            }
            <div class="adds">
                <button type="button" class="tool tool--main" data-testid="take-job" onclick={take}>{ "Put it on my shelf" }</button>
                <button type="button" class="tool" data-testid="leave-job" onclick={leave}>{ "Leave it" }</button>
            </div>
        </section>
    }
}
