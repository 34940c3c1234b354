//! Who works with the tablet: hashes of PINs, waits after wrong tries, the file, and who may change it.

use std::path::Path;
use std::sync::Arc;

use argon2::{Algorithm, Argon2, AssociatedData, ParamsBuilder, Version};
use jiff::{SignedDuration, Timestamp};
use proptest::prelude::*;
use sendoff::ports::fake::{FixedClock, FixedEntropy, MemoryDisk, Operation};
use sendoff::ports::{Access, Ports};
use sendoff::tablet::staff::{
    Change, Cost, Credential, FREE_TRIES, NotAllowed, PEOPLE_MAX, Pin, PinHash, Role, Staff, StaffBook,
    Tried, WAITS, wait_after,
};

use crate::kiosk_support::{HandClock, NOW};
use crate::seal::{has, run};

const DATA: &str = "/data";
const FILE: &str = "/data/staff.ron";

/// `4711` as argon2-cffi 25.1.0 hashes it with the salt 07 07 .. and the usual cost.
const USUAL: &str =
    "$argon2id$v=19$m=65536,t=3,p=1$BwcHBwcHBwcHBwcHBwcHBw$9XtslgZML+pDerNhwUVXvLHy9yijG32IiWJaP0H2RUw";
/// The same at the floor.
pub const OFFICE: &str =
    "$argon2id$v=19$m=19456,t=2,p=1$BwcHBwcHBwcHBwcHBwcHBw$NEStCwFjFgE2o2xTOi/qp5wW1JmZTgxlNT3Mm3aAqto";
/// `8080` at the floor, with the salt 00 01 .. 0f.
pub const AGENT: &str =
    "$argon2id$v=19$m=19456,t=2,p=1$AAECAwQFBgcICQoLDA0ODw$lj8ElmKdliU96ZmbyYEHngZmaAPTMMkmzEFkYcMMmac";

/// `JM` of the office with the PIN 4711, and the agent `K4` with 8080.
pub fn two() -> String {
    format!(
        "(\n    people: [\n        (code: \"JM\", role: Office, pin: \"{OFFICE}\", tries: 0),\n        \
         (code: \"K4\", role: Agent, pin: \"{AGENT}\", tries: 0),\n    ],\n)\n"
    )
}

pub fn pin(digits: &str) -> Pin {
    Pin::of(digits).unwrap()
}

fn who(code: &str, digits: &str) -> Credential {
    Credential { code: code.into(), pin: pin(digits) }
}

struct Desk {
    disk: MemoryDisk,
    clock: HandClock,
    book: StaffBook,
}

impl Desk {
    /// A folder with this file.
    fn with(file: &str) -> Self {
        let disk = MemoryDisk::new();
        disk.plant(Path::new(FILE), file.as_bytes());
        Self::open(disk, HandClock::new())
    }

    fn open(disk: MemoryDisk, clock: HandClock) -> Self {
        let ports = Ports {
            disk: Arc::new(disk.clone()),
            clock: Arc::new(clock.clone()),
            entropy: Arc::new(FixedEntropy([7; 32])),
        };
        ports.disk.make_dir(Path::new(DATA)).unwrap();
        let book = StaffBook::open(&ports, Path::new(DATA), Cost::FLOOR);
        Self { disk, clock, book }
    }

    /// The kiosk is started again, after a power cut that leaves no more than was made durable.
    fn restart(self) -> Self {
        Self::open(self.disk.after_worst_power_cut(), self.clock)
    }

    fn tried(&mut self, code: &str, digits: &str) -> Tried {
        self.book.try_pin(&who(code, digits))
    }

    fn file(&self) -> String {
        let files = self.disk.files();
        let file = files.into_iter().find(|(path, _)| path == Path::new(FILE));
        file.map_or_else(String::new, |(_, bytes)| String::from_utf8(bytes).unwrap())
    }
}

/// RFC 9106, section 5.3: the test vector of Argon2id.
#[test]
fn the_hash_is_that_of_the_rfc() {
    let mut params = ParamsBuilder::new();
    params.m_cost(32).t_cost(3).p_cost(4).data(AssociatedData::new(&[4; 12]).unwrap());
    let secret = [3; 8];
    let argon2 =
        Argon2::new_with_secret(&secret, Algorithm::Argon2id, Version::V0x13, params.build().unwrap())
            .unwrap();
    let mut tag = [0; 32];
    argon2.hash_password_into(&[1; 32], &[2; 16], &mut tag).unwrap();
    let expected = "0d640df58d78766c08c037a34a8b53c9d01ef0452d75b65eb52520e96b01e659";
    assert_eq!(tag.iter().map(|b| format!("{b:02x}")).collect::<String>(), expected);
}

#[test]
fn hashes_are_written_and_read_as_others_do() {
    for (cost, expected) in [(Cost::USUAL, USUAL), (Cost::FLOOR, OFFICE)] {
        let made = PinHash::make(&pin("4711"), cost, &[7; 32]).unwrap();
        assert_eq!(made.phc(), expected);
        let read = PinHash::from_phc(expected).unwrap();
        assert_eq!((read.phc().as_str(), read.cost()), (expected, cost));
        assert!(read.is(&pin("4711")).unwrap());
        assert!(!read.is(&pin("4712")).unwrap());
        assert!(!read.is(&pin("47110")).unwrap());
    }
}

#[test]
fn python_accepts_our_hashes() {
    if !has("python3", &["-c", "import argon2"]) {
        return;
    }
    let hash = PinHash::make(&pin("900150"), Cost::USUAL, &[9; 32]).unwrap().phc();
    let script = "import sys, argon2; argon2.PasswordHasher().verify(sys.argv[1], sys.argv[2])";
    let good = run(Path::new("/"), "python3", &["-c", script, &hash, "900150"], b"");
    assert!(good.status.success(), "{}", String::from_utf8_lossy(&good.stderr));
    let bad = run(Path::new("/"), "python3", &["-c", script, &hash, "900151"], b"");
    assert!(!bad.status.success());
}

#[test]
fn weak_costly_and_strange_hashes_are_refused() {
    let salt = "AAECAwQFBgcICQoLDA0ODw$lj8ElmKdliU96ZmbyYEHngZmaAPTMMkmzEFkYcMMmac";
    for (head, part) in [
        ("$argon2id$v=19$m=19455,t=2,p=1", "at least"),
        ("$argon2id$v=19$m=65536,t=1,p=1", "at least"),
        ("$argon2id$v=19$m=524289,t=3,p=1", "at most"),
        ("$argon2id$v=19$m=65536,t=17,p=1", "at most"),
        ("$argon2i$v=19$m=65536,t=3,p=1", "PHC string"),
        ("$argon2id$v=16$m=65536,t=3,p=1", "PHC string"),
        ("$argon2id$v=19$m=65536,t=3,p=2", "PHC string"),
        ("$argon2id$v=19$m=65536,t=3", "PHC string"),
        ("$argon2id$v=19$m=65536,t=3,p=1,x=1", "PHC string"),
        ("$argon2id$v=19$m=+65536,t=3,p=1", "PHC string"),
    ] {
        let refused = PinHash::from_phc(&format!("{head}${salt}")).unwrap_err();
        assert!(refused.contains(part), "{head}: {refused}");
    }
    assert!(PinHash::from_phc("").is_err());
    assert!(PinHash::from_phc("$argon2id$v=19$m=65536,t=3,p=1$AAEC$AAEC").is_err());
}

#[test]
fn a_pin_is_digits_and_shows_nothing_of_itself() {
    assert!(Pin::of("12a4").is_none());
    assert!(Pin::of("1234567890123").is_none());
    assert!(!pin("123").is_whole());
    let mut typed = pin("4711");
    assert!(typed.is_whole());
    typed.push('x');
    assert_eq!(typed, pin("4711"));
    let change = Change::Pin { by: "JM".into(), who: who("JM", "4711") };
    let hash = PinHash::from_phc(OFFICE).unwrap();
    let printed = format!("{change:?} {hash:?}");
    assert!(!printed.contains("4711") && !printed.contains("NEStCw"), "{printed}");
}

#[test]
fn waits_grow_and_stop_growing() {
    let table =
        [(0, 0), (1, 0), (2, 0), (3, 5), (4, 15), (5, 60), (6, 300), (7, 900), (8, 900), (u32::MAX, 900)];
    for (tries, seconds) in table {
        assert_eq!(wait_after(tries), seconds, "after {tries} tries");
    }
}

#[test]
fn a_wrong_pin_is_counted_and_a_right_one_begins_anew() {
    let mut desk = Desk::with(&two());
    assert_eq!(desk.tried("JM", "0000"), Tried::Wrong);
    assert_eq!(desk.tried("jm", "0001"), Tried::Wrong);
    assert!(desk.file().contains("tries: 2"), "{}", desk.file());
    assert_eq!(desk.tried("JM", "4711"), Tried::Right);
    assert_eq!(desk.file(), two());
    for _ in 0..3 {
        assert_eq!(desk.tried("JM", "8080"), Tried::Wrong);
    }
    assert_eq!(desk.tried("JM", "4711"), Tried::Wait(5));
    // One who must wait keeps nobody else waiting.
    assert_eq!(desk.tried("K4", "8080"), Tried::Right);
    desk.clock.pass(4);
    assert_eq!(desk.tried("JM", "4711"), Tried::Wait(1));
    desk.clock.pass(1);
    assert_eq!(desk.tried("JM", "4711"), Tried::Right);
}

#[test]
fn a_wait_survives_a_power_cut_and_a_clock_that_is_set_back() {
    let mut desk = Desk::with(&two());
    for seconds in [0, 0, 0, 5, 15] {
        desk.clock.pass(seconds);
        assert_eq!(desk.tried("K4", "0000"), Tried::Wrong);
    }
    let mut desk = desk.restart();
    assert_eq!(desk.tried("K4", "8080"), Tried::Wait(60));
    desk.clock.pass(50);
    assert_eq!(desk.tried("K4", "8080"), Tried::Wait(10));
    // A year back: the whole wait, not a year.
    desk.clock.pass(-365 * 86_400);
    assert_eq!(desk.tried("K4", "8080"), Tried::Wait(60));
    desk.book.change(&Change::Clock).unwrap();
    desk.clock.pass(59);
    assert_eq!(desk.tried("K4", "8080"), Tried::Wait(1));
    let mut desk = desk.restart();
    desk.clock.pass(1);
    assert_eq!(desk.tried("K4", "8080"), Tried::Right);
}

/// The power goes while the PIN is being checked: the try has counted.
#[test]
fn a_try_is_on_disk_before_it_is_checked() {
    let mut desk = Desk::with(&two());
    // The second write of the file, after a right PIN, fails; the first stands as a try.
    desk.disk.fail(Operation::Write, 2);
    assert_eq!(desk.tried("JM", "4711"), Tried::Right);
    assert!(desk.file().contains("tries: 1"), "{}", desk.file());
}

#[test]
fn a_full_disk_keeps_nobody_out_and_gives_no_free_tries() {
    let mut desk = Desk::with(&two());
    desk.disk.fail_from(Operation::Write, 1);
    for _ in 0..3 {
        assert_eq!(desk.tried("JM", "0000"), Tried::Wrong);
    }
    assert_eq!(desk.tried("JM", "4711"), Tried::Wait(5));
    desk.clock.pass(5);
    assert_eq!(desk.tried("JM", "4711"), Tried::Right);
}

#[test]
fn a_file_that_cannot_be_used_opens_nothing_and_says_where_and_what_to_do() {
    let weak = two().replacen("m=19456", "m=1024", 1);
    let agents = two().replace("Office", "Agent");
    let twice = two().replace("K4", "jm");
    for (file, place, part) in [
        ("(people: [", "staff.ron:1:", ""),
        ("(people: [])", "staff.ron:1:1", "nobody"),
        (weak.as_str(), "staff.ron:3:41", "at least"),
        (agents.as_str(), "staff.ron:4:28", "office"),
        (twice.as_str(), "staff.ron:4:16", "somebody has this code"),
        (&two().replace("tries: 0)", "tries: 3, last: \"soon\")"), "staff.ron:3:", "no time"),
        (&two().replace("tries: 0", "tries: -1"), "staff.ron:3:", ""),
    ] {
        let mut desk = Desk::with(file);
        let fault = desk.book.staff().unwrap_err().to_string();
        assert!(fault.contains(place) && fault.contains(part), "{fault}");
        assert!(fault.contains("Mend the file"), "{fault}");
        assert!(matches!(desk.tried("JM", "4711"), Tried::Unchecked(_)), "{file}");
        let add = Change::Add { by: String::new(), who: who("ZZ", "9999"), role: Role::Office };
        assert!(desk.book.change(&add).is_err());
        assert_eq!(desk.file(), file, "the file is left as it is");
    }
    let bytes = MemoryDisk::new();
    bytes.plant(Path::new(FILE), &[0xff, 0xfe, 0]);
    assert!(Desk::open(bytes, HandClock::new()).book.staff().is_err());
    let dead = MemoryDisk::new();
    dead.plant(Path::new(FILE), two().as_bytes());
    dead.fail_from(Operation::Read, 1);
    assert!(Desk::open(dead, HandClock::new()).book.staff().is_err());
}

#[test]
fn people_come_change_and_go() {
    let mut desk = Desk::open(MemoryDisk::new(), HandClock::new());
    let add = |by: &str, code: &str, role| {
        let who = who(code, "1234");
        Change::Add { by: by.into(), who, role }
    };
    assert!(desk.book.staff().unwrap().is_empty());
    let why = |desk: &mut Desk, change: Change| desk.book.change(&change).unwrap_err().to_string();
    assert_eq!(why(&mut desk, add("", "A1", Role::Agent)), NotAllowed::FirstIsOffice.to_string());
    desk.book.change(&add("", "O1", Role::Office)).unwrap();
    assert_eq!(desk.disk.access(Path::new(FILE)), Some(Access::Owner));
    desk.book.change(&add("O1", "A1", Role::Agent)).unwrap();
    assert_eq!(why(&mut desk, add("A1", "A2", Role::Agent)), NotAllowed::NotOffice.to_string());
    assert_eq!(why(&mut desk, add("O1", "a1", Role::Agent)), NotAllowed::Taken.to_string());
    for code in ["", "A 1", "A\u{202e}1", "1234567890123"] {
        assert_eq!(why(&mut desk, add("O1", code, Role::Agent)), NotAllowed::Code.to_string());
    }
    // One's own PIN, and the office's help for who forgot theirs.
    let new_pin = |by: &str, code: &str| Change::Pin { by: by.into(), who: who(code, "5678") };
    desk.book.change(&new_pin("A1", "A1")).unwrap();
    assert_eq!(why(&mut desk, new_pin("A1", "O1")), NotAllowed::NotOffice.to_string());
    desk.book.change(&new_pin("O1", "A1")).unwrap();
    assert_eq!(desk.tried("A1", "5678"), Tried::Right);
    let remove = |by: &str, code: &str| Change::Remove { by: by.into(), code: code.into() };
    assert_eq!(why(&mut desk, remove("A1", "O1")), NotAllowed::NotOffice.to_string());
    assert_eq!(why(&mut desk, remove("O1", "O1")), NotAllowed::LastOffice.to_string());
    assert_eq!(why(&mut desk, remove("O1", "XX")), NotAllowed::Unknown.to_string());
    desk.book.change(&remove("O1", "A1")).unwrap();
    desk.book.change(&remove("O1", "O1")).unwrap();
    assert_eq!(desk.file(), "", "with the last one goes the file");
    let desk = desk.restart();
    assert!(desk.book.staff().unwrap().is_empty());
}

#[test]
fn what_was_added_is_known_after_a_power_cut_and_a_refused_write_changes_nothing() {
    let mut desk = Desk::open(MemoryDisk::new(), HandClock::new());
    let first = Change::Add { by: String::new(), who: who("O1", "1234"), role: Role::Office };
    desk.disk.fail_from(Operation::Write, 1);
    assert!(desk.book.change(&first).is_err());
    assert!(desk.book.staff().unwrap().is_empty());
    desk.disk.heal();
    desk.book.change(&first).unwrap();
    let mut desk = desk.restart();
    assert_eq!(desk.tried("O1", "1234"), Tried::Right);
}

#[derive(Debug, Clone)]
enum Step {
    Try(bool),
    Pass(u32),
    SetBack(u32),
    Add(u8, bool),
    Remove(u8, u8),
}

fn step() -> impl Strategy<Value = Step> {
    prop_oneof![
        4 => any::<bool>().prop_map(Step::Try),
        4 => (0_u32..1000).prop_map(Step::Pass),
        1 => (0_u32..100_000).prop_map(Step::SetBack),
        1 => (0_u8..60, any::<bool>()).prop_map(|(n, office)| Step::Add(n, office)),
        1 => (0_u8..60, 0_u8..60).prop_map(|(by, n)| Step::Remove(by, n)),
    ]
}

proptest! {
    /// Whatever happens: nobody waits longer than the table says, nobody gets a try too early by the clock that
    /// runs on, somebody of the office is there while anybody is, and a wait ends.
    #[test]
    fn the_people_hold_together(steps in proptest::collection::vec(step(), 1..60)) {
        let hash = PinHash::from_phc(OFFICE).unwrap();
        let mut staff = Staff::default();
        staff.add("", "c0", Role::Office, hash.clone()).unwrap();
        let mut wall: Timestamp = NOW.parse().unwrap();
        // Seconds that have really passed, and when the last wrong try of the first person really was.
        let (mut passed, mut last, mut wrong) = (0_u64, 0_u64, 0_u32);
        for step in steps {
            match step {
                Step::Pass(seconds) => {
                    wall += SignedDuration::from_secs(seconds.into());
                    passed += u64::from(seconds);
                }
                Step::SetBack(seconds) => wall -= SignedDuration::from_secs(seconds.into()),
                Step::Try(right) => match staff.count_try("C0", wall) {
                    Ok(_) => {
                        prop_assert!(passed - last >= u64::from(wait_after(wrong)), "a try too early");
                        (last, wrong) = (passed, wrong + 1);
                        if right {
                            staff.passed("c0");
                            wrong = 0;
                        }
                    }
                    Err(NotAllowed::Wait(seconds)) => {
                        prop_assert!(seconds >= 1 && seconds <= wait_after(wrong));
                    }
                    Err(other) => prop_assert!(matches!(other, NotAllowed::Unknown)),
                },
                Step::Add(n, office) => {
                    let role = if office { Role::Office } else { Role::Agent };
                    let _ = staff.add("c0", &format!("c{n}"), role, hash.clone());
                }
                // The first one stays, so that their waits can be followed.
                Step::Remove(by, n) if n != 0 => {
                    let _ = staff.remove(&format!("c{by}"), &format!("c{n}"));
                }
                Step::Remove(..) => {}
            }
            staff.clock_set_back(wall);
            prop_assert!(staff.wait("c0", wall) <= wait_after(wrong));
            prop_assert!(staff.people().iter().any(|m| m.role == Role::Office));
            prop_assert!(staff.people().len() <= PEOPLE_MAX);
        }
        let later = wall + SignedDuration::from_secs(WAITS[WAITS.len() - 1].into());
        prop_assert_eq!(staff.wait("c0", later), 0);
        prop_assert!(wrong < FREE_TRIES || staff.member("c0").unwrap().tries.last.is_some());
    }

    /// What somebody else wrote into the file is read or refused, and never more than that.
    #[test]
    fn any_file_is_read_or_refused(bytes in proptest::collection::vec(any::<u8>(), 0..200), at in 0_usize..300) {
        let mut file = two().into_bytes();
        let at = at.min(file.len());
        file.splice(at..at, bytes);
        let disk = MemoryDisk::new();
        disk.plant(Path::new(FILE), &file);
        let desk = Desk::open(disk, HandClock::new());
        if let Ok(staff) = desk.book.staff() {
            prop_assert!(staff.people().iter().any(|m| m.role == Role::Office));
        }
    }
}

/// A clock that stands still lets a wait never end; it is no reason to let one in.
#[test]
fn a_clock_that_stands_still_opens_nothing() {
    let disk = MemoryDisk::new();
    disk.plant(Path::new(FILE), two().as_bytes());
    let ports = Ports {
        disk: Arc::new(disk),
        clock: Arc::new(FixedClock(NOW.parse().unwrap())),
        entropy: Arc::new(FixedEntropy([7; 32])),
    };
    let mut book = StaffBook::open(&ports, Path::new(DATA), Cost::FLOOR);
    for _ in 0..3 {
        assert_eq!(book.try_pin(&who("JM", "0000")), Tried::Wrong);
    }
    assert_eq!(book.try_pin(&who("JM", "4711")), Tried::Wait(5));
}
