//! Handbook D as it is printed: rows, targets, marks, hazards; and cases walked through by hand.

use std::collections::BTreeMap;

use sendoff::script::Ask::{self, Hold, Read};
use sendoff::script::Signal::{self, Caution, Danger, Notice, Warning};

/// The units, and the letter by which the handbook's tables name each.
pub(super) const UNITS: [(&str, char); 3] = [("wren", 'W'), ("plover", 'P'), ("heron", 'H')];

/// Guides by their number.
pub(super) const NUMBERS: [(&str, &str); 14] = [
    ("D01", "trouble-generator"),
    ("D02", "trouble-no-120v"),
    ("D03", "trouble-no-12v"),
    ("D04", "trouble-no-hot-water"),
    ("D05", "trouble-engine-crank"),
    ("D06", "trouble-fridge-warm"),
    ("D07", "trouble-heat"),
    ("D08", "trouble-pump"),
    ("D09", "trouble-toilet-tank"),
    ("D10", "trouble-lp-smell"),
    ("D11", "trouble-co-alarm"),
    ("D12", "trouble-slide"),
    ("D13", "trouble-awning"),
    ("D14", "trouble-tire-wheel"),
];

/// A table: rows part by `;`, `WH:` before a row is its mark, `W5/P6` a target that differs by unit.
pub(super) struct Table {
    pub(super) number: &'static str,
    pub(super) units: &'static str,
    rows: &'static str,
    pub(super) hazards: &'static [(&'static str, Signal, Ask)],
}

impl Table {
    /// Number of each row that a unit has, with where yes and no lead on it.
    pub(super) fn rows_on(&self, unit: char) -> BTreeMap<usize, (String, String)> {
        let mut rows = BTreeMap::new();
        for (at, row) in self.rows.split(';').map(str::trim).enumerate() {
            let (mark, row) = row.split_once(':').unwrap_or((self.units, row));
            let (yes, no) = row.trim().split_once(' ').expect("two targets");
            if mark.contains(unit) {
                let _ = rows.insert(at + 1, (target_on(yes, unit), target_on(no, unit)));
            }
        }
        rows
    }
}

fn target_on(text: &str, unit: char) -> String {
    if !text.contains('/') {
        return text.to_owned();
    }
    let own = text.split('/').find_map(|part| part.strip_prefix(unit));
    own.unwrap_or_else(|| panic!("{text} has nothing for {unit}")).to_owned()
}

const ALL: &str = "WPH";

/// Two rows are ours and stand behind the printed ones: D05 row 11 (charge, then boost once more: common practice, no
/// source) on the way that is printed as CALL, and D09 row 11, a question that is printed within row 1.
pub(super) const TABLES: [Table; 14] = [
    Table {
        number: "D01",
        units: "W",
        rows: "D11 2; LEAVE 3; D02 4; 5 6; FIXED 6; 7 8; FIXED 8; 10 9; 10 CALL; 12 11; FIXED 12; 13 14; \
               FIXED 14; FIXED CALL",
        hazards: &[(ALL, Danger, Hold), (ALL, Caution, Read)],
    },
    Table {
        number: "D02",
        units: ALL,
        rows: "CALL 2; 8 3; 4 W11/P12/HWAIT; WAIT 5; FIXED 6; 7 CALL; FIXED 9; FIXED 9; 10 CALL; FIXED CALL; \
               W:FIXED 9; P:FIXED 9",
        hazards: &[(ALL, Danger, Hold), (ALL, Warning, Hold)],
    },
    Table {
        number: "D03",
        units: ALL,
        rows: "LEAVE 2; 4 3; FIXED 4; 5 6; FIXED CALL; 7 CALL; FIXED WCALL/P8/HCALL; P:FIXED CALL",
        hazards: &[(ALL, Warning, Hold), ("WH", Warning, Hold)],
    },
    Table {
        number: "D04",
        units: ALL,
        rows: "2 D08; 4 3; FIXED 4; CALL W5/P9/H5; WH:W7/H10 6; WH:W7/H10 CALL; W:FIXED 8; W:FIXED CALL; \
               P:FIXED CALL; H:FIXED 11; H:FIXED CALL",
        hazards: &[(ALL, Warning, Hold), ("WH", Danger, Hold)],
    },
    Table {
        number: "D05",
        units: "WP",
        rows: "CALL 2; LEAVE 3; FIXED 4; 7 W5/P6; W:FIXED 11; P:FIXED CALL; WCALL/P9 8; FIXED CALL; P:10 CALL; \
               P:FIXED CALL; W:FIXED CALL",
        hazards: &[(ALL, Warning, Hold), ("P", Warning, Hold)],
    },
    Table {
        number: "D06",
        units: ALL,
        rows: "WD10/HD10/PLEAVE W2/H2/P10; WH:4 3; WH:FIXED 4; WH:6 5; WH:FIXED 6; WH:7 8; WH:FIXED CALL; WH:9 CALL; \
               WH:FIXED CALL; P:12 11; P:12 CALL; P:FIXED CALL",
        hazards: &[("WH", Warning, Hold), (ALL, Caution, Read)],
    },
    Table {
        number: "D07",
        units: ALL,
        rows: "LEAVE W2/H2/P8; WH:4 3; WH:4 CALL; WH:6 5; WH:FIXED 6; WH:7 D03; WH:FIXED CALL; P:10 9; P:FIXED 10; \
               P:FIXED CALL",
        hazards: &[(ALL, Danger, Hold), (ALL, Warning, Hold)],
    },
    Table {
        number: "D08",
        units: ALL,
        rows: "CALL 2; 3 4; FIXED CALL; 6 5; 6 D03; 7 8; FIXED 8; 9 CALL; FIXED CALL",
        hazards: &[(ALL, Notice, Read)],
    },
    Table {
        number: "D09",
        units: ALL,
        rows: "W11/H11/P2 W3/H3/P9; FIXED CALL; WH:4 5; WH:5 CALL; WH:6 WAIT; WH:7 8; WH:FIXED 8; WH:FIXED CALL; \
               P:10 CALL; P:FIXED CALL; WH:D10 2",
        hazards: &[(ALL, Warning, Hold)],
    },
    Table {
        number: "D10",
        units: "WH",
        // Row 2 of the handbook is two rows here, so that each asks one thing.
        rows: "7 2; 3 5; 4 5; 5 5; 6 6; LEAVE LEAVE; 8 CALL; FIXED CALL",
        hazards: &[(ALL, Danger, Hold)],
    },
    Table {
        number: "D11",
        units: ALL,
        // Where no help is on the way one calls again, and does not look for a cause: row 4, not printed.
        rows: "6 2; 3 3; 5 4; 5 LEAVE; LEAVE LEAVE; CALL LEAVE",
        hazards: &[(ALL, Danger, Hold)],
    },
    Table {
        number: "D12",
        units: "H",
        rows: "2 3; CALL LEAVE; CALL 4; 6 5; FIXED 6; 7 8; FIXED 8; FIXED 9; CALL CALL",
        hazards: &[(ALL, Warning, Hold)],
    },
    Table {
        number: "D13",
        units: ALL,
        rows: "CALL 2; 3 W4/H4/P7; W4/H4/P7 CALL; WH:6 5; WH:FIXED 6; WH:FIXED CALL; P:FIXED CALL",
        hazards: &[(ALL, Warning, Hold), (ALL, Warning, Hold)],
    },
    Table {
        number: "D14",
        units: ALL,
        rows: "2 CALL; CALL 3; CALL 4; CALL 5; 6 7; 7 CALL; FIXED CALL",
        hazards: &[(ALL, Warning, Hold), (ALL, Danger, Hold)],
    },
];

/// A case: guide, unit, answers, the rows seen, the end.
pub(super) type Case = (&'static str, &'static str, &'static str, &'static [usize], &'static str);

pub(super) const CASES: [Case; 18] = [
    // Handbook D01 row 3: it runs, but nothing works inside.
    ("D01", "wren", "nny", &[1, 2, 3], "D02"),
    // Handbook D01 row 5: fuel at the pickup mark; bought, primed, it runs.
    ("D01", "wren", "nnnyy", &[1, 2, 3, 4, 5], "FIXED"),
    // Handbook D01 row 9: over full or milky oil is answered no.
    ("D01", "wren", "nnnnnnn", &[1, 2, 3, 4, 6, 8, 9], "CALL"),
    // Handbook D02 row 1: a tingle.
    ("D02", "plover", "y", &[1], "CALL"),
    // Handbook D02 row 3: Heron has no 120 V without a post.
    ("D02", "heron", "nnn", &[1, 2, 3], "WAIT"),
    // Handbook D02 row 8: some outlets work, the reset brings the others back.
    ("D02", "wren", "nyy", &[1, 2, 8], "FIXED"),
    // Handbook D02 row 12: Plover's inverter stays dead, its breakers do not hold.
    ("D02", "plover", "nnnnn", &[1, 2, 3, 12, 9], "CALL"),
    // Handbook D03 row 8: the lithium battery comes back after its switch was off.
    ("D03", "plover", "nynyny", &[1, 2, 4, 6, 7, 8], "FIXED"),
    // Handbook D04 row 2 and 3: the outside shower was half open.
    ("D04", "heron", "yny", &[1, 2, 3], "FIXED"),
    // Handbook D04 row 11: the shower head of an on-demand heater.
    ("D04", "heron", "yynyny", &[1, 2, 4, 5, 10, 11], "FIXED"),
    // Handbook D05 row 9 and 10: exhaust fluid empty.
    ("D05", "plover", "nnnyyyy", &[1, 2, 3, 4, 7, 9, 10], "FIXED"),
    // Handbook D06 row 1: ammonia or gas; Plover has no propane guide to go on with.
    ("D06", "plover", "y", &[1], "LEAVE"),
    // Handbook D07 row 6: the furnace fan does not run.
    ("D07", "heron", "nyyn", &[1, 2, 4, 6], "D03"),
    // Handbook D08 row 5: no pump after the fuse.
    ("D08", "wren", "nnnn", &[1, 2, 4, 5], "D03"),
    // Handbook D09 row 5: not at a dump station.
    ("D09", "wren", "nnn", &[1, 3, 5], "WAIT"),
    // Handbook D10 row 2, here the third: the valve cannot be reached.
    ("D10", "heron", "nynyy", &[1, 2, 3, 5, 6], "LEAVE"),
    // Handbook D12 row 2: someone is hurt.
    ("D12", "heron", "yn", &[1, 2], "LEAVE"),
    // Handbook D14 row 5: no tire is low; the gauge shows the same after the drive.
    ("D14", "wren", "ynnnny", &[1, 2, 3, 4, 5, 7], "FIXED"),
];
