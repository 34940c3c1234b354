//! Smaller looks at a unit: one place of it near by, and the whole of it for a card.

use iced::widget::canvas::{Path, Stroke};
use iced::{Length, Point, Size};

use super::{Floor, Orientation, PlanLayout, PlanShape, draw, layout};
use crate::kiosk::theme::Look;
use crate::kiosk::ui::{Element, drawing};

/// How much of the unit a close-up shows across its shorter side, in inches.
const WINDOW: f32 = 120.0;

/// The unit near one place, with a ring around it: where we are.
pub fn close_up<'a, M: 'a>(look: &Look, shape: &'a PlanShape, at: (f64, f64)) -> Element<'a, M> {
    let look = *look;
    drawing(Length::Fill, Length::Fill, move |frame| {
        let (colors, size) = (look.colors(), frame.size());
        let plan = PlanLayout::near(shape, at, size, look.scale);
        frame.fill(&Path::rectangle(Point::ORIGIN, size), colors.paper);
        let mut sheet = draw::Sheet { frame, plan: &plan, look };
        draw::unit(&mut sheet, shape, true);
        let place = plan.place(at);
        let radius = look.px(34.0).min(size.width.min(size.height) * 0.22);
        let tint = iced::Color { a: 0.55, ..colors.tint };
        frame.fill(&Path::circle(place, radius), tint);
        frame.stroke(
            &Path::circle(place, radius),
            Stroke::default().with_color(colors.accent).with_width(look.px(5.0)),
        );
        frame.fill(&Path::circle(place, look.px(7.0)), colors.ink);
    })
}

/// The whole unit, for a card: without stops.
pub fn thumbnail<'a, M: 'a>(look: &Look, shape: &'a PlanShape) -> Element<'a, M> {
    let look = *look;
    drawing(Length::Fill, Length::Fill, move |frame| {
        let size = frame.size();
        let plan = layout(shape, &[], size, Orientation::NoseUp, Floor::Inside, look.scale);
        let mut sheet = draw::Sheet { frame, plan: &plan, look };
        draw::unit(&mut sheet, shape, true);
    })
}

impl PlanLayout {
    /// A window onto the unit around one place, kept on the unit as far as it goes.
    fn near(shape: &PlanShape, at: (f64, f64), size: Size, unit: f32) -> Self {
        let scale = size.width.min(size.height).max(1.0) / WINDOW;
        // Fits the window: the shorter side shows `WINDOW` inches, the longer more, but never less than the unit
        // would fill anyway.
        let whole = layout(shape, &[], size, Orientation::NoseUp, Floor::Inside, unit);
        let scale = scale.max(whole.scale);
        // A place on a wall is shown with more of the unit than of the ground before it.
        whole.zoomed(scale, (at.0 * 0.55, at.1.clamp(20.0, (shape.length - 20.0).max(20.0))))
    }
}
