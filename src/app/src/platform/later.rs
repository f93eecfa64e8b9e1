//! Doing something a moment later, or again and again, until it is called off.

use std::cell::RefCell;
use std::future::poll_fn;
use std::pin::pin;
use std::rc::Rc;
use std::task::Poll;

use gloo::timers::callback::{Interval, Timeout};

/// Something that will be done; dropped before, it is not.
pub(crate) struct Later {
    _timeout: Timeout,
}

/// Does something after so many milliseconds, unless what is returned is dropped before.
pub(crate) fn later(milliseconds: u32, what: impl FnOnce() + 'static) -> Later {
    Later { _timeout: Timeout::new(milliseconds, what) }
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
