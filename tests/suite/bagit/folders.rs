//! What only a folder can be: without payload, with links, with pipes, larger than a record.

use std::os::unix::fs::symlink;
use std::path::Path;

use sendoff::ports::system::SystemDisk;
use sendoff::ports::{Access, Disk};
use sendoff::record::bag::{BagFault, judge_path};

use super::{Bag, HELLO};
use crate::seal::put_all;

/// SHA-256 of 72 MiB of zeros (by `head -c 75497472 /dev/zero | sha256sum`).
const ZEROS: &str = "3db0cafd8b4f62b468524b2b975318814b193dd89edfa89bfd4ee86c2a39a4af";

fn verdict(dir: &Path) -> Result<Vec<String>, BagFault> {
    judge_path(&SystemDisk, dir)
}

fn text(dir: &Path, name: &str, text: &str) {
    SystemDisk.replace(&dir.join(name), text.as_bytes(), Access::Usual).unwrap();
}

#[test]
fn a_bag_without_payload_has_the_folder_all_the_same() {
    let dir = tempfile::tempdir().unwrap();
    let bag = Bag::of("1.0").without("data/hello.txt").manifest("");
    put_all(dir.path(), &bag.0);
    assert_eq!(verdict(dir.path()), Err(BagFault::NoPayload));
    text(dir.path(), "data", "a file");
    assert_eq!(verdict(dir.path()), Err(BagFault::NoPayload));
    SystemDisk.remove(&dir.path().join("data")).unwrap();
    SystemDisk.make_dir(&dir.path().join("data")).unwrap();
    assert_eq!(verdict(dir.path()), Ok(Vec::new()));
    text(dir.path(), "bag-info.txt", "Payload-Oxum: 0.0\n");
    assert_eq!(verdict(dir.path()), Ok(Vec::new()));
    // Folders are no part of the payload, however many there are.
    SystemDisk.make_dir(&dir.path().join("data/a/b/c")).unwrap();
    assert_eq!(verdict(dir.path()), Ok(Vec::new()));
}

#[test]
fn a_link_may_lead_to_a_file_of_the_bag_and_nowhere_else() {
    let dir = tempfile::tempdir().unwrap();
    let (bag, outside) = (dir.path().join("bag"), dir.path().join("outside"));
    SystemDisk.make_dir(&outside).unwrap();
    text(&outside, "hello.txt", "hello\n");
    let whole = Bag::of("1.0").and(HELLO, "data/link");
    for (target, good) in [
        ("hello.txt", true),
        ("../data/hello.txt", true),
        ("../../outside/hello.txt", false),
        ("../../outside", false),
        ("/etc/hostname", false),
        ("nowhere", false),
        ("link", false),
        (".", false),
    ] {
        whole.put(&bag);
        symlink(target, bag.join("data/link")).unwrap();
        let said = verdict(&bag);
        assert_eq!(said.is_ok(), good, "{target}: {said:?}");
        assert!(good || matches!(said, Err(BagFault::NoFile { .. })), "{target}: {said:?}");
        std::fs::remove_dir_all(&bag).unwrap();
    }
    // The bag itself may be given by a link.
    Bag::of("1.0").put(&bag);
    symlink(&bag, dir.path().join("by-link")).unwrap();
    assert_eq!(verdict(&dir.path().join("by-link")), Ok(Vec::new()));
}

#[test]
fn pipes_and_sockets_are_refused_and_never_waited_for() {
    let dir = tempfile::tempdir().unwrap();
    Bag::of("1.0").put(dir.path());
    let _socket = std::os::unix::net::UnixListener::bind(dir.path().join("data/socket")).unwrap();
    assert!(matches!(verdict(dir.path()), Err(BagFault::NoFile { .. })));
    assert!(verdict(&dir.path().join("data/socket")).unwrap_err().cannot_judge());
}

/// Records are small; bags are not. Nothing here fits a record: number of files, size, depth.
#[test]
fn a_bag_may_be_larger_than_any_record() {
    let dir = tempfile::tempdir().unwrap();
    let deep = format!("data/{}end", "d/".repeat(200));
    let mut bag = Bag::of("1.0").listing(&deep, &deep);
    for n in 0..700 {
        let name = format!("data/{n}");
        bag = bag.listing(&name, &name);
    }
    bag.put(dir.path());
    let file =
        std::fs::OpenOptions::new().create_new(true).write(true).open(dir.path().join("data/large")).unwrap();
    file.set_len(72 << 20).unwrap();
    let wrong = verdict(dir.path());
    assert!(matches!(wrong, Err(BagFault::NotListed { .. })), "{wrong:?}");
    let manifest = String::from_utf8(bag.0["manifest-sha256.txt"].clone()).unwrap();
    text(dir.path(), "manifest-sha256.txt", &format!("{manifest}{ZEROS}  data/large\n"));
    assert_eq!(verdict(dir.path()), Ok(Vec::new()));
}
