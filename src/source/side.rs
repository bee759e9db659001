//! Work on many things on all processors, with the results in the order of the things.

use std::num::NonZero;
use std::sync::atomic::{AtomicUsize, Ordering};

/// Works on each item, on as many threads as there are processors; the results stand in the order of the items.
///
/// A panic in `work` goes on in the caller, as it would without threads.
pub fn side_by_side<'i, T: Sync, R: Send>(items: &'i [T], work: impl Fn(&'i T) -> R + Sync) -> Vec<R> {
    let threads = std::thread::available_parallelism().map_or(1, NonZero::get).min(items.len());
    if threads < 2 {
        return items.iter().map(work).collect();
    }
    let next = AtomicUsize::new(0);
    let share = || {
        let mut done = Vec::new();
        loop {
            let i = next.fetch_add(1, Ordering::Relaxed);
            let Some(item) = items.get(i) else { return done };
            done.push((i, work(item)));
        }
    };
    let mut all: Vec<(usize, R)> = std::thread::scope(|scope| {
        let threads: Vec<_> = (0..threads).map(|_| scope.spawn(share)).collect();
        threads.into_iter().flat_map(|t| t.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))).collect()
    });
    all.sort_by_key(|(i, _)| *i);
    all.into_iter().map(|(_, result)| result).collect()
}

#[cfg(test)]
mod tests {
    use super::side_by_side;

    #[test]
    fn results_stand_in_the_order_of_the_items() {
        let items: Vec<u64> = (0..500).collect();
        // The first ones take longest, so that later ones are done before them.
        let sum = |n: &u64| (0..(500 - n) * 50).sum::<u64>();
        assert_eq!(side_by_side(&items, sum), items.iter().map(sum).collect::<Vec<_>>());
        assert_eq!(side_by_side(&[] as &[u64], |n| *n), Vec::<u64>::new());
    }
}
