//! The worked examples of stages 5 and 12 as jobs: what is measured moves the rest, and cuts that
//! share a setting are made together. Source: [WH] J1, J3, J4 and G2.

use reckoner_core::attention::attention;
use reckoner_core::build_order::{Stage, build_order};
use reckoner_core::job::{Item, Job, Measure, Part, Reckoned, Step};
use reckoner_core::measure::Length;
use reckoner_core::sheet::Bench;

use crate::items::{inches, job, kept, planned, result, value};

fn measure(job: &mut Job, name: &str, tape: &str) {
    let (id, old) = job.measures().into_iter().find(|(_, m)| m.name == name).expect("this name");
    let new = Measure { as_cut: Some(tape.to_owned()), ..old.clone() };
    job.make(&Step::new("measure", vec![job.replacing(id, Item::Measure(new))])).expect("no other");
}

#[test]
fn j1_the_rail_or_the_overall_gives_way_to_legs_cut_thin() {
    let rail = |find: &[(&str, &str)]| kept("Frame", "frame", find);
    let mut overall_kept = job(vec![
        rail(&[("overall", "overall"), ("leg_left", "leg")]),
        planned("overall", "44"),
        planned("leg", "3 1/2"),
        result("rail", 1, "rail_cut"),
    ]);
    assert_eq!(value(&overall_kept, "rail"), inches("37"));
    measure(&mut overall_kept, "leg", "3 7/16");
    assert_eq!(value(&overall_kept, "rail"), inches("37 1/8"));

    let mut rails_cut = job(vec![
        rail(&[("find", "overall"), ("rail", "rail"), ("leg_left", "leg")]),
        planned("rail", "37"),
        planned("leg", "3 1/2"),
        result("overall", 1, "overall_length"),
    ]);
    assert_eq!(value(&rails_cut, "overall"), inches("44"));
    measure(&mut rails_cut, "leg", "3 7/16");
    assert_eq!(value(&rails_cut, "overall"), inches("43 7/8"));
}

#[test]
fn j3_the_spacer_follows_what_was_dressed() {
    let spacer = |lay: &str| {
        let entries = [
            ("question", "spacer"),
            ("lay", lay),
            ("leg", "leg"),
            ("rail_thickness", "rail"),
            ("set_back", "set-back"),
        ];
        let asked = if lay == "centred" { &entries[..4] } else { &entries[..] };
        let mut job = job(vec![
            kept("Frame", "frame", asked),
            planned("leg", "3 1/2"),
            planned("rail", "1 1/2"),
            planned("set-back", "3/4"),
            result("block", 1, "spacer_block"),
        ]);
        let at_first = value(&job, "block");
        measure(&mut job, "leg", "3 1/4");
        measure(&mut job, "rail", "1 7/16");
        (at_first, value(&job, "block"))
    };
    assert_eq!(spacer("outside").0, inches("3/4"));
    assert_eq!(spacer("inside").0, inches("1 1/4"));
    assert_eq!(spacer("centred"), (inches("1"), inches("29/32")));
}

#[test]
fn j4_the_dowel_is_measured_on_the_built_frame() {
    let mut job = job(vec![
        kept(
            "Dowel",
            "dowel",
            &[("overall", "over both frames"), ("left_part", "1 1/2"), ("trim", "1/4")],
        ),
        planned("over both frames", "38"),
        result("dowel", 1, "cut"),
    ]);
    assert_eq!(value(&job, "dowel"), inches("38 1/2"));
    measure(&mut job, "over both frames", "38 3/16");
    assert_eq!(value(&job, "dowel"), inches("38 11/16"));
}

#[test]
fn g2_widths_that_are_sizes_of_the_job_share_their_settings() {
    let strip = |name: &str, quantity: &str, width: &str| {
        Item::Part(Part { may_rip: true, ..Part::new(name, quantity, ["3/4", width, "20"]) })
    };
    let mut job = job(vec![
        planned("slat", "2 3/4"),
        strip("batten", "4", "1 1/2"),
        strip("rail", "8", "slat + 3/4"),
        strip("slat", "6", "slat"),
    ]);
    let settings = |job: &Job| -> Vec<(Length, u32)> {
        let bench = Bench::default();
        let reckoned = Reckoned::of(job, &bench);
        let found = attention(job, &reckoned, &bench);
        let order = build_order(job, &reckoned, &bench, &found);
        let rips = order.steps.iter().filter(|step| step.stage == Stage::Rip);
        rips.filter_map(|step| Some((step.setting?, step.many()))).collect()
    };
    let widest_first = [(inches("3 1/2"), 8), (inches("2 3/4"), 6), (inches("1 1/2"), 4)];
    assert_eq!(settings(&job), widest_first);
    // The slats come out as wide as the battens: one setting fewer.
    measure(&mut job, "slat", "1 1/2");
    assert_eq!(settings(&job), [(inches("2 1/4"), 8), (inches("1 1/2"), 10)]);
}
