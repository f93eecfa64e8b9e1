//! The laws over all drawings: every label can be read, every dimension has its number, and every size that can be
//! tapped is a field of the question, clear of all others.
//!
//! A scene is scaled as a whole, writing and all, so what meets in page units meets at every width. What differs by width
//! is how large writing and targets come out; both are judged at the narrowest and at the widest place.

use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use reckoner_core::calculators::{self, Calculator};
use reckoner_core::drawing::{
    Anchor, Area, Item, NARROWEST, Role, SCENE_WIDTH, Scene, Shape, Size, WIDEST, strokes,
};
use reckoner_core::measure::Tape;
use reckoner_core::measure::text::NoNames;
use reckoner_core::sheet::{Bench, Entries, Field, Kind, Sheet, Side};

use crate::entries::{self, TAPES};

/// Of the entries that the laws over all calculators take, every so many are drawn.
const ONE_IN: usize = 8;

/// Entries at the fields' own limits that are drawn of each calculator.
const AT_LIMITS: usize = 400;

/// Pictures of each calculator, and labels in all, that are judged at the least.
const FEWEST_PICTURES: usize = 100;
const FEWEST_LABELS: usize = 20_000;

/// CSS pixels of the places that a drawing is shown in: phones 320 and 360 wide, and a desktop.
const WIDTHS: [f64; 3] = [NARROWEST, SCENE_WIDTH, WIDEST];

/// What may be read: the least, the least at 360, and where it stops.
const LEAST_WRITING: f64 = 12.0;
const LEAST_AT_360: f64 = 14.0;
const MOST_WRITING: f64 = 22.0;

/// What a finger needs.
const TARGET: f64 = 44.0;

/// What the ink of a line of writing takes: from the top of its figures to its baseline.
fn ink(item: &Item) -> Option<(Area, &str)> {
    let Shape::Text(x, y, anchor, size, text) = &item.shape else { return None };
    let wide = size.width_of(text, item.role);
    let left = match anchor {
        Anchor::Start => *x,
        Anchor::Middle => x - wide / 2.0,
        Anchor::End => x - wide,
    };
    let top = y - 0.75 * size.height();
    Some((Area { left, top, right: left + wide, bottom: *y }, text))
}

/// All that is wrong with a drawing.
fn wrong(scene: &Scene) -> Vec<String> {
    let mut wrong = Vec::new();
    let labels: Vec<(usize, Area, &str)> = scene
        .items
        .iter()
        .enumerate()
        .filter_map(|(index, item)| ink(item).map(|(area, text)| (index, area, text)))
        .collect();
    for (at, (index, area, text)) in labels.iter().enumerate() {
        if text.trim().is_empty() {
            wrong.push("an empty label".to_owned());
        }
        let is_inside = area.left >= -0.01
            && area.top >= -0.01
            && area.right <= scene.width + 0.01
            && area.bottom <= scene.height + 0.01;
        if !is_inside {
            wrong.push(format!("{text:?} leaves the picture: {area:?}"));
        }
        for (_, other, words) in labels.iter().skip(at + 1) {
            if area.meets(other) {
                wrong.push(format!("{text:?} meets {words:?}"));
            }
        }
        for (other, item) in scene.items.iter().enumerate() {
            if other != *index && strokes(&item.shape).iter().any(|it| area.is_crossed_by(*it)) {
                wrong.push(format!("{text:?} is crossed by {item:?}"));
            }
        }
    }
    for item in &scene.items {
        let leaves = |(_, y): (f64, f64)| y < -0.5 || y > scene.height + 0.5;
        if strokes(&item.shape).iter().flatten().any(|place| leaves(*place)) {
            wrong.push(format!("{:?} leaves the picture: {:?}", item.role, item.shape));
        }
    }
    wrong.extend(without_number(scene, &labels));
    wrong.extend(sizes(scene));
    wrong
}

/// The lines of dimensions that have no number: neither beside one of their lines, nor at the end of a leader.
fn without_number(scene: &Scene, labels: &[(usize, Area, &str)]) -> Vec<String> {
    let of_role = |role: Role| {
        let items = scene.items.iter().filter(move |item| item.role == role);
        items.filter_map(|item| match strokes(&item.shape)[..] {
            [stroke] => Some((item.field, stroke)),
            _ => None,
        })
    };
    let lines: Vec<_> = of_role(Role::Dimension).collect();
    let leaders: Vec<_> = of_role(Role::Leader).collect();
    let touches =
        |place: (f64, f64), line: &[(f64, f64); 2], near: f64| distance(place, line) < near;
    let mut reached: Vec<bool> = lines
        .iter()
        .map(|(field, line)| {
            let beside = labels.iter().any(|(index, area, _)| {
                let wide = Area {
                    left: area.left - 10.0,
                    top: area.top - 10.0,
                    right: area.right + 10.0,
                    bottom: area.bottom + 16.0,
                };
                scene.items[*index].field == *field && wide.is_crossed_by(*line)
            });
            beside || leaders.iter().any(|(_, leader)| touches(leader[1], line, 1.0))
        })
        .collect();
    loop {
        let before = reached.clone();
        for (at, (field, line)) in lines.iter().enumerate() {
            let joined = lines.iter().zip(&before).any(|((other_field, other), is_reached)| {
                let meet = line.iter().any(|it| touches(*it, other, 5.0))
                    || other.iter().any(|it| touches(*it, line, 5.0));
                *is_reached && field == other_field && meet
            });
            reached[at] |= joined;
        }
        if reached == before {
            break;
        }
    }
    let lines = lines.iter().zip(reached).filter(|(_, is_reached)| !is_reached);
    lines.map(|(line, _)| format!("a dimension without its number: {line:?}")).collect()
}

/// From a place to a line.
fn distance((x, y): (f64, f64), [(x1, y1), (x2, y2)]: &[(f64, f64); 2]) -> f64 {
    let (dx, dy) = (x2 - x1, y2 - y1);
    let long = (dx * dx + dy * dy).max(1e-12);
    let share = (((x - x1) * dx + (y - y1) * dy) / long).clamp(0.0, 1.0);
    (x - x1 - share * dx).hypot(y - y1 - share * dy)
}

/// What is wrong with the sizes that can be tapped.
fn sizes(scene: &Scene) -> Vec<String> {
    let mut wrong = Vec::new();
    for (at, tag) in scene.tags.iter().enumerate() {
        let (wide, high) = (tag.target.right - tag.target.left, tag.target.bottom - tag.target.top);
        let least = TARGET * SCENE_WIDTH / NARROWEST - 0.01;
        if wide < least || high < least {
            wrong.push(format!("{} is {wide} × {high}", tag.field));
        }
        let inside = tag.target.left >= -0.1
            && tag.target.right <= scene.width + 0.1
            && tag.target.top >= -0.1
            && tag.target.bottom <= scene.height + 0.1;
        if !inside {
            wrong.push(format!("the target of {} leaves the picture", tag.field));
        }
        let item = scene.items.get(tag.item);
        let Some((area, _)) = item.and_then(ink) else {
            wrong.push(format!("{} has no writing", tag.field));
            continue;
        };
        let target = tag.target;
        if area.left < target.left - 0.1 || area.right > target.right + 0.1 {
            wrong.push(format!("the writing of {} is not in its target", tag.field));
        }
        for other in &scene.tags[at + 1..] {
            if target.meets(&other.target) {
                wrong.push(format!("{} and {} share a target", tag.field, other.field));
            }
        }
    }
    wrong
}

/// Entries near the fields' own limits, where rules change: sizes that are very small, very large or alike.
fn at_limits(calculator: &'static Calculator) -> Vec<(Entries, Tape)> {
    let mut runner = TestRunner::deterministic();
    let text = |field: &Field| -> BoxedStrategy<String> {
        match field.kind {
            Kind::Choice(choices) => {
                let ids: Vec<&str> = choices.iter().map(|choice| choice.id).collect();
                prop::sample::select(ids).prop_map(str::to_owned).boxed()
            }
            Kind::YesNo => prop::sample::select(vec!["yes", "no"]).prop_map(str::to_owned).boxed(),
            Kind::Count { least, most } => {
                let most = most.min(200);
                prop::sample::select(vec![least, least + 1, most / 2 + 1, most])
                    .prop_map(|n| n.to_string())
                    .boxed()
            }
            Kind::Number { least, most, .. } => {
                prop::sample::select(vec![least, least + 1, most.min(100) - 1, most])
                    .prop_map(|n| n.to_string())
                    .boxed()
            }
            Kind::Length(_) | Kind::OptionalLength(_) => prop::sample::select(vec![
                "1/64", "1/16", "1/2", "1 1/2", "3", "3 1/2", "11 15/16", "47 63/64", "96", "240",
                "0",
            ])
            .prop_map(str::to_owned)
            .boxed(),
            _ => Just(String::new()).boxed(),
        }
    };
    (0..AT_LIMITS)
        .map(|round| {
            let mut entries = Entries::default();
            for field in calculator.fields {
                let is_left = (0_u8..4).new_tree(&mut runner).expect("a number").current() > 1;
                let text = text(field).new_tree(&mut runner).expect("a text").current();
                if !is_left && !text.is_empty() {
                    entries.set(field.id, text);
                }
            }
            (entries, TAPES[round % TAPES.len()])
        })
        .collect()
}

/// Every drawing that is judged, with the entries it comes of.
fn drawn(calculator: &'static Calculator) -> impl Iterator<Item = (Entries, Bench, Sheet, Scene)> {
    let chosen = entries::of(calculator).into_iter().step_by(ONE_IN);
    chosen.chain(at_limits(calculator)).enumerate().filter_map(move |(round, (entries, tape))| {
        let fence = if round % 2 == 0 { Side::Left } else { Side::Right };
        let bench = Bench { tape, fence, ..Bench::default() };
        let mut sheet = calculator.sheet(&entries, &bench, &NoNames);
        let scene = sheet.answer.as_mut()?.drawing.take()?;
        Some((entries, bench, sheet, scene))
    })
}

#[test]
fn every_drawing_can_be_read() {
    let (mut pictures, mut labels, mut tags) = (0, 0, 0);
    let mut bad = Vec::new();
    for calculator in calculators::ALL {
        let (mut n, mut written, mut tapped) = (0, 0, 0);
        for (entries, _, _, scene) in drawn(calculator) {
            n += 1;
            written += scene.items.iter().filter_map(ink).count();
            tapped += scene.tags.len();
            for what in wrong(&scene) {
                bad.push(format!("{}: {what}; {entries:?}", calculator.slug));
            }
        }
        println!("{}: {n} pictures, {written} labels, {tapped} sizes", calculator.slug);
        assert!(n >= FEWEST_PICTURES, "{}: only {n} pictures", calculator.slug);
        pictures += n;
        labels += written;
        tags += tapped;
    }
    println!("in all {pictures} pictures, {labels} labels, {tags} sizes to tap");
    assert!(labels >= FEWEST_LABELS, "only {labels} labels");
    bad.dedup_by_key(|line| line.chars().take(60).collect::<String>());
    assert!(bad.is_empty(), "{} of them:\n{}", bad.len(), bad[..bad.len().min(60)].join("\n"));
}

#[test]
fn writing_is_large_enough_wherever_it_is_shown_and_stops_growing() {
    for size in [Size::Small, Size::Medium] {
        for width in WIDTHS {
            let pixels = size.height() * width / SCENE_WIDTH;
            assert!(
                (LEAST_WRITING..=MOST_WRITING).contains(&pixels),
                "{size:?} at {width}: {pixels}"
            );
        }
        assert!(size.height() >= LEAST_AT_360, "{size:?}");
    }
}

/// A number on a drawing that opens a field says what that field says.
#[test]
fn a_size_that_can_be_tapped_is_a_field_of_the_question_with_its_own_number() {
    let mut judged = 0;
    for calculator in calculators::ALL {
        for (entries, bench, sheet, scene) in drawn(calculator) {
            let asked: Vec<&str> = calculator.asked(&entries, &bench).map(|it| it.id).collect();
            for item in scene.items.iter().filter(|item| item.field.is_some()) {
                let field = item.field.unwrap_or_default();
                assert!(asked.contains(&field), "{}: {field} is not asked", calculator.slug);
                let Some((_, text)) = ink(item) else { continue };
                let said = said(calculator, &sheet, &bench, field);
                let Some(said) = said else { continue };
                assert!(
                    said.iter().any(|said| text.contains(said)),
                    "{}: {field} is {said:?} and the drawing says {text:?}; {entries:?}",
                    calculator.slug
                );
                judged += 1;
            }
        }
    }
    println!("{judged} sizes say what their field says");
    assert!(judged > 10_000, "only {judged}");
}

/// What a drawing would write for a field: its length as the tape shows it, either mark of a tie.
fn said(calculator: &Calculator, sheet: &Sheet, bench: &Bench, field: &str) -> Option<Vec<String>> {
    let asked = calculator.fields.iter().find(|it| it.id == field)?;
    if !matches!(asked.kind, Kind::Length(_) | Kind::OptionalLength(_)) {
        return None;
    }
    let echo = sheet.echoes.iter().find(|echo| echo.field == field)?.sentence.to_string();
    let value = echo.rsplit(" = ").next()?.trim_end_matches('.').to_owned();
    let read = reckoner_core::measure::text::parse(&value, &NoNames).ok()?;
    let length = read.length(reckoner_core::measure::Unit::Inch, &NoNames).ok()?;
    let shown = reckoner_core::measure::text::show(
        length,
        bench.tape,
        reckoner_core::measure::Rounding::Nearest,
    );
    let shown = shown.ok()?;
    Some(core::iter::once(shown.mark).chain(shown.or_mark).map(|mark| mark.amount()).collect())
}

/// Lengths of a first question that have no place on its drawing, and why.
const NOT_DRAWN: &[(&str, &str, &str)] = &[
    ("resaw-rip", "reach", "a limit of the saw, which lies under the table"),
    ("resaw-rip", "thinnest", "a limit that the cut keeps, no size of it"),
    ("resaw-rip", "piece_length", "the view is of the end"),
    ("dowel", "part_height", "the view is from above"),
    ("dowel", "part_length", "of long parts only what is around the hole is drawn"),
    ("angles", "apart", "the other leg is not drawn"),
];

/// Each length that counts in the first answer can be tapped on its drawing.
#[test]
fn each_length_of_the_first_question_stands_on_its_drawing() {
    let (mut judged, mut wrong) = (0, Vec::new());
    for calculator in calculators::ALL {
        let bench = Bench::default();
        let sheet = calculator.sheet(&Entries::default(), &bench, &NoNames);
        let scene = sheet.answer.as_ref().and_then(|answer| answer.drawing.as_ref());
        let scene = scene.unwrap_or_else(|| panic!("{}: no drawing", calculator.slug));
        for field in sheet.assumed.fields() {
            if !matches!(field.kind, Kind::Length(_) | Kind::OptionalLength(_)) {
                continue;
            }
            let excused = NOT_DRAWN.iter().any(|it| (it.0, it.1) == (calculator.slug, field.id));
            let is_drawn = scene.tags.iter().any(|tag| tag.field == field.id);
            if is_drawn == excused {
                wrong.push(format!("{}: {}, drawn: {is_drawn}", calculator.slug, field.id));
            }
            judged += 1;
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert!(judged > 20, "only {judged}");
}

/// Our example of each question shows every number that it asks for and answers, and no line leaves it. Thousandths of
/// an inch are longer: with them dowel, top and curve leave a number to the words under the drawing.
#[test]
fn our_example_of_every_question_has_room_for_all_its_numbers() {
    let (mut judged, mut without) = (0, Vec::new());
    for calculator in calculators::ALL {
        let asked: Vec<Entries> = match calculator.questions() {
            Some((field, all)) => {
                all.iter().map(|choice| Entries::from_pairs([(field.id, choice.id)])).collect()
            }
            None => vec![Entries::default()],
        };
        let tapes = TAPES.into_iter().filter(|it| !matches!(it, Tape::DecimalInches(_)));
        for (tape, entries) in tapes.flat_map(|tape| asked.iter().map(move |it| (tape, it))) {
            let bench = Bench { tape, ..Bench::default() };
            let sheet = calculator.sheet(entries, &bench, &NoNames);
            let Some(scene) = sheet.answer.and_then(|it| it.drawing) else { continue };
            judged += 1;
            let places = scene.items.iter().flat_map(|it| strokes(&it.shape)).flatten();
            let mut aside = places.filter(|(x, _)| *x < -0.5 || *x > scene.width + 0.5);
            if let Some(place) = aside.next() {
                without
                    .push(format!("{} {entries:?} {tape:?} leaves at {place:?}", calculator.slug));
            }
            if scene.words.iter().any(|it| it == reckoner_core::drawing::LEFT_OUT) {
                without.push(format!("{} {entries:?} {tape:?}", calculator.slug));
            }
        }
    }
    assert!(without.is_empty(), "{}", without.join("\n"));
    assert!(judged > 100, "only {judged}");
}

/// Questions whose answer has no drawing.
const WITHOUT_PICTURE: &[(&str, &str)] = &[("screws", "hold"), ("screws", "buy")];

/// Every question has a picture for the sheet of questions: its wood without a word, as large as it says it is.
#[test]
fn every_question_has_a_picture_without_writing() {
    let (mut judged, mut without) = (0, Vec::new());
    for calculator in calculators::ALL {
        let Some((_, all)) = calculator.questions() else { continue };
        for choice in all {
            let what = format!("{} {}", calculator.slug, choice.id);
            let Some(outline) = calculator.outline(choice.id, &Bench::default()) else {
                without.push((calculator.slug, choice.id));
                continue;
            };
            let written = outline.items.iter().find(|item| {
                matches!(item.shape, Shape::Text(..))
                    || matches!(item.role, Role::Dimension | Role::Leader)
            });
            assert_eq!(written, None, "{what}");
            let area = outline.area;
            assert!(area.width() > 20.0 && area.height() > 2.0, "{what}: {area:?}");
            let places: Vec<_> =
                outline.items.iter().flat_map(|it| strokes(&it.shape)).flatten().collect();
            // Round things are drawn with sides.
            let near = |a: f64, b: f64| (a - b).abs() < 1.0;
            for (x, y) in &places {
                let is_inside = *x > area.left - 0.01
                    && *x < area.right + 0.01
                    && *y > area.top - 0.01
                    && *y < area.bottom + 0.01;
                assert!(is_inside, "{what}: {x} {y} of {area:?}");
            }
            let is_full = places.iter().any(|(x, _)| near(*x, area.left))
                && places.iter().any(|(x, _)| near(*x, area.right))
                && places.iter().any(|(_, y)| near(*y, area.top))
                && places.iter().any(|(_, y)| near(*y, area.bottom));
            assert!(is_full, "{what}: {area:?} is more than is drawn");
            judged += 1;
        }
    }
    assert_eq!(without, WITHOUT_PICTURE);
    assert!(judged > 35, "only {judged}");
}

/// Not a law: pictures to look at, in target/drawings.html.
#[test]
#[ignore = "writes pictures to look at"]
fn pictures() {
    const STYLE: &str = "<meta charset=utf8><style>figure{display:inline-block;vertical-align:top;border:1px solid #ccc;margin:4px;width:340px;font:12px sans-serif}text{font-family:sans-serif;fill:#222;paint-order:stroke;stroke:#f7f4ec;stroke-width:3}.StrongInk{font-weight:700}rect,line,circle,polygon,polyline{fill:none;stroke:#222}.Wood,.EndGrain{fill:#f1e2c3}.Mate{fill:#e3cb9c}.Kerf,.Fence,.Fastener{fill:#555}.Waste,.KeepOut{fill:#eed5d5}.Dimension{stroke-width:.9}.Leader,.Guide{stroke:#1b4b87;stroke-width:.7}.Ghost{stroke-dasharray:5 4}.tag{stroke:#1b4b87;stroke-width:2}.target{stroke:#ccd}</style>";
    for calculator in calculators::ALL {
        let mut page = STYLE.to_owned();
        let mut seen = Vec::new();
        for (entries, bench, _, scene) in drawn(calculator) {
            let title = scene.title.on(bench.tape);
            let kind: String = title.chars().filter(|c| !c.is_ascii_digit()).take(18).collect();
            if seen.iter().filter(|it| **it == kind).count() >= 2 || seen.len() > 15 {
                continue;
            }
            seen.push(kind);
            page += &svg(&scene, &format!("{} {entries:?}", calculator.slug));
        }
        let path = format!("../../target/drawings-{}.html", calculator.slug);
        std::fs::write(path, page).expect("written");
    }
}

fn svg(scene: &Scene, what: &str) -> String {
    let list = |points: &[(f64, f64)]| -> String {
        points.iter().map(|(x, y)| format!("{x:.1},{y:.1} ")).collect()
    };
    let mut out = format!("<figure><svg viewBox='0 0 {} {}' width=340>", scene.width, scene.height);
    for tag in &scene.tags {
        let (a, w) = (tag.target, tag.writing);
        out += &format!(
            "<rect class=target x={} y={} width={} height={} /><line class=tag x1={} x2={} y1={} y2={} />",
            a.left,
            a.top,
            a.right - a.left,
            a.bottom - a.top,
            w.left,
            w.right,
            w.bottom - 1.0,
            w.bottom - 1.0
        );
    }
    for item in &scene.items {
        let class = format!("{:?}", item.role);
        out += &match &item.shape {
            Shape::Rect(x, y, w, h) => {
                format!("<rect class={class} x={x} y={y} width={w} height={h} />")
            }
            Shape::Line(a, b, c, d) => {
                format!("<line class={class} x1={a} y1={b} x2={c} y2={d} />")
            }
            Shape::Circle(x, y, r) => format!("<circle class={class} cx={x} cy={y} r={r} />"),
            Shape::Polygon(points) => {
                format!("<polygon class={class} points='{}' />", list(points))
            }
            Shape::Polyline(points) => {
                format!("<polyline style='fill:none' class={class} points='{}' />", list(points))
            }
            Shape::Text(x, y, anchor, size, text) => {
                let anchor = ["start", "middle", "end"][*anchor as usize];
                format!(
                    "<text class={class} x={x} y={y} text-anchor={anchor} font-size={}>{text}</text>",
                    size.height()
                )
            }
        };
    }
    out + &format!(
        "</svg><figcaption>{}<br><small>{what}</small></figcaption></figure>",
        scene.words.join("; ")
    )
}
