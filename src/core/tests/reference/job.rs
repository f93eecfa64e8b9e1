//! The worked examples of stages 5 and 12 as jobs: what is measured moves the rest, and cuts that
//! share a setting are made together. Source: [WH] J1, J3, J4 and G2.

use reckoner_core::job::{
    Item, ItemId, Job, Kept, Linked, Measure, MeasureKind, MeasureState, Part, Reckoned, Setting,
    Step, Written, batches, part_sizes,
};
use reckoner_core::measure::{Length, Unit, length};
use reckoner_core::sheet::Bench;

fn inches(text: &str) -> Length {
    length(text).expect("a length in a test")
}

fn size(name: &str, written: Written) -> Item {
    Item::Measure(Measure {
        rank: 0,
        name: name.to_owned(),
        kind: MeasureKind::Length,
        written,
        as_cut: None,
        is_cut: false,
        wait: false,
        note: String::new(),
        left: None,
    })
}

fn planned(name: &str, formula: &str) -> Item {
    size(name, Written::Formula(formula.to_owned()))
}

/// A size that is the result of the reckoning with this id.
fn result(name: &str, kept: u64, result: &str) -> Item {
    let linked = Linked { kept: ItemId(kept), result: result.to_owned(), index: 0 };
    size(name, Written::Linked(linked))
}

fn kept(slug: &str, entries: &[(&str, &str)]) -> Item {
    let entries = entries.iter().map(|(id, text)| ((*id).to_owned(), (*text).to_owned()));
    let (title, slug) = (slug.to_owned(), slug.to_owned());
    Item::Kept(Kept { rank: 0, title, slug, entries: entries.collect() })
}

/// A job of these items; their ids count from 1.
fn job(items: Vec<Item>) -> Job {
    let mut job = Job::new("worked example", Unit::Inch);
    let changes = (0..).zip(items).map(|(offset, item)| job.adding(offset, item)).collect();
    job.make(&Step::new("begin", changes)).expect("a fresh job");
    job
}

fn measure(job: &mut Job, name: &str, tape: &str) {
    let (id, old) = job.measures().into_iter().find(|(_, m)| m.name == name).expect("this name");
    let new = Measure { as_cut: Some(tape.to_owned()), ..old.clone() };
    job.make(&Step::new("measure", vec![job.replacing(id, Item::Measure(new))])).expect("no other");
}

fn value(job: &Job, name: &str) -> Length {
    let reckoned = Reckoned::of(job, &Bench::default());
    let state = reckoned.named(name).and_then(|id| reckoned.measure(id));
    state.and_then(MeasureState::length).unwrap_or_else(|| panic!("{name} has no length"))
}

#[test]
fn j1_the_rail_or_the_overall_gives_way_to_legs_cut_thin() {
    let rail = |find: &[(&str, &str)]| kept("frame", find);
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
            kept("frame", asked),
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
        kept("dowel", &[("overall", "over both frames"), ("left_part", "1 1/2"), ("trim", "1/4")]),
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
    let settings = |job: &Job| -> Vec<(Length, u32, u32)> {
        let reckoned = Reckoned::of(job, &Bench::default());
        let list = batches(&part_sizes(job, &reckoned), Setting::RipWidth);
        list.iter().map(|batch| (batch.size, batch.pieces, batch.spares)).collect()
    };
    let widest_first = [(inches("3 1/2"), 8, 1), (inches("2 3/4"), 6, 1), (inches("1 1/2"), 4, 1)];
    assert_eq!(settings(&job), widest_first);
    // The slats come out as wide as the battens: one setting fewer.
    measure(&mut job, "slat", "1 1/2");
    assert_eq!(settings(&job), [(inches("2 1/4"), 8, 1), (inches("1 1/2"), 10, 1)]);
}
