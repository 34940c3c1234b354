//! The plan on the screen: the drawing, and a press target on every peg.

use iced::advanced::mouse;
use iced::widget::canvas::{self, Action, Cache};
use iced::widget::{Space, responsive};
use iced::{Event, Point, Rectangle, Size, touch};

use super::{Floor, Orientation, Peg, PlanLayout, PlanMark, PlanShape, draw, layout, pegs};
use crate::kiosk::theme::Look;
use crate::kiosk::ui::tap::SLIP;
use crate::kiosk::ui::{Element, pinned, tap};

/// What a press sends.
type Answer<'a, What, M> = Box<dyn Fn(What) -> M + 'a>;

/// A plan that is being put together.
pub struct PlanView<'a, M> {
    look: Look,
    shape: &'a PlanShape,
    pegs: &'a [Peg],
    orientation: Orientation,
    floor: Floor,
    marks: &'a [PlanMark],
    on_peg: Option<Answer<'a, u16, M>>,
    on_point: Option<Answer<'a, (f64, f64), M>>,
}

/// The plan of a unit with its stops, as large as its space allows.
pub fn view<'a, M>(
    look: &Look,
    shape: &'a PlanShape,
    pegs: &'a [Peg],
    orientation: Orientation,
    floor: Floor,
) -> PlanView<'a, M> {
    PlanView { look: *look, shape, pegs, orientation, floor, marks: &[], on_peg: None, on_point: None }
}

impl<'a, M> PlanView<'a, M> {
    /// A tap on a peg sends this.
    #[must_use]
    pub fn on_peg(mut self, message: impl Fn(u16) -> M + 'a) -> Self {
        self.on_peg = Some(Box::new(message));
        self
    }

    /// A tap anywhere sends the place in inches: for setting a mark. Pegs cannot be pressed then.
    #[must_use]
    pub fn on_point(mut self, message: impl Fn((f64, f64)) -> M + 'a) -> Self {
        self.on_point = Some(Box::new(message));
        self
    }

    /// Shows condition marks.
    #[must_use]
    pub fn marks(mut self, marks: &'a [PlanMark]) -> Self {
        self.marks = marks;
        self
    }
}

impl<'a, M: Clone + 'a> From<PlanView<'a, M>> for Element<'a, M> {
    fn from(view: PlanView<'a, M>) -> Self {
        let view = std::rc::Rc::new(view);
        responsive(move |size| placed(&view, size)).into()
    }
}

fn placed<'a, M: Clone + 'a>(view: &std::rc::Rc<PlanView<'a, M>>, size: Size) -> Element<'a, M> {
    let plan = layout(view.shape, view.pegs, size, view.orientation, view.floor, view.look.scale);
    let whole = Rectangle::with_size(size);
    let mut parts: Vec<(Rectangle, Element<'a, M>)> = Vec::new();
    if let (Some(on_peg), None) = (&view.on_peg, &view.on_point) {
        for peg in &plan.pegs {
            let hit = plan.hit(peg);
            let target = Space::new().width(hit.width).height(hit.height);
            let press = tap(&view.look, target, on_peg(peg.number)).radius(hit.width / 2.0).round();
            parts.push((hit, press.into()));
        }
    }
    let drawing = canvas::Canvas::new(Drawing { view: std::rc::Rc::clone(view), plan })
        .width(size.width)
        .height(size.height);
    parts.insert(0, (whole, drawing.into()));
    pinned(size, parts)
}

struct Drawing<'a, M> {
    view: std::rc::Rc<PlanView<'a, M>>,
    plan: PlanLayout,
}

/// What the drawing was made from; drawn anew only when it changes.
#[derive(Debug, Clone, PartialEq)]
struct Drawn {
    look: Look,
    plan: PlanLayout,
    shape: PlanShape,
    marks: Vec<PlanMark>,
}

#[derive(Default)]
struct State {
    cache: Cache,
    drawn: Option<Drawn>,
    press: Option<(Option<touch::Finger>, Point)>,
}

impl<M> Drawing<'_, M> {
    fn same(&self, drawn: &Drawn) -> bool {
        drawn.look == self.view.look
            && drawn.plan == self.plan
            && drawn.shape == *self.view.shape
            && drawn.marks == self.view.marks
    }

    /// A press that may set a mark: where it began, and whether it has ended there.
    fn point(
        &self,
        state: &mut State,
        event: &Event,
        bounds: Rectangle,
        cursor: mouse::Cursor,
    ) -> Option<Point> {
        let slip = self.view.look.px(SLIP);
        match event {
            Event::Mouse(mouse::Event::ButtonPressed(mouse::Button::Left)) => {
                state.press = cursor.position_over(bounds).map(|at| (None, at));
                None
            }
            Event::Mouse(mouse::Event::ButtonReleased(mouse::Button::Left)) => {
                let (_, from) = state.press.take_if(|(finger, _)| finger.is_none())?;
                cursor.position_over(bounds).filter(|at| at.distance(from) <= slip)
            }
            Event::Touch(touch::Event::FingerPressed { id, .. }) if state.press.is_none() => {
                state.press = cursor.position_over(bounds).map(|at| (Some(*id), at));
                None
            }
            Event::Touch(touch::Event::FingerLifted { id, .. }) => {
                let (_, from) = state.press.take_if(|(finger, _)| *finger == Some(*id))?;
                cursor.position_over(bounds).filter(|at| at.distance(from) <= slip)
            }
            Event::Touch(touch::Event::FingerLost { id, .. }) => {
                state.press.take_if(|(finger, _)| *finger == Some(*id));
                None
            }
            _ => None,
        }
    }
}

impl<M> canvas::Program<M> for Drawing<'_, M> {
    type State = State;

    fn update(
        &self,
        state: &mut State,
        event: &Event,
        bounds: Rectangle,
        cursor: mouse::Cursor,
    ) -> Option<Action<M>> {
        if !state.drawn.as_ref().is_some_and(|drawn| self.same(drawn)) {
            state.cache.clear();
            state.drawn = Some(Drawn {
                look: self.view.look,
                plan: self.plan.clone(),
                shape: self.view.shape.clone(),
                marks: self.view.marks.to_vec(),
            });
        }
        let on_point = self.view.on_point.as_ref()?;
        let at = self.point(state, event, bounds, cursor)?;
        let on_unit = self.plan.on_unit(Point::new(at.x - bounds.x, at.y - bounds.y));
        Some(Action::publish(on_point(on_unit)).and_capture())
    }

    fn draw(
        &self,
        state: &State,
        renderer: &iced::Renderer,
        _theme: &iced::Theme,
        bounds: Rectangle,
        _cursor: mouse::Cursor,
    ) -> Vec<canvas::Geometry> {
        let (look, plan) = (&self.view.look, &self.plan);
        vec![state.cache.draw(renderer, bounds.size(), |frame| {
            pegs::ground(frame, look, plan);
            let mut sheet = draw::Sheet { frame, plan, look: *look };
            draw::unit(&mut sheet, self.view.shape, true);
            pegs::line(frame, look, plan);
            pegs::pegs(frame, look, plan);
            pegs::marks(frame, look, plan, self.view.marks);
        })]
    }
}
