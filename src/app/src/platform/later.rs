//! Doing something a moment later, or again and again, until it is called off.

use std::cell::RefCell;
use std::future::poll_fn;
use std::pin::pin;
use std::rc::Rc;
use std::task::Poll;

use gloo::timers::callback::{Interval, Timeout};
use gloo::utils::window;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use wasm_bindgen_futures::spawn_local;

use super::clock;

/// Something that will be done; dropped before, it is not.
pub(crate) struct Later {
    _timeout: Timeout,
}

/// Does something after so many milliseconds, unless what is returned is dropped before.
pub(crate) fn later(milliseconds: u32, what: impl FnOnce() + 'static) -> Later {
    Later { _timeout: Timeout::new(milliseconds, what) }
}

/// Something that is done once nothing newer of its kind was asked for a while: the last of it. Dropped, it is not.
///
/// One timer serves for all that is asked meanwhile: to set and clear one at each key is a part of what a key costs.
#[derive(Default)]
pub(crate) struct Resting(Rc<RefCell<Asked>>);

#[derive(Default)]
struct Asked {
    what: Option<Box<dyn FnOnce()>>,
    /// For how long nothing newer may come, and since when, in milliseconds.
    rest: u32,
    since: u64,
    timer: Option<Later>,
}

impl Resting {
    /// Does this, and nothing that was asked before, unless something newer comes within so many milliseconds.
    pub(crate) fn after(&self, milliseconds: u32, what: impl FnOnce() + 'static) {
        let mut asked = self.0.borrow_mut();
        asked.what = Some(Box::new(what));
        (asked.rest, asked.since) = (milliseconds, clock::now());
        if asked.timer.is_none() {
            asked.timer = Some(looking(&self.0, milliseconds));
        }
    }

    /// Does nothing of what was asked.
    pub(crate) fn call_off(&self) {
        drop(self.0.borrow_mut().what.take());
    }
}

/// Looks at what was asked, in so many milliseconds.
fn looking(asked: &Rc<RefCell<Asked>>, milliseconds: u32) -> Later {
    let asked = Rc::downgrade(asked);
    later(milliseconds, move || {
        let Some(asked) = asked.upgrade() else { return };
        // What is running is dropped when it has run.
        let done = asked.borrow_mut().timer.take();
        spawn_local(async move { drop(done) });
        let due = {
            let mut now = asked.borrow_mut();
            // A clock that was put back says nothing: then it has rested.
            let gone = clock::now().checked_sub(now.since).and_then(|it| u32::try_from(it).ok());
            let left = now.rest.saturating_sub(gone.unwrap_or(u32::MAX));
            if left > 0 && now.what.is_some() {
                now.timer = Some(looking(&asked, left));
                None
            } else {
                now.what.take()
            }
        };
        if let Some(what) = due {
            what();
        }
    })
}

/// Something that will be done once a frame was drawn; dropped before, it is not.
pub(crate) struct AfterFrame {
    frame: Option<i32>,
    rest: Rc<RefCell<Option<Later>>>,
    _call: Closure<dyn FnMut()>,
}

impl Drop for AfterFrame {
    fn drop(&mut self) {
        if let Some(frame) = self.frame {
            drop(window().cancel_animation_frame(frame));
        }
        drop(self.rest.take());
    }
}

/// Does something once the page has drawn what stands now, unless what is returned is dropped before.
pub(crate) fn after_frame(what: impl FnOnce() + 'static) -> AfterFrame {
    let rest = Rc::new(RefCell::new(None));
    let call = Closure::<dyn FnMut()>::once({
        let rest = rest.clone();
        // It is called just before the frame is made.
        move || *rest.borrow_mut() = Some(later(0, what))
    });
    let frame = window().request_animation_frame(call.as_ref().unchecked_ref()).ok();
    AfterFrame { frame, rest, _call: call }
}

/// Something that is done again and again until this is dropped.
pub(crate) struct Every {
    _interval: Interval,
}

/// Does something every so many milliseconds until what is returned is dropped.
pub(crate) fn every(milliseconds: u32, what: impl FnMut() + 'static) -> Every {
    Every { _interval: Interval::new(milliseconds, what) }
}

/// Milliseconds that a key is held before it repeats, and between one time and the next.
const UNTIL_HELD: u32 = 400;
const WHILE_HELD: u32 = 70;

/// A key that is held down; dropped, it is let go.
pub(crate) struct Held {
    _first: Later,
    rest: Rc<RefCell<Option<Every>>>,
}

impl Held {
    /// Whether it was held long enough to go on by itself.
    pub(crate) fn has_repeated(&self) -> bool {
        self.rest.borrow().is_some()
    }
}

/// Does something again and again once a key is held for a while, until what is returned is dropped.
pub(crate) fn held(what: impl Fn() + 'static) -> Held {
    let rest = Rc::new(RefCell::new(None));
    let first = later(UNTIL_HELD, {
        let rest = rest.clone();
        move || *rest.borrow_mut() = Some(every(WHILE_HELD, what))
    });
    Held { _first: first, rest }
}

/// Something that is done again and again; dropped, it is not.
pub(crate) struct EverySecond {
    _interval: Interval,
}

/// Does something every second, until what is returned is dropped.
pub(crate) fn every_second(what: impl FnMut() + 'static) -> EverySecond {
    EverySecond { _interval: Interval::new(1_000, what) }
}

/// Tells that something has come about, or something else has: whichever is first.
#[derive(Clone)]
pub(crate) struct First(Option<js_sys::Function>);

impl First {
    /// It has come about.
    pub(crate) fn tell(&self) {
        if let Some(tell) = &self.0 {
            drop(tell.call0(&wasm_bindgen::JsValue::NULL));
        }
    }
}

/// A waiting that ends with the first telling.
pub(crate) fn first() -> (First, impl Future<Output = ()>) {
    let mut tell = None;
    let told = js_sys::Promise::new(&mut |resolve, _| tell = Some(resolve));
    (First(tell), async move { drop(wasm_bindgen_futures::JsFuture::from(told).await) })
}

/// What a future comes to; `None` where that takes more than so many seconds. A page that sleeps does not count them: what
/// comes while it does is there when it wakes.
pub(crate) async fn within<T>(seconds: u32, what: impl Future<Output = T>) -> Option<T> {
    let mut what = pin!(what);
    let mut patience = pin!(awake(seconds));
    poll_fn(|context| match what.as_mut().poll(context) {
        Poll::Ready(come) => Poll::Ready(Some(come)),
        Poll::Pending => patience.as_mut().poll(context).map(|()| None),
    })
    .await
}

/// Waits so many seconds, each by itself.
async fn awake(seconds: u32) {
    for _ in 0..seconds {
        let (tell, told) = first();
        let second = later(1_000, move || tell.tell());
        told.await;
        drop(second);
    }
}
