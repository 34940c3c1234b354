use super::*;

// Python 3.12, unicodedata.east_asian_width: 'W' and 'F' take two columns; combining() > 0 or Cf take none.
#[test]
fn widths_agree_with_unicode() {
    for (text, columns) in [
        ("Wren", 4),
        ("e\u{301}", 1),
        ("鍵", 2),
        ("キー", 4),
        ("열쇠", 4),
        ("Ａ", 2),
        ("🔑", 2),
        ("−", 1),
        ("กี่", 1),
    ] {
        assert_eq!(of(text), columns, "{text}");
    }
}

#[test]
fn lines_break_at_blanks_and_keep_hard_blanks() {
    assert_eq!(wrap("one two three", 7), ["one two", "three"]);
    assert_eq!(wrap("at 300\u{A0}lb only", 8), ["at", "300\u{A0}lb", "only"]);
    assert_eq!(wrap("a\n\nb", 10), ["a", "", "b"]);
}

#[test]
fn words_longer_than_a_line_are_broken() {
    assert_eq!(wrap("x abcdefghij", 4), ["x", "abcd", "efgh", "ij"]);
    assert_eq!(wrap("鍵鍵鍵", 4), ["鍵鍵", "鍵"]);
    assert_eq!(wrap("abce\u{301}", 4), ["abce\u{301}"]);
}
