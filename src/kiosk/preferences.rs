//! The settings of this kiosk as `settings.ron` of the data folder keeps them. Pure: text in, text out.

use serde::Deserialize;

use super::context::Settings;
use super::hall::system_of;
use super::theme::{Hand, TextSize, Theme, Wishes};
use super::ui::Layout;
use crate::source::{At, Fault, Place, SourceFile, read as read_form};
use crate::unit::Lot;
use crate::words::{Reader, format};

/// The file in the data folder.
pub const FILE: &str = "settings.ron";
/// The largest such file that is read, in bytes.
pub const CAP: u64 = 64 * 1024;
/// The least and the largest factor on every measure, in percent.
pub const SCALES: (u32, u32) = (80, 150);
/// One step of that factor, in percent.
pub const SCALE_STEP: u32 = 10;

/// What the file holds. Whatever is left out is as usual.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Form {
    #[serde(default, alias = "theme?")]
    theme: Option<At<String>>,
    #[serde(default, alias = "text?")]
    text: Option<At<String>>,
    #[serde(default, alias = "hand?")]
    hand: Option<At<String>>,
    #[serde(default, alias = "motion?")]
    motion: Option<bool>,
    #[serde(default, alias = "scale?")]
    scale: Option<At<u32>>,
    #[serde(default, alias = "keyboard?")]
    keyboard: Option<At<String>>,
    #[serde(default, alias = "language?")]
    language: Option<String>,
    #[serde(default, alias = "measures?")]
    measures: Option<String>,
}

/// The factor on every measure, in percent.
#[must_use]
pub fn percent(settings: &Settings) -> u32 {
    let percent = (settings.scale * 100.0).round();
    if percent.is_finite() { (percent.max(0.0) as u32).clamp(SCALES.0, SCALES.1) } else { 100 }
}

/// The settings as text.
#[must_use]
pub fn write(settings: &Settings) -> String {
    let hand = hand_word(settings.hand);
    let keyboard = settings.layout.map_or_else(|| "reader".to_owned(), |layout| layout.word().to_owned());
    format!(
        "(\n    theme: \"{}\",\n    text: \"{}\",\n    hand: \"{hand}\",\n    motion: {},\n    scale: {},\n    \
         keyboard: \"{keyboard}\",\n    language: {:?},\n    measures: \"{}\",\n)\n",
        settings.theme.word(),
        settings.text.word(),
        !settings.still,
        percent(settings),
        settings.staff.lang,
        format::system_word(settings.staff.system),
    )
}

const fn hand_word(hand: Hand) -> &'static str {
    match hand {
        Hand::Right => "right",
        Hand::Left => "left",
    }
}

/// The settings of a text, over the usual ones. A language or measures that the lot no longer offers stay usual.
///
/// # Errors
/// What is wrong in the text, the first fault with its place.
pub fn read(text: &str, usual: &Settings, lot: &Lot) -> Result<Settings, Fault> {
    let file = SourceFile::new(FILE, text);
    let (form, faults) = read_form::<Form>(&file);
    if let Some(fault) = faults.into_iter().next() {
        return Err(fault);
    }
    let form = form.unwrap_or_default();
    let mut settings = usual.clone();
    if let Some(theme) = form.theme {
        settings.theme = one_of(&file, &theme, &Theme::ALL, Theme::word)?;
    }
    if let Some(text) = form.text {
        settings.text = one_of(&file, &text, &TextSize::ALL, TextSize::word)?;
    }
    if let Some(hand) = form.hand {
        settings.hand = one_of(&file, &hand, &[Hand::Right, Hand::Left], hand_word)?;
    }
    if let Some(motion) = form.motion {
        settings.still = !motion;
    }
    if let Some(scale) = form.scale {
        if !(SCALES.0..=SCALES.1).contains(&scale.value) {
            let hint = format!("write a number of percent from {} to {}", SCALES.0, SCALES.1);
            return Err(fault(file.place_at(scale.at), "settings.scale", scale.value.to_string(), hint));
        }
        settings.scale = scale.value as f32 / 100.0;
    }
    if let Some(keyboard) = form.keyboard {
        settings.layout = if keyboard.value == "reader" {
            None
        } else {
            Some(one_of(&file, &keyboard, &Layout::ALL, Layout::word)?)
        };
    }
    let language = form.language.filter(|tag| lot.languages.contains(tag));
    let measures = form.measures.filter(|word| lot.measures.contains(word));
    settings.staff = Reader::new(
        language.as_deref().unwrap_or(&usual.staff.lang),
        measures.map_or(usual.staff.system, |word| system_of(&word)),
    );
    Ok(settings)
}

/// The look of the settings as text, of which nothing else can be told before the lot is read. What cannot be read is
/// as usual.
#[must_use]
pub fn look(text: &str) -> Wishes {
    let (form, _) = read_form::<Form>(&SourceFile::new(FILE, text));
    let form = form.unwrap_or_default();
    let theme = form.theme.and_then(|said| Theme::ALL.into_iter().find(|theme| theme.word() == said.value));
    let size = form.text.and_then(|said| TextSize::ALL.into_iter().find(|size| size.word() == said.value));
    let scale = form.scale.map_or(100, |percent| percent.value.clamp(SCALES.0, SCALES.1));
    let still = form.motion.is_some_and(|motion| !motion);
    Wishes {
        theme: theme.unwrap_or_default(),
        text: size.unwrap_or(TextSize::Usual),
        scale: scale as f32 / 100.0,
        hand: Hand::Right,
        still,
    }
}

fn one_of<T: Copy>(
    file: &SourceFile,
    found: &At<String>,
    all: &[T],
    word: impl Fn(T) -> &'static str,
) -> Result<T, Fault> {
    all.iter().copied().find(|one| word(*one) == found.value).ok_or_else(|| {
        let known: Vec<&str> = all.iter().map(|one| word(*one)).collect();
        let hint = format!("write one of {}", known.join(", "));
        fault(file.place_at(found.at), "settings.word", found.value.clone(), hint)
    })
}

fn fault(place: Place, code: &'static str, found: String, hint: String) -> Fault {
    Fault::new(code, place, format!("`{found}` is not known here"), hint)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::kiosk::{scripts, staff_reader};
    use crate::script::{Bundle, Scripts};

    fn lot() -> std::sync::Arc<Scripts> {
        static LOT: std::sync::OnceLock<std::sync::Arc<Scripts>> = std::sync::OnceLock::new();
        std::sync::Arc::clone(LOT.get_or_init(|| scripts(Bundle::demo()).unwrap()))
    }

    fn usual() -> Settings {
        Settings::new(staff_reader(&lot()))
    }

    fn any_settings() -> impl Strategy<Value = Settings> {
        let scale = (SCALES.0 / SCALE_STEP..=SCALES.1 / SCALE_STEP).prop_map(|n| n * SCALE_STEP);
        let layout = prop_oneof![Just(None), (0..4usize).prop_map(|at| Some(Layout::ALL[at]))];
        (0..3usize, 0..3usize, any::<bool>(), any::<bool>(), scale, layout, 0..3usize).prop_map(
            |(theme, text, left, still, scale, layout, measures)| Settings {
                theme: Theme::ALL[theme],
                text: TextSize::ALL[text],
                hand: if left { Hand::Left } else { Hand::Right },
                still,
                scale: scale as f32 / 100.0,
                layout,
                staff: Reader::new("en-US", system_of(["us", "uk", "metric"][measures])),
                ..usual()
            },
        )
    }

    proptest! {
        #[test]
        fn what_is_written_is_read_back(settings in any_settings()) {
            prop_assert_eq!(read(&write(&settings), &usual(), &lot().lot.value), Ok(settings));
        }

        #[test]
        fn no_text_stops_the_reader(text in ".{0,200}") {
            let _ = read(&text, &usual(), &lot().lot.value);
        }
    }

    #[test]
    fn what_is_left_out_is_usual_and_what_the_lot_has_not_is_passed_over() {
        let read = |text| read(text, &usual(), &lot().lot.value);
        assert_eq!(read("()"), Ok(usual()));
        let text = "(language: \"tlh\", measures: \"cubits\", hand: \"left\")";
        assert_eq!(read(text), Ok(Settings { hand: Hand::Left, ..usual() }));
    }

    #[test]
    fn a_fault_has_its_place_and_a_way_out() {
        let fault = |text| read(text, &usual(), &lot().lot.value).unwrap_err();
        let theme = fault("(\n    theme: \"neon\",\n)");
        assert_eq!(theme.place.to_string(), "settings.ron:2:12");
        assert_eq!(theme.hint, "write one of paper, daylight, dusk");
        assert_eq!(fault("(scale: 900)").hint, "write a number of percent from 80 to 150");
        assert_eq!(fault("(hand: \"both\")").code, "settings.word");
        assert!(fault("(theme: ").code.starts_with("form."));
        assert_eq!(fault("(color: \"red\")").code, "form.unknown-field");
    }
}
