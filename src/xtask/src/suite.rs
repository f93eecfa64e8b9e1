//! Every test: native, in the browser, and the journeys through the built app.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Child, Command};

use anyhow::{Context, Result, bail};

use crate::engines::{self, Engine};
use crate::workspace::{cargo, dist, packages, root, run, say, scratch, this_program};
use crate::{npm, page, tools};

/// The package with the journeys; it needs a built app, so it is not among the native tests.
const JOURNEYS: &str = "reckoner-e2e";

/// The package of this program.
const THIS: &str = "reckoner-xtask";

/// Which tests to run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Part {
    All,
    Native,
    Browser,
    Package,
    Journeys,
}

/// Runs the tests of `part`, cheapest first; the first failure ends it.
pub(crate) fn run_part(part: Part) -> Result<()> {
    match part {
        Part::Native => native(),
        Part::Browser => browser(),
        Part::Package => package(),
        Part::Journeys => journeys(Engine::Chromium, &[]),
        Part::All => {
            // What is missing is said before all the tests.
            tools::ensure_wasm_target()?;
            Engine::Chromium.equip(&mut cargo())?;
            // The optimised build keeps one core busy for minutes, and the native tests do not always need both: what
            // the journeys want is made meanwhile, in target folders that the tests do not lock.
            let app = Beside::start("build")?;
            native()?;
            browser()?;
            app.wait()?;
            package()?;
            journeys_in(Engine::Chromium, &[])
        }
    }
}

/// A command of this program that runs beside others; what it says is shown when somebody waits for it. It is stopped
/// when something else failed first.
struct Beside {
    name: &'static str,
    running: Child,
    said: PathBuf,
}

impl Beside {
    fn start(name: &'static str) -> Result<Self> {
        let said = scratch().join(format!("{name}.log"));
        fs::create_dir_all(scratch())?;
        let log = fs::File::create(&said).context("writing down what a command says")?;
        let running = Command::new(this_program()?)
            .arg(name)
            .stdout(log.try_clone()?)
            .stderr(log)
            .spawn()
            .with_context(|| format!("starting `{name}` beside the tests"))?;
        Ok(Self { name, running, said })
    }

    fn wait(mut self) -> Result<()> {
        say(&format!("{}, begun beside the tests", self.name));
        let status = self.running.wait()?;
        eprint!("{}", fs::read_to_string(&self.said).unwrap_or_default());
        if !status.success() {
            bail!("{}: failed ({status})", self.name);
        }
        Ok(())
    }
}

impl Drop for Beside {
    fn drop(&mut self) {
        // It has ended, or what it makes is not wanted any more; either way nothing is left to be told.
        let _ = self.running.kill();
        let _ = self.running.wait();
    }
}

/// What the random inputs of the laws are drawn from, and the same each time: what a change broke is found at the change,
/// and nothing by chance at somebody else's. Other inputs are drawn with another number in the environment.
const LAWS_FROM: (&str, &str) = ("PROPTEST_RNG_SEED", "1");

/// Every member but the journeys, with the examples in its documentation.
fn native() -> Result<()> {
    let mut command = cargo();
    command.args(["test", "--workspace", "--exclude", JOURNEYS, "--exclude", THIS]);
    if std::env::var_os(LAWS_FROM.0).is_none() {
        command.env(LAWS_FROM.0, LAWS_FROM.1);
    }
    run("native tests and documentation examples", &mut command)?;
    // By itself, with the same features of its dependencies as when it runs: among the others
    // it would be compiled, and the running program replaced, a second time.
    run("tests of xtask", cargo().args(["test", "--package", THIS]))
}

/// Every member that has browser tests, in headless Chromium.
fn browser() -> Result<()> {
    tools::ensure_wasm_target()?;
    let browser = tools::ensure_browser()?;
    let this = this_program()?;
    let runner = serde_json::to_string(&[this.to_string_lossy().as_ref(), "wasm-runner"])?;
    // One command for all of them: their common dependencies are compiled once.
    let mut command = cargo();
    command.args(["test", "--target", tools::WASM]);
    // The examples in the documentation ran natively.
    command.args(["--lib", "--tests"]);
    command.args(["--config", &format!("target.{}.runner={runner}", tools::WASM)]);
    for package in packages()?.iter().filter(|package| package.has_browser_tests()) {
        command.args(["--package", &package.name]);
    }
    // Patience for a busy machine; a test that hangs still ends.
    command.env("WASM_BINDGEN_TEST_TIMEOUT", "120");
    command.env("WASM_BINDGEN_TEST_DRIVER_TIMEOUT", "30");
    run("tests in headless Chromium", command.env("CHROMEDRIVER", &browser.driver))
}

/// The tests of the JavaScript package in Node.
const IN_NODE: &str = "src/js/tests/node/package.mjs";

/// The JavaScript package as a program for Node uses it, and as a bundler packs it.
fn package() -> Result<()> {
    let node = tools::find("node");
    let node = node.context("node is missing; on Debian: sudo apt-get install nodejs")?;
    let package = page::build_js()?;
    let mut command = Command::new(node);
    command.args(["--test", IN_NODE]).current_dir(root()).env("RECKONER_PACKAGE", package);
    command.env("RECKONER_BUNDLER", npm::bundler()?);
    command.env("RECKONER_TYPESCRIPT", npm::type_checker()?);
    run("tests of the JavaScript package in Node", &mut command)
}

/// The journeys in an engine, against a fresh release build: all, or those with one of `names` in theirs.
pub(crate) fn journeys(engine: Engine, names: &[&str]) -> Result<()> {
    // What is missing is said before the long build.
    engine.equip(&mut cargo())?;
    page::build_all()?;
    journeys_in(engine, names)
}

/// What the summary of `.ci/run` looks for in what is said of an engine that is not there.
const NOT_TRIED: &str = "not tried";

/// The short journeys in the engines that the others do not run in, with the app as it was built last. An engine that is
/// not there and cannot be installed fails; where the whole check must not hang on a mirror (`if_there`), it is named.
pub(crate) fn other_engines(if_there: bool) -> Result<()> {
    let mut absent = Vec::new();
    for engine in [Engine::WebKit, Engine::Firefox] {
        match engine.equip(&mut cargo()) {
            Ok(()) => journeys_in(engine, &engines::SHORT)?,
            Err(why) => absent.push(format!("{NOT_TRIED}: {engine}: {why:#}").replace('\n', " ")),
        }
    }
    if !absent.is_empty() && !if_there {
        bail!("{}", absent.join("; "));
    }
    absent.iter().for_each(|line| say(line));
    Ok(())
}

/// The same, with the app as it was built last.
fn journeys_in(engine: Engine, names: &[&str]) -> Result<()> {
    let mut command = cargo();
    command.args(["test", "--package", JOURNEYS]);
    let skips = engine.skips();
    if !names.is_empty() || !skips.is_empty() {
        command.args(["--test", "journeys", "--"]).args(names).args(skips);
    }
    if std::env::var_os("RUST_TEST_THREADS").is_none() {
        // A journey waits for its browser about a third of its time: one more than there are cores keeps them busy.
        let cores = std::thread::available_parallelism().map_or(1, usize::from);
        command.env("RUST_TEST_THREADS", (cores + 1).to_string());
    }
    engine.equip(&mut command)?;
    against(&format!("journeys through the built app, in {engine}"), &mut command, &dist())
}

/// The campaign of random walks with faults, against a fresh release build.
pub(crate) fn soak(words: &[&str]) -> Result<()> {
    let mut command = cargo();
    command.args(["run", "--quiet", "--package", JOURNEYS, "--bin", "soak", "--"]).args(words);
    against_the_built_app("random walks through the built app", &mut command)
}

/// The measurements of the page, against a fresh release build: all, or the visits over a slow line (`line`).
pub(crate) fn bench_page(which: &[&str]) -> Result<()> {
    let mut command = cargo();
    command
        .args(["run", "--quiet", "--package", JOURNEYS, "--bin", "bench_page", "--"])
        .args(which);
    against_the_built_app("measuring the page", &mut command)
}

/// The measurements of a job of the largest size, against a fresh release build.
pub(crate) fn bench_job() -> Result<()> {
    let mut command = cargo();
    command.args(["run", "--quiet", "--package", JOURNEYS, "--bin", "bench_job"]);
    against_the_built_app("measuring a job", &mut command)
}

/// The measurements of the planner in a Web Worker, against a fresh release build; `all` takes the jobs of the shared
/// collection too.
pub(crate) fn bench_planner(which: &[&str]) -> Result<()> {
    let jobs = scratch().join("jobs.tsv");
    let mut write = cargo();
    write.args(["run", "--quiet", "--release", "--package", "reckoner-cutplan"]);
    write.args(["--example", "write_jobs", "--"]).arg(&jobs).args(which);
    run("writing the jobs to be planned", &mut write)?;
    let mut command = cargo();
    command.args(["run", "--quiet", "--package", JOURNEYS, "--bin", "bench_planner"]);
    against_the_built_app("measuring the planner", command.env("RECKONER_JOBS", jobs))
}

/// The journeys that a folder made by Trunk goes through: a page of each kind.
const WITH_TRUNK: [&str; 4] = [
    "start::",
    "calculators::",
    "job::",
    "planner::a_quick_list_is_planned_by_taps_with_the_server_stopped",
];

/// Builds the app with the Trunk on the search path, and goes through its folder.
pub(crate) fn trunk() -> Result<()> {
    let Some(trunk) = tools::find("trunk") else {
        bail!(
            "trunk is not on the search path; version 0.22.1 is known to do: cargo install trunk --version 0.22.1 --locked --ignore-rust-version"
        );
    };
    // Trunk wants the bindings generator under its own name, in the version of Cargo.lock: this program is one.
    let names = scratch().join("trunk-tools");
    let made = scratch().join("trunk-dist");
    for folder in [&names, &made] {
        if folder.exists() {
            fs::remove_dir_all(folder)?;
        }
    }
    fs::create_dir_all(&names)?;
    let generator = names.join("wasm-bindgen");
    let this = this_program()?;
    fs::hard_link(this, &generator)
        .or_else(|_| fs::copy(this, &generator).map(drop))
        .context("giving this program the name of the bindings generator")?;
    let paths = std::env::var_os("PATH").unwrap_or_default();
    let paths = std::env::join_paths(std::iter::once(names).chain(std::env::split_paths(&paths)))?;
    let mut build = Command::new(trunk);
    build.arg("build").arg("--dist").arg(&made).current_dir(root()).env("PATH", paths);
    run("building with Trunk", &mut build)?;
    let mut command = cargo();
    command.args(["test", "--package", JOURNEYS, "--test", "journeys", "--"]).args(WITH_TRUNK);
    Engine::Chromium.equip(&mut command)?;
    against("journeys through the app that Trunk built", &mut command, &made)
}

fn against_the_built_app(what: &str, command: &mut Command) -> Result<()> {
    // What is missing is said before the long build.
    Engine::Chromium.equip(command)?;
    page::build_all()?;
    against(what, command, &dist())
}

/// Runs what needs the app in a folder, and has its browser.
fn against(what: &str, command: &mut Command, app: &Path) -> Result<()> {
    let axe = npm::axe_script()?;
    run(
        what,
        command
            .env("RECKONER_DIST", app)
            .env("RECKONER_SCRATCH", scratch())
            .env("RECKONER_AXE", axe)
            .env("RECKONER_XTASK", this_program()?),
    )
}

/// Runs one compiled wasm test file in headless Chromium: what cargo calls as its runner.
pub(crate) fn wasm_runner(arguments: &[&str]) -> Result<()> {
    let all = std::iter::once("wasm-bindgen-test-runner").chain(arguments.iter().copied());
    wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(all)
}
