//! Where everything lies on pages that matter, kept as text: a change of layout shows in the difference.

use iced::Rectangle;

use super::{Kiosk, Manner, Page, TourFault, Visit, lead};
use crate::kiosk::headless::{Driver, TargetKind};
use crate::kiosk::theme::{TextSize, Theme};
use crate::script::Bundle;

/// Step or part of the walk, and what is shown of it.
const PAGES: [(&str, &str); 12] = [
    ("yard", ""),
    ("opening", "trip"),
    ("opening", "party"),
    ("keys", ""),
    ("keys", "question"),
    ("keys", "marks"),
    ("lp-supply", "readings"),
    ("pets-smoking", "caution-pets-smoking-1"),
    ("leaving-check", ""),
    ("closing", "sign"),
    ("closing", "copy"),
    ("settings", ""),
];
/// Characters of a text that name it.
const NAMED: usize = 40;

#[derive(Default)]
struct Boxes {
    pages: usize,
    text: String,
}

fn line(bounds: Rectangle, what: &str) -> ([i32; 4], String) {
    let [x, y, width, height] = [bounds.x, bounds.y, bounds.width, bounds.height].map(|v| v.round() as i32);
    ([y, x, height, width], format!("{x:5}{y:5}{width:5}{height:5}  {what}\n"))
}

impl Visit for Boxes {
    fn page<P: Kiosk>(&mut self, page: &Page, driver: &mut Driver<'_, P>) -> Result<(), TourFault> {
        if !PAGES.contains(&(page.step.as_str(), page.part.as_str())) {
            return Ok(());
        }
        self.pages += 1;
        let texts = driver.texts().into_iter().map(|text| {
            let name: String = text.text.chars().take(NAMED).collect();
            line(text.bounds, &format!("'{name}'"))
        });
        let mut lines: Vec<_> = texts.collect();
        lines.extend(driver.targets().into_iter().map(|target| {
            line(target.bounds, if target.kind == TargetKind::Field { "field" } else { "press" })
        }));
        lines.sort();
        self.text.push_str(format!("{} {}", page.step, page.part).trim_end());
        self.text.push('\n');
        self.text.extend(lines.into_iter().map(|(_, line)| line));
        self.text.push('\n');
        Ok(())
    }
}

/// Left, top, width and height in pixels, from the top down.
#[test]
fn everything_lies_where_it_lay() {
    let lot = crate::kiosk::scripts(Bundle::demo()).unwrap();
    let manner =
        Manner { size: (1280, 800), theme: Theme::Paper, text: TextSize::Usual, language: "en-US".into() };
    let mut boxes = Boxes::default();
    lead(&lot, "wren", &manner, true, &mut boxes).unwrap();
    assert_eq!(boxes.pages, PAGES.len());
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path("../../../tests/suite/snapshots");
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!("layout_boxes", boxes.text));
}
