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

/// What this window itself typed, and over which address.
fn own_over(calculator: &Calculator) -> Option<(String, String)> {
    let own = storage::own(&storage::over_of(calculator.slug))?;
    let (over, typed) = own.split_once('\n')?;
    Some((over.to_owned(), typed.to_owned()))
}

fn set_last_over(calculator: &Calculator, over: &str) {
    let over = format!("{} {over}", window());
    let name = storage::over_of(calculator.slug);
    if storage::get(&name).as_ref() != Some(&over) {
        storage::set(&name, &over);
    }
}

fn set_own_over(calculator: &Calculator, over: &str, typed: &str) {
    storage::set_own(&storage::over_of(calculator.slug), &format!("{over}\n{typed}"));
}

/// Keeps what is typed, in the event that types it.
pub(super) fn keep(calculator: &Calculator, entries: &Entries) {
    let (typed, here) = (link::typed(entries), address::fragment());
    storage::set(&storage::last_of(calculator.slug), &typed);
    set_last_over(calculator, &here);
    set_own_over(calculator, &here, &typed);
}

/// What was typed last in any window.
pub(super) fn last(calculator: &'static Calculator) -> Option<Entries> {
    let typed = storage::get(&storage::last_of(calculator.slug))?;
    Some(link::kept(calculator, &typed))
}

/// What was typed over the address that is here now: in this window, else in any. A browser that was killed may bring back
/// an older text of the window than is kept by name.
pub(super) fn typed_over(calculator: &'static Calculator) -> Option<Entries> {
    let here = address::fragment();
    let last_over = last_over(calculator);
    let was_last = last_over.as_ref().is_some_and(|(by, _)| *by == window());
    let own = own_over(calculator).filter(|(over, _)| !was_last && *over == here);
    match own {
        Some((_, typed)) => Some(link::kept(calculator, &typed)),
        None => last(calculator).filter(|_| last_over.is_some_and(|(_, over)| over == here)),
    }
}

/// Writes what was typed into the address.
pub(super) fn write_address(calculator: &Calculator, address: &str) {
    let before = address::fragment();
    address::replace(address);
    let here = address::fragment();
    if let Some((_, typed)) = own_over(calculator).filter(|(over, _)| *over == before) {
        set_own_over(calculator, &here, &typed);
    }
    if last_over(calculator) == Some((window(), before)) {
        set_last_over(calculator, &here);
    }
}
