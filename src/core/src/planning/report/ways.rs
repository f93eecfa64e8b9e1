//! Other ways to buy the boards of a plan, side by side: what is bought, what it costs, and what it leaves over.

use std::collections::BTreeMap;

use super::left::Left;
use super::money::{Spent, amount, spent};
use super::purchases::{Purchase, bought, shopping};
use super::seen::How;
use crate::cutting::{Job, NextRun, Plan, SingleBoard, Source};
use crate::job::cut_labels::{Labels, Money};
use crate::say;
use crate::sheet::Sentence;

/// So many other ways stand beside the plan; dearer ones are told in a line.
const MOST_WAYS: usize = 3;

/// A way to buy the boards of a job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    /// `All 2x4 as 96 in`
    pub title: Sentence,
    /// What is bought, in the order of the yard's list.
    pub buy: Vec<Purchase>,
    /// What that comes to.
    pub spent: Spent,
    /// How much more than the plan, in cents of the cutting job; less than zero where it is less.
    pub dearer_cents: i64,
    /// `21.00 in all, 1.40 more than the plan.`
    pub costs: Sentence,
    /// What is left over to keep.
    pub left: Left,
    /// What is not proved of it; `None` where all that is said is proved.
    pub doubt: Option<Sentence>,
    /// How its boards are cut.
    pub plan: Plan,
}

/// The plan and other ways to buy.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ways {
    /// The plan itself.
    pub stood: Way,
    /// The cheapest others, no two of which buy the same boards; the cheapest first.
    pub others: Vec<Way>,
    /// The rest in words: `All 2x4 as 120 in: 27.90 in all, 8.30 more than the plan.`
    pub more: Vec<Sentence>,
}

/// A plan, and what no plan of its job costs less than.
#[derive(Clone, Copy, Debug)]
pub struct Stood<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// In cents.
    pub bound_cents: i64,
}

/// How many of each board are bought.
type Bought = BTreeMap<usize, u32>;

fn bought_of(plan: &Plan) -> Bought {
    let mut all = Bought::new();
    for cut in &plan.boards {
        if let Source::Board(at) = cut.source {
            let count: &mut u32 = all.entry(at).or_default();
            *count = count.saturating_add(1);
        }
    }
    all
}

/// The plan against boards of a single length in each section, and against the next cheapest run to the yard.
///
/// A section that the yard sells in one length only has nothing to compare, and what buys the boards of the plan is no
/// other way. `None` when the plans are not of that job.
#[must_use]
pub fn compare(
    job: &Job,
    labels: &Labels,
    how: How,
    stood: Stood<'_>,
    singles: &[SingleBoard],
    next: Option<&NextRun>,
) -> Option<Ways> {
    let doing = Doing { job, labels, how, stood };
    let (mut others, mut impossible) = (Vec::new(), Vec::new());
    for single in singles {
        let Some(title) = doing.title(single.board) else { continue };
        match &single.outcome {
            Ok(outcome) => {
                let doubt = doing.not_below(
                    "Not proved: with these boards alone ",
                    outcome.plan.cost_cents,
                    outcome.bound_cents,
                );
                others.push((bought_of(&outcome.plan), doing.way(title, &outcome.plan, doubt)?));
            }
            Err(problem) => {
                let mut sentence = title;
                sentence.0.extend(say![": cannot be done. "].0);
                sentence.0.extend(labels.explain(job, problem).sentence.0);
                impossible.push(sentence);
            }
        }
    }
    if let Some(next) = next {
        let way = doing.next(next)?;
        let bought = bought_of(&next.plan);
        match others.iter_mut().find(|(other, _)| *other == bought) {
            // What is known of it has a better name.
            Some((_, known)) if way.doubt.is_none() => {
                known.title.0.extend(say![": "].0.into_iter().chain(lower(&way.title).0));
            }
            Some(_) => {}
            None => others.push((bought, way)),
        }
    }
    let own = bought_of(stood.plan);
    crate::order::sort_by(&mut others, |(_, a), (_, b)| a.dearer_cents.cmp(&b.dearer_cents));
    let mut seen = vec![own];
    let mut ways = Ways { stood: doing.stood()?, others: Vec::new(), more: Vec::new() };
    for (bought, way) in others {
        if seen.contains(&bought) {
            continue;
        }
        seen.push(bought);
        if ways.others.len() < MOST_WAYS {
            ways.others.push(way);
        } else {
            let mut sentence = way.title;
            sentence.0.extend(say![": "].0.into_iter().chain(way.costs.0));
            ways.more.push(sentence);
        }
    }
    ways.more.extend(impossible);
    Some(ways)
}

/// What a plan that was taken costs beside the one that was found: `1.40 more than the cheapest plan.`
pub(super) fn against(
    labels: &Labels,
    cost_cents: i64,
    found_cents: i64,
    is_proved: bool,
) -> Sentence {
    let dearer_cents = cost_cents.saturating_sub(found_cents);
    let by = amount(labels, dearer_cents.saturating_abs());
    let found = if is_proved { "the cheapest plan." } else { "the best plan found." };
    match dearer_cents {
        0 => say!["As much as ", found],
        1.. => say![by, " more than ", found],
        _ => say![by, " less than ", found],
    }
}

/// How much more a plan takes than another that stood.
fn dearer_words(labels: &Labels, dearer_cents: i64) -> Sentence {
    let by = amount(labels, dearer_cents.saturating_abs());
    match dearer_cents {
        0 => say!["as much as the plan."],
        1.. => say![by, " more than the plan."],
        _ => say![by, " less than the plan."],
    }
}

/// What is compared.
struct Doing<'a> {
    job: &'a Job,
    labels: &'a Labels,
    how: How,
    stood: Stood<'a>,
}

impl Doing<'_> {
    /// `All 2x6 as 96 in`, where the yard sells more than one length of it.
    fn title(&self, board: usize) -> Option<Sentence> {
        let board = self.job.boards.get(board)?;
        let of_it = self.job.boards.iter().filter(|other| other.section == board.section);
        let name = self.labels.section(self.job, &board.section)?.name.clone();
        let length = self.labels.length(board.length).ok()?;
        (of_it.count() > 1).then(|| say!["All ", name, " as ", length])
    }

    fn stood(&self) -> Option<Way> {
        let Stood { plan, bound_cents } = self.stood;
        let doubt = self.not_below("Not proved cheapest: ", plan.cost_cents, bound_cents);
        let mut way = self.way(say!["The plan"], plan, doubt)?;
        way.costs = say![amount(self.labels, plan.cost_cents), " in all."];
        Some(way)
    }

    /// It is told as the next cheapest only where that is proved.
    fn next(&self, next: &NextRun) -> Option<Way> {
        let (cost, stood) = (next.plan.cost_cents, self.stood.plan.cost_cents);
        let is_proved = next.bound_cents >= cost;
        let title = match cost < stood {
            true => "A cheaper way",
            false if is_proved => "The next cheapest way",
            false => "Another way",
        };
        let doubt = self.not_below("Not proved the next cheapest: ", cost, next.bound_cents);
        self.way(say![title], &next.plan, doubt)
    }

    fn way(&self, title: Sentence, plan: &Plan, doubt: Option<Sentence>) -> Option<Way> {
        let Doing { job, labels, how, stood } = self;
        let dearer_cents = plan.cost_cents.checked_sub(stood.plan.cost_cents)?;
        let mut costs = say![amount(labels, plan.cost_cents), " in all, "];
        costs.0.extend(dearer_words(labels, dearer_cents).0);
        Some(Way {
            title,
            buy: shopping(job, plan, labels)?,
            spent: spent(labels, plan.cost_cents, bought(plan)).ok()?,
            dearer_cents,
            costs,
            left: Left::of(job, labels, plan, *how)?,
            doubt,
            plan: plan.clone(),
        })
    }

    /// What is told of a cost that may be lower: nothing where it is proved.
    fn not_below(&self, of: &'static str, cost_cents: i64, bound_cents: i64) -> Option<Sentence> {
        let least = match self.labels.money {
            Money::Cents => "no way costs less than ",
            Money::Wood { .. } => "no way takes less wood than ",
        };
        let bound = amount(self.labels, bound_cents);
        (bound_cents < cost_cents).then(|| say![of, least, bound, "."])
    }
}

/// A title that goes on in a line.
fn lower(title: &Sentence) -> Sentence {
    let text = title.to_string();
    let mut letters = text.chars();
    let first: String = letters.next().map(|c| c.to_lowercase().collect()).unwrap_or_default();
    say![format!("{first}{}", letters.as_str())]
}

#[cfg(test)]
mod tests {
    use super::super::trial::{how, plan, yard};
    use super::*;
    use crate::cutting::{CutProblem, Outcome, Ties};
    use crate::measure::length;

    fn outcome(plan: &Plan, bound_cents: i64) -> Outcome {
        Outcome {
            plan: plan.clone(),
            bound_cents,
            proved: plan.cost_cents == bound_cents,
            ties: Ties::default(),
            certificates: vec![],
            work: 0,
            stopped: false,
        }
    }

    fn single(board: usize, plan: &Plan, bound_cents: i64) -> SingleBoard {
        SingleBoard { board, outcome: Ok(outcome(plan, bound_cents)) }
    }

    /// Title, what is bought, what it costs, what it leaves, and what is not proved of it.
    fn told(way: &Way) -> [String; 5] {
        let buy = way.buy.iter().map(|line| format!("{} x {}", line.count, line.length));
        let doubt = way.doubt.as_ref().map(ToString::to_string).unwrap_or_default();
        let buy = buy.collect::<Vec<_>>().join(", ");
        [way.title.to_string(), buy, way.costs.to_string(), way.left.sentence().to_string(), doubt]
    }

    /// By hand. Six rails of 40 in, kerf 1/8, ends 1/2. 12 ft gives three, and 144 - 1 - 120 - 3/8 = 22 5/8 is left; 8 ft gives
    /// two, and 96 - 1 - 80 - 1/4 = 14 3/4 is left. Two of 12 ft at 9.80 are 19.60 and leave 45 1/4; three of 8 ft at 7.00 are
    /// 21.00 and leave 44 1/4; one of 12 ft and two of 8 ft are 23.80 and leave 22 5/8, 14 3/4, and 96 - 1 - 40 - 1/8 = 54 7/8
    /// where one rail stands alone: 92 1/4.
    #[test]
    fn other_ways_to_buy_stand_beside_the_plan_with_what_they_leave() {
        let (job, labels) = yard();
        let best = plan(&job, &[(0, 3); 2]);
        let (short, mixed) = (plan(&job, &[(1, 2); 3]), plan(&job, &[(0, 3), (1, 2), (1, 1)]));
        let singles = [
            single(0, &best, 1960),
            single(1, &short, 2100),
            SingleBoard { board: 2, outcome: Err(CutProblem::NoParts) },
        ];
        let next = NextRun { plan: mixed, bound_cents: 2380 };
        let stood = Stood { plan: &best, bound_cents: 1960 };
        let ways = compare(&job, &labels, how("12"), stood, &singles, Some(&next)).expect("plans");
        assert_eq!(
            told(&ways.stood),
            [
                "The plan",
                "2 x 144",
                "19.60 in all.",
                "Leaves 45 1/4 in to keep, the longest piece 22 5/8 in.",
                ""
            ]
        );
        // The one that buys what the plan does is no other way.
        let others: Vec<_> = ways.others.iter().map(told).collect();
        assert_eq!(
            others,
            [
                [
                    "All 2x4 as 96 in",
                    "3 x 96",
                    "21.00 in all, 1.40 more than the plan.",
                    "Leaves 44 1/4 in to keep, the longest piece 14 3/4 in.",
                    ""
                ],
                [
                    "The next cheapest way",
                    "1 x 144, 2 x 96",
                    "23.80 in all, 4.20 more than the plan.",
                    "Leaves 92 1/4 in to keep, the longest piece 54 7/8 in.",
                    ""
                ],
            ]
        );
        let more: Vec<_> = ways.more.iter().map(ToString::to_string).collect();
        assert_eq!(more, ["All 2x4 as 144 in: cannot be done. There is no piece to cut."]);
        // Worth keeping from 15 in on, the short boards leave nothing.
        let from_15 = compare(&job, &labels, how("15"), stood, &singles, None).expect("plans");
        assert_eq!(told(&from_15.others[0])[3], "Leaves nothing worth keeping.");
    }

    /// A search that was stopped proves less: then no way is told as the next cheapest.
    #[test]
    fn what_is_not_proved_is_not_told_as_a_fact() {
        let (job, labels) = yard();
        let (best, short) = (plan(&job, &[(0, 3); 2]), plan(&job, &[(1, 2); 3]));
        let words = |stood, singles: &[SingleBoard], next: &NextRun| {
            let ways = compare(&job, &labels, how("12"), stood, singles, Some(next));
            let ways = ways.expect("plans of this job");
            let other = told(&ways.others[0]);
            (told(&ways.stood)[4].clone(), other[0].clone(), other[2].clone(), other[4].clone())
        };
        let same = |a: (String, String, String, String), b: [&str; 4]| {
            assert_eq!([a.0, a.1, a.2, a.3], b);
        };
        let proved = Stood { plan: &best, bound_cents: 1960 };
        let run = |bound_cents| NextRun { plan: short.clone(), bound_cents };
        same(
            words(proved, &[], &run(2100)),
            ["", "The next cheapest way", "21.00 in all, 1.40 more than the plan.", ""],
        );
        same(
            words(proved, &[], &run(2000)),
            [
                "",
                "Another way",
                "21.00 in all, 1.40 more than the plan.",
                "Not proved the next cheapest: no way costs less than 20.00.",
            ],
        );
        // What has a name of its own keeps it, with what is known of it.
        same(
            words(proved, &[single(1, &short, 2100)], &run(2100)),
            [
                "",
                "All 2x4 as 96 in: the next cheapest way",
                "21.00 in all, 1.40 more than the plan.",
                "",
            ],
        );
        same(
            words(proved, &[single(1, &short, 2090)], &run(2000)),
            [
                "",
                "All 2x4 as 96 in",
                "21.00 in all, 1.40 more than the plan.",
                "Not proved: with these boards alone no way costs less than 20.90.",
            ],
        );
        // The plan was stopped before the cheapest was found: the other way is cheaper.
        let stopped = Stood { plan: &short, bound_cents: 1900 };
        let cheaper = NextRun { plan: best.clone(), bound_cents: 1960 };
        same(
            words(stopped, &[], &cheaper),
            [
                "Not proved cheapest: no way costs less than 19.00.",
                "A cheaper way",
                "19.60 in all, 1.40 less than the plan.",
                "",
            ],
        );
    }

    #[test]
    fn a_plan_that_was_taken_is_told_beside_the_one_that_was_found() {
        let labels = yard().1;
        let told = |cost, found, is_proved| against(&labels, cost, found, is_proved).to_string();
        assert_eq!(told(2100, 1960, true), "1.40 more than the cheapest plan.");
        assert_eq!(told(2100, 1960, false), "1.40 more than the best plan found.");
        assert_eq!(told(1960, 1960, true), "As much as the cheapest plan.");
        assert_eq!(told(1960, 2100, false), "1.40 less than the best plan found.");
    }

    /// By hand: without prices a cent is 2 in of wood here, and 140 of them are 280 in, 23.333 ft; 1,900 are 316.667 ft.
    #[test]
    fn where_no_board_has_a_price_ways_are_told_in_wood() {
        let (job, mut labels) = yard();
        labels.money = Money::Wood { each: length("2").expect("a length") };
        let (best, short) = (plan(&job, &[(0, 3); 2]), plan(&job, &[(1, 2); 3]));
        let stood = Stood { plan: &best, bound_cents: 1900 };
        let singles = [single(1, &short, 2100)];
        let ways = compare(&job, &labels, how("12"), stood, &singles, None).expect("plans");
        assert_eq!(
            told(&ways.stood)[4],
            "Not proved cheapest: no way takes less wood than 316.667 ft."
        );
        assert_eq!(told(&ways.others[0])[2], "350 ft in all, 23.333 ft more than the plan.");
    }

    /// Three others in full, each dearer one in a line; of the same boards there is one way.
    #[test]
    fn the_three_cheapest_others_are_told_in_full() {
        let (job, labels) = yard();
        let best = plan(&job, &[(0, 3); 2]);
        let dearer = |at: i64| Plan { cost_cents: 1960 + at * 100, ..plan(&job, &[(1, 2); 3]) };
        let others: [&[(usize, i64)]; 5] = [
            &[(1, 2), (1, 2), (1, 2), (1, 0)],
            &[(1, 2), (1, 2), (1, 2)],
            &[(0, 3), (1, 2), (1, 1)],
            &[(2, 3), (2, 3)],
            &[(2, 3), (1, 2), (1, 1)],
        ];
        let singles: Vec<SingleBoard> = (1..)
            .zip(others)
            .map(|(at, boards)| {
                let plan = Plan { boards: plan(&job, boards).boards, ..dearer(at) };
                single(1, &plan, plan.cost_cents)
            })
            .collect();
        let twice = [singles.clone(), singles].concat();
        let stood = Stood { plan: &best, bound_cents: 1960 };
        let ways = compare(&job, &labels, how("12"), stood, &twice, None).expect("plans");
        let cents: Vec<i64> = ways.others.iter().map(|way| way.dearer_cents).collect();
        assert_eq!(cents, [100, 200, 300]);
        let more: Vec<String> = ways.more.iter().map(ToString::to_string).collect();
        assert_eq!(
            more,
            [
                "All 2x4 as 96 in: 23.60 in all, 4.00 more than the plan.",
                "All 2x4 as 96 in: 24.60 in all, 5.00 more than the plan.",
            ]
        );
    }
}
