//! Lines of `allowed_signers` and `distrusted`.

use std::collections::BTreeSet;

use jiff::Timestamp;
use jiff::civil::DateTime;
use jiff::tz::TimeZone;

use super::{SignersFault, Trusted};
use crate::record::keys::{PublicKey, check_tablet_name};

const WHOLE_LINE: &str =
    "Write: t2 namespaces=\"record@sendoff\",valid-after=\"20260612000000Z\" ssh-ed25519 AAAA... t2";
const TIME: &str = "Write YYYYMMDDHHMMSSZ in UTC, as 20260612172107Z, in double quotes";
const KEY: &str = "Only Ed25519 keys seal records: copy the line of the tablet's tablet.pub";

/// A fault that does not know its line yet.
type Fault = (String, &'static str);

/// Lines that say something, with their numbers.
fn lines(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let lines = text.lines().enumerate().map(|(at, line)| (at + 1, line.trim_matches([' ', '\t'])));
    lines.filter(|(_, line)| !line.is_empty() && !line.starts_with('#'))
}

fn at((what, hint): Fault, line: usize) -> SignersFault {
    SignersFault::Line { line, what, hint }
}

pub(super) fn trusted(text: &str) -> Result<Vec<Trusted>, SignersFault> {
    let mut all: Vec<Trusted> = Vec::new();
    for (number, line) in lines(text) {
        let trusted = trusted_line(line, number).map_err(|fault| at(fault, number))?;
        if let Some(before) = all.iter().find(|t| t.key == trusted.key) {
            let what = format!("the same key stands in line {} already", before.line);
            return Err(at((what, "Keep one of the two lines"), number));
        }
        all.push(trusted);
    }
    Ok(all)
}

pub(super) fn distrusted(text: &str) -> Result<BTreeSet<PublicKey>, SignersFault> {
    let mut all = BTreeSet::new();
    for (number, line) in lines(text) {
        let key = key(line).map_err(|fault| at(fault, number))?;
        if !all.insert(key) {
            return Err(at(("the same key stands there twice".to_owned(), "Remove this line"), number));
        }
    }
    Ok(all)
}

fn trusted_line(line: &str, number: usize) -> Result<Trusted, Fault> {
    check_characters(line)?;
    let (principal, rest) = word(line);
    check_principal(principal)?;
    let (options, rest) = option_words(rest)?;
    let mut trusted = Trusted {
        tablet: principal.to_owned(),
        key: key(rest)?,
        namespaces: Vec::new(),
        valid_after: None,
        valid_before: None,
        line: number,
    };
    for (name, value) in options {
        match name {
            "namespaces" if trusted.namespaces.is_empty() => trusted.namespaces = namespaces(value)?,
            "valid-after" if trusted.valid_after.is_none() => trusted.valid_after = Some(time(value)?),
            "valid-before" if trusted.valid_before.is_none() => trusted.valid_before = Some(time(value)?),
            "namespaces" | "valid-after" | "valid-before" => {
                return Err((format!("{name} stands there twice"), "Keep one of them"));
            }
            "cert-authority" => {
                return Err((
                    "cert-authority would trust keys that are not listed here".to_owned(),
                    "List the key of each tablet in a line of its own",
                ));
            }
            other => {
                return Err((
                    format!("the option {other:?} is not known"),
                    "Known are namespaces, valid-after and valid-before, in lower case",
                ));
            }
        }
    }
    if trusted.namespaces.is_empty() {
        return Err(("without namespaces= this key might sign anything".to_owned(), WHOLE_LINE));
    }
    if let (Some(after), Some(before)) = (trusted.valid_after, trusted.valid_before)
        && after > before
    {
        return Err(("valid-before lies before valid-after".to_owned(), TIME));
    }
    Ok(trusted)
}

fn check_characters(line: &str) -> Result<(), Fault> {
    match line.chars().find(|c| c.is_control() && *c != '\t' || *c == '\u{feff}') {
        None => Ok(()),
        Some(c) => Err((
            format!("a character that cannot be seen stands in it (U+{:04X})", u32::from(c)),
            "Write the line anew with a plain text editor, as UTF-8 without a byte order mark",
        )),
    }
}

fn check_principal(principal: &str) -> Result<(), Fault> {
    let hint = "Name one tablet exactly, as t2: 1 to 32 of a-z, 0-9 and '-'; give each its own line";
    if principal.contains(['*', '?', '!']) {
        return Err((format!("{principal:?} has a wildcard, which would let one key seal as another"), hint));
    }
    if principal.contains(',') {
        return Err((format!("{principal:?} is a list"), hint));
    }
    check_tablet_name(principal).map_err(|_| (format!("{principal:?} cannot be a tablet's name"), hint))
}

/// The first word and the rest behind its blanks.
fn word(text: &str) -> (&str, &str) {
    let (word, rest) = text.split_once([' ', '\t']).unwrap_or((text, ""));
    (word, rest.trim_start_matches([' ', '\t']))
}

/// Options up to the first blank outside double quotes, as name and raw value; none if the key comes at once.
type Options<'a> = Vec<(&'a str, Option<&'a str>)>;

fn option_words(text: &str) -> Result<(Options<'_>, &str), Fault> {
    let (first, _) = word(text);
    if first.is_empty() {
        return Err(("there is no key in it".to_owned(), WHOLE_LINE));
    }
    if is_kind_of_key(first) {
        return Ok((Vec::new(), text));
    }
    let mut quoted = false;
    let mut parts = Vec::new();
    let mut from = 0;
    for (at, c) in text.char_indices() {
        match c {
            '"' => quoted = !quoted,
            '\\' => return Err(("a backslash stands in the options".to_owned(), WHOLE_LINE)),
            ',' if !quoted => {
                parts.push(text.get(from..at).unwrap_or_default());
                from = at + 1;
            }
            ' ' | '\t' if !quoted => {
                parts.push(text.get(from..at).unwrap_or_default());
                let rest = text.get(at..).unwrap_or_default().trim_start_matches([' ', '\t']);
                let split = |part: &'_ str| part.split_once('=').map(|(n, _)| n.len());
                let options = parts.into_iter().map(|part| match split(part) {
                    Some(len) => (part.get(..len).unwrap_or_default(), part.get(len + 1..)),
                    None => (part, None),
                });
                return Ok((options.collect(), rest));
            }
            _ => {}
        }
    }
    let what = if quoted { "a double quote is not closed" } else { "there is no key behind the options" };
    Err((what.to_owned(), WHOLE_LINE))
}

fn is_kind_of_key(word: &str) -> bool {
    ["ssh-", "ecdsa-", "sk-"].iter().any(|prefix| word.starts_with(prefix))
}

fn key(text: &str) -> Result<PublicKey, Fault> {
    check_characters(text)?;
    PublicKey::from_openssh(text).map_err(|fault| (fault.to_string(), KEY))
}

/// What stands between the double quotes.
fn quoted(value: Option<&str>) -> Option<&str> {
    value?.strip_prefix('"')?.strip_suffix('"').filter(|text| !text.contains('"') && !text.is_empty())
}

fn namespaces(value: Option<&str>) -> Result<Vec<String>, Fault> {
    let hint = "Write namespaces=\"record@sendoff\"";
    let text = quoted(value).ok_or(("namespaces= has no value in double quotes".to_owned(), hint))?;
    let mut all: Vec<String> = Vec::new();
    for name in text.split(',') {
        if !name.bytes().all(|b| b.is_ascii_alphanumeric() || b"@._-".contains(&b)) || name.is_empty() {
            return Err((format!("{name:?} is not the exact name of a namespace"), hint));
        }
        if all.iter().any(|n| n == name) {
            return Err((format!("the namespace {name:?} stands there twice"), hint));
        }
        all.push(name.to_owned());
    }
    Ok(all)
}

/// `YYYYMMDDZ`, `YYYYMMDDHHMMZ` or `YYYYMMDDHHMMSSZ`.
fn time(value: Option<&str>) -> Result<Timestamp, Fault> {
    let text = quoted(value).ok_or(("a time has no value in double quotes".to_owned(), TIME))?;
    let wrong = || (format!("{text:?} is not a time"), TIME);
    let Some(digits) = text.strip_suffix('Z') else {
        let what = format!("{text:?} has no Z at its end, so it would mean another time in each time zone");
        return Err((what, TIME));
    };
    let number = |from: usize, to: usize| digits.get(from..to).and_then(|part| part.parse::<i16>().ok());
    let plain = digits.bytes().all(|b| b.is_ascii_digit()) && matches!(digits.len(), 8 | 12 | 14);
    if !plain {
        return Err(wrong());
    }
    let part = |from| number(from, from + 2).and_then(|n| i8::try_from(n).ok()).unwrap_or(0);
    let year = number(0, 4).filter(|year| *year >= 1970).ok_or_else(wrong)?;
    let civil = DateTime::new(year, part(4), part(6), part(8), part(10), part(12), 0);
    civil.and_then(|civil| TimeZone::UTC.to_timestamp(civil)).map_err(|_| wrong())
}
