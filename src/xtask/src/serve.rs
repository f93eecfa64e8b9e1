//! `cargo xtask serve`: build, serve on this machine and its network, build again after edits.

use std::fs;
use std::net::{IpAddr, Ipv4Addr, SocketAddr, UdpSocket};
use std::path::Path;
use std::thread::sleep;
use std::time::{Duration, Instant, SystemTime};

use anyhow::{Context, Result};
use reckoner_devserver::{Compression, Server};

use crate::page;
use crate::workspace::{dist, root, say};

/// Where it listens when nothing else is asked for.
pub(crate) const DEFAULT_PORT: u16 = 8080;

/// What the page is made from, and the members in `src` that have no part in it.
const SOURCES: [&str; 4] = ["Cargo.lock", "index.html", "styles", "src"];
const NOT_IN_THE_PAGE: [&str; 3] = ["devserver", "js", "xtask"];
const BETWEEN_LOOKS: Duration = Duration::from_secs(1);

/// Builds the page and serves it until it is interrupted.
pub(crate) fn serve(port: u16) -> Result<()> {
    let mut seen = last_edit(&root());
    page::build_page()?;
    let address = SocketAddr::from((Ipv4Addr::UNSPECIFIED, port));
    let server = Server::at(address, dist(), Compression::WhenAccepted).with_context(|| {
        format!("port {port} cannot be used; name another: cargo xtask serve {}", port ^ 1)
    })?;
    let port = server.address().port();
    println!("Sawdust Reckoner is at");
    println!("  {}    on this machine", server.url());
    match address_on_the_network() {
        Some(ip) => println!("  http://{ip}:{port}/    on a phone on the same network"),
        None => println!("  (no network found, so no address for a phone)"),
    }
    println!("Installing it and using it without a signal work from the first address only:");
    println!("browsers allow that over https or on the machine itself, not over plain http.");
    println!("It is built again after each edit. Stop with Ctrl-C.");
    loop {
        sleep(BETWEEN_LOOKS);
        let now = last_edit(&root());
        if now == seen {
            continue;
        }
        seen = now;
        let start = Instant::now();
        match page::build_page() {
            Ok(()) => say(&format!("built again in {:.1} s", start.elapsed().as_secs_f64())),
            // The last good build stays on the server.
            Err(error) => say(&format!("{error:#}")),
        }
    }
}

/// When a source was last written.
fn last_edit(root: &Path) -> Option<SystemTime> {
    SOURCES.iter().filter_map(|source| newest(&root.join(source))).max()
}

fn newest(path: &Path) -> Option<SystemTime> {
    let entry = fs::metadata(path).ok()?;
    // A folder's own time tells of files that were removed.
    let mut time = entry.modified().ok();
    if entry.is_dir() {
        let inner = fs::read_dir(path).ok()?.flatten();
        for inner in inner.filter(|i| NOT_IN_THE_PAGE.iter().all(|name| i.file_name() != *name)) {
            time = time.max(newest(&inner.path()));
        }
    }
    time
}

/// This machine's address as its network sees it.
///
/// Asking a datagram socket for a route sends nothing; the address asked about is one that is
/// reserved for documentation.
fn address_on_the_network() -> Option<IpAddr> {
    let socket = UdpSocket::bind((Ipv4Addr::UNSPECIFIED, 0)).ok()?;
    socket.connect((Ipv4Addr::new(192, 0, 2, 1), 9)).ok()?;
    let ip = socket.local_addr().ok()?.ip();
    (!ip.is_loopback() && !ip.is_unspecified()).then_some(ip)
}
