//! Thousands of small jobs against trying everything.
//!
//! The oracle knows nothing of forms, bins or patterns. It goes through all subsets of the single parts and asks, by
//! trying every way to lay them out, whether a subset can come from one board; then it puts subsets together.

use std::collections::{BTreeMap, BTreeSet};

use reckoner_core::cutting::{CutProblem, Job, Layout, Plan, Source, StockView};

use crate::quick_lists::asked;
use crate::random::{ripped, straight};
use crate::support::{Dice, solve, solve_rack};

/// One single part in one way of lying: along, across, thickness.
#[derive(Clone, Copy)]
struct Lying {
    along: i64,
    across: i64,
    thick: i64,
}

struct Oracle<'a> {
    job: &'a Job,
    singles: Vec<usize>,
}

impl<'a> Oracle<'a> {
    fn new(job: &'a Job) -> Self {
        let mut singles = Vec::new();
        for (at, part) in job.parts.iter().enumerate() {
            for _ in 0..part.quantity {
                singles.push(at);
            }
        }
        Self { job, singles }
    }

    /// (cost, boards cut) of the best plan, or `None` when there is none.
    fn best(&self) -> Option<(i64, usize)> {
        *self.each(|_| true).last()?
    }

    /// The same for every subset of the single parts, from the stock that `may` be used.
    fn each(&self, may: impl Fn(StockView<'_>) -> bool) -> Vec<Option<(i64, usize)>> {
        let all = 1_usize << self.singles.len();
        let mut best: Vec<Option<(i64, usize)>> = vec![None; all];
        best[0] = Some((0, 0));
        for view in self.job.stock().filter(|&view| may(view)) {
            let fits: Vec<usize> = (1..all).filter(|&mask| self.fits(view, mask)).collect();
            let copies = view.limit.map_or(self.singles.len(), |limit| limit as usize);
            for _ in 0..copies.min(self.singles.len()) {
                let before = best.clone();
                for &mask in &fits {
                    let rest = (all - 1) & !mask;
                    let mut sub = rest;
                    loop {
                        if let Some((cost, boards)) = before[sub] {
                            let new = (cost + view.price_cents, boards + 1);
                            if best[sub | mask].is_none_or(|old| new < old) {
                                best[sub | mask] = Some(new);
                            }
                        }
                        if sub == 0 {
                            break;
                        }
                        sub = (sub - 1) & rest;
                    }
                }
            }
        }
        best
    }

    /// Whether these lengths fit the board's clear stretches, tried in every way.
    fn row(&self, view: StockView<'_>, lengths: &[i64]) -> bool {
        let kerf = self.job.saw.kerf;
        let mut blocked = vec![false; usize::try_from(view.length).unwrap()];
        let (start, end) = (view.trims.left, view.length - view.trims.right);
        for zone in view.knots {
            let inside = zone.from > start && zone.to < end;
            let to = if inside { zone.to.max(zone.from + kerf) } else { zone.to };
            for at in zone.from..to.min(view.length) {
                blocked[usize::try_from(at).unwrap()] = true;
            }
            // A zone without width inside the board still needs a cut of no width: it splits the board.
        }
        let splits: Vec<i64> = view
            .knots
            .iter()
            .filter(|zone| zone.from > start && zone.to < end)
            .map(|zone| zone.from)
            .collect();
        let mut rooms = Vec::new();
        let mut run = 0;
        for at in start..end {
            if splits.contains(&at) && run > 0 {
                rooms.push(run);
                run = 0;
            }
            if blocked[usize::try_from(at).unwrap()] {
                if run > 0 {
                    rooms.push(run);
                }
                run = 0;
            } else {
                run += 1;
            }
        }
        if run > 0 {
            rooms.push(run);
        }
        fn go(rooms: &mut [i64], lengths: &[i64], kerf: i64) -> bool {
            let Some((first, rest)) = lengths.split_first() else {
                return true;
            };
            for at in 0..rooms.len() {
                if rooms[at] >= *first {
                    rooms[at] -= first + kerf;
                    let fine = go(rooms, rest, kerf);
                    rooms[at] += first + kerf;
                    if fine {
                        return true;
                    }
                }
            }
            false
        }
        go(&mut rooms, lengths, kerf)
    }

    fn fits(&self, view: StockView<'_>, mask: usize) -> bool {
        let chosen: Vec<usize> = (0..self.singles.len())
            .filter(|bit| mask >> bit & 1 == 1)
            .map(|bit| self.singles[bit])
            .collect();
        let parts = &self.job.parts;
        if chosen.iter().all(|&p| parts[p].section == view.section) {
            let lengths: Vec<i64> = chosen.iter().map(|&p| parts[p].length).collect();
            if self.row(view, &lengths) {
                return true;
            }
        }
        let section = self.job.section(view.section).unwrap();
        let (Some(_), Some(_)) = (&self.job.saw.rip, section.size) else {
            return false;
        };
        let same_wood =
            |p: usize| self.job.section(&parts[p].section).unwrap().wood == section.wood;
        chosen.iter().all(|&p| same_wood(p)) && self.turn(view, &chosen, &mut Vec::new())
    }

    /// Tries every way for the parts to lie.
    fn turn(&self, view: StockView<'_>, chosen: &[usize], lying: &mut Vec<Lying>) -> bool {
        if lying.len() == chosen.len() {
            return self.rip_first(view, chosen, lying) || self.crosscut_first(view, chosen, lying);
        }
        let part = &self.job.parts[chosen[lying.len()]];
        let size = self.job.section(&part.section).unwrap().size.unwrap();
        let straight = Lying { along: part.length, across: size.width, thick: size.thickness };
        let turned = Lying { along: size.width, across: part.length, thick: size.thickness };
        for option in if part.grain_free { vec![straight, turned] } else { vec![straight] } {
            lying.push(option);
            let fine = self.turn(view, chosen, lying);
            lying.pop();
            if fine {
                return true;
            }
        }
        false
    }

    /// Tries every grouping of the parts into strips, and of each strip's parts into layers.
    fn rip_first(&self, view: StockView<'_>, chosen: &[usize], lying: &[Lying]) -> bool {
        let mut strips: Vec<Vec<usize>> = Vec::new();
        self.group(lying.len(), 0, &mut strips, &|strips| {
            self.strips_work(view, chosen, lying, strips)
        })
    }

    /// Calls `test` for every partition of `0..n`; true when it is for any.
    fn group(
        &self,
        n: usize,
        at: usize,
        groups: &mut Vec<Vec<usize>>,
        test: &dyn Fn(&[Vec<usize>]) -> bool,
    ) -> bool {
        if at == n {
            return test(groups);
        }
        for number in 0..groups.len() {
            groups[number].push(at);
            let fine = self.group(n, at + 1, groups, test);
            groups[number].pop();
            if fine {
                return true;
            }
        }
        groups.push(vec![at]);
        let fine = self.group(n, at + 1, groups, test);
        groups.pop();
        fine
    }

    fn strips_work(
        &self,
        view: StockView<'_>,
        chosen: &[usize],
        lying: &[Lying],
        strips: &[Vec<usize>],
    ) -> bool {
        let rip = self.job.saw.rip.as_ref().unwrap();
        let size = self.job.section(view.section).unwrap().size.unwrap();
        if strips
            .iter()
            .any(|strip| strip.iter().any(|&p| lying[p].across != lying[strip[0]].across))
        {
            return false;
        }
        let widths: Vec<i64> = strips.iter().map(|strip| lying[strip[0]].across).collect();
        let whole = widths == [size.width];
        if !whole {
            let cuts = i64::try_from(widths.len() - 1).unwrap();
            let used: i64 = widths.iter().sum::<i64>() + cuts * rip.kerf;
            if used > size.width - rip.near_edge - rip.far_edge
                || widths.iter().any(|&width| width < rip.least_width)
                || view.length < rip.least_length
                || chosen.iter().any(|&p| !self.job.parts[p].may_rip)
            {
                return false;
            }
        }
        strips.iter().all(|strip| {
            let along: Vec<i64> = strip.iter().map(|&p| lying[p].along).collect();
            let plain = strip.iter().all(|&p| lying[p].thick == size.thickness);
            if plain && self.row(view, &along) {
                return true;
            }
            let Some(resaw) = &rip.resaw else {
                return false;
            };
            let width = lying[strip[0]].across;
            if resaw.greatest_width.is_some_and(|most| width > most)
                || view.length < rip.least_length
                || strip.iter().any(|&p| !self.job.parts[chosen[p]].may_resaw)
            {
                return false;
            }
            self.group(strip.len(), 0, &mut Vec::new(), &|layers| {
                let thick: Vec<i64> = layers.iter().map(|l| lying[strip[l[0]]].thick).collect();
                let cuts = i64::try_from(thick.len() - 1).unwrap();
                let used: i64 = thick.iter().sum::<i64>() + cuts * resaw.kerf;
                used <= size.thickness - resaw.near_face - resaw.far_face
                    && thick.iter().all(|&t| t >= resaw.least_thickness)
                    && layers.iter().zip(&thick).all(|(layer, &t)| {
                        let along: Vec<i64> =
                            layer.iter().map(|&p| lying[strip[p]].along).collect();
                        layer.iter().all(|&p| lying[strip[p]].thick == t) && self.row(view, &along)
                    })
            })
        })
    }

    fn crosscut_first(&self, view: StockView<'_>, chosen: &[usize], lying: &[Lying]) -> bool {
        let rip = self.job.saw.rip.as_ref().unwrap();
        let size = self.job.section(view.section).unwrap().size.unwrap();
        if !rip.crosscut_first || lying.iter().any(|part| part.thick != size.thickness) {
            return false;
        }
        self.group(lying.len(), 0, &mut Vec::new(), &|blocks| {
            let lengths: Vec<i64> = blocks.iter().map(|block| lying[block[0]].along).collect();
            self.row(view, &lengths)
                && blocks.iter().zip(&lengths).all(|(block, &length)| {
                    let across: Vec<i64> = block.iter().map(|&p| lying[p].across).collect();
                    if block.iter().any(|&p| lying[p].along != length) {
                        return false;
                    }
                    let cuts = i64::try_from(block.len() - 1).unwrap();
                    let used: i64 = across.iter().sum::<i64>() + cuts * rip.kerf;
                    across == [size.width]
                        || (used <= size.width - rip.near_edge - rip.far_edge
                            && across.iter().all(|&width| width >= rip.least_width)
                            && length >= rip.least_length
                            && block.iter().all(|&p| self.job.parts[chosen[p]].may_rip))
                })
        })
    }
}

/// What occurs in a plan: what is ripped, resawn or crosscut first in it, and whether it cuts scraps, or boards with knots.
fn occurring(job: &Job, plan: &Plan) -> BTreeSet<&'static str> {
    let mut all = BTreeSet::new();
    for board in &plan.boards {
        let view = match board.source {
            Source::Board(at) => job.stock().nth(at),
            Source::Scrap(at) => {
                all.insert("with scraps");
                job.stock().nth(job.boards.len() + at)
            }
        };
        let view = view.expect("a board of the job");
        if !view.knots.is_empty() {
            all.insert("with knots");
        }
        let size = job.section(view.section).and_then(|section| section.size);
        match &board.layout {
            Layout::Crosscut(_) => {}
            Layout::RipFirst(strips) => {
                let size = size.expect("what is ripped has a size");
                if strips.iter().any(|strip| strip.width < size.width) {
                    all.insert("ripped");
                }
                let mut layers = strips.iter().flat_map(|strip| &strip.layers);
                if layers.any(|layer| layer.thickness < size.thickness) {
                    all.insert("resawn");
                }
            }
            Layout::CrosscutFirst(_) => {
                all.insert("crosscut first");
            }
        }
    }
    all
}

fn compare(jobs: impl Iterator<Item = Job>) -> BTreeMap<&'static str, usize> {
    let mut seen = BTreeMap::new();
    for (number, job) in jobs.enumerate() {
        if job.validate().is_err() {
            *seen.entry("bad").or_insert(0) += 1;
            continue;
        }
        let truth = Oracle::new(&job).best();
        match (solve(&job, 400_000_000), truth) {
            (Ok(outcome), Some((cost, boards))) => {
                assert!(outcome.proved, "job {number} is not decided: {job:#?}");
                assert_eq!(outcome.plan.cost_cents, cost, "job {number}: {job:#?}");
                for what in occurring(&job, &outcome.plan) {
                    *seen.entry(what).or_insert(0) += 1;
                }
                if outcome.ties.fewest_boards {
                    assert_eq!(outcome.plan.boards.len(), boards, "job {number}: {job:#?}");
                    *seen.entry("fewest").or_insert(0) += 1;
                }
                *seen.entry("planned").or_insert(0) += 1;
            }
            (Err(CutProblem::PartFitsNowhere { .. }), None) => {
                *seen.entry("nowhere").or_insert(0) += 1;
            }
            (Err(CutProblem::NotEnoughBoards { .. }), None) => {
                *seen.entry("not enough").or_insert(0) += 1;
            }
            (outcome, truth) => panic!("job {number}: {outcome:?}, but {truth:?}: {job:#?}"),
        }
    }
    seen
}

/// Fails where what is to be judged was seen no more often than this: random jobs without it would pass all the same.
fn assert_often(seen: &BTreeMap<&str, usize>, least: &[(&str, usize)]) {
    for (what, least) in least {
        let count = seen.get(what).copied().unwrap_or(0);
        assert!(count > *least, "{what}: {count} times, which is too rare: {seen:?}");
    }
}

#[test]
fn straight_jobs_cost_what_trying_everything_finds() {
    let mut dice = Dice(5);
    let seen = compare((0..3_000).map(|_| straight(&mut dice, 7)));
    println!("{seen:?}");
    let rare = [
        ("fewest", 1_500),
        ("nowhere", 50),
        ("not enough", 20),
        ("with scraps", 500),
        ("with knots", 300),
    ];
    assert_often(&seen, &rare);
}

#[test]
fn straight_jobs_of_nine_parts() {
    let mut dice = Dice(9);
    let seen = compare((0..150).map(|_| straight(&mut dice, 9)));
    assert!(seen["planned"] > 60, "{seen:?}");
}

#[test]
fn ripped_jobs_cost_what_trying_everything_finds() {
    let mut dice = Dice(7);
    let seen = compare((0..10_000).map(|_| ripped(&mut dice, 7)));
    println!("{seen:?}");
    let rare = [
        ("planned", 1_800),
        ("ripped", 900),
        ("resawn", 150),
        ("crosscut first", 600),
        ("with scraps", 350),
        ("with knots", 500),
    ];
    assert_often(&seen, &rare);
}

/// A quick list with widths, of up to seven pieces, as it is typed. Prices, lengths and widths are invented.
fn wide_list(dice: &mut Dice) -> Job {
    let pick = |dice: &mut Dice, from: &[&str]| {
        from[usize::try_from(dice.roll(0, 99)).expect("small") % from.len()].to_owned()
    };
    let mut boards = vec![format!("24 wide 5 1/2 at {}", dice.roll(5, 9))];
    let is_mixed = dice.one_in(2);
    if is_mixed {
        boards.push(format!("36 wide 3 1/2 at {}", dice.roll(5, 9)));
    }
    let mut parts = Vec::new();
    for _ in 0..dice.roll(1, 3) {
        let width = pick(dice, &["1 1/2", "2 5/8", "3 1/2", "5 1/2"]);
        let length = pick(dice, &["7", "11 7/16", "17", "23"]);
        let wide =
            if !is_mixed && dice.one_in(4) { String::new() } else { format!(" wide {width}") };
        parts.push(format!("{} @ {length}{wide}", dice.roll(1, 2)));
    }
    let scraps = if dice.one_in(3) { "18 wide 3 1/2" } else { "" };
    let scraps = if is_mixed { scraps } else { "" };
    let (parts, boards) = (parts.join(", "), boards.join(", "));
    let texts = [("parts", &*parts), ("boards", &*boards), ("scraps", scraps)];
    asked(&texts).expect("a list that can be planned").job
}

#[test]
fn quick_lists_with_widths_cost_what_trying_everything_finds() {
    let mut dice = Dice(41);
    let seen = compare((0..1_500).map(|_| wide_list(&mut dice)));
    println!("{seen:?}");
    assert_often(&seen, &[("planned", 1_000), ("ripped", 500), ("with scraps", 100)]);
}

#[test]
fn the_rack_gives_the_most_parts_by_priority() {
    let mut dice = Dice(11);
    let mut short = 0;
    for number in 0..1_200 {
        let mut job = straight(&mut dice, 7);
        for part in &mut job.parts {
            part.priority = u32::try_from(dice.roll(1, 3)).unwrap();
        }
        if job.validate().is_err() {
            continue;
        }
        let oracle = Oracle::new(&job);
        let counts = |mask: usize| {
            let mut cut = [0; 3];
            for (bit, &part) in oracle.singles.iter().enumerate() {
                cut[job.parts[part].priority as usize - 1] += mask >> bit & 1;
            }
            cut
        };
        let reached = oracle.each(|view| view.limit.is_some());
        let sets = (0..reached.len()).filter(|&mask| reached[mask].is_some());
        let best = sets.map(counts).max().unwrap();
        let outcome = solve_rack(&job, 400_000_000).unwrap();
        assert!(outcome.proved, "job {number}: {job:#?}");
        let mut cut = counts(reached.len() - 1);
        for left in &outcome.plan.left_out {
            cut[job.parts[left.part].priority as usize - 1] -= left.quantity as usize;
        }
        assert_eq!(cut, best, "job {number}: {job:#?}");
        short += usize::from(!outcome.plan.left_out.is_empty());
    }
    assert!(short > 300, "{short}");
}

/// The longest offcut of any cheapest plan with the fewest boards, by laying the offcut down as one more part.
#[test]
fn the_longest_offcut_of_small_jobs() {
    let mut dice = Dice(13);
    let (mut compared, mut knotty) = (0, 0);
    for _ in 0..1_500 {
        let job = straight(&mut dice, 5);
        let Ok(outcome) = solve(&job, 400_000_000) else {
            continue;
        };
        if !outcome.ties.longest_offcut {
            continue;
        }
        let found = outcome.plan.offcuts(&job).first().map_or(0, |offcut| offcut.length);
        let tie = Some((outcome.plan.cost_cents, outcome.plan.boards.len()));
        let mut longer = job.clone();
        longer.parts.push(crate::support::part("offcut".into(), found + 1, 1));
        // A board cut only to make the offcut would be one more, so a tie means that a cut board leaves it.
        assert_ne!(Oracle::new(&longer).best(), tie, "longer than {found}: {job:#?}");
        if found > 0 {
            longer.parts.last_mut().unwrap().length = found;
            assert_eq!(Oracle::new(&longer).best(), tie, "{job:#?}");
            compared += 1;
            knotty += usize::from(job.stock().any(|view| !view.knots.is_empty()));
        }
    }
    assert!(compared > 400 && knotty > 100, "{compared} {knotty}");
}
