//! What stands on the screen.

use iced::widget::{Column, Row, column, container, row};
use iced::{Alignment, Length};

use super::{Message, Page, State, Whose};
use crate::kiosk::context::Ctx;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Choice, Element, Symbol};
use crate::tablet::staff::{Member, NotAllowed, Role, Staff};
use crate::words::Args;

impl State {
    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let content: Element<'a, Message> = match (&self.page, ctx.crew.staff) {
            (_, None) => self.shut(ctx),
            (Page::List, Some(staff)) => self.list(ctx, staff),
            (Page::Add { code, role, fault }, Some(staff)) => {
                add(ctx, (code.as_str(), *role, *fault), staff.is_empty())
            }
            (Page::Pin { whose, first, typed, differs }, Some(_)) => {
                self.pin(ctx, whose, (first.is_some(), typed.len(), *differs))
            }
            (Page::Remove(code), Some(_)) => self.remove(ctx, code),
        };
        let page = container(container(content).max_width(look.px(980.0)))
            .width(Length::Fill)
            .align_x(Alignment::Center)
            .padding(look.gap(Gap::Wide));
        ui::scroll(look, page).height(Length::Fill).into()
    }

    /// The file of PINs can no longer be used; the notice says why.
    fn shut<'a>(&self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        column![ui::title(&ctx.look, ctx.say("gate-shut")), yard(ctx)]
            .spacing(ctx.look.gap(Gap::Large))
            .into()
    }

    fn list<'a>(&'a self, ctx: &Ctx<'a>, staff: &'a Staff) -> Element<'a, Message> {
        let look = &ctx.look;
        let mut page =
            column![ui::title(look, ctx.say("staff-title")), ui::body(look, ctx.say("staff-what")),]
                .spacing(look.gap(Gap::Large));
        page = page.push(self.fault.as_ref().map(|why| ui::note(look, ctx.say("notice"), Some(why.clone()))));
        let people = staff.people().iter().map(|member| self.member(ctx, staff, member));
        page = page.push(Column::with_children(people).spacing(look.gap(Gap::Medium)));
        let gap = look.gap(Gap::Medium);
        let mut ways = Row::new().spacing(gap);
        if self.is_office() {
            ways = ways.push(
                ui::primary(look, ctx.say("staff-add"), Message::AddAsked)
                    .before(Symbol::Plus)
                    .id("staff-add"),
            );
        }
        page.push(ways.push(yard(ctx)).wrap().vertical_spacing(gap)).into()
    }

    fn member<'a>(&self, ctx: &Ctx<'a>, staff: &Staff, member: &'a Member) -> Element<'a, Message> {
        let look = &ctx.look;
        let code = &member.code;
        let own = self.by.as_ref().is_some_and(|(by, _)| by == code);
        let words = column![ui::section(look, code.clone()), ui::small(look, ctx.say(role_key(member.role)))]
            .spacing(look.gap(Gap::Tiny))
            .width(Length::Fill);
        let mut ways = Row::new().spacing(look.gap(Gap::Medium));
        if own || self.is_office() {
            let key = if own { "staff-own-pin" } else { "staff-new-pin" };
            ways = ways.push(ui::secondary(look, ctx.say(key), Message::PinAsked(code.clone())));
        }
        // The last of the office stays while there are others.
        let may_go = staff.clone().remove(&self.by(), code).is_ok();
        if may_go {
            ways =
                ways.push(ui::secondary(look, ctx.say("staff-remove"), Message::RemoveAsked(code.clone())));
        }
        let ways = ways.wrap().vertical_spacing(look.gap(Gap::Small));
        let line = row![words, ways].spacing(look.gap(Gap::Large)).align_y(Alignment::Center);
        ui::panel(look, line).into()
    }

    fn pin<'a>(
        &self,
        ctx: &Ctx<'a>,
        whose: &Whose,
        (again, typed, differs): (bool, usize, bool),
    ) -> Element<'a, Message> {
        let look = &ctx.look;
        let (Whose::New { code, .. } | Whose::Of(code)) = whose;
        let args = Args::new().text("code", code.clone());
        let title = ctx.say_with("staff-pin-title", &args);
        let what = if again { "staff-pin-again" } else { "staff-pin-first" };
        let mut left =
            column![ui::title(look, title), ui::body(look, ctx.say(what))].spacing(look.gap(Gap::Large));
        if differs {
            let line = row![
                ui::symbol(look, Symbol::Alert, 28.0),
                ui::strong(look, ctx.say("staff-pin-differs")).width(Length::Fill)
            ];
            left = left.push(line.spacing(look.gap(Gap::Small)).align_y(Alignment::Center));
        }
        left = left.push(ui::small(look, ctx.say("staff-pin-what")));
        if self.saving {
            return left.push(ui::saving(look, ctx.say("staff-saving"))).into();
        }
        let back = ui::secondary(look, ctx.say("gate-back"), Message::Back).id("staff-back");
        let end = (typed >= crate::tablet::staff::pin::PIN_MIN)
            .then(|| ctx.say(if again { "staff-pin-keep" } else { "staff-pin-next" }));
        let pad = ui::pin_pad(look, typed, end, Message::Key);
        let content: Element<'a, Message> = if look.portrait() {
            column![left.push(back).width(Length::Fill), pad]
                .spacing(look.gap(Gap::Wide))
                .align_x(Alignment::Center)
                .into()
        } else {
            row![container(left.push(back)).width(Length::Fill), pad].spacing(look.gap(Gap::Huge)).into()
        };
        ui::on_escape(ui::panel(look, content), Message::Back)
    }

    fn remove<'a>(&self, ctx: &Ctx<'a>, code: &str) -> Element<'a, Message> {
        let look = &ctx.look;
        let args = Args::new().text("code", code.to_owned());
        let mut page = column![
            ui::title(look, ctx.say_with("staff-remove-title", &args)),
            ui::body(look, ctx.say("staff-remove-what")),
        ]
        .spacing(look.gap(Gap::Large));
        if self.saving {
            return page.push(ui::saving(look, ctx.say("staff-saving"))).into();
        }
        let ways = row![
            ui::primary(look, ctx.say("gate-back"), Message::Back),
            ui::secondary(look, ctx.say("staff-remove-yes"), Message::RemoveConfirmed),
        ];
        page = page.push(ways.spacing(look.gap(Gap::Medium)).wrap());
        ui::on_escape(ui::panel(look, page), Message::Back)
    }
}

fn yard<'a>(ctx: &Ctx<'a>) -> Element<'a, Message> {
    ui::secondary(&ctx.look, ctx.say("staff-to-yard"), Message::YardAsked).into()
}

const fn role_key(role: Role) -> &'static str {
    match role {
        Role::Agent => "staff-role-agent",
        Role::Office => "staff-role-office",
    }
}

fn add<'a>(
    ctx: &Ctx<'a>,
    (code, role, fault): (&'a str, Role, Option<NotAllowed>),
    first: bool,
) -> Element<'a, Message> {
    let look = &ctx.look;
    let fault = fault.map(|why| match why {
        NotAllowed::Taken => ctx.say("staff-code-taken"),
        _ => ctx.say("staff-code-form"),
    });
    let field = ui::field(look, "staff-code", code, Message::CodeTyped)
        .label(ctx.say("staff-code"))
        .placeholder(ctx.say("staff-code-example"))
        .error(fault)
        .on_submit(Message::CodeGiven);
    let title = if first { "staff-first-title" } else { "staff-add" };
    let mut page = column![ui::title(look, ctx.say(title))].spacing(look.gap(Gap::Large));
    if first {
        page = page.push(ui::body(look, ctx.say("staff-first-what")));
    }
    page = page.push(Element::from(field));
    if !first {
        let roles = [Role::Agent, Role::Office].map(|one| {
            let choice = Choice::new(ctx.say(role_key(one)), one == role, Message::RoleChosen(one));
            let line = match one {
                Role::Agent => "staff-role-agent-may",
                Role::Office => "staff-role-office-may",
            };
            ui::radio_row(look, Choice { line: Some(ctx.say(line)), ..choice })
        });
        page = page.push(Column::with_children(roles).spacing(look.gap(Gap::Small)));
    }
    let gap = look.gap(Gap::Medium);
    let mut ways = Row::new().spacing(gap);
    if !code.trim().is_empty() {
        ways = ways.push(ui::primary(look, ctx.say("staff-code-next"), Message::CodeGiven));
    }
    let back = ui::secondary(look, ctx.say("gate-back"), Message::Back).id("staff-back");
    page = page.push(ways.push(back).wrap().vertical_spacing(gap));
    ui::on_escape(ui::panel(look, page), Message::Back)
}
