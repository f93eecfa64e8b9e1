//! Reading the jobs with ripped and resawn boards.

#![allow(dead_code, reason = "the tests and the benchmarks each use their part of it")]

use std::fs;
use std::path::Path;

use reckoner_core::cutting::{
    Board, CrossSize, Ends, Job, Part, ResawRules, RipRules, SawRules, Scrap, Section,
};
use serde_json::Value;

use crate::support::{Known, board, part, rows, scrap};

fn int(value: &Value) -> i64 {
    value.as_i64().unwrap()
}

fn text(value: &Value) -> String {
    value.as_str().unwrap().to_owned()
}

fn count(value: &Value) -> u32 {
    u32::try_from(int(value)).unwrap()
}

fn trims(value: &Value) -> Ends {
    Ends { left: int(&value[0]), right: int(&value[1]) }
}

fn rip(json: &Value) -> RipRules {
    let resaw = &json["resaw"];
    RipRules {
        kerf: int(&json["kerf"]),
        near_edge: int(&json["near_edge"]),
        far_edge: int(&json["far_edge"]),
        least_width: int(&json["least_width"]),
        least_length: int(&json["least_length"]),
        crosscut_first: json["crosscut_first"].as_bool().unwrap(),
        resaw: (!resaw.is_null()).then(|| ResawRules {
            kerf: int(&resaw["kerf"]),
            near_face: int(&resaw["near_face"]),
            far_face: int(&resaw["far_face"]),
            least_thickness: int(&resaw["least_thickness"]),
            greatest_width: resaw["greatest_width"].as_i64(),
        }),
    }
}

fn job(json: &Value) -> Job {
    let list = |name: &str| json[name].as_array().cloned().unwrap_or_default();
    let section = |it: &Value| Section {
        id: text(&it["id"]),
        wood: text(&it["wood"]),
        size: Some(CrossSize { width: int(&it["width"]), thickness: int(&it["thickness"]) }),
    };
    let wanted = |it: &Value| Part {
        section: text(&it["section"]),
        may_rip: it["may_rip"].as_bool().unwrap(),
        may_resaw: it["may_resaw"].as_bool().unwrap(),
        ..part(text(&it["id"]), int(&it["length"]), count(&it["quantity"]))
    };
    let bought = |it: &Value| Board {
        section: text(&it["section"]),
        trims: trims(&it["trims"]),
        ..board(text(&it["id"]), int(&it["length"]), int(&it["price_cents"]), None)
    };
    let kept = |it: &Value| Scrap {
        section: text(&it["section"]),
        trims: trims(&it["trims"]),
        ..scrap(text(&it["id"]), int(&it["length"]), count(&it["quantity"]))
    };
    Job {
        sections: list("sections").iter().map(section).collect(),
        parts: list("parts").iter().map(wanted).collect(),
        boards: list("stock").iter().map(bought).collect(),
        scraps: list("scraps").iter().map(kept).collect(),
        saw: SawRules { kerf: int(&json["kerf"]), rip: Some(rip(&json["rip"])) },
    }
}

/// All jobs of the folder's table.
pub(crate) fn rip_jobs(folder: &Path) -> Vec<Known> {
    let table = rows(&folder.join("optima.csv"));
    let at = |name: &str| table[0].iter().position(|cell| cell == name).unwrap();
    let (cost, bound) = (at("best_cost_cents"), at("lower_bound_cents"));
    let read = |row: &Vec<String>| {
        let json = fs::read_to_string(folder.join(format!("{}.json", row[0]))).unwrap();
        Known {
            name: row[0].clone(),
            family: row[1].clone(),
            job: job(&serde_json::from_str(&json).unwrap()),
            optimum: row[cost].parse().unwrap(),
            at_least: row[bound].parse().unwrap(),
        }
    };
    table.iter().skip(1).map(read).collect()
}
