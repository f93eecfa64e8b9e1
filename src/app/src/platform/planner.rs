//! The planner: a program of its own in a Web Worker, started on first use.
//!
//! One question at a time. Letting go of an [`Asking`] ends the worker at once, whatever it is doing; the next question
//! starts another. The clock is here and not in the planner. Where there are no workers, or the worker does not start,
//! the same program answers on the page itself, with so few steps that the page hardly waits.

use std::cell::RefCell;
use std::rc::Rc;

use gloo::events::EventListener;
use gloo::utils::{document, window};
use js_sys::{Function, Object, Promise, Reflect};
use reckoner_core::cutting::Job;
use reckoner_formats::{Ask, News, Question, Reply, number_of_reply, read_reply, write_question};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{Element, MessageEvent, Worker, WorkerOptions, WorkerType};

use super::later::{Later, later};
use crate::cutting::heard::{joined, sound};

/// What the program says when it takes questions, as in its own crate.
const READY: &str = "ready";
/// What its loader says when it cannot be started, as written by the build.
const FAILED: &str = "failed";
/// How long a worker may take to start, in milliseconds: a slow phone has to compile it.
const MOST_START: u32 = 20_000;
/// Between two pieces of news, in milliseconds: more often nobody can read them, and drawing them costs frames.
const NEWS_EVERY: u32 = 200;
/// Steps for a plan made on the page itself.
const QUICK: u64 = 1_500_000;
/// Until the page has drawn that it will wait, in milliseconds.
const TO_PAINT: u32 = 60;

const ON_PAGE: &str =
    "This device cannot plan in the background. This is the quick plan; a cheaper one may exist.";
const NOT_ON_PAGE: &str =
    "This device cannot work this out in the background, and it takes too long to do here.";
const DIED: &str = "The planner stopped, perhaps for want of memory. What it had found is kept.";
const UNREADABLE: &str = "The planner gave an answer that cannot be read.";

/// What comes back from the planner.
pub(crate) enum Heard {
    /// A reply whose plans and bounds were checked.
    Reply(Reply),
    /// It is answered on the page itself, and why that is less.
    OnPage(&'static str),
    /// Nothing more will come, and why.
    Trouble(String),
}

/// A question that is being answered. Dropped, it is called off.
pub(crate) struct Asking {
    number: u32,
}

impl Drop for Asking {
    fn drop(&mut self) {
        let is_open = DESK.with_borrow_mut(|desk| {
            let is_mine = desk.waiting.as_ref().is_some_and(|it| it.number == self.number);
            is_mine.then(|| (desk.waiting.take(), desk.running.take()))
        });
        // Let go of outside of the desk: what they hold may ask again.
        drop(is_open);
    }
}

/// Whose turn it is.
#[derive(Default)]
struct Desk {
    last: u32,
    waiting: Option<Waiting>,
    running: Option<Running>,
}

struct Waiting {
    number: u32,
    job: Rc<Job>,
    ask: Ask,
    hear: Rc<dyn Fn(Heard)>,
    /// Whether a plan has come.
    has_plan: bool,
    /// News that was not told yet, and the clock that will tell it.
    news: Option<News>,
    clock: Option<Later>,
}

/// A worker. Dropped, it ends.
struct Running {
    worker: Worker,
    is_ready: bool,
    _message: EventListener,
    _error: EventListener,
    _patience: Later,
}

impl Drop for Running {
    fn drop(&mut self) {
        self.worker.terminate();
    }
}

thread_local! {
    static DESK: RefCell<Desk> = RefCell::default();
}

/// Asks the planner. A question that was still open is called off.
pub(crate) fn ask(job: Rc<Job>, ask: Ask, hear: impl Fn(Heard) + 'static) -> Asking {
    let hear: Rc<dyn Fn(Heard)> = Rc::new(hear);
    let (number, before) = DESK.with_borrow_mut(|desk| {
        desk.last = desk.last.wrapping_add(1);
        let before = desk.waiting.take().map(|waiting| (waiting, desk.running.take()));
        let (has_plan, news, clock) = (false, None, None);
        desk.waiting = Some(Waiting { number: desk.last, job, ask, hear, has_plan, news, clock });
        (desk.last, before)
    });
    drop(before);
    let is_there = DESK.with_borrow(|desk| desk.running.is_some());
    if is_there {
        send();
    } else {
        match start() {
            Ok(running) => DESK.with_borrow_mut(|desk| desk.running = Some(running)),
            // Told a moment later, as everything else is.
            Err(_) => spawn_local(async move { answer_here(number).await }),
        }
    }
    Asking { number }
}

/// The link to the program's files.
fn program() -> Option<Element> {
    document().query_selector("link[rel=worker][href*=planner]").ok().flatten()
}

fn start() -> Result<Running, JsValue> {
    let loader = program().and_then(|link| link.get_attribute("data-loader"));
    let options = WorkerOptions::new();
    options.set_type(WorkerType::Module);
    let worker = Worker::new_with_options(&loader.ok_or(JsValue::NULL)?, &options)?;
    let message = EventListener::new(&worker, "message", |event| {
        let text = event.dyn_ref::<MessageEvent>().and_then(|it| it.data().as_string());
        hear(&text.unwrap_or_default());
    });
    let options = gloo::events::EventListenerOptions::enable_prevent_default();
    let error = EventListener::new_with_options(&worker, "error", options, |event| {
        event.prevent_default();
        fail();
    });
    let patience = later(MOST_START, || {
        let is_late = DESK.with_borrow(|desk| desk.running.as_ref().is_some_and(|it| !it.is_ready));
        if is_late {
            fail();
        }
    });
    Ok(Running { worker, is_ready: false, _message: message, _error: error, _patience: patience })
}

/// Hands the question to the worker, once that listens.
fn send() {
    DESK.with_borrow(|desk| {
        if let (Some(waiting), Some(running)) = (&desk.waiting, &desk.running)
            && running.is_ready
        {
            drop(running.worker.post_message(&written(waiting, waiting.ask.clone()).into()));
        }
    });
}

fn written(waiting: &Waiting, ask: Ask) -> String {
    let job = (*waiting.job).clone();
    write_question(&Question { number: waiting.number, job, ask })
}

/// Takes a message of the program.
fn hear(text: &str) {
    if text == READY {
        DESK.with_borrow_mut(|desk| {
            if let Some(running) = &mut desk.running {
                running.is_ready = true;
            }
        });
        return send();
    }
    if text == FAILED {
        return fail();
    }
    // A reply to an older question, or to one that was called off.
    let number = number_of_reply(text);
    let Some(job) = DESK.with_borrow(|desk| {
        desk.waiting.as_ref().filter(|it| Some(it.number) == number).map(|it| it.job.clone())
    }) else {
        return;
    };
    match read_reply(text, &job) {
        Ok((_, Reply::News(news))) => keep_news(news),
        Ok((_, reply)) => finish(&job, reply),
        Err(_) => end(Heard::Trouble(UNREADABLE.to_owned())),
    }
}

/// Keeps news until the clock tells it.
fn keep_news(news: News) {
    DESK.with_borrow_mut(|desk| {
        let Some(waiting) = &mut desk.waiting else { return };
        let is_first = news.better.is_some() && !waiting.has_plan;
        waiting.has_plan |= news.better.is_some();
        waiting.news = Some(joined(waiting.news.take(), news));
        // The first plan is shown at once.
        if is_first || waiting.clock.is_none() {
            waiting.clock = Some(later(if is_first { 0 } else { NEWS_EVERY }, tell_news));
        }
    });
}

fn tell_news() {
    let told = DESK.with_borrow_mut(|desk| {
        let waiting = desk.waiting.as_mut()?;
        // The clock has rung; dropping it is nothing more.
        waiting.clock = None;
        Some((waiting.news.take()?, waiting.job.clone(), waiting.hear.clone()))
    });
    if let Some((news, job, hear)) = told {
        match sound(&job, Reply::News(news)) {
            Ok(reply) => hear(Heard::Reply(reply)),
            Err(words) => end(Heard::Trouble(words)),
        }
    }
}

fn finish(job: &Job, reply: Reply) {
    match sound(job, reply) {
        Ok(reply) => end(Heard::Reply(reply)),
        Err(words) => end(Heard::Trouble(words)),
    }
}

/// The last that is said to the open question.
fn end(heard: Heard) {
    let waiting = DESK.with_borrow_mut(|desk| desk.waiting.take());
    if let Some(waiting) = waiting {
        (waiting.hear)(heard);
    }
}

/// The worker did not start, or is dead.
fn fail() {
    let (running, open) = DESK.with_borrow_mut(|desk| {
        let open = desk.waiting.as_ref().map(|it| (it.number, it.has_plan));
        (desk.running.take(), open)
    });
    drop(running);
    match open {
        Some((_, true)) => {
            tell_news();
            end(Heard::Trouble(DIED.to_owned()));
        }
        Some((number, false)) => spawn_local(async move { answer_here(number).await }),
        None => {}
    }
}

/// Answers the open question on the page.
async fn answer_here(number: u32) {
    let open = DESK.with_borrow(|desk| {
        let waiting = desk.waiting.as_ref().filter(|it| it.number == number)?;
        let ask = match waiting.ask {
            Ask::Cheapest { .. } => Some(Ask::Cheapest { budget: QUICK }),
            Ask::RackOnly { .. } => Some(Ask::RackOnly { budget: QUICK }),
            Ask::Become(_) | Ask::SingleBoards { .. } | Ask::NextRun { .. } => None,
        };
        Some((ask.map(|ask| written(waiting, ask)), waiting.hear.clone()))
    });
    match open {
        None => {}
        Some((None, _)) => end(Heard::Trouble(NOT_ON_PAGE.to_owned())),
        Some((Some(question), tell)) => {
            tell(Heard::OnPage(ON_PAGE));
            gloo::timers::future::TimeoutFuture::new(TO_PAINT).await;
            if run_here(&question).await.is_err() {
                end(Heard::Trouble(
                    "The planner could not be loaded. Load the page again; if that does not help, load it once with a signal."
                        .to_owned(),
                ));
            }
        }
    }
}

/// Loads the program into the page, if it is not there yet, and asks it.
async fn run_here(question: &str) -> Result<(), JsValue> {
    let link = program().ok_or(JsValue::NULL)?;
    let file = |name: &str| -> Result<JsValue, JsValue> {
        let address = link.get_attribute(name).ok_or(JsValue::NULL)?;
        Ok(web_sys::Url::new_with_base(&address, &document().base_uri()?.unwrap_or_default())?
            .href()
            .into())
    };
    let load: Function = Reflect::get(&window(), &"reckonerLoad".into())?.dyn_into()?;
    let module: Promise = load.call1(&JsValue::NULL, &file("href")?)?.dyn_into()?;
    let module = JsFuture::from(module).await?;
    let begin: Function = Reflect::get(&module, &"default".into())?.dyn_into()?;
    let options = Object::new();
    Reflect::set(&options, &"module_or_path".into(), &file("data-wasm")?)?;
    let begun: Promise = begin.call1(&JsValue::NULL, &options)?.dyn_into()?;
    JsFuture::from(begun).await?;
    let answer: Function = Reflect::get(&module, &"answer".into())?.dyn_into()?;
    let tell = Closure::<dyn FnMut(String)>::new(|text: String| hear(&text));
    answer.call2(&JsValue::NULL, &question.into(), tell.as_ref())?;
    Ok(())
}
