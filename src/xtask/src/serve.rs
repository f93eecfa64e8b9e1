//! `cargo xtask serve`: build, then serve on this machine and its network.

use std::net::{IpAddr, Ipv4Addr, SocketAddr, UdpSocket};

use anyhow::{Context, Result};
use reckoner_devserver::{Compression, Server};

use crate::page;
use crate::workspace::dist;

/// Where it listens when nothing else is asked for.
pub(crate) const DEFAULT_PORT: u16 = 8080;

/// Builds the page and serves it until it is interrupted.
pub(crate) fn serve(port: u16) -> Result<()> {
    page::build_page()?;
    let address = SocketAddr::from((Ipv4Addr::UNSPECIFIED, port));
    let server = Server::at(address, dist(), Compression::WhenAccepted).with_context(|| {
        format!("port {port} cannot be used; name another: cargo xtask serve {}", port ^ 1)
    })?;
    let port = server.address().port();
    println!("Sawdust Reckoner is at");
    println!("  {}            on this machine", server.url());
    match address_on_the_network() {
        Some(ip) => println!("  http://{ip}:{port}/    on a phone on the same network"),
        None => println!("  (no network found, so no address for a phone)"),
    }
    println!("Installing it and using it without a signal work from the first address only:");
    println!("browsers allow that over https or on the machine itself, not over plain http.");
    println!("Stop with Ctrl-C.");
    server.wait();
    Ok(())
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
