//! A damaged index is told from a whole one, whatever was damaged; one that grew answers as one made at once.

use std::fs;
use std::path::Path;

use proptest::prelude::*;
use sendoff::archive::index::{Draft, Index, IndexFault, Query, Sort};
use sendoff::ports::system::SystemDisk;

use super::answers::all;
use super::lot::{row, the_index};

fn made(path: &Path, rows: impl IntoIterator<Item = u32>) -> Index {
    let mut draft = Draft::new(&SystemDisk, path).unwrap();
    for n in rows {
        draft.add(row(n)).unwrap();
    }
    draft.finish(&SystemDisk, path).unwrap()
}

fn grown(path: &Path, rows: impl IntoIterator<Item = u32>) -> Index {
    let index = Index::open(&SystemDisk, path).unwrap();
    let mut draft = Draft::of(&index, &SystemDisk, path).unwrap();
    for n in rows {
        draft.add(row(n)).unwrap();
    }
    draft.finish(&SystemDisk, path).unwrap()
}

/// Answers to many queries, in all orders.
fn answers(index: &Index) -> Vec<Vec<u32>> {
    let words = ["", "robin", "ffmann", "awning", "vale awning", "2026-05", "b2", "小明", "vent gas müller"];
    let sorts = [Sort::Best, Sort::Sealed, Sort::Received, Sort::Renter, Sort::Unit];
    let queries = words.iter().flat_map(|w| sorts.iter().map(|s| Query { sort: *s, ..Query::words(w) }));
    queries.map(|query| all(index, &query, 9)).collect()
}

#[test]
fn every_damage_is_told() {
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("index.sqlite");
    drop(made(&path, 0..12));
    let whole = fs::read(&path).unwrap();
    let wanted = answers(&Index::open(&SystemDisk, &path).unwrap());
    // Bytes of the header (SQLite's file format, 1.3) that change with any writing, and say nothing about the content.
    let counters = |at: usize| (24..28).contains(&at) || (92..100).contains(&at);
    let pages = (0..whole.len()).step_by(8192).map(|page| page + page / 8192 * 37 % 8192);
    for at in (0..100).chain(pages) {
        let mut bytes = whole.clone();
        bytes[at] ^= 1 << (at % 8);
        fs::write(&path, &bytes).unwrap();
        match Index::open(&SystemDisk, &path) {
            Ok(index) => {
                assert!(counters(at), "byte {at} was changed and nobody saw it");
                assert_eq!(answers(&index), wanted, "byte {at}");
            }
            Err(fault) => assert!(fault.can_be_remade(), "byte {at}: {fault}"),
        }
    }
    for len in (0..whole.len()).step_by(4096).chain([1, 99, 100, whole.len() - 1]) {
        fs::write(&path, &whole[..len]).unwrap();
        let fault = Index::open(&SystemDisk, &path).unwrap_err();
        assert!(fault.can_be_remade(), "cut at {len}: {fault}");
    }
    for other in [&b"not a database at all"[..], &[0; 10_000]] {
        fs::write(&path, other).unwrap();
        assert!(Index::open(&SystemDisk, &path).unwrap_err().can_be_remade());
    }
    let mut longer = whole.clone();
    longer.push(0);
    fs::write(&path, &longer).unwrap();
    assert!(matches!(Index::open(&SystemDisk, &path), Err(IndexFault::Damaged)));
    fs::remove_file(&path).unwrap();
    assert!(matches!(Index::open(&SystemDisk, &path), Err(IndexFault::Missing)));
}

#[test]
fn nothing_lies_beside_it_and_the_old_one_stands_until_the_new_one_is_whole() {
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("index.sqlite");
    drop(made(&path, 0..3));
    let whole = fs::read(&path).unwrap();
    let reader = Index::open(&SystemDisk, &path).unwrap();
    let mut draft = Draft::of(&reader, &SystemDisk, &path).unwrap();
    draft.add(row(3)).unwrap();
    // Only one at a time.
    assert!(matches!(Draft::new(&SystemDisk, &path), Err(IndexFault::Busy)));
    assert_eq!(fs::read(&path).unwrap(), whole);
    drop(draft);
    assert_eq!(reader.len().unwrap(), 3);
    assert_eq!(grown(&path, [3, 3, 2]).len().unwrap(), 4);
    // Whoever reads the old one still does.
    assert_eq!(all(&reader, &Query::default(), 2), [2, 1, 0]);
    let names: Vec<String> =
        fs::read_dir(dir.path()).unwrap().map(|e| e.unwrap().file_name().into_string().unwrap()).collect();
    assert!(
        names
            .iter()
            .all(|n| ["index.sqlite", "index.sqlite-added", ".index.sqlite.lock"].contains(&n.as_str())),
        "{names:?}"
    );
}

/// What is added lies in a small file that belongs to the large one. Whatever a kill or a disk makes of it, the large one
/// answers, and what is missing is known to be missing.
#[test]
fn what_was_added_is_there_as_a_whole_or_not_at_all() {
    let dir = tempfile::tempdir().unwrap();
    let (path, beside) = (dir.path().join("index.sqlite"), dir.path().join("index.sqlite-added"));
    drop(made(&path, 0..6));
    let large = fs::read(&path).unwrap();
    drop(grown(&path, [6, 7]));
    let first = fs::read(&beside).unwrap();
    drop(grown(&path, [8]));
    let second = fs::read(&beside).unwrap();
    assert_eq!(fs::read(&path).unwrap(), large, "the large file is never touched");
    let len = || Index::open(&SystemDisk, &path).unwrap().len().unwrap();
    for (bytes, records) in [(&first, 8), (&second, 9)] {
        fs::write(&beside, bytes).unwrap();
        assert_eq!(len(), records);
    }
    let mut flipped = second.clone();
    flipped[second.len() / 2] ^= 1;
    for bytes in [&flipped[..], &second[..second.len() / 2], b"", b"junk"] {
        fs::write(&beside, bytes).unwrap();
        assert_eq!(len(), 6);
        let again = grown(&path, [6, 7, 8]);
        assert_eq!(again.len().unwrap(), 9);
        assert_eq!(again.added_paths().unwrap().len(), 3);
    }
    // A part that a kill left behind is in nobody's way.
    fs::write(dir.path().join(".index.sqlite.part"), &second[..100]).unwrap();
    assert_eq!(grown(&path, [9]).len().unwrap(), 10);
    // Another large file took the place: what was added to the first does not belong to it.
    let old = fs::read(&beside).unwrap();
    drop(made(&path, 20..23));
    assert!(!beside.exists());
    fs::write(&beside, &old).unwrap();
    assert_eq!(len(), 3);
}

#[test]
fn what_was_added_can_be_put_together_with_the_rest() {
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("index.sqlite");
    drop(made(&path, (0..40).filter(|n| n % 3 != 0)));
    let index = grown(&path, (0..40).filter(|n| n % 3 == 0));
    assert_eq!(answers(&index), answers(&the_index()));
    let mut draft = Draft::together(&index, &SystemDisk, &path).unwrap();
    (0..40).filter(|n| n % 3 == 0).for_each(|n| draft.add(row(n)).unwrap());
    let index = draft.finish(&SystemDisk, &path).unwrap();
    assert_eq!((index.whole_len().unwrap(), index.added_paths().unwrap().len()), (40, 0));
    assert!(!dir.path().join("index.sqlite-added").exists());
    assert_eq!(answers(&index), answers(&the_index()));
}

/// Somebody made the index anew between the look and the change.
#[test]
fn nothing_is_added_to_a_file_that_took_the_place() {
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("index.sqlite");
    let before = made(&path, 0..3);
    drop(made(&path, 0..4));
    assert!(matches!(Draft::of(&before, &SystemDisk, &path), Err(IndexFault::Busy)));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]
    #[test]
    fn an_index_that_grew_answers_as_one_made_at_once(
        order in Just((0..40).collect::<Vec<u32>>()).prop_shuffle(),
        cuts in proptest::collection::vec(0..40_usize, 0..4),
    ) {
        let dir = tempfile::tempdir().unwrap();
        let path = dir.path().join("index.sqlite");
        let mut cuts = cuts;
        cuts.sort_unstable();
        let mut from = 0;
        let mut index = made(&path, []);
        for cut in cuts.into_iter().chain([40]) {
            index = grown(&path, order[from..cut].iter().copied());
            from = cut;
        }
        prop_assert_eq!(answers(&index), answers(&the_index()));
    }
}
