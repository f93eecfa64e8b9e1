//! Measures the planner's wasm in a Web Worker: a table for the README of the planner and for DEVELOPERS.md.
//!
//! Run it with `cargo xtask bench planner`. Every job is asked of a worker of its own, in the built app's page, and is
//! stopped after ten seconds. *Proved* is the moment at which the page hears that cost and bound are equal. Memory is that
//! of the program at its end; it never gives any back. Frames are those of the page meanwhile.

use std::collections::BTreeMap;
use std::fs;

use reckoner_e2e::{App, Browser, Screen, release};
use serde_json::json;

/// How long each job may take, in milliseconds.
const MOST: f64 = 10_000.0;

/// The worker of the measurement: the same program, with its memory told after each reply.
const WORKER: &str = r#"
import start, { answer } from "./SCRIPT";
const wasm = await start({ module_or_path: new URL("./WASM", import.meta.url) });
onmessage = ({ data }) => answer(data, (reply) => postMessage([reply, wasm.memory.buffer.byteLength]));
postMessage(["ready", 0]);
"#;

/// Asks one job in the page: when it was proved and ended, its memory, and the longest time between two frames.
const ASK: &str = r#"
const [question, most] = QUESTION;
const worker = new Worker("./bench-worker.js", { type: "module" });
let tell, fail;
const done = new Promise((yes, no) => { tell = yes; fail = no; });
worker.onerror = (event) => fail(new Error(event.message ?? "the worker does not start"));
const found = { proved: null, cost: null, bound: null, ended: null, memory: 0, gap: 0, frames: 0, first: null };
let begun = null, last = null, alive = true;
const frame = (now) => {
  if (last !== null) { found.gap = Math.max(found.gap, now - last); found.frames += 1; }
  last = now;
  if (alive) requestAnimationFrame(frame);
};
worker.onmessage = ({ data }) => {
  // What the program says when it is called as a worker by the page itself.
  if (typeof data === "string") return;
  const [text, memory] = data;
  if (text === "ready") {
    begun = performance.now();
    worker.postMessage(question);
    requestAnimationFrame(frame);
    setTimeout(() => tell(), most);
    return;
  }
  const now = performance.now() - begun;
  found.memory = Math.max(found.memory, memory);
  const { reply } = JSON.parse(text);
  if (reply.news) {
    found.cost = reply.news.cost_cents;
    found.bound = reply.news.bound_cents;
    if (found.cost !== null) found.first ??= now;
  } else if (reply.cheapest) {
    found.cost = reply.cheapest[0].plan.cost_cents;
    found.bound = reply.cheapest[0].bound_cents;
    found.refuted = reply.cheapest[1].filter((it) => it === "refuted").length;
    found.ended = now;
  } else {
    fail(new Error(text.slice(0, 200)));
  }
  if (found.cost !== null && found.cost === found.bound) found.proved ??= now;
  if (found.ended !== null) tell();
};
await done;
alive = false;
worker.terminate();
return found;
"#;

#[derive(Default)]
struct Row {
    jobs: usize,
    in_1: usize,
    in_10: usize,
    optimal: usize,
    times: Vec<f64>,
    first: f64,
    memory: f64,
    gap: f64,
}

fn main() {
    let file = std::env::var_os("RECKONER_JOBS").expect("run it with: cargo xtask bench planner");
    let jobs = fs::read_to_string(&file).expect("the jobs");
    let app = serve();
    app.go("");
    app.wait_for_start();
    let mut table: BTreeMap<&str, Row> = BTreeMap::new();
    let mut cheaper: Vec<String> = Vec::new();
    for line in jobs.lines() {
        let cells: Vec<&str> = line.splitn(5, '\t').collect();
        let [family, name, optimum, at_least, question] = cells.as_slice() else {
            panic!("{line}")
        };
        let optimum: f64 = optimum.parse().expect("an optimum");
        let at_least: f64 = at_least.parse().expect("a bound");
        let found = app.script(&ASK.replace("QUESTION", &json!([question, MOST]).to_string()));
        let number = |name: &str| found[name].as_f64();
        let (Some(cost), Some(bound)) = (number("cost"), number("bound")) else {
            panic!("{name}: no plan in {MOST} ms: {found}")
        };
        assert!(cost >= at_least && bound <= optimum, "{name}: {found}");
        assert!(matches!(number("refuted"), None | Some(0.0)), "{name}: {found}");
        eprintln!("{family} {name} {found}");
        let row = table.entry(family).or_default();
        row.jobs += 1;
        let proved = number("proved");
        row.in_1 += usize::from(proved.is_some_and(|time| time <= 1000.0));
        row.in_10 += usize::from(proved.is_some());
        row.optimal += usize::from(cost <= optimum);
        if cost < optimum {
            cheaper.push(format!("{name}: {cost} in place of {optimum}"));
        }
        row.times.push(proved.unwrap_or(MOST));
        row.first = row.first.max(number("first").unwrap_or(MOST));
        row.memory = row.memory.max(number("memory").unwrap_or(0.0));
        row.gap = row.gap.max(number("gap").unwrap_or(0.0));
    }
    println!(
        "| family, in wasm | jobs | proved in 1 s | proved in 10 s | reference cost or less | median s | longest s | first plan s | memory MB | longest frame ms |"
    );
    println!("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
    for (family, mut row) in table {
        row.times.sort_by(f64::total_cmp);
        let second = |at: usize| row.times[at] / 1000.0;
        println!(
            "| {family} | {} | {} | {} | {} | {:.3} | {:.2} | {:.3} | {:.0} | {:.0} |",
            row.jobs,
            row.in_1,
            row.in_10,
            row.optimal,
            second(row.times.len() / 2),
            second(row.times.len() - 1),
            row.first / 1000.0,
            row.memory / 1e6,
            row.gap,
        );
    }
    if !cheaper.is_empty() {
        println!("\nCheaper than the reference: {}.", cheaper.join("; "));
    }
    let (gap, count) = page_while_planning(&app);
    println!("\nThe page while it shows the news: {count} frames in 5 s, the longest {gap:.0} ms.");
}

/// Frames of the page that shows the news, while a list that is not soon proved is planned: the longest time between two,
/// in milliseconds, and how many came in five seconds.
fn page_while_planning(app: &App) -> (f64, f64) {
    let parts: Vec<String> =
        (0..60).map(|n| format!("{} @ {}/16", 3 + n % 4, 211 + 17 * n + n * n % 13)).collect();
    let parts = parts.join(", ").replace(' ', "+");
    app.go(&format!("#/cut?parts={parts}&boards=96+at+10.90,+120+at+13.95,+144+at+16.40"));
    app.wait_for_start();
    app.wait_for("plan");
    let found = app.script(
        "const from = performance.now(); let last = from, gap = 0, count = 0;
         return new Promise((done) => {
           const frame = (now) => {
             gap = Math.max(gap, now - last); last = now; count += 1;
             now < from + 5000 ? requestAnimationFrame(frame)
               : done([gap, count, document.querySelector('[data-testid=planning]') !== null]);
           };
           requestAnimationFrame(frame);
         })",
    );
    assert_eq!(found[2], json!(true), "the list was planned too soon to measure anything");
    (found[0].as_f64().unwrap_or(f64::MAX), found[1].as_f64().unwrap_or(0.0))
}

/// The built app with one file more.
fn serve() -> App {
    let folder = release::copied("bench-planner");
    let page = fs::read_to_string(folder.join("index.html")).expect("the page");
    let link = page.lines().find(|line| line.contains("reckoner-planner")).expect("the planner");
    let file = |name: &str| {
        let (_, rest) = link.split_once(&format!("{name}=\"./")).expect("an attribute");
        rest.split_once('"').expect("its end").0.to_owned()
    };
    let worker = WORKER.replace("SCRIPT", &file("href")).replace("WASM", &file("data-wasm"));
    fs::write(folder.join("bench-worker.js"), worker).expect("written");
    let app = App::with(Browser::with_switches(Screen::PHONE, &[]));
    app.server.serve_folder(folder);
    app
}
