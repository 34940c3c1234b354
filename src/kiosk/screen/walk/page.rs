//! The page of a step: plan, words and picture, each where the window has room for it.

use std::rc::Rc;

use iced::widget::{Column, column, container, responsive, row};
use iced::{Length, Padding, Size};

use super::cautions::asks;
use super::words::Letters;
use super::{Message, Pressed, State, fit};
use crate::kiosk::context::Ctx;
use crate::kiosk::hall::Hall;
use crate::kiosk::theme::{Gap, Type};
use crate::kiosk::ui::{self, Element};
use crate::route::{Caution, Step};
use crate::script::Speaker;
use crate::walk::{PersonId, Walk};
use crate::words::Args;

/// Width of the plan beside the words, as written.
pub(super) const SIDE: f32 = 336.0;

/// Room of a scroll bar and its distance, as written.
pub(super) const BAR: f32 = 18.0;

/// What every part of the page looks at.
#[derive(Clone)]
pub(super) struct Page<'a> {
    pub state: &'a State,
    pub ctx: Ctx<'a>,
    pub hall: &'a Hall,
    pub step: &'a Step,
    /// Says the unit's words to staff.
    pub staff: Option<Rc<Speaker<'a>>>,
    /// Says the unit's words to the renter.
    pub renter: Option<Rc<Speaker<'a>>>,
}

impl<'a> Page<'a> {
    pub fn new(state: &'a State, ctx: Ctx<'a>, hall: &'a Hall, step: &'a Step) -> Self {
        let staff = ctx.staff(&hall.walk.route().unit).map(Rc::new);
        let same = hall.walk.reader().is_none_or(|r| {
            let system = crate::kiosk::hall::system_of(&r.value.measures);
            r.value.language == ctx.settings.staff.lang && system == ctx.settings.staff.system
        });
        let renter = if same { staff.clone() } else { ctx.renter().map(Rc::new) };
        Self { state, ctx, hall, step, staff, renter }
    }

    pub fn walk(&self) -> &'a Walk {
        &self.hall.walk
    }

    /// Words of the unit's scripts, for staff.
    pub fn say_unit(&self, key: &str) -> String {
        self.staff.as_ref().map_or_else(|| self.ctx.say(key), |s| s.say(key))
    }

    /// Whether this control is being saved.
    pub fn saving(&self, pressed: &Pressed) -> bool {
        self.hall.saving && self.state.pressed == *pressed
    }

    /// Name of somebody of the party, as they gave it.
    pub fn name(&self, id: PersonId) -> String {
        let named = self.walk().person_ever(id).map(|p| p.name.clone()).filter(|n| !n.is_empty());
        named.unwrap_or_else(|| self.ctx.say_with("walk-person", &Args::new().number("number", id.0)))
    }

    /// The whole page.
    pub fn whole(&self) -> Element<'a, Message> {
        if self.ctx.look.portrait() { self.portrait() } else { self.landscape() }
    }

    fn landscape(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let (gap, wide) = (look.gap(Gap::Large), look.gap(Gap::Wide));
        let side = look.px(SIDE);
        let width = look.window.width - 2.0 * wide - side - wide;
        let portions = self.portions();
        let part = |view: fn(&Self, Size) -> Element<'a, Message>, portion: u16| {
            let page = self.clone();
            let part = responsive(move |size| view(&page, size));
            container(part).width(Length::FillPortion(portion)).height(Length::Fill)
        };
        let beside = width * f32::from(portions.1) / f32::from(portions.0 + portions.1) - wide - look.px(BAR);
        let middle = if self.fits_beside(beside) {
            row![part(Self::words, portions.0), part(Self::seen, portions.1)]
        } else {
            row![part(Self::one_column, 1)]
        };
        let middle = middle.spacing(wide).height(Length::Fill);
        let right = column![middle, self.foot(width)].spacing(gap).width(Length::Fill).height(Length::Fill);
        let plan = container(self.side()).width(side).height(Length::Fill);
        let page = ui::hand_row(look, vec![plan.into(), right.into()]).spacing(wide);
        let padding = Padding { top: gap, left: wide, right: wide, bottom: wide };
        container(page).padding(padding).width(Length::Fill).height(Length::Fill).into()
    }

    /// How words and picture share the width. What is counted or ticked needs it; what is read needs it where the
    /// words are.
    pub(super) fn portions(&self) -> (u16, u16) {
        if self.step.kit {
            (4, 6)
        } else if self.step.leaving.is_empty() {
            (52, 48)
        } else {
            (5, 5)
        }
    }

    /// Whether cautions and readings keep their words whole in a column of this width.
    fn fits_beside(&self, width: f32) -> bool {
        let look = &self.ctx.look;
        let taken = self.caution_sides();
        let mut cautions = self.step.cautions.iter();
        // No torn words, and not one word to a line.
        let stands = |role: Type, words: &str, most: f32| {
            let lines = fit::room(look, role, words, width - taken).height / (look.size(role) * 1.3);
            fit::longest_word(look, role, words) <= width - taken && lines < most + 0.5
        };
        let whole = |caution: &Caution| {
            let title = self.say_unit(&format!("caution-{}.title", caution.id));
            stands(Type::Strong, &title, 3.0) && stands(Type::Small, &self.ctx.say(asks(caution)), 3.0)
        };
        // Before a reading stands a ring, behind it what was read and the way on.
        let open = fit::room(look, Type::Small, &self.ctx.say("walk-reading-open"), f32::INFINITY).width;
        let taken = open + look.px(50.0) + 3.0 * look.gap(Gap::Medium) + 2.0 * look.gap(Gap::Large);
        let mut readings = self.step.readings.iter().map(|r| self.say_unit(&format!("reading-{}", r.id)));
        let named = |name: String| fit::longest_word(look, Type::Body, &name) <= width - taken;
        cautions.all(whole) && readings.all(named)
    }

    fn portrait(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let (gap, wide) = (look.gap(Gap::Large), look.gap(Gap::Wide));
        let width = look.window.width - 2.0 * wide;
        let words = {
            let page = self.clone();
            responsive(move |size| page.one_column(size))
        };
        let page =
            column![self.strip(), container(words).height(Length::Fill), self.foot(width)].spacing(gap);
        let padding = Padding { top: gap, left: wide, right: wide, bottom: wide };
        container(page).padding(padding).width(Length::Fill).height(Length::Fill).into()
    }

    /// Title, what to show, what to know, and what is said of the step so far; it scrolls where it must.
    fn words(&self, size: Size) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let width = size.width - look.px(BAR);
        let mut parts = self.before();
        let after = self.after(true);
        let text = self.text();
        let at_right = self.figures_at_right(size.width, size.height);
        let figures = if at_right { 0.0 } else { self.figures_height(width) };
        // Short texts stand larger: nobody reads small letters at arm's length if they need not.
        let spare = size.height - after.len() as f32 * look.px(90.0) - parts.len() as f32 * look.px(140.0);
        let letters = text.beside(look, width, spare, figures);
        parts.push(text.view(&self.ctx, letters));
        // What is to be done comes before what is good to know.
        parts.extend(after);
        parts.extend(if at_right { None } else { self.figures(width) });
        let all = Column::with_children(parts).spacing(look.gap(Gap::Large)).width(Length::Fill);
        let all = container(all).padding(Padding::ZERO.right(look.gap(Gap::Small)));
        ui::kept_scroll(look, &self.state.scrolled.0, all)
    }

    /// Picture and where it is, cautions; or what is counted and ticked.
    fn seen(&self, size: Size) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let mut all = Column::new().spacing(look.gap(Gap::Large)).width(Length::Fill);
        if self.step.kit {
            return self.kit(size.width);
        }
        if !self.step.leaving.is_empty() {
            return self.leaving_lines(size.width - look.px(BAR), true);
        }
        let readings = self.reading_rows();
        let wanted = size.width * 0.72;
        let rows = self.step.cautions.len() as f32 * look.px(104.0) + readings.len() as f32 * look.px(80.0);
        let (words, picture) = self.portions();
        let left = size.width * f32::from(words) / f32::from(picture);
        let at_right = self.figures_at_right(left, size.height);
        let taken = if at_right { self.below_picture(size.width) } else { rows + look.px(60.0) };
        let room = size.height - taken;
        let height = wanted.min(room.max(look.px(170.0)));
        if let Some(picture) = &self.state.picture {
            all = all.push(container(picture.view(look, self.ctx.say("walk-no-picture"))).height(height));
        }
        all = all.push(self.place()).extend(readings).push(self.cautions());
        all = all.push(if at_right { self.figures(size.width - look.line()) } else { None });
        let all = container(all).padding(Padding::ZERO.right(look.line()));
        ui::kept_scroll(look, &self.state.scrolled.1, all)
    }

    /// Portrait: everything below each other.
    fn one_column(&self, size: Size) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let width = size.width - look.px(BAR);
        let text = self.text();
        let (mut before, after) = (self.before(), self.after(false));
        // What was read and is not as it should be is seen without a scroll.
        if self.reads_off() {
            before.extend(self.reading_rows());
        }
        let counted = self.step.kit || !self.step.leaving.is_empty();
        let rows = (self.step.cautions.len() + after.len()) as f32 * look.px(100.0)
            + before.len() as f32 * look.px(140.0);
        // Where there are figures, the picture leaves them some of its room.
        let least = match (look.portrait(), self.state.figures.is_empty()) {
            (true, true) => 196.0,
            (true, false) => 150.0,
            (false, _) => 220.0,
        };
        let least = look.px(least);
        let spare = size.height - rows - look.px(60.0);
        let figures = self.figures_height(width);
        let letters =
            if counted { Letters::usual(look) } else { text.beside(look, width, spare - least, figures) };
        let height = (spare - figures - text.height(letters, width)).clamp(least, (width * 0.62).max(least));
        let mut all = Column::new().spacing(look.gap(Gap::Large)).width(Length::Fill);
        let picture = self.state.picture.as_ref().filter(|_| !counted);
        let seen = picture.map(|p| {
            let picture = container(p.view(look, self.ctx.say("walk-no-picture"))).height(height);
            column![picture].push(self.place()).spacing(look.gap(Gap::Small))
        });
        // Beside the plan there is room for one thing above the fold: the words.
        let (above, below) = if look.portrait() { (seen, None) } else { (None, seen) };
        all = all
            .push(above)
            .extend(before)
            .push(text.view(&self.ctx, letters))
            .extend(after)
            .push(self.figures(width))
            .push(self.cautions())
            .push(below);
        if self.step.kit {
            all = all.push(self.kit_rows(size.width));
        } else if counted {
            all = all.push(self.leaving_lines(width, false));
        }
        let all = container(all).padding(Padding::ZERO.right(look.gap(Gap::Small)));
        ui::kept_scroll(look, &self.state.scrolled.0, all)
    }

    /// What stands before the words: that the step was left out.
    pub(super) fn before(&self) -> Vec<Element<'a, Message>> {
        self.left_out().into_iter().collect()
    }

    /// What stands after the words: questions, what is missing at this stop, and readings where the picture does
    /// not take its place beside them.
    pub(super) fn after(&self, beside: bool) -> Vec<Element<'a, Message>> {
        let counted = self.step.kit || !self.step.leaving.is_empty();
        let rows = counted || !beside;
        let mut after = if rows && (beside || !self.reads_off()) { self.reading_rows() } else { Vec::new() };
        after.extend(self.asked());
        after.extend(self.still_missing());
        after
    }
}
