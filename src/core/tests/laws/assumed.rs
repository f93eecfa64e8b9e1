//! The laws over what answers rest on, over all calculators.
//!
//! An answer does not change when an example is changed that it is not said to rest on; inking
//! all that it rests on changes nothing but that; and what is listed can be seen and inked.

use std::collections::BTreeMap;

use reckoner_core::calculators::{self, Calculator};
use reckoner_core::measure::text::NoNames;
use reckoner_core::measure::{Length, Tape};
use reckoner_core::sheet::{Bench, Entries, Field, Kind, Own, Sheet, Start};

use crate::entries;

/// Each how many of the entries are tried: the laws are the same for all, and this is quick.
const EACH: usize = 12;

/// Answers of each calculator that are judged at the least, in pencil and in ink together.
const FEWEST: usize = 120;

/// The same text for the rest of the run.
fn leak(text: String) -> &'static str {
    Box::leak(text.into_boxed_str())
}

/// Another example in place of ours.
fn other(field: &Field) -> Start {
    let number = |text: &str, most: i64| {
        let number: i64 = text.parse().expect("a start that is a number");
        leak((if number < most { number + 1 } else { number - 1 }).to_string())
    };
    match (field.kind, field.start) {
        (_, Start::Text("") | Start::Question(_) | Start::Without(_)) => field.start,
        (_, Start::Reading) => field.start,
        (_, Start::Kerf | Start::BladeReach | Start::ThinnestStrip | Start::Fence) => field.start,
        (Kind::Choice(choices), Start::Text(text)) => {
            let at = choices.iter().position(|it| it.id == text).expect("one of the choices");
            Start::Text(choices[(at + 1) % choices.len()].id)
        }
        (Kind::YesNo, Start::Text(text)) => Start::Text(if text == "yes" { "no" } else { "yes" }),
        (Kind::Count { most, .. }, Start::Text(text)) => Start::Text(number(text, most.into())),
        (Kind::Number { most, .. }, Start::Text(text)) if !text.contains('.') => {
            Start::Text(number(text, most.into()))
        }
        (Kind::Number { .. }, Start::Text(text)) => Start::Text(leak(format!("{text}1"))),
        (Kind::Strip, Start::Text(text)) => Start::Text(leak(format!("{text} - 1/8"))),
        (_, Start::Text(text)) => Start::Text(leak(format!("{text}, {text}"))),
        (_, Start::Inches(text)) => Start::Inches(leak(format!("({text}) + 1/8"))),
    }
}

/// The calculators with other examples for all but some fields, made once for each such set.
struct Others {
    calculator: &'static Calculator,
    made: BTreeMap<Vec<&'static str>, &'static [Field]>,
}

impl Others {
    /// What is answered when all our examples but these are others.
    fn sheet(&mut self, but: &[&'static str], entries: &Entries, bench: &Bench) -> Sheet {
        let calculator = self.calculator;
        let fields = *self.made.entry(but.to_vec()).or_insert_with(|| {
            let changed = calculator.fields.iter().map(|field| match but.contains(&field.id) {
                true => *field,
                false => Field { start: other(field), ..*field },
            });
            Vec::leak(changed.collect())
        });
        let stays = |start: fn(&Start) -> bool| {
            calculator.fields.iter().any(|field| start(&field.start) && but.contains(&field.id))
        };
        let longer = |length: Length, stays: bool| match stays {
            true => length,
            false => (length + Length::sixty_fourths(3)).expect("small"),
        };
        let fence_stays = stays(|start| matches!(start, Start::Fence));
        let bench = Bench {
            tape: bench.tape,
            kerf: longer(bench.kerf, stays(|start| matches!(start, Start::Kerf))),
            blade_reach: longer(bench.blade_reach, stays(|it| matches!(it, Start::BladeReach))),
            fence: if fence_stays { bench.fence } else { bench.fence.other() },
            thinnest_strip: longer(
                bench.thinnest_strip,
                stays(|it| matches!(it, Start::ThinnestStrip)),
            ),
            own: bench.own,
        };
        Calculator { fields, ..*calculator }.sheet(entries, &bench, &NoNames)
    }
}

/// All that a sheet says.
fn said(sheet: &Sheet) -> String {
    format!("{:?} {:?} {:?}", sheet.echoes, sheet.refusals, sheet.answer)
}

fn ids(sheet: &Sheet) -> Vec<&'static str> {
    sheet.assumed.fields().map(|field| field.id).collect()
}

/// Confirms all that the answer rests on, as it stands.
fn inked(sheet: &Sheet, entries: &Entries, bench: &Bench) -> Entries {
    let unit = entries.unit().unwrap_or(bench.tape.unit());
    let mut inked = entries.clone();
    for field in sheet.assumed.fields() {
        inked.set(field.id, field.start_text(bench, unit));
    }
    inked
}

/// How many answers were judged: with examples left, and in ink.
fn judge(calculator: &'static Calculator) -> (usize, usize) {
    let slug = calculator.slug;
    let mut others = Others { calculator, made: BTreeMap::new() };
    let (mut in_pencil, mut in_ink) = (0, 0);
    for (entries, tape) in entries::of(calculator).into_iter().step_by(EACH) {
        let bench = Bench { tape, ..Bench::default() };
        let sheet = calculator.sheet(&entries, &bench, &NoNames);
        let rests_on = ids(&sheet);
        let now = said(&sheet);
        let then = others.sheet(&rests_on, &entries, &bench);
        assert_eq!(now, said(&then), "{slug}: an example it does not rest on; {entries:?}");
        for field in calculator.fields.iter().filter(|field| rests_on.contains(&field.id)) {
            let asked = calculator.asked(&entries, &bench).any(|it| it.id == field.id);
            assert!(asked, "{slug}: rests on {}, which is not asked; {entries:?}", field.id);
            assert!(entries.text(field.id).is_none(), "{slug}: {} has a text", field.id);
        }
        let entries = inked(&sheet, &entries, &bench);
        let inked = calculator.sheet(&entries, &bench, &NoNames);
        assert!(inked.assumed.is_empty(), "{slug}: still {:?}; {entries:?}", ids(&inked));
        assert_eq!(now, said(&inked), "{slug}: confirmed as it is; {entries:?}");
        let then = others.sheet(&[], &entries, &bench);
        assert_eq!(now, said(&then), "{slug}: in ink, and yet it changes; {entries:?}");
        if sheet.answer.is_some() {
            in_pencil += usize::from(!rests_on.is_empty());
            in_ink += 1;
        }
    }
    (in_pencil, in_ink)
}

#[test]
fn an_answer_changes_with_no_example_that_it_does_not_rest_on() {
    let mut all = (0, 0);
    for calculator in calculators::ALL {
        let (in_pencil, in_ink) = judge(calculator);
        println!("{}: {in_pencil} in pencil, {in_ink} in ink", calculator.slug);
        assert!(in_pencil + in_ink >= FEWEST, "{}: {in_pencil} + {in_ink}", calculator.slug);
        all = (all.0 + in_pencil, all.1 + in_ink);
    }
    println!("in all {} in pencil, {} in ink", all.0, all.1);
}

/// A fresh form rests on examples of ours, whatever it asks; once they are confirmed, on none.
#[test]
fn a_fresh_form_is_in_pencil() {
    for calculator in calculators::ALL {
        let bench = Bench::default();
        let sheet = calculator.sheet(&Entries::default(), &bench, &NoNames);
        assert!(!sheet.assumed.is_empty(), "{}", calculator.slug);
        let entries = inked(&sheet, &Entries::default(), &bench);
        let sheet = calculator.sheet(&entries, &bench, &NoNames);
        assert!(sheet.assumed.is_empty(), "{}: {:?}", calculator.slug, ids(&sheet));
    }
}

/// What is set in the settings is the person's in every calculator.
#[test]
fn a_size_of_the_settings_is_in_pencil_until_it_is_set() {
    let all = Own { kerf: true, blade_reach: true, fence: true, thinnest_strip: true };
    let mut judged = 0;
    for calculator in calculators::ALL {
        for (entries, _) in entries::of(calculator).into_iter().take(100) {
            let of = |own: Own| {
                let bench = Bench { own, tape: Tape::SIXTEENTHS, ..Bench::default() };
                calculator.sheet(&entries, &bench, &NoNames)
            };
            let [before, after] = [of(Own::default()), of(all)];
            let starts_there = |field: &Field| {
                use Start::{BladeReach, Fence, Kerf, ThinnestStrip};
                matches!(field.start, Kerf | BladeReach | Fence | ThinnestStrip)
            };
            assert!(!after.assumed.fields().any(starts_there), "{}", calculator.slug);
            let others = before.assumed.fields().filter(|field| !starts_there(field));
            let others: Vec<_> = others.map(|field| field.id).collect();
            assert_eq!(others, ids(&after), "{}", calculator.slug);
            judged += before.assumed.fields().filter(|field| starts_there(field)).count();
        }
    }
    assert!(judged > 200, "only {judged}");
}

/// Questions are no sizes, and neither is what leaves a thing out. All others are examples: a
/// new field that is not must be put on these lists with its reason.
#[test]
fn what_is_no_example_is_a_question_or_leaves_a_thing_out() {
    let of = |is_it: fn(&Start) -> bool| -> Vec<String> {
        let named = |calculator: &&'static Calculator| {
            let slug = calculator.slug;
            let fields = calculator.fields.iter().filter(move |field| is_it(&field.start));
            fields.map(move |field| format!("{slug} {}", field.id)).collect::<Vec<_>>()
        };
        calculators::ALL.iter().flat_map(named).collect()
    };
    // What is wanted, or which of some sizes is known: it says what is asked for.
    let questions = [
        "lumber ask",
        "moisture ask",
        "moisture known",
        "moisture degrees",
        "resaw-rip question",
        "resaw-rip plan",
        "frame question",
        "frame find",
        "dowel measured",
        "screws question",
        "screws angled_find",
        "spacing mode",
        "top question",
        "top find",
        "top overhang_find",
        "top season_find",
        "curve mode",
        "angles mode",
        "angles known",
    ];
    assert_eq!(of(|start| matches!(start, Start::Question(_))), questions);
    let left_out = [
        "tape divide",          // the whole of it
        "tape start_mark",      // the tape begins at its end
        "resaw-rip first_edge", // it is good
        "resaw-rip allowance",  // no planing
        "resaw-rip core_by_hand",
        "resaw-rip lean",    // no core
        "frame lap_short",   // the whole lap
        "frame apron_down",  // flush
        "frame housing",     // no housing
        "screws steel",      // no plate
        "screws beyond",     // no further
        "strength and_even", // no other load
    ];
    assert_eq!(of(|start| matches!(start, Start::Without(_))), left_out);
}
