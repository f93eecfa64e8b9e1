//! JSON (RFC 8259) by tables: what a record is made of stands in a list of [`Field`]s, and one
//! reader, one writer and the schema go by it.
//!
//! The reader looks at the text where it lies. It keeps nothing of a list before it has counted
//! it, and nothing of a value but the value itself, so hostile input takes no more room than
//! honest input of its length.

mod read;
mod scan;
#[cfg(feature = "schema")]
pub(crate) mod schema;
mod table;
#[cfg(test)]
mod tests;
mod write;

pub(crate) use read::{Fault, Faults, Record, Value};
pub(crate) use scan::{check, elements, member, unquoted};
pub(crate) use table::{Field, I64, Kind, KindOf, U32, U64, kind_of, may, must, written};
pub(crate) use write::{Fields, Writer};
