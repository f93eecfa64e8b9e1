//! A Chromium with a profile on the disk, which can be killed and started again on it.

use std::fs;
use std::os::unix::process::CommandExt;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

use serde_json::{Value, json};
use tempfile::TempDir;

use super::wire::{Trouble, Wire};
use crate::Screen;
use crate::engine::{CHROMIUM_SWITCHES, new_home};

/// Hands the two pipes of standard input and output to the places where Chromium wants them.
const HAND_OVER: &str = "exec \"$0\" \"$@\" 3<&0 4>&1 </dev/null >/dev/null 2>/dev/null";

pub(super) struct Chromium {
    profile: PathBuf,
    process: Child,
    is_over: bool,
    pub(super) wire: Wire,
    /// One that is killed leaves behind what it had for the moment.
    _moment: TempDir,
}

impl Chromium {
    /// Starts a browser on a new profile.
    pub(super) fn on_new_profile(profile: &Path) -> Result<Chromium, Trouble> {
        drop(fs::remove_dir_all(profile));
        fs::create_dir_all(profile).map_err(|error| format!("{}: {error}", profile.display()))?;
        Chromium::on(profile)
    }

    fn on(profile: &Path) -> Result<Chromium, Trouble> {
        let program = std::env::var_os("CHROMIUM").unwrap_or_else(|| "chromium".into());
        let moment = new_home().map_err(|error| format!("no folder for Chromium: {error}"))?;
        let mut process = Command::new("/bin/sh")
            .args(["-c", HAND_OVER])
            .arg(program)
            .args(CHROMIUM_SWITCHES)
            .arg("--remote-debugging-pipe")
            .arg(format!("--user-data-dir={}", profile.display()))
            .arg("about:blank")
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .env("TMPDIR", moment.path())
            // A group of its own, so that all of it can be killed at once and nothing else.
            .process_group(0)
            .spawn()
            .map_err(|error| format!("Chromium does not start: {error}"))?;
        let (Some(to), Some(from)) = (process.stdin.take(), process.stdout.take()) else {
            return Err("Chromium has no pipes".to_owned());
        };
        let wire = Wire::new(to, from);
        let profile = profile.to_path_buf();
        let browser = Chromium { profile, process, is_over: false, wire, _moment: moment };
        browser.ask("Browser.getVersion", &json!({}))?;
        Ok(browser)
    }

    /// Ends every process of the browser at once, as a system does that needs the memory.
    fn kill(&mut self) {
        if std::mem::replace(&mut self.is_over, true) {
            return;
        }
        let group = format!("-{}", self.process.id());
        drop(Command::new("kill").args(["-KILL", "--", &group]).status());
        drop(self.process.wait());
    }

    /// Kills the browser and starts it again on the same profile.
    pub(super) fn kill_and_start_again(&mut self) -> Result<(), Trouble> {
        self.kill();
        let profile = self.profile.clone();
        *self = Chromium::on(&profile)?;
        Ok(())
    }

    pub(super) fn ask(&self, method: &str, params: &Value) -> Result<Value, Trouble> {
        self.wire.ask("", method, params)
    }

    /// Opens a window and gives its target and its session. `scripts` run before any of a page.
    pub(super) fn window(
        &self,
        screen: Screen,
        scripts: &[&str],
    ) -> Result<(String, String), Trouble> {
        let made =
            self.ask("Target.createTarget", &json!({ "url": "about:blank", "newWindow": true }))?;
        let target = made["targetId"].as_str().unwrap_or_default().to_owned();
        let at =
            self.ask("Target.attachToTarget", &json!({ "targetId": target, "flatten": true }))?;
        let session = at["sessionId"].as_str().unwrap_or_default().to_owned();
        self.wire.ask(&session, "Page.enable", &json!({}))?;
        self.wire.ask(&session, "Inspector.enable", &json!({}))?;
        let Screen { width, height, touch } = screen;
        let metrics =
            json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": touch });
        self.wire.ask(&session, "Emulation.setDeviceMetricsOverride", &metrics)?;
        for script in scripts {
            let source = json!({ "source": script });
            self.wire.ask(&session, "Page.addScriptToEvaluateOnNewDocument", &source)?;
        }
        Ok((target, session))
    }
}

impl Drop for Chromium {
    fn drop(&mut self) {
        self.kill();
    }
}
