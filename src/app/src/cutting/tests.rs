//! What is believed of the planner's answers, and what a search comes to.

use std::rc::Rc;

use reckoner_core::cutting::scale::CommonUnit;
use reckoner_core::cutting::{
    Board, Certificate, Claim, CutBoard, CutProblem, Ends, Job, Layout, NextRun, Outcome, Part,
    Placed, Plan, RackOutcome, SawRules, Section, Source, Ties,
};
use reckoner_core::job::cut_labels::{Label, Labels, Money, SectionLabel};
use reckoner_core::job::{self, CutPlan};
use reckoner_core::measure::Unit;
use reckoner_core::planning::report::known;
use reckoner_formats::{
    Checked, News, Reply, TakenPlan, open_job, read_taken, write_job, write_taken,
};

use super::heard::{joined, sound};
use super::search::{Event, MOST_SECONDS, Search, Stage};

/// Invented: two legs of 30 from boards of 96 at 10.00, kerf 1.
fn job() -> Job {
    Job {
        sections: vec![Section { id: "s".to_owned(), wood: "w".to_owned(), size: None }],
        parts: vec![Part {
            id: "leg".to_owned(),
            name: "leg".to_owned(),
            section: "s".to_owned(),
            length: 30,
            quantity: 2,
            priority: 1,
            may_rip: false,
            may_resaw: false,
            grain_free: false,
        }],
        boards: vec![Board {
            id: "b".to_owned(),
            section: "s".to_owned(),
            length: 96,
            price_cents: 1000,
            limit: None,
            trims: Ends::default(),
            knots: Vec::new(),
        }],
        scraps: Vec::new(),
        saw: SawRules { kerf: 1, rip: None },
    }
}

/// Both legs from one board, the second at this place.
fn plan(second: i64) -> Plan {
    let leg = |at| Placed { part: 0, at, turned: false };
    let layout = Layout::Crosscut(vec![leg(0), leg(second)]);
    Plan {
        boards: vec![CutBoard { source: Source::Board(0), layout }],
        left_out: Vec::new(),
        cost_cents: 1000,
    }
}

const GOOD: i64 = 31;
/// Into the kerf of the first leg.
const BAD: i64 = 30;

fn outcome(second: i64, bound_cents: i64) -> Outcome {
    Outcome {
        plan: plan(second),
        bound_cents,
        proved: bound_cents == 1000,
        ties: Ties::default(),
        certificates: vec![Certificate {
            parts: vec![0],
            bound_cents,
            claim: Claim::Worth(vec![30]),
        }],
        work: 1,
        stopped: false,
    }
}

fn news(better: Option<Plan>, bound_cents: i64) -> News {
    let cost_cents = Some(1000);
    News { work: 1, budget: 9, cost_cents, bound_cents, left_out: 0, boards: 1, better }
}

/// The plan that was found stays behind the one that is taken, however many are.
#[test]
fn another_way_is_taken_and_left_again() {
    let begin = Event::Begin { job: Rc::new(job()), goes_on: false };
    let reply = Reply::Cheapest(outcome(GOOD, 1000), vec![Checked::Confirmed]);
    let found = Search::default().after(begin).after(Event::Reply(reply));
    let dear = |cost_cents| Rc::new(Plan { cost_cents, ..plan(40) });
    let taken = found.after(Event::Take(dear(1100))).after(Event::Take(dear(1200)));
    assert_eq!((&taken.stage, taken.plan.as_ref()), (&Stage::Taken, Some(&dear(1200))));
    // Of that plan nothing is proved but that none costs less than 10.00.
    assert_eq!((taken.is_proved(), taken.bound_cents, taken.ties()), (false, 1000, None));
    assert!(taken.why().is_empty());
    let back = taken.after(Event::GoBack);
    assert_eq!(Search { plan_number: found.plan_number, ..back.clone() }, found);
    assert!(found.plan_number < taken.plan_number && taken.plan_number < back.plan_number);
    assert_eq!(found.after(Event::GoBack), found);
    // Planning again begins afresh, and not with what was taken by hand.
    let again = taken.after(Event::Begin { job: Rc::new(job()), goes_on: true });
    assert_eq!((again.plan, again.before), (None, None));
}

#[test]
fn a_plan_that_keeps_the_rules_is_believed_and_one_that_does_not_is_refused() {
    let job = job();
    let replies = |second: i64| {
        let rack = RackOutcome { plan: plan(second), proved: true, work: 1, stopped: false };
        [
            Reply::News(news(Some(plan(second)), 500)),
            Reply::Cheapest(outcome(second, 1000), vec![Checked::Confirmed]),
            Reply::RackOnly(rack),
            Reply::Become(vec![plan(second)]),
            Reply::NextRun(Some(NextRun { plan: plan(second), bound_cents: 1000 })),
        ]
    };
    for (good, bad) in replies(GOOD).into_iter().zip(replies(BAD)) {
        assert_eq!(sound(&job, good.clone()), Ok(good));
        let words = sound(&job, bad.clone()).expect_err("refused");
        assert!(words.contains("breaks a rule"), "{bad:?}: {words}");
    }
}

#[test]
fn a_proof_that_does_not_hold_is_refused() {
    let job = job();
    let refused = |outcome: Outcome, checked: Vec<Checked>| {
        let words = sound(&job, Reply::Cheapest(outcome, checked)).expect_err("refused");
        assert!(words.contains("does not hold"), "{words}");
    };
    refused(outcome(GOOD, 1000), vec![Checked::Refuted]);
    refused(outcome(GOOD, 1000), vec![]);
    refused(outcome(GOOD, 1001), vec![Checked::Confirmed]);
    // Says that it is proved, with a bound below the cost.
    refused(Outcome { proved: true, ..outcome(GOOD, 900) }, vec![Checked::Confirmed]);
    // A bound above what the certificates say together.
    let bold = Outcome { bound_cents: 1000, proved: true, ..outcome(GOOD, 900) };
    refused(bold, vec![Checked::Confirmed]);
    let dear = Outcome { plan: Plan { cost_cents: 999, ..plan(GOOD) }, ..outcome(GOOD, 999) };
    assert!(sound(&job, Reply::Cheapest(dear, vec![Checked::Confirmed])).is_err());
}

#[test]
fn a_plan_is_not_lost_when_the_next_news_has_none() {
    let both = joined(Some(news(Some(plan(GOOD)), 500)), news(None, 900));
    assert_eq!((both.better, both.bound_cents), (Some(plan(GOOD)), 900));
    let newer = joined(Some(news(Some(plan(BAD)), 500)), news(Some(plan(GOOD)), 500));
    assert_eq!(newer.better, Some(plan(GOOD)));
}

fn begin(goes_on: bool) -> Event {
    Event::Begin { job: Rc::new(job()), goes_on }
}

fn after(events: impl IntoIterator<Item = Event>) -> Search {
    let begun = Search::default().after(begin(false));
    events.into_iter().fold(begun, |search, event| search.after(event))
}

#[test]
fn the_best_plan_so_far_stays_when_the_search_is_stopped() {
    let search = after([
        Event::Reply(Reply::News(news(Some(plan(GOOD)), 500))),
        Event::Reply(Reply::News(news(None, 900))),
        Event::Stop,
        // Too late: it was on its way when the search was stopped.
        Event::Reply(Reply::Problem(CutProblem::NoParts)),
    ]);
    assert_eq!(search.stage, Stage::Stopped);
    assert_eq!(search.plan.as_deref(), Some(&plan(GOOD)));
    assert_eq!((search.bound_cents, search.is_proved()), (900, false));
}

#[test]
fn a_search_runs_for_a_minute_and_keeps_its_plan() {
    let plan = Event::Reply(Reply::News(news(Some(plan(GOOD)), 500)));
    let seconds = |n: u32| (0..n).map(|_| Event::Second);
    let search = after(std::iter::once(plan.clone()).chain(seconds(MOST_SECONDS - 1)));
    assert!(search.is_running());
    let search = after(std::iter::once(plan).chain(seconds(MOST_SECONDS)));
    assert_eq!((search.stage, search.plan.is_some()), (Stage::OutOfTime, true));
}

#[test]
fn the_end_says_what_is_proved_and_what_was_checked() {
    let end = |checked| after([Event::Reply(Reply::Cheapest(outcome(GOOD, 1000), vec![checked]))]);
    let search = end(Checked::Confirmed);
    assert_eq!((&search.stage, search.is_proved()), (&Stage::Ended, true));
    assert!(search.backing.is_some_and(|it| it.is_checked));
    assert_eq!(end(Checked::Confirmed).why(), "The proof was worked out again by a second check.");
    let unchecked = end(Checked::NotCheckable);
    assert!(unchecked.backing.is_some_and(|it| !it.is_checked));
    assert_eq!(
        unchecked.why(),
        "The planner ruled out every cheaper way with these boards, prices and cuts. No second check went over that."
    );
}

#[test]
fn a_fault_keeps_the_plan_and_a_new_question_forgets_it() {
    let search = after([
        Event::Reply(Reply::News(news(Some(plan(GOOD)), 500))),
        Event::Trouble("gone".to_owned()),
    ]);
    assert_eq!(search.stage, Stage::Failed("gone".to_owned()));
    assert!(search.plan.is_some());
    let again = search.after(begin(false));
    assert_eq!((again.plan, again.stage), (None, Stage::Running));
}

/// The bound is of the same job: it stays too.
#[test]
fn what_was_found_stays_when_the_same_is_asked_again_until_something_cheaper_is() {
    let dear = Plan { cost_cents: 1500, ..plan(GOOD) };
    let stopped = after([Event::Reply(Reply::News(news(Some(plan(GOOD)), 500))), Event::Stop]);
    let forgotten = stopped.after(Event::Forget).after(begin(true));
    assert_eq!((forgotten.plan, forgotten.bound_cents), (None, 0));
    let again = stopped.after(begin(true));
    assert_eq!((again.stage.clone(), again.bound_cents), (Stage::Running, 500));
    assert_eq!(again.plan.as_deref(), Some(&plan(GOOD)));
    let dearer = again.after(Event::Reply(Reply::News(news(Some(dear), 400))));
    assert_eq!(dearer.plan.as_deref(), Some(&plan(GOOD)));
    assert_eq!((dearer.plan_number, dearer.bound_cents), (again.plan_number, 500));
    let cheap = Plan { cost_cents: 900, ..plan(GOOD) };
    let cheaper = dearer.after(Event::Reply(Reply::News(news(Some(cheap.clone()), 600))));
    assert_eq!(cheaper.plan.as_deref(), Some(&cheap));
}

#[test]
fn what_cannot_be_answered_is_told_as_such() {
    let search = after([Event::Reply(Reply::Problem(CutProblem::NoParts))]);
    assert_eq!(search.stage, Stage::Impossible(CutProblem::NoParts));
}

fn labels() -> Labels {
    let named = |name: &str| Label { item: None, name: name.to_owned() };
    Labels {
        unit: CommonUnit::of(&[(1, 1)]).expect("inches"),
        sections: vec![SectionLabel { name: "board".to_owned(), size: None }],
        parts: vec![named("leg")],
        boards: vec![named("board")],
        scraps: Vec::new(),
        money: Money::Cents,
    }
}

/// The plan of a search, kept in a job that was written and opened again.
fn kept(search: &Search) -> CutPlan {
    let plan = CutPlan {
        title: "Boards".to_owned(),
        is_list: true,
        entries: Vec::new(),
        asked: job(),
        labels: labels(),
        pieces: vec![2],
        plan: (**search.plan.as_ref().expect("a plan")).clone(),
        bound_cents: search.bound_cents,
        backing: search.to_keep(),
        paid_cents: 0,
    };
    let mut job = job::Job::new("cut list", Unit::Inch);
    job.make(&job.keeping_plan(plan)).expect("a fresh job");
    let opened = open_job(&write_job(&job)).expect("a job");
    assert_eq!(opened.set_aside, []);
    let id = opened.job.find_cut_plan(true).expect("kept");
    opened.job.cut_plan(id).expect("kept").0.clone()
}

/// What stands at the headline of a search.
fn said(search: &Search) -> (String, &'static str) {
    let cost = search.plan.as_ref().expect("a plan").cost_cents;
    (search.standing(cost).cost(&labels(), &[]).to_string(), search.why())
}

#[test]
fn a_plan_that_is_kept_says_of_its_proof_what_the_search_said() {
    let ties = Ties { fewest_boards: true, fewest_settings: true, ..Ties::default() };
    let end = |bound_cents, checked| {
        let outcome = Outcome { ties, ..outcome(GOOD, bound_cents) };
        after([Event::Reply(Reply::Cheapest(outcome, vec![checked]))])
    };
    for checked in [Checked::Confirmed, Checked::NotCheckable] {
        let found = end(1000, checked);
        let plan = kept(&found);
        let search = Search::kept(&plan, false);
        assert_eq!(said(&search), said(&found));
        assert_eq!(search.ties(), Some(ties));
        // Paper and text say the same.
        let (cost, why) = said(&found);
        assert_eq!(known(&plan).to_string(), format!("{cost} {why}"));
        // Of a plan that fits its job no longer nothing is claimed.
        let outdated = Search::kept(&plan, true);
        assert_eq!((outdated.why(), outdated.ties()), ("", None));
    }
    let open = end(900, Checked::Confirmed);
    assert_eq!(said(&Search::kept(&kept(&open), false)), (said(&open).0, ""));
    let stopped = after([Event::Reply(Reply::News(news(Some(plan(GOOD)), 900))), Event::Stop]);
    let search = Search::kept(&kept(&stopped), false);
    assert_eq!((said(&search).0, search.ties()), (said(&stopped).0, None));
}

/// One board for each leg.
fn dear() -> Plan {
    let one = CutBoard {
        source: Source::Board(0),
        layout: Layout::Crosscut(vec![Placed { part: 0, at: 0, turned: false }]),
    };
    Plan { boards: vec![one.clone(), one], left_out: Vec::new(), cost_cents: 2000 }
}

/// By hand: one board for each leg is 20.00, and one for both is 10.00.
#[test]
fn a_dearer_plan_that_was_taken_is_told_beside_the_cheapest_when_it_is_kept() {
    let found =
        after([Event::Reply(Reply::Cheapest(outcome(GOOD, 1000), vec![Checked::Confirmed]))]);
    let taken = found.after(Event::Take(Rc::new(dear())));
    assert_eq!(said(&taken), ("10.00 more than the cheapest plan.".to_owned(), ""));
    assert_eq!(said(&Search::kept(&kept(&taken), false)), said(&taken));
}

/// As it is kept with the quick list: the plan that was found stays behind it.
#[test]
fn a_plan_that_was_taken_comes_back_as_it_was() {
    let end = Event::Reply(Reply::Cheapest(outcome(GOOD, 1000), vec![Checked::Confirmed]));
    let found = after([end]);
    let taken = found.after(Event::Take(Rc::new(dear())));
    let again = |search: &Search| {
        let text = write_taken(&search.to_keep_taken().expect("taken"));
        Search::taken(read_taken(&text).expect("a plan that was taken"))
    };
    let back = again(&taken);
    assert_eq!((said(&back), &back.plan), (said(&taken), &taken.plan));
    let found_again = back.after(Event::GoBack);
    assert_eq!((said(&found_again), &found_again.plan), (said(&found), &found.plan));
    assert_eq!(found.to_keep_taken(), None);
    // One that was stopped is not said to have ended.
    let stopped = after([Event::Reply(Reply::News(news(Some(plan(GOOD)), 900))), Event::Stop]);
    let back = again(&stopped.after(Event::Take(Rc::new(dear()))));
    assert_eq!(back.after(Event::GoBack).stage, Stage::Stopped);
    // A plan that breaks a rule is none.
    let bad = TakenPlan { taken: plan(BAD), ..taken.to_keep_taken().expect("taken") };
    assert!(read_taken(&write_taken(&bad)).is_err());
    let bad = TakenPlan { found: plan(BAD), ..taken.to_keep_taken().expect("taken") };
    assert!(read_taken(&write_taken(&bad)).is_err());
    let bad = TakenPlan { bound_cents: 1001, ..taken.to_keep_taken().expect("taken") };
    assert!(read_taken(&write_taken(&bad)).is_err());
}
