//! Helpers that only tests use: the imports of a source tree, and PDFs read back.
#![allow(clippy::disallowed_methods, reason = "a test reads what it looks at")]

pub mod paper;
pub mod rooms;

use std::path::Path;

/// Copies the demo job to a folder, without a register that somebody's own issue left in it.
pub fn copy_demo(to: &Path) {
    copy(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../../content"), to).unwrap_or_else(|e| panic!("the demo cannot be copied: {e}"));
}

fn copy(from: &Path, to: &Path) -> std::io::Result<()> {
    std::fs::create_dir_all(to)?;
    for entry in std::fs::read_dir(from)? {
        let entry = entry?;
        if entry.file_name().to_string_lossy().contains("register") {
            continue;
        }
        let target = to.join(entry.file_name());
        if entry.path().is_dir() {
            copy(&entry.path(), &target)?;
        } else {
            std::fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}

/// Works on each item on as many threads as there are processors, keeping the order.
pub fn side_by_side<T: Sync, R: Send>(items: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let threads = std::thread::available_parallelism().map_or(2, std::num::NonZero::get).min(8);
    let next = std::sync::atomic::AtomicUsize::new(0);
    let done = std::sync::Mutex::new(Vec::new());
    std::thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(|| {
                loop {
                    let i = next.fetch_add(1, std::sync::atomic::Ordering::Relaxed);
                    let Some(item) = items.get(i) else { break };
                    let result = work(item);
                    done.lock().unwrap().push((i, result));
                }
            });
        }
    });
    let mut all = done.into_inner().unwrap();
    all.sort_by_key(|(i, _)| *i);
    all.into_iter().map(|(_, r)| r).collect()
}
