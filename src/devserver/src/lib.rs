//! A small static file server for development, journeys and measurements.
//!
//! It serves one folder from its own thread, compressed when the browser asks for that. It is
//! made to be mistreated: [`Server::stop`] closes the socket for real (the browser sees a dead
//! server, not an error page), [`Server::start_again`] brings it back on the same port,
//! [`Server::serve_folder`] swaps the release behind a running page, and [`Server::spoil`]
//! makes a single file fail. It is not meant for the open internet.

mod answer;
mod compression;

use std::collections::BTreeMap;
use std::io;
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::PathBuf;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;

/// What goes wrong with one file, see [`Server::spoil`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// The server answers "404 Not Found".
    Missing,
    /// The right type and status, but the bytes are not the file's.
    Garbled,
}

/// Whether bodies are sent compressed to a browser that accepts it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Compression {
    /// Brotli or gzip, whichever the browser names first in our order of preference.
    WhenAccepted,
    /// The same, as small as a server can that compresses ahead of time; the first answer with a file takes seconds.
    Best,
    /// Every body as it lies on the disk.
    Never,
}

/// What the connection threads share with the handle.
struct Shared {
    folder: Mutex<PathBuf>,
    faults: Mutex<BTreeMap<String, Fault>>,
    requests: Mutex<Vec<String>>,
    compression: Compression,
}

/// A running server. Dropping it stops it.
pub struct Server {
    address: SocketAddr,
    shared: Arc<Shared>,
    listening: Mutex<Option<Listening>>,
}

/// The accepting thread and its off switch.
struct Listening {
    off: Arc<AtomicBool>,
    thread: JoinHandle<()>,
}

impl Server {
    /// Serves `folder` on a free port of this machine only, compressing when accepted.
    ///
    /// # Errors
    ///
    /// When no socket can be opened.
    pub fn on_this_machine(folder: impl Into<PathBuf>) -> io::Result<Server> {
        let address = SocketAddr::from((Ipv4Addr::LOCALHOST, 0));
        Server::at(address, folder, Compression::WhenAccepted)
    }

    /// Serves `folder` at an address of your choice; port 0 picks a free one.
    ///
    /// # Errors
    ///
    /// When the address is taken or may not be used.
    pub fn at(
        address: SocketAddr,
        folder: impl Into<PathBuf>,
        compression: Compression,
    ) -> io::Result<Server> {
        let shared = Arc::new(Shared {
            folder: Mutex::new(folder.into()),
            faults: Mutex::default(),
            requests: Mutex::default(),
            compression,
        });
        let listener = TcpListener::bind(address)?;
        let address = listener.local_addr()?;
        let listening = listen(listener, &shared);
        Ok(Server { address, shared, listening: Mutex::new(Some(listening)) })
    }

    /// Where it listens.
    pub fn address(&self) -> SocketAddr {
        self.address
    }

    /// The app's own page, as a browser on this machine would call it. `localhost` counts as a
    /// safe place for a service worker, a bare address of the network does not.
    pub fn url(&self) -> String {
        format!("http://localhost:{}/", self.address.port())
    }

    /// Closes the socket. From here on a browser gets no connection at all.
    pub fn stop(&self) {
        let Some(listening) = locked(&self.listening).take() else {
            return;
        };
        listening.off.store(true, Ordering::SeqCst);
        // The accepting thread sleeps in `accept`; one last knock wakes it to see the switch.
        let knock = SocketAddr::from((Ipv4Addr::LOCALHOST, self.address.port()));
        drop(TcpStream::connect(knock));
        // A thread that panicked has let go of the socket just as well.
        drop(listening.thread.join());
    }

    /// Listens again on the same port after [`Server::stop`].
    ///
    /// # Errors
    ///
    /// When somebody else has taken the port meanwhile.
    pub fn start_again(&self) -> io::Result<()> {
        let mut listening = locked(&self.listening);
        if listening.is_none() {
            *listening = Some(listen(TcpListener::bind(self.address)?, &self.shared));
        }
        Ok(())
    }

    /// From the next request on, serves another folder: a new release is on the server.
    pub fn serve_folder(&self, folder: impl Into<PathBuf>) {
        *locked(&self.shared.folder) = folder.into();
    }

    /// Makes one file fail from now on. `path` as in the address, with the leading slash.
    pub fn spoil(&self, path: impl Into<String>, fault: Fault) {
        locked(&self.shared.faults).insert(path.into(), fault);
    }

    /// Ends all faults.
    pub fn mend(&self) {
        locked(&self.shared.faults).clear();
    }

    /// The paths asked for since the start, in order, with their queries.
    pub fn requests(&self) -> Vec<String> {
        locked(&self.shared.requests).clone()
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.stop();
    }
}

/// A lock whose holder panicked still guards plain data that is whole.
fn locked<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

fn listen(listener: TcpListener, shared: &Arc<Shared>) -> Listening {
    let off = Arc::new(AtomicBool::new(false));
    let (switch, shared) = (Arc::clone(&off), Arc::clone(shared));
    let thread = std::thread::spawn(move || {
        for stream in listener.incoming() {
            if switch.load(Ordering::SeqCst) {
                return;
            }
            let Ok(stream) = stream else { continue };
            let shared = Arc::clone(&shared);
            // A browser that hangs up in the middle of an answer is its own business.
            std::thread::spawn(move || drop(answer::answer(stream, &shared)));
        }
    });
    Listening { off, thread }
}

#[cfg(test)]
mod tests;
