//! Which answer carries which caution.
//!
//! [`DANGERS`] says what each act brings; here each answer is held against what its words and
//! figures show is done, over all sets of choices and random entries.

use reckoner_core::attention::attention;
use reckoner_core::build_order::{Stage, build_order};
use reckoner_core::calculators::{self, Calculator};
use reckoner_core::job::demo::demo;
use reckoner_core::job::{Item, Job, Part, Reckoned, Step};
use reckoner_core::measure::text::NoNames;
use reckoner_core::measure::{Tape, length};
use reckoner_core::planning::demo::demo_in_work;
use reckoner_core::planning::quick_list::{QUICK_LIST, quick_list};
use reckoner_core::planning::report::{How, report};
use reckoner_core::sheet::{Act, Answer, Ask, Bench, Caution, DANGERS, Entries, Value};

use crate::entries;

/// Calculators and questions by what is done to carry the answer out; the first line that fits.
///
/// Slug, field and its answer (empty for any), and what is done whatever is asked besides.
const DONE: [(&str, &str, &str, &[Act]); 35] = [
    ("resaw-rip", "question", "guide", &[Act::SawByHand]),
    ("resaw-rip", "", "", &[Act::Rip]),
    ("crosscut", "", "", &[Act::SawAtStop]),
    ("dowel", "", "", &[Act::Drill, Act::Saw]),
    ("curve", "mode", "rim", &[]),
    ("curve", "", "", &[Act::Saw]),
    ("angles", "", "", &[Act::Saw]),
    ("screws", "question", "length", &[Act::Drill, Act::Fasten]),
    ("screws", "question", "pilot", &[Act::Drill, Act::Fasten]),
    ("screws", "question", "placing", &[Act::Drill]),
    ("screws", "question", "pocket", &[Act::Drill, Act::Fasten]),
    ("screws", "question", "toe", &[Act::Drill, Act::Fasten]),
    ("screws", "question", "corner", &[Act::Drill]),
    ("screws", "question", "hold", &[Act::Load, Act::Fasten]),
    ("screws", "question", "buy", &[Act::Fasten]),
    ("spacing", "mode", "slats_near", &[]),
    ("spacing", "mode", "slats", &[]),
    ("spacing", "", "", &[Act::Drill]),
    ("top", "question", "slot", &[Act::Drill]),
    ("top", "question", "tip", &[Act::Load]),
    ("top", "question", "overhang", &[]),
    ("top", "question", "season", &[]),
    // Of the planks, what is to be found.
    ("top", "find", "rip_all", &[Act::Rip]),
    ("top", "find", "rip_outer", &[Act::Rip]),
    ("top", "", "", &[Act::Handle]),
    ("moisture", "ask", "board", &[Act::Handle]),
    ("moisture", "ask", "gap", &[Act::Handle]),
    ("strength", "", "", &[Act::Load]),
    ("finish", "", "", &[Act::Finish]),
    ("frame", "question", "rail", &[Act::Saw]),
    ("frame", "question", "lap", &[Act::Saw]),
    ("frame", "question", "spacer", &[Act::Saw]),
    ("frame", "question", "stretcher", &[Act::SawAtStop]),
    ("frame", "question", "support", &[Act::Saw]),
    ("frame", "question", "tenon", &[Act::Drill, Act::Saw]),
];

/// What a cut plan has one do, whatever is in it: it lists a stop for every length.
const CUT_PLAN: &[Act] = &[Act::SawAtStop];

fn done(calculator: &Calculator, entries: &Entries) -> &'static [Act] {
    let chosen = |field: &str| {
        let field = calculator.fields.iter().find(|it| it.id == field)?;
        let bench = Bench::default();
        Some(
            entries
                .text(field.id)
                .map_or_else(|| field.start_text(&bench, bench.tape.unit()), str::to_owned),
        )
    };
    let fits = |(slug, field, answer, _): &&(&str, &str, &str, &[Act])| {
        *slug == calculator.slug && (field.is_empty() || chosen(field).as_deref() == Some(*answer))
    };
    DONE.iter().find(fits).map_or(&[], |(.., acts)| acts)
}

fn tilts(answer: &Answer) -> bool {
    let all = core::iter::once(&answer.headline).chain(&answer.figures);
    let mut tilts = all.filter(|figure| figure.id == "tilt").map(|figure| &figure.value);
    tilts.any(|value| matches!(value, Value::Real(tilt, ..) if tilt.abs() >= 0.005))
}

fn check(calculator: &Calculator, entries: &Entries, answer: &Answer) {
    let (slug, cautions) = (calculator.slug, &answer.cautions);
    let has = |caution| cautions.contains(&caution);
    for caution in Caution::of(done(calculator, entries)) {
        assert!(has(caution), "{slug}: no {caution:?} in {cautions:?} of {entries:?}");
    }
    assert!(cautions.is_sorted(), "{slug}: {cautions:?}");
    // What is planned at the fence is not warned of as trapped there.
    assert!(!(has(Caution::ThinStrip) && has(Caution::StripAtFence)), "{slug}: {entries:?}");
    assert_eq!(has(Caution::TiltedCut), tilts(answer), "{slug}: {entries:?}");
    // Said here once more, so that the table cannot lose it.
    let saws = [Act::Rip, Act::SawByHand, Act::Saw, Act::SawAtStop, Act::SawTilted];
    if done(calculator, entries).iter().any(|act| saws.contains(act)) {
        for caution in [Caution::DustAndNoise, Caution::TreatedWood, Caution::Reclaimed] {
            assert!(has(caution), "{slug}: no {caution:?} where wood is sawn: {entries:?}");
        }
    }
    // Wherever wood is sawn there is its dust, what is in it and what is left in it.
    let is_sawn = has(Caution::Reclaimed);
    let saws = [Caution::Ripping, Caution::HandSaw, Caution::TiltedCut, Caution::StopBlock];
    assert!(is_sawn || !saws.into_iter().any(has), "{slug}: {cautions:?}");
    assert!(!is_sawn || (has(Caution::DustAndNoise) && has(Caution::TreatedWood)), "{slug}");
}

/// Of the entries that the law of the working takes, every so many: enough for each set of choices.
const ONE_IN: usize = 5;
/// Answers of a calculator that are judged at the least.
const LEAST: usize = 100;

#[test]
fn every_answer_carries_the_cautions_of_what_it_has_one_do() {
    let mut seen = Vec::new();
    for calculator in calculators::ALL {
        let mut judged = 0;
        for (entries, tape) in entries::of(calculator).into_iter().step_by(ONE_IN) {
            let bench = Bench { tape, ..Bench::default() };
            let Some(answer) = calculator.sheet(&entries, &bench, &NoNames).answer else {
                continue;
            };
            check(calculator, &entries, &answer);
            seen.extend(answer.cautions);
            judged += 1;
        }
        assert!(judged >= LEAST, "{}: only {judged} answers", calculator.slug);
    }
    // No line of the table is dead.
    for (act, cautions) in DANGERS {
        for caution in cautions {
            assert!(seen.contains(caution), "{act:?}: no answer carries {caution:?}");
        }
    }
}

/// What the work of a step has one do, whatever is cut.
fn done_in_step(stage: Stage) -> &'static [Act] {
    match stage {
        Stage::Resaw | Stage::ResawStrips => &[Act::Rip, Act::SawDeep],
        Stage::Rip | Stage::RipBlocks => &[Act::Rip],
        Stage::Rough | Stage::Crosscut | Stage::CrosscutMeasured => &[Act::SawAtStop],
        _ => &[],
    }
}

/// How many steps of a job saw; each carries its cautions.
fn check_steps(job: &Job) -> usize {
    let bench = Bench::default();
    let reckoned = Reckoned::of(job, &bench);
    let order = build_order(job, &reckoned, &bench, &attention(job, &reckoned, &bench));
    let mut seen = 0;
    // What is cut is told of no more.
    for step in order.steps.iter().filter(|step| !step.is_done) {
        let acts = done_in_step(step.stage);
        for caution in Caution::of(acts) {
            assert!(step.cautions.contains(&caution), "no {caution:?} in {step:?}");
        }
        // Said here once more, so that the table cannot lose it.
        if !acts.is_empty() {
            for caution in [Caution::DustAndNoise, Caution::TreatedWood, Caution::Reclaimed] {
                assert!(step.cautions.contains(&caution), "no {caution:?} in {step:?}");
            }
            seen += 1;
        }
        // What a reckoning has one do is told in its step.
        let about = step.about.and_then(|id| reckoned.kept(id));
        if let Some(answer) = about.and_then(|sheet| sheet.answer.as_ref()) {
            for caution in &answer.cautions {
                assert!(step.cautions.contains(caution), "no {caution:?} in {step:?}");
            }
        }
        assert!(step.cautions.is_sorted(), "{step:?}");
    }
    seen
}

/// Our demo as it is planned, and in work; and resawn and ripped parts of no board yet.
#[test]
fn a_step_that_saws_carries_the_cautions_of_its_cut() {
    let mut job = demo();
    let seen = check_steps(&demo_in_work().0) + check_steps(&job);
    assert!(seen > 10, "{seen} steps saw");
    let thin = Item::Part(Part::new("thin slat", "2", ["3/8", "2 1/4", "20"]));
    job.make(&Step::new("", vec![job.adding(0, thin)])).expect("a part");
    check_steps(&job);
}

/// The plan of the demo, and what is said of a list before its plan is found.
#[test]
fn a_cut_plan_carries_the_cautions_of_its_stop_block() {
    let (job, _) = demo_in_work();
    let (kept, _) = job.find_cut_plan(false).and_then(|id| job.cut_plan(id)).expect("a plan");
    let keep_from = length("12").expect("a length");
    let how = How { tape: Tape::SIXTEENTHS, keep_from };
    let report = report(&kept.asked, &kept.plan, &kept.labels, how).expect("a report");
    assert!(!report.batches.is_empty());
    let (entries, bench) = (Entries::default(), Bench::default());
    let mut ask = Ask::new(QUICK_LIST.fields, &entries, &bench, &NoNames);
    let wanted = quick_list(&mut ask).expect("our example");
    for cautions in [report.cautions, wanted.cautions] {
        for caution in Caution::of(CUT_PLAN) {
            assert!(cautions.contains(&caution), "no {caution:?} in {cautions:?}");
        }
    }
}
