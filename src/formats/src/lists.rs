//! Parts and batches as CSV (RFC 4180), for a spreadsheet.

use reckoner_core::job::{Batch, Grain, Hand, Item, Job, PartSizes, Setting};
use reckoner_core::measure::text::{TextProblem, exact_text, show};
use reckoner_core::measure::{Length, Rounding, Tape};

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

fn length(length: &Result<Length, TextProblem>, tape: Tape) -> [String; 2] {
    match length {
        Ok(length) => [
            show(*length, tape, Rounding::Nearest)
                .map_or_else(|_| exact_text(*length), |s| s.mark.to_string()),
            exact_text(*length),
        ],
        Err(problem) => [text(&problem.to_string()), String::new()],
    }
}

/// The parts of a job, one row each, with a heading. Each size stands at its nearest mark and
/// exactly.
#[must_use]
pub fn parts_csv(job: &Job, parts: &[PartSizes], tape: Tape) -> String {
    let mut out = String::new();
    let heading = [
        "name",
        "quantity",
        "thickness",
        "thickness exact",
        "width",
        "width exact",
        "length",
        "length exact",
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
    let heading =
        ["setting", "size", "size exact", "part", "pieces", "spares of the setting", "now or wait"];
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
