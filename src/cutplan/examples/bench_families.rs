//! How much is proved, and how fast, family by family: prints a Markdown table.
//!
//! `cargo run --release -p reckoner-cutplan --example bench_families [SECONDS] [FAMILY-OR-INSTANCE]`

#[path = "../tests/planner/rip_jobs.rs"]
mod rip_jobs;
#[path = "../tests/planner/support.rs"]
mod support;

use std::collections::BTreeMap;
use std::ops::ControlFlow;
use std::time::Instant;

use reckoner_core::cutting::{CheckOptions, check_plan};
use reckoner_cutplan::plan_job;

/// Time spent computing, where the system tells it (the machine may be shared), else time passed.
struct Clock {
    begun: Instant,
    computed: Option<f64>,
}

impl Clock {
    fn computed() -> Option<f64> {
        let text = std::fs::read_to_string("/proc/self/schedstat").ok()?;
        let nanoseconds: f64 = text.split_whitespace().next()?.parse().ok()?;
        Some(nanoseconds / 1e9)
    }

    fn start() -> Self {
        Self { begun: Instant::now(), computed: Self::computed() }
    }

    fn seconds(&self) -> f64 {
        match (self.computed, Self::computed()) {
            (Some(before), Some(now)) => now - before,
            _ => self.begun.elapsed().as_secs_f64(),
        }
    }
}

#[derive(Default)]
struct Row {
    jobs: usize,
    in_1: usize,
    in_limit: usize,
    optimal: usize,
    times: Vec<f64>,
    worst_gap: f64,
}

fn main() {
    let mut arguments = std::env::args().skip(1);
    let seconds: f64 = arguments.next().and_then(|a| a.parse().ok()).unwrap_or(10.0);
    let only = arguments.next();
    let mut known = support::lumber(&support::data().join("lumber_jobs"));
    let shared = support::shared();
    if let Some(shared) = &shared {
        known.extend(support::cutting_stock(&shared.join("cutting_stock")));
    }
    known.extend(rip_jobs::rip_jobs(&shared.unwrap_or_else(support::data).join("rip_jobs")));
    let mut table: BTreeMap<String, Row> = BTreeMap::new();
    let mut cheaper: Vec<String> = Vec::new();
    for job in &known {
        if only.as_ref().is_some_and(|only| job.family != *only && job.name != *only) {
            continue;
        }
        let start = Clock::start();
        let mut proved_at = None;
        let outcome = plan_job(&job.job, u64::MAX, &mut |progress| {
            if progress.cost_cents == Some(progress.bound_cents) && proved_at.is_none() {
                proved_at = Some(start.seconds());
            }
            if start.seconds() > seconds {
                ControlFlow::Break(())
            } else {
                ControlFlow::Continue(())
            }
        });
        let whole = start.seconds();
        let took = proved_at.unwrap_or(whole);
        let outcome = outcome.unwrap_or_else(|problem| panic!("{}: {problem:?}", job.name));
        check_plan(&job.job, &outcome.plan, CheckOptions::default())
            .unwrap_or_else(|fault| panic!("{}: {fault:?}", job.name));
        let cost = outcome.plan.cost_cents;
        assert!(cost >= job.at_least, "{}: {cost} is below {}", job.name, job.at_least);
        assert!(outcome.bound_cents <= job.optimum, "{}: false bound", job.name);
        println!(
            "{:28} cost {:8} bound {:8} optimum {:8} {:7.3} s {} ({whole:.3} s with ties{}{}{}{}) {}",
            job.name,
            cost,
            outcome.bound_cents,
            job.optimum,
            took,
            if outcome.proved { "proved" } else { "OPEN" },
            if outcome.ties.fewest_boards { ", fewest boards" } else { "" },
            if outcome.ties.fewest_settings { ", settings" } else { "" },
            if outcome.ties.fewest_cuts { ", cuts" } else { "" },
            if outcome.ties.longest_offcut { ", longest offcut" } else { "" },
            outcome.work / 1_000_000,
        );
        let row = table.entry(job.family.clone()).or_default();
        row.jobs += 1;
        row.in_1 += usize::from(outcome.proved && took <= 1.0);
        row.in_limit += usize::from(outcome.proved);
        row.optimal += usize::from(cost <= job.optimum);
        if cost < job.optimum {
            cheaper.push(format!("{}: {cost} in place of {}", job.name, job.optimum));
        }
        row.times.push(took);
        #[allow(clippy::cast_precision_loss, reason = "a percentage for a table")]
        let gap = (cost - outcome.bound_cents) as f64 / cost as f64 * 100.0;
        row.worst_gap = row.worst_gap.max(gap);
    }
    println!(
        "\n| family | jobs | proved in 1 s | proved in {seconds} s | reference cost or less | median s | longest s | worst gap % |"
    );
    println!("| --- | --- | --- | --- | --- | --- | --- | --- |");
    for (family, mut row) in table {
        row.times.sort_by(f64::total_cmp);
        println!(
            "| {family} | {} | {} | {} | {} | {:.3} | {:.2} | {:.2} |",
            row.jobs,
            row.in_1,
            row.in_limit,
            row.optimal,
            row.times[row.times.len() / 2],
            row.times[row.times.len() - 1],
            row.worst_gap
        );
    }
    if !cheaper.is_empty() {
        println!("\nCheaper than the reference: {}.", cheaper.join("; "));
    }
}
