//! `lot add-unit`: writes a data sheet that `check` accepts, and the words of the unit.

use std::path::Path;

use super::args::{Kind, UnitArgs};
use super::sheet::Draft;
use super::wish::{Wish, checked_id};
use super::{Refusal, copy, lists, sections, words, write};
use crate::commands::Console;
use crate::ports::Disk;
use crate::script::Bundle;
use crate::source::{SourceFile, read};
use crate::unit::Sheet;

/// A data sheet and the words of its unit.
pub(super) struct Written {
    pub(super) sheet: String,
    pub(super) words: String,
    /// How many values are stand-ins.
    pub(super) stand_ins: usize,
}

pub(super) fn run(
    disk: &dyn Disk,
    lot: &Path,
    args: &UnitArgs,
    console: &mut Console,
) -> Result<(), Refusal> {
    let bundle = Bundle::read(disk, lot)
        .map_err(|e| format!("{e}. To start a lot folder: sendoff lot new '{}'", lot.display()))?;
    checked_id(&args.id)?;
    let (sheet_name, words_name) =
        (format!("walkthroughs/units/{}.ron", args.id), format!("i18n/en-US/unit-{}.ftl", args.id));
    if let Some(name) = [&sheet_name, &words_name].into_iter().find(|name| bundle.has(name)) {
        return Err(format!(
            "{name} is there already and was left as it is; choose another --id, as --id {}-2",
            args.id
        ));
    }
    let written = match &args.copy {
        Some(from) => copy::of(&bundle, from, args)?,
        None => made(&bundle, &Wish::new(args)?)?,
    };
    write(disk, &lot.join(&words_name), written.words.as_bytes())?;
    if let Err(why) = write(disk, &lot.join(&sheet_name), written.sheet.as_bytes()) {
        // Words without a sheet would only be in the way.
        let _ = disk.remove(&lot.join(&words_name));
        return Err(why);
    }
    console.say(format!("{sheet_name} and {words_name} are written."));
    console.say(format!(
        "{} values are stand-ins: read them from plates, correct them, take them off `not_known`.",
        written.stand_ins
    ));
    console.say("Look at every line that says LOOK or YOURS. Next:");
    console.say(format!("  sendoff check --lot '{}'", lot.display()));
    Ok(())
}

/// A data sheet from what was said.
fn made(lot: &Bundle, w: &Wish<'_>) -> Result<Written, Refusal> {
    let mut d = Draft::new(&format!(
        "// {}: data sheet. LOOK marks what was chosen without a look at the unit, YOURS what the lot decides.\n(\n",
        w.name
    ));
    d.section("id", "", &format!("\"{}\"", w.id));
    d.section("code", "", &format!("\"{}\"", w.code));
    d.section("kind", "", w.kind.ron());
    let year = w.year.unwrap_or(2020);
    d.section("year", if w.year.is_some() { "" } else { "LOOK: nobody said." }, &year.to_string());
    d.section("curb", "The side of the entry door, nose up.", w.args.curb.ron());
    sections::all(&mut d, w);
    lists::all(&mut d, w);
    d.close();
    d.text.push_str(")\n");
    let kind = match w.kind {
        Kind::ClassA => "Class A motorhome",
        Kind::ClassB => "campervan",
        Kind::ClassC => "Class C motorhome",
        Kind::Trailer => "travel trailer",
    };
    let id = w.id;
    let mut own = vec![(format!("{id}-exit-bed"), "the exit window by the bed")];
    if w.is_trailer() {
        own.push((format!("{id}-cab"), "in the cab of the vehicle that pulls"));
    }
    let name = format!("unit-{id}");
    words::are_free(lot, own.iter().map(|(key, _)| key.as_str()).chain([name.as_str()]))?;
    let mut text =
        format!("# Words of the unit {} alone.\nunit-{id} = {}\n    .kind = {kind}\n\n", w.name, w.name);
    for (key, says) in own {
        text.push_str(&format!("{key} = {says}\n"));
    }
    let sheet = sheet_of(&d.text, id)?;
    let keys = words::keys_of(&sheet);
    text.push_str(&words::lacking(lot, keys.iter().map(String::as_str).filter(|key| !key.starts_with(id))));
    Ok(Written { sheet: d.text, words: text, stand_ins: d.not_known.len() })
}

/// The sheet as the program reads it.
pub(super) fn sheet_of(text: &str, id: &str) -> Result<Sheet, Refusal> {
    let file = SourceFile::new(&format!("walkthroughs/units/{id}.ron"), text);
    let (sheet, faults) = read::<Sheet>(&file);
    sheet.ok_or_else(|| {
        let first =
            faults.first().map(|f| format!("{}: {}; {}", f.place, f.what, f.hint)).unwrap_or_default();
        format!("the data sheet cannot be read: {first}")
    })
}
