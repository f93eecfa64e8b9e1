//! Plans of equal money: the fewest boards, settings and cuts, by hand and against every way to cut small jobs.
//!
//! The oracle lays every subset of the single parts out on every board in every way, keeps what the core's checker
//! passes, and puts subsets together. Only the count of settings and cuts is the core's own; it is checked by hand here
//! and where the report is.

use std::collections::{BTreeMap, BTreeSet};

use reckoner_core::cutting::{
    Block, Board, CheckOptions, CrossSize, CutBoard, CutKind, Effort, Ends, Job, Layer, Layout,
    Part, Placed, Plan, RipRules, SawRules, Section, Source, StockView, Strip, Ties, Units,
    check_plan,
};

use crate::random::{ripped, straight};
use crate::support::{Dice, part, solve};

type Settings = BTreeSet<(CutKind, Units)>;

/// Cost, boards and cuts of the best plan with each choice of settings.
type Known = BTreeMap<Settings, (i64, usize, u64)>;

/// A part as it lies: which, how far along the board, across it, how thick, and whether turned.
#[derive(Clone, Copy)]
struct Lying {
    part: usize,
    along: i64,
    across: i64,
    thick: i64,
    turned: bool,
}

/// Every way to put things of these lengths into the clear stretches, as far left as they go.
fn along(view: StockView<'_>, kerf: i64, lengths: &[i64]) -> Vec<Vec<i64>> {
    let segments = view.segments(kerf);
    let mut ways: Vec<(Vec<i64>, Vec<i64>)> =
        vec![(Vec::new(), segments.iter().map(|segment| segment.0).collect())];
    for length in lengths {
        let mut longer = Vec::new();
        for (placed, free) in &ways {
            for (number, segment) in segments.iter().enumerate() {
                if free[number] + length <= segment.1 {
                    let (mut placed, mut free) = (placed.clone(), free.clone());
                    placed.push(free[number]);
                    free[number] += length + kerf;
                    longer.push((placed, free));
                }
            }
        }
        ways = longer;
    }
    ways.into_iter().map(|way| way.0).collect()
}

fn row(view: StockView<'_>, kerf: i64, group: &[Lying]) -> Vec<Vec<Placed>> {
    let lengths: Vec<i64> = group.iter().map(|it| it.along).collect();
    let placed = |at: Vec<i64>| {
        let mut row: Vec<Placed> = group
            .iter()
            .zip(at)
            .map(|(it, at)| Placed { part: it.part, at, turned: it.turned })
            .collect();
        row.sort_by_key(|placed| placed.at);
        row
    };
    along(view, kerf, &lengths).into_iter().map(placed).collect()
}

/// Every way to put things into groups.
fn groups(things: &[Lying]) -> Vec<Vec<Vec<Lying>>> {
    let mut all: Vec<Vec<Vec<Lying>>> = vec![Vec::new()];
    for &thing in things {
        let mut longer = Vec::new();
        for known in &all {
            for number in 0..known.len() {
                let mut joined = known.clone();
                joined[number].push(thing);
                longer.push(joined);
            }
            let mut apart = known.clone();
            apart.push(vec![thing]);
            longer.push(apart);
        }
        all = longer;
    }
    all
}

/// One of each list, in every way.
fn product<T: Clone>(lists: &[Vec<T>]) -> Vec<Vec<T>> {
    lists.iter().fold(vec![Vec::new()], |all, list| {
        let longer = |known: &Vec<T>| -> Vec<Vec<T>> {
            list.iter()
                .map(|next| [known.as_slice(), std::slice::from_ref(next)].concat())
                .collect()
        };
        all.iter().flat_map(longer).collect()
    })
}

/// Every way to lay these parts out on that board; some break a rule.
fn layouts(job: &Job, view: StockView<'_>, chosen: &[usize]) -> Vec<Layout> {
    let kerf = job.saw.kerf;
    let size_of = |section: &str| job.section(section).and_then(|section| section.size);
    let lying = |part: usize, turned: bool| {
        let own = &job.parts[part];
        let (width, thick) = size_of(&own.section).map_or((1, 1), |it| (it.width, it.thickness));
        let (along, across) = if turned { (width, own.length) } else { (own.length, width) };
        Lying { part, along, across, thick, turned }
    };
    let straight: Vec<Lying> = chosen.iter().map(|&part| lying(part, false)).collect();
    let mut all: Vec<Layout> =
        row(view, kerf, &straight).into_iter().map(Layout::Crosscut).collect();
    let (Some(rip), Some(size)) = (&job.saw.rip, size_of(view.section)) else { return all };
    let ways: Vec<Vec<Lying>> = chosen
        .iter()
        .map(|&part| {
            let turns = if job.parts[part].grain_free { vec![false, true] } else { vec![false] };
            turns.into_iter().map(|turned| lying(part, turned)).collect()
        })
        .collect();
    for things in product(&ways) {
        for strips in groups(&things) {
            if strips.iter().all(|strip| strip.iter().all(|it| it.across == strip[0].across)) {
                for layers in
                    product(&strips.iter().map(|s| layered(job, view, s)).collect::<Vec<_>>())
                {
                    let starts = if strips.len() == 1 {
                        vec![0, rip.near_edge]
                    } else {
                        vec![rip.near_edge]
                    };
                    for start in starts {
                        let mut at = start;
                        let strips = strips.iter().zip(&layers).map(|(strip, layers)| {
                            let here = at;
                            at += strip[0].across + rip.kerf;
                            Strip { at: here, width: strip[0].across, layers: layers.clone() }
                        });
                        all.push(Layout::RipFirst(strips.collect()));
                    }
                }
            }
            if rip.crosscut_first
                && strips.iter().all(|block| block.iter().all(|it| it.along == block[0].along))
            {
                let lengths: Vec<i64> = strips.iter().map(|block| block[0].along).collect();
                for places in along(view, kerf, &lengths) {
                    let blocks = strips.iter().zip(places).map(|(block, at)| {
                        let is_whole = block.len() == 1 && block[0].across == size.width;
                        let mut edge = if is_whole { 0 } else { rip.near_edge };
                        let parts = block.iter().map(|it| {
                            let here = edge;
                            edge += it.across + rip.kerf;
                            Placed { part: it.part, at: here, turned: it.turned }
                        });
                        Block { at, length: block[0].along, parts: parts.collect() }
                    });
                    let mut blocks: Vec<Block> = blocks.collect();
                    blocks.sort_by_key(|block| block.at);
                    all.push(Layout::CrosscutFirst(blocks));
                }
            }
        }
    }
    all
}

/// Every way to cut a strip: as it is, or resawn.
fn layered(job: &Job, view: StockView<'_>, strip: &[Lying]) -> Vec<Vec<Layer>> {
    let kerf = job.saw.kerf;
    let thickness =
        job.section(view.section).and_then(|it| it.size).map_or(0, |size| size.thickness);
    let mut all = Vec::new();
    if strip.iter().all(|it| it.thick == thickness) {
        let whole = |parts| vec![Layer { at: 0, thickness, parts }];
        all.extend(row(view, kerf, strip).into_iter().map(whole));
    }
    let Some(resaw) = job.saw.rip.as_ref().and_then(|rip| rip.resaw.as_ref()) else { return all };
    for layers in groups(strip) {
        if layers.iter().any(|layer| layer.iter().any(|it| it.thick != layer[0].thick)) {
            continue;
        }
        let rows: Vec<_> = layers.iter().map(|layer| row(view, kerf, layer)).collect();
        for rows in product(&rows) {
            let mut at = resaw.near_face;
            let made = layers.iter().zip(rows).map(|(layer, parts)| {
                let here = at;
                at += layer[0].thick + resaw.kerf;
                Layer { at: here, thickness: layer[0].thick, parts }
            });
            all.push(made.collect());
        }
    }
    all
}

/// Cost, boards, settings and cuts of the best plan, by trying everything.
fn truth(job: &Job) -> Option<(i64, usize, usize, u64)> {
    let singles: Vec<usize> = (0..job.parts.len())
        .flat_map(|part| vec![part; job.parts[part].quantity as usize])
        .collect();
    let all = 1_usize << singles.len();
    let mut best: Vec<Known> = vec![Known::new(); all];
    best[0].insert(Settings::new(), (0, 0, 0));
    for (number, view) in job.stock().enumerate() {
        let source = if number < job.boards.len() {
            Source::Board(number)
        } else {
            Source::Scrap(number - job.boards.len())
        };
        if view.limit == Some(0) {
            continue;
        }
        let mut ways: Vec<BTreeMap<Settings, u64>> = vec![BTreeMap::new(); all];
        for (mask, known) in ways.iter_mut().enumerate().skip(1) {
            let chosen: Vec<usize> =
                (0..singles.len()).filter(|bit| mask >> bit & 1 == 1).map(|b| singles[b]).collect();
            let mut own = job.clone();
            for (at, part) in own.parts.iter_mut().enumerate() {
                let count = chosen.iter().filter(|&&it| it == at).count();
                part.quantity = u32::try_from(count).expect("small");
            }
            for layout in layouts(job, view, &chosen) {
                let board = CutBoard { source, layout };
                let plan =
                    Plan { boards: vec![board], left_out: vec![], cost_cents: view.price_cents };
                if check_plan(&own, &plan, CheckOptions::default()).is_err() {
                    continue;
                }
                let Effort { settings, cuts } = plan.effort(job).expect("a plan");
                let least = known.entry(settings).or_insert(cuts);
                *least = cuts.min(*least);
            }
        }
        let copies = view.limit.map_or(singles.len(), |limit| limit as usize);
        for _ in 0..copies.min(singles.len()) {
            let before = best.clone();
            for (mask, ways) in ways.iter().enumerate() {
                for (sub, known) in before.iter().enumerate().filter(|(sub, _)| sub & mask == 0) {
                    for (settings, cuts) in ways {
                        for (others, (cost, boards, more)) in known {
                            let new = (cost + view.price_cents, boards + 1, cuts + more);
                            let both = settings.union(others).copied().collect();
                            let least = best[sub | mask].entry(both).or_insert(new);
                            *least = new.min(*least);
                        }
                    }
                }
            }
        }
    }
    let ranked = best.pop()?.into_iter().map(|(settings, it)| (it.0, it.1, settings.len(), it.2));
    ranked.min()
}

/// What was planned, how often each rank was reached, and how often it was proved.
#[derive(Debug, Default)]
struct Seen {
    planned: usize,
    reached: [usize; 3],
    proved: [usize; 3],
}

fn compare(jobs: impl Iterator<Item = Job>) -> Seen {
    let mut seen = Seen::default();
    for job in jobs.filter(|job| job.validate().is_ok()) {
        let (outcome, best) = match (solve(&job, 400_000_000), truth(&job)) {
            (Ok(outcome), Some(best)) => (outcome, best),
            (Err(_), None) => continue,
            (outcome, truth) => panic!("{outcome:?}, but {truth:?}: {job:#?}"),
        };
        let (plan, ties) = (&outcome.plan, outcome.ties);
        let effort = plan.effort(&job).expect("a plan of this job");
        let found = (plan.cost_cents, plan.boards.len(), effort.settings.len(), effort.cuts);
        assert_eq!(found.0, best.0, "{job:#?}");
        assert!(found >= best, "{found:?} ranks before {best:?}: {job:#?}");
        // What is said to be proved is so, and nothing is said of a rank before the rank above it.
        assert!(!ties.fewest_boards || found.1 == best.1, "{found:?} {best:?} {job:#?}");
        let is_so = (found.0, found.1, found.2) == (best.0, best.1, best.2);
        assert!(!ties.fewest_settings || is_so, "{found:?} {best:?} {job:#?} {plan:#?}");
        assert!(!ties.fewest_cuts || found == best, "{found:?} {best:?} {job:#?} {plan:#?}");
        assert!(ties.fewest_boards || !ties.fewest_settings);
        assert!(ties.fewest_settings || !ties.fewest_cuts);
        assert!(ties.fewest_cuts || !ties.longest_offcut);
        seen.planned += 1;
        for (at, (is_reached, is_proved)) in [
            (found.1 == best.1, ties.fewest_boards),
            (is_so, ties.fewest_settings),
            (found == best, ties.fewest_cuts),
        ]
        .into_iter()
        .enumerate()
        {
            seen.reached[at] += usize::from(is_reached);
            seen.proved[at] += usize::from(is_proved);
        }
    }
    seen
}

#[test]
fn ripped_jobs_have_the_fewest_settings_and_cuts_that_trying_everything_finds() {
    let mut dice = Dice(17);
    let seen = compare((0..1_500).map(|_| ripped(&mut dice, 4)));
    println!("{seen:?}");
    assert_eq!(seen.reached[0], seen.planned);
    assert!(seen.planned > 700 && seen.proved[0] > 700, "{seen:?}");
    assert!(seen.reached[1] == seen.planned && seen.proved[1] > 700, "{seen:?}");
    assert!(seen.reached[2] + 10 > seen.planned && seen.proved[2] > 150, "{seen:?}");
}

#[test]
fn straight_jobs_have_the_fewest_cuts_that_trying_everything_finds() {
    let mut dice = Dice(19);
    let seen = compare((0..600).map(|_| straight(&mut dice, 4)));
    println!("{seen:?}");
    assert!(seen.planned > 500 && seen.proved[1] == seen.planned, "{seen:?}");
    assert!(seen.reached[2] > 500 && seen.proved[2] > 300, "{seen:?}");
}

fn piece(name: &str, section: &str, length: i64, quantity: u32) -> Part {
    Part { section: section.into(), ..part(name.into(), length, quantity) }
}

fn board(section: &str, length: i64, price_cents: i64) -> Board {
    Board {
        id: format!("{section} x {length}"),
        section: section.into(),
        length,
        price_cents,
        limit: None,
        trims: Ends::default(),
        knots: vec![],
    }
}

/// Sections named by their width, all of one thickness; kerfs of 1, clean edges.
fn job(parts: Vec<Part>, boards: Vec<Board>, near_edge: i64, crosscut_first: bool) -> Job {
    let section = |width: i64| Section {
        id: format!("w{width}"),
        wood: "fir".into(),
        size: Some(CrossSize { width, thickness: 2 }),
    };
    let rip = RipRules {
        kerf: 1,
        near_edge,
        far_edge: 0,
        least_width: 1,
        least_length: 0,
        crosscut_first,
        resaw: None,
    };
    let sections = (1..12).map(section).collect();
    Job { sections, parts, boards, scraps: vec![], saw: SawRules { kerf: 1, rip: Some(rip) } }
}

/// Boards, settings, cuts and the longest offcut.
fn found(job: &Job) -> ((usize, usize, u64, i64), Ties) {
    let outcome = solve(job, 400_000_000).expect("a plan");
    let effort = outcome.plan.effort(job).expect("a plan of this job");
    let offcut = outcome.plan.offcuts(job).first().map_or(0, |offcut| offcut.length);
    ((outcome.plan.boards.len(), effort.settings.len(), effort.cuts, offcut), outcome.ties)
}

/// The wide board comes first in the yard's list and costs as much: ripped, it takes a fence beside the stop.
#[test]
fn a_board_that_need_not_be_ripped_is_taken_at_the_same_price() {
    let boards = vec![board("w7", 24, 500), board("w4", 24, 500)];
    let job = job(vec![piece("rail", "w4", 20, 1)], boards, 0, false);
    let (plan, ties) = found(&job);
    assert_eq!(plan, (1, 1, 1, 3));
    assert!(ties.fewest_boards && ties.fewest_settings && ties.fewest_cuts);
}

/// Four of 4 by 20 from 9 by 45. As two strips (4 + 1 + 4 = 9, so the second is what is left): one rip, four crosscuts.
/// As two blocks of 20, each with one rip: four cuts.
#[test]
fn two_blocks_take_a_cut_less_than_two_strips() {
    let parts = || vec![piece("slat", "w4", 20, 4)];
    let boards = || vec![board("w9", 45, 900)];
    let (strips, ties) = found(&job(parts(), boards(), 0, false));
    assert_eq!((strips.1, strips.2), (2, 5));
    assert!(ties.fewest_settings);
    let (blocks, _) = found(&job(parts(), boards(), 0, true));
    assert_eq!((blocks.1, blocks.2), (2, 4));
}

/// Three of 3 by 10 from 10 by 32, the edge cleaned: as three strips an edge, two rips and three crosscuts (1 + 3 + 1 + 3 +
/// 1 + 3 = 12 would not even fit: two strips at most). As one strip, 10 + 1 + 10 + 1 + 10 = 32: an edge, a rip, two crosscuts.
#[test]
fn one_strip_takes_fewer_cuts_than_two() {
    let job = job(vec![piece("slat", "w3", 10, 3)], vec![board("w10", 32, 700)], 1, false);
    assert_eq!(found(&job).0, (1, 2, 4, 0));
}

/// 3 by 30 and 3 by 10 from 7 by 45: from one strip, one rip and two crosscuts, and 45 - 30 - 1 - 10 - 1 = 3 is left. From
/// both strips (3 + 1 + 3 = 7), as many cuts, and beside the short part 45 - 10 - 1 = 34.
#[test]
fn of_as_many_cuts_the_longest_offcut_is_left() {
    let parts = vec![piece("leg", "w3", 30, 1), piece("peg", "w3", 10, 1)];
    let job = job(parts, vec![board("w7", 45, 700)], 0, false);
    assert_eq!(found(&job).0, (1, 3, 3, 34));
}
