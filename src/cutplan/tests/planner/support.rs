//! Reading the benchmark families, and checking every plan that is made.

#![allow(dead_code, reason = "the tests and the benchmark each use their part of it")]

use std::fs;
use std::io::{Write as _, stderr};
use std::ops::ControlFlow;
use std::path::{Path, PathBuf};

use reckoner_core::cutting::{
    Board, CheckOptions, Claim, CutProblem, Ends, Job, Part, SawRules, Scrap, Section,
    check_certificate, check_plan,
};
use reckoner_cutplan::{Outcome, RackOutcome, plan_job, plan_rack};

/// Plans a job, and checks all that can be checked about the outcome.
pub(crate) fn solve(job: &Job, budget: u64) -> Result<Outcome, CutProblem> {
    let mut told = i64::MAX;
    let mut boards = usize::MAX;
    let outcome = plan_job(job, budget, &mut |progress| {
        if let Some(plan) = progress.better {
            check_plan(job, plan, CheckOptions::default())
                .expect("every plan told keeps the rules");
            assert!(plan.cost_cents <= told, "plans told never get dearer");
            assert!(plan.cost_cents < told || plan.boards.len() <= boards);
            told = plan.cost_cents;
            boards = plan.boards.len();
            assert!(progress.bound_cents <= plan.cost_cents);
        }
        ControlFlow::Continue(())
    })?;
    if let Err(fault) = check_plan(job, &outcome.plan, CheckOptions::default()) {
        panic!("{fault:?} in {:#?} for {job:#?}", outcome.plan);
    }
    assert!(outcome.bound_cents <= outcome.plan.cost_cents);
    assert_eq!(outcome.proved, outcome.bound_cents == outcome.plan.cost_cents);
    let sum: i64 = outcome.certificates.iter().map(|c| c.bound_cents).sum();
    assert_eq!(sum, outcome.bound_cents);
    for certificate in &outcome.certificates {
        if matches!(certificate.claim, Claim::Worth(_)) {
            assert_eq!(check_certificate(job, certificate), Ok(()), "{job:#?}");
        }
    }
    Ok(outcome)
}

/// Plans from the rack, and checks the plan.
pub(crate) fn solve_rack(job: &Job, budget: u64) -> Result<RackOutcome, CutProblem> {
    let may_leave_out = CheckOptions { may_leave_out: true };
    let outcome = plan_rack(job, budget, &mut |progress| {
        if let Some(plan) = progress.better {
            check_plan(job, plan, may_leave_out).expect("every plan told keeps the rules");
        }
        ControlFlow::Continue(())
    })?;
    if let Err(fault) = check_plan(job, &outcome.plan, may_leave_out) {
        panic!("{fault:?} in {:#?} for {job:#?}", outcome.plan);
    }
    Ok(outcome)
}

/// A small generator of pseudo-random numbers (Steele, Lea and Flood's SplitMix64), so that every run is alike.
pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    /// A number from `low` to `high`, both possible.
    pub(crate) fn roll(&mut self, low: i64, high: i64) -> i64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^= z >> 31;
        low + i64::try_from(z % u64::try_from(high - low + 1).unwrap()).unwrap()
    }

    pub(crate) fn one_in(&mut self, n: i64) -> bool {
        self.roll(1, n) == 1
    }
}

/// A job with its published optimum, in cents (or boards, or length: whatever the family counts).
pub(crate) struct Known {
    pub(crate) name: String,
    pub(crate) family: String,
    pub(crate) job: Job,
    /// Where it is not proved: the least that is known.
    pub(crate) optimum: i64,
    /// Proved: no plan costs less.
    pub(crate) at_least: i64,
}

fn here() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// The copies that may be kept in this repository.
pub(crate) fn data() -> PathBuf {
    here().join("tests/data")
}

/// The shared collection, or `None` where it is absent: that is said past the test runner, which keeps what a test prints
/// to itself, and stands in the summary of `.ci/run`.
pub(crate) fn shared() -> Option<PathBuf> {
    let root = here().join("../../../shared/benchmarks");
    if root.is_dir() {
        return Some(root);
    }
    // A second checkout of the repository may sit one folder deeper.
    let deeper = here().join("../../../../shared/benchmarks");
    if deeper.is_dir() {
        return Some(deeper);
    }
    // Where nobody can be told, nothing more can be done about it.
    let _ = writeln!(stderr(), "not tried: the shared families: ../shared/benchmarks is not here");
    None
}

pub(crate) fn section() -> Section {
    Section { id: "stock".into(), wood: "any".into(), size: None }
}

pub(crate) fn part(id: String, length: i64, quantity: u32) -> Part {
    Part {
        name: id.clone(),
        id,
        section: "stock".into(),
        length,
        quantity,
        priority: 1,
        may_rip: true,
        may_resaw: true,
        grain_free: false,
    }
}

pub(crate) fn board(id: String, length: i64, price_cents: i64, limit: Option<u32>) -> Board {
    Board {
        id,
        section: "stock".into(),
        length,
        price_cents,
        limit,
        trims: Ends::default(),
        knots: Vec::new(),
    }
}

pub(crate) fn scrap(id: String, length: i64, quantity: u32) -> Scrap {
    Scrap {
        id,
        section: "stock".into(),
        length,
        quantity,
        trims: Ends::default(),
        knots: Vec::new(),
    }
}

pub(crate) fn job(parts: Vec<Part>, boards: Vec<Board>, scraps: Vec<Scrap>, kerf: i64) -> Job {
    Job { sections: vec![section()], parts, boards, scraps, saw: SawRules { kerf, rip: None } }
}

pub(crate) fn rows(path: &Path) -> Vec<Vec<String>> {
    let text =
        fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    text.lines().map(|line| line.split(',').map(|cell| cell.trim().to_owned()).collect()).collect()
}

/// All lumber jobs of a folder.
pub(crate) fn lumber(folder: &Path) -> Vec<Known> {
    let mut found = Vec::new();
    for row in rows(&folder.join("optima.csv")).iter().skip(1) {
        let text = fs::read_to_string(folder.join(format!("{}.json", row[0]))).unwrap();
        let json: serde_json::Value = serde_json::from_str(&text).unwrap();
        let int = |value: &serde_json::Value| value.as_i64().unwrap();
        let list = |name: &str| json[name].as_array().cloned().unwrap_or_default();
        let id = |value: &serde_json::Value| value["id"].as_str().unwrap().to_owned();
        let count = |value: &serde_json::Value| u32::try_from(int(value)).unwrap();
        found.push(Known {
            name: row[0].clone(),
            family: "lumber_jobs".into(),
            optimum: row[6].parse().unwrap(),
            at_least: row[6].parse().unwrap(),
            job: job(
                list("parts")
                    .iter()
                    .map(|p| part(id(p), int(&p["length"]), count(&p["quantity"])))
                    .collect(),
                list("stock")
                    .iter()
                    .map(|b| {
                        let limit = b.get("quantity").map(count);
                        board(id(b), int(&b["length"]), int(&b["price_cents"]), limit)
                    })
                    .collect(),
                list("scraps")
                    .iter()
                    .map(|s| scrap(id(s), int(&s["length"]), count(&s["quantity"])))
                    .collect(),
                int(&json["kerf"]),
            ),
        });
    }
    found
}

fn numbers(path: &Path) -> Vec<i64> {
    fs::read_to_string(path).unwrap().split_whitespace().map(|word| word.parse().unwrap()).collect()
}

fn grouped(lengths: &[i64]) -> Vec<Part> {
    let mut lengths = lengths.to_vec();
    lengths.sort_unstable();
    let mut parts: Vec<Part> = Vec::new();
    for length in lengths {
        match parts.last_mut() {
            Some(last) if last.length == length => last.quantity += 1,
            _ => parts.push(part(format!("P{}", parts.len() + 1), length, 1)),
        }
    }
    parts
}

fn one_board(path: &Path) -> Job {
    let all = numbers(path);
    let boards = vec![board("B".into(), all[1], 1, None)];
    job(grouped(&all[2..]), boards, Vec::new(), 0)
}

fn several_boards(path: &Path) -> Job {
    let all = numbers(path);
    let mut at = 1;
    let mut boards = Vec::new();
    for number in 0..all[0] {
        let limit = u32::try_from(all[at + 1]).unwrap();
        boards.push(board(format!("B{number}"), all[at], all[at + 2], Some(limit)));
        at += 3;
    }
    let types = all[at];
    at += 1;
    let mut parts = Vec::new();
    for number in 0..types {
        let quantity = u32::try_from(all[at + 1]).unwrap();
        parts.push(part(format!("P{number}"), all[at], quantity));
        at += 2;
    }
    job(parts, boards, Vec::new(), 0)
}

fn column(rows: &[Vec<String>], row: &[String], name: &str) -> Option<i64> {
    let at = rows[0].iter().position(|cell| cell == name)?;
    row.get(at)?.parse().ok()
}

fn with_kerf(folder: &Path, name: &str) -> Job {
    let items = rows(&folder.join(format!("{name}_items.csv")));
    let bins = rows(&folder.join(format!("{name}_bins.csv")));
    let mut kerf = 0;
    let mut parts = Vec::new();
    for (number, row) in items.iter().enumerate().skip(1).filter(|(_, row)| row.len() > 1) {
        kerf = -column(&items, row, "NESTING_LENGTH").unwrap_or(0);
        let length = column(&items, row, "X").unwrap();
        let quantity = column(&items, row, "COPIES").unwrap_or(1);
        parts.push(part(format!("P{number}"), length, u32::try_from(quantity).unwrap()));
    }
    let mut boards = Vec::new();
    for (number, row) in bins.iter().enumerate().skip(1).filter(|(_, row)| row.len() > 1) {
        let length = column(&bins, row, "X").unwrap();
        let cost = column(&bins, row, "COST").unwrap_or(length);
        let limit = column(&bins, row, "COPIES").map(|count| u32::try_from(count).unwrap());
        boards.push(board(format!("B{number}"), length, cost, limit.or(Some(1))));
    }
    job(parts, boards, Vec::new(), kerf)
}

/// The published cutting-stock instances of a folder with the layout of `../shared/benchmarks/cutting_stock`.
pub(crate) fn cutting_stock(folder: &Path) -> Vec<Known> {
    let table = rows(&folder.join("optima.csv"));
    let at = |name: &str| table[0].iter().position(|cell| cell == name).unwrap();
    let (name, family, format, path) = (at("instance"), at("family"), at("format"), at("path"));
    let optimum = at("best_known_optimum");
    let mut found = Vec::new();
    for row in table.iter().skip(1) {
        let file = folder.join(&row[path]);
        let job = match row[format].as_str() {
            "bpp" => one_board(&file),
            "vs" => several_boards(&file),
            _ => with_kerf(&folder.join("real/users_mit"), &row[name]),
        };
        found.push(Known {
            name: row[name].clone(),
            family: row[family].clone(),
            job,
            optimum: row[optimum].parse().unwrap(),
            at_least: row[optimum].parse().unwrap(),
        });
    }
    found
}
