//! The linear programme of boards and strips, each a variable of its own, and the whole-number bound it gives.
//!
//! A board cut into strips is not one pattern but several: which form the board takes, and how each of its strips is filled.
//! Forms give strips, fills use them up, and one row for each kind and length of strip links the two (Gilmore and Gomory,
//! "Multistage cutting stock problems of two and more dimensions", Operations Research 13, 1965; cited from memory). Fills are
//! priced as knapsacks, forms are all there from the start. Rows for the boards of a stock and the strips of a slot, and the
//! columns of the forms, can be bounded from above and below without any change to pricing. Beside the rows that link, our own:
//! a strip may be filled as a shorter one of its kind, so rows count the strips that are *at least* so long.

use std::collections::BTreeSet;
use std::rc::Rc;

use crate::bounded::{Basis, Bounded, Solved};
use crate::bounds::least_money;
use crate::budget::Meter;
use crate::knapsack::{Fill, Fills, fill, gcd, offers};
use crate::model::{Make, Model, Pattern, StripMake};
use crate::rows::Shape;

/// The dearest board, in the whole numbers in which bounds are worked out.
const DEAREST: i64 = 1 << 40;
/// Each round of pricing may add one fill for each strip; so many rounds at most.
const MOST_ROUNDS: usize = 400;
/// Pivots of one probe, at most.
const PROBE: usize = 30;
/// A ray along which the value rises by less is taken to rise by so much.
const LEAST_RISE: f64 = 1e-3;
/// Costs are raised by up to this share of the dearest board, each by its own, so that no two columns tie.
const UNTIE: f64 = 1e-7;

/// A bound is lifted where that takes at most this share of the steps in which it came about.
const LIFTING: u64 = 3;
/// No limit of boards from above.
const EVER: i64 = 1 << 40;

/// What must be whole, and its present level.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Whole {
    pub(crate) count: usize,
    pub(crate) level: f64,
}

/// Bounds of something that must be whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Limit {
    pub(crate) count: usize,
    pub(crate) low: u32,
    pub(crate) high: Option<u32>,
}

/// A form of a board, and its reach where it is not zero.
struct Division {
    stock: usize,
    form: usize,
    reach: Vec<(usize, u32)>,
}

/// A sum over forms that must be whole. Only those that were ever bounded are rows of the programme.
struct Count {
    /// Forms, and how often each counts.
    members: Vec<(usize, u32)>,
    variable: Option<usize>,
    usual: (f64, f64),
}

/// What the programme came to under some limits.
pub(crate) struct Staged {
    /// No plan within the limits costs less.
    pub(crate) bound: i64,
    /// The bound is as good as the programme gets.
    pub(crate) settled: bool,
}

/// The programme.
pub(crate) struct Stages<'m> {
    model: &'m Model,
    shape: Rc<Shape>,
    capacities: Vec<Vec<i64>>,
    lp: Bounded,
    /// The dearest board's cost.
    unit: f64,
    /// A cent in whole numbers, and the dearest board.
    cent: i64,
    grain: f64,
    /// The forms; their columns follow the rows of items and slots.
    divided: Vec<Division>,
    /// The forms one by one, then sums of them.
    counts: Vec<Count>,
    /// The first of the sums that are the strips of a slot.
    strips: usize,
    /// For each stock: the count of its boards.
    boards: Vec<usize>,
    /// Every price is a whole number of these.
    step: i64,
    known: BTreeSet<(usize, Fill)>,
    changed: Vec<usize>,
}

impl<'m> Stages<'m> {
    pub(crate) fn new(model: &'m Model, shape: Rc<Shape>, capacities: &[Vec<i64>]) -> Self {
        let (items, slots) = (model.items.len(), shape.slots());
        let dearest = model.stocks.iter().map(|stock| stock.cost).max().unwrap_or(1).max(1);
        let (unit, cent) = (dearest as f64, (DEAREST / dearest).max(1));
        let mut bounds: Vec<(f64, f64)> =
            model.items.iter().map(|item| (f64::from(item.demand), f64::INFINITY)).collect();
        bounds.extend((0..slots).map(|_| (0.0, f64::INFINITY)));
        let mut stages = Self {
            model,
            lp: Bounded::new(&bounds),
            shape,
            capacities: capacities.to_vec(),
            unit,
            cent,
            grain: (cent * dearest) as f64,
            divided: Vec::new(),
            counts: Vec::new(),
            strips: 0,
            boards: Vec::new(),
            step: model.stocks.iter().fold(0, |step, stock| gcd(step, stock.cost)),
            known: BTreeSet::new(),
            changed: Vec::new(),
        };
        for (stock, entry) in model.stocks.iter().enumerate() {
            for form in 0..entry.forms.len() {
                let reach = stages.shape.of_form(stock, form).iter().copied().enumerate();
                let reach: Vec<(usize, u32)> = reach.filter(|entry| entry.1 > 0).collect();
                let linked = reach.iter().map(|&(slot, count)| (items + slot, f64::from(count)));
                let cost = entry.cost as f64 / unit + untie(stages.divided.len());
                let variable = stages.lp.add(cost, linked.collect());
                stages.counts.push(Count {
                    members: vec![(stages.divided.len(), 1)],
                    variable: Some(variable),
                    usual: (0.0, f64::INFINITY),
                });
                stages.divided.push(Division { stock, form, reach });
            }
        }
        for (item, entry) in model.items.iter().enumerate() {
            stages.lp.add(entry.skip as f64 / unit, vec![(item, 1.0)]);
        }
        stages.count_sums(slots);
        stages
    }

    /// What else must be whole: boards of each stock and of stocks that differ in length only, strips of each slot, strips
    /// that are made alike.
    fn count_sums(&mut self, slots: usize) {
        let mut of_stock = vec![Vec::new(); self.model.stocks.len()];
        let mut of_slot = vec![Vec::new(); slots];
        let mut of_strip: Vec<(&StripMake, Vec<(usize, u32)>)> = Vec::new();
        let mut makes = vec![Vec::new(); self.model.stocks.len()];
        for (number, Division { stock, form, reach }) in self.divided.iter().enumerate() {
            of_stock[*stock].push((number, 1));
            for &(slot, count) in reach {
                of_slot[slot].push((number, count));
            }
            let make = &self.model.stocks[*stock].forms[*form].make;
            makes[*stock].push(make);
            let Make::Strips(strips, _) = make else { continue };
            for strip in strips {
                let at = match of_strip.iter().position(|entry| entry.0 == strip) {
                    Some(at) => at,
                    None => {
                        of_strip.push((strip, Vec::new()));
                        of_strip.len() - 1
                    }
                };
                let members = &mut of_strip[at].1;
                match members.last_mut().filter(|member| member.0 == number) {
                    Some(member) => member.1 += 1,
                    None => members.push((number, 1)),
                }
            }
        }
        for (stock, entry) in self.model.stocks.iter().enumerate() {
            let most = entry.limit.map_or(f64::INFINITY, f64::from);
            self.boards.push(self.counts.len());
            self.count(of_stock[stock].clone(), most);
            let alike = |other: &usize| makes[*other] == makes[stock];
            let all: Vec<usize> = (0..makes.len()).filter(alike).collect();
            if all.len() > 1 && all.first() == Some(&stock) {
                self.count(
                    all.iter().flat_map(|&at| of_stock[at].clone()).collect(),
                    f64::INFINITY,
                );
            }
        }
        for (_, members) in of_strip {
            self.count(members, f64::INFINITY);
        }
        self.strips = self.counts.len();
        for members in of_slot {
            self.count(members, f64::INFINITY);
        }
    }

    fn count(&mut self, members: Vec<(usize, u32)>, most: f64) {
        self.counts.push(Count { members, variable: None, usual: (0.0, most) });
        if most.is_finite() {
            let number = self.counts.len() - 1;
            let variable = self.variable(number);
            self.lp.set_bounds(variable, 0.0, most);
        }
    }

    /// The variable of the programme that stands for a count.
    fn variable(&mut self, count: usize) -> usize {
        let number = count;
        let count = &mut self.counts[number];
        if let Some(variable) = count.variable {
            return variable;
        }
        let first = self.model.items.len() + self.shape.slots();
        let entries: Vec<(usize, f64)> =
            count.members.iter().map(|&(form, n)| (first + form, f64::from(n))).collect();
        let variable = self.lp.add_row(&entries);
        self.lp.set_bounds(variable, count.usual.0, count.usual.1);
        count.variable = Some(variable);
        variable
    }

    /// Adds a fill of the strips of a slot.
    fn add_fill(&mut self, slot: usize, made: Fill) -> bool {
        if self.known.contains(&(slot, made.clone())) {
            return false;
        }
        let (kind, _) = self.shape.slot(slot);
        let mut entries: Vec<(usize, f64)> = Vec::new();
        for &(way, count) in &made {
            let item = self.model.kinds[kind].ways[way].item;
            match entries.iter_mut().find(|entry| entry.0 == item) {
                Some(entry) => entry.1 += f64::from(count),
                None => entries.push((item, f64::from(count))),
            }
        }
        for shorter in self.shape.up_to(slot) {
            entries.push((self.model.items.len() + shorter, -1.0));
        }
        let cost = untie(self.known.len() + self.divided.len());
        self.lp.add(cost, entries);
        self.known.insert((slot, made));
        true
    }

    /// Puts these limits in the place of those before.
    pub(crate) fn limit(&mut self, limits: &[Limit]) {
        for count in std::mem::take(&mut self.changed) {
            let (low, high) = self.counts[count].usual;
            let variable = self.variable(count);
            self.lp.set_bounds(variable, low, high);
        }
        for limit in limits {
            let variable = self.variable(limit.count);
            let (low, high) = self.lp.bounds(variable);
            let most = limit.high.map_or(f64::INFINITY, f64::from);
            self.lp.set_bounds(variable, low.max(f64::from(limit.low)), high.min(most));
            self.changed.push(limit.count);
        }
    }

    pub(crate) fn basis(&self) -> Basis {
        self.lp.basis()
    }

    pub(crate) fn restore(&mut self, basis: &Basis) {
        self.lp.restore(basis);
    }

    /// Solves under the present limits, stopping early once the bound reaches `enough`.
    pub(crate) fn solve(&mut self, enough: i64, meter: &mut Meter<'_>) -> Staged {
        let mut staged = Staged { bound: 0, settled: false };
        let begun_at = meter.work();
        for round in 1..=MOST_ROUNDS {
            let solved = self.lp.solve();
            if !meter.tick(std::mem::take(&mut self.lp.steps)) {
                return staged;
            }
            let mut duals = self.lp.duals();
            match &solved {
                Solved::Lost => return staged,
                Solved::Optimal => {}
                Solved::Infeasible(ray, rise) => {
                    // Along the ray until enough is proved. Duals that prove far more may be too large for whole numbers; a
                    // share of them proves that share at least, because none at all are in order too.
                    let goal = 1.25 * enough as f64 / self.unit;
                    let value = self.lp.value();
                    let far = ((goal - value) / rise.max(LEAST_RISE)).max(0.0);
                    let share = goal / value.max(goal);
                    for (dual, entry) in duals.iter_mut().zip(ray) {
                        *dual = (*dual + far * entry) * share;
                    }
                }
            }
            let of_item: Vec<i64> = duals[..self.model.items.len()]
                .iter()
                .map(|dual| ((dual.max(0.0) * self.grain) as i64).min(1 << 49))
                .collect();
            let fills = self.price(&of_item, meter);
            let mut improved = false;
            let mut paid = 0.0;
            for slot in 0..self.shape.slots() {
                let (kind, cap) = self.shape.slot(slot);
                if self.shape.up_to(slot).start == slot {
                    paid = 0.0;
                }
                paid += duals[self.model.items.len() + slot].max(0.0);
                let (value, _) = fills[kind].value(cap);
                if value as f64 > (paid + 1e-7) * self.grain {
                    improved |= self.add_fill(slot, fills[kind].fill(cap));
                }
            }
            if !improved || solved != Solved::Optimal || round % 4 == 0 {
                let proved = self.proved(&of_item, &duals, &fills);
                staged.bound = staged.bound.max(proved.bound(enough));
                if staged.bound < enough && !improved {
                    let most = (meter.work() - begun_at) / LIFTING;
                    staged.bound = proved.lifted(staged.bound, enough, most, meter);
                }
                if staged.bound >= enough {
                    staged.settled = true;
                    return staged;
                }
            }
            if !improved {
                staged.settled = solved == Solved::Optimal;
                return staged;
            }
        }
        staged
    }

    /// Keeps the fills of a pattern.
    pub(crate) fn learn(&mut self, pattern: &Pattern) {
        for (bin, made) in pattern.form.bins.iter().zip(&pattern.fill) {
            if let Some(slot) = self.shape.find(bin.kind, bin.cap).filter(|_| !made.is_empty()) {
                self.add_fill(slot, made.clone());
            }
        }
    }

    /// By how much the value rises, at least, when the variable is at most `below`, and when it is more.
    pub(crate) fn probe(&mut self, whole: Whole, meter: &mut Meter<'_>) -> [f64; 2] {
        let value = self.lp.value();
        let below = whole.level.floor();
        let variable = self.variable(whole.count);
        let (low, high) = self.lp.bounds(variable);
        let rise = [(low, below), (below + 1.0, high)].map(|(low, high)| {
            (self.lp.probe(variable, low, high, PROBE) - value).max(0.0) * self.unit
        });
        meter.tick(std::mem::take(&mut self.lp.steps));
        rise
    }

    fn price(&self, of_item: &[i64], meter: &mut Meter<'_>) -> Vec<Fills> {
        let demands = self.model.demands();
        let mut all = Vec::with_capacity(self.model.kinds.len());
        for (kind, capacities) in self.model.kinds.iter().zip(&self.capacities) {
            let largest = capacities.last().copied().unwrap_or(0);
            let (fills, steps) = fill(&offers(&kind.ways, of_item, &demands, largest), capacities);
            meter.tick(steps);
            all.push(fills);
        }
        all
    }

    /// What whole numbers near these duals prove under the present limits, when parts are worth `of_item`, strips what their
    /// best fill is worth, and rows what their duals say.
    fn proved(&self, of_item: &[i64], duals: &[f64], fills: &[Fills]) -> Proved<'_, 'm> {
        let mut needed: i128 = 0;
        for (item, &worth) in self.model.items.iter().zip(of_item) {
            needed += i128::from(worth) * i128::from(item.demand);
        }
        let mut worth_of = vec![0_i128; self.divided.len()];
        for count in &self.counts[self.divided.len()..] {
            // A row counts only on a side on which it has a bound.
            let Some(variable) = count.variable else { continue };
            let (low, high) = self.lp.bounds(variable);
            let row = self.lp.row_of_activity(variable);
            let worth = (duals[row] * self.grain) as i128;
            let bound = if worth > 0 { low } else { high };
            if worth != 0 && bound.is_finite() {
                needed += worth * bound as i128;
                for &(form, times) in &count.members {
                    worth_of[form] += worth * i128::from(times);
                }
            }
        }
        // What one more strip at least so long is worth: what its best fill adds to the next shorter one's.
        let mut each: Vec<i128> = Vec::with_capacity(self.shape.slots());
        let mut shorter = 0;
        for slot in 0..self.shape.slots() {
            let (kind, cap) = self.shape.slot(slot);
            if self.shape.up_to(slot).start == slot {
                shorter = 0;
            }
            let best = i128::from(fills[kind].value(cap).1);
            each.push(best - shorter);
            shorter = best;
        }
        for (worth, division) in worth_of.iter_mut().zip(&self.divided) {
            let strips = division.reach.iter();
            *worth += strips.map(|&(slot, n)| i128::from(n) * each[slot]).sum::<i128>();
        }
        Proved { stages: self, worth_of, needed }
    }

    /// Everything that must be whole, with its level; the forms stand first.
    pub(crate) fn wholes(&self) -> Vec<Whole> {
        let first = self.model.items.len() + self.shape.slots();
        let levels = &self.lp.levels()[first..first + self.divided.len()];
        let level = |count: &Count| -> f64 {
            count.members.iter().map(|&(form, times)| levels[form] * f64::from(times)).sum()
        };
        let all = self.counts.iter().enumerate();
        all.map(|(number, count)| Whole { count: number, level: level(count) }).collect()
    }

    /// How many things must be whole.
    pub(crate) fn counts(&self) -> usize {
        self.counts.len()
    }

    /// Stock and form of each form counted, in the order of [`Stages::wholes`].
    pub(crate) fn divisions(&self) -> impl Iterator<Item = (usize, usize)> {
        self.divided.iter().map(|it| (it.stock, it.form))
    }

    /// The count of the strips of a slot.
    pub(crate) fn strips_of(&self, slot: usize) -> usize {
        self.strips + slot
    }
}

/// A worth for each form under some limits: the forms of every plan within them hold `needed` at least.
struct Proved<'s, 'm> {
    stages: &'s Stages<'m>,
    worth_of: Vec<i128>,
    needed: i128,
}

impl Proved<'_, '_> {
    /// Bounds of how many boards are divided in that way.
    fn bounds(&self, form: usize) -> (f64, f64) {
        let stages = self.stages;
        stages.lp.bounds(stages.model.items.len() + stages.shape.slots() + form)
    }

    /// No plan costs less: every form at the bound that suits it best.
    fn bound(&self, enough: i64) -> i64 {
        let mut sum = self.needed;
        for (number, Division { stock, .. }) in self.stages.divided.iter().enumerate() {
            let (low, high) = self.bounds(number);
            let stock = &self.stages.model.stocks[*stock];
            let own = i128::from(stock.cost) * i128::from(self.stages.cent);
            let reduced = own - self.worth_of[number];
            let limit = stock.limit.map_or(i64::MAX, i64::from);
            let afford = (enough - 1).checked_div(stock.cost).unwrap_or(i64::MAX).min(limit).max(0);
            let most = if high.is_finite() { afford.min(high as i64) } else { afford };
            sum += reduced * if reduced >= 0 { low as i128 } else { i128::from(most) };
        }
        let cent = i128::from(self.stages.cent);
        let bound = if sum > 0 { (sum + cent - 1) / cent } else { 0 };
        i64::try_from(bound).unwrap_or(enough).min(enough)
    }

    /// The bound lifted to the next sum of prices that some choice of boards really has: one that keeps the limits of boards and
    /// forms, and holds what is needed. It stays where that takes more than so many steps.
    fn lifted(&self, bound: i64, enough: i64, most_steps: u64, meter: &mut Meter<'_>) -> i64 {
        let stages = self.stages;
        let (mut held, mut spent) = (0_i128, 0_i64);
        let mut offers: Vec<(i64, i64, i64)> = Vec::new();
        let mut forms = stages.divided.iter().enumerate().peekable();
        for (stock, entry) in stages.model.stocks.iter().enumerate() {
            let mut own: Vec<(i128, i64, i64)> = Vec::new();
            while let Some((number, _)) = forms.next_if(|form| form.1.stock == stock) {
                let (low, high) = self.bounds(number);
                own.push((self.worth_of[number], low as i64, most(high) - low as i64));
            }
            let count = stages.counts[stages.boards[stock]].variable;
            let (low, high) = count.map_or((0.0, f64::INFINITY), |it| stages.lp.bounds(it));
            let chosen: i64 = own.iter().map(|form| form.1).sum();
            let (mut due, mut left) = (low.max(0.0) as i64 - chosen, most(high) - chosen);
            held += own.iter().map(|form| form.0 * i128::from(form.1)).sum::<i128>();
            spent = spent.saturating_add(entry.cost.saturating_mul(chosen.max(low as i64)));
            // What is open goes to the forms that hold most; once all of it can, no other is looked at.
            own.sort_unstable_by_key(|form| std::cmp::Reverse(form.0));
            for (worth, _, open) in own {
                let must = open.min(due).max(0);
                held += worth * i128::from(must);
                due -= must;
                left -= must;
                let may = left.min(open - must);
                if entry.cost == 0 {
                    held += worth.max(0) * i128::from(may.max(0));
                } else if may > 0 {
                    let Ok(worth) = i64::try_from(worth) else { return bound };
                    offers.push((entry.cost, worth, may));
                }
                if may == left {
                    break;
                }
            }
            if due > 0 || left < 0 {
                return enough;
            }
        }
        let (money, step) = (enough.saturating_sub(spent), stages.step);
        if money <= 0 {
            return enough;
        }
        let sums = money.checked_div(step).unwrap_or(i64::MAX);
        let steps = sums.saturating_mul(1 + offers.len() as i64) as u64;
        match (i64::try_from(held), i64::try_from(self.needed)) {
            (Ok(held), Ok(needed)) if steps <= most_steps => {
                meter.tick(steps);
                let offers = offers.into_iter();
                spent + least_money(offers, held, needed, bound - spent, money, step)
            }
            _ => bound,
        }
    }
}

/// A limit from above in whole boards.
fn most(high: f64) -> i64 {
    if high.is_finite() { high as i64 } else { EVER }
}

/// A small cost of its own for each column.
fn untie(number: usize) -> f64 {
    let mixed = (number as u64 + 1).wrapping_mul(0x9e37_79b9_7f4a_7c15) >> 40;
    UNTIE * (1.0 + mixed as f64 / (1_u64 << 24) as f64)
}
