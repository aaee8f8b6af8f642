//! What is left when a signal stops the command: no half-written file.

use std::io;
use std::path::PathBuf;
use std::sync::{Mutex, MutexGuard, PoisonError};

use tempfile::NamedTempFile;

/// The scratch file that is being written, one at a time.
static SCRATCH: Mutex<Option<PathBuf>> = Mutex::new(None);

/// While this is held no signal stops the command.
fn held() -> MutexGuard<'static, Option<PathBuf>> {
    SCRATCH.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Makes a scratch file that goes away if a signal stops the command.
///
/// # Errors
/// Those of making it.
pub(super) fn guarded(
    make: impl FnOnce() -> io::Result<NamedTempFile>,
) -> io::Result<NamedTempFile> {
    watch();
    let mut scratch = held();
    let made = make()?;
    *scratch = Some(made.path().to_owned());
    Ok(made)
}

/// Puts a scratch file in its place; a signal waits until it stands there.
pub(super) fn put<T>(place: impl FnOnce() -> T) -> T {
    let mut scratch = held();
    let put = place();
    *scratch = None;
    put
}

/// Has signals remove the scratch file before they do what they usually do.
#[cfg(unix)]
fn watch() {
    use signal_hook::consts::{SIGHUP, SIGINT, SIGTERM};
    use signal_hook::iterator::Signals;
    use std::sync::Once;

    static WATCHED: Once = Once::new();
    WATCHED.call_once(|| {
        let ignored = ignored();
        let heeded = [SIGHUP, SIGINT, SIGTERM]
            .into_iter()
            .filter(|signal| ignored & (1 << (signal - 1)) == 0);
        // Without its signals a system has nothing to be told of.
        if let Ok(mut signals) = Signals::new(heeded) {
            std::thread::spawn(move || {
                for signal in signals.forever() {
                    stop(signal);
                }
            });
        }
    });
}

#[cfg(not(unix))]
fn watch() {}

/// Removes the scratch file and ends the command as the signal does by itself.
#[cfg(unix)]
fn stop(signal: i32) {
    let scratch = held();
    if let Some(path) = scratch.as_deref() {
        // It may not be there yet, or no longer.
        let _ = std::fs::remove_file(path);
    }
    let _ = signal_hook::low_level::emulate_default_handler(signal);
}

/// The signals that whoever started the command wants ignored, as `nohup` does: a bit
/// each, the first for signal 1. Only Linux tells; elsewhere none.
#[cfg(unix)]
fn ignored() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let bits = status
        .lines()
        .find_map(|line| line.strip_prefix("SigIgn:"))
        .map(str::trim);
    bits.and_then(|bits| u64::from_str_radix(bits, 16).ok())
        .unwrap_or(0)
}
