//! `sendoff preview`: every page of a unit as a picture, without a display.

use std::path::Path;

use super::cli::{PreviewArgs, PreviewText, PreviewTheme};
use super::{COULD_NOT_RUN, Console, FINDINGS, GOOD, bundle};
use crate::kiosk::headless::{Frame, Manner, TextSize, Theme, TourFault, preview};
use crate::ports::{Access, Ports};
use crate::script::Scripts;
use crate::source::nearest;
use crate::tablet::usable;
use crate::words::PSEUDO_LANGUAGE;

/// The smallest and the largest side of a window, in pixels.
const SIDES: std::ops::RangeInclusive<u32> = 320..=4096;

pub(super) fn run(args: &PreviewArgs, ports: &Ports, console: &mut Console) -> u8 {
    let scripts = match bundle(ports, args.places.lot.as_deref()) {
        Ok(bundle) => usable(bundle),
        Err(fault) => {
            console.complain(fault);
            return COULD_NOT_RUN;
        }
    };
    let scripts = match scripts {
        Ok(scripts) => std::sync::Arc::new(scripts),
        Err(fault) => {
            console.complain(fault);
            return FINDINGS;
        }
    };
    let manner = match manner(args, &scripts) {
        Ok(manner) => manner,
        Err(why) => {
            console.complain(why);
            return COULD_NOT_RUN;
        }
    };
    if let Err(fault) = ports.disk.make_dir(&args.out) {
        console.complain(fault);
        return COULD_NOT_RUN;
    }
    let mut count = 0_usize;
    let mut take = |name: &str, frame: &Frame| -> Result<(), String> {
        keep(ports, &args.out, name, frame)?;
        console.tell(name);
        count += 1;
        Ok(())
    };
    match preview(&scripts, &args.unit, &manner, &mut take) {
        Ok(()) => {
            console.say(format!("{count} pictures in {}", args.out.display()));
            GOOD
        }
        Err(fault @ TourFault::Stuck { .. }) => {
            console.complain(fault);
            FINDINGS
        }
        Err(fault) => {
            console.complain(fault);
            COULD_NOT_RUN
        }
    }
}

fn keep(ports: &Ports, out: &Path, name: &str, frame: &Frame) -> Result<(), String> {
    let bytes = frame.png().map_err(|e| e.to_string())?;
    ports.disk.replace(&out.join(format!("{name}.png")), &bytes, Access::Usual).map_err(|e| e.to_string())
}

/// How the pages are to be shown, or what of it there is not.
fn manner(args: &PreviewArgs, scripts: &Scripts) -> Result<Manner, String> {
    if !scripts.units.contains_key(&args.unit) {
        return Err(unknown("unit", &args.unit, scripts.units.keys().map(String::as_str)));
    }
    let mut languages = scripts.words.languages();
    languages.push(PSEUDO_LANGUAGE.to_owned());
    let language = match &args.lang {
        Some(wanted) if languages.contains(wanted) => wanted.clone(),
        Some(wanted) => return Err(unknown("language", wanted, languages.iter().map(String::as_str))),
        None => scripts.lot.value.languages.first().cloned().unwrap_or_default(),
    };
    let theme = match args.theme {
        PreviewTheme::Paper => Theme::Paper,
        PreviewTheme::Daylight => Theme::Daylight,
        PreviewTheme::Dusk => Theme::Dusk,
    };
    let text = match args.text {
        PreviewText::Usual => TextSize::Usual,
        PreviewText::Large => TextSize::Large,
        PreviewText::Largest => TextSize::Largest,
    };
    Ok(Manner { size: size(&args.size)?, theme, text, language })
}

fn unknown<'a>(what: &str, wanted: &str, known: impl Iterator<Item = &'a str> + Clone) -> String {
    let all: Vec<&str> = known.clone().collect();
    let all = all.join(", ");
    match nearest(wanted, known) {
        Some(near) => format!("the lot has no {what} `{wanted}`; did you mean `{near}`? It has {all}"),
        None => format!("the lot has no {what} `{wanted}`; it has {all}"),
    }
}

/// A size as `1280x800`.
fn size(text: &str) -> Result<(u32, u32), String> {
    let parsed = text.split_once(['x', 'X', '×']).and_then(|(w, h)| Some((side(w)?, side(h)?)));
    let Some((width, height)) = parsed else {
        return Err(format!("`{text}` is no size; write width and height in pixels, as 1280x800"));
    };
    let near = (width.clamp(*SIDES.start(), *SIDES.end()), height.clamp(*SIDES.start(), *SIDES.end()));
    if near == (width, height) {
        Ok(near)
    } else {
        Err(format!(
            "a window of {width} by {height} pixels cannot be used: each side has {} to {} pixels; the nearest \
             is {}x{}",
            SIDES.start(),
            SIDES.end(),
            near.0,
            near.1
        ))
    }
}

fn side(text: &str) -> Option<u32> {
    text.trim().parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_are_read_or_refused_with_a_way_out() {
        assert_eq!(size("1280x800"), Ok((1280, 800)));
        assert_eq!(size("800X1280"), Ok((800, 1280)));
        assert!(size("1280").unwrap_err().contains("as 1280x800"));
        assert!(size("-5x3").unwrap_err().contains("is no size"));
        assert!(size("100x99999").unwrap_err().contains("320x4096"));
    }

    #[test]
    fn what_is_not_there_names_what_is_near() {
        let text = unknown("unit", "wrem", ["heron", "wren"].into_iter());
        assert_eq!(text, "the lot has no unit `wrem`; did you mean `wren`? It has heron, wren");
        let text = unknown("unit", "zzzzz", ["heron", "wren"].into_iter());
        assert_eq!(text, "the lot has no unit `zzzzz`; it has heron, wren");
    }
}
