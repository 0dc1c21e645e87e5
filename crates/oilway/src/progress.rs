//! A word of life while something takes longer than a second: on the terminal beside the answer, and only if somebody watches.

use std::sync::mpsc::{RecvTimeoutError, Sender, channel};
use std::thread::JoinHandle;
use std::time::Duration;

use indicatif::{ProgressBar, ProgressStyle};
use oilway_text::{Message, Reader, say};

use crate::desk::Desk;

/// Nobody waits for an answer before this.
const PATIENCE: Duration = Duration::from_secs(1);
const TICK: Duration = Duration::from_millis(120);

/// Shows that work goes on until it is dropped.
pub(crate) struct Progress {
    running: Option<(Sender<()>, JoinHandle<()>)>,
}

impl Progress {
    /// Work with this name begins.
    pub(crate) fn begin(desk: &Desk, what: &Message) -> Self {
        if !desk.watched || desk.json {
            return Progress { running: None };
        }
        let words = say(what, &Reader::default());
        let (stop, stopped) = channel::<()>();
        let watch = std::thread::spawn(move || {
            if stopped.recv_timeout(PATIENCE) != Err(RecvTimeoutError::Timeout) {
                return;
            }
            let bar =
                ProgressBar::new_spinner().with_message(words).with_style(ProgressStyle::default_spinner());
            while stopped.recv_timeout(TICK) == Err(RecvTimeoutError::Timeout) {
                bar.tick();
            }
            bar.finish_and_clear();
        });
        Progress { running: Some((stop, watch)) }
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        if let Some((stop, watch)) = self.running.take() {
            drop(stop);
            // The thread draws and nothing else: if it fell over, there is nothing to clear up.
            let _ = watch.join();
        }
    }
}
