//! Built, sealed, unpacked and verified by the very commands that the record prints; handwriting as pictures.

use std::path::Path;

use sendoff::ports::system::SystemDisk;
use sendoff::ports::{Access, Disk};
use sendoff::record::ink;
use sendoff::record::keys::allowed_signers_line;
use sendoff::record::seal::{Kind, Sealed, Sealing, seal};
use sendoff::walk::Ink;

use super::support::{Led, Ways, head};
use crate::seal::{has, run, t2, time, words};

pub fn sealed(contents: &sendoff::record::build::Contents, kind: Kind) -> Sealed {
    let head = head(kind);
    let sealing = Sealing {
        tablet: &head.tablet,
        number: head.number,
        previous: head.previous,
        kind,
        organization: "Quillfeather Motorhome Hire",
        sealed: head.sealed,
    };
    seal(&sealing, &contents.payload, &t2()).unwrap()
}

/// Runs the commands that a `record.txt` prints, in a folder with its ZIP file and the signers.
pub fn follow(sealed: &Sealed, text: &str) {
    if !(has("unzip", &["-v"]) && has("sha256sum", &["--version"]) && has("ssh-keygen", &[])) {
        return;
    }
    let dir = tempfile::tempdir().unwrap();
    let put =
        |name: &str, bytes: &[u8]| SystemDisk.put_new(&dir.path().join(name), bytes, Access::Usual).unwrap();
    put(&format!("{}.zip", sealed.id), &sealed.zip);
    let signers = allowed_signers_line(t2().public(), "t2", time("2026-01-01T00:00:00Z"));
    put("allowed_signers", format!("{signers}\n").as_bytes());
    let verify = &text[text.find("HOW TO VERIFY").unwrap()..];
    let commands: Vec<&str> = verify.lines().filter_map(|line| line.strip_prefix("    ")).collect();
    assert_eq!(commands.len(), 6, "{commands:?}");
    let out = run(dir.path(), "sh", &["-e"], commands.join("\n").as_bytes());
    let said = words(&out);
    assert!(out.status.success(), "{said}");
    assert!(said.contains("data/record.json: OK") && said.contains("bag-info.txt: OK"), "{said}");
    assert!(said.contains("Good \"record@sendoff\" signature for t2"), "{said}");
}

#[test]
fn the_printed_commands_verify_the_record() {
    let led = Led::whole(Ways::default());
    let sealed = sealed(&led.contents().unwrap(), Kind::Handoff);
    follow(&sealed, &led.files().1);
}

/// Python's XML parser: a picture of its size, and a path for each stroke.
#[test]
fn ink_is_a_picture_with_a_path_for_each_stroke() {
    let strokes = vec![vec![(0, 0), (333, 77), (999, 299)], vec![(-4, 5)], vec![(1, 1), (2, 2)]];
    let svg = ink::svg(&Ink { height: 299, strokes });
    assert_eq!(svg.chars().filter(|c| matches!(c, 'e' | 'E')).count(), svg.matches(['e', 'E']).count());
    if !has("python3", &["-c", "import xml.etree.ElementTree"]) {
        return;
    }
    let script = "import sys,re,xml.etree.ElementTree as x\n\
                  r=x.fromstring(sys.stdin.buffer.read())\n\
                  p=r.findall('.//{http://www.w3.org/2000/svg}path')\n\
                  assert all(re.fullmatch(r'M-?\\d+ -?\\d+(Q-?\\d+ -?\\d+ -?\\d+(\\.5)? -?\\d+(\\.5)?)*L-?\\d+ -?\\d+',q.get('d')) for q in p)\n\
                  print(r.get('viewBox'),len(p))";
    let out = run(Path::new("."), "python3", &["-c", script], svg.as_bytes());
    assert_eq!(words(&out).trim(), "0 0 1000 299 3");
}
