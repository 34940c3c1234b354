//! What a newcomer does wrong, and whether the answer says where it is and what to do.

use std::path::Path;

use sendoff::source::Severity;

use super::{CLASS_C, add, found, new_lot};

/// Arguments, and what the answer says.
#[test]
fn a_wrong_argument_is_answered_with_an_example() {
    let lot = new_lot();
    let before = super::faults(lot.path());
    let size = |length: &'static str| {
        vec![
            "--id", "gull", "--kind", "class-c", "--fuel", "gasoline", "--length", length, "--width",
            "99 in", "--height", "11 ft",
        ]
    };
    let with = |more: &[&'static str]| [&["--id", "gull"], &CLASS_C[..], more].concat();
    let cases: Vec<(Vec<&str>, &[&str])> = vec![
        (size("28"), &["--length '28'", "no measure", "'34 ft'"]),
        (size("28 feet"), &["--length '28 feet'", "'34 ft'"]),
        (size("28 lb"), &["a length is wanted", "'34 ft'"]),
        (size("-28 ft"), &["below zero", "'34 ft'"]),
        (size("28 in"), &["between 96 in and 900 in", "'34 ft'"]),
        (size("28'"), &["'34 ft'"]),
        (with(&["--generator", "8kw"]), &["--generator '8kw'", "'8000 W'"]),
        (with(&["--cord", "50"]), &["a current is wanted", "'50 A'"]),
        (with(&["--heat", "furnace"]), &["--propane frame"]),
        (with(&["--heat", "diesel"]), &["--fuel diesel"]),
        (with(&["--cook", "propane"]), &["--propane frame"]),
        (with(&["--cook", "induction"]), &["--cord '30 A'"]),
        (with(&["--fridge", "residential"]), &["--inverter '2000 W'"]),
        (with(&["--fridge", "absorption"]), &["--propane frame"]),
        (with(&["--water-heater", "tank"]), &["--propane frame"]),
        (with(&["--water-heater", "on-demand"]), &["--propane frame"]),
        (with(&["--roof-air", "1"]), &["--cord '30 A'"]),
        (with(&["--belts", "0"]), &["--belts 0", "from 1 to 20"]),
        (with(&["--slide-outs", "9"]), &["from 0 to 4"]),
        (with(&["--slide-outs", "two"]), &["whole number, as 2"]),
        (with(&["--year", "22"]), &["from 1950"]),
        (with(&["--name", "A \"B\""]), &["--name 'Harrier'"]),
        (vec!["--id", "gull", "--kind", "bus"], &["class-a, class-b, class-c, trailer"]),
        (with(&["--propane", "tank"]), &["frame, cylinders"]),
        (vec!["--id", "Gull"], &["--length", "--height"]),
        (vec!["--id", "unit-1", "--copy", "wren"], &["choose another", "--id harrier"]),
        (vec!["--id", "Gull", "--copy", "wren"], &["small letters", "--id harrier-2"]),
        (vec!["--id", "gull", "--copy", "wrem"], &["Did you mean wren?", "heron"]),
        (
            vec![
                "--id", "gull", "--kind", "class-c", "--length", "28 ft", "--width", "99 in", "--height",
                "11 ft",
            ],
            &["--fuel gasoline or --fuel diesel"],
        ),
        (
            vec![
                "--id", "gull", "--kind", "trailer", "--fuel", "diesel", "--length", "28 ft", "--width",
                "99 in", "--height", "11 ft",
            ],
            &["leave --fuel out"],
        ),
    ];
    for (args, says) in cases {
        let (code, _, err) = add(lot.path(), &args);
        assert_eq!(code, 2, "{args:?}");
        for part in says {
            assert!(err.contains(part), "{args:?}\n{err}\nlacks: {part}");
        }
    }
    assert_eq!(super::faults(lot.path()), before, "nothing was written");
    let (code, _, err) = super::run(&["lot", "add-unit", "--id", "gull", "--copy", "wren"]);
    assert!(code == 2 && err.contains("--lot DIR") && err.contains("sendoff lot new"), "{err}");
    let nowhere = lot.path().join("nowhere");
    let (code, _, err) = add(&nowhere, &["--id", "gull", "--copy", "wren"]);
    assert!(code == 2 && err.contains("sendoff lot new"), "{err}");
}

#[test]
fn what_is_there_is_never_overwritten() {
    let lot = new_lot();
    let gull = [&["--id", "gull"], &CLASS_C[..]].concat();
    assert_eq!(add(lot.path(), &gull).0, 0);
    let files = ["walkthroughs/units/gull.ron", "i18n/en-US/unit-gull.ftl"].map(|name| lot.path().join(name));
    for file in &files {
        std::fs::write(file, "mine").unwrap();
    }
    let (code, _, err) = add(lot.path(), &gull);
    assert!(code == 2 && err.contains("is there already") && err.contains("--id gull-2"), "{err}");
    for file in &files {
        assert_eq!(std::fs::read_to_string(file).unwrap(), "mine");
    }
    // Words alone are in the way as well.
    std::fs::remove_file(&files[0]).unwrap();
    assert_eq!(add(lot.path(), &gull).0, 2);
    assert!(!files[0].exists());
}

const UNIT: &str = "walkthroughs/units/gull.ron";
const AWNING: &str = "walkthroughs/topics/awning.ron";
const AWNING_WORDS: &str = "i18n/en-US/topic-awning.ftl";
const OWN_WORDS: &str = "i18n/en-US/unit-gull.ftl";

/// A slip: file, what stood there, what stands there now; then code, where, and what the hint holds.
type Slip = (&'static str, &'static str, &'static str, &'static str, &'static str, &'static str);

const SLIPS: [Slip; 26] = [
    (UNIT, "    awning: (", "    awnig: (", "form.unknown-field", "awnig", "`awning`"),
    (UNIT, "lights: false", "light: false", "form.unknown-field", "light", "`lights`"),
    (UNIT, "\"11 ft 3 in\"", "\"11 lb\"", "form.value", "\"11 lb\"", "`11 ft 3 in`"),
    (UNIT, "\"11 ft 3 in\"", "\"135\"", "form.value", "\"135\"", "`11 ft 3 in`"),
    (UNIT, "\"11 ft 3 in\"", "135", "form.wrong-kind", "135", "double quotes"),
    (UNIT, "\"11 ft 3 in\"", "\u{201c}11 ft\u{201d}", "form.syntax", "\u{201c}", "straight quotes"),
    (UNIT, "year: 2020,\n    //", "year: 2020\n    //", "form.syntax", "curb", "end of the line above"),
    (UNIT, "chocks: NotFitted, ", "chocks: NotFitted ", "form.syntax", "speed", "comma"),
    (UNIT, "kind: ClassC", "kind: Camper", "form.unknown-word", "Camper", "`ClassC`"),
    (UNIT, "lights: false", "lights: False", "form.wrong-kind", "False", "true or false"),
    (UNIT, "    roof_air: NotFitted,\n", "", "form.missing-field", "(", "`NotFitted`"),
    (UNIT, "reach: \"7 ft\"", "reach: \"7,5 ft\"", "form.value", "\"7,5 ft\"", "point"),
    (
        UNIT,
        "length: \"28 ft\", body",
        "length: \"-28 ft\", body",
        "fact.negative",
        "\"-28 ft\"",
        "without the minus",
    ),
    (
        UNIT,
        "(place: \"entry-door\")",
        "(place: \"entry-dor\")",
        "place.unknown",
        "\"entry-dor\"",
        "`entry-door`",
    ),
    (UNIT, "    id: \"gull\"", "    id: \"tern\"", "form.id-and-file", "\"tern\"", "same name"),
    (
        UNIT,
        "        \"weight.uvw\",",
        "        \"weight.uwv\",",
        "unit.not-known-fact",
        "\"weight.uwv\"",
        "`weight.uvw`",
    ),
    (
        UNIT,
        "        \"weight.uvw\",",
        "        \"engine.fuel\",",
        "unit.not-known-fact",
        "\"engine.fuel\"",
        "find it out",
    ),
    (
        UNIT,
        "        \"weight.uvw\",",
        "        \"weight.gcwr\",",
        "unit.not-known-fact",
        "\"weight.gcwr\"",
        "take it off",
    ),
    (
        UNIT,
        "changes: []",
        "changes: [Fault(topic: \"cooktop\", words: \"gull-exit-bed\")]",
        "change.unknown",
        "\"cooktop\"",
        "`cooktop-oven`",
    ),
    (
        UNIT,
        "changes: []",
        "changes: [Note(step: \"awning\", words: \"gull-note\")]",
        "message.unknown",
        "\"gull-note\"",
        "gull-note = ...",
    ),
    (
        AWNING,
        "picture: \"awning\"",
        "picture: \"awnings\"",
        "picture.missing",
        "\"awnings\"",
        "assets/pictures",
    ),
    (AWNING_WORDS, ".avoid = ", ".avoid = Come in at 15 mph. ", "words.typed-measure", "15", "variable"),
    (
        AWNING_WORDS,
        "know-awning-close",
        "know-awing-close",
        "message.unknown",
        "\"close\"",
        "`know-awing-close`",
    ),
    (
        AWNING_WORDS,
        "$awning_wind_limit",
        "$awning_wind_limt",
        "message.hole",
        "know-awning-close",
        "$awning_wind_limit",
    ),
    (OWN_WORDS, "gull-exit-bed =", "gull-exit-bed", "words.syntax", "the", "name = text"),
    (
        "walkthroughs/lot.ron",
        "day: \"555-0142\"",
        "day: 555-0142",
        "form.syntax",
        "555-0142",
        "double quotes",
    ),
];

fn slip_of(lot: &Path, slip: Slip) -> Result<(), String> {
    let (file, from, to, code, at, hint) = slip;
    let path = lot.join(file);
    let before = std::fs::read_to_string(&path).unwrap();
    if !before.contains(from) {
        return Err(format!("{file} holds no `{from}`"));
    }
    std::fs::write(&path, before.replacen(from, to, 1)).unwrap();
    let all = found(lot);
    let told = all.iter().find(|fault| fault.code == code);
    let Some(fault) = told else { return Err(format!("{to}: no {code} in {all:#?}")) };
    let text = std::fs::read_to_string(lot.join(fault.place.file.as_ref())).unwrap();
    let line = text.lines().nth(fault.place.line as usize - 1).unwrap_or_default();
    let rest: String = line.chars().skip(fault.place.col as usize - 1).collect();
    std::fs::write(&path, before).unwrap();
    if !rest.starts_with(at) {
        return Err(format!("{code} of `{to}` stands at `{rest}` ({})", fault.place));
    }
    if !fault.hint.contains(hint) {
        return Err(format!("{code} of `{to}` says `{}`", fault.hint));
    }
    Ok(())
}

#[test]
fn every_slip_is_told_where_it_is_and_what_to_do() {
    let lot = new_lot();
    let more = ["--awning", "electric", "--propane", "frame", "--cook", "propane", "--cord", "30 A"];
    let (code, _, err) = add(lot.path(), &[&["--id", "gull"], &CLASS_C[..], &more].concat());
    assert_eq!(code, 0, "{err}");
    let wrong: Vec<String> = SLIPS.into_iter().filter_map(|slip| slip_of(lot.path(), slip).err()).collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn a_file_that_cannot_be_read_says_how_to_save_it() {
    let lot = new_lot();
    assert_eq!(add(lot.path(), &[&["--id", "gull"], &CLASS_C[..]].concat()).0, 0);
    let text = std::fs::read_to_string(lot.path().join(UNIT)).unwrap();
    let wide: Vec<u8> =
        [0xFF, 0xFE].into_iter().chain(text.encode_utf16().flat_map(u16::to_le_bytes)).collect();
    std::fs::write(lot.path().join(UNIT), wide).unwrap();
    let all = found(lot.path());
    let fault = all.iter().find(|f| f.code == "form.not-utf8").unwrap();
    assert!(fault.what.contains("UTF-16") && fault.hint.contains("UTF-8"), "{fault:?}");
    std::fs::write(lot.path().join(UNIT), &text).unwrap();

    for name in ["walkthroughs/units/tern.ron.txt", "walkthroughs/units/tern.RON", "i18n/en-US/unit-tern.txt"]
    {
        let path = lot.path().join(name);
        std::fs::write(&path, &text).unwrap();
        let all = found(lot.path());
        let fault = all.iter().find(|f| f.code == "lot.unknown-file").unwrap();
        assert_eq!((fault.place.file.as_ref(), fault.severity), (name, Severity::Note));
        std::fs::remove_file(path).unwrap();
    }
}
