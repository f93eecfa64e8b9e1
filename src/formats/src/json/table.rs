//! What a record is made of: the tables that the reader, the writer and the schema go by.

/// What stands at a place in the text, and its limits.
#[derive(Clone, Copy)]
pub(crate) enum Kind {
    /// A text of at most so many characters.
    Text(usize),
    /// True or false.
    Flag,
    /// A whole number from the first to the second.
    Whole(i128, i128),
    /// One of these words.
    Word(&'static [&'static str]),
    /// A list of at most so many.
    List(&'static Kind, usize),
    /// So many values, in this order, as a list.
    Row(&'static [Kind]),
    /// Named values.
    Record(&'static [Field]),
    /// One of several, as `{"name": value}`, or as `"name"` where there is no more to say.
    Case(&'static [(&'static str, Option<Kind>)]),
    /// `null`, or a value of a case.
    Maybe(&'static Kind),
    /// A record with the fields of its kind, named by its `kind`; its `id` stands in it or beside it.
    Kinds(&'static [KindOf]),
}

/// A kind of record and its fields.
pub(crate) struct KindOf {
    pub(crate) name: &'static str,
    pub(crate) fields: &'static [Field],
    #[cfg(feature = "schema")]
    pub(crate) says: &'static str,
}

/// When a field stands in the text.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Need {
    /// Always.
    Must,
    /// It is written always, and may be missing.
    Written,
    /// Where it is not nothing.
    May,
}

/// A named value of a record.
pub(crate) struct Field {
    pub(crate) name: &'static str,
    pub(crate) kind: Kind,
    pub(crate) need: Need,
    /// For the schema alone: the program does not carry it.
    #[cfg(feature = "schema")]
    pub(crate) says: &'static str,
}

const fn field(name: &'static str, kind: Kind, need: Need, says: &'static str) -> Field {
    #[cfg(not(feature = "schema"))]
    let _ = says;
    Field {
        name,
        kind,
        need,
        #[cfg(feature = "schema")]
        says,
    }
}

/// A field that is always there.
pub(crate) const fn must(name: &'static str, kind: Kind, says: &'static str) -> Field {
    field(name, kind, Need::Must, says)
}

/// A field that is written always and may be missing.
pub(crate) const fn written(name: &'static str, kind: Kind, says: &'static str) -> Field {
    field(name, kind, Need::Written, says)
}

/// A field that is left out where it is nothing.
pub(crate) const fn may(name: &'static str, kind: Kind, says: &'static str) -> Field {
    field(name, kind, Need::May, says)
}

/// A kind of record.
pub(crate) const fn kind_of(
    name: &'static str,
    fields: &'static [Field],
    says: &'static str,
) -> KindOf {
    #[cfg(not(feature = "schema"))]
    let _ = says;
    KindOf {
        name,
        fields,
        #[cfg(feature = "schema")]
        says,
    }
}

/// A number that fits 32 bits and is not below zero.
pub(crate) const U32: Kind = Kind::Whole(0, u32::MAX as i128);
/// A number that fits 64 bits and is not below zero.
pub(crate) const U64: Kind = Kind::Whole(0, u64::MAX as i128);
/// A number that fits 64 bits.
pub(crate) const I64: Kind = Kind::Whole(i64::MIN as i128, i64::MAX as i128);
