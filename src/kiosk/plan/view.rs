//! The plan on the screen: the drawing, a press target on every peg, and what fingers do beside them.

use std::borrow::Cow;
use std::rc::Rc;

use iced::advanced::mouse;
use iced::widget::canvas::{self, Action, Cache};
use iced::widget::canvas::{Path, Stroke};
use iced::widget::{Space, responsive};
use iced::{Event, Length, Point, Rectangle, Size};

use super::gesture::Gestures;
use super::{
    Floor, Orientation, Peg, PegState, PlanLayout, PlanMark, PlanPlace, PlanShape, Zoom, draw, ground,
    layout_zoomed, pegs,
};
use crate::kiosk::theme::Look;
use crate::kiosk::ui::around::Around;
use crate::kiosk::ui::{Element, Symbol, drawing, pinned, symbol, tap};

/// What a press sends.
pub(super) type Answer<'a, What, M> = Box<dyn Fn(What) -> M + 'a>;

/// Side of the controls in the corners, and their distance from the edge, in pixels as written.
const CONTROL: f32 = 44.0;
const INSET: f32 = 2.0;
/// How many times larger a press of the control makes the plan.
pub(super) const STEP: f32 = 1.6;

/// A plan that is being put together.
pub struct PlanView<'a, M> {
    pub(super) look: Look,
    shape: &'a PlanShape,
    pegs: Cow<'a, [Peg]>,
    orientation: Orientation,
    floor: Floor,
    marks: &'a [PlanMark],
    highlighted: Option<u16>,
    zoom: Zoom,
    /// Whether what is shown are places to point at, which have no way between them.
    places: bool,
    on_peg: Option<Answer<'a, u16, M>>,
    pub(super) on_point: Option<Answer<'a, (f64, f64), M>>,
    pub(super) on_hold: Option<Answer<'a, (f64, f64), M>>,
    pub(super) on_zoom: Option<Answer<'a, Zoom, M>>,
}

/// The plan of a unit with its stops, as large as its space allows.
pub fn view<'a, M>(
    look: &Look,
    shape: &'a PlanShape,
    pegs: &'a [Peg],
    orientation: Orientation,
    floor: Floor,
) -> PlanView<'a, M> {
    PlanView {
        look: *look,
        shape,
        pegs: Cow::Borrowed(pegs),
        orientation,
        floor,
        marks: &[],
        highlighted: None,
        zoom: Zoom::default(),
        places: false,
        on_peg: None,
        on_point: None,
        on_hold: None,
        on_zoom: None,
    }
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

    /// Shows places to point at instead of stops; a tap on one sends its position among them.
    #[must_use]
    pub fn on_place(mut self, places: &[PlanPlace], message: impl Fn(usize) -> M + 'a) -> Self {
        let inside = self.floor == Floor::Inside;
        let state = |chosen| if chosen { PegState::Chosen } else { PegState::Open };
        let peg = |(place, number): (&PlanPlace, u16)| Peg {
            number,
            at: place.at,
            inside,
            state: state(place.chosen),
        };
        self.pegs = places.iter().zip(1..).map(peg).collect();
        self.places = true;
        self.on_peg = Some(Box::new(move |number| message(usize::from(number.saturating_sub(1)))));
        self
    }

    /// A finger held down beside the pegs sends the place in inches.
    #[must_use]
    pub fn on_hold(mut self, message: impl Fn((f64, f64)) -> M + 'a) -> Self {
        self.on_hold = Some(Box::new(message));
        self
    }

    /// Seen from so near. Controls, wheel, fingers and keys send from how near it is to be seen.
    #[must_use]
    pub fn zoom(mut self, zoom: Zoom, message: impl Fn(Zoom) -> M + 'a) -> Self {
        self.zoom = zoom;
        self.on_zoom = Some(Box::new(message));
        self
    }

    /// Shows condition marks.
    #[must_use]
    pub fn marks(mut self, marks: &'a [PlanMark]) -> Self {
        self.marks = marks;
        self
    }

    /// Shows where the mark of this number is.
    #[must_use]
    pub fn highlighted(mut self, number: Option<u16>) -> Self {
        self.highlighted = number;
        self
    }

    fn laid_out(&self, size: Size) -> PlanLayout {
        let seen = (size, self.orientation, self.floor);
        let mut plan = layout_zoomed(self.shape, &self.pegs, seen, self.look.scale, self.zoom);
        if self.places {
            plan.ways.clear();
            plan.walked.clear();
        }
        plan
    }
}

impl<'a, M: Clone + 'a> From<PlanView<'a, M>> for Element<'a, M> {
    fn from(view: PlanView<'a, M>) -> Self {
        let view = Rc::new(view);
        responsive(move |size| placed(&view, size)).into()
    }
}

fn placed<'a, M: Clone + 'a>(view: &Rc<PlanView<'a, M>>, size: Size) -> Element<'a, M> {
    let plan = view.laid_out(size);
    let drawing = canvas::Canvas::new(Drawing { view: Rc::clone(view), plan: plan.clone() })
        .width(size.width)
        .height(size.height);
    let mut parts: Vec<(Rectangle, Element<'a, M>)> = vec![(Rectangle::with_size(size), drawing.into())];
    let mut discs = Vec::new();
    if let (Some(on_peg), None) = (&view.on_peg, &view.on_point) {
        for peg in &plan.pegs {
            let hit = plan.hit(peg);
            let target = Space::new().width(hit.width).height(hit.height);
            let press = tap(&view.look, target, on_peg(peg.number)).radius(hit.width / 2.0).round();
            parts.push((hit, press.into()));
            discs.push(hit);
        }
    }
    for (place, control) in controls(view, &plan) {
        parts.push((place, control));
        discs.push(place);
    }
    let whole = pinned(size, parts);
    if view.on_point.is_none() && view.on_hold.is_none() && view.on_zoom.is_none() {
        return whole;
    }
    let behavior = Gestures { view: Rc::clone(view), plan, taken: discs };
    Element::new(Around { content: whole, margin: 0.0, behavior })
}

/// The controls for looking from nearer and from further away; each only where it does something.
fn controls<'a, M: Clone + 'a>(
    view: &PlanView<'a, M>,
    plan: &PlanLayout,
) -> Vec<(Rectangle, Element<'a, M>)> {
    let (look, Some(on_zoom)) = (&view.look, &view.on_zoom) else { return Vec::new() };
    let [less, more] = plan.nose_corners(look.px(CONTROL), look.px(INSET));
    let control = |place: Rectangle, sign: Symbol, factor: f32| {
        let look = *look;
        // Drawn, not built of parts: what is drawn lies over all parts of its layer, the ground as well.
        let content = drawing(Length::Fill, Length::Fill, move |frame| {
            let (colors, size) = (look.colors(), frame.size());
            let line = look.line();
            let within = Size::new(size.width - line, size.height - line);
            let corner = Point::new(line / 2.0, line / 2.0);
            let face = Path::rounded_rectangle(corner, within, look.radius().into());
            frame.fill(&face, colors.leaf);
            frame.stroke(&face, Stroke::default().with_color(colors.edge).with_width(line));
            let side = look.px(22.0);
            let at = Point::new((size.width - side) / 2.0, (size.height - side) / 2.0);
            symbol::draw(frame, sign, Rectangle::new(at, Size::new(side, side)), colors.ink, colors.leaf);
        });
        let message = on_zoom(plan.larger(factor, plan.middle()));
        (place, tap(&look, content, message).into())
    };
    let mut all = Vec::new();
    if !view.zoom.is_whole() {
        all.push(control(less, Symbol::Minus, 1.0 / STEP));
    }
    if view.zoom.can_grow() {
        all.push(control(more, Symbol::Plus, STEP));
    }
    all
}

struct Drawing<'a, M> {
    view: Rc<PlanView<'a, M>>,
    plan: PlanLayout,
}

/// What the drawing was made from; drawn anew only when it changes.
#[derive(Debug, Clone, PartialEq)]
struct Drawn {
    look: Look,
    plan: PlanLayout,
    shape: PlanShape,
    marks: Vec<PlanMark>,
    highlighted: Option<u16>,
}

#[derive(Default)]
struct State {
    cache: Cache,
    drawn: Option<Drawn>,
}

impl<M> Drawing<'_, M> {
    fn same(&self, drawn: &Drawn) -> bool {
        drawn.look == self.view.look
            && drawn.plan == self.plan
            && drawn.shape == *self.view.shape
            && drawn.marks == self.view.marks
            && drawn.highlighted == self.view.highlighted
    }
}

impl<M> canvas::Program<M> for Drawing<'_, M> {
    type State = State;

    fn update(
        &self,
        state: &mut State,
        _event: &Event,
        _bounds: Rectangle,
        _cursor: mouse::Cursor,
    ) -> Option<Action<M>> {
        if !state.drawn.as_ref().is_some_and(|drawn| self.same(drawn)) {
            state.cache.clear();
            state.drawn = Some(Drawn {
                look: self.view.look,
                plan: self.plan.clone(),
                shape: self.view.shape.clone(),
                marks: self.view.marks.to_vec(),
                highlighted: self.view.highlighted,
            });
        }
        None
    }

    fn draw(
        &self,
        state: &State,
        renderer: &iced::Renderer,
        _theme: &iced::Theme,
        bounds: Rectangle,
        _cursor: mouse::Cursor,
    ) -> Vec<canvas::Geometry> {
        let (view, plan) = (&self.view, &self.plan);
        let look = &view.look;
        vec![state.cache.draw(renderer, bounds.size(), |frame| {
            ground::draw(frame, look, plan);
            let mut sheet = draw::Sheet { frame, plan, look: *look };
            draw::unit(&mut sheet, view.shape, true);
            pegs::line(frame, look, plan);
            pegs::people(frame, look, plan);
            pegs::pegs(frame, look, plan);
            pegs::marks(frame, look, plan, view.marks, view.highlighted);
        })]
    }
}
