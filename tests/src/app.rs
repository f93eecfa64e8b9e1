//! The app as a person uses it.

use std::ops::Deref;

use reckoner_devserver::Server;
use serde_json::{Value, json};

use crate::browser::{Browser, Screen};
use crate::release;

/// The app in a browser, with the server that it came from. All of [`Browser`] is at hand too.
pub struct App {
    browser: Browser,
    /// Where the app comes from; stop it, spoil it, put another release on it.
    pub server: Server,
}

impl Deref for App {
    type Target = Browser;

    fn deref(&self) -> &Browser {
        &self.browser
    }
}

impl App {
    /// Serves the built app, opens its home page and waits until it has started.
    #[track_caller]
    pub fn open(screen: Screen) -> App {
        let app = App::arrive(screen);
        app.go("");
        app.wait_for_start();
        app
    }

    /// Serves the built app, opens a page by its fragment (`#/tape?...`) and waits for its start.
    #[track_caller]
    pub fn open_at(screen: Screen, fragment: &str) -> App {
        let app = App::arrive(screen);
        app.go(fragment);
        app.wait_for_start();
        app
    }

    /// Serves the built app to a browser that has not gone there yet.
    #[track_caller]
    pub fn arrive(screen: Screen) -> App {
        App::with(Browser::start(screen))
    }

    /// Like [`App::arrive`], with a browser of your own making.
    #[track_caller]
    pub fn with(browser: Browser) -> App {
        let server = Server::on_this_machine(release::built())
            .unwrap_or_else(|error| panic!("the server does not start: {error}"));
        App { browser, server }
    }

    /// Closes the browser and keeps the server.
    pub fn close_browser(self) -> Server {
        self.server
    }

    /// Goes to an address inside the app: a query, a fragment, or both; empty for home.
    #[track_caller]
    pub fn go(&self, inside: &str) {
        self.browser.open(&format!("{}{inside}", self.server.url()));
        self.settle();
    }

    /// The address within the app, from its `#` on; empty for home.
    #[track_caller]
    pub fn place(&self) -> String {
        let url = self.url();
        url.find('#').and_then(|at| url.get(at..)).unwrap_or_default().to_owned()
    }

    /// Waits until the page shows what its address says, where the page is the app: a browser tells it of a new
    /// address a moment after the tap, and some addresses load another program.
    #[track_caller]
    pub fn settle(&self) {
        self.wait_until(
            "the page of the address is drawn",
            "if (!document.getElementById('app') || !document.getElementById('recovery').hidden) return true;
             const { app, place } = document.documentElement.dataset;
             return app === 'started' && place === location.hash ? true : [app, place, location.hash]",
        );
    }

    /// Waits until the app itself has drawn, in place of the static first picture.
    #[track_caller]
    pub fn wait_for_start(&self) {
        self.wait_until(
            "the app has started",
            "return document.documentElement.dataset.app === 'started'",
        );
    }

    /// Waits until every file is kept for use without a signal.
    #[track_caller]
    pub fn wait_until_kept(&self) {
        self.wait_until(
            "ready to work offline",
            "return document.documentElement.dataset.offline === 'ready'",
        );
    }

    /// Waits until the element with this test id can be seen.
    #[track_caller]
    pub fn wait_for(&self, id: &str) {
        self.wait_until(&format!("{id} can be seen"), &visible(id));
    }

    /// Whether the element with this test id can be seen now.
    #[track_caller]
    pub fn shows(&self, id: &str) -> bool {
        self.script(&visible(id)) == Value::Bool(true)
    }

    /// Waits for the element with this test id and taps it.
    #[track_caller]
    pub fn tap(&self, id: &str) {
        // While the keys are out, the other fields of a calculator are not seen.
        if self.press_middle_of(&format!("{}:not(.is-away *)", selector(id))) {
            self.settle();
            return;
        }
        self.wait_for(id);
        if self.script(&format!("return {}?.closest('.is-away') != null", element(id))) == true {
            self.click(&selector("key-close"));
            self.wait_until(
                "the field is seen",
                &format!("return {}?.closest('.is-away') == null", element(id)),
            );
        }
        self.click(&selector(id));
        self.settle();
    }

    /// Goes to a section of the job at hand, by its name in the address; `front` for the first page. Those that have no
    /// tab are behind "More".
    #[track_caller]
    pub fn section(&self, name: &str) {
        if !["front", "sizes", "parts", "boards", "more"].contains(&name) {
            self.tap("section-more");
        }
        self.tap(&format!("section-{name}"));
    }

    /// Taps keys of the measure keypad, by the part of their test ids after `key-`.
    #[track_caller]
    pub fn press(&self, keys: &[&str]) {
        for key in keys {
            self.tap(&format!("key-{key}"));
        }
    }

    /// Taps a field, so that the keypad writes into it.
    #[track_caller]
    pub fn enter(&self, field: &str, keys: &[&str]) {
        self.tap(&format!("field-{field}"));
        self.press(keys);
    }

    /// Waits for the element with this test id; its text as it is seen, spaces evened out.
    #[track_caller]
    pub fn text(&self, id: &str) -> String {
        self.wait_for(id);
        let text = self.script(&format!("return {}.innerText", element(id)));
        let words: Vec<&str> = text.as_str().unwrap_or_default().split_whitespace().collect();
        words.join(" ")
    }

    /// Waits until the text of an element is this.
    #[track_caller]
    pub fn wait_for_text(&self, id: &str, expected: &str) {
        let wanted = json!(expected);
        self.wait_until(
            &format!("{id} reads {expected:?}"),
            &format!("return {}?.innerText.trim().replace(/\\s+/g, ' ') === {wanted}", element(id)),
        );
    }

    /// Waits until these words stand in the text of an element, spaces evened out.
    #[track_caller]
    pub fn wait_for_words(&self, id: &str, words: &str) {
        let text = format!("{}?.textContent.replace(/\\s+/g, ' ')", element(id));
        self.wait_until(
            &format!("{id} says {words:?}"),
            &format!("return {text}.includes({}) ?? false", json!(words)),
        );
    }

    /// Waits until a field holds this text.
    #[track_caller]
    pub fn wait_for_value(&self, id: &str, text: &str) {
        self.wait_until(
            &format!("{id} holds {text:?}"),
            &format!(
                "const value = {}?.value; return value === {} ? true : value",
                element(id),
                json!(text)
            ),
        );
    }

    /// Waits until no element has this test id.
    #[track_caller]
    pub fn wait_until_gone(&self, id: &str) {
        self.wait_until(&format!("{id} is gone"), &format!("return {} === null", element(id)));
    }

    /// An attribute of the element with this test id.
    #[track_caller]
    pub fn attribute(&self, id: &str, name: &str) -> Option<String> {
        self.wait_for(id);
        let value = self.script(&format!("return {}.getAttribute({})", element(id), json!(name)));
        value.as_str().map(str::to_owned)
    }

    /// The test ids of everything that can be seen now, in reading order.
    #[track_caller]
    pub fn visible_ids(&self) -> Vec<String> {
        let ids = self.script(
            "return [...document.querySelectorAll('[data-testid]')]
                .filter((e) => e.checkVisibility()).map((e) => e.dataset.testid)",
        );
        let ids = ids.as_array().cloned().unwrap_or_default();
        ids.iter().filter_map(|id| id.as_str().map(str::to_owned)).collect()
    }

    /// Fails if anything reaches beyond the right edge of the screen.
    #[track_caller]
    pub fn assert_no_sideways_scroll(&self) {
        let wide = self.script(
            "const room = document.documentElement.clientWidth;
             if (document.documentElement.scrollWidth <= room) return [];
             return [...document.querySelectorAll('body *')]
                .filter((e) => e.getBoundingClientRect().right > room + 0.5)
                .map((e) => `${e.tagName}.${e.className} reaches ${e.getBoundingClientRect().right} of ${room}`)
                .concat('the page is wider than the screen')",
        );
        assert_eq!(wide, json!([]), "sideways scroll");
    }

    /// Fails if the element is not wholly on the screen without scrolling.
    #[track_caller]
    pub fn assert_on_first_screen(&self, id: &str) {
        self.wait_for(id);
        let place = self.script(&format!(
            "const r = {}.getBoundingClientRect();
             return [scrollY, r.top >= 0 && r.bottom <= innerHeight && r.left >= 0 && r.right <= innerWidth,
                     `top ${{r.top}} bottom ${{r.bottom}} of ${{innerHeight}}`]",
            element(id)
        ));
        assert_eq!(place[0], json!(0), "the page is already scrolled");
        assert_eq!(place[1], json!(true), "{id} is not on the first screen: {}", place[2]);
    }

    /// Fails with every fault that the accessibility engine finds on the page as it is now, with the rule of WCAG 2.2 on
    /// the size of what is tapped, which it leaves out by itself.
    #[track_caller]
    pub fn assert_accessible(&self) {
        // Half a megabyte: once for each page that is loaded.
        if self.script("return window.axe !== undefined") != json!(true) {
            let file = std::env::var_os("RECKONER_AXE")
                .unwrap_or_else(|| panic!("run the journeys with: cargo xtask test journeys"));
            let engine = std::fs::read_to_string(&file)
                .unwrap_or_else(|error| panic!("the accessibility engine: {error}"));
            // Run by the driver, so the page's content policy stays as it is; at the top, so that it is there afterwards.
            self.script(&format!("{engine}; window.axe = globalThis.axe ?? axe"));
        }
        let report = self.script(
            "const report = await axe.run({ rules: { 'target-size': { enabled: true } } });
             return { passed: report.passes.length,
                      faults: report.violations.flatMap((v) =>
                        v.nodes.map((n) => `${v.id} (${v.help}): ${n.html}\\n${n.failureSummary}`)) }",
        );
        let passed = report["passed"].as_u64().unwrap_or(0);
        assert!(passed > 0, "the accessibility engine looked at nothing");
        assert_eq!(report["faults"], json!([]), "accessibility");
    }

    /// Fails if the console holds an error or a warning since it was last read.
    #[track_caller]
    pub fn assert_quiet_console(&self) {
        let mut lines = self.console();
        lines.retain(|line| line.starts_with("SEVERE") || line.starts_with("WARNING"));
        assert!(lines.is_empty(), "console: {lines:#?}");
    }
}

fn selector(id: &str) -> String {
    format!("[data-testid={}]", json!(id))
}

fn element(id: &str) -> String {
    format!("document.querySelector({})", json!(selector(id)))
}

fn visible(id: &str) -> String {
    format!("return {}?.checkVisibility() === true", element(id))
}
