//! Which parts a question of the frame or the top has, or a dowel, and where their sizes come from.

use crate::calculators::dowel::fields as dowel;
use crate::calculators::frame::fields as frame;
use crate::calculators::top::fields as top;
use crate::measure::Length;
use crate::sheet::{Ask, Choice};

/// Where a size of a made part comes from: the id of a result or of a field, and which one of a
/// list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Taken(pub(super) &'static str, pub(super) u32);

/// How many pieces a made part has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum HowMany {
    /// So many, to begin with; the user may change it.
    Text(&'static str),
    /// As many as a field says, or as it lists.
    Of(Taken),
    /// As many as a field lists, without the outer two.
    WithoutOuter(Taken),
}

/// One part of a reckoning.
#[derive(Clone, Debug)]
pub(super) struct Plan {
    /// Which part of the reckoning, and what it is called.
    pub(super) what: String,
    pub(super) quantity: HowMany,
    pub(super) thickness: Option<Taken>,
    pub(super) width: Option<Taken>,
    pub(super) length: Option<Taken>,
    /// As thick as this, and cut from a round rod of that size where one is known.
    pub(super) round: Option<Length>,
}

impl Plan {
    fn new(what: &str, quantity: &'static str) -> Plan {
        Plan {
            what: what.to_owned(),
            quantity: HowMany::Text(quantity),
            thickness: None,
            width: None,
            length: None,
            round: None,
        }
    }

    fn thick(self, id: &'static str) -> Plan {
        Plan { thickness: Some(Taken(id, 0)), ..self }
    }

    fn wide(self, id: &'static str, index: u32) -> Plan {
        Plan { width: Some(Taken(id, index)), ..self }
    }

    fn long(self, id: &'static str) -> Plan {
        Plan { length: Some(Taken(id, 0)), ..self }
    }
}

/// The parts of the frame's questions. A question about one joint or about squareness has none.
pub(super) fn of_frame(ask: &mut Ask) -> Vec<Plan> {
    match ask.choice(&frame::QUESTION) {
        frame::RAIL_BETWEEN_LEGS => {
            let (leg, rail) = match ask.choice(&frame::FIND) {
                frame::FIND_LEGS => (frame::LEG_EACH.id, frame::RAIL.id),
                frame::FIND_OVERALL => (frame::LEG_LEFT.id, frame::RAIL.id),
                _ => (frame::LEG_LEFT.id, frame::RAIL_CUT.id),
            };
            let has_right = leg == frame::LEG_LEFT.id
                && ask.optional_length(&frame::LEG_RIGHT).flatten().is_some();
            let legs = if has_right {
                vec![
                    Plan::new("left leg", "1").wide(leg, 0),
                    Plan::new("right leg", "1").wide(frame::LEG_RIGHT.id, 0),
                ]
            } else {
                vec![Plan::new("leg", "2").wide(leg, 0)]
            };
            legs.into_iter().chain([Plan::new("rail", "1").long(rail)]).collect()
        }
        frame::SPACER => vec![Plan::new("spacer block", "2").thick(frame::SPACER_BLOCK.id)],
        frame::STRETCHER => {
            let mut plans = vec![
                Plan::new("leg", "2").long(frame::LEG_LENGTH.id),
                Plan::new("stretcher", "1").wide(frame::STRETCHER_WIDTH.id, 0),
            ];
            if ask.length(&frame::APRON_WIDTH).is_some_and(|width| width.is_positive()) {
                plans.push(Plan::new("apron", "1").wide(frame::APRON_WIDTH.id, 0));
            }
            let block = Plan::new("block under the stretcher", "2");
            plans.push(block.long(frame::FLOOR_BLOCK.id));
            plans
        }
        frame::SUPPORT => {
            let quantity = HowMany::Of(Taken(frame::SUPPORTS.id, 0));
            let support = Plan { quantity, ..Plan::new("support", "1") };
            vec![support.thick(frame::SUPPORT_THICKNESS.id).long(frame::SUPPORT_CUT.id)]
        }
        frame::LAP => vec![
            Plan::new("front piece", "1").thick(frame::FRONT_THICKNESS.id),
            Plan::new("rear piece", "1").thick(frame::REAR_THICKNESS.id),
        ],
        _ => Vec::new(),
    }
}

/// The parts of the top's questions. Slots and tipping have none.
pub(super) fn of_top(ask: &mut Ask) -> Vec<Plan> {
    match ask.choice(&top::QUESTION) {
        top::PLANKS_AND_GAPS => {
            let find = ask.choice(&top::FIND);
            planks(ask, Some(find))
        }
        top::TODAY_AND_LATER => planks(ask, None),
        top::OVERHANG => {
            let (length, width) = match ask.choice(&top::OVERHANG_FIND) {
                top::TOP_SIZE => (top::TOP_SIZE_LENGTH.id, top::TOP_SIZE_WIDTH.id),
                _ => (top::TOP_LENGTH.id, top::TOP_ACROSS.id),
            };
            vec![Plan::new("top", "1").wide(width, 0).long(length)]
        }
        _ => Vec::new(),
    }
}

/// The one dowel of a dowel. Where no rod of its size is known it is as thick as it was measured.
pub(super) fn of_dowel(ask: &mut Ask) -> Vec<Plan> {
    let thick = ask.length(&dowel::DOWEL);
    let wide = ask.optional_length(&dowel::ACROSS).flatten();
    let width = if wide.is_some() { dowel::ACROSS.id } else { dowel::DOWEL.id };
    let one = Plan::new("dowel", "1").thick(dowel::DOWEL.id).wide(width, 0).long(dowel::CUT.id);
    vec![Plan { round: thick.max(wide), ..one }]
}

/// The planks of a top, ripped by what is found or as they were measured.
fn planks(ask: &mut Ask, find: Option<Choice>) -> Vec<Plan> {
    const LISTED: Taken = Taken(top::PLANKS.id, 0);
    let widths = ask.lengths(&top::PLANKS).unwrap_or_default();
    let plank = Plan { quantity: HowMany::Of(LISTED), ..Plan::new("plank", "1") };
    let outer = || Plan::new("outer plank", "2").wide(top::OUTER_WIDTH.id, 0);
    match find {
        Some(top::RIP_ALL) => vec![plank.wide(top::PLANK_WIDTH.id, 0)],
        Some(top::RIP_OUTER) if widths.len() > 2 => {
            let quantity = HowMany::WithoutOuter(LISTED);
            let inner = Plan { quantity, ..Plan::new("inner plank", "1") };
            vec![outer(), inner.wide(top::PLANKS.id, 1)]
        }
        Some(top::RIP_OUTER) => vec![outer()],
        _ if widths.iter().all(|width| Some(width) == widths.first()) => {
            vec![plank.wide(top::PLANKS.id, 0)]
        }
        // Each as it was measured, by its number in the drawing.
        _ => (0..)
            .zip(1..=widths.len())
            .map(|(index, n)| Plan::new(&format!("plank {n}"), "1").wide(top::PLANKS.id, index))
            .collect(),
    }
}
