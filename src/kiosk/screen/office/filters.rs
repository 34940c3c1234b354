//! What records must have in common to be listed.

use iced::widget::{Column, Row, column, container, row};
use iced::{Alignment, Length};
use jiff::civil::Date;

use super::cautions::{self, Offer};
use super::{Message, State};
use crate::archive::index::{Answered, Count, Query};
use crate::kiosk::context::Ctx;
use crate::kiosk::screen::counted;
use crate::kiosk::screen::opening::own_name;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Choice, Element, Symbol};
use crate::record::seal::Kind;
use crate::words::{Args, format};

/// One of the filters.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Which {
    /// Unit.
    Unit,
    /// Kind of record.
    Kind,
    /// A caution.
    Caution,
    /// How some caution was answered.
    Answer,
    /// Verified, or not.
    Good,
    /// Language of the renter.
    Language,
    /// Agent.
    Agent,
    /// Loaned item.
    Item,
    /// First day.
    From,
    /// Last day.
    To,
}

impl Which {
    const ALL: [Self; 10] = [
        Self::Good,
        Self::Unit,
        Self::Kind,
        Self::Caution,
        Self::Answer,
        Self::Language,
        Self::Agent,
        Self::Item,
        Self::From,
        Self::To,
    ];
}

/// A filter is set, or let go.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Change {
    /// Unit.
    Unit(Option<String>),
    /// Kind of record.
    Kind(Option<Kind>),
    /// A caution by its id.
    Caution(Option<String>),
    /// What is typed for a caution.
    CautionTyped(String),
    /// How some caution was answered.
    Answer(Option<Answered>),
    /// Verified, or not.
    Good(Option<bool>),
    /// Language of the renter.
    Language(Option<String>),
    /// What is typed for the agent.
    Agent(String),
    /// What is typed for the item.
    Item(String),
    /// What is typed for the first day.
    From(String),
    /// What is typed for the last day.
    To(String),
}

/// All of them, as they were chosen and typed.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Filters {
    unit: Option<String>,
    kind: Option<Kind>,
    caution: Option<String>,
    caution_typed: String,
    offers: Vec<Offer>,
    answer: Option<Answered>,
    good: Option<bool>,
    language: Option<String>,
    agent: String,
    item: String,
    from: String,
    to: String,
}

impl Filters {
    /// Sets one.
    pub fn change(&mut self, change: Change, ctx: &Ctx<'_>) {
        match change {
            Change::Unit(unit) => self.unit = unit,
            Change::Kind(kind) => self.kind = kind,
            Change::Caution(id) => {
                if id.is_none() {
                    (self.caution_typed, self.offers) = (String::new(), Vec::new());
                }
                self.caution = id;
            }
            Change::CautionTyped(typed) => {
                (self.caution, self.offers) = (cautions::named(&typed), cautions::offers(ctx, &typed));
                self.caution_typed = typed;
            }
            Change::Answer(answer) => self.answer = answer,
            Change::Good(good) => self.good = good,
            Change::Language(language) => self.language = language,
            Change::Agent(code) => self.agent = code,
            Change::Item(tag) => self.item = tag,
            Change::From(day) => self.from = day,
            Change::To(day) => self.to = day,
        }
    }

    /// Lets one go.
    pub fn remove(&mut self, which: Which, ctx: &Ctx<'_>) {
        let change = match which {
            Which::Unit => Change::Unit(None),
            Which::Kind => Change::Kind(None),
            Which::Caution => Change::Caution(None),
            Which::Answer => Change::Answer(None),
            Which::Good => Change::Good(None),
            Which::Language => Change::Language(None),
            Which::Agent => Change::Agent(String::new()),
            Which::Item => Change::Item(String::new()),
            Which::From => Change::From(String::new()),
            Which::To => Change::To(String::new()),
        };
        self.change(change, ctx);
    }

    /// Puts them into a query. A day that is no day yet asks for nothing.
    pub fn fill(&self, query: &mut Query) {
        let typed = |text: &str| Some(text.trim().to_owned()).filter(|text| !text.is_empty());
        query.unit = self.unit.clone();
        query.kind = self.kind;
        query.caution = self.caution.clone();
        query.answer = self.answer;
        query.good = self.good;
        query.language = self.language.clone();
        query.agent = typed(&self.agent);
        query.item = typed(&self.item);
        query.from = day(&self.from);
        query.to = day(&self.to);
    }

    /// What one asks for, in words; none when it asks for nothing.
    fn said(&self, ctx: &Ctx<'_>, which: Which) -> Option<String> {
        let with = |key: &str, name: &str, text: String| ctx.say_with(key, &Args::new().text(name, text));
        let on = |key: &str, text: &str| {
            let at = day(text)?;
            Some(with(key, "day", format::date(&ctx.scripts.words, &ctx.settings.staff, at)))
        };
        let typed = |text: &str| Some(text.trim().to_owned()).filter(|text| !text.is_empty());
        match which {
            Which::Unit => self.unit.as_ref().map(|unit| ctx.say(&format!("unit-{unit}"))),
            Which::Kind => self.kind.map(|kind| ctx.say(kind_key(kind))),
            Which::Caution => Some(with("office-filter-caution-is", "id", self.caution.clone()?)),
            Which::Answer => self.answer.map(|how| ctx.say(answer_key(how))),
            Which::Good => self.good.map(|good| ctx.say(good_key(good))),
            Which::Language => self.language.as_ref().map(|tag| own_name(ctx, tag)),
            Which::Agent => Some(with("office-filter-agent-is", "code", typed(&self.agent)?)),
            Which::Item => Some(with("office-filter-item-is", "tag", typed(&self.item)?)),
            Which::From => on("office-filter-from-is", &self.from),
            Which::To => on("office-filter-to-is", &self.to),
        }
    }

    /// Chips of the filters that hold; a press lets one go.
    pub(super) fn chips<'a>(&self, ctx: &Ctx<'a>) -> Vec<Element<'a, Message>> {
        let chip = |which: Which| {
            let words = self.said(ctx, which)?;
            let chip = ui::chip(&ctx.look, words, Message::FilterRemoved(which)).after(Symbol::Cross);
            Some(chip.height(52.0).into())
        };
        Which::ALL.into_iter().filter_map(chip).collect()
    }

    /// Whether nothing is asked for.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        let mut query = Query::default();
        self.fill(&mut query);
        query == Query::default()
    }
}

/// The words of a kind of record.
pub(super) const fn kind_key(kind: Kind) -> &'static str {
    match kind {
        Kind::Handoff => "office-kind-handoff",
        Kind::NotHandedOver => "office-kind-not-handed-over",
        Kind::CheckIn => "office-kind-check-in",
        Kind::Amendment => "office-kind-amendment",
        Kind::Rehearsal => "office-kind-rehearsal",
    }
}

const fn answer_key(how: Answered) -> &'static str {
    match how {
        Answered::Read => "office-answer-read",
        Answered::Hold => "office-answer-hold",
        Answered::TwoTaps => "office-answer-two-taps",
        Answered::Demonstrate => "office-answer-demonstrate",
        Answered::Refused => "office-answer-refused",
        Answered::Waiting => "office-answer-waiting",
        Answered::NotShown => "office-answer-not-shown",
    }
}

/// The words of a verdict.
pub(super) const fn good_key(good: bool) -> &'static str {
    if good { "office-good" } else { "office-bad" }
}

fn day(text: &str) -> Option<Date> {
    text.trim().parse().ok()
}

/// What is wrong with a day that was typed; nothing while it is empty.
fn no_day(ctx: &Ctx<'_>, text: &str) -> Option<String> {
    (!text.trim().is_empty() && day(text).is_none()).then(|| ctx.say("office-filter-no-day"))
}

impl State {
    pub(super) fn filters_page<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let now = &self.filters;
        let chosen = self.chosen_filters(ctx);
        let typed = [
            ui::field(look, "office-agent", &now.agent, |t| Message::Filter(Change::Agent(t)))
                .label(ctx.say("office-filter-agent"))
                .placeholder(ctx.say("office-filter-agent-example")),
            ui::field(look, "office-item", &now.item, |t| Message::Filter(Change::Item(t)))
                .label(ctx.say("office-filter-item"))
                .placeholder(ctx.say("office-filter-item-example")),
            ui::field(look, "office-from", &now.from, |t| Message::Filter(Change::From(t)))
                .label(ctx.say("office-filter-from"))
                .placeholder(ctx.say("office-filter-day-example"))
                .error(no_day(ctx, &now.from)),
            ui::field(look, "office-to", &now.to, |t| Message::Filter(Change::To(t)))
                .label(ctx.say("office-filter-to"))
                .placeholder(ctx.say("office-filter-day-example"))
                .error(no_day(ctx, &now.to)),
        ];
        let typed = typed.map(|field| field.on_submit(Message::Back).into());
        let typed = Column::with_children(std::iter::once(self.caution(ctx)).chain(typed))
            .spacing(look.gap(Gap::Large))
            .width(Length::Fill);
        let (chosen, typed) = (ui::panel(look, chosen), ui::panel(look, typed));
        let parts: Element<'a, Message> = if look.portrait() {
            column![chosen, typed].spacing(look.gap(Gap::Wide)).into()
        } else {
            let half = |part| container(part).width(Length::FillPortion(1));
            row![half(chosen), half(typed)].spacing(look.gap(Gap::Wide)).into()
        };
        let page = column![ui::title(look, ctx.say("office-filters-title")), parts];
        let page = container(page.spacing(look.gap(Gap::Large))).padding(look.gap(Gap::Wide));
        let foot = container(self.filters_foot(ctx)).padding(look.gap(Gap::Wide));
        ui::on_escape(column![ui::scroll(look, page).height(Length::Fill), foot], Message::Back)
    }

    fn chosen_filters<'a>(&'a self, ctx: &Ctx<'a>) -> Column<'a, Message> {
        let now = &self.filters;
        let any = |chosen: bool, change: Change| {
            Choice::new(ctx.say("office-any"), chosen, Message::Filter(change))
        };
        let one =
            |label: String, chosen: bool, change: Change| Choice::new(label, chosen, Message::Filter(change));
        let verdicts = std::iter::once(any(now.good.is_none(), Change::Good(None))).chain(
            [true, false]
                .map(|good| one(ctx.say(good_key(good)), now.good == Some(good), Change::Good(Some(good)))),
        );
        let units = std::iter::once(any(now.unit.is_none(), Change::Unit(None))).chain(
            ctx.scripts.units.keys().map(|id| {
                let chosen = now.unit.as_ref() == Some(id);
                one(ctx.say(&format!("unit-{id}")), chosen, Change::Unit(Some(id.clone())))
            }),
        );
        let kinds = std::iter::once(any(now.kind.is_none(), Change::Kind(None))).chain(
            Kind::ALL
                .map(|kind| one(ctx.say(kind_key(kind)), now.kind == Some(kind), Change::Kind(Some(kind)))),
        );
        let answers = std::iter::once(any(now.answer.is_none(), Change::Answer(None)))
            .chain(Answered::ALL.map(|how| {
                one(ctx.say(answer_key(how)), now.answer == Some(how), Change::Answer(Some(how)))
            }));
        let languages = std::iter::once(any(now.language.is_none(), Change::Language(None))).chain(
            ctx.scripts.lot.value.languages.iter().map(|tag| {
                let chosen = now.language.as_ref() == Some(tag);
                one(own_name(ctx, tag), chosen, Change::Language(Some(tag.clone())))
            }),
        );
        let answered =
            if now.caution.is_some() { "office-filter-answer-of-it" } else { "office-filter-answer" };
        let look = &ctx.look;
        let part = |key: &str, choice: Element<'a, Message>| -> Element<'a, Message> {
            column![ui::section(look, ctx.say(key)), choice].spacing(look.gap(Gap::Small)).into()
        };
        Column::with_children([
            part("office-filter-verdict", ui::choices(look, verdicts)),
            part("office-filter-unit", ui::choices(look, units)),
            part("office-filter-kind", ui::choices(look, kinds)),
            part(answered, ui::choices(look, answers)),
            part("office-filter-language", ui::choices(look, languages)),
        ])
        .spacing(look.gap(Gap::Wide))
        .width(Length::Fill)
    }

    /// A caution, by words of it or by its name.
    fn caution<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let (look, now) = (&ctx.look, &self.filters);
        let field = ui::field(look, "office-caution", &now.caution_typed, |t| {
            Message::Filter(Change::CautionTyped(t))
        })
        .label(ctx.say("office-filter-caution"))
        .placeholder(ctx.say("office-filter-caution-example"))
        .on_submit(Message::Back);
        let offers = now.offers.iter().map(|offer| {
            let chosen = now.caution.as_ref() == Some(&offer.id);
            let change = Change::Caution(Some(offer.id.clone()));
            let choice = Choice::new(offer.words.clone(), chosen, Message::Filter(change));
            ui::radio_row(look, Choice { line: Some(offer.id.clone()), ..choice })
        });
        let none = (now.offers.is_empty() && now.caution.is_none() && !now.caution_typed.trim().is_empty())
            .then(|| ui::small(look, ctx.say("office-filter-caution-none")));
        column![Element::from(field)].extend(offers).push(none).spacing(look.gap(Gap::Small)).into()
    }

    fn filters_foot<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let count = self.shown.as_ref().filter(|_| self.coming.is_none()).and_then(|shown| shown.count);
        let words = match count {
            Some(Count::Exactly(count)) => {
                counted(ctx, "office-filters-show", usize::try_from(count).unwrap_or(usize::MAX))
            }
            _ => ctx.say("office-filters-done"),
        };
        let done = ui::primary(look, words, Message::Back).id("office-filters-done");
        let clear = (!self.filters.is_empty())
            .then(|| ui::secondary(look, ctx.say("office-filters-clear"), Message::FiltersCleared));
        if look.portrait() {
            let clear = clear.map(|clear| Element::from(clear.fill()));
            return column![Element::from(done.fill())].push(clear).spacing(look.gap(Gap::Small)).into();
        }
        let parts = clear.map(Element::from).into_iter().chain([done.fill().into()]).collect();
        Row::with_children(std::iter::once(ui::hand_row(look, parts).spacing(look.gap(Gap::Medium)).into()))
            .align_y(Alignment::Center)
            .into()
    }
}
