//! Commands for the people who work on this code: `cargo xtask` lists them.
//!
//! Every command does its own set-up, says what it is doing, and if something is missing says
//! in one line what it is and how to get it.

mod budget;
mod engines;
mod lint;
mod notices;
mod npm;
mod outside;
mod page;
mod precache;
mod serve;
mod suite;
mod tidy;
mod tools;
mod workspace;

use std::path::Path;
use std::process::ExitCode;

use anyhow::{Result, bail};

const HELP: &str = "\
cargo xtask COMMAND

  serve [PORT]     build the app (release) and serve it, also to a phone on the same network
  build            build everything that is published into dist/
  test [PART]      run every test; PART is native, browser, package, journeys, or
                   journeys NAME;
                   journeys --engine webkit|firefox [NAME] in another engine; engines [--if-there] for
                   the short journeys in both, with the app as it was built last
  trunk            build the app with the Trunk on the PATH, and go through its folder: the short journeys
  soak [WALKS] [--seed N] [--two] [--go-on]
                   random walks with faults, 300 if not told, against what must stand; fails on a loss;
                   --two at a time, --go-on after a loss in the same walk
  lint             formatting, clippy (native and wasm) and tidy
  tidy             the rules of this repository that no compiler checks
  notices          the licences of all that is published, as the app shows them; fails on one we may not ship
  mutants [FOLDER..] [--shard K/N]
                   changes the code in one place after the other and lists what no test notices; takes hours,
                   a shard is a sample; needs cargo-mutants
  advisories       what is known against the crates we use, and their licences; needs cargo-deny
  budget           sizes of dist/ over the wire, as a table; fails when over budget
  bench page       keystroke to paint, first visits over a slow line and cold offline start at 4x CPU
                   slow-down, as a table; with the word line, without the keystrokes
  bench job        a job of the largest size, and a full shelf, at 4x CPU slow-down, as a table
  bench planner    what the planner proves in a Web Worker, family by family, as a table;
                   with the word all, the shared collection too
  precache DIR     finish a built folder: no inline script, service worker filled in
  wasm-runner ...  run one wasm test file in headless Chromium; cargo calls this
";

/// Called by this name, through a link, this program is the bindings generator in the version of
/// Cargo.lock. Trunk asks for exactly that one, and then nobody has to install it.
const BINDINGS: &str = "wasm-bindgen";

fn main() -> ExitCode {
    let mut arguments = std::env::args();
    let name = arguments.next().unwrap_or_default();
    let result = if Path::new(&name).ends_with(BINDINGS) {
        wasm_bindgen_cli::wasm_bindgen::run_cli_with_args(std::env::args_os())
    } else {
        run(&arguments.collect::<Vec<_>>())
    };
    match result {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("xtask: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn run(arguments: &[String]) -> Result<()> {
    workspace::this_program()?;
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["serve"] => serve::serve(serve::DEFAULT_PORT),
        ["serve", port] => match port.parse() {
            Ok(port) => serve::serve(port),
            Err(_) => bail!("'{port}' is not a port: give a number from 1 to 65535"),
        },
        ["build"] => page::build_all(),
        ["test"] => suite::run_part(suite::Part::All),
        ["test", "native"] => suite::run_part(suite::Part::Native),
        ["test", "browser"] => suite::run_part(suite::Part::Browser),
        ["test", "package"] => suite::run_part(suite::Part::Package),
        ["test", "journeys"] => suite::run_part(suite::Part::Journeys),
        ["test", "engines"] => suite::other_engines(false),
        ["test", "engines", "--if-there"] => suite::other_engines(true),
        ["test", "journeys", "--engine", engine, names @ ..] => {
            suite::journeys(engines::Engine::named(engine)?, names)
        }
        ["test", "journeys", names @ ..] => suite::journeys(engines::Engine::Chromium, names),
        ["trunk"] => suite::trunk(),
        ["soak", words @ ..] => suite::soak(words),
        ["lint"] => lint::lint(),
        ["tidy"] => tidy::check(&workspace::root()),
        ["notices"] => {
            print!("{}", notices::text(&[notices::PAGE.as_slice(), &[page::JS_PACKAGE]].concat())?);
            Ok(())
        }
        ["mutants", words @ ..] => outside::mutants(words),
        ["advisories"] => outside::advisories(),
        ["budget"] => budget::report(),
        ["bench", "page", which @ ..] => suite::bench_page(which),
        ["bench", "job"] => suite::bench_job(),
        ["bench", "planner", which @ ..] => suite::bench_planner(which),
        ["precache"] => precache::finish(&precache::staging_folder()?),
        ["precache", folder] => precache::finish(folder.as_ref()),
        ["wasm-runner", rest @ ..] => suite::wasm_runner(rest),
        [] | ["help" | "--help" | "-h"] => {
            print!("{HELP}");
            Ok(())
        }
        _ => bail!("no such command: {}\n\n{HELP}", words.join(" ")),
    }
}
