//! Branch and price on how boards are divided.
//!
//! The programme of [`crate::staged`] is solved at each node of a tree; a fractional number of boards, of strips or of boards
//! in one form is bounded from above in one branch and from below in the other (Vanderbeck and Wolsey, "An exact algorithm for
//! IP column generation", Operations Research Letters 19, 1996; Barnhart, Johnson, Nemhauser, Savelsbergh and Vance, "Branch-
//! and-price: column generation for solving huge integer programs", Operations Research 46, 1998). How the strips are filled
//! need not be whole: once all boards and forms are, bin completion decides whether the parts go into those strips. Where they
//! do not, some strip of the group that failed must be had once more, and the search branches on that (a cut in the manner of
//! Hooker and Ottosson, "Logic-based Benders decomposition", Mathematical Programming 96, 2003). Every bound that prunes is
//! worked out in whole numbers. All cited from memory.

use std::rc::Rc;

use crate::bounded::Basis;
use crate::budget::Meter;
use crate::greedy::Patterns;
use crate::model::{Form, Model, Pattern};
use crate::rows::{Packed, Rows, Shape, deal};
use crate::staged::{Limit, Stages, Whole};

/// Nodes kept open, at most.
const MOST_OPEN: usize = 200_000;
/// A level this near to a whole number is one.
const WHOLE: f64 = 1e-5;

/// A variable is tried until this much is known of both sides.
const RELIABLE: f64 = 4.0;
/// Variables tried without finding a better one, at most.
const LOOK_AHEAD: u32 = 8;

fn score(down: f64, up: f64) -> f64 {
    down.max(1e-3) * up.max(1e-3)
}

struct Node {
    limits: Vec<Limit>,
    bound: i64,
    basis: Option<Rc<Basis>>,
}

/// A tree in progress.
pub(crate) struct Tree<'m> {
    model: &'m Model,
    shape: Rc<Shape>,
    stages: Stages<'m>,
    rows: Rows<'m>,
    /// The cheapest bound last, and of equal ones the latest.
    open: Vec<Node>,
    /// Nodes that could not be decided in the steps given.
    parked: Vec<Node>,
    /// Steps for filling the strips of one choice of boards.
    pack_steps: u64,
    /// For each variable: how much the value rose below and above.
    rises: Vec<[Rise; 2]>,
}

/// What a run came to.
pub(crate) struct Grown {
    pub(crate) found: Option<Patterns>,
    /// No plan costs less than the lower of this and the target.
    pub(crate) bound: i64,
}

impl<'m> Tree<'m> {
    pub(crate) fn new(model: &'m Model, shape: &Rc<Shape>, capacities: &[Vec<i64>]) -> Self {
        let stages = Stages::new(model, Rc::clone(shape), capacities);
        Self {
            model,
            rises: vec![[Rise::default(); 2]; stages.counts()],
            stages,
            rows: Rows::new(model, Rc::clone(shape)),
            shape: Rc::clone(shape),
            open: vec![Node { limits: Vec::new(), bound: 0, basis: None }],
            parked: Vec::new(),
            pack_steps: 200_000,
        }
    }

    /// Keeps the fills of a pattern.
    pub(crate) fn learn(&mut self, pattern: &Pattern) {
        self.stages.learn(pattern);
    }

    fn bound(&self, target: i64) -> i64 {
        let open = self.open.iter().chain(&self.parked).map(|node| node.bound);
        open.fold(target, i64::min)
    }

    /// Goes on with the tree until a plan cheaper than `target` is found, nothing is open, or the steps are used up.
    pub(crate) fn run(&mut self, target: i64, steps: u64, meter: &mut Meter<'_>) -> Grown {
        let stop_at = meter.work().saturating_add(steps);
        if !self.parked.is_empty() {
            self.pack_steps = self.pack_steps.saturating_mul(4);
            self.open.append(&mut self.parked);
            self.sort();
        }
        let mut next: Option<Node> = None;
        while meter.going() && meter.work() < stop_at && self.open.len() < MOST_OPEN {
            let goes_on = next.is_some();
            let Some(node) = next.take().or_else(|| self.open.pop()) else {
                break;
            };
            if node.bound >= target {
                continue;
            }
            self.stages.limit(&node.limits);
            if let Some(basis) = node.basis.as_ref().filter(|_| !goes_on) {
                self.stages.restore(basis);
            }
            let staged = self.stages.solve(target, meter);
            let bound = staged.bound.max(node.bound);
            if bound >= target {
                continue;
            }
            if !staged.settled {
                self.parked.push(Node { bound, ..node });
                continue;
            }
            let wholes = self.stages.wholes();
            let room = (target - bound) as f64;
            let choice = match self.choose(&wholes, room, meter) {
                Some(choice) => choice,
                None => match self.pack(&wholes, meter) {
                    Decided::Found(patterns) => {
                        if self.model.cost(&patterns) < target {
                            self.put(Node { bound, ..node });
                            return Grown { bound: self.bound(target), found: Some(patterns) };
                        }
                        self.parked.push(Node { bound, ..node });
                        continue;
                    }
                    Decided::Unknown => {
                        self.parked.push(Node { bound, ..node });
                        continue;
                    }
                    Decided::Fails(group, reach) => {
                        let high = |slot: usize| {
                            let count = self.stages.strips_of(slot);
                            let of = node.limits.iter().filter(|l| l.count == count);
                            of.filter_map(|limit| limit.high).min().unwrap_or(u32::MAX)
                        };
                        let slots = self.shape.slots_of(group);
                        let Some(slot) = slots.rev().find(|&slot| high(slot) > reach[slot]) else {
                            continue;
                        };
                        let count = self.stages.strips_of(slot);
                        Whole { count, level: f64::from(reach[slot]) + 0.5 }
                    }
                },
            };
            let below = choice.level.floor() as u32;
            let basis = Some(Rc::new(self.stages.basis()));
            let child = |low: u32, high: Option<u32>| {
                let mut limits = node.limits.clone();
                limits.push(Limit { count: choice.count, low, high });
                Node { limits, bound, basis: basis.clone() }
            };
            let (up, down) = (child(below + 1, None), child(0, Some(below)));
            let share = choice.level - choice.level.floor();
            let (first, second) = if share >= 0.4 { (up, down) } else { (down, up) };
            self.put(second);
            next = Some(first);
            // A plunge ends where it gets dear compared with what is open.
            let low = self.open.last().map_or(bound, |node| node.bound);
            if bound - low > (target - low) / 3
                && let Some(node) = next.take()
            {
                self.put(node);
            }
        }
        if let Some(node) = next {
            self.put(node);
        }
        Grown { bound: self.bound(target), found: None }
    }

    /// The variable to branch on: the one for which the value rises most on both sides, as far as is known from before; where
    /// too little is known, it is tried (Achterberg, Koch and Martin, "Branching rules revisited", Operations Research Letters
    /// 33, 2005).
    fn choose(&mut self, wholes: &[Whole], room: f64, meter: &mut Meter<'_>) -> Option<Whole> {
        let mut broken: Vec<(f64, Whole)> = Vec::new();
        for whole in wholes {
            let share = whole.level - whole.level.floor();
            if share > WHOLE && share < 1.0 - WHOLE {
                let [down, up] = self.rises[whole.count];
                let score = score(down.mean() * share, up.mean() * (1.0 - share));
                broken.push((score + 1e-4 * share.min(1.0 - share), *whole));
            }
        }
        broken.sort_by(|a, b| b.0.total_cmp(&a.0));
        let mut best: Option<(f64, Whole)> = None;
        let mut since = 0;
        for (old, whole) in broken {
            let share = whole.level - whole.level.floor();
            let [down, up] = self.rises[whole.count];
            let mut own = old;
            if down.times.min(up.times) < RELIABLE && since < LOOK_AHEAD {
                let risen = self.stages.probe(whole, meter);
                let risen = risen.map(|rise| rise.min(room));
                for (side, part) in [share, 1.0 - share].into_iter().enumerate() {
                    let rise = &mut self.rises[whole.count][side];
                    rise.sum += risen[side] / part;
                    rise.times += 1.0;
                }
                own = score(risen[0], risen[1]);
            }
            if best.is_none_or(|best| own > best.0) {
                best = Some((own, whole));
                since = 0;
            } else {
                since += 1;
            }
        }
        best.map(|best| best.1)
    }

    fn put(&mut self, node: Node) {
        let at = self.open.partition_point(|other| other.bound >= node.bound);
        self.open.insert(at, node);
    }

    fn sort(&mut self) {
        self.open.sort_by_key(|node| std::cmp::Reverse(node.bound));
    }

    fn pack(&mut self, forms: &[Whole], meter: &mut Meter<'_>) -> Decided {
        let mut chosen: Vec<(usize, Rc<Form>, u32)> = Vec::new();
        let mut reach = vec![0_u32; self.shape.slots()];
        let divided = forms.iter().zip(self.stages.divisions());
        for (whole, (stock, form)) in divided.filter(|(whole, _)| whole.level > 0.5) {
            let count = whole.level.round() as u32;
            for (sum, &own) in reach.iter_mut().zip(self.shape.of_form(stock, form)) {
                *sum += own * count;
            }
            chosen.push((stock, Rc::clone(&self.model.stocks[stock].forms[form]), count));
        }
        match self.rows.pack(&reach, &self.model.demands(), &[], self.pack_steps, meter) {
            Packed::Fits(fills) => Decided::Found(deal(self.model, &chosen, fills)),
            Packed::Fails(group) => Decided::Fails(group, reach),
            Packed::Unknown => Decided::Unknown,
        }
    }
}

enum Decided {
    Found(Patterns),
    Fails(usize, Vec<u32>),
    Unknown,
}

/// How much the value rose for each part of a unit that a variable was moved.
#[derive(Debug, Clone, Copy, Default)]
struct Rise {
    sum: f64,
    times: f64,
}

impl Rise {
    fn mean(self) -> f64 {
        self.sum / self.times.max(1.0)
    }
}
