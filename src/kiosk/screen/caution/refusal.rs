//! A refusal, in three steps that look alike: the renter's reason, the agent's decision, what was saved.

use std::time::Duration;

use iced::widget::{Column, column};

use super::{AskMessage, Message, Saving, Show, State, answer, ask::Asked, grave};
use crate::kiosk::context::Ctx;
use crate::kiosk::screen::Action;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Choice, Element, HoldEvent};
use crate::route::Caution;
use crate::walk::{Decision, Event};
use crate::words::Args;

/// Reasons that are offered; anything else is said in their own words.
const REASONS: [&str; 3] = ["unclear", "disagree", "cannot"];
/// How long the agent holds on to decide.
pub(in crate::kiosk) const AGENT_HOLD: Duration = Duration::from_millis(800);

/// A refusal so far.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Refusal {
    /// The caution, by its id.
    caution: Option<String>,
    /// One of the usual reasons.
    usual: Option<&'static str>,
    /// The renter's own words.
    words: String,
    /// Whether the agent decides now.
    decide: bool,
    /// What they would decide.
    decision: Option<Decision>,
}

/// A refusal that was saved.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Saved {
    caution: String,
    usual: Option<&'static str>,
    words: String,
    decision: Decision,
}

impl Refusal {
    fn has_reason(&self) -> bool {
        self.usual.is_some() || !self.words.trim().is_empty()
    }
}

impl State {
    /// Of a page with one caution it is clear which is refused.
    pub(super) fn refuse_pressed(&mut self, ctx: &Ctx<'_>) {
        let Some((_, cautions)) = ctx.hall.and_then(|hall| self.page(hall)) else { return };
        let only = if let [only] = cautions.as_slice() { Some(only.id.clone()) } else { None };
        self.asked = Some(Asked::Refusal(Refusal { caution: only, ..Refusal::default() }));
    }

    pub(super) fn refusal_changed(&mut self, message: AskMessage, ctx: &Ctx<'_>) -> Action {
        let Some(Asked::Refusal(refusal)) = &mut self.asked else { return Action::None };
        match message {
            AskMessage::RefuseChosen(id) => refusal.caution = Some(id),
            AskMessage::ReasonChosen(reason) => {
                refusal.usual = Some(reason);
                refusal.words.clear();
            }
            AskMessage::ReasonTyped(words) => {
                refusal.words = words;
                refusal.usual = None;
            }
            AskMessage::AgentCalled => refusal.decide = refusal.caution.is_some() && refusal.has_reason(),
            AskMessage::DecisionChosen(decision) => refusal.decision = Some(decision),
            AskMessage::Decided(HoldEvent::Done) if refusal.decide => return self.decided(ctx),
            _ => {}
        }
        Action::None
    }

    fn decided(&mut self, ctx: &Ctx<'_>) -> Action {
        let Some((hall, speaker)) = ctx.hall.zip(ctx.renter()) else { return Action::None };
        let Some((_, cautions)) = self.page(hall) else { return Action::None };
        let Some(Asked::Refusal(refusal)) = &self.asked else { return Action::None };
        let wanted = |c: &&Caution| Some(&c.id) == refusal.caution.as_ref();
        let Some((caution, by)) = cautions.into_iter().find(wanted).zip(self.person) else {
            return Action::None;
        };
        let Some(decision) = refusal.decision else { return Action::None };
        let event = Event::CautionRefused {
            caution: caution.id.clone(),
            version: caution.version,
            by,
            reason: match refusal.usual {
                Some(usual) => speaker.say(&usual_key(usual)),
                None => refusal.words.trim().to_owned(),
            },
            decision,
            shown: answer::shown(&speaker, caution),
        };
        self.propose(Saving::Refusal, vec![event])
    }

    /// The refusal is kept: it is said what was saved. The page comes no more on this visit where the unit stays.
    pub(super) fn refusal_saved(&mut self) {
        let Some(Asked::Refusal(refusal)) = self.asked.take() else { return };
        let Refusal { caution, usual, words, decision, .. } = refusal;
        let Some((caution, decision)) = caution.zip(decision) else { return };
        if decision == Decision::KeepUnit {
            self.kept.push(caution.clone());
        }
        self.asked = Some(Asked::Saved(Saved { caution, usual, words, decision }));
    }
}

fn usual_key(usual: &str) -> String {
    format!("caution-page-refuse-{usual}")
}

fn send(message: AskMessage) -> Message {
    Message::Ask(message)
}

/// Which of the three steps it is, and whose.
fn head<'a>(show: &Show<'_, 'a>, step: u64, who: &str, title: String) -> Column<'a, Message> {
    let look = &show.look;
    let label = show.staff("refuse-step", &Args::new().number("step", step).text("who", who));
    column![ui::label(look, label), ui::title(look, title)].spacing(look.gap(Gap::Large))
}

pub(super) fn view<'a>(
    show: &Show<'_, 'a>,
    refusal: &'a Refusal,
    cautions: &[&Caution],
) -> Element<'a, Message> {
    if refusal.decide { decide(show, refusal) } else { reason(show, refusal, cautions) }
}

/// The renter's part.
fn reason<'a>(show: &Show<'_, 'a>, refusal: &'a Refusal, cautions: &[&Caution]) -> Element<'a, Message> {
    let look = &show.look;
    let mut page = column![
        ui::label(
            look,
            show.say_with("refuse-step", Args::new().number("step", 1).text("who", show.reader()))
        ),
        ui::title(look, show.say("refuse-title")),
        ui::body(look, show.say("refuse-why")),
    ]
    .spacing(look.gap(Gap::Large));
    if cautions.len() > 1 {
        let all = cautions.iter().map(|c| {
            let chosen = refusal.caution.as_ref() == Some(&c.id);
            let message = send(AskMessage::RefuseChosen(c.id.clone()));
            ui::radio_row(look, Choice::new(grave::title(show, c), chosen, message))
        });
        let all = Column::with_children(all).spacing(look.gap(Gap::Small));
        page = page.push(ui::strong(look, show.say("refuse-which"))).push(all);
        page = page.push(ui::strong(look, show.say("refuse-reason")));
    }
    let usual = REASONS.into_iter().map(|key| {
        let chosen = refusal.usual == Some(key);
        let message = send(AskMessage::ReasonChosen(key));
        ui::radio_row(look, Choice::new(show.speaker.say(&usual_key(key)), chosen, message))
    });
    let typed = |words| send(AskMessage::ReasonTyped(words));
    let field = ui::field(look, "caution-reason", &refusal.words, typed).label(show.say("refuse-field"));
    page = page.push(Column::with_children(usual).spacing(look.gap(Gap::Small))).push(field);
    if refusal.caution.is_some() && refusal.has_reason() {
        let give = ui::primary(look, show.say("refuse-give"), send(AskMessage::AgentCalled)).fill();
        page = page.push(give.id("caution-give"));
    }
    page.push(ui::quiet(look, show.say("refuse-back"), send(AskMessage::Closed))).into()
}

/// What was refused, by whom and why, as staff read it.
fn facts<'a>(show: &Show<'_, 'a>, caution: &str, usual: Option<&str>, words: &str) -> Element<'a, Message> {
    let look = &show.look;
    let staff = show.ctx.staff(&show.hall.walk.route().unit);
    let found = show.hall.walk.route().caution(caution);
    let title = found.map(|(_, c)| staff.map_or_else(|| grave::title(show, c), |s| s.caution(c).title));
    let reason = usual.map_or_else(|| words.trim().to_owned(), |usual| show.ctx.say(&usual_key(usual)));
    let what = show.named().text("title", title.unwrap_or_default()).text("reason", reason);
    column![
        ui::strong(look, show.staff("decide-what", &what)),
        ui::body(look, show.staff("decide-reason", &what)),
    ]
    .spacing(look.gap(Gap::Small))
    .into()
}

/// The agent's part, in the agent's language.
fn decide<'a>(show: &Show<'_, 'a>, refusal: &'a Refusal) -> Element<'a, Message> {
    let look = &show.look;
    let staff = |key: &str| show.staff(key, &Args::new());
    let caution = refusal.caution.as_deref().unwrap_or_default();
    let page = head(show, 2, &staff("refuse-agent"), staff("decide")).push(facts(
        show,
        caution,
        refusal.usual,
        &refusal.words,
    ));
    if show.hall.saving {
        return page.push(ui::saving(look, staff("saving")).fill()).into();
    }
    let option = |key: &str, decision| {
        let chosen = refusal.decision == Some(decision);
        let choice = Choice::new(staff(key), chosen, send(AskMessage::DecisionChosen(decision)));
        ui::radio_row(look, Choice { line: Some(staff(&format!("{key}-line"))), ..choice })
    };
    let options = column![option("hand-over", Decision::HandOver), option("keep", Decision::KeepUnit)]
        .spacing(look.gap(Gap::Small));
    let hold = refusal.decision.map(|_| {
        let held = |event| send(AskMessage::Decided(event));
        let hold = ui::hold(look, staff("decide-hold"), staff("decide-hold-line"), held);
        Element::from(hold.id("caution-decide").page(show.state.turn).lasting(AGENT_HOLD))
    });
    page.push(options).push(hold).push(ui::quiet(look, staff("refuse-back"), send(AskMessage::Closed))).into()
}

/// What was saved, and what comes next.
pub(super) fn saved<'a>(show: &Show<'_, 'a>, saved: &'a Saved) -> Element<'a, Message> {
    let look = &show.look;
    let staff = |key: &str| show.staff(key, &Args::new());
    let (key, stands) = match saved.decision {
        Decision::HandOver => ("hand-over", "saved-hand-over"),
        Decision::KeepUnit => ("keep", "saved-keep"),
    };
    let decided = show.staff("saved-decision", &Args::new().text("decision", staff(key)));
    let more = show.state.person.is_some_and(|p| !show.state.left_for(show.hall, p).is_empty());
    let next = if more { show.staff("saved-more", &show.named()) } else { staff("saved-end") };
    head(show, 3, &staff("refuse-both"), staff("saved"))
        .push(facts(show, &saved.caution, saved.usual, &saved.words))
        .push(ui::body(look, decided))
        .push(ui::body(look, staff(stands)))
        .push(ui::strong(look, next))
        .push(ui::primary(look, staff("saved-on"), send(AskMessage::Closed)).fill().id("caution-saved"))
        .into()
}
