//! How many columns a text takes, and how it is broken into lines.
//!
//! The rule is small: East Asian wide and full-width characters (Unicode TR 11) and emoji take two columns, marks
//! that sit on the character before them none, everything else one. Where it errs, a line is too short.

/// Columns of a line.
pub(super) const COLUMNS: usize = 72;

/// Columns of a character.
pub(crate) fn of_char(c: char) -> usize {
    match c {
        '\u{300}'..='\u{36F}'
        | '\u{483}'..='\u{489}'
        | '\u{591}'..='\u{5BD}'
        | '\u{610}'..='\u{61A}'
        | '\u{64B}'..='\u{65F}'
        | '\u{6D6}'..='\u{6DC}'
        | '\u{93C}'
        | '\u{941}'..='\u{948}'
        | '\u{94D}'
        | '\u{E31}'
        | '\u{E34}'..='\u{E3A}'
        | '\u{E47}'..='\u{E4E}'
        | '\u{1AB0}'..='\u{1ACE}'
        | '\u{1DC0}'..='\u{1DFF}'
        | '\u{200B}'..='\u{200F}'
        | '\u{20D0}'..='\u{20F0}'
        | '\u{FE00}'..='\u{FE0F}'
        | '\u{FE20}'..='\u{FE2F}' => 0,
        '\u{1100}'..='\u{115F}'
        | '\u{231A}'..='\u{231B}'
        | '\u{2329}'..='\u{232A}'
        | '\u{23E9}'..='\u{23F3}'
        | '\u{25FD}'..='\u{25FE}'
        | '\u{2614}'..='\u{27BF}'
        | '\u{2B1B}'..='\u{2B55}'
        | '\u{2E80}'..='\u{A4CF}'
        | '\u{A960}'..='\u{A97C}'
        | '\u{AC00}'..='\u{D7A3}'
        | '\u{F900}'..='\u{FAFF}'
        | '\u{FE10}'..='\u{FE19}'
        | '\u{FE30}'..='\u{FE6F}'
        | '\u{FF01}'..='\u{FF60}'
        | '\u{FFE0}'..='\u{FFE6}'
        | '\u{16FE0}'..='\u{18CFF}'
        | '\u{1AFF0}'..='\u{1B2FB}'
        | '\u{1F000}'..='\u{1FAFF}'
        | '\u{20000}'..='\u{3FFFD}' => 2,
        _ => 1,
    }
}

/// Columns of a text on one line.
pub(crate) fn of(text: &str) -> usize {
    text.chars().map(of_char).sum()
}

/// Breaks a text into lines of at most `columns`: at blanks, and within a word only where the word alone is
/// longer. Line feeds of the text stay.
pub(super) fn wrap(text: &str, columns: usize) -> Vec<String> {
    text.split('\n').flat_map(|line| wrap_line(line, columns.max(2))).collect()
}

fn wrap_line(text: &str, columns: usize) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    let mut used = 0;
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        let wide = of(word);
        if used > 0 && used + 1 + wide > columns {
            lines.push(std::mem::take(&mut line));
            used = 0;
        }
        if used > 0 {
            line.push(' ');
            used += 1;
        }
        for c in word.chars() {
            let wide = of_char(c);
            if used + wide > columns {
                lines.push(std::mem::take(&mut line));
                used = 0;
            }
            line.push(c);
            used += wide;
        }
    }
    lines.push(line);
    lines
}

#[cfg(test)]
mod tests;
