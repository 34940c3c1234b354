//! Condition marks: a large plan to put a finger on, and the list of those there are.

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length, Padding};

use super::sheet::Sheet;
use super::{Draft, Message, Page, Pressed, side};
use crate::kiosk::hall::Hall;
use crate::kiosk::plan::{self, Floor, Orientation, PlanShape, Side};
use crate::kiosk::theme::{Gap, Look};
use crate::kiosk::ui::{self, Choice, Element};
use crate::walk::{Event, Mark, MarkKind, MarkSize, PlanPoint, Walk, Who};
use crate::words::Args;

/// Kinds of marks, most frequent first.
const KINDS: [MarkKind; 8] = [
    MarkKind::Scratch,
    MarkKind::Dent,
    MarkKind::Chip,
    MarkKind::Crack,
    MarkKind::Stain,
    MarkKind::Tear,
    MarkKind::Missing,
    MarkKind::WorksBadly,
];
/// Sizes, from small to large.
const SIZES: [MarkSize; 4] = [MarkSize::Coin, MarkSize::Hand, MarkSize::Arm, MarkSize::Larger];

/// A mark that is being placed.
#[derive(Debug, Clone)]
pub(super) struct Marking {
    at: Option<PlanPoint>,
    kind: Option<MarkKind>,
    size: Option<MarkSize>,
    note: String,
    by: Who,
}

impl Marking {
    /// Nothing is placed yet.
    pub const fn new() -> Self {
        Self { at: None, kind: None, size: None, note: String::new(), by: Who::Agent }
    }

    /// Takes in what changed.
    pub fn change(&mut self, draft: Draft, hall: &Hall) {
        match draft {
            Draft::Point(at) => self.at = Some(on_unit(&hall.shape, at)),
            Draft::NoPoint => *self = Self::new(),
            Draft::Kind(kind) => self.kind = Some(kind),
            Draft::Size(size) => self.size = Some(size),
            Draft::Note(note) => self.note = note,
            Draft::By(by) => self.by = by,
            _ => {}
        }
    }

    /// The mark, once place, kind and size are said.
    pub fn event(&self, walk: &Walk) -> Option<Event> {
        let mark = Mark {
            number: walk.next_mark()?,
            at: self.at?,
            kind: self.kind?,
            size: self.size?,
            note: self.note.trim().to_owned(),
            by: self.by,
        };
        Some(Event::MarkPlaced { mark })
    }
}

/// The nearest point of the unit, slide-outs and tongue included, in tenths of an inch.
fn on_unit(shape: &PlanShape, (x, y): (f64, f64)) -> PlanPoint {
    let half = |side| shape.width / 2.0 + shape.reach(side);
    let tenths = |inches: f64| libm::rint(inches * 10.0) as i32;
    PlanPoint {
        x: tenths(x.clamp(-half(Side::Left), half(Side::Right))),
        y: tenths(y.clamp(-shape.tongue, shape.length)),
    }
}

impl<'a> Page<'a> {
    /// The page of the marks, or the sheet of the one that is being placed over it.
    pub(super) fn marks(&self, sheet: &'a Sheet, marking: &'a Marking) -> Element<'a, Message> {
        let page = ui::on_escape(self.mark_page(), Message::SheetClosed);
        if marking.at.is_none() {
            return ui::alone(page);
        }
        ui::dialog(
            &self.ctx.look,
            page,
            self.mark_sheet(sheet, marking),
            Some(Message::Draft(Draft::NoPoint)),
        )
    }

    fn mark_page(&self) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let (gap, wide) = (look.gap(Gap::Large), look.gap(Gap::Wide));
        let orientation = if look.portrait() {
            Orientation::NoseUp
        } else {
            Orientation::standing_at(side::near(&self.hall.shape, self.step.station))
        };
        // Pegs would be in the way of a finger.
        let plan: Element<'a, Message> = plan::view(look, &self.hall.shape, &[], orientation, Floor::Inside)
            .marks(&self.state.marks)
            .highlighted(self.state.mark)
            .on_point(|at| Message::Draft(Draft::Point(at)))
            .into();
        let plan = ui::panel(look, plan).padding(look.gap(Gap::Small)).height(Length::Fill);
        let list = container(self.mark_list()).padding(Padding::ZERO.right(look.gap(Gap::Small)));
        let list = ui::scroll(look, list);
        let body: Element<'a, Message> = if look.portrait() {
            let list = container(list.height(Length::Shrink)).max_height(look.px(300.0));
            column![container(plan).height(Length::Fill), list].spacing(gap).height(Length::Fill).into()
        } else {
            let list = container(list.height(Length::Fill)).width(Length::FillPortion(3));
            row![container(plan).width(Length::FillPortion(7)), list]
                .spacing(wide)
                .height(Length::Fill)
                .into()
        };
        let head = column![ui::title(look, ctx.say("walk-marks")), ui::body(look, ctx.say("walk-marks-how"))]
            .spacing(look.gap(Gap::Tiny));
        let back = ui::primary(look, ctx.say("walk-marks-done"), Message::SheetClosed).fill();
        let padding = Padding { top: gap, left: wide, right: wide, bottom: wide };
        column![head, body, Element::from(back)].spacing(gap).padding(padding).into()
    }

    fn mark_list(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let rows: Vec<Element<'a, Message>> = self.walk().marks().map(|m| self.mark_row(&m.value)).collect();
        if rows.is_empty() {
            return ui::body(look, self.ctx.say("walk-marks-none")).into();
        }
        Column::with_children(rows).spacing(look.gap(Gap::Small)).into()
    }

    fn mark_row(&self, mark: &'a Mark) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let what =
            Args::new().text("kind", ctx.say(kind_key(mark.kind))).text("size", ctx.say(size_key(mark.size)));
        let by = Args::new().text("who", self.who(mark.by));
        let at = (f64::from(mark.at.x) / 10.0, f64::from(mark.at.y) / 10.0);
        let station = ctx.say(&format!("station-{}", self.hall.shape.station_at(at).word()));
        let mut words = column![
            ui::strong(look, ctx.say_with("walk-mark-line", &what)),
            ui::small(look, ctx.say_with("walk-mark-where", &Args::new().text("station", station))),
            ui::small(look, ctx.say_with("walk-mark-by", &by)),
        ];
        if !mark.note.is_empty() {
            words = words.push(ui::small(look, mark.note.clone()));
        }
        let remove: Element<'a, Message> = if self.saving(&Pressed::Line(mark.number.to_string())) {
            ui::small(look, ctx.say("walk-saving")).into()
        } else {
            ui::quiet(look, ctx.say("walk-mark-remove"), Message::MarkRemoved(mark.number)).into()
        };
        let face = row![cross(look, mark.number), words.width(Length::Fill)]
            .spacing(look.gap(Gap::Medium))
            .align_y(Alignment::Center);
        let chosen = self.state.mark == Some(mark.number);
        // A press shows where it is.
        let face = ui::tap(look, container(face).width(Length::Fill), Message::MarkChosen(mark.number));
        let content = column![Element::from(face), remove].spacing(look.gap(Gap::Small));
        let panel = if chosen { ui::chosen_panel(look, content) } else { ui::panel(look, content) };
        panel.padding(look.gap(Gap::Medium)).into()
    }

    fn who(&self, who: Who) -> String {
        match who {
            Who::Agent => self.ctx.say("walk-mark-agent"),
            Who::Person(id) => self.name(id),
        }
    }

    /// What the mark is: kind, size, words, and who saw it.
    pub(super) fn mark_sheet(&self, sheet: &Sheet, marking: &'a Marking) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let kinds = KINDS.map(|k| {
            Choice::new(ctx.say(kind_key(k)), marking.kind == Some(k), Message::Draft(Draft::Kind(k)))
        });
        let sizes = SIZES.map(|s| {
            Choice::new(ctx.say(size_key(s)), marking.size == Some(s), Message::Draft(Draft::Size(s)))
        });
        let people = self.walk().people().iter().filter(|p| !p.name.is_empty()).map(|p| Who::Person(p.id));
        let people: Vec<Choice<Message>> = std::iter::once(Who::Agent)
            .chain(people)
            .map(|who| Choice::new(self.who(who), marking.by == who, Message::Draft(Draft::By(who))))
            .collect();
        let part = |key: &str, content: Element<'a, Message>| {
            column![ui::label(look, ctx.say(key)), content].spacing(look.gap(Gap::Small))
        };
        column![
            ui::section(look, ctx.say("walk-mark-title")),
            part("walk-mark-kind", ui::choices(look, kinds)),
            part("walk-mark-size", ui::choices(look, sizes)),
            part("walk-mark-who", ui::choices(look, people)),
            self.note_field(&marking.note, "walk-note", None),
            self.ends(sheet, ctx.say("walk-mark-keep"), Message::Draft(Draft::NoPoint)),
        ]
        .spacing(look.gap(Gap::Large))
        .width(Length::Fill)
        .into()
    }
}

/// The number of a mark with its cross, as it stands on the plan.
fn cross<'a>(look: &Look, number: u16) -> Element<'a, Message> {
    use iced::Vector;
    use iced::widget::canvas::{LineCap, Path, Stroke};
    let (side, colors, line) = (look.px(48.0), look.colors(), look.line());
    ui::drawing(side, side, move |frame| {
        let (at, arm) = (frame.center() - Vector::new(side * 0.2, 0.0), side * 0.16);
        let cross = Path::new(|path| {
            for side in [-1.0, 1.0] {
                path.move_to(at + Vector::new(-arm, -arm * side));
                path.line_to(at + Vector::new(arm, arm * side));
            }
        });
        let stroke = Stroke::default().with_color(colors.ink).with_width(line * 1.5);
        frame.stroke(&cross, stroke.with_line_cap(LineCap::Round));
        let beside = at + Vector::new(side * 0.42, 0.0);
        frame.fill_text(ui::symbol::centered(number.to_string(), beside, side * 0.42, colors.ink));
    })
}

const fn kind_key(kind: MarkKind) -> &'static str {
    match kind {
        MarkKind::Scratch => "walk-mark-scratch",
        MarkKind::Dent => "walk-mark-dent",
        MarkKind::Chip => "walk-mark-chip",
        MarkKind::Crack => "walk-mark-crack",
        MarkKind::Stain => "walk-mark-stain",
        MarkKind::Tear => "walk-mark-tear",
        MarkKind::Missing => "walk-mark-missing",
        MarkKind::WorksBadly => "walk-mark-works-badly",
    }
}

const fn size_key(size: MarkSize) -> &'static str {
    match size {
        MarkSize::Coin => "walk-mark-coin",
        MarkSize::Hand => "walk-mark-hand",
        MarkSize::Arm => "walk-mark-arm",
        MarkSize::Larger => "walk-mark-larger",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_finger_beside_the_unit_marks_the_nearest_point_of_it() {
        let scripts = crate::kiosk::scripts(crate::script::Bundle::demo()).unwrap();
        let shape = crate::kiosk::shape::of(&scripts.units.get("wren").unwrap().value);
        // The Wren is 99 in wide and 312 in long (handbook E.1) and has no slide-out.
        assert_eq!(on_unit(&shape, (80.0, 400.0)), PlanPoint { x: 495, y: 3120 });
        assert_eq!(on_unit(&shape, (-80.0, -9.0)), PlanPoint { x: -495, y: 0 });
        assert_eq!(on_unit(&shape, (12.34, 100.06)), PlanPoint { x: 123, y: 1001 });
    }
}
