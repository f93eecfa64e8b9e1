//! The browser engines that the journeys run in: what each needs, and what is left out in it, by name and with the reason.

use std::fmt;
use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::tools::{self, find, install};
use crate::workspace::{cargo, run, scratch};

/// An engine that the journeys can run in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Engine {
    Chromium,
    WebKit,
    Firefox,
}

/// Where a journey is left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Where {
    /// In WebKit and in Firefox.
    Both,
    WebKit,
}
use Where::{Both, WebKit};

const NO_SCRIPT_BEFORE: &str = "its driver runs no script before those of a page";
const NO_FILM: &str = "its camera cannot be given a film";
const NO_PRINT: &str = "its driver does not print";

/// What is left out, and why: journeys, or all of a module. It is always something that the driver cannot do, or that the
/// engine has not.
const LEFT_OUT: [(Where, &str, &str); 25] = [
    (Both, "device::", NO_SCRIPT_BEFORE),
    (
        Both,
        "first_page::the_first_page_is_there_before_the_program_and_nothing_moves_when_it_comes",
        NO_SCRIPT_BEFORE,
    ),
    (Both, "handing_on::a_file_that_the_installed_app_is_opened_with_is_shown", NO_SCRIPT_BEFORE),
    (Both, "job_kept::a_browser_without_a_database_still_makes_a_job", NO_SCRIPT_BEFORE),
    (
        Both,
        "told::what_the_local_storage_has_no_room_for_is_read_from_the_database",
        NO_SCRIPT_BEFORE,
    ),
    (
        Both,
        "planner::a_device_without_workers_gets_the_quick_plan_and_is_told_so",
        NO_SCRIPT_BEFORE,
    ),
    (Both, "planner::a_planner_that_cannot_be_loaded_is_told_in_words", NO_SCRIPT_BEFORE),
    (Both, "recovery::a_browser_without_webassembly_is_told_what_to_do", NO_SCRIPT_BEFORE),
    (
        Both,
        "recovery::a_panic_inside_the_app_shows_the_recovery_page_and_its_reason",
        NO_SCRIPT_BEFORE,
    ),
    (Both, "steady::nothing_moves_on_the_pages_of_a_job", NO_SCRIPT_BEFORE),
    (Both, "steady::nothing_moves_on_the_pages_of_the_calculators", NO_SCRIPT_BEFORE),
    (Both, "steady::nothing_moves_when_a_new_release_is_offered", NO_SCRIPT_BEFORE),
    (Both, "steady::nothing_moves_when_trouble_is_told", NO_SCRIPT_BEFORE),
    (
        Both,
        "campaign::",
        "it speaks to Chromium over a pipe of its own, because a driver does not survive its browser",
    ),
    (Both, "film::", "it measures Chromium's frames"),
    (
        Both,
        "trade::taps_and_letters_at_once_in_a_row_are_all_taken",
        "its driver does not make the processor slow",
    ),
    (Both, "handing_on::a_job_goes_to_another_browser_as_codes_before_its_camera", NO_FILM),
    (Both, "offline::the_browser_finds_nothing_against_installing_it", "only Chromium says so"),
    (
        Both,
        "privacy::no_request_goes_anywhere_but_home",
        "its driver does not tell the addresses that a page asks for",
    ),
    (WebKit, "handing_on::the_camera_is_stopped_when_its_page_is_left", NO_FILM),
    (
        WebKit,
        "handing_on::without_a_camera_the_other_ways_are_named",
        "WebKitGTK gives a page no camera at all, and the page says that",
    ),
    (WebKit, "paper::labels_print_one_for_each_piece", NO_PRINT),
    (WebKit, "paper::the_shop_card_prints_on_letter_and_a4", NO_PRINT),
    (WebKit, "yard::everything_to_buy_is_ticked_printed_and_saved_offline", NO_PRINT),
    (WebKit, "state::a_headline_can_be_copied", "its driver gives no leave to read the clipboard"),
];

/// The short set that `test` takes the other engines through: start, three calculators, a job after a reload, the
/// planner, without a signal, codes, a page for paper.
pub(crate) const SHORT: [&str; 8] = [
    "start::",
    "calculators::",
    "job::a_leg_cut_thin_moves_the_rails_and_is_still_so_with_the_server_gone",
    "planner::a_quick_list_is_planned_by_taps_with_the_server_stopped",
    "offline::after_one_visit_the_app_works_with_the_server_gone",
    "offline::every_file_of_the_page_is_kept_on_the_first_visit",
    "handing_on::codes_follow",
    "paper::",
];

impl fmt::Display for Engine {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

impl Engine {
    /// The engine of this name.
    pub(crate) fn named(name: &str) -> Result<Engine> {
        match name {
            "chromium" => Ok(Engine::Chromium),
            "webkit" => Ok(Engine::WebKit),
            "firefox" => Ok(Engine::Firefox),
            _ => bail!("no engine is called '{name}': chromium, webkit or firefox"),
        }
    }

    fn name(self) -> &'static str {
        match self {
            Engine::Chromium => "chromium",
            Engine::WebKit => "webkit",
            Engine::Firefox => "firefox",
        }
    }

    /// The journeys that are left out, for the test runner.
    pub(crate) fn skips(self) -> Vec<&'static str> {
        let left_out = LEFT_OUT.iter().filter(|(place, ..)| match place {
            Both => self != Engine::Chromium,
            WebKit => self == Engine::WebKit,
        });
        left_out.flat_map(|(_, journey, _)| ["--skip", journey]).collect()
    }

    /// Finds what the journeys need, installs it on Debian when run as root, or says how; tells it to the journeys.
    pub(crate) fn equip(self, command: &mut Command) -> Result<()> {
        command.env("RECKONER_ENGINE", self.name());
        match self {
            Engine::Chromium => {
                let browser = tools::ensure_browser()?;
                command.env("CHROMIUM", browser.chromium).env("CHROMEDRIVER", browser.driver);
            }
            Engine::WebKit => {
                let found = || {
                    let tools = ["WebKitWebDriver", "Xvfb", "xdotool"].map(find);
                    Some((tools.into_iter().collect::<Option<Vec<_>>>()?, mini_browser()?))
                };
                let (_, browser) = install(found, &["webkit2gtk-driver", "xvfb", "xdotool"])?;
                command.env("MINIBROWSER", browser);
            }
            Engine::Firefox => {
                let found = || find("firefox-esr").or_else(|| find("firefox"));
                let firefox = install(found, &["firefox-esr"])?;
                command.env("FIREFOX", firefox).env("GECKODRIVER", gecko_driver()?);
            }
        }
        Ok(())
    }
}

/// WebKitGTK's small browser lies beside its library.
fn mini_browser() -> Option<PathBuf> {
    let libraries = std::fs::read_dir("/usr/lib").ok()?.flatten().map(|entry| entry.path());
    let places = libraries.flat_map(|folder| {
        ["webkit2gtk-4.1", "webkit2gtk-4.0"].map(|name| folder.join(name).join("MiniBrowser"))
    });
    places.into_iter().find(|path| path.is_file())
}

/// Firefox's driver: on the search path, or built once into the target folder, quickly and not for speed.
fn gecko_driver() -> Result<PathBuf> {
    const VERSION: &str = "0.37.1";
    if let Some(driver) = std::env::var_os("GECKODRIVER") {
        return Ok(driver.into());
    }
    if let Some(driver) = find("geckodriver") {
        return Ok(driver);
    }
    let folder = scratch().join("geckodriver");
    let driver = folder.join("bin/geckodriver");
    if !driver.is_file() {
        let mut build = cargo();
        build
            .args(["install", "geckodriver", "--version", VERSION, "--locked", "--root"])
            .arg(&folder);
        build.args(["--target-dir"]).arg(folder.join("target"));
        build.env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "0").env("CARGO_PROFILE_RELEASE_LTO", "off");
        build
            .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16")
            .env("CARGO_PROFILE_RELEASE_DEBUG", "0");
        run("building geckodriver, once", &mut build)
            .context("geckodriver is missing; get it with: cargo install geckodriver")?;
        drop(std::fs::remove_dir_all(folder.join("target")));
    }
    Ok(driver)
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::{LEFT_OUT, SHORT};
    use crate::workspace::root;

    /// A journey that was renamed would be left out, or run, without anybody knowing.
    #[test]
    fn every_journey_that_is_named_is_there() {
        let names = SHORT.iter().chain(LEFT_OUT.iter().map(|(_, journey, _)| journey));
        let mut count = 0;
        for name in names {
            let (module, journey) = name.split_once("::").expect("module::journey");
            let file = root().join(format!("tests/tests/journeys/{module}.rs"));
            let source = fs::read_to_string(&file).expect(name);
            assert!(source.contains(&format!("fn {journey}")), "{name}");
            count += 1;
        }
        assert!(count >= 7, "{count}");
    }
}
