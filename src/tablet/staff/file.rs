//! `staff.ron` in the data folder.

use std::fmt::Write as _;
use std::path::Path;

use jiff::Timestamp;
use serde::Deserialize;

use super::{Member, PinHash, Role, Staff, StaffFault, Tries};
use crate::source::{At, SourceFile, read};

/// Name of the file.
pub(super) const FILE: &str = "staff.ron";
/// Most bytes of it.
pub(super) const CAP: u64 = 64 * 1024;

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Form {
    people: Vec<MemberForm>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct MemberForm {
    code: At<String>,
    role: At<RoleForm>,
    pin: At<String>,
    tries: u32,
    #[serde(default, alias = "last?")]
    last: Option<At<String>>,
}

#[derive(Debug, Clone, Copy, Deserialize)]
enum RoleForm {
    Agent,
    Office,
}

/// The file for these people.
pub(super) fn write(staff: &Staff) -> String {
    let mut out = String::from("(\n    people: [\n");
    for Member { code, role, pin, tries } in staff.people() {
        let role = match role {
            Role::Agent => "Agent",
            Role::Office => "Office",
        };
        let last = tries.last.map_or_else(String::new, |last| format!(", last: \"{last}\""));
        let (pin, tries) = (pin.phc(), tries.count);
        // Writing to a text does not fail.
        let _ = writeln!(out, "        (code: {code:?}, role: {role}, pin: {pin:?}, tries: {tries}{last}),");
    }
    out.push_str("    ],\n)\n");
    out
}

/// Reads the file. `path` is for words alone.
pub(super) fn parse(path: &Path, bytes: &[u8]) -> Result<Staff, StaffFault> {
    let at = |place: String| path.with_file_name(place).display().to_string();
    let Ok(text) = std::str::from_utf8(bytes) else {
        return Err(StaffFault::File { place: path.display().to_string(), what: "this is no text".into() });
    };
    let file = SourceFile::new(FILE, text);
    let (form, faults) = read::<Form>(&file);
    if let Some(fault) = faults.into_iter().next() {
        return Err(StaffFault::File { place: at(fault.place.to_string()), what: fault.what });
    }
    let wrong = |byte: usize, what: &str| StaffFault::File {
        place: at(file.place_at(byte).to_string()),
        what: what.to_owned(),
    };
    let mut staff = Staff::default();
    let mut last_role = None;
    for member in form.map(|f| f.people).unwrap_or_default() {
        let pin = PinHash::from_phc(&member.pin.value)
            .map_err(|expected| wrong(member.pin.at, &format!("here belongs {expected}")))?;
        let role = match member.role.value {
            RoleForm::Agent => Role::Agent,
            RoleForm::Office => Role::Office,
        };
        last_role = Some(member.role.at);
        let last = match &member.last {
            Some(last) => {
                Some(last.value.parse::<Timestamp>().map_err(|_| wrong(last.at, "this is no time"))?)
            }
            None => None,
        };
        staff.fits(&member.code.value).map_err(|e| wrong(member.code.at, &e.to_string()))?;
        let tries = Tries { count: member.tries, last };
        staff.people.push(Member { code: member.code.value, role, pin, tries });
    }
    match last_role {
        Some(byte) if staff.people.iter().all(|m| m.role != Role::Office) => {
            Err(wrong(byte, "somebody must work in the office"))
        }
        Some(_) => Ok(staff),
        // A file without people is no way to open the gate: it is taken away when the last one is removed.
        None => Err(wrong(0, "nobody is in this file")),
    }
}
