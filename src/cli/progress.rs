//! A line of progress on a terminal, once a run takes longer than a second.

use std::io::{self, IsTerminal, Stderr, Write};
use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

/// Runs shorter than this show nothing.
const PATIENCE: Duration = Duration::from_secs(1);
/// Time between two updates of the line.
const PACE: Duration = Duration::from_millis(200);

/// Counts what is done of a known number.
pub(super) struct Progress {
    total: u64,
    /// What is counted, as in "12 of 60 rows".
    what: &'static str,
    done: AtomicU64,
    /// None where nobody looks.
    line: Option<Mutex<Line<Stderr>>>,
}

impl Progress {
    /// Shown where standard error is a terminal.
    pub(super) fn of(total: u64, what: &'static str) -> Self {
        let watched = io::stderr().is_terminal();
        Self {
            total,
            what,
            done: AtomicU64::new(0),
            line: watched.then(|| Mutex::new(Line::on(io::stderr()))),
        }
    }

    /// Not shown where results go to the same terminal while they are counted.
    pub(super) fn beside(self, results_are_seen: bool) -> Self {
        Self {
            line: self.line.filter(|_| !results_are_seen),
            ..self
        }
    }

    /// Counts some more as done.
    pub(super) fn advance(&self, count: u64) {
        let done = self.done.fetch_add(count, Ordering::Relaxed) + count;
        // Another thread that is writing the line right now will do.
        let Some(Ok(mut line)) = self.line.as_ref().map(Mutex::try_lock) else {
            return;
        };
        if Instant::now() >= line.due {
            line.show(&format!("{done} of {} {}", self.total, self.what));
        }
    }

    /// Takes the line away again.
    pub(super) fn finish(&self) {
        if let Some(Ok(mut line)) = self.line.as_ref().map(Mutex::lock) {
            line.erase();
        }
    }
}

/// A line that is written over itself.
struct Line<W> {
    to: W,
    /// When it is next written.
    due: Instant,
    /// Characters that stand there.
    width: usize,
}

impl<W: Write> Line<W> {
    fn on(to: W) -> Self {
        Self {
            to,
            due: Instant::now() + PATIENCE,
            width: 0,
        }
    }

    /// Nothing is lost where the terminal takes no more of it.
    fn show(&mut self, text: &str) {
        let _ = write!(self.to, "\r{text:width$}", width = self.width);
        let _ = self.to.flush();
        self.width = text.len().max(self.width);
        self.due = Instant::now() + PACE;
    }

    fn erase(&mut self) {
        if self.width > 0 {
            let _ = write!(self.to, "\r{:width$}\r", "", width = self.width);
            let _ = self.to.flush();
            self.width = 0;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What a terminal of one line shows of some text.
    fn seen(text: &str) -> String {
        let mut line: Vec<char> = Vec::new();
        let mut column = 0;
        for character in text.chars() {
            if character == '\r' {
                column = 0;
                continue;
            }
            line.resize(line.len().max(column + 1), ' ');
            line[column] = character;
            column += 1;
        }
        line.into_iter().collect::<String>().trim_end().to_owned()
    }

    #[test]
    fn the_line_is_written_over_itself_and_erased() {
        let mut line = Line::on(Vec::new());
        line.show("100 of 200 rows");
        line.show("7 of 7 rows");
        let shown = String::from_utf8(line.to.clone()).unwrap();
        assert_eq!(seen(&shown), "7 of 7 rows");
        line.erase();
        let left = String::from_utf8(line.to).unwrap();
        assert_eq!(seen(&left), "");
        assert!(left.ends_with('\r') && !left.contains('\n'), "{left:?}");
    }

    #[test]
    fn a_line_that_never_showed_leaves_nothing() {
        let mut line = Line::on(Vec::new());
        line.erase();
        assert!(line.to.is_empty());
    }
}
