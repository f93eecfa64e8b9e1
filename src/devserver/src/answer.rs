//! One request, one answer, and the connection is closed.

use std::io::{self, BufRead, BufReader, Write};
use std::net::TcpStream;
use std::path::{Component, Path, PathBuf};
use std::time::Duration;

use crate::compression::{Encoding, compressed};
use crate::{Compression, Fault, Shared, locked};

/// A browser that says nothing for this long is not going to.
const PATIENCE: Duration = Duration::from_secs(10);
/// More header lines than any browser sends.
const MOST_HEADER_LINES: usize = 100;

/// The parts of a request that matter here.
struct Request {
    method: String,
    target: String,
    encoding: Option<Encoding>,
}

/// Reads one request from `stream` and answers it.
pub(crate) fn answer(mut stream: TcpStream, shared: &Shared) -> io::Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.set_nodelay(true)?;
    let Some(request) = read(&stream)? else {
        return Ok(());
    };
    locked(&shared.requests).push(request.target.clone());
    if request.method != "GET" && request.method != "HEAD" {
        return refuse(&mut stream, "405 Method Not Allowed");
    }
    let path = request.target.split(['?', '#']).next().unwrap_or("/");
    let fault = locked(&shared.faults).get(path).copied();
    let folder = locked(&shared.folder).clone();
    let file = match fault {
        Some(Fault::Missing) => None,
        _ => file_in(&folder, path),
    };
    let Some(file) = file else {
        return refuse(&mut stream, "404 Not Found");
    };
    let Ok(mut body) = std::fs::read(&file) else {
        return refuse(&mut stream, "404 Not Found");
    };
    if fault == Some(Fault::Garbled) {
        body = b"this is not what was asked for".to_vec();
    }
    let encoding = request
        .encoding
        .filter(|_| shared.compression != Compression::Never && is_compressible(&file));
    let mut head = format!(
        "HTTP/1.1 200 OK\r\nContent-Type: {}\r\nCache-Control: no-cache\r\nVary: Accept-Encoding\r\nConnection: close\r\n",
        media_type(&file)
    );
    let body: Box<dyn AsRef<[u8]>> = match encoding {
        Some(encoding) => {
            head.push_str(&format!("Content-Encoding: {}\r\n", encoding.name()));
            let is_best = shared.compression == Compression::Best;
            Box::new(compressed(&body, encoding, is_best)?)
        }
        None => Box::new(body),
    };
    let body: &[u8] = (*body).as_ref();
    head.push_str(&format!("Content-Length: {}\r\n\r\n", body.len()));
    stream.write_all(head.as_bytes())?;
    if request.method == "GET" {
        stream.write_all(body)?;
    }
    stream.flush()
}

fn read(stream: &TcpStream) -> io::Result<Option<Request>> {
    let mut lines = BufReader::new(stream).lines();
    let Some(first) = lines.next().transpose()? else {
        return Ok(None);
    };
    let mut words = first.split_whitespace();
    let (Some(method), Some(target)) = (words.next(), words.next()) else {
        return Ok(None);
    };
    let (method, target) = (method.to_owned(), target.to_owned());
    let mut encoding = None;
    for line in lines.take(MOST_HEADER_LINES) {
        let line = line?;
        if line.is_empty() {
            break;
        }
        if let Some((name, value)) = line.split_once(':')
            && name.eq_ignore_ascii_case("accept-encoding")
        {
            encoding = Encoding::accepted(value);
        }
    }
    Ok(Some(Request { method, target, encoding }))
}

fn refuse(stream: &mut TcpStream, status: &str) -> io::Result<()> {
    let length = status.len();
    write!(
        stream,
        "HTTP/1.1 {status}\r\nContent-Type: text/plain\r\nContent-Length: {length}\r\nConnection: close\r\n\r\n{status}"
    )?;
    stream.flush()
}

/// The file meant by `path`, if it lies inside `folder`. A folder means its `index.html`.
fn file_in(folder: &Path, path: &str) -> Option<PathBuf> {
    let relative = Path::new(path.strip_prefix('/')?);
    let is_inside = relative.components().all(|part| matches!(part, Component::Normal(_)));
    if !is_inside || path.contains(['\\', '%']) {
        return None;
    }
    let file = folder.join(relative);
    Some(if file.is_dir() { file.join("index.html") } else { file })
}

fn extension(file: &Path) -> &str {
    file.extension().and_then(|e| e.to_str()).unwrap_or("")
}

fn is_compressible(file: &Path) -> bool {
    !matches!(extension(file), "png" | "woff2" | "jpg" | "webp")
}

fn media_type(file: &Path) -> &'static str {
    match extension(file) {
        "html" => "text/html; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        "woff2" => "font/woff2",
        "txt" | "md" | "ts" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_never_leaves_the_folder() {
        let folder = Path::new("dist");
        assert_eq!(file_in(folder, "/a.js"), Some(folder.join("a.js")));
        for path in ["/../a", "//etc/passwd", "/a/../../b", "/%2e%2e/a", "a", "/..\\a"] {
            assert_eq!(file_in(folder, path), None, "{path}");
        }
    }
}
