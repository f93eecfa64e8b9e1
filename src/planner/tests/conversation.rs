//! Questions and replies as the page and the program exchange them.

use reckoner_core::cutting::{
    Board, CheckOptions, CutProblem, Ends, Job, Part, SawRules, Scrap, Section, Source, check_plan,
};
use reckoner_formats::{Ask, Checked, CutTextProblem, Question, Reply, read_reply, write_question};
use reckoner_planner::answer;

/// Steps enough for every job here.
const BUDGET: u64 = 2_000_000_000;

/// Invented: four legs of 34 1/2 in and six rails of 22 in, kerf 1/8 in, in eighths of an inch. An 8-footer is 10.90, a
/// 10-footer 13.95, and there is one scrap of 30 in.
fn bench() -> Job {
    let part = |id: &str, length, quantity| Part {
        id: id.to_owned(),
        name: id.to_owned(),
        section: "2x4".to_owned(),
        length,
        quantity,
        priority: 1,
        may_rip: false,
        may_resaw: false,
        grain_free: false,
    };
    let board = |id: &str, length, price_cents| Board {
        id: id.to_owned(),
        section: "2x4".to_owned(),
        length,
        price_cents,
        limit: None,
        trims: Ends::default(),
        knots: Vec::new(),
    };
    Job {
        sections: vec![Section { id: "2x4".to_owned(), wood: "cedar".to_owned(), size: None }],
        parts: vec![part("leg", 276, 4), part("rail", 176, 6)],
        boards: vec![board("8-footer", 768, 1090), board("10-footer", 960, 1395)],
        scraps: vec![Scrap {
            id: "offcut".to_owned(),
            section: "2x4".to_owned(),
            length: 240,
            quantity: 1,
            trims: Ends::default(),
            knots: Vec::new(),
        }],
        saw: SawRules { kerf: 1, rip: None },
    }
}

/// All replies to a question.
fn replies(job: &Job, ask: Ask) -> Vec<Reply> {
    let mut heard = Vec::new();
    let question = write_question(&Question { number: 7, job: job.clone(), ask });
    answer(&question, &mut |text| heard.push(text)).expect("a question");
    let read = |text: &String| {
        let (number, reply) = read_reply(text, job).expect("a reply");
        assert_eq!(number, 7, "a reply carries the number of its question");
        reply
    };
    heard.iter().map(read).collect()
}

#[test]
fn the_cheapest_plan_comes_with_news_before_it_and_checked_bounds() {
    let job = bench();
    let mut heard = replies(&job, Ask::Cheapest { budget: BUDGET });
    let Some(Reply::Cheapest(outcome, checked)) = heard.pop() else { panic!("{heard:?}") };
    check_plan(&job, &outcome.plan, CheckOptions::default()).expect("a plan");
    assert!(outcome.proved, "{outcome:?}");
    // By hand: the parts are 270 in, the scrap holds one rail of 22 in, and two boards hold at most 240 in. So it takes
    // three, 32.70 at least; three 8-footers do: twice two legs and a rail (91 1/4 in), once four rails (88 3/8 in).
    assert_eq!(outcome.plan.cost_cents, 3270);
    assert_eq!(checked.len(), outcome.certificates.len());
    assert!(checked.iter().all(|it| *it != Checked::Refuted), "{checked:?}");
    let mut costs = Vec::new();
    for reply in &heard {
        let Reply::News(news) = reply else { panic!("only news before the end: {reply:?}") };
        assert!(news.bound_cents <= outcome.plan.cost_cents);
        if let Some(plan) = &news.better {
            check_plan(&job, plan, CheckOptions::default()).expect("a plan on the way");
            costs.push(plan.cost_cents);
        }
    }
    assert!(!costs.is_empty(), "no plan was told on the way");
    assert!(costs.is_sorted_by(|a, b| a >= b), "{costs:?}");
    assert_eq!(costs.last(), Some(&outcome.plan.cost_cents));
}

#[test]
fn a_tiny_budget_still_gives_a_plan() {
    let job = bench();
    let mut heard = replies(&job, Ask::Cheapest { budget: 1 });
    let Some(Reply::Cheapest(outcome, _)) = heard.pop() else { panic!("{heard:?}") };
    check_plan(&job, &outcome.plan, CheckOptions::default()).expect("a plan");
    assert!(outcome.bound_cents <= outcome.plan.cost_cents);
}

#[test]
fn the_rack_alone_gives_what_it_can() {
    let mut job = bench();
    job.boards.clear();
    let Some(Reply::RackOnly(outcome)) = replies(&job, Ask::RackOnly { budget: BUDGET }).pop()
    else {
        panic!()
    };
    check_plan(&job, &outcome.plan, CheckOptions { may_leave_out: true }).expect("a plan");
    assert_eq!(outcome.plan.boards.len(), 1);
    assert_eq!(outcome.plan.left_out.iter().map(|left| left.quantity).sum::<u32>(), 9);
}

#[test]
fn a_scrap_can_become_a_rail() {
    let job = bench();
    let Some(Reply::Become(plans)) = replies(&job, Ask::Become(Source::Scrap(0))).pop() else {
        panic!()
    };
    assert!(!plans.is_empty());
    for plan in plans {
        assert_eq!(plan.boards.len(), 1);
        assert_eq!(plan.boards[0].source, Source::Scrap(0));
    }
}

#[test]
fn one_kind_of_board_at_a_time_names_boards_of_the_job_asked_about() {
    let job = bench();
    let heard = replies(&job, Ask::SingleBoards { budget: BUDGET });
    let Some(Reply::SingleBoards(all)) = heard.last() else { panic!("{heard:?}") };
    assert_eq!(all.len(), 2);
    for single in all {
        let outcome = single.outcome.as_ref().expect("each length is long enough");
        check_plan(&job, &outcome.plan, CheckOptions::default()).expect("a plan of the whole job");
        let bought = outcome.plan.boards.iter().filter(|cut| cut.source != Source::Scrap(0));
        assert!(bought.clone().all(|cut| cut.source == Source::Board(single.board)));
    }
    // Their plans are of other jobs: none is passed on as news.
    assert!(heard.iter().all(|it| !matches!(it, Reply::News(news) if news.better.is_some())));
}

#[test]
fn the_next_store_run_buys_other_boards_and_is_no_cheaper() {
    let job = bench();
    let Some(Reply::Cheapest(best, _)) = replies(&job, Ask::Cheapest { budget: BUDGET }).pop()
    else {
        panic!()
    };
    let plan = best.plan.clone();
    let ask = Ask::NextRun { plan, most_cents: 2 * best.plan.cost_cents, budget: BUDGET };
    let Some(Reply::NextRun(Some(run))) = replies(&job, ask).pop() else { panic!() };
    check_plan(&job, &run.plan, CheckOptions::default()).expect("a plan");
    assert!(run.plan.cost_cents >= best.plan.cost_cents);
    let bought = |plan: &reckoner_core::cutting::Plan| {
        let mut all: Vec<_> = plan.boards.iter().map(|cut| cut.source).collect();
        all.sort_unstable();
        all
    };
    assert_ne!(bought(&run.plan), bought(&best.plan));
}

#[test]
fn what_cannot_be_answered_is_a_typed_problem() {
    let mut job = bench();
    job.parts[0].length = 961;
    let heard = replies(&job, Ask::Cheapest { budget: BUDGET });
    let [Reply::Problem(CutProblem::PartFitsNowhere { id, .. })] = heard.as_slice() else {
        panic!("{heard:?}")
    };
    assert_eq!(id, "leg");
    job.parts.clear();
    for ask in [
        Ask::Cheapest { budget: BUDGET },
        Ask::SingleBoards { budget: BUDGET },
        Ask::Become(Source::Scrap(0)),
    ] {
        let heard = replies(&job, ask);
        assert_eq!(heard, [Reply::Problem(CutProblem::NoParts)]);
    }
}

#[test]
fn a_text_that_is_no_question_is_refused_and_nothing_is_told() {
    let mut told = 0;
    let refused = answer("what about the rails", &mut |_| told += 1);
    assert_eq!((refused, told), (Err(CutTextProblem::NotReadable), 0));
}
