//! Whole pages: sizes, places, pixels.

use super::*;
use crate::kiosk::headless::Frame;

const SIZES: [(u32, u32); 3] = [(1280, 800), (1920, 1200), (800, 1280)];

fn at_each(mut check: impl FnMut(Page, (u32, u32), &dyn Fn() -> Gallery)) {
    for page in Page::ALL {
        for size in SIZES {
            check(page, size, &|| Gallery::new(page, Theme::Paper));
        }
    }
}

#[test]
fn every_target_is_large_enough() {
    fonts::prepare();
    at_each(|page, size, state| {
        let program = program(page, Theme::Paper);
        let mut driver = Driver::with_state(&program, state(), size).unwrap();
        let scale = size.0.min(size.1) as f32 / 800.0;
        let targets = driver.targets();
        for target in &targets {
            let least = target.bounds.width.min(target.bounds.height) / scale;
            assert!(least >= 43.99, "{page:?} at {size:?}: {target:?} is {least} px");
        }
    });
}

#[test]
fn no_two_targets_overlap() {
    fonts::prepare();
    at_each(|page, size, state| {
        let program = program(page, Theme::Paper);
        let mut driver = Driver::with_state(&program, state(), size).unwrap();
        let targets = driver.targets();
        for (index, a) in targets.iter().enumerate() {
            for b in &targets[index + 1..] {
                // A field is announced by its frame and by itself, in one place; pegs are discs of 56 px.
                let disc = |bounds: iced::Rectangle| (bounds.width - bounds.height).abs() < 0.01;
                let (a_disc, b_disc) = (disc(a.bounds), disc(b.bounds));
                let apart = a.bounds.center().distance(b.bounds.center());
                if a_disc && b_disc && apart >= (a.bounds.width + b.bounds.width) / 2.0 - 0.1 {
                    continue;
                }
                let over =
                    a.bounds.intersection(&b.bounds).filter(|over| a.bounds != b.bounds && over.area() > 1.0);
                assert_eq!(over, None, "{page:?} at {size:?}: {a:?} and {b:?}");
            }
        }
    });
}

#[test]
fn no_text_leaves_the_window_sideways() {
    fonts::prepare();
    at_each(|page, size, state| {
        for text in [TextSize::Usual, TextSize::Large, TextSize::Largest] {
            let program = program(page, Theme::Paper);
            let mut gallery = state();
            gallery.text = text;
            let mut driver = Driver::with_state(&program, gallery, size).unwrap();
            for shown in driver.texts() {
                let (left, right) = (shown.bounds.x, shown.bounds.x + shown.bounds.width);
                assert!(
                    left >= 0.0 && right <= size.0 as f32 + 0.5,
                    "{page:?} at {size:?}, {text:?}: {shown:?}"
                );
            }
        }
    });
}

fn frame(page: Page, theme: Theme, size: (u32, u32)) -> Frame {
    let program = program(page, theme);
    let mut driver = Driver::open(&program, size).unwrap();
    driver.render()
}

#[test]
fn a_frame_is_the_same_every_time() {
    fonts::only_bundled();
    for page in [Page::Walk, Page::Signs] {
        let first = frame(page, Theme::Paper, (1280, 800));
        assert_eq!((first.width, first.height), (1280, 800));
        assert_eq!(first.rgba.len(), 1280 * 800 * 4);
        assert!(first == frame(page, Theme::Paper, (1280, 800)), "{page:?} differs");
        assert!(first != frame(page, Theme::Dusk, (1280, 800)), "{page:?} does not know its theme");
    }
}

#[test]
fn any_size_of_window_can_be_drawn() {
    fonts::prepare();
    for page in Page::ALL {
        for size in [(1, 1), (320, 240), (240, 2000), (2000, 240)] {
            let frame = frame(page, Theme::Daylight, size);
            assert_eq!((frame.width, frame.height), size);
        }
    }
}

/// Colors that only the safety words wear are on a page of cautions, as written.
#[test]
fn safety_colors_are_drawn_as_they_are() {
    use crate::kiosk::theme::palette::safety;
    fonts::prepare();
    for theme in Theme::ALL {
        let frame = frame(Page::Signs, theme, (1280, 800));
        for pair in [safety::RED, safety::ORANGE, safety::YELLOW, safety::BLUE] {
            let wanted = pair.ground.into_rgba8();
            let seen = frame.rgba.chunks_exact(4).filter(|pixel| *pixel == wanted).count();
            assert!(seen > 1000, "{theme:?}: {wanted:?} covers {seen} pixels");
        }
    }
}

/// The border of a hazard triangle is black, its inside yellow: at least half of its area (ISO 3864-1, from
/// memory).
#[test]
fn hazard_signs_are_more_than_half_yellow() {
    use crate::kiosk::theme::palette::safety;
    fonts::prepare();
    let program = program(Page::Signs, Theme::Paper);
    let mut driver = Driver::open(&program, (1280, 800)).unwrap();
    let frame = driver.render();
    let (yellow, black) = (safety::YELLOW.ground.into_rgba8(), safety::YELLOW.on.into_rgba8());
    for hazard in Hazard::ALL {
        let name = driver.must_find(&format!("{hazard:?}")).unwrap();
        let (mut bright, mut dark) = (0u32, 0u32);
        for y in (name.y - 150.0) as usize..(name.y - 14.0) as usize {
            for x in (name.x - 75.0) as usize..(name.x + 75.0) as usize {
                let pixel = &frame.rgba[(y * 1280 + x) * 4..][..4];
                bright += u32::from(pixel == yellow);
                dark += u32::from(pixel == black);
            }
        }
        assert!(bright > dark, "{hazard:?}: {bright} yellow, {dark} black");
        assert!(dark > 2000, "{hazard:?} has hardly any border");
    }
}

/// Letters the bundled family lacks come from Fira Sans, not as the box that stands for a missing one.
#[test]
fn greek_and_cyrillic_have_letters() {
    use iced::advanced::graphics::text::{cosmic_text as cosmic, font_system, to_attributes};
    fonts::only_bundled();
    let mut system = font_system().write().unwrap();
    let system = system.raw();
    let mut buffer = cosmic::Buffer::new(system, cosmic::Metrics::new(20.0, 26.0));
    let attributes = to_attributes(fonts::REGULAR);
    buffer.set_text(system, "Ελληνικά Кириллица Łódź", &attributes, cosmic::Shaping::Advanced, None);
    buffer.shape_until_scroll(system, false);
    let glyphs: Vec<_> = buffer.layout_runs().flat_map(|run| run.glyphs.to_vec()).collect();
    assert!(glyphs.len() >= 20);
    assert!(glyphs.iter().all(|glyph| glyph.glyph_id != 0), "a letter is missing");
}

/// Slanted letters of a generic family used to stop the program on a machine without fonts.
#[test]
fn slanted_letters_of_a_generic_family_do_no_harm() {
    fonts::only_bundled();
    let program =
        iced::application(|| (), |(): &mut (), (): ()| (), slanted).theme(|(): &()| iced::Theme::Light);
    let frame = Driver::open(&program, (300, 200)).unwrap().render();
    let dark = frame.rgba.chunks_exact(4).filter(|pixel| pixel[0] < 100).count();
    assert!(dark > 100, "nothing was written: {dark}");
}

fn slanted((): &()) -> Element<'_, ()> {
    use iced::font::{Family, Style};
    let families = [Family::SansSerif, Family::Serif, Family::Monospace, Family::Cursive, Family::Fantasy];
    let lines = families.map(|family| {
        let font = iced::Font { family, style: Style::Italic, ..iced::Font::DEFAULT };
        iced::widget::text("slanted").font(font).into()
    });
    iced::widget::Column::with_children(lines).into()
}

/// A cut picture gives the placeholder, a whole one its pixels; neither stops the renderer.
#[test]
fn a_broken_picture_gives_a_placeholder() {
    use crate::kiosk::guard::picture;
    fonts::prepare();
    let red = image::RgbImage::from_pixel(60, 40, image::Rgb([255, 0, 0]));
    let mut png = std::io::Cursor::new(Vec::new());
    red.write_to(&mut png, image::ImageFormat::Png).unwrap();
    let png = png.into_inner();
    let shown = |bytes: &[u8]| {
        let picture = picture::decode(bytes, 400).ok();
        let boot = move || picture.clone();
        let program = iced::application(boot, |_: &mut Option<_>, (): ()| (), pictured)
            .theme(|_: &Option<_>| iced::Theme::Light);
        let mut driver = Driver::open(&program, (600, 400)).unwrap();
        let frame = driver.render();
        let red = frame.rgba.chunks_exact(4).filter(|pixel| *pixel == [255, 0, 0, 255]).count();
        (driver.find("The picture is missing").is_some(), red)
    };
    let (missing, red) = shown(&png);
    assert!(!missing && red > 50_000, "{red}");
    assert_eq!(shown(&png[..50]), (true, 0));
    assert_eq!(shown(b"<svg this is broken"), (false, 0));
}

fn pictured(picture: &Option<crate::kiosk::guard::picture::Picture>) -> Element<'_, ()> {
    root(Wishes { theme: Theme::Dusk, ..Wishes::default() }, None, move |look| {
        crate::kiosk::guard::picture::show(&look, picture.as_ref(), "The picture is missing")
    })
}

/// Writes every page of the gallery in every theme and size into the folder that `SENDOFF_GALLERY` names.
#[test]
#[ignore = "for looking at: set SENDOFF_GALLERY to a folder and run with --ignored"]
#[expect(clippy::disallowed_methods, reason = "a test for looking at: the folder is told from outside")]
fn the_gallery_can_be_looked_at() {
    let folder = std::env::var("SENDOFF_GALLERY").expect("SENDOFF_GALLERY names the folder for the pictures");
    fonts::only_bundled();
    for theme in Theme::ALL {
        for page in Page::ALL {
            for size in SIZES {
                let program = program(page, theme);
                let mut driver = Driver::open(&program, size).unwrap();
                if page == Page::Type {
                    let at = driver.targets()[0].bounds.center();
                    driver.click_at(at).unwrap();
                    driver.touch("s").unwrap();
                    driver.hold("a", std::time::Duration::from_millis(600)).unwrap();
                }
                if page == Page::Caution {
                    let at = driver.must_find("Press and hold").unwrap();
                    driver.finger_down(1, at).unwrap();
                    driver.wait(std::time::Duration::from_millis(800)).unwrap();
                }
                let name = format!("{folder}/{page:?}-{theme:?}-{}x{}.png", size.0, size.1);
                std::fs::write(name, driver.render().png().unwrap()).unwrap();
            }
        }
    }
}
