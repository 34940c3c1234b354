//! Damage to the file of one record.

use sendoff::record::bag;
use sendoff::record::seal::Digest;
use sendoff::record::zip::{self, Entry};

use super::hand::{Hand, Planted};
use crate::seal::Payload;
use crate::verify::reseal;

fn change(files: &mut Payload, name: &str, from: &str, to: &str) {
    let text = String::from_utf8(files[name].clone()).unwrap();
    assert!(text.contains(from), "{name}: {text}");
    files.insert(name.to_owned(), text.replacen(from, to, 1).into_bytes());
}

/// A byte of a file is another, and the ZIP was packed again: its check sums fit.
pub fn flip(hand: &mut Hand<'_>, name: &'static str) -> Planted {
    let made = hand.record();
    hand.repack(made, |files| {
        let bytes = files.get_mut(name).unwrap();
        let at = bytes.len() / 2;
        bytes[at] ^= 1;
    });
    Planted::named(made, name)
}

/// A byte on the disk is another.
pub fn flip_raw(hand: &mut Hand<'_>, name: &'static str) -> Planted {
    let made = hand.record();
    let mut bytes = hand.read(&made.place());
    let entries = zip::read(&bytes).unwrap();
    let inside = entries.iter().find(|e| e.name.ends_with(name)).unwrap().bytes;
    let at = inside.as_ptr() as usize - bytes.as_ptr() as usize + inside.len() / 2;
    bytes[at] ^= 0x20;
    hand.put(&made.place(), &bytes);
    Planted::named(made, name)
}

pub fn file_removed(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    hand.repack(made, |files| drop(files.remove("data/ink-2.svg").unwrap()));
    Planted::named(made, "data/ink-2.svg")
}

pub fn file_added(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    hand.repack(made, |files| drop(files.insert("data/ink-9.svg".into(), b"<svg/>".to_vec())));
    Planted::named(made, "data/ink-9.svg")
}

pub fn file_renamed(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    hand.repack(made, |files| {
        let bytes = files.remove("data/ink-1.svg").unwrap();
        files.insert("data/ink-0.svg".into(), bytes);
    });
    Planted::named(made, "data/ink-1.svg")
}

/// Each file has the content of the other.
pub fn files_swapped(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    hand.repack(made, |files| {
        let ink = files["data/ink-1.svg"].clone();
        let text = files.insert("data/record.txt".into(), ink).unwrap();
        files.insert("data/ink-1.svg".into(), text);
    });
    Planted::named(made, "data/ink-1.svg")
}

/// Another name in the record, both manifests computed anew: all digests fit, the seal does not.
pub fn forged(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    hand.repack(made, |files| {
        let seal = files[bag::SEAL_FILE].clone();
        change(files, bag::RECORD_FILE, "\"nights\": 5", "\"nights\": 6");
        reseal(files, &crate::seal::key(99, "nobody"));
        files.insert(bag::SEAL_FILE.into(), seal);
    });
    Planted::named(made, "the seal does not hold")
}

/// The same, sealed by another tablet, which the office trusts.
pub fn forged_by_another(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    let other = hand.scene.tablets.iter().find(|tablet| tablet.name == "c1").unwrap();
    hand.repack(made, |files| {
        change(files, bag::RECORD_FILE, "\"nights\": 5", "\"nights\": 6");
        reseal(files, &other.key);
    });
    Planted::named(made, "does not belong to the key")
}

/// The seal of another record of the same tablet.
pub fn foreign_seal(hand: &mut Hand<'_>) -> Planted {
    let (made, other) = (hand.record(), hand.record());
    let bytes = hand.read(&other.place());
    let entries = zip::read(&bytes).unwrap();
    let seal = entries.iter().find(|e| e.name.ends_with(bag::SEAL_FILE)).unwrap().bytes.to_vec();
    hand.repack(made, |files| drop(files.insert(bag::SEAL_FILE.into(), seal)));
    Planted::named(made, "the seal does not hold")
}

/// The tablet ran a newer program.
pub fn newer_schema(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    let key = &hand.tablet(made).key;
    hand.repack(made, |files| {
        change(files, bag::RECORD_FILE, "\"schema\": \"1.", "\"schema\": \"2.");
        reseal(files, key);
        oxum(files, key);
    });
    Planted::named(made, "record.json, 2 is newer")
}

pub fn newer_format(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    let key = &hand.tablet(made).key;
    hand.repack(made, |files| {
        change(files, bag::INFO_FILE, "Sendoff-Format: 1\n", "Sendoff-Format: 2\nSendoff-Mood: sunny\n");
        reseal(files, key);
    });
    Planted::named(made, "Sendoff-Format 2 is newer")
}

/// Says the size of the payload anew.
fn oxum(files: &mut Payload, key: &sendoff::record::keys::TabletKey) {
    let data = || files.iter().filter(|(name, _)| name.starts_with("data/"));
    let (octets, streams) = (data().map(|(_, bytes)| bytes.len()).sum::<usize>(), data().count());
    let text = String::from_utf8(files[bag::INFO_FILE].clone()).unwrap();
    let line = |line: &str| match line.strip_prefix("Payload-Oxum: ") {
        Some(_) => format!("Payload-Oxum: {octets}.{streams}\n"),
        None => format!("{line}\n"),
    };
    files.insert(bag::INFO_FILE.into(), text.lines().map(line).collect::<String>().into_bytes());
    reseal(files, key);
}

/// Only the first part of the file is there.
pub fn cut_off(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    let bytes = hand.read(&made.place());
    hand.put(&made.place(), &bytes[..bytes.len() * 2 / 3]);
    Planted::file(made)
}

pub fn empty(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    hand.put(&made.place(), b"");
    Planted::file(made)
}

pub fn more_behind(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    let bytes = hand.read(&made.place());
    hand.put(&made.place(), &[&bytes[..], b"\n"].concat());
    Planted::file(made)
}

/// A ZIP of somebody's holiday in place of the record.
pub fn foreign_zip(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    hand.put(&made.place(), &holiday());
    Planted::named(made, "no bag")
}

pub fn holiday() -> Vec<u8> {
    zip::write(&[Entry { name: "beach/one.jpg", bytes: b"\xff\xd8\xff\xd9" }]).unwrap()
}

/// Unpacked and packed again by a tool that orders the files by name.
pub fn other_order(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    let bytes = hand.read(&made.place());
    let mut entries = zip::read(&bytes).unwrap();
    entries.sort_by_key(|entry| entry.name);
    hand.put(&made.place(), &zip::write(&entries).unwrap());
    Planted::named(made, "order")
}

/// Unpacked and packed again by a tool that compresses.
pub fn deflated(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    let bytes = hand.read(&made.place());
    let entries = zip::read(&bytes).unwrap();
    hand.put(&made.place(), &deflate(&entries));
    Planted::named(made, "compressed")
}

/// An honest ZIP with the method *deflate* (RFC 1951, section 3.2.4: blocks that are stored).
fn deflate(entries: &[Entry<'_>]) -> Vec<u8> {
    let (mut out, mut directory) = (Vec::new(), Vec::new());
    let word = |number: usize| u32::try_from(number).unwrap().to_le_bytes();
    let half = |number: usize| u16::try_from(number).unwrap().to_le_bytes();
    for entry in entries {
        let last = entry.bytes.chunks(0xffff).count().saturating_sub(1);
        let block = |(at, part): (usize, &[u8])| {
            let len = half(part.len());
            [&[u8::from(at == last)][..], &len, &len.map(|b| !b), part].concat()
        };
        let mut packed: Vec<u8> = entry.bytes.chunks(0xffff).enumerate().flat_map(block).collect();
        if packed.is_empty() {
            packed = vec![1, 0, 0, 0xff, 0xff];
        }
        let at = out.len();
        let shared = [
            &[20, 0, 0, 0, 8, 0, 0, 0, 0x21, 0][..],
            &crc32fast::hash(entry.bytes).to_le_bytes(),
            &word(packed.len()),
            &word(entry.bytes.len()),
            &half(entry.name.len()),
            &[0, 0],
        ]
        .concat();
        out.extend([&b"PK\x03\x04"[..], &shared, entry.name.as_bytes(), &packed].concat());
        directory.extend(
            [&b"PK\x01\x02\x14\x00"[..], &shared, &[0; 10], &word(at), entry.name.as_bytes()].concat(),
        );
    }
    let (start, size, count) = (word(out.len()), word(directory.len()), half(entries.len()));
    out.extend([&directory[..], b"PK\x05\x06\0\0\0\0", &count, &count, &size, &start, &[0, 0]].concat());
    out
}

#[test]
fn what_is_called_deflated_is_read_by_stock_unzip() {
    if !crate::seal::has("unzip", &["-v"]) {
        return;
    }
    let dir = tempfile::tempdir().unwrap();
    let long: Vec<u8> = (0..200_000_u32).map(|n| (n % 251) as u8).collect();
    let entries = [Entry { name: "a/long", bytes: &long }, Entry { name: "a/none", bytes: b"" }];
    std::fs::write(dir.path().join("x.zip"), deflate(&entries)).unwrap();
    let out = crate::seal::run(dir.path(), "unzip", &["-q", "x.zip"], b"");
    assert!(out.status.success(), "{}", crate::seal::words(&out));
    assert_eq!(Digest::of(&std::fs::read(dir.path().join("a/long")).unwrap()), Digest::of(&long));
}
