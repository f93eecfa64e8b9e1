//! The three browser engines that the journeys run in, and how each is started.
//!
//! Chromium is the one that they are written against. What the others cannot do by their drivers is left out by name,
//! in the table of `cargo xtask test journeys --engine`.

use std::fs;
use std::io::{self, BufRead, BufReader};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::{Arc, Mutex};
use std::thread::{sleep, spawn};
use std::time::{Duration, Instant};

use serde_json::{Value, json};
use tempfile::TempDir;

/// How long a driver may take to listen.
const PATIENCE: Duration = Duration::from_secs(30);
/// How often a driver that ends at once is started.
const STARTS: u32 = 5;

/// Command line switches of every Chromium here: no screen, no sandbox (it is often run as root in
/// a container), nothing fetched for the browser itself, and no list under its address bar: that is a page of its own,
/// which is made again at each new address and took a seventh of the processor (2026-11-28).
pub(crate) const CHROMIUM_SWITCHES: [&str; 9] = [
    "--headless=new",
    "--no-sandbox",
    "--disable-dev-shm-usage",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
    "--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup",
];

/// A browser engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Chromium with chromedriver.
    Chromium,
    /// WebKitGTK: its small browser on a screen of its own in memory.
    WebKit,
    /// Firefox with geckodriver.
    Firefox,
}

impl Engine {
    /// The engine that `RECKONER_ENGINE` names, Chromium if it names none.
    ///
    /// # Panics
    ///
    /// When it names one that is not known.
    #[must_use]
    #[track_caller]
    pub fn chosen() -> Engine {
        match std::env::var("RECKONER_ENGINE").as_deref() {
            Err(_) | Ok("chromium") => Engine::Chromium,
            Ok("webkit") => Engine::WebKit,
            Ok("firefox") => Engine::Firefox,
            Ok(other) => panic!("RECKONER_ENGINE: no engine is called {other}"),
        }
    }

    /// Starts its driver, with all that it needs around it. `switches` are Chromium's; the other engines have none.
    pub(crate) fn start(self, switches: &[&str]) -> io::Result<Started> {
        match self {
            Engine::Chromium => chromium(switches),
            Engine::WebKit => webkit(),
            Engine::Firefox => firefox(),
        }
    }
}

/// The lines that a driver writes, as they come.
type Said = Arc<Mutex<Vec<String>>>;

/// A driver that listens. Dropping it ends it, and all that was started around it.
pub(crate) struct Started {
    /// The first is the driver.
    processes: Vec<Child>,
    pub(crate) port: u16,
    pub(crate) capabilities: Value,
    /// What the browser wrote to its console, where that comes out of the driver.
    pub(crate) said: Said,
    /// What the browser saves into, where its driver cannot be told another folder.
    pub(crate) saved: Option<PathBuf>,
    /// The name of its own screen, where it has one.
    pub(crate) display: Option<String>,
    /// Goes last, when nothing writes to it any more.
    _home: TempDir,
}

impl Drop for Started {
    fn drop(&mut self) {
        // Whatever fails here, nothing more can be done about it.
        for process in &mut self.processes {
            let _ = process.kill();
            let _ = process.wait();
        }
    }
}

fn program(variable: &str, otherwise: &str) -> Command {
    Command::new(std::env::var_os(variable).unwrap_or_else(|| otherwise.into()))
}

fn chromium(switches: &[&str]) -> io::Result<Started> {
    let all = [&CHROMIUM_SWITCHES, switches].concat();
    let mut options = json!({ "args": all });
    if let Some(chromium) = std::env::var_os("CHROMIUM") {
        options["binary"] = json!(chromium.to_string_lossy());
    }
    let home = new_home()?;
    let mut driver = program("CHROMEDRIVER", "chromedriver");
    // It leaves the profile behind, some 40 MB of it.
    driver.env("TMPDIR", home.path());
    driver.arg("--port=0").stdout(Stdio::piped()).stderr(Stdio::null());
    // An earlier line names port 0.
    let (process, port, _) = listening(&mut driver, "started successfully on port ")?;
    Ok(Started {
        processes: vec![process],
        port,
        capabilities: json!({
            "browserName": "chrome",
            "goog:chromeOptions": options,
            "goog:loggingPrefs": { "browser": "ALL" },
        }),
        said: Said::default(),
        saved: None,
        display: None,
        _home: home,
    })
}

fn firefox() -> io::Result<Started> {
    let home = new_home()?;
    let saved = new_saved(&home)?;
    let mut driver = program("GECKODRIVER", "geckodriver");
    // System access is what lets a script set the size of a page below that of the smallest window.
    driver.args(["--port", "0", "--websocket-port", "0", "--allow-system-access"]);
    driver.stdout(Stdio::piped()).stderr(Stdio::null());
    let (process, port, said) = listening(&mut driver, "Listening on 127.0.0.1:")?;
    let mut options = json!({
        "args": ["-headless"],
        "prefs": {
            "browser.download.folderList": 2,
            "browser.download.useDownloadDir": true,
            "browser.download.dir": saved.to_string_lossy(),
            "browser.download.always_ask_before_handling_new_types": false,
            "devtools.console.stdout.content": true,
            "dom.events.testing.asyncClipboard": true,
            "media.navigator.streams.fake": true,
            "media.navigator.permission.disabled": true,
        },
    });
    if let Some(firefox) = std::env::var_os("FIREFOX") {
        options["binary"] = json!(firefox.to_string_lossy());
    }
    Ok(Started {
        processes: vec![process],
        port,
        capabilities: json!({ "browserName": "firefox", "moz:firefoxOptions": options }),
        said,
        saved: Some(saved),
        display: None,
        _home: home,
    })
}

fn webkit() -> io::Result<Started> {
    let home = new_home()?;
    let config = home.path().join("config");
    fs::create_dir_all(config.join("gtk-3.0"))?;
    // The bar of its window is wider than a phone.
    fs::write(
        config.join("gtk-3.0/gtk.css"),
        "* { padding: 0; margin: 0; min-width: 0; min-height: 0; border-width: 0; }\n",
    )?;
    let saved = new_saved(&home)?;
    fs::write(
        config.join("user-dirs.dirs"),
        format!("XDG_DOWNLOAD_DIR=\"{}\"\n", saved.display()),
    )?;
    let mut screen = Command::new("Xvfb");
    // Without -noreset it may end with its first window.
    screen.args([
        "-displayfd",
        "1",
        "-screen",
        "0",
        "1600x1300x24",
        "-noreset",
        "-nolisten",
        "tcp",
    ]);
    let mut screen = screen.stdout(Stdio::piped()).stderr(Stdio::null()).spawn()?;
    let mut number = String::new();
    if let Some(output) = screen.stdout.take() {
        BufReader::new(output).read_line(&mut number)?;
    }
    let display = format!(":{}", number.trim());
    // It has no way to say which port it chose by itself.
    let port = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?.local_addr()?.port();
    let process = program("WEBKITDRIVER", "WebKitWebDriver")
        .arg(format!("--port={port}"))
        .env("DISPLAY", &display)
        .env("XDG_CONFIG_HOME", &config)
        .env("XDG_DATA_HOME", home.path().join("data"))
        .env("XDG_CACHE_HOME", home.path().join("cache"))
        .env("GDK_BACKEND", "x11")
        .env("NO_AT_BRIDGE", "1")
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()?;
    let deadline = Instant::now() + PATIENCE;
    while TcpStream::connect((Ipv4Addr::LOCALHOST, port)).is_err() {
        if Instant::now() > deadline {
            return Err(io::Error::other("WebKitWebDriver does not listen"));
        }
        sleep(Duration::from_millis(20));
    }
    let mut options = json!({ "args": ["--automation"] });
    if let Some(browser) = std::env::var_os("MINIBROWSER") {
        options["binary"] = json!(browser.to_string_lossy());
    }
    Ok(Started {
        processes: vec![process, screen],
        port,
        capabilities: json!({ "webkitgtk:browserOptions": options }),
        said: Said::default(),
        saved: Some(saved),
        display: Some(display),
        _home: home,
    })
}

/// Gives the window on this screen the keyboard: there is no window manager to do it.
pub(crate) fn focus_window(display: &str) {
    // Where it fails, the journey that needs it says so.
    let _ = Command::new("xdotool")
        .args([
            "search",
            "--sync",
            "--onlyvisible",
            "--class",
            "MiniBrowser",
            "windowfocus",
            "--sync",
        ])
        .env("DISPLAY", display)
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status();
}

/// Starts a driver, and reads its port from the first line that has it behind `mark`; goes on reading what it says.
///
/// One that ends before is started anew, a few times: the port that chromedriver chose for one protocol may be another's in
/// the other.
fn listening(driver: &mut Command, mark: &str) -> io::Result<(Child, u16, Said)> {
    let mut heard = Vec::new();
    for _ in 0..STARTS {
        heard.clear();
        let mut process = driver.spawn()?;
        let Some(output) = process.stdout.take() else {
            return Err(io::Error::other("no output"));
        };
        let mut lines = BufReader::new(output).lines();
        for line in lines.by_ref() {
            let line = line?;
            if let Some((_, rest)) = line.split_once(mark)
                && let Ok(port) = rest.trim_end_matches('.').parse()
            {
                let said = Said::default();
                let kept = Arc::clone(&said);
                spawn(move || {
                    for line in lines.map_while(Result::ok) {
                        if let Ok(mut kept) = kept.lock() {
                            kept.push(line);
                        }
                    }
                });
                return Ok((process, port, said));
            }
            heard.push(line);
        }
        // It may be ended already.
        let _ = process.kill();
        let _ = process.wait();
    }
    Err(io::Error::other(format!(
        "the driver ended before it named its port, {STARTS} times: {heard:?}"
    )))
}

/// A new folder for one browser, its profile and all that it and its driver write. Chromium has a socket below it, and the
/// path of one may not be long.
pub(crate) fn new_home() -> io::Result<TempDir> {
    tempfile::Builder::new().prefix("reckoner-").tempdir()
}

fn new_saved(home: &TempDir) -> io::Result<PathBuf> {
    let saved = home.path().join("saved");
    fs::create_dir(&saved)?;
    Ok(saved)
}

/// Makes `saved`, which the browser saves into, a link to `folder`.
pub(crate) fn save_to(saved: &Path, folder: &Path) -> io::Result<()> {
    if saved.is_symlink() {
        fs::remove_file(saved)?;
    } else {
        fs::remove_dir_all(saved)?;
    }
    std::os::unix::fs::symlink(folder, saved)
}
