//! Tag files of any bytes: judged, never a panic, and the payload never taken for good when it is not.

use std::collections::BTreeMap;

use proptest::prelude::*;
use sendoff::record::bag::judge;

use super::{Bag, HELLO};

/// Text that looks like parts of lists.
fn pieces() -> impl Strategy<Value = String> {
    let parts = prop_oneof![
        Just(HELLO.to_owned()),
        Just("data/hello.txt".to_owned()),
        Just("data/".to_owned()),
        Just("../".to_owned()),
        Just("%0A%".to_owned()),
        Just("Payload-Oxum: 6.1".to_owned()),
        Just("https://example.org/x 6 ".to_owned()),
        "[ \t\r\n*\\\\:.%~\u{301}\u{feff}]{0,3}",
        any::<String>(),
    ];
    prop::collection::vec(parts, 0..12).prop_map(|parts| parts.concat())
}

proptest! {
    #[test]
    fn lists_of_any_text_never_panic(
        version in prop_oneof![Just("1.0"), Just("0.97"), Just("0.93")],
        file in prop_oneof![
            Just("manifest-sha256.txt"), Just("manifest-md5.txt"), Just("tagmanifest-sha256.txt"),
            Just("fetch.txt"), Just("bag-info.txt"), Just("package-info.txt"), Just("bagit.txt"),
        ],
        text in pieces(),
    ) {
        let _ = Bag::of(version).with(file, &text).judge();
    }

    #[test]
    fn lists_of_any_bytes_never_panic(
        encoding in prop_oneof![Just("UTF-8"), Just("UTF-16"), Just("UTF-32"), Just("ISO-8859-1"), Just("US-ASCII")],
        bytes in prop::collection::vec(any::<u8>(), 0..200),
    ) {
        let bag = Bag::declared(&format!("BagIt-Version: 1.0\nTag-File-Character-Encoding: {encoding}\n"));
        prop_assert!(bag.bytes("manifest-sha256.txt", &bytes).judge().is_err());
    }

    /// Whatever the names: a bag that is told of rightly is valid, and one byte more anywhere in it makes it invalid.
    #[test]
    fn payload_of_any_name_is_judged_by_its_bytes(
        files in prop::collection::btree_map("[a-zA-Z0-9 ._%äß測-]{1,12}", prop::collection::vec(any::<u8>(), 0..40), 1..6),
        at in any::<prop::sample::Index>(),
    ) {
        let mut bag = Bag::of("1.0").without("data/hello.txt");
        let mut manifest = String::new();
        for (name, bytes) in &files {
            // A part that is a dot or two is no name of a file.
            let path = format!("data/x{name}");
            manifest.push_str(&format!("{} {}\n", sendoff::record::seal::Digest::of(bytes), path.replace('%', "%25")));
            bag = bag.bytes(&path, bytes);
        }
        bag = bag.manifest(&manifest);
        prop_assert!(bag.judge().is_ok(), "{:?}", bag.judge());
        let name = format!("data/x{}", at.get(&files.keys().collect::<Vec<_>>()));
        bag.0.get_mut(&name).unwrap().push(0);
        let files: BTreeMap<&str, &[u8]> = bag.0.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())).collect();
        prop_assert!(judge(&files).is_err());
    }
}
