//! Parts, a cut plan, the build order and what is bought as CSV (RFC 4180), for a spreadsheet. Every size has columns with
//! plain numbers, in inches and in millimetres, so that they can be summed.

use reckoner_core::build_order::BuildOrder;
use reckoner_core::cutting::{self, Source};
use reckoner_core::job::cut_labels::Labels;
use reckoner_core::job::{Grain, Hand, Item, Job, PartSizes};
use reckoner_core::measure::text::{TextProblem, exact_text, show};
use reckoner_core::measure::{Length, Rounding, Tape, Unit};
use reckoner_core::planning::report::{BoardCut, What};
use reckoner_core::to_buy::ToBuy;

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

/// The build order of a job, one row for the pieces of each part in each step.
#[must_use]
pub fn build_order_csv(job: &Job, order: &BuildOrder, tape: Tape) -> String {
    let mut out = String::new();
    let heading = [
        "step",
        "what",
        "setting",
        "setting in",
        "setting mm",
        "part",
        "pieces",
        "board",
        "done",
        "waits for",
    ];
    row(&mut out, &heading.map(str::to_owned));
    for (number, step) in (1_u32..).zip(&order.steps) {
        let setting = match step.setting {
            Some(setting) => length(&Ok(setting), tape),
            None => [String::new(), String::new(), String::new()],
        };
        let waits: Vec<String> =
            step.waits_for.iter().map(|wait| wait.sentence(job, order).on(tape)).collect();
        let mut write = |part: &str, pieces: usize, board: Option<u32>, is_done: bool| {
            let mut fields = vec![number.to_string(), text(&step.title(job))];
            fields.extend(setting.clone());
            fields.push(text(part));
            fields.push(if pieces == 0 { String::new() } else { pieces.to_string() });
            fields.push(board.map_or_else(String::new, |board| board.to_string()));
            fields.push(if is_done { "yes" } else { "no" }.to_owned());
            fields.push(text(&waits.join("; ")));
            row(&mut out, &fields);
        };
        for it in &step.pieces {
            let name = job.item(it.part).map_or("", Item::name);
            write(name, it.pieces.len(), it.board, step.is_done || it.is_cut);
        }
        if step.pieces.is_empty() {
            write("", 0, None, step.is_done);
        }
    }
    out
}

/// What is cut from each board of a plan, and what is left over of it: one row each, in the order of the board, from its
/// left end. A piece that is ripped or resawn has the width or the thickness it comes to.
#[must_use]
pub fn cut_plan_csv(job: &cutting::Job, labels: &Labels, boards: &[BoardCut]) -> String {
    let mut out = String::new();
    let heading = [
        "board",
        "section",
        "board in",
        "board mm",
        "piece",
        "from in",
        "from mm",
        "to in",
        "to mm",
        "width in",
        "width mm",
        "thickness in",
        "thickness mm",
        "left over in",
        "left over mm",
    ];
    row(&mut out, &heading.map(str::to_owned));
    for board in boards {
        let section = match board.source {
            Source::Board(at) => job.boards.get(at).map(|it| &it.section),
            Source::Scrap(at) => job.scraps.get(at).map(|it| &it.section),
        };
        let section = section.and_then(|id| labels.section(job, id));
        let section = section.map_or("", |it| it.name.as_str());
        for cut in &board.rows {
            for it in &cut.stretches {
                let left_over = (it.to - it.from).ok();
                let mut write = |piece: &str, width: Option<Length>, left: Option<Length>| {
                    let mut fields = vec![board.number.to_string(), text(section)];
                    fields.extend(numbers(Some(board.length)));
                    fields.push(text(piece));
                    for size in [Some(it.from), Some(it.to), width, cut.thickness, left] {
                        fields.extend(numbers(size));
                    }
                    row(&mut out, &fields);
                };
                match &it.what {
                    What::Part { name, .. } => write(name, cut.width, None),
                    What::Block { parts, .. } => {
                        parts.iter().for_each(|(_, name, across)| write(name, Some(*across), None));
                    }
                    What::Leftover => write("", cut.width, left_over),
                    What::Kerf | What::Trim | What::Knot => {}
                }
            }
        }
    }
    out
}

/// Everything to buy, one row for each line, with what is on hand and bought of it already.
#[must_use]
pub fn to_buy_csv(list: &ToBuy) -> String {
    let mut out = String::new();
    let heading = [
        "what",
        "count",
        "spares",
        "on hand",
        "bought",
        "to buy",
        "thickness in",
        "thickness mm",
        "width in",
        "width mm",
        "length in",
        "length mm",
        "price each",
        "price",
        "for",
    ];
    row(&mut out, &heading.map(str::to_owned));
    for it in &list.lines {
        let counts = [it.wanted, it.spares, it.on_hand, it.bought, it.to_come()];
        let mut fields = vec![text(&it.name)];
        fields.extend(counts.iter().map(u32::to_string));
        for size in [it.thickness, it.width, it.length] {
            fields.extend(numbers(size));
        }
        let money = |cents: Option<i64>| {
            cents.map_or_else(String::new, |it| format!("{}.{:02}", it / 100, it % 100))
        };
        fields.extend([money(it.each), money(it.price())]);
        fields.push(text(&it.uses.join(", ")));
        row(&mut out, &fields);
    }
    out
}
