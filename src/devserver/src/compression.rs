//! Compressed bodies, made once for each content and kept in memory.

use std::collections::HashMap;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::io::{self, Write};
use std::sync::{Arc, Mutex};

use crate::locked;

/// Speed before size, where nobody measures.
const BROTLI_QUALITY: u32 = 6;
/// What a server does that compresses ahead of time.
const BROTLI_BEST: u32 = 11;
const BROTLI_WINDOW: u32 = 22;
const BROTLI_BUFFER: usize = 4096;

/// A way of compressing that browsers ask for by name.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(crate) enum Encoding {
    Brotli,
    Gzip,
}

impl Encoding {
    /// The best one the browser accepts.
    pub(crate) fn accepted(header: &str) -> Option<Encoding> {
        let accepts = |name: &str| {
            header.split(',').any(|part| part.split(';').next().is_some_and(|n| n.trim() == name))
        };
        if accepts("br") {
            Some(Encoding::Brotli)
        } else if accepts("gzip") {
            Some(Encoding::Gzip)
        } else {
            None
        }
    }

    /// The name in the `Content-Encoding` header.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Encoding::Brotli => "br",
            Encoding::Gzip => "gzip",
        }
    }

    fn compress(self, body: &[u8], is_best: bool) -> io::Result<Vec<u8>> {
        match self {
            Encoding::Brotli => {
                let mut out = Vec::new();
                let mut writer = brotli::CompressorWriter::new(
                    &mut out,
                    BROTLI_BUFFER,
                    if is_best { BROTLI_BEST } else { BROTLI_QUALITY },
                    BROTLI_WINDOW,
                );
                writer.write_all(body)?;
                drop(writer);
                Ok(out)
            }
            Encoding::Gzip => {
                let level = flate2::Compression::default();
                let mut writer = flate2::write::GzEncoder::new(Vec::new(), level);
                writer.write_all(body)?;
                writer.finish()
            }
        }
    }
}

/// The digest of a body, and how it was compressed.
type Key = (u64, Encoding);

/// Remembers what was compressed, by content: a file that changes on disk is never served stale.
pub(crate) struct Store {
    bodies: Mutex<HashMap<Key, Arc<[u8]>>>,
    is_best: bool,
}

impl Store {
    /// An empty one; `is_best` takes its time.
    pub(crate) fn new(is_best: bool) -> Store {
        Store { bodies: Mutex::default(), is_best }
    }

    /// The compressed form of `body`.
    pub(crate) fn compressed(&self, body: &[u8], encoding: Encoding) -> io::Result<Arc<[u8]>> {
        let mut hasher = DefaultHasher::new();
        body.hash(&mut hasher);
        let key = (hasher.finish(), encoding);
        if let Some(known) = locked(&self.bodies).get(&key) {
            return Ok(Arc::clone(known));
        }
        let made: Arc<[u8]> = encoding.compress(body, self.is_best)?.into();
        locked(&self.bodies).insert(key, Arc::clone(&made));
        Ok(made)
    }
}
