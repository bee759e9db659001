//! How convex outlines lie in one another, in millimetres.

/// Outward unit normals of a convex outline, each with how far out the outline itself reaches.
fn sides(outline: &[[f64; 2]]) -> Vec<([f64; 2], f64)> {
    let next = outline.iter().cycle().skip(1);
    let pairs: Vec<([f64; 2], [f64; 2])> = outline.iter().copied().zip(next.copied()).collect();
    // The sign of the area tells which way round the points go.
    let area: f64 = pairs.iter().map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum();
    let turn = if area > 0.0 { 1.0 } else { -1.0 };
    let side = |(a, b): &([f64; 2], [f64; 2])| {
        let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
        let long = libm::hypot(dx, dy);
        (long > 0.0).then(|| {
            let out = [turn * dy / long, -turn * dx / long];
            (out, out[0] * a[0] + out[1] * a[1])
        })
    };
    pairs.iter().filter_map(side).collect()
}

fn along(points: &[[f64; 2]], way: [f64; 2]) -> impl Iterator<Item = f64> + '_ {
    points.iter().map(move |p| way[0] * p[0] + way[1] * p[1])
}

/// How far points lie outside of a convex outline; nothing or less if they are inside.
pub fn reach(outline: &[[f64; 2]], points: &[[f64; 2]]) -> f64 {
    let beyond = |(way, far): ([f64; 2], f64)| along(points, way).map(move |d| d - far).fold(f64::NEG_INFINITY, f64::max);
    sides(outline).into_iter().map(beyond).fold(f64::NEG_INFINITY, f64::max)
}

/// How deep one convex outline stands in another: the shortest way that would part them; nothing or less if they are apart.
pub fn overlap(a: &[[f64; 2]], b: &[[f64; 2]]) -> f64 {
    let depth = |of: &[[f64; 2]], other: &[[f64; 2]]| {
        let one = |(way, far): ([f64; 2], f64)| far - along(other, way).fold(f64::INFINITY, f64::min);
        sides(of).into_iter().map(one).fold(f64::INFINITY, f64::min)
    };
    depth(a, b).min(depth(b, a))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(x: f64, y: f64, side: f64) -> Vec<[f64; 2]> {
        vec![[x, y], [x, y + side], [x + side, y + side], [x + side, y]]
    }

    #[test]
    fn outlines_part_and_overlap() {
        assert_eq!(overlap(&square(0.0, 0.0, 10.0), &square(8.0, 0.0, 10.0)), 2.0);
        assert_eq!(overlap(&square(0.0, 0.0, 10.0), &square(12.0, 0.0, 10.0)), -2.0);
        // Corner to corner along a slope: the boxes overlap and the shapes do not.
        let slope = vec![[0.0, 0.0], [0.0, 10.0], [10.0, 0.0]];
        assert!(overlap(&slope, &square(6.0, 6.0, 4.0)) < 0.0);
        assert_eq!(reach(&square(0.0, 0.0, 10.0), &square(2.0, 2.0, 9.0)), 1.0);
        assert_eq!(reach(&square(0.0, 0.0, 10.0), &square(2.0, 2.0, 8.0)), 0.0);
        // Points the other way round are the same outline.
        let back: Vec<[f64; 2]> = square(0.0, 0.0, 10.0).into_iter().rev().collect();
        assert_eq!(reach(&back, &square(2.0, 2.0, 9.0)), 1.0);
    }
}
