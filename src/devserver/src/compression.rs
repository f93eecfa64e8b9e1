//! Compressed bodies, made once for each content and kept in memory, whichever server of this process sends them.

use std::collections::HashMap;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::io::{self, Write};
use std::sync::{Arc, LazyLock, Mutex};

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

/// The digest of a body, how it was compressed, and whether as small as can be.
type Key = (u64, Encoding, bool);

/// What was compressed, by content: a file that changes on disk is never served stale.
static MADE: LazyLock<Mutex<HashMap<Key, Arc<[u8]>>>> = LazyLock::new(Mutex::default);

/// The compressed form of `body`; `is_best` takes its time.
pub(crate) fn compressed(body: &[u8], encoding: Encoding, is_best: bool) -> io::Result<Arc<[u8]>> {
    let mut hasher = DefaultHasher::new();
    body.hash(&mut hasher);
    let key = (hasher.finish(), encoding, is_best);
    if let Some(known) = locked(&MADE).get(&key) {
        return Ok(Arc::clone(known));
    }
    let made: Arc<[u8]> = encoding.compress(body, is_best)?.into();
    locked(&MADE).insert(key, Arc::clone(&made));
    Ok(made)
}
