//! Which parts a question of the frame or the top has, and where their sizes come from.

use crate::sheet::Ask;

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
}

impl Plan {
    fn new(what: &str, quantity: &'static str) -> Plan {
        Plan {
            what: what.to_owned(),
            quantity: HowMany::Text(quantity),
            thickness: None,
            width: None,
            length: None,
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
    match ask.choice(ask.field("question")).id {
        "rail" => {
            let (leg, rail) = match ask.choice(ask.field("find")).id {
                "leg" => ("leg_each", "rail"),
                "overall" => ("leg_left", "rail"),
                _ => ("leg_left", "rail_cut"),
            };
            let has_right = leg == "leg_left"
                && ask.optional_length(ask.field("leg_right")).flatten().is_some();
            let legs = if has_right {
                vec![
                    Plan::new("left leg", "1").wide("leg_left", 0),
                    Plan::new("right leg", "1").wide("leg_right", 0),
                ]
            } else {
                vec![Plan::new("leg", "2").wide(leg, 0)]
            };
            legs.into_iter().chain([Plan::new("rail", "1").long(rail)]).collect()
        }
        "spacer" => vec![Plan::new("spacer block", "2").thick("spacer_block")],
        "stretcher" => {
            let mut plans = vec![
                Plan::new("leg", "2").long("leg_length"),
                Plan::new("stretcher", "1").wide("stretcher_width", 0),
            ];
            if ask.length(ask.field("apron_width")).is_some_and(|width| width.is_positive()) {
                plans.push(Plan::new("apron", "1").wide("apron_width", 0));
            }
            plans.push(Plan::new("block under the stretcher", "2").long("floor_block"));
            plans
        }
        "support" => {
            let support = Plan::new("support", "1").thick("support_thickness").long("support_cut");
            vec![Plan { quantity: HowMany::Of(Taken("supports", 0)), ..support }]
        }
        "lap" => vec![
            Plan::new("front piece", "1").thick("front_thickness"),
            Plan::new("rear piece", "1").thick("rear_thickness"),
        ],
        _ => Vec::new(),
    }
}

/// The parts of the top's questions. Slots and tipping have none.
pub(super) fn of_top(ask: &mut Ask) -> Vec<Plan> {
    const PLANKS: HowMany = HowMany::Of(Taken("planks", 0));
    match ask.choice(ask.field("question")).id {
        question @ ("planks" | "season") => {
            let widths = ask.lengths(ask.field("planks")).unwrap_or_default();
            let find = if question == "planks" { ask.choice(ask.field("find")).id } else { "" };
            let plank = Plan { quantity: PLANKS, ..Plan::new("plank", "1") };
            match find {
                "rip_all" => vec![plank.wide("plank_width", 0)],
                "rip_outer" if widths.len() > 2 => vec![
                    Plan::new("outer plank", "2").wide("outer_width", 0),
                    Plan {
                        quantity: HowMany::WithoutOuter(Taken("planks", 0)),
                        ..Plan::new("inner plank", "1").wide("planks", 1)
                    },
                ],
                "rip_outer" => vec![Plan::new("outer plank", "2").wide("outer_width", 0)],
                _ if widths.iter().all(|width| Some(width) == widths.first()) => {
                    vec![plank.wide("planks", 0)]
                }
                // Each as it was measured, by its number in the drawing.
                _ => (0..)
                    .zip(1..=widths.len())
                    .map(|(index, n)| Plan::new(&format!("plank {n}"), "1").wide("planks", index))
                    .collect(),
            }
        }
        "overhang" => {
            let (length, width) = match ask.choice(ask.field("overhang_find")).id {
                "top" => ("top_size_length", "top_size_width"),
                _ => ("top_length", "top_across"),
            };
            vec![Plan::new("top", "1").wide(width, 0).long(length)]
        }
        _ => Vec::new(),
    }
}
