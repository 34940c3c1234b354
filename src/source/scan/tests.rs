//! The walker holds nothing sound that the `ron` crate refuses, and reads what it holds sound as that crate does.

use proptest::prelude::*;
use serde::de::IgnoredAny;

use super::super::node::{Kind, Node};
use super::tree;

fn is_ron(text: &str) -> bool {
    use ron::extensions::Extensions;
    ron::Options::default()
        .with_default_extension(
            Extensions::IMPLICIT_SOME | Extensions::UNWRAP_NEWTYPES | Extensions::UNWRAP_VARIANT_NEWTYPES,
        )
        .from_str::<IgnoredAny>(text)
        .is_ok()
}

/// Parts of RON, sound and unsound, that random texts are made of.
const PARTS: [&str; 72] = [
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    ",",
    ":",
    " ",
    "\n",
    "\t",
    "\r\n",
    "a",
    "b",
    "br",
    "r",
    "r#",
    "r\"",
    "#",
    "\"",
    "\\",
    "'",
    "Some",
    "None",
    "true",
    "false",
    "inf",
    "NaN",
    "inff32",
    "NaNf64",
    "Name",
    "_",
    "x1",
    "é",
    "0",
    "1",
    "42",
    "-1",
    "+2",
    "1.5",
    ".5",
    "5.",
    "1e3",
    "1e",
    "-",
    "+",
    ".",
    "..",
    "..=",
    "0x1f",
    "0b2",
    "1_000",
    "1u8",
    "1f32",
    "//",
    "/*",
    "*/",
    "/",
    "\"t\"",
    "\"\\n\"",
    "\"\\u{41}\"",
    "\"\\q\"",
    "r\"raw\"",
    "r#\"a\"b\"#",
    "b\"x\"",
    "b'x'",
    "'c'",
    "#![enable(implicit_some)]",
    "a: 1",
    "(a: 1)",
    "\u{a0}",
    "\u{feff}",
];

/// A sound value, as forms are written.
fn value() -> impl Strategy<Value = String> {
    let leaf = prop_oneof![
        "[A-Za-z_][A-Za-z0-9_]{0,5}",
        "-?[0-9]{1,4}(\\.[0-9]{1,3})?",
        "\"[a-z ,:(){}\\[\\]/*]{0,8}\"",
        Just("\"a\\\"b\\\\\"".to_owned()),
        Just("r#\"x\"y\"#".to_owned()),
        Just("()".to_owned()),
    ];
    leaf.prop_recursive(5, 40, 5, |inner| {
        let list = prop::collection::vec(inner.clone(), 0..5);
        let fields = prop::collection::vec(("[a-z]{1,3}", inner.clone()), 0..4);
        let comma = || prop_oneof![Just(", "), Just(" , // c\n"), Just(",/* c /* d */ */")];
        prop_oneof![
            (list.clone(), comma()).prop_map(|(items, c)| format!("[{}]", items.join(c))),
            ("[A-Z][a-z]{0,3}", list.clone(), comma())
                .prop_map(|(n, items, c)| format!("{n} ({})", items.join(c))),
            ("([A-Z][a-z]{0,3})?", fields, comma()).prop_map(|(n, fields, c)| {
                let all: Vec<String> =
                    fields.iter().map(|(name, value)| format!("{name}: {value}")).collect();
                format!("{n}({})", all.join(c))
            }),
            prop::collection::vec((inner.clone(), inner), 0..3).prop_map(|entries| {
                let all: Vec<String> = entries.iter().map(|(key, value)| format!("{key}: {value}")).collect();
                format!("{{{}}}", all.join(","))
            }),
        ]
    })
}

/// The texts and numbers of a tree, in order.
fn leaves(node: &Node<'_>, found: &mut Vec<String>) {
    match &node.kind {
        Kind::Text(text) => found.push(text.clone().into_owned()),
        Kind::Number(number) => found.push((*number).to_owned()),
        _ => node.parts().into_iter().for_each(|part| leaves(part, found)),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 20_000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn what_it_takes_is_ron(parts in prop::collection::vec(prop::sample::select(&PARTS[..]), 0..14)) {
        let text = parts.concat();
        if tree(&text).is_ok() {
            prop_assert!(is_ron(&text), "taken, but no RON: {text:?}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2_000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn it_takes_what_forms_are_written_in(text in value()) {
        // A word before a bracket can be one of those that stand alone.
        prop_assume!(is_ron(&text));
        prop_assert!(tree(&text).is_ok(), "RON, but not taken: {text:?}");
    }

    #[test]
    fn slips_in_sound_texts_are_judged_alike(text in value(), at in any::<prop::sample::Index>(),
        part in prop::sample::select(&PARTS[..]), cut in any::<bool>()) {
        let chars: Vec<char> = text.chars().collect();
        let at = at.index(chars.len() + 1);
        let rest = chars.iter().skip(at + usize::from(cut));
        let slipped: String = chars.iter().take(at).collect::<String>() + part + &rest.collect::<String>();
        if tree(&slipped).is_ok() {
            prop_assert!(is_ron(&slipped), "taken, but no RON: {slipped:?}");
        }
    }

    #[test]
    fn texts_are_read_as_ron_reads_them(text in "(\\PC|\"|\\\\n|\\\\u\\{[0-9a-f]{1,4}\\}|\\\\x4[0-9]|\\\\\\\\){0,12}") {
        let quoted = format!("\"{text}\"");
        let ours = tree(&quoted).ok().map(|(node, _)| {
            let mut found = Vec::new();
            leaves(&node, &mut found);
            found
        });
        let theirs = ron::from_str::<String>(&quoted).ok().map(|text| vec![text]);
        prop_assert_eq!(ours, theirs);
    }
}

#[test]
fn the_demo_lot_is_taken_without_a_second_judge() {
    let mut count = 0;
    for (name, bytes) in crate::script::EMBEDDED.iter().filter(|(name, _)| name.ends_with(".ron")) {
        let text = std::str::from_utf8(bytes).expect("a text");
        assert!(tree(text).is_ok() && is_ron(text), "{name}");
        count += 1;
    }
    assert!(count > 30);
}

#[test]
fn nodes_know_where_they_stand() {
    let (tree, nodes) = tree("/* c */ (a: [1, \"é\"], b: Name(x: {\"k\": 2}))").expect("sound");
    assert_eq!(nodes, 8);
    assert_eq!(tree.at, 8);
    let at = |path: &[&str]| path.iter().try_fold(&tree, |node, name| node.get(name)).map(|node| node.at);
    assert_eq!(at(&["a", "1"]), Some(16));
    assert_eq!(at(&["b"]), Some(26), "é is two bytes");
    assert_eq!(at(&["b", "x", "k"]), Some(40));
    assert_eq!(at(&["b", "y"]), None);
    assert!((0..nodes).all(|id| tree.find(id).is_some_and(|node| node.id == id)));
}
