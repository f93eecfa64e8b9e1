//! The campaign: random walks through the job book with every way out of it, against a model of what must stand.
//!
//! A walk is the same for the same seed. It takes 40 actions on a browser with a profile on the disk: keys in every kind
//! of form, choices, ticks, new things, undo, and between them ways out and faults. After each way out the form is
//! opened afresh and compared with the keys that were sent; at the end everything is.
//!
//! What is typed is being written at the latest one frame after the key. So a walk waits for one frame (16 ms at the least)
//! between the last key and a crash or a kill, and until the browser has acknowledged what was begun by then, and tells how
//! long that was. Before a reload or the closing of the window it does not wait at all.

mod chance;
mod chromium;
mod edits;
mod full;
mod lists;
mod model;
mod tab;
mod walk;
mod ways_out;
mod wire;
mod words;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

use chromium::Chromium;
use walk::{Stop, Walk};
use wire::Trouble;

use crate::release;

/// Actions of one walk.
const ACTIONS: usize = 40;
/// Walks on one profile: then a new one is begun, before it grows slow.
const ON_A_PROFILE: usize = 20;

/// What a campaign came to.
#[derive(Debug, Default)]
pub struct Outcome {
    /// Walks that were begun.
    pub walks: usize,
    /// Actions of all of them.
    pub actions: usize,
    /// How many faults of each kind.
    pub faults: BTreeMap<&'static str, usize>,
    /// How long the frames were after which a page or the browser was killed.
    pub frames: Vec<Duration>,
    /// Seed and story of each walk in which something did not stand.
    pub losses: Vec<String>,
    /// Seed and story of each walk that could not go on.
    pub stuck: Vec<String>,
}

/// Which walks are taken, and how.
#[derive(Clone, Copy, Debug)]
pub struct Plan {
    /// The number of the first walk; the one after it has the next. A walk is the same for the same number.
    pub first: u64,
    /// How many.
    pub walks: u64,
    /// How many are on their way at a time.
    pub at_once: usize,
    /// Whether a walk goes on after a loss, to find how many there are.
    pub goes_on: bool,
}

/// Takes walks, and tells each loss when it is found.
pub fn campaign(plan: &Plan) -> Outcome {
    let Plan { first, at_once, .. } = *plan;
    let next = AtomicU64::new(first);
    let outcome = Mutex::new(Outcome::default());
    let new_release = release::another("campaign");
    std::thread::scope(|scope| {
        for lane in 0..at_once.max(1) {
            let (next, outcome, new_release) = (&next, &outcome, &new_release);
            scope.spawn(move || {
                let profile = release::target_folder().join(format!("campaign/{first}-{lane}"));
                walk_on(&profile, next, plan, new_release, outcome);
            });
        }
    });
    outcome.into_inner().unwrap_or_default()
}

fn walk_on(
    profile: &Path,
    next: &AtomicU64,
    plan: &Plan,
    new_release: &Path,
    outcome: &Mutex<Outcome>,
) {
    let mut browser = None;
    let mut done = 0;
    loop {
        let seed = next.fetch_add(1, Ordering::SeqCst);
        if seed >= plan.first.saturating_add(plan.walks) {
            break;
        }
        if done % ON_A_PROFILE == 0 {
            browser = None;
        }
        done += 1;
        let begun = Instant::now();
        let story = match browser_on(&mut browser, profile) {
            Ok(browser) => walk(browser, seed, plan.goes_on, new_release, outcome),
            Err(words) => Some((false, format!("walk {seed}: {words}"))),
        };
        println!("walk {seed}: {:.1} s", begun.elapsed().as_secs_f64());
        if let Some((is_loss, words)) = story {
            println!("{words}");
            // What a walk left behind in the middle of it is no place to begin the next.
            browser = None;
            if let Ok(mut outcome) = outcome.lock() {
                if is_loss { outcome.losses.push(words) } else { outcome.stuck.push(words) }
            }
        }
    }
    drop(browser);
    drop(std::fs::remove_dir_all(profile));
}

fn browser_on<'a>(
    browser: &'a mut Option<Chromium>,
    profile: &Path,
) -> Result<&'a mut Chromium, Trouble> {
    match browser {
        Some(browser) => Ok(browser),
        none => Ok(none.insert(Chromium::on_new_profile(&PathBuf::from(profile))?)),
    }
}

/// One walk; if it failed, whether that was a loss, and its story.
fn walk(
    browser: &mut Chromium,
    seed: u64,
    goes_on: bool,
    new_release: &Path,
    outcome: &Mutex<Outcome>,
) -> Option<(bool, String)> {
    let mut walk = match Walk::begin(browser, seed, Some(new_release)) {
        Ok(walk) => walk,
        Err(words) => return Some((false, format!("walk {seed} did not begin: {words}"))),
    };
    let mut taken = 0;
    let mut end = Ok(());
    while taken < ACTIONS && end.is_ok() {
        taken += 1;
        end = match walk.step() {
            Err(Stop::Loss(words)) if goes_on => {
                let actions = walk.told.actions.join("\n  ");
                println!("--- seed {seed}, after {taken} actions\n  {actions}\n  LOSS {words}");
                if let Ok(mut outcome) = outcome.lock() {
                    outcome.losses.push(words);
                }
                walk.forget();
                Ok(())
            }
            other => other,
        };
    }
    end = end.and_then(|()| walk.end());
    let story = end.err().map(|stop| {
        let (is_loss, words) = match stop {
            Stop::Loss(words) => (true, format!("LOSS {words}")),
            Stop::Stuck(words) => (false, format!("STUCK {words}")),
        };
        let actions = walk.told.actions.join("\n  ");
        (is_loss, format!("--- seed {seed}, after {taken} actions\n  {actions}\n  {words}"))
    });
    if let Ok(mut outcome) = outcome.lock() {
        outcome.walks += 1;
        outcome.actions += taken;
        outcome.frames.append(&mut walk.told.frames);
        for (kind, times) in &walk.told.faults {
            *outcome.faults.entry(kind).or_default() += times;
        }
    }
    story
}
