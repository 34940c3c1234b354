//! `lot add-unit --copy`: the data sheet of another unit under a new id, with what differs from unit to unit left open.

use super::args::UnitArgs;
use super::unit::{Written, sheet_of};
use super::wish::title;
use super::{Refusal, words};
use crate::script::{Bundle, EMBEDDED};
use crate::source::nearest;
use crate::unit::{Fitted, Sheet};

const UNITS: &str = "walkthroughs/units/";

/// What is read anew from each unit, though the make is the same.
const ITS_OWN: [&str; 6] = [
    "weight.uvw",
    "weight.occc",
    "weight.ccc",
    "safety.co_replace_by",
    "safety.propane_replace_by",
    "safety.smoke_replace_by",
];

/// The text of a file of the lot, else of the embedded lot.
fn text_of(lot: &Bundle, name: &str) -> Option<String> {
    let own = lot.get(name).map(AsRef::as_ref);
    let bytes = own.or_else(|| EMBEDDED.iter().find(|(known, _)| *known == name).map(|(_, bytes)| *bytes))?;
    std::str::from_utf8(bytes).ok().map(ToOwned::to_owned)
}

fn unknown(lot: &Bundle, from: &str) -> Refusal {
    let own = lot.names().filter_map(|name| name.strip_prefix(UNITS)?.strip_suffix(".ron"));
    let demo = EMBEDDED.iter().filter_map(|(name, _)| name.strip_prefix(UNITS)?.strip_suffix(".ron"));
    let all: Vec<&str> = own.chain(demo).collect();
    let near =
        nearest(from, all.iter().copied()).map(|near| format!("Did you mean {near}? ")).unwrap_or_default();
    format!("--copy {from}: there is no such unit. {near}There are: {}", all.join(", "))
}

pub(super) fn of(lot: &Bundle, from: &str, args: &UnitArgs) -> Result<Written, Refusal> {
    let id = args.id.as_str();
    let text = text_of(lot, &format!("{UNITS}{from}.ron")).ok_or_else(|| unknown(lot, from))?;
    let old = sheet_of(&text, from).map_err(|why| format!("--copy {from}: {why}. Mend it first"))?;
    let name = args.name.clone().unwrap_or_else(|| title(id));
    let code = args.code.clone().unwrap_or_else(|| id.to_uppercase());
    let odd = |c: char| c.is_control() || matches!(c, '{' | '}' | '"' | '\\');
    if name.chars().chain(code.chars()).any(odd) {
        return Err(
            "--name and --code: write them without quotes or braces, as --name 'Harrier 2'".to_owned()
        );
    }
    let mut sheet = format!(
        "// {name}: data sheet, copied from that of {from}. Look at every line: two units are never the same.\n"
    );
    for line in text.lines().skip_while(|line| line.starts_with("//")) {
        let renamed = line.replace(&format!("\"{from}-"), &format!("\"{id}-"));
        match line.trim_start() {
            start if start.starts_with("id: ") && line.starts_with("    id") => {
                sheet.push_str(&format!("    id: \"{id}\","));
            }
            start if start.starts_with("code: ") => sheet.push_str(&format!("    code: \"{code}\",")),
            start if start.starts_with("year: ") && args.year.is_some() => {
                sheet.push_str(&format!("    year: {},", args.year.unwrap_or_default()));
            }
            _ => sheet.push_str(&renamed),
        }
        sheet.push('\n');
    }
    let open = open(&old);
    let sheet = with_open(&sheet, &open);
    let new = sheet_of(&sheet, id)?;
    let stand_ins = new.not_known.len();
    let own = own_words(lot, from, id, &name, &old)?;
    let keys = words::keys_of(&new);
    let shared = keys.iter().map(String::as_str).filter(|key| !key.starts_with(&format!("{id}-")));
    Ok(Written { words: own + &words::lacking(lot, shared), sheet, stand_ins })
}

/// What is left open: it is fitted, and not open already.
fn open(sheet: &Sheet) -> Vec<&'static str> {
    let weight = &sheet.weight.value;
    let fitted = |name: &str| match name {
        "weight.occc" => weight.occc != Fitted::NotFitted,
        "weight.ccc" => weight.ccc != Fitted::NotFitted,
        "safety.propane_replace_by" => sheet.safety.value.propane_replace_by != Fitted::NotFitted,
        _ => true,
    };
    let is_open = |name: &str| sheet.not_known.iter().any(|given| given.value == name);
    ITS_OWN.into_iter().filter(|name| fitted(name) && !is_open(name)).collect()
}

/// The sheet with these on its list of what is not known.
fn with_open(sheet: &str, open: &[&str]) -> String {
    let lines: String = open
        .iter()
        .map(|name| format!("\n        \"{name}\", // {}", crate::check::where_to_read(name)))
        .collect();
    let list = "\n    not_known: [";
    if let Some(at) = sheet.find(list) {
        let (before, after) = sheet.split_at(at + list.len());
        return format!("{before}{lines}{}{after}", if after.starts_with(']') { "\n    " } else { "" });
    }
    let end = sheet.rfind(')').unwrap_or(sheet.len());
    let (before, after) = sheet.split_at(end);
    format!(
        "{before}    // Read each from this unit, correct it above, then take its line out.\n    not_known: [{lines}\n    ],\n{after}"
    )
}

/// The words of the other unit under the new id; those that the lot shares stay where they are.
fn own_words(lot: &Bundle, from: &str, id: &str, name: &str, old: &Sheet) -> Result<String, Refusal> {
    let text = text_of(lot, &format!("i18n/en-US/unit-{from}.ftl")).unwrap_or_default();
    let mut out = format!("# Words of the unit {name} alone.\n");
    let mut keep = false;
    let mut named = false;
    for line in text.lines() {
        if !line.starts_with([' ', '}']) {
            let key = line.split([' ', '=']).next().unwrap_or_default();
            keep = key == format!("unit-{from}") || key.starts_with(&format!("{from}-"));
            if key == format!("unit-{from}") {
                out.push_str(&format!("unit-{id} = {name}\n"));
                named = true;
                continue;
            }
        }
        if keep {
            let renamed = match line.strip_prefix(&format!("{from}-")) {
                Some(rest) => format!("{id}-{rest}"),
                None => line.to_owned(),
            };
            out.push_str(&renamed);
            out.push('\n');
        }
    }
    if !named {
        out.push_str(&format!("unit-{id} = {name}\n    .kind = {}\n", old.kind.word()));
    }
    words::are_free(lot, [format!("unit-{id}")].iter().map(String::as_str))?;
    Ok(out)
}
