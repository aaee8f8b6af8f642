//! A line of progress on a terminal, once a run takes longer than a second.

use std::io::{self, IsTerminal, Write};
use std::sync::Mutex;
use std::sync::atomic::{AtomicU32, Ordering};
use std::time::{Duration, Instant};

/// Runs shorter than this show nothing.
const PATIENCE: Duration = Duration::from_secs(1);
/// Time between two updates of the line.
const PACE: Duration = Duration::from_millis(200);

/// Counts what is done of a known number.
pub(super) struct Progress {
    total: u32,
    done: AtomicU32,
    /// When the line is next written; none where nobody looks.
    due: Option<Mutex<Instant>>,
}

impl Progress {
    pub(super) fn of(total: u32) -> Self {
        let watched = io::stderr().is_terminal();
        Self {
            total,
            done: AtomicU32::new(0),
            due: watched.then(|| Mutex::new(Instant::now() + PATIENCE)),
        }
    }

    /// Counts some more as done.
    pub(super) fn advance(&self, count: u32) {
        let done = self.done.fetch_add(count, Ordering::Relaxed) + count;
        let Some(due) = &self.due else {
            return;
        };
        // Another thread that is writing the line right now will do.
        let Ok(mut due) = due.try_lock() else {
            return;
        };
        if Instant::now() >= *due {
            *due = Instant::now() + PACE;
            let _ = write!(io::stderr(), "\r{done} of {} runs", self.total);
        }
    }

    /// Takes the line away again.
    pub(super) fn finish(&self) {
        if self.due.is_some() {
            let _ = write!(io::stderr(), "\r{:40}\r", "");
        }
    }
}
