//! Published and proven optima.

use crate::support::{Known, cutting_stock, data, lumber, solve};

fn compare(known: &Known, budget: u64) -> bool {
    let outcome = solve(&known.job, budget).unwrap();
    let cost = outcome.plan.cost_cents;
    assert!(cost >= known.optimum, "{}: {cost} is below the optimum", known.name);
    assert!(outcome.bound_cents <= known.optimum, "{}: a false bound", known.name);
    if outcome.proved {
        assert_eq!(cost, known.optimum, "{}", known.name);
    }
    outcome.proved
}

#[test]
fn every_lumber_job_is_proved_cheapest() {
    let jobs = lumber(&data().join("lumber_jobs"));
    assert_eq!(jobs.len(), 20);
    for known in &jobs {
        assert!(compare(known, 4_000_000_000), "{} is not proved", known.name);
    }
}

#[test]
fn the_copied_families_are_proved_minimal() {
    let jobs = cutting_stock(&data().join("cutting_stock"));
    assert!(jobs.len() >= 20);
    for known in &jobs {
        assert!(compare(known, 3_000_000_000), "{} is not proved", known.name);
    }
}
