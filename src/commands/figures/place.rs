//! Where a fact stands in a sheet, lot or trip, or where it belongs when it is absent.

/// Where the value of this field begins: `text` is read from `from`, where its structure or map begins. None when
/// it has no such field, or is no structure.
pub(super) fn field(text: &str, from: usize, name: &str) -> Option<usize> {
    let bytes = text.as_bytes();
    let (mut at, mut depth) = (from, 0_usize);
    while let Some(byte) = bytes.get(at) {
        match byte {
            b'"' if depth == 0 => return None,
            b'"' => {
                let end = end_of_string(bytes, at);
                if depth == 1 && text.get(at + 1..end) == Some(name) && is_key(text, end + 1) {
                    return Some(value_after(bytes, end + 1));
                }
                at = end;
            }
            b'/' if bytes.get(at + 1) == Some(&b'/') => at = end_of_line(bytes, at),
            b',' if depth == 0 => return None,
            b'(' | b'[' | b'{' => depth += 1,
            b')' | b']' | b'}' => {
                depth = depth.saturating_sub(1);
                if depth == 0 {
                    return None;
                }
            }
            _ if depth == 1 && is_here(text, at, name) => return Some(value_after(bytes, at + name.len())),
            _ => {}
        }
        at += 1;
    }
    None
}

/// Where the last known part of a name as `start.fuel` begins.
pub(super) fn deepest(text: &str, name: &str) -> usize {
    let mut deepest = 0;
    for part in name.split('.') {
        let Some(at) = field(text, deepest, part) else { break };
        deepest = at;
    }
    deepest
}

fn is_name(byte: u8) -> bool {
    byte.is_ascii_alphanumeric() || byte == b'_' || byte == b'"' || byte == b'-'
}

/// Whether the field stands here: its whole name, then a colon.
fn is_here(text: &str, at: usize, name: &str) -> bool {
    if !text.get(at..).is_some_and(|rest| rest.starts_with(name)) {
        return false;
    }
    let before = at.checked_sub(1).and_then(|at| text.as_bytes().get(at)).copied();
    !before.is_some_and(is_name) && is_key(text, at + name.len())
}

/// Whether what ends here is the key of a value.
fn is_key(text: &str, end: usize) -> bool {
    text.get(end..).is_some_and(|rest| rest.trim_start().starts_with(':'))
}

/// The first byte of the value behind the colon.
fn value_after(bytes: &[u8], mut at: usize) -> usize {
    while bytes.get(at).is_some_and(|byte| *byte == b':' || byte.is_ascii_whitespace()) {
        at += 1;
    }
    at
}

fn end_of_string(bytes: &[u8], start: usize) -> usize {
    let mut at = start + 1;
    while let Some(byte) = bytes.get(at) {
        match byte {
            b'"' => return at,
            b'\\' => at += 2,
            _ => at += 1,
        }
    }
    at
}

fn end_of_line(bytes: &[u8], start: usize) -> usize {
    bytes
        .get(start..)
        .and_then(|rest| rest.iter().position(|b| *b == b'\n'))
        .map_or(bytes.len(), |n| start + n)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fields_are_found_where_they_stand() {
        let text = "// start: no\n(nights: 2, note: \"start: (\", start: (fresh: \"1\", fuel : \"2\"), tires: (set_at: \"1 °F\"))";
        let at = |name: &str| text.get(deepest(text, name)..).unwrap_or_default();
        assert!(at("start.fuel").starts_with("\"2\""));
        assert!(
            at("start.black").starts_with("(fresh"),
            "a field that is absent stands where its structure does"
        );
        assert!(at("wind.speed").starts_with("// start"));
        assert_eq!(field(text, 0, "fresh"), None);
        assert!(at("nights.fresh").starts_with("2"), "a number has no fields");
        let map = "(constants: {\"mains\": \"120 V\", \"plug\": \"30 A\"}, sign: Says(\"3 m\"))";
        assert!(map.get(deepest(map, "constants.plug")..).is_some_and(|rest| rest.starts_with("\"30 A\"")));
        assert!(map.get(deepest(map, "sign")..).is_some_and(|rest| rest.starts_with("Says")));
        assert_eq!(field("(a: \"", 0, "b"), None);
    }
}
