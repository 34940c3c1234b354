//! Pictures: whole, used, each in one topic; and pages, as whoever draws them measures them.

use std::io::Cursor;
use std::sync::Arc;

use sendoff::check::{self, Overflow};
use sendoff::script::{Bundle, Scripts};
use sendoff::source::Fault;

use super::{checked, lot, new_faults};

/// What is found with one picture more in the lot.
fn with_picture(name: &str, bytes: &[u8]) -> Vec<Fault> {
    let mut files = lot();
    let _ = files.insert(format!("assets/pictures/{name}"), Arc::from(bytes));
    new_faults(&checked(files), &checked(lot()))
}

fn codes(faults: &[Fault]) -> Vec<&str> {
    faults.iter().map(|f| f.code).collect()
}

fn image_of(format: image::ImageFormat) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    let red = image::RgbImage::from_pixel(40, 30, image::Rgb([200, 0, 0]));
    red.write_to(&mut bytes, format).expect("a picture in memory");
    bytes.into_inner()
}

#[test]
fn a_sound_picture_is_only_unused() {
    let (png, jpeg) = (image_of(image::ImageFormat::Png), image_of(image::ImageFormat::Jpeg));
    assert_eq!(codes(&with_picture("red.png", &png)), ["picture.unused"]);
    assert_eq!(codes(&with_picture("red.jpg", &jpeg)), ["picture.unused"]);
    let svg = b"<?xml version=\"1.0\"?>\n<!-- red -->\n<svg viewBox='0 0 4 3' xmlns='http://www.w3.org/2000/svg'></svg>\n";
    assert_eq!(codes(&with_picture("red.svg", svg)), ["picture.unused"]);
}

#[test]
fn of_two_with_one_name_the_other_is_unused() {
    let found = with_picture("keys.png", &image_of(image::ImageFormat::Png));
    assert_eq!(codes(&found), ["picture.unused"]);
    assert!(found[0].what.contains("`keys.svg`"), "{}", found[0].what);
}

#[test]
fn broken_pictures_are_told_with_the_reason() {
    let png = image_of(image::ImageFormat::Png);
    let jpeg = image_of(image::ImageFormat::Jpeg);
    let mut flipped = png.clone();
    flipped[png.len() / 2] ^= 0xff;
    // A PNG that says it is 60000 by 60000: width and height stand at bytes 16 to 24 (PNG, IHDR).
    let mut huge = png.clone();
    huge[16..24].copy_from_slice(&[0, 0, 0xea, 0x60, 0, 0, 0xea, 0x60]);
    let broken: [(&str, &[u8], &str); 11] = [
        ("red.png", &png[..png.len() / 2], ""),
        ("red.png", &flipped, ""),
        ("red.png", &huge, ""),
        ("red.png", &jpeg, "it is no PNG"),
        ("red.jpg", &png, "it is no JPG"),
        ("red.png", b"", "it is no PNG"),
        ("red.gif", b"GIF89a", "no kind of picture"),
        ("red.svg", b"<html></html>", "its root is no"),
        ("red.svg", b"<svg width='4'></svg>", "no `viewBox`"),
        ("red.svg", b"<svg viewBox='0 0 4'></svg>", "not four numbers"),
        ("red.svg", b"<svg viewBox='0 0 4 3'><path d='", "does not end"),
    ];
    for (name, bytes, why) in broken {
        let found = with_picture(name, bytes);
        assert_eq!(codes(&found), ["picture.broken"], "{name} {why}");
        assert!(found[0].what.contains(why), "{}", found[0].what);
        assert_eq!(found[0].place.file.as_ref(), format!("assets/pictures/{name}"));
    }
}

#[test]
fn pages_are_measured_once_for_each_unit() {
    let seen = std::cell::RefCell::new(Vec::new());
    let fit = |scripts: &Scripts, unit: &str| {
        assert!(scripts.units.contains_key(unit));
        seen.borrow_mut().push(unit.to_owned());
        vec![
            Overflow { key: "know-keys-spare".into(), what: "2 lines".into() },
            Overflow { key: "no-such-key".into(), what: "2 lines".into() },
        ]
    };
    let report = check::lot_with(Arc::new(Bundle::demo()), Some(&fit));
    assert_eq!(*seen.borrow(), ["heron", "plover", "wren"]);
    let files: Vec<&str> =
        report.faults.iter().filter(|f| f.code == "page.overflow").map(|f| f.place.file.as_ref()).collect();
    let (words, other) = ("i18n/en-US/topic-keys.ftl", "walkthroughs/lot.ron");
    assert_eq!(files, [words, words, words, other, other, other]);
    assert!(!report.is_clean());
}
