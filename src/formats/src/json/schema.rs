//! The JSON Schema (draft 2020-12) of what the tables describe.

use super::table::{Field, Kind, Need, U64};
use super::write::{Fields, Writer};

/// The schema of a record.
pub(crate) fn of(title: &str, fields: &'static [Field]) -> String {
    let mut w = Writer::new(true);
    let schema = "https://json-schema.org/draft/2020-12/schema";
    w.record(&[], |out| {
        out.besides("$schema", |w| w.text(schema));
        out.besides("title", |w| w.text(title));
        record(out, fields, None);
    });
    w.out
}

/// What is known of a record, within its braces.
fn record(out: &mut Fields, fields: &'static [Field], kind: Option<&'static str>) {
    out.besides("type", |w| w.text("object"));
    out.besides("properties", |w| {
        w.record(&[], |out| {
            if let Some(kind) = kind {
                let says = "Given once in a job, never used again.";
                out.besides("id", |w| value(w, U64, says));
                out.besides("kind", |w| {
                    w.record(&[], |out| out.besides("const", |w| w.text(kind)));
                });
            }
            for field in fields {
                out.besides(field.name, |w| value(w, field.kind, field.says));
            }
        });
    });
    let own = kind.map(|_| ["id", "kind"]).into_iter().flatten();
    let must = fields.iter().filter(|field| field.need == Need::Must).map(|field| field.name);
    let must: Vec<&str> = own.chain(must).collect();
    out.besides("required", |w| w.list(&must, |w, name| w.text(name)));
}

fn value(w: &mut Writer, kind: Kind, says: &str) {
    w.record(&[], |out| {
        if !says.is_empty() {
            out.besides("description", |w| w.text(says));
        }
        within(out, kind);
    });
}

fn typed(out: &mut Fields, name: &str) {
    out.besides("type", |w| w.text(name));
}

fn within(out: &mut Fields, kind: Kind) {
    match kind {
        Kind::Text(most) => {
            typed(out, "string");
            out.besides("maxLength", |w| w.int(most));
        }
        Kind::Flag => typed(out, "boolean"),
        Kind::Whole(least, most) => {
            typed(out, "integer");
            out.besides("minimum", |w| w.int(least));
            out.besides("maximum", |w| w.int(most));
        }
        Kind::Word(words) => out.besides("enum", |w| w.list(words, |w, word| w.text(word))),
        Kind::List(kind, most) => {
            typed(out, "array");
            out.besides("items", |w| value(w, *kind, ""));
            out.besides("maxItems", |w| w.int(most));
        }
        Kind::Row(kinds) => {
            typed(out, "array");
            out.besides("prefixItems", |w| w.list(kinds, |w, kind| value(w, *kind, "")));
            out.besides("minItems", |w| w.int(kinds.len()));
            out.besides("maxItems", |w| w.int(kinds.len()));
        }
        Kind::Record(fields) => record(out, fields, None),
        Kind::Maybe(kind) => out.besides("anyOf", |w| {
            w.row(&mut [&mut |w| value(w, *kind, ""), &mut |w| {
                w.record(&[], |out| typed(out, "null"))
            }]);
        }),
        Kind::Case(cases) => out.besides("oneOf", |w| {
            w.list(cases, |w, (name, kind)| {
                w.record(&[], |out| match kind {
                    None => out.besides("const", |w| w.text(name)),
                    Some(kind) => {
                        typed(out, "object");
                        out.besides("properties", |w| w.case(name, |w| value(w, *kind, "")));
                        out.besides("required", |w| w.list(&[name], |w, name| w.text(name)));
                    }
                });
            });
        }),
        Kind::Kinds(kinds) => out.besides("oneOf", |w| {
            w.list(kinds, |w, kind| {
                w.record(&[], |out| {
                    if !kind.says.is_empty() {
                        out.besides("description", |w| w.text(kind.says));
                    }
                    record(out, kind.fields, Some(kind.name));
                });
            });
        }),
    }
}
