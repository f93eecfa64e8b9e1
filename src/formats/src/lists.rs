//! Parts, settings and boards as CSV (RFC 4180), for a spreadsheet. Every size has columns with
//! plain numbers, in inches and in millimetres, so that they can be summed.

use reckoner_core::cutting::Source;
use reckoner_core::job::{Batch, BoardState, CutPlan, Grain, Hand, Item, Job, PartSizes, Setting};
use reckoner_core::measure::text::{TextProblem, exact_text, show};
use reckoner_core::measure::{Length, Rounding, Tape, Unit};
use reckoner_core::planning::report::shopping;

/// One row: fields are quoted where RFC 4180 asks for it, and lines end in CR LF.
fn row(out: &mut String, fields: &[String]) {
    for (index, field) in fields.iter().enumerate() {
        if index > 0 {
            out.push(',');
        }
        if field.contains([',', '"', '\r', '\n']) {
            out.push('"');
            out.push_str(&field.replace('"', "\"\""));
            out.push('"');
        } else {
            out.push_str(field);
        }
    }
    out.push_str("\r\n");
}

/// A text cell. Spreadsheets take a leading `=`, `+`, `-` or `@` for a formula and run it, so
/// such a text gets a mark before it that they show as text.
fn text(cell: &str) -> String {
    if cell.starts_with(['=', '+', '-', '@', '\t', '\r']) {
        format!("'{cell}")
    } else {
        cell.to_owned()
    }
}

/// A size at its nearest mark, in inches, and in millimetres.
fn length(length: &Result<Length, TextProblem>, tape: Tape) -> [String; 3] {
    match length {
        Ok(length) => {
            let mark = show(*length, tape, Rounding::Nearest)
                .map_or_else(|_| exact_text(*length), |s| s.mark.to_string());
            let [inches, millimetres] = numbers(Some(*length));
            [mark, inches, millimetres]
        }
        Err(problem) => [text(&problem.to_string()), String::new(), String::new()],
    }
}

/// A length in inches with up to four places and in millimetres with up to two: the nearest.
fn numbers(length: Option<Length>) -> [String; 2] {
    let number = |unit, places| length.map_or_else(String::new, |it| decimal(it, unit, places));
    [number(Unit::Inch, 4), number(Unit::Millimetre, 2)]
}

/// A plain number with a point, as spreadsheets read it; no place that is zero at its end.
fn decimal(length: Length, unit: Unit, places: usize) -> String {
    let Ok(number) = length.in_unit(unit) else { return String::new() };
    let scale = (0..places).fold(1_i128, |scale, _| scale.saturating_mul(10));
    let twice = number.numer().abs().saturating_mul(scale).saturating_mul(2);
    let of = number.denom().saturating_mul(2);
    let nearest = twice.saturating_add(number.denom()).checked_div(of).unwrap_or(0);
    let (whole, part) = (nearest / scale, nearest % scale);
    let sign = if number.numer() < 0 && nearest > 0 { "-" } else { "" };
    let digits = format!("{sign}{whole}.{part:0places$}");
    digits.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// The parts of a job, one row each, with a heading. Each size stands at its nearest mark and
/// as numbers.
#[must_use]
pub fn parts_csv(job: &Job, parts: &[PartSizes], tape: Tape) -> String {
    let mut out = String::new();
    let heading = [
        "name",
        "quantity",
        "thickness",
        "thickness in",
        "thickness mm",
        "width",
        "width in",
        "width mm",
        "length",
        "length in",
        "length mm",
        "stock",
        "grain",
        "show face",
        "left and right",
        "done",
        "note",
    ];
    row(&mut out, &heading.map(str::to_owned));
    for sizes in parts {
        let Some(Item::Part(part)) = job.item(sizes.id) else { continue };
        let quantity =
            sizes.quantity.as_ref().map_or_else(|p| text(&p.to_string()), u32::to_string);
        let mut fields = vec![text(&part.name), quantity];
        for side in [&sizes.thickness, &sizes.width, &sizes.length] {
            fields.extend(length(side, tape));
        }
        fields.push(text(&part.stock));
        fields.push(if part.grain == Grain::Locked { "along" } else { "either" }.to_owned());
        fields.push(text(&part.show_face));
        fields.push(if part.hand == Hand::Pairs { "pairs" } else { "alike" }.to_owned());
        fields.push(sizes.done.to_string());
        fields.push(text(&part.note));
        row(&mut out, &fields);
    }
    out
}

/// The batches of a job, one row for each part in each.
#[must_use]
pub fn batches_csv(job: &Job, batches: &[Batch], tape: Tape) -> String {
    let mut out = String::new();
    let heading = [
        "setting",
        "size",
        "size in",
        "size mm",
        "part",
        "pieces",
        "spares of the setting",
        "now or wait",
    ];
    row(&mut out, &heading.map(str::to_owned));
    for batch in batches {
        let setting = match batch.setting {
            Setting::RipWidth => "fence, width",
            Setting::ResawThickness => "fence, thickness",
            Setting::StopLength => "stop, length",
        };
        for part in &batch.parts {
            let name = job.item(part.id).map_or("", Item::name);
            let mut fields = vec![setting.to_owned()];
            fields.extend(length(&Ok(batch.size), tape));
            fields.push(text(name));
            fields.push(part.pieces.to_string());
            fields.push(batch.spares.to_string());
            fields.push(if part.must_wait { "wait" } else { "now" }.to_owned());
            row(&mut out, &fields);
        }
    }
    out
}

/// The boards that a plan buys, one row for each kind, with what is bought of them already.
#[must_use]
pub fn boards_csv(kept: &CutPlan, states: &[BoardState]) -> String {
    let mut out = String::new();
    let heading = [
        "board",
        "count",
        "bought",
        "thickness in",
        "thickness mm",
        "width in",
        "width mm",
        "length in",
        "length mm",
        "price each",
        "price",
    ];
    row(&mut out, &heading.map(str::to_owned));
    for it in shopping(&kept.asked, &kept.plan, &kept.labels).into_iter().flatten() {
        let bought = kept.plan.boards.iter().zip(states).filter(|(cut, state)| {
            cut.source == Source::Board(it.board) && **state != BoardState::ToCut
        });
        let mut fields = vec![text(&it.section), it.count.to_string(), bought.count().to_string()];
        let (thickness, width) = it.size.unzip();
        for size in [thickness, width, Some(it.length)] {
            fields.extend(numbers(size));
        }
        let (each, all) = it.price.unzip();
        let money = |cents: Option<i64>| {
            cents.map_or_else(String::new, |it| format!("{}.{:02}", it / 100, it % 100))
        };
        fields.extend([money(each), money(all)]);
        row(&mut out, &fields);
    }
    out
}
