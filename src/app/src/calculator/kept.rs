//! What is kept of a calculator while it is typed in: for all windows what was typed last, by name, and for each window
//! what was typed in it over its address. The address is written a moment later than a key, and a page that is loaded
//! again before that goes on with what was typed over it.

use reckoner_core::calculators::Calculator;
use reckoner_core::sheet::Entries;

use crate::link;
use crate::platform::{address, alive, storage};

/// The name of the window itself, in what it keeps for itself alone.
const WINDOW: &str = "window";

/// The window, the same when it is loaded again.
fn window() -> String {
    storage::own(WINDOW).unwrap_or_else(|| {
        let name = alive::page();
        storage::set_own(WINDOW, &name);
        name
    })
}

/// Which window typed last, and over which address.
fn last_over(calculator: &Calculator) -> Option<(String, String)> {
    let over = storage::get(&storage::over_of(calculator.slug))?;
    // A version before wrote the address alone.
    let (by, over) = over.split_once(' ').unwrap_or(("", &over));
    Some((by.to_owned(), over.to_owned()))
}

/// What this window itself typed.
struct Own {
    /// Over which address.
    over: String,
    /// The address that stood there before that one was written in its place; empty where none was.
    before: String,
    typed: String,
}

fn own(calculator: &Calculator) -> Option<Own> {
    let own = storage::own(&storage::over_of(calculator.slug))?;
    let (addresses, typed) = own.split_once('\n')?;
    // A version before wrote the one address alone.
    let (over, before) = addresses.split_once(' ').unwrap_or((addresses, ""));
    Some(Own { over: over.to_owned(), before: before.to_owned(), typed: typed.to_owned() })
}

fn set_own(calculator: &Calculator, own: &Own) {
    let Own { over, before, typed } = own;
    storage::set_own(&storage::over_of(calculator.slug), &format!("{over} {before}\n{typed}"));
}

fn set_last_over(calculator: &Calculator, over: &str) {
    let over = format!("{} {over}", window());
    let name = storage::over_of(calculator.slug);
    if storage::get(&name).as_ref() != Some(&over) {
        storage::set(&name, &over);
    }
}

/// Keeps what is typed, in the event that types it.
pub(super) fn keep(calculator: &Calculator, entries: &Entries) {
    let (typed, here) = (link::typed(entries), address::fragment());
    storage::set(&storage::last_of(calculator.slug), &typed);
    set_last_over(calculator, &here);
    let before = own(calculator).filter(|own| own.over == here).map(|own| own.before);
    set_own(calculator, &Own { over: here, before: before.unwrap_or_default(), typed });
}

/// What was typed last in any window.
pub(super) fn last(calculator: &'static Calculator) -> Option<Entries> {
    let typed = storage::get(&storage::last_of(calculator.slug))?;
    Some(link::kept(calculator, &typed))
}

/// What was typed over the address that is here now: in this window, else in any. A browser that was killed may bring back
/// an older text of the window than is kept by name. One that was asked to load the page again may have taken its address a
/// moment before the page wrote another: what was typed over that one is meant too.
pub(super) fn typed_over(calculator: &'static Calculator) -> Option<Entries> {
    let here = address::fragment();
    let own = own(calculator);
    let is_before =
        address::is_loaded_again() && own.as_ref().is_some_and(|own| own.before == here);
    let last_over = last_over(calculator);
    let was_last = last_over.as_ref().is_some_and(|(by, _)| *by == window());
    let own = own.filter(|own| !was_last && (own.over == here || is_before));
    match own {
        Some(own) => Some(link::kept(calculator, &own.typed)),
        None => last(calculator)
            .filter(|_| last_over.is_some_and(|(_, over)| over == here) || (was_last && is_before)),
    }
}

/// Writes what was typed into the address.
pub(super) fn write_address(calculator: &Calculator, address: &str) {
    let before = address::fragment();
    address::replace(address);
    let here = address::fragment();
    if let Some(own) = own(calculator).filter(|own| own.over == before && here != before) {
        set_own(calculator, &Own { over: here.clone(), before: before.clone(), ..own });
    }
    if last_over(calculator) == Some((window(), before)) {
        set_last_over(calculator, &here);
    }
}
