//! Every link and every button, once: none leads to a page that is not there.

use std::collections::{BTreeSet, VecDeque};

use reckoner_e2e::App;
use serde_json::json;

use crate::job::demo;

/// What ends the job or the page of this walk, or opens what is not the page's own: these have
/// journeys of their own.
const LEFT_OUT: [&str; 12] = [
    "remove-job",
    "empty-list",
    "take-out",
    "update-take",
    "print",
    "save-file",
    "save-all",
    "share",
    "copy-link",
    "read-aloud",
    "start-fresh",
    "open-demo",
];

/// The words of a page that is not there.
const DEAD: [&str; 3] = [
    "There is no page for this link",
    "This is not in the job any more",
    "Sawdust Reckoner has stopped",
];

/// An address without its numbers and what is typed in it: the kind of its page.
fn kind(address: &str) -> String {
    let path = address.split('?').next().unwrap_or_default();
    let mut parts: Vec<&str> = path.split('/').collect();
    for part in &mut parts {
        if part.chars().next().is_some_and(|c| c.is_ascii_digit()) {
            *part = "N";
        }
    }
    if parts.get(1) == Some(&"job") && parts.len() > 2 {
        parts[2] = "KEY";
    }
    parts.join("/")
}

fn assert_alive(app: &App, from: &str) {
    let words = app.script("return document.body.innerText").as_str().unwrap_or("").to_owned();
    for dead in DEAD {
        assert!(!words.contains(dead), "{from} leads to {}: {dead:?}", app.place());
    }
    assert!(words.trim().len() > 10, "{from} leads to an empty page");
    assert!(!app.shows("recovery"), "{from} leads to the recovery page");
    let has_main = app.script("return document.querySelector('main, #boot') !== null");
    assert_eq!(has_main, json!(true), "{from} leads to a page without a body: {}", app.place());
}

fn links(app: &App) -> Vec<String> {
    let found = app.script(
        "return [...document.querySelectorAll('a[href]')].map((a) => a.getAttribute('href')).filter((it) => it.startsWith('#'))",
    );
    let found = found.as_array().cloned().unwrap_or_default();
    found.iter().filter_map(|it| it.as_str().map(str::to_owned)).collect()
}

/// The buttons that can be tapped now, by name.
fn buttons(app: &App) -> Vec<String> {
    let found = app.script(
        "return [...document.querySelectorAll('button:not([disabled])')]
            .filter((it) => it.checkVisibility() && !it.closest('.keypad'))
            .map((it) => it.dataset.testid ?? it.getAttribute('aria-label') ?? it.innerText)",
    );
    let found = found.as_array().cloned().unwrap_or_default();
    found.iter().filter_map(|it| it.as_str().map(str::to_owned)).collect()
}

/// Whether there was such a button.
fn press(app: &App, name: &str) -> bool {
    let pressed = app.script(&format!(
        "const name = {};
         const all = [...document.querySelectorAll('button:not([disabled])')];
         const one = all.find((it) => (it.dataset.testid ?? it.getAttribute('aria-label') ?? it.innerText) === name);
         one?.click();
         return one !== undefined",
        json!(name)
    ));
    app.settle();
    pressed == json!(true)
}

#[test]
fn every_link_and_button_leads_somewhere() {
    let app = demo();
    // Nothing may stop the walk and wait for an answer.
    let quiet = "window.confirm = () => false; window.print = () => {}; return true";
    app.script(quiet);
    let mut waiting: VecDeque<(String, String)> =
        ["#/", "#/jobs", "#/settings"].map(|it| (it.to_owned(), "the start".to_owned())).into();
    waiting.push_back((app.place(), "the start".to_owned()));
    let mut seen: BTreeSet<String> = BTreeSet::new();
    let mut pages: Vec<(String, Vec<String>)> = Vec::new();
    while let Some((address, from)) = waiting.pop_front() {
        if !seen.insert(address.clone()) {
            continue;
        }
        app.go(&address);
        assert_alive(&app, &from);
        for link in links(&app) {
            waiting.push_back((link, address.clone()));
        }
        pages.push((address, buttons(&app)));
    }
    // Then the buttons, each once on a kind of page, with those that come up on the way: what they do to the job does not
    // matter any more.
    let mut tapped: BTreeSet<(String, String)> = BTreeSet::new();
    for (address, names) in &pages {
        let kind = kind(address);
        let is_new = |tapped: &BTreeSet<(String, String)>, name: &String| {
            let is_left_out = LEFT_OUT.iter().any(|it| name.starts_with(it));
            !is_left_out && !tapped.contains(&(kind.clone(), name.clone()))
        };
        if !names.iter().any(|name| is_new(&tapped, name)) {
            continue;
        }
        app.go(address);
        let mut names: VecDeque<String> = buttons(&app).into();
        while let Some(name) = names.pop_front() {
            if !is_new(&tapped, &name) || !press(&app, &name) {
                continue;
            }
            tapped.insert((kind.clone(), name.clone()));
            assert_alive(&app, &format!("{name:?} on {address}"));
            if app.place() == *address {
                // What it opened comes first: it may be gone after the next.
                let opened = buttons(&app).into_iter().filter(|name| !names.contains(name));
                let opened: Vec<String> = opened.collect();
                opened.into_iter().rev().for_each(|name| names.push_front(name));
            } else {
                app.go(address);
            }
        }
    }
    println!("{} pages, {} buttons", pages.len(), tapped.len());
    assert!(
        pages.len() > 150 && tapped.len() > 500,
        "{} pages, {} buttons",
        pages.len(),
        tapped.len()
    );
    app.assert_quiet_console();
}
