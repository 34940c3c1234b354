//! Damage around the records: names and folders, whom the office trusts, chains, receipts, marks.

use std::path::PathBuf;

use sendoff::archive::import::{Plan, import};
use sendoff::record::keys::CHECKPOINT;
use sendoff::record::seal::{Digest, Kind};

use super::LATER;
use super::hand::{Hand, Planted, chain_of};
use super::inside::holiday;
use crate::archive::many::{Made, Tablet, put};
use crate::archive::support::with_disk;
use crate::seal::time;

pub fn wrong_folder(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    let place = format!("records/2019/01/{}.zip", made.id);
    hand.put(&place, &hand.read(&made.place()));
    hand.remove(&made.place());
    Planted::seen(place)
}

pub fn second_copy(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    let place = format!("records/2019/02/{}.zip", made.id);
    hand.put(&place, &hand.read(&made.place()));
    Planted { copies: 1, ..Planted::seen(place) }
}

/// Two records that were given each other's name.
pub fn records_swapped(hand: &mut Hand<'_>) -> Planted {
    let (one, two) = (hand.record(), hand.record());
    let (first, second) = (hand.read(&one.place()), hand.read(&two.place()));
    hand.put(&one.place(), &second);
    hand.put(&two.place(), &first);
    Planted { places: vec![one.place(), two.place()], ..Planted::default() }
}

pub fn stray_text(hand: &mut Hand<'_>) -> Planted {
    hand.put("records/2024/02/letter.txt", b"dear office");
    Planted::seen("records/2024/02/letter.txt")
}

pub fn stray_zip(hand: &mut Hand<'_>) -> Planted {
    let place = "records/2024/03/holiday.zip".to_owned();
    hand.put(&place, &holiday());
    Planted { refused: vec![place.clone()], ..Planted::seen(place) }
}

/// The key was good for a year, and the record came in after that.
pub fn expired(hand: &mut Hand<'_>) -> Planted {
    let made = hand.single();
    let valid = |line: &str| line.replacen("00Z\" ", "00Z\",valid-before=\"20240101000000Z\" ", 1);
    hand.trust(made.id.tablet(), valid);
    Planted::file(made)
}

pub fn too_early(hand: &mut Hand<'_>) -> Planted {
    let made = hand.single();
    hand.trust(made.id.tablet(), |line| line.replace("20230101000000Z", "20310101000000Z"));
    Planted::file(made)
}

pub fn retired(hand: &mut Hand<'_>) -> Planted {
    let made = hand.single();
    hand.scene.archive("office").retire(made.id.tablet(), time("2024-06-01T00:00:00Z")).unwrap();
    Planted::file(made)
}

pub fn distrusted(hand: &mut Hand<'_>) -> Planted {
    let made = hand.single();
    hand.scene.archive("office").distrust(made.id.tablet()).unwrap();
    Planted::file(made)
}

/// Nobody vouches for the tablet any more.
pub fn unlisted(hand: &mut Hand<'_>) -> Planted {
    let made = hand.single();
    hand.trust(made.id.tablet(), |_| String::new());
    Planted::file(made)
}

/// A record of a tablet that nobody ever trusted, put there by hand.
pub fn stranger(hand: &mut Hand<'_>) -> Planted {
    let (made, zip) = Tablet::new("x9", 99, 1).next();
    hand.add(&made, &zip, false);
    Planted { gone: Vec::new(), ..Planted::file(&made) }
}

/// The file is gone, its receipt is there.
pub fn file_gone(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    hand.remove(&made.place());
    Planted { gone: vec![made.id.clone()], ..Planted::seen(made.id.to_string()) }
}

/// A record and its receipt are gone.
pub fn gap(hand: &mut Hand<'_>) -> Planted {
    let (_, chain) = hand.chain();
    hand.lose(chain[2]);
    Planted { gone: vec![chain[2].id.clone()], ..Planted::seen(chain_of(chain[2])) }
}

/// The last two records of a tablet and their receipts are gone.
pub fn tail_cut(hand: &mut Hand<'_>) -> Planted {
    let (_, chain) = hand.chain();
    chain[4..].iter().for_each(|made| hand.lose(made));
    let gone = chain[4..].iter().map(|made| made.id.clone()).collect();
    Planted { gone, ..Planted::seen(chain_of(chain[0])) }
}

/// Everything of a tablet is gone, with all receipts.
pub fn chain_gone(hand: &mut Hand<'_>) -> Planted {
    let (_, chain) = hand.chain();
    chain.iter().for_each(|made| hand.lose(made));
    let gone = chain.iter().map(|made| made.id.clone()).collect();
    Planted { gone, ..Planted::seen(chain_of(chain[0])) }
}

/// A record with the number of another, put beside it: it goes on from the record of `before`.
fn twin(hand: &Hand<'_>, tablet: &Tablet, of: &Made, before: &Made) -> Planted {
    let (made, zip) = tablet.seal(of.id.number(), Some(before), Kind::Handoff, time("2026-05-04T09:00:00Z"));
    hand.add(&made, &zip, false);
    let places = vec![made.place(), chain_of(&made)];
    Planted { places, refused: vec![made.place()], ..Planted::default() }
}

/// The tablet was copied: two records go on from the same one.
pub fn fork(hand: &mut Hand<'_>) -> Planted {
    let (tablet, chain) = hand.chain();
    twin(hand, tablet, chain[3], chain[2])
}

/// A number was used again, later.
pub fn number_again(hand: &mut Hand<'_>) -> Planted {
    let (tablet, chain) = hand.chain();
    let mut planted = twin(hand, tablet, chain[3], chain[4]);
    planted.places.push(chain_of(chain[0]));
    planted
}

/// A fork that an import did not take.
pub fn fork_in_quarantine(hand: &mut Hand<'_>) -> Planted {
    let (tablet, chain) = hand.chain();
    let at = time("2026-05-04T09:00:00Z");
    let (made, zip) = tablet.seal(4, Some(chain[2]), Kind::Handoff, at);
    let path = hand.scene.root.join("late").join(format!("{}.zip", made.id));
    put(hand.scene.disk.as_ref(), &path, &zip);
    let ports = with_disk(std::sync::Arc::clone(&hand.scene.disk), LATER);
    let paths: [PathBuf; 1] = [path];
    let archive = hand.scene.archive("office");
    let plan = Plan { paths: &paths, rehearsals: false };
    let summary = import(&archive, plan, &ports, &mut |_| {}).unwrap();
    let kept = summary.bad[0].1.kept.clone().unwrap();
    Planted { places: vec![kept, chain_of(chain[0])], ..Planted::default() }
}

/// One more record of the chain that goes on from another than the last.
fn seventh(hand: &Hand<'_>, tablet: &Tablet, before: &Made) -> Planted {
    let (made, zip) = tablet.seal(7, Some(before), Kind::Handoff, time("2026-05-04T09:00:00Z"));
    hand.add(&made, &zip, true);
    Planted { more: vec![made.id.clone()], ..Planted::seen(chain_of(&made)) }
}

pub fn other_order(hand: &mut Hand<'_>) -> Planted {
    let (tablet, chain) = hand.chain();
    seventh(hand, tablet, chain[1])
}

pub fn other_before(hand: &mut Hand<'_>) -> Planted {
    let (tablet, chain) = hand.chain();
    let unseen = Made { digest: Digest::of(b"a record that is not here"), ..chain[5].clone() };
    seventh(hand, tablet, &unseen)
}

/// The last record was replaced by another of the same tablet, and its receipt too.
pub fn last_replaced(hand: &mut Hand<'_>) -> Planted {
    let (tablet, chain) = hand.chain();
    let last = chain[5];
    let (made, zip) = tablet.seal(6, Some(chain[4]), Kind::NotHandedOver, last.sealed);
    hand.put(&last.place(), &zip);
    hand.log(last, |line| line.replace(&last.digest.to_string(), &made.digest.to_string()));
    Planted::seen(chain_of(last))
}

/// A record in the middle was replaced by another of the same tablet.
pub fn middle_replaced(hand: &mut Hand<'_>) -> Planted {
    let (tablet, chain) = hand.chain();
    let (_, zip) = tablet.seal(4, Some(chain[2]), Kind::NotHandedOver, chain[3].sealed);
    hand.put(&chain[3].place(), &zip);
    Planted { places: vec![chain[3].place(), chain_of(chain[3])], ..Planted::default() }
}

pub fn receipt_removed(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    hand.log(made, |_| String::new());
    Planted::seen(made.place())
}

/// A digit of the digest in a receipt is another.
pub fn receipt_changed(hand: &mut Hand<'_>) -> Planted {
    let (_, chain) = hand.chain();
    let digest = chain[2].digest.to_string();
    let other = digest.replacen(&digest[..1], if digest.starts_with('0') { "1" } else { "0" }, 1);
    hand.log(chain[2], |line| line.replace(&digest, &other));
    Planted::seen(chain[2].place())
}

/// Received a second earlier, it says now.
pub fn receipt_time_changed(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    hand.log(made, |line| line.replacen("T15:00:00Z", "T14:59:59Z", 1));
    Planted::default()
}

/// Came from elsewhere, it says now.
pub fn receipt_source_changed(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    hand.log(made, |line| line.replacen("/stick/", "/tablet/", 1));
    Planted::default()
}

pub fn receipt_garbled(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    hand.log(made, |line| format!("good morning\n{line}"));
    Planted::default()
}

pub fn receipt_twice(hand: &mut Hand<'_>) -> Planted {
    let made = hand.record();
    hand.log(made, |line| line.repeat(2));
    Planted::default()
}

/// The log of a month is gone, and its mark says so: here, of a month in which nothing came.
pub fn log_removed(hand: &mut Hand<'_>) -> Planted {
    let (log, mark) = ("receipts/2022-01.log", "receipts/2022-01.log.mark");
    let office = hand.scene.archive("office").office_key().unwrap();
    let digest = Digest::of(b"a line\n");
    let text = format!("Sendoff receipts, format 1\nLog: 2022-01\nBytes: 7\nSHA-256: {digest}\n");
    let signature = office.sign(CHECKPOINT, text.as_bytes()).unwrap();
    hand.put(mark, format!("{text}{signature}").as_bytes());
    Planted::seen(log)
}

/// A mark of a log that the office did not sign.
pub fn log_mark_forged(hand: &mut Hand<'_>) -> Planted {
    let mark = "receipts/2022-02.log.mark";
    let text = "Sendoff receipts, format 1\nLog: 2022-02\nBytes: 0\nSHA-256: 00\n";
    let signature = crate::seal::key(99, "nobody").sign(CHECKPOINT, text.as_bytes()).unwrap();
    hand.put(mark, format!("{text}{signature}").as_bytes());
    Planted { names: "not the office's key", ..Planted::seen(mark) }
}

/// The power went while a receipt was being written.
pub fn receipt_torn(hand: &mut Hand<'_>) -> Planted {
    let log = "receipts/2026-08.log";
    hand.put(log, b"2026-08-01T12:00:00Z 5a5a5a");
    Planted::seen(log)
}

pub fn mark_lowered(hand: &mut Hand<'_>) -> Planted {
    let (_, chain) = hand.chain();
    let mark = format!("marks/{}", chain_of(chain[0]));
    let text = String::from_utf8(hand.read(&mark)).unwrap();
    hand.put(&mark, text.replacen("-000006", "-000005", 1).as_bytes());
    Planted::seen(mark)
}

pub fn mark_removed(hand: &mut Hand<'_>) -> Planted {
    let (_, chain) = hand.chain();
    hand.remove(&format!("marks/{}", chain_of(chain[0])));
    Planted::seen(chain_of(chain[0]))
}
