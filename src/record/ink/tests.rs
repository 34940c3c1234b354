use super::*;

fn ink(strokes: Vec<Vec<(i16, i16)>>) -> Ink {
    Ink { height: 300, strokes }
}

fn paths(svg: &str) -> Vec<&str> {
    svg.lines().filter_map(|line| line.strip_prefix("<path d=\"")?.strip_suffix("\"/>")).collect()
}

#[test]
fn a_stroke_runs_through_the_middles() {
    let svg = svg(&ink(vec![vec![(0, 0), (10, 5), (21, 5), (30, 0)]]));
    assert_eq!(paths(&svg), ["M0 0Q10 5 15.5 5Q21 5 25.5 2.5L30 0"]);
}

#[test]
fn a_point_is_a_dot_and_two_points_are_a_line() {
    let svg = svg(&ink(vec![vec![(7, 8)], vec![(1, 2), (3, 4)], vec![]]));
    assert_eq!(paths(&svg), ["M7 8L7 8", "M1 2L3 4"]);
}

#[test]
fn halves_keep_their_sign() {
    let text = |a, b| Half::between(a, b).to_string();
    assert_eq!([text(0, -1), text(-3, 0), text(-1, -1), text(3, 4)], ["-0.5", "-1.5", "-1", "3.5"]);
    assert_eq!(text(i16::MIN, i16::MIN), "-32768");
}

#[test]
fn what_is_written_is_read_back_and_nothing_else_is() {
    let dots = vec![vec![(7, 8)], vec![(1, 2), (3, 4)], vec![(-5, 0), (5, 5), (6, 5)]];
    for strokes in [vec![], dots, vec![(0..180).map(|n| (n, n * n % 97)).collect()]] {
        let ink = ink(strokes);
        assert_eq!(read(&svg(&ink)), Some(ink.clone()));
        assert_eq!(read(&svg(&ink).replace("width=\"6\"", "width=\"7\"")), None);
    }
    // A line of no length is drawn as a dot, and read as one.
    assert_eq!(read(&svg(&ink(vec![vec![(1, 1), (1, 1)]]))), Some(ink(vec![vec![(1, 1)]])));
    assert_eq!(read("<svg/>"), None);
    assert_eq!(read(&svg(&ink(vec![vec![(1, 2), (3, 4)]])).replace("M1", "M99999")), None);
}
