//! Moving things apart, always the same way for the same input.

use iced::{Point, Rectangle};

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

/// Moves points apart to at least `gap` within `room`. Where pushing does not get there, they are put on a grid
/// of `gap`, each to the free cell nearest to its own point; where even the grid has too few cells, they stay as
/// the pushing left them. Returns whether the gap is kept.
pub(super) fn within(points: &mut [Point], gap: f32, room: Rectangle) -> bool {
    let wanted: Vec<Point> = points.iter().map(|point| clamp(*point, room)).collect();
    points.copy_from_slice(&wanted);
    for _ in 0..400 {
        if !push(points, gap, room) {
            return true;
        }
    }
    if smallest_gap(points) >= gap {
        return true;
    }
    let mut cells = grid(gap, room);
    if cells.len() < points.len() {
        return false;
    }
    for (point, wanted) in points.iter_mut().zip(&wanted) {
        let near = |cell: &Point| cell.distance(*wanted);
        let nearest = cells.iter().enumerate().min_by(|(_, a), (_, b)| near(a).total_cmp(&near(b)));
        if let Some((index, cell)) = nearest.map(|(index, cell)| (index, *cell)) {
            *point = cell;
            cells.remove(index);
        }
    }
    true
}

fn clamp(point: Point, room: Rectangle) -> Point {
    let (w, h) = (room.width.max(0.0), room.height.max(0.0));
    Point::new(point.x.clamp(room.x, room.x + w), point.y.clamp(room.y, room.y + h))
}

/// One round of pushing; says whether anything was too close.
fn push(points: &mut [Point], gap: f32, room: Rectangle) -> bool {
    let mut moved = false;
    for second in 1..points.len() {
        let (before, rest) = points.split_at_mut(second);
        let Some(b) = rest.first_mut() else { break };
        for (first, a) in before.iter_mut().enumerate() {
            let distance = a.distance(*b);
            if distance >= gap {
                continue;
            }
            moved = true;
            let (dx, dy) = if distance < 0.01 {
                // On the same spot: a direction that depends on which two they are, and on nothing else.
                let angle = (first * 5 + second * 3) as f32;
                (angle.cos(), angle.sin())
            } else {
                ((b.x - a.x) / distance, (b.y - a.y) / distance)
            };
            let by = (gap - distance) / 2.0 + 0.05;
            *a = clamp(Point::new(a.x - dx * by, a.y - dy * by), room);
            *b = clamp(Point::new(b.x + dx * by, b.y + dy * by), room);
        }
    }
    moved
}

fn grid(gap: f32, room: Rectangle) -> Vec<Point> {
    let count = |length: f32| (length.max(0.0) / gap).floor() as u16 + 1;
    let (columns, rows) = (count(room.width), count(room.height));
    let spread = |index: u16, count: u16, from: f32, length: f32| {
        if count <= 1 { from + length / 2.0 } else { from + length * f32::from(index) / f32::from(count - 1) }
    };
    (0..rows)
        .flat_map(|row| (0..columns).map(move |column| (row, column)))
        .map(|(row, column)| {
            Point::new(spread(column, columns, room.x, room.width), spread(row, rows, room.y, room.height))
        })
        .collect()
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
