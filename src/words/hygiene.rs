//! Names that people type: nothing in them may turn a line round or hide.

/// Most characters that a name keeps.
pub const NAME_LENGTH: usize = 80;

/// A name without controls, marks that turn the direction of writing, and characters that cannot be seen;
/// blanks collapsed, at most [`NAME_LENGTH`] characters.
#[must_use]
pub fn clean_name(name: &str) -> String {
    let mut clean = String::new();
    let mut length = 0;
    let mut blank = false;
    for c in name.chars() {
        if c.is_whitespace() {
            blank = true;
            continue;
        }
        if is_unseen(c) {
            continue;
        }
        let wanted = 1 + usize::from(blank && length > 0);
        if length + wanted > NAME_LENGTH {
            break;
        }
        if wanted == 2 {
            clean.push(' ');
        }
        clean.push(c);
        length += wanted;
        blank = false;
    }
    clean
}

/// Controls (Unicode categories Cc, and of Cf those that no name needs: the joiners U+200C and U+200D stay, since
/// some scripts are spelled with them), non-characters.
fn is_unseen(c: char) -> bool {
    c.is_control()
        || matches!(c,
            '\u{00AD}' | '\u{061C}' | '\u{180E}' | '\u{200B}' | '\u{200E}' | '\u{200F}'
            | '\u{202A}'..='\u{202E}' | '\u{2060}'..='\u{206F}' | '\u{FEFF}' | '\u{FFF9}'..='\u{FFFC}'
            | '\u{FFFE}'..='\u{FFFF}' | '\u{FDD0}'..='\u{FDEF}' | '\u{E0000}'..='\u{E0FFF}')
}
