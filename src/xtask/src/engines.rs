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
const NO_MEDIA: &str =
    "its driver does not show a page as on paper, in forced colours or with less movement";

/// What is left out, and why: journeys, or all of a module. It is always something that the driver cannot do, or that the
/// engine has not.
const LEFT_OUT: [(Where, &str, &str); 34] = [
    (Both, "device::", NO_SCRIPT_BEFORE),
    (
        Both,
        "first_page::the_first_page_is_there_before_the_program_and_nothing_moves_when_it_comes",
        NO_SCRIPT_BEFORE,
    ),
    (Both, "handing_on::a_file_that_the_installed_app_is_opened_with_is_shown", NO_SCRIPT_BEFORE),
    (
        Both,
        "parts::the_files_of_the_page_are_asked_for_before_there_is_anything_to_draw",
        NO_SCRIPT_BEFORE,
    ),
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
    (Both, "dead_ends::every_link_and_button_leads_somewhere", NO_SCRIPT_BEFORE),
    (Both, "dead_ends::what_is_planted_to_lead_nowhere_is_found", NO_SCRIPT_BEFORE),
    (Both, "read_again::a_database_that_never_answers_is_told_and_asked_again", NO_SCRIPT_BEFORE),
    (
        Both,
        "read_again::what_a_full_device_did_not_take_is_shown_after_a_reload_and_goes_in_once_there_is_room",
        NO_SCRIPT_BEFORE,
    ),
    (
        Both,
        "read_again::what_a_killed_browser_brings_back_does_not_stand_in_the_place_of_what_was_typed_since",
        NO_SCRIPT_BEFORE,
    ),
    (Both, "steady::", NO_SCRIPT_BEFORE),
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
        "its driver is given no proxy by a switch",
    ),
    (Both, "calculators::a_long_table_is_whole_on_paper", NO_MEDIA),
    (Both, "pencil::each_mark_stands_once_on_the_page", NO_MEDIA),
    (Both, "pencil::the_line_of_a_fraction_is_seen_in_forced_colours", NO_MEDIA),
    (Both, "pencil::with_forced_colours_nothing_is_hidden_and_the_focus_is_seen", NO_MEDIA),
    (Both, "pencil::with_less_movement_nothing_moves_and_all_is_there", NO_MEDIA),
    (
        Both,
        "state::the_last_key_stands_when_the_page_is_loaded_again_over_a_slow_line",
        "its driver does not make the line slow",
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

/// The short set that `test engines` takes the other engines through: start, each calculator, a job after a reload, the
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
        f.write_str(match self {
            Engine::Chromium => "Chromium",
            Engine::WebKit => "WebKitGTK",
            Engine::Firefox => "Firefox",
        })
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

    use super::{Engine, LEFT_OUT, SHORT};
    use crate::workspace::root;

    /// What asks Chromium's driver for more than the standard has.
    const CHROMIUM_ONLY: [&str; 6] = [
        ".cdp(",
        ".slow_line(",
        ".before_each_page(",
        ".slow_down(",
        ".set_offline(",
        ".with_switches(",
    ];

    /// A function of a file of journeys: its name, whether it is a journey, its text.
    struct Function {
        name: String,
        is_journey: bool,
        text: String,
    }

    /// The functions of a module of journeys.
    fn functions(module: &str) -> Vec<Function> {
        let file = root().join(format!("tests/tests/journeys/{module}.rs"));
        let source = fs::read_to_string(file).expect(module);
        let mut found: Vec<Function> = Vec::new();
        let mut is_journey = false;
        for line in source.lines() {
            let start = line.strip_prefix("pub(crate) ").unwrap_or(line);
            if let Some(name) = start.strip_prefix("fn ").and_then(|it| it.split('(').next()) {
                let name = name.split('<').next().unwrap_or(name).to_owned();
                found.push(Function { name, is_journey, text: String::new() });
                is_journey = false;
            }
            is_journey |= line == "#[test]";
            if let Some(last) = found.last_mut() {
                last.text.push_str(line);
            }
        }
        found
    }

    fn modules() -> Vec<String> {
        let source = fs::read_to_string(root().join("tests/tests/journeys/main.rs"));
        let source = source.expect("the journeys");
        let names = source.lines().filter_map(|it| it.strip_prefix("mod ")?.strip_suffix(';'));
        names.map(str::to_owned).collect()
    }

    fn is_left_out(engine: Engine, journey: &str) -> bool {
        engine.skips().iter().any(|it| *it != "--skip" && journey.contains(it))
    }

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

    /// What only Chromium's driver can do stands in the table, so that another engine does not fail for want of it.
    #[test]
    fn a_journey_that_needs_chromium_is_left_out_elsewhere() {
        let (mut judged, mut missing) = (0, Vec::new());
        for module in modules() {
            let functions = functions(&module);
            let mut needs: Vec<&str> = Vec::new();
            // What a journey calls in its file may need it too.
            loop {
                let calls = |it: &&Function| {
                    let is_called = |name: &&&str| it.text.contains(&format!("{name}("));
                    CHROMIUM_ONLY.iter().any(|word| it.text.contains(word))
                        || needs.iter().any(|name| is_called(&name))
                };
                let all: Vec<&str> = functions.iter().filter(calls).map(|it| &*it.name).collect();
                if all.len() == needs.len() {
                    break;
                }
                needs = all;
            }
            for journey in functions.iter().filter(|it| it.is_journey && needs.contains(&&*it.name))
            {
                let name = format!("{module}::{}", journey.name);
                judged += 1;
                if ![Engine::WebKit, Engine::Firefox].iter().all(|it| is_left_out(*it, &name)) {
                    missing.push(name);
                }
            }
        }
        assert!(missing.is_empty(), "{missing:#?}");
        assert!(judged > 15, "{judged}");
    }

    /// Each line of the short set still leads to a journey in every engine.
    #[test]
    fn no_line_of_the_short_set_is_left_out_whole() {
        for name in SHORT {
            let (module, start) = name.split_once("::").expect("module::journey");
            for engine in [Engine::Chromium, Engine::WebKit, Engine::Firefox] {
                let tried = functions(module).into_iter().filter(|it| {
                    let name = format!("{module}::{}", it.name);
                    it.is_journey && it.name.starts_with(start) && !is_left_out(engine, &name)
                });
                assert!(tried.count() > 0, "{name} in {engine}");
            }
        }
    }
}
