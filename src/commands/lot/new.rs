//! `lot new`: the embedded lot without its units, with words on what is the company's own.

use std::path::Path;

use super::{Refusal, write};
use crate::commands::Console;
use crate::ports::Disk;
use crate::script::EMBEDDED;

/// What the settings of a lot are for: `name | comment`, one a line.
const SETTINGS: &str = include_str!("../../../assets/lot/settings.txt");
/// What stands at the head of `lot.ron`.
const HEAD: &str = include_str!("../../../assets/lot/head.txt");
/// The page that explains the folder.
const README: &str = include_str!("../../../assets/lot/README.md");
/// Words of the demo units, and of the program, which are no part of a new lot.
const LEFT_OUT: [&str; 6] = [
    "i18n/en-US/unit-",
    "i18n/en-US/kiosk",
    "i18n/en-US/record",
    "i18n/en-US/format",
    "i18n/en-US/figures",
    "walkthroughs/units/",
];
const LOT: &str = "walkthroughs/lot.ron";
const SHARED: &str = "i18n/en-US/units.ftl";
/// Longest name of a lot, in characters: it stands in the head of each page.
const NAME_CAP: usize = 60;

pub(super) fn run(disk: &dyn Disk, dir: &Path, name: &str, console: &mut Console) -> Result<(), Refusal> {
    let name = checked(name)?;
    let there = disk.list(dir).map_err(|e| format!("{e}; name a folder"))?;
    if let Some(first) = there.first() {
        let shown = dir.display();
        return Err(format!(
            "{shown} is not empty: it holds `{first}`. Nothing was written. Name a new folder, as in: sendoff lot new {shown}/lot"
        ));
    }
    for (file, bytes) in EMBEDDED {
        if LEFT_OUT.iter().any(|start| file.starts_with(start)) {
            continue;
        }
        match (*file, std::str::from_utf8(bytes)) {
            (LOT, Ok(text)) => write(disk, &dir.join(file), explained(text).as_bytes())?,
            (SHARED, Ok(text)) => write(disk, &dir.join(file), named(text, name).as_bytes())?,
            _ => write(disk, &dir.join(file), bytes)?,
        }
    }
    disk.make_dir(&dir.join("walkthroughs/units")).map_err(|e| e.to_string())?;
    write(disk, &dir.join("README.md"), README.replace("{name}", name).as_bytes())?;
    console.say(format!("{} is a lot folder now. Read its README.md. Next:", dir.display()));
    console.say(format!(
        "  sendoff lot add-unit --lot '{}' --id harrier --kind class-c --fuel gasoline --length '28 ft' --width '99 in' --height '11 ft 3 in'",
        dir.display()
    ));
    Ok(())
}

/// A name that can stand in a message as it is.
fn checked(name: &str) -> Result<&str, Refusal> {
    let name = name.trim();
    let wrong = |why: &str| {
        Err(format!(
            "`{name}` cannot be the name of a lot: {why}. For example: --name 'Marsh Road Motorhomes'"
        ))
    };
    if name.is_empty() {
        return wrong("it is empty");
    }
    if name.chars().count() > NAME_CAP {
        return wrong("it is too long for the head of a page");
    }
    if name.chars().any(|c| c.is_control() || matches!(c, '{' | '}')) {
        return wrong("it holds a brace or a line break");
    }
    Ok(name)
}

/// The lot file with a word on each setting.
fn explained(text: &str) -> String {
    let mut out = HEAD.to_owned();
    for line in text.lines().skip_while(|line| line.starts_with("//")) {
        let field = line.strip_prefix("    ").filter(|rest| !rest.starts_with(' ')).and_then(|rest| {
            let (field, _) = rest.split_once(':')?;
            SETTINGS.lines().find_map(|row| row.strip_prefix(field)?.strip_prefix(" | "))
        });
        if let Some(comment) = field {
            out.push_str("    // ");
            out.push_str(comment);
            out.push('\n');
        }
        out.push_str(line);
        out.push('\n');
    }
    out
}

/// The shared words with the lot's own name.
fn named(text: &str, name: &str) -> String {
    let line = |line: &str| match line.split_once(" = ") {
        Some(("lot-name", _)) => format!("lot-name = {name}"),
        Some(("lot-place", _)) => format!("# Write the place where the lot is.\nlot-place = {name}"),
        _ => line.to_owned(),
    };
    text.lines().map(line).fold(String::new(), |all, line| all + &line + "\n")
}
