//! What the spacing asks and how its answer is laid out.

use super::{Answer, End, Input, MOST_MARKS, Wish, drawing, reckon};
use crate::calculators::{Calculator, ResultKind, ResultSpec, Stage};
use crate::measure::text::exact_text;
use crate::measure::{Length, Rounding};
use crate::paper::{Template, slat_stick, story_stick};
use crate::say;
use crate::sheet::{
    self, Ask, Bench, Caution, Choice, Field, Figure, Kind, Least, Note, Row, Sentence, Source,
    Start, Step, Table, Value, Working,
};

/// Spacing: screws, holes, pegs and slats.
pub const CALCULATOR: Calculator = Calculator {
    slug: "spacing",
    title: "Spacing",
    question: "Where do the screws, pegs or slats go?",
    stage: Stage::Fasten,
    fields: FIELDS,
    results: RESULTS,
    work,
};

const MODES: &[Choice] = &[
    Choice { id: "greatest_gap", label: "No gap over" },
    Choice { id: "count", label: "So many" },
    Choice { id: "step", label: "Fixed step" },
    Choice { id: "slats_near", label: "Slats near a gap" },
    Choice { id: "slats", label: "So many slats" },
];
const MARKS: &[&str] = &["greatest_gap", "count", "step"];
const SLATS: &[&str] = &["slats_near", "slats"];
const COUNT: Kind = Kind::Count { least: 1, most: MOST_MARKS };
const END: Kind = Kind::OptionalLength(Least::Zero);

// The starts are of our invented potting bench: screws along a rail, and its slatted shelf.
const FIELDS: &[Field] = &[
    Field::new("mode", "Space", "", Kind::Choice(MODES), Start::Text("greatest_gap")),
    Field::new(
        "length",
        "Length",
        "the board, or the opening",
        Kind::ABOVE_ZERO,
        Start::Inches("43 1/2"),
    ),
    Field::new(
        "greatest_gap",
        "Greatest gap",
        "center to center",
        Kind::ABOVE_ZERO,
        Start::Inches("8"),
    )
    .only_for("mode", &["greatest_gap"]),
    Field::new("count", "How many", "", COUNT, Start::Text("5")).only_for("mode", &["count"]),
    Field::new("step", "Step", "set off from both ends", Kind::ABOVE_ZERO, Start::Inches("6"))
        .only_for("mode", &["step"]),
    Field::new("slat_width", "Slat width", "as cut", Kind::ABOVE_ZERO, Start::Inches("2 3/4"))
        .only_for("mode", SLATS),
    Field::new("slat_gap", "Gap wanted", "slat to slat", Kind::ABOVE_ZERO, Start::Inches("3/8"))
        .only_for("mode", &["slats_near"]),
    Field::new("slats", "Slats", "how many", COUNT, Start::Text("14")).only_for("mode", &["slats"]),
    Field::new(
        "left_end",
        "First mark",
        "from left end; empty: like the gaps",
        END,
        Start::Inches("2"),
    )
    .only_for("mode", MARKS),
    Field::new(
        "right_end",
        "Last mark",
        "from right end; empty: as the first",
        END,
        Start::Text(""),
    )
    .only_for("mode", MARKS),
    Field::new(
        "left_slat",
        "First slat at",
        "from left end; empty: like the gaps, 0: flush",
        END,
        Start::Text(""),
    )
    .only_for("mode", SLATS),
    Field::new(
        "right_slat",
        "Last slat at",
        "from right end; empty: as the first",
        END,
        Start::Text(""),
    )
    .only_for("mode", SLATS),
    Field::new(
        "keep_out",
        "Keep out of",
        "from left end, as 10 to 12 1/2, 30 to 33",
        Kind::Spans,
        Start::Text(""),
    ),
    Field::new("least_gap", "Least gap", "empty for none", Kind::MAYBE_LENGTH, Start::Text("")),
];

const RESULTS: &[ResultSpec] = &[
    ResultSpec { id: "each_end", label: "Marks from each end", kind: ResultKind::Lengths },
    ResultSpec { id: "marks", label: "Marks from the left end", kind: ResultKind::Lengths },
    ResultSpec { id: "from_right", label: "Marks from the right end", kind: ResultKind::Lengths },
    ResultSpec { id: "pitch", label: "Center to center", kind: ResultKind::Length },
    ResultSpec { id: "gap", label: "Gap", kind: ResultKind::Length },
    ResultSpec { id: "count", label: "How many", kind: ResultKind::Count },
    ResultSpec { id: "widest", label: "Widest gap", kind: ResultKind::Length },
    ResultSpec { id: "narrowest", label: "Narrowest gap", kind: ResultKind::Length },
    ResultSpec { id: "closes_at", label: "Adds up to", kind: ResultKind::Length },
    ResultSpec { id: "step_error", label: "Error when stepped off", kind: ResultKind::Length },
    ResultSpec { id: "layout", label: "Every mark", kind: ResultKind::Table },
    ResultSpec { id: "others", label: "One fewer, one more", kind: ResultKind::Table },
];

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let length = ask.length(ask.field("length"));
    let mode = ask.choice(ask.field("mode")).id;
    let wish = match mode {
        "count" => ask.count(ask.field("count")).map(Wish::Count),
        "step" => ask.length(ask.field("step")).map(Wish::Step),
        "slats" | "slats_near" => {
            let width = ask.length(ask.field("slat_width"));
            if mode == "slats" {
                let count = ask.count(ask.field("slats"));
                width.zip(count).map(|(width, count)| Wish::Slats { width, count })
            } else {
                let gap = ask.length(ask.field("slat_gap"));
                width.zip(gap).map(|(width, gap)| Wish::SlatsNear { width, gap })
            }
        }
        _ => ask.length(ask.field("greatest_gap")).map(Wish::NoGapOver),
    };
    let (left, right) = if SLATS.contains(&mode) {
        (ask.optional_length(ask.field("left_slat")), ask.optional_length(ask.field("right_slat")))
    } else {
        (ask.optional_length(ask.field("left_end")), ask.optional_length(ask.field("right_end")))
    };
    let keep_out = ask.spans(ask.field("keep_out"));
    let least_gap = ask.optional_length(ask.field("least_gap"));
    let (left, right) = (left?, right?);
    let end = |distance: Option<Length>| distance.map_or(End::LikeTheGaps, End::At);
    let input = Input {
        length: length?,
        wish: wish?,
        left: end(left),
        right: end(right.or(left)),
        keep_out: keep_out?,
        least_gap: least_gap?,
        tape: ask.bench().tape,
    };
    let bench = ask.bench();
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, bench)),
        Err(problems) => ask.refuse(&problems),
    }
}

/// The words for marks and for slats.
struct Words {
    left: &'static str,
    right: &'static str,
    gap: (&'static str, &'static str, &'static str),
}

const OF_MARKS: Words = Words {
    left: "from left end",
    right: "from right end",
    gap: ("pitch", "Apart", "center to center"),
};
const OF_SLATS: Words = Words {
    left: "left edges, from left end",
    right: "right edges, from right end",
    gap: ("gap", "Gap", "slat to slat"),
};

fn lay_out(input: &Input, answer: &Answer, bench: &Bench) -> sheet::Answer {
    let is_slats = input.wish.slat_width().is_some();
    let words = if is_slats { OF_SLATS } else { OF_MARKS };
    let lengths = |id, label, from, lengths: &[Length]| Figure {
        id,
        label,
        from,
        value: Value::Lengths(lengths.to_vec()),
    };
    let marks = lengths("marks", if is_slats { "Slat" } else { "Mark" }, words.left, &answer.marks);
    let (id, label, from) = words.gap;
    let gap = answer.equal_gap.map(|gap| Figure::length(id, label, from, gap));
    let mut figures = Vec::new();
    // A builder with slats asks for the gap, to cut a spacer; with screws, where each one goes.
    let headline = match (&gap, &answer.each_end) {
        (Some(gap), _) if is_slats => gap.clone(),
        (_, Some(each_end)) if !is_slats => lengths("each_end", "Mark", "from each end", each_end),
        _ => marks.clone(),
    };
    figures.push(Figure {
        id: "count",
        label: if is_slats { "Slats" } else { "Marks" },
        from: "",
        value: Value::Count(answer.marks.len() as u64),
    });
    match gap {
        Some(gap) => figures.push(gap),
        None => {
            figures.push(Figure::length("widest", "Widest gap", from, answer.widest));
            figures.push(Figure::length("narrowest", "Narrowest gap", from, answer.narrowest));
        }
    }
    figures.push(marks);
    if let Some(each_end) = answer.each_end.as_ref().filter(|_| is_slats) {
        figures.push(lengths("each_end", "From each end", "outer edges", each_end));
    }
    figures.push(lengths("from_right", "From right", words.right, &answer.from_right));
    figures.push(Figure::length("closes_at", "Adds up to", "end to end", answer.closes_at));
    if let Some(stepped) = answer.stepped {
        let error = stepped.error;
        figures.push(Figure::length("step_error", "Off when stepped", "at the last one", error));
    }
    figures.retain(|figure| figure.id != headline.id);
    sheet::Answer {
        figures,
        tables: tables(input, answer),
        notes: notes(input, answer),
        cautions: if is_slats { Vec::new() } else { vec![Caution::Drilling] },
        drawing: Some(drawing::draw(input, answer, bench)),
        template: Some(template(input, answer, bench)),
        ..sheet::Answer::new(headline, working(input, answer))
    }
}

/// The story stick.
fn template(input: &Input, answer: &Answer, bench: &Bench) -> Template {
    let (marks, tape) = (&answer.marks, bench.tape);
    match input.wish.slat_width() {
        Some(width) => {
            let title = say!["Story stick, slats over ", input.length];
            slat_stick(title, input.length, marks, width, tape)
        }
        None => {
            story_stick(say!["Story stick, marks over ", input.length], input.length, marks, tape)
        }
    }
}

fn tables(input: &Input, answer: &Answer) -> Vec<Table> {
    let length = |length: Length| Value::Length(length, Rounding::Nearest);
    // A gap at the left end is not the gap to the next one.
    let has_first_gap = input.left == End::LikeTheGaps && !matches!(input.wish, Wish::Step(_));
    let mut to_next = answer.gaps.iter().skip(usize::from(has_first_gap));
    let rows = |(index, (left, right)): (usize, (&Length, &Length))| -> Row {
        let next = to_next.next().map_or_else(|| Value::Words(say!["end"]), |gap| length(*gap));
        vec![Value::Count(index as u64 + 1), length(*left), length(*right), next]
    };
    let rows = answer.marks.iter().zip(&answer.from_right).enumerate().map(rows).collect();
    let columns: &[&str] = if input.wish.slat_width().is_some() {
        &["Slat", "Left edge", "From right", "Gap after"]
    } else {
        &["Mark", "From left", "From right", "To next"]
    };
    let mut tables = vec![Table { id: "layout", title: "Every mark", columns, rows }];
    if answer.others.len() > 1 {
        let row =
            |other: &super::Other| vec![Value::Count(other.count.into()), length(other.widest)];
        tables.push(Table {
            id: "others",
            title: "One fewer, one more",
            columns: &["How many", "Widest gap"],
            rows: answer.others.iter().map(row).collect(),
        });
    }
    tables
}

fn notes(input: &Input, answer: &Answer) -> Vec<Note> {
    let mut notes = Vec::new();
    if let Some(stepped) = answer.stepped {
        let way = if stepped.error.is_negative() { " short." } else { " too far." };
        notes.push(say![
            "Mark every one from the same end. Stepping off ",
            stepped.gap,
            " each time puts the last at ",
            stepped.ends_at,
            ", ",
            stepped.error.abs(),
            way
        ]);
    }
    if let Some(each_end) = &answer.each_end
        && answer.marks.len() % 2 == 1
        && input.wish.slat_width().is_none()
        && let Some(middle) = each_end.last()
    {
        notes.push(say!["The one at ", *middle, " is the middle: the same from both ends."]);
    }
    notes.extend(middle_gap(input, answer));
    if !answer.keep_out.is_empty() {
        notes.push(say!["It may touch the edge of a zone. Make zones wide enough."]);
    }
    let two_inches = Length::sixty_fourths(128);
    let is_near = |end| matches!(end, End::At(distance) if distance < two_inches);
    if input.wish.slat_width().is_none() && (is_near(input.left) || is_near(input.right)) {
        notes.push(say![
            "A screw nearer than ",
            two_inches,
            " to an end can split it: drill first. Common practice, no source."
        ]);
    }
    notes
}

/// A fixed step may leave a wider gap in the middle.
fn middle_gap(input: &Input, answer: &Answer) -> Option<Sentence> {
    let Wish::Step(step) = input.wish else { return None };
    let half = answer.marks.len() / 2;
    if answer.marks.len() % 2 == 1 || answer.widest <= step {
        return None;
    }
    let (near, far) = (answer.marks.get(half.checked_sub(1)?)?, answer.marks.get(half)?);
    let middle = ((*near + *far).ok()? / 2).ok()?;
    let is_free = |zone: &sheet::Span| middle <= zone.from || zone.to <= middle;
    if answer.keep_out.iter().all(is_free) {
        Some(say![
            "The gap in the middle is ",
            answer.widest,
            ". One more at ",
            middle,
            " halves it."
        ])
    } else {
        Some(say!["The gap in the middle is ", answer.widest, "."])
    }
}

fn working(input: &Input, answer: &Answer) -> Working {
    let mut steps = Vec::new();
    let gaps = answer.gaps.len() as u64;
    let text = exact_text;
    let total = answer.gaps.iter().try_fold(Length::ZERO, |sum, gap| sum + *gap);
    let total = total.map_or_else(|_| String::new(), text);
    match input.wish {
        Wish::Step(step) => steps.push(Step {
            rule: "mark = end distance + whole steps, from each end, up to the middle".into(),
            put_in: say![format!("steps of {}", text(step))],
            gives: Value::Count(answer.marks.len() as u64),
        }),
        Wish::NoGapOver(greatest) if answer.equal_gap.is_some() => steps.push(Step {
            rule: "gaps = distance to fill ÷ greatest gap, rounded up".into(),
            put_in: say![format!("{total} ÷ {}", text(greatest))],
            gives: Value::Count(gaps),
        }),
        _ => {}
    }
    if let (Some(width), true) = (input.wish.slat_width(), answer.equal_gap.is_some()) {
        let count = answer.marks.len();
        steps.push(Step {
            rule: "room for gaps = length - set ends - slats × slat width".into(),
            put_in: say![format!("{} - {count} × {}", text(input.length), text(width))],
            gives: Value::Words(say![total.clone()]),
        });
    }
    if let Some(gap) = answer.equal_gap {
        let put_in = say![format!("{total} ÷ {gaps}")];
        steps.push(Step::length("gap = room for gaps ÷ number of gaps", put_in, gap));
    }
    if let Some(chain) = answer.chain.filter(|_| !matches!(input.wish, Wish::Step(_))) {
        let (from, to) = (text(chain.from), text(chain.to));
        let width = match input.wish.slat_width() {
            Some(width) => format!(" - {}", text(width)),
            None => String::new(),
        };
        steps.push(Step::length(
            "smallest widest gap = distance between two places held by zones or ends ÷ gaps",
            say![format!("({to} - {from}) ÷ {}{width}", chain.gaps)],
            answer.widest,
        ));
    }
    let slats = match input.wish.slat_width() {
        Some(width) => format!(" + {} × {}", answer.marks.len(), text(width)),
        None => String::new(),
    };
    steps.push(Step::length(
        "check: set ends + every gap + every slat = length",
        say![format!("set ends + {total}{slats}")],
        answer.closes_at,
    ));
    Working { steps, sources: vec![Source::Arithmetic] }
}
