//! Small random jobs.

use reckoner_core::cutting::{
    Board, CrossSize, Ends, Job, KnotZone, Part, ResawRules, RipRules, SawRules, Scrap, Section,
};

use crate::support::{Dice, job, part};

fn count(dice: &mut Dice, low: i64, high: i64) -> u32 {
    u32::try_from(dice.roll(low, high)).unwrap()
}

fn knots(dice: &mut Dice, length: i64) -> Vec<KnotZone> {
    let mut zones = Vec::new();
    while dice.one_in(4) {
        let from = dice.roll(0, length - 1);
        zones.push(KnotZone { from, to: (from + dice.roll(0, 4)).min(length) });
    }
    zones
}

fn ends(dice: &mut Dice) -> Ends {
    if dice.one_in(3) {
        Ends { left: dice.roll(0, 2), right: dice.roll(0, 2) }
    } else {
        Ends::default()
    }
}

/// Up to `most` parts, several boards, limits, scraps, trims, knots and a kerf.
pub(crate) fn straight(dice: &mut Dice, most: i64) -> Job {
    let wanted = dice.roll(1, most);
    let mut parts: Vec<Part> = Vec::new();
    for number in 0..wanted {
        match parts.last_mut() {
            Some(last) if dice.one_in(3) => last.quantity += 1,
            _ => parts.push(part(format!("P{number}"), dice.roll(3, 20), 1)),
        }
    }
    let mut boards = Vec::new();
    for number in 0..dice.roll(1, 3) {
        let length = dice.roll(18, 45);
        boards.push(Board {
            id: format!("B{number}"),
            section: "stock".into(),
            length,
            price_cents: if dice.one_in(2) {
                length * 10 + dice.roll(-60, 60)
            } else {
                dice.roll(1, 9)
            },
            limit: if dice.one_in(3) { Some(count(dice, 0, 4)) } else { None },
            trims: ends(dice),
            knots: knots(dice, length),
        });
    }
    let mut scraps = Vec::new();
    while dice.one_in(2) {
        let length = dice.roll(6, 30);
        scraps.push(Scrap {
            id: format!("S{}", scraps.len()),
            section: "stock".into(),
            length,
            quantity: count(dice, 1, 2),
            trims: ends(dice),
            knots: knots(dice, length),
        });
    }
    let kerf = dice.roll(0, 2);
    job(parts, boards, scraps, kerf)
}

/// A few parts in several widths and thicknesses, boards and scraps to rip and perhaps resaw.
pub(crate) fn ripped(dice: &mut Dice, most: i64) -> Job {
    let mut sections = Vec::new();
    for (number, width) in [2, 3, 4, 7, 9].into_iter().enumerate() {
        sections.push(Section {
            id: format!("w{width}"),
            wood: if number == 1 && dice.one_in(4) { "other".into() } else { "any".into() },
            size: Some(CrossSize { width, thickness: if dice.one_in(3) { 2 } else { 5 } }),
        });
    }
    let wanted = dice.roll(1, most);
    let mut parts = Vec::new();
    for number in 0..wanted {
        let section = usize::try_from(dice.roll(0, 2)).unwrap();
        parts.push(Part {
            section: sections[section].id.clone(),
            may_rip: !dice.one_in(6),
            may_resaw: !dice.one_in(4),
            grain_free: dice.one_in(6),
            ..part(format!("P{number}"), dice.roll(3, 14), 1)
        });
    }
    let mut boards = Vec::new();
    for number in 0..dice.roll(2, 4) {
        let section = usize::try_from(dice.roll(0, 4)).unwrap();
        let length = dice.roll(12, 26);
        let width = sections[section].size.unwrap().width;
        boards.push(Board {
            id: format!("B{number}"),
            section: sections[section].id.clone(),
            length,
            price_cents: length * width + dice.roll(0, 40),
            limit: if dice.one_in(4) { Some(count(dice, 1, 2)) } else { None },
            trims: ends(dice),
            knots: knots(dice, length),
        });
    }
    let rip = RipRules {
        kerf: dice.roll(0, 1),
        near_edge: dice.roll(0, 1),
        far_edge: dice.roll(0, 1),
        least_width: dice.roll(0, 3),
        least_length: if dice.one_in(3) { dice.roll(0, 16) } else { 0 },
        crosscut_first: dice.one_in(2),
        resaw: dice.one_in(2).then(|| ResawRules {
            kerf: dice.roll(0, 1),
            near_face: dice.roll(0, 1),
            far_face: 0,
            least_thickness: dice.roll(1, 2),
            greatest_width: dice.one_in(2).then_some(4),
        }),
    };
    let saw = SawRules { kerf: dice.roll(0, 1), rip: (!dice.one_in(8)).then_some(rip) };
    let mut scraps = Vec::new();
    while scraps.len() < 2 && dice.one_in(3) {
        let section = usize::try_from(dice.roll(0, 4)).unwrap();
        let length = dice.roll(6, 18);
        scraps.push(Scrap {
            id: format!("S{}", scraps.len()),
            section: sections[section].id.clone(),
            length,
            quantity: 1,
            trims: ends(dice),
            knots: knots(dice, length),
        });
    }
    Job { sections, parts, boards, scraps, saw }
}
