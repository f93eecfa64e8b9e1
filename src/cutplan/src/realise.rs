//! From patterns back to a plan: every part in its place, pushed towards the left end and the near edge. Our own; it decides
//! nothing.

use std::rc::Rc;

use reckoner_core::cutting::{
    Block, CutBoard, Job, Layer, Layout, LeftOut, Placed, Plan, Source, StockView, Strip, Units,
};

use crate::model::{Make, Model, Pattern};

/// The patterns of every model, as one plan of the whole job. Parts that patterns cover more often than wanted are
/// cut only as often as wanted; boards from which nothing is cut then are not bought.
pub(crate) fn plan(job: &Job, solved: &[(&Model, &[Rc<Pattern>])]) -> Plan {
    let stock: Vec<StockView<'_>> = job.stock().collect();
    let mut plan = Plan::default();
    for (model, patterns) in solved {
        // Parts of one item are handed out in the job's order.
        let mut queue: Vec<Vec<(usize, u32)>> =
            model.items.iter().map(|item| item.parts.clone()).collect();
        for list in &mut queue {
            list.reverse();
        }
        let mut left = model.demands();
        for pattern in patterns.iter().filter(|p| model.stocks[p.stock].out.is_none()) {
            let kept = model.take(pattern, &mut left);
            if kept.counts.is_empty() {
                continue;
            }
            let number = model.stocks[kept.stock].number;
            if let Some(view) = stock.get(number) {
                let layout = layout(job, model, &kept, *view, &mut queue);
                let source = if number < job.boards.len() {
                    Source::Board(number)
                } else {
                    Source::Scrap(number - job.boards.len())
                };
                plan.boards.push(CutBoard { source, layout });
            }
        }
        for (part, quantity) in queue.into_iter().flatten() {
            plan.left_out.push(LeftOut { part, quantity });
        }
    }
    plan.boards.sort_by_key(|cut| cut.source);
    plan.left_out.sort_by_key(|left| left.part);
    plan.cost_cents = plan.price(job).unwrap_or(0);
    plan
}

fn next(queue: &mut Vec<(usize, u32)>) -> Option<usize> {
    let last = queue.last_mut()?;
    let part = last.0;
    last.1 -= 1;
    if last.1 == 0 {
        queue.pop();
    }
    Some(part)
}

/// Parts in a row from `start`.
fn row(
    model: &Model,
    pattern: &Pattern,
    bin: usize,
    start: Units,
    queue: &mut [Vec<(usize, u32)>],
) -> Vec<Placed> {
    let kind = &model.kinds[pattern.form.bins[bin].kind];
    let mut ways = pattern.fill[bin].clone();
    ways.sort_unstable();
    let mut at = start;
    let mut placed = Vec::new();
    for (way, count) in ways {
        let way = kind.ways[way];
        for _ in 0..count {
            if let Some(part) = next(&mut queue[way.item]) {
                placed.push(Placed { part, at, turned: way.turned });
            }
            at += way.weight;
        }
    }
    placed
}

fn layout(
    job: &Job,
    model: &Model,
    pattern: &Pattern,
    view: StockView<'_>,
    queue: &mut [Vec<(usize, u32)>],
) -> Layout {
    let kerf = job.saw.kerf;
    let starts: Vec<Units> = view.segments(kerf).iter().map(|segment| segment.0).collect();
    let bins = &pattern.form.bins;
    let start_of = |bin: usize| starts.get(bins[bin].segment).copied().unwrap_or(0);
    match &pattern.form.make {
        Make::Crosscut => {
            let mut parts = Vec::new();
            for bin in 0..bins.len() {
                parts.extend(row(model, pattern, bin, start_of(bin), queue));
            }
            Layout::Crosscut(parts)
        }
        Make::Strips(makes, ripped) => {
            let rip = job.saw.rip.as_ref();
            let resaw = rip.and_then(|rip| rip.resaw.as_ref());
            let rip_kerf = rip.map_or(0, |rip| rip.kerf);
            let mut at = if *ripped { rip.map_or(0, |rip| rip.near_edge) } else { 0 };
            let mut strips = Vec::new();
            for (piece, make) in makes.iter().enumerate() {
                let mut deep = match resaw {
                    Some(resaw) if make.resawn => resaw.near_face,
                    _ => 0,
                };
                let mut layers = Vec::new();
                for (layer, &thickness) in make.layers.iter().enumerate() {
                    let mut parts = Vec::new();
                    let mine = |bin: &usize| bins[*bin].piece == piece && bins[*bin].layer == layer;
                    for bin in (0..bins.len()).filter(mine) {
                        parts.extend(row(model, pattern, bin, start_of(bin), queue));
                    }
                    if !parts.is_empty() {
                        layers.push(Layer { at: deep, thickness, parts });
                        deep += thickness + resaw.map_or(0, |resaw| resaw.kerf);
                    }
                }
                if !layers.is_empty() {
                    strips.push(Strip { at, width: make.width, layers });
                    at += make.width + rip_kerf;
                }
            }
            plain_if_possible(job, view, strips)
        }
        Make::Blocks(makes) => {
            let rip = job.saw.rip.as_ref();
            let mut next_at = starts.clone();
            let mut blocks = Vec::new();
            for (piece, make) in makes.iter().enumerate() {
                let edge = if make.whole { 0 } else { rip.map_or(0, |rip| rip.near_edge) };
                let mut parts = Vec::new();
                for bin in (0..bins.len()).filter(|&bin| bins[bin].piece == piece) {
                    parts.extend(row(model, pattern, bin, edge, queue));
                }
                if let Some(at) = next_at.get_mut(make.segment).filter(|_| !parts.is_empty()) {
                    blocks.push(Block { at: *at, length: make.length, parts });
                    *at += make.length + kerf;
                }
            }
            blocks.sort_by_key(|block| block.at);
            Layout::CrosscutFirst(blocks)
        }
    }
}

/// A single whole strip of one layer with parts of the board's own section is just a crosscut board.
fn plain_if_possible(job: &Job, view: StockView<'_>, strips: Vec<Strip>) -> Layout {
    let size = job.section(view.section).and_then(|section| section.size);
    if let ([strip], Some(size)) = (strips.as_slice(), size)
        && let [layer] = strip.layers.as_slice()
        && strip.at == 0
        && strip.width == size.width
        && layer.at == 0
        && layer.thickness == size.thickness
        && layer
            .parts
            .iter()
            .all(|p| !p.turned && job.parts.get(p.part).is_some_and(|q| q.section == view.section))
    {
        return Layout::Crosscut(layer.parts.clone());
    }
    Layout::RipFirst(strips)
}
