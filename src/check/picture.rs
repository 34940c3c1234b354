//! Pictures: there, whole, used, and each in one topic.

use std::collections::{BTreeMap, BTreeSet};
use std::io::Cursor;

use image::{ImageDecoder as _, ImageFormat, ImageReader, Limits};

use crate::script::{From, StepForm};
use crate::source::{At, Place, jpeg_is_whole};
use crate::unit::Change;

use super::Check;

/// Folder of the pictures.
const FOLDER: &str = "assets/pictures/";
/// Kinds of pictures; of two with one name the first is shown.
const KINDS: [&str; 4] = ["svg", "png", "jpg", "jpeg"];
/// Most pixels of a picture.
const MOST_PIXELS: u64 = 64_000_000;
/// Most bytes that decoding may take.
const MOST_BYTES: u64 = MOST_PIXELS * 8;

impl Check<'_> {
    /// A picture that a step or a data sheet names is there.
    pub(super) fn picture<T>(&mut self, file: &From<T>, picture: &At<String>) {
        let found =
            KINDS.iter().any(|kind| self.scripts.bundle.has(&format!("{FOLDER}{}.{kind}", picture.value)));
        if !found {
            let what = format!("there is no picture `{}`", picture.value);
            let hint = format!("put `{}.svg`, `.jpg` or `.png` in assets/pictures", picture.value);
            self.note("picture.missing", file.place(picture), what, hint);
        }
    }

    /// Every picture of the lot can be shown and is, and no two topics show the same.
    pub(super) fn pictures(&mut self) {
        let used = self.used_pictures();
        let scripts = self.scripts;
        let mut shown: BTreeSet<&str> = BTreeSet::new();
        let files: BTreeMap<&str, Vec<&str>> =
            scripts.bundle.names().filter_map(named).fold(BTreeMap::new(), |mut all, (id, kind)| {
                all.entry(id).or_default().push(kind);
                all
            });
        for (id, kinds) in files {
            let first = KINDS.iter().find(|kind| kinds.contains(kind));
            for kind in &kinds {
                let name = format!("{FOLDER}{id}.{kind}");
                let place = Place::start(&name.as_str().into());
                let bytes = scripts.bundle.get(&name).map(AsRef::as_ref).unwrap_or_default();
                if let Err(why) = decoded(bytes, kind) {
                    let hint = "save it anew as SVG, PNG or JPEG, or take it out";
                    self.fault("picture.broken", place, format!("the picture cannot be shown: {why}"), hint);
                } else if first != Some(kind) {
                    let what = format!("`{id}.{}` is shown instead of this", first.unwrap_or(kind));
                    self.note("picture.unused", place, what, "take one of them out");
                } else if !used.contains(id)
                    && shown.insert(id)
                    && !self.lost.any_form()
                    && !self.came_as_it_is(&name)
                {
                    let hint = "take it out, or name it in a step";
                    self.note("picture.unused", place, format!("nothing shows the picture `{id}`"), hint);
                }
            }
        }
    }

    /// All pictures that are named; one that two topics name is told.
    fn used_pictures(&mut self) -> BTreeSet<String> {
        let scripts = self.scripts;
        let mut by_topic: BTreeMap<&str, (&str, Place)> = BTreeMap::new();
        let mut used = BTreeSet::new();
        for (id, topic) in &scripts.topics {
            let steps = topic.value.steps.iter().map(|s| &s.value);
            for picture in steps.flat_map(StepForm::pictures) {
                let _ = used.insert(picture.value.clone());
                let place = topic.place(picture);
                match by_topic.get(picture.value.as_str()) {
                    Some((other, first)) if *other != id => {
                        let what = format!(
                            "the picture `{}` serves two topics; the other is at {first}",
                            picture.value
                        );
                        let hint = "give each topic its own picture, that shows what it speaks of";
                        self.fault("picture.twice", place, what, hint);
                    }
                    Some(_) => {}
                    None => drop(by_topic.insert(&picture.value, (id, place))),
                }
            }
        }
        let parts = scripts.demonstrations.values().flat_map(|d| &d.value.parts);
        used.extend(parts.flat_map(|p| p.value.pictures()).map(|p| p.value.clone()));
        for change in scripts.units.values().flat_map(|sheet| &sheet.value.changes) {
            if let Change::Picture { picture, .. } = &change.value {
                let _ = used.insert(picture.value.clone());
            }
        }
        used
    }
}

/// Id and kind of a file in the folder of pictures.
fn named(name: &str) -> Option<(&str, &str)> {
    let name = name.strip_prefix(FOLDER)?;
    Some(name.rsplit_once('.').unwrap_or((name, "")))
}

/// Whether a picture can be shown, and why not.
fn decoded(bytes: &[u8], kind: &str) -> Result<(), String> {
    let format = match kind {
        "svg" => return drawn(bytes),
        "png" => ImageFormat::Png,
        "jpg" | "jpeg" => ImageFormat::Jpeg,
        _ => return Err(format!("`{kind}` is no kind of picture that is read here")),
    };
    if image::guess_format(bytes).ok() != Some(format) {
        return Err(format!("it is no {}", kind.to_uppercase()));
    }
    if format == ImageFormat::Jpeg && !jpeg_is_whole(bytes) {
        return Err("its end is missing".to_owned());
    }
    let mut reader = ImageReader::with_format(Cursor::new(bytes), format);
    let mut limits = Limits::default();
    limits.max_alloc = Some(MOST_BYTES);
    reader.limits(limits);
    let decoder = reader.into_decoder().map_err(|e| e.to_string())?;
    let (width, height) = decoder.dimensions();
    if u64::from(width) * u64::from(height) > MOST_PIXELS {
        return Err(format!("{width} by {height} pixels are too many"));
    }
    image::DynamicImage::from_decoder(decoder).map(drop).map_err(|e| e.to_string())
}

/// A drawing, as far as it can be told without drawing it: its root, its frame and its end.
fn drawn(bytes: &[u8]) -> Result<(), String> {
    let text = std::str::from_utf8(bytes).map_err(|_| "it is no UTF-8 text".to_owned())?;
    let mut rest = text.trim_start_matches('\u{feff}').trim();
    while let Some(end) = ["<?", "<!--", "<!"].iter().zip(["?>", "-->", ">"]).find_map(|(open, close)| {
        rest.strip_prefix(open)?.find(close).map(|at| open.len() + at + close.len())
    }) {
        rest = rest.get(end..).unwrap_or_default().trim_start();
    }
    let tag = rest.strip_prefix("<svg").filter(|r| r.starts_with(char::is_whitespace));
    let tag = tag.and_then(|r| r.split_once('>')).map(|(tag, _)| tag);
    let tag = tag.ok_or("its root is no `<svg ...>`")?;
    if !(rest.ends_with("</svg>") || rest.ends_with("/>") && rest.matches('>').count() == 1) {
        return Err("it does not end with `</svg>`".to_owned());
    }
    let frame = tag.split_once("viewBox=").and_then(|(_, rest)| {
        let quote = rest.chars().next()?;
        rest.get(1..)?.split_once(quote).map(|(frame, _)| frame)
    });
    let frame = frame.ok_or("it has no `viewBox`")?;
    let numbers: Vec<f64> = frame
        .split(|c: char| c.is_whitespace() || c == ',')
        .filter(|part| !part.is_empty())
        .filter_map(|part| part.parse().ok())
        .filter(|number: &f64| number.is_finite())
        .collect();
    match numbers.as_slice() {
        [_, _, width, height] if *width > 0.0 && *height > 0.0 => Ok(()),
        _ => Err(format!("its `viewBox` is `{frame}`, not four numbers with a width and a height")),
    }
}
