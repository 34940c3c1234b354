//! Moving things apart, always the same way for the same input.

use iced::Point;

/// Moves sorted places on a line as little as possible so that they lie at least `gap` apart within `from..=to`.
/// Where the line is too short for that, they share it evenly. Returns the gap that was kept.
pub(super) fn along(places: &mut [f32], gap: f32, from: f32, to: f32) -> f32 {
    let Some(steps) = places.len().checked_sub(1) else { return gap };
    let room = (to - from).max(0.0);
    let gap = if steps == 0 { gap } else { gap.min(room / steps as f32) };
    // With the wanted gaps taken out, what is left must only not decrease: that is isotonic regression.
    let slack = room - gap * steps as f32;
    let wanted: Vec<f32> = places.iter().enumerate().map(|(i, place)| place - gap * i as f32).collect();
    for (i, (place, base)) in places.iter_mut().zip(isotonic(&wanted)).enumerate() {
        *place = base.clamp(from, from + slack.max(0.0)) + gap * i as f32;
    }
    gap
}

/// The closest sequence that never decreases (pool adjacent violators).
fn isotonic(values: &[f32]) -> Vec<f32> {
    let mut pools: Vec<(f32, u32)> = Vec::new();
    for value in values {
        let mut pool = (*value, 1);
        while let Some(last) = pools.last().copied()
            && last.0 > pool.0
        {
            let count = last.1 + pool.1;
            pool = ((last.0 * last.1 as f32 + pool.0 * pool.1 as f32) / count as f32, count);
            pools.pop();
        }
        pools.push(pool);
    }
    pools.into_iter().flat_map(|(value, count)| std::iter::repeat_n(value, count as usize)).collect()
}

/// The smallest distance between any two points; infinite for fewer than two.
pub(super) fn smallest_gap(points: &[Point]) -> f32 {
    let mut smallest = f32::INFINITY;
    for (index, a) in points.iter().enumerate() {
        for b in points.iter().skip(index + 1) {
            smallest = smallest.min(a.distance(*b));
        }
    }
    smallest
}
