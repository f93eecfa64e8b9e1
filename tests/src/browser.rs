//! One browser: scripts, screenshots, its network and its processor.

use std::cell::Cell;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::PoisonError;
use std::thread::sleep;
use std::time::{Duration, Instant};

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde_json::{Value, json};

use crate::driver::{Driver, Trouble};
use crate::engine::{self, Engine};
use crate::release;

mod hand;

pub use hand::Act;

/// How long a journey waits for something before it gives up: a busy machine is slow.
const PATIENCE: Duration = Duration::from_secs(30);
const BETWEEN_LOOKS: Duration = Duration::from_millis(40);

/// The key under which the driver names an element, fixed by the WebDriver standard.
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";

/// A screen size in CSS pixels, and whether it is touched.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Screen {
    /// CSS pixels across.
    pub width: u32,
    /// CSS pixels down.
    pub height: u32,
    /// A finger instead of a mouse.
    pub touch: bool,
}

impl Screen {
    /// The narrowest screen that the app promises to fit.
    pub const NARROW: Screen = Screen { width: 320, height: 568, touch: true };
    /// A phone held upright: the screen that the app is designed for.
    pub const PHONE: Screen = Screen { width: 360, height: 640, touch: true };
    /// A tablet held upright.
    pub const TABLET: Screen = Screen { width: 768, height: 1024, touch: true };
    /// A window on a desk.
    pub const DESKTOP: Screen = Screen { width: 1280, height: 800, touch: false };
    /// All of them, narrow to wide.
    pub const ALL: [Screen; 4] = [Screen::NARROW, Screen::PHONE, Screen::TABLET, Screen::DESKTOP];
}

/// One browser window. Dropping it closes the browser and its driver.
pub struct Browser {
    driver: Driver,
    engine: Engine,
    screen: Cell<Screen>,
}

impl Browser {
    /// Starts a browser with nothing in its storage.
    ///
    /// # Panics
    ///
    /// When the browser or its driver cannot be started.
    #[track_caller]
    pub fn start(screen: Screen) -> Browser {
        Browser::with_switches(screen, &[])
    }

    /// Like [`Browser::start`], with further command line switches for Chromium.
    ///
    /// # Panics
    ///
    /// When the browser or its driver cannot be started.
    #[track_caller]
    pub fn with_switches(screen: Screen, switches: &[&str]) -> Browser {
        let engine = Engine::chosen();
        let driver = Driver::start(engine, switches)
            .unwrap_or_else(|trouble| panic!("the browser does not start: {trouble}"));
        let browser = Browser { driver, engine, screen: Cell::new(screen) };
        browser.resize(screen);
        browser
    }

    /// Changes the screen; the page sees it at once.
    #[track_caller]
    pub fn resize(&self, screen: Screen) {
        self.screen.set(screen);
        let Screen { width, height, touch } = screen;
        match self.engine {
            Engine::Chromium => {
                self.cdp(
                    "Emulation.setDeviceMetricsOverride",
                    &json!({ "width": width, "height": height, "deviceScaleFactor": 2, "mobile": touch }),
                );
                self.cdp("Emulation.setTouchEmulationEnabled", &json!({ "enabled": touch }));
            }
            Engine::WebKit => self.resize_window(i64::from(width), i64::from(height)),
            Engine::Firefox => self.resize_page(screen),
        }
    }

    /// Makes the window so large that the page in it has this size.
    #[track_caller]
    fn resize_window(&self, width: i64, height: i64) {
        if let Some(display) = &self.driver.started.display {
            engine::focus_window(display);
        }
        let (mut wide, mut high) = (width, height);
        let deadline = Instant::now() + PATIENCE;
        loop {
            let rect = json!({ "x": 0, "y": 0, "width": wide, "height": high });
            self.must("the window", self.driver.post("/window/rect", &rect));
            let size = self.script("return [innerWidth, innerHeight]");
            let off = |at: usize, want: i64| want - size[at].as_i64().unwrap_or(want);
            let (more, higher) = (off(0, width), off(1, height));
            if (more, higher) == (0, 0) {
                return;
            }
            assert!(
                Instant::now() < deadline,
                "the window does not get to {width} x {height}: {size}"
            );
            // A busy screen follows late: what is asked for grows no further than any screen.
            (wide, high) = ((wide + more).clamp(1, 4_000), (high + higher).clamp(1, 4_000));
            sleep(BETWEEN_LOOKS);
        }
    }

    /// Gives the page this size inside a window that cannot be so small.
    #[track_caller]
    fn resize_page(&self, Screen { width, height, touch }: Screen) {
        let rect = json!({ "width": 1500, "height": 1200 });
        self.must("the window", self.driver.post("/window/rect", &rect));
        self.beside_the_page(&format!(
            "const page = gBrowser.selectedBrowser;
             for (const [side, size] of [['width', {width}], ['height', {height}]]) {{
               for (const bound of ['min-', 'max-', '']) page.style.setProperty(bound + side, size + 'px', 'important');
             }}
             page.browsingContext.inRDMPane = {touch};"
        ));
        self.wait_until(
            "the page has its size",
            // A page that says nothing of phones, as the empty one, is laid out wide and shown small.
            &format!(
                "const is = Math.abs(innerWidth * {height} - innerHeight * {width}) <= {width} + {height};
                 return is ? true : [innerWidth, innerHeight]"
            ),
        );
    }

    /// Runs a script in the browser itself, not in its page: Firefox alone can.
    #[track_caller]
    fn beside_the_page(&self, body: &str) {
        let context = |name: &str| {
            self.must(name, self.driver.post("/moz/context", &json!({ "context": name })));
        };
        context("chrome");
        self.script(body);
        context("content");
    }

    /// Opens an address and waits until its page is loaded.
    #[track_caller]
    pub fn open(&self, url: &str) {
        self.must("open", self.driver.post("/url", &json!({ "url": url })));
    }

    /// Loads the page again, as the reload button does.
    #[track_caller]
    pub fn reload(&self) {
        if self.engine == Engine::Firefox {
            // Its driver passes by the service worker, which a person's reload does not.
            self.script("window.isOld = true; location.reload()");
            let body = "return !window.isOld && document.readyState === 'complete'";
            return self.wait_until("the page is loaded again", body);
        }
        self.must("reload", self.driver.post("/refresh", &json!({})));
    }

    /// The address in the address bar.
    #[track_caller]
    pub fn url(&self) -> String {
        let url = self.must("the address", self.driver.get("/url"));
        url.as_str().unwrap_or_default().to_owned()
    }

    /// Runs a script body in the page; what it returns, or what its promise resolves to.
    #[track_caller]
    pub fn script(&self, body: &str) -> Value {
        let body = &self.as_one_that_waits(body);
        self.must(body, self.driver.post("/execute/sync", &json!({ "script": body, "args": [] })))
    }

    /// A body that the engine takes: Chromium alone takes one that waits as it is.
    fn as_one_that_waits(&self, body: &str) -> String {
        let is_wrapped = self.engine != Engine::Chromium && body.contains("await ");
        if is_wrapped { format!("return (async () => {{ {body} }})()") } else { body.to_owned() }
    }

    /// Sends a command of the DevTools protocol.
    #[track_caller]
    pub fn cdp(&self, command: &str, parameters: &Value) -> Value {
        let body = json!({ "cmd": command, "params": parameters });
        self.must(command, self.driver.post("/goog/cdp/execute", &body))
    }

    /// Runs a script before those of every page from now on.
    #[track_caller]
    pub fn before_each_page(&self, script: &str) {
        self.cdp("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": script }));
    }

    fn find(&self, css: &str) -> Result<String, Trouble> {
        let wanted = json!({ "using": "css selector", "value": css });
        let found = self.driver.post("/element", &wanted)?;
        Ok(found[ELEMENT].as_str().unwrap_or_default().to_owned())
    }

    /// Asks the page again and again until the script body returns true.
    ///
    /// # Panics
    ///
    /// When it never does: `what` says what was waited for.
    #[track_caller]
    pub fn wait_until(&self, what: &str, body: &str) {
        let deadline = Instant::now() + PATIENCE;
        let body = self.as_one_that_waits(body);
        loop {
            let answer = self.driver.post("/execute/sync", &json!({ "script": body, "args": [] }));
            match answer {
                Ok(Value::Bool(true)) => return,
                other if Instant::now() > deadline => {
                    let console = self.console().join("\n  ");
                    let place = self.driver.get("/url");
                    panic!(
                        "waited in vain: {what}; the last answer was {other:?} at {place:?}\nconsole:\n  {console}"
                    );
                }
                // While a page is being replaced, scripts in it fail.
                _ => sleep(BETWEEN_LOOKS),
            }
        }
    }

    /// Chooses a file in a file input, as the system's window for it would.
    #[track_caller]
    pub fn choose_file(&self, css: &str, file: &Path) {
        let id = self.must(css, self.find(css));
        let body = json!({ "text": file.to_string_lossy() });
        self.must(css, self.driver.post(&format!("/element/{id}/value"), &body));
    }

    /// Lets the page save files into a folder, which is emptied first.
    #[track_caller]
    pub fn save_files_to(&self, folder: &Path) {
        drop(fs::remove_dir_all(folder));
        fs::create_dir_all(folder)
            .unwrap_or_else(|error| panic!("cannot make {}: {error}", folder.display()));
        match &self.driver.started.saved {
            Some(saved) => engine::save_to(saved, folder)
                .unwrap_or_else(|error| panic!("cannot save to {}: {error}", folder.display())),
            None => {
                let way = json!({ "behavior": "allow", "downloadPath": folder.to_string_lossy() });
                self.cdp("Browser.setDownloadBehavior", &way);
            }
        }
    }

    /// Waits until a file is saved into a folder, and gives its path.
    ///
    /// # Panics
    ///
    /// When none comes.
    #[track_caller]
    pub fn saved_file(&self, folder: &Path) -> PathBuf {
        let deadline = Instant::now() + PATIENCE;
        loop {
            let files = fs::read_dir(folder).into_iter().flatten().flatten();
            let files: Vec<PathBuf> = files.map(|entry| entry.path()).collect();
            // A file gets its name when it is whole; Firefox holds the name with an empty one.
            let is_part = |path: &PathBuf| {
                let end = path.extension().unwrap_or_default().to_string_lossy();
                ["crdownload", "part", "wkdownload"].contains(&end.as_ref())
            };
            let is_whole = |path: &&PathBuf| fs::metadata(path).is_ok_and(|it| it.len() > 0);
            let found = if files.iter().any(is_part) { None } else { files.iter().find(is_whole) };
            match found.cloned() {
                Some(path) => return path,
                None if Instant::now() > deadline => {
                    panic!("nothing was saved to {}", folder.display())
                }
                None => sleep(BETWEEN_LOOKS),
            }
        }
    }

    /// An element as it is seen, as PNG.
    #[track_caller]
    pub fn picture_of(&self, css: &str) -> Vec<u8> {
        let id = self.must(css, self.find(css));
        let picture = self.must(css, self.driver.get(&format!("/element/{id}/screenshot")));
        STANDARD.decode(picture.as_str().unwrap_or_default()).unwrap_or_default()
    }

    /// The page as it is printed, as PDF, on paper so many centimetres wide and high.
    #[track_caller]
    pub fn printed(&self, width: f64, height: f64) -> Vec<u8> {
        // The page asks for half an inch itself; the driver wants to be told.
        let margin = json!({ "top": 1.27, "bottom": 1.27, "left": 1.27, "right": 1.27 });
        let paper = json!({ "page": { "width": width, "height": height }, "margin": margin, "background": false });
        let pdf = self.must("print", self.driver.post("/print", &paper));
        STANDARD.decode(pdf.as_str().unwrap_or_default()).unwrap_or_default()
    }

    /// Opens another window of the same browser and turns to it; its handle.
    #[track_caller]
    pub fn open_window(&self) -> String {
        let window =
            self.must("a window", self.driver.post("/window/new", &json!({ "type": "tab" })));
        let handle = window["handle"].as_str().unwrap_or_default().to_owned();
        self.turn_to(&handle);
        if self.engine != Engine::Chromium {
            self.resize(self.screen.get());
        }
        handle
    }

    /// The window that commands go to.
    #[track_caller]
    pub fn window(&self) -> String {
        let handle = self.must("the window", self.driver.get("/window"));
        handle.as_str().unwrap_or_default().to_owned()
    }

    /// Closes the window that commands go to, and turns to another.
    #[track_caller]
    pub fn close_window(&self, then: &str) {
        self.must("close the window", self.driver.delete("/window"));
        self.turn_to(then);
    }

    /// Turns to another window.
    #[track_caller]
    pub fn turn_to(&self, window: &str) {
        self.must("turn to a window", self.driver.post("/window", &json!({ "handle": window })));
    }

    /// Lets the page's script read the clipboard; Firefox lets it by how it was started.
    #[track_caller]
    pub fn allow_clipboard(&self) {
        if self.engine == Engine::Chromium {
            let all = json!({ "permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"] });
            self.cdp("Browser.grantPermissions", &all);
        }
    }

    /// Cuts the page's network, as in a shop without a signal.
    #[track_caller]
    pub fn set_offline(&self, offline: bool) {
        self.set_line(offline, 0);
    }

    /// Makes every answer come so many milliseconds later, and from the network alone.
    #[track_caller]
    pub fn slow_line(&self, milliseconds: u32) {
        self.set_line(false, milliseconds);
        self.cdp("Network.setBypassServiceWorker", &json!({ "bypass": true }));
    }

    #[track_caller]
    fn set_line(&self, offline: bool, latency: u32) {
        self.cdp("Network.enable", &json!({}));
        self.cdp(
            "Network.emulateNetworkConditions",
            &json!({ "offline": offline, "latency": latency, "downloadThroughput": -1, "uploadThroughput": -1 }),
        );
    }

    /// Makes the processor so many times slower; 1 is its own speed.
    #[track_caller]
    pub fn slow_down(&self, times: u32) {
        self.cdp("Emulation.setCPUThrottlingRate", &json!({ "rate": times }));
    }

    /// What the page wrote to its console since the last call, as "LEVEL text".
    #[track_caller]
    pub fn console(&self) -> Vec<String> {
        if self.engine != Engine::Chromium {
            return self.said();
        }
        let entries =
            self.must("console", self.driver.post("/se/log", &json!({ "type": "browser" })));
        let entries = entries.as_array().into_iter().flatten();
        let level = |entry: &Value| {
            let part = |name: &str| entry[name].as_str().unwrap_or_default();
            format!("{} {}", part("level"), part("message"))
        };
        entries.map(level).collect()
    }

    /// What Firefox wrote to its console and said to its driver since the last call, where it is of the page; WebKit
    /// says nothing.
    fn said(&self) -> Vec<String> {
        let mut said = self.driver.started.said.lock().unwrap_or_else(PoisonError::into_inner);
        let level = |line: String| {
            let (kind, words) = line.split_once(':')?;
            // What the browser says of itself.
            if ["resource://", "RSLoader", "BackupService"].iter().any(|own| words.contains(own)) {
                return None;
            }
            match kind {
                "console.error" => Some(format!("SEVERE {words}")),
                "console.warn" => Some(format!("WARNING {words}")),
                _ => None,
            }
        };
        said.drain(..).filter_map(level).collect()
    }

    /// Writes what is on the screen to `target/screens/NAME.png`.
    #[track_caller]
    pub fn picture(&self, name: &str) -> PathBuf {
        let picture = self.must("screenshot", self.driver.get("/screenshot"));
        let bytes = STANDARD.decode(picture.as_str().unwrap_or_default());
        let folder = release::target_folder().join("screens");
        let file = folder.join(format!("{name}.png"));
        fs::create_dir_all(&folder)
            .and_then(|()| fs::write(&file, bytes.unwrap_or_default()))
            .unwrap_or_else(|error| panic!("cannot write {}: {error}", file.display()));
        file
    }

    #[track_caller]
    fn must<T>(&self, what: &str, result: Result<T, Trouble>) -> T {
        result.unwrap_or_else(|trouble| panic!("{what}: {trouble}"))
    }
}
