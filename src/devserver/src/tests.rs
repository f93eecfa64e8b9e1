//! The server as a browser sees it.

use std::fs;
use std::io::{Read, Write};
use std::net::TcpStream;
use std::path::PathBuf;

use crate::{Compression, Fault, Server};

/// A folder of its own for each test, inside Cargo's target folder.
fn folder(name: &str) -> PathBuf {
    let folder =
        PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../target/devserver-tests").join(name);
    fs::create_dir_all(&folder).expect("a folder for the test");
    fs::write(folder.join("index.html"), "shell ".repeat(200)).expect("index.html");
    fs::write(folder.join("a.wasm"), b"\0asm").expect("a.wasm");
    folder
}

/// Sends one request; `None` when there is no server.
fn get(server: &Server, path: &str, headers: &str) -> Option<String> {
    let mut stream = TcpStream::connect(server.address()).ok()?;
    write!(stream, "GET {path} HTTP/1.1\r\n{headers}\r\n").ok()?;
    let mut answer = Vec::new();
    stream.read_to_end(&mut answer).ok()?;
    Some(String::from_utf8_lossy(&answer).into_owned())
}

#[test]
fn wasm_is_sent_as_wasm_and_a_folder_as_its_index() {
    let server = Server::on_this_machine(folder("types")).expect("server");
    let wasm = get(&server, "/a.wasm", "").expect("an answer");
    assert!(wasm.contains("Content-Type: application/wasm"), "{wasm}");
    let index = get(&server, "/?from=home", "").expect("an answer");
    assert!(index.ends_with(&"shell ".repeat(200)), "{index}");
    assert_eq!(server.requests(), ["/a.wasm", "/?from=home"]);
}

#[test]
fn bodies_are_compressed_only_when_asked_for_and_allowed() {
    let folder = folder("compression");
    let server = Server::on_this_machine(&folder).expect("server");
    let header = "Accept-Encoding: gzip, br;q=0.9\r\n";
    let packed = get(&server, "/", header).expect("an answer");
    assert!(packed.contains("Content-Encoding: br"), "{packed}");
    assert!(packed.len() < 600, "{}", packed.len());
    let plain = get(&server, "/", "").expect("an answer");
    assert!(!plain.contains("Content-Encoding"), "{plain}");

    let never = Server::at(([127, 0, 0, 1], 0).into(), folder, Compression::Never).expect("server");
    let plain = get(&never, "/", header).expect("an answer");
    assert!(!plain.contains("Content-Encoding"), "{plain}");
}

#[test]
fn a_stopped_server_takes_no_connection_and_comes_back_on_its_port() {
    let server = Server::on_this_machine(folder("off")).expect("server");
    assert!(get(&server, "/", "").is_some());
    server.stop();
    assert_eq!(get(&server, "/", ""), None);
    server.start_again().expect("the same port");
    assert!(get(&server, "/", "").is_some());
}

#[test]
fn a_spoiled_file_fails_alone_until_mended() {
    let server = Server::on_this_machine(folder("faults")).expect("server");
    let status = |path: &str| get(&server, path, "").map(|a| a.contains("200 OK"));
    server.spoil("/a.wasm", Fault::Missing);
    assert_eq!(status("/a.wasm"), Some(false));
    assert_eq!(status("/"), Some(true));
    server.spoil("/a.wasm", Fault::Garbled);
    let garbled = get(&server, "/a.wasm", "").expect("an answer");
    assert!(garbled.contains("200 OK") && !garbled.contains("\0asm"), "{garbled}");
    server.mend();
    assert!(get(&server, "/a.wasm", "").is_some_and(|a| a.contains("\0asm")));
}
