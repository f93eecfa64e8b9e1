//! Every link and every button, once: none leads to a page that is not there.

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use reckoner_e2e::{App, Screen};
use serde_json::json;

use crate::shelf::begin_the_demo_anew;

/// What ends the job or the page of this walk, or opens what is not the page's own. Each is tapped by a journey of its own:
/// - `remove-job` and `empty-list`: `removed::a_removed_job_stays_in_its_list_until_that_is_emptied`
/// - `take-out`: `job_made::sizes_that_must_match_are_flagged_where_they_stand`, of a row `trade`, of a yard length
///   `yard::lengths_at_the_yard_are_counted_in_their_rows`
/// - `update-take`: `update::a_new_release_is_offered_and_waits_until_it_is_wanted`
/// - `save-file`: `handing_on::a_job_goes_to_another_browser_as_a_file`
/// - `save-all`: `all_jobs::all_jobs_go_to_another_browser_in_one_file_and_come_in_once`
/// - `open-demo`: `job::demo`
const LEFT_OUT: [&str; 7] =
    ["remove-job", "empty-list", "take-out", "update-take", "save-file", "save-all", "open-demo"];

/// Nothing may stop the walk and wait for an answer, and nothing may reach the device: its voice, its list of those to
/// share with, its clipboard, its printer.
const QUIET: &str = "
    window.confirm = () => false;
    window.print = () => {};
    speechSynthesis.speak = () => {};
    navigator.share = async () => {};
    navigator.clipboard.writeText = async () => {};";

/// The words of a page that is not there.
const DEAD: [&str; 4] = [
    "There is no page for this link",
    "This job is not on this device",
    "This is not in the job any more",
    "Sawdust Reckoner has stopped",
];

/// An address without what is typed in it: where it leads.
fn path(address: &str) -> &str {
    address.split('?').next().unwrap_or_default()
}

/// An address without its numbers and what is typed in it: the kind of its page.
fn kind(address: &str) -> String {
    let mut parts: Vec<&str> = path(address).split('/').collect();
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

/// The page that stands there, asked for in one question: a walk asks a thousand times.
struct Page {
    /// Its address within the app.
    at: String,
    words: String,
    is_recovery: bool,
    has_body: bool,
    links: Vec<String>,
    /// The buttons that can be tapped now, by name.
    buttons: Vec<String>,
}

impl Page {
    fn of(app: &App) -> Page {
        let said = app.script(
            "const recovery = document.querySelector('[data-testid=recovery]');
             return {
               at: location.hash,
               words: document.body.innerText,
               isRecovery: recovery?.checkVisibility() === true,
               hasBody: document.querySelector('main, #boot') !== null,
               links: [...document.querySelectorAll('a[href]')].map((a) => a.getAttribute('href')).filter((it) => it.startsWith('#')),
               buttons: [...document.querySelectorAll('button:not([disabled])')]
                 .filter((it) => it.checkVisibility() && !it.closest('.keypad'))
                 .map((it) => it.dataset.testid ?? it.getAttribute('aria-label') ?? it.innerText),
             }",
        );
        let text = |of: &str| said[of].as_str().unwrap_or_default().to_owned();
        let all = |of: &str| {
            let all = said[of].as_array().into_iter().flatten();
            all.filter_map(|it| it.as_str().map(str::to_owned)).collect()
        };
        Page {
            at: text("at"),
            words: text("words"),
            is_recovery: said["isRecovery"] == json!(true),
            has_body: said["hasBody"] == json!(true),
            links: all("links"),
            buttons: all("buttons"),
        }
    }

    /// Why it is a dead end; `None` where it is none.
    fn dead_end(&self) -> Option<String> {
        let at = &self.at;
        if let Some(dead) = DEAD.iter().find(|dead| self.words.contains(**dead)) {
            return Some(format!("{at}: {dead:?}"));
        }
        if self.words.trim().len() <= 10 {
            return Some(format!("an empty page, {at}"));
        }
        if self.is_recovery {
            return Some(format!("the recovery page, {at}"));
        }
        (!self.has_body).then(|| format!("a page without a body, {at}"))
    }
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

/// What was opened and tapped, over all jobs.
struct Walk<'a> {
    app: &'a App,
    /// Addresses.
    seen: BTreeSet<String>,
    /// Addresses without what is typed in them.
    paths: BTreeSet<String>,
    /// How many pages were opened of a kind.
    kinds: BTreeMap<String, usize>,
    /// Buttons, by the kind of their page.
    tapped: BTreeSet<(String, String)>,
    /// How many pages were only there after a tap.
    late: usize,
    /// What leads nowhere, and where it leads.
    dead: Vec<String>,
}

impl<'a> Walk<'a> {
    fn on(app: &'a App) -> Walk<'a> {
        let (seen, paths, kinds) = Default::default();
        Walk { app, seen, paths, kinds, tapped: BTreeSet::new(), late: 0, dead: Vec::new() }
    }

    /// Looks at the page that this led to.
    fn look(&mut self, from: &str) -> Page {
        let page = Page::of(self.app);
        self.dead.extend(page.dead_end().map(|why| format!("{from} leads to {why}")));
        page
    }

    /// Opens the pages that a link of these leads to, also by way of others, `most` of each kind: each with its buttons.
    fn open_all(
        &mut self,
        start: Vec<(String, String)>,
        most: usize,
    ) -> Vec<(String, Vec<String>)> {
        let mut waiting: VecDeque<(String, String)> = start.into();
        let mut pages = Vec::new();
        let mut of_kind: BTreeMap<String, usize> = BTreeMap::new();
        while let Some((address, from)) = waiting.pop_front() {
            let opened = of_kind.entry(kind(&address)).or_default();
            if *opened >= most || !self.seen.insert(address.clone()) {
                continue;
            }
            *opened += 1;
            self.paths.insert(path(&address).to_owned());
            *self.kinds.entry(kind(&address)).or_default() += 1;
            self.app.go(&address);
            let page = self.look(&from);
            for link in page.links {
                waiting.push_back((link, address.clone()));
            }
            pages.push((address, page.buttons));
        }
        pages
    }

    /// Taps each button once on a kind of page, with those that come up on the way: what they do to the job does not
    /// matter any more. What only a tap leads to is opened at once: the next may take it away.
    fn tap_all(&mut self, job: &str, pages: Vec<(String, Vec<String>)>) {
        let mut pages: VecDeque<(String, Vec<String>)> = pages.into();
        while let Some((address, names)) = pages.pop_front() {
            let kind = kind(&address);
            if !names.iter().any(|name| self.is_new(&kind, name)) {
                continue;
            }
            self.app.go(&address);
            let mut names: VecDeque<String> = Page::of(self.app).buttons.into();
            while let Some(name) = names.pop_front() {
                if !self.is_new(&kind, &name) || !press(self.app, &name) {
                    continue;
                }
                self.tapped.insert((kind.clone(), name.clone()));
                let from = format!("{name:?} on {address}");
                let page = self.look(&from);
                let stayed = page.at == address;
                if stayed {
                    // What it opened comes first: it may be gone after the next.
                    let opened = page.buttons.into_iter().filter(|name| !names.contains(name));
                    let opened: Vec<String> = opened.collect();
                    opened.into_iter().rev().for_each(|name| names.push_front(name));
                }
                let come_up = self.open_late(job, &from, page.links);
                if !stayed || !come_up.is_empty() {
                    self.app.go(&address);
                }
                if stayed && !come_up.is_empty() {
                    // What was open there is open again.
                    press(self.app, &name);
                    if self.app.place() != address {
                        self.app.go(&address);
                    }
                }
                pages.extend(come_up);
            }
        }
    }

    fn is_new(&self, kind: &str, name: &str) -> bool {
        let is_left_out = LEFT_OUT.iter().any(|it| name.starts_with(it));
        !is_left_out && !self.tapped.contains(&(kind.to_owned(), name.to_owned()))
    }

    /// Opens what the links lead to that came up with a tap: of this job up to twelve pages of a kind, of others one.
    fn open_late(
        &mut self,
        job: &str,
        from: &str,
        links: Vec<String>,
    ) -> Vec<(String, Vec<String>)> {
        let mut pages = Vec::new();
        let mut waiting: Vec<(String, String)> =
            links.into_iter().map(|it| (it, from.to_owned())).collect();
        while let Some((link, from)) = waiting.pop() {
            let of_kind = self.kinds.entry(kind(&link)).or_default();
            let most = if link.starts_with(job) { 12 } else { 1 };
            if *of_kind >= most || !self.paths.insert(path(&link).to_owned()) {
                continue;
            }
            *of_kind += 1;
            self.seen.insert(link.clone());
            self.late += 1;
            self.app.go(&link);
            let page = self.look(&from);
            waiting.extend(page.links.into_iter().map(|it| (it, link.clone())));
            pages.push((link, page.buttons));
        }
        pages
    }
}

/// First the demo in the middle of its work, with boards cut and one leg thin, then with all of that taken back.
#[test]
fn every_link_and_button_leads_somewhere() {
    let app = App::arrive(Screen::PHONE);
    app.before_each_page(QUIET);
    app.go("#/jobs");
    app.wait_for_start();
    app.tap("open-demo");
    app.wait_for("trouble-leg 2");
    let in_work = app.place();
    let mut walk = Walk::on(&app);
    let start = [in_work.as_str(), "#/", "#/jobs", "#/settings"];
    let from_the_start = |it: &str| (it.to_owned(), "the start".to_owned());
    let pages = walk.open_all(start.map(from_the_start).into(), usize::MAX);
    walk.tap_all(&in_work, pages);
    let in_work = (walk.seen.len(), walk.tapped.len());
    app.go("#/jobs");
    app.tap("open-demo");
    begin_the_demo_anew(&app);
    let anew = app.place().split('/').take(3).collect::<Vec<_>>().join("/");
    // What differs there is in the kinds of page: some of each will do.
    let pages = walk.open_all(vec![from_the_start(&anew)], 3);
    walk.tap_all(&anew, pages);
    let Walk { seen, tapped, late, dead, .. } = walk;
    println!(
        "{} pages, {late} of them after a tap, {} buttons; in work {in_work:?}",
        seen.len(),
        tapped.len()
    );
    assert!(dead.is_empty(), "{dead:#?}");
    assert!(in_work.0 > 150 && in_work.1 > 500, "{in_work:?}");
    assert!(seen.len() > in_work.0 + 20 && late > 5, "{} pages, {late} late", seen.len());
    for name in ["read-aloud", "share", "copy-link", "print", "start-fresh", "open-leg 2"] {
        assert!(tapped.iter().any(|it| it.1 == name), "{name} is not tapped");
    }
    app.assert_quiet_console();
}

/// The walk itself is held: on every page it is given links and a button that lead nowhere, and it finds each of them. Nothing
/// else on its way does.
#[test]
fn what_is_planted_to_lead_nowhere_is_found() {
    let app = App::arrive(Screen::PHONE);
    app.before_each_page(QUIET);
    app.before_each_page(
        "addEventListener('DOMContentLoaded', () => {
           const planted = document.createElement('div');
           planted.innerHTML = `<a href='#/nowhere'>to nowhere</a><a href='#/job/gone/item/7'>to a job that is gone</a>
             <button type='button' data-testid='planted'>to nowhere, too</button>`;
           planted.querySelector('button').onclick = () => { location.hash = '#/nowhere-else' };
           document.body.append(planted);
         })",
    );
    app.go("#/settings");
    app.wait_for_start();
    let mut walk = Walk::on(&app);
    let pages = walk.open_all(vec![("#/settings".to_owned(), "the start".to_owned())], 1);
    let planted = pages.iter().filter(|(_, buttons)| buttons.iter().any(|it| it == "planted"));
    assert!(planted.count() > 10, "{pages:?}");
    walk.tap_all("#/job/none", vec![("#/settings".to_owned(), vec!["planted".to_owned()])]);
    let leads =
        |to: &str| walk.dead.iter().filter(|it| it.contains(&format!("leads to {to}"))).count();
    let found = ["#/nowhere:", "#/job/gone/item/7:", "#/nowhere-else:"].map(leads);
    assert_eq!(found, [1, 1, 1], "{:#?}", walk.dead);
    assert_eq!(walk.dead.len(), 3, "{:#?}", walk.dead);
}
